package trim

import (
	"leafwright/geom"
	"leafwright/geom/door"
)

// Took gives how much of the leaf's outline, its knuckle face, is in one of two
// states only, in mm²: what was there and is no more, and what is there and was not.
func Took(was, is *door.Leaf) (off, on float64) { return tookAt(was, is, 0) }

// tookAt is [Took] at a depth behind the knuckle face. Both outlines are cut into
// level bands at every corner, bend and crossing: in a band no two of their lines
// cross, and what lies between them are trapezia.
func tookAt(was, is *door.Leaf, depth float64) (off, on float64) {
	var s sweep
	s.outline(was, depth, false)
	s.outline(is, depth, true)
	s.crossings()
	geom.Ascending(s.levels)
	for i := 1; i < len(s.levels); i++ {
		if lo, hi := s.levels[i-1], s.levels[i]; hi > lo {
			a, b := s.band(lo, hi)
			off += a
			on += b
		}
	}
	// what is left where nothing changed: corners on one line, told from two ends
	const rounding = 1e-6 // mm², of a million
	if off < rounding {
		off = 0
	}
	if on < rounding {
		on = 0
	}
	return off, on
}

// side is one straight piece of an outline, from its lower end up.
type side struct {
	lo, hi geom.Vec
	after  bool // of the outline as it is, not as it was
}

// at gives the side's u at a height within it.
func (a *side) at(v float64) float64 {
	return a.lo.X + float64((a.hi.X-a.lo.X)*((v-a.lo.Y)/(a.hi.Y-a.lo.Y)))
}

// sweep is two outlines and the heights of everything that happens on them.
type sweep struct {
	sides  []side
	levels []float64
	across []crossing // of one band, from the hanging side
}

type crossing struct {
	lo, mid, hi float64 // u at the foot, the middle and the top of the band
	after       bool
}

// outline adds a leaf's outline at a depth.
func (s *sweep) outline(l *door.Leaf, depth float64, after bool) {
	c := l.Corners(depth)
	s.run(l.Hanging, float64(l.HangingSetback()*depth), true, c.HangingFoot, c.HangingHead, after)
	s.run(l.Closing, -float64(l.ClosingSetback()*depth), true, c.ClosingFoot, c.ClosingHead, after)
	s.run(l.Top, 0, false, c.HangingHead, c.ClosingHead, after)
	s.run(l.Bottom, 0, false, c.HangingFoot, c.ClosingFoot, after)
}

// run adds an edge from corner to corner.
func (s *sweep) run(p geom.Profile, back float64, upright bool, from, to geom.Vec, after bool) {
	was := from
	put := func(q geom.Vec) {
		a, b := was, q
		was = q
		s.levels = append(s.levels, b.Y)
		if a.Y > b.Y {
			a, b = b, a
		}
		if b.Y > a.Y { // a level piece bounds no band from the side
			s.sides = append(s.sides, side{a, b, after})
		}
	}
	for i := range p.Knots() {
		q := geom.Vec{X: p.Knot(i), Y: p[i+1].Value}
		lo, at, hi := from.X, q.X, to.X
		if upright {
			q = geom.Vec{X: p[i+1].Value + back, Y: p.Knot(i)}
			lo, at, hi = from.Y, q.Y, to.Y
		}
		if lo < at && at < hi {
			put(q)
		}
	}
	put(to)
	s.levels = append(s.levels, from.Y)
}

// crossings adds the heights where a side of one outline crosses a side of the other.
func (s *sweep) crossings() {
	for i := range s.sides {
		a := &s.sides[i]
		if a.after {
			return // the sides as they were come first
		}
		for k := i + 1; k < len(s.sides); k++ {
			b := &s.sides[k]
			if !b.after {
				continue
			}
			lo, hi := max(a.lo.Y, b.lo.Y), min(a.hi.Y, b.hi.Y)
			if !(lo < hi) {
				continue
			}
			d0, d1 := b.at(lo)-a.at(lo), b.at(hi)-a.at(hi)
			if d0 < 0 && d1 > 0 || d0 > 0 && d1 < 0 {
				s.levels = append(s.levels, lo+float64((hi-lo)*(d0/(d0-d1))))
			}
		}
	}
}

// band gives what is in one outline only between two levels.
func (s *sweep) band(lo, hi float64) (off, on float64) {
	mid := lo + (hi-lo)/2
	all := s.across[:0]
	for i := range s.sides {
		a := &s.sides[i]
		if !(a.lo.Y <= lo && hi <= a.hi.Y) {
			continue
		}
		c := crossing{a.at(lo), a.at(mid), a.at(hi), a.after}
		k := len(all)
		all = append(all, c)
		for ; k > 0 && c.mid < all[k-1].mid; k-- {
			all[k] = all[k-1]
		}
		all[k] = c
	}
	s.across = all
	inWas, inIs := false, false
	for i, c := range all {
		if i > 0 && inWas != inIs {
			before := &all[i-1]
			area := float64((hi - lo) * ((c.lo - before.lo) + (c.hi - before.hi)) / 2)
			if inWas {
				off += area
			} else {
				on += area
			}
		}
		if c.after {
			inIs = !inIs
		} else {
			inWas = !inWas
		}
	}
	return off, on
}

// gone gives the volume, in mm³, that one state of the leaf has and the other has
// not, between two depths: Simpson's rule, exact while the outline's corners keep
// their order, as its area is then of the second degree in the depth.
func gone(was, is *door.Leaf, front, back float64) float64 {
	if was.HangingBevel == 0 && was.ClosingBevel == 0 && is.HangingBevel == 0 && is.ClosingBevel == 0 {
		off, _ := tookAt(was, is, front)
		return float64(off * (back - front))
	}
	a, _ := tookAt(was, is, front)
	b, _ := tookAt(was, is, front+(back-front)/2)
	c, _ := tookAt(was, is, back)
	return float64((back - front) * (a + float64(4*b) + c) / 6)
}
