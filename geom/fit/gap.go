package fit

import (
	"math"

	"leafwright/geom"
	"leafwright/geom/door"
)

// facing is what an edge of the leaf looks at: a line of the frame as a function
// of the place m along it, and the coordinate of the leaf that is held against it.
type facing struct {
	upright bool         // m is y and the gap is along x; else m is x and the gap along y
	sign    float64      // +1: gap = line − leaf; −1: gap = leaf − line
	line    geom.Profile // the face: H, L or T
	front   geom.Profile // its front edge's z
	stop    geom.Profile // its stop's z
}

func facings(f *door.Frame) [FloorSide]facing {
	return [FloorSide]facing{
		HingeSide: {true, -1, f.HingeJamb, f.HingeFront, f.HingeStop},
		LatchSide: {true, 1, f.LatchJamb, f.LatchFront, f.LatchStop},
		HeadSide:  {false, 1, f.Head, f.HeadFront, f.HeadStop},
	}
}

// parts gives the two coordinates of a vector that a facing is about.
func parts(upright bool, v geom.Vec) (m, across float64) {
	if upright {
		return v.Y, v.X
	}
	return v.X, v.Y
}

// graph is a coordinate of a turned arc as a quadratic in another, around p:
// value + slope·τ + bend·τ², τ counted from m. The next term is below 1e-8 mm for
// any leaf that passes its check, since an arc bends by no more than its wind.
func graph(q quad, upright bool, p float64) (m, value, slope, bend float64) {
	m, value = parts(upright, q.at(p))
	dm, dv := parts(upright, q.way(p))
	bm, bv := parts(upright, q.c2)
	slope = dv / dm
	bend = (bv - float64(slope*bm)) / float64(dm*dm)
	return m, value, slope, bend
}

// inverse gives the p of the turned arc at which coordinate m is reached.
func inverse(q quad, upright bool, m float64, from float64) float64 {
	p := from
	for range 3 { // the arc is so nearly straight that the first step is almost home
		at, _ := parts(upright, q.at(p))
		dm, _ := parts(upright, q.way(p))
		p -= (at - m) / dm
	}
	return p
}

// gapCurve appends to dst the gap between an arris at the turn and its facing.
func (f *Fit) gapCurve(dst []Piece, arcs []arc, to facing, by geom.Turn) []Piece {
	for i := range arcs {
		a := &arcs[i]
		q := a.turned(by)
		lo, _ := parts(to.upright, q.at(a.lo))
		hi, _ := parts(to.upright, q.at(a.hi))
		p := a.lo
		for lo < hi {
			k := to.line.Find(lo)
			end := hi
			if k < to.line.Pieces()-1 {
				end = min(end, to.line.Knot(k))
			}
			_, v, slope, bend := graph(q, to.upright, p)
			l := to.line.Piece(k)
			dst = append(dst, Piece{
				Lo: lo, Hi: end,
				C0: to.sign * (l.At(lo) - v),
				C1: to.sign * (l.C1 - slope),
				C2: -to.sign * bend,
			})
			lo = end
			if lo < hi {
				p = inverse(q, to.upright, lo, p)
			}
		}
	}
	return dst
}

// from gives the piece counted from a later start.
func (p Piece) from(lo float64) Piece {
	d := lo - p.Lo
	return Piece{lo, p.Hi, p.At(lo), p.C1 + float64(2*p.C2*d), p.C2}
}

// lesser appends to dst the lesser of two curves where both exist, cut where
// they cross.
func lesser(dst, a, b []Piece) []Piece {
	i, j := 0, 0
	for i < len(a) && j < len(b) {
		lo, hi := max(a[i].Lo, b[j].Lo), min(a[i].Hi, b[j].Hi)
		if lo < hi {
			p, q := a[i].from(lo), b[j].from(lo)
			p.Hi, q.Hi = hi, hi
			apart := Piece{lo, hi, p.C0 - q.C0, p.C1 - q.C1, p.C2 - q.C2}
			cuts, n := apart.crossings(0)
			for k := 0; k <= n; k++ {
				end := hi
				if k < n {
					end = cuts[k]
				}
				least := p
				if apart.At(lo+(end-lo)/2) > 0 {
					least = q
				}
				least = least.from(lo)
				least.Hi = end
				dst = append(dst, least)
				lo = end
			}
		}
		if a[i].Hi < b[j].Hi {
			i++
		} else {
			j++
		}
	}
	return dst
}

// set notes the curve's extremes.
func (g *Gap) set(pieces []Piece) {
	g.Pieces = pieces
	g.Least, g.LeastAt, g.Most, g.MostAt = g.Extremes()
}

// closedGaps measures every gap with the leaf at the turn by.
func (f *Fit) closedGaps(by geom.Turn) {
	to := facings(&f.door.Frame)
	for e := HingeSide; e < Edges; e++ {
		k := &f.work.arrises[e]
		for i := range k.n {
			buf := f.work.lineGap[i][:0]
			if e == FloorSide {
				buf = f.floorCurve(buf, k.lines[i], by)
			} else {
				buf = f.gapCurve(buf, k.lines[i], to[e], by)
			}
			f.work.lineGap[i] = buf
			if e == FloorSide {
				l := &f.work.floorClosed[i]
				l.least, l.at, _, _ = Curve{buf}.Extremes()
			}
		}
		f.Shown[e].set(append(f.Shown[e].Pieces[:0], f.work.lineGap[0]...))
		least := f.work.lineGap[0]
		for i := 1; i < k.n-1; i++ {
			buf := lesser(f.work.lesser[i%2][:0], least, f.work.lineGap[i])
			f.work.lesser[i%2], least = buf, buf
		}
		f.Gaps[e].set(lesser(f.Gaps[e].Pieces[:0], least, f.work.lineGap[k.n-1]))
	}
}

