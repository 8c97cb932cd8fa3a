package draw

import "math"

// pen lays marks on a list. When mirrored it turns everything about the upright
// line x = axis; when it looks through a lens it keeps to what lies inside.
type pen struct {
	l      *List
	mirror bool
	axis   float64
	lens   lens
	cross  []float64 // scratch: where a hatch line meets the outline
	line   []Pt      // scratch: a polyline being cut
	clip   [2][]Pt   // scratch: a polygon being clipped
	kept   []Pt      // scratch: a polygon still to be outlined
}

// lens is a round window; radius 0 shows everything.
type lens struct {
	at     Pt
	radius float64
}

// start marks where the next mark's points begin.
func (p *pen) start() int { return len(p.l.Points) }

// to adds a point of the unmirrored sheet.
func (p *pen) to(q Pt) {
	if p.mirror {
		q.X = 2*p.axis - q.X
	}
	p.l.Points = append(p.l.Points, q)
}

func (p *pen) xy(x, y float64) { p.to(Pt{x, y}) }

// box adds the corners of an upright rectangle.
func (p *pen) box(x0, y0, x1, y1 float64) {
	p.xy(x0, y0)
	p.xy(x1, y0)
	p.xy(x1, y1)
	p.xy(x0, y1)
}

// bothWays draws the sign on a handle that is moved along a direction of length 1: an arrow
// head either way from its middle, from base to tip, half its breadth to a side, px.
func (p *pen) bothWays(c, along Pt, base, tip, half float64) {
	for _, way := range [2]float64{1, -1} {
		x, y := along.X*way, along.Y*way
		from := p.start()
		p.xy(c.X+x*tip, c.Y+y*tip)
		p.xy(c.X+x*base-y*half, c.Y+y*base+x*half)
		p.xy(c.X+x*base+y*half, c.Y+y*base-x*half)
		p.fill(from, HandleSign)
	}
}

// arc adds the points of an arc about c from angle a to b, radians, clockwise on
// the sheet from the x axis, in steps short enough to look round.
func (p *pen) arc(c Pt, r, a, b float64) {
	n := int(math.Ceil(math.Abs(b-a) * math.Sqrt(max(r, 1)) * 1.3))
	n = min(max(n, 2), 96)
	for i := range n + 1 {
		sin, cos := math.Sincos(a + (b-a)*float64(i)/float64(n))
		p.xy(c.X+r*cos, c.Y+r*sin)
	}
}

// sound tells whether the points from there on can be drawn; if not, it takes
// them back.
func (p *pen) sound(from, least int) bool {
	good := len(p.l.Points)-from >= least
	for _, q := range p.l.Points[from:] {
		good = good && q.X-q.X == 0 && q.Y-q.Y == 0
	}
	if !good {
		p.l.Points = p.l.Points[:from]
	}
	return good
}

// fill lays the polygon of the points added since from.
func (p *pen) fill(from int, ink Ink) {
	if !p.sound(from, 3) {
		return
	}
	if p.lens.radius > 0 {
		inside := p.window(p.l.Points[from:])
		p.l.Points = append(p.l.Points[:from], inside...)
		if len(inside) < 3 {
			p.l.Points = p.l.Points[:from]
			return
		}
	}
	p.put(Mark{Kind: Fill, Ink: ink, From: from, To: len(p.l.Points)})
}

// stroke lays the polyline of the points added since from.
func (p *pen) stroke(from int, ink Ink, width float64) { p.draw(from, ink, width, false) }

// outline lays the closed polyline of the points added since from.
func (p *pen) outline(from int, ink Ink, width float64) { p.draw(from, ink, width, true) }

// face fills the polygon of the points added since from, hatches it, and
// outlines it unless the width is 0.
func (p *pen) face(from int, inside, edge Ink, width float64, hatches ...hatching) {
	if !p.sound(from, 3) {
		return
	}
	p.kept = append(p.kept[:0], p.l.Points[from:]...)
	p.fill(from, inside)
	for _, h := range hatches {
		p.hatch(p.kept, h)
	}
	if width == 0 {
		return
	}
	if p.lens.radius == 0 {
		p.put(Mark{Kind: Stroke, Ink: edge, Width: width, Closed: true, From: from, To: from + len(p.kept)})
		return
	}
	from = p.start()
	p.l.Points = append(p.l.Points, p.kept...)
	p.outline(from, edge, width)
}

