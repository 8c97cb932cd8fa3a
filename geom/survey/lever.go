package survey

import (
	"math"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/survey/lsq"
)

// lever works out how gaps of the leaf, hung and closed, follow the unknowns: by
// levers, as a rigid body's points follow its supports, where hanging as many doors
// as there are unknowns would tell the same for fifty times the work.
//
// A gap follows three things: the lines at its own place, the hold the hinges have
// on the leaf, and the swing angle at which the leaf comes to rest. That angle
// follows from what holds the leaf there, the latch or a place on a stop, whose own
// gap is a reading like any other but stays 0.
type lever struct {
	net  *net
	door *door.Door // the net's, or what moves have made of it
	fit  *fit.Fit
	hold fit.Hold
	// closed takes leaf axes to the world; moves are how it changes by mm of each part
	// of the hold, and last by the swing angle.
	closed geom.Motion
	moves  [holds + 1]geom.Motion
	rest   spot
	at     [holds + 1]float64 // how the spot at rest follows them
	dense  []float64
	blunt  float64
}

// holds is how many numbers a hold has: three each of two seats, beds and pins.
const holds = 18

// spot is a place whose gap is followed.
type spot struct {
	kind  spotKind
	edge  fit.Edge
	m     float64  // the place along the edge
	leaf  geom.Vec // the leaf's point there, in leaf axes
	depth float64  // of that point, behind the knuckle face
	gap   float64  // there; of arrises only
	world geom.Vec
	k     geom.Vec // the gap follows the world place of the leaf's material there by k
}

type spotKind int

const (
	atArris spotKind = iota
	atStop
	atLatch
)

// part gives the j-th number of a hold.
func part(h *fit.Hold, j int) *float64 {
	v := [...]*geom.Vec{&h.Seat[0], &h.Seat[1], &h.Bed[0], &h.Bed[1], &h.Pin[0], &h.Pin[1]}[j/3]
	return [...]*float64{&v.X, &v.Y, &v.Z}[j%3]
}

// set makes the lever ready for a door that the net's is, or is the one with so much
// more or less at every place of it, and whose fit f is.
func (l *lever) set(n *net, d *door.Door, f *fit.Fit) {
	l.net, l.door, l.fit, l.blunt = n, d, f, blunt
	if len(l.dense) != n.columns {
		l.dense = make([]float64, n.columns)
	}
	l.hold = fit.HoldOf(d)
	by := f.Closed.Turn()
	l.closed = f.Axis.Motion(f.Pose, by)
	const step = 1e-2 // mm, either way: slopes true to the seventh figure
	for j := range holds {
		p := part(&l.hold, j)
		was := *p
		moved := func(s float64) geom.Motion {
			*p = was + s
			pose, axis := l.hold.Hang()
			return axis.Motion(pose, by)
		}
		l.moves[j] = change(moved(-step), moved(step), 1/(2*step))
		*p = was
	}
	const turn = 1e-4 // rad
	less, more := (f.Closed - turn).Turn(), (f.Closed + turn).Turn()
	l.moves[holds] = change(f.Axis.Motion(f.Pose, less), f.Axis.Motion(f.Pose, more), 1/(2*turn))
	if f.StopBound {
		l.rest = l.stop(f.FirstStop, f.FirstStopAt)
	} else {
		l.rest = l.latch()
	}
	for j := range l.at {
		l.at[j] = l.by(&l.rest, j)
	}
	if f.StopBound && f.IsSprung() {
		const step, topPin = 1.0, 12
		at := f.FirstStopAt
		l.at[topPin] += (f.Stops[f.FirstStop].At(at+step) - f.Stops[f.FirstStop].At(at)) / step
	}
}

func change(from, to geom.Motion, k float64) geom.Motion {
	d := func(a, b geom.Vec) geom.Vec { return b.Sub(a).Scale(k) }
	return geom.Motion{Origin: d(from.Origin, to.Origin), U: d(from.U, to.U), V: d(from.V, to.V), W: d(from.W, to.W)}
}

