package draw

import (
	"math"

	"leafwright/geom"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
)

const (
	stripTall, stripLow = 40.0, 26.0 // of the floor's profile, px, and on a small picture
	stripSmall          = 330.0      // pictures less high than this are small
	stripSteps          = 60         // angles sampled for the picture; the figure is exact
)

// floorMatters tells whether the floor under the swing is worth a picture.
func (s *Scene) floorMatters() bool {
	return !s.d.Floor.IsLevel() || s.floorVerdict() != judge.Good
}

func (s *Scene) floorVerdict() judge.Verdict {
	return s.w.SwingFloor.Judge(s.f.Swing[fit.FloorSide].Least)
}

// sayFloor tells the least clearance over the floor through the swing.
func (s *Scene) sayFloor() string {
	sw := &s.f.Swing[fit.FloorSide]
	w := s.words.say("Floor: least ")
	s.gap(sw.Least)
	return w.say(" at ").degrees(sw.Angle.Degrees()).keep()
}

func (s *Scene) stripHeight() float64 {
	size := s.v.captionSize()
	return s.stripTall() + 2*leading*size + 12
}

func (s *Scene) stripTall() float64 {
	if s.planBox.height() < stripSmall {
		return stripLow
	}
	return stripTall
}

// stripPoint is the leaf's point whose way over the floor is shown: the one that
// comes nearest to it, or the foot of the closing edge.
func (s *Scene) stripPoint() geom.Vec {
	if p := s.f.Swing[fit.FloorSide].Leaf; p != (geom.Vec{}) {
		return p
	}
	c := s.d.Leaf.Corners(0).ClosingFoot
	return s.leafPoint(c.X, c.Y, 0)
}

// strip carries (swing angle, height) to the sheet.
type strip struct {
	left, right, foot float64 // px; foot is where the height low comes
	first, last       geom.Angle
	low, scale        float64 // mm, px per mm
}

func (t *strip) to(a geom.Angle, y float64) Pt {
	x := t.left
	if t.last > t.first {
		x += (t.right - t.left) * float64((a-t.first)/(t.last-t.first))
	}
	return Pt{x, t.foot - (y-t.low)*t.scale}
}

func (t *strip) angle(i int) geom.Angle {
	return t.first + (t.last-t.first)*geom.Angle(i)/stripSteps
}

// drawStrip unrolls the floor under the swing beneath the plan: the swing angle
// across, heights enlarged upwards, the leaf's foot passing over.
func (s *Scene) drawStrip(top float64) {
	p, size := &s.pen, s.v.captionSize()
	b := s.planBox
	s.stripTitle(Pt{b.middle(), top + 4 + ascent*size})
	const bar = 26.0 // px from the strip to the end of the bar's figure, without it
	wide := min(b.width()-2*(bar+TextWidth("100 mm", size, false)), 400)
	t := strip{
		left: b.middle() - wide/2, right: b.middle() + wide/2,
		foot: top + 4 + leading*size + s.stripTall(), first: s.f.Closed, last: max(s.d.Opens, s.f.Closed),
	}
	low, high := math.Inf(1), math.Inf(-1)
	s.path = s.path[:0] // (floor, leaf, -) by angle
	at := s.stripPoint()
	for i := range stripSteps + 1 {
		q := s.f.Place(at, t.angle(i))
		floor := s.d.Floor.At(q.X, q.Z)
		s.path = append(s.path, geom.Vec{X: floor, Y: q.Y})
		low, high = min(low, floor, q.Y), max(high, floor, q.Y)
	}
	t.scale = min((s.stripTall()-12)/max(high-low, 1e-3), 4)
	t.low = low - 8/t.scale
	// floor
	from := p.start()
	p.xy(t.right, t.foot)
	p.xy(t.left, t.foot)
	for i, q := range s.path {
		p.to(t.to(t.angle(i), q.X))
	}
	p.face(from, Wall, Wall, 0, wallHatch)
	s.stripBinds(&t)
	s.stripLine(&t, false, Line, heavy)
	s.stripLine(&t, true, Shoulder, medium)
	s.stripScale(&t, size)
}

func (s *Scene) stripLine(t *strip, leaf bool, ink Ink, width float64) {
	from := s.pen.start()
	for i, q := range s.path {
		y := q.X
		if leaf {
			y = q.Y
		}
		s.pen.to(t.to(t.angle(i), y))
	}
	s.pen.stroke(from, ink, width)
}

// stripBinds fills where the leaf's path runs under the floor.
func (s *Scene) stripBinds(t *strip) {
	for i := 0; i < len(s.path); i++ {
		if s.path[i].Y >= s.path[i].X {
			continue
		}
		from, first := s.pen.start(), i
		for ; i < len(s.path) && s.path[i].Y < s.path[i].X; i++ {
			s.pen.to(t.to(t.angle(i), s.path[i].X))
		}
		for j := i - 1; j >= first; j-- {
			s.pen.to(t.to(t.angle(j), s.path[j].Y))
		}
		s.pen.face(from, BindFill, BindFill, heavy, bindHatch, bindCross)
	}
}

// stripScale writes the angles under the strip, where the leaf stands now, and a
// bar to read heights by.
func (s *Scene) stripScale(t *strip, size float64) {
	p := &s.pen
	step := 30.0
	if (t.last - t.first).Degrees() > 120 {
		step = 60
	}
	for deg := 0.0; deg <= min(t.last.Degrees()+0.5, 360); deg += step {
		a := geom.Angle(deg) * geom.Degree
		if a < t.first-geom.Degree {
			continue
		}
		q := t.to(a, t.low)
		p.rule(q, Pt{q.X, q.Y + 4}, Fine, thin)
		p.text(Pt{q.X, q.Y + 5 + size*0.95}, Middle, TextMuted, size, false, s.words.number(deg, 0).say("°").keep())
	}
	q := t.to(s.swing, t.low)
	from := p.start()
	p.xy(q.X, q.Y)
	p.xy(q.X, t.foot-s.stripTall())
	p.dash(from, Handle, thin, 3, 3)
	bar := 5.0
	for bar*t.scale < 10 && bar < 1e3 {
		bar *= 2
	}
	x := t.right + 12
	tall := bar * t.scale
	p.rule(Pt{x, t.foot}, Pt{x, t.foot - tall}, Line, medium)
	for _, y := range [2]float64{t.foot, t.foot - tall} {
		p.rule(Pt{x - 3, y}, Pt{x + 3, y}, Line, medium)
	}
	p.text(Pt{x + 7, t.foot - tall/2 + 0.36*size}, Start, TextMuted, size, false, s.words.number(bar, 0).say(" mm").keep())
}

// stripTitle says what the strip shows and the least clearance on it.
func (s *Scene) stripTitle(at Pt) {
	size, v, text := s.v.captionSize(), s.floorVerdict(), s.sayFloor()
	if v == judge.Good {
		s.pen.text(at, Middle, TextMuted, size, false, text)
		return
	}
	s.signed(v, at, verdictText(v), size, text)
}
