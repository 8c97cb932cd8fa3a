package fit

import (
	"math"

	"leafwright/geom"
	"leafwright/geom/door"
)

// floorSweep looks for the least height of the bottom arrises over the floor
// through the whole swing. Between the floor's measured radii and angles its
// height is bilinear in distance and angle, which bends like a saddle, so the
// least is not inside such a field: it is on a path at an end of an arris piece,
// over a measured radius, or nearest to the floor's origin, at some angle.
type floorSweep struct {
	floor   *door.Floor
	tc, to  float64 // half-tangents of closed and open
	offset  float64 // of the pin axis from the floor's origin, mm
	steep   float64 // the floor's steepest rise outwards, and the greatest round, mm per radian
	round   float64
	twist   float64 // and the greatest change of the one with the other, per radian
	arc     *arc
	best    Sweep
	bestArc *arc
	bestP   float64

	path    path
	radius  float64
	p       float64  // the point at hand
	x, y, z harmonic // its coordinates
	ts      [maxTurns]float64
}

// path is how the point looked at moves along the arris as the leaf swings.
type path int

const (
	still   path = iota // one point of the arris
	ring                // the point over a measured radius
	nearest             // the point nearest to the floor's origin
)

// alike is the rise per radian, mm, below which a floor is the same all round: what
// is left when readings are fitted to one row.
const alike = 1e-9

// leap is how far either side of a leap of the floor it is read, in half-tangent
// or mm.
const leap = 1e-7

// maxTurns is room for the angles at which a path passes a measured angle: two
// for each a floor may have, the path's own bends and both ends.
const maxTurns = 96

// swingFloor measures the clearance over the floor, closed to open.
func (f *Fit) swingFloor() {
	s := &f.work.floor
	s.floor, s.tc, s.to = &f.work.ground, f.work.sweep.tc, f.work.sweep.topen
	s.best, s.bestArc = Sweep{Least: math.Inf(1)}, nil
	a := f.Axis.At
	s.offset = math.Sqrt(float64(a.X*a.X) + float64(a.Z*a.Z))
	s.steep, s.round, s.twist = slopes(s.floor)
	k := &f.work.arrises[FloorSide]
	for line := range k.n {
		f.floorWhenClosed(line)
		arcs := k.lines[line]
		for i := range arcs {
			s.arc = &arcs[i]
			s.follow(still, s.arc.lo)
			if i == len(arcs)-1 {
				s.follow(still, s.arc.hi)
			}
			if !f.work.levelFloor {
				// As the leaf swings a point's distance from the floor's origin changes by
				// no more than the pins stand off it, either way.
				near, far := s.arc.out.at(s.arc.lo).Len(), s.arc.out.at(s.arc.hi).Len()
				near, far = min(near, far)-s.offset, max(near, far)+s.offset
				byPins := s.arc.lo-arcs[0].lo < 2*s.offset+50 // where the nearest point may be
				for _, r := range s.floor.Radii {
					if byPins || near <= r && r <= far {
						s.follow(ring, r)
					}
				}
				if byPins {
					s.follow(nearest, 0)
				}
				f.floorWhenOpen()
			}
		}
	}
	if !f.work.levelFloor && s.bestArc != nil {
		s.polish()
	}
	f.finish(FloorSide, &s.best, s.bestArc, s.bestP)
}

// Near the floor's origin distance and angle bend too fast for the saddle: within
// poleReach mm of it the least may lie inside a field, and is looked for from the
// best found so far, first this far along the arris (mm) and in half-tangent.
const (
	poleReach  = 250
	polishStep = 24
	polishTurn = 0.2
)

// polish goes down from the best so far, along the arris and through the swing by
// turns.
func (s *floorSweep) polish() {
	s.arc, s.path = s.bestArc, still
	s.take(s.bestP)
	t := s.best.Angle.Turn().HalfTan()
	at := s.arc.turned(geom.HalfTan(t)).at(s.p)
	if float64(at.X*at.X)+float64(at.Z*at.Z) > poleReach*poleReach {
		return
	}
	step, turn := float64(polishStep), polishTurn
	for range 5 {
		lo, hi := max(s.arc.lo, s.bestP-step), min(s.arc.hi, s.bestP+step)
		golden(lo, hi, step/4096, func(p float64) float64 {
			s.take(p)
			return s.read(t)
		})
		s.take(s.bestP)
		t = s.best.Angle.Turn().HalfTan()
		golden(max(s.tc, t-turn), min(s.to, t+turn), turn/4096, s.read)
		t = s.best.Angle.Turn().HalfTan()
		step, turn = step/3, turn/3
	}
}

