package survey

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"

	"leafwright/geom/survey/lsq"
)

// dense gives the rows, each times the root of its weight, and their offs likewise.
func dense(rows *lsq.Rows, n int) (*mat.Dense, *mat.VecDense) {
	j, off := mat.NewDense(rows.Len(), n, nil), mat.NewVecDense(rows.Len(), nil)
	g := make([]float64, n)
	for i := range rows.Len() {
		w := math.Sqrt(rows.Weight(i))
		rows.Scatter(g, i, w)
		j.SetRow(i, g)
		off.SetVec(i, w*rows.Off(i))
	}
	return j, off
}

// The whole network of a door, solved by gonum's QR instead, and its covariance by
// gonum's inverse: to 1e-9.
func TestAgainstGonum(t *testing.T) {
	for n := range 10 {
		s := simulate(uint64(n))
		d := s.door()
		res := Adjust(s.read(&d, whole(&d)))
		a := res.adj
		k := len(a.x)

		x := a.net.unknowns()
		a.aim()
		for round := range times {
			for range 20 {
				var rows lsq.Rows
				rows.Reset()
				a.say(x, &rows)
				j, off := dense(&rows, k)
				var qr mat.QR
				qr.Factorize(j)
				var q, upper mat.Dense
				qr.QTo(&q)
				qr.RTo(&upper)
				var turned, step mat.VecDense // by Q and R: the library's own solve loses figures on sparse rows
				turned.MulVec(q.T(), off)
				if err := step.SolveVec(upper.Slice(0, k, 0, k), turned.SliceVec(0, k)); err != nil {
					t.Fatal(err)
				}
				for i := range x {
					x[i] += step.AtVec(i)
				}
				if mat.Norm(&step, 2) < 1e-10 {
					break
				}
			}
			a.net.write(x)
			if round < times-1 {
				a.net.rest()
			}
		}
		for i := range x {
			if math.Abs(x[i]-a.x[i]) > 1e-9*math.Max(1, math.Abs(x[i])) {
				t.Errorf("door %d: unknown %d is %.12f, by gonum %.12f", n, i, a.x[i], x[i])
			}
		}

		// N⁻¹P three times over is what the wishes leave, so the covariance is
		// 2(Z₃) − Z₅ with Z_m the sum of (N⁻¹P)^i·N⁻¹ up to m.
		j, _ := dense(&a.sol.Rows, k)
		var normal, inverse, wishes mat.Dense
		normal.Mul(j.T(), j)
		if err := inverse.Inverse(&normal); err != nil {
			t.Fatal(err)
		}
		p := j.Slice(len(a.rowOf), a.sol.Rows.Len(), 0, k)
		wishes.Mul(p.T(), p)
		var ratio mat.Dense
		ratio.Mul(&inverse, &wishes)
		cov := mat.NewDense(k, k, nil)
		term := mat.DenseCopyOf(&inverse)
		for m := range 2*times - 1 {
			sign := -1.0
			if m < times {
				sign = 1
			}
			var part, next mat.Dense
			part.Scale(sign, term)
			cov.Add(cov, &part)
			next.Mul(&ratio, term)
			term = &next
		}
		g := make([]float64, k)
		for i := range g {
			clear(g)
			g[i] = 1
			a.pull(a.spare, g)
			if got, want := a.variance(a.spare), cov.At(i, i); math.Abs(got-want) > 1e-9*math.Max(1, want) {
				t.Errorf("door %d: variance of unknown %d is %.12f, by gonum %.12f", n, i, got, want)
			}
		}
	}
}
