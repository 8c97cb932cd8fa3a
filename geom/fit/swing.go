package fit

import (
	"cmp"
	"math"

	"leafwright/geom"
)

// Numbers of the search through the swing.
const (
	// onPlane is how far in mm a place may lie outside front edge and stop and
	// still count, so that places found on them do.
	onPlane = 1e-7
	// gain is the least improvement in mm worth looking for between two places.
	gain = 1e-7
	// halvings bounds how often a stretch is cut while looking.
	halvings = 40
	// drift is the shift in mm along the edge, between closed and crossing the front
	// edge, over which no trough deeper than gain has room.
	drift = 0.01
	// settled is how closely in mm the place where a bend is passed is found: the
	// clearance there is then right to the frame's slope times that.
	settled = 1e-7
)

// sweep looks for the least clearance of one edge against its facing: over all
// points of its arrises and all angles from closed to open, counting a point when
// closed, and beyond that while it is between stop and front edge.
//
// For one point of an arris every coordinate is a harmonic of the angle, so the
// least over the angle is at one of a few angles in closed form: closed, open,
// crossing the front edge or the stop, passing a bend of the face, or standing
// level against it. Along the arris the least is at an end, at a bend, or, seldom,
// inside a stretch whose ends both slope down into it.
type sweep struct {
	to           facing
	closed, open geom.Turn
	tc, topen    float64 // their half-tangents
	frontMost    float64 // greatest z of the front edge
	hanging      float64 // u of the top edge's hanging corner

	queue         []bounded // the edge's arcs, the most promising first
	arc           *arc
	foot, out, on geom.Vec // of the point at hand
	m, across, z  harmonic
	best          Sweep
	bestArc       *arc
	bestP         float64
}

// nearPins are distances from the hanging corner, mm, at which the top edge is cut
// for the search: its path out of the opening bends on the scale of its distance
// from the pins, so the stretches grow with it.
var nearPins = [...]float64{6, 16, 40, 100}

// reading is the least clearance of one point, the turn it is at and its rate
// along the arris.
type reading struct {
	p, value, rate float64
	turn           geom.Turn
}

// swing measures the clearances of the hanging, closing and top edges.
func (f *Fit) swing() {
	s := &f.work.sweep
	s.closed, s.open = f.Closed.Turn(), f.door.Opens.Turn()
	if f.door.Opens < f.Closed {
		s.open = s.closed
	}
	s.tc, s.topen = s.closed.HalfTan(), s.open.HalfTan()
	for e, to := range facings(&f.door.Frame) {
		s.to = to
		s.frontMost = math.Inf(-1)
		for _, st := range to.front {
			s.frontMost = max(s.frontMost, st.Value)
		}
		s.best = Sweep{Least: math.Inf(1)}
		s.bestArc = nil
		s.queue = s.queue[:0]
		k := &f.work.arrises[e]
		for line := range k.n {
			arcs := k.lines[line]
			if len(arcs) > 0 {
				s.hanging = arcs[0].lo
			}
			for i := range arcs {
				s.queue = append(s.queue, bounded{s.bound(&arcs[i]), &arcs[i]})
			}
		}
		geom.Order(s.queue, func(a, b bounded) int { return cmp.Compare(a.bound, b.bound) })
		for _, b := range s.queue {
			if b.bound > s.best.Least-gain {
				break
			}
			f.sweepArc(b.arc)
		}
		f.finish(Edge(e), &s.best, s.bestArc, s.bestP)
	}
}

// bounded is an arc with a clearance that it has at the least.
type bounded struct {
	bound float64
	arc   *arc
}

