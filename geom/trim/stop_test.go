package trim_test

import (
	"math"
	"testing"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/trim"
)

// A stop in the way holds the leaf; moved, the latch comes home (Fairham: stop-bound,
// move the stop).
func TestStopMoved(t *testing.T) {
	p := caseOne()
	p.Door.Frame.PlantStops(38)
	if f := fitOf(p); !f.StopBound || f.LatchMiss < 1 {
		t.Fatalf("not stop-bound: %v", f.LatchMiss)
	}
	q, done := doneTo(t, p,
		trim.Move{Kind: trim.Restop, Edge: door.LatchSide, First: 4, Last: 4},
		trim.Move{Kind: trim.Restop, Edge: door.HeadSide, First: 2, Last: 4},
		trim.Move{Kind: trim.Restop, Edge: door.HingeSide, First: 3, Last: 3})
	f := fitOf(q)
	if f.StopBound || !done.Frame || done.Off != 0 {
		t.Errorf("still bound: %v, %+v", f.LatchMiss, done)
	}
	is(t, "latch stop gap", f.Stops[fit.LatchSide].Least, 2, 1e-9)
	is(t, "head stop gap half way", f.Stops[fit.HeadSide].At(400), 1, 1e-9)
	is(t, "hinge stop gap", f.Stops[fit.HingeSide].Most, 1, 1e-9)
	q, _ = doneTo(t, caseOne(), trim.Move{Kind: trim.Restop, Edge: door.LatchSide, First: -1, Last: 3})
	g := fitOf(q).Stops[fit.LatchSide]
	is(t, "tapered, half way", g.At(1000), 3, 1e-9)
	is(t, "tapered, at a quarter", g.At(500), 2, 1e-9)
}

// withoutOthers is the door with only one stop in reach of the leaf.
func withoutOthers(d door.Door, e door.Edge) door.Door {
	d = d.Clone()
	f := &d.Frame
	for k, s := range []*geom.Profile{&f.HingeStop, &f.LatchStop, &f.HeadStop} {
		if door.Edge(k) != e {
			*s = geom.Level(-120)
		}
	}
	return d
}

// A stop re-planted to follow a leaf in wind leaves an even gap along it.
func TestStopFollowsWind(t *testing.T) {
	p := caseOne()
	p.Door.Leaf.HangingFace = geom.Through(0, 0, 900, 2, 1990, 0)
	p.Door.Leaf.ClosingFace = geom.Through(0, 0, 1100, 1, 1990, 8)
	for _, e := range []door.Edge{door.HingeSide, door.LatchSide, door.HeadSide} {
		before := fitOf(trim.Piece{Door: withoutOthers(p.Door, e)}).Stops[e]
		if before.Most-before.Least < 1 {
			t.Fatalf("edge %d: an even gap before: %v to %v", e, before.Least, before.Most)
		}
		q, done := doneTo(t, p, trim.Move{Kind: trim.Follow, Edge: e, First: 1.5})
		f := fitOf(trim.Piece{Door: withoutOthers(q.Door, e)})
		is(t, "least gap", f.Stops[e].Least, 1.5, 0.01)
		is(t, "most gap", f.Stops[e].Most, 1.5, 0.01)
		if f.StopBound || !done.Frame {
			t.Errorf("edge %d: bound %v, %+v", e, f.StopBound, done)
		}
	}
	// all three, and the whole leaf lies even on them, home
	q, _ := doneTo(t, p,
		trim.Move{Kind: trim.Follow, Edge: door.LatchSide, First: 1},
		trim.Move{Kind: trim.Follow, Edge: door.HeadSide, First: 1},
		trim.Move{Kind: trim.Follow, Edge: door.HingeSide, First: 1})
	f := fitOf(q)
	for e := range f.Stops {
		is(t, "gap", f.Stops[e].Least, 1, 0.01)
		is(t, "gap", f.Stops[e].Most, 1, 0.01)
	}
}

// The same on many doors, old and worse, measured by the exact fit.
func TestStopFollowsAnyLeaf(t *testing.T) {
	planted, most := 0, 0
	for n := range pieces(400) {
		p := randomPiece(n)
		for _, e := range []door.Edge{door.HingeSide, door.LatchSide, door.HeadSide} {
			q, _, why := trim.Do(p, trim.Move{Kind: trim.Follow, Edge: e, First: 1})
			if why != nil {
				continue // too near the front edge, say
			}
			planted++
			alone := withoutOthers(q.Door, e)
			g := fitOf(trim.Piece{Door: alone}).Stops[e]
			if !(math.Abs(g.Least-1) <= 0.01 && math.Abs(g.Most-1) <= 0.01) {
				t.Fatalf("piece %d, edge %d: gap from %v to %v", n, e, g.Least, g.Most)
			}
			s := [3]geom.Profile{q.Door.Frame.HingeStop, q.Door.Frame.LatchStop, q.Door.Frame.HeadStop}[e]
			most = max(most, len(s))
		}
	}
	if planted < 2*pieces(400) || most > 24 {
		t.Errorf("%d planted, %d stations at most", planted, most)
	}
	t.Logf("%d planted, %d stations at most", planted, most)
}

// A stop of one piece with its jamb is told of, for it can only be planed back or packed;
// it is the same stop afterwards.
func TestStopOfTheSolid(t *testing.T) {
	p := caseOne()
	p.Anatomy.SolidStops = true
	for _, m := range []trim.Move{
		{Kind: trim.Restop, Edge: door.LatchSide, First: 3, Last: -2}, {Kind: trim.Follow, Edge: door.HeadSide, First: 2},
	} {
		planted, plain := doneTo(t, caseOne(), m)
		solid, done := doneTo(t, p, m)
		if minds(plain, trim.SolidStop) || care(done, trim.SolidStop).Member != (trim.Member{Part: trim.StopMember, Edge: m.Edge}) {
			t.Errorf("planted %+v, of the solid %+v", plain, done)
		}
		alike(t, m, fitOf(planted), fitOf(solid), 0)
	}
}
