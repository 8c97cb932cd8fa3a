package fault_test

import (
	"flag"
	"testing"

	"leafwright/geom/door"
	"leafwright/geom/fault"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
	"leafwright/geom/trim"
)

var doors = flag.Int("doors", 40, "how many doors of each kind are made, looked at and cured")

// many is how many seeds are tried, fewer where tests are to be short.
func many(n int) int {
	if testing.Short() {
		return max(5, n/10)
	}
	return n
}

// look evaluates a piece and gives what it shows.
func look(t *testing.T, p *trim.Piece) (*fit.Fit, []fault.Symptom) {
	t.Helper()
	if bad := p.Door.Check(); len(bad) > 0 {
		t.Fatal(bad)
	}
	w := fault.Wanted()
	var f fit.Fit
	fit.Evaluate(&f, &p.Door)
	return &f, fault.Symptoms(&f, &p.Door, &w)
}

// wrong gives what is out of limits in a piece, and what it shows.
func wrong(t *testing.T, p *trim.Piece) (out []judge.Finding, shows []fault.Symptom) {
	t.Helper()
	f, shows := look(t, p)
	w := fault.Wanted()
	for _, x := range judge.Verdicts(f, &p.Door, &w) {
		if x.Verdict != judge.Good {
			out = append(out, x)
		}
	}
	return out, shows
}

func TestSoundDoorsAreSound(t *testing.T) {
	makes, hinges := map[door.Make]int{}, map[int]int{}
	for n := range many(1000) {
		old := float64(n%5) / 4
		p := fault.Sound(uint64(n), old)
		if bad := p.Anatomy.Check(&p.Door.Leaf); len(bad) > 0 {
			t.Fatalf("seed %d, old %v: %v", n, old, bad)
		}
		if out, shows := wrong(t, &p); len(out) > 0 || len(shows) > 0 {
			t.Errorf("seed %d, old %v: %+v, shows %+v", n, old, out, shows)
		}
		makes[p.Anatomy.Make]++
		hinges[len(p.Door.Hinges)]++
	}
	if len(makes) != 3 || len(hinges) != 2 {
		t.Errorf("makes %v, hinges %v: want all three, and two or three hinges", makes, hinges)
	}
}

// An old door is out of true where a new one is not: its opening out of square, and its
// leaf cut to it.
func TestOldDoorsAreOutOfTrue(t *testing.T) {
	rack := func(p *trim.Piece) float64 {
		for _, c := range judge.Conditions(&p.Door) {
			if c.Quantity == judge.FrameRack {
				return c.Value
			}
		}
		t.Fatal("no such condition")
		return 0
	}
	var fresh, aged float64
	n := many(200)
	for seed := range n {
		a, b := fault.Sound(uint64(seed), 0), fault.Sound(uint64(seed), 1)
		fresh += rack(&a) / float64(n)
		aged += rack(&b) / float64(n)
	}
	if fresh > 0.01 || aged < 0.5 {
		t.Errorf("openings out of square by %.2f mm new, %.2f old", fresh, aged)
	}
}
