package bench

import (
	"math"
	"strings"
	"testing"

	"leafwright/game"
	"leafwright/game/draw"
	"leafwright/game/internal/demos"
	"leafwright/geom/fit"
	"leafwright/geom/trim"
)

// tooled gives a bench with a tool in hand, the drawing made, an option begun.
func tooled(t testing.TB, job string, tool Tool) *State {
	t.Helper()
	data := demos.Job(t, job)
	data.Made, data.Options = nil, []game.Option{{Name: "By hand"}}
	s := New(data)
	s.ShowOption(0)
	s.SetTool(tool)
	s.Drawing(900, 700)
	return s
}

const (
	leftHung  = "1-schoolroom-square"
	rightHung = "4-chapel-frame-in-wind"
)

// moves gives the moves of the option tried.
func moves(s *State) []trim.Move {
	if len(s.Job().Options) == 0 {
		return nil
	}
	return s.Job().Options[0].Moves
}

// drag presses at a point, goes through others and lets go.
func drag(s *State, through ...draw.Pt) {
	s.Press(through[0])
	for _, p := range through[1:] {
		s.Move(p)
	}
	s.Release()
}

func same(t *testing.T, s *State, want ...trim.Move) {
	t.Helper()
	got := moves(s)
	if len(got) != len(want) {
		t.Fatalf("moves %+v, want %+v", got, want)
	}
	for i := range want {
		if game.MoveText(got[i]) != game.MoveText(want[i]) {
			t.Errorf("move %d: %+v, want %+v", i, got[i], want[i])
		}
	}
}

// A stroke by pointer is the move that the panel would make, on either hand.
func TestStroke(t *testing.T) {
	for _, job := range []string{leftHung, rightHung} {
		t.Run(job, func(t *testing.T) {
			s := tooled(t, job, PlaneTool)
			g := s.current().Sight()
			from, mid, to := g.On(fit.LatchSide, 704), g.On(fit.LatchSide, 1100), g.On(fit.LatchSide, 1396)
			s.Press(from)
			if len(moves(s)) != 0 || s.HandSays() == "" {
				t.Errorf("only pressed: %d moves, said %q", len(moves(s)), s.HandSays())
			}
			before, _ := s.GapAt(fit.LatchSide, 1000)
			s.Move(mid)
			s.Move(to)
			if _, on := s.Previewed(); !on || len(moves(s)) != 0 {
				t.Errorf("while stroked: previewed %v, %d moves", on, len(moves(s)))
			}
			if now, _ := s.GapAt(fit.LatchSide, 1000); math.Abs(now-before-0.5) > 0.02 {
				t.Errorf("the gap follows from %v to %v", before, now)
			}
			if !strings.Contains(s.HandSays(), "0.5 mm off") || !strings.Contains(s.HandSays(), "700 mm to 1400 mm") || !strings.Contains(s.HandSays(), "Gap ") {
				t.Errorf("said %q", s.HandSays())
			}
			s.Release()
			stroke := trim.Move{Kind: trim.Plane, Edge: fit.LatchSide, From: 700, To: 1400, First: 0.5, Last: 0.5}
			same(t, s, stroke)
			if _, on := s.Previewed(); on {
				t.Error("let go, it is still only previewed")
			}
			panel := tooled(t, job, Swing)
			panel.Type(game.MovePath(0, 0), game.MoveText(stroke))
			if string(game.Encode(*panel.Job())) != string(game.Encode(*s.Job())) {
				t.Error("the panel makes another job of it")
			}
			if panel.Tried().Door.Leaf.Closing.At(1000) != s.Tried().Door.Leaf.Closing.At(1000) {
				t.Error("the panel makes another leaf of it")
			}
			// the same stroke again, the other way, adds up
			g = s.current().Sight()
			drag(s, g.On(fit.LatchSide, 1396), g.On(fit.LatchSide, 1000), g.On(fit.LatchSide, 704))
			stroke.First, stroke.Last = 1, 1
			same(t, s, stroke)
			s.Undo()
			stroke.First, stroke.Last = 0.5, 0.5
			same(t, s, stroke)
		})
	}
}

