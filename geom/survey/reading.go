package survey

import "leafwright/geom"

// Reading is one thing that was read off the door. Which of the places it needs
// its kind says; the others are 0.
type Reading struct {
	Kind Kind
	Side Side // which jamb, edge, stile, diagonal or corner
	// Hinge is the hinge, 0 the top one.
	Hinge int
	// Rail is the rail, 0 the bottom one.
	Rail int
	// At is the place: a height, or a distance across from the hinge side, mm.
	At float64
	// From and To are the ends of the level, the straightedge or the plumb line, or
	// where the two winding sticks lie: From < To.
	From, To float64
	Angle    geom.Angle // swing angle of a place on the floor
	Value    float64    // mm
	// Sigma is the standard deviation in mm; 0 takes the instrument's.
	Sigma float64
	// After is how many of the moves made for keeps were done when a reading of the
	// hung leaf was taken; 0 = as found. Its place is one of the door as it then was.
	After int
	// Instrument is what it was read with; empty takes the kind's usual one.
	Instrument Instrument
}

// Side tells which of several like things a reading is of. The same four words
// serve the frame and the leaf: its hinge side is the hanging edge, its head the
// top, its floor side the bottom.
type Side string

// The sides of opening and leaf; the two diagonals; the four corners.
const (
	Hinge Side = "hinge"
	Latch Side = "latch"
	Head  Side = "head"
	Floor Side = "floor"

	Rising  Side = "rising"  // from the hinge side's foot to the latch side's head
	Falling Side = "falling" // from the hinge side's head to the latch side's foot

	HingeFoot Side = "hinge_foot"
	LatchFoot Side = "latch_foot"
	HingeHead Side = "hinge_head"
	LatchHead Side = "latch_head"
)

// span gives the length between From and To.
func (r *Reading) span() float64 { return r.To - r.From }

// same tells whether two readings are of one thing at one place, to within d mm.
func (r *Reading) same(q *Reading, d float64) bool {
	near := func(a, b float64) bool { return a-b <= d && b-a <= d }
	return r.Kind == q.Kind && r.Side == q.Side && r.Hinge == q.Hinge && r.Rail == q.Rail && r.After == q.After && near(r.At, q.At) &&
		near(r.From, q.From) && near(r.To, q.To) && near(r.Angle.Degrees(), q.Angle.Degrees())
}