// bound gives a clearance that the arc keeps through the swing: that of its points
// leaning over as far as any angle takes them, whether they count there or not. How
// far one does is convex along the arc, and so the least is at an end or where the
// face bends towards the leaf. On head the face changes too much under a point that
// swings; nothing is said there.
func (s *sweep) bound(a *arc) float64 {
	if !s.to.upright {
		return math.Inf(-1)
	}
	s.arc = a
	least := min(s.keeps(a.lo), s.keeps(a.hi))
	closed := a.turned(s.closed)
	m0, _ := parts(true, closed.at(a.lo))
	m1, _ := parts(true, closed.at(a.hi))
	for i := range s.to.line.Knots() {
		k := s.to.line.Knot(i)
		if s.to.sign*(s.to.line.Piece(i+1).C1-s.to.line.Piece(i).C1) > 0 && s.near(k, m0, m1) {
			if p := inverse(closed, true, k, a.lo); a.lo < p && p < a.hi {
				least = min(least, s.keeps(p))
			}
		}
	}
	return least - slightBend
}

// slightBend is more than an arc's own bend, and the shift of its points along the
// jamb, can take from the clearance between the places looked at, mm.
const slightBend = 0.02

// keeps gives the clearance that the arris point p keeps at any angle.
func (s *sweep) keeps(p float64) float64 {
	s.take(p)
	lo, hi := s.span()
	face := min(s.to.sign*s.to.line.At(lo), s.to.sign*s.to.line.At(hi))
	over := max(s.to.sign*s.across.at(s.closed), s.to.sign*s.across.at(s.open))
	one, other := s.across.level()
	for _, t := range [2]float64{one, other} {
		if s.tc < t && t < s.topen {
			over = max(over, s.to.sign*s.across.at(geom.HalfTan(t)))
		}
	}
	return face - over
}

// take puts the arris point p at hand.
func (s *sweep) take(p float64) {
	s.foot, s.out, s.on = s.arc.foot.at(p), s.arc.out.at(p), s.arc.on.at(p)
	fm, fa := parts(s.to.upright, s.foot)
	om, oa := parts(s.to.upright, s.out)
	nm, na := parts(s.to.upright, s.on)
	s.m, s.across, s.z = harmonic{fm, om, nm}, harmonic{fa, oa, na}, harmonic{s.foot.Z, s.out.Z, s.on.Z}
}

// finish notes where in the world and on the leaf a sweep was least.
func (f *Fit) finish(e Edge, best *Sweep, a *arc, p float64) {
	f.Swing[e] = *best
	if a == nil {
		return
	}
	turn := best.Angle.Turn()
	f.Swing[e].At = a.turned(turn).at(p)
	// The leaf's own axes: undo the turn and the pose.
	d := a.turned(geom.Turn{Cos: 1}).at(p).Sub(f.Pose.Origin)
	f.Swing[e].Leaf = geom.Vec{X: d.Dot(f.Pose.U), Y: d.Dot(f.Pose.V), Z: d.Dot(f.Pose.W)}
}

// sweepArc tries the ends of an arc, the places where it passes a bend of the
// frame, and what may lie between.
func (f *Fit) sweepArc(a *arc) {
	s := &f.work.sweep
	s.arc = a
	ps := append(f.work.cuts[:0], a.lo, a.hi)
	closed := a.turned(s.closed)
	m0, _ := parts(s.to.upright, closed.at(a.lo))
	m1, _ := parts(s.to.upright, closed.at(a.hi))
	for i := range s.to.line.Knots() {
		// Where the frame bends away from the leaf the clearance has a crest.
		if k := s.to.line.Knot(i); s.to.sign*(s.to.line.Piece(i+1).C1-s.to.line.Piece(i).C1) > 0 && s.near(k, m0, m1) {
			ps = s.passing(ps, closed, k, true)
		}
	}
	for i := range s.to.front.Knots() {
		if k := s.to.front.Knot(i); s.near(k, m0, m1) {
			ps = s.passing(ps, closed, k, false)
		}
	}
	for i := range s.to.stop.Knots() {
		if k := s.to.stop.Knot(i); s.near(k, m0, m1) {
			ps = s.passing(ps, closed, k, false)
		}
	}
	ps = s.leaving(ps)
	if !s.to.upright {
		for _, p := range nearPins {
			if p += s.hanging; a.lo < p && p < a.hi {
				ps = append(ps, p)
			}
		}
	}
	ps = sorted(ps)
	f.work.cuts = ps
	prev := s.read(ps[0])
	for _, p := range ps[1:] {
		next := s.read(p)
		s.between(prev, next, 0)
		prev = next
	}
}

