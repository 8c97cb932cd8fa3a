package draw

import (
	"math"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fit"
)

// Sizes of what the readings do not tell, mm: common practice, for the eye only.
const (
	liningThick = 32.0  // of the frame's lining
	liningDeep  = 100.0 // from its front edge back, at least
	stopDeep    = 32.0  // of a planted stop, front to back
	behindStop  = 45.0  // the lining runs on behind the stop's face by this
	wallShown   = 60.0  // of wall beside the lining
)

// Sizes of the plan, px.
const (
	dimensionRow = 14.0  // above the picture, for the latch gap's leader
	gripRadius   = 13.0  // of the swing handle as drawn
	gripRoom     = 4.0   // kept clear round it
	pictureLeast = 125.0 // height left to the picture by the floor's strip
)

// drawPlan lays down the section at the view's height, seen from above with the
// knuckle side at the foot of the sheet.
func (s *Scene) drawPlan() {
	foot := s.setPlan()
	s.drawGhost()
	s.drawArc()
	s.drawJambs(s.plan, s.section)
	s.drawLeafCut(s.plan, s.section, s.now, Paper)
	s.drawPin(s.plan, s.section, s.now)
	s.drawFouling()
	s.drawAngle()
	s.drawLatchNow()
	if !s.v.Still {
		s.drawGrip()
	}
	s.pen.mirror = false // what follows is read, not looked at
	if s.strip {
		s.drawStrip(foot)
		foot += s.stripHeight()
	}
	s.drawNotes(foot)
	foot += s.noteRoom()
	caption := s.sayPlan()
	s.caption(s.planBox, foot+s.captionRoom(s.planBox, caption), caption)
}

// setPlan finds the scale at which the whole swing fits and gives where, under the
// picture, what is written about it begins.
func (s *Scene) setPlan() (foot float64) {
	b, size := s.planBox, s.v.figureSize()
	low, high := s.planExtent()
	top := b.y0 + size + dimensionRow
	s.strip = s.floorMatters()
	below := s.belowPlan()
	if s.strip && b.y1-below-top < pictureLeast {
		s.strip = false // a note must do
		below = s.belowPlan()
	}
	bottom := b.y1 - below - gripRadius - gripRoom
	left, right := b.x0+gripRoom, b.x1-gripRoom
	s.plan.down = true
	s.plan.s = max(min((right-left)/(high.X-low.X), (bottom-top)/(high.Y-low.Y)), 1e-4)
	k := s.plan.s
	s.plan.at.X = (left+right)/2 - k*(low.X+high.X)/2
	spare := max(0, bottom-top-k*(high.Y-low.Y))
	s.plan.at.Y = top + spare/2 - k*low.Y
	return min(s.plan.to(high).Y+gripRadius+gripRoom+min(spare/2, 12), b.y1-below)
}

// belowPlan is the height of what stands under the picture.
func (s *Scene) belowPlan() float64 {
	h := s.captionRoom(s.planBox, s.sayPlan()) + s.noteRoom()
	if s.strip {
		h += s.stripHeight()
	}
	return h
}

// planExtent gives the corners of all that the plan shows through the swing, mm.
func (s *Scene) planExtent() (low, high Pt) {
	h, l := s.jamb(fit.HingeSide, s.section), s.jamb(fit.LatchSide, s.section)
	out := liningThick + wallShown
	low, high = Pt{h.face - out, min(h.back, l.back)}, Pt{l.face + out, max(h.front, l.front)}
	const steps = 24
	leaf := &s.d.Leaf
	for i := range steps + 1 {
		a := s.f.Closed + (max(s.d.Opens, s.f.Closed)-s.f.Closed)*geom.Angle(i)/steps
		for _, depth := range [2]float64{0, leaf.Thickness} {
			p := s.f.Place(s.leafPoint(leaf.Closing.At(s.section)-leaf.ClosingSetback()*depth, s.section, depth), a)
			low = Pt{min(low.X, p.X), min(low.Y, p.Z)}
			high = Pt{max(high.X, p.X), max(high.Y, p.Z)}
		}
	}
	return low, high
}

// jamb is a jamb cut at a height: its face, and the places of its front edge, its
// stop's face and its back along z.
type jamb struct {
	face, out         float64 // out is +1 where the wall lies at greater x
	front, stop, back float64
}

func (s *Scene) jamb(e fit.Edge, y float64) jamb {
	f := &s.d.Frame
	j := jamb{face: f.HingeJamb.At(y), out: -1, front: f.HingeFront.At(y), stop: f.HingeStop.At(y)}
	if e == fit.LatchSide {
		j = jamb{face: f.LatchJamb.At(y), out: 1, front: f.LatchFront.At(y), stop: f.LatchStop.At(y)}
	}
	j.back = j.front - max(liningDeep, j.front-j.stop+behindStop)
	return j
}

