package draw

import (
	"math"

	"leafwright/geom"
	"leafwright/geom/fit"
)

// Sizes of the front picture, px.
const (
	wallLeast, wallMost = 20.0, 40.0 // wall shown beside the opening
	liningLeast         = 5.0        // edge of the lining
	leaderGap           = 6.0        // between a figure and its leader
	datumOver           = 10.0       // datum lines run past the wall's inside by this
)

// The one departure too small to show a datum line for, mm.
const nearlyTrue = 0.25

// drawFront lays down the door seen from the knuckle side.
func (s *Scene) drawFront() {
	s.gatherFigures()
	s.setFront()
	s.drawWall(s.lining)
	s.drawOpening()
	s.eachStretch(s.drawClear)
	s.drawTakenOff()
	s.drawLeaf()
	s.drawStrips()
	s.drawHiddenArrises()
	s.drawDatums(s.wall)
	s.drawFrameLines(s.wall)
	s.drawMovedHinges()
	s.drawHinges()
	s.eachStretch(s.drawBind)
	s.setWork()
	if !s.v.Small {
		s.drawStand()
	}
	if s.v.Show == Both {
		s.drawSectionLine()
	}
	s.drawAsked()
	s.drawFigures()
	s.drawWork()
	text := s.sayFront()
	foot := s.outer.y1 + s.v.figureSize() + 3*leaderGap + s.captionRoom(s.frontBox, text)
	s.caption(s.frontBox, min(foot, s.frontBox.y1), text)
}

// setFront finds the scale at which everything fits and the wall's outline, or
// keeps those of the sight given.
func (s *Scene) setFront() {
	if g := s.v.Sight; g != nil {
		s.front, s.outer, s.wall, s.lining = g.front, g.outer, g.wall, g.lining
		return
	}
	b := s.frontBox
	wall := min(max(0.05*min(b.width(), b.height()), wallLeast), wallMost)
	lining := max(liningLeast, wall/4)
	s.wall, s.lining = wall, lining
	low, high := s.frontExtent()
	size := s.v.figureSize()
	column := s.columnWidth() + 2*leaderGap
	left, right := b.x0+column+wall+lining, b.x1-column-wall-lining
	top := b.y0 + size + 2*leaderGap + wall + lining
	bottom := b.y1 - s.captionRoom(b, s.sayFront()) - size - 2*leaderGap
	s.front.s = max(min((right-left)/(high.X-low.X), (bottom-top)/(high.Y-low.Y)), 1e-4)
	k := s.front.s
	s.front.at.X = (left+right)/2 - k*(low.X+high.X)/2
	spare := max(0, bottom-top-k*(high.Y-low.Y))
	s.front.at.Y = bottom - spare/2 + k*low.Y
	a, c := s.front.to(low), s.front.to(high)
	s.outer = box{a.X - wall - lining, c.Y - wall - lining, c.X + wall + lining, a.Y}
}

// frontExtent gives the corners of everything the picture must hold, mm.
func (s *Scene) frontExtent() (low, high Pt) {
	low, high = Pt{0, 0}, Pt{s.big.width, s.big.height}
	add := func(p Pt) {
		low = Pt{min(low.X, p.X), min(low.Y, p.Y)}
		high = Pt{max(high.X, p.X), max(high.Y, p.Y)}
	}
	for e := range fit.Edges {
		for _, p := range s.frame[e] {
			add(s.big.at(e, p.X, p.Y))
		}
		for _, p := range s.arris[e][0] {
			add(s.big.at(e, p.X, p.Y))
		}
	}
	return low, high
}

// openingPath adds the opening's outline from the hinge jamb's foot round to the
// latch jamb's, set out by some px.
func (s *Scene) openingPath(out float64) {
	h, t, l := s.frame[fit.HingeSide], s.frame[fit.HeadSide], s.frame[fit.LatchSide]
	for i, p := range h {
		q := s.onFront(fit.HingeSide, p)
		if i == len(h)-1 {
			q.Y -= out
		}
		s.pen.xy(q.X-out, q.Y)
	}
	for _, p := range t[1 : len(t)-1] {
		q := s.onFront(fit.HeadSide, p)
		s.pen.xy(q.X, q.Y-out)
	}
	for i := len(l) - 1; i >= 0; i-- {
		q := s.onFront(fit.LatchSide, l[i])
		if i == len(l)-1 {
			q.Y -= out
		}
		s.pen.xy(q.X+out, q.Y)
	}
}