// floorWhenClosed takes the lowest place of a closed bottom arris, which may be
// anywhere along it, from the closed gap.
func (f *Fit) floorWhenClosed(line int) {
	s := &f.work.floor
	low := f.work.floorClosed[line]
	if !(low.least < s.best.Least) {
		return
	}
	closed := geom.HalfTan(s.tc)
	arcs := f.work.arrises[FloorSide].lines[line]
	i := len(arcs) - 1
	for i > 0 && arcs[i].turned(closed).at(arcs[i].lo).X > low.at {
		i--
	}
	s.best.Least, s.best.Angle = low.least, f.Closed
	s.bestArc, s.bestP = &arcs[i], inverse(arcs[i].turned(closed), false, low.at, arcs[i].lo)
}

// floorWhenOpen looks along the whole arc at hand with the leaf fully open. In a
// stretch without a bend of the floor the height bends by no more than the floor's
// slopes times how fast distance and angle bend along a line that passes the
// origin at its distance; where that cannot reach the best so far, it is left.
func (f *Fit) floorWhenOpen() {
	s := &f.work.floor
	by := geom.HalfTan(s.to)
	st := floorStretch{floor: s.floor, q: s.arc.turned(by), byU: true}
	cuts := append(f.work.cuts[:0], s.arc.lo)
	cuts = sorted(append(floorBends(cuts, st.floor, st.q, s.arc.lo, s.arc.hi), s.arc.hi))
	f.work.cuts = cuts
	height := func(p float64) float64 { return st.q.at(p).Y - st.under(p) }
	way := st.q.way(s.arc.lo)
	n := math.Sqrt(float64(way.X*way.X) + float64(way.Z*way.Z))
	a := height(cuts[0])
	for k := 1; k < len(cuts); k++ {
		lo, hi := cuts[k-1], cuts[k]
		b := height(hi)
		p0, p1 := st.q.at(lo), st.q.at(hi)
		h := math.Abs(float64(p0.X*way.Z)-float64(p0.Z*way.X)) / n // the line's distance
		s0 := (float64(p0.X*way.X) + float64(p0.Z*way.Z)) / n
		s1 := (float64(p1.X*way.X) + float64(p1.Z*way.Z)) / n
		near := geom.Interval{Lo: min(s0, s1), Hi: max(s0, s1)}.Clamp(0)
		r := math.Sqrt(float64(h*h)+float64(near*near)) + 1e-9
		bend := s.steep*h*h/(r*r*r) + 2*s.round*h/(r*r*r) + 2*s.twist*h/(r*r)
		if min(a, b)-bend*(s1-s0)*(s1-s0)/4 < s.best.Least-gain {
			f.work.lineGap[0] = st.pieces(f.work.lineGap[0][:0], lo, hi)
			if least, at, _, _ := (Curve{f.work.lineGap[0]}).Extremes(); least < s.best.Least {
				s.best.Least, s.best.Angle = least, by.Angle()
				s.bestArc, s.bestP = s.arc, at
			}
		}
		a = b
	}
}

// slopes gives the floor's steepest rise per mm outwards, per radian round, and
// the greatest change of the one with the other.
func slopes(fl *door.Floor) (out, round, twist float64) {
	for i, row := range fl.Heights {
		for j := range row {
			if i > 0 {
				turn := float64(fl.Angles[i] - fl.Angles[i-1])
				round = max(round, math.Abs(row[j]-fl.Heights[i-1][j])/turn)
			}
			if j == 0 {
				continue
			}
			step := fl.Radii[j] - fl.Radii[j-1]
			rise := (row[j] - row[j-1]) / step
			out = max(out, math.Abs(rise))
			if i > 0 {
				below := fl.Heights[i-1]
				twist = max(twist, math.Abs(rise-(below[j]-below[j-1])/step)/float64(fl.Angles[i]-fl.Angles[i-1]))
			}
		}
	}
	return out, round, twist
}

