package draw

import (
	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
)

// Scene draws doors and tells what lies where on the last one drawn. Its zero
// value is ready; it keeps its memory from one drawing to the next.
type Scene struct {
	pen pen
	f   *fit.Fit
	d   *door.Door
	a   *door.Anatomy
	w   *judge.Wanted
	v   View

	frontBox, planBox box
	big               enlarged
	front             sheet // enlarged mm to the sheet
	outer             box   // the wall's outline on the front picture
	wall, lining      float64
	plan              sheet // plan mm to the sheet
	closed, now       geom.Motion
	section           float64    // height of the plan section
	swing             geom.Angle // the leaf stands at in plan
	inside            inside

	arris   [fit.Edges][2][]geom.Vec // of the closed leaf, knuckle face and stop face
	frame   [fit.Edges][]geom.Vec    // what they look at, from the floor up and from the hinges across
	labels  []label
	parts   []part
	notes   []note
	tag     box     // of what the tool in hand says
	tagRoom float64 // the greatest width of its lines
	strip   bool    // whether the floor's strip stands under the plan
	words   words

	// scratch
	places    []float64
	stretches []geom.Interval
	path      []geom.Vec
}

// sheet carries a picture's plane, in mm with its second axis up (front) or down
// (plan), to the sheet.
type sheet struct {
	at   Pt // where its origin comes
	s    float64
	down bool
}

func (t sheet) to(p Pt) Pt {
	if t.down {
		return Pt{t.at.X + t.s*p.X, t.at.Y + t.s*p.Y}
	}
	return Pt{t.at.X + t.s*p.X, t.at.Y - t.s*p.Y}
}

// from undoes to.
func (t sheet) from(p Pt) Pt {
	if t.down {
		return Pt{(p.X - t.at.X) / t.s, (p.Y - t.at.Y) / t.s}
	}
	return Pt{(p.X - t.at.X) / t.s, (t.at.Y - p.Y) / t.s}
}

// Draw lays the door down as the view asks, on an emptied list. The fit must be
// the door's; f, d, a and w must stay as they are while the scene is asked what
// lies where.
func (s *Scene) Draw(l *List, f *fit.Fit, d *door.Door, a *door.Anatomy, w *judge.Wanted, v View) {
	l.Reset(v.Width, v.Height)
	s.pen.l, s.pen.lens = l, lens{}
	s.f, s.d, s.a, s.w, s.v = f, d, a, w, v
	s.words.tidy()
	s.hang()
	s.frontBox, s.planBox = v.layout()
	s.pen.mirror = false
	from := s.pen.start()
	s.pen.box(0, 0, v.Width, v.Height)
	s.pen.fill(from, Paper)
	if s.frontBox != (box{}) {
		s.pen.mirror, s.pen.axis = v.RightHung, s.frontBox.middle()
		s.drawFront()
	}
	if s.planBox != (box{}) {
		s.pen.mirror, s.pen.axis = v.RightHung, s.planBox.middle()
		s.drawPlan()
	}
	if v.Lens.On {
		s.drawLoupe()
	}
	s.describe(l)
}

// hang works out where everything is before any of it is drawn.
func (s *Scene) hang() {
	f, d := s.f, s.d
	s.closed = f.Axis.Motion(f.Pose, f.Closed.Turn())
	s.swing = geom.Angle(geom.Interval{Lo: float64(f.Closed), Hi: max(float64(f.Closed), float64(d.Opens))}.Clamp(float64(s.v.Swing)))
	s.now = f.Axis.Motion(f.Pose, s.swing.Turn())
	for e := range fit.Edges {
		for face := range 2 {
			s.arris[e][face] = f.Arris(s.arris[e][face][:0], e, face, f.Closed)
		}
		if k := &d.Leaf.Sections[e]; k.KnuckleEase > 0 || k.KnuckleBack > 0 {
			s.arris[e][0] = s.edgeOutline(s.arris[e][0][:0], e) // the eased arris lies within
		}
	}
	leaf := [2]corners{s.corners(0), s.corners(d.Leaf.Thickness)}
	s.big = enlarge(d, leaf, s.v.Factor)
	if s.v.Sight != nil {
		s.big.grow(s.v.Sight.big.k)
	}
	s.frameLines()
	foot := max(leaf[0].hangingFoot.Y, leaf[0].closingFoot.Y)
	head := min(leaf[0].hangingHead.Y, leaf[0].closingHead.Y)
	s.section = s.v.Section
	if s.section == 0 {
		b := d.Leaf.Closing.At(d.Latch.Height)
		s.section = s.closed.Point(s.leafPoint(b, d.Latch.Height, 0)).Y
	}
	if head > foot {
		in := min(20, (head-foot)/4)
		s.section = geom.Interval{Lo: foot + in, Hi: head - in}.Clamp(s.section)
	}
}

