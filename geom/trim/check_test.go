package trim_test

import (
	"math"
	"strings"
	"testing"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/trim"
)

// What is wrong with a move's numbers is said by the job file's field names, all at once.
func TestMoveChecked(t *testing.T) {
	plane := trim.Move{Kind: trim.Plane, Edge: door.LatchSide, First: 1, Last: 1}
	for _, c := range []struct {
		what   string
		change func(m *trim.Move)
		paths  string
	}{
		{"sound", func(m *trim.Move) {}, ""},
		{"no such kind", func(m *trim.Move) { m.Kind = "varnish" }, "do"},
		{"no such edge", func(m *trim.Move) { m.Edge = 7 }, "edge"},
		{"too much", func(m *trim.Move) { m.First = 51 }, "first"},
		{"below nought", func(m *trim.Move) { m.Last = -0.1 }, "last"},
		{"no numbers", func(m *trim.Move) { m.First, m.Last = math.NaN(), math.Inf(1) }, "first last"},
		{"backwards", func(m *trim.Move) { m.From, m.To = 500, 300 }, "to"},
		{"a point", func(m *trim.Move) { m.From, m.To = 500, 500.5 }, "to"},
		{"off any leaf", func(m *trim.Move) { m.From, m.To = -600, 4100 }, "from to"},
		{"fields of others", func(m *trim.Move) {
			m.Face, m.Hinge, m.On, m.Line, m.Angle = trim.Stop, 1, trim.OnLeaf, geom.Level(1), 0.1
			m.Stock, m.SetIn, m.Hollow = 40, 1, 0.1
			m.Closed, m.Plates, m.Pin, m.LeafGain, m.JambGain = 6, 75, 5, 2, 2
			m.Cover, m.Wide = 1, 1
		}, "face hinge on line angle stock set_in hollow closed plates pin leaf_gain jamb_gain cover wide"},
		{"no line", func(m *trim.Move) { *m = trim.Move{Kind: trim.Scribe} }, "line"},
		{"a bad line", func(m *trim.Move) {
			*m = trim.Move{Kind: trim.Scribe, Line: geom.Through(0, 1, 0.5, 1, 100, 60, 200, -1, math.NaN(), 1)}
		}, "line[1] line[2] line[3] line[4]"},
		{"a side is not sawn", func(m *trim.Move) { *m = trim.Move{Kind: trim.Cut, Edge: door.HingeSide, First: 1} }, "edge"},
		{"undercut is the foot's", func(m *trim.Move) { *m = trim.Move{Kind: trim.Undercut, Edge: door.HeadSide, Cover: -1} }, "edge cover"},
		{"too steep", func(m *trim.Move) {
			*m = trim.Move{Kind: trim.Bevel, Edge: door.LatchSide, Angle: 15.1 * geom.Degree}
		}, "angle"},
		{"steep", func(m *trim.Move) { *m = trim.Move{Kind: trim.Bevel, Edge: door.LatchSide, Angle: 15 * geom.Degree} }, ""},
		{"no arris in the middle", func(m *trim.Move) { *m = trim.Move{Kind: trim.Ease, Face: trim.Middle, First: 11} }, "face first"},
		{"no face, no stock", func(m *trim.Move) { *m = trim.Move{Kind: trim.Splice, First: 9, Last: 9} }, "face stock"},
		{"no part", func(m *trim.Move) { *m = trim.Move{Kind: trim.Sink, Hinge: -1, First: 1} }, "hinge on"},
		{"seventh hinge", func(m *trim.Move) { *m = trim.Move{Kind: trim.Pack, Hinge: 7, On: trim.OnLeaf, First: 1} }, "hinge"},
		{"no hinge", func(m *trim.Move) { *m = trim.Move{Kind: trim.Rehinge, Pin: 99} }, "closed plates pin"},
		{"no stop at the floor", func(m *trim.Move) { *m = trim.Move{Kind: trim.Restop, Edge: door.FloorSide} }, "edge"},
		{"no width", func(m *trim.Move) { *m = trim.Move{Kind: trim.Threshold, Cover: 3} }, "wide"},
	} {
		m := plane
		c.change(&m)
		var paths []string
		for _, f := range m.Check() {
			paths = append(paths, f.Path)
			if f.Want == "" {
				t.Errorf("%s: %+v says nothing", c.what, f)
			}
		}
		if got := strings.Join(paths, " "); got != c.paths {
			t.Errorf("%s: faults at %q, want %q", c.what, got, c.paths)
		}
		_, _, why := trim.Do(caseOne(), m)
		if c.paths != "" && (why == nil || why.About != trim.Numbers || len(why.Faults) != len(paths)) {
			t.Errorf("%s: %+v", c.what, why)
		}
	}
	f := (&trim.Move{Kind: trim.Cut, Edge: door.HeadSide, From: 20}).Check()[0]
	if got := f.Error(); got != "from: 20 is not wanted for cut: leave it out" {
		t.Error(got)
	}
}

