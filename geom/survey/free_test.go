package survey

import (
	"math"
	"strings"
	"testing"

	"leafwright/geom/fit"
)

// onTrestles is what is read of an opening and of a leaf that was never hung in it.
func onTrestles(openingHeight float64, more ...Reading) []Reading {
	return append([]Reading{
		{Kind: OpeningWidth, At: 200, Value: 768},
		{Kind: OpeningWidth, At: 1800, Value: 768},
		{Kind: OpeningHeight, At: 20, Value: openingHeight},
		{Kind: OpeningHeight, At: 740, Value: openingHeight},
		{Kind: LeafWidth, At: 1000, Value: 762},
		{Kind: LeafHeight, At: 380, Value: 1962},
		{Kind: LeafThickness, Value: 35},
		{Kind: HingeOnLeaf, Hinge: 0, Value: 1760},
		{Kind: HingeOnLeaf, Hinge: 1, Value: 240},
	}, more...)
}

var wishedFor = Hanging{Side: 2.5, Head: 2.5, HeadLeast: 2, Floor: 10, Swing: 2}

// A leaf nobody hung hangs as wanted, as far as the height allows, and how it hangs is
// no more uncertain than a marked line is.
func TestLeafNotHungHangsAsWanted(t *testing.T) {
	for _, c := range []struct{ height, head, floor, short float64 }{
		{1982, 2.5, 17.5, 0},      // the rest is at the floor
		{1974.5, 2.5, 10, 0},      // just enough for both
		{1974.2, 2.2, 10, 0},      // the head gives way to its least
		{1970, 2.5, 5.5, 2 + 2},   // the foot is cut in any case: 12 are wanted of the 8 there are
		{1960, 2.5, -4.5, 12 + 2}, // taller than the opening
	} {
		res := AdjustFor(onTrestles(c.height), nil, &wishedFor)
		if got := res.Chosen; !got.Jamb || got.Leaf || math.Abs(got.Short-c.short) > 0.02 {
			t.Errorf("height %g: chosen %+v, want the jamb and %g short", c.height, got, c.short)
		}
		g := res.Gaps()
		head, floor, side := g.Fit.Gaps[fit.HeadSide], g.Fit.Gaps[fit.FloorSide], g.Fit.Gaps[fit.HingeSide]
		if math.Abs(head.Least-c.head) > 0.02 || math.Abs(floor.Least-c.floor) > 0.02 || math.Abs((side.Least+side.Most)/2-2.5) > 0.02 {
			t.Errorf("height %g: head %.3f, floor %.3f, hinge side %.3f; want %g, %g, 2.5", c.height, head.Least, floor.Least, side.Least, c.head, c.floor)
		}
		sure := math.Inf(1) // somewhere along the head, where it was set
		for at := 5.0; at < 760; at += 25 {
			sure = min(sure, g.At(fit.HeadSide, at).Sigma)
		}
		if sure > 0.6 {
			t.Errorf("height %g: the head's gap is a choice, and is nowhere known better than to %.2f", c.height, sure)
		}
		if u, _ := g.Least(fit.HingeSide); u.Sigma > 0.8 {
			t.Errorf("height %g: the hinge side's gap is a choice, and is known to %.2f only", c.height, u.Sigma)
		}
		for _, h := range res.Door.Hinges {
			if !h.UncutJamb || h.UncutLeaf {
				t.Errorf("hinge %+v: the jamb is not cut, the leaf is", h)
			}
		}
		told := false
		for _, a := range res.Assumptions() {
			if strings.HasPrefix(a.What, "place on the jamb") || strings.HasPrefix(a.What, "gain in the jamb") {
				t.Errorf("%v: no size nobody measured, but a choice", a)
			}
			told = told || strings.Contains(a.What, "hinges on the jamb")
		}
		if !told {
			t.Error("the choice is not told")
		}
		if next, ok := g.NextForTightest(); ok && (next.Reading.Kind.ofJamb() || next.Reading.Kind.ofLeaf()) {
			t.Errorf("next: %v, which is to be cut first", next.Reading.Kind)
		}
	}
}

