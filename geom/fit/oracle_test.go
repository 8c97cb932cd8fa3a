package fit_test

import (
	"cmp"
	"math"
	"slices"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fit"
)

// slow is a second model of the hung door, written from the project's page of
// definitions and from nothing else, to hold package fit against. It knows no
// closed form that it could avoid: places are found by halving an interval,
// least and greatest values by looking at many places (every few millimetres,
// every kink of every polyline, every quarter of a degree while the edges are
// in the frame) and then narrowing between the neighbours of the best ones by
// golden section. Steps are chosen so that every length it gives is right to
// 0.002 mm on doors whose kinks lie farther apart than the steps, and every angle
// to 0.002 mm over the leaf's width.
//
// It keeps its own polylines, floor, motion and corners; only the types of the
// door and the vector sums are shared.
type slow struct {
	d         *door.Door
	tanH      float64 // setback of the hanging edge per mm of depth
	tanC      float64 // the same at the closing edge
	pose      motion
	pin, down geom.Vec // the pin axis: the top pin and the way down to the last
	strain    float64

	latch, stop, closed float64 // angles in radians
	bound               bool
	miss                float64
}

// motion takes the leaf's (u, v, w) to o + u·u + v·v + w·w.
type motion struct{ o, u, v, w geom.Vec }

func (m motion) point(p geom.Vec) geom.Vec {
	return m.o.Add(m.u.Scale(p.X)).Add(m.v.Scale(p.Y)).Add(m.w.Scale(p.Z))
}

// hang hangs the door and closes it.
func hang(d *door.Door) *slow {
	s := &slow{d: d, tanH: math.Tan(float64(d.Leaf.HangingBevel)), tanC: math.Tan(float64(d.Leaf.ClosingBevel))}
	s.setPose()
	s.latch = s.latchAngle()
	s.stop = s.stopAngle()
	s.closed = s.latch
	if s.stop > s.latch {
		s.bound, s.closed = true, s.stop
		s.miss = s.latchLeft(s.stop)
	}
	return s
}

// poly is the height of the polyline through the stations, straight beyond the
// last two at either end.
func poly(p geom.Profile, at float64) float64 {
	switch len(p) {
	case 0:
		return 0
	case 1:
		return p[0].Value
	}
	i := 1
	for i < len(p)-1 && at > p[i].At {
		i++
	}
	a, b := p[i-1], p[i]
	return a.Value + (b.Value-a.Value)*(at-a.At)/(b.At-a.At)
}

// floorAt is the finished floor at (x, z): bilinear in the distance from the
// origin and the angle about it, held beyond the first and last of both.
func floorAt(f *door.Floor, x, z float64) float64 {
	if len(f.Radii) == 0 || len(f.Angles) == 0 {
		return 0
	}
	i, p := cell(len(f.Radii), func(i int) float64 { return f.Radii[i] }, math.Sqrt(x*x+z*z))
	j, q := cell(len(f.Angles), func(j int) float64 { return float64(f.Angles[j]) }, math.Atan2(z, x))
	i1, j1 := min(i+1, len(f.Radii)-1), min(j+1, len(f.Angles)-1)
	return (1-q)*((1-p)*f.Heights[j][i]+p*f.Heights[j][i1]) + q*((1-p)*f.Heights[j1][i]+p*f.Heights[j1][i1])
}

// cell finds the last knot not beyond x and how far x lies towards the next, held
// at both ends.
func cell(n int, knot func(int) float64, x float64) (i int, part float64) {
	for i < n-1 && knot(i+1) <= x {
		i++
	}
	if i == n-1 || x <= knot(0) {
		return i, 0
	}
	return i, (x - knot(i)) / (knot(i+1) - knot(i))
}

// face is the leaf's point at (u, v) and a depth behind the knuckle face.
func (s *slow) face(u, v, depth float64) geom.Vec {
	l := &s.d.Leaf
	hanging, closing := poly(l.HangingFace, v), poly(l.ClosingFace, v)
	return geom.Vec{X: u, Y: v, Z: hanging + (closing-hanging)*u/l.Width - depth}
}

