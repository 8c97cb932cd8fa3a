package fault_test

import (
	"testing"

	"leafwright/geom/advise"
	"leafwright/geom/fault"
	"leafwright/geom/fit"
	"leafwright/geom/trim"
)

// TestAdviceSolvesThem expects package advise to find a way for each fault alone, and for
// mixed ones in 98 doors of 100; -doors 1000 -v gives the rates. A door that swings by itself is within its gaps: there it may say that nothing is
// wrong.
func TestAdviceSolvesThem(t *testing.T) {
	n := many(max(10, *doors/4))
	solve := func(seed uint64, of []fault.Kind, mixed int) (tried, solved bool, told []fault.Kind) {
		hard := float64(seed%4) / 3
		sound := fault.Sound(seed, float64(seed%5)/4)
		if mixed > 0 {
			of = fault.Mix(sound, of, mixed, seed, hard)
		}
		p, made := fault.Make(sound, of, seed, hard)
		if len(made) == 0 {
			return false, false, nil
		}
		w := fault.Wanted()
		a := advise.Plans(&advise.Problem{Piece: p, Wanted: w})
		return true, a.Good || len(a.Plans) > 0, of
	}
	for _, k := range kinds {
		tried, unsolved := 0, 0
		for i := range n {
			was, ok, _ := solve(uint64(i), []fault.Kind{k}, 0)
			if was {
				tried++
			}
			if was && !ok {
				unsolved++
				t.Logf("%s, seed %d: no way found", k, i)
			}
		}
		t.Logf("%s: %d of %d without a way", k, unsolved, tried)
		if unsolved > tried/100 {
			t.Errorf("%s: %d of %d without a way", k, unsolved, tried)
		}
	}
	for mixed := 2; mixed <= 3; mixed++ {
		tried, unsolved := 0, 0
		for i := range 2 * n {
			if was, ok, of := solve(uint64(5000+i), nil, mixed); was {
				tried++
				if !ok {
					unsolved++
					t.Logf("%v, seed %d: no way found", of, 5000+i)
				}
			}
		}
		t.Logf("%d at once: %d of %d without a way", mixed, unsolved, tried)
		if unsolved > max(1, tried/50) {
			t.Errorf("%d at once: %d of %d without a way", mixed, unsolved, tried)
		}
	}
}

// Of a hinge whose screws are proud the gaps can be put right by its gain, and the hinge
// still does not fold: what shows is not over with the gaps.
func TestGapsAreNotAll(t *testing.T) {
	w := fault.Wanted()
	p, _ := fault.Make(fault.Sound(1, 0.2), []fault.Kind{fault.ScrewsProud}, 1, 0)
	a := advise.Plans(&advise.Problem{Piece: p, Wanted: w})
	if len(a.Plans) == 0 {
		t.Fatal("no way found")
	}
	is, _ := trim.All(p, a.Plans[0].Moves)
	var f fit.Fit
	fit.Evaluate(&f, &is.Door)
	s := seen{shows: fault.Symptoms(&f, &is.Door, &w)}
	if !s.any(fault.HingeOpen) || s.any(fault.Rubs) {
		t.Errorf("shows %+v", s.shows)
	}
}
