package survey

import (
	"leafwright/geom"
	"leafwright/geom/door"
)

// lineID is one of the profiles that shape leaf and opening. A rebate is the
// depth of a stop behind its front edge.
type lineID int

const (
	hingeJamb lineID = iota
	latchJamb
	head
	hingeFront
	latchFront
	headFront
	hingeRebate
	latchRebate
	headRebate
	hanging
	closing
	top
	bottom
	hangingFace
	closingFace
	lines
)

// profileOf gives the door's profile of a line; a rebate gives its stop.
func profileOf(d *door.Door, id lineID) *geom.Profile {
	f, l := &d.Frame, &d.Leaf
	return [lines]*geom.Profile{
		&f.HingeJamb, &f.LatchJamb, &f.Head,
		&f.HingeFront, &f.LatchFront, &f.HeadFront,
		&f.HingeStop, &f.LatchStop, &f.HeadStop,
		&l.Hanging, &l.Closing, &l.Top, &l.Bottom,
		&l.HangingFace, &l.ClosingFace,
	}[id]
}

// lineSpec says how a line ordinarily runs: what holds it in its place, and how
// far from plumb, level, straight it may be expected where nobody measured. The
// sizes of departures are standard deviations. Frames are set plumb to 1.5 mm/m
// (ift Rosenheim); all else is common practice, no published source.
type lineSpec struct {
	name    string
	upright bool
	ofLeaf  bool
	foot    bool    // the axes pass through its foot or hinge end: 0 there
	top     bool    // and through its other end
	lean    float64 // between its ends, mm per mm
	bow     float64 // at the middle, mm
	fill    float64 // greatest part of its length without a station
	// What it is taken to be where it was not measured.
	leanName, straight, bowName string
}

var lineSpecs = [lines]lineSpec{
	hingeJamb:   {"hinge jamb", true, false, true, false, 1.5e-3, 1.5, 0.4, "plumb in the wall's plane", "plumb", "bow"},
	latchJamb:   {"latch jamb", true, false, false, false, 1.5e-3, 1.5, 0.4, "plumb in the wall's plane", "plumb", "bow"},
	head:        {"head", false, false, false, false, 3e-3, 0.8, 0.4, "level", "level", "bow"},
	hingeFront:  {"hinge jamb's front edge", true, false, true, false, 1.5e-3, 1, 0.4, "plumb across the wall", "plumb", "bow"},
	latchFront:  {"latch jamb's front edge", true, false, true, false, 1.5e-3, 1, 0.4, "plumb across the wall", "plumb", "bow"},
	headFront:   {"head's front edge", false, false, false, false, 0, 0.5, 0.6, "", "", "bow"},
	hingeRebate: {"hinge jamb's rebate", true, false, false, false, 0.4e-3, 0.3, 1, "", "", ""},
	latchRebate: {"latch jamb's rebate", true, false, false, false, 0.4e-3, 0.3, 1, "", "", ""},
	headRebate:  {"head's rebate", false, false, false, false, 1e-3, 0.3, 1, "", "", ""},
	hanging:     {"hanging edge", true, true, true, true, 0, 0.7, 0.4, "", "", "bow"},
	closing:     {"closing edge", true, true, false, false, 0.8e-3, 0.7, 0.4, "taper", "parallel with the hanging edge", "bow"},
	top:         {"top", false, true, false, false, 3e-3, 0.5, 0.4, "squareness", "square", "bow"},
	bottom:      {"bottom", false, true, true, false, 3e-3, 0.5, 0.4, "squareness", "square", "bow"},
	hangingFace: {"hanging stile's face", true, true, true, true, 0, 1, 0.4, "", "", "bow"},
	closingFace: {"closing stile's face", true, true, true, false, 1.5e-3, 1, 0.4, "wind", "out of wind", "bow"},
}

// scalarID is a size that is one number.
type scalarID int

const (
	stopWidth scalarID = iota
	thickness
	hangingTan // of the bevel
	closingTan
	latchHeight
	latchProud
	scalars
)

func scalarOf(d *door.Door, id scalarID) float64 {
	switch id {
	case stopWidth:
		return d.Frame.StopWidth
	case thickness:
		return d.Leaf.Thickness
	case hangingTan:
		return d.Leaf.HangingSetback()
	case closingTan:
		return d.Leaf.ClosingSetback()
	case latchHeight:
		return d.Latch.Height
	}
	return d.Latch.Proud
}

func setScalar(d *door.Door, id scalarID, v float64) {
	switch id {
	case stopWidth:
		d.Frame.StopWidth = v
	case thickness:
		d.Leaf.Thickness = v
	case hangingTan:
		d.Leaf.HangingBevel = geom.Turn{Cos: 1, Sin: v}.Angle()
	case closingTan:
		d.Leaf.ClosingBevel = geom.Turn{Cos: 1, Sin: v}.Angle()
	case latchHeight:
		d.Latch.Height = v
	default:
		d.Latch.Proud = v
	}
}

// field is one of a hinge's numbers.
type field int

const (
	fieldJambHeight field = iota
	fieldLeafHeight
	fieldLeafGain
	fieldJambGain
	fieldLeafPacker
	fieldJambPacker
	fieldClosed
	fieldPin
	fieldProud
	fieldHeight
	fields
)

func fieldOf(h *door.Hinge, f field) *float64 {
	return [fields]*float64{
		&h.JambHeight, &h.LeafHeight, &h.LeafGain, &h.JambGain, &h.LeafPacker,
		&h.JambPacker, &h.Closed, &h.Pin, &h.Proud, &h.Height,
	}[f]
}
