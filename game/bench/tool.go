package bench

import (
	"leafwright/game/draw"
	"leafwright/game/measure"
	"leafwright/geom"
	"leafwright/geom/fit"
	"leafwright/geom/trim"
)

// Tool is what is in hand over the front picture.
type Tool string

// The tools. The swing hand looks, reads gaps and swings; the others make moves.
// The leaf in plan can be swung with any of them in hand.
const (
	Swing     Tool = "swing"
	PlaneTool Tool = "plane"
	HingeTool Tool = "hinge"
	StripTool Tool = "strip"
	SawTool   Tool = "saw"
)

// ToolItem is a tool as a toolbar offers it.
type ToolItem struct {
	Tool Tool
	Name string
	Key  string // that takes it in hand
	Hint string // how it is used
}

// footing is what a drawing's lie on its sheet hangs on, the leaf apart. While it is as
// it was the picture keeps still from the first stroke on till the tool is put down.
type footing struct {
	w, h, factor float64
	wide, high   float64 // of the opening
	show         Show
}

func (s *State) footing(w, h float64) footing {
	f := &s.stood.Door.Frame
	return footing{w, h, s.look.Factor, f.LatchJamb.At(0), f.Head.At(0), s.look.Show}
}

// toolItems is every tool, in the toolbar's order.
var toolItems = [...]ToolItem{
	{Swing, "Swing", "1", "Drag the leaf in plan to swing it; press an edge to read its gap."},
	{PlaneTool, "Plane", "2", "Stroke along an edge of the leaf: one shaving comes off where you stroke."},
	{HingeTool, "Hinge", "3", "Drag a hinge up or down the stile; tap one that is marked to let it in deeper or pack it out."},
	{StripTool, "Strip", "4", "Pull a strip out of the top, the foot or a stile's edge."},
	{SawTool, "Saw", "5", "Drag an end of the line at top or foot into the leaf, or the line between to move both."},
}

// Tools gives the tools in the toolbar's order.
func (s *State) Tools() []ToolItem { return toolItems[:] }

// held gives the tool as the drawing knows it; no tool for the swing hand and for what
// is none.
func (t Tool) held() draw.Held {
	switch t {
	case PlaneTool:
		return draw.HeldPlane
	case HingeTool:
		return draw.HeldHinge
	case StripTool:
		return draw.HeldStrip
	case SawTool:
		return draw.HeldSaw
	}
	return draw.NoTool
}

// hands is what the tool in hand is doing. Places are on the leaf.
type hands struct {
	tool    Tool
	shaving float64 // mm; 0 = the unit's own
	packs   bool    // a tapped hinge is packed out, not let in deeper
	other   bool    // a key is down that turns that round
	mark    draw.Target
	stays   bool // the mark does not go when the pointer leaves: it was touched, or set by keys

	part        bool    // the stroke is not the whole edge
	start, toe  float64 // of such a stroke, the plane at its toe
	first, last float64 // a strip's height, a cut's amounts at the hanging and the closing corner
	up          float64 // a hinge's way

	from       draw.Pt // where the pointer pressed
	ready      bool    // what it pressed had been marked before
	pressed    bool
	moved      bool // far enough to be no tap
	lifted     bool // too far off the edge: nothing is made
	trying     bool // a move is previewed
	why        *trim.Care
	sight      draw.Sight // of the drawing before it was
	steady     footing    // of that drawing
	told       int        // of which job text and note tell
	text, note string     // on the drawing too
	minded     string     // what is to be minded
	work       draw.Work
}

// Tool gives the tool in hand.
func (s *State) Tool() Tool {
	if s.hold.tool == "" {
		return Swing
	}
	return s.hold.tool
}

// SetTool takes a tool in hand and lets go of whatever was held.
func (s *State) SetTool(t Tool) {
	if t == s.Tool() || t != Swing && (t.held() == draw.NoTool || s.past.fixed) {
		return
	}
	s.drop()
	h := &s.hold
	s.hold = hold{hands: hands{tool: t, shaving: h.shaving, packs: h.packs}}
	s.under = draw.Target{}
	if t != Swing {
		s.face()
		if s.look.Show == Plan { // the tools work on the front picture
			s.SetShow(Both)
		}
	}
	s.looks++
}