// by gives how the spot follows the j-th move.
func (l *lever) by(s *spot, j int) float64 { return s.k.Dot(l.moves[j].Point(s.leaf)) }

// blunt is how much farther off, in mm, the one arris of an edge may be than the
// other and still have a part in how the gap follows the unknowns: where they are
// about as near, a search that saw only one would let the other in the way.
const blunt = 0.1

// row works out how the reading, one of a gap or of a gap to a stop, follows each
// unknown, all else included, into l.dense. The rows are memory.
func (l *lever) row(rows *lsq.Rows, r *Reading) {
	rows.Reset()
	o := observer{d: l.door, net: l.net, rows: rows}
	e := edgeOf(r.Side)
	if r.Kind == StopGap {
		s := l.stop(e, l.fit.Stops[e].Range().Clamp(r.At))
		l.follow(&o, &s, 1)
	} else {
		m := l.fit.Gaps[e].Range().Clamp(r.At)
		near, next := l.nearest(e, m)
		part := max(0, (1-(next.gap-near.gap)/l.blunt)/2)
		l.follow(&o, &near, 1-part)
		l.follow(&o, &next, part)
	}
	rows.End(0, 1)
	rows.Scatter(l.dense, 0, 1)
}

// follow notes how the spot follows each unknown, by times as much.
func (l *lever) follow(o *observer, s *spot, times float64) {
	if times == 0 {
		return
	}
	back := -l.by(s, holds) / l.at[holds] // the turn that keeps what holds the leaf where it is
	if math.IsNaN(back) || math.IsInf(back, 0) {
		back = 0
	}
	l.local(o, s, times)
	l.local(o, &l.rest, times*back)
	var k [holds]float64
	for j := range k {
		k[j] = times * (l.by(s, j) + float64(back*l.at[j]))
	}
	l.spread(o, &k)
}

// surface gives the slopes of the leaf's faces at a place.
func (l *lever) surface(u, v float64) (su, sv float64) {
	f := &l.door.Leaf
	part := u / f.Width
	a, b := f.HangingFace.Slope(v), f.ClosingFace.Slope(v)
	return (f.ClosingFace.At(v) - f.HangingFace.At(v)) / f.Width, a + float64((b-a)*part)
}

// edgeLine gives the line of a leaf's edge.
func (l *lever) edgeLine(e fit.Edge) lineID { return hanging + lineID(e) }

// tan gives by how much an edge's arris goes farther out along +u per mm of depth.
func (l *lever) tan(e fit.Edge) float64 {
	switch e {
	case fit.HingeSide:
		return l.door.Leaf.HangingSetback()
	case fit.LatchSide:
		return -l.door.Leaf.ClosingSetback()
	}
	return 0
}

// nearest gives the places at m along an edge of the arris with the least gap, and of
// the one that comes next.
func (l *lever) nearest(e fit.Edge, m float64) (near, next spot) {
	var memory [4]door.Arris
	for i, a := range l.door.Leaf.Sections[e].Arrises(memory[:0], l.door.Leaf.Thickness) {
		s := l.arris(e, m, a)
		switch {
		case i == 0 || s.gap < near.gap:
			near, next = s, near
		case i == 1 || s.gap < next.gap:
			next = s
		}
	}
	return near, next
}

