package fit

import (
	"leafwright/geom"
	"leafwright/geom/door"
)

// mostLines is how many arris lines an edge may have: two at each face that it is
// eased towards.
const mostLines = 4

// arrises are the arris lines of one edge, from the knuckle face back: the first n
// of lines.
type arrises struct {
	n     int
	lines [mostLines][]arc // at swing 0
}

func (a *arrises) rear() []arc { return a.lines[max(a.n, 1)-1] }

// quad is a place that is a quadratic in a parameter p: C0 + C1·p + C2·p².
type quad struct{ c0, c1, c2 geom.Vec }

func (q quad) at(p float64) geom.Vec {
	return geom.Vec{
		X: q.c0.X + float64(p*(q.c1.X+float64(p*q.c2.X))),
		Y: q.c0.Y + float64(p*(q.c1.Y+float64(p*q.c2.Y))),
		Z: q.c0.Z + float64(p*(q.c1.Z+float64(p*q.c2.Z))),
	}
}

// way gives the change of the place per unit of p.
func (q quad) way(p float64) geom.Vec {
	return geom.Vec{
		X: q.c1.X + 2*float64(p*q.c2.X),
		Y: q.c1.Y + 2*float64(p*q.c2.Y),
		Z: q.c1.Z + 2*float64(p*q.c2.Z),
	}
}

// arc is one smooth piece of an arris: p in [lo, hi] is v on the side edges and
// u on top and bottom. Straight outlines on a face in wind make it a quadratic in
// p; a turn about the pins carries it to foot + Cos·out + Sin·on.
type arc struct {
	lo, hi        float64
	foot, out, on quad
}

// turned gives the arc's place after the turn.
func (a *arc) turned(by geom.Turn) quad {
	mix := func(f, o, n geom.Vec) geom.Vec {
		return geom.Vec{
			X: f.X + float64(by.Cos*o.X) + float64(by.Sin*n.X),
			Y: f.Y + float64(by.Cos*o.Y) + float64(by.Sin*n.Y),
			Z: f.Z + float64(by.Cos*o.Z) + float64(by.Sin*n.Z),
		}
	}
	return quad{
		mix(a.foot.c0, a.out.c0, a.on.c0),
		mix(a.foot.c1, a.out.c1, a.on.c1),
		mix(a.foot.c2, a.out.c2, a.on.c2),
	}
}

// spot is a place in plan, and planQuad one that is a quadratic in a parameter.
type (
	spot     struct{ x, z float64 }
	planQuad struct{ c0, c1, c2 spot }
)

func (a spot) dot(b spot) float64 { return float64(a.x*b.x) + float64(a.z*b.z) }

func (q *planQuad) at(p float64) spot {
	return spot{
		q.c0.x + float64(p*(q.c1.x+float64(p*q.c2.x))),
		q.c0.z + float64(p*(q.c1.z+float64(p*q.c2.z))),
	}
}

func (q *planQuad) way(p float64) spot {
	return spot{q.c1.x + 2*float64(p*q.c2.x), q.c1.z + 2*float64(p*q.c2.z)}
}

// plan gives the arc's place after the turn, seen from above.
func (a *arc) plan(by geom.Turn) planQuad {
	mix := func(f, o, n *geom.Vec) spot {
		return spot{
			f.X + float64(by.Cos*o.X) + float64(by.Sin*n.X),
			f.Z + float64(by.Cos*o.Z) + float64(by.Sin*n.Z),
		}
	}
	return planQuad{
		mix(&a.foot.c0, &a.out.c0, &a.on.c0),
		mix(&a.foot.c1, &a.out.c1, &a.on.c1),
		mix(&a.foot.c2, &a.out.c2, &a.on.c2),
	}
}

// draw fills the work's arrises for every edge.
func (f *Fit) draw(l *door.Leaf) {
	front, rear := l.Corners(0), l.Corners(l.Thickness)
	for e := range Edges {
		k := &f.work.arrises[e]
		var at [mostLines]door.Arris
		k.n = len(l.Sections[e].Arrises(at[:0], l.Thickness))
		for i, a := range at[:k.n] {
			var c door.Corners
			switch a.Depth {
			case 0:
				c = front
			case l.Thickness:
				c = rear
			default:
				c = l.Corners(a.Depth)
			}
			dst, d := k.lines[i][:0], a.Depth
			switch e {
			case HingeSide:
				dst = f.sideArcs(dst, l, l.Hanging, l.HangingSetback()*d+a.Inset, d, c.HangingFoot.Y, c.HangingHead.Y)
			case LatchSide:
				dst = f.sideArcs(dst, l, l.Closing, -l.ClosingSetback()*d-a.Inset, d, c.ClosingFoot.Y, c.ClosingHead.Y)
			case HeadSide:
				dst = f.endArcs(dst, l, l.Top, -a.Inset, d, c.HangingHead.X, c.ClosingHead.X)
			case FloorSide:
				dst = f.endArcs(dst, l, l.Bottom, a.Inset, d, c.HangingFoot.X, c.ClosingFoot.X)
			}
			k.lines[i] = dst
		}
	}
}