// arris is one edge of one face of the leaf. Its points go by v on the upright
// edges, from the foot corner to the head corner, and by u on top and bottom, from
// the hanging corner to the closing one.
type arris struct {
	edge   fit.Edge
	depth  float64
	inset  float64 // from the edge, towards the leaf's inside
	lo, hi float64
}

// arris gives the line of an edge at a depth behind the knuckle face and an inset.
func (s *slow) arris(e fit.Edge, depth, inset float64) arris {
	l := &s.d.Leaf
	hanging := func(v float64) float64 { return poly(l.Hanging, v) + depth*s.tanH }
	closing := func(v float64) float64 { return poly(l.Closing, v) - depth*s.tanC }
	// corner: where u = side(v) and v = end(u) both hold
	corner := func(side func(float64) float64, end geom.Profile) (u, v float64) {
		v = root(func(v float64) float64 { return v - poly(end, side(v)) }, -1e5, 1e5)
		return side(v), v
	}
	a := arris{edge: e, depth: depth, inset: inset}
	switch e {
	case fit.HingeSide:
		_, a.lo = corner(hanging, l.Bottom)
		_, a.hi = corner(hanging, l.Top)
	case fit.LatchSide:
		_, a.lo = corner(closing, l.Bottom)
		_, a.hi = corner(closing, l.Top)
	case fit.HeadSide:
		a.lo, _ = corner(hanging, l.Top)
		a.hi, _ = corner(closing, l.Top)
	case fit.FloorSide:
		a.lo, _ = corner(hanging, l.Bottom)
		a.hi, _ = corner(closing, l.Bottom)
	}
	return a
}

// on gives the arris's point, in leaf axes.
func (s *slow) on(a arris, at float64) geom.Vec {
	l := &s.d.Leaf
	switch a.edge {
	case fit.HingeSide:
		return s.face(poly(l.Hanging, at)+a.depth*s.tanH+a.inset, at, a.depth)
	case fit.LatchSide:
		return s.face(poly(l.Closing, at)-a.depth*s.tanC-a.inset, at, a.depth)
	case fit.HeadSide:
		return s.face(at, poly(l.Top, at)-a.inset, a.depth)
	}
	return s.face(at, poly(l.Bottom, at)+a.inset, a.depth)
}

// side is the half-plane depth·(in depth) + inset·(in inset) ≥ least that an edge's
// cross-section keeps to.
type side struct{ depth, inset, least float64 }

// arrises gives the lines at which the cross-section of an edge has its corners,
// from the knuckle face back. The section is what five cuts leave of the plane:
// the two faces, the edge itself and the two at 45°. A corner is where two cuts meet
// and none of the others takes it off.
func (s *slow) arrises(e fit.Edge) (all []arris) {
	sec := s.d.Leaf.Sections[e]
	front, back := sec.KnuckleBack, s.d.Leaf.Thickness-sec.StopBack
	cuts := []side{
		{1, 0, front}, {-1, 0, -back}, {0, 1, 0},
		{1, 1, front + sec.KnuckleEase}, {-1, 1, sec.StopEase - back},
	}
	for i, a := range cuts {
		for _, b := range cuts[:i] {
			det := a.depth*b.inset - b.depth*a.inset
			if det == 0 {
				continue
			}
			depth := (a.least*b.inset - b.least*a.inset) / det
			inset := (a.depth*b.least - b.depth*a.least) / det
			cut := false
			for _, c := range cuts {
				cut = cut || c.depth*depth+c.inset*inset < c.least-1e-9
			}
			for _, o := range all {
				cut = cut || math.Abs(o.depth-depth)+math.Abs(o.inset-inset) < 1e-9 // there already
			}
			if !cut {
				all = append(all, s.arris(e, depth, inset))
			}
		}
	}
	slices.SortFunc(all, func(a, b arris) int { return cmp.Compare(a.depth, b.depth) })
	return all
}

