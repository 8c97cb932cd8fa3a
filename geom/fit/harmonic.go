package fit

import (
	"math"

	"leafwright/geom"
)

// harmonic is a quantity a + b·cos φ + c·sin φ of the swing angle: every
// coordinate of a leaf point is one.
type harmonic struct{ a, b, c float64 }

func (h harmonic) at(t geom.Turn) float64 {
	return h.a + float64(h.b*t.Cos) + float64(h.c*t.Sin)
}

// rate is the change per radian of swing.
func (h harmonic) rate(t geom.Turn) float64 {
	return float64(h.c*t.Cos) - float64(h.b*t.Sin)
}

// roots gives the half-tangents of the two angles at which h is zero, the one
// nearer to 0 first; NaN where there is none. With t = tan(φ/2):
// (a − b)·t² + 2c·t + (a + b) = 0.
func (h harmonic) roots() (near, far float64) {
	disc := float64(h.b*h.b) + float64(h.c*h.c) - float64(h.a*h.a)
	if disc < 0 {
		return math.NaN(), math.NaN()
	}
	q := -(h.c + math.Copysign(math.Sqrt(disc), h.c))
	if q == 0 {
		return math.NaN(), math.NaN()
	}
	near, far = (h.a+h.b)/q, math.Inf(1)
	if h.a != h.b {
		far = q / (h.a - h.b)
	}
	return near, far
}

// level gives the half-tangents of the two angles at which h is stationary: the
// trough (or crest) where (cos, sin) runs along (b, c), and the opposite one.
func (h harmonic) level() (one, other float64) {
	n := math.Sqrt(float64(h.b*h.b) + float64(h.c*h.c))
	if n == 0 {
		return math.NaN(), math.NaN()
	}
	t := geom.Turn{Cos: h.b / n, Sin: h.c / n}
	return t.HalfTan(), geom.Turn{Cos: -t.Cos, Sin: -t.Sin}.HalfTan()
}

// less gives h less a straight line in another coordinate m: h − c0 − c1·m.
func (h harmonic) less(l geom.Line, m harmonic) harmonic {
	return harmonic{
		h.a - l.C0 - float64(l.C1*m.a),
		h.b - float64(l.C1*m.b),
		h.c - float64(l.C1*m.c),
	}
}