// floorCurve appends the height of a bottom arris over the floor below it, as a
// function of x. The floor is bilinear in polar coordinates, so each stretch
// between its bends is cut until a quadratic follows it to floorTrue.
func (f *Fit) floorCurve(dst []Piece, arcs []arc, by geom.Turn) []Piece {
	for i := range arcs {
		a := &arcs[i]
		s := floorStretch{floor: &f.work.ground, q: a.turned(by)}
		cuts := append(f.work.cuts[:0], a.lo)
		if !f.work.levelFloor {
			cuts = floorBends(cuts, s.floor, s.q, a.lo, a.hi)
		}
		cuts = sorted(append(cuts, a.hi))
		f.work.cuts = cuts
		for k := 1; k < len(cuts); k++ {
			if lo, hi := cuts[k-1], cuts[k]; lo < hi {
				dst = s.pieces(dst, lo, hi)
			}
		}
	}
	return dst
}

// floorTrue is how closely, in mm, the pieces of a floor gap follow it, and
// floorDepth how often a stretch is halved for that.
const (
	floorTrue  = 1e-5
	floorDepth = 14
)

// floorStretch is a stretch of a turned bottom arris with no bend of the floor in
// it, measured along x, or along u where byU is set.
type floorStretch struct {
	floor *door.Floor
	q     quad
	byU   bool
}

// under gives the floor's height below the arris at p.
func (s *floorStretch) under(p float64) float64 {
	at := s.q.at(p)
	return s.floor.At(at.X, at.Z)
}

// pieces appends the stretch from lo to hi.
func (s *floorStretch) pieces(dst []Piece, lo, hi float64) []Piece {
	return s.cut(dst, lo, hi, s.under(lo), s.under(lo+(hi-lo)/2), s.under(hi), 0)
}

// cut appends the stretch from lo to hi, under which the floor is f0 at lo, f1 in
// the middle and f2 at hi, halved until a quadratic through the three follows it.
func (s *floorStretch) cut(dst []Piece, lo, hi, f0, f1, f2 float64, depth int) []Piece {
	b := 4*f1 - 3*f0 - f2
	c := 2 * (f0 - 2*f1 + f2)
	mid := lo + (hi-lo)/2
	if hi-lo < 4*leap { // the floor may leap here
		b, c = f2-f0, 0
	} else if depth < floorDepth && (b != 0 || c != 0) {
		g1, g3 := s.under(lo+(hi-lo)/4), s.under(lo+3*(hi-lo)/4)
		if math.Abs(f0+b/4+c/16-g1) > floorTrue || math.Abs(f0+3*b/4+9*c/16-g3) > floorTrue {
			dst = s.cut(dst, lo, mid, f0, g1, f1, depth+1)
			return s.cut(dst, mid, hi, f1, g3, f2, depth+1)
		}
	}
	m0, v, slope, bend := graph(s.q, false, lo)
	m1 := s.q.at(hi).X
	if s.byU {
		m0, m1, slope, bend = lo, hi, s.q.way(lo).Y, s.q.c2.Y
	}
	h := m1 - m0
	if !(h > 0) {
		return dst
	}
	return append(dst, Piece{
		Lo: m0, Hi: m1,
		C0: v - f0, C1: slope - b/h, C2: bend - c/float64(h*h),
	})
}

// floorBends appends the p in (lo, hi) at which the arc passes a measured radius
// or a measured angle of the floor.
func floorBends(dst []float64, fl *door.Floor, q quad, lo, hi float64) []float64 {
	add := func(p float64) {
		if lo < p && p < hi {
			dst = append(dst, p)
		}
	}
	for _, r := range fl.Radii {
		// x² + z² = r² with the arc's slight bend left out, then put right by a step.
		a := float64(q.c0.X*q.c0.X) + float64(q.c0.Z*q.c0.Z) - float64(r*r)
		b := 2 * (float64(q.c0.X*q.c1.X) + float64(q.c0.Z*q.c1.Z))
		c := float64(q.c1.X*q.c1.X) + float64(q.c1.Z*q.c1.Z)
		one, two := roots(a, b, c)
		for _, p := range [2]float64{one, two} {
			at, way := q.at(p), q.way(p)
			slope := 2 * (float64(at.X*way.X) + float64(at.Z*way.Z))
			if slope != 0 {
				p -= (float64(at.X*at.X) + float64(at.Z*at.Z) - float64(r*r)) / slope
			}
			add(p)
		}
	}
	if len(fl.Angles) < 2 {
		return dst
	}
	for _, angle := range fl.Angles {
		t := angle.Turn()
		one, two := roots(
			float64(q.c0.X*t.Sin)-float64(q.c0.Z*t.Cos),
			float64(q.c1.X*t.Sin)-float64(q.c1.Z*t.Cos),
			float64(q.c2.X*t.Sin)-float64(q.c2.Z*t.Cos))
		add(one)
		add(two)
	}
	one, two := roots(q.c0.Z, q.c1.Z, q.c2.Z)
	for _, p := range [2]float64{one, two} {
		add(p - leap)
		add(p + leap)
	}
	return dst
}
