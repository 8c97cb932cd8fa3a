package draw

import (
	"math"

	"leafwright/geom/door"
	"leafwright/geom/fit"
)

// Held is the tool in hand.
type Held uint8

// The tools. The swing hand is no tool: it looks and swings.
const (
	NoTool Held = iota
	HeldPlane
	HeldHinge
	HeldStrip
	HeldSaw
)

// Work is what the tool in hand would do to the leaf, before it is done. Places are on
// the leaf, in mm along the edge.
type Work struct {
	Edge     fit.Edge
	From, To float64 // the stretch of the edge that is touched
	At       float64 // where the tool is
	Hinge    int     // the hinge held, from 1 at the top
	End      int     // of the cut line, as in [Target]
	// First and Last are mm off at the hanging and at the closing corner, of a cut.
	First, Last float64
	Text, Note  string // what would be done, and what comes of it
	Bad         bool   // it cannot be done; Text says why
	Pressed     bool   // held, not only marked
}

// Sizes of tools and their label, px.
const (
	planeLong, planeTall = 40.0, 13.0
	workRound            = 9.0  // of a handle
	workReach            = 22.0 // round it
	labelOver            = 40.0 // the label stands higher than the tool by this, clear of a finger
	labelBeside          = 26.0 // and beside it
	labelHem             = 7.0
	labelRoom            = 90.0 // its least width
	teeth                = 5.0
)

// hitWork tells what of the leaf the tool in hand could take at a point of the sheet,
// and how far off it is, px.
func (s *Scene) hitWork(p Pt) (Target, float64) {
	g := s.Sight()
	q := s.unmirror(p, s.frontBox.middle())
	switch s.v.Held {
	case HeldHinge:
		return s.hitHinge(q)
	case HeldSaw:
		return s.hitCut(&g, p)
	}
	best, t := edgeReach, Target{}
	for e := range fit.Edges {
		lo, hi := g.Ends(e)
		if !(lo < hi) {
			continue
		}
		at := g.Place(e, p)
		if d := distance(q, g.on(e, at)); d <= best {
			best, t = d, Target{Kind: LeafEdge, Edge: e, Place: at}
		}
	}
	if t.Kind == Nothing {
		best = math.Inf(1)
	}
	return t, best
}

// hingeBox gives where a hinge is drawn, not mirrored.
func (s *Scene) hingeBox(i int) box {
	h := &s.d.Hinges[i]
	face := s.d.Frame.HingeJamb.At(h.JambHeight)
	at := func(x float64) Pt { return s.front.to(s.big.upright(fit.HingeSide, face+x, h.JambHeight)) }
	a, b := at(-h.JambGain), at(h.Closed-h.JambGain+h.JambPacker+h.LeafPacker)
	half := max(7, h.Height/2*s.front.s)
	return box{a.X, a.Y - half, b.X, a.Y + half}
}

func (s *Scene) hitHinge(q Pt) (Target, float64) {
	best, t := math.Inf(1), Target{}
	for i := range s.d.Hinges {
		b := s.hingeBox(i)
		mid := Pt{b.middle(), (b.y0 + b.y1) / 2}
		dx, dy := math.Abs(q.X-mid.X), math.Abs(q.Y-mid.Y)
		if dx > max(b.width()/2, workReach) || dy > max(b.height()/2, workReach) {
			continue
		}
		if d := dx + dy; d < best {
			best, t = d, Target{Kind: HingeBody, Hinge: i + 1}
		}
	}
	return t, best
}

// cutGrip gives where a handle of the line an end is sawn to stands.
func cutGrip(g *Sight, e fit.Edge, end int, first, last float64) Pt {
	lo, hi := g.Ends(e)
	at, off := (lo+hi)/2, (first+last)/2
	switch end {
	case -1:
		at, off = lo, first
	case 1:
		at, off = hi, last
	}
	return inset(e, g.on(e, at), off*g.big.k*g.front.s)
}

func (s *Scene) hitCut(g *Sight, p Pt) (Target, float64) {
	q := s.unmirror(p, s.frontBox.middle())
	best, t := math.Inf(1), Target{}
	for _, e := range [2]fit.Edge{fit.HeadSide, fit.FloorSide} {
		for _, end := range [2]int{-1, 1} {
			c := cutGrip(g, e, end, 0, 0)
			if d := distance(q, c); d <= workReach && d < best {
				best, t = d, Target{Kind: CutEnd, Edge: e, End: end}
			}
		}
		if t.Kind == Nothing {
			at := g.Place(e, p)
			if d := distance(q, g.on(e, at)); d <= edgeReach && d < best {
				best, t = d, Target{Kind: CutEnd, Edge: e, Place: at}
			}
		}
	}
	return t, best
}

