package judge_test

import (
	"math"
	"testing"

	"leafwright/geom"
	"leafwright/geom/caseone"
	"leafwright/geom/door"
	"leafwright/geom/judge"
)

// Stiles that bow each their own way: the one whose stop is meant is the cause, the right
// way round and by what it bows.
func TestEachStileBowsItsOwnWay(t *testing.T) {
	d := caseone.Door()
	high := d.Leaf.Top.At(380)
	bow := func(mm float64) geom.Profile {
		return geom.Profile{{At: 0}, {At: high / 2, Value: mm}, {At: high}}
	}
	for _, c := range []struct {
		hanging, closing float64
		want             judge.Departure
		amount           float64
	}{
		{3, -3.1, judge.HangingStileBow, 3},
		{3, 0, judge.HangingStileBow, 3},
		{3, 3, judge.LeafBowed, 3},
		{3, 2.8, judge.LeafBowed, 2.9},
	} {
		d := d.Clone()
		d.Leaf.HangingFace, d.Leaf.ClosingFace = bow(c.hanging), bow(c.closing)
		found := false
		for _, x := range findings(d, caseone.Wanted()) {
			if x.Subject != judge.StopGap || x.Edge != door.HingeSide || x.Verdict != judge.Slack {
				continue
			}
			found = true
			if len(x.Causes) != 1 || x.Causes[0].Departure != c.want || math.Abs(x.Causes[0].Amount-c.amount) > 0.02 {
				t.Errorf("stiles bowed %g and %g: causes %+v, want %s by %g", c.hanging, c.closing, x.Causes, c.want, c.amount)
			}
		}
		if !found {
			t.Errorf("stiles bowed %g and %g: nothing found at the hinge side's stop", c.hanging, c.closing)
		}
	}
}
