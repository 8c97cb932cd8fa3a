package trim_test

import (
	"testing"

	"leafwright/geom/door"
	"leafwright/geom/trim"
)

// care gives the care about it, one of none if it is not minded.
func care(d trim.Done, about trim.About) trim.Care {
	for _, c := range d.Cares {
		if c.About == about {
			return c
		}
	}
	return trim.Care{}
}

// An ordinary four-panel leaf: cutting more than 1½ in off the bottom reaches the
// tenon (International Correspondence Schools, vol. 2 s. 36), the wedge stands beside
// it, and the haunch fills the rest.
func TestIntoTheJoint(t *testing.T) {
	cut := func(e door.Edge, by float64) trim.Move {
		return trim.Move{Kind: trim.Cut, Edge: e, First: by, Last: by}
	}
	p := caseOne()
	for e, rail := range map[door.Edge]int{door.FloorSide: 0, door.HeadSide: 2} {
		_, done := doneTo(t, p, cut(e, 20))
		c := care(done, trim.IntoHaunch)
		is(t, "haunch", c.Left, 18, 1e-9)
		is(t, "haunch as it was", c.Need, 38, 1e-9)
		if c.Member != (trim.Member{Part: trim.Haunch, Index: rail}) {
			t.Errorf("%+v", c)
		}
		doneTo(t, p, cut(e, 28))
		why := refused(t, p, cut(e, 29), trim.IntoWedge, 9)
		is(t, "wedge", why.Need, 10, 0)
		refused(t, p, cut(e, 40), trim.IntoTenon, -2)
		// in two goes it is the same: the tenon stays where it is in the timber
		q, _ := doneTo(t, p, cut(e, 20))
		refused(t, q, cut(e, 9), trim.IntoWedge, 9)
		refused(t, q, cut(e, 20), trim.IntoTenon, -2)
		_, done = doneTo(t, q, cut(e, 5))
		is(t, "haunch after two", care(done, trim.IntoHaunch).Left, 13, 1e-9)
	}
	p.Anatomy.Joints.Wedge = 0
	doneTo(t, p, cut(door.FloorSide, 38))
	refused(t, p, cut(door.FloorSide, 38.1), trim.IntoTenon, -0.1)
	// tapered: what counts is the tenon's own place, in the stiles
	refused(t, p, trim.Move{Kind: trim.Cut, Edge: door.FloorSide, Last: 40}, trim.IntoTenon, -2)
	p.Anatomy.Joints.Kind, p.Anatomy.Joints.Tenon = door.Stub, 50
	_, done := doneTo(t, p, trim.Move{Kind: trim.Cut, Edge: door.FloorSide, Last: 40})
	is(t, "haunch at the stub's end", care(done, trim.IntoHaunch).Left, 38-40*(792-65)/792.0, 1e-9)
}

// A rail or stile keeps half of itself or 50 mm, and is slender below three quarters.
func TestStilesAndRailsLeft(t *testing.T) {
	p := caseOne()
	p.Anatomy.Joints = door.Joints{} // not known
	cut := trim.Move{Kind: trim.Cut, Edge: door.HeadSide, First: 20, Last: 30}
	q, done := doneTo(t, p, cut)
	if len(done.Left) != 1 || done.Left[0] != (trim.Left{Member: trim.Member{Part: trim.Rail, Edge: door.HeadSide, Index: 2}, Before: 115, Now: 85, FaceBefore: 115, FaceNow: 85}) {
		t.Errorf("%+v", done.Left)
	}
	is(t, "slender", care(done, trim.Slender).Need, 86.25, 1e-9)
	is(t, "rail's end", q.Anatomy.Rails[2].To, 1970, 1e-9)
	if faults := q.Anatomy.Check(&q.Door.Leaf); len(faults) > 0 {
		t.Error(faults)
	}
	cut.First, cut.Last = 57, 58
	refused(t, p, cut, trim.TooLittle, 57)
	is(t, "needed", refused(t, q, trim.Move{Kind: trim.Plane, Edge: door.HeadSide, First: 28, Last: 28}, trim.TooLittle, 57).Need, 57.5, 1e-9)

	for e, member := range map[door.Edge]trim.Member{
		door.HingeSide: {Part: trim.Stile, Edge: door.HingeSide}, door.LatchSide: {Part: trim.Stile, Edge: door.LatchSide},
	} {
		plane := trim.Move{Kind: trim.Plane, Edge: e, First: 3, Last: 6}
		q, done := doneTo(t, p, plane)
		if len(done.Left) != 1 || done.Left[0].Member != member || done.Left[0].Before != 115 {
			t.Errorf("%+v", done.Left)
		}
		is(t, "stile", done.Left[0].Now, 109, 1e-9)
		if q.Anatomy.HangingStile != 115 || q.Anatomy.ClosingStile != 115 {
			t.Errorf("laid out anew: %+v", q.Anatomy)
		}
		plane.First, plane.Last = 30, 30
		q, done = doneTo(t, q, plane)
		is(t, "slender together", care(done, trim.Slender).Left, 79, 1e-9)
		plane.First, plane.Last = 25, 25
		is(t, "needed", refused(t, q, plane, trim.TooLittle, 54).Need, 57.5, 1e-9)
	}
}

// Stub tenons and dowels want timber beyond their ends.
func TestBeyondTheStub(t *testing.T) {
	for _, k := range []door.JointKind{door.Stub, door.Dowelled} {
		for _, e := range []door.Edge{door.HingeSide, door.LatchSide} {
			p := caseOne()
			p.Anatomy.Joints = door.Joints{Kind: k, Tenon: 100, Haunch: 38}
			doneTo(t, p, trim.Move{Kind: trim.Plane, Edge: e, First: 9, Last: 9})
			why := refused(t, p, trim.Move{Kind: trim.Plane, Edge: e, First: 9.5, Last: 9.5}, trim.IntoTenon, 5.5)
			is(t, "beyond it", why.Need, 6, 0)
			// between the rails there is no tenon
			doneTo(t, p, trim.Move{Kind: trim.Plane, Edge: e, From: 350, To: 650, First: 12, Last: 12})
		}
	}
}

