package draw

import (
	"cmp"
	"math"

	"leafwright/geom"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
)

// label is one figure of the front picture: a gap, where it is, how it stands to
// what is wanted, and how much it matters that it is shown.
type label struct {
	edge    fit.Edge
	place   float64
	verdict judge.Verdict
	text    string
	width   float64 // with its sign
	rank    int     // the least first
	at      Pt      // on the frame, px
	shown   bool
}

const (
	signSize  = 8.0 // of a verdict's sign, px
	signGap   = 4.0 // between it and the figure
	inFromEnd = 40  // the end stations lie this far in, mm
	apart     = 8.0 // least room between two figures of a row, px
)

// Ranks of the stations; extremes come before them, by verdict.
const (
	atEnds = 20 + iota
	atThirds
	atMiddle
)

// gatherFigures lists the gaps that could be written: near the ends, at the
// thirds or in the middle, and wherever the gap is least or, if slack, widest.
func (s *Scene) gatherFigures() {
	s.labels = s.labels[:0]
	for e := range fit.Edges {
		g := &s.f.Gaps[e]
		r := g.Range()
		if r.IsEmpty() {
			continue
		}
		in := min(inFromEnd, r.Length()/8)
		third := (r.Length() - 2*in) / 3
		stations := [4]float64{r.Lo + in, r.Hi - in, r.Lo + in + third, r.Hi - in - third}
		for i, at := range stations {
			if !s.v.Small || i < 2 {
				s.addFigure(e, at, atEnds+i/2)
			}
		}
		if !s.v.Small {
			s.addFigure(e, r.Mid(), atMiddle)
		}
		s.addExtreme(e, g.Least, g.LeastAt, stations)
		if s.w.Gaps[e].Judge(g.Most) == judge.Slack {
			s.addExtreme(e, g.Most, g.MostAt, stations)
		}
	}
	geom.Order(s.labels, func(a, b label) int { return cmp.Compare(a.rank, b.rank) })
}

// addExtreme lists a gap's least or greatest value before all stations, the worst
// verdict first, unless a station's figure would read and be judged the same.
func (s *Scene) addExtreme(e fit.Edge, value, at float64, stations [4]float64) {
	const same = 0.05 // mm
	v := s.w.Gaps[e].Judge(value)
	for _, p := range stations {
		if g := s.f.Gaps[e].Curve.At(p); math.Abs(g-value) < same && s.w.Gaps[e].Judge(g) == v {
			return
		}
	}
	s.addFigure(e, at, int(v))
}

func (s *Scene) addFigure(e fit.Edge, place float64, rank int) {
	v := s.f.Gaps[e].Curve.At(place)
	l := label{edge: e, place: place, rank: rank, verdict: s.w.Gaps[e].Judge(v), text: s.held(v, s.w.Gaps[e]).keep()}
	l.width = TextWidth(l.text, s.v.figureSize(), l.verdict != judge.Good)
	if l.verdict != judge.Good {
		l.width += signSize + signGap
	}
	s.labels = append(s.labels, l)
}

// columnWidth is the room the figures beside the frame need.
func (s *Scene) columnWidth() float64 {
	w := 0.0
	for _, l := range s.labels {
		if l.edge.Upright() {
			w = max(w, l.width)
		}
	}
	if s.v.Held != NoTool { // the picture will keep still while they grow
		const wide = -19.9
		w = max(w, TextWidth(s.gap(wide).keep(), s.v.figureSize(), true)+signSize+signGap)
	}
	return w
}

// drawFigures writes the figures that find room, the most telling first, outside
// the frame on leader lines.
func (s *Scene) drawFigures() {
	var thirds [fit.Edges]int // shown
	for i := range s.labels {
		l := &s.labels[i]
		l.at = s.onFront(l.edge, s.frameAt(l.edge, l.place))
		l.shown = s.clearOfOthers(l, s.labels[:i])
		switch {
		case l.rank == atThirds && l.shown:
			thirds[l.edge]++
		case l.rank == atMiddle && thirds[l.edge] == 1:
			s.dropThirds(l.edge) // one alone would stand lopsided
			l.shown = s.clearOfOthers(l, s.labels[:i])
		case l.rank == atMiddle && thirds[l.edge] > 0:
			l.shown = false
		}
	}
	for i := range s.labels {
		if l := &s.labels[i]; l.shown {
			s.drawFigure(l)
		}
	}
}

