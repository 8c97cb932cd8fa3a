package sheet

import (
	"math"

	"leafwright/game"
	"leafwright/game/draw"
	"leafwright/game/words"
)

// A template is a line or marks at full size, laid out along the page's height in strips
// side by side, which are cut out and taped to one another. Its own lengths are mm: along,
// which runs up the page, and across, to the right.
type template struct {
	title  string
	how    string // what it is laid on and how
	lo, hi float64
	left   float64 // of it is nothing further left than this, nor right of right
	right  float64
	lines  []stroke
	texts  []label
}

// stroke is a polyline of a template, rising or falling along it.
type stroke struct {
	ink    draw.Ink
	width  float64 // px
	dashed bool
	at     []spot
}

// spot is a point of a template, mm.
type spot struct{ along, across float64 }

// label is a line of writing on a template, its middle at the height it stands for.
type label struct {
	at     spot
	anchor draw.Anchor
	text   string
	bold   bool
}

const (
	headRoom   = 24 * MM // over the strips
	overlap    = 6.0     // mm of a strip beyond its joint
	stripApart = 5.0     // mm between strips
	stripHem   = 4.0     // mm beside what is drawn
	asideRoom  = 12.0    // mm at the right for the upright check line
)

var labelStyle = style{9 * pt, false, draw.TextInk}

// templatePages lays out full-size templates of one option.
func templatePages(a *Ask) ([]Page, error) {
	option := a.Options[0]
	job, name := a.Job.Name, a.Job.OptionName(option)
	if job == "" {
		job = "A door without a name"
	}
	p := planOf(a, option)
	s := a.bench(&p.before.Door, p.before.Anatomy.Rails)
	f := newFlow(a, job+" · "+name+" · full size")
	all := p.templates(a, s)
	if len(all) == 0 {
		f.title("Templates: " + name)
		f.para("No line of this option bends or tapers and no marks of it stand close together: the marking-out sheet is enough.", bodyStyle)
	}
	for i := 0; i < len(all); {
		if i > 0 {
			f.newPage()
		}
		if n := f.small(all[i:]); n > 0 {
			i += n
			continue
		}
		f.template(&all[i])
		i++
	}
	return f.finish(job+", "+name+", templates", "Templates at full size, in strips to be taped together."), nil
}

// templates gives those of the plan, in the order of the work.
func (p *plan) templates(a *Ask, s *words.Speaker) (all []template) {
	for i := range p.steps {
		if !done(&p.steps[i]) {
			continue
		}
		is := p.after
		if i+1 < len(p.stood) {
			is = p.stood[i+1]
		}
		of := "Move " + number(i+1) + ": "
		for k := range p.cuts {
			if c := &p.cuts[k]; c.step == i && !c.on && !even(c) {
				all = append(all, cutTemplate(a, s, c, &p.stood[i], &is, of))
			}
		}
		all = append(all, hingeTemplates(a, s, &p.stood[i], &is, p.steps[i].Done.Gains, of)...)
		if p.work != nil {
			for k := range p.work.Strips {
				if q := &p.work.Strips[k]; q.Step == i {
					all = append(all, dowelTemplate(a, s, q.Dowels, &p.stood[i], of))
				}
			}
		}
	}
	return all
}

// even tells whether a cut takes the same all along.
func even(c *cut) bool {
	for _, k := range c.marks {
		if toStep(k.amount, c.round) != toStep(c.marks[0].amount, c.round) {
			return false
		}
	}
	return true
}

// template lays one template down, as many strips on a page as fit.
func (f *flow) template(t *template) {
	room := (f.foot-f.top-headRoom)/MM - 2*overlap // along, of a strip
	wide := t.right - t.left + 2*stripHem
	n := max(1, int(math.Ceil((t.hi-t.lo)/room-1e-9)))
	long := min(room, 10*math.Ceil((t.hi-t.lo)/float64(n)/10)) // joints at round places
	beside := max(1, int((f.width()/MM-asideRoom+stripApart)/(wide+stripApart)))
	for k := range n {
		if k > 0 && k%beside == 0 {
			f.newPage()
		}
		if k%beside == 0 {
			f.templateHead(t, k, min(n, k+beside), n)
		}
		x := f.left + float64(k%beside)*(wide+stripApart)*MM + (stripHem-t.left)*MM
		f.strip(t, x, f.foot-overlap*MM, k, n, t.lo+float64(k)*long, min(t.hi, t.lo+float64(k+1)*long))
	}
}

// small lays down as many of the first templates, each a strip by itself, as a row of a page
// takes, and gives how many; none where the first is too long.
func (f *flow) small(all []template) (n int) {
	const across, most = 3, 150.0
	room := (f.width() - asideRoom*MM) / across
	var text float64
	for ; n < min(len(all), across); n++ {
		t := &all[n]
		if t.hi-t.lo > most || (t.right-t.left+2*stripHem+stripApart)*MM > room {
			break
		}
		text = max(text, height(t.title, boldStyle, room-stripApart*MM)+height(t.how, smallStyle, room-stripApart*MM))
	}
	if n > 0 {
		f.uprightCheck()
	}
	for i := range n {
		t := &all[i]
		x := f.left + float64(i)*room
		y := set(f.l(), t.title, boldStyle, x, f.top, room-stripApart*MM)
		set(f.l(), t.how, smallStyle, x, y, room-stripApart*MM)
		f.strip(t, x+(stripHem-t.left)*MM, f.top+text+8*MM+(t.hi-t.lo)*MM, 0, 1, t.lo, t.hi)
	}
	return n
}