// drawJambs shows both jambs with their stops and the wall, cut at a height.
func (s *Scene) drawJambs(t sheet, y float64) {
	for _, e := range [2]fit.Edge{fit.HingeSide, fit.LatchSide} {
		j := s.jamb(e, y)
		outer := j.face + j.out*liningThick
		s.wallCut(t, Pt{outer, j.back}, Pt{outer + j.out*wallShown, j.front})
		s.timberCut(t, Pt{j.face, j.back}, Pt{outer, j.front}, Lining, endGrain2)
		s.timberCut(t, Pt{j.face - j.out*s.d.Frame.StopWidth, max(j.back, j.stop-stopDeep)}, Pt{j.face, j.stop}, Lining, endGrain)
	}
}

// boxOn adds the corners of a box of a sheet, between two of them.
func (p *pen) boxOn(t sheet, a, b Pt) {
	p.to(t.to(a))
	p.to(t.to(Pt{b.X, a.Y}))
	p.to(t.to(b))
	p.to(t.to(Pt{a.X, b.Y}))
}

// wallCut shows the wall between two corners, open where it runs on.
func (s *Scene) wallCut(t sheet, a, b Pt) {
	p := &s.pen
	from := p.start()
	p.boxOn(t, a, b)
	p.face(from, Wall, Wall, 0, wallHatch)
	for _, z := range [2]float64{a.Y, b.Y} {
		p.rule(t.to(Pt{a.X, z}), t.to(Pt{b.X, z}), Line, thin)
	}
}

// timberCut shows a piece of timber cut across, between two corners.
func (s *Scene) timberCut(t sheet, a, b Pt, ink Ink, h hatching) {
	p := &s.pen
	from := p.start()
	p.boxOn(t, a, b)
	p.face(from, ink, Line, medium, h)
}

// drawPin shows the hinge at the pin: the knuckle and the two plates.
func (s *Scene) drawPin(t sheet, y float64, m geom.Motion) {
	pin := s.pinAt(y)
	p, c := &s.pen, t.to(pin)
	j := s.jamb(fit.HingeSide, y)
	leaf := &s.d.Leaf
	_, k := s.worldSection(leaf.Hanging, 0, 0, y, m)
	p.rule(c, t.to(Pt{j.face, j.front}), Line, medium)
	p.rule(c, t.to(Pt{k.X, k.Z}), Line, medium)
	r := max(3.2, 5.5*t.s)
	p.disc(c, r, Metal)
	p.ring(c, r, Line, medium)
	p.disc(c, r*0.3, Line)
}

// pinAt gives where the pin axis crosses the plane of the section, as (x, z).
func (s *Scene) pinAt(y float64) Pt {
	a := s.f.Axis
	p := a.At
	if a.Down.Y != 0 {
		p = a.At.Add(a.Down.Scale((y - a.At.Y) / a.Down.Y))
	}
	return Pt{p.X, p.Z}
}

// leafCut is the leaf cut at a height: the four arrises of the section, in plan,
// and where it is cut on the leaf.
type leafCut struct {
	knuckle, stop [2]Pt // hanging arris, closing arris
	u             [2]float64
	v             float64
}

func (s *Scene) cutLeaf(y float64, m geom.Motion) leafCut {
	l := &s.d.Leaf
	var c leafCut
	edges := [2]struct {
		profile geom.Profile
		set     float64
	}{{l.Hanging, l.HangingSetback()}, {l.Closing, -l.ClosingSetback()}}
	for i, e := range edges {
		on, p := s.worldSection(e.profile, e.set, 0, y, m)
		c.knuckle[i], c.u[i] = Pt{p.X, p.Z}, on.X
		c.v += on.Y / 2
		_, p = s.worldSection(e.profile, e.set, l.Thickness, y, m)
		c.stop[i] = Pt{p.X, p.Z}
	}
	return c
}

// at gives the place in plan a part of the way across the leaf and through it.
func (c *leafCut) at(across, through float64) Pt {
	return between(between(c.knuckle[0], c.knuckle[1], across), between(c.stop[0], c.stop[1], across), through)
}

// part is a member of the leaf as the section cuts it, across the leaf from lo to
// hi (0 to 1) and through it likewise.
type part struct {
	lo, hi   float64
	in, out  float64
	endGrain bool
	ink      Ink
}

