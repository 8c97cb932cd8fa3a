package survey

import (
	"leafwright/geom/door"
)

// Kind is what a reading is of, in the job file's word.
type Kind string

// Needs are the places a kind of reading needs.
type Needs uint

// The places. A value and, if it differs, a standard deviation are always given.
const (
	NeedSide  Needs = 1 << iota // one of the kind's Sides
	NeedHinge                   // which hinge
	NeedAt                      // a place
	NeedSpan                    // From and To
	NeedAngle                   // a swing angle
	NeedRail                    // which rail
	NoValue                     // the value is nothing but 0
)

// Spec is all there is to know of a kind of reading.
type Spec struct {
	Kind  Kind
	Asks  string // what is measured, for a prompt
	Sign  string // which way is positive, where both occur
	Needs Needs
	Sides []Side
	// Place is where the place and the ends of the span may lie, mm.
	Place      door.Range
	Allowed    door.Range // for the value, mm
	Instrument Instrument // the usual one

	// observe works out what is read; nil for a stile's or rail's size, which no shape says.
	observe func(*observer, *Reading) float64
	hung    bool // read with the leaf hung or offered up: takes a fit to work out
}

// The kinds of reading.
const (
	OpeningWidth    Kind = "opening_width"
	OpeningHeight   Kind = "opening_height"
	OpeningDiagonal Kind = "opening_diagonal"
	JambPlumb       Kind = "jamb_plumb"
	JambPlumbAcross Kind = "jamb_plumb_across"
	FrameBow        Kind = "frame_bow"
	FrontBow        Kind = "front_bow"
	HeadSlope       Kind = "head_slope"
	FloorSlope      Kind = "floor_slope"
	FloorHeight     Kind = "floor_height"
	RebateDepth     Kind = "rebate_depth"
	StopWidth       Kind = "stop_width"
	CrossStrings    Kind = "cross_strings"
	FrameWind       Kind = "frame_wind"

	LeafWidth     Kind = "leaf_width"
	LeafHeight    Kind = "leaf_height"
	LeafDiagonal  Kind = "leaf_diagonal"
	LeafThickness Kind = "leaf_thickness"
	LeafSquare    Kind = "leaf_square"
	LeafBow       Kind = "leaf_bow"
	LeafWind      Kind = "leaf_wind"
	StileBow      Kind = "stile_bow"
	LeafBevel     Kind = "leaf_bevel"

	StileWidth Kind = "stile_width"
	RailHeight Kind = "rail_height"
	RailWidth  Kind = "rail_width"

	HingeOnJamb   Kind = "hinge_on_jamb"
	HingeFromHead Kind = "hinge_from_head"
	HingeOnLeaf   Kind = "hinge_on_leaf"
	HingeFromTop  Kind = "hinge_from_top"
	LeafGain      Kind = "leaf_gain"
	JambGain      Kind = "jamb_gain"
	LeafPacker    Kind = "leaf_packer"
	JambPacker    Kind = "jamb_packer"
	HingeClosed   Kind = "hinge_closed"
	HingePin      Kind = "hinge_pin"
	HingeProud    Kind = "hinge_proud"
	HingePlate    Kind = "hinge_plate"
	LatchHeight   Kind = "latch_height"
	LatchProud    Kind = "latch_proud"

	GapRead Kind = "gap"
	StopGap Kind = "stop_gap"
	Rub     Kind = "rub"
)

var (
	up      = door.Range{Lo: -100, Hi: door.OpeningHeight.Hi} // places up a jamb or a stile
	across  = door.Range{Lo: -100, Hi: door.OpeningWidth.Hi}  // and across
	outward = door.FloorRadius                                // and out over the floor
	either  = door.Range{Lo: -100, Hi: door.OpeningHeight.Hi} // up or across, as the side has it

	jambs    = []Side{Hinge, Latch}
	threes   = []Side{Hinge, Latch, Head}
	fours    = []Side{Hinge, Latch, Head, Floor}
	slants   = []Side{Rising, Falling}
	cornered = []Side{HingeFoot, LatchFoot, HingeHead, LatchHead}

	opening = door.Range{Lo: door.OpeningWidth.Lo, Hi: 4200} // a diagonal, of opening or leaf
	lean    = door.Range{}.Round(door.EdgeOff)
	flat    = door.Range{}.Round(door.FaceOff)
	hollow  = door.Range{}.Round(40)
)

