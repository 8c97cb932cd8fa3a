package trim_test

import (
	"testing"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/trim"
)

// A strip follows the edge it is glued to and is as high as it is dressed.
func TestSpliced(t *testing.T) {
	p := caseOne()
	p.Door.Leaf.Top = geom.Through(0, 1980, 300, 1978, 792, 1974)
	m := trim.Move{Kind: trim.Splice, Edge: door.HeadSide, Face: trim.Knuckle, First: 8, Last: 20, Stock: 45}
	q, done := doneTo(t, p, m)
	is(t, "at the hanging corner", q.Door.Leaf.Top.At(0), 1988, 1e-9)
	is(t, "at 300", q.Door.Leaf.Top.At(300), 1978+8+12*300/792.0, 1e-9)
	is(t, "at the closing corner", q.Door.Leaf.Top.At(792), 1994, 1e-9)
	is(t, "on", done.On, 792*14, 1e-6)
	is(t, "volume", done.Volume, 0, 0)
	if len(q.Anatomy.Strips) != 1 || done.Strips != 1 || done.Cuts != 0 || !minds(done, trim.EndGrainGlued) || minds(done, trim.StripThin) {
		t.Fatalf("%+v, %+v", q.Anatomy.Strips, done)
	}
	s := q.Anatomy.Strips[0]
	if s.Stock != 40 || s.Back != 0 || s.Edge != door.HeadSide || s.Joint.At(300) != 1978 {
		t.Errorf("%+v", s)
	}
	if q.Anatomy.Rails[2] != p.Anatomy.Rails[2] {
		t.Errorf("the rail grew: %+v", q.Anatomy.Rails)
	}
	// what is planed off it again comes off the strip first, and then it is gone
	r, _ := doneTo(t, q, trim.Move{Kind: trim.Plane, Edge: door.HeadSide, First: 4, Last: 4})
	if len(r.Anatomy.Strips) != 1 {
		t.Errorf("%+v", r.Anatomy.Strips)
	}
	r, _ = doneTo(t, r, trim.Move{Kind: trim.Cut, Edge: door.HeadSide, First: 5, Last: 17})
	if len(r.Anatomy.Strips) != 0 {
		t.Errorf("%+v", r.Anatomy.Strips)
	}
}

// Thin stock stands back from the faces as it is set.
func TestThinStock(t *testing.T) {
	for _, c := range []struct {
		face        trim.Face
		stock, set  float64
		front, back float64
	}{
		{trim.Knuckle, 40, 0, 0, 0},
		{trim.Knuckle, 60, 0, 0, 0},
		{trim.Knuckle, 34, 0, 0, 6},
		{trim.Knuckle, 34, 2, 2, 4},
		{trim.Stop, 34, 0, 6, 0},
		{trim.Stop, 34, 1, 5, 1},
		{trim.Middle, 34, 0, 3, 3},
		{trim.Knuckle, 34, 8, 8, 0}, // dressed flush behind
	} {
		for e := range door.Edges {
			m := trim.Move{Kind: trim.Splice, Edge: e, Face: c.face, First: 6, Last: 12, Stock: c.stock, SetIn: c.set}
			p, done := doneTo(t, caseOne(), m)
			want := door.Section{KnuckleBack: c.front, StopBack: c.back}
			if s := p.Door.Leaf.Sections[e]; s != want {
				t.Errorf("%+v: %+v", c, s)
			}
			if k := p.Anatomy.Strips[0]; k.Stock != 40-c.front-c.back || k.Back != c.front {
				t.Errorf("%+v: %+v", c, k)
			}
			if !minds(done, trim.StripThin) {
				t.Errorf("%+v: %+v", c, done.Cares)
			}
			if c.front+c.back == 0 {
				continue
			}
			// planed through in part it would leave a step: refused; sawn off whole it is flush again
			if e.Upright() {
				continue
			}
			refused(t, p, trim.Move{Kind: trim.Plane, Edge: e, First: 9, Last: 9}, trim.TooLittle, -3)
			q, done := doneTo(t, p, trim.Move{Kind: trim.Plane, Edge: e, First: 8, Last: 14})
			if s := q.Door.Leaf.Sections[e]; s != (door.Section{}) || len(q.Anatomy.Strips) != 0 {
				t.Errorf("%+v: %+v", c, s)
			}
			is(t, "volume of strip and leaf", done.Volume, 792*(9*(40-c.front-c.back)+2*40), 1e-2)
		}
	}
}

// A strip on the hanging edge brings the gains with it, cut anew; one on the closing
// edge leaves the lock where it is in the leaf.
func TestStilesSpliced(t *testing.T) {
	m := trim.Move{Kind: trim.Splice, Edge: door.HingeSide, Face: trim.Middle, First: 8, Last: 8, Stock: 40}
	p, done := doneTo(t, caseOne(), m)
	f := fitOf(p)
	is(t, "hinge gap", f.Gaps[fit.HingeSide].Least, 4, 1e-9)
	is(t, "latch gap", f.Gaps[fit.LatchSide].Least, -4, 1e-9)
	is(t, "gains cut in the strip", done.Volume, 2*100*2*34, 1e-9)
	if len(done.Gains) != 2 || !minds(done, trim.HingeOnStrip) {
		t.Errorf("%+v", done)
	}
	is(t, "stile", done.Left[0].Now, 115, 1e-9)
	is(t, "with its strip", done.Left[0].FaceNow, 123, 1e-9)

	p = caseOne()
	p.Anatomy.Lock = door.Lock{Kind: door.Mortice, Height: 1000, Backset: 57, Case: 115, Depth: 76}
	m.Edge = door.LatchSide
	m.Last = 10
	q, done := doneTo(t, p, m)
	by := 8 + 2*1000/1990.0
	is(t, "backset", q.Anatomy.Lock.Backset, 57+by, 1e-9)
	is(t, "depth", q.Anatomy.Lock.Depth, 76+by, 1e-9)
	if !minds(done, trim.HingeOnStrip) || len(done.Gains) != 0 {
		t.Errorf("%+v", done)
	}
	q, done = doneTo(t, p, trim.Move{Kind: trim.Plane, Edge: door.LatchSide, First: 2, Last: 2})
	is(t, "backset planed", q.Anatomy.Lock.Backset, 55, 1e-9)
	is(t, "depth planed", q.Anatomy.Lock.Depth, 74, 1e-9)
	if !minds(done, trim.LockDeeper) {
		t.Errorf("%+v", done)
	}
}

