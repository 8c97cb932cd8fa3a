package draw

import (
	"math"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fit"
)

// What a move must have done to show, and how small it is still drawn.
const (
	changed     = 0.05 // mm
	stripSlim   = 6.0  // px, of a strip's height on a small picture
	stripLeast  = 10.0 // and on a large one
	easeLeast   = 2.2  // px, of an arris taken off
	easeMost    = 7.0  // px
	overTheWall = 3.0  // px that a ghost keeps inside the wall's outline
)

var (
	goneHatch = hatching{5, math.Pi / 2.6, Ghost, thin * 1.3}
	glueHatch = hatching{8, -math.Pi / 3, Shoulder, thin}
)

// drawTakenOff shows, outside the leaf, the timber that was there when the door was
// found and is not now, and the same of the frame: its old outline dashed, what is
// gone hatched. It is no fill, so that the gap and how good it is show through.
func (s *Scene) drawTakenOff() {
	was := s.v.Was
	if was == nil || was == s.d {
		return
	}
	for e := range fit.Edges {
		s.goneFromLeaf(e, &was.Leaf)
		s.frameChanged(e, was)
	}
}

// eachPlace gathers in s.places, rising, the bends of two profiles over a stretch,
// with its ends, and the places where the one crosses the other.
func (s *Scene) eachPlace(a, b geom.Profile, lo, hi float64) {
	s.places = append(s.places[:0], lo, hi)
	for _, p := range [2]geom.Profile{a, b} {
		for i := range p.Knots() {
			if k := p.Knot(i); lo < k && k < hi {
				s.places = append(s.places, k)
			}
		}
	}
	geom.Ascending(s.places)
	for i, n := 1, len(s.places); i < n; i++ {
		p, q := s.places[i-1], s.places[i]
		d0, d1 := a.At(p)-b.At(p), a.At(q)-b.At(q)
		if d0*d1 < 0 {
			s.places = append(s.places, p+(q-p)*d0/(d0-d1))
		}
	}
	geom.Ascending(s.places)
}

// edgeLine gives a leaf's edge as a profile, and the sign by which it grows.
func edgeLine(l *door.Leaf, e fit.Edge) (line geom.Profile, out float64) {
	at, in := l.Line(e)
	return *at, -in
}

// goneFromLeaf shows what has come off an edge of the leaf.
func (s *Scene) goneFromLeaf(e fit.Edge, was *door.Leaf) {
	old, out := edgeLine(was, e)
	now, _ := edgeLine(&s.d.Leaf, e)
	lo, hi := ends(was, e)
	if e.Upright() { // what came off with an end belongs to that end
		a, b := ends(&s.d.Leaf, e)
		lo, hi = max(lo, a), min(hi, b)
	}
	if !(lo < hi) {
		return
	}
	s.eachPlace(old, now, lo, hi)
	s.bands(func(at float64) float64 { return out * (old.At(at) - now.At(at)) },
		func(at float64) Pt { return s.leafSpot(e, old, at) },
		func(at float64) Pt { return s.leafSpot(e, now, at) }, s.gone)
}

// edgeOutline appends the world places of an edge's outline, as if it reached sharp to
// the knuckle face.
func (s *Scene) edgeOutline(dst []geom.Vec, e fit.Edge) []geom.Vec {
	line, _ := edgeLine(&s.d.Leaf, e)
	lo, hi := ends(&s.d.Leaf, e)
	s.eachPlace(line, line, lo, hi)
	for _, at := range s.places {
		u, v := outline(&s.d.Leaf, e, at)
		dst = append(dst, s.closed.Point(s.leafPoint(u, v, 0)))
	}
	return dst
}

// leafSpot gives where a place of a line on the leaf stands as part of an edge.
func (s *Scene) leafSpot(e fit.Edge, line geom.Profile, at float64) Pt {
	u, v := at, line.At(at)
	if e.Upright() {
		u, v = v, at
	}
	return s.withinWall(s.onFront(e, s.closed.Point(s.leafPoint(u, v, 0))))
}

// withinWall keeps a point of the front picture inside the wall's outline: what came
// off a door far too large would else run over the figures.
func (s *Scene) withinWall(p Pt) Pt {
	o := s.outer.inset(overTheWall)
	return Pt{geom.Interval{Lo: o.x0, Hi: o.x1}.Clamp(p.X), geom.Interval{Lo: o.y0, Hi: max(o.y1, s.frontFoot())}.Clamp(p.Y)}
}

// frontFoot is the lowest that the floor is drawn.
func (s *Scene) frontFoot() float64 {
	y := s.outer.y1
	for _, p := range s.frame[fit.FloorSide] {
		y = max(y, s.onFront(fit.FloorSide, p).Y)
	}
	return y
}