func (f *flow) templateHead(t *template, from, to, n int) {
	f.y = f.top
	f.para(t.title, headStyle)
	how := t.how
	if n > 1 {
		how += " Strips " + number(from+1) + " to " + number(to) + " of " + number(n) + ": cut them out, lay like letters over each other and tape."
	}
	set(f.l(), how, smallStyle, f.left, f.y, f.width())
	f.uprightCheck()
}

// uprightCheck draws a second check line up the page's right edge: a printer may stretch one
// way and not the other.
func (f *flow) uprightCheck() {
	long, said := checkLength(f.a.Unit)
	const tick = 1.6 * MM
	x, y := f.right-tick, f.foot-overlap*MM
	line(f.l(), draw.Line, hair, draw.Pt{X: x, Y: y}, draw.Pt{X: x, Y: y - long*MM})
	for _, at := range [2]float64{y, y - long*MM} {
		line(f.l(), draw.Line, hair, draw.Pt{X: x - tick, Y: at}, draw.Pt{X: x + tick, Y: at})
	}
	write(f.l(), said, smallStyle, draw.End, f.right, y-long*MM-1.5*MM)
}

// strip draws a template between two places along it, its across 0 at x and the lower place
// at base.
func (f *flow) strip(t *template, x, base float64, k, n int, lo, hi float64) {
	l := f.l()
	at := func(p spot) draw.Pt { return draw.Pt{X: x + p.across*MM, Y: base - (p.along-lo)*MM} }
	from, to := lo, hi
	if k > 0 {
		from -= overlap
	}
	if k < n-1 {
		to += overlap
	}
	left, right := t.left-stripHem, t.right+stripHem
	outline(l, draw.Fine, hair, at(spot{from, left}), at(spot{from, right}), at(spot{to, right}), at(spot{to, left}))
	for i, joint := range [2]float64{lo, hi} {
		if i == 0 && k == 0 || i == 1 && k == n-1 {
			continue
		}
		letter := string(rune('A' + (k+i-1)%26))
		f.dash(at, stroke{ink: draw.Line, width: hair, at: []spot{{joint, left}, {joint, right}}})
		for _, across := range [2]float64{left + 2.5, right - 2.5} {
			f.match(at(spot{joint, across}))
		}
		write(l, letter, style{11 * pt, true, draw.TextInk}, draw.Start, at(spot{0, left + 5.5}).X, at(spot{joint + 1, 0}).Y)
	}
	for _, s := range t.lines {
		kept := within(s.at, from, to)
		if len(kept) < 2 {
			continue
		}
		if s.dashed {
			f.dash(at, stroke{s.ink, s.width, true, kept})
			continue
		}
		pts := make([]draw.Pt, len(kept))
		for i, q := range kept {
			pts[i] = at(q)
		}
		line(l, s.ink, s.width, pts...)
	}
	for _, q := range t.texts {
		if k > 0 && q.at.along < lo+3 || k < n-1 && q.at.along > hi-3 || q.at.along < lo || q.at.along > hi {
			continue // of a neighbour, or in a joint's way: the line at it is there
		}
		st := labelStyle
		st.bold = q.bold
		p := at(q.at)
		y := min(max(p.Y+0.36*st.size, at(spot{to, 0}).Y+rise*st.size+1*MM), at(spot{from, 0}).Y-1.5*MM)
		write(l, q.text, st, q.anchor, p.X, y)
	}
}

// match draws the mark that lies on its like on the next strip.
func (f *flow) match(c draw.Pt) {
	const r = 1.5 * MM
	line(f.l(), draw.Line, hair, draw.Pt{X: c.X - r, Y: c.Y - r}, draw.Pt{X: c.X + r, Y: c.Y + r})
	line(f.l(), draw.Line, hair, draw.Pt{X: c.X - r, Y: c.Y + r}, draw.Pt{X: c.X + r, Y: c.Y - r})
}

// dash draws a polyline in dashes.
func (f *flow) dash(at func(spot) draw.Pt, s stroke) {
	const on, off = 2.0 * MM, 1.2 * MM
	for i := 1; i < len(s.at); i++ {
		a, b := at(s.at[i-1]), at(s.at[i])
		long := math.Hypot(b.X-a.X, b.Y-a.Y)
		for d := 0.0; d < long; d += on + off {
			line(f.l(), s.ink, s.width, between(a, b, d/long), between(a, b, min(1, (d+on)/long)))
		}
	}
}

// within gives the part of a polyline between two places along the template; one that
// stands still along it is kept whole or not at all.
func within(p []spot, from, to float64) (out []spot) {
	for i := 1; i < len(p); i++ {
		a, b := p[i-1], p[i]
		if a.along > b.along {
			a, b = b, a
		}
		if b.along < from || a.along > to {
			continue
		}
		cut := func(s float64) spot {
			if b.along == a.along {
				return a
			}
			return spot{s, a.across + (b.across-a.across)*(s-a.along)/(b.along-a.along)}
		}
		lo, hi := a, b
		if a.along < from {
			lo = cut(from)
		}
		if b.along > to {
			hi = cut(to)
		}
		if p[i-1].along > p[i].along {
			lo, hi = hi, lo
		}
		if len(out) == 0 || out[len(out)-1] != lo {
			out = append(out, lo)
		}
		out = append(out, hi)
	}
	return out
}

// turned gives the way that runs out of an edge on a template, +1 to the right, with the
// paper on the leaf's knuckle face and along running up the page: up an upright edge, from
// the hanging corner along the others.
func turned(j *game.Job, out float64) float64 {
	if j.Hand == game.Right {
		return -out
	}
	return out
}
