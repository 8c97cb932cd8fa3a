package geom

import "math"

// Angle is a plane angle in radians.
type Angle float64

// Degree is the angle a person reads as 1°.
const Degree Angle = math.Pi / 180

// Degrees gives the angle as a number of degrees.
func (a Angle) Degrees() float64 { return float64(a / Degree) }

// Turn gives the turn by this angle.
func (a Angle) Turn() Turn {
	return Turn{Cos: math.Cos(float64(a)), Sin: math.Sin(float64(a))}
}

// Tan gives the tangent of the angle.
func (a Angle) Tan() float64 { return math.Tan(float64(a)) }

// Turn is an angle kept as its cosine and sine, so that turning and comparing
// need no trigonometry. It lies in (−180°, 180°].
type Turn struct{ Cos, Sin float64 }

// HalfTan gives the turn whose half has the tangent t.
func HalfTan(t float64) Turn {
	if t > 1e8 || t < -1e8 { // t² would swamp 1: the turn is 180° to the last bit
		return Turn{Cos: -1}
	}
	d := 1 + t*t
	return Turn{Cos: (1 - t*t) / d, Sin: 2 * t / d}
}

// HalfTan gives the tangent of half the turn; it rises with the angle from
// −180° to 180°.
func (r Turn) HalfTan() float64 {
	if r.Cos > 0 {
		return r.Sin / (1 + r.Cos)
	}
	if r.Sin == 0 {
		return math.Inf(1)
	}
	return (1 - r.Cos) / r.Sin
}

// Angle gives the turn as an angle in (−180°, 180°].
func (r Turn) Angle() Angle { return Angle(math.Atan2(r.Sin, r.Cos)) + 0 } // + 0: no negative zero