// faceLines gives the straight pieces that Sh and Sc − Sh follow at height v.
func faceLines(l *door.Leaf, v float64) (hanging, across geom.Line) {
	return faceBetween(l, l.HangingFace.Find(v), l.ClosingFace.Find(v))
}

// faceBetween gives them on the i-th piece of Sh and the j-th of Sc.
func faceBetween(l *door.Leaf, i, j int) (hanging, across geom.Line) {
	h, c := l.HangingFace.Piece(i), l.ClosingFace.Piece(j)
	return h, geom.Line{C0: c.C0 - h.C0, C1: c.C1 - h.C1}
}

// sideArcs appends the arcs of a side edge at depth d: u = side(v) + off and
// w = s(u, v) − d, multiplied out.
func (f *Fit) sideArcs(dst []arc, l *door.Leaf, side geom.Profile, off, d, from, to float64) []arc {
	cuts := append(f.work.cuts[:0], from)
	for _, p := range [3]geom.Profile{side, l.HangingFace, l.ClosingFace} {
		cuts = knotsWithin(cuts, p, from, to)
	}
	cuts = sorted(append(cuts, to))
	for i := 1; i < len(cuts); i++ {
		lo, hi := cuts[i-1], cuts[i]
		if !(lo < hi) {
			continue
		}
		mid := lo + (hi-lo)/2
		e := side.Piece(side.Find(mid))
		e.C0 += off
		h, x := faceLines(l, mid)
		dst = append(dst, f.arc(lo, hi,
			geom.Vec{X: e.C0, Z: h.C0 + float64(x.C0*e.C0)/l.Width - d},
			geom.Vec{X: e.C1, Y: 1, Z: h.C1 + (float64(x.C0*e.C1)+float64(x.C1*e.C0))/l.Width},
			float64(x.C1*e.C1)/l.Width))
	}
	f.work.cuts = cuts
	return dst
}

// endArcs appends the arcs of top or bottom at depth d: v = end(u) + off and
// w = s(u, v) − d, multiplied out.
func (f *Fit) endArcs(dst []arc, l *door.Leaf, end geom.Profile, off, d, from, to float64) []arc {
	cuts := append(f.work.cuts[:0], from)
	cuts = knotsWithin(cuts, end, from, to)
	for i := range end.Pieces() { // where the edge passes a bend of the face
		e := end.Piece(i)
		e.C0 += off
		if e.C1 == 0 {
			continue
		}
		for _, p := range [2]geom.Profile{l.HangingFace, l.ClosingFace} {
			for k := range p.Knots() {
				if u := (p.Knot(k) - e.C0) / e.C1; from < u && u < to && end.Find(u) == i {
					cuts = append(cuts, u)
				}
			}
		}
	}
	cuts = sorted(append(cuts, to))
	for i := 1; i < len(cuts); i++ {
		lo, hi := cuts[i-1], cuts[i]
		if !(lo < hi) {
			continue
		}
		mid := lo + (hi-lo)/2
		e := end.Piece(end.Find(mid))
		e.C0 += off
		h, x := faceLines(l, e.At(mid))
		dst = append(dst, f.arc(lo, hi,
			geom.Vec{Y: e.C0, Z: h.At(e.C0) - d},
			geom.Vec{X: 1, Y: e.C1, Z: float64(h.C1*e.C1) + x.At(e.C0)/l.Width},
			float64(x.C1*e.C1)/l.Width))
	}
	f.work.cuts = cuts
	return dst
}

// arc carries c0 + c1·p + (0, 0, w2)·p² of the leaf into the world and splits it
// about the pin axis.
func (f *Fit) arc(lo, hi float64, c0, c1 geom.Vec, w2 float64) arc {
	a := arc{lo: lo, hi: hi}
	a.foot.c0, a.out.c0, a.on.c0 = f.Axis.Split(f.Pose.Point(c0))
	split := func(d geom.Vec) (foot, out, on geom.Vec) {
		foot = f.Axis.Down.Scale(d.Dot(f.Axis.Down))
		out = d.Sub(foot)
		return foot, out, f.Axis.Down.Cross(out)
	}
	a.foot.c1, a.out.c1, a.on.c1 = split(f.Pose.Way(c1))
	if w2 != 0 {
		a.foot.c2, a.out.c2, a.on.c2 = split(f.Pose.Way(geom.Vec{Z: w2}))
	}
	return a
}

// knotsWithin appends the bends of p strictly between lo and hi.
func knotsWithin(dst []float64, p geom.Profile, lo, hi float64) []float64 {
	for i := range p.Knots() {
		if k := p.Knot(i); lo < k && k < hi {
			dst = append(dst, k)
		}
	}
	return dst
}

func sorted(s []float64) []float64 {
	geom.Ascending(s)
	return s
}
