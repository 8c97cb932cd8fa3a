package trim_test

import (
	"math"
	"testing"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/trim"
)

// extreme gives a number no tape reads, or one at an end of what is allowed.
func (c dice) extreme(allow door.Range) float64 {
	all := []float64{
		math.NaN(), math.Inf(1), math.Inf(-1), 1e300, -1e300, 5e-324, -5e-324, 0, math.Copysign(0, -1),
		allow.Lo, allow.Hi, math.Nextafter(allow.Lo, math.Inf(-1)), math.Nextafter(allow.Hi, math.Inf(1)), 1e-9, -1e-9, 0.005, 1e9, math.MaxFloat64,
	}
	return all[c.IntN(len(all))]
}

// Moves of every kind, some of them with one or two numbers that are extreme, one after
// another: none panics, a refused one leaves the shapes as they were, and what is made
// can be hung and has no number that is none.
func TestExtremeNumbers(t *testing.T) {
	type tally struct{ made, refused int }
	seen := map[trim.Kind]*tally{}
	for i := range trim.Kinds {
		seen[trim.Kinds[i].Kind] = new(tally)
	}
	for n := range pieces(300) {
		c := throw(6_000_000 + n)
		p := randomPiece(n % 40)
		for range 12 {
			m := c.move(&p)
			m.Off = false
			spec := trim.SpecOf(m.Kind)
			amount := spec.Amount
			for range c.IntN(3) {
				switch c.IntN(14) {
				case 0:
					m.First = c.extreme(amount)
				case 1:
					m.Last = c.extreme(amount)
				case 2:
					m.First = amount.Hi
					m.Last = amount.Lo
				case 3:
					m.From, m.To = c.extreme(door.Place), c.extreme(door.Place)
				case 4:
					m.Angle = geom.Angle(c.extreme(door.Range{Lo: -7 * float64(geom.Degree), Hi: 7 * float64(geom.Degree)}))
				case 5:
					m.Stock = c.extreme(door.LeafThickness)
				case 6:
					m.SetIn = c.extreme(door.LeafThickness)
				case 7:
					m.Hollow = c.extreme(door.Range{Hi: 20})
				case 8:
					m.Closed, m.Plates = c.extreme(door.Closed), c.extreme(door.HingePlate)
				case 9:
					m.Pin, m.LeafGain = c.extreme(door.Pin), c.extreme(door.Gain)
				case 10:
					m.Cover = c.extreme(door.FloorHeight)
				case 11:
					m.Wide = c.extreme(door.Range{Lo: 1, Hi: 1000})
				case 12:
					m.Line = geom.Profile{{At: c.extreme(door.Place), Value: c.extreme(amount)}, {At: c.extreme(door.Place), Value: c.extreme(amount)}}
				case 13:
					m.Hinge = []int{-1, 0, 1, math.MaxInt, math.MinInt}[c.IntN(5)]
				}
			}
			if c.of(0.8) { // a field that does not count is refused for itself
				m = counting(m)
			}
			q := holds(t, p, m)
			k := seen[spec.Kind]
			if same(p, q) {
				k.refused++
			} else {
				k.made++
			}
			f := fitOf(q)
			for e := range f.Gaps {
				if math.IsNaN(f.Gaps[e].Least) || math.IsNaN(f.Gaps[e].Most) || math.IsNaN(f.Swing[e].Least) {
					t.Fatalf("piece %d, %+v: no gap at edge %d", n, m, e)
				}
			}
			p = q
		}
	}
	for kind, k := range seen {
		if k.made == 0 || k.refused == 0 {
			t.Errorf("%s: made %d times, refused %d: too one-sided a test", kind, k.made, k.refused)
		}
	}
}
