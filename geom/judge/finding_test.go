package judge_test

import (
	"math"
	"testing"

	"leafwright/geom"
	"leafwright/geom/caseone"
	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
)

func findings(d door.Door, w judge.Wanted) []judge.Finding {
	var f fit.Fit
	fit.Evaluate(&f, &d)
	return judge.Findings(&f, &d, &w)
}

func TestFindingsNameTheDeparture(t *testing.T) {
	// One departure is put into a sound door. The first finding must be about the
	// edge named, with the verdict and the chief cause named, of that amount.
	every := func(d *door.Door, set func(*door.Hinge)) {
		for i := range d.Hinges {
			set(&d.Hinges[i])
		}
	}
	for _, c := range []struct {
		name    string
		put     func(*door.Door)
		subject judge.Subject
		edge    fit.Edge
		verdict judge.Verdict
		cause   judge.Departure
		amount  float64
	}{
		{"head falls to the latch", func(d *door.Door) { d.Frame.Head = geom.Through(0, 2000, 800, 1992) },
			judge.ClosedGap, fit.HeadSide, judge.Binds, judge.HeadSlopes, -8},
		{"head sags in the middle", func(d *door.Door) { d.Frame.Head = geom.Through(0, 2000, 400, 1994, 800, 2000) },
			judge.ClosedGap, fit.HeadSide, judge.Binds, judge.HeadBowed, -6},
		{"latch jamb leans in", func(d *door.Door) { d.Frame.LatchJamb = geom.Through(0, 800, 2000, 794) },
			judge.ClosedGap, fit.LatchSide, judge.Binds, judge.LatchJambLeans, -6},
		{"latch jamb bowed in", func(d *door.Door) { d.Frame.LatchJamb = geom.Through(0, 800, 1000, 794, 2000, 800) },
			judge.ClosedGap, fit.LatchSide, judge.Binds, judge.LatchJambBowed, -6},
		{"hinge jamb bowed in between the hinges", func(d *door.Door) {
			d.Frame.HingeJamb = geom.Through(0, 0, 300, 0, 1000, 5, 1700, 0, 2000, 0)
		}, judge.ClosedGap, fit.HingeSide, judge.Binds, judge.HingeJambBowed, 5},
		{"top hinge let in deeper", func(d *door.Door) { d.Hinges[0].LeafGain += 3 },
			judge.ClosedGap, fit.HingeSide, judge.Tight, judge.GainsUneven, -3},
		{"both hinges let in too deep", func(d *door.Door) { every(d, func(h *door.Hinge) { h.LeafGain += 5 }) },
			judge.ClosedGap, fit.HingeSide, judge.Binds, judge.GainsAll, -5},
		{"hinges let in too little", func(d *door.Door) { every(d, func(h *door.Hinge) { h.LeafGain -= 5 }) },
			judge.ClosedGap, fit.LatchSide, judge.Binds, judge.GainsAll, 5},
		{"leaf in wind", func(d *door.Door) { d.Leaf.ClosingFace = geom.Through(0, 0, 1990, 12) },
			judge.Latching, fit.LatchSide, judge.Binds, judge.LeafInWind, 12},
		{"frame in wind", func(d *door.Door) {
			d.Frame.LatchFront = geom.Through(0, 0, 2000, 12)
			d.Frame.PlantStops(42)
		}, judge.Latching, fit.LatchSide, judge.Binds, judge.LatchJambWinds, 12},
		{"frame in wind by the hinge jamb", func(d *door.Door) {
			d.Frame.HingeFront = geom.Through(0, 0, 2000, 8)
			d.Frame.PlantStops(42)
		}, judge.Latching, fit.LatchSide, judge.Binds, judge.HingeJambWinds, 8},
		{"bottom hinge let in deeper", func(d *door.Door) { d.Hinges[1].LeafGain += 3 },
			judge.ClosedGap, fit.HingeSide, judge.Tight, judge.GainsUneven, 3},
		{"head low at the hinges", func(d *door.Door) { d.Frame.Head = geom.Through(0, 1994, 800, 2000) },
			judge.ClosedGap, fit.HeadSide, judge.Binds, judge.HeadSlopes, 6},
		{"foot too long", func(d *door.Door) { d.Leaf.Bottom = d.Leaf.Bottom.Shift(-5) },
			judge.ClosedGap, fit.FloorSide, judge.Tight, judge.LeafTall, 5},
		{"rebate too shallow for the leaf", func(d *door.Door) { d.Frame.PlantStops(38) },
			judge.StopGap, fit.HingeSide, judge.Binds, judge.StopsNear, 4},
		{"leaf too wide", func(d *door.Door) { d.Leaf.Closing = d.Leaf.Closing.Shift(5) },
			judge.ClosedGap, fit.LatchSide, judge.Binds, judge.LeafWide, 5},
		{"leaf hung too high", func(d *door.Door) { every(d, func(h *door.Hinge) { h.LeafHeight -= 3 }) },
			judge.ClosedGap, fit.HeadSide, judge.Tight, judge.HungHigh, 3},
		{"floor rises under the swing", func(d *door.Door) {
			d.Floor = door.Floor{
				Radii: []float64{0, 800}, Angles: []geom.Angle{0, 90 * geom.Degree},
				Heights: [][]float64{{0, 0}, {0, 8}},
			}
		}, judge.SwingFloor, fit.FloorSide, judge.Binds, judge.FloorRises, 8},
		{"strip on the top of thinner stock, flush with the knuckle face", func(d *door.Door) {
			d.Leaf.Sections[fit.HeadSide].StopBack = 7
		}, judge.StopGap, fit.HeadSide, judge.Slack, judge.StripBack, 7},
		{"strip of thinner stock on the closing edge, beside one on the top", func(d *door.Door) {
			d.Leaf.Sections[fit.HeadSide].StopBack, d.Leaf.Sections[fit.LatchSide].StopBack = 3, 8
		}, judge.StopGap, fit.LatchSide, judge.Slack, judge.StripBack, 8},
		{"square edge on a thick, narrow leaf", func(d *door.Door) {
			d.Leaf.Thickness = 60
			d.Frame.PlantStops(62)
			d.Leaf.Closing = geom.Through(0, 392, 1990, 392)
			d.Leaf.Top, d.Leaf.Bottom = geom.Through(0, 1990, 392, 1990), geom.Through(0, 0, 392, 0)
			d.Leaf.Width = 392
			d.Frame.LatchJamb, d.Frame.Head = geom.Through(0, 400, 2000, 400), geom.Through(0, 2000, 400, 2000)
		}, judge.SwingGap, fit.LatchSide, judge.Binds, judge.ClosingSquare, 2.19}, // √(394² + 65² − 5²) − 394 = 5.29 needed, 4 there, 1 to spare wanted: tan⁻¹(2.29/60)
	} {
		t.Run(c.name, func(t *testing.T) {
			d := caseone.Door()
			c.put(&d)
			got := findings(d, caseone.Wanted())[0]
			if got.Subject != c.subject || got.Edge != c.edge || got.Verdict != c.verdict {
				t.Fatalf("first finding is about subject %d edge %d verdict %d, want %d %d %d", got.Subject, got.Edge, got.Verdict, c.subject, c.edge, c.verdict)
			}
			if len(got.Causes) == 0 || got.Causes[0].Departure != c.cause || math.Abs(got.Causes[0].Amount-c.amount) > 0.02 {
				t.Fatalf("causes %+v, want first %q of %v", got.Causes, c.cause, c.amount)
			}
		})
	}
}

