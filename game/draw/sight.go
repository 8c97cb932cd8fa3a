package draw

import (
	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fit"
)

// Sight is how the front picture lies on its sheet, and the closed leaf in it. It
// carries places between the sheet and the leaf as they were when it was taken; given
// to a later drawing as [View.Sight] it also keeps the picture still, so that nothing
// but what a hand changes moves under that hand.
type Sight struct {
	big          enlarged
	front        sheet
	box, outer   box
	wall, lining float64
	closed       geom.Motion
	leaf         door.Leaf
	rightHung    bool
}

// Sight takes the sight of the drawing last made.
func (s *Scene) Sight() Sight {
	g := Sight{
		big: s.big, front: s.front, box: s.frontBox, outer: s.outer, wall: s.wall, lining: s.lining,
		closed: s.closed, rightHung: s.v.RightHung,
	}
	if s.d != nil {
		g.leaf = s.d.Leaf
	}
	return g
}

// outline gives the point of a leaf's outline at a place of an edge, on the knuckle
// face, in leaf axes: up the hanging stile (v) on upright edges, across (u) on the
// others.
func outline(l *door.Leaf, e fit.Edge, place float64) (u, v float64) {
	switch e {
	case fit.HingeSide:
		return l.Hanging.At(place), place
	case fit.LatchSide:
		return l.Closing.At(place), place
	case fit.HeadSide:
		return place, l.Top.At(place)
	}
	return place, l.Bottom.At(place)
}

// ends gives the places of an edge's two ends, in leaf axes, mm.
func ends(l *door.Leaf, e fit.Edge) (lo, hi float64) {
	at := l.Ends(e, 0)
	return at.Lo, at.Hi
}

// spot carries a leaf's point to the unmirrored front picture as part of an edge.
func (g *Sight) spot(e fit.Edge, l *door.Leaf, u, v float64) Pt {
	p := g.closed.Point(geom.Vec{X: u, Y: v, Z: l.Face(u, v)})
	return g.front.to(g.big.at(e, p.X, p.Y))
}

// on gives where a place of an edge stands on the unmirrored picture.
func (g *Sight) on(e fit.Edge, place float64) Pt {
	u, v := outline(&g.leaf, e, place)
	return g.spot(e, &g.leaf, u, v)
}

func (g *Sight) turn(p Pt) Pt {
	if g.rightHung {
		p.X = 2*g.box.middle() - p.X
	}
	return p
}

// On gives where a place of the leaf's edge stands on the sheet.
func (g *Sight) On(e fit.Edge, place float64) Pt { return g.turn(g.on(e, place)) }

// Ends gives the places of a leaf's edge's two ends, mm.
func (g *Sight) Ends(e fit.Edge) (lo, hi float64) { return ends(&g.leaf, e) }

// Place gives the place of the leaf's edge that lies beside a point of the sheet:
// level with it on upright edges, plumb with it on the others; held to the edge.
func (g *Sight) Place(e fit.Edge, p Pt) float64 {
	p = g.turn(p)
	lo, hi := g.Ends(e)
	for range 50 { // places rise along the edge
		mid := (lo + hi) / 2
		q := g.on(e, mid)
		if e.Upright() && q.Y > p.Y || !e.Upright() && q.X < p.X {
			lo = mid
		} else {
			hi = mid
		}
	}
	return (lo + hi) / 2
}

// Out gives how far a move from one point of the sheet to another leads out of the
// leaf, square to an edge, in mm as gaps are drawn there; below 0 into the leaf.
func (g *Sight) Out(e fit.Edge, from, to Pt) float64 {
	from, to = g.turn(from), g.turn(to)
	by := 0.0
	switch e {
	case fit.HingeSide:
		by = from.X - to.X
	case fit.LatchSide:
		by = to.X - from.X
	case fit.HeadSide:
		by = from.Y - to.Y
	default:
		by = to.Y - from.Y
	}
	return by / (g.big.k * g.front.s)
}

// Up gives how far a move on the sheet leads up the hanging stile, in true mm.
func (g *Sight) Up(from, to Pt) float64 {
	height := func(p Pt) float64 { return g.big.rise[0].from(g.front.from(p).Y) }
	return height(to) - height(from)
}

// Times tells how many times true size gaps are drawn.
func (g *Sight) Times() float64 { return g.big.k }