// drawLeafCut shows the leaf cut at a height, member by member, on what lies behind.
func (s *Scene) drawLeafCut(t sheet, y float64, m geom.Motion, behind Ink) {
	c := s.cutLeaf(y, m)
	turn := math.Atan2(c.knuckle[1].Y-c.knuckle[0].Y, c.knuckle[1].X-c.knuckle[0].X)
	for i, q := range s.cutParts(&c) {
		from := s.pen.start()
		for _, k := range [4][2]float64{{q.lo, q.in}, {q.hi, q.in}, {q.hi, q.out}, {q.lo, q.out}} {
			s.pen.to(t.to(c.at(k[0], k[1])))
		}
		if q.endGrain {
			h := endGrain
			if i%2 == 1 {
				h = endGrain2
			}
			h.way += turn
			s.pen.face(from, q.ink, Shoulder, thin, h)
			continue
		}
		s.pen.face(from, q.ink, Shoulder, thin)
		if q.ink != Glass {
			s.longGrain(t, &c, q)
		}
	}
	l := &s.d.Leaf
	if sec := &l.Sections; !plain(sec[fit.HingeSide]) || !plain(sec[fit.LatchSide]) {
		s.clearEdges(t, &c, behind)
		from := s.pen.start()
		s.shapeCut(t, &c)
		s.pen.outline(from, Line, medium)
	} else {
		from := s.pen.start()
		for _, q := range [4]Pt{c.knuckle[0], c.knuckle[1], c.stop[1], c.stop[0]} {
			s.pen.to(t.to(q))
		}
		s.pen.outline(from, Line, medium)
	}
	s.drawJointCut(t, &c)
}

// longGrain rules the grain along a member cut lengthwise.
func (s *Scene) longGrain(t sheet, c *leafCut, q part) {
	const lines = 3
	for i := range lines {
		d := q.in + (q.out-q.in)*(float64(i)+0.7)/(lines+0.4)
		in := 0.02 + 0.05*scatter(uint32(i)+3)
		a := q.lo + (q.hi-q.lo)*in
		b := q.hi - (q.hi-q.lo)*in
		s.pen.rule(t.to(c.at(a, d)), t.to(c.at(b, d)), Grain, thin)
	}
}

// cutParts lists what a section goes through, from the hanging edge on.
func (s *Scene) cutParts(c *leafCut) []part {
	a := s.a
	parts := s.parts[:0]
	wide := c.u[1] - c.u[0]
	at := func(u float64) float64 { return geom.Interval{Lo: 0, Hi: 1}.Clamp((u - c.u[0]) / wide) }
	solid := func(lo, hi float64, end bool) {
		if hi > lo {
			parts = append(parts, part{lo, hi, 0, 1, end, Timber})
		}
	}
	switch a.Make {
	case door.Boarded:
		n := min(max(1, math.Round(wide/boardWidth)), mostMembers)
		for i := range int(n) {
			solid(float64(i)/n, float64(i+1)/n, true)
		}
	case door.Framed:
		hanging, closing := a.Inner(&s.d.Leaf)
		left, right := at(hanging), at(closing)
		if left >= right {
			solid(0, 1, true)
			break
		}
		solid(0, left, true)
		if s.cutsRail(c.v) {
			solid(left, right, false)
		} else {
			parts = s.cutBay(parts, c, at, left, right)
		}
		solid(right, 1, true)
	default:
		lip := at(c.u[0] + 20)
		solid(0, lip, true)
		solid(lip, 1-lip, false)
		solid(1-lip, 1, true)
	}
	s.parts = parts
	return parts
}

func (s *Scene) cutsRail(v float64) bool {
	for _, r := range s.a.Rails {
		if r.From <= v && v <= r.To {
			return true
		}
	}
	return false
}

// cutBay adds the panels and muntins between the stiles.
func (s *Scene) cutBay(parts []part, c *leafCut, at func(float64) float64, left, right float64) []part {
	ink, thick := Sunk, 0.34
	if s.a.Panels == door.Glass {
		ink, thick = Glass, 0.14
	}
	from := left
	for range mostMembers {
		lo, hi := right, right
		for _, m := range s.a.Muntins {
			a, b := at(m.At-m.Width/2), at(m.At+m.Width/2)
			if m.From <= c.v && c.v <= m.To && b > a && a >= from && a < lo {
				lo, hi = a, b
			}
		}
		if lo > from {
			parts = append(parts, part{from, lo, 0.5 - thick/2, 0.5 + thick/2, false, ink})
		}
		if lo >= right {
			break
		}
		parts = append(parts, part{lo, hi, 0, 1, true, Timber})
		from = hi
	}
	return parts
}
