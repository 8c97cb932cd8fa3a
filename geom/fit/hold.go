package fit

import (
	"leafwright/geom"
	"leafwright/geom/door"
)

// Hold is all that the leaf's pose hangs on: the outer two hinges, the top one
// first. Seat is where a hinge takes hold of the leaf, in leaf axes; Bed where it
// holds that place in the world, and Pin its pin's centre there. mm.
type Hold struct{ Seat, Bed, Pin [2]geom.Vec }

// HoldOf gives the hold the outer two of the door's hinges have on its leaf.
func HoldOf(d *door.Door) (h Hold) {
	last := len(d.Hinges) - 1
	for k, i := range [2]int{0, last} {
		h.Seat[k], h.Bed[k], h.Pin[k] = seat(&d.Leaf, d.Hinges[i]), bed(&d.Frame, d.Hinges[i]), Pin(d, i)
	}
	return h
}

// Hang gives the leaf's pose and the pin axis, as Evaluate finds them.
func (h *Hold) Hang() (geom.Motion, geom.Axis) {
	pose := lineUp(h.Seat[1].Sub(h.Seat[0]).Unit(), h.Bed[1].Sub(h.Bed[0]).Unit())
	pose.Origin = h.Bed[0].Sub(pose.Way(h.Seat[0]))
	return pose, geom.Axis{At: h.Pin[0], Down: h.Pin[1].Sub(h.Pin[0]).Unit()}
}

// IsSprung tells whether the place at which the leaf first touches a stop is the
// nearest to the hinges at which one can hold it: it goes where the top pin goes.
func (f *Fit) IsSprung() bool {
	off := f.FirstStopAt - f.Axis.At.X - Springing
	return f.FirstStop == HeadSide && -1e-9 < off && off < 1e-9
}