// Factor tells how many times true size the gaps were drawn.
func (s *Scene) Factor() float64 { return s.big.k }

// Section tells the height of the plan section drawn, mm.
func (s *Scene) Section() float64 { return s.section }

// Swing tells the angle the leaf was drawn at in plan.
func (s *Scene) Swing() geom.Angle { return s.swing }

// leafPoint gives the leaf's own point at (u, v), depth d behind the knuckle face.
func (s *Scene) leafPoint(u, v, d float64) geom.Vec {
	return geom.Vec{X: u, Y: v, Z: s.d.Leaf.Face(u, v) - d}
}

func (s *Scene) corners(depth float64) corners {
	c := s.d.Leaf.Corners(depth)
	at := func(p geom.Vec) geom.Vec { return s.closed.Point(s.leafPoint(p.X, p.Y, depth)) }
	return corners{at(c.HangingFoot), at(c.ClosingFoot), at(c.HangingHead), at(c.ClosingHead)}
}

// frameLines collects the opening's outline, edge by edge.
func (s *Scene) frameLines() {
	f := &s.d.Frame
	hinge, latch := f.HeadCorners()
	footH, footL := s.foot(f.HingeJamb), s.foot(f.LatchJamb)
	s.frame[fit.HingeSide] = trace(s.frame[fit.HingeSide][:0], f.HingeJamb, footH.Y, hinge.Y, true)
	s.frame[fit.LatchSide] = trace(s.frame[fit.LatchSide][:0], f.LatchJamb, footL.Y, latch.Y, true)
	s.frame[fit.HeadSide] = trace(s.frame[fit.HeadSide][:0], f.Head, hinge.X, latch.X, false)
	line := append(s.frame[fit.FloorSide][:0], footH)
	for _, r := range s.d.Floor.Radii {
		if footH.X < r && r < footL.X {
			line = append(line, geom.Vec{X: r, Y: s.d.Floor.At(r, 0)})
		}
	}
	s.frame[fit.FloorSide] = append(line, footL)
}

// foot gives where a jamb's face meets the floor.
func (s *Scene) foot(jamb geom.Profile) geom.Vec {
	p := geom.Vec{X: jamb.At(0)}
	for range 3 { // both are nearly square to each other
		p.Y = s.d.Floor.At(p.X, 0)
		p.X = jamb.At(p.Y)
	}
	return p
}

// trace appends the profile's ends and bends between two places.
func trace(dst []geom.Vec, p geom.Profile, lo, hi float64, upright bool) []geom.Vec {
	add := func(at float64) {
		if upright {
			dst = append(dst, geom.Vec{X: p.At(at), Y: at})
		} else {
			dst = append(dst, geom.Vec{X: at, Y: p.At(at)})
		}
	}
	add(lo)
	for i := range p.Knots() {
		if k := p.Knot(i); lo < k && k < hi {
			add(k)
		}
	}
	add(hi)
	return dst
}

// frameAt gives the frame's, or the floor's, own place on an edge.
func (s *Scene) frameAt(e fit.Edge, place float64) geom.Vec {
	switch e {
	case fit.HingeSide:
		return geom.Vec{X: s.d.Frame.HingeJamb.At(place), Y: place}
	case fit.LatchSide:
		return geom.Vec{X: s.d.Frame.LatchJamb.At(place), Y: place}
	case fit.HeadSide:
		return geom.Vec{X: place, Y: s.d.Frame.Head.At(place)}
	}
	return geom.Vec{X: place, Y: s.d.Floor.At(place, 0)}
}

// leafAt gives the place across the gap from frameAt.
func (s *Scene) leafAt(e fit.Edge, place float64) geom.Vec {
	p, g := s.frameAt(e, place), s.f.Gaps[e].Curve.At(place)
	switch e {
	case fit.HingeSide:
		p.X += g
	case fit.LatchSide:
		p.X -= g
	case fit.HeadSide:
		p.Y -= g
	default:
		p.Y += g
	}
	return p
}

// onFront gives where a place of an edge stands on the front picture.
func (s *Scene) onFront(e fit.Edge, p geom.Vec) Pt { return s.front.to(s.big.at(e, p.X, p.Y)) }
