package trim

import "leafwright/geom/door"

// Kind is what is done, in the job file's word.
type Kind string

// The kinds of move.
const (
	Plane     Kind = "plane"     // an edge of the leaf: even, tapered, or between two places
	Scribe    Kind = "scribe"    // an edge of the leaf to a scribed line
	Cut       Kind = "cut"       // top or foot sawn to a straight line; leaves an offcut
	Undercut  Kind = "undercut"  // the foot cut and a floor covering laid under it
	Bevel     Kind = "bevel"     // hanging or closing edge planed to an angle
	Ease      Kind = "ease"      // an arris taken off at 45°
	Splice    Kind = "splice"    // a strip glued to an edge
	Reuse     Kind = "reuse"     // the last offcut glued to the other end as a strip
	Shift     Kind = "shift"     // a hinge up or down, on leaf, jamb or both
	Raise     Kind = "raise"     // the whole leaf up or down on its hinges
	Sink      Kind = "sink"      // a gain deeper
	Pack      Kind = "pack"      // a packer behind a hinge
	Set       Kind = "set"       // a hinge out of the plane or into it
	Rehinge   Kind = "rehinge"   // other hinges
	PlaneJamb Kind = "planejamb" // jamb or head planed
	PackJamb  Kind = "packjamb"  // jamb or head packed out into the opening
	Restop    Kind = "restop"    // a stop moved, parallel or tapered
	Follow    Kind = "follow"    // a stop planted anew to follow the closed leaf
	Threshold Kind = "threshold" // let in under the closed leaf
)

// Needs are the fields of a move that count for a kind.
type Needs uint32

// The fields.
const (
	NeedEdge Needs = 1 << iota
	NeedFace
	NeedHinge
	NeedOn
	NeedSpan // From and To
	NeedFirst
	NeedLast
	NeedLine
	NeedAngle
	NeedStock // Stock and SetIn
	NeedHollow
	NeedHinges // Closed, Plates, Pin, LeafGain, JambGain
	NeedCover
	NeedWide
)

// Trade is whose work a move is: what is worked on.
type Trade uint8

// What is worked on.
const (
	TheLeaf Trade = iota
	TheHinges
	TheFrame
)

// Spec is all there is to know of a kind of move.
type Spec struct {
	Kind   Kind
	Trade  Trade
	Needs  Needs
	Edges  []door.Edge // the edges it may be done on, where it needs one
	Amount door.Range  // of First and Last
	// TakesOff tells that timber comes off the leaf or is glued to it, which a rated
	// leaf does not bear.
	TakesOff bool
}
