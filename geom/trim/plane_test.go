package trim_test

import (
	"math"
	"testing"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/trim"
)

// A plane set down and lifted inside an edge takes a trapezium, with a run-out of
// 100 mm at either end: half of what a full 100 mm would be.
func TestStrokeRunsOut(t *testing.T) {
	p, done := doneTo(t, caseOne(), trim.Move{Kind: trim.Plane, Edge: door.LatchSide, From: 500, To: 700, First: 2, Last: 2})
	is(t, "off", done.Off, 2*200+2*(100*2.0/2), 1e-6)
	is(t, "volume", done.Volume, 40*600, 1e-3)
	is(t, "most", done.Most, 2, 1e-12)
	b := p.Door.Leaf.Closing
	for _, c := range [][2]float64{{0, 792}, {300, 792}, {400, 792}, {450, 791}, {500, 790}, {600, 790}, {700, 790}, {750, 791}, {800, 792}, {1990, 792}, {2500, 792}} {
		is(t, "closing edge", b.At(c[0]), c[1], 1e-9)
	}
	g := fitOf(p).Gaps[fit.LatchSide]
	is(t, "gap in the hollow", g.At(606), 6, 1e-6)
	is(t, "gap beside it", g.At(1200), 4, 1e-6)

	// at the edge's own end there is nothing to run out over
	_, done = doneTo(t, caseOne(), trim.Move{Kind: trim.Plane, Edge: door.HeadSide, From: 0, To: 200, First: 3, Last: 1})
	is(t, "off from the end", done.Off, 200*(3+1)/2.0+100*1/2.0, 1e-6)
	is(t, "most at the end", done.Most, 3, 1e-9)

	// and one that would run past the end is cut short by it
	_, done = doneTo(t, caseOne(), trim.Move{Kind: trim.Plane, Edge: door.FloorSide, From: 200, To: 752, First: 1, Last: 1})
	is(t, "off to the end", done.Off, 100/2.0+552+40*(1+0.6)/2, 1e-6)
}

// A planed edge keeps its bends, and the amounts bring theirs.
func TestPlanedEdgeIsASum(t *testing.T) {
	p := caseOne()
	p.Door.Leaf.Closing = geom.Through(0, 791, 400, 793, 1000.4, 790, 1990, 792)
	was := p.Door.Clone().Leaf.Closing
	q, _ := doneTo(t, p, trim.Move{Kind: trim.Plane, Edge: door.LatchSide, From: 300, To: 1000, First: 1, Last: 3})
	now := q.Door.Leaf.Closing
	for _, c := range [][2]float64{{0, 0}, {200, 0}, {250, 0.5}, {300, 1}, {400, 1 + 2.0/7}, {650, 2}, {900, 1 + 2*6.0/7}, {1000, 3}, {1050, 1.5}, {1100, 0}, {1990, 0}} {
		is(t, "off", was.At(c[0])-now.At(c[0]), c[1], 1e-2) // 1000 and 1000.4 are one place
	}
	if faults := door.CheckProfile("leaf.closing", now, door.Place, door.LeafWidth); len(faults) > 0 {
		t.Error(faults)
	}
	// stroke after stroke at ever other places: the edge keeps to what a door may have
	for i := range 60 {
		at := 100 + float64(i)*27.3
		q, _ = doneTo(t, q, trim.Move{Kind: trim.Plane, Edge: door.LatchSide, From: at, To: at + 150, First: 0.1, Last: 0.2})
	}
	if n := len(q.Door.Leaf.Closing); n > door.Stations {
		t.Errorf("%d stations", n)
	}
}

// Planing the hanging edge leaves the gains' floors, and so the leaf, where it hung;
// the gap grows by what is off.
func TestHangingEdgePlaned(t *testing.T) {
	before := fitOf(caseOne())
	p, done := doneTo(t, caseOne(), trim.Move{Kind: trim.Plane, Edge: door.HingeSide, First: 0.5, Last: 1.5})
	f := fitOf(p)
	for _, corner := range []geom.Vec{{}, {X: 792, Y: 1990}} {
		if d := f.Place(corner, f.Closed).Sub(before.Place(corner, before.Closed)).Len(); d > 1e-9 {
			t.Errorf("the timber moved by %v", d)
		}
	}
	is(t, "hinge gap at the foot", f.Gaps[fit.HingeSide].At(6), 4.5, 1e-9)
	is(t, "hinge gap at the head", f.Gaps[fit.HingeSide].At(1996), 5.5, 1e-9)
	is(t, "latch gap", f.Gaps[fit.LatchSide].Least, before.Gaps[fit.LatchSide].Least, 1e-9)
	is(t, "gain at the top", p.Door.Hinges[0].LeafGain, 2-(0.5+1750.0/1990), 1e-9)
	if !minds(done, trim.GainShallow) {
		t.Errorf("%+v", done)
	}
	is(t, "stile", done.Left[0].Now, 115-1.5, 1e-9)
	is(t, "stile before", done.Left[0].Before, 115, 0)

	// past the gains' floors the seats are planed too, and the leaf comes along
	p, _ = doneTo(t, caseOne(), trim.Move{Kind: trim.Plane, Edge: door.HingeSide, First: 3, Last: 3})
	f = fitOf(p)
	is(t, "gain left", p.Door.Hinges[0].LeafGain, 0, 0)
	is(t, "hinge gap", f.Gaps[fit.HingeSide].Least, 6, 1e-9)
	is(t, "latch gap", f.Gaps[fit.LatchSide].Least, 5, 1e-9)
}

