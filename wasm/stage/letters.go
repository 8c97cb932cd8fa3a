package stage

import (
	"math"
	"unicode"

	"leafwright/game/draw"
)

// Glyph is a piece of writing as the browser rasterised it: how much of each
// pixel is ink, row by row, and where its box stands from the pen, in device
// pixels, y down from the baseline.
type Glyph struct {
	Ink       []byte
	W, H      int
	Left, Top int
	Advance   float64
}

// Raster rasterises a piece of writing at a type size in device pixels, the pen
// standing shift of a pixel to the right of a whole one.
type Raster func(text string, size float64, bold bool, shift float64) Glyph

// shaped is the first sign of the scripts whose letters depend on their
// neighbours, so that they are rasterised a whole run at a time.
const shaped = 0x590

// letter is what a glyph is kept under.
type letter struct {
	text  string
	size  float64
	bold  bool
	shift uint8 // in steps
}

// spot is where a glyph stands on the atlas, and how it stands to the pen.
type spot struct {
	x, y, w, h int
	left, top  int
	advance    float64
}

// steps is how many places between two device pixels a glyph is rasterised at:
// enough that letters stand evenly.
const steps = 4

// cases keeps the glyphs, packed on shelves: rows of one height, filled from the
// left. When there is no more room everything is let go and begun again.
type cases struct {
	raster Raster
	size   int // of the square atlas
	put    func(x, y, w, h int, ink []byte)
	clear  func() // paints what still needs the old glyphs

	spots  map[letter]spot
	shelfX int
	shelfY int
	shelfH int
}

// margin keeps glyphs apart, and away from the white pixel in the corner.
const margin = 1

// corner square that holds the white pixel.
const whiteSide = 3

func (k *cases) reset() {
	k.spots = map[letter]spot{}
	k.shelfX, k.shelfY, k.shelfH = 0, whiteSide+margin, 0
}

func (k *cases) find(l letter) spot {
	if s, ok := k.spots[l]; ok {
		return s
	}
	g := k.raster(l.text, l.size, l.bold, float64(l.shift)/steps)
	s := spot{w: g.W, h: g.H, left: g.Left, top: g.Top, advance: g.Advance}
	if g.W <= 0 || g.H <= 0 || len(g.Ink) < g.W*g.H || g.W+margin > k.size || g.H+margin+whiteSide+margin > k.size {
		s.w, s.h = 0, 0 // a space, or too large to show
	} else if !k.place(&s) {
		k.clear()
		k.reset()
		k.place(&s)
	}
	if s.w > 0 {
		k.put(s.x, s.y, s.w, s.h, g.Ink[:g.W*g.H])
	}
	k.spots[l] = s
	return s
}

// place finds room for the spot, on this shelf or a new one.
func (k *cases) place(s *spot) bool {
	if k.shelfX+s.w+margin > k.size {
		k.shelfX, k.shelfY, k.shelfH = 0, k.shelfY+k.shelfH+margin, 0
	}
	if k.shelfY+s.h+margin > k.size {
		return false
	}
	s.x, s.y = k.shelfX, k.shelfY
	k.shelfX += s.w + margin
	k.shelfH = max(k.shelfH, s.h)
	return true
}

// text lays one line of writing, its baseline on a whole device pixel.
func (b *batch) text(k *cases, at draw.Pt, anchor draw.Anchor, size float64, bold bool, text string, c tint) {
	px := size * b.scale
	pieces := split(text)
	width := 0.0
	for _, p := range pieces {
		width += k.find(letter{p, px, bold, 0}).advance
	}
	x, y := at.X*b.scale, math.Round(at.Y*b.scale)
	switch anchor {
	case draw.Middle:
		x -= width / 2
	case draw.End:
		x -= width
	}
	for _, p := range pieces {
		whole := math.Floor(x)
		shift := uint8((x - whole) * steps)
		s := k.find(letter{p, px, bold, shift})
		if s.w > 0 {
			b.glyph(whole, y, s, c)
		}
		x += s.advance
	}
}

// split cuts a text into what is rasterised in one piece: each sign with the
// marks that stand on it, or the whole text where letters join.
func split(text string) []string {
	var pieces []string
	from := 0
	for i, r := range text {
		if r >= shaped && unicode.IsLetter(r) && !unicode.In(r, unicode.Latin, unicode.Greek, unicode.Cyrillic) {
			return []string{text}
		}
		if i > from && !unicode.Is(unicode.Mn, r) && r != '\u200d' && r != '\ufe0f' {
			pieces = append(pieces, text[from:i])
			from = i
		}
	}
	if from < len(text) {
		pieces = append(pieces, text[from:])
	}
	return pieces
}
