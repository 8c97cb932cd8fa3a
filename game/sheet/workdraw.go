package sheet

import (
	"leafwright/game/words"
	"math"

	"leafwright/game"
	"leafwright/game/draw"
	"leafwright/geom/door"
	"leafwright/geom/trim"
)

// Sizes of the leaf's drawing, px.
const (
	rodWide   = 60 * MM
	asideWide = 52 * MM // of what is said beside the drawings
	railApart = 9 * MM  // between lines of marks over top and under foot
	wedge     = 4 * MM  // what is taken off, where it is most
	badge     = 2.4 * MM
)

var tickStyle = style{10 * pt, true, draw.TextInk}

// drawings sets the leaf with its cuts and the storey rod side by side.
func (b *bench) drawings() {
	b.space(2 * MM)
	tall := b.tall
	if b.a.Paper.Height < 290 { // a shorter sheet
		tall -= 12 * MM
	}
	x0, y0, x1, y1 := b.box(tall)
	rod := x1 - asideWide - 4*MM
	left := b.drawLeaf(x0, y0, rod-rodWide-3*MM, y1)
	b.drawRod(rod-rodWide, y0, rod, y1)
	if len(left) > 0 {
		all := make([]string, len(left))
		for i, n := range left {
			all[i] = number(n)
		}
		b.unmarked = " There is no room in the drawing for the marks of move " + words.Listed(all) + ": they are in the tables."
	}
	b.aside(x1-asideWide, y0, x1, y1)
}

// aside sets beside the drawings what gauges are set to, and what the drawings' signs are;
// where the settings find no room there they come later.
func (b *bench) aside(x0, y0, x1, y1 float64) {
	end, left := b.y, b.left
	b.left, b.right, b.y = x0, x1, y0
	key := b.key() + b.unmarked + " " + b.a.rounding()
	all := b.settings()
	room := y1 - y0 - height(key, smallStyle, b.width()) - lead*headStyle.size - 4*MM
	for _, q := range all {
		room -= b.settingHeight(&q)
	}
	if b.later = nil; room < 0 {
		b.later = all
	} else if len(all) > 0 {
		b.para("Gauges and "+b.s.Packer+"s", style{11.5 * pt, true, draw.TextInk})
		b.setSettings(all)
		b.y += 3 * MM
	}
	b.para(key, smallStyle)
	b.y, b.left = max(end, b.y), left
}

// key says what the drawings' signs are, of those there may be.
func (b *bench) key() string {
	said := "The leaf on its back, knuckle face up"
	if len(b.plan.cuts) > 0 {
		said += ": rings are moves, − off, + on, wedges drawn large"
	} else {
		said += ": rings are moves"
	}
	for i := range b.plan.cuts {
		if b.plan.cuts[i].stop {
			said += "; a stop's figures are behind the front edge"
			break
		}
	}
	if b.plan.repairs != nil {
		said += "; crossed boxes are bad places"
	}
	return said + ". The storey rod as all is in the end: left on the jamb from its floor, right on the leaf from its foot."
}

// plate puts the leaf's plane, its hinges on the side they are on, on the page.
type plate struct {
	x, y, s float64 // where u = 0, v = 0 comes, and px per mm
	back    bool    // hinges on the right
}

func (p *plate) at(u, v float64) draw.Pt {
	if p.back {
		u = -u
	}
	return draw.Pt{X: p.x + p.s*u, Y: p.y - p.s*v}
}

// out gives the way out of an edge on the page.
func (p *plate) out(e door.Edge) draw.Pt {
	side := 1.0
	if p.back {
		side = -1
	}
	switch e {
	case door.HingeSide:
		return draw.Pt{X: -side}
	case door.LatchSide:
		return draw.Pt{X: side}
	case door.HeadSide:
		return draw.Pt{Y: -1}
	}
	return draw.Pt{Y: 1}
}

func off(p, way draw.Pt, by float64) draw.Pt { return draw.Pt{X: p.X + way.X*by, Y: p.Y + way.Y*by} }

