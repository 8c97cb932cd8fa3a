package survey

import (
	"math"
	"testing"
)

// Against math.Erfc, and the percentage points every table has.
func TestNormal(t *testing.T) {
	for z := -9.0; z <= 9; z += 0.0625 {
		if got, want := normal(z), math.Erfc(-z/math.Sqrt2)/2; math.Abs(got-want) > 1e-13 {
			t.Errorf("normal(%v) = %.17g, want %.17g", z, got, want)
		}
	}
	for _, row := range []struct{ z, p float64 }{
		{critical, 1 - 0.0005}, {-critical, 0.0005}, {power, 0.95}, {told, 0.99}, {sure, 0.975},
		{Uncertain{Sigma: 1}.Margin(), 0.5 + Coverage/2},
	} {
		if got := normal(row.z); math.Abs(got-row.p) > 1e-12 {
			t.Errorf("normal(%v) = %.15g, want %v", row.z, got, row.p)
		}
	}
}

func TestChanceOfBinding(t *testing.T) {
	for _, row := range []struct {
		situation string
		u         Uncertain
		want      float64
	}{
		{"just touching", Uncertain{0, 1}, 0.5},
		{"one standard deviation clear", Uncertain{1, 1}, 0.15865525393145707},
		{"one standard deviation foul", Uncertain{-2, 2}, 0.84134474606854293},
		{"surely clear", Uncertain{3, 0}, 0},
		{"surely foul", Uncertain{-3, 0}, 1},
		{"far clear", Uncertain{100, 1}, 0},
	} {
		t.Run(row.situation, func(t *testing.T) {
			if got := row.u.Binds(); math.Abs(got-row.want) > 1e-14 {
				t.Errorf("%v, want %v", got, row.want)
			}
		})
	}
	if !math.IsNaN(normal(math.NaN())) {
		t.Error("no number has a chance")
	}
}
