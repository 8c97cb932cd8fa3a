package fit

import (
	"math"
	"math/rand/v2"
	"testing"

	"leafwright/geom"
)

// anyCurve is a curve of joined random quadratics over [0, n·100].
func anyCurve(rng *rand.Rand) Curve {
	var c Curve
	v := rng.NormFloat64()
	for i := range 1 + rng.IntN(5) {
		p := Piece{Lo: float64(100 * i), Hi: float64(100 * (i + 1)), C0: v, C1: rng.NormFloat64() / 50, C2: rng.NormFloat64() / 5000}
		if rng.IntN(3) == 0 {
			p.C2 = 0
		}
		c.Pieces = append(c.Pieces, p)
		v = p.At(p.Hi)
	}
	return c
}

// The definition, on a fine grid, against the closed forms.
func TestCurveAgainstItsDefinition(t *testing.T) {
	rng := rand.New(rand.NewPCG(4, 1))
	for k := range 400 {
		c := anyCurve(rng)
		least, leastAt, most, mostAt := c.Extremes()
		if c.At(leastAt) != least || c.At(mostAt) != most {
			t.Fatalf("curve %d: extremes are not on the curve", k)
		}
		limit := least + (most-least)*rng.Float64()
		below, above := c.Below(limit, nil), c.Above(limit, nil)
		r := c.Range()
		for s := r.Lo; s <= r.Hi; s += 0.37 {
			v := c.At(s)
			if v < least-1e-12 || v > most+1e-12 {
				t.Fatalf("curve %d at %v: %v lies outside [%v, %v]", k, s, v, least, most)
			}
			if math.Abs(v-limit) < 1e-9 {
				continue
			}
			if in(below, s) != (v < limit) || in(above, s) != (v > limit) {
				t.Fatalf("curve %d at %v: %v against %v, below %v, above %v", k, s, v, limit, below, above)
			}
		}
		for _, i := range below {
			for _, end := range [2]float64{i.Lo, i.Hi} {
				if end != r.Lo && end != r.Hi && math.Abs(c.At(end)-limit) > 1e-9 {
					t.Fatalf("curve %d: a stretch ends at %v where the value is %v, not %v", k, end, c.At(end), limit)
				}
			}
		}
	}
}

func in(stretches []geom.Interval, s float64) bool {
	for _, i := range stretches {
		if i.Contains(s) {
			return true
		}
	}
	return false
}

func TestLesserIsTheLesser(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 1))
	for k := range 400 {
		a, b := anyCurve(rng), anyCurve(rng)
		c := Curve{lesser(nil, a.Pieces, b.Pieces)}
		if want := a.Range().Intersect(b.Range()); c.Range() != want {
			t.Fatalf("pair %d: range %v, want %v", k, c.Range(), want)
		}
		for s := c.Range().Lo; s <= c.Range().Hi; s += 0.73 {
			if got, want := c.At(s), min(a.At(s), b.At(s)); math.Abs(got-want) > 1e-9 {
				t.Fatalf("pair %d at %v: %v, want %v", k, s, got, want)
			}
		}
	}
}

func TestAnEmptyCurve(t *testing.T) {
	var c Curve
	least, _, _, _ := c.Extremes()
	if !c.Range().IsEmpty() || !math.IsNaN(c.At(3)) || !math.IsNaN(least) || c.Below(5, nil) != nil {
		t.Error("a curve of nothing has a value")
	}
}

func TestHarmonicRoots(t *testing.T) {
	rng := rand.New(rand.NewPCG(6, 1))
	for range 1000 {
		h := harmonic{rng.NormFloat64(), rng.NormFloat64(), rng.NormFloat64()}
		near, far := h.roots()
		for _, r := range [2]float64{near, far} {
			if v := h.at(geom.HalfTan(r)); !math.IsNaN(r) && math.Abs(v) > 1e-9 {
				t.Fatalf("%+v is %v at its root %v", h, v, r)
			}
		}
		if reach := math.Sqrt(h.b*h.b + h.c*h.c); math.IsNaN(near) != (math.Abs(h.a) > reach) {
			t.Fatalf("%+v: root %v, though its reach is %v", h, near, reach)
		}
		one, other := h.level()
		for _, r := range [2]float64{one, other} {
			if v := h.rate(geom.HalfTan(r)); math.Abs(v) > 1e-9 {
				t.Fatalf("%+v changes by %v where it stands level", h, v)
			}
		}
	}
}
