package bench

import (
	"math"

	"leafwright/game"
	"leafwright/game/draw"
	"leafwright/game/measure"
	"leafwright/geom"
	"leafwright/geom/fit"
	"leafwright/geom/trim"
)

// How the pointer works the tools.
const (
	tapReach  = 6.0  // px; a press that moves less is a tap
	liftReach = 90.0 // px from the edge at which a plane is lifted off it
	snapEnd   = 60.0 // mm; a stroke that ends so near the edge's end goes to the end
	strokeTo  = 10.0 // mm, to which its other ends are rounded
)

// Grains of amounts, mm and inches.
func (s *State) amountGrain() float64 {
	if s.look.Inches {
		return measure.PerInch / 32
	}
	return 0.5
}

func (s *State) hingeGrain() float64 {
	if s.look.Inches {
		return measure.PerInch / 16
	}
	return 1
}

func rounded(mm, grain float64) float64 {
	r := math.Round(mm/grain) * grain
	if !(math.Abs(r) < measure.Most) {
		return 0
	}
	return r
}

// most is the greatest amount of a kind of move.
func most(k trim.Kind) float64 {
	if spec := trim.SpecOf(k); spec != nil && spec.Amount.Hi > 0 {
		return spec.Amount.Hi
	}
	return measure.Most
}

// hoverTool marks what the tool in hand could take hold of under the pointer.
func (s *State) hoverTool(t draw.Target) {
	switch t.Kind {
	case draw.LeafEdge, draw.HingeBody, draw.CutEnd:
		if s.hold.trying { // by keys: the pointer passing by must not undo it
			return
		}
		s.take(t, false)
	default:
		if !s.hold.stays && s.hold.mark.Kind != draw.Nothing {
			s.drop()
		}
	}
}

// pressTool takes hold with the tool in hand, if there is something for it.
func (s *State) pressTool(t draw.Target, p draw.Pt) bool {
	h := &s.hold
	switch t.Kind {
	case draw.LeafEdge, draw.HingeBody, draw.CutEnd:
	default:
		s.drop()
		return false
	}
	ready := h.mark.Kind == t.Kind && h.mark.Hinge == t.Hinge
	s.keepSight()
	s.take(t, true)
	h.pressed, h.moved, h.ready, h.from = true, false, ready, p
	s.tell()
	s.looks++
	return true
}

// moveTool follows the pointer with what is held.
func (s *State) moveTool(p draw.Pt) {
	h := &s.hold
	if p.X-p.X != 0 || p.Y-p.Y != 0 {
		return
	}
	dx, dy := p.X-h.from.X, p.Y-h.from.Y
	if !h.moved && dx*dx+dy*dy < tapReach*tapReach {
		return
	}
	h.moved = true
	s.finger = p
	e := h.mark.Edge
	switch s.Tool() {
	case PlaneTool:
		s.stroke(p)
	case StripTool:
		h.first = min(max(0, rounded(h.sight.Out(e, h.from, p), s.amountGrain())), most(trim.Splice))
	case SawTool:
		off := min(max(0, rounded(-h.sight.Out(e, h.from, p), s.amountGrain())), most(trim.Cut))
		if h.mark.End <= 0 {
			h.first = off
		}
		if h.mark.End >= 0 {
			h.last = off
		}
	case HingeTool:
		limit := most(trim.Shift)
		h.up = min(max(-limit, rounded(h.sight.Up(h.from, p), s.hingeGrain())), limit)
	}
	s.try()
}

// stroke runs the plane from where it was pressed to the pointer.
func (s *State) stroke(p draw.Pt) {
	h := &s.hold
	e := h.mark.Edge
	h.start, h.toe, h.part, h.lifted = Stroke(&h.sight, e, h.from, p)
	h.mark.Place = h.sight.Place(e, p)
}

