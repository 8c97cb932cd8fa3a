package trim_test

import (
	"testing"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/trim"
)

// A tapered cut takes a trapezium and leaves an offcut, the kerf less than it is low.
func TestTaperedCut(t *testing.T) {
	p, done := doneTo(t, caseOne(), trim.Move{Kind: trim.Cut, Edge: door.HeadSide, First: 6, Last: 14})
	is(t, "off", done.Off, 792*10, 1e-6)
	is(t, "volume", done.Volume, 792*10*40, 1e-3)
	is(t, "most", done.Most, 14, 1e-9)
	is(t, "half way", p.Door.Leaf.Top.At(396), 1980, 1e-9)
	if len(p.Offcuts) != 1 || done.Cuts != 1 {
		t.Fatalf("%+v, %+v", p.Offcuts, done)
	}
	c := p.Offcuts[0]
	is(t, "offcut's height", c.Height, 6-trim.Kerf, 1e-9)
	is(t, "offcut's length", c.Length, 792, 1e-9)
	if c.Edge != door.HeadSide || c.Thick != 40 || !c.Across {
		t.Errorf("%+v", c)
	}
	f := fitOf(p)
	g := f.Gaps[fit.HeadSide]
	is(t, "head gap at the hanging corner", g.At(g.Range().Lo), 10, 1e-9)
	is(t, "head gap at the closing corner", g.At(g.Range().Hi), 18, 1e-9)

	// of an edge that was crooked: what the line leaves is straight
	p = caseOne()
	p.Door.Leaf.Bottom = geom.Through(0, 1, 300, -2, 792, 3)
	q, done := doneTo(t, p, trim.Move{Kind: trim.Cut, Edge: door.FloorSide, First: 9, Last: 7})
	is(t, "straight", q.Door.Leaf.Bottom.At(396), 10, 1e-9)
	is(t, "most", done.Most, 12, 1e-9)
	// over the crooked line: 9 at one end, 12 at 300, 7 at the other
	is(t, "off", done.Off, 300*(9+12.0)/2+492*(12+7.0)/2, 1e-6)
	is(t, "offcut's height", q.Offcuts[0].Height, 7-trim.Kerf, 1e-9)
}

// A line that runs out of the leaf takes what lies beyond it only; one that lies
// outside takes nothing.
func TestCutRunsOutOfTheLeaf(t *testing.T) {
	p := caseOne()
	p.Door.Leaf.Top = geom.Through(0, 1990, 396, 1994, 792, 1990) // a crown
	q, done := doneTo(t, p, trim.Move{Kind: trim.Cut, Edge: door.HeadSide})
	is(t, "the crown", done.Off, 792*4.0/2, 1e-6)
	is(t, "level", q.Door.Leaf.Top.At(396), 1990, 1e-9)
	if len(q.Offcuts) != 0 {
		t.Errorf("shavings kept: %+v", q.Offcuts)
	}
	p.Door.Leaf.Top = geom.Through(0, 1990, 396, 1986, 792, 1990) // hollow
	q, done = doneTo(t, p, trim.Move{Kind: trim.Cut, Edge: door.HeadSide, First: 2, Last: 2})
	is(t, "two wedges", done.Off, 2*198*2.0/2, 1e-6)
	for _, c := range [][2]float64{{0, 1988}, {99, 1988}, {198, 1988}, {297, 1987}, {396, 1986}, {495, 1987}, {594, 1988}, {792, 1988}} {
		is(t, "top", q.Door.Leaf.Top.At(c[0]), c[1], 1e-9)
	}
	_, _, why := trim.Do(p, trim.Move{Kind: trim.Cut, Edge: door.HeadSide})
	if why == nil || why.About != trim.OffTheLeaf {
		t.Errorf("a line along the corners of a hollow edge: %+v", why)
	}
}

// The offcut of one end as the strip of the other: the kerf is lost.
func TestOffcutUsedAgain(t *testing.T) {
	p, _ := doneTo(t, caseOne(), trim.Move{Kind: trim.Cut, Edge: door.FloorSide, First: 12, Last: 12})
	reuse := trim.Move{Kind: trim.Reuse, Edge: door.HeadSide}
	q, done := doneTo(t, p, reuse)
	is(t, "height", q.Door.Leaf.Top.At(400), 1990+12-trim.Kerf, 1e-9)
	is(t, "on", done.On, 792*9.5, 1e-6)
	is(t, "off", done.Off, 0, 0)
	if len(q.Offcuts) != 0 || len(p.Offcuts) != 1 || len(q.Anatomy.Strips) != 1 || done.Strips != 1 {
		t.Errorf("%+v, %+v", q.Offcuts, q.Anatomy.Strips)
	}
	if s := q.Door.Leaf.Sections[door.HeadSide]; s != (door.Section{}) {
		t.Errorf("not flush: %+v", s)
	}
	reuse.First = 8
	q, _ = doneTo(t, p, reuse)
	is(t, "dressed", q.Door.Leaf.Top.At(400), 1998, 1e-9)
	for _, c := range []struct {
		p     trim.Piece
		m     trim.Move
		about trim.About
		left  float64
	}{
		{p, trim.Move{Kind: trim.Reuse, Edge: door.HeadSide, First: 10}, trim.TooThin, 9.5},
		{p, trim.Move{Kind: trim.Reuse, Edge: door.HeadSide, Hollow: 0.4}, trim.Crooked, 0.4},
		{p, trim.Move{Kind: trim.Reuse, Edge: door.FloorSide}, trim.NoOffcut, 0},
		{caseOne(), reuse, trim.NoOffcut, 0},
		{offcutOf(p, func(c *trim.Offcut) { c.Across = false }), reuse, trim.WrongGrain, 0},
		{offcutOf(p, func(c *trim.Offcut) { c.Length = 700 }), reuse, trim.TooThin, 700},
	} {
		refused(t, c.p, c.m, c.about, c.left)
	}
	// the boards of a boarded leaf stand upright, and so does the grain of its offcut
	p = caseOne()
	p.Anatomy = door.Ordinary(door.Boarded, 792, 1990)
	p, _ = doneTo(t, p, trim.Move{Kind: trim.Cut, Edge: door.FloorSide, First: 12, Last: 12})
	refused(t, p, reuse, trim.WrongGrain, 0)
}

func offcutOf(p trim.Piece, change func(*trim.Offcut)) trim.Piece {
	p = deep(p)
	change(&p.Offcuts[0])
	return p
}

// refused checks that a move is refused for a reason, with what would be left.
func refused(t *testing.T, p trim.Piece, m trim.Move, about trim.About, left float64) *trim.Care {
	t.Helper()
	q, _, why := trim.Do(p, m)
	switch {
	case why == nil || why.About != about || !why.About.Forbids():
		t.Errorf("%+v: %+v, want %v", m, why, about)
	case !same(p, q):
		t.Errorf("%+v: refused, and the piece changed", m)
	default:
		is(t, string(m.Kind)+": left", why.Left, left, 1e-6)
		return why
	}
	return &trim.Care{}
}