// CutGrip gives where on the sheet a handle of the line that top or foot is sawn to
// is drawn, before it is moved; HingeAt where a hinge is, from 1 at the top.
func (s *Scene) CutGrip(e fit.Edge, end int) Pt {
	g := s.Sight()
	return s.mirrored(cutGrip(&g, e, end, 0, 0), s.frontBox)
}

func (s *Scene) HingeAt(i int) Pt {
	if i < 1 || i > len(s.d.Hinges) {
		return Pt{}
	}
	b := s.hingeBox(i - 1)
	return s.mirrored(Pt{b.middle(), (b.y0 + b.y1) / 2}, s.frontBox)
}

// sight gives the sight that places of the work are told in: the one kept, or this
// drawing's.
func (s *Scene) sight() Sight {
	if s.v.Sight != nil {
		return *s.v.Sight
	}
	return s.Sight()
}

// drawWork shows what the tool in hand could take hold of and what it would do.
func (s *Scene) drawWork() {
	if s.v.Held == NoTool || s.v.Still {
		return
	}
	g := s.sight()
	w := s.v.Work
	if s.v.Held == HeldSaw {
		s.drawCutGrips(&g, w)
	}
	if s.v.Held == HeldHinge {
		s.drawHingeGrips(w)
	}
	if w == nil {
		return
	}
	at := g.on(w.Edge, w.At)
	switch s.v.Held {
	case HeldPlane:
		s.drawTouched(w)
		s.drawPlane(w, s.atNow(w))
	case HeldStrip:
		s.drawTouched(w)
		at = s.atNow(w)
		s.drawPull(w.Edge, at)
	case HeldSaw:
		at = cutGrip(&g, w.Edge, w.End, w.First, w.Last)
	case HeldHinge:
		at = s.hingeMiddle(w)
	}
	if w.Bad {
		s.pen.refusal(at)
	}
	s.drawLabel(w)
}

// atNow gives where the tool stands: beside the edge as the leaf is drawn now.
func (s *Scene) atNow(w *Work) Pt {
	line := s.edge(w.Edge)
	return s.leafSpot(w.Edge, line, w.At)
}

func (s *Scene) hingeMiddle(w *Work) Pt {
	if w.Hinge < 1 || w.Hinge > len(s.d.Hinges) {
		return Pt{}
	}
	b := s.hingeBox(w.Hinge - 1)
	return Pt{b.middle(), (b.y0 + b.y1) / 2}
}

// drawTouched marks the stretch of an edge that the tool touches: a strong line
// beside it with a tick at either end.
func (s *Scene) drawTouched(w *Work) {
	const off, tick, steps = -4.0, 4.0, 12
	p, line := &s.pen, s.edge(w.Edge)
	ink := Handle
	if w.Bad {
		ink = BindFill
	}
	spot := func(at float64) Pt { return inset(w.Edge, s.leafSpot(w.Edge, line, at), off) }
	from := p.start()
	for i := range steps + 1 {
		p.to(spot(w.From + (w.To-w.From)*float64(i)/steps))
	}
	p.stroke(from, ink, 3)
	for _, at := range [2]float64{w.From, w.To} {
		q := spot(at)
		p.rule(inset(w.Edge, q, tick), inset(w.Edge, q, -tick), ink, 2)
	}
}

// compass gives the ways out of an edge and along it on the unmirrored sheet.
func compass(e fit.Edge) (out, along Pt) {
	switch e {
	case fit.HingeSide:
		return Pt{-1, 0}, Pt{0, -1}
	case fit.LatchSide:
		return Pt{1, 0}, Pt{0, -1}
	case fit.HeadSide:
		return Pt{0, -1}, Pt{1, 0}
	}
	return Pt{0, 1}, Pt{1, 0}
}

