package hand_test

import (
	"math"
	"os"
	"path/filepath"
	"testing"

	"leafwright/game"
	"leafwright/game/draw"
	"leafwright/game/lesson"
	"leafwright/game/lesson/hand"
	"leafwright/geom/door"
	"leafwright/geom/trim"
)

// lessons are our own.
func lessons(t *testing.T) (all []*lesson.Lesson) {
	t.Helper()
	files, err := filepath.Glob(filepath.FromSlash("../../../testdata/lessons/[0-9]*.json"))
	if err != nil || len(files) < 10 {
		t.Fatal(files, err)
	}
	for _, f := range files {
		data, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		l, err := lesson.Parse(filepath.Base(f), data)
		if err != nil {
			t.Fatal(f, err)
		}
		all = append(all, l)
	}
	return all
}

// phone and table are pictures on a phone and on a large screen.
var phone, table = draw.View{Width: 308, Height: 370}, draw.View{Width: 700, Height: 640}

func handed(job game.Job, right bool) *game.Job {
	job.Hand = game.Left
	if right {
		job.Hand = game.Right
	}
	return &job
}

// A picture gives nothing away: no figure, nothing that says how a gap is, with a tool
// in hand or none.
func TestPictureTellsNothing(t *testing.T) {
	for _, l := range lessons(t) {
		for _, tool := range []*hand.Tool{nil, hand.ToolOf("plane"), hand.ToolOf("hinge"), hand.ToolOf("saw")} {
			p := hand.Show(&l.Job, tool, phone)
			for _, m := range p.List().Marks {
				if m.Kind == draw.Text || m.Ink >= draw.BindFill && m.Ink <= draw.SlackHatch || m.Ink == draw.Datum {
					t.Fatalf("%s: the picture has a mark %v of ink %d", l.Title, m.Kind, m.Ink)
				}
			}
			for _, m := range p.Over().Marks {
				if m.Kind == draw.Text {
					t.Fatalf("%s: with nothing done %q lies over it", l.Title, m.Text)
				}
			}
			if (len(p.Over().Marks) > 0) != (tool != nil && tool.Kind != "plane") {
				t.Errorf("%s: %v shows %d marks of what it can take", l.Title, tool, len(p.Over().Marks))
			}
		}
	}
}

// What is written over the picture while a tool works is the amount, and no gap: on two
// doors that differ in nothing but their frames it is the same.
func TestStrokeTellsItsAmountAlone(t *testing.T) {
	l := lessons(t)[0]
	p := hand.Show(&l.Job, hand.ToolOf("plane"), phone)
	if _, ok := p.Work(stroke(p, door.LatchSide, 400, 1500)); !ok {
		t.Fatal("a stroke along the closing edge is no move")
	}
	var said []string
	for _, m := range p.Over().Marks {
		if m.Kind == draw.Text {
			said = append(said, m.Text)
		}
	}
	if len(said) != 1 || said[0] != "0.5 mm off" {
		t.Errorf("over the picture stands %q", said)
	}
}

func stroke(p *hand.Picture, e door.Edge, from, to float64) hand.Stroke {
	return hand.Stroke{From: p.Spot(e, from), To: p.Spot(e, to), Moved: true, Shaving: 0.5}
}