// follow looks along one path through the swing.
func (s *floorSweep) follow(how path, k float64) {
	s.path = how
	switch how {
	case still:
		s.take(k)
	case ring:
		s.radius = k
		s.p = s.arc.lo
	case nearest:
		s.p = s.arc.lo
	}
	if how != still && !s.step(geom.HalfTan(s.tc)) {
		s.take(s.p) // off the arris when closed, perhaps on it later
	}
	ts := s.turns()
	before := s.read(ts[0])
	for i := 1; i < len(ts); i++ {
		after := s.read(ts[i])
		s.dip(ts[i-1], ts[i], before, after)
		before = after
	}
}

func (s *floorSweep) take(p float64) {
	s.p = p
	foot, out, on := s.arc.foot.at(p), s.arc.out.at(p), s.arc.on.at(p)
	s.x = harmonic{foot.X, out.X, on.X}
	s.y = harmonic{foot.Y, out.Y, on.Y}
	s.z = harmonic{foot.Z, out.Z, on.Z}
}

// step moves the point at hand to where the path is at the turn, and
// tells whether that is on the arris.
func (s *floorSweep) step(by geom.Turn) bool {
	if s.path == still {
		return true
	}
	q := s.arc.plan(by)
	// In plan the arris is all but straight: the foot of the square from the origin
	// is near, and the ring lies a leg of the triangle away from it, on the far side.
	at, way := q.at(s.arc.lo), q.way(s.arc.lo)
	n := way.dot(way)
	p := s.arc.lo - at.dot(way)/n
	if s.path == ring {
		at = q.at(p)
		leg := float64(s.radius*s.radius) - float64(at.x*at.x) - float64(at.z*at.z)
		if leg < 0 {
			return false
		}
		p += math.Sqrt(leg / n)
		at, way = q.at(p), q.way(p)
		if slope := 2 * at.dot(way); slope != 0 {
			p -= (at.dot(at) - float64(s.radius*s.radius)) / slope
		}
	}
	if !(s.arc.lo <= p && p <= s.arc.hi) {
		return false
	}
	s.take(p)
	return true
}

// read gives the height of the path over the floor at the half-tangent t, +∞
// where the path is off the arris, and notes it if it is the least so far.
func (s *floorSweep) read(t float64) float64 {
	v := s.height(t)
	if v < s.best.Least {
		s.best.Least, s.best.Angle = v, geom.HalfTan(t).Angle()
		s.bestArc, s.bestP = s.arc, s.p
	}
	return v
}

// height gives the same and does not note it.
func (s *floorSweep) height(t float64) float64 {
	by := geom.HalfTan(t)
	if !s.step(by) {
		return math.Inf(1)
	}
	return s.y.at(by) - s.floor.At(s.x.at(by), s.z.at(by))
}

// turns gives the half-tangents, rising, at which the path passes a measured
// angle of the floor or a bend of its own, and both ends.
func (s *floorSweep) turns() []float64 {
	ts := append(s.ts[:0], s.tc)
	add := func(t float64) {
		if s.tc < t && t < s.to && len(ts) < maxTurns-1 {
			ts = append(ts, t)
		}
	}
	if s.round > 0 {
		for _, a := range s.floor.Angles {
			near, far := s.ray(a).roots()
			add(s.settle(near, a))
			add(s.settle(far, a))
		}
		// Behind the hinge jamb the angle leaps from 180° to −180°, and the floor
		// with it: both sides of the leap.
		near, far := s.z.roots()
		for _, t := range [2]float64{near, far} {
			add(t - leap)
			add(t + leap)
		}
	}
	// Its own rise and fall: level places, and where its bend changes sign, a
	// quarter turn on.
	one, other := s.y.level()
	add(one)
	add(other)
	one, other = harmonic{b: -s.y.c, c: s.y.b}.level()
	add(one)
	add(other)
	return sorted(append(ts, s.to))
}

