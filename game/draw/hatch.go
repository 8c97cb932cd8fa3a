package draw

import (
	"leafwright/geom"
	"math"
)

// hatching is a set of parallel strokes: their distance apart, the way they run
// (radians, clockwise on the sheet from the x axis), their ink and weight.
type hatching struct {
	apart float64
	way   float64
	ink   Ink
	width float64
}

// The hatches, each verdict with its own.
var (
	wallHatch  = hatching{7, -math.Pi / 4, WallHatch, thin}
	tightHatch = hatching{4, -math.Pi / 4, TightHatch, thin}
	slackHatch = hatching{8, math.Pi / 4, SlackHatch, thin}
	bindHatch  = hatching{4.5, -math.Pi / 4, BindHatch, thin}
	bindCross  = hatching{4.5, math.Pi / 4, BindHatch, thin}
	endGrain   = hatching{5, -math.Pi / 4, Grain, thin}
	endGrain2  = hatching{5, math.Pi / 4, Grain, thin}
)

// mostStrokes is how many strokes one polygon gets; a larger one is hatched more
// openly.
const mostStrokes = 256

// hatch rules a polygon of the finished sheet with strokes that all belong to one
// grid of the sheet, so that neighbouring patches match.
func (p *pen) hatch(poly []Pt, h hatching) {
	g := p.grid(h.way)
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, q := range poly {
		c := g.across(q)
		lo, hi = min(lo, c), max(hi, c)
	}
	if !(hi-lo < 1e6) {
		return // no sheet is as large
	}
	for hi-lo > mostStrokes*h.apart {
		h.apart *= 2
	}
	for k := math.Ceil(lo / h.apart); k*h.apart <= hi; k++ {
		c := k * h.apart
		p.crossings(poly, g, c)
		for i := 0; i+1 < len(p.cross); i += 2 {
			if a, b := p.cross[i], p.cross[i+1]; b-a >= 0.5 {
				p.segment(g.at(a, c), g.at(b, c), h.ink, h.width)
			}
		}
	}
}

// grid counts places of the sheet along the strokes of a hatch and across them,
// from the mirror's axis, so that a mirrored hatch is the mirror image.
type grid struct {
	axis       float64
	way, cross Pt // of length 1
}

func (p *pen) grid(way float64) grid {
	sin, cos := math.Sincos(way)
	g := grid{p.axis, Pt{cos, sin}, Pt{-sin, cos}}
	if p.mirror {
		g.way.X, g.cross.X = -g.way.X, -g.cross.X
	}
	return g
}

func (g grid) along(q Pt) float64  { return (q.X-g.axis)*g.way.X + q.Y*g.way.Y }
func (g grid) across(q Pt) float64 { return (q.X-g.axis)*g.cross.X + q.Y*g.cross.Y }

func (g grid) at(along, across float64) Pt {
	return Pt{g.axis + along*g.way.X + across*g.cross.X, along*g.way.Y + across*g.cross.Y}
}

// crossings fills p.cross with the places along the line across = c where it
// meets the polygon's outline, rising.
func (p *pen) crossings(poly []Pt, g grid, c float64) {
	p.cross = p.cross[:0]
	a := poly[len(poly)-1]
	ca := g.across(a) - c
	for _, b := range poly {
		cb := g.across(b) - c
		if (ca < 0) != (cb < 0) {
			p.cross = append(p.cross, g.along(between(a, b, ca/(ca-cb))))
		}
		a, ca = b, cb
	}
	geom.Ascending(p.cross)
}
