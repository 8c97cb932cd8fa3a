package words

import (
	"math"
	"strconv"

	"leafwright/geom/survey"
)

// Ask says how to take a reading, as one line of a card.
func (s *Speaker) Ask(r survey.Reading) string {
	at, from, to := s.place(r.At), s.place(r.From), s.place(r.To)
	jamb := s.jamb(r.Side)
	span := ", from " + from + " to " + to + " up"
	switch r.Kind {
	case survey.OpeningWidth:
		return "Tape across the opening, jamb to jamb, " + at + " up from the floor."
	case survey.OpeningHeight:
		return "Tape from the floor up to the head, " + at + " from the hinge jamb."
	case survey.OpeningDiagonal:
		return "Tape corner to corner of the opening, " + slant(r.Side) + "."
	case survey.JambPlumb:
		return "Level against the face of the " + jamb + span + ": how far the upper end is off plumb. " + Sign(r.Kind)
	case survey.JambPlumbAcross:
		return "Level against the front edge of the " + jamb + span + ": how far the upper end is off plumb. " + Sign(r.Kind)
	case survey.FrameBow:
		if r.Side == survey.Head {
			return "Straightedge along the head, " + from + " to " + to + " from the hinge jamb: the gap under it at " + at + ". " + Sign(r.Kind)
		}
		return "Straightedge up the face of the " + jamb + span + ": the gap under it at " + at + ". " + Sign(r.Kind)
	case survey.FrontBow:
		if r.Side == survey.Head {
			return "Straightedge along the head's front edge, " + from + " to " + to + " from the hinge jamb: the gap under it at " + at + ". " + Sign(r.Kind)
		}
		return "Straightedge up the front edge of the " + jamb + span + ": the gap under it at " + at + ". " + Sign(r.Kind)
	case survey.HeadSlope:
		return "Level under the head, " + from + " to " + to + " from the hinge jamb: how far it is off level. " + Sign(r.Kind)
	case survey.FloorSlope:
		return "Level on the floor, " + from + " to " + to + " from the hinge jamb's foot, " + s.swung(r) + ": how far it is off level. " + Sign(r.Kind)
	case survey.FloorHeight:
		return "Floor " + at + " from the hinge jamb's foot, " + s.swung(r) + ": how far above the floor at that foot. " + Sign(r.Kind)
	case survey.RebateDepth:
		return "Rule into the " + s.Rebate + " of the " + jamb + ", " + s.along(r.Side, at) + ": front edge to stop."
	case survey.StopWidth:
		return "Rule across the stop: how far it stands in from the frame's face."
	case survey.CrossStrings:
		return "Two strings over the frame's front edges, corner to corner: the gap where they cross. " + Sign(r.Kind)
	case survey.FrameWind:
		return "Sticks across the frame's front edges " + from + " and " + to + " up, sighted over each other: how far they are in wind. " + Sign(r.Kind)

	case survey.LeafWidth:
		return "Tape across the leaf's knuckle face, " + at + " up from its foot."
	case survey.LeafHeight:
		return "Tape up the leaf, " + at + " from its " + s.HangingEdge + "."
	case survey.LeafDiagonal:
		return "Tape corner to corner of the leaf, " + slant(r.Side) + "."
	case survey.LeafThickness:
		return "Rule across the leaf's edge: its thickness."
	case survey.LeafSquare:
		return "Square at the leaf's corner, " + corner(r.Side) + ": how far off 500 mm out along the blade. " + Sign(r.Kind)
	case survey.LeafBow:
		if r.Side == survey.Head || r.Side == survey.Floor {
			return "Straightedge along the leaf's " + endOf(r.Side) + ", " + from + " to " + to + " from the " + s.HangingEdge + ": the gap under it at " + at + ". " + Sign(r.Kind)
		}
		return "Straightedge up the " + s.edgeOf(r.Side) + span + ": the gap under it at " + at + ". " + Sign(r.Kind)
	case survey.LeafWind:
		return "Sticks across the leaf's knuckle face " + from + " and " + to + " up, sighted over each other: how far they are in wind. " + Sign(r.Kind)
	case survey.StileBow:
		return "Straightedge up the " + stile(r.Side) + " stile, on the knuckle face" + span + ": the gap under it at " + at + ". " + Sign(r.Kind)
	case survey.LeafBevel:
		return "Square across the " + s.edgeOf(r.Side) + ": how far the stop-face " + s.Arris + " stands back."
	case survey.StileWidth:
		return "Rule across the " + stile(r.Side) + " stile on the knuckle face: its width."
	case survey.RailHeight:
		return "Tape up the leaf from its foot to the lower edge of the " + s.rail(r.Rail) + "."
	case survey.RailWidth:
		return "Rule up the " + s.rail(r.Rail) + " on the knuckle face, edge to edge: its width."

	case survey.HingeOnJamb:
		return "Tape up the hinge jamb from the floor to the middle of the " + s.hinge(r) + "."
	case survey.HingeFromHead:
		return "Tape down the hinge jamb from the head to the middle of the " + s.hinge(r) + "."
	case survey.HingeOnLeaf:
		return "Tape up the leaf from its foot to the middle of the " + s.hinge(r) + "."
	case survey.HingeFromTop:
		return "Tape down the leaf from its top to the middle of the " + s.hinge(r) + "."
	case survey.LeafGain:
		return "Depth of the " + s.Gain + " in the leaf, " + s.hinge(r) + "."
	case survey.JambGain:
		return "Depth of the " + s.Gain + " in the jamb, " + s.hinge(r) + "."
	case survey.LeafPacker:
		return "Thickness of the " + s.Packer + " behind the hinge in the leaf, " + s.hinge(r) + "; 0 for none."
	case survey.JambPacker:
		return "Thickness of the " + s.Packer + " behind the hinge in the jamb, " + s.hinge(r) + "; 0 for none."
	case survey.HingeClosed:
		return "The " + s.hinge(r) + " folded shut: thickness over both leaves."
	case survey.HingePin:
		return "From the frame's front edge out to the middle of the pin, " + s.hinge(r) + "."
	case survey.HingeProud:
		return "At the " + s.hinge(r) + ": how far the leaf's face stands out of the frame's front edge. " + Sign(r.Kind)
	case survey.HingePlate:
		return "Height of the plates of the " + s.hinge(r) + "."
	case survey.LatchHeight:
		return "Tape up the " + s.ClosingEdge + " from the leaf's foot to the latch."
	case survey.LatchProud:
		return "At the latch: how far the leaf's face stands out of the frame's front edge. " + Sign(r.Kind)

	case survey.GapRead:
		return "Feelers into the gap at the " + s.side(r.Side) + ", " + s.along(r.Side, at) + ", leaf closed."
	case survey.StopGap:
		return "Feelers between leaf and stop at the " + s.side(r.Side) + ", " + s.along(r.Side, at) + ", leaf closed."
	case survey.Rub:
		return "It rubs at the " + s.side(r.Side) + ", " + s.along(r.Side, at) + "."
	}
	return string(r.Kind)
}