// drawPlane shows a plane standing on the edge, its iron through the sole, and, while
// it cuts, a shaving curling out of it.
func (s *Scene) drawPlane(w *Work, at Pt) {
	p := &s.pen
	out, along := compass(w.Edge)
	put := func(a, o float64) Pt {
		return Pt{at.X + a*along.X + o*out.X, at.Y + a*along.Y + o*out.Y}
	}
	const half = planeLong / 2
	from := p.start()
	for _, q := range [6][2]float64{{-half, 1}, {half, 1}, {half, 8}, {half - 8, planeTall - 3}, {-half + 12, planeTall - 3}, {-half, 9}} {
		p.to(put(q[0], q[1]))
	}
	p.face(from, Brass, Line, medium)
	from = p.start() // tote
	for _, q := range [4][2]float64{{-half + 3, 9}, {-half + 12, planeTall - 3}, {-half + 9, planeTall + 6}, {-half + 2, planeTall + 6}} {
		p.to(put(q[0], q[1]))
	}
	p.face(from, Sunk, Line, medium)
	p.disc(put(half-9, planeTall), 4, Sunk)
	p.ring(put(half-9, planeTall), 4, Line, medium)
	// the iron, down to the edge
	p.rule(put(3, 0), put(-6, planeTall+5), Line, 3)
	if !w.Pressed || w.Bad {
		return
	}
	from = p.start()
	for i := range 15 { // a curl that winds up
		t := float64(i) / 14
		sin, cos := math.Sincos(-1.4 + 2.6*math.Pi*t)
		r := 6 - 4*t
		p.to(put(9+r*cos, planeTall+7+r*sin))
	}
	p.stroke(from, Shoulder, 1.6)
}

// drawPull shows an arrow out of an edge, by which a strip is pulled on.
func (s *Scene) drawPull(e fit.Edge, at Pt) {
	p := &s.pen
	out, along := compass(e)
	put := func(a, o float64) Pt {
		return Pt{at.X + a*along.X + o*out.X, at.Y + a*along.Y + o*out.Y}
	}
	p.disc(put(0, 0), workRound, Handle)
	from := p.start()
	p.to(put(0, workRound+12))
	p.to(put(-6, workRound+3))
	p.to(put(6, workRound+3))
	p.fill(from, Handle)
	for _, a := range [2]float64{-3, 3} {
		p.rule(put(a, -4), put(a, 4), HandleSign, 1.6)
	}
}

// drawCutGrips shows the line that top and foot would be sawn to, with a handle at
// either corner; the one marked as it would lie.
func (s *Scene) drawCutGrips(g *Sight, w *Work) {
	p := &s.pen
	for _, e := range [2]fit.Edge{fit.HeadSide, fit.FloorSide} {
		first, last, mine := 0.0, 0.0, w != nil && w.Edge == e
		if mine {
			first, last = w.First, w.Last
		} else if w != nil && w.Pressed {
			continue
		}
		a, b := cutGrip(g, e, -1, first, last), cutGrip(g, e, 1, first, last)
		if mine {
			s.drawTeeth(a, b, w.Bad)
		}
		for i, c := range [2]Pt{a, b} {
			end := 2*i - 1
			if mine && (w.End == end || w.End == 0) {
				p.ring(c, workRound+3, Handle, medium*1.4)
			}
			p.disc(c, workRound, Handle)
			p.bothWays(c, Pt{0, 1}, 2, 6, 3.4)

		}
	}
}

// drawTeeth rules a line toothed as a saw.
func (s *Scene) drawTeeth(a, b Pt, bad bool) {
	p, ink := &s.pen, Handle
	if bad {
		ink = BindFill
	}
	p.rule(a, b, ink, 2)
	n := int(distance(a, b) / (2 * teeth))
	if n < 1 || n > 400 {
		return
	}
	from := p.start()
	for i := range n {
		t := float64(i) / float64(n)
		p.to(between(a, b, t))
		q := between(a, b, t+0.5/float64(n))
		p.xy(q.X, q.Y+teeth*0.8)
	}
	p.to(b)
	p.stroke(from, ink, medium)
}

// drawHingeGrips puts arrows over and under every hinge, and rings the one held.
func (s *Scene) drawHingeGrips(w *Work) {
	p := &s.pen
	for i := range s.d.Hinges {
		b := s.hingeBox(i)
		mine := w != nil && w.Hinge == i+1
		ink := Line
		if mine {
			ink = Handle
			o := b.inset(-4)
			from := p.start()
			p.box(o.x0, o.y0, o.x1, o.y1)
			p.outline(from, ink, 2.4)
		}
		for _, way := range [2]float64{-1, 1} {
			y := b.y0 - 8
			if way > 0 {
				y = b.y1 + 8
			}
			from := p.start()
			p.xy(b.middle(), y+way*8)
			p.xy(b.middle()-5.5, y)
			p.xy(b.middle()+5.5, y)
			p.face(from, ink, Paper, thin)
		}
	}
}

// refusal crosses a place out.
func (p *pen) refusal(c Pt) {
	const r = 9.0
	p.disc(c, r+4, Paper)
	p.ring(c, r+4, BindFill, heavy)
	p.rule(Pt{c.X - r*0.6, c.Y - r*0.6}, Pt{c.X + r*0.6, c.Y + r*0.6}, BindFill, 3)
	p.rule(Pt{c.X - r*0.6, c.Y + r*0.6}, Pt{c.X + r*0.6, c.Y - r*0.6}, BindFill, 3)
}

