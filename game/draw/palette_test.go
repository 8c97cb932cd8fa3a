package draw

import (
	"image/color"
	"math"
	"testing"
)

// luminance and contrast are the relative luminance and the contrast ratio of
// W3C, Web Content Accessibility Guidelines 2.1.
func luminance(c color.NRGBA) float64 {
	part := func(v uint8) float64 {
		s := float64(v) / 255
		if s <= 0.03928 {
			return s / 12.92
		}
		return math.Pow((s+0.055)/1.055, 2.4)
	}
	return 0.2126*part(c.R) + 0.7152*part(c.G) + 0.0722*part(c.B)
}

func contrast(a, b color.NRGBA) float64 {
	x, y := luminance(a), luminance(b)
	return (max(x, y) + 0.05) / (min(x, y) + 0.05)
}

func TestPalettesRead(t *testing.T) {
	pairs := []struct {
		name   string
		on, of Ink
		least  float64
	}{
		// 4.5 for writing, 3 for what must be told apart: guidelines 1.4.3, 1.4.11
		{"figures", TextInk, Paper, 4.5},
		{"captions", TextMuted, Paper, 4.5},
		{"binding figures", TextBind, Paper, 4.5},
		{"tight figures", TextTight, Paper, 4.5},
		{"slack figures", TextSlack, Paper, 4.5},
		{"figures on the leaf", TextInk, Timber, 4.5},
		{"frame on the opening", Line, Opening, 4.5},
		{"leaf's outline", Line, Timber, 3},
		{"overlap on the leaf", BindFill, Timber, 1.6},
		{"overlap on the opening", BindFill, Opening, 3},
		{"overlap's hatch", BindHatch, BindFill, 3},
		{"tight hatch", TightHatch, TightFill, 3},
		{"slack hatch", SlackHatch, SlackFill, 3},
		{"joints on the leaf", Shoulder, Timber, 3},
		{"handle", Handle, Paper, 3},
		{"handle on the leaf", Handle, Timber, 3},
		{"its sign", HandleSign, Handle, 4.5},
		{"datum lines", Datum, Wall, 3},
		{"leaders", Fine, Paper, 3},
	}
	for name, p := range map[string]*Palette{"day": &Day, "night": &Night, "print": &Print} {
		t.Run(name, func(t *testing.T) {
			for i, c := range p {
				if c.A == 0 {
					t.Errorf("ink %d is missing", i)
				}
			}
			for _, q := range pairs {
				if got := contrast(p[q.on], p[q.of]); got < q.least {
					t.Errorf("%s: contrast %.2f, want %.1f", q.name, got, q.least)
				}
			}
		})
	}
}

// deuteranope gives roughly the colour a person without the middle cones sees:
// Viénot, Brettel and Mollon, "Digital video colourmaps for checking the
// legibility of displays by dichromats", 1999, coefficients from memory.
func deuteranope(c color.NRGBA) [3]float64 {
	r, g, b := float64(c.R), float64(c.G), float64(c.B)
	y := 0.29275*r + 0.70725*g
	return [3]float64{y, y, -0.02234*r + 0.02234*g + b}
}

func TestVerdictsPartWithoutRedAndGreen(t *testing.T) {
	for name, p := range map[string]*Palette{"day": &Day, "night": &Night, "print": &Print} {
		fills := []Ink{BindFill, TightFill, SlackFill, Timber}
		for i, a := range fills {
			for _, b := range fills[:i] {
				x, y := deuteranope(p[a]), deuteranope(p[b])
				d := math.Sqrt(sq(x[0]-y[0]) + sq(x[1]-y[1]) + sq(x[2]-y[2]))
				if d < 20 {
					t.Errorf("%s: inks %d and %d are only %.0f apart of 441", name, a, b, d)
				}
			}
		}
	}
}

func sq(x float64) float64 { return x * x }