// bands shows every stretch of s.places over which more is above nothing, between
// the line of old and that of now.
func (s *Scene) bands(more func(at float64) float64, old, now func(at float64) Pt, show func(from, outer int)) {
	n := len(s.places)
	for i := 0; i+1 < n; {
		mid := (s.places[i] + s.places[i+1]) / 2
		if !(more(mid) > 0) {
			i++
			continue
		}
		j, most := i, 0.0
		for j+1 < n && more((s.places[j]+s.places[j+1])/2) > 0 {
			most = max(most, more(s.places[j]), more(s.places[j+1]))
			j++
		}
		if most > changed {
			from := s.pen.start()
			for k := i; k <= j; k++ {
				s.pen.to(old(s.places[k]))
			}
			outer := s.pen.start()
			for k := j; k >= i; k-- {
				s.pen.to(now(s.places[k]))
			}
			show(from, outer)
		}
		i = j
	}
}

// gone hatches the outline added since from and dashes that part of it before outer.
func (s *Scene) gone(from, outer int) {
	p := &s.pen
	if !p.sound(from, 3) {
		return
	}
	p.kept = append(p.kept[:0], p.l.Points[from:]...)
	edge := outer - from
	p.l.Points = p.l.Points[:from]
	p.hatch(p.kept, goneHatch)
	from = p.start()
	p.l.Points = append(p.l.Points, p.kept[:edge]...)
	p.dash(from, Shoulder, medium*1.2, 5, 3)
}

// packed shows what was added to the frame: paler timber with a firm line.
func (s *Scene) packed(from, _ int) {
	s.pen.face(from, Raised, Line, medium, glueHatch)
}

// frameChanged shows what was planed off a side of the frame and what was packed
// onto it, and what now lies on the floor.
func (s *Scene) frameChanged(e fit.Edge, was *door.Door) {
	line := s.frame[e]
	if len(line) < 2 {
		return
	}
	lo, hi := along(e, line[0]), along(e, line[len(line)-1])
	old, now, out := was.Frame.Head, s.d.Frame.Head, 1.0
	switch e {
	case fit.HingeSide:
		old, now, out = was.Frame.HingeJamb, s.d.Frame.HingeJamb, -1
	case fit.LatchSide:
		old, now = was.Frame.LatchJamb, s.d.Frame.LatchJamb
	case fit.FloorSide:
		s.floorChanged(was)
		return
	}
	s.eachPlace(old, now, lo, hi)
	wide := func(at float64) float64 { return out * (now.At(at) - old.At(at)) }
	before := func(at float64) Pt { return s.frameSpot(e, old, at) }
	after := func(at float64) Pt { return s.frameSpot(e, now, at) }
	s.bands(wide, before, after, s.gone)
	s.bands(func(at float64) float64 { return -wide(at) }, before, after, s.packed)
}

func along(e fit.Edge, p geom.Vec) float64 {
	if e.Upright() {
		return p.Y
	}
	return p.X
}

func (s *Scene) frameSpot(e fit.Edge, line geom.Profile, at float64) Pt {
	p := geom.Vec{X: at, Y: line.At(at)}
	if e.Upright() {
		p = geom.Vec{X: line.At(at), Y: at}
	}
	return s.withinWall(s.onFront(e, p))
}

// floorChanged shows a threshold or a covering under the closed leaf.
func (s *Scene) floorChanged(was *door.Door) {
	line := s.frame[fit.FloorSide]
	most := 0.0
	for _, p := range line {
		most = max(most, p.Y-was.Floor.At(p.X, 0))
	}
	if !(most > changed) {
		return
	}
	from := s.pen.start()
	for _, p := range line {
		s.pen.to(s.onFront(fit.FloorSide, p))
	}
	for i := len(line) - 1; i >= 0; i-- {
		x := line[i].X
		s.pen.to(s.withinWall(s.onFront(fit.FloorSide, geom.Vec{X: x, Y: was.Floor.At(x, 0)})))
	}
	s.packed(from, 0)
}

// drawStrips shows every strip glued to the leaf, in the order they were: paler, its
// grain along the edge, hatched, a firm glue line; and the arrises taken off.
func (s *Scene) drawStrips() {
	for i := range s.a.Strips {
		s.drawStripOn(&s.a.Strips[i])
	}
	for e := range fit.Edges {
		if leg := s.d.Leaf.Sections[e].KnuckleEase; leg > changed {
			s.drawEase(e, leg)
		}
	}
}

// inset carries a point of the front picture into the leaf, square to an edge.
func inset(e fit.Edge, p Pt, by float64) Pt {
	switch e {
	case fit.HingeSide:
		p.X += by
	case fit.LatchSide:
		p.X -= by
	case fit.HeadSide:
		p.Y += by
	default:
		p.Y -= by
	}
	return p
}

// stripHeightAt gives how far, px, a strip is drawn from its edge at a place: as much
// enlarged as the gaps are, but within the outer member, and so much that it is seen.
func (s *Scene) stripHeightAt(k *door.Strip, at float64) float64 {
	const most = 0.7 // part of the way to the member's inner edge
	edge, joint, in := s.leafSpot(k.Edge, s.edge(k.Edge), at), s.leafSpot(k.Edge, k.Joint, at), &s.inside
	u, v := at, in.v[0]
	switch k.Edge {
	case fit.HeadSide:
		v = in.v[1]
	case fit.HingeSide:
		u, v = in.u[0], at
	case fit.LatchSide:
		u, v = in.u[1], at
	}
	inner := s.onLeaf(u, v)
	if k.Edge.Upright() {
		edge.Y, joint.Y, inner.Y = 0, 0, 0
	} else {
		edge.X, joint.X, inner.X = 0, 0, 0
	}
	least := stripLeast
	if s.frontBox.height() < roomForMore {
		least = stripSlim
	}
	return max(least, min(distance(edge, joint), most*distance(edge, inner)))
}

