package survey

import (
	"math"
	"slices"
	"testing"

	"leafwright/geom/door"
	"leafwright/geom/fit"
)

// changes are what may be done to a door before its gaps are asked for. Of the last,
// what was read no longer tells where the thing is.
var changes = []struct {
	name     string
	change   Change
	unlevers bool
}{
	{name: "as found"},
	{name: "planed, packed and its stop moved", change: func(d door.Door) door.Door {
		d = d.Clone()
		d.Leaf.Closing = d.Leaf.Closing.Shift(-3)
		d.Leaf.Top = d.Leaf.Top.Shift(-2)
		d.Leaf.Hanging = d.Leaf.Hanging.Shift(1)
		d.Frame.LatchStop = d.Frame.LatchStop.Shift(-1)
		d.Hinges[0].LeafPacker += 1
		d.Hinges[len(d.Hinges)-1].JambHeight += 2
		d.Hinges[len(d.Hinges)-1].LeafHeight += 2
		return d
	}},
	{name: "arrises eased, a strip that stands back", change: func(d door.Door) door.Door {
		d = d.Clone()
		d.Leaf.Sections[door.LatchSide] = door.Section{KnuckleEase: 2, StopEase: 1}
		d.Leaf.Sections[door.HeadSide] = door.Section{StopBack: 5, KnuckleBack: 1}
		return d
	}},
	{name: "a steeper bevel", change: func(d door.Door) door.Door {
		d.Leaf.ClosingBevel += 0.03
		return d
	}},
	{name: "other hinges", unlevers: true, change: func(d door.Door) door.Door {
		d = d.Clone()
		for i := range d.Hinges {
			h := &d.Hinges[i]
			h.Closed, h.LeafGain, h.JambGain, h.LeafPacker, h.JambPacker = 8, 2, 3, 0, 0
		}
		return d
	}},
}

// How well gaps are known by levers, against hanging every draw: of random doors read
// in full, with a feeler too, or by no more than the least set; whose leaf rests on the
// latch or on a stop; and after moves. Where levers do not tell the truth it is noticed.
func TestLeversAgainstHangingEveryDraw(t *testing.T) {
	t.Parallel()
	const near, part, latch = 0.05, 0.02, 0.1 // of the latch: it may miss or not, and that bends most
	worst, of, rests := 0.0, 0.0, map[bool]int{}
	for seed := range uint64(48) {
		s := simulate(seed)
		d := s.door()
		card := whole(&d)
		if seed%4 == 1 {
			card = least(card)
		}
		rs := s.read(&d, card)
		for i := range rs {
			if rs[i].Kind == RebateDepth && seed%3 == 0 { // the stops stand forward and hold the leaf
				rs[i].Value -= 4
			}
		}
		if seed%4 == 2 {
			var truth fit.Fit
			fit.EvaluateClosed(&truth, &d)
			rs = append(rs, s.read(&d, feelers(&truth))...)
		}
		res := Adjust(rs)
		if !res.Hangs {
			t.Fatalf("door %d: %v", seed, res.Faults)
		}
		for _, row := range changes {
			g := res.GapsOf(row.change)
			if g == nil {
				continue
			}
			rests[g.Fit.StopBound]++
			if (g.levers == nil) != row.unlevers {
				if row.unlevers {
					t.Errorf("door %d, %s: levers pass for true", seed, row.name)
				} else {
					t.Logf("door %d, %s: every draw was hung", seed, row.name)
				}
			}
			if g.levers == nil {
				continue
			}
			byLevers := slices.Clone(g.off)
			strain, miss := g.Strain, g.LatchMiss
			g.byHanging()
			for i := range g.off {
				got, want := length(byLevers[i]), length(g.off[i])
				part := part
				if i == len(g.off)-1 {
					part = latch
				}
				if off := math.Abs(got - want); off > near && off > part*want {
					t.Errorf("door %d, %s: number %d of %d is known to %.3f by levers, to %.3f by hanging", seed, row.name, i, len(g.off), got, want)
				} else if off > worst {
					worst, of = off, want
				}
			}
			if strain.Value != g.Strain.Value || math.Abs(miss.Value-g.LatchMiss.Value) > 1e-9 {
				t.Errorf("door %d, %s: strain %v and %v, the latch misses by %v and %v", seed, row.name, strain, g.Strain, miss, g.LatchMiss)
			}
		}
	}
	t.Logf("worst off %.3f mm of %.3f; rests %v", worst, of, rests)
	if rests[true] < 20 || rests[false] < 20 {
		t.Errorf("of the doors %v rest on a stop", rests)
	}
}