// arris gives the place of an edge's arris that is at m along the edge.
func (l *lever) arris(e fit.Edge, m float64, a door.Arris) spot {
	d := a.Depth
	s := spot{kind: atArris, edge: e, m: m, depth: d}
	leaf := &l.door.Leaf
	edge := *profileOf(l.door, l.edgeLine(e))
	upright := e.Upright()
	off := float64(l.tan(e)*d) + a.Inset // along +u or +v
	if e == fit.LatchSide || e == fit.HeadSide {
		off -= 2 * a.Inset
	}
	p := m - l.closed.Origin.X
	if upright {
		p = m - l.closed.Origin.Y
	}
	var slope float64
	for range 3 {
		var way geom.Vec
		if upright {
			u := edge.At(p) + off
			s.leaf = geom.Vec{X: u, Y: p, Z: leaf.Face(u, p) - d}
			su, sv := l.surface(u, p)
			run := edge.Slope(p)
			way = l.closed.Way(geom.Vec{X: run, Y: 1, Z: sv + float64(su*run)})
			s.world = l.closed.Point(s.leaf)
			slope = way.X / way.Y
			p -= (s.world.Y - m) / way.Y
		} else {
			v := edge.At(p) + off
			s.leaf = geom.Vec{X: p, Y: v, Z: leaf.Face(p, v) - d}
			su, sv := l.surface(p, v)
			run := edge.Slope(p)
			way = l.closed.Way(geom.Vec{X: 1, Y: run, Z: su + float64(sv*run)})
			s.world = l.closed.Point(s.leaf)
			slope = way.Y / way.X
			p -= (s.world.X - m) / way.X
		}
	}
	f := &l.door.Frame
	switch e {
	case fit.HingeSide:
		s.k, s.gap = geom.Vec{X: 1, Y: -slope}, s.world.X-f.HingeJamb.At(m)
	case fit.LatchSide:
		s.k, s.gap = geom.Vec{X: -1, Y: slope}, f.LatchJamb.At(m)-s.world.X
	case fit.HeadSide:
		s.k, s.gap = geom.Vec{X: slope, Y: -1}, f.Head.At(m)-s.world.Y
	default:
		fl := &l.door.Floor
		const step = 0.5 // mm
		rise := (fl.At(s.world.X, s.world.Z+step) - fl.At(s.world.X, s.world.Z-step)) / (2 * step)
		s.k, s.gap = geom.Vec{X: -slope, Y: 1, Z: -rise}, s.world.Y-fl.At(s.world.X, s.world.Z)
	}
	return s
}

// stop gives the place of the leaf's stop face over a stop's bearing line.
func (l *lever) stop(e fit.Edge, m float64) spot {
	f, leaf := &l.door.Frame, &l.door.Leaf
	s := spot{kind: atStop, edge: e, m: m, depth: leaf.Thickness - leaf.Sections[e].StopBack}
	half := f.StopWidth / 2
	var over geom.Vec
	switch e {
	case fit.HingeSide:
		over = geom.Vec{X: f.HingeJamb.At(m) + half, Y: m}
	case fit.LatchSide:
		over = geom.Vec{X: f.LatchJamb.At(m) - half, Y: m}
	default:
		over = geom.Vec{X: m, Y: f.Head.At(m) - half}
	}
	d := over.Sub(l.closed.Origin)
	u, v := l.closed.U.Dot(d), l.closed.V.Dot(d)
	for range 5 {
		s.leaf = geom.Vec{X: u, Y: v, Z: leaf.Face(u, v) - s.depth}
		s.world = l.closed.Point(s.leaf)
		off := over.Sub(s.world)
		off.Z = 0
		u += l.closed.U.Dot(off)
		v += l.closed.V.Dot(off)
	}
	su, sv := l.surface(u, v)
	n := l.closed.Way(geom.Vec{X: 1, Z: su}).Cross(l.closed.Way(geom.Vec{Y: 1, Z: sv}))
	s.k = n.Scale(1 / n.Z)
	return s
}

// latch gives the place of the latch, whose stand out of the front edge is its gap.
func (l *lever) latch() spot {
	d := l.door
	v := d.Latch.Height
	s := spot{kind: atLatch, edge: fit.LatchSide, m: v, leaf: l.fit.FacePoint(d.Leaf.Closing.At(v), v, 0)}
	s.world = l.closed.Point(s.leaf)
	s.k = geom.Vec{Y: -d.Frame.LatchFront.Slope(s.world.Y), Z: 1}
	return s
}

// face notes that the row follows the stand of the leaf's face at a place by k.
func (l *lever) face(o *observer, u, v, k float64) {
	part := u / l.door.Leaf.Width
	o.lean(hangingFace, v, float64(k*(1-part)))
	o.lean(closingFace, v, float64(k*part))
}