func TestStrokeFromEndToEndIsTheWholeEdge(t *testing.T) {
	for _, e := range []fit.Edge{fit.HeadSide, fit.LatchSide, fit.FloorSide, fit.HingeSide} {
		s := tooled(t, leftHung, PlaneTool)
		g := s.current().Sight()
		lo, hi := g.Ends(e)
		drag(s, g.On(e, lo+40), g.On(e, (lo+hi)/2), g.On(e, hi-50))
		got := moves(s)
		if s.HandBad() && len(got) == 0 {
			continue // the joinery forbids it, and says so
		}
		same(t, s, trim.Move{Kind: trim.Plane, Edge: e, First: 0.5, Last: 0.5})
	}
}

func TestWhatMakesNoMove(t *testing.T) {
	g := tooled(t, leftHung, PlaneTool).current().Sight()
	at := func(place float64) draw.Pt { return g.On(fit.LatchSide, place) }
	off := at(1000)
	off.X += liftReach + 30
	for name, do := range map[string]func(s *State){
		"a tap":               func(s *State) { drag(s, at(900), at(903)) },
		"lifted off the edge": func(s *State) { drag(s, at(900), at(1000), off) },
		"cancelled":           func(s *State) { s.Press(at(900)); s.Move(at(1200)); s.Cancel(); s.Release() },
		"hovered":             func(s *State) { s.Move(at(900)); s.Move(at(1200)); s.Leave() },
		"pressed elsewhere":   func(s *State) { drag(s, draw.Pt{X: 3, Y: 3}, at(900), at(1200)) },
		"pointers gone mad":   func(s *State) { drag(s, at(900), draw.Pt{X: math.NaN()}, draw.Pt{X: math.Inf(1), Y: 3}) },
		"another tool taken":  func(s *State) { s.Press(at(900)); s.Move(at(1200)); s.SetTool(SawTool); s.Release() },
	} {
		t.Run(name, func(t *testing.T) {
			s := tooled(t, leftHung, PlaneTool)
			was := game.Encode(*s.Job())
			do(s)
			if string(game.Encode(*s.Job())) != string(was) {
				t.Errorf("made %+v", moves(s))
			}
			if _, on := s.Previewed(); on {
				t.Error("something is still previewed")
			}
			now := s.current().Sight()
			if d := now.Place(fit.LatchSide, at(900)) - 900; math.Abs(d) > 1 {
				t.Errorf("the picture moved by %v mm", d)
			}
		})
	}
}

func TestHingeByHand(t *testing.T) {
	for _, job := range []string{leftHung, rightHung} {
		t.Run(job, func(t *testing.T) {
			s := tooled(t, job, HingeTool)
			c := s.current().HingeAt(1)
			drag(s, c) // a first touch only shows which it is
			if len(moves(s)) != 0 || !strings.Contains(s.HandSays(), "Top hinge: 0.5 mm deeper") {
				t.Errorf("a first touch: %+v, said %q", moves(s), s.HandSays())
			}
			drag(s, c)
			same(t, s, trim.Move{Kind: trim.Sink, Hinge: 1, On: trim.OnLeaf, First: 0.5})
			s.Undo()
			s.SetPacks(true)
			s.Move(c) // a mouse over it shows it
			drag(s, c)
			same(t, s, trim.Move{Kind: trim.Pack, Hinge: 1, On: trim.OnLeaf, First: 0.5})
			s.Undo()

			g := s.current().Sight()
			to := draw.Pt{X: c.X + 4, Y: c.Y + 11}
			down := g.Up(c, to)
			drag(s, c, draw.Pt{X: c.X, Y: c.Y + 9}, to)
			same(t, s, trim.Move{Kind: trim.Shift, Hinge: 1, On: trim.OnBoth, First: math.Round(down)})
		})
	}
}