// Sign says which way a kind of reading is above 0; "" where only one way occurs.
func Sign(k survey.Kind) string {
	spec := survey.SpecOf(k)
	if spec == nil || len(spec.Sign) < 2 {
		return ""
	}
	return "Above 0" + spec.Sign[1:] + "."
}

// Thing names what a reading is of, place and all, with its article.
func (s *Speaker) Thing(r survey.Reading) string {
	at := s.place(r.At)
	up := " " + at + " up"
	switch r.Kind {
	case survey.OpeningWidth:
		return "the opening's width" + up
	case survey.OpeningHeight:
		return "the opening's height " + at + " from the hinge jamb"
	case survey.OpeningDiagonal:
		return "the opening's diagonal " + slant(r.Side)
	case survey.JambPlumb:
		return "the plumb of the " + s.jamb(r.Side) + "'s face"
	case survey.JambPlumbAcross:
		return "the plumb of the " + s.jamb(r.Side) + "'s front edge"
	case survey.FrameBow:
		return "the bow of the " + s.jamb(r.Side) + s.there(r, at)
	case survey.FrontBow:
		return "the bow of the " + s.jamb(r.Side) + "'s front edge" + s.there(r, at)
	case survey.HeadSlope:
		return "the head's slope"
	case survey.FloorSlope:
		return "the floor's slope " + s.swung(r)
	case survey.FloorHeight:
		return "the floor's height " + at + " out, " + s.swung(r)
	case survey.RebateDepth:
		return "the " + s.Rebate + " of the " + s.jamb(r.Side) + s.there(r, at)
	case survey.StopWidth:
		return "the stop's width"
	case survey.CrossStrings:
		return "the gap between the strings across the frame"
	case survey.FrameWind:
		return "the sticks across the frame"
	case survey.LeafWidth:
		return "the leaf's width" + up
	case survey.LeafHeight:
		return "the leaf's height " + at + " from the " + s.HangingEdge
	case survey.LeafDiagonal:
		return "the leaf's diagonal " + slant(r.Side)
	case survey.LeafThickness:
		return "the leaf's thickness"
	case survey.LeafSquare:
		return "the squareness of the leaf's corner, " + corner(r.Side)
	case survey.LeafBow:
		if r.Side == survey.Head || r.Side == survey.Floor {
			return "the bow of the leaf's " + endOf(r.Side)
		}
		return "the bow of the " + s.edgeOf(r.Side) + up
	case survey.LeafWind:
		return "the sticks across the leaf"
	case survey.StileBow:
		return "the bow of the " + stile(r.Side) + " stile" + up
	case survey.LeafBevel:
		return "the bevel of the " + s.edgeOf(r.Side)
	case survey.StileWidth:
		return "the " + stile(r.Side) + " stile's width"
	case survey.RailHeight:
		return "the height of the " + s.rail(r.Rail) + "'s lower edge"
	case survey.RailWidth:
		return "the " + s.rail(r.Rail) + "'s width"
	case survey.HingeOnJamb:
		return "the " + s.hinge(r) + "'s height on the jamb"
	case survey.HingeFromHead:
		return "the " + s.hinge(r) + "'s distance from the head"
	case survey.HingeOnLeaf:
		return "the " + s.hinge(r) + "'s height on the leaf"
	case survey.HingeFromTop:
		return "the " + s.hinge(r) + "'s distance from the leaf's top"
	case survey.LeafGain:
		return "the " + s.Gain + " in the leaf, " + s.hinge(r)
	case survey.JambGain:
		return "the " + s.Gain + " in the jamb, " + s.hinge(r)
	case survey.LeafPacker:
		return "the " + s.Packer + " in the leaf, " + s.hinge(r)
	case survey.JambPacker:
		return "the " + s.Packer + " in the jamb, " + s.hinge(r)
	case survey.HingeClosed:
		return "the thickness of the " + s.hinge(r) + " folded shut"
	case survey.HingePin:
		return "the pin of the " + s.hinge(r)
	case survey.HingeProud:
		return "the leaf's stand at the " + s.hinge(r)
	case survey.HingePlate:
		return "the height of the " + s.hinge(r) + "'s plates"
	case survey.LatchHeight:
		return "the latch's height"
	case survey.LatchProud:
		return "the leaf's stand at the latch"
	case survey.GapRead:
		return "the gap read at the " + s.side(r.Side) + ", " + s.along(r.Side, at)
	case survey.StopGap:
		return "the gap read to the stop at the " + s.side(r.Side) + ", " + s.along(r.Side, at)
	case survey.Rub:
		return "the rubbing at the " + s.side(r.Side) + ", " + s.along(r.Side, at)
	}
	return string(r.Kind)
}