// Stroke gives what a plane run along an edge between two points of the sheet touches,
// from where it starts to its toe, mm along the edge; whether that is only a part of the
// edge, and whether the plane was lifted off it.
func Stroke(g *draw.Sight, e fit.Edge, from, to draw.Pt) (start, toe float64, part, lifted bool) {
	lo, hi := g.Ends(e)
	at := g.Place(e, to)
	on := g.On(e, at)
	lifted = math.Abs(to.X-on.X)+math.Abs(to.Y-on.Y) > liftReach
	start, toe = strokeEnd(g.Place(e, from), lo, hi), strokeEnd(at, lo, hi)
	if start == toe { // a stroke has a length
		toe = start + strokeTo
	}
	part = min(start, toe) > lo || max(start, toe) < hi
	return start, toe, part, lifted
}

// strokeEnd is where a stroke that leads to a place of an edge ends: at the edge's
// end where it comes near it, else at a round place. Ends are told in whole mm, just
// outside the edge, so that stroke after stroke has the same.
func strokeEnd(at, lo, hi float64) float64 {
	switch {
	case at-lo <= snapEnd:
		return math.Floor(lo)
	case hi-at <= snapEnd:
		return math.Ceil(hi)
	}
	return math.Round(at/strokeTo) * strokeTo
}

// releaseTool makes the move tried. A hinge that was marked before it was touched and
// is only tapped is let in deeper, or packed: a finger's first touch shows which it is.
func (s *State) releaseTool() {
	h := &s.hold
	h.pressed = false
	mark := h.mark
	if h.moved && h.trying && h.why == nil {
		s.finish()
		return
	}
	if !h.moved && h.ready && s.Tool() == HingeTool {
		if s.try(); h.why == nil {
			s.finish()
			return
		}
	}
	// what could not be made stays said until something else is marked
	why, text := h.why, h.text
	s.drop()
	s.take(mark, true)
	if h.why = why; why != nil {
		h.text, h.note = text, ""
	}
	s.setWork()
	s.looks++
}

// keyTool does what a key does with a tool and tells whether it was one for that.
func (s *State) keyTool(key string, fine bool) bool {
	for _, t := range toolItems {
		if key == t.Key {
			s.SetTool(t.Tool)
			return true
		}
	}
	if !s.working() || s.hold.pressed {
		return false
	}
	s.face()
	h := &s.hold
	switch key {
	case "[":
		s.next(-1)
	case "]":
		s.next(1)
	case ",":
		s.stepShaving(-1)
	case ".":
		s.stepShaving(1)
	case "Enter":
		if h.mark.Kind == draw.Nothing {
			s.next(1)
			return true
		}
		if !h.trying {
			s.try()
		}
		s.finish()
	case "Escape":
		if h.mark.Kind != draw.Nothing {
			s.drop()
		} else {
			s.SetTool(Swing)
		}
	case "Home", "End", "ArrowUp", "ArrowDown", "ArrowLeft", "ArrowRight":
		if h.mark.Kind == draw.Nothing {
			s.next(1)
			return true
		}
		s.nudge(key, fine)
	default:
		return false
	}
	return true
}

// stepShaving takes the next of the shavings to choose from.
func (s *State) stepShaving(by int) {
	all, now := s.Shavings(), s.Shaving()
	if by > 0 {
		for _, mm := range all {
			if mm > now+1e-9 {
				s.SetShaving(mm)
				return
			}
		}
		return
	}
	for i := len(all) - 1; i >= 0; i-- {
		if all[i] < now-1e-9 {
			s.SetShaving(all[i])
			return
		}
	}
}

// next marks the edge, the hinge or the end of a line after or before the marked one.
func (s *State) next(by int) {
	n, i := len(edgesRound), -1
	mark := s.hold.mark
	switch s.Tool() {
	case HingeTool:
		n = len(s.Tried().Door.Hinges)
		if mark.Kind == draw.HingeBody {
			i = mark.Hinge - 1
		}
	case SawTool:
		n = 6
		if mark.Kind == draw.CutEnd {
			i = mark.End + 1
			if mark.Edge == fit.FloorSide {
				i += 3
			}
		}
	default:
		for k, e := range edgesRound {
			if mark.Kind == draw.LeafEdge && mark.Edge == e {
				i = k
			}
		}
	}
	if n == 0 {
		return
	}
	switch {
	case i >= 0:
		i = (i + by + n) % n
	case by > 0:
		i = 0
	default:
		i = n - 1
	}
	var t draw.Target
	switch s.Tool() {
	case HingeTool:
		t = draw.Target{Kind: draw.HingeBody, Hinge: i + 1}
	case SawTool:
		t = draw.Target{Kind: draw.CutEnd, Edge: fit.HeadSide, End: i%3 - 1}
		if i >= 3 {
			t.Edge = fit.FloorSide
		}
		lo, hi := s.leafEnds(t.Edge)
		t.Place = (lo + hi) / 2
	default:
		t = draw.Target{Kind: draw.LeafEdge, Edge: edgesRound[i]}
		lo, hi := s.leafEnds(t.Edge)
		t.Place = (lo + hi) / 2
	}
	s.take(t, true)
}