// working tells whether a tool other than the swing hand is in hand, and there is a
// door to work on.
func (s *State) working() bool { return s.Tool() != Swing && s.lacks == nil }

// face shows the door that a move would be made on, where another is shown: not the
// one as found, and no option while the work is for keeps.
func (s *State) face() {
	if _, made := s.Target(); made && s.Shown() != AsStands || s.Shown() == AsFound {
		s.ShowOption(AsStands)
	}
}

// Shaving gives what one pass of the plane takes off, and by how much a tap lets a
// hinge in deeper, in mm.
func (s *State) Shaving() float64 {
	if s.hold.shaving > 0 {
		return s.hold.shaving
	}
	if s.look.Inches {
		return measure.PerInch / 64
	}
	return 0.5
}

// Limits of a shaving, mm: a bench plane takes less than the least, but nobody counts
// such passes; the most is several passes of a coarse set plane (common practice, no
// published source).
const leastShaving, mostShaving = 0.1, 3.0

// SetShaving sets it, held to what a plane takes.
func (s *State) SetShaving(mm float64) {
	if mm != mm || mm == s.Shaving() {
		return
	}
	s.hold.shaving = geom.Interval{Lo: leastShaving, Hi: mostShaving}.Clamp(mm)
	s.tryAgain()
}

// Shavings gives those to choose from, in the unit shown.
func (s *State) Shavings() []float64 { return Shavings(s.look.Inches) }

// Shavings gives the shavings to choose from, mm: round ones in millimetres, or in inches.
func Shavings(inches bool) []float64 {
	if inches {
		const inch = measure.PerInch
		return []float64{inch / 128, inch / 64, inch / 32, inch / 16}
	}
	return []float64{0.2, 0.5, 1, 2}
}

// Packs tells whether a tapped hinge is packed out rather than let in deeper.
func (s *State) Packs() bool { return s.hold.packs }

// SetPacks chooses between the two.
func (s *State) SetPacks(on bool) {
	if on != s.hold.packs {
		s.hold.packs = on
		s.tryAgain()
	}
}

// Alt tells that the key is down, or up again, that turns [State.Packs] round.
func (s *State) Alt(down bool) {
	if down != s.hold.other {
		s.hold.other = down
		s.tryAgain()
	}
}

// HandSays says what the tool in hand would do to what is marked, or why it cannot;
// empty where nothing is.
func (s *State) HandSays() string {
	h := &s.hold
	said := h.text
	for _, more := range [2]string{h.note, h.minded} {
		if more != "" {
			said += ". " + more
		}
	}
	return said
}

// HandBad tells whether that is why it cannot be done.
func (s *State) HandBad() bool { return s.hold.why != nil }

// labelled is how high a drawing must be, px, to bear a label of what the hands do. On a
// phone's it would cover a quarter of the door, and the live line under the drawing says
// the same: there only what cannot be done is written on it.
const labelled = 400.0

// handView adds to a view what the hands are doing, and the door as found.
func (s *State) handView(v *draw.View) {
	h := &s.hold
	s.was = s.Job().Door
	s.season.on(&s.was)
	v.Was = &s.was
	if v.Still || !s.working() {
		return
	}
	v.Held = s.Tool().held()
	if h.mark.Kind != draw.Nothing {
		if h.told != s.jobs { // undone, or typed, meanwhile
			s.tell()
		}
		v.Work = &h.work
		if h.work.Text = h.text; v.Height < labelled && !h.work.Bad {
			h.work.Text = ""
		}
	}
	if h.steady == s.footing(v.Width, v.Height) {
		v.Sight = &h.sight
	}
}

// drop lets go of what is marked and of the move tried.
func (s *State) drop() {
	h := &s.hold
	if h.trying {
		s.Preview(nil)
	}
	if h.mark.Kind != draw.Nothing || h.trying {
		s.looks++
	}
	h.mark, h.stays, h.trying, h.pressed, h.moved, h.lifted = draw.Target{}, false, false, false, false, false
	h.part, h.start, h.toe, h.first, h.last, h.up = false, 0, 0, 0, 0, 0
	h.why, h.text, h.note, h.minded = nil, "", "", ""
}

