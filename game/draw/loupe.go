package draw

import (
	"leafwright/geom"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
)

// Sizes of the loupe, px.
const (
	evenly                = 0.01        // mm; arrises nearer alike than this count as one
	loupeLeast, loupeMost = 68.0, 105.0 // radius
	fingerRoom            = 30.0        // between the finger's middle and the rim
	scaleLeast, scaleMost = 2.5, 6.0    // px per mm
	tagOver               = 8.0         // the tag lies over the rim by this
)

// drawLoupe shows the gap at one place in its true shape: a level section at a
// jamb, an upright one at head and floor.
func (s *Scene) drawLoupe() {
	e, place := s.v.Lens.Edge, s.v.Lens.Place
	if e < 0 || e >= fit.Edges || len(s.f.Gaps[e].Pieces) == 0 {
		return
	}
	place = s.f.Gaps[e].Range().Clamp(place)
	p := &s.pen
	r := min(max(0.2*min(s.v.Width, s.v.Height), loupeLeast), loupeMost)
	tag := s.loupeTag(e, place)
	on := s.LensPoint(e, place)
	near := s.v.Lens.Near
	if near == (Pt{}) {
		near = on
	}
	at := s.loupePlace(near, r, tag)
	p.mirror = false
	p.ring(on, 4, Line, medium)
	p.disc(at, r+4, Paper)
	p.disc(at, r, Opening)
	p.lens = lens{at, r}
	p.mirror, p.axis = s.v.RightHung, at.X
	gap := s.f.Gaps[e].Curve.At(place)
	t := sheet{s: min(max(1.6*r/(s.d.Leaf.Thickness+6), scaleLeast), scaleMost), down: e.Upright()}
	if e.Upright() {
		s.levelLoupe(t, e, place, at)
	} else {
		s.uprightLoupe(t, e, place, at)
	}
	p.lens, p.mirror = lens{}, false
	p.ring(at, r, Line, heavy)
	s.loupeBar(s.barPlace(e, at, r), t.s)
	s.drawTag(tag, Pt{at.X, at.Y - r - tag.height/2 + tagOver}, s.w.Gaps[e].Judge(gap))
}

// loupePlace gives the loupe's middle: above the finger where there is room, else
// beside it, always on the sheet.
func (s *Scene) loupePlace(near Pt, r float64, tag loupeTag) Pt {
	edge := r + 6
	side := max(edge, tag.width/2+2)
	above := r + tag.height - tagOver + 2
	at := Pt{near.X, near.Y - r - fingerRoom}
	if at.Y < above {
		at.Y = max(above, min(near.Y, s.v.Height-edge))
		at.X = near.X + r + fingerRoom
		if at.X+side > s.v.Width && near.X-r-fingerRoom-side > s.v.Width-at.X-side {
			at.X = near.X - r - fingerRoom
		}
	}
	at.X = min(max(at.X, side), s.v.Width-side)
	at.Y = min(max(at.Y, above), s.v.Height-edge)
	return at
}

// loupeTag is what is written on the loupe: the gap, and where it is.
type loupeTag struct {
	gap, where    string
	width, height float64
}

func (s *Scene) loupeTag(e fit.Edge, place float64) loupeTag {
	gap := s.f.Gaps[e].Curve.At(place)
	v := s.w.Gaps[e].Judge(gap)
	t := loupeTag{gap: s.held(gap, s.w.Gaps[e]).say(", ").say(verdictNames[v]).keep()}
	w := s.words.say(edgeNames[e]).say(", ")
	s.length(place)
	if e.Upright() {
		w.say(" up")
	} else {
		w.say(" from hinges")
	}
	t.where = w.keep()
	fs, cs := s.v.figureSize(), s.v.captionSize()
	t.width = max(TextWidth(t.gap, fs, true)+signSize+signGap, TextWidth(t.where, cs, false)) + 16
	t.height = fs*leading + cs*leading + 6
	return t
}