func (s *Scene) edge(e fit.Edge) geom.Profile {
	line, _ := edgeLine(&s.d.Leaf, e)
	return line
}

func (s *Scene) drawStripOn(k *door.Strip) {
	e := k.Edge
	if e < 0 || e >= fit.Edges {
		return
	}
	now, out := edgeLine(&s.d.Leaf, e)
	lo, hi := ends(&s.d.Leaf, e)
	s.eachPlace(now, k.Joint, lo, hi)
	s.bands(func(at float64) float64 { return out * (now.At(at) - k.Joint.At(at)) },
		func(at float64) Pt { return s.leafSpot(e, now, at) },
		func(at float64) Pt { return inset(e, s.leafSpot(e, now, at), s.stripHeightAt(k, at)) },
		s.glued)
}

// glued lays a strip down, its grain along the edge: the outline added since from, whose glue line begins at
// outer.
func (s *Scene) glued(from, outer int) {
	p := &s.pen
	if !p.sound(from, 3) {
		return
	}
	p.kept = append(p.kept[:0], p.l.Points[from:]...)
	n := outer - from
	p.fill(from, Raised)
	p.hatch(p.kept, glueHatch)
	if 2*n == len(p.kept) {
		for _, part := range [2]float64{0.36, 0.68} {
			from = p.start()
			for i := range n {
				p.l.Points = append(p.l.Points, between(p.kept[i], p.kept[2*n-1-i], part))
			}
			p.put(Mark{Kind: Stroke, Ink: Shoulder, Width: thin, From: from, To: len(p.l.Points)})
		}
	}
	from = p.start()
	p.l.Points = append(p.l.Points, p.kept...)
	p.outlineKept(from, Line, medium)
	from = p.start()
	p.l.Points = append(p.l.Points, p.kept[n:]...)
	p.put(Mark{Kind: Stroke, Ink: Line, Width: heavy, From: from, To: len(p.l.Points)})
}

// outlineKept strokes points already on the finished sheet.
func (p *pen) outlineKept(from int, ink Ink, width float64) {
	p.put(Mark{Kind: Stroke, Ink: ink, Width: width, Closed: true, From: from, To: len(p.l.Points)})
}

// drawEase rules the inner arris of an eased edge.
func (s *Scene) drawEase(e fit.Edge, leg float64) {
	in := geom.Interval{Lo: easeLeast, Hi: easeMost}.Clamp(leg * s.big.k * s.front.s)
	from := s.pen.start()
	for _, q := range s.arris[e][0] {
		s.pen.to(inset(e, s.onFront(e, q), in))
	}
	s.pen.stroke(from, Line, thin)
}

// drawMovedHinges shows where a hinge was let in before it was moved, on jamb and
// leaf, dashed and empty.
func (s *Scene) drawMovedHinges() {
	was := s.v.Was
	if was == nil || was == s.d {
		return
	}
	for i := range min(len(was.Hinges), len(s.d.Hinges)) {
		old, now := &was.Hinges[i], &s.d.Hinges[i]
		half := max(7, old.Height/2*s.front.s)
		bed := func(x, y float64) Pt { return s.onFront(fit.HingeSide, geom.Vec{X: x, Y: y}) }
		if math.Abs(old.JambHeight-now.JambHeight) > changed {
			face := s.d.Frame.HingeJamb.At(old.JambHeight)
			s.oldGain(bed(face-old.JambGain, old.JambHeight), bed(face, old.JambHeight), half)
		}
		if math.Abs(old.LeafHeight-now.LeafHeight) > changed {
			u := s.d.Leaf.Hanging.At(old.LeafHeight)
			p := s.closed.Point(s.leafPoint(u, old.LeafHeight, 0))
			s.oldGain(bed(p.X, p.Y), bed(p.X+old.LeafGain, p.Y), half)
		}
	}
}

func (s *Scene) oldGain(a, b Pt, half float64) {
	const least = 4.0 // px
	if b.X-a.X < least {
		b.X = a.X + least
	}
	from := s.pen.start()
	s.pen.box(a.X, a.Y-half, b.X, a.Y+half)
	s.pen.xy(a.X, a.Y-half)
	s.pen.dash(from, Ghost, medium, 3, 2)
}

// showsGone tells whether anything taken off is shown outside the leaf.
func (s *Scene) showsGone() bool {
	was := s.v.Was
	if was == nil || was == s.d {
		return false
	}
	for e := range fit.Edges {
		old, out := edgeLine(&was.Leaf, e)
		now, _ := edgeLine(&s.d.Leaf, e)
		lo, hi := ends(&s.d.Leaf, e)
		for i := range 9 {
			at := lo + (hi-lo)*float64(i)/8
			if out*(old.At(at)-now.At(at)) > changed {
				return true
			}
		}
	}
	return false
}