func TestASoundDoorIsGood(t *testing.T) {
	for _, f := range findings(caseone.Door(), caseone.Wanted()) {
		if f.Verdict != judge.Good {
			t.Errorf("%+v", f)
		}
		if len(f.Causes) != 0 {
			t.Errorf("a good finding has causes: %+v", f.Causes)
		}
	}
}

func TestStretchEndsWhereTheGapKeepsTheLimit(t *testing.T) {
	// A head that falls 8 mm over 800 from a 4 mm gap: the gap is 4 − x/100 less what
	// the leaf's corner is in, so it is a blade below 3 at x = 105 and 0 at x = 400.
	d := caseone.Door()
	d.Frame.Head = geom.Through(0, 2000, 800, 1992)
	f := findings(d, caseone.Wanted())[0]
	if math.Abs(f.Stretch.Lo-105) > 1e-3 || math.Abs(f.Stretch.Hi-796) > 1e-9 {
		t.Errorf("stretch %v, want 105 to 796", f.Stretch)
	}
	if math.Abs(f.Binding.Lo-400) > 1e-3 || math.Abs(f.Worst+3.96) > 1e-9 || math.Abs(f.At-796) > 1e-9 {
		t.Errorf("binding from %v, worst %v at %v; want 400, −3.96 at 796", f.Binding.Lo, f.Worst, f.At)
	}
}

func TestVerdictAtItsLimits(t *testing.T) {
	l := judge.Limits{Least: 2, Target: 3, Most: 4}
	touching := judge.Limits{Least: 0, Target: 2, Most: 4} // where the leaf may touch
	for _, c := range []struct {
		name string
		l    judge.Limits
		gap  float64
		want judge.Verdict
	}{
		{"no number", l, math.NaN(), judge.Binds},
		{"just under nothing", l, -0.001, judge.Binds},
		{"nothing", l, 0, judge.Tight},
		{"under the least by more than a blade", l, 1.949, judge.Tight},
		{"under the least by a blade", l, 1.95, judge.Good},
		{"the least", l, 2, judge.Good},
		{"the most", l, 4, judge.Good},
		{"over the most by a hair", l, 4.0002, judge.Good},
		{"over the most by a blade", l, 4.05, judge.Good},
		{"over the most by more than a blade", l, 4.051, judge.Slack},
		{"touching, and it may", touching, -0.049, judge.Good},
		{"bearing on it by more than a blade", touching, -0.051, judge.Binds},
		{"no least to speak of, and bearing on it", judge.Limits{Least: 0.03}, -0.021, judge.Binds},
		{"with no most, no gap is too wide", judge.Limits{Least: 2}, 1000, judge.Good},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := c.l.Judge(c.gap); got != c.want {
				t.Errorf("%v mm is judged %d, want %d", c.gap, got, c.want)
			}
		})
	}
}

