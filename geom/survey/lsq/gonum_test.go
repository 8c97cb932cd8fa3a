package lsq_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/mat"

	"leafwright/geom/survey/lsq"
)

// network gives random sparse rows in n unknowns, enough to determine them.
func network(rng *rand.Rand, n int) *lsq.Rows {
	var r lsq.Rows
	r.Reset()
	for i := range 2*n + 3 {
		if i < n {
			r.Add(i, 1+rng.Float64())
		}
		for range 3 {
			r.Add(rng.IntN(n), rng.NormFloat64())
		}
		r.End(rng.NormFloat64(), math.Pow(10, 2*rng.Float64()))
	}
	return &r
}

// The factor, the solution and every variance against gonum's, of the same rows.
func TestFactorAgainstGonum(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	for range 40 {
		n := 1 + rng.IntN(60)
		r := network(rng, n)
		j := mat.NewDense(r.Len(), n, nil)
		b := mat.NewVecDense(r.Len(), nil)
		g := make([]float64, n)
		for i := range r.Len() {
			w := math.Sqrt(r.Weight(i))
			r.Scatter(g, i, w)
			j.SetRow(i, g)
			b.SetVec(i, w*r.Off(i))
		}
		var qr mat.QR
		qr.Factorize(j)
		var q, upper mat.Dense
		qr.QTo(&q)
		qr.RTo(&upper)
		var turned, want mat.VecDense // by Q and R: the library's own solve loses figures on rows as sparse as these
		turned.MulVec(q.T(), b)
		if err := want.SolveVec(upper.Slice(0, n, 0, n), turned.SliceVec(0, n)); err != nil {
			t.Fatal(err)
		}
		var normal, inverse mat.Dense
		normal.Mul(j.T(), j)
		if err := inverse.Inverse(&normal); err != nil {
			t.Fatal(err)
		}

		x := make([]float64, n)
		var s lsq.Solution
		err := s.Solve(func(x []float64, rows *lsq.Rows) {
			for i := range r.Len() {
				cols, coefs := r.Row(i)
				for k, c := range cols {
					rows.Add(c, coefs[k])
				}
				rows.End(r.Off(i)-r.Dot(i, x), r.Weight(i))
			}
		}, x, lsq.Options{})
		if err != nil {
			t.Fatal(err)
		}
		z := make([]float64, n)
		for i := range x {
			near(t, "unknown", x[i], want.AtVec(i), 1e-9)
			clear(g)
			g[i] = 1
			near(t, "variance", s.Variance(g), inverse.At(i, i), 1e-9)
			s.Factor.Solve(z, g)
			for k := range z {
				near(t, "covariance", z[k], inverse.At(k, i), 1e-9)
			}
		}
	}
}

// Rows that leave an unknown open are told, by its number.
func TestUndetermined(t *testing.T) {
	for _, row := range []struct {
		situation string
		rows      func(*lsq.Rows)
		want      int
	}{
		{"an unknown nobody saw", func(r *lsq.Rows) { r.Add(0, 1); r.End(0, 1) }, 1},
		{"only the sum of two", func(r *lsq.Rows) {
			for k := range 3 {
				r.Add(0, float64(k+1))
				r.Add(1, float64(k+1))
				r.End(1, 1)
			}
		}, 1},
		{"seen with no weight", func(r *lsq.Rows) {
			r.Add(0, 1)
			r.End(0, 0)
			r.Add(1, 1)
			r.End(0, 1)
		}, 0},
		{"no number", func(r *lsq.Rows) {
			r.Add(0, math.NaN())
			r.End(0, 1)
			r.Add(1, 1)
			r.End(0, 1)
		}, 0},
	} {
		t.Run(row.situation, func(t *testing.T) {
			var r lsq.Rows
			row.rows(&r)
			var f lsq.Factor
			var u lsq.Undetermined
			if err := f.Set(&r, 2); !errors.As(err, &u) || u.Unknown != row.want {
				t.Errorf("%v, want unknown %d", err, row.want)
			}
		})
	}
}

// A problem with no way down is given up, at the start it was given.
func TestAstray(t *testing.T) {
	var s lsq.Solution
	x := []float64{1}
	err := s.Solve(func(x []float64, rows *lsq.Rows) {
		rows.Add(0, 1)
		rows.End(math.NaN(), 1)
	}, x, lsq.Options{})
	if !errors.Is(err, lsq.ErrAstray) || x[0] != 1 {
		t.Errorf("%v, x = %v", err, x)
	}
}
