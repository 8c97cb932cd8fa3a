package timber_test

import (
	"testing"

	"leafwright/geom/timber"
)

// Coating makers' identities and worked figures; a paint table rounds wet films to whole µm.
func TestFilm(t *testing.T) {
	for _, c := range [][2]float64{{16, 62.5}, {14, 71.4}, {12, 83.3}, {10, 100}, {8, 125}, {6, 166.7}, {4, 250}, {2, 500}, {1, 1000}} {
		near(t, "wet film", timber.Wet(c[0]), c[1], 0.05)
	}
	near(t, "40 % at 12", timber.Film(40, 12), 33.333, 0.001)
	near(t, "35 % at 16", timber.Film(35, 16), 21.875, 1e-12)
	near(t, "50 % at 14", timber.Film(50, 14), 35.714, 0.001)
	near(t, "125 µm at 71 %", timber.Rate(125, 71), 5.68, 1e-12)
	near(t, "its wet film, printed as 176", timber.Wet(timber.Rate(125, 71)), 176.06, 0.005)
	near(t, "100 µm at 65 %, wet", timber.Wet(timber.Rate(100, 65)), 153.85, 0.005)
}

// Ranges of data sheets, from memory, and that they follow from solids and rates in print
// with them: enamel 33 to 42 % at 12 to 16, alkyd 45 to 58 % at 14 to 17.
func TestCoats(t *testing.T) {
	for _, c := range []struct {
		paint  timber.Paint
		lo, hi float64
	}{{timber.Enamel, 20, 35}, {timber.Alkyd, 28, 40}, {timber.Primer, 30, 45}} {
		of := timber.CoatOf(c.paint)
		if of == nil || of.Lo != c.lo || of.Hi != c.hi {
			t.Fatalf("%s: %v, want %v to %v", c.paint, of, c.lo, c.hi)
		}
		if f := timber.Film(of.Solids, of.Covers); f < of.Lo || f > of.Hi {
			t.Errorf("%s: its solids and rate give %v µm", c.paint, f)
		}
	}
	if timber.CoatOf("whitewash") != nil {
		t.Error("a coat of whitewash")
	}
	// a full system of three coats is 80 to 120 µm a face, from memory
	full := timber.AllowanceOf(timber.Face{On: []timber.Layers{{Paint: timber.Primer, Coats: 1}, {Paint: timber.Alkyd, Coats: 2}}}, timber.Face{})
	if full.Least < 0.075 || full.Most > 0.130 {
		t.Errorf("three coats take %v to %v mm", full.Least, full.Most)
	}
}

func TestAllowance(t *testing.T) {
	leaf := timber.Face{
		OffMM: 0.4, Off: []timber.Layers{{Paint: timber.OldPaint, Coats: 9}},
		On: []timber.Layers{{Paint: timber.Primer, Coats: 1, Film: 40}, {Paint: timber.Enamel, Coats: 2, Film: 30}},
	}
	frame := timber.Face{On: []timber.Layers{{Paint: timber.Enamel, Coats: 2}}}
	a := timber.AllowanceOf(leaf, frame)
	near(t, "takes", a.Takes, 0.1+0.055, 1e-12) // 40 + 2·30; 2·27.5 µm
	near(t, "gives", a.Gives, 0.4, 1e-12)
	near(t, "loses", a.Loses(), 0.155-0.4, 1e-12)
	near(t, "least", a.Least, 0.1-0.4+0.04, 1e-12)
	near(t, "most", a.Most, 0.1-0.4+0.07, 1e-12)
	// Griffith (1916) s. 67 leaves a scant 1/16 in, 0.8 to 1.59 mm, for later paint: a dozen old coats on both faces
	old := timber.Face{On: []timber.Layers{{Paint: timber.OldPaint, Coats: 12}}}
	if a := timber.AllowanceOf(old, old); a.Takes < 0.8 || a.Takes > 1.59 {
		t.Errorf("a dozen coats on both faces take %v mm", a.Takes)
	}
}