// floorPath adds the floor from one side to the other, past the jambs by the
// wall's width.
func (s *Scene) floorPath(over float64) {
	line := s.frame[fit.FloorSide]
	for i, p := range line {
		q := s.onFront(fit.FloorSide, p)
		if i == 0 {
			s.pen.xy(s.outer.x0-over, q.Y)
		}
		s.pen.to(q)
		if i == len(line)-1 {
			s.pen.xy(s.outer.x1+over, q.Y)
		}
	}
}

func (s *Scene) drawWall(lining float64) {
	p, o := &s.pen, s.outer
	footH := s.onFront(fit.HingeSide, s.frame[fit.HingeSide][0])
	footL := s.onFront(fit.LatchSide, s.frame[fit.LatchSide][0])
	from := p.start()
	p.xy(o.x1, footL.Y)
	p.xy(o.x1, o.y0)
	p.xy(o.x0, o.y0)
	p.xy(o.x0, footH.Y)
	s.openingPath(lining)
	p.face(from, Wall, Wall, 0, wallHatch)

	from = p.start()
	s.openingPath(lining)
	n := p.start()
	s.openingPath(0)
	reverse(p.l.Points[n:])
	p.fill(from, Lining)
	from = p.start()
	s.openingPath(lining)
	p.stroke(from, Line, thin)
}

func reverse(pts []Pt) {
	for i, j := 0, len(pts)-1; i < j; i, j = i+1, j-1 {
		pts[i], pts[j] = pts[j], pts[i]
	}
}

// drawOpening lays the light that shows through the gaps.
func (s *Scene) drawOpening() {
	from := s.pen.start()
	s.openingPath(0)
	line := s.frame[fit.FloorSide]
	for i := len(line) - 2; i > 0; i-- {
		s.pen.to(s.onFront(fit.FloorSide, line[i]))
	}
	s.pen.fill(from, Opening)
}

func (s *Scene) drawFrameLines(wall float64) {
	from := s.pen.start()
	s.openingPath(0)
	s.pen.stroke(from, Line, heavy)
	from = s.pen.start()
	s.floorPath(wall / 3)
	s.pen.stroke(from, Line, heavy)
}

// datums are the plumb and level lines the opening strays from.
type datums struct{ hinge, latch, head, floor bool }

func (s *Scene) datums() datums {
	f, e := &s.d.Frame, &s.big
	up := geom.Interval{Lo: 0, Hi: e.height}
	over := geom.Interval{Lo: 0, Hi: e.width}
	return datums{
		hinge: departure(f.HingeJamb, up, 0) > nearlyTrue,
		latch: departure(f.LatchJamb, up, e.width) > nearlyTrue,
		head:  departure(f.Head, over, e.height) > nearlyTrue,
		floor: s.floorStrays(),
	}
}

// floorStrays tells whether the floor under the closed leaf leaves the level.
func (s *Scene) floorStrays() bool {
	for _, p := range s.frame[fit.FloorSide] {
		if math.Abs(p.Y) > nearlyTrue {
			return true
		}
	}
	return false
}

func (s *Scene) strays() bool { return s.datums() != datums{} }

// drawDatums rules plumb and level lines from the feet of the jambs and the hinge
// corner of the head, where the frame strays from them.
func (s *Scene) drawDatums(wall float64) {
	rule := func(a, b Pt) {
		from := s.pen.start()
		s.pen.to(a)
		s.pen.to(b)
		s.pen.dash(from, Datum, thin, 9, 3)
	}
	show, e := s.datums(), &s.big
	foot, head := s.front.to(Pt{0, 0}), s.front.to(Pt{e.width, e.height})
	top, end := s.outer.y0+0.3*wall, min(head.X+wall, s.outer.x1)
	if show.hinge {
		rule(foot, Pt{foot.X, top})
	}
	if show.latch {
		rule(Pt{head.X, foot.Y}, Pt{head.X, top})
	}
	if show.head {
		rule(Pt{foot.X - datumOver, head.Y}, Pt{end, head.Y})
	}
	if show.floor {
		rule(foot, Pt{end, foot.Y})
	}
}

