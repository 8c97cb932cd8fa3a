package lsq_test

import (
	"math"
	"testing"

	"leafwright/geom/survey/lsq"
)

// The data and certified values of this file are those of the NIST Statistical
// Reference Datasets (StRD).

// curve is a model y = f(x; b) with its derivatives in b.
type curve func(x float64, b, slope []float64) float64

func fit(t *testing.T, f curve, x, y, b []float64) *lsq.Solution {
	t.Helper()
	slope := make([]float64, len(b))
	var s lsq.Solution
	err := s.Solve(func(b []float64, rows *lsq.Rows) {
		for i := range x {
			v := f(x[i], b, slope)
			for k, d := range slope {
				rows.Add(k, d)
			}
			rows.End(y[i]-v, 1)
		}
	}, b, lsq.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return &s
}

func polynomial(x float64, b, slope []float64) float64 {
	p, v := 1.0, 0.0
	for k := range b {
		slope[k] = p
		v += b[k] * p
		p *= x
	}
	return v
}

// digits checks that got agrees with want to so many digits.
func digits(t *testing.T, what string, got, want float64, n int) {
	t.Helper()
	near(t, what, got, want, math.Abs(want)*math.Pow(10, -float64(n)))
}

func deviations(s *lsq.Solution, n, k int) []float64 {
	residual := math.Sqrt(s.Rows.Objective() / float64(n-k))
	out := make([]float64, k)
	g := make([]float64, k)
	for i := range out {
		clear(g)
		g[i] = 1
		out[i] = residual * math.Sqrt(s.Variance(g))
	}
	return out
}

func TestNorris(t *testing.T) {
	x := []float64{0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777.0, 558.2, 0.4, 0.6, 775.5, 666.9, 338.0, 447.5, 11.6, 556.0, 228.1, 995.8, 887.6, 120.2, 0.3, 0.3, 556.8, 339.1, 887.2, 999.0, 779.0, 11.1, 118.3, 229.2, 669.1, 448.9, 0.5}
	y := []float64{0.1, 338.8, 118.1, 888.0, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3, 0.1, 778.1, 668.8, 339.3, 448.9, 10.8, 557.7, 228.3, 998.0, 888.8, 119.6, 0.3, 0.6, 557.6, 339.3, 888.0, 998.5, 778.9, 10.2, 117.6, 228.9, 668.4, 449.2, 0.2}
	b := []float64{0, 0}
	s := fit(t, polynomial, x, y, b)
	digits(t, "B0", b[0], -0.262323073774029, 12)
	digits(t, "B1", b[1], 1.00211681802045, 13)
	sd := deviations(s, len(x), 2)
	digits(t, "sd of B0", sd[0], 0.232818234301152, 12)
	digits(t, "sd of B1", sd[1], 0.429796848199937e-03, 12)
	rss := s.Rows.Objective()
	digits(t, "residual sum of squares", rss, 26.6173985294224, 12)
	digits(t, "residual sd", math.Sqrt(rss/float64(len(x)-2)), 0.884796396144373, 12)
	var mean, total float64
	for _, v := range y {
		mean += v / float64(len(y))
	}
	for _, v := range y {
		total += (v - mean) * (v - mean)
	}
	digits(t, "R²", 1-rss/total, 0.999993745883712, 13)
}

// A polynomial of the fifth degree through 21 places that fits without remainder:
// hard on the arithmetic alone.
func TestWampler1(t *testing.T) {
	var x, y []float64
	for i := range 21 {
		v := float64(i)
		x = append(x, v)
		y = append(y, 1+v*(1+v*(1+v*(1+v*(1+v)))))
	}
	b := make([]float64, 6)
	s := fit(t, polynomial, x, y, b)
	for k := range b {
		digits(t, "coefficient", b[k], 1, 9)
	}
	near(t, "residual sum of squares", s.Rows.Objective(), 0, 1e-12)
}

func TestMisra1a(t *testing.T) {
	y := []float64{10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.40, 75.47, 81.78}
	x := []float64{77.6, 114.9, 141.1, 190.8, 239.9, 289.0, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760.0}
	for _, start := range [][]float64{{500, 0.0001}, {250, 0.0005}} {
		b := append([]float64(nil), start...)
		s := fit(t, func(x float64, b, slope []float64) float64 {
			e := math.Exp(-b[1] * x)
			slope[0], slope[1] = 1-e, b[0]*x*e
			return b[0] * (1 - e)
		}, x, y, b)
		digits(t, "b1", b[0], 2.3894212918e+02, 10)
		digits(t, "b2", b[1], 5.5015643181e-04, 10)
		digits(t, "residual sum of squares", s.Rows.Objective(), 1.2455138894e-01, 10)
		sd := deviations(s, len(x), 2)
		digits(t, "sd of b1", sd[0], 2.7070075241e+00, 9)
		digits(t, "sd of b2", sd[1], 7.2668688436e-06, 9)
	}
}

func TestDanWood(t *testing.T) {
	y := []float64{2.138, 3.421, 3.597, 4.340, 4.882, 5.660}
	x := []float64{1.309, 1.471, 1.490, 1.565, 1.611, 1.680}
	for _, start := range [][]float64{{1, 5}, {0.7, 4}} {
		b := append([]float64(nil), start...)
		s := fit(t, func(x float64, b, slope []float64) float64 {
			p := math.Pow(x, b[1])
			slope[0], slope[1] = p, b[0]*p*math.Log(x)
			return b[0] * p
		}, x, y, b)
		digits(t, "b1", b[0], 7.6886226176e-01, 10)
		digits(t, "b2", b[1], 3.8604055871e+00, 10)
		digits(t, "residual sum of squares", s.Rows.Objective(), 4.3173084083e-03, 10)
		digits(t, "residual sd", math.Sqrt(s.Rows.Objective()/4), 3.2853114039e-02, 10)
		sd := deviations(s, len(x), 2)
		digits(t, "sd of b1", sd[0], 1.8281973860e-02, 9)
		digits(t, "sd of b2", sd[1], 5.1726610913e-02, 9)
	}
}