func (s *Scene) dropThirds(e fit.Edge) {
	for i := range s.labels {
		if l := &s.labels[i]; l.edge == e && l.rank == atThirds {
			l.shown = false
		}
	}
}

// clearOfOthers tells whether a figure keeps off those already placed.
func (s *Scene) clearOfOthers(l *label, placed []label) bool {
	size := s.v.figureSize()
	for i := range placed {
		o := &placed[i]
		if !o.shown || o.edge != l.edge {
			continue
		}
		if l.edge.Upright() {
			if math.Abs(l.at.Y-o.at.Y) < 2.2*size {
				return false
			}
		} else if math.Abs(l.at.X-o.at.X) < (l.width+o.width)/2+apart {
			return false
		}
	}
	return true
}

func (s *Scene) drawFigure(l *label) {
	p, size, o := &s.pen, s.v.figureSize(), s.outer
	ink, bold := verdictText(l.verdict), l.verdict != judge.Good
	sign := 0.0
	if bold {
		sign = signSize + signGap
	}
	drop := 0.36 * size // from a line's middle to the baseline
	switch l.edge {
	case fit.HingeSide:
		x := o.x0 - leaderGap
		p.rule(Pt{x, l.at.Y}, l.at, Fine, thin)
		x -= leaderGap / 2
		p.sign(l.verdict, Pt{x - signSize/2, l.at.Y})
		p.text(Pt{x - sign, l.at.Y + drop}, End, ink, size, bold, l.text)
	case fit.LatchSide:
		x := o.x1 + leaderGap
		p.rule(l.at, Pt{x, l.at.Y}, Fine, thin)
		x += leaderGap / 2
		p.sign(l.verdict, Pt{x + signSize/2, l.at.Y})
		p.text(Pt{x + sign, l.at.Y + drop}, Start, ink, size, bold, l.text)
	case fit.HeadSide:
		y := o.y0 - leaderGap
		p.rule(Pt{l.at.X, y}, l.at, Fine, thin)
		s.rowFigure(l, Pt{l.at.X, y - leaderGap/2}, ink, size, sign)
	default:
		y := o.y1 + leaderGap
		p.rule(l.at, Pt{l.at.X, y}, Fine, thin)
		s.rowFigure(l, Pt{l.at.X, y + leaderGap/2 + ascent*size}, ink, size, sign)
	}
}

// rowFigure writes a figure and its sign centred on a baseline.
func (s *Scene) rowFigure(l *label, base Pt, ink Ink, size, sign float64) {
	if sign == 0 {
		s.pen.text(base, Middle, ink, size, false, l.text)
		return
	}
	s.signed(l.verdict, base, ink, size, l.text)
}

// signed writes a bold text centred on a baseline, its verdict's sign before it.
// The text starts at the sign, so that no face can run into it.
func (s *Scene) signed(v judge.Verdict, base Pt, ink Ink, size float64, text string) {
	const sign = signSize + signGap
	left := base.X - (TextWidth(text, size, true)/usual+sign)/2
	s.pen.sign(v, Pt{left + signSize/2, base.Y - 0.36*size})
	s.pen.text(Pt{left + sign, base.Y}, Start, ink, size, true, text)
}

func verdictText(v judge.Verdict) Ink {
	switch v {
	case judge.Binds:
		return TextBind
	case judge.Tight:
		return TextTight
	case judge.Slack:
		return TextSlack
	}
	return TextInk
}

// sign draws a verdict's own sign about a point: a full triangle where it binds,
// a half-filled square where tight, an open ring where slack, none where good.
func (p *pen) sign(v judge.Verdict, c Pt) {
	const r = signSize / 2
	from := p.start()
	switch v {
	case judge.Binds:
		p.xy(c.X, c.Y-r)
		p.xy(c.X+r, c.Y+0.8*r)
		p.xy(c.X-r, c.Y+0.8*r)
		p.fill(from, TextBind)
	case judge.Tight:
		p.xy(c.X+r, c.Y-0.9*r)
		p.xy(c.X+r, c.Y+0.8*r)
		p.xy(c.X-r, c.Y+0.8*r)
		p.fill(from, TextTight)
	case judge.Slack:
		p.ring(c, 0.8*r, TextSlack, 1.6)
	}
}
