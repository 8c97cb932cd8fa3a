package trim

import (
	"leafwright/geom"
	"leafwright/geom/door"
)

// Move is one thing to do. Which of its fields count depends on its kind
// ([SpecOf]); the others are zero. Lengths in mm, places along an edge: up from the
// floor of the leaf or the opening (v, y) on upright edges, across from the hinge
// side (u, x) on the others, in the hinges-left frame.
type Move struct {
	Kind Kind
	Off  bool // kept in the list, but not done
	Note string

	// Edge is the leaf's edge, or the side of the frame it looks at: hanging edge
	// or hinge jamb, closing edge or latch jamb, top or head, foot or floor.
	Edge  door.Edge
	Face  Face // the arris, or the face a strip is flush with
	Hinge int  // 1 the top one; 0 all of them
	On    Part

	// From and To are where the move begins and ends along the edge; both 0 is the
	// whole edge. A plane lifted before the edge's end runs out over [RunOut].
	From, To float64
	// First and Last are the amounts at the two ends, straight between: off the
	// edge, on by a strip, up, deeper or out of the plane, as the kind says.
	First, Last float64
	// Line is a scribed line: the amount off at places along the edge, straight
	// between and held beyond.
	Line geom.Profile

	Angle geom.Angle // the edge's bevel from now on

	Stock  float64 // thickness of the strip's stock
	SetIn  float64 // how far a strip stands behind the face it is set from
	Hollow float64 // greatest gap between the two faces to be glued, dry and laid together

	Closed, Plates, Pin float64 // of a new hinge: thickness folded shut, height, pin out of the front edge
	LeafGain, JambGain  float64 // of a new hinge

	Cover float64 // thickness of a floor covering, or height of a threshold
	Wide  float64 // of a threshold, through the wall
}

// Part is what a hinge is moved on.
type Part string

// The parts.
const (
	OnLeaf Part = "leaf"
	OnJamb Part = "jamb"
	OnBoth Part = "both"
)

// Face is a face of the leaf.
type Face string

// The faces; Middle is for a strip that is centred.
const (
	Knuckle Face = "knuckle"
	Stop    Face = "stop"
	Middle  Face = "middle"
)

// RunOut is the length over which a plane leaves the work where it is lifted before
// the edge's end, mm: about the sole before the iron of a bench plane (common
// practice, no published source).
const RunOut = 100.0

// Kerf is what a saw turns to dust, mm (common practice, no published source).
const Kerf = 2.5
