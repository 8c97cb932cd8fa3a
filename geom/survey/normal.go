package survey

import "math"

// Uncertain is a quantity that rests on readings: its value and its standard
// deviation, both mm.
type Uncertain struct{ Value, Sigma float64 }

// Coverage is the chance that the truth lies within [Uncertain.Margin] of a value.
const Coverage = 0.90

// Margin is what is written behind ±: half the interval that holds the truth with
// the chance Coverage.
func (u Uncertain) Margin() float64 {
	const ninety = 1.6448536269514722 // of a normal error, two-sided
	return ninety * u.Sigma
}

// Binds is the chance that the quantity is below zero.
func (u Uncertain) Binds() float64 { return u.Below(0) }

// Below is the chance that the quantity is below the limit, its error being normal.
func (u Uncertain) Below(limit float64) float64 {
	d := limit - u.Value
	if !(u.Sigma > 0) {
		if d > 0 {
			return 1
		}
		return 0
	}
	return normal(d / u.Sigma)
}

// normal gives the normal distribution's chance of a value below z. It uses no
// [math.Exp], whose last bit differs between processors.
func normal(z float64) float64 {
	if z != z {
		return math.NaN()
	}
	if z > 8 {
		return 1
	}
	if z < -8 {
		return 0
	}
	// The integral's series, Σ z^(2k+1)/(1·3·5···(2k+1)), times the density.
	t, sum := z, z
	for k := 3.0; k < 300; k += 2 {
		t = float64(t*float64(z*z)) / k
		if sum+t == sum {
			break
		}
		sum += t
	}
	p := 0.5 + float64(sum*float64(decay(z*z/2)/math.Sqrt(2*math.Pi)))
	return max(0, min(1, p))
}

// decay gives e^-x for x ≥ 0: the series of a small part of x, squared up again.
func decay(x float64) float64 {
	halvings := 0
	for x > 0.25 {
		x /= 2
		halvings++
	}
	t, sum := 1.0, 1.0
	for k := 1.0; k < 14; k++ {
		t = float64(t*-x) / k
		sum += t
	}
	for range halvings {
		sum = float64(sum * sum)
	}
	return sum
}

func sqrt(x float64) float64 { return math.Sqrt(x) }
