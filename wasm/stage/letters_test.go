package stage

import (
	"strings"
	"testing"

	"leafwright/game/draw"
)

// press is a raster for tests: every piece is ten by twelve pixels a sign.
func press(asked *[]string) Raster {
	return func(text string, size float64, bold bool, shift float64) Glyph {
		*asked = append(*asked, text)
		n := len([]rune(text))
		g := Glyph{Advance: size * float64(n) / 2}
		if strings.TrimSpace(text) != "" {
			g.W, g.H, g.Left, g.Top = 10*n, 12, -1, -10
			g.Ink = make([]byte, g.W*g.H)
		}
		return g
	}
}

func testCases(size int, asked *[]string) (*cases, *[][4]int) {
	var puts [][4]int
	k := &cases{raster: press(asked), size: size, clear: func() {}}
	k.put = func(x, y, w, h int, ink []byte) { puts = append(puts, [4]int{x, y, w, h}) }
	k.reset()
	return k, &puts
}

func TestSplit(t *testing.T) {
	for _, c := range []struct {
		name, text string
		want       []string
	}{
		{"figures", "2.1", []string{"2", ".", "1"}},
		{"minus and degree", "−1°", []string{"−", "1", "°"}},
		{"marks stay on their letter", "e\u0301a", []string{"e\u0301", "a"}},
		{"hebrew in one run", "דלת 3", []string{"דלת 3"}},
		{"arabic in one run", "باب", []string{"باب"}},
		{"devanagari in one run", "दरवाज़ा", []string{"दरवाज़ा"}},
		{"greek and cyrillic by letter", "ωд", []string{"ω", "д"}},
		{"signs above the line of scripts are no letters", "≥→⅜", []string{"≥", "→", "⅜"}},
		{"empty", "", nil},
		{"broken bytes", "a\xff", []string{"a", "\xff"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := split(c.text); strings.Join(got, "|") != strings.Join(c.want, "|") || len(got) != len(c.want) {
				t.Errorf("%q, want %q", got, c.want)
			}
		})
	}
}

func TestGlyphsAreKeptAndKeptApart(t *testing.T) {
	var asked []string
	k, puts := testCases(128, &asked)
	b := batch{scale: 1, flush: func() {}}
	for range 3 {
		b.text(k, draw.Pt{X: 10, Y: 20}, draw.Start, 16, false, "aba a", black)
	}
	if got := strings.Join(asked, ""); got != "ab " {
		t.Errorf("rasterised %q, want each sign once", got)
	}
	if len(b.corners) != 3*4*4 {
		t.Errorf("%d corners, want four for each sign but the space", len(b.corners))
	}
	for i, p := range *puts {
		if p[0] < whiteSide && p[1] < whiteSide {
			t.Errorf("glyph on the white pixel: %v", p)
		}
		for _, q := range (*puts)[:i] {
			if p[0] < q[0]+q[2]+margin && q[0] < p[0]+p[2]+margin && p[1] < q[1]+q[3]+margin && q[1] < p[1]+p[3]+margin {
				t.Errorf("glyphs touch: %v and %v", p, q)
			}
		}
	}
}

func TestAnchors(t *testing.T) {
	var asked []string
	k, _ := testCases(256, &asked)
	for _, c := range []struct {
		name   string
		anchor draw.Anchor
		x      float32
	}{
		{"start", draw.Start, 99},
		{"middle", draw.Middle, 79},
		{"end", draw.End, 59},
	} {
		t.Run(c.name, func(t *testing.T) {
			b := batch{scale: 2}
			b.text(k, draw.Pt{X: 50, Y: 40}, c.anchor, 10, true, "abcd", black)
			if b.corners[0].x != c.x || b.corners[0].y != 70 {
				t.Errorf("first corner at %v, %v, want %v, 70", b.corners[0].x, b.corners[0].y, c.x)
			}
		})
	}
}

func TestFullAtlasStartsAgain(t *testing.T) {
	var asked []string
	k, puts := testCases(48, &asked)
	painted := 0
	k.clear = func() { painted++ }
	for r := 'a'; r <= 'z'; r++ {
		k.find(letter{text: string(r), size: 16})
	}
	if painted == 0 {
		t.Error("26 glyphs of 10 × 12 fitted on 48 × 48")
	}
	for _, p := range *puts {
		if p[0]+p[2] > 48 || p[1]+p[3] > 48 {
			t.Errorf("glyph off the atlas: %v", p)
		}
	}
	if s := k.find(letter{text: "wider than the whole atlas", size: 16}); s.w != 0 || s.advance == 0 {
		t.Errorf("too large a piece: %+v, want its advance alone", s)
	}
}