func (s *Scene) drawTag(t loupeTag, at Pt, v judge.Verdict) {
	p, fs, cs := &s.pen, s.v.figureSize(), s.v.captionSize()
	from := p.start()
	p.box(at.X-t.width/2, at.Y-t.height/2, at.X+t.width/2, at.Y+t.height/2)
	p.face(from, Paper, Line, medium)
	y := at.Y - t.height/2 + 3 + fs
	if v == judge.Good {
		p.text(Pt{at.X, y}, Middle, TextInk, fs, true, t.gap)
	} else {
		s.signed(v, Pt{at.X, y}, verdictText(v), fs, t.gap)
	}
	p.text(Pt{at.X, y + cs*leading}, Middle, TextMuted, cs, false, t.where)
}

// barPlace gives the middle of the loupe's bar, where no gap is shown: on the
// frame at a jamb, at the foot of the loupe otherwise.
func (s *Scene) barPlace(e fit.Edge, at Pt, r float64) Pt {
	if !e.Upright() {
		return Pt{at.X, at.Y + 0.74*r}
	}
	side := 0.5 * r
	if (e == fit.HingeSide) != s.v.RightHung {
		side = -side
	}
	return Pt{at.X + side, at.Y + 0.42*r}
}

// loupeBar rules a bar of 10 mm about a point.
func (s *Scene) loupeBar(at Pt, scale float64) {
	p, size := &s.pen, smallest
	half := 5 * scale
	text := s.words.say("10 mm").keep()
	y := at.Y
	wide := max(half, TextWidth(text, size, false)/2) + 5
	from := p.start()
	p.box(at.X-wide, y-size-3, at.X+wide, y+5)
	p.fill(from, Opening)
	p.rule(Pt{at.X - half, y}, Pt{at.X + half, y}, Line, medium)
	for _, x := range [2]float64{-half, half} {
		p.rule(Pt{at.X + x, y - 3}, Pt{at.X + x, y + 3}, Line, medium)
	}
	p.text(Pt{at.X, y - 4}, Middle, TextInk, size, false, text)
}

// levelLoupe shows a jamb and the leaf's edge beside it, cut level.
func (s *Scene) levelLoupe(t sheet, e fit.Edge, y float64, at Pt) {
	j, c := s.jamb(e, y), s.cutLeaf(y, s.closed)
	i := 0
	if e == fit.LatchSide {
		i = 1
	}
	a, b := c.knuckle[i], c.stop[i]
	mid := Pt{((a.X+b.X)/2 + j.face) / 2, (a.Y + b.Y) / 2}
	t.at = Pt{s.unmirror(at, at.X).X - t.s*mid.X, at.Y - t.s*mid.Y}
	s.drawJambs(t, y)
	s.drawWasCut(t, y)
	s.drawLeafCut(t, y, s.closed, Opening)
	if e == fit.HingeSide {
		s.drawPin(t, y, s.closed)
	}
	near := between(a, b, 0.5) // of two arrises alike, neither
	switch more := (b.X - a.X) * j.out; {
	case more > evenly:
		near = b
	case more < -evenly:
		near = a
	}
	if (near.X-j.face)*j.out > hair {
		s.loupeOverlap(t, [4]Pt{{j.face, a.Y}, a, b, {j.face, b.Y}})
	}
	s.loupeTicks(t, near, Pt{j.face, near.Y})
}

// hair is what arithmetic may leave of a gap that is nothing, mm: no overlap is shown for it.
const hair = 1e-6

// uprightLoupe shows the head or the floor and the end of the leaf, cut upright
// across the opening, the knuckle side on the right.
func (s *Scene) uprightLoupe(t sheet, e fit.Edge, x float64, at Pt) {
	a, b := s.endCut(e, x, 0), s.endCut(e, x, s.d.Leaf.Thickness)
	face := Pt{(a.X + b.X) / 2, s.frameAt(e, x).Y}
	if e == fit.FloorSide {
		face.Y = s.d.Floor.At(x, face.X)
	}
	mid := Pt{face.X, ((a.Y+b.Y)/2 + face.Y) / 2}
	t.at = Pt{at.X - t.s*mid.X, at.Y + t.s*mid.Y}
	inward := -100.0
	if e == fit.FloorSide {
		inward = 100
		s.floorCut(t, x, mid)
	} else {
		s.headCut(t, x)
	}
	from := s.pen.start()
	s.shapeEnd(t, e, x, a, b, inward)
	s.pen.face(from, Timber, Line, medium, endGrain)
	s.jointEnd(t, e, x, a, b, inward)
	clear := func(q Pt) float64 { return (q.Y - s.lookedAt(e, x, q).Y) * inward / 100 }
	near := between(a, b, 0.5)
	switch more := clear(a) - clear(b); {
	case more > evenly:
		near = b
	case more < -evenly:
		near = a
	}
	far := s.lookedAt(e, x, near)
	if clear(near) < -hair {
		s.loupeOverlap(t, [4]Pt{s.lookedAt(e, x, a), a, b, s.lookedAt(e, x, b)})
	}
	s.loupeTicks(t, near, far)
}

