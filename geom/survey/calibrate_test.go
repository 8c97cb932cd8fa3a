package survey

import (
	"math"
	"slices"
	"testing"

	"leafwright/geom/door"
	"leafwright/geom/fit"
)

// whole is the card for the door, with its places in whole millimetres.
func whole(d *door.Door) []Reading {
	return Card(math.Round(d.Frame.LatchJamb.At(1000)), math.Round(d.Frame.Head.At(300)), 2)
}

// least is the card's least set.
func least(card []Reading) []Reading {
	var out []Reading
	for _, r := range card {
		switch r.Kind {
		case OpeningWidth, OpeningHeight, LeafWidth, LeafHeight, LeafThickness:
			if slices.ContainsFunc(out, func(q Reading) bool { return q.Kind == r.Kind }) {
				continue
			}
		case HingeOnLeaf, HingeOnJamb:
		default:
			continue
		}
		out = append(out, r)
	}
	return out
}

func without(card []Reading, kinds ...Kind) []Reading {
	return slices.DeleteFunc(slices.Clone(card), func(r Reading) bool { return slices.Contains(kinds, r.Kind) })
}

// feelers are gaps to read at three places of each edge; where there is none the
// leaf rubs.
func feelers(truth *fit.Fit) (out []Reading) {
	for e := fit.HingeSide; e < fit.Edges; e++ {
		over := truth.Gaps[e].Range()
		for _, part := range []float64{0.05, 0.5, 0.95} {
			r := Reading{Kind: GapRead, Side: SideOf(e), At: math.Round(over.Lo + over.Length()*part)}
			if !(truth.Gaps[e].At(r.At) > 0) {
				r.Kind = Rub
			}
			out = append(out, r)
		}
	}
	return out
}

// tally counts how often the truth was inside what was stated.
type tally struct{ inside, all float64 }

func (c *tally) add(u Uncertain, truth float64) {
	c.all++
	if math.Abs(truth-u.Value) <= u.Margin() {
		c.inside++
	}
}

func (c tally) percent() float64 { return 100 * c.inside / c.all }

// A thousand random openings and leaves, read with random errors: the true gap, at
// a random place of each edge, is inside the stated 90 % interval 87 to 93 times
// out of 100, whether all was read or next to nothing.
func TestTrueGapsLieInStatedIntervals(t *testing.T) {
	for _, row := range []struct {
		situation string
		from, to  int // doors
		card      func([]Reading) []Reading
	}{
		{"everything read", 0, 500, func(c []Reading) []Reading { return c }},
		{"no bow, no wind, no rebate read", 500, 750, func(c []Reading) []Reading {
			return without(c, FrameBow, FrontBow, StileBow, LeafBow, LeafWind, FrameWind, CrossStrings, RebateDepth)
		}},
		{"only the least set", 750, 1000, least},
	} {
		t.Run(row.situation, func(t *testing.T) {
			t.Parallel()
			var gaps, stops tally
			var edges [fit.Edges]tally
			for n := row.from; n < row.to; n++ {
				s := simulate(uint64(n))
				d := s.door()
				res := Adjust(s.read(&d, row.card(whole(&d))))
				g := res.Gaps()
				if g == nil {
					t.Fatalf("door %d: cannot be hung: %v", n, res.Faults)
				}
				var truth fit.Fit
				fit.EvaluateClosed(&truth, &d)
				for e := fit.HingeSide; e < fit.Edges; e++ {
					over := truth.Gaps[e].Range()
					at := over.Lo + over.Length()*s.Float64()
					gaps.add(g.At(e, at), truth.Gaps[e].At(at))
					edges[e].add(g.At(e, at), truth.Gaps[e].At(at))
					if e < fit.FloorSide {
						stops.add(g.Stop(e, at), truth.Stops[e].At(at))
					}
				}
			}
			t.Logf("closed gaps %.1f %% inside, stops %.1f %%, edges %.1f %.1f %.1f %.1f", gaps.percent(), stops.percent(),
				edges[0].percent(), edges[1].percent(), edges[2].percent(), edges[3].percent())
			for what, c := range map[string]tally{"closed gaps": gaps, "stop gaps": stops} {
				if p := c.percent(); p < 87 || p > 93 {
					t.Errorf("%s: %.1f %% of the true ones are inside the stated 90 %%", what, p)
				}
			}
			for e, c := range edges {
				if p := c.percent(); p < 84 || p > 96 { // four standard deviations of 250 doors
					t.Errorf("%s: %.1f %% of the true gaps are inside the stated 90 %%", SideOf(fit.Edge(e)), p)
				}
			}
		})
	}
}

