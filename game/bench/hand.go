package bench

import (
	"math"

	"leafwright/game/draw"
	"leafwright/geom"
	"leafwright/geom/fit"
)

// hold is what the pointer has taken hold of, and how far from its middle; and the
// tool in hand.
type hold struct {
	kind   draw.TargetKind
	offset float64 // degrees of swing, or mm of height
	hands
}

// Press takes hold of what lies under the pointer.
func (s *State) Press(p draw.Pt) {
	if s.hold.trying { // by keys: what is drawn must be the leaf as it is
		s.take(s.hold.mark, s.hold.stays)
	}
	if s.working() {
		s.face()
	}
	scene := s.current()
	t := scene.Hit(p)
	s.hold.kind, s.hold.offset, s.under, s.finger = t.Kind, 0, t, p
	s.looks++
	if s.working() && s.pressTool(t, p) {
		return
	}
	switch t.Kind {
	case draw.SwingHandle, draw.PlanLeaf:
		s.hold.offset = s.Swing() - scene.SwingAt(p).Degrees()
	case draw.SectionLine:
		s.hold.offset = s.Section() - scene.SectionAt(p)
	case draw.GapEdge:
		s.SetReading(Reading{On: true, Edge: t.Edge, Place: t.Place})
	default:
		r := s.look.Reading
		r.On = false
		s.SetReading(r)
	}
}

// Move follows the pointer: what is held goes along; with nothing held, what
// could be taken is marked.
func (s *State) Move(p draw.Pt) {
	if s.hold.pressed {
		s.moveTool(p)
		return
	}
	scene := s.current()
	switch s.hold.kind {
	case draw.SwingHandle, draw.PlanLeaf:
		s.SetSwing(scene.SwingAt(p).Degrees() + s.hold.offset)
	case draw.SectionLine:
		s.SetSection(scene.SectionAt(p) + s.hold.offset)
	case draw.GapEdge:
		s.finger = p
		if e, place, near := scene.LensAt(p); near {
			s.SetReading(Reading{On: true, Edge: e, Place: place})
		}
	default:
		s.hover(scene.Hit(p))
	}
}

// hover marks what lies under a pointer that holds nothing.
func (s *State) hover(t draw.Target) {
	if s.working() {
		s.hoverTool(t)
	}
	switch t.Kind { // an edge shows itself by the loupe, once pressed, or by the tool
	case draw.GapEdge, draw.LeafEdge, draw.HingeBody, draw.CutEnd:
		t = draw.Target{Kind: t.Kind, Edge: t.Edge}
	}
	if t != s.under {
		s.under = t
		s.looks++
	}
}

// Release lets go, and makes the move that the tool in hand was tried at. The loupe
// stays where it was put.
func (s *State) Release() {
	if s.hold.pressed {
		s.releaseTool()
	}
	s.letGo()
}

// Cancel lets go, the move that was tried not made.
func (s *State) Cancel() {
	if s.hold.pressed {
		s.drop()
	}
	s.letGo()
}

func (s *State) letGo() {
	if s.hold.kind != draw.Nothing {
		s.hold.kind, s.hold.offset, s.finger = draw.Nothing, 0, draw.Pt{}
		s.looks++
	}
}

// Leave tells that the pointer has left the drawing.
func (s *State) Leave() {
	if s.hold.kind == draw.Nothing {
		s.hover(draw.Target{})
	}
}

// Cursor names the pointer's shape, as style sheets do.
func (s *State) Cursor() string {
	kind := s.under.Kind
	if s.hold.kind != draw.Nothing {
		kind = s.hold.kind
	}
	switch kind {
	case draw.SwingHandle, draw.PlanLeaf:
		if s.hold.kind != draw.Nothing {
			return "grabbing"
		}
		return "grab"
	case draw.SectionLine:
		return "ns-resize"
	case draw.GapEdge:
		return "crosshair"
	case draw.LeafEdge:
		if s.Tool() == PlaneTool {
			return "none" // the plane itself is the pointer
		}
		if s.under.Edge.Upright() {
			return "ew-resize"
		}
		return "ns-resize"
	case draw.HingeBody, draw.CutEnd:
		return "ns-resize"
	}
	return "default"
}

// Steps of the keys: the swing in degrees, the cut in mm; with shift held, fine.
const (
	swingStep, swingFine     = 2, 0.1
	sectionStep, sectionFine = 20, 1
)

// Key does what a key does on the drawing and tells whether it did anything.
func (s *State) Key(key string, fine bool) bool {
	swing, section := float64(swingStep), float64(sectionStep)
	if fine {
		swing, section = swingFine, sectionFine
	}
	if s.keyTool(key, fine) {
		return true
	}
	before := s.looks
	lo, hi := s.SwingRange()
	switch key {
	case "ArrowRight":
		s.SetSwing(s.Swing() + swing)
	case "ArrowLeft":
		s.SetSwing(s.Swing() - swing)
	case "Home":
		s.SetSwing(lo)
	case "End":
		s.SetSwing(hi)
	case "ArrowUp":
		s.SetSection(s.Section() + section)
	case "ArrowDown":
		s.SetSection(s.Section() - section)
	case "PageUp":
		s.SetSection(s.Section() + 10*section)
	case "PageDown":
		s.SetSection(s.Section() - 10*section)
	case "+":
		s.Zoom(1)
	case "-":
		s.Zoom(-1)
	case "Escape":
		r := s.look.Reading
		r.On = false
		s.SetReading(r)
	}
	return s.looks != before
}

// Zoom enlarges the departures by so many steps of about a fifth, to whole times.
func (s *State) Zoom(steps float64) {
	now := s.Factor()
	next := math.Round(now * math.Pow(1.2, steps))
	if next == math.Round(now) {
		next += steps
	}
	s.SetFactor(geom.Interval{Lo: 1, Hi: MostFactor}.Clamp(next))
}

// Spot gives where on the drawing a place of an edge is: between leaf and frame.
func (s *State) Spot(e fit.Edge, place float64) draw.Pt { return s.current().LensPoint(e, place) }

// Grip gives where the handle of the swing stands on the drawing.
func (s *State) Grip() draw.Pt { return s.current().Grip() }