// along says a place on a side.
func (s *Speaker) along(side survey.Side, at string) string {
	if side == survey.Head || side == survey.Floor {
		return at + " from the hinge jamb"
	}
	return at + " up"
}

// there says it behind a thing's name, without the side.
func (s *Speaker) there(r survey.Reading, at string) string { return ", " + s.along(r.Side, at) }

func (s *Speaker) jamb(side survey.Side) string {
	switch side {
	case survey.Latch:
		return "latch jamb"
	case survey.Head:
		return "head"
	}
	return "hinge jamb"
}

func (s *Speaker) side(side survey.Side) string {
	switch side {
	case survey.Latch:
		return s.LatchSide
	case survey.Head:
		return "head"
	case survey.Floor:
		return "floor"
	}
	return "hinge side"
}

func (s *Speaker) edgeOf(side survey.Side) string {
	if side == survey.Latch {
		return s.ClosingEdge
	}
	return s.HangingEdge
}

func stile(side survey.Side) string {
	if side == survey.Latch {
		return "closing"
	}
	return "hanging"
}

func endOf(side survey.Side) string {
	if side == survey.Head {
		return "top"
	}
	return "foot"
}

func slant(side survey.Side) string {
	if side == survey.Falling {
		return "from the hinge side's top to the latch side's foot"
	}
	return "from the hinge side's foot to the latch side's top"
}

func corner(side survey.Side) string {
	switch side {
	case survey.LatchFoot:
		return "latch side at the foot"
	case survey.HingeHead:
		return "hinge side at the top"
	case survey.LatchHead:
		return "latch side at the top"
	}
	return "hinge side at the foot"
}

// hinge names a reading's hinge.
func (s *Speaker) hinge(r survey.Reading) string {
	switch {
	case r.Hinge == 0:
		return "top hinge"
	case r.Hinge == s.Hinges-1:
		return "bottom hinge"
	case s.Hinges == 3:
		return "middle hinge"
	}
	return "hinge " + strconv.Itoa(r.Hinge+1) + " from the top"
}

// swung says the swing angle of a place on the floor.
func (s *Speaker) swung(r survey.Reading) string {
	switch deg := math.Round(r.Angle.Degrees()); deg {
	case 0:
		return "in the opening"
	case 90:
		return "square out of the opening"
	default:
		return "swung out " + strconv.FormatFloat(deg, 'f', -1, 64) + "°"
	}
}