// What cannot be glued.
func TestNotGlued(t *testing.T) {
	m := trim.Move{Kind: trim.Splice, Edge: door.HeadSide, Face: trim.Knuckle, First: 10, Last: 10, Stock: 40}
	crooked, low, thin := m, m, m
	crooked.Hollow = 0.31
	low.First, low.Last = 0, 2.9
	thin.Stock, thin.SetIn = 20, 36
	if why := refused(t, caseOne(), crooked, trim.Crooked, 0.31); why.Need != 0.3 {
		t.Errorf("%+v", why)
	}
	refused(t, caseOne(), low, trim.TooThin, 2.9)
	refused(t, caseOne(), thin, trim.TooThin, 4)
	m.Hollow = 0.3
	doneTo(t, caseOne(), m)
}

// A strip makes the face of a rail or a stile wide again and gives its joints nothing:
// what is said is the own timber, and the face beside it. Worked by hand on case 1,
// whose rails and stiles are 115 wide: the top is cut to a taper of 10 to 20, so that 95
// stays at the least, made up with 20, which makes 115 at the closing corner, and planed.
func TestStripIsNoRail(t *testing.T) {
	rail := trim.Member{Part: trim.Rail, Edge: door.HeadSide, Index: 2}
	haunch := trim.Member{Part: trim.Haunch, Index: 2}
	left := func(d trim.Done, m trim.Member) (l trim.Left) {
		for _, l := range d.Left {
			if l.Member == m {
				return l
			}
		}
		return trim.Left{}
	}
	wants := func(what string, l trim.Left, before, now, face, faceNow float64) {
		t.Helper()
		is(t, what+" before", l.Before, before, 1e-9)
		is(t, what+" now", l.Now, now, 1e-9)
		is(t, what+"'s face before", l.FaceBefore, face, 1e-9)
		is(t, what+"'s face now", l.FaceNow, faceNow, 1e-9)
	}
	p := caseOne()
	p, done := doneTo(t, p, trim.Move{Kind: trim.Cut, Edge: door.HeadSide, First: 10, Last: 20})
	wants("cut, the rail", left(done, rail), 115, 95, 115, 95)
	wants("cut, the haunch", left(done, haunch), 38, 18, 0, 0)
	p, done = doneTo(t, p, trim.Move{Kind: trim.Splice, Edge: door.HeadSide, Face: trim.Middle, First: 20, Last: 20, Stock: 40})
	wants("spliced, the rail", left(done, rail), 95, 95, 95, 115)
	p, done = doneTo(t, p, trim.Move{Kind: trim.Plane, Edge: door.HeadSide, First: 5, Last: 5})
	wants("planed, the rail", left(done, rail), 95, 95, 115, 110)
	if l := left(done, haunch); l != (trim.Left{}) {
		t.Errorf("the strip's planing is counted on the haunch: %+v", l)
	}
	// 12 more leaves 3 of the strip: none of the rail is reached
	q, done := doneTo(t, p, trim.Move{Kind: trim.Plane, Edge: door.HeadSide, First: 12, Last: 12})
	wants("to the joint, the rail", left(done, rail), 95, 95, 110, 98)
	// 4 beyond the joint
	_, done = doneTo(t, q, trim.Move{Kind: trim.Plane, Edge: door.HeadSide, First: 7, Last: 7})
	wants("through it, the rail", left(done, rail), 95, 91, 98, 91)
	wants("through it, the haunch", left(done, haunch), 18, 14, 0, 0)
	// the lock rail is not come to
	for _, l := range done.Left {
		if l.Member.Part == trim.Rail && l.Member.Index != 2 {
			t.Errorf("%+v", l)
		}
	}

	// a stile likewise: what a strip made up for is not there to be planed off the joints
	stile := trim.Member{Part: trim.Stile, Edge: door.LatchSide}
	p, done = doneTo(t, caseOne(), trim.Move{Kind: trim.Plane, Edge: door.LatchSide, First: 30, Last: 30},
		trim.Move{Kind: trim.Splice, Edge: door.LatchSide, Face: trim.Middle, First: 30, Last: 30, Stock: 40})
	wants("spliced, the stile", left(done, stile), 85, 85, 85, 115)
	_, done = doneTo(t, p, trim.Move{Kind: trim.Plane, Edge: door.LatchSide, First: 12, Last: 12})
	wants("planed, the stile", left(done, stile), 85, 85, 115, 103)
	if minds(done, trim.Slender) {
		t.Error("the old timber is not touched")
	}
	p, _ = doneTo(t, p, trim.Move{Kind: trim.Plane, Edge: door.LatchSide, First: 29, Last: 29})
	refused(t, p, trim.Move{Kind: trim.Plane, Edge: door.LatchSide, First: 29, Last: 29}, trim.TooLittle, 57)
}
