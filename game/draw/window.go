package draw

import "math"

// facets is how many sides the lens has when it clips a polygon.
const facets = 48

// cut gives the part of the segment inside the lens, and whether there is any.
func (w lens) cut(a, b Pt) (Pt, Pt, bool) {
	d := Pt{b.X - a.X, b.Y - a.Y}
	o := Pt{a.X - w.at.X, a.Y - w.at.Y}
	// |o + t·d|² = r²
	qa, qb, qc := d.X*d.X+d.Y*d.Y, o.X*d.X+o.Y*d.Y, o.X*o.X+o.Y*o.Y-w.radius*w.radius
	disc := qb*qb - qa*qc
	if qa == 0 || disc <= 0 {
		return a, b, false
	}
	root := math.Sqrt(disc)
	t0, t1 := max(0, (-qb-root)/qa), min(1, (-qb+root)/qa)
	if t0 >= t1 {
		return a, b, false
	}
	return between(a, b, t0), between(a, b, t1), true
}

// window gives the part of the polygon inside the lens, in scratch memory: cut
// by each facet in turn, which is sound because the lens is convex.
func (p *pen) window(poly []Pt) []Pt {
	in, out := append(p.clip[0][:0], poly...), p.clip[1][:0]
	for i := range facets {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / facets)
		out = halfPlane(out[:0], in, Pt{cos, sin}, cos*p.lens.at.X+sin*p.lens.at.Y+p.lens.radius)
		in, out = out, in
	}
	p.clip[0], p.clip[1] = in, out
	return in
}

// halfPlane appends to dst the part of the polygon where n·q ≤ c.
func halfPlane(dst, poly []Pt, n Pt, c float64) []Pt {
	if len(poly) == 0 {
		return dst
	}
	a := poly[len(poly)-1]
	ca := n.X*a.X + n.Y*a.Y - c
	for _, b := range poly {
		cb := n.X*b.X + n.Y*b.Y - c
		if (ca < 0) != (cb < 0) {
			dst = append(dst, between(a, b, ca/(ca-cb)))
		}
		if cb <= 0 {
			dst = append(dst, b)
		}
		a, ca = b, cb
	}
	return dst
}
