// Package fit hangs a leaf in its frame and tells what a feeler gauge, a level
// and a slow swing of the leaf would show: the gaps when closed, the clearances
// while it swings, the stops, the floor, the way through.
//
// An edge of the leaf is known by its arris lines: two where it is sharp and reaches
// from face to face, up to four where its arrises are eased ([door.Section] says
// where they lie). Closed gaps, the swing, the floor and the clear way go by whichever
// comes nearest; the gap shown goes by the frontmost. A stop gap is that of the stop
// face, w = s − t, over the places that the edge's rearmost line covers; along an edge
// that stands back from that face it is taken to lie at s − (t − StopBack), since the
// strip there is what meets the stop.
package fit

import (
	"leafwright/geom"
	"leafwright/geom/door"
)

// Edge is one side of the leaf.
type Edge = door.Edge

// The four edges of the leaf, and how many there are.
const (
	HingeSide = door.HingeSide
	LatchSide = door.LatchSide
	HeadSide  = door.HeadSide
	FloorSide = door.FloorSide
	Edges     = door.Edges
)

// Gap is a gap along an edge with the leaf closed, in mm, above 0 clear. Places
// are world y on the upright edges and world x on head and floor.
type Gap struct {
	Curve           // the gap at every place where it exists
	Least, Most     float64
	LeastAt, MostAt float64 // their places
}

// Sweep is the least clearance an edge has through the whole swing.
type Sweep struct {
	Least float64    // mm, below 0 binding
	At    geom.Vec   // where, in the world
	Leaf  geom.Vec   // the same point in leaf axes
	Angle geom.Angle // swing angle, counted from the pose
}

// Fit is a leaf hung in its frame. Evaluate fills it and uses its memory again.
type Fit struct {
	Pose geom.Motion // leaf axes to world, at swing angle 0
	Axis geom.Axis   // the pin axis
	// Strain is how much farther apart the outer hinges are on the leaf than on the jamb.
	Strain float64
	// Closed is the angle at which the leaf comes to rest; LatchAngle is where the
	// latch is home and StopAngle where the leaf first touches a stop.
	Closed, LatchAngle, StopAngle geom.Angle
	// StopBound tells that a stop holds the leaf before the latch is home, and
	// LatchMiss the z distance the latch point still has to go, 0 otherwise.
	StopBound bool
	LatchMiss float64
	// FirstStop is the stop the leaf touches at StopAngle, and FirstStopAt the place.
	FirstStop   Edge
	FirstStopAt float64

	Gaps  [Edges]Gap // closed gaps between the nearest arris line and frame or floor, by Edge
	Shown [Edges]Gap // the same by the frontmost line alone: what the eye sees
	Stops [3]Gap     // leaf's stop face, or its strip's, to stop, in z, by Edge: hinge, latch, head

	Swing [Edges]Sweep // the least clearance of each edge, closed to fully open

	ClearWidth  float64 // least free width beside the leaf at 90°, to the latch jamb
	ClearToStop float64 // the same to the latch stop, which is what regulations mean

	door *door.Door
	work work
}

// Place gives where the leaf's point (u, v, w) is when the leaf stands at the
// swing angle.
func (f *Fit) Place(p geom.Vec, swing geom.Angle) geom.Vec {
	return f.Axis.Turn(f.Pose.Point(p), swing.Turn())
}

// FacePoint gives the leaf's point at (u, v), depth d behind the knuckle face.
func (f *Fit) FacePoint(u, v, d float64) geom.Vec {
	return geom.Vec{X: u, Y: v, Z: f.door.Leaf.Face(u, v) - d}
}

// Pin gives the pin centre of the i-th hinge.
func Pin(d *door.Door, i int) geom.Vec {
	h, f := d.Hinges[i], &d.Frame
	return geom.Vec{
		X: f.HingeJamb.At(h.JambHeight) + h.Closed/2 - (h.JambGain - h.JambPacker),
		Y: h.JambHeight,
		Z: f.HingeFront.At(h.JambHeight) + h.Pin,
	}
}

// OutOfLine gives how far the i-th hinge's pin lies from the pin axis.
func (f *Fit) OutOfLine(i int) float64 { return f.OffLine(i).Len() }

// OffSeat gives how far, in world axes, the i-th hinge's place on the leaf lies from where
// the hinge holds it, the leaf hung by the outer two; [Fit.Unseated] is its length.
func (f *Fit) OffSeat(i int) geom.Vec {
	h := f.door.Hinges[i]
	return f.Pose.Point(seat(&f.door.Leaf, h)).Sub(bed(&f.door.Frame, h))
}

// OffLine gives how far, in world axes, the i-th hinge's pin lies from the pin axis;
// [Fit.OutOfLine] is its length.
func (f *Fit) OffLine(i int) geom.Vec {
	_, out, _ := f.Axis.Split(Pin(f.door, i))
	return out
}

// Unseated gives how far the i-th hinge's place on the leaf lies from where the
// hinge holds it, the leaf hung by the outer two: 0 at the top one, the strain's
// size at the bottom one.
func (f *Fit) Unseated(i int) float64 { return f.OffSeat(i).Len() }
