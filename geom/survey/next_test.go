package survey

import (
	"math"
	"testing"

	"leafwright/geom/fit"
)

// The reading advised is worth taking, and does what it is said to do: once taken,
// the gap's standard deviation is as foretold.
func TestNextDoesAsForetold(t *testing.T) {
	var ratio, steps float64
	for n := range 12 {
		s := simulate(uint64(n))
		d := s.door()
		rs := s.read(&d, least(whole(&d)))
		for range 5 {
			g := Adjust(rs).Gaps()
			a, ok := g.NextForTightest()
			if !ok {
				break
			}
			if _, u, _ := g.Tightest(); a.Now != u {
				t.Fatalf("advises about %v, the tightest gap is %v", a.Now, u)
			}
			if !(a.Then < (1-worth)*a.Now.Sigma) {
				t.Errorf("not worth taking: %+v", a)
			}
			for _, r := range rs {
				if r.same(&a.Reading, 1) && !a.Again {
					t.Errorf("was taken already: %+v", a.Reading)
				}
			}
			if f := a.Reading.Check("advice"); f != nil && f[0].Path != "advice.value" {
				t.Errorf("no reading anybody could take: %v", f)
			}
			rs = append(rs, s.read(&d, []Reading{a.Reading})...)
			got := Adjust(rs).Gaps().At(a.Edge, a.At).Sigma
			ratio += math.Log(got / a.Then)
			steps++
			if got > 1.25*a.Then || got < 0.8*a.Then {
				t.Errorf("door %d: %s %s: foretold %.3f, came to %.3f, was %.3f", n, a.Reading.Kind, a.Reading.Side, a.Then, got, a.Now.Sigma)
			}
		}
	}
	if steps < 25 {
		t.Errorf("only %.0f readings advised", steps)
	}
	if r := math.Exp(ratio / steps); r > 1.05 || r < 0.95 {
		t.Errorf("standard deviations come to %.3f of what is foretold", r)
	}
}

// By plain reasoning: where all is known but the thickness of the hinges, folded
// shut, that is what the hinge side's gap wants.
func TestNextAsksForWhatIsMissing(t *testing.T) {
	d := square()
	rs := without(whole(&d), HingeClosed)
	for i := range rs {
		rs[i].Value = Expect(&d, rs[i])
	}
	a, ok := Adjust(rs).Gaps().Next(fit.HingeSide, 1756)
	if !ok || a.Reading.Kind != HingeClosed || a.Reading.Hinge != 0 {
		t.Errorf("advises %+v", a)
	}
}

// With the leaf at hand, a feeler in the gap itself beats the tape.
func TestNextTakesTheFeeler(t *testing.T) {
	rs := append(plainLeast(), Reading{Kind: GapRead, Side: Hinge, At: 1000, Value: 2})
	a, ok := Adjust(rs).Gaps().Next(fit.LatchSide, 1000)
	if !ok || a.Reading.Kind != GapRead || a.Reading.Side != Latch {
		t.Errorf("advises %+v", a)
	}
}

// Where all the card asks for was read, the tightest gap is still what the advice is
// for: a reading taken once more.
func TestNextTakesAgain(t *testing.T) {
	advised := 0
	for n := range 12 {
		s := simulate(uint64(n))
		d := s.door()
		res := Adjust(s.read(&d, whole(&d)))
		g := res.Gaps()
		a, ok := g.NextForTightest()
		if !ok {
			continue
		}
		advised++
		e, u, at := g.Tightest()
		if a.Edge != e || a.At != at || a.Now != u {
			t.Errorf("door %d: advises about edge %d, the tightest gap is edge %d's", n, a.Edge, e)
		}
		was := false
		for _, j := range res.Readings {
			was = was || j.same(&a.Reading, 1)
		}
		if was != a.Again {
			t.Errorf("door %d: again %v of a reading taken %v", n, a.Again, was)
		}
	}
	if advised < 8 {
		t.Errorf("%d of 12 whole cards get advice about the tightest gap", advised)
	}
}