// Every kind is in the table once, and what is said of it agrees with itself.
func TestKinds(t *testing.T) {
	seen := map[trim.Kind]bool{}
	for i := range trim.Kinds {
		s := &trim.Kinds[i]
		if seen[s.Kind] || trim.SpecOf(s.Kind) != s {
			t.Errorf("%s twice", s.Kind)
		}
		seen[s.Kind] = true
		if (s.Needs&trim.NeedEdge != 0) != (len(s.Edges) > 0) {
			t.Errorf("%s: edges %v", s.Kind, s.Edges)
		}
		if (s.Needs&(trim.NeedFirst|trim.NeedLast|trim.NeedLine) != 0) != (s.Amount != door.Range{}) || s.Amount.Lo > s.Amount.Hi {
			t.Errorf("%s: amount %v", s.Kind, s.Amount)
		}
		if s.TakesOff && s.Trade != trim.TheLeaf {
			t.Errorf("%s takes off the leaf and is no work on it", s.Kind)
		}
	}
	if len(seen) != 19 || trim.SpecOf("varnish") != nil || trim.SpecOf("") != nil {
		t.Errorf("%d kinds", len(seen))
	}
}

// A piece that is no door at all, or one of no numbers, is refused and nothing else.
func TestNoDoor(t *testing.T) {
	nan := math.NaN()
	wild := crookedPiece()
	wild.Door.Leaf.Closing = geom.Through(0, nan, nan, 3, math.Inf(1), nan)
	wild.Door.Leaf.Top = geom.Through(5, 1, 5, 2, 5, math.Inf(-1))
	wild.Anatomy.Rails[0].From = nan
	empty := trim.Piece{}
	empty.Anatomy.Make = door.Framed
	empty.Anatomy.Joints.Kind = door.Stub
	for _, p := range []trim.Piece{{}, empty, wild} {
		c := throw(11)
		for range 500 {
			ref := caseOne()
			q, _, why := trim.Do(p, c.move(&ref))
			if why == nil || !why.About.Forbids() || !same(p, q) {
				t.Fatalf("%+v", why)
			}
		}
	}
}

// crookedPiece is caseOne out of true all round.
func crookedPiece() trim.Piece {
	p := caseOne()
	l := &p.Door.Leaf
	l.Hanging, l.Closing = geom.Through(0, 0.3, 700, -0.6, 1990, 0.2), geom.Through(0, 791, 800, 793.1, 1990, 790.4)
	l.Top, l.Bottom = geom.Through(0, 1989, 333, 1991.3, 792, 1990.2), geom.Through(0, 0.7, 410, -1.1, 792, 0.4)
	l.ClosingFace, l.ClosingBevel = geom.Through(0, 0, 1990, 4.7), 2*geom.Degree
	p.Anatomy.Lock = door.Lock{Kind: door.Mortice, Height: 1000, Backset: 57, Case: 115, Depth: 76}
	return p
}
