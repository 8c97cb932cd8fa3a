package bench

import (
	"math"
	"strings"
	"testing"

	"leafwright/game"
	"leafwright/game/draw"
	"leafwright/game/internal/demos"
	"leafwright/geom/fit"
)

func right(t *testing.T) *State {
	t.Helper()
	s := New(demos.Job(t, "4-chapel-frame-in-wind"))
	if s.Job().Hand != game.Right {
		t.Fatal("the chapel door is no longer hung on the right")
	}
	return s
}

// Dragged by its handle, the leaf stays under the finger, on either hand.
func TestDragTheLeaf(t *testing.T) {
	for _, c := range []struct {
		name string
		s    *State
	}{{"hinges on the left", newDemo(t)}, {"hinges on the right", right(t)}} {
		t.Run(c.name, func(t *testing.T) {
			s := c.s
			s.SetShow(Plan)
			s.Drawing(600, 500)
			from := s.Grip()
			s.Press(from)
			if s.Cursor() != "grabbing" {
				t.Errorf("cursor %s", s.Cursor())
			}
			if got := s.Swing(); math.Abs(got-ajar) > 1e-9 {
				t.Errorf("taking hold moved the leaf to %v°", got)
			}
			s.SetSwing(60)
			to := s.Grip()
			s.SetSwing(ajar)
			s.Move(to)
			if got := s.Swing(); math.Abs(got-60) > 0.01 {
				t.Errorf("dragged to where 60° is, the leaf stands at %v°", got)
			}
			if d := math.Hypot(s.Grip().X-to.X, s.Grip().Y-to.Y); d > 0.1 {
				t.Errorf("the handle is %v px from the finger", d)
			}
			s.Release()
			s.Move(from)
			if got := s.Swing(); math.Abs(got-60) > 0.01 {
				t.Errorf("let go, the leaf followed to %v°", got)
			}
			if s.Cursor() == "grabbing" {
				t.Error("let go, the hand still grips")
			}
		})
	}
}

func TestDragStaysBetweenClosedAndOpen(t *testing.T) {
	s := newDemo(t)
	s.SetShow(Plan)
	s.Press(s.Grip())
	lo, hi := s.SwingRange()
	for _, p := range []draw.Pt{{X: -1e5, Y: 1e5}, {X: 1e5, Y: -1e5}, {X: math.Inf(1), Y: 0}, {X: math.NaN(), Y: 3}} {
		s.Move(p)
		if got := s.Swing(); !(got >= lo-1e-9 && got <= hi+1e-9) {
			t.Errorf("pointer at %v: %v°, want %v to %v", p, got, lo, hi)
		}
	}
}

func TestDragTheCut(t *testing.T) {
	s := newDemo(t)
	s.Drawing(900, 700)
	was := s.Section()
	from := s.current().SectionGrip()
	s.Press(from)
	s.Move(draw.Pt{X: from.X, Y: from.Y - 100})
	if s.Section() <= was {
		t.Errorf("dragged up the cut went from %v to %v", was, s.Section())
	}
	if d := math.Abs(s.current().SectionGrip().Y - (from.Y - 100)); d > 1 {
		t.Errorf("the line is %v px from the finger", d)
	}
	s.Release()
}

func TestLoupe(t *testing.T) {
	s := newDemo(t)
	s.SetShow(Front)
	s.Drawing(600, 700)
	at := s.current().LensPoint(fit.HeadSide, 600)
	s.Press(at)
	r := s.Look().Reading
	if !r.On || r.Edge != fit.HeadSide || math.Abs(r.Place-600) > 15 {
		t.Errorf("pressed on the head at 600 the loupe reads %+v", r)
	}
	s.Release()
	if !s.Look().Reading.On {
		t.Error("the loupe went with the finger")
	}
	s.Press(draw.Pt{X: 2, Y: 2})
	if s.Look().Reading.On {
		t.Error("pressed elsewhere the loupe stayed")
	}
}

func TestHoverChangesNothingButTheMark(t *testing.T) {
	s := newDemo(t)
	s.Drawing(900, 700)
	look := s.Look()
	s.Move(s.Grip())
	if s.Look() != look {
		t.Errorf("look became %+v", s.Look())
	}
	if s.Cursor() != "grab" {
		t.Errorf("cursor %s over the handle", s.Cursor())
	}
	s.Leave()
	if s.Cursor() != "default" {
		t.Errorf("cursor %s off the drawing", s.Cursor())
	}
}

