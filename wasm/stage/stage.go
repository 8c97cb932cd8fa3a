//go:build js

package stage

import (
	"image"
	"image/color"

	"github.com/hajimehoshi/ebiten/v2"

	"leafwright/game/draw"
)

// Config is what the stage needs from the page.
type Config struct {
	Ratio   float64                       // device pixels per CSS pixel
	Drawing func(w, h float64) *draw.List // the drawing on a sheet of w by h CSS pixels
	Palette func() *draw.Palette          // how the inks look now
	Raster  Raster                        // the browser's own type
	Wake    func()                        // asks for a frame
	Painted func(list *draw.List)         // called after each painting
}

// Stage is the canvas. It paints only after Invalidate or a change of its size.
type Stage struct {
	c     Config
	list  *draw.List // painted last
	batch batch
	cases cases
	atlas *ebiten.Image
	dst   *ebiten.Image
	verts []ebiten.Vertex
	stale bool
	w, h  int
}

// New makes a stage; Run shows it.
func New(c Config) *Stage {
	s := &Stage{c: c, stale: true}
	size := 1024
	if c.Ratio > 1.5 {
		size = 2048
	}
	s.atlas = ebiten.NewImageWithOptions(image.Rect(0, 0, size, size), &ebiten.NewImageOptions{Unmanaged: true})
	s.atlas.SubImage(image.Rect(0, 0, whiteSide, whiteSide)).(*ebiten.Image).Fill(color.White)
	s.batch = batch{white: [2]float32{whiteSide / 2., whiteSide / 2.}, flush: s.flush, scale: c.Ratio}
	s.cases = cases{raster: c.Raster, size: size, put: s.put, clear: s.flush}
	s.cases.reset()
	return s
}

// Invalidate has the drawing painted anew at the next frame.
func (s *Stage) Invalidate() {
	s.stale = true
	s.c.Wake()
}

// Run shows the stage until the page goes away. It gives an error where the
// browser offers no WebGL 2.
func (s *Stage) Run() error {
	ebiten.SetScreenClearedEveryFrame(false)
	ebiten.SetTPS(ebiten.SyncWithFPS)
	return ebiten.RunGameWithOptions(s, &ebiten.RunGameOptions{InitUnfocused: true})
}

// Update does nothing: what changes the drawing comes from the page's events.
func (s *Stage) Update() error { return nil }

// LayoutF gives one image pixel for each device pixel.
func (s *Stage) LayoutF(w, h float64) (float64, float64) {
	pw, ph := max(1, int(w*s.c.Ratio)), max(1, int(h*s.c.Ratio))
	if pw != s.w || ph != s.h {
		s.w, s.h, s.stale = pw, ph, true
	}
	return float64(pw), float64(ph)
}

// Layout stands in for LayoutF where whole pixels are asked for.
func (s *Stage) Layout(w, h int) (int, int) { return w, h }

// Draw paints the drawing if it has changed.
func (s *Stage) Draw(dst *ebiten.Image) {
	if !s.stale {
		return
	}
	s.stale = false
	s.dst = dst
	s.list = s.c.Drawing(float64(s.w)/s.c.Ratio, float64(s.h)/s.c.Ratio)
	palette := s.c.Palette()
	dst.Fill(palette[draw.Paper])
	for i := range s.list.Marks {
		s.mark(&s.list.Marks[i], palette)
	}
	s.flush()
	s.c.Painted(s.list)
}

func (s *Stage) mark(m *draw.Mark, palette *draw.Palette) {
	pts := s.list.Points[m.From:m.To]
	c := tintOf(palette[m.Ink])
	switch m.Kind {
	case draw.Fill:
		s.batch.fill(pts, c)
	case draw.Stroke:
		s.batch.stroke(pts, m.Closed, m.Width, c)
	case draw.Text:
		s.batch.text(&s.cases, pts[0], m.Anchor, m.Size, m.Bold, m.Text, c)
	}
}

// flush paints the batch in one call and empties it.
func (s *Stage) flush() {
	b := &s.batch
	if len(b.indices) > 0 {
		s.verts = s.verts[:0]
		for _, c := range b.corners {
			s.verts = append(s.verts, ebiten.Vertex{
				DstX: c.x, DstY: c.y, SrcX: c.sx, SrcY: c.sy,
				ColorR: c.c.r, ColorG: c.c.g, ColorB: c.c.b, ColorA: c.c.a,
			})
		}
		s.dst.DrawTriangles(s.verts, b.indices, s.atlas, &ebiten.DrawTrianglesOptions{
			ColorScaleMode: ebiten.ColorScaleModePremultipliedAlpha,
		})
	}
	b.corners, b.indices = b.corners[:0], b.indices[:0]
}

// put copies a glyph's ink onto the atlas as white.
func (s *Stage) put(x, y, w, h int, ink []byte) {
	px := make([]byte, 4*len(ink))
	for i, a := range ink {
		px[4*i], px[4*i+1], px[4*i+2], px[4*i+3] = a, a, a, a
	}
	s.atlas.SubImage(image.Rect(x, y, x+w, y+h)).(*ebiten.Image).WritePixels(px)
}
