package draw

import (
	"math"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fit"
)

// Sizes of the leaf's dress.
const (
	moulding    = 11.0  // width of the moulding round a panel, mm
	fielding    = 34.0  // width of the bevel round a raised field, mm
	boardWidth  = 115.0 // of a boarded leaf, mm
	grainApart  = 7.5   // px between grain lines
	mostMembers = 24    // rails, muntins or boards drawn
)

// leafPath adds the knuckle face's outline.
func (s *Scene) leafPath() {
	add := func(e fit.Edge, back bool) {
		line := s.arris[e][0]
		for i := range line {
			if back {
				s.pen.to(s.onFront(e, line[len(line)-1-i]))
			} else {
				s.pen.to(s.onFront(e, line[i]))
			}
		}
	}
	add(fit.FloorSide, false)
	add(fit.LatchSide, false)
	add(fit.HeadSide, true)
	add(fit.HingeSide, true)
}

func (s *Scene) drawLeaf() {
	s.setInside()
	from := s.pen.start()
	s.leafPath()
	s.pen.fill(from, Timber)
	switch s.a.Make {
	case door.Boarded:
		s.drawBoards()
	case door.Framed:
		s.drawMembers()
	default:
		l := &s.d.Leaf
		s.grain(l.Hanging.At(0), 0, l.Closing.At(0), l.Top.At(0), true, 3)
	}
	from = s.pen.start()
	s.leafPath()
	s.pen.outline(from, Line, medium)
	s.drawLock()
}

// drawMembers shows stiles, rails, muntins and panels.
func (s *Scene) drawMembers() {
	l, a := &s.d.Leaf, s.a
	u0, u1 := a.Inner(l)
	if !(u0 >= 0 && u1 > u0) || len(a.Rails) > mostMembers || len(a.Muntins) > mostMembers {
		return
	}
	mid := (l.Bottom.At(0) + l.Top.At(0)) / 2
	s.grain(l.Hanging.At(mid), l.Bottom.At(0), u0, l.Top.At(0), true, 1)
	s.grain(u1, l.Bottom.At(l.Width), l.Closing.At(mid), l.Top.At(l.Width), true, 1)
	for i, r := range a.Rails {
		s.grain(u0, r.From, u1, r.To, false, 1)
		if i > 0 {
			s.drawBay(u0, u1, a.Rails[i-1].To, r.From)
		}
	}
	for _, u := range [2]float64{u0, u1} {
		s.seam(u, l.Bottom.At(u), u, l.Top.At(u))
	}
	for _, r := range a.Rails {
		for _, v := range [2]float64{r.From, r.To} {
			if v > l.Bottom.At(u0)+1 && v < l.Top.At(u0)-1 {
				s.seam(u0, v, u1, v)
			}
		}
	}
}

// drawBay shows what lies between two rails: muntins, and panels between them.
func (s *Scene) drawBay(u0, u1, v0, v1 float64) {
	if !(v1-v0 > 1) {
		return
	}
	mid, from := (v0+v1)/2, u0
	for {
		next, width := u1, 0.0 // the next muntin's near side, and its width
		for _, m := range s.a.Muntins {
			if side := m.At - m.Width/2; m.From <= mid && mid <= m.To && m.Width > 0 && side >= from && side < next {
				next, width = side, m.Width
			}
		}
		s.drawPanel(from, v0, next, v1)
		if next >= u1 {
			return
		}
		s.seam(next, v0, next, v1)
		s.seam(next+width, v0, next+width, v1)
		s.grain(next, v0, next+width, v1, true, 1)
		from = next + width
	}
}

func (s *Scene) drawPanel(u0, v0, u1, v1 float64) {
	least := 2.5 * moulding
	if u1-u0 < least || v1-v0 < least {
		return
	}
	p := &s.pen
	glass := s.a.Panels == door.Glass
	from := p.start()
	s.patch(u0, v0, u1, v1)
	p.face(from, Sunk, Shoulder, thin)
	// a moulding no thinner than the eye can part from the edge
	m := max(moulding, 2.6/s.front.s)
	m = min(m, (u1-u0)/4, (v1-v0)/4)
	u0, v0, u1, v1 = u0+m, v0+m, u1-m, v1-m
	from = p.start()
	s.patch(u0, v0, u1, v1)
	switch {
	case glass:
		p.face(from, Glass, Shoulder, thin)
		s.glint(u0, v0, u1, v1)
		return
	case s.a.Panels != door.Raised:
		p.face(from, Raised, Shoulder, thin)
		s.grain(u0, v0, u1, v1, true, 1.15)
		return
	}
	p.face(from, Sunk, Shoulder, thin)
	b := min(fielding, (u1-u0)/4, (v1-v0)/4)
	for _, c := range [4][4]float64{{u0, v0, 1, 1}, {u1, v0, -1, 1}, {u1, v1, -1, -1}, {u0, v1, 1, -1}} {
		p.rule(s.onLeaf(c[0], c[1]), s.onLeaf(c[0]+c[2]*b, c[1]+c[3]*b), Shoulder, thin)
	}
	from = p.start()
	s.patch(u0+b, v0+b, u1-b, v1-b)
	p.face(from, Raised, Shoulder, thin)
	s.grain(u0+b, v0+b, u1-b, v1-b, true, 1.15)
}