// A stroke along each edge, of either hand and at either size, is one shaving off that
// edge between about the places where it began and ended; from end to end it is the
// whole edge.
func TestStrokesArePlaning(t *testing.T) {
	l := lessons(t)[0]
	leaf := l.Job.Stands().Door.Leaf
	c := leaf.Corners(0)
	long := map[door.Edge]float64{door.HingeSide: c.HangingHead.Y, door.LatchSide: c.ClosingHead.Y, door.HeadSide: c.ClosingHead.X, door.FloorSide: c.ClosingFoot.X}
	for _, right := range []bool{false, true} {
		for _, v := range []draw.View{phone, table} {
			p := hand.Show(handed(l.Job, right), hand.ToolOf("plane"), v)
			for e := range door.Edges {
				m, ok := p.Work(stroke(p, e, long[e]*0.3, long[e]*0.6))
				if !ok || m.Kind != trim.Plane || m.Edge != e || m.First != 0.5 || m.Last != 0.5 ||
					math.Abs(m.From-long[e]*0.3) > 12 || math.Abs(m.To-long[e]*0.6) > 12 {
					t.Errorf("right %v, %gx%g: a stroke along edge %d is %+v, %v", right, v.Width, v.Height, e, m, ok)
				}
				again := stroke(p, e, long[e]*0.3, long[e]*0.6)
				again.Before = &m
				if two, ok := p.Work(again); !ok || two.First != 1 || two.From != m.From {
					t.Errorf("a second stroke makes it %+v, %v", two, ok)
				}
				whole := stroke(p, e, long[e]*0.02, long[e]*0.98)
				whole.Before = &m
				if m, ok := p.Work(whole); !ok || m.From != 0 || m.To != 0 || m.First != 0.5 {
					t.Errorf("from end to end it is %+v, %v", m, ok)
				}
			}
			// lifted far off, pressed on nothing, or only tapped: no move
			off := stroke(p, door.LatchSide, 500, 900)
			off.To.X += 250
			nothing := stroke(p, door.LatchSide, 500, 900)
			nothing.From = draw.Pt{X: 1, Y: 1}
			tapped := stroke(p, door.LatchSide, 500, 500)
			tapped.Moved = false
			nan := stroke(p, door.LatchSide, 500, 900)
			nan.To.X = math.NaN()
			for _, s := range []hand.Stroke{off, nothing, tapped, nan} {
				if m, ok := p.Work(s); ok {
					t.Errorf("%+v is taken for %+v", s, m)
				}
			}
		}
	}
}

// A tapped hinge goes deeper, or is packed; one that is dragged moves as far as it was.
func TestHingesByHand(t *testing.T) {
	l := lessons(t)[0]
	for _, right := range []bool{false, true} {
		p := hand.Show(handed(l.Job, right), hand.ToolOf("hinge"), phone)
		for i := 1; i <= len(l.Job.Stands().Door.Hinges); i++ {
			at := p.Hinge(i)
			s := hand.Stroke{From: at, To: at, Shaving: 0.5}
			if m, ok := p.Work(s); !ok || m.Kind != trim.Sink || m.Hinge != i || m.First != 0.5 {
				t.Errorf("hinge %d tapped: %+v, %v", i, m, ok)
			}
			s.Packs = true
			if m, ok := p.Work(s); !ok || m.Kind != trim.Pack || m.Hinge != i {
				t.Errorf("hinge %d tapped to pack: %+v, %v", i, m, ok)
			}
			s.Packs, s.Home = false, true
			if m, ok := p.Work(s); !ok || m.Kind != trim.Pack || m.Hinge != i || m.On != trim.OnJamb || m.First != -0.5 {
				t.Errorf("hinge %d tapped to draw it home: %+v, %v", i, m, ok)
			}
			s.Moved, s.To.Y = true, at.Y-12
			if m, ok := p.Work(s); !ok || m.Kind != trim.Shift || m.Hinge != i || m.First != 3 {
				t.Errorf("hinge %d dragged 12 px up: %+v, %v", i, m, ok)
			}
			s.To.Y = at.Y
			if m, ok := p.Work(s); ok {
				t.Errorf("hinge %d dragged nowhere: %+v", i, m)
			}
		}
	}
}

// The saw's line goes with the hand, an end of it or all of it, and never out of the leaf.
func TestSawByHand(t *testing.T) {
	l := lessons(t)[0]
	for _, right := range []bool{false, true} {
		for _, v := range []draw.View{phone, table} {
			p := hand.Show(handed(l.Job, right), hand.ToolOf("saw"), v)
			for e, down := range map[door.Edge]float64{door.HeadSide: 1, door.FloorSide: -1} {
				for _, end := range []int{-1, 0, 1} {
					at := p.Grip(e, end)
					s := hand.Stroke{From: at, To: draw.Pt{X: at.X, Y: at.Y + down*24}, Moved: true}
					m, ok := p.Work(s)
					first, last := 3.0, 3.0
					if end > 0 {
						first = 0
					}
					if end < 0 {
						last = 0
					}
					if !ok || m.Kind != trim.Cut || m.Edge != e || m.First != first || m.Last != last {
						t.Errorf("right %v: edge %d, end %d dragged 24 px in: %+v, %v", right, e, end, m, ok)
					}
					s.To.Y = at.Y - down*24
					if m, ok := p.Work(s); ok {
						t.Errorf("dragged out of the leaf: %+v", m)
					}
				}
			}
		}
	}
}
