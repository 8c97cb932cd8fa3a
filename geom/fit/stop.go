package fit

import (
	"math"

	"leafwright/geom"
	"leafwright/geom/door"
)

// standing is the leaf at one swing angle, as the stops see it.
type standing struct {
	leaf   *door.Leaf
	motion geom.Motion // leaf axes to world
}

// bearing is the line that the leaf's stop face bears on along one stop: half a
// stop's width in from the frame's face. The stop face there lies at depth behind
// the knuckle face.
type bearing struct {
	upright bool
	in      float64 // added to the face: towards the opening
	line    geom.Profile
	stop    geom.Profile
	depth   float64
}

func bearings(d *door.Door) [FloorSide]bearing {
	f, l := &d.Frame, &d.Leaf
	half := f.StopWidth / 2
	depth := func(e Edge) float64 { return l.Thickness - l.Sections[e].StopBack }
	return [FloorSide]bearing{
		HingeSide: {true, half, f.HingeJamb, f.HingeStop, depth(HingeSide)},
		LatchSide: {true, -half, f.LatchJamb, f.LatchStop, depth(LatchSide)},
		HeadSide:  {false, -half, f.Head, f.HeadStop, depth(HeadSide)},
	}
}

// place gives the point of the bearing line at m, z left 0.
func (b bearing) place(m float64) geom.Vec {
	if b.upright {
		return geom.Vec{X: b.line.At(m) + b.in, Y: m}
	}
	return geom.Vec{X: m, Y: b.line.At(m) + b.in}
}

// face gives the z at which the leaf's face at a depth stands over the place
// (x, y), and the (u, v) of the leaf there.
//
// The line along z through the place is straight in leaf axes, and w = s(u, v) − depth
// is bilinear between the bends of the face, so z solves a quadratic. The leaf is
// within a few degrees of closed, so the root wanted is the small one.
func (s standing) face(x, y, depth float64) (z, u, v float64) {
	to := geom.Vec{X: x, Y: y}.Sub(s.motion.Origin)
	du, dv, dw := s.motion.U.Z, s.motion.V.Z, s.motion.W.Z
	u0, v0, w0 := s.motion.U.Dot(to), s.motion.V.Dot(to), s.motion.W.Dot(to)
	l := s.leaf
	i, j := l.HangingFace.Find(v0), l.ClosingFace.Find(v0)
	for range 3 {
		h, x := faceBetween(l, i, j)
		a := -float64(x.C1*dv) * du / l.Width
		b := dw - float64(h.C1*dv) - (float64(x.At(v0)*du)+float64(float64(x.C1*dv)*u0))/l.Width
		c := w0 + depth - h.At(v0) - float64(x.At(v0)*u0)/l.Width
		disc := max(0, float64(b*b)-float64(4*a*c))
		z = -2 * c / (b + math.Copysign(math.Sqrt(disc), b))
		u, v = u0+float64(z*du), v0+float64(z*dv)
		hi, ci := l.HangingFace.Find(v), l.ClosingFace.Find(v)
		if hi == i && ci == j {
			break
		}
		i, j = hi, ci
	}
	return z, u, v
}

// lift gives how fast z of the stop face over a fixed place rises with the
// swing, in mm per radian, at the leaf's (u, v) and world place p.
func (s standing) lift(axis geom.Axis, u, v float64, p geom.Vec) float64 {
	h, x := faceLines(s.leaf, v)
	w := s.leaf.Width
	n := s.motion.Way(geom.Vec{
		X: -x.At(v) / w,
		Y: -h.C1 - float64(x.C1*u)/w,
		Z: 1,
	})
	return n.Dot(axis.Down.Cross(p.Sub(axis.At))) / n.Z
}

// stopCurve appends the gap between the leaf's stop face and the stop along a
// bearing line, over the places in within.
func (f *Fit) stopCurve(dst []Piece, s standing, b bearing, within geom.Interval) []Piece {
	if !(within.Lo < within.Hi) {
		return dst
	}
	gap := func(m float64) float64 {
		p := b.place(m)
		z, _, _ := s.face(p.X, p.Y, b.depth)
		return z - b.stop.At(m)
	}
	cuts := append(f.work.cuts[:0], within.Lo)
	cuts = knotsWithin(cuts, b.line, within.Lo, within.Hi)
	cuts = knotsWithin(cuts, b.stop, within.Lo, within.Hi)
	cuts = faceBends(cuts, s, b, within)
	cuts = sorted(append(cuts, within.Hi))
	f.work.cuts = cuts
	from := gap(within.Lo)
	for i := 1; i < len(cuts); i++ {
		lo, hi := cuts[i-1], cuts[i]
		h := hi - lo
		if !(h > 0) {
			continue
		}
		to := gap(hi)
		p := Piece{Lo: lo, Hi: hi, C0: from, C1: (to - from) / h}
		if h > stopStraight { // a conic so flat that three places fix it
			c := 2 * (from - 2*gap(lo+h/2) + to)
			p.C1 -= c / h
			p.C2 = c / float64(h*h)
		}
		dst = append(dst, p)
		from = to
	}
	return dst
}

// stopStraight is the length in mm below which a stop gap is straight to the
// last bits: its bend is below 1e-6 per mm.
const stopStraight = 0.5

// faceBends appends the places in within at which the bearing line passes a bend
// of the leaf's face. At a bend's height the stop face is a straight line across
// the leaf, which the straight pieces of the bearing line cross once each.
func faceBends(dst []float64, s standing, b bearing, within geom.Interval) []float64 {
	l := s.leaf
	for _, p := range [2]geom.Profile{l.HangingFace, l.ClosingFace} {
		for i := range p.Knots() {
			v := p.Knot(i)
			h := l.HangingFace.At(v)
			base := s.motion.Point(geom.Vec{Y: v, Z: h - b.depth})
			across := s.motion.Way(geom.Vec{X: 1, Z: (l.ClosingFace.At(v) - h) / l.Width})
			bm, bv := parts(b.upright, base)
			am, av := parts(b.upright, across)
			for k := range b.line.Pieces() {
				e := b.line.Piece(k)
				u := (e.At(bm) + b.in - bv) / (av - float64(e.C1*am))
				if m := bm + float64(am*u); within.Lo < m && m < within.Hi && b.line.Find(m) == k {
					dst = append(dst, m)
				}
			}
		}
	}
	return dst
}

// extent gives the places an edge's rearmost arris covers at the turn.
func (f *Fit) extent(e Edge, by geom.Turn) geom.Interval {
	arcs := f.work.arrises[e].rear()
	if len(arcs) == 0 {
		return geom.Empty()
	}
	a, b := &arcs[0], &arcs[len(arcs)-1]
	lo, _ := parts(e.Upright(), a.turned(by).at(a.lo))
	hi, _ := parts(e.Upright(), b.turned(by).at(b.hi))
	return geom.Interval{Lo: lo, Hi: hi}
}

// stand gives the leaf at the turn.
func (f *Fit) stand(by geom.Turn) standing {
	return standing{&f.door.Leaf, f.Axis.Motion(f.Pose, by)}
}

// stopGaps measures the gap to every stop at the turn.
func (f *Fit) stopGaps(by geom.Turn) {
	s := f.stand(by)
	for e, b := range bearings(f.door) {
		g := &f.Stops[e]
		g.set(f.stopCurve(g.Pieces[:0], s, b, f.extent(Edge(e), by)))
	}
}
