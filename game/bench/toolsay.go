package bench

import (
	"strconv"

	"leafwright/game/draw"
	"leafwright/game/words"
	"leafwright/geom"
	"leafwright/geom/fit"
)

// tell says what the hands would do, for the label on the drawing and the live line,
// and puts it into the work drawn.
func (s *State) tell() {
	h := &s.hold
	h.text, h.note, h.minded, h.told = "", "", "", s.jobs
	switch h.mark.Kind {
	case draw.LeafEdge:
		if s.Tool() == StripTool {
			s.tellStrip()
		} else {
			s.tellPlane()
		}
	case draw.CutEnd:
		s.tellSaw()
	case draw.HingeBody:
		s.tellHinge()
	}
	switch step, on := s.Previewed(); {
	case h.why != nil:
		h.text, h.note = s.moveSpeaker().Care(h.why), ""
	case on && h.trying && len(step.Done.Cares) > 0:
		h.minded = s.moveSpeaker().Care(&step.Done.Cares[0]) // too long for the drawing
	}
	s.setWork()
}

// setWork fills in the work that is drawn.
func (s *State) setWork() {
	h := &s.hold
	w := draw.Work{
		Edge: h.mark.Edge, At: h.mark.Place, Hinge: h.mark.Hinge, End: h.mark.End,
		First: h.first, Last: h.last, Text: h.text, Note: h.note, Bad: h.why != nil, Pressed: h.pressed || h.trying,
	}
	lo, hi := s.leafEnds(w.Edge)
	w.From, w.To = lo, hi
	if h.part {
		w.From, w.To = max(min(h.start, h.toe), lo), min(max(h.start, h.toe), hi)
	}
	h.work = w
}

// leafEnds gives the places of the two ends of an edge of the leaf shown, what is
// tried left aside.
func (s *State) leafEnds(e fit.Edge) (lo, hi float64) {
	at := s.stood.Door.Leaf.Ends(e, 0)
	return at.Lo, at.Hi
}

// tellPlane says what a pass takes off, and the gap beside the plane.
func (s *State) tellPlane() {
	h := &s.hold
	if h.lifted {
		h.text = "Plane lifted"
		return
	}
	h.text = s.Length(s.Shaving()) + " off"
	switch {
	case h.part && h.start == h.toe:
		h.text = "Stroke begins at " + s.Place(h.start)
		return
	case h.part:
		h.note = s.Place(min(h.start, h.toe)) + " to " + s.Place(max(h.start, h.toe)) + ". "
	case h.trying:
		h.note = "The whole edge. "
	}
	h.note += s.gapBeside(h.mark.Edge, h.mark.Place)
}

// gapBeside says the gap beside a place of the leaf's edge, as the door is shown.
func (s *State) gapBeside(e fit.Edge, place float64) string {
	l := &s.Tried().Door.Leaf
	p := geom.Vec{X: place, Y: place}
	switch e {
	case fit.HingeSide:
		p.X = l.Hanging.At(place)
	case fit.LatchSide:
		p.X = l.Closing.At(place)
	case fit.HeadSide:
		p.Y = l.Top.At(place)
	default:
		p.Y = l.Bottom.At(place)
	}
	p.Z = l.Face(p.X, p.Y)
	q := s.fit.Place(p, s.fit.Closed)
	at := q.X
	if e.Upright() {
		at = q.Y
	}
	if s.fit.Gaps[e].Range().IsEmpty() {
		return ""
	}
	gap, _ := s.GapAt(e, at)
	return "Gap " + s.Length(gap) + ", " + words.Word(s.wanted.Gaps[e].Judge(gap))
}

func (s *State) tellStrip() {
	h := &s.hold
	if h.first <= 0 {
		h.text = "Pull a strip on here"
		return
	}
	h.text = "Strip " + s.Length(h.first) + " high"
	if h.mark.Edge.Upright() {
		h.text = "Strip " + s.Length(h.first) + " wide"
	}
	h.note = s.gapBeside(h.mark.Edge, h.mark.Place)
}

func (s *State) tellSaw() {
	h := &s.hold
	switch {
	case h.first <= 0 && h.last <= 0:
		h.text = "Drag the saw line into the leaf"
		return
	case h.first == h.last:
		h.text = s.Length(h.first) + " off"
	case h.first <= 0:
		h.text = s.Length(h.last) + " off the closing corner"
	case h.last <= 0:
		h.text = s.Length(h.first) + " off the hanging corner"
	default:
		h.text = s.Length(h.first) + " off the hanging corner, " + s.Length(h.last) + " off the closing one"
	}
	lo, hi := s.leafEnds(h.mark.Edge)
	h.note = s.gapBeside(h.mark.Edge, lo+(hi-lo)*float64(h.mark.End+1)/2)
}

func (s *State) tellHinge() {
	h := &s.hold
	name := s.hingeName(h.mark.Hinge)
	switch {
	case h.up > 0:
		h.text = name + " up " + s.Length(h.up)
	case h.up < 0:
		h.text = name + " down " + s.Length(-h.up)
	case s.packing():
		h.text = name + ": pack " + s.Length(s.Shaving())
	default:
		h.text = name + ": " + s.Length(s.Shaving()) + " deeper"
	}
	if h.up == 0 && !h.pressed && !h.trying {
		h.note = "Drag to move it, tap to do this"
	}
}

func (s *State) hingeName(i int) string {
	switch n := len(s.Tried().Door.Hinges); {
	case i == 1:
		return "Top hinge"
	case i == n:
		return "Bottom hinge"
	case n == 3:
		return "Middle hinge"
	}
	return "Hinge " + strconv.Itoa(i)
}