// drawLeaf draws the leaf as it stands with a line of marks beside an edge for every cut,
// as many as leave the leaf room; it gives the moves there is none for.
func (b *bench) drawLeaf(x0, y0, x1, y1 float64) (left []int) {
	const narrowest = 21 * MM
	l := &b.plan.before.Door.Leaf
	most, aside, beyond := 0.0, 0.0, 3*MM // beyond: of a figure past its edge's end
	for i := range b.plan.cuts {
		c := &b.plan.cuts[i]
		for _, k := range c.marks {
			if !c.frame {
				most = max(most, k.amount)
			}
			if c.edge.Upright() {
				aside = max(aside, draw.TextWidth("−"+b.a.amount(c, &k), tickStyle.size, true)+4*MM)
			} else {
				beyond = max(beyond, draw.TextWidth("−"+b.a.amount(c, &k), tickStyle.size, true)/2)
			}
		}
	}
	c := l.Corners(0)
	u0, u1 := min(c.HangingFoot.X, c.HangingHead.X), max(c.ClosingFoot.X, c.ClosingHead.X)
	v0, v1 := min(c.HangingFoot.Y, c.ClosingFoot.Y), max(c.HangingHead.Y, c.ClosingHead.Y)
	var rooms [door.Edges]float64
	var lines [door.Edges]int
	p := plate{back: b.a.Job.Hand == game.Right}
	for each := 3; each >= 0; each-- {
		lines, rooms = [door.Edges]int{}, [door.Edges]float64{beyond, beyond, 3 * MM, 3 * MM}
		for i := range b.plan.cuts {
			e := b.plan.cuts[i].edge
			if lines[e] == each {
				continue
			}
			lines[e]++
			if rooms[e] += railApart; e.Upright() {
				rooms[e] += aside - railApart
			}
		}
		p.s = min((x1-x0-rooms[door.HingeSide]-rooms[door.LatchSide])/(u1-u0), (y1-y0-rooms[door.HeadSide]-rooms[door.FloorSide])/(v1-v0))
		if p.s*(u1-u0) >= narrowest {
			break
		}
	}
	before, after := rooms[door.HingeSide], rooms[door.LatchSide]
	if p.back {
		before, after = after, before
	}
	free := (x1 - x0 - before - after - p.s*(u1-u0)) / 2
	p.x, p.y = x0+before+free-p.s*u0, y0+rooms[door.HeadSide]+p.s*v1
	if p.back {
		p.x = x0 + before + free + p.s*u1
	}
	b.members(&p, &b.plan.before)
	list := b.l()
	for _, c := range b.plan.cuts {
		if !c.frame && !c.on && most > 0 {
			b.drawWedge(&p, &c, wedge/most)
		}
	}
	outline(list, draw.Line, 2*thick,
		p.at(c.HangingFoot.X, c.HangingFoot.Y), p.at(c.HangingHead.X, c.HangingHead.Y), p.at(c.ClosingHead.X, c.ClosingHead.Y), p.at(c.ClosingFoot.X, c.ClosingFoot.Y))
	b.hingeRings(&p)
	on := [door.Edges]int{}
	for i := range b.plan.cuts {
		c := &b.plan.cuts[i]
		if on[c.edge] == lines[c.edge] {
			left = append(left, c.step+1)
			continue
		}
		by := 3*MM + float64(on[c.edge])*railApart
		if c.edge.Upright() {
			by = 3*MM + float64(on[c.edge])*aside
		}
		b.drawMarks(&p, c, by)
		on[c.edge]++
	}
	return left
}

// spot gives the place of a mark on an edge of the leaf as it stands.
func (b *bench) spot(p *plate, e door.Edge, place float64) draw.Pt {
	line, _ := b.plan.before.Door.Leaf.Line(e)
	if e.Upright() {
		return p.at(line.At(place), place)
	}
	return p.at(place, line.At(place))
}