// local notes how the spot follows the lines at its own place, by times as much.
func (l *lever) local(o *observer, s *spot, times float64) {
	if times == 0 {
		return
	}
	along := func(way geom.Vec) float64 { return times * s.k.Dot(l.closed.Way(way)) }
	out := along(geom.Vec{Z: 1})
	u, v := s.leaf.X, s.leaf.Y
	su, sv := l.surface(u, v)
	l.face(o, u, v, out)
	switch s.kind {
	case atLatch:
		run := o.slope(closing, v)
		o.lean(closing, v, along(geom.Vec{X: 1, Z: su}))
		o.scalar(latchHeight, along(geom.Vec{X: run, Y: 1, Z: sv + float64(su*run)}))
		o.lean(latchFront, s.world.Y, -times)
		o.scalar(latchProud, -times)
	case atStop:
		o.scalar(thickness, -out)
		line := hingeJamb + lineID(s.edge)
		in, sign := s.k.X, 1.0 // z falls by k as its place goes along
		switch s.edge {
		case fit.LatchSide:
			sign = -1
		case fit.HeadSide:
			in, sign = s.k.Y, -1
		}
		o.lean(line, s.m, -times*in)
		o.scalar(stopWidth, -times*in*sign/2)
		o.lean(hingeFront+lineID(s.edge), s.m, -times)
		o.lean(hingeRebate+lineID(s.edge), s.m, times)
	default:
		line := l.edgeLine(s.edge)
		if !s.edge.Upright() {
			o.lean(line, u, along(geom.Vec{Y: 1, Z: sv}))
		} else {
			across := along(geom.Vec{X: 1, Z: su})
			o.lean(line, v, across)
			id, sign := hangingTan, 1.0
			if s.edge == fit.LatchSide {
				id, sign = closingTan, -1
			}
			o.scalar(id, float64(sign*s.depth)*across)
			if s.depth != 0 {
				o.scalar(thickness, l.tan(s.edge)*across)
			}
		}
		if s.depth != 0 {
			o.scalar(thickness, -out)
		}
		switch s.edge {
		case fit.HingeSide:
			o.lean(hingeJamb, s.m, -times)
		case fit.LatchSide, fit.HeadSide:
			o.lean(hingeJamb+lineID(s.edge), s.m, times)
		default:
			x, z := s.world.X, s.world.Z
			o.floor(sqrt(float64(x*x)+float64(z*z)), geom.Angle(math.Atan2(z, x)), -times)
		}
	}
}

// spread notes that the row follows the numbers of the hold by k.
func (l *lever) spread(o *observer, k *[holds]float64) {
	d := l.door
	for h, i := range [2]int{0, len(d.Hinges) - 1} {
		hinge := &d.Hinges[i]
		seat, bed, pin := k[3*h:3*h+3], k[6+3*h:9+3*h], k[12+3*h:15+3*h]

		v := hinge.LeafHeight
		u := d.Leaf.Hanging.At(v)
		su, sv := l.surface(u, v)
		across := seat[0] + float64(seat[2]*su)
		o.lean(hanging, v, across)
		l.face(o, u, v, seat[2])
		o.hinge(i, fieldLeafHeight, float64(across*o.slope(hanging, v))+seat[1]+float64(seat[2]*sv))

		y := hinge.JambHeight
		o.lean(hingeJamb, y, bed[0]+pin[0])
		o.lean(hingeFront, y, bed[2]+pin[2])
		o.hinge(i, fieldJambHeight, float64((bed[0]+pin[0])*o.slope(hingeJamb, y))+bed[1]+pin[1]+
			float64((bed[2]+pin[2])*o.slope(hingeFront, y)))
		o.hinge(i, fieldClosed, bed[0]+pin[0]/2)
		o.hinge(i, fieldLeafGain, -bed[0])
		o.hinge(i, fieldLeafPacker, bed[0])
		o.hinge(i, fieldJambGain, -bed[0]-pin[0])
		o.hinge(i, fieldJambPacker, bed[0]+pin[0])
		o.hinge(i, fieldProud, bed[2])
		o.hinge(i, fieldPin, pin[2])
	}
}