// Kinds is every kind of reading, in the order a card asks for them.
var Kinds = []Spec{
	{OpeningWidth, "width of the opening, jamb to jamb, at a height", "", NeedAt, nil, up, door.OpeningWidth, Tape, openingWidth, false},
	{OpeningHeight, "height of the opening, floor to head, at a distance from the hinge jamb", "", NeedAt, nil, across, door.OpeningHeight, Tape, openingHeight, false},
	{LeafWidth, "width of the leaf on its knuckle face, at a height up the leaf", "", NeedAt, nil, up, door.LeafWidth, Tape, leafWidth, false},
	{LeafHeight, "height of the leaf, at a distance from its hanging edge", "", NeedAt, nil, across, door.LeafHeight, Tape, leafHeight, false},
	{LeafThickness, "thickness of the leaf", "", 0, nil, up, door.LeafThickness, Rule, leafThickness, false},
	{HingeOnLeaf, "height of the hinge's middle above the leaf's foot", "", NeedHinge, nil, up, door.LeafRange(), Tape, hingeField(fieldLeafHeight), false},
	{HingeFromTop, "distance of the hinge's middle below the leaf's top", "", NeedHinge, nil, up, door.LeafRange(), Tape, hingeFromTop, false},
	{HingeOnJamb, "height of the hinge's middle above the floor, on the jamb", "", NeedHinge, nil, up, door.OpeningRange(), Tape, hingeField(fieldJambHeight), false},
	{HingeFromHead, "distance of the hinge's middle below the head, on the jamb", "", NeedHinge, nil, up, door.OpeningRange(), Tape, hingeFromHead, false},

	{OpeningDiagonal, "diagonal of the opening, corner to corner", "", NeedSide, slants, either, opening, Tape, openingDiagonal, false},
	{JambPlumb, "how far a jamb's face is out of plumb, between two heights", "+ when its upper end is farther from the hinge side", NeedSide | NeedSpan, jambs, up, lean, Level, jambPlumb, false},
	{JambPlumbAcross, "how far a jamb's front edge is out of plumb across the wall, between two heights", "+ when its upper end is nearer the knuckle side", NeedSide | NeedSpan, jambs, up, flat, Level, jambPlumbAcross, false},
	{FrameBow, "gap under a straightedge on a jamb's face or the head", "+ when the face is hollow", NeedSide | NeedSpan | NeedAt, threes, either, hollow, Straightedge, frameBow, false},
	{FrontBow, "gap under a straightedge on a front edge of the frame", "+ when the edge is hollow", NeedSide | NeedSpan | NeedAt, threes, either, hollow, Straightedge, frontBow, false},
	{HeadSlope, "how far the head is out of level, between two distances across", "+ when it rises towards the latch side", NeedSpan, nil, across, lean, Level, headSlope, false},
	{FloorSlope, "how far the floor is out of level, between two distances from the hinge jamb's foot, along a swing angle", "+ when it rises away from the hinge", NeedSpan | NeedAngle, nil, outward, lean, Level, floorSlope, false},
	{FloorHeight, "height of the floor over the foot of the hinge jamb, at a distance from it and a swing angle", "+ when it is higher", NeedAt | NeedAngle, nil, outward, door.FloorHeight, Level, floorHeight, false},
	{RebateDepth, "depth of the rebate, front edge to stop", "", NeedSide | NeedAt, threes, either, door.Rebate, Rule, rebateDepth, false},
	{StopWidth, "how far the stop stands in from the frame's face", "", 0, nil, up, door.StopWidth, Rule, scalar(stopWidth), false},
	{CrossStrings, "gap between two strings over the frame's front edges, corner to corner, where they cross", "+ when the one rising to the latch side's head is in front", 0, nil, up, flat, Strings, crossStrings, false},
	{FrameWind, "wind of the frame's front edges by two sticks, over the jambs' width", "+ when the upper stick's latch side is nearer the knuckle side", NeedSpan, nil, up, flat, Sticks, frameWind, false},

	{LeafDiagonal, "diagonal of the leaf, corner to corner", "", NeedSide, slants, either, opening, Tape, leafDiagonal, false},
	{LeafSquare, "how far a corner of the leaf is out of square, 500 mm out along a square's blade", "+ when the corner is more than square", NeedSide, cornered, either, hollow, TrySquare, leafSquare, false},
	{LeafBow, "gap under a straightedge on an edge of the leaf", "+ when the edge is hollow", NeedSide | NeedSpan | NeedAt, fours, either, hollow, Straightedge, leafBow, false},
	{LeafWind, "wind of the leaf by two sticks across it, over its width", "+ when the upper stick's closing end is nearer the knuckle side", NeedSpan, nil, up, flat, Sticks, leafWind, false},
	{StileBow, "gap under a straightedge up a stile, on the knuckle face", "+ when the face is hollow", NeedSide | NeedSpan | NeedAt, jambs, up, hollow, Straightedge, stileBow, false},
	{LeafBevel, "how far an edge's stop-face arris stands back from the knuckle-face one", "", NeedSide, jambs, up, door.Range{Lo: -10, Hi: 20}, Rule, leafBevel, false},

	{StileWidth, "width of a stile, on the knuckle face", "", NeedSide, jambs, up, door.Stile, Rule, nil, false},
	{RailHeight, "height of a rail's lower edge above the leaf's foot", "", NeedRail, nil, up, door.Range{Lo: 0, Hi: door.LeafHeight.Hi}, Tape, nil, false},
	{RailWidth, "width of a rail, on the knuckle face", "", NeedRail, nil, up, door.Stile, Rule, nil, false},

	{LeafGain, "depth of the gain in the leaf", "", NeedHinge, nil, up, door.Gain, Rule, hingeField(fieldLeafGain), false},
	{JambGain, "depth of the gain in the jamb", "", NeedHinge, nil, up, door.Gain, Rule, hingeField(fieldJambGain), false},
	{LeafPacker, "packing under the hinge in the leaf's gain", "", NeedHinge, nil, up, door.Packer, Rule, hingeField(fieldLeafPacker), false},
	{JambPacker, "packing under the hinge in the jamb's gain", "", NeedHinge, nil, up, door.Packer, Rule, hingeField(fieldJambPacker), false},
	{HingeClosed, "thickness of the hinge folded shut, between the screwed faces", "", NeedHinge, nil, up, door.Closed, Rule, hingeField(fieldClosed), false},
	{HingePin, "distance of the pin's centre out from the frame's front edge", "", NeedHinge, nil, up, door.Pin, Rule, hingeField(fieldPin), false},
	{HingeProud, "how far the leaf's knuckle face stands out of the frame's front edge at the hinge", "+ when it stands out", NeedHinge, nil, up, door.Proud, Rule, hingeField(fieldProud), false},
	{HingePlate, "height of the hinge's plates", "", NeedHinge, nil, up, door.HingePlate, Rule, hingeField(fieldHeight), false},
	{LatchHeight, "height of the latch above the leaf's foot", "", 0, nil, up, door.LeafRange(), Tape, scalar(latchHeight), false},
	{LatchProud, "how far the leaf's knuckle face stands out of the frame's front edge at the latch", "+ when it stands out", 0, nil, up, door.Proud, Rule, scalar(latchProud), false},

	{GapRead, "gap between leaf and frame or floor, leaf closed, at a place", "", NeedSide | NeedAt, fours, either, door.Range{Lo: 0, Hi: 100}, Feeler, gapRead, true},
	{StopGap, "gap between leaf and stop, leaf closed, at a place", "", NeedSide | NeedAt, threes, either, door.Range{Lo: 0, Hi: 100}, Feeler, stopGap, true},
	{Rub, "a place where the leaf rubs", "", NeedSide | NeedAt | NoValue, fours, either, door.Range{}, Eye, gapRead, true},
}

var specs = func() map[Kind]*Spec {
	m := make(map[Kind]*Spec, len(Kinds))
	for i := range Kinds {
		m[Kinds[i].Kind] = &Kinds[i]
	}
	return m
}()

// SpecOf gives what there is to know of a kind, nil for an unknown one.
func SpecOf(k Kind) *Spec { return specs[k] }

// Hung tells whether the kind is read of the leaf hung or offered up, which moves
// change.
func (s *Spec) Hung() bool { return s.hung }