// take marks a target afresh.
func (s *State) take(t draw.Target, stays bool) {
	h := &s.hold
	if t == h.mark && stays == h.stays && !h.trying {
		return
	}
	if h.trying {
		s.Preview(nil)
		h.trying = false
	}
	h.mark, h.stays = t, stays
	h.part, h.start, h.toe, h.first, h.last, h.up = false, 0, 0, 0, 0, 0
	h.why, h.lifted = nil, false
	s.tell()
	s.looks++
}

// keepSight remembers how the front picture lies, so that it keeps still while a
// move is tried.
func (s *State) keepSight() {
	h := &s.hold
	h.sight = s.current().Sight()
	h.steady = s.footing(s.sheet.w, s.sheet.h)
}

// move gives the move the hands are at, and whether there is one yet.
func (s *State) move() (trim.Move, bool) {
	h, leaf := &s.hold, &s.Tried().Door.Leaf
	e := h.mark.Edge
	switch s.Tool() {
	case PlaneTool:
		m := trim.Move{Kind: trim.Plane, Edge: e, First: s.Shaving(), Last: s.Shaving()}
		if h.part {
			m.From, m.To = min(h.start, h.toe), max(h.start, h.toe)
		}
		return m, h.mark.Kind == draw.LeafEdge && !h.lifted && !(h.part && h.start == h.toe)
	case StripTool:
		m := s.Job().NewMove(trim.Splice)
		m.Edge, m.From, m.To, m.First, m.Last, m.Stock = e, 0, 0, h.first, h.first, leaf.Thickness
		return m, h.mark.Kind == draw.LeafEdge && h.first > 0
	case SawTool:
		m := trim.Move{Kind: trim.Cut, Edge: e, First: h.first, Last: h.last}
		return m, h.mark.Kind == draw.CutEnd && (h.first > 0 || h.last > 0)
	case HingeTool:
		if h.mark.Kind != draw.HingeBody {
			break
		}
		if h.up != 0 {
			return trim.Move{Kind: trim.Shift, Hinge: h.mark.Hinge, On: trim.OnBoth, First: h.up}, true
		}
		m := trim.Move{Kind: trim.Sink, Hinge: h.mark.Hinge, On: trim.OnLeaf, First: s.Shaving()}
		if s.packing() {
			m.Kind = trim.Pack
		}
		return m, !h.moved
	}
	return trim.Move{}, false
}

// packing tells whether a tap packs.
func (s *State) packing() bool { return s.hold.packs != s.hold.other }

// try draws the door with the move the hands are at, and says what comes of it.
func (s *State) try() {
	h := &s.hold
	m, is := s.move()
	h.why = nil
	if !is {
		if h.trying {
			s.Preview(nil)
			h.trying = false
		}
		s.tell()
		s.looks++
		return
	}
	if !h.trying && !h.pressed {
		s.keepSight()
	}
	h.trying = true
	if step := s.Preview(&m); step.Why != nil && step.Why.About.Forbids() {
		h.why = step.Why
	}
	s.tell()
	s.looks++
}

// tryAgain does so where a move is tried already, and says anew what would be done.
func (s *State) tryAgain() {
	if s.hold.trying {
		s.try()
	} else {
		s.tell()
	}
	s.looks++
}

// finish makes the move tried, if it can be done, and gives whether it was.
func (s *State) finish() bool {
	m, is := s.move()
	if !is || s.hold.why != nil {
		return false
	}
	mark, stays := s.hold.mark, s.hold.stays
	s.hold.trying = false
	err := s.PutMove(m)
	s.drop()
	s.take(mark, stays)
	if err != nil {
		s.hold.text, s.hold.note = err.Error(), ""
	}
	return err == nil
}

// edgesRound are the edges in the order keys go through them, round from the top.
var edgesRound = [...]fit.Edge{fit.HeadSide, fit.LatchSide, fit.FloorSide, fit.HingeSide}
