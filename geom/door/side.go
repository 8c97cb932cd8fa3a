package door

import "leafwright/geom"

// Line gives the line of an edge of the leaf, and the sign of the way from it into the leaf.
func (l *Leaf) Line(e Edge) (line *geom.Profile, in float64) {
	switch e {
	case HingeSide:
		return &l.Hanging, 1
	case LatchSide:
		return &l.Closing, -1
	case HeadSide:
		return &l.Top, -1
	}
	return &l.Bottom, 1
}

// Ends gives where an edge of the leaf begins and ends, depth d behind the knuckle face, mm:
// heights on the upright edges, distances across on the others.
func (l *Leaf) Ends(e Edge, d float64) geom.Interval {
	c := l.Corners(d)
	switch e {
	case HingeSide:
		return geom.Interval{Lo: c.HangingFoot.Y, Hi: c.HangingHead.Y}
	case LatchSide:
		return geom.Interval{Lo: c.ClosingFoot.Y, Hi: c.ClosingHead.Y}
	case HeadSide:
		return geom.Interval{Lo: c.HangingHead.X, Hi: c.ClosingHead.X}
	}
	return geom.Interval{Lo: c.HangingFoot.X, Hi: c.ClosingFoot.X}
}

// Face gives the frame's face that an edge looks at, nil for the floor, and the sign of the
// way from the opening into the wood.
func (f *Frame) Face(e Edge) (face *geom.Profile, away float64) {
	switch e {
	case HingeSide:
		return &f.HingeJamb, -1
	case LatchSide:
		return &f.LatchJamb, 1
	case HeadSide:
		return &f.Head, 1
	}
	return nil, 0
}

// Stop gives the stop on a side of the frame, nil for the floor.
func (f *Frame) Stop(e Edge) *geom.Profile {
	switch e {
	case HingeSide:
		return &f.HingeStop
	case LatchSide:
		return &f.LatchStop
	case HeadSide:
		return &f.HeadStop
	}
	return nil
}

// Run gives the ends of a side of the frame, mm: a jamb from the floor at the foot of the
// hinge jamb up to the head, the head from jamb to jamb.
func (f *Frame) Run(e Edge) geom.Interval {
	hinge, latch := f.HeadCorners()
	switch e {
	case HingeSide:
		return geom.Interval{Hi: hinge.Y}
	case LatchSide:
		return geom.Interval{Hi: latch.Y}
	}
	return geom.Interval{Lo: hinge.X, Hi: latch.X}
}