// drawWedge hatches what a cut takes off, enlarged.
func (b *bench) drawWedge(p *plate, c *cut, k float64) {
	way := p.out(c.edge)
	var outer, inner []draw.Pt
	for i, m := range c.marks {
		q := b.spot(p, c.edge, m.place)
		outer = append(outer, q)
		inner = append(inner, off(q, way, -k*m.amount))
		if i == 0 {
			continue
		}
		a, d := outer[i-1], inner[i-1]
		long := math.Hypot(q.X-a.X, q.Y-a.Y)
		n := int(long / (1.4 * MM))
		for h := 1; h < n; h++ {
			t := float64(h) / float64(n)
			line(b.l(), draw.Line, hair*0.7, between(a, q, t), between(d, inner[i], t))
		}
	}
	line(b.l(), draw.Line, thick, inner...)
}

func between(a, b draw.Pt, t float64) draw.Pt {
	return draw.Pt{X: a.X + (b.X-a.X)*t, Y: a.Y + (b.Y-a.Y)*t}
}

// drawMarks draws a cut's line of marks so far outside its edge.
func (b *bench) drawMarks(p *plate, c *cut, by float64) {
	list, way := b.l(), p.out(c.edge)
	first, last := c.marks[0], c.marks[len(c.marks)-1]
	rail := func(place float64) draw.Pt {
		q := b.spot(p, c.edge, place)
		o := b.spot(p, c.edge, (first.place+last.place)/2)
		if c.edge.Upright() {
			q.X = o.X
		} else {
			q.Y = o.Y
		}
		return off(q, way, by)
	}
	line(list, draw.Line, hair, rail(first.place), rail(last.place))
	sign := "−"
	if c.on {
		sign = "+"
	}
	free := -1e9 // up to where figures stand
	for i, k := range c.marks {
		q := rail(k.place)
		line(list, draw.Line, thick, off(q, way, -1*MM), off(q, way, 1*MM))
		text := b.a.amount(c, &k)
		if text != "0" && text != `0"` && !c.stop {
			text = sign + text
		}
		wide := draw.TextWidth(text, tickStyle.size, true)
		end := i == len(c.marks)-1
		if c.edge.Upright() {
			y := -q.Y
			if !end && y < free || end && y < free && i > 0 {
				continue
			}
			free = y + lead*tickStyle.size
			anchor := draw.Start
			if way.X < 0 {
				anchor = draw.End
			}
			write(list, text, tickStyle, anchor, q.X+way.X*1.8*MM, q.Y+0.35*tickStyle.size)
			continue
		}
		at := q.X
		if p.back {
			at = -at
		}
		if at-wide/2 < free {
			continue
		}
		free = at + wide/2 + 1*MM
		base := q.Y - 1.8*MM
		if way.Y > 0 {
			base = q.Y + 1.8*MM + rise*tickStyle.size
		}
		write(list, text, tickStyle, draw.Middle, q.X, base)
	}
	// the move's number, in a ring on the line where it has most room
	var q draw.Pt
	widest := -1.0
	for i := 1; i < len(c.marks); i++ {
		a, d := rail(c.marks[i-1].place), rail(c.marks[i].place)
		if w := math.Hypot(d.X-a.X, d.Y-a.Y); w > widest+1e-6 {
			widest, q = w, between(a, d, 0.5)
		}
	}
	b.ring(q, number(c.step+1))
	what := ""
	switch {
	case c.stop:
		what = "stop"
	case c.frame:
		what = "frame"
	}
	if c.edge.Upright() {
		anchor := draw.Start
		if way.X < 0 {
			anchor = draw.End
		}
		write(list, what, smallStyle, anchor, q.X+way.X*(badge+1*MM), q.Y+0.36*smallStyle.size)
	} else {
		write(list, what, smallStyle, draw.Start, q.X+badge+1*MM, q.Y-1*MM)
	}
}

