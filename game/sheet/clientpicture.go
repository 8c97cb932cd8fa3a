package sheet

import (
	"math"

	"leafwright/game"
	"leafwright/game/draw"
	"leafwright/game/measure"
	"leafwright/geom/door"
	"leafwright/geom/judge"
)

// pictures draws the doors, all to the same scale and their gaps as many times true
// size.
func (c *client) pictures(f *flow) {
	wide := min(c.wide, f.width()/2)
	least := pictureLeast
	if c.a.Unit == measure.Inch {
		least = pictureInches
	}
	k := min(1, wide/least) // smaller than that is drawn larger and made smaller
	wide /= k
	tall := min(1.9*wide, 90*MM/k)
	f.need(tall * k)
	draws := func(w *way, s *draw.Scene, l *draw.List, v draw.View) {
		v.RightHung, v.Was, v.Format = c.a.Job.Hand == game.Right, &c.a.Job.Door, w.say.Length
		s.Draw(l, w.col.Fit, &w.col.Tried.Door, &w.col.Tried.Anatomy, &w.col.Wanted, v)
	}
	v := draw.Column(wide, tall)
	var list draw.List
	for pass := range 2 { // the least factor first, then the smallest picture
		least, factor := math.Inf(1), v.Factor
		var sight draw.Sight
		for i := range c.ways {
			var s draw.Scene
			draws(&c.ways[i], &s, &list, v)
			factor = min(factor, s.Factor())
			g := s.Sight()
			lo, hi := g.Ends(door.HingeSide)
			a, b := g.On(door.HingeSide, lo), g.On(door.HingeSide, hi)
			if size := math.Abs(b.Y - a.Y); size < least {
				least, sight = size, g
			}
		}
		if v.Factor = factor; pass == 1 {
			v.Sight = &sight
		}
	}
	drawn := make([]draw.List, len(c.ways))
	top, foot := math.Inf(1), 0.0
	for i := range c.ways {
		var s draw.Scene
		draws(&c.ways[i], &s, &drawn[i], v)
		bare(&drawn[i])
		resize(&drawn[i], k)
		lo, hi := drawnFromTo(&drawn[i])
		top, foot = min(top, lo), max(foot, hi)
	}
	for i := range drawn {
		lay(f.l(), &drawn[i], c.at(f, i), f.y-top)
	}
	f.y += foot - top
}

// bare takes the sheet from under a drawing.
func bare(l *draw.List) {
	if len(l.Marks) > 0 && l.Marks[0].Kind == draw.Fill && l.Marks[0].Ink == draw.Paper {
		l.Marks = l.Marks[1:]
	}
}

// drawnFromTo gives how far up and down a drawing's marks reach.
func drawnFromTo(l *draw.List) (top, foot float64) {
	top = math.Inf(1)
	for i := range l.Marks {
		m := &l.Marks[i]
		for _, p := range l.Points[m.From:m.To] {
			top, foot = min(top, p.Y-rise*m.Size), max(foot, p.Y+(lead-rise)*m.Size)
		}
	}
	return top, foot
}

// resize makes a drawing smaller or larger, its lines and its writing too.
func resize(l *draw.List, k float64) {
	for i := range l.Points {
		l.Points[i] = draw.Pt{X: k * l.Points[i].X, Y: k * l.Points[i].Y}
	}
	for i := range l.Marks {
		l.Marks[i].Size *= k
		l.Marks[i].Width *= k
	}
	l.Width, l.Height = k*l.Width, k*l.Height
}

// legend says how to read the pictures.
func (c *client) legend(f *flow) {
	met := [judge.Good + 1]bool{}
	gone := false
	for i := range c.ways {
		for _, e := range c.ways[i].col.Edges {
			met[e.Verdict] = true
		}
		gone = gone || c.ways[i].col.Off > 0
	}
	f.space(1 * MM)
	said := "The numbers are true"
	if c.a.Unit == measure.MM {
		said = "The numbers are true millimetres"
	}
	write(f.l(), said, smallStyle, draw.Start, f.left, f.y+rise*smallStyle.size)
	c.said = append(c.said, said)
	x := f.left + draw.TextWidth(said, smallStyle.size, false) + 6*MM
	put := func(text string, sign func(l *draw.List, x, y float64)) {
		wide := draw.TextWidth(text, smallStyle.size, false) + 4*MM
		if x > f.left && x+wide > f.right {
			x, f.y = f.left, f.y+lead*smallStyle.size
		}
		y := f.y + rise*smallStyle.size
		sign(f.l(), x+1.5*MM, y-0.36*smallStyle.size)
		write(f.l(), text, smallStyle, draw.Start, x+4*MM, y)
		c.said = append(c.said, text)
		x += wide + 6*MM
	}
	const r = 1.1 * MM
	if met[judge.Binds] {
		put("too big for the frame, by the number after the minus", func(l *draw.List, x, y float64) {
			area(l, draw.TextBind, draw.Pt{X: x, Y: y - r}, draw.Pt{X: x + r, Y: y + 0.8*r}, draw.Pt{X: x - r, Y: y + 0.8*r})
		})
	}
	if met[judge.Tight] {
		put("closer than it ought to be", func(l *draw.List, x, y float64) {
			area(l, draw.TextTight, draw.Pt{X: x + r, Y: y - 0.9*r}, draw.Pt{X: x + r, Y: y + 0.8*r}, draw.Pt{X: x - r, Y: y + 0.8*r})
		})
	}
	if met[judge.Slack] {
		put("wider than it ought to be", func(l *draw.List, x, y float64) {
			ring := make([]draw.Pt, 16)
			for i := range ring {
				a := float64(i) * math.Pi / 8
				ring[i] = draw.Pt{X: x + 0.8*r*math.Cos(a), Y: y + 0.8*r*math.Sin(a)}
			}
			outline(l, draw.TextSlack, 0.45*MM, ring...)
		})
	}
	if gone {
		put("wood that comes off", func(l *draw.List, x, y float64) {
			for _, at := range [3]float64{-1.4, -0.4, 0.6} {
				line(l, draw.Shoulder, hair, draw.Pt{X: x + at*MM, Y: y}, draw.Pt{X: x + (at+0.7)*MM, Y: y})
			}
		})
	}
	f.y += lead*smallStyle.size + 1*MM
}
