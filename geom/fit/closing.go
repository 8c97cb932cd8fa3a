package fit

import (
	"math"

	"leafwright/geom"
)

// Numbers of the search for the closed position.
const (
	// Springing is how far in x beyond the top pin a stop must be to hold the leaf,
	// mm. Nearer the pin a rigid leaf would be held open by degrees where a real
	// one springs: there a stop in the way is called hinge-bound. A convention.
	Springing = 100
	// widest is the half-tangent of the greatest angle, 45°, at which a leaf is
	// still looked for closed, either way.
	widest = 0.41421356237309503
	// home is how closely, in mm, the leaf is brought onto a stop.
	home = 1e-10
)

// close finds where the leaf comes to rest: the larger of the latch's angle and
// that of first contact with a stop. A tie goes to the latch.
func (f *Fit) close() {
	latch := f.latchTurn()
	f.LatchAngle = latch.Angle()
	stop := f.stopTurn(latch)
	f.StopAngle = stop.Angle()
	f.Closed, f.StopBound, f.LatchMiss = f.LatchAngle, false, 0
	if f.StopAngle > f.LatchAngle {
		f.Closed, f.StopBound = f.StopAngle, true
		p := f.Axis.Turn(f.latchPoint(), stop)
		f.LatchMiss = p.Z - f.door.Frame.LatchFront.At(p.Y) - f.door.Latch.Proud
	}
}

// latchPoint is the knuckle face at the closing edge at latch height, at swing 0.
func (f *Fit) latchPoint() geom.Vec {
	v := f.door.Latch.Height
	return f.Pose.Point(f.FacePoint(f.door.Leaf.Closing.At(v), v, 0))
}

// latchTurn brings the latch point to the frame's front edge plus its stand. Where
// no angle does (a leaf hung far off), it takes the nearest.
func (f *Fit) latchTurn() geom.Turn {
	foot, out, on := f.Axis.Split(f.latchPoint())
	z := harmonic{foot.Z, out.Z, on.Z}
	y := harmonic{foot.Y, out.Y, on.Y}
	front := f.door.Frame.LatchFront
	t := geom.Turn{Cos: 1}
	for range 4 { // y hardly moves: the front edge's piece is found at once or next
		i := front.Find(y.at(t))
		l := front.Piece(i)
		l.C0 += f.door.Latch.Proud
		h := z.less(l, y)
		near, _ := h.roots()
		if math.IsNaN(near) {
			near, _ = h.level()
		}
		t = geom.HalfTan(max(-widest, min(widest, near)))
		if front.Find(y.at(t)) == i {
			break
		}
	}
	return t
}

// stopTurn finds the greatest angle at which the least gap to the latch stop, or
// to the head stop clear of the hinges, is zero. Each gap rises with the angle, so
// a step along the least one's rate comes home within a few.
func (f *Fit) stopTurn(from geom.Turn) geom.Turn {
	lines := bearings(f.door)
	clear := f.Axis.At.X + Springing
	phi, t := float64(from.Angle()), from
	lo, hi := -math.Pi/4, math.Pi/4
	for range 40 {
		s := f.stand(t)
		least, at, edge := math.Inf(1), 0.0, LatchSide
		for _, e := range [2]Edge{LatchSide, HeadSide} {
			within := f.extent(e, t)
			if e == HeadSide {
				within.Lo = max(within.Lo, clear)
			}
			f.work.stop = f.stopCurve(f.work.stop[:0], s, lines[e], within)
			if v, m, _, _ := (Curve{f.work.stop}).Extremes(); v < least {
				least, at, edge = v, m, e
			}
		}
		f.FirstStop, f.FirstStopAt = edge, at
		if math.IsInf(least, 1) || math.Abs(least) < home {
			break
		}
		if least > 0 {
			hi = phi
		} else {
			lo = phi
		}
		next := f.slide(lines[edge], at, phi)
		if !(lo < next && next < hi) {
			next = lo + (hi-lo)/2
		}
		if next == phi {
			break
		}
		phi = next
		t = geom.Angle(phi).Turn()
	}
	return t
}

// slide gives the angle at which the leaf's stop face touches the stop at the
// place m of one bearing line, starting from phi.
func (f *Fit) slide(b bearing, m, phi float64) float64 {
	p := b.place(m)
	stop := b.stop.At(m)
	for range 6 {
		s := f.stand(geom.Angle(phi).Turn())
		z, u, v := s.face(p.X, p.Y, b.depth)
		rate := s.lift(f.Axis, u, v, geom.Vec{X: p.X, Y: p.Y, Z: z})
		if rate == 0 {
			break
		}
		step := (z - stop) / rate
		phi -= step
		if math.Abs(step) < 1e-13 {
			break
		}
	}
	return phi
}
