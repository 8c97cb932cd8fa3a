package fit_test

import (
	"math"

	"leafwright/geom"
	"leafwright/geom/fit"
)

const degree = math.Pi / 180

// turnAbout turns the displacement d by an angle about the direction k of
// length 1, right-handed.
func turnAbout(d, k geom.Vec, by float64) geom.Vec {
	sin, cos := math.Sincos(by)
	return d.Scale(cos).Add(k.Cross(d).Scale(sin)).Add(k.Scale(k.Dot(d) * (1 - cos)))
}

// setPose finds pin axis, strain and pose: any turn that brings the line through
// the outer hinges home, then all turns about that line, looked through
// for the one that levels u in z and leaves it pointing to +x.
func (s *slow) setPose() {
	d := s.d
	onLeaf := func(i int) geom.Vec {
		v := d.Hinges[i].LeafHeight
		return s.face(poly(d.Leaf.Hanging, v), v, 0)
	}
	inFrame := func(i int) geom.Vec {
		h := d.Hinges[i]
		gap := h.Closed - (h.LeafGain - h.LeafPacker) - (h.JambGain - h.JambPacker)
		return geom.Vec{
			X: poly(d.Frame.HingeJamb, h.JambHeight) + gap,
			Y: h.JambHeight,
			Z: poly(d.Frame.HingeFront, h.JambHeight) + h.Proud,
		}
	}
	pin := func(i int) geom.Vec {
		h := d.Hinges[i]
		return geom.Vec{
			X: poly(d.Frame.HingeJamb, h.JambHeight) + h.Closed/2 - (h.JambGain - h.JambPacker),
			Y: h.JambHeight,
			Z: poly(d.Frame.HingeFront, h.JambHeight) + h.Pin,
		}
	}
	last := len(d.Hinges) - 1
	s.pin = pin(0)
	s.down = pin(last).Sub(s.pin).Unit()
	h1, hn, m1, mn := onLeaf(0), onLeaf(last), inFrame(0), inFrame(last)
	s.strain = hn.Sub(h1).Len() - mn.Sub(m1).Len()

	a, b := hn.Sub(h1).Unit(), mn.Sub(m1).Unit()
	c := a.Cross(b) // the turn that takes a to b by the shortest way
	home := func(d geom.Vec) geom.Vec {
		return d.Scale(a.Dot(b)).Add(c.Cross(d)).Add(c.Scale(c.Dot(d) / (1 + a.Dot(b))))
	}
	u0 := home(geom.Vec{X: 1})
	rise := func(psi float64) float64 { return turnAbout(u0, b, psi).Z }
	var psi float64
	for _, at := range changes(rise, places(-math.Pi, math.Pi, degree)) {
		if turnAbout(u0, b, at).X > 0 {
			psi = at
		}
	}
	turn := func(d geom.Vec) geom.Vec { return turnAbout(home(d), b, psi) }
	s.pose = motion{u: turn(geom.Vec{X: 1}), v: turn(geom.Vec{Y: 1}), w: turn(geom.Vec{Z: 1})}
	s.pose.o = m1.Sub(s.pose.point(h1))
}

// turned gives the leaf's motion at a swing angle.
func (s *slow) turned(phi float64) motion {
	return motion{
		s.pin.Add(turnAbout(s.pose.o.Sub(s.pin), s.down, phi)),
		turnAbout(s.pose.u, s.down, phi), turnAbout(s.pose.v, s.down, phi), turnAbout(s.pose.w, s.down, phi),
	}
}

// latchLeft is how far in z the latch point is from home at a swing angle.
func (s *slow) latchLeft(phi float64) float64 {
	v := s.d.Latch.Height
	q := s.turned(phi).point(s.face(poly(s.d.Leaf.Closing, v), v, 0))
	return q.Z - poly(s.d.Frame.LatchFront, q.Y) - s.d.Latch.Proud
}

func (s *slow) latchAngle() float64 { return root(s.latchLeft, -45*degree, 45*degree) }