// Lock, plates and glass.
func TestFittingsLeft(t *testing.T) {
	p := caseOne()
	p.Anatomy.Joints = door.Joints{}
	p.Anatomy.Lock = door.Lock{Kind: door.Mortice, Height: 1000, Backset: 20, Case: 115, Depth: 40}
	refused(t, p, trim.Move{Kind: trim.Plane, Edge: door.LatchSide, First: 6, Last: 6}, trim.IntoLock, 14)
	p.Anatomy.Lock = door.Lock{Kind: door.Mortice, Height: 1900, Backset: 57, Case: 100, Depth: 76}
	doneTo(t, p, trim.Move{Kind: trim.Cut, Edge: door.HeadSide, First: 40, Last: 40})
	refused(t, p, trim.Move{Kind: trim.Cut, Edge: door.HeadSide, First: 42, Last: 42}, trim.IntoLock, -2)
	doneTo(t, p, trim.Move{Kind: trim.Cut, Edge: door.HeadSide, First: 50, Last: 0})

	p = caseOne()
	p.Anatomy.Joints = door.Joints{}
	p.Door.Hinges[0].LeafHeight, p.Door.Hinges[0].JambHeight = 1910, 1916 // plates from 1860 to 1960
	doneTo(t, p, trim.Move{Kind: trim.Cut, Edge: door.HeadSide, First: 29, Last: 29})
	refused(t, p, trim.Move{Kind: trim.Cut, Edge: door.HeadSide, First: 32, Last: 32}, trim.IntoHinge, -2)

	p = caseOne()
	p.Anatomy.Joints, p.Anatomy.Panels = door.Joints{}, door.Glass
	p.Anatomy.Rails[2].From = 1960
	refused(t, p, trim.Move{Kind: trim.Cut, Edge: door.HeadSide, First: 20, Last: 20}, trim.IntoGlass, -2)
}

// A flush leaf bears 3/16 in a side (a maker's sheet).
func TestFlushLeafBearsLittle(t *testing.T) {
	p := caseOne()
	p.Anatomy = door.Ordinary(door.Flush, 792, 1990)
	p, done := doneTo(t, p, trim.Move{Kind: trim.Plane, Edge: door.LatchSide, First: 4.7, Last: 4.7})
	if minds(done, trim.Slender) {
		t.Errorf("%+v", done.Cares)
	}
	_, done = doneTo(t, p, trim.Move{Kind: trim.Plane, Edge: door.LatchSide, First: 0.1, Last: 0.1})
	if !minds(done, trim.Slender) {
		t.Errorf("%+v", done.Cares)
	}
}

// A rated leaf takes no trimming; what is done to its hinges, stops and jambs is of
// the set its label covers.
func TestRated(t *testing.T) {
	c := throw(7)
	p := caseOne()
	p.Anatomy.Rated = true
	for i := range trim.Kinds {
		s := &trim.Kinds[i]
		m := c.moveOf(s, &p)
		m.Off = false
		if s.Kind == trim.Ease {
			m.Face = trim.Stop
		}
		if len(m.Check()) > 0 {
			t.Fatalf("%+v: %v", m, m.Check())
		}
		if s.TakesOff {
			refused(t, p, m, trim.Rated, 0)
			continue
		}
		if s.Needs&trim.NeedOn != 0 {
			m.On = trim.OnJamb
		}
		if s.Kind == trim.Rehinge {
			m.LeafGain, m.Plates = 2, 100
		}
		_, done, why := trim.Do(p, m)
		if why == nil && !minds(done, trim.RatedSet) || why != nil && why.About == trim.Rated {
			t.Errorf("%+v: %+v, %+v", m, done, why)
		}
	}
	for _, on := range []trim.Part{trim.OnLeaf, trim.OnBoth} {
		refused(t, p, trim.Move{Kind: trim.Sink, On: on, First: 1}, trim.Rated, 0)
	}
	refused(t, p, trim.Move{Kind: trim.Shift, Hinge: 1, On: trim.OnLeaf, First: 10}, trim.Rated, 0)
	packed := deep(p)
	packed.Door.Hinges[0].LeafPacker = 2 // only the packing would come out; still a gain in a rated leaf
	refused(t, packed, trim.Move{Kind: trim.Sink, Hinge: 1, On: trim.OnLeaf, First: 1}, trim.Rated, 0)
	refused(t, p, trim.Move{Kind: trim.Rehinge, Closed: 8, Plates: 125, Pin: 5, LeafGain: 2, JambGain: 2}, trim.Rated, 0)
}

// Members stay inside the leaf whatever is done, and a move that cannot be measured
// says what is wrong with the door it would make.
func TestSpoiltDoor(t *testing.T) {
	p := caseOne()
	p.Anatomy = door.Ordinary(door.Boarded, 792, 1990)
	why := refused(t, p, trim.Move{Kind: trim.Plane, Edge: door.HingeSide, From: 900, To: 901, First: 0, Last: 50}, trim.DoorSpoilt, 0)
	if len(why.Faults) == 0 {
		t.Errorf("%+v", why)
	}
	for n := range 100 {
		q := randomPiece(n)
		c := throw(5_000_000 + n)
		q, _ = trim.All(q, c.moves(12, &q))
		if faults := q.Anatomy.Check(&q.Door.Leaf); len(faults) > 0 {
			t.Fatalf("piece %d: %v", n, faults)
		}
	}
}
