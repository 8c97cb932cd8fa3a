package fit_test

import (
	"math"

	"leafwright/geom"
	"leafwright/geom/fit"
)

// slowGap is a gap along an edge as the slow model sees it.
type slowGap struct {
	lo, hi                       float64 // where it exists, empty when lo > hi
	least, leastAt, most, mostAt float64
	at                           func(place float64) float64
}

func gauge(lo, hi float64, at func(float64) float64, where []float64) slowGap {
	g := slowGap{lo: lo, hi: hi, at: at}
	g.leastAt, g.least = least(at, where)
	g.mostAt, g.most = least(func(s float64) float64 { return -at(s) }, where)
	g.most = -g.most
	return g
}

// along is a place's coordinate along an edge: y on the upright ones, x on the
// others.
func along(e fit.Edge, q geom.Vec) float64 {
	if e.Upright() {
		return q.Y
	}
	return q.X
}

// arrisGap is the gap of one arris of the closed leaf at a place along its edge.
func (s *slow) arrisGap(a arris, place float64) float64 {
	m := s.turned(s.closed)
	world := func(p float64) geom.Vec { return m.point(s.on(a, p)) }
	p := root(func(p float64) float64 { return along(a.edge, world(p)) - place }, a.lo-1, a.hi+1)
	return s.clear(a.edge, world(p))
}

// gapAt is the least gap of some arrises as it goes by the place.
func (s *slow) gapAt(arrises []arris) func(place float64) float64 {
	return func(place float64) float64 {
		g := math.Inf(1)
		for _, a := range arrises {
			g = min(g, s.arrisGap(a, place))
		}
		return g
	}
}

// gap is the gap of an edge with the leaf closed, by the arrises given and where
// all of them exist.
func (s *slow) gap(e fit.Edge, arrises []arris) slowGap {
	m := s.turned(s.closed)
	world := func(a arris, at float64) geom.Vec { return m.point(s.on(a, at)) }
	lo, hi := math.Inf(-1), math.Inf(1)
	kinks := s.frameKinks(e)
	for _, a := range arrises {
		lo, hi = max(lo, along(e, world(a, a.lo))), min(hi, along(e, world(a, a.hi)))
		for _, p := range s.leafKinks(a) {
			kinks = append(kinks, along(e, world(a, p)))
		}
		if e == fit.FloorSide {
			for _, p := range s.floorKinks(a, m) {
				kinks = append(kinks, world(a, p).X)
			}
		}
	}
	step := 20.0
	if !e.Upright() {
		step = 10
	}
	if e == fit.FloorSide { // the floor's angle turns fast near its pole
		for at := lo; at < min(hi, 60); at += 2 {
			kinks = append(kinks, at)
		}
	}
	where := places(lo, hi, step, kinks...)
	kinks = nil
	for i, a := range arrises { // where the one arris comes nearer than the other
		for _, b := range arrises[:i] {
			kinks = append(kinks, changes(func(at float64) float64 { return s.arrisGap(b, at) - s.arrisGap(a, at) }, where)...)
		}
	}
	return gauge(lo, hi, s.gapAt(arrises), places(lo, hi, hi-lo, append(kinks, where...)...))
}

func (s *slow) closedGap(e fit.Edge) slowGap { return s.gap(e, s.arrises(e)) }

func (s *slow) shownGap(e fit.Edge) slowGap { return s.gap(e, s.arrises(e)[:1]) }

// stopsGap is the gap of the leaf's stop face to the stop of an edge.
func (s *slow) stopsGap(e fit.Edge) slowGap {
	m := s.turned(s.closed)
	lo, hi := s.stopRange(s.rear(e), m)
	return gauge(lo, hi, func(at float64) float64 { return s.stopGap(e, m, at) },
		places(lo, hi, 10, s.stopKinks(e, m)...))
}

// frameKinks gives the stations of the line an edge looks at.
func (s *slow) frameKinks(e fit.Edge) []float64 {
	f := &s.d.Frame
	switch e {
	case fit.HingeSide:
		return stations(f.HingeJamb)
	case fit.LatchSide:
		return stations(f.LatchJamb)
	case fit.HeadSide:
		return stations(f.Head)
	}
	return nil
}

// leafKinks gives the places, along an arris, where it bends.
func (s *slow) leafKinks(a arris) []float64 {
	l := &s.d.Leaf
	face := stations(l.HangingFace, l.ClosingFace)
	switch a.edge {
	case fit.HingeSide:
		return append(stations(l.Hanging), face...)
	case fit.LatchSide:
		return append(stations(l.Closing), face...)
	}
	end := l.Top
	if a.edge == fit.FloorSide {
		end = l.Bottom
	}
	kinks := stations(end)
	for _, v := range face { // where top or bottom climbs past a bend of the face
		kinks = append(kinks, changes(func(u float64) float64 { return poly(end, u) - v }, places(a.lo, a.hi, 10, stations(end)...))...)
	}
	return kinks
}

// floorKinks gives the places along a bottom arris that stand over a measured
// radius or angle of the floor.
func (s *slow) floorKinks(a arris, m motion) (at []float64) {
	where := places(a.lo, a.hi, 10)
	for _, r := range s.d.Floor.Radii {
		at = append(at, changes(func(u float64) float64 {
			q := m.point(s.on(a, u))
			return math.Sqrt(q.X*q.X+q.Z*q.Z) - r
		}, where)...)
	}
	for _, angle := range s.d.Floor.Angles {
		at = append(at, changes(func(u float64) float64 {
			q := m.point(s.on(a, u))
			return math.Atan2(q.Z, q.X) - float64(angle)
		}, where)...)
	}
	return at
}

// clearOpening is the least free width between the leaf at 90° and the latch
// jamb, over all points of its upright arrises.
func (s *slow) clearOpening() float64 {
	m := s.turned(90 * degree)
	best := math.Inf(1)
	for _, e := range []fit.Edge{fit.HingeSide, fit.LatchSide} {
		for _, a := range s.arrises(e) {
			free := func(v float64) float64 { return s.clear(fit.LatchSide, m.point(s.on(a, v))) }
			kinks := s.leafKinks(a)
			kinks = append(kinks, atHeights(s.frameKinks(fit.LatchSide), func(v float64) float64 { return m.point(s.on(a, v)).Y }, a)...)
			_, w := least(free, places(a.lo, a.hi, 20, kinks...))
			best = min(best, w)
		}
	}
	return best
}

// atHeights gives the places of an arris that stand at the heights given.
func atHeights(heights []float64, y func(float64) float64, a arris) (at []float64) {
	for _, h := range heights {
		at = append(at, changes(func(v float64) float64 { return y(v) - h }, places(a.lo, a.hi, 50))...)
	}
	return at
}
