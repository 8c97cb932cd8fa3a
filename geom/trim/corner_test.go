package trim_test

import (
	"testing"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/trim"
)

// A rail ends where the leaf does. Where top and foot slope, planing an upright edge
// moves the corner the rail ended at, and planing them to a taper finds it from another
// line: neither is a reason to refuse the work.
func TestRailsFollowTheCorners(t *testing.T) {
	for slope := -6.0; slope <= 6; slope += 0.7 {
		p := trim.Piece{Door: door.Door{
			Leaf: door.Rectangle(756, 1981, 40), Frame: door.Square(762, 1990, 42, 12), Latch: door.Latch{Height: 1000}, Opens: 90 * geom.Degree, Floor: door.FlatFloor(0),
		}, Anatomy: door.Ordinary(door.Framed, 756, 1981)}
		for _, v := range []float64{1780, 250} {
			p.Door.Hinges = append(p.Door.Hinges, door.Hinge{LeafHeight: v, JambHeight: v + 6, Closed: 6, LeafGain: 1.5, JambGain: 1.5, Pin: 5, Height: 75})
		}
		p.Door.Leaf.Top = geom.Through(101, 1981-slope/3, 607, 1981+slope)
		p.Door.Leaf.Bottom = geom.Through(103, slope/7, 599, -slope)
		c, r := p.Door.Leaf.Corners(0), p.Anatomy.Rails
		r[len(r)-1].To, r[0].From = max(c.HangingHead.Y, c.ClosingHead.Y), min(c.HangingFoot.Y, c.ClosingFoot.Y)
		for _, m := range []trim.Move{
			{Kind: trim.Plane, Edge: door.LatchSide, First: 1.3, Last: 2.9},
			{Kind: trim.Plane, Edge: door.HeadSide, First: 0.7, Last: 3.1},
			{Kind: trim.Plane, Edge: door.HingeSide, First: 0.6, Last: 0.6},
			{Kind: trim.Plane, Edge: door.FloorSide, First: 2.3, Last: 0.9},
			{Kind: trim.Bevel, Edge: door.LatchSide, Angle: 3 * geom.Degree},
			{Kind: trim.Plane, Edge: door.LatchSide, First: 0.7, Last: 0.3},
		} {
			q, _, why := trim.Do(p, m)
			if why != nil {
				t.Fatalf("slope %v, %s of edge %d is refused: %+v", slope, m.Kind, m.Edge, why)
			}
			p = q
		}
	}
}