// A verdict, the finding of a closed gap, of a stop and of the swing, and the chances of
// one as good as sure are the same, on both sides of what a feeler tells.
func TestABladeIsOneEverywhere(t *testing.T) {
	d := caseone.Door()
	var f fit.Fit
	fit.Evaluate(&f, &d)
	for _, c := range []struct {
		short float64 // of the limit, mm
		want  judge.Verdict
	}{{0.0002, judge.Good}, {0.04, judge.Good}, {0.06, judge.Tight}} {
		for _, subject := range []judge.Subject{judge.ClosedGap, judge.StopGap, judge.SwingGap} {
			w, told := caseone.Wanted(), false
			switch subject {
			case judge.ClosedGap:
				w.Gaps[fit.LatchSide].Least = f.Gaps[fit.LatchSide].Least + c.short
			case judge.StopGap:
				w.Stop.Least = f.Stops[fit.LatchSide].Least + c.short
			default:
				w.Swing.Least = f.Swing[fit.LatchSide].Least + c.short
			}
			for _, x := range findings(caseone.Door(), w) {
				if x.Subject != subject || x.Edge != fit.LatchSide {
					continue
				}
				told = true
				if x.Verdict != c.want {
					t.Errorf("%g mm short: subject %d is judged %d, want %d", c.short, subject, x.Verdict, c.want)
				}
				all := []judge.Finding{x}
				judge.Weigh(all, func(*judge.Finding) (judge.Known, judge.Known) { return exact(x.Worst), exact(x.Other) })
				if all[0].Odds[x.Verdict] != 1 {
					t.Errorf("%g mm short: subject %d, judged %d, has odds %v", c.short, subject, x.Verdict, all[0].Odds)
				}
			}
			if !told {
				t.Errorf("%g mm short: nothing is found of subject %d", c.short, subject)
			}
		}
	}
}

// exact is a number known to the last bit.
type exact float64

func (e exact) Margin() float64 { return 0 }
func (e exact) Below(limit float64) float64 {
	if float64(e) < limit {
		return 1
	}
	return 0
}

// Common practice, no published source: 4 to 5 mm all round for a leaf hung bare,
// with paint to come.
func TestFourToFiveAllRoundBare(t *testing.T) {
	w := caseone.Wanted()
	for e := fit.HingeSide; e <= fit.HeadSide; e++ {
		w.Gaps[e] = judge.Limits{Least: 4, Target: 4.5, Most: 5}
	}
	for _, c := range []struct {
		name   string
		planed float64 // off the closing edge
		want   judge.Verdict
	}{{"3.9 at the latch", -0.1, judge.Tight}, {"4 at the latch", 0, judge.Good}, {"5 at the latch", 1, judge.Good}, {"5.1 at the latch", 1.1, judge.Slack}} {
		t.Run(c.name, func(t *testing.T) {
			d := caseone.Door()
			d.Leaf.Closing = d.Leaf.Closing.Shift(-c.planed)
			for _, f := range findings(d, w) {
				if f.Subject == judge.ClosedGap && f.Edge == fit.LatchSide && f.Verdict != c.want {
					t.Errorf("verdict %d, want %d", f.Verdict, c.want)
				}
			}
		})
	}
}

// Over a threshold the closed leaf may stand nearer than it may swing over the
// floor beyond: the closed gap's own limits rule there, and nothing is told twice.
func TestSwingAgainstTheClosedGap(t *testing.T) {
	for _, c := range []struct {
		name          string
		sill          float64 // of a threshold under the closed leaf, whose foot is at 6
		closed, swung judge.Verdict
		told          bool // whether the swing has a finding of its own
	}{
		{"as near as a threshold may be", 4.2, judge.Good, judge.Good, true},
		{"nearer", 5.5, judge.Tight, judge.Good, false},
		{"against the threshold", 7, judge.Binds, judge.Good, false},
		{"no threshold", 0, judge.Good, judge.Good, true},
	} {
		t.Run(c.name, func(t *testing.T) {
			d, w := caseone.Door(), caseone.Wanted()
			w.Gaps[fit.FloorSide] = judge.Limits{Least: 1.5, Target: 2.4, Most: 7}
			d.Floor = door.Floor{
				Radii: []float64{0, 900}, Angles: []geom.Angle{0, geom.Degree},
				Heights: [][]float64{{c.sill, c.sill}, {0, 0}},
			}
			told := false
			for _, f := range findings(d, w) {
				switch f.Subject {
				case judge.ClosedGap:
					if f.Edge == fit.FloorSide && f.Verdict != c.closed {
						t.Errorf("closed gap is judged %d, want %d", f.Verdict, c.closed)
					}
				case judge.SwingFloor:
					told = true
					if f.Verdict != c.swung {
						t.Errorf("swing is judged %d, want %d", f.Verdict, c.swung)
					}
				}
			}
			if told != c.told {
				t.Errorf("swing told: %v, want %v", told, c.told)
			}
		})
	}
}