// The least swing clearances and the clear width are stated as honestly.
func TestTrueSwingLiesInStatedIntervals(t *testing.T) {
	t.Parallel()
	var c tally
	for n := range 60 {
		s := simulate(uint64(n))
		d := s.door()
		res := Adjust(s.read(&d, whole(&d)))
		w, ok := res.Swing()
		if !ok {
			t.Fatalf("door %d: cannot be hung: %v", n, res.Faults)
		}
		var truth fit.Fit
		fit.Evaluate(&truth, &d)
		for e := range w.Edges {
			c.add(w.Edges[e], truth.Swing[e].Least)
		}
		c.add(w.ClearWidth, truth.ClearWidth)
		c.add(w.ClearToStop, truth.ClearToStop)
	}
	t.Logf("%.1f %% inside", c.percent())
	if p := c.percent(); p < 82 || p > 98 { // 360 numbers, some of which go together
		t.Errorf("%.1f %% of the true clearances are inside the stated 90 %%", p)
	}
}

// The test of each reading, on jobs where all was read: one sound reading in a
// thousand is accused, as stated, and a slip of 10 mm is named nearly always where
// [Result.Tells] says that readings are redundant enough for it; and where only
// Shows says so it is at least seen.
func TestSlipsOfTenMillimetresAreNamed(t *testing.T) {
	t.Parallel()
	var tested, accused, planted, named, other float64
	var seen, visible float64
	for n := range 1000 {
		s := simulate(uint64(n))
		d := s.door()
		rs := s.read(&d, whole(&d))
		clean := Adjust(rs)
		bad := 0.0
		for _, j := range clean.Readings {
			if j.State != Used || !math.IsInf(j.Shows, 1) {
				tested++
			}
			if j.State != Used {
				bad++
			}
		}
		accused += bad
		if bad > 0 {
			continue
		}
		slip := 10.0
		if s.IntN(2) == 0 {
			slip = -slip
		}
		plant := func(shows func(i int) bool) (State, *Result, int) {
			var can []int
			for i, r := range rs {
				if shows(i) && SpecOf(r.Kind).Allowed.Holds(r.Value+slip) {
					can = append(can, i)
				}
			}
			if len(can) == 0 {
				return Faulty, nil, 0
			}
			i := can[s.IntN(len(can))]
			spoilt := slices.Clone(rs)
			spoilt[i].Value += slip
			res := Adjust(spoilt)
			return res.Readings[i].State, res, i
		}
		tells := clean.Tells()
		if state, res, i := plant(func(i int) bool { return tells[i] <= 10 }); res != nil {
			planted++
			if state == Suspect {
				named++
			}
			for k, j := range res.Readings {
				if k != i && j.State == Suspect {
					other++
				}
			}
		}
		if state, res, _ := plant(func(i int) bool { return clean.Readings[i].Shows <= 10 }); res != nil {
			visible++
			if state == Suspect || state == Doubted {
				seen++
			}
		}
	}
	t.Logf("%.2f %% of %.0f sound readings accused; of %.0f slips %.1f %% named, %.1f %% with another accused; of %.0f, %.1f %% seen",
		100*accused/tested, tested, planted, 100*named/planted, 100*other/planted, visible, 100*seen/visible)
	if p := 100 * accused / tested; p < 0.05 || p > 0.2 {
		t.Errorf("%.2f %% of sound readings are accused, stated 0.1 %%", p)
	}
	if planted < 500 || named < 0.95*planted {
		t.Errorf("%.0f of %.0f slips named, want 95 %%", named, planted)
	}
	if visible < 500 || seen < 0.95*visible {
		t.Errorf("%.0f of %.0f slips seen, want 95 %%", seen, visible)
	}
}

// Gaps read with the leaf offered up sharpen what is known, and the truth stays
// covered.
func TestFeelersSharpen(t *testing.T) {
	t.Parallel()
	var before, after float64
	var c tally
	for n := range 60 {
		s := simulate(uint64(n))
		d := s.door()
		var truth fit.Fit
		fit.EvaluateClosed(&truth, &d)
		rs := s.read(&d, whole(&d))
		g0 := Adjust(rs).Gaps()
		res := Adjust(append(rs, s.read(&d, feelers(&truth))...))
		g := res.Gaps()
		if g == nil {
			t.Fatalf("door %d: cannot be hung: %v", n, res.Faults)
		}
		for e := fit.HingeSide; e < fit.Edges; e++ {
			over := truth.Gaps[e].Range()
			at := over.Lo + over.Length()*s.Float64()
			before += g0.At(e, at).Sigma
			after += g.At(e, at).Sigma
			c.add(g.At(e, at), truth.Gaps[e].At(at))
		}
	}
	t.Logf("standard deviation %.2f mm before, %.2f after; %.1f %% inside", before/c.all, after/c.all, c.percent())
	if after > before/2 {
		t.Errorf("twelve gaps read bring the standard deviation from %.2f to %.2f mm only", before/c.all, after/c.all)
	}
	if p := c.percent(); p < 87 || p > 97 {
		t.Errorf("%.1f %% of the true gaps are inside the stated 90 %%", p)
	}
}
