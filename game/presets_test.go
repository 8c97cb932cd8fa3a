package game

import (
	"math"
	"testing"

	"leafwright/geom/fit"
	"leafwright/geom/judge"
)

// The figures each source gives, typed in again from the sources and not from the
// presets: least and most in mm for sides and head, and for the floor. -1 where
// the source gives none.
func TestPresetsHoldTheirSourcesFigures(t *testing.T) {
	const in = 25.4
	for _, row := range []struct {
		name, source          string
		least, most           float64
		floorLeast, floorMost float64
	}{
		{"finished", "AU/NZ general practice, no published source: 2-3 mm, 10-15 mm to carpet", 2, 3, 10, 15},
		{"bare", "common practice, no published source: 4-5 mm all round", 4, 5, 4, -1},
		{"uk-unfinished-floor", "UK trade guidance: 2-3 mm; 10-22 mm over an unfinished floor", 2, 3, 10, 22},
		{"us-prefit-2009", "AWS ed. 1 (2009) App. B: 1/8 in; 3/4 in at most to a floor", 3.2 - in/32, 3.2 + in/32, -1, 19},
		{"us-before-paint", "US general practice: 1/16 to 1/8 in", 1.6, 3.2, -1, 19},
		{"pocketbook-1900s", "Building Trades Pocketbook: 3/32 in; 1/4 to 1/2 in", 2.38 - in/32, 2.38 + in/32, 6.35, 12.7},
		{"carpentry-1916", "Griffith, Carpentry (1916) s. 67: scant 1/16 in", 0.8, 1.59, -1, -1},
		{"rated-uk-2016", "BS 8214:2016: 2-4 mm; 10 mm at most by certificate", 2, 4, 3, 10},
		{"rated-us-wood", "NFPA 80 6.3.1.7.1, 4.8.4: 1/8 in at most; 3/4 in at most", -1, 3.18, -1, 19},
	} {
		t.Run(row.name, func(t *testing.T) {
			p, known := PresetNamed(row.name)
			if !known {
				t.Fatal("no such preset")
			}
			near := func(what string, got, want float64) {
				if want >= 0 && math.Abs(got-want) > 0.06 {
					t.Errorf("%s: %v mm, %s gives %v", what, got, row.source, want)
				}
			}
			for _, e := range []fit.Edge{fit.LatchSide, fit.HeadSide} {
				near("least", p.Wanted.Gaps[e].Least, row.least)
				near("most", p.Wanted.Gaps[e].Most, row.most)
			}
			near("floor, least", p.Wanted.Gaps[fit.FloorSide].Least, row.floorLeast)
			near("floor, most", p.Wanted.Gaps[fit.FloorSide].Most, row.floorMost)
		})
	}
}

// Every preset can be worn by a job, and says what it is.
func TestPresetsAreSound(t *testing.T) {
	seen := map[string]bool{}
	for _, p := range Presets() {
		if p.Name == Own || seen[p.Name] || p.Label == "" || p.Source == "" || p.Status == "" {
			t.Errorf("preset %+v", p)
		}
		if (p.Status == Inspection) != (p.Caution != "") {
			t.Errorf("%s: an inspection limit wants its caution, and only that", p.Name)
		}
		seen[p.Name] = true
		j := Blank(762, 1981, 40)
		j.WantedName, j.Wanted = p.Name, p.Wanted
		if faults := j.Check(); faults != nil {
			t.Errorf("%s: %v", p.Name, faults)
		}
		for e, l := range p.Wanted.Gaps {
			if !(l.Least <= l.Target && l.Target <= l.Most) {
				t.Errorf("%s: edge %d wants %+v", p.Name, e, l)
			}
		}
	}
	for _, p := range FloorPresets() {
		if l := p.Limits; !(l.Least <= l.Target && l.Target <= l.Most) || p.Label == "" || p.Source == "" {
			t.Errorf("floor preset %+v", p)
		}
	}
}

// A gap in the middle of what is wanted is good by every preset.
func TestPresetsCallTheirTargetGood(t *testing.T) {
	for _, p := range Presets() {
		for e, l := range p.Wanted.Gaps {
			if l.Judge(l.Target) != judge.Good {
				t.Errorf("%s: edge %d: target %v is not good", p.Name, e, l.Target)
			}
		}
	}
}
