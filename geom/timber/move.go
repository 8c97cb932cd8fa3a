package timber

import "leafwright/geom/door"

// Sawn is how a board was cut from the log.
type Sawn uint8

// The ways.
const (
	AnyWay  Sawn = iota // neither, or not known
	Quarter             // on the quarter: the growth rings stand across the board, which moves radially
	Flat                // flat-sawn: the rings lie along the face, which moves tangentially
)

// Coefficient gives the change of width per % of moisture, as a part of the width.
// A board sawn neither way moves between the two; the middle is taken.
func (s *Species) Coefficient(sawn Sawn) float64 {
	switch sawn {
	case Quarter:
		return s.Radial
	case Flat:
		return s.Tangential
	}
	return (s.Radial + s.Tangential) / 2
}

// Coefficient gives the change of width per % of moisture of a timber that shrinks by
// shrinkage % of its green width from green to ovendry, shrinking from the moisture
// start, %: 30 for most timbers, 22 for redwood, western redcedar and mahogany. This is
// what the Wood Handbook's Table 13-5 is made of (worked back from it; it gives the
// softwoods to the last printed digit).
func Coefficient(shrinkage, start float64) float64 {
	s := held(shrinkage, 0.1, 25)
	f := held(start, 10, 40)
	return 1 / (float64(100*f)/s - f + 10)
}

// Trusted is the moisture, %, between which a coefficient is published for: Wood
// Handbook ch. 13. Beyond it the change is a guess, and above [Saturated] there is none.
var Trusted = door.Range{Lo: 6, Hi: 14}

// Saturated is the moisture, %, at which the fibres hold all they can; wetter wood moves
// no more (Wood Handbook: 30 in Eq. 13-3).
const Saturated = 30.0

// Change gives how much wider, mm, wood so wide gets from one moisture to another, %;
// below 0 it shrinks. Wood Handbook (FPL-GTR-190) Eq. 13-2, carried on straight outside
// [Trusted] up to [Saturated].
func Change(width, coefficient, from, to float64) float64 {
	by := held(to, 0, Saturated) - held(from, 0, Saturated)
	return float64(float64(held(width, 0, 1e5)*held(coefficient, 0, 0.01))*by) + 0 // no negative zero
}

// ChangeGreen gives the same from the shrinkage from green to ovendry, %, and holds
// outside [Trusted] too: Wood Handbook Eq. 13-3 (from memory), for timbers that shrink
// from 30 %.
func ChangeGreen(width, shrinkage, from, to float64) float64 {
	f := held(from, 0, Saturated)
	by := held(to, 0, Saturated) - f
	return float64(held(width, 0, 1e5)*by) / (3000/held(shrinkage, 0.1, 25) - 30 + f)
}

// Moving is how much of a leaf moves with the seasons, mm.
type Moving struct {
	// Across is the width of timber across the grain from hanging edge to closing edge.
	Across float64
	// Up is the same from foot to top: none in any make of leaf, for timber moves along
	// its grain by a twentieth of that, 0.1 to 0.2 % from green to ovendry (Wood
	// Handbook p. 4-5), and the uprights hold the height.
	Up float64
}

// MovingOf gives how much of the leaf moves at mid height. A framed leaf moves by its two
// stiles, and the strips on them, since rails hold it along their grain and panels
// float; a boarded leaf by its full width; a flush one by nothing worth counting, its
// faces being glued crosswise.
func MovingOf(l *door.Leaf, a *door.Anatomy) Moving {
	c := l.Corners(0)
	mid := (c.HangingFoot.Y + c.HangingHead.Y) / 2
	hanging, closing := l.Hanging.At(mid), l.Closing.At(mid)
	switch a.Make {
	case door.Framed:
		left, right := a.Inner(l)
		return Moving{Across: held(left-hanging, 0, 1e4) + held(closing-right, 0, 1e4)}
	case door.Boarded:
		return Moving{Across: held(closing-hanging, 0, 1e4)}
	}
	return Moving{}
}