func TestKeys(t *testing.T) {
	for _, c := range []struct {
		key    string
		fine   bool
		swing  float64
		cut    float64
		acts   bool
		factor bool
	}{
		{"ArrowRight", false, +2, 0, true, false},
		{"ArrowLeft", false, -2, 0, true, false},
		{"ArrowRight", true, +0.1, 0, true, false},
		{"ArrowUp", false, 0, 20, true, false},
		{"ArrowDown", true, 0, -1, true, false},
		{"PageUp", false, 0, 200, true, false},
		{"PageDown", false, 0, -200, true, false},
		{"+", false, 0, 0, true, true},
		{"-", false, 0, 0, true, true},
		{"End", false, 90 - ajar, 0, true, false},
		{"q", false, 0, 0, false, false},
		{"Escape", false, 0, 0, false, false},
	} {
		t.Run(c.key, func(t *testing.T) {
			s := newDemo(t)
			swing, cut, factor := s.Swing(), s.Section(), s.Factor()
			if acted := s.Key(c.key, c.fine); acted != c.acts {
				t.Errorf("acted %v", acted)
			}
			if d := s.Swing() - swing; math.Abs(d-c.swing) > 1e-9 {
				t.Errorf("swing by %v, want %v", d, c.swing)
			}
			if d := s.Section() - cut; math.Abs(d-c.cut) > 1e-9 {
				t.Errorf("cut by %v, want %v", d, c.cut)
			}
			if (s.Factor() != factor) != c.factor {
				t.Errorf("factor from %v to %v", factor, s.Factor())
			}
		})
	}
	s := newDemo(t)
	s.Key("Home", false)
	if lo, _ := s.SwingRange(); math.Abs(s.Swing()-lo) > 1e-9 {
		t.Errorf("Home leads to %v°", s.Swing())
	}
	for range 50 {
		s.Zoom(-1)
	}
	if s.Factor() != 1 {
		t.Errorf("zoomed out all the way the factor is %v, want true size", s.Factor())
	}
}

func TestLookKeepsInRange(t *testing.T) {
	s := newDemo(t)
	s.SetFactor(1e9)
	s.SetSection(math.Inf(1))
	s.SetSwing(math.NaN())
	l := s.Look()
	if l.Factor != MostFactor || math.IsInf(l.Section, 0) || math.IsNaN(l.Swing) {
		t.Errorf("look %+v", l)
	}
	s.SetShow("attic")
	s.SetWords("XX")
	s.SetReading(Reading{Edge: 17})
	if l := s.Look(); l.Show != Both || l.Words != "UK" || l.Reading.Edge != fit.LatchSide {
		t.Errorf("look %+v", l)
	}
}

// The same drawing is not made twice, and any change makes a new one.
func TestDrawingIsMadeOnce(t *testing.T) {
	s := newDemo(t)
	first := s.Drawing(700, 500)
	n := len(first.Marks)
	first.Marks = first.Marks[:1] // a mark of our own: gone once it is made anew
	if len(s.Drawing(700, 500).Marks) != 1 {
		t.Error("made anew though nothing changed")
	}
	s.Picture(300, 300)
	if len(s.Drawing(700, 500).Marks) != 1 {
		t.Error("a picture by the way disturbed the drawing")
	}
	if len(s.Drawing(701, 500).Marks) == 1 {
		t.Error("not made anew for another size")
	}
	s.SetSwing(50)
	if len(s.Drawing(701, 500).Marks) < n/2 {
		t.Error("not made anew after a change")
	}
}

func TestTelling(t *testing.T) {
	s := newDemo(t)
	if h := s.Headline(); !strings.Contains(h, "2.0 mm") || !strings.Contains(h, "head") {
		t.Errorf("headline %q", h)
	}
	if n := len(s.Findings()); n < 6 {
		t.Errorf("%d findings", n)
	}
	if len(s.Conditions()) == 0 || len(s.Cautions()) == 0 {
		t.Error("no conditions or no cautions")
	}
	s.SetReading(Reading{Edge: fit.HeadSide, Place: 100})
	if r := s.ReadOff(); !strings.Contains(r, "mm, ") {
		t.Errorf("the reading %q has no verdict", r)
	}
	gap, shown := s.GapAt(fit.HeadSide, 100)
	if !strings.Contains(s.ReadOff(), s.Length(gap)) || gap > shown+1e-9 {
		t.Errorf("gap %v, shown %v, said %q", gap, shown, s.ReadOff())
	}
	s.SetReading(Reading{Edge: fit.HeadSide, Place: 5000})
	if r := s.ReadOff(); !strings.HasPrefix(r, "There is a gap to read from ") {
		t.Errorf("beyond the head: %q", r)
	}
	s.SetInches(true)
	if h := s.Headline(); strings.Contains(h, "mm") || !strings.Contains(h, `"`) {
		t.Errorf("in inches the headline is %q", h)
	}
	s.SetWords("US")
	if e := s.EdgeName(fit.LatchSide); e != "lock side" {
		t.Errorf("in the US the latch side is called %q", e)
	}
}