// drawHiddenArrises shows the stop-face arris, dashed, where it and not the
// knuckle-face one is nearest the frame.
func (s *Scene) drawHiddenArrises() {
	for e := range fit.Edges {
		shown, back := s.arris[e][0], s.arris[e][1]
		if len(shown) == 0 || len(back) == 0 || !s.backGoverns(e) {
			continue
		}
		from := s.pen.start()
		for _, p := range back {
			s.pen.to(s.onFront(e, p))
		}
		s.pen.dash(from, Line, thin, 4, 3)
	}
}

// backGoverns tells whether the stop-face arris is nearer the frame anywhere.
func (s *Scene) backGoverns(e fit.Edge) bool {
	const seen = 0.05 // mm
	r := s.f.Shown[e].Range().Intersect(s.f.Gaps[e].Range())
	for i := range 5 {
		at := r.Lo + r.Length()*float64(i)/4
		if s.f.Shown[e].Curve.At(at)-s.f.Gaps[e].Curve.At(at) > seen {
			return true
		}
	}
	return false
}

// drawHinges shows each hinge folded shut, as thick as it is, from the bottom of
// one gain to the bottom of the other, with its packers.
func (s *Scene) drawHinges() {
	const knuckles = 5
	for _, h := range s.d.Hinges {
		face := s.d.Frame.HingeJamb.At(h.JambHeight)
		at := func(x float64) Pt { return s.front.to(s.big.upright(fit.HingeSide, face+x, h.JambHeight)) }
		a := at(-(h.JambGain - h.JambPacker))
		b := at(h.Closed - (h.JambGain - h.JambPacker))
		half := max(7, h.Height/2*s.front.s)
		for _, pack := range [2]struct{ from, to Pt }{{at(-h.JambGain), a}, {b, Pt{b.X + h.LeafPacker*s.big.k*s.front.s, b.Y}}} {
			if pack.to.X-pack.from.X > 0.2 {
				from := s.pen.start()
				s.pen.box(pack.from.X, a.Y-half, pack.to.X, a.Y+half)
				s.pen.face(from, Paper, Line, thin)
			}
		}
		from := s.pen.start()
		s.pen.box(a.X, a.Y-half, b.X, a.Y+half)
		s.pen.face(from, Metal, Line, thin)
		// the barrel on the pin
		mid, r := (a.X+b.X)/2, min(max(2.5, (b.X-a.X)*0.22), 5)
		from = s.pen.start()
		s.pen.arc(Pt{mid, a.Y - half}, r, math.Pi, 2*math.Pi)
		s.pen.arc(Pt{mid, a.Y + half}, r, 0, math.Pi)
		s.pen.face(from, Metal, Line, medium)
		for i := range knuckles + 1 {
			y := a.Y - half + 2*half*float64(i)/knuckles
			s.pen.rule(Pt{mid - r, y}, Pt{mid + r, y}, Line, thin)
		}
	}
}

// drawStand writes how far the leaf's closing corners stand out of the frame's
// front edge or back from it: what wind looks like from here.
func (s *Scene) drawStand() {
	const worth = 0.5 // mm, less is not worth saying
	size := s.v.captionSize()
	c := s.corners(0)
	for i, p := range [2]geom.Vec{c.closingHead, c.closingFoot} {
		z := p.Z - s.d.Frame.LatchFront.At(p.Y)
		if !(math.Abs(z) >= worth) {
			continue
		}
		w := s.gap(math.Abs(z))
		if z > 0 {
			w.say(" proud")
		} else {
			w.say(" back")
		}
		text := w.keep()
		q := s.onFront(fit.LatchSide, p)
		q.X -= 8
		if q.Y += 7 + ascent*size; i == 1 {
			q.Y = s.onFront(fit.LatchSide, p).Y - 8
		}
		width := TextWidth(text, size, false)
		if width > 0.8*s.big.width*s.front.s || s.tag.meets(box{q.X - width, q.Y - size, q.X, q.Y + size}) {
			continue
		}
		from := s.pen.start()
		s.pen.box(q.X-width-3, q.Y-ascent*size-2, q.X+3, q.Y+descent*size+1)
		s.pen.fill(from, Timber)
		s.pen.text(q, End, TextInk, size, false, text)
	}
}