// line gives the place of the bearing line, the stop's z there and
// the place's coordinate along the line.
func (s *slow) line(e fit.Edge, at float64) (x, y, z float64) {
	f := &s.d.Frame
	half := f.StopWidth / 2
	switch e {
	case fit.HingeSide:
		return poly(f.HingeJamb, at) + half, at, poly(f.HingeStop, at)
	case fit.LatchSide:
		return poly(f.LatchJamb, at) - half, at, poly(f.LatchStop, at)
	}
	return at, poly(f.Head, at) - half, poly(f.HeadStop, at)
}

// stopGap is how far the leaf's stop face, carried on past its edges, stands
// in front of the stop at a place of the bearing line; where the leaf's edge stands
// back from that face, it is a face so much farther from the stop.
func (s *slow) stopGap(e fit.Edge, m motion, at float64) float64 {
	x, y, z := s.line(e, at)
	// u and v from the place in plan, w from u and v, until they agree
	det := m.u.X*m.v.Y - m.u.Y*m.v.X
	depth := s.d.Leaf.Thickness - s.d.Leaf.Sections[e].StopBack
	w := -depth
	var p geom.Vec
	for range 100 {
		dx, dy := x-m.o.X-w*m.w.X, y-m.o.Y-w*m.w.Y
		p = s.face((dx*m.v.Y-dy*m.v.X)/det, (dy*m.u.X-dx*m.u.Y)/det, depth)
		if math.Abs(p.Z-w) < 1e-11 {
			break
		}
		w = p.Z
	}
	return m.point(p).Z - z
}

// stopRange is the stretch of the bearing line beside the edge's rearmost arris.
func (s *slow) stopRange(a arris, m motion) (lo, hi float64) {
	from, to := m.point(s.on(a, a.lo)), m.point(s.on(a, a.hi))
	if a.edge.Upright() {
		return from.Y, to.Y
	}
	return from.X, to.X
}

// stopKinks gives the places where the gap to the stop may bend: stations of
// face and stop, and where the leaf's face bends under the line.
func (s *slow) stopKinks(e fit.Edge, m motion) []float64 {
	f, l := &s.d.Frame, &s.d.Leaf
	bends := stations(l.HangingFace, l.ClosingFace)
	if !e.Upright() {
		return stations(f.Head, f.HeadStop)
	}
	var at []float64
	if e == fit.HingeSide {
		at = stations(f.HingeJamb, f.HingeStop)
	} else {
		at = stations(f.LatchJamb, f.LatchStop)
	}
	for _, v := range bends { // near enough: the neighbourhood is narrowed after
		u := 0.0
		if e == fit.LatchSide {
			u = l.Width
		}
		at = append(at, m.point(s.face(u, v, l.Thickness)).Y)
	}
	return at
}

// leastStop is the least gap to the stops that can hold the leaf: the latch
// line, and the head line from 100 mm beyond the top pin.
func (s *slow) leastStop(latch, head arris, phi float64) float64 {
	m := s.turned(phi)
	lo, hi := s.stopRange(latch, m)
	_, best := least(func(y float64) float64 { return s.stopGap(fit.LatchSide, m, y) },
		places(lo, hi, 40, s.stopKinks(fit.LatchSide, m)...))
	lo, hi = s.stopRange(head, m)
	if lo = max(lo, s.pin.X+100); lo <= hi {
		_, g := least(func(x float64) float64 { return s.stopGap(fit.HeadSide, m, x) },
			places(lo, hi, 20, s.stopKinks(fit.HeadSide, m)...))
		best = min(best, g)
	}
	return best
}

// stopAngle closes the leaf from 50° by half degrees until a stop is touched.
func (s *slow) stopAngle() float64 {
	latch, head := s.rear(fit.LatchSide), s.rear(fit.HeadSide)
	gap := func(phi float64) float64 { return s.leastStop(latch, head, phi) }
	for phi := 50 * degree; phi > -50*degree; phi -= degree / 2 {
		if gap(phi-degree/2) < 0 {
			return root(gap, phi-degree/2, phi)
		}
	}
	return math.NaN()
}