// near tells whether the place k can be passed by an arc that reaches from m0 to
// m1 when closed: while it leaves the frame a point moves along head by up to its
// distance from the pins, along a jamb by no more than the pins lean.
func (s *sweep) near(k, m0, m1 float64) bool {
	reach := 200.0 // mm
	if s.to.upright {
		reach = 20
	}
	return k > m0-reach && k < m1+reach
}

// passing appends the p of the arc that pass the frame's place k when closed and
// when crossing the front edge, and, for a bend of the face itself, when crossing
// the stop too, and others just inside these, from which a trough on the way
// between can be seen.
func (s *sweep) passing(dst []float64, closed quad, k float64, face bool) []float64 {
	add := func(p float64) {
		if s.arc.lo < p && p < s.arc.hi {
			dst = append(dst, p)
		}
	}
	start := inverse(closed, s.to.upright, k, s.arc.lo)
	add(start)
	for i, z := range [2]float64{s.to.front.At(k), s.to.stop.At(k)} {
		if i == 1 && !face {
			break
		}
		p, found := start, false
		for range 6 {
			foot, out, on := s.arc.foot.at(p), s.arc.out.at(p), s.arc.on.at(p)
			near, _ := harmonic{foot.Z - z, out.Z, on.Z}.roots()
			if !(s.tc < near && near < s.topen) {
				found = false
				break
			}
			found = true
			next := inverse(s.arc.turned(geom.HalfTan(near)), s.to.upright, k, p)
			if math.Abs(next-p) < settled {
				break
			}
			p = next
		}
		if !found {
			continue
		}
		add(p)
		if face && math.Abs(p-start) > drift {
			add(p + (start-p)/1024)
			add(start + (p-start)/1024)
		}
	}
	return dst
}

// leaving appends the p of the arc that lie on the front edge or the stop with the
// leaf fully open: there the part that counts ends. Few leaves come back so far:
// those laid back on the wall, or with the pins behind their face.
func (s *sweep) leaving(dst []float64) []float64 {
	q := s.arc.turned(s.open)
	const margin = 5 // mm: more than an arc's ends can hide between them
	if min(q.at(s.arc.lo).Z, q.at(s.arc.hi).Z) > s.frontMost+margin {
		return dst
	}
	m0, _ := parts(s.to.upright, q.c0)
	m1, _ := parts(s.to.upright, q.c1)
	m2, _ := parts(s.to.upright, q.c2)
	for _, pr := range [2]geom.Profile{s.to.front, s.to.stop} {
		for i := range pr.Pieces() {
			l := pr.Piece(i)
			one, two := roots(q.c0.Z-l.At(m0), q.c1.Z-float64(l.C1*m1), q.c2.Z-float64(l.C1*m2))
			for _, p := range [2]float64{one, two} {
				if s.arc.lo < p && p < s.arc.hi {
					dst = append(dst, p)
				}
			}
		}
	}
	return dst
}

// between looks inside a stretch of the arris when both ends slope down into it
// and their tangents meet below the best so far.
func (s *sweep) between(a, b reading, depth int) {
	w := b.p - a.p
	if !(a.rate < 0 && b.rate > 0) || depth > halvings || w < 1e-9 {
		return
	}
	k := (b.value - a.value - float64(b.rate*w)) / (a.rate - b.rate) // from a.p
	k = max(0, min(w, k))
	if a.value+float64(a.rate*k) > s.best.Least-gain {
		return
	}
	if k < w/1024 || k > w-w/1024 {
		k = w / 2
	}
	mid := s.read(a.p + k)
	s.between(a, mid, depth+1)
	s.between(mid, b, depth+1)
}

// read gives the least clearance of the arris point p and notes it if it is the
// best so far.
func (s *sweep) read(p float64) reading {
	s.take(p)
	r := reading{p: p, value: math.Inf(1)}
	way := wayFixed
	s.try(&r, &way, s.closed, wayFixed)
	if s.tc < s.topen {
		s.try(&r, &way, s.open, wayFixed)
		s.window(&r, &way)
	}
	r.rate = s.rate(p, r.turn, way)
	if r.value < s.best.Least {
		s.best.Least, s.best.Angle = r.value, r.turn.Angle()
		s.bestArc, s.bestP = s.arc, p
	}
	return r
}

