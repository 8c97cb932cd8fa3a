package draw

import (
	"math"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fit"
)

// edgeCut is an edge of the leaf cut square to it: how it leaves the sharp corners of
// its two faces. The points run from the knuckle face to the stop face, X mm into the
// leaf from the edge and Y mm behind the knuckle face.
type edgeCut struct {
	points [8]Pt
	n      int
}

func (c *edgeCut) add(in, behind float64) {
	c.points[c.n] = Pt{in, behind}
	c.n++
}

// cutOf gives the edge's shape: arrises eased at 45°, and a strip that stands behind
// the faces, deep mm high.
func cutOf(k door.Section, thick, deep float64) edgeCut {
	var c edgeCut
	if k.KnuckleBack > 0 {
		c.add(deep, 0)
		c.add(deep, k.KnuckleBack)
	}
	c.add(k.KnuckleEase, k.KnuckleBack)
	if k.KnuckleEase > 0 {
		c.add(0, k.KnuckleBack+k.KnuckleEase)
	}
	if k.StopEase > 0 {
		c.add(0, thick-k.StopBack-k.StopEase)
	}
	c.add(k.StopEase, thick-k.StopBack)
	if k.StopBack > 0 {
		c.add(deep, thick-k.StopBack)
		c.add(deep, thick)
	}
	return c
}

// plain tells whether an edge is sharp and reaches from face to face.
func plain(k door.Section) bool { return k == door.Section{} }

// stripDeep gives how high the strips on an edge stand together at a place of it, mm.
func (s *Scene) stripDeep(e fit.Edge, at float64) float64 {
	now, out := edgeLine(&s.d.Leaf, e)
	deep := 0.0
	for i := range s.a.Strips {
		if k := &s.a.Strips[i]; k.Edge == e {
			deep = max(deep, out*(now.At(at)-k.Joint.At(at)))
		}
	}
	return deep
}

// shapeCut gives the outline of the leaf cut level, edges and all, to the pen.
func (s *Scene) shapeCut(t sheet, c *leafCut) {
	l := &s.d.Leaf
	wide := max(c.u[1]-c.u[0], 1)
	for i, e := range [2]fit.Edge{fit.HingeSide, fit.LatchSide} {
		k := cutOf(l.Sections[e], l.Thickness, s.stripDeep(e, c.v))
		for j := range k.n {
			q := k.points[j]
			if i == 1 { // round the leaf
				q = k.points[k.n-1-j]
			}
			across := q.X / wide
			if i == 1 {
				across = 1 - across
			}
			s.pen.to(t.to(c.at(across, q.Y/l.Thickness)))
		}
	}
}

// clearEdges takes away, on the picture of the leaf cut level, what its edges lack of
// sharp corners: filled as what lies behind.
func (s *Scene) clearEdges(t sheet, c *leafCut, behind Ink) {
	l := &s.d.Leaf
	wide := max(c.u[1]-c.u[0], 1)
	for i, e := range [2]fit.Edge{fit.HingeSide, fit.LatchSide} {
		k := l.Sections[e]
		if plain(k) {
			continue
		}
		shape := cutOf(k, l.Thickness, s.stripDeep(e, c.v))
		put := func(q Pt) {
			across := q.X / wide
			if i == 1 {
				across = 1 - across
			}
			s.pen.to(t.to(c.at(across, q.Y/l.Thickness)))
		}
		half := l.Thickness / 2
		for _, knuckle := range [2]bool{true, false} {
			from := s.pen.start()
			corner := Pt{0, 0}
			if !knuckle {
				corner.Y = l.Thickness
			}
			put(corner)
			for j := range shape.n {
				if q := shape.points[j]; (q.Y < half) == knuckle {
					put(q)
				}
			}
			s.pen.fill(from, behind)
		}
	}
}