func TestStripAndSawByHand(t *testing.T) {
	for _, job := range []string{leftHung, rightHung} {
		t.Run(job, func(t *testing.T) {
			s := tooled(t, job, StripTool)
			k := s.Factor()
			g := s.current().Sight()
			from := g.On(fit.FloorSide, 300)
			px := 10.1 / g.Out(fit.FloorSide, from, draw.Pt{X: from.X, Y: from.Y + 1})
			s.Press(from)
			s.Move(draw.Pt{X: from.X, Y: from.Y + px/2})
			s.Move(draw.Pt{X: from.X, Y: from.Y + px})
			if !strings.Contains(s.HandSays(), "Strip 10.0 mm high") {
				t.Errorf("said %q", s.HandSays())
			}
			if s.Factor() != k {
				t.Errorf("the picture went from %v to %v times while pulled", k, s.Factor())
			}
			s.Release()
			want := s.Job().NewMove(trim.Splice)
			want.Edge, want.First, want.Last, want.Stock = fit.FloorSide, 10, 10, s.Job().Door.Leaf.Thickness
			same(t, s, want)

			s = tooled(t, job, SawTool)
			g = s.current().Sight()
			c := s.current().CutGrip(fit.FloorSide, 1)
			up := 4.1 / -g.Out(fit.FloorSide, c, draw.Pt{X: c.X, Y: c.Y - 1})
			drag(s, c, draw.Pt{X: c.X, Y: c.Y - up/2}, draw.Pt{X: c.X, Y: c.Y - up})
			same(t, s, trim.Move{Kind: trim.Cut, Edge: fit.FloorSide, Last: 4})
			s.Undo()
			c = s.current().CutGrip(fit.FloorSide, 0)
			drag(s, c, draw.Pt{X: c.X, Y: c.Y - up})
			same(t, s, trim.Move{Kind: trim.Cut, Edge: fit.FloorSide, First: 4, Last: 4})
			drag(s, c, draw.Pt{X: c.X, Y: c.Y + 2*up}) // out of the leaf there is nothing to saw
			if len(moves(s)) != 1 {
				t.Errorf("sawn outside the leaf: %+v", moves(s))
			}
		})
	}
}

// On a drawing as low as a phone's no label covers the door: the live line says it.
func TestNoLabelOnASmallDrawing(t *testing.T) {
	s := tooled(t, leftHung, PlaneTool)
	for _, c := range []struct {
		high float64
		want bool
	}{{340, false}, {700, true}} {
		s.Drawing(360, c.high)
		g := s.current().Sight()
		s.Press(g.On(fit.LatchSide, 700))
		s.Move(g.On(fit.LatchSide, 1400))
		drawn := false
		for _, m := range s.Drawing(360, c.high).Marks {
			drawn = drawn || m.Kind == draw.Text && strings.Contains(m.Text, "mm off")
		}
		if drawn != c.want || !strings.Contains(s.HandSays(), "mm off") {
			t.Errorf("%g px high: a label %v; the live line says %q", c.high, drawn, s.HandSays())
		}
		s.Release()
	}
}

// What is forbidden shows why while it is tried and is not made.
func TestRefusedByHand(t *testing.T) {
	job := demos.Job(t, leftHung)
	job.Anatomy.Rated = true
	job.Made, job.Options = nil, []game.Option{{Name: "By hand"}}
	s := New(job)
	s.ShowOption(0)
	s.SetTool(PlaneTool)
	s.Drawing(900, 700)
	g := s.current().Sight()
	s.Press(g.On(fit.LatchSide, 700))
	s.Move(g.On(fit.LatchSide, 1400))
	why := s.HandSays()
	if !s.HandBad() || !strings.Contains(why, "label") {
		t.Errorf("bad %v, said %q", s.HandBad(), why)
	}
	drawn := ""
	crossed := false
	l := s.Drawing(900, 700)
	for _, m := range l.Marks {
		if m.Kind == draw.Text {
			drawn += m.Text + " "
			crossed = crossed || m.Ink == draw.TextBind && strings.HasPrefix(why, m.Text)
		}
	}
	if !strings.Contains(drawn, why) || !crossed {
		t.Errorf("the drawing says %q, not %q in a warning's ink", drawn, why)
	}
	s.Release()
	if len(moves(s)) != 0 {
		t.Errorf("made all the same: %+v", moves(s))
	}
	if s.HandSays() != why {
		t.Errorf("let go, it says %q", s.HandSays())
	}
	s.Key("Enter", false)
	if len(moves(s)) != 0 {
		t.Errorf("made by key: %+v", moves(s))
	}
}

