package lsq_test

import (
	"math"
	"testing"

	"leafwright/geom/survey/lsq"
)

// The braced figures are from F. Krumm, Geodetic Network Adjustment Examples,
// Univ. Stuttgart, who names the textbook of each: inputs and printed answers.
// Answers with more digits than the print were recomputed outside this program
// and agree with every printed digit.

// figure is a plane figure of points, some fixed, braced by measured distances of
// one standard deviation.
type figure struct {
	points map[string][2]float64
	free   []string // points whose coordinates are unknown, x and y each
	held   map[string]bool
	lines  []line
	sigma  float64
}

type line struct {
	from, to string
	long     float64
}

// solve gives the figure's coordinates and solution. Each unknown coordinate is
// also wished to stay where it starts, with the weight loose: with a weight near
// nothing that picks, of all that fit as well, the one that moves least.
func (f *figure) solve(t *testing.T, loose float64) (map[string][2]float64, *lsq.Solution, []int) {
	t.Helper()
	var x []float64
	col := map[string]int{}
	for _, name := range f.free {
		col[name] = len(x)
		x = append(x, f.points[name][0], f.points[name][1])
	}
	start := append([]float64(nil), x...)
	at := func(x []float64, name string, axis int) float64 {
		if c, ok := col[name]; ok && !f.held[name+string("xy"[axis])] {
			return x[c+axis]
		}
		return f.points[name][axis]
	}
	problem := func(x []float64, rows *lsq.Rows) {
		for _, l := range f.lines {
			dx := at(x, l.to, 0) - at(x, l.from, 0)
			dy := at(x, l.to, 1) - at(x, l.from, 1)
			d := math.Sqrt(dx*dx + dy*dy)
			for axis, part := range [2]float64{dx / d, dy / d} {
				if c, ok := col[l.to]; ok {
					rows.Add(c+axis, part)
				}
				if c, ok := col[l.from]; ok {
					rows.Add(c+axis, -part)
				}
			}
			v := f.sigma * f.sigma
			rows.End(l.long-d, 1/v)
		}
		for i := range x {
			if loose > 0 {
				rows.Add(i, 1)
				rows.End(start[i]-x[i], loose)
			}
		}
	}
	var s lsq.Solution
	if err := s.Solve(problem, x, lsq.Options{}); err != nil {
		t.Fatal(err)
	}
	out := map[string][2]float64{}
	for _, name := range f.free {
		out[name] = [2]float64{x[col[name]], x[col[name]+1]}
	}
	return out, &s, nil
}

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s is %.12g, want %.12g ± %g", what, got, want, within)
	}
}

// sum gives the weighted sum of squares of the first n rows.
func sum(s *lsq.Solution, n int) float64 {
	var out float64
	for i := range n {
		out += s.Rows.Weight(i) * s.Rows.Off(i) * s.Rows.Off(i)
	}
	return out
}

// Strang and Borre 1997, Ex. 12.4 p. 411: the pattern of a leaf measured by four
// sides and two diagonals, left free to lie anywhere.
func TestBracedQuadrilateralLyingFree(t *testing.T) {
	f := figure{
		points: map[string][2]float64{"P": {170.71, 170.71}, "1": {170.71, 270.71}, "2": {100, 100}, "3": {241.42, 100}},
		free:   []string{"P", "1", "2", "3"},
		lines: []line{{"1", "P", 100.010}, {"2", "P", 100.020}, {"3", "P", 100.030},
			{"1", "2", 184.785}, {"2", "3", 141.440}, {"1", "3", 184.805}},
		sigma: 0.01,
	}
	const loose = 1e-4 // against 1e4 for the distances
	got, s, _ := f.solve(t, loose)
	for i, v := range []float64{-7.197282679854, -5.088265153189, -5.089696566785, 3.894592312861, 2.107619395503, 3.895720128384} {
		near(t, f.lines[i].from+"-"+f.lines[i].to+" residual, mm", -1000*s.Rows.Off(i), v, 1e-6)
	}
	near(t, "sigma0", math.Sqrt(sum(s, 6)), 1.176362510054905, 1e-7)
	for name, want := range map[string][2]float64{
		"P": {170.712266412, 170.718529845}, "1": {170.703203434, 270.721332152},
		"2": {99.991211621, 99.997140022}, "3": {241.433318533, 99.982997981},
	} {
		near(t, name+" x", got[name][0], want[0], 1e-7)
		near(t, name+" y", got[name][1], want[1], 1e-7)
	}

	// One redundancy, shared by the six.
	var redundancy float64
	half := make([]float64, 8)
	for i := range 6 {
		s.Rows.Scatter(half, i, 1)
		s.Factor.Half(half, half)
		redundancy += 1 - s.Rows.Weight(i)*lsq.Dot(half, half)
	}
	near(t, "redundancy", redundancy, 1, 1e-6)
}

