package geom

import "math"

// Interval is a closed stretch of numbers, empty when Lo > Hi. The zero value
// holds the single number 0.
type Interval struct{ Lo, Hi float64 }

// Empty is the interval that holds nothing and that [Interval.With] can start from.
func Empty() Interval { return Interval{math.Inf(1), math.Inf(-1)} }

// IsEmpty tells whether the interval holds no number.
func (i Interval) IsEmpty() bool { return !(i.Lo <= i.Hi) }

// Length is Hi − Lo, 0 when empty.
func (i Interval) Length() float64 {
	if i.IsEmpty() {
		return 0
	}
	return i.Hi - i.Lo
}

// Mid is the middle of the interval.
func (i Interval) Mid() float64 { return i.Lo + (i.Hi-i.Lo)/2 }

// Contains tells whether x lies in the interval, ends included.
func (i Interval) Contains(x float64) bool { return i.Lo <= x && x <= i.Hi }

// Intersect gives the numbers in both.
func (i Interval) Intersect(j Interval) Interval {
	return Interval{max(i.Lo, j.Lo), min(i.Hi, j.Hi)}
}

// With gives the least interval that holds i and x.
func (i Interval) With(x float64) Interval { return Interval{min(i.Lo, x), max(i.Hi, x)} }

// Clamp gives the number in the interval nearest to x.
func (i Interval) Clamp(x float64) float64 { return min(max(x, i.Lo), i.Hi) }

// Joined makes one of stretches, in rising order, that lie nearer together than so much. It
// gives back the slice it was given, shortened.
func Joined(all []Interval, together float64) []Interval {
	n := 0
	for _, at := range all {
		if n > 0 && at.Lo-all[n-1].Hi < together {
			all[n-1].Hi = at.Hi
			continue
		}
		all[n] = at
		n++
	}
	return all[:n]
}
