package trim_test

import (
	"testing"

	"leafwright/geom/door"
	"leafwright/geom/trim"
)

// A move that leans on one that cannot be done is made, and says which: its numbers were
// thought out for what that one would have left. Each row's first move is refused.
func TestLeansOnARefused(t *testing.T) {
	const none = -1
	strip := trim.Move{Kind: trim.Splice, Edge: door.HeadSide, Face: trim.Middle, First: 12, Last: 12, Stock: 40}
	warped := strip
	warped.Hollow = 2
	plane := func(e door.Edge, by float64) trim.Move {
		return trim.Move{Kind: trim.Plane, Edge: e, First: by, Last: by}
	}
	cut := func(e door.Edge, by float64) trim.Move {
		return trim.Move{Kind: trim.Cut, Edge: e, First: by, Last: by}
	}
	deepest := trim.Move{Kind: trim.Sink, Hinge: 1, On: trim.OnLeaf, First: 500}
	for name, row := range map[string]struct {
		moves []trim.Move
		on    []int // for each move the one it leans on
	}{
		"the strip's planing, twice": {[]trim.Move{warped, plane(door.HeadSide, 2), plane(door.HeadSide, 1)}, []int{none, 0, 0}},
		"another edge":               {[]trim.Move{warped, plane(door.LatchSide, 2), plane(door.FloorSide, 2)}, []int{none, none, none}},
		"a better strip":             {[]trim.Move{warped, strip, plane(door.HeadSide, 2)}, []int{none, 0, none}},
		"the strip for a cut":        {[]trim.Move{cut(door.HeadSide, 60), strip}, []int{none, 0}},
		"the offcut of a cut": {[]trim.Move{cut(door.HeadSide, 60), {Kind: trim.Reuse, Edge: door.FloorSide}, plane(door.FloorSide, 1)},
			[]int{none, 0, 1}},
		"a hinge": {[]trim.Move{deepest, {Kind: trim.Shift, Hinge: 1, On: trim.OnLeaf, First: 5}, {Kind: trim.Shift, Hinge: 2, On: trim.OnLeaf, First: 5},
			{Kind: trim.Pack, On: trim.OnBoth, First: 0.5}, {Kind: trim.Sink, Hinge: 1, On: trim.OnJamb, First: 0.5}}, []int{none, 0, none, 0, 0}},
		"nothing, and no such hinge": {[]trim.Move{{Kind: trim.Shift, Hinge: 5, On: trim.OnLeaf, First: 5}, {Kind: trim.Sink, On: trim.OnLeaf, First: 0.5},
			plane(door.HeadSide, 0), plane(door.HeadSide, 1)}, []int{none, none, none, none}},
		"switched off": {[]trim.Move{{Kind: trim.Splice, Edge: door.HeadSide, Face: trim.Middle, First: 12, Last: 12, Stock: 40, Hollow: 2, Off: true},
			plane(door.HeadSide, 2)}, []int{none, none}},
		"a stop follows the leaf": {[]trim.Move{{Kind: trim.Restop, Edge: door.LatchSide, First: 500}, {Kind: trim.Follow, Edge: door.LatchSide, First: 2},
			{Kind: trim.Restop, Edge: door.LatchSide, First: 1, Last: 1}, {Kind: trim.PlaneJamb, Edge: door.LatchSide, First: 1, Last: 1}}, []int{none, none, none, none}},
	} {
		_, steps := trim.All(caseOne(), row.moves)
		if steps[0].Why == nil && !steps[0].Move.Off {
			t.Errorf("%s: the first move is done", name)
		}
		for i, want := range row.on {
			got := none
			for _, c := range steps[i].Done.Cares {
				if c.About == trim.WithoutMove {
					got = c.Member.Index
				}
			}
			if got != want {
				t.Errorf("%s: move %d leans on %d, want %d", name, i, got, want)
			}
		}
	}
}