func (p *pen) draw(from int, ink Ink, width float64, closed bool) {
	if !p.sound(from, 2) {
		return
	}
	m := Mark{Kind: Stroke, Ink: ink, Width: width, Closed: closed, From: from, To: len(p.l.Points)}
	if p.lens.radius == 0 {
		p.put(m)
		return
	}
	p.line = append(p.line[:0], p.l.Points[from:]...)
	if closed {
		p.line = append(p.line, p.line[0])
	}
	p.l.Points = p.l.Points[:from]
	for i := 1; i < len(p.line); i++ {
		p.segment(p.line[i-1], p.line[i], ink, width)
	}
}

// segment lays one straight stroke between two points of the finished sheet.
func (p *pen) segment(a, b Pt, ink Ink, width float64) {
	if p.lens.radius > 0 {
		var seen bool
		if a, b, seen = p.lens.cut(a, b); !seen {
			return
		}
	}
	from := p.start()
	p.l.Points = append(p.l.Points, a, b)
	p.put(Mark{Kind: Stroke, Ink: ink, Width: width, From: from, To: from + 2})
}

// rule lays one straight stroke.
func (p *pen) rule(a, b Pt, ink Ink, width float64) {
	from := p.start()
	p.to(a)
	p.to(b)
	p.stroke(from, ink, width)
}

func (p *pen) put(m Mark) { p.l.Marks = append(p.l.Marks, m) }

// dash cuts the polyline of the points added since from into dashes.
func (p *pen) dash(from int, ink Ink, width, on, off float64) {
	if !p.sound(from, 2) {
		return
	}
	p.line = append(p.line[:0], p.l.Points[from:]...)
	p.l.Points = p.l.Points[:from]
	left, drawn := on, true
	for i := 1; i < len(p.line); i++ {
		a, b := p.line[i-1], p.line[i]
		length := distance(a, b)
		if length > 1e5 {
			continue // longer than any sheet
		}
		for at := 0.0; at < length; {
			step := min(left, length-at)
			if drawn {
				p.segment(between(a, b, at/length), between(a, b, (at+step)/length), ink, width)
			}
			at += step
			if left -= step; left <= 1e-9 {
				drawn = !drawn
				left = off
				if drawn {
					left = on
				}
			}
		}
	}
}

// disc fills a circle; ring strokes one.
func (p *pen) disc(c Pt, r float64, ink Ink) {
	from := p.start()
	p.round(c, r)
	p.fill(from, ink)
}

func (p *pen) ring(c Pt, r float64, ink Ink, width float64) {
	from := p.start()
	p.round(c, r)
	p.outline(from, ink, width)
}

// round adds the points of a circle, the first not repeated.
func (p *pen) round(c Pt, r float64) {
	p.arc(c, r, 0, 2*math.Pi)
	p.l.Points = p.l.Points[:len(p.l.Points)-1]
}

// text lays one line of writing; mirroring moves it but leaves it readable.
func (p *pen) text(at Pt, anchor Anchor, ink Ink, size float64, bold bool, s string) {
	if s == "" {
		return
	}
	from := p.start()
	p.to(at)
	if !p.sound(from, 1) {
		return
	}
	if p.mirror {
		anchor = End - anchor
	}
	p.put(Mark{Kind: Text, Ink: ink, Anchor: anchor, Size: size, Bold: bold, From: from, To: from + 1, Text: s})
}

func between(a, b Pt, t float64) Pt { return Pt{a.X + (b.X-a.X)*t, a.Y + (b.Y-a.Y)*t} }

func distance(a, b Pt) float64 {
	dx, dy := b.X-a.X, b.Y-a.Y
	return math.Sqrt(dx*dx + dy*dy)
}