// hingeRings writes at every hinge the numbers of the moves that change it.
func (b *bench) hingeRings(p *plate) {
	d := &b.plan.before.Door
	for i := range d.Hinges {
		q := off(p.at(d.Leaf.Hanging.At(d.Hinges[i].LeafHeight), d.Hinges[i].LeafHeight), p.out(door.LatchSide), 17*MM)
		for k := range b.plan.steps {
			spec := trim.SpecOf(b.plan.steps[k].Move.Kind)
			if spec == nil || spec.Trade != trim.TheHinges || !changes(b.seatsAt(k), i) {
				continue
			}
			b.ring(q, number(k+1))
			q = off(q, p.out(door.LatchSide), 2*badge+1*MM)
		}
	}
}

func changes(seats []seat, hinge int) bool {
	for _, k := range seats {
		if k.hinge == hinge {
			return true
		}
	}
	return false
}

// ring writes a move's number in a ring.
func (b *bench) ring(at draw.Pt, text string) {
	var round []draw.Pt
	for i := range 24 {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / 24)
		round = append(round, draw.Pt{X: at.X + badge*cos, Y: at.Y + badge*sin})
	}
	area(b.l(), draw.Paper, round...)
	outline(b.l(), draw.Line, thick, round...)
	write(b.l(), text, tickStyle, draw.Middle, at.X, at.Y+0.36*tickStyle.size)
}

// members draws the leaf's stiles, rails, hinges and lock as they stand.
func (b *bench) members(p *plate, t *game.Tried) {
	list, l, a := b.l(), &t.Door.Leaf, &t.Anatomy
	c := l.Corners(0)
	seam := func(u0, v0, u1, v1 float64) { line(list, draw.Fine, hair, p.at(u0, v0), p.at(u1, v1)) }
	if a.Make == door.Framed {
		in, out := a.Inner(l)
		seam(in, max(c.HangingFoot.Y, 0), in, c.HangingHead.Y)
		seam(out, max(c.ClosingFoot.Y, 0), out, c.ClosingHead.Y)
		for i, r := range a.Rails {
			if i > 0 {
				seam(in, r.From, out, r.From)
			}
			if i < len(a.Rails)-1 {
				seam(in, r.To, out, r.To)
			}
			if i == 0 {
				seam(in, r.To, out, r.To)
			}
			if i == len(a.Rails)-1 {
				seam(in, r.From, out, r.From)
			}
		}
		for _, m := range a.Muntins {
			seam(m.At-m.Width/2, m.From, m.At-m.Width/2, m.To)
			seam(m.At+m.Width/2, m.From, m.At+m.Width/2, m.To)
		}
	}
	if b.plan.repairs != nil {
		for i := range b.plan.repairs.Places { // crossed boxes
			v := &b.plan.repairs.Places[i].Is
			box := []draw.Pt{p.at(v.Across.Lo, v.Up.Lo), p.at(v.Across.Hi, v.Up.Lo), p.at(v.Across.Hi, v.Up.Hi), p.at(v.Across.Lo, v.Up.Hi)}
			outline(list, draw.Line, hair, box...)
			line(list, draw.Line, hair, box[0], box[2])
			line(list, draw.Line, hair, box[1], box[3])
		}
	}
	for i := range t.Door.Hinges {
		h := &t.Door.Hinges[i]
		u := l.Hanging.At(h.LeafHeight)
		deep := 1.6 * MM / p.s
		area(list, draw.Iron, p.at(u, h.LeafHeight-h.Height/2), p.at(u, h.LeafHeight+h.Height/2), p.at(u+deep, h.LeafHeight+h.Height/2), p.at(u+deep, h.LeafHeight-h.Height/2))
		anchor := draw.Start
		if p.back {
			anchor = draw.End
		}
		q := off(p.at(u+deep, h.LeafHeight), p.out(door.LatchSide), 1*MM)
		write(list, "hinge "+number(i+1), smallStyle, anchor, q.X, q.Y+0.36*smallStyle.size)
	}
	if k := &a.Lock; k.Kind != door.NoLock {
		u := l.Closing.At(k.Height)
		area(list, draw.Iron, p.at(u, k.Height-k.Case/2), p.at(u, k.Height+k.Case/2), p.at(u-1.6*MM/p.s, k.Height+k.Case/2), p.at(u-1.6*MM/p.s, k.Height-k.Case/2))
	}
}