// setWork finds the room of the work's label before anything is written there.
func (s *Scene) setWork() {
	s.tag = box{}
	w := s.v.Work
	if w == nil || s.v.Held == NoTool || s.v.Still || w.Text == "" {
		return
	}
	g := s.sight()
	at := g.on(w.Edge, w.At)
	switch s.v.Held {
	case HeldHinge:
		at = s.hingeMiddle(w)
	case HeldSaw:
		at = cutGrip(&g, w.Edge, w.End, w.First, w.Last)
	}
	out, _ := compass(w.Edge)
	o, sign := s.outer, 0.0
	s.tagRoom = o.width() - 2*labelHem
	if s.v.Held != HeldHinge && w.Edge.Upright() { // beside the edge, over the leaf
		s.tagRoom = (at.X-o.x0)*max(out.X, 0) + (o.x1-at.X)*max(-out.X, 0) - labelBeside - 2*labelHem
	}
	if w.Bad {
		sign = signSize + signGap
	}
	s.tagRoom = max(s.tagRoom-sign, labelRoom)
	wide, tall := 0.0, 2*labelHem-2
	s.eachLabelLine(w, func(line string, size float64, bold bool) {
		wide = max(wide, TextWidth(line, size, bold))
		tall += leading * size
	})
	wide += 2*labelHem + sign
	mid := Pt{at.X - out.X*(wide/2+labelBeside), at.Y - labelOver}
	switch {
	case s.v.Held == HeldHinge:
		mid = Pt{at.X + wide/2 + labelBeside, at.Y + tall/2 + labelOver/2}
	case !w.Edge.Upright():
		mid = Pt{at.X, at.Y - out.Y*(tall/2+labelBeside)}
	}
	x0 := min(max(mid.X-wide/2, o.x0), max(o.x1-wide, o.x0))
	y0 := min(max(mid.Y-tall/2, o.y0), max(o.y1-tall, o.y0))
	s.tag = box{x0, y0, x0 + wide, y0 + tall}
	if k := &s.a.Lock; k.Kind != door.NoLock { // the lock stays in sight
		p, r := s.onLeaf(s.d.Leaf.Closing.At(k.Height)-k.Backset, k.Height), labelBeside
		if s.tag.meets(box{p.X - r, p.Y - r, p.X + r, p.Y + r}) {
			s.tag.y0, s.tag.y1 = p.Y-r-tall, p.Y-r
		}
	}
}

// eachLabelLine goes through the lines of the work's label.
func (s *Scene) eachLabelLine(w *Work, line func(text string, size float64, bold bool)) {
	size := s.v.figureSize()
	if w.Bad {
		size = s.v.captionSize()
	}
	for i, text := range [2]string{w.Text, w.Note} {
		bold := i == 0
		if !bold && s.frontBox.height() < roomForMore { // it stands under the picture
			return
		}
		fit := s.v.captionSize()
		if bold {
			fit = size * bolder
		}
		for _, even := lines(text, fit, s.tagRoom); text != ""; {
			var l string
			l, text = cut(text, fit, even)
			if bold {
				line(l, size, true)
			} else {
				line(l, fit, false)
			}
		}
	}
}

// drawLabel writes what the tool would do and what comes of it.
func (s *Scene) drawLabel(w *Work) {
	b := s.tag
	if b == (box{}) {
		return
	}
	p := &s.pen
	ink, rim := TextInk, Line
	if w.Bad {
		ink, rim = TextBind, BindFill
	}
	from := p.start()
	p.box(b.x0, b.y0, b.x1, b.y1)
	p.face(from, Paper, rim, medium*1.6)
	mid := b.middle()
	if w.Bad {
		mid += (signSize + signGap) / 2
		const r = signSize / 2
		c := Pt{b.x0 + labelHem + r, b.y0 + labelHem + r + 1}
		p.rule(Pt{c.X - r, c.Y - r}, Pt{c.X + r, c.Y + r}, TextBind, 2.2)
		p.rule(Pt{c.X - r, c.Y + r}, Pt{c.X + r, c.Y - r}, TextBind, 2.2)
	}
	y := b.y0 + labelHem - 1
	s.eachLabelLine(w, func(line string, size float64, bold bool) {
		y += leading * size
		p.text(Pt{mid, y - (leading-ascent)/2*size}, Middle, ink, size, bold, line)
	})
}
