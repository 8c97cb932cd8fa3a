package game

import (
	"testing"

	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
)

// The swing in steps comes to what it comes to at once, and only then do its findings
// get odds.
func TestSwingStep(t *testing.T) {
	j := demo(t, "8-weavers-cottage-readings")
	var f fit.Fit
	fit.Evaluate(&f, &j.Door)
	odds := func(s *Sureness) (swung bool, all []judge.Finding) {
		all = judge.Findings(&f, &j.Door, &j.Wanted)
		s.Weigh(all)
		for _, x := range all {
			if x.Subject == judge.ClearWay && x.Margin > 0 {
				swung = true
			}
		}
		return swung, all
	}
	s := j.Sure(false)
	if swung, _ := odds(s); swung {
		t.Error("the swing is known before it is worked out")
	}
	for !s.SwingStep() {
	}
	_, want := odds(j.Sure(true))
	swung, got := odds(s)
	if !swung {
		t.Error("worked out, the swing is not known")
	}
	for i := range want {
		if got[i].Margin != want[i].Margin || got[i].Odds != want[i].Odds {
			t.Errorf("finding %d: ± %v %v in steps, ± %v %v at once", i, got[i].Margin, got[i].Odds, want[i].Margin, want[i].Odds)
		}
	}
	var none *Sureness
	if none.Weigh(nil); !none.SwingStep() {
		t.Error("nothing to work out is never done")
	}
}

// A leaf that binds in one place as likely as not binds anywhere along that edge more
// likely than there.
func TestBindingAnywhere(t *testing.T) {
	j := demo(t, "8-weavers-cottage-readings")
	s := j.Sure(false)
	for e := fit.HingeSide; e < fit.Edges; e++ {
		u, _ := s.gaps.Least(e)
		if p := s.gaps.Binds(e); p < u.Binds() || p > 1 {
			t.Errorf("edge %d binds with a chance of %v, at its least place of %v", e, p, u.Binds())
		}
	}
}

// Of a door tried out the gaps are as well known as its own lines are: planed by 3 mm
// the latch side is 3 mm wider, as sure as before.
func TestSureOf(t *testing.T) {
	j := demo(t, "8-weavers-cottage-readings")
	s, tried := j.Sure(false), j.SureOf(func(d door.Door) door.Door {
		d.Leaf.Closing = d.Leaf.Closing.Shift(-3)
		return d
	})
	a, b := s.gaps.At(fit.LatchSide, 1000), tried.gaps.At(fit.LatchSide, 1000)
	if off := b.Value - a.Value - 3; off > 0.05 || off < -0.05 || b.Sigma > 1.1*a.Sigma || b.Sigma < 0.9*a.Sigma {
		t.Errorf("from %+v to %+v", a, b)
	}
}