// lookedAt gives the place on head or floor that an arris at q, (z, y), faces.
func (s *Scene) lookedAt(e fit.Edge, x float64, q Pt) Pt {
	if e == fit.FloorSide {
		return Pt{q.X, s.d.Floor.At(x, q.X)}
	}
	return Pt{q.X, s.d.Frame.Head.At(x)}
}

// endCut gives where an arris of the leaf's top or bottom crosses the upright
// plane at x, as (z, y).
func (s *Scene) endCut(e fit.Edge, x, depth float64) Pt {
	end := s.d.Leaf.Top
	if e == fit.FloorSide {
		end = s.d.Leaf.Bottom
	}
	u, p := x, geom.Vec{}
	for range 4 {
		p = s.closed.Point(s.leafPoint(u, end.At(u), depth))
		u += x - p.X
	}
	return Pt{p.Z, p.Y}
}

func (s *Scene) headCut(t sheet, x float64) {
	f := &s.d.Frame
	y, front, stop := f.Head.At(x), f.HeadFront.At(x), f.HeadStop.At(x)
	back := front - max(liningDeep, front-stop+behindStop)
	s.wallCut(t, Pt{back, y + liningThick}, Pt{front, y + liningThick + wallShown})
	s.timberCut(t, Pt{back, y}, Pt{front, y + liningThick}, Lining, endGrain2)
	s.timberCut(t, Pt{max(back, stop-stopDeep), y - f.StopWidth}, Pt{stop, y}, Lining, endGrain)
}

func (s *Scene) floorCut(t sheet, x float64, mid Pt) {
	const reach, parts = 100.0, 10
	from := s.pen.start()
	s.pen.to(t.to(Pt{mid.X + reach, mid.Y - reach}))
	s.pen.to(t.to(Pt{mid.X - reach, mid.Y - reach}))
	for i := range parts + 1 {
		z := mid.X - reach + 2*reach*float64(i)/parts
		s.pen.to(t.to(Pt{z, s.d.Floor.At(x, z)}))
	}
	s.pen.face(from, Wall, Line, medium, wallHatch)
}

func (s *Scene) loupeOverlap(t sheet, q [4]Pt) {
	from := s.pen.start()
	for _, k := range q {
		s.pen.to(t.to(k))
	}
	s.pen.face(from, BindFill, BindFill, medium, bindHatch, bindCross)
}

// loupeTicks marks the gap that the figure tells between two places, by an arrow
// to each from outside.
func (s *Scene) loupeTicks(t sheet, a, b Pt) {
	const tail, head = 22.0, 4.5
	p, q := t.to(a), t.to(b)
	d := distance(p, q)
	if d < 1e-6 {
		return
	}
	dx, dy := (q.X-p.X)/d, (q.Y-p.Y)/d
	for _, w := range [2]struct {
		tip Pt
		way float64
	}{{p, -1}, {q, 1}} {
		x, y := dx*w.way, dy*w.way
		s.pen.rule(Pt{w.tip.X + x*tail, w.tip.Y + y*tail}, w.tip, Line, medium)
		from := s.pen.start()
		s.pen.to(w.tip)
		s.pen.xy(w.tip.X+x*head*1.6-y*head*0.6, w.tip.Y+y*head*1.6+x*head*0.6)
		s.pen.xy(w.tip.X+x*head*1.6+y*head*0.6, w.tip.Y+y*head*1.6-x*head*0.6)
		s.pen.fill(from, Line)
	}
}
