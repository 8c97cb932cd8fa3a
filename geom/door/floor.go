package door

import (
	"math"

	"leafwright/geom"
)

// Floor is the finished floor's height at distances from the world's origin in
// plan and swing angles, straight between them both ways and held at the nearest
// measured value beyond them. The zero value is level at height 0.
type Floor struct {
	Radii   []float64    // mm, rising
	Angles  []geom.Angle // rising, the first usually 0
	Heights [][]float64  // y, one row an angle, one entry a radius
}

// FlatFloor is a floor level at height y.
func FlatFloor(y float64) Floor {
	return Floor{Radii: []float64{0}, Angles: []geom.Angle{0}, Heights: [][]float64{{y}}}
}

// At gives the floor's height at the place (x, z).
func (f *Floor) At(x, z float64) float64 {
	if len(f.Radii) == 0 || len(f.Angles) == 0 {
		return 0
	}
	r := math.Sqrt(float64(x*x) + float64(z*z))
	if len(f.Angles) == 1 {
		return along(f.Radii, f.Heights[0], r)
	}
	return f.Polar(r, geom.Angle(math.Atan2(z, x)))
}

// Polar gives the floor's height at distance r and angle a.
func (f *Floor) Polar(r float64, a geom.Angle) float64 {
	if len(f.Radii) == 0 || len(f.Angles) == 0 {
		return 0
	}
	n := len(f.Angles)
	if a <= f.Angles[0] {
		return along(f.Radii, f.Heights[0], r)
	}
	if a >= f.Angles[n-1] {
		return along(f.Radii, f.Heights[n-1], r)
	}
	i := 0
	for i < n-2 && a >= f.Angles[i+1] {
		i++
	}
	lo, hi := along(f.Radii, f.Heights[i], r), along(f.Radii, f.Heights[i+1], r)
	return lo + float64((hi-lo)*float64((a-f.Angles[i])/(f.Angles[i+1]-f.Angles[i])))
}

// IsLevel tells whether the floor has one height everywhere.
func (f *Floor) IsLevel() bool {
	for _, row := range f.Heights {
		for _, h := range row {
			if h != f.Heights[0][0] {
				return false
			}
		}
	}
	return true
}

// along gives the value at r of the straight pieces through (at, value), held at
// both ends.
func along(at, value []float64, r float64) float64 {
	n := len(at)
	if r <= at[0] {
		return value[0]
	}
	if r >= at[n-1] || n == 1 {
		return value[n-1]
	}
	i := 0
	for i < n-2 && r >= at[i+1] {
		i++
	}
	return value[i] + float64((value[i+1]-value[i])*((r-at[i])/(at[i+1]-at[i])))
}

func (f Floor) clone() Floor {
	f.Radii = append([]float64(nil), f.Radii...)
	f.Angles = append([]geom.Angle(nil), f.Angles...)
	rows := make([][]float64, len(f.Heights))
	for i, row := range f.Heights {
		rows[i] = append([]float64(nil), row...)
	}
	f.Heights = rows
	return f
}