// How a reading's angle changes along the arris.
type way int

const (
	wayFixed way = iota // not at all, or to no effect
	wayFront            // so as to stay on the front edge
	wayStop             // so as to stay on the stop
	wayBend             // so as to stay at a bend of the face
)

// window tries every angle between closed and open at which the clearance may be
// least.
func (s *sweep) window(r *reading, w *way) {
	lo, hi := s.span()
	i0, i1 := s.to.front.Find(lo), s.to.front.Find(hi)
	for i := i0; i <= i1; i++ {
		near, far := s.z.less(s.to.front.Piece(i), s.m).roots()
		s.tryAt(r, w, near, wayFront)
		s.tryAt(r, w, far, wayFront)
	}
	i0, i1 = s.to.stop.Find(lo), s.to.stop.Find(hi)
	for i := i0; i <= i1; i++ {
		near, far := s.z.less(s.to.stop.Piece(i), s.m).roots()
		s.tryAt(r, w, near, wayStop)
		s.tryAt(r, w, far, wayStop)
	}
	i0, i1 = s.to.line.Find(lo), s.to.line.Find(hi)
	for i := i0; i <= i1; i++ {
		one, other := s.across.less(s.to.line.Piece(i), s.m).level()
		s.tryAt(r, w, one, wayFixed)
		s.tryAt(r, w, other, wayFixed)
		if i < i1 {
			near, far := s.m.less(geom.Line{C0: s.to.line.Knot(i)}, harmonic{}).roots()
			s.tryAt(r, w, near, wayBend)
			s.tryAt(r, w, far, wayBend)
		}
	}
}

// span gives the places along the edge that the point passes, closed to open.
func (s *sweep) span() (lo, hi float64) {
	a, b := s.m.at(s.closed), s.m.at(s.open)
	lo, hi = min(a, b), max(a, b)
	one, other := s.m.level()
	for _, t := range [2]float64{one, other} {
		if s.tc < t && t < s.topen {
			m := s.m.at(geom.HalfTan(t))
			lo, hi = min(lo, m), max(hi, m)
		}
	}
	return lo, hi
}

func (s *sweep) tryAt(r *reading, w *way, t float64, how way) {
	if s.tc < t && t < s.topen {
		s.try(r, w, geom.HalfTan(t), how)
	}
}

// try takes the clearance at the turn if the point counts there and it is less.
func (s *sweep) try(r *reading, w *way, by geom.Turn, how way) {
	m := s.m.at(by)
	if by != s.closed {
		z := s.z.at(by)
		if z > s.to.front.At(m)+onPlane || z < s.to.stop.At(m)-onPlane {
			return
		}
	}
	if v := s.to.sign * (s.to.line.At(m) - s.across.at(by)); v < r.value {
		r.value, r.turn, *w = v, by, how
	}
}

// rate gives the change of a reading per mm along the arris: along it, and by the
// angle that changes with it.
func (s *sweep) rate(p float64, by geom.Turn, how way) float64 {
	q := s.arc.turned(by).way(p)
	dm, da := parts(s.to.upright, q)
	m := s.m.at(by)
	l := s.to.line.Slope(m)
	along := float64(l*dm) - da
	if how != wayFixed {
		var bound, turning float64 // of what stays zero: along the arris, per radian
		switch how {
		case wayFront, wayStop:
			on := s.to.front
			if how == wayStop {
				on = s.to.stop
			}
			k := on.Slope(m)
			bound = q.Z - float64(k*dm)
			turning = s.z.rate(by) - float64(k*s.m.rate(by))
		case wayBend:
			bound, turning = dm, s.m.rate(by)
		}
		if turning != 0 {
			swung := float64(l*s.m.rate(by)) - s.across.rate(by)
			along -= swung * bound / turning
		}
	}
	return s.to.sign * along
}
