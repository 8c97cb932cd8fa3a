package trim

import (
	"leafwright/geom/door"
)

// Care is why a move cannot be done, or what is to be minded when it is.
type Care struct {
	About  About
	Member Member
	Left   float64 // mm that remain, where that is the matter
	Need   float64 // mm that ought to
	// Faults are what is wrong with the move's numbers, or with the door it would make.
	Faults []door.Fault
}

// Member is a part of leaf or frame that a move can come to.
type Member struct {
	Part  MemberPart
	Edge  door.Edge // of a stile, a stop, a jamb, an arris
	Index int       // of a rail (from the foot up) or a hinge (from the top down)
}

// MemberPart is a kind of member.
type MemberPart uint8

// The kinds of member.
const (
	NoMember MemberPart = iota
	Stile
	Rail
	Haunch   // of the rail's tenon
	Tenon    // of the rail
	Wedge    // of the rail's tenon, and its seat
	LockCase // and its forend
	HingeSeat
	GlassEdge
	Strip
	Jamb
	StopMember
)

// About is what a care is about.
type About uint8

// What cares are about. Those before [Minded] forbid the move.
const (
	Nothing    About = iota
	Numbers          // out of range: Faults say which
	DoorSpoilt       // the door it would make cannot be hung or measured: Faults
	Rated            // a rated or labelled leaf takes no trimming
	NotThere         // no such hinge, or edge of that kind
	OffTheLeaf       // the line lies outside the leaf: nothing to take off
	IntoTenon        // into a tenon
	IntoWedge        // into a wedge's seat
	IntoLock         // into the lock's case
	IntoHinge        // through a hinge's plates
	IntoGlass        // into the glass or its rebate
	TooLittle        // too little is left of the member
	Crooked          // the faces to be glued do not meet
	TooThin          // the stock or the offcut is too thin or too low
	NoOffcut         // nothing to use again
	WrongGrain       // the offcut's grain runs across the strip
	NoAmount         // its amounts are nothing: it changes nothing
	NoPacker         // no packing to take out
	SoAlready        // the edge is bevelled or the arris eased like that already

	Minded        // not a care: those after it are only to be minded
	IntoHaunch    // the haunch is cut: the joint is weaker
	Slender       // less is left of the member than is usual
	LockDeeper    // the lock is to be let in deeper, and its keep moved
	GainShallow   // planing leaves the hinge's gain shallower: it is recut or the gap grows
	HingeOnStrip  // a hinge or the lock stands on a strip
	StripThin     // the strip stands back from a face, or is lower than is easily worked
	RatedSet      // hinges, stops or jambs of a rated set: the label covers them too
	EndGrainGlued // a strip across stile ends meets end grain: dowels must hold it
	PackerOut     // packing is taken out before anything is cut
	HingeOnTenon  // a hinge's screws go into the end grain of a tenon
	KeepOff       // the leaf, and the latch with it, hangs higher (Left above 0) or lower than its keep
	SolidStop     // the stop is worked out of the solid: it is planed back or packed out, and not moved
	WithoutMove   // the list's Member.Index-th move, from 0, is refused, and this one leans on it
	HingeSet      // the leaf stands Left farther out of its plane at the hinge: latch, keep and stops follow
)

// Forbids tells whether the care is a reason not to do the move.
func (a About) Forbids() bool { return a < Minded }