// Every one of these by keys makes what the pointer makes.
func TestToolsByKeys(t *testing.T) {
	press := func(s *State, keys ...string) {
		for _, k := range keys {
			if !s.Key(k, false) {
				t.Errorf("%q does nothing", k)
			}
		}
	}
	whole := trim.Move{Kind: trim.Plane, Edge: fit.HeadSide, First: 0.5, Last: 0.5}
	s := tooled(t, leftHung, Swing)
	press(s, "2", "]", "Enter")
	same(t, s, whole)
	press(s, "Enter", ".", "Enter") // again, then a coarser shaving
	whole.First, whole.Last = 2, 2
	same(t, s, whole)

	s = tooled(t, leftHung, PlaneTool) // from 1000 down to 940 on the closing edge
	press(s, "]", "]")
	_, hi := s.leafEnds(fit.LatchSide)
	for range int((math.Ceil(hi) - 1000) / 20) {
		press(s, "ArrowDown")
	}
	top := s.hold.toe
	press(s, "Home", "ArrowDown", "ArrowDown", "ArrowDown", "Enter")
	same(t, s, trim.Move{Kind: trim.Plane, Edge: fit.LatchSide, From: top - 60, To: top, First: 0.5, Last: 0.5})

	s = tooled(t, rightHung, HingeTool)
	press(s, "]", "Enter")
	same(t, s, trim.Move{Kind: trim.Sink, Hinge: 1, On: trim.OnLeaf, First: 0.5})
	press(s, "]", "ArrowDown", "ArrowDown", "Enter")
	same(t, s, trim.Move{Kind: trim.Sink, Hinge: 1, On: trim.OnLeaf, First: 0.5}, trim.Move{Kind: trim.Shift, Hinge: 2, On: trim.OnBoth, First: -10})

	s = tooled(t, rightHung, StripTool) // the closing edge is on the left there
	press(s, "[", "[", "[", "ArrowLeft", "ArrowLeft", "ArrowLeft", "ArrowLeft", "Enter")
	if got := moves(s); len(got) != 1 || got[0].Kind != trim.Splice || got[0].Edge != fit.LatchSide || got[0].First != 4 {
		t.Errorf("strip by keys: %+v, said %q", got, s.HandSays())
	}

	s = tooled(t, leftHung, SawTool)
	press(s, "]", "]", "]", "]", "]", "ArrowUp", "ArrowUp", "ArrowRight", "ArrowUp", "Enter") // foot, both ends, then the closing one
	same(t, s, trim.Move{Kind: trim.Cut, Edge: fit.FloorSide, First: 2, Last: 3})

	press(s, "Escape", "Escape")
	if s.Tool() != Swing {
		t.Errorf("escaped twice, %s is still in hand", s.Tool())
	}
	press(s, "2")
	factor := s.Factor()
	if press(s, "-"); s.Factor() >= factor {
		t.Error("with a plane in hand the zoom key does not zoom")
	}
}

func TestAnEscapedMoveIsNotMade(t *testing.T) {
	s := tooled(t, leftHung, SawTool)
	was := s.Tried().Door.Leaf.Top.At(700)
	s.Key("]", false)
	s.Key("ArrowDown", false)
	if s.Tried().Door.Leaf.Top.At(0) == was {
		t.Fatal("the cut does not show")
	}
	s.Key("Escape", false)
	if len(moves(s)) != 0 || s.Tried().Door.Leaf.Top.At(700) != was {
		t.Error("escaped, the cut stays")
	}
}

func TestTheLeafSwingsWithAnyTool(t *testing.T) {
	for _, tool := range everyTool() {
		s := tooled(t, rightHung, tool)
		from := s.Grip()
		s.SetSwing(60)
		to := s.Grip()
		s.SetSwing(ajar)
		drag(s, from, to)
		if math.Abs(s.Swing()-60) > 0.01 {
			t.Errorf("with the %s in hand the leaf stands at %v°", tool, s.Swing())
		}
		if len(moves(s)) != 0 {
			t.Errorf("with the %s in hand swinging made %+v", tool, moves(s))
		}
	}
}

func everyTool() (all []Tool) {
	for _, i := range new(State).Tools() {
		all = append(all, i.Tool)
	}
	return all
}