// Strang and Borre 1997, Ex. 10.1 p. 345; the print has P = 170.7029, 170.7234
// and standard deviations of 33.03 and 23.35 mm.
func TestPointFromThreeFixedCorners(t *testing.T) {
	f := figure{
		points: map[string][2]float64{"P": {170.71, 170.71}, "1": {170.71, 270.71}, "2": {100, 100}, "3": {241.42, 100}},
		free:   []string{"P"},
		lines:  []line{{"1", "P", 100.01}, {"2", "P", 100.02}, {"3", "P", 100.03}},
		sigma:  0.01,
	}
	got, s, _ := f.solve(t, 0)
	near(t, "P x", got["P"][0], 170.70292544279, 1e-9)
	near(t, "P y", got["P"][1], 170.72335661231, 1e-9)
	for i, v := range []float64{-23.35636203, -16.51587729, -16.51188743} {
		near(t, f.lines[i].from+"-P residual, mm", -1000*s.Rows.Off(i), v, 1e-7)
	}
	sigma0 := math.Sqrt(sum(s, 3))
	near(t, "sigma0", sigma0, 3.302932449650531, 1e-9)
	near(t, "sd of x, mm", 1000*sigma0*math.Sqrt(s.Variance([]float64{1, 0})), 33.03244419, 1e-6)
	near(t, "sd of y, mm", 1000*sigma0*math.Sqrt(s.Variance([]float64{0, 1})), 23.35415663, 1e-6)
}

// Benning 2011, Ex. 8-2 p. 256: inputs; the answer is an open adjustment
// program's, reproduced outside this one.
func TestSquareWithTwoDiagonals(t *testing.T) {
	f := figure{
		points: map[string][2]float64{"1": {0, 1000}, "2": {1000, 1000}, "3": {0, 0}, "4": {1000, 0}},
		free:   []string{"3", "4"},
		lines:  []line{{"1", "3", 1000.020}, {"1", "4", 1414.200}, {"2", "3", 1414.240}, {"2", "4", 999.980}, {"3", "4", 1000}},
		sigma:  0.01,
	}
	got, s, _ := f.solve(t, 0)
	near(t, "3 x", got["3"][0], -0.009584504679, 1e-10)
	near(t, "3 y", got["3"][1], -0.022601212462, 1e-10)
	near(t, "4 x", got["4"][0], 999.993015998983, 1e-10)
	near(t, "4 y", got["4"][1], 0.017398661945, 1e-10)
	for i, v := range []float64{1000.022601, 1414.196321, 1414.236321, 999.982601, 1000.002601} {
		near(t, f.lines[i].from+"-"+f.lines[i].to+" adjusted", f.lines[i].long-s.Rows.Off(i), v, 1e-6)
	}
	sigma0 := math.Sqrt(sum(s, 5))
	near(t, "sigma0", sigma0, 0.6882415335, 1e-9)
	near(t, "sd x, mm", 1000*sigma0*math.Sqrt(s.Variance([]float64{1, 0, 0, 0})), 9.01, 0.005)
	near(t, "sd y, mm", 1000*sigma0*math.Sqrt(s.Variance([]float64{0, 1, 0, 0})), 6.37, 0.005)
}

// Ghilani 2010, Ex. 14.5 p. 251, feet; printed Wisconsin 2415776.9044,
// 391043.2945 and Campus 2416892.6955, 387603.2551.
func TestQuadrilateralOnTwoFixedCorners(t *testing.T) {
	f := figure{
		points: map[string][2]float64{"Ba": {2410000, 390000}, "Bu": {2411820, 386881.222}, "Wi": {2415776.819, 391043.461}, "Ca": {2416892.670, 387603.450}},
		free:   []string{"Wi", "Ca"},
		lines:  []line{{"Ba", "Wi", 5870.302}, {"Ba", "Ca", 7297.588}, {"Wi", "Ca", 3616.434}, {"Wi", "Bu", 5742.878}, {"Ca", "Bu", 5123.760}},
		sigma:  1,
	}
	got, s, _ := f.solve(t, 0)
	near(t, "Wisconsin x", got["Wi"][0], 2415776.904378, 1e-6)
	near(t, "Wisconsin y", got["Wi"][1], 391043.294493, 1e-6)
	near(t, "Campus x", got["Ca"][0], 2416892.695516, 1e-6)
	near(t, "Campus y", got["Ca"][1], 387603.255128, 1e-6)
	for i, v := range []float64{0.054683538, -0.079010545, 0.036750959, -0.061644569, 0.063926716} {
		near(t, f.lines[i].from+"-"+f.lines[i].to+" residual", -s.Rows.Off(i), v, 1e-8)
	}
	s0 := math.Sqrt(sum(s, 5))
	near(t, "S0", s0, 0.1359053581, 1e-9)
	g := make([]float64, 4)
	for i, want := range []float64{.14879, .22061, .10378, .27054} {
		clear(g)
		g[i] = 1
		near(t, "sd", s0*math.Sqrt(s.Variance(g)), want, 5e-6)
	}
}