// patch adds the outline of a rectangle of the leaf's face.
func (s *Scene) patch(u0, v0, u1, v1 float64) {
	for _, q := range [4]Pt{{u0, v0}, {u1, v0}, {u1, v1}, {u0, v1}} {
		s.pen.to(s.onLeaf(q.X, q.Y))
	}
}

// seam rules a joint across the leaf's face.
func (s *Scene) seam(u0, v0, u1, v1 float64) {
	s.pen.rule(s.onLeaf(u0, v0), s.onLeaf(u1, v1), Shoulder, thin)
}

// glint rules the light across a pane.
func (s *Scene) glint(u0, v0, u1, v1 float64) {
	run := min(u1-u0, v1-v0)
	for _, at := range [2]float64{0.45, 0.62} {
		d := run * at
		s.pen.rule(s.onLeaf(u0+0.08*run, v1-d), s.onLeaf(u0+d, v1-0.08*run), Glint, medium)
	}
}

// grain rules restrained grain lines along a member, upright or across; apart
// widens their usual distance.
func (s *Scene) grain(u0, v0, u1, v1 float64, upright bool, apart float64) {
	const parts = 6
	a, b := s.onLeaf(u0, v0), s.onLeaf(u1, v1)
	wide, long := math.Abs(b.X-a.X), math.Abs(b.Y-a.Y)
	if !upright {
		wide, long = long, wide
	}
	n := int(wide / (grainApart * apart))
	if !(wide > 2*grainApart*apart*0.8) || n > 200 || !(long > 8) {
		n = min(n, 0)
	}
	for i := range n {
		seed := uint32(i)*2654435761 + uint32(int32(u0))*40503 + uint32(int32(v0))*9176
		start, stop := 0.02+0.06*scatter(seed), 0.98-0.06*scatter(seed+7)
		phase, sway := 2*math.Pi*scatter(seed+13), 0.10+0.08*scatter(seed+29)
		from := s.pen.start()
		for j := range parts + 1 {
			t := start + (stop-start)*float64(j)/parts
			across := (float64(i) + 0.5 + sway*math.Sin(phase+4*t)) / float64(n)
			if upright {
				s.pen.to(s.onLeaf(u0+(u1-u0)*across, v0+(v1-v0)*t))
			} else {
				s.pen.to(s.onLeaf(u0+(u1-u0)*t, v0+(v1-v0)*across))
			}
		}
		s.pen.stroke(from, Grain, thin)
	}
}

// scatter gives a number in [0, 1) that looks drawn at random but always is the
// same for the same seed.
func scatter(seed uint32) float64 {
	seed ^= seed >> 16
	seed *= 0x7feb352d
	seed ^= seed >> 15
	seed *= 0x846ca68b
	seed ^= seed >> 16
	return float64(seed>>8) / (1 << 24)
}

// drawBoards shows upright boards with the ledges that hold them.
func (s *Scene) drawBoards() {
	l := &s.d.Leaf
	w := l.Closing.At(0)
	n := int(math.Round(w / boardWidth))
	if n < 1 || n > mostMembers || len(s.a.Rails) > mostMembers {
		return
	}
	for i := range n {
		u0, u1 := w*float64(i)/float64(n), w*float64(i+1)/float64(n)
		s.grain(u0, l.Bottom.At(u0), u1, l.Top.At(u0), true, 1)
		if i > 0 {
			s.seam(u0, l.Bottom.At(u0), u0, l.Top.At(u0))
		}
	}
	in := 0.035 * w
	for _, r := range s.a.Rails {
		if r.To-r.From > 1 {
			from := s.pen.start()
			s.patch(in, r.From, w-in, r.To)
			s.pen.face(from, Raised, Shoulder, medium)
			s.grain(in, r.From, w-in, r.To, false, 1)
		}
	}
}

// drawLock shows the case of a rim lock, or the rose of a mortice lock, and the
// knob.
func (s *Scene) drawLock() {
	k, p := s.a.Lock, &s.pen
	if k.Kind == door.NoLock {
		return
	}
	edge := s.d.Leaf.Closing.At(k.Height)
	knob := s.onLeaf(edge-k.Backset, k.Height)
	r := min(max(3.2, 26*s.front.s), 8)
	if k.Kind == door.Rim && k.Case > 0 && k.Depth > 0 {
		a := s.onLeaf(edge-k.Depth, k.Height+k.Case*0.62)
		b := s.onLeaf(edge, k.Height-k.Case*0.38)
		from := p.start()
		p.box(a.X, a.Y, b.X, b.Y)
		p.fill(from, Iron)
	} else {
		hole := Pt{knob.X, knob.Y + 2.6*r}
		p.disc(knob, r*1.35, Iron)
		p.disc(hole, r*0.6, Iron)
	}
	p.disc(knob, r, Brass)
	p.ring(knob, r, Line, thin)
}

// worldSection gives where an upright arris, depth d behind the knuckle face,
// crosses the level plane at height y when the leaf has gone through m.
func (s *Scene) worldSection(edge geom.Profile, set, depth, y float64, m geom.Motion) (leaf, world geom.Vec) {
	v := y
	for range 4 { // the leaf hangs within a few degrees of upright
		leaf = s.leafPoint(edge.At(v)+set*depth, v, depth)
		world = m.Point(leaf)
		v += y - world.Y
	}
	return leaf, world
}