func TestTools(t *testing.T) {
	s := newDemo(t)
	if s.Tool() != Swing || s.Shaving() != 0.5 {
		t.Errorf("begins with %s, %v mm", s.Tool(), s.Shaving())
	}
	s.SetTool("axe")
	if s.Tool() != Swing {
		t.Errorf("took the %s", s.Tool())
	}
	s.SetShow(Plan)
	s.SetTool(PlaneTool)
	if s.Look().Show != Both {
		t.Error("a plane in hand and nothing to plane in sight")
	}
	s.SetInches(true)
	if math.Abs(s.Shaving()-25.4/64) > 1e-12 {
		t.Errorf("in inches a pass takes %v mm", s.Shaving())
	}
	for _, mm := range []float64{math.NaN(), -1, 0, 1e9} {
		s.SetShaving(mm)
		if got := s.Shaving(); !(got >= leastShaving && got <= mostShaving) {
			t.Errorf("set to %v, a pass takes %v mm", mm, got)
		}
	}
	_, looks := s.Changes()
	s.SetTool(HingeTool)
	s.SetPacks(true)
	s.Alt(true)
	if s.packing() {
		t.Error("the key does not turn packing round")
	}
	if _, now := s.Changes(); now == looks {
		t.Error("nothing tells the page of it")
	}
	if s.Cursor() == "" || len(s.Tools()) != 5 {
		t.Error("tools or cursor missing")
	}
}

// From the first stroke on the picture keeps still, stroke after stroke, till the
// tool is put down.
func TestThePictureKeepsStillBetweenStrokes(t *testing.T) {
	s := tooled(t, "2-terrace-falling-head", PlaneTool)
	g := s.current().Sight()
	for range 4 {
		drag(s, g.On(fit.LatchSide, 1400), g.On(fit.LatchSide, 1900))
	}
	now := s.current().Sight()
	if a, b := g.On(fit.HingeSide, 900), now.On(fit.HingeSide, 900); math.Hypot(a.X-b.X, a.Y-b.Y) > 0.01 {
		t.Errorf("the hanging edge went from %v to %v", a, b)
	}
	if got := moves(s); len(got) != 1 || got[0].First != 2 {
		t.Errorf("four strokes at one place of the sheet made %+v", got)
	}
	s.Zoom(-2)
	if s.Factor() >= now.Times() {
		t.Error("the picture keeps still when it is zoomed")
	}
}

// A tool works on the door as it stands or on the option shown, never on the one as
// found; for keeps, on the door as it stands.
func TestWhatAToolWorksOn(t *testing.T) {
	stroke := func(s *State) {
		s.Drawing(900, 700)
		g := s.current().Sight()
		drag(s, g.On(fit.LatchSide, 700), g.On(fit.LatchSide, 1400))
	}
	s := tooled(t, leftHung, PlaneTool)
	s.Remove(game.OptionPath(0))
	s.ShowOption(AsFound)
	stroke(s)
	if len(s.Job().Options) != 1 || len(moves(s)) != 1 || s.Shown() != 0 {
		t.Errorf("with the door as found in sight: %+v, shown %d", s.Job().Options, s.Shown())
	}
	s.SetKeeps(true)
	stroke(s)
	if len(s.Job().Made) != 1 || len(moves(s)) != 1 || s.Shown() != AsStands {
		t.Errorf("for keeps: made %+v, option %+v, shown %d", s.Job().Made, moves(s), s.Shown())
	}
}

// Where the readings make no door there is nothing to work on.
func TestNoToolWithoutADoor(t *testing.T) {
	job := demos.Job(t, "8-weavers-cottage-readings")
	job.Readings = job.Readings[:2]
	data, err := game.Parse(game.Encode(job))
	if err != nil {
		t.Skip(err)
	}
	s := New(data)
	s.SetTool(PlaneTool)
	s.Drawing(900, 700)
	for y := 0.0; y < 700; y += 20 {
		drag(s, draw.Pt{X: 300, Y: y}, draw.Pt{X: 300, Y: y + 60})
	}
	for _, k := range []string{"]", "Enter", "ArrowUp"} {
		s.Key(k, false)
	}
	if len(s.Job().Options) != 0 {
		t.Errorf("made %+v", s.Job().Options)
	}
}

// What is to be minded is said while it is tried, and the move can be made all the same.
func TestMindedByHand(t *testing.T) {
	s := tooled(t, "2-terrace-falling-head", SawTool)
	for _, k := range []string{"]", "]"} {
		s.Key(k, false)
	}
	for range 6 {
		s.Key("ArrowDown", false)
	}
	if !strings.Contains(s.HandSays(), "haunch of the top rail") || s.HandBad() {
		t.Errorf("6 mm off the top: bad %v, said %q", s.HandBad(), s.HandSays())
	}
	s.Key("Enter", false)
	same(t, s, trim.Move{Kind: trim.Cut, Edge: fit.HeadSide, First: 6, Last: 6})
}