// Whatever tells of a hinge let in, or of a leaf that hung, leaves nothing to choose
// there.
func TestWhatIsCutIsNoChoice(t *testing.T) {
	for _, r := range []Reading{
		{Kind: HingeOnJamb, Hinge: 0, Value: 1768}, {Kind: HingeFromHead, Hinge: 1, Value: 1730}, {Kind: JambGain, Hinge: 0, Value: 2},
		{Kind: GapRead, Side: Head, At: 300, Value: 4}, {Kind: Rub, Side: Latch, At: 1700}, {Kind: LatchProud, Value: 1},
	} {
		res := AdjustFor(onTrestles(1982, r), nil, &wishedFor)
		if res.Chosen.Any() || res.Door.Hinges[0].UncutJamb {
			t.Errorf("with %s: chosen %+v", r.Kind, res.Chosen)
		}
		plain := Adjust(onTrestles(1982, r))
		for i := range plain.Door.Hinges {
			if res.Door.Hinges[i] != plain.Door.Hinges[i] {
				t.Errorf("with %s: hinge %d is %+v, and without a wish %+v", r.Kind, i, res.Door.Hinges[i], plain.Door.Hinges[i])
			}
		}
	}
	rs := onTrestles(1982)
	for i := range rs {
		if rs[i].Kind == HingeOnLeaf {
			rs[i].Kind, rs[i].Value = HingeOnJamb, rs[i].Value+8
		}
	}
	res := AdjustFor(rs, nil, &wishedFor)
	if c := res.Chosen; c.Jamb || !c.Leaf {
		t.Errorf("hinges read on the jamb alone: chosen %+v", c)
	}
	if h := res.Gaps().Fit.Gaps[fit.HeadSide].Least; math.Abs(h-2.5) > 0.02 {
		t.Errorf("a new leaf for an old frame: head %.3f", h)
	}
	if res = AdjustFor(nil, nil, &wishedFor); res.Chosen.Any() {
		t.Error("nothing read, and something chosen")
	}
}

// Heights that fall across the opening are the head's or the floor's: the fit halves
// them, says so, and wants a level on the floor.
func TestFallIsHalved(t *testing.T) {
	fallen := func(more ...Reading) *Result {
		rs := onTrestles(1986, more...)
		rs[3].Value -= 8
		return AdjustFor(rs, nil, &wishedFor)
	}
	res := fallen()
	tilt, is := res.Tilt()
	if !is || math.Abs(tilt.Fall-8*768/720.0) > 0.3 || math.Abs(tilt.Head-tilt.Fall/2) > 0.1 {
		t.Errorf("tilt %+v, %v", tilt, is)
	}
	told := false
	for _, a := range res.Assumptions() {
		told = told || a.What == Fall && a.Tilt == tilt
		if a.What == floorLevel {
			t.Errorf("%v, and it was tilted", a)
		}
	}
	if !told {
		t.Error("nothing is said of the fall")
	}
	if a, ok := res.Gaps().Levelled(); !ok || a.Reading.Kind != FloorSlope || !(a.Then < a.Now.Sigma) {
		t.Errorf("next: %+v, %v", a, ok)
	}
	for _, r := range []Reading{{Kind: FloorSlope, From: 50, To: 700}, {Kind: HeadSlope, From: 50, To: 700, Value: -8}} {
		res := fallen(r)
		if tilt, is := res.Tilt(); is {
			t.Errorf("with %s: tilt %+v", r.Kind, tilt)
		}
		if _, ok := res.Gaps().Levelled(); ok {
			t.Errorf("with %s a level is wanted again", r.Kind)
		}
	}
	if _, is := AdjustFor(onTrestles(1986), nil, &wishedFor).Tilt(); is {
		t.Error("heights that agree do not fall")
	}
}