// rear gives the line of an edge that lies farthest back.
func (s *slow) rear(e fit.Edge) arris {
	all := s.arrises(e)
	return all[len(all)-1]
}

// clear is how far the place q of the leaf's edge is from what the edge looks
// at, along world x or y, below zero where it is beyond it.
func (s *slow) clear(e fit.Edge, q geom.Vec) float64 {
	f := &s.d.Frame
	switch e {
	case fit.HingeSide:
		return q.X - poly(f.HingeJamb, q.Y)
	case fit.LatchSide:
		return poly(f.LatchJamb, q.Y) - q.X
	case fit.HeadSide:
		return poly(f.Head, q.X) - q.Y
	}
	return q.Y - floorAt(&s.d.Floor, q.X, q.Z)
}

// root halves [lo, hi] until it holds the place where f, which is below zero
// at lo, rises through zero.
func root(f func(float64) float64, lo, hi float64) float64 {
	for range 200 {
		m := lo + (hi-lo)/2
		if m == lo || m == hi {
			break
		}
		if f(m) < 0 {
			lo = m
		} else {
			hi = m
		}
	}
	return lo + (hi-lo)/2
}

// changes finds where f changes sign between neighbouring places.
func changes(f func(float64) float64, places []float64) (at []float64) {
	for i := 1; i < len(places); i++ {
		lo, hi := places[i-1], places[i]
		switch a, b := f(lo), f(hi); {
		case a < 0 && b >= 0:
			at = append(at, root(f, lo, hi))
		case a >= 0 && b < 0:
			at = append(at, root(func(x float64) float64 { return -f(x) }, lo, hi))
		}
	}
	return at
}

// places gives even steps over [lo, hi], the ends and those of the kinks that lie
// between, in rising order.
func places(lo, hi, step float64, kinks ...float64) []float64 {
	n := max(1, int(math.Ceil((hi-lo)/step)))
	out := make([]float64, 0, n+1+len(kinks))
	for i := range n + 1 {
		out = append(out, lo+(hi-lo)*float64(i)/float64(n))
	}
	out[n] = hi
	for _, k := range kinks {
		if lo < k && k < hi {
			out = append(out, k)
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// stations gives the places at which the profiles may bend.
func stations(profiles ...geom.Profile) (at []float64) {
	for _, p := range profiles {
		for _, s := range p {
			at = append(at, s.At)
		}
	}
	return at
}

const golden = 0.6180339887498949

// narrow finds the least of f between lo and hi by golden section.
func narrow(f func(float64) float64, lo, hi float64) (at, value float64) {
	a, b := hi-golden*(hi-lo), lo+golden*(hi-lo)
	fa, fb := f(a), f(b)
	for range 44 {
		if fa <= fb {
			hi, b, fb = b, a, fa
			a = hi - golden*(hi-lo)
			fa = f(a)
		} else {
			lo, a, fa = a, b, fb
			b = lo + golden*(hi-lo)
			fb = f(b)
		}
	}
	if fa <= fb {
		return a, fa
	}
	return b, fb
}

// least finds the least value of f: the best of its values at the places and
// of those found between the neighbours of its four deepest hollows.
func least(f func(float64) float64, at []float64) (place, value float64) {
	v := make([]float64, len(at))
	for i, s := range at {
		v[i] = f(s)
	}
	var hollows []int
	for i := range at {
		if (i == 0 || v[i] <= v[i-1]) && (i == len(at)-1 || v[i] <= v[i+1]) {
			hollows = append(hollows, i)
		}
	}
	slices.SortStableFunc(hollows, func(i, j int) int {
		if v[i] < v[j] {
			return -1
		} else if v[i] > v[j] {
			return 1
		}
		return 0
	})
	value = math.Inf(1)
	for n, i := range hollows {
		if v[i] < value {
			place, value = at[i], v[i]
		}
		if n >= 4 {
			continue
		}
		if s, w := narrow(f, at[max(i-1, 0)], at[min(i+1, len(at)-1)]); w < value {
			place, value = s, w
		}
	}
	return place, value
}
