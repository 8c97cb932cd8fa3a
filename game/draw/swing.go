package draw

import (
	"math"

	"leafwright/geom"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
)

// stirred is the least swing from closed that shows the closed leaf as a ghost.
const stirred = 0.4 * geom.Degree

// drawGhost shows where the leaf stands when closed.
func (s *Scene) drawGhost() {
	if s.swing-s.f.Closed < stirred {
		return
	}
	c := s.cutLeaf(s.section, s.closed)
	from := s.pen.start()
	for _, q := range [5]Pt{c.knuckle[0], c.knuckle[1], c.stop[1], c.stop[0], c.knuckle[0]} {
		s.pen.to(s.plan.to(q))
	}
	s.pen.dash(from, Ghost, thin, 4, 3)
}

// drawArc shows the path of the arris at the closing edge that stands farthest
// from the pin, which is the one that fouls.
func (s *Scene) drawArc() {
	l := &s.d.Leaf
	var far geom.Vec
	off := 0.0
	for _, depth := range [2]float64{0, l.Thickness} {
		p, _ := s.worldSection(l.Closing, -l.ClosingSetback(), depth, s.section, s.closed)
		if d := s.f.Axis.Off(s.f.Pose.Point(p)); d > off {
			off, far = d, p
		}
	}
	open := max(s.d.Opens, s.f.Closed)
	const steps = 64
	from := s.pen.start()
	for i := range steps + 1 {
		p := s.f.Place(far, s.f.Closed+(open-s.f.Closed)*geom.Angle(i)/steps)
		s.pen.to(s.plan.to(Pt{p.X, p.Z}))
	}
	s.pen.dash(from, SwingArc, thin, 6, 4)
}

// drawAngle writes the angle the leaf stands at, by an arc about the pin.
func (s *Scene) drawAngle() {
	if s.swing-s.f.Closed < stirred {
		return
	}
	p, size := &s.pen, s.v.figureSize()
	c := s.plan.to(s.pinAt(s.section))
	a := math.Atan2(s.closed.U.Z, s.closed.U.X)
	b := math.Atan2(s.now.U.Z, s.now.U.X)
	if b < a {
		b += 2 * math.Pi // past 180° the arc tangent starts anew
	}
	leaf := s.d.Leaf.Width * s.plan.s
	r := min(max(0.28*leaf, min(34, 0.4*leaf)), 90)
	from := p.start()
	p.arc(c, r, a, b)
	p.stroke(from, Fine, thin)
	const wide = 80 * math.Pi / 180
	text := s.words.degrees(s.swing.Degrees()).keep()
	width := TextWidth(text, size, true)
	if b-a > wide {
		// between the closed leaf and this one, its clear way being written above
		sin, cos := math.Sincos(a + (b-a)*0.5)
		rr := r + width/2 + 5
		p.text(Pt{c.X + rr*cos, c.Y + rr*sin + 0.36*size}, Middle, TextInk, size, true, text)
		return
	}
	// beyond it, on the knuckle side
	sin, cos := math.Sincos(b)
	off := width/2*math.Abs(sin) + size/2*math.Abs(cos) + 5
	p.text(Pt{c.X + r*cos - off*sin, c.Y + r*sin + off*cos + 0.36*size}, Middle, TextInk, size, true, text)
}

// drawLatchNow writes the gap at the latch as long as the leaf's edge is within
// the frame, and the clear way past it afterwards.
func (s *Scene) drawLatchNow() {
	c, j := s.cutLeaf(s.section, s.now), s.jamb(fit.LatchSide, s.section)
	gap, at, within := math.Inf(1), Pt{}, false
	for _, q := range [2]Pt{c.knuckle[1], c.stop[1]} {
		closed := s.swing-s.f.Closed < stirred
		if (closed || j.stop <= q.Y && q.Y <= j.front) && j.face-q.X < gap {
			gap, at, within = j.face-q.X, q, true
		}
	}
	if within {
		s.writeLatchGap(gap, at, j)
		return
	}
	s.writeClearWay(&c, j)
}

func (s *Scene) writeLatchGap(gap float64, at Pt, j jamb) {
	p, size := &s.pen, s.v.figureSize()
	want := s.w.Swing
	if s.swing-s.f.Closed < stirred {
		want = s.w.Gaps[fit.LatchSide]
	}
	v := want.Judge(gap)
	a := s.plan.to(Pt{(at.X + j.face) / 2, at.Y})
	top := s.plan.to(Pt{at.X, j.back}).Y - dimensionRow/2
	p.rule(a, Pt{a.X, top}, Fine, thin)
	l := label{verdict: v, text: s.held(gap, want).keep()}
	sign := 0.0
	if v != judge.Good {
		sign = signSize + signGap
	}
	l.width = TextWidth(l.text, size, v != judge.Good) + sign
	// keep the figure on the sheet
	x := min(a.X, s.planBox.x1-l.width/2)
	s.rowFigure(&l, Pt{x, top - 3}, verdictText(v), size, sign)
}