// Steps of the keys along an edge, mm.
const placeStep, placeFine = 20, 1

// nudge moves what is marked by a key. Left and right are as they are seen.
func (s *State) nudge(key string, fine bool) {
	h := &s.hold
	e := h.mark.Edge
	right, up := 0.0, 0.0
	switch key {
	case "ArrowUp":
		up = 1
	case "ArrowDown":
		up = -1
	case "ArrowRight":
		right = 1
	case "ArrowLeft":
		right = -1
	}
	if s.hung() {
		right = -right
	}
	along, out := right, up
	switch e {
	case fit.HingeSide:
		along, out = up, -right
	case fit.LatchSide:
		along, out = up, right
	case fit.FloorSide:
		out = -up
	}
	grain := s.amountGrain()
	if !fine {
		grain *= 2
	}
	switch s.Tool() {
	case PlaneTool:
		step := float64(placeStep)
		if fine {
			step = placeFine
		}
		s.nudgeStroke(key, along*step)
	case StripTool:
		h.first = min(max(0, h.first+out*grain), most(trim.Splice))
		if along != 0 {
			lo, hi := s.leafEnds(e)
			h.mark.Place = geom.Interval{Lo: lo, Hi: hi}.Clamp(h.mark.Place + along*placeStep)
		}
	case SawTool:
		if along != 0 {
			h.mark.End = int(along)
		}
		if h.mark.End <= 0 {
			h.first = min(max(0, h.first-out*grain), most(trim.Cut))
		}
		if h.mark.End >= 0 {
			h.last = min(max(0, h.last-out*grain), most(trim.Cut))
		}
	case HingeTool:
		grain := s.hingeGrain()
		if !fine {
			grain *= 5
		}
		limit := most(trim.Shift)
		h.up = min(max(-limit, h.up+up*grain), limit)
	}
	s.try()
}

// nudgeStroke moves the end of the stroke that the plane stands at; Home begins the
// stroke there, and End makes it the whole edge again.
func (s *State) nudgeStroke(key string, by float64) {
	h := &s.hold
	lo, hi := s.leafEnds(h.mark.Edge)
	lo, hi = math.Floor(lo), math.Ceil(hi)
	if !h.part {
		h.start, h.toe = lo, hi
	}
	switch key {
	case "Home":
		h.start, h.part = h.toe, true
	case "End":
		h.start, h.toe, h.part = lo, hi, false
	default:
		h.toe = geom.Interval{Lo: lo, Hi: hi}.Clamp(h.toe + by)
		h.part = min(h.start, h.toe) > lo || max(h.start, h.toe) < hi
	}
	h.mark.Place = h.toe
}

// hung tells whether the leaf is hung on the right, so that left and right are seen
// the other way round.
func (s *State) hung() bool { return s.Job().Hand == game.Right }

// FrontPoint gives where a place of the leaf's edge is on the drawing, HingePoint where
// a hinge is (1 the top one), and CutPoint where an end of the line is that top or foot
// is sawn to (−1 at the hanging corner, +1 at the closing one).
func (s *State) FrontPoint(e fit.Edge, place float64) draw.Pt {
	g := s.current().Sight()
	return g.On(e, place)
}

func (s *State) HingePoint(i int) draw.Pt { return s.current().HingeAt(i) }

func (s *State) CutPoint(e fit.Edge, end int) draw.Pt { return s.current().CutGrip(e, end) }
