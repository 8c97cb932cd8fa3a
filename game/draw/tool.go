package draw

// Sizes of tools, px.
const (
	tapeHalf   = 2.6
	bodyHalf   = 3.4 // of level, straightedge and stick
	stickOver  = 5.0 // a winding stick stands over both sides by this
	arrowLong  = 7.0
	arrowHalf  = 4.2
	tickApart  = 7.0
	placeRound = 4.6
)

// tool lays a tool down between two points of the unmirrored sheet.
func (p *pen) tool(t Tool, a, b Pt) {
	long := distance(a, b)
	if t == Place || !(long > 1) {
		p.disc(a, placeRound, ToolFill)
		p.ring(a, placeRound, Line, medium*1.3)
		p.disc(a, 1.3, Line)
		return
	}
	along := Pt{(b.X - a.X) / long, (b.Y - a.Y) / long}
	off := func(q Pt, on, out float64) Pt {
		return Pt{q.X + on*along.X - out*along.Y, q.Y + on*along.Y + out*along.X}
	}
	bar := func(a, b Pt, half float64, ink Ink) {
		from := p.start()
		p.to(off(a, 0, -half))
		p.to(off(b, 0, -half))
		p.to(off(b, 0, half))
		p.to(off(a, 0, half))
		p.face(from, ink, Line, thin*1.2)
	}
	switch t {
	case Tape:
		bar(a, b, tapeHalf, ToolFill)
		for at := arrowLong + tickApart/2; at < long-arrowLong; at += tickApart {
			p.rule(off(a, at, -tapeHalf), off(a, at, 0), Line, thin)
		}
		p.arrow(b, a)
		p.arrow(a, b)
	case Level:
		bar(a, b, bodyHalf+0.4, Datum)
		mid, vial := between(a, b, 0.5), min(9, long/4)
		bar(off(mid, -vial, 0), off(mid, vial, 0), bodyHalf-0.8, HandleSign)
		p.disc(mid, bodyHalf-1.2, Line)
	case Straightedge:
		bar(a, b, bodyHalf-0.6, Metal)
	case Blade:
		bar(off(a, -bodyHalf, 0), b, bodyHalf-0.4, Metal)
	case Stick:
		bar(off(a, -stickOver, 0), off(b, stickOver, 0), bodyHalf, Brass)
	case Cord:
		p.rule(a, b, Line, medium*1.2)
		p.disc(a, 2.4, Line)
		p.disc(b, 2.4, Line)
	}
}

// arrow puts an arrow's head at b, pointing away from a.
func (p *pen) arrow(a, b Pt) {
	long := distance(a, b)
	if !(long > 0) {
		return
	}
	x, y := (b.X-a.X)/long, (b.Y-a.Y)/long
	from := p.start()
	p.to(b)
	p.xy(b.X-arrowLong*x+arrowHalf*y, b.Y-arrowLong*y-arrowHalf*x)
	p.xy(b.X-arrowLong*x-arrowHalf*y, b.Y-arrowLong*y+arrowHalf*x)
	p.fill(from, Line)
}

// span shows what is read off between two points: between arrows, or where they
// stand too near together, with the arrows outside.
func (p *pen) span(a, b Pt) {
	long := distance(a, b)
	if !(long > 0) {
		return
	}
	const band, tail = 7.0, 8.0
	from := p.start()
	p.to(a)
	p.to(b)
	p.stroke(from, ToolFill, band)
	if long > 2.6*arrowLong {
		p.rule(a, b, Line, heavy)
		p.arrow(b, a)
		p.arrow(a, b)
		return
	}
	x, y := (b.X-a.X)/long, (b.Y-a.Y)/long
	out := arrowLong + tail
	c, d := Pt{a.X - out*x, a.Y - out*y}, Pt{b.X + out*x, b.Y + out*y}
	p.rule(c, Pt{a.X - 2*x, a.Y - 2*y}, Line, heavy)
	p.rule(d, Pt{b.X + 2*x, b.Y + 2*y}, Line, heavy)
	p.arrow(c, a)
	p.arrow(d, b)
}