// ray is zero where the point at hand stands on the floor's ray at angle a.
func (s *floorSweep) ray(a geom.Angle) harmonic {
	t := a.Turn()
	return harmonic{
		float64(s.x.a*t.Sin) - float64(s.z.a*t.Cos),
		float64(s.x.b*t.Sin) - float64(s.z.b*t.Cos),
		float64(s.x.c*t.Sin) - float64(s.z.c*t.Cos),
	}
}

// settle puts right a half-tangent found for a point that shifts along the arris
// meanwhile.
func (s *floorSweep) settle(t float64, a geom.Angle) float64 {
	if s.path == still || !(s.tc < t && t < s.to) {
		return t
	}
	for range 2 {
		if !s.step(geom.HalfTan(t)) {
			return t
		}
		near, far := s.ray(a).roots()
		if math.Abs(far-t) < math.Abs(near-t) {
			near = far
		}
		if !(s.tc < near && near < s.to) {
			return t
		}
		t = near
	}
	return t
}

// dip looks for a lesser height between two half-tangents with nothing but a
// smooth floor between them, read as a and b at its ends. The height bends by no
// more than the leaf's own rise and the floor's slopes over the pin's offset.
func (s *floorSweep) dip(t0, t1, a, b float64) {
	if math.IsInf(a, 1) && math.IsInf(b, 1) {
		return
	}
	angle := 2 * (t1 - t0) // radians at most
	r := math.Sqrt(float64(s.x.b*s.x.b) + float64(s.x.c*s.x.c))
	bend := math.Sqrt(float64(s.y.b*s.y.b)+float64(s.y.c*s.y.c)) +
		4*s.offset*(s.steep+s.round/max(r-s.offset, 1))
	deep := float64(bend*angle) * angle / 8
	most := math.Inf(1)
	if s.round == 0 {
		// Between its turns the leaf only rises or only falls, so the dip is no deeper
		// than what the floor does over the little that the distance changes; or, over
		// one distance, than the arris does over the little that the point shifts.
		along := s.steep
		if s.path == ring {
			way := s.arc.turned(geom.HalfTan(t0)).way(s.p)
			along = 2 * math.Abs(way.Y)
		}
		most = 2 * s.offset * along
	}
	if math.IsInf(a+b, 1) { // off the arris at one end, it ends in between
		if min(a, b)-min(deep, most) <= s.best.Least-gain {
			s.narrow(t0, t1)
		}
		return
	}
	if s.stays(a, b, deep, most) {
		return
	}
	mid := s.height(t0 + (t1-t0)/2)
	if !math.IsInf(mid, 1) && s.stays(a, mid, deep/4, most) && s.stays(mid, b, deep/4, most) {
		return
	}
	s.narrow(t0, t1)
}

// stays tells that a curve with the values a and b at its ends does not come below
// the best so far between them: one that comes no lower than most below the lesser,
// and with equal ends no lower than deep below them.
func (s *floorSweep) stays(a, b, deep, most float64) bool {
	tilt := min(math.Abs(b-a)/4, deep)
	below := float64((deep-tilt)*(deep-tilt)) / max(deep, math.SmallestNonzeroFloat64)
	return min(a, b)-min(below, most) > s.best.Least-gain
}

// narrow closes in on the least height between two half-tangents.
func (s *floorSweep) narrow(lo, hi float64) {
	golden(lo, hi, 2e-4, s.read) // a trough this narrow is level to 1e-7 mm
}

// golden closes in on the least value of f between lo and hi by the golden section
// until the stretch is narrower than width.
func golden(lo, hi, width float64, f func(float64) float64) {
	const g = 0.6180339887498949
	a, b := hi-float64(g*(hi-lo)), lo+float64(g*(hi-lo))
	fa, fb := f(a), f(b)
	for range 60 {
		if hi-lo < width {
			return
		}
		if fa < fb {
			hi, b, fb = b, a, fa
			a = hi - float64(g*(hi-lo))
			fa = f(a)
		} else {
			lo, a, fa = a, b, fb
			b = lo + float64(g*(hi-lo))
			fb = f(b)
		}
	}
}