// drawJointCut rules the glue lines of strips on the leaf cut level.
func (s *Scene) drawJointCut(t sheet, c *leafCut) {
	l := &s.d.Leaf
	wide := max(c.u[1]-c.u[0], 1)
	for i := range s.a.Strips {
		k := &s.a.Strips[i]
		if !k.Edge.Upright() {
			continue
		}
		line, out := edgeLine(l, k.Edge)
		deep := out * (line.At(c.v) - k.Joint.At(c.v))
		if !(deep > changed && deep < wide) {
			continue
		}
		across := deep / wide
		if k.Edge == fit.LatchSide {
			across = 1 - across
		}
		sec := l.Sections[k.Edge]
		a, b := sec.KnuckleBack/l.Thickness, 1-sec.StopBack/l.Thickness
		s.pen.rule(t.to(c.at(across, a)), t.to(c.at(across, b)), Line, heavy)
	}
}

// drawWasCut shows, dashed, where the leaf cut level ended when it was found.
func (s *Scene) drawWasCut(t sheet, y float64) {
	was := s.v.Was
	if was == nil || was == s.d {
		return
	}
	for _, e := range [2]fit.Edge{fit.HingeSide, fit.LatchSide} {
		old, out := edgeLine(&was.Leaf, e)
		now, _ := edgeLine(&s.d.Leaf, e)
		set, after := was.Leaf.HangingSetback(), s.d.Leaf.HangingSetback()
		if e == fit.LatchSide {
			set, after = -was.Leaf.ClosingSetback(), -s.d.Leaf.ClosingSetback()
		}
		on, p := s.worldSection(old, 0, 0, y, s.closed)
		thick := was.Leaf.Thickness
		gone := out * (old.At(on.Y) - now.At(on.Y))
		if behind := gone + out*thick*(set-after); !(max(gone, behind) > changed) {
			continue
		}
		_, q := s.worldSection(old, set, thick, y, s.closed)
		_, a := s.worldSection(now, 0, 0, y, s.closed)
		_, b := s.worldSection(now, after, s.d.Leaf.Thickness, y, s.closed)
		corners := [4]geom.Vec{p, q, b, a}
		from := s.pen.start()
		for _, v := range corners {
			s.pen.to(t.to(Pt{v.X, v.Z}))
		}
		s.pen.hatchOnly(from, goneHatch)
		from = s.pen.start()
		for _, i := range [4]int{3, 0, 1, 2} {
			s.pen.to(t.to(Pt{corners[i].X, corners[i].Z}))
		}
		s.pen.dash(from, Shoulder, medium*1.2, 5, 3)
	}
}

// hatchOnly hatches the polygon of the points added since from and takes it back.
func (p *pen) hatchOnly(from int, h hatching) {
	if !p.sound(from, 3) {
		return
	}
	p.kept = append(p.kept[:0], p.l.Points[from:]...)
	p.l.Points = p.l.Points[:from]
	p.hatch(p.kept, h)
}

// shapeEnd gives the outline of the leaf's top or foot cut upright to the pen, from
// the arris a on the knuckle face to b on the stop face, and so far into the leaf.
func (s *Scene) shapeEnd(t sheet, e fit.Edge, u float64, a, b Pt, inward float64) {
	l := &s.d.Leaf
	k := cutOf(l.Sections[e], l.Thickness, s.stripDeep(e, u))
	s.pen.to(t.to(Pt{a.X, a.Y + inward}))
	way := math.Copysign(1, inward)
	for i := range k.n {
		q := between(a, b, k.points[i].Y/l.Thickness)
		q.Y += way * k.points[i].X
		s.pen.to(t.to(q))
	}
	s.pen.to(t.to(Pt{b.X, b.Y + inward}))
}

// jointEnd rules the glue line of the strips on top or foot, cut upright.
func (s *Scene) jointEnd(t sheet, e fit.Edge, u float64, a, b Pt, inward float64) {
	k := s.d.Leaf.Sections[e]
	deep := s.stripDeep(e, u)
	if !(deep > changed) {
		return
	}
	way, thick := math.Copysign(deep, inward), s.d.Leaf.Thickness
	p, q := between(a, b, k.KnuckleBack/thick), between(a, b, 1-k.StopBack/thick)
	s.pen.rule(t.to(Pt{p.X, p.Y + way}), t.to(Pt{q.X, q.Y + way}), Line, heavy)
}
