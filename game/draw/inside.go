package draw

import (
	"leafwright/geom/door"
	"leafwright/geom/fit"
)

// What of the leaf lies within its outer stiles and rails.
const (
	insetAcross, insetUp = 0.08, 0.03 // of a leaf without stiles and rails, parts of its width and height
	outerLeast           = 0.3        // part of an outer member that is drawn however much came off it
)

// inside is the leaf within its outer stiles and rails: a box of the leaf's face and
// where its corners stand on the front picture, in enlarged mm. It is drawn where it
// lay when the door was found: planing an edge narrows the member along it and leaves
// panels and lock alone. Only where the enlarged cut would run through the member is
// that side of the box drawn in, straight.
type inside struct {
	u, v [2]float64
	at   [2][2]Pt // first by u
}

// setInside finds the inside of the leaf drawn.
func (s *Scene) setInside() {
	in, leaf, big := &s.inside, &s.d.Leaf, &s.big
	if s.v.Was != nil {
		leaf = &s.v.Was.Leaf
	}
	c := leaf.Corners(0)
	left, right := max(c.HangingFoot.X, c.HangingHead.X), min(c.ClosingFoot.X, c.ClosingHead.X)
	foot, head := max(c.HangingFoot.Y, c.ClosingFoot.Y), min(c.HangingHead.Y, c.ClosingHead.Y)
	wide, tall := right-left, head-foot
	in.u = [2]float64{left + insetAcross*wide, right - insetAcross*wide}
	in.v = [2]float64{foot + insetUp*tall, head - insetUp*tall}
	if n := len(s.a.Rails); s.a.Make == door.Framed && n > 1 {
		if u0, u1 := s.a.Inner(&s.d.Leaf); left < u0 && u0 < u1 && u1 < right {
			in.u = [2]float64{u0, u1}
		}
		if v0, v1 := s.a.Rails[0].To, s.a.Rails[n-1].From; foot < v0 && v0 < v1 && v1 < head {
			in.v = [2]float64{v0, v1}
		}
	}
	place := func(e fit.Edge, u, v float64) Pt {
		p := s.closed.Point(s.leafPoint(u, v, 0))
		return big.at(e, p.X, p.Y)
	}
	for i, u := range in.u {
		for j, v := range in.v {
			x0, x1 := place(fit.HingeSide, left, v).X, place(fit.LatchSide, right, v).X
			y0, y1 := place(fit.FloorSide, u, foot).Y, place(fit.HeadSide, u, head).Y
			in.at[i][j] = Pt{x0 + (x1-x0)*(u-left)/wide, y0 + (y1-y0)*(v-foot)/tall}
		}
	}
	outer := [fit.Edges]float64{fit.HingeSide: in.u[0] - left, fit.LatchSide: right - in.u[1], fit.HeadSide: head - in.v[1], fit.FloorSide: in.v[0] - foot}
	for e := range fit.Edges {
		out, _ := compass(e)
		a, b := &in.at[0][0], &in.at[1][1]
		switch e {
		case fit.HingeSide:
			b = &in.at[0][1]
		case fit.FloorSide:
			b = &in.at[1][0]
		case fit.LatchSide:
			a = &in.at[1][0]
		default:
			a = &in.at[0][1]
		}
		over := 0.0
		for _, p := range s.arris[e][0] {
			q := big.at(e, p.X, p.Y)
			t := (q.X - a.X) / (b.X - a.X)
			if e.Upright() {
				t = (q.Y - a.Y) / (b.Y - a.Y)
			}
			m := between(*a, *b, t)
			over = max(over, outerLeast*outer[e]-(q.X-m.X)*out.X+(q.Y-m.Y)*out.Y) // the sheet's y runs down
		}
		for _, p := range [2]*Pt{a, b} {
			p.X -= over * out.X
			p.Y += over * out.Y
		}
	}
}

// onLeaf carries the leaf's face point (u, v) to the sheet: within the inside evenly,
// and from there evenly to the edges as the front picture shows them.
func (s *Scene) onLeaf(u, v float64) Pt {
	in, l, big := &s.inside, &s.d.Leaf, &s.big
	t, r := (u-in.u[0])/(in.u[1]-in.u[0]), (v-in.v[0])/(in.v[1]-in.v[0])
	at := func(t, r float64) Pt {
		return between(between(in.at[0][0], in.at[1][0], t), between(in.at[0][1], in.at[1][1], t), r)
	}
	p := at(t, r)
	edge := func(e fit.Edge, place float64) (Pt, float64) {
		a, b := outline(l, e, place)
		q := s.closed.Point(s.leafPoint(a, b, 0))
		if e.Upright() {
			return big.at(e, q.X, q.Y), a
		}
		return big.at(e, q.X, q.Y), b
	}
	i, e := 0, fit.HingeSide
	if t > 1 {
		i, e = 1, fit.LatchSide
	}
	if t < 0 || t > 1 {
		q, a := edge(e, v)
		from := at(float64(i), r).X
		p.X = from + (q.X-from)*share(u, in.u[i], a)
	}
	j, e := 0, fit.FloorSide
	if r > 1 {
		j, e = 1, fit.HeadSide
	}
	if r < 0 || r > 1 {
		q, b := edge(e, u)
		from := at(t, float64(j)).Y
		p.Y = from + (q.Y-from)*share(v, in.v[j], b)
	}
	return s.front.to(p)
}

// share tells how far x lies on the way from a to b.
func share(x, a, b float64) float64 {
	if a == b {
		return 0
	}
	return (x - a) / (b - a)
}