// writeClearWay dimensions the least distance from the latch jamb's front arris
// to the leaf.
func (s *Scene) writeClearWay(c *leafCut, j jamb) {
	from := Pt{j.face, j.front}
	ends := [5]Pt{c.knuckle[0], c.knuckle[1], c.stop[1], c.stop[0], c.knuckle[0]}
	near, best := from, math.Inf(1)
	for i := 1; i < len(ends); i++ {
		if q := nearest(ends[i-1], ends[i], from); distance(q, from) < best {
			near, best = q, distance(q, from)
		}
	}
	s.dimension(s.plan.to(from), s.plan.to(near), s.plan.to(Pt{0, j.back}).Y-dimensionRow/2, s.length(best).say(" clear").keep())
}

// dimension writes a length on a line between two points that ends in slashes; a
// nearly level one is taken up to a row of its own.
func (s *Scene) dimension(a, b Pt, row float64, text string) {
	p, size := &s.pen, s.v.captionSize()
	width, long := TextWidth(text, size, false), distance(a, b)
	if long < width+24 {
		return
	}
	if math.Abs(b.Y-a.Y) < 0.3*long {
		for _, q := range [2]*Pt{&a, &b} {
			p.rule(*q, Pt{q.X, row - 4}, Fine, thin)
			q.Y = row
		}
		long = math.Abs(b.X - a.X)
	}
	dx, dy := (b.X-a.X)/long, (b.Y-a.Y)/long
	mid := between(a, b, 0.5)
	half := width/2*math.Abs(dx) + size*0.6*math.Abs(dy) + 4
	p.rule(a, Pt{mid.X - dx*half, mid.Y - dy*half}, Fine, thin)
	p.rule(Pt{mid.X + dx*half, mid.Y + dy*half}, b, Fine, thin)
	for _, q := range [2]Pt{a, b} { // slashes, as a joiner ends a dimension
		p.rule(Pt{q.X - 3, q.Y + 3}, Pt{q.X + 3, q.Y - 3}, Fine, medium)
	}
	from := p.start()
	p.box(mid.X-width/2-3, mid.Y-0.6*size, mid.X+width/2+3, mid.Y+0.6*size)
	p.fill(from, Paper)
	p.text(Pt{mid.X, mid.Y + 0.36*size}, Middle, TextInk, size, false, text)
}

// nearest gives the point of the segment nearest to q.
func nearest(a, b, q Pt) Pt {
	dx, dy := b.X-a.X, b.Y-a.Y
	n := dx*dx + dy*dy
	if n == 0 {
		return a
	}
	return between(a, b, geom.Interval{Lo: 0, Hi: 1}.Clamp(((q.X-a.X)*dx+(q.Y-a.Y)*dy)/n))
}

// gripPoint is where on the leaf the swing handle sits: near the closing edge, in
// the middle of the thickness.
func (s *Scene) gripPoint() geom.Vec {
	l := &s.d.Leaf
	return s.leafPoint(l.Closing.At(s.section)-0.14*l.Width, s.section, l.Thickness/2)
}

// Grip gives where the swing handle was drawn on the sheet.
func (s *Scene) Grip() Pt {
	q := s.now.Point(s.gripPoint())
	return s.mirrored(s.plan.to(Pt{q.X, q.Z}), s.planBox)
}

// drawGrip shows the handle the leaf is swung by, with arrows along its path.
func (s *Scene) drawGrip() {
	q := s.now.Point(s.gripPoint())
	c, r := s.plan.to(Pt{q.X, q.Z}), gripRadius
	p := &s.pen
	if s.v.Grab.Kind == SwingHandle {
		p.ring(c, r+3, Handle, medium)
	}
	p.disc(c, r, Handle)
	pin := s.plan.to(s.pinAt(s.section))
	d := max(distance(c, pin), 1)
	tx, ty := -(c.Y-pin.Y)/d, (c.X-pin.X)/d
	p.bothWays(c, Pt{tx, ty}, 4, 9, 4.5)

}

// drawFouling marks where an edge fouls its jamb worst as the leaf swings, and
// where the closed leaf presses on the hinge jamb's stop.
func (s *Scene) drawFouling() {
	for _, e := range [2]fit.Edge{fit.HingeSide, fit.LatchSide} {
		w := s.f.Swing[e]
		if !s.fouls(e) {
			continue
		}
		s.mark(Pt{w.At.X, w.At.Z})
	}
	if s.hingeBound() > worse && s.swing-s.f.Closed < stirred {
		j := s.jamb(fit.HingeSide, s.section)
		s.mark(Pt{j.face + s.d.Frame.StopWidth/2, j.stop})
	}
}

// mark rings a place of the plan where something binds.
func (s *Scene) mark(at Pt) {
	c := s.plan.to(at)
	s.pen.ring(c, 7, BindFill, heavy)
	s.pen.disc(c, 2.4, BindFill)
}

// hingeBound gives by how much the closed leaf would run into the hinge jamb's
// stop, mm; 0 or less when it does not.
func (s *Scene) hingeBound() float64 {
	g := &s.f.Stops[fit.HingeSide]
	if len(g.Pieces) == 0 {
		return 0
	}
	return -g.Least
}

// worse is by how many mm more an edge must bind in the swing than closed to be
// worth a mark of its own.
const worse = 0.05

// fouls tells whether an edge binds while the leaf swings, beyond binding closed.
func (s *Scene) fouls(e fit.Edge) bool {
	w := s.f.Swing[e]
	return w.Least < min(0, s.f.Gaps[e].Least)-worse && w.Angle > s.f.Closed
}
