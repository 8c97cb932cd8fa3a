package trim_test

import (
	"math"
	"testing"

	simple "github.com/peterstace/simplefeatures/geom"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/trim"
)

// A geometry library that knows nothing of doors (github.com/peterstace/simplefeatures)
// takes the leaf's outline after a move from the one before, and the other way round.

// outlineRing is the knuckle face's outline, all four edges with their bends.
func outlineRing(l *door.Leaf) []simple.XY {
	c := l.Corners(0)
	var ring []simple.XY
	add := func(x, y float64) { ring = append(ring, simple.XY{X: x, Y: y}) }
	along := func(p geom.Profile, from, to float64, upright bool) {
		at := []float64{from}
		for _, s := range p {
			if min(from, to) < s.At && s.At < max(from, to) {
				at = append(at, s.At)
			}
		}
		geom.Ascending(at[1:])
		if from > to {
			for i, j := 1, len(at)-1; i < j; i, j = i+1, j-1 {
				at[i], at[j] = at[j], at[i]
			}
		}
		for _, s := range at {
			if upright {
				add(p.At(s), s)
			} else {
				add(s, p.At(s))
			}
		}
	}
	along(l.Bottom, c.HangingFoot.X, c.ClosingFoot.X, false)
	along(l.Closing, c.ClosingFoot.Y, c.ClosingHead.Y, true)
	along(l.Top, c.ClosingHead.X, c.HangingHead.X, false)
	along(l.Hanging, c.HangingHead.Y, c.HangingFoot.Y, true)
	return append(ring, ring[0])
}

func outlinePolygon(t *testing.T, l *door.Leaf) simple.Geometry {
	t.Helper()
	var flat []float64
	for _, p := range outlineRing(l) {
		flat = append(flat, p.X, p.Y)
	}
	p := simple.NewPolygon([]simple.LineString{simple.NewLineString(simple.NewSequence(flat, simple.DimXY))})
	if err := p.Validate(); err != nil {
		t.Fatalf("not a polygon: %v", err)
	}
	return p.AsGeometry()
}

// bare is the area of a less what b covers of it.
func bare(t *testing.T, a, b simple.Geometry) float64 {
	t.Helper()
	d, err := simple.Difference(a, b)
	if err != nil {
		t.Fatalf("no difference: %v", err)
	}
	return d.Area()
}

// A move's stated removal and addition are the difference of the outlines.
func TestRemovalIsTheDifferenceOfTheOutlines(t *testing.T) {
	off, on := 0, 0
	for n := range pieces(300) {
		p := randomPiece(n)
		c := throw(3_000_000 + n)
		for range 6 {
			m := c.move(&p)
			m.Off = false
			q, done, why := trim.Do(p, m)
			if why != nil {
				continue
			}
			was, now := outlinePolygon(t, &p.Door.Leaf), outlinePolygon(t, &q.Door.Leaf)
			gone, come := bare(t, was, now), bare(t, now, was)
			// to a millionth of it; the library itself rounds the corners of a million mm²
			if !(math.Abs(done.Off-gone) <= 1e-6*gone+1e-5) || !(math.Abs(done.On-come) <= 1e-6*come+1e-5) {
				t.Fatalf("piece %d, %+v: off %v and on %v, by the library %v and %v", n, m, done.Off, done.On, gone, come)
			}
			if a, b := trim.Took(&p.Door.Leaf, &q.Door.Leaf); a != done.Off || b != done.On {
				t.Fatalf("piece %d, %+v: took %v and %v, done %+v", n, m, a, b, done)
			}
			if gone > 1 {
				off++
			}
			if come > 1 {
				on++
			}
			p = q
		}
	}
	if off < pieces(100) || on < pieces(20) {
		t.Errorf("%d took off, %d put on: too one-sided a test", off, on)
	}
}

// Worked by hand: a taper from 2 to 0 over the closing edge takes a wedge off, and a
// cut across the top a trapezium.
func TestWedgeByHand(t *testing.T) {
	_, done := doneTo(t, caseOne(), trim.Move{Kind: trim.Plane, Edge: door.LatchSide, First: 2})
	is(t, "wedge", done.Off, 1990*2.0/2, 1e-6)
	is(t, "shavings", done.Volume, 1990*2.0/2*40, 1e-3)
	is(t, "thickest", done.Most, 2, 1e-9)
	_, done = doneTo(t, caseOne(), trim.Move{Kind: trim.Cut, Edge: door.HeadSide, First: 3, Last: 9})
	is(t, "trapezium", done.Off, 792*(3+9.0)/2, 1e-6)
}
