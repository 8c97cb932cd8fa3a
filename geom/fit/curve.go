package fit

import (
	"math"

	"leafwright/geom"
)

// Curve is a quantity along an edge, in pieces that each are a quadratic in the
// place. Pieces stand in rising order and join on.
type Curve struct{ Pieces []Piece }

// Piece is one smooth stretch: C0 + C1·(s − Lo) + C2·(s − Lo)² for s in [Lo, Hi].
type Piece struct {
	Lo, Hi     float64
	C0, C1, C2 float64
}

// At gives the piece's value at s.
func (p Piece) At(s float64) float64 {
	d := s - p.Lo
	return p.C0 + float64(d*(p.C1+float64(p.C2*d)))
}

// vertex gives where the piece is level, and whether that lies inside it.
func (p Piece) vertex() (s float64, inside bool) {
	if p.C2 == 0 {
		return 0, false
	}
	s = p.Lo - p.C1/(2*p.C2)
	return s, p.Lo < s && s < p.Hi
}

// crossings gives the places inside the piece where it has the value c, rising.
func (p Piece) crossings(c float64) (at [2]float64, n int) {
	lo, hi := roots(p.C0-c, p.C1, p.C2)
	for _, d := range [2]float64{lo, hi} {
		if s := p.Lo + d; d > 0 && s < p.Hi {
			at[n] = s
			n++
		}
	}
	if n == 2 && at[0] == at[1] {
		n = 1
	}
	return at, n
}

// roots gives the roots of a + b·x + c·x², the lower first; NaN where there is none.
func roots(a, b, c float64) (lo, hi float64) {
	none := math.NaN()
	if c == 0 {
		if b == 0 {
			return none, none
		}
		return -a / b, none
	}
	disc := float64(b*b) - float64(4*a*c)
	if disc < 0 {
		return none, none
	}
	q := -(b + math.Copysign(math.Sqrt(disc), b)) / 2 // no cancellation
	lo, hi = q/c, none
	if q != 0 {
		hi = a / q
	}
	if hi < lo {
		lo, hi = hi, lo
	}
	return lo, hi
}

// Range gives the places the curve covers, empty when there is none.
func (c Curve) Range() geom.Interval {
	if len(c.Pieces) == 0 {
		return geom.Empty()
	}
	return geom.Interval{Lo: c.Pieces[0].Lo, Hi: c.Pieces[len(c.Pieces)-1].Hi}
}

// At gives the value at s, held at the ends of the range; NaN on an empty curve.
func (c Curve) At(s float64) float64 {
	n := len(c.Pieces)
	if n == 0 {
		return math.NaN()
	}
	s = c.Range().Clamp(s)
	i := 0
	for i < n-1 && s > c.Pieces[i].Hi {
		i++
	}
	return c.Pieces[i].At(s)
}

// Extremes gives the least and the greatest value and their places; of equal
// ones the first. On an empty curve all are NaN.
func (c Curve) Extremes() (least, leastAt, most, mostAt float64) {
	if len(c.Pieces) == 0 {
		n := math.NaN()
		return n, n, n, n
	}
	least, most = math.Inf(1), math.Inf(-1)
	try := func(v, s float64) {
		if v < least {
			least, leastAt = v, s
		}
		if v > most {
			most, mostAt = v, s
		}
	}
	for _, p := range c.Pieces {
		try(p.C0, p.Lo)
		if s, ok := p.vertex(); ok {
			try(p.At(s), s)
		}
		try(p.At(p.Hi), p.Hi)
	}
	return least, leastAt, most, mostAt
}

// Below appends to dst the stretches where the curve lies below c.
func (c Curve) Below(limit float64, dst []geom.Interval) []geom.Interval {
	return c.stretches(limit, -1, dst)
}

// Above appends to dst the stretches where the curve lies above c.
func (c Curve) Above(limit float64, dst []geom.Interval) []geom.Interval {
	return c.stretches(limit, 1, dst)
}

// joined is how far apart, in mm, two stretches may end and start and still be
// one: neighbouring pieces meet but for the last bits.
const joined = 1e-6

func (c Curve) stretches(limit, sign float64, dst []geom.Interval) []geom.Interval {
	open := false
	add := func(lo, hi float64) {
		if open && lo-dst[len(dst)-1].Hi < joined {
			dst[len(dst)-1].Hi = hi
			return
		}
		dst = append(dst, geom.Interval{Lo: lo, Hi: hi})
		open = true
	}
	for _, p := range c.Pieces {
		cuts, n := p.crossings(limit)
		lo := p.Lo
		for k := 0; k <= n; k++ {
			hi := p.Hi
			if k < n {
				hi = cuts[k]
			}
			if sign*(p.At(lo+(hi-lo)/2)-limit) > 0 {
				add(lo, hi)
			}
			lo = hi
		}
	}
	return dst
}

// Within gives the part of the curve over an interval.
func (c Curve) Within(over geom.Interval) Curve {
	var part []Piece
	for _, p := range c.Pieces {
		if lo, hi := max(p.Lo, over.Lo), min(p.Hi, over.Hi); lo < hi {
			p = p.from(lo)
			p.Hi = hi
			part = append(part, p)
		}
	}
	return Curve{part}
}
