package geom

import "math"

// Vec is a point or a displacement in millimetres, in world axes (x, y, z) or
// in leaf axes (u, v, w).
type Vec struct{ X, Y, Z float64 }

// Add gives a + b.
func (a Vec) Add(b Vec) Vec { return Vec{a.X + b.X, a.Y + b.Y, a.Z + b.Z} }

// Sub gives a − b, the displacement from b to a.
func (a Vec) Sub(b Vec) Vec { return Vec{a.X - b.X, a.Y - b.Y, a.Z - b.Z} }

// Scale gives k·a.
func (a Vec) Scale(k float64) Vec { return Vec{k * a.X, k * a.Y, k * a.Z} }

// Dot gives the scalar product.
func (a Vec) Dot(b Vec) float64 {
	return float64(a.X*b.X) + float64(a.Y*b.Y) + float64(a.Z*b.Z)
}

// Cross gives the vector product a × b.
func (a Vec) Cross(b Vec) Vec {
	return Vec{
		float64(a.Y*b.Z) - float64(a.Z*b.Y),
		float64(a.Z*b.X) - float64(a.X*b.Z),
		float64(a.X*b.Y) - float64(a.Y*b.X),
	}
}

// Len gives the length in millimetres.
func (a Vec) Len() float64 { return math.Sqrt(a.Dot(a)) }

// Unit gives the displacement of length 1 the same way, or zero for zero.
func (a Vec) Unit() Vec {
	n := a.Len()
	if n == 0 {
		return Vec{}
	}
	return Vec{a.X / n, a.Y / n, a.Z / n}
}