// A scribed line is followed, and held beyond its ends.
func TestScribed(t *testing.T) {
	line := geom.Through(200, 1, 600, 3, 1000, 0)
	p, done := doneTo(t, caseOne(), trim.Move{Kind: trim.Scribe, Edge: door.LatchSide, Line: line})
	for _, c := range [][2]float64{{0, 1}, {200, 1}, {400, 2}, {600, 3}, {800, 1.5}, {1000, 0}, {1500, 0}, {1990, 0}} {
		is(t, "closing edge", p.Door.Leaf.Closing.At(c[0]), 792-c[1], 1e-9)
	}
	is(t, "off", done.Off, 200*1+400*2+400*1.5, 1e-6)
	_, done = doneTo(t, caseOne(), trim.Move{Kind: trim.Scribe, Edge: door.HeadSide, Line: geom.Level(2)})
	is(t, "off evenly", done.Off, 2*792, 1e-6)
	_, done = doneTo(t, caseOne(), trim.Move{Kind: trim.Scribe, Edge: door.LatchSide, From: 300, To: 600, Line: line})
	is(t, "off between two places", done.Off, 100*1.5/2+300*(1.5+3)/2+100*3.0/2, 1e-6)
}

// Timber off is its area through the thickness, corners set back by bevels and all:
// the same by summing thin slices.
func TestVolumeBySlices(t *testing.T) {
	tried := 0
	for n := range 120 {
		p := randomPiece(n)
		c := throw(4_000_000 + n)
		for i := range trim.Kinds {
			m := c.moveOf(&trim.Kinds[i], &p)
			switch m.Kind {
			case trim.Plane, trim.Scribe, trim.Cut, trim.Bevel:
			default:
				continue
			}
			q, done, why := trim.Do(p, m)
			if why != nil {
				continue
			}
			const slices = 100
			sum, thick := 0.0, p.Door.Leaf.Thickness
			for k := range slices {
				depth := (float64(k) + 0.5) / slices * thick
				was, now := sliceAt(p.Door.Leaf, depth), sliceAt(q.Door.Leaf, depth)
				off, _ := trim.Took(&was, &now)
				sum += off * thick / slices
			}
			if !(math.Abs(sum-done.Volume) <= 1e-3*sum+1) {
				t.Fatalf("piece %d, %+v: %v mm³, by slices %v", n, m, done.Volume, sum)
			}
			tried++
		}
	}
	if tried < 300 {
		t.Errorf("only %d tried", tried)
	}
}

// sliceAt is the leaf sawn level at a depth, square-edged.
func sliceAt(l door.Leaf, depth float64) door.Leaf {
	l.Hanging = l.Hanging.Shift(l.HangingSetback() * depth)
	l.Closing = l.Closing.Shift(-l.ClosingSetback() * depth)
	l.HangingBevel, l.ClosingBevel = 0, 0
	return l
}

// Two states of a leaf that differ on all four edges.
func TestTookAllRound(t *testing.T) {
	was, now := door.Rectangle(800, 2000, 40), door.Rectangle(800, 2000, 40)
	now.Hanging, now.Closing = geom.Level(10), geom.Level(805)
	now.Top, now.Bottom = geom.Through(0, 1990, 800, 2010), geom.Level(-4)
	off, on := trim.Took(&was, &now)
	// 10 off the hanging edge, and a wedge at the top from u = 10, 9.75 deep, to 400
	is(t, "off", off, 10*2000+390*9.75/2, 1e-6)
	// 4 on the foot from 10 to 805, 5 on the closing edge, a wedge on top from 400 to 805
	is(t, "on", on, 795*4+5*2000+405*10.125/2, 1e-6)
	// sides that cross half way up take 10·1000/2 and add as much, from either side
	lean, back := door.Rectangle(800, 2000, 40), door.Rectangle(800, 2000, 40)
	lean.Closing, back.Closing = geom.Through(0, 795, 2000, 805), geom.Through(0, 805, 2000, 795)
	for _, pair := range [][2]*door.Leaf{{&lean, &back}, {&back, &lean}} {
		off, on := trim.Took(pair[0], pair[1])
		is(t, "off past the crossing", off, 5000, 1e-6)
		is(t, "on past the crossing", on, 5000, 1e-6)
	}
	if off, on = trim.Took(&now, &now); off != 0 || on != 0 {
		t.Errorf("took %v and %v of itself", off, on)
	}
}
