package lp

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/mat"
	simplex "gonum.org/v1/gonum/optimize/convex/lp"
)

// program is a program as a test makes it.
type program struct {
	cost, lo, hi []float64
	rows         [][]float64
	rlo, rhi     []float64
}

func (p *program) solver() *Solver {
	s := New(p.cost, p.lo, p.hi)
	for i, a := range p.rows {
		s.AddRow(a, p.rlo[i], p.rhi[i])
	}
	return s
}

// random gives a program with whole numbers, so that ties and degenerate corners
// are common; some have no solution.
func random(r *rand.Rand, n, m int) *program {
	p := &program{}
	whole := func(k int) float64 { return float64(r.IntN(2*k+1) - k) }
	for range n {
		p.cost = append(p.cost, whole(4))
		lo := whole(3)
		p.lo, p.hi = append(p.lo, lo), append(p.hi, lo+float64(r.IntN(8)))
	}
	for range m {
		a := make([]float64, n)
		for j := range a {
			if r.IntN(3) > 0 {
				a[j] = whole(3)
			}
		}
		lo := whole(6)
		hi := lo + float64(r.IntN(12))
		switch r.IntN(5) {
		case 0:
			lo = -Inf
		case 1:
			hi = Inf
		case 2:
			hi = lo
		}
		p.rows, p.rlo, p.rhi = append(p.rows, a), append(p.rlo, lo), append(p.rhi, hi)
	}
	return p
}

// other solves the program with gonum's simplex, a solver of its own: x = lo + x',
// one slack for each bound. ok is false where it gives no answer at all.
func (p *program) other() (z float64, feasible, ok bool) {
	n := len(p.cost)
	type line struct {
		a    []float64
		rhs  float64
		free float64 // coefficient of the slack; 0 = none
	}
	var lines []line
	for j := range n {
		a := make([]float64, n)
		a[j] = 1
		lines = append(lines, line{a, p.hi[j] - p.lo[j], 1})
	}
	for i, a := range p.rows {
		off := 0.0
		for j, k := range a {
			off += k * p.lo[j]
		}
		if p.rlo[i] == p.rhi[i] {
			lines = append(lines, line{a, p.rlo[i] - off, 0})
			continue
		}
		if !math.IsInf(p.rlo[i], 0) {
			lines = append(lines, line{a, p.rlo[i] - off, -1})
		}
		if !math.IsInf(p.rhi[i], 0) {
			lines = append(lines, line{a, p.rhi[i] - off, 1})
		}
	}
	m, slacks := len(lines), 0
	for _, l := range lines {
		if l.free != 0 {
			slacks++
		}
	}
	A, b, c := mat.NewDense(m, n+slacks, nil), make([]float64, m), make([]float64, n+slacks)
	copy(c, p.cost)
	k := n
	for i, l := range lines {
		for j, x := range l.a {
			A.Set(i, j, x)
		}
		if l.free != 0 {
			A.Set(i, k, l.free)
			k++
		}
		b[i] = l.rhs
	}
	defer func() {
		if recover() != nil {
			ok = false
		}
	}()
	base := 0.0
	for j, x := range p.cost {
		base += x * p.lo[j]
	}
	z, _, err := simplex.Simplex(c, A, b, 1e-10, nil)
	switch err {
	case nil:
		return z + base, true, true
	case simplex.ErrInfeasible:
		return 0, false, true
	}
	return 0, false, false
}

// check holds an answer against the program by itself.
func (p *program) check(t *testing.T, s *Solver, st State) {
	t.Helper()
	switch st {
	case Optimal:
		for j := range p.cost {
			if x := s.X(j); x < p.lo[j]-1e-7 || x > p.hi[j]+1e-7 {
				t.Fatalf("x[%d] = %g is not in [%g, %g]", j, x, p.lo[j], p.hi[j])
			}
		}
		for i := range p.rows {
			if x := s.Sum(i); x < p.rlo[i]-1e-7 || x > p.rhi[i]+1e-7 {
				t.Fatalf("row %d = %g is not in [%g, %g]", i, x, p.rlo[i], p.rhi[i])
			}
		}
		if z, b := s.Value(), s.Bound(s.Dual()); math.Abs(z-b) > 1e-9*max(1, math.Abs(z)) {
			t.Fatalf("cost %.15g, bound %.15g", z, b)
		}
	case Infeasible:
		if c := s.Contradicts(s.Ray()); !(c > 1e-9) {
			t.Fatalf("the proof of contradiction gives %g", c)
		}
	default:
		t.Fatalf("state %d", st)
	}
}

func TestAgainstAnotherSolver(t *testing.T) {
	var none, best, mute int
	for k := range 4000 {
		r := rand.New(rand.NewPCG(77, uint64(k)))
		p := random(r, 1+r.IntN(8), r.IntN(9))
		s := p.solver()
		st := s.Solve()
		p.check(t, s, st)
		z, feasible, ok := p.other()
		if !ok {
			mute++
			continue
		}
		if feasible != (st == Optimal) {
			t.Fatalf("program %d: the other solver says feasible %v, this one %d", k, feasible, st)
		}
		if !feasible {
			none++
			continue
		}
		best++
		if math.Abs(z-s.Value()) > 1e-6*max(1, math.Abs(z)) {
			t.Fatalf("program %d: the other solver has %.12g, this one %.12g", k, z, s.Value())
		}
	}
	t.Logf("%d with the same optimum, %d with none, %d the other solver gave up on", best, none, mute)
	if best < 1000 || none < 500 {
		t.Errorf("too few were compared: %d and %d", best, none)
	}
}

// TestGoesOn adds rows and changes bounds and costs, and expects what a fresh solver gives.
func TestGoesOn(t *testing.T) {
	for k := range 400 {
		r := rand.New(rand.NewPCG(78, uint64(k)))
		p := random(r, 2+r.IntN(10), 3+r.IntN(10))
		s := New(p.cost, p.lo, p.hi)
		part := &program{cost: append([]float64(nil), p.cost...), lo: append([]float64(nil), p.lo...), hi: append([]float64(nil), p.hi...)}
		for i, a := range p.rows {
			s.AddRow(a, p.rlo[i], p.rhi[i])
			part.rows, part.rlo, part.rhi = append(part.rows, a), append(part.rlo, p.rlo[i]), append(part.rhi, p.rhi[i])
			switch j := r.IntN(len(p.cost)); r.IntN(3) {
			case 0:
				part.hi[j] = part.lo[j] + float64(r.IntN(4))
				s.SetBounds(j, part.lo[j], part.hi[j])
			case 1:
				part.cost[j] = float64(r.IntN(9) - 4)
				s.SetCost(part.cost)
			}
			st := s.Solve()
			part.check(t, s, st)
			fresh := part.solver()
			if other := fresh.Solve(); other != st {
				t.Fatalf("program %d, %d rows: went on to %d, afresh %d", k, i+1, st, other)
			}
			if st == Optimal && math.Abs(fresh.Value()-s.Value()) > 1e-8*max(1, math.Abs(s.Value())) {
				t.Fatalf("program %d, %d rows: went on to %g, afresh %g", k, i+1, s.Value(), fresh.Value())
			}
		}
	}
}

// TestCore expects that what is named contradicts itself, and nothing does without
// any one of it.
func TestCore(t *testing.T) {
	seen := 0
	for k := range 1500 {
		r := rand.New(rand.NewPCG(79, uint64(k)))
		p := random(r, 2+r.IntN(7), 2+r.IntN(9))
		s := p.solver()
		if s.Solve() != Infeasible {
			continue
		}
		seen++
		core := s.Core()
		if len(core) == 0 || s.Only(core).Solve() != Infeasible {
			t.Fatalf("program %d: what is named does not contradict itself: %v", k, core)
		}
		for i := range core {
			rest := append(append([]Side(nil), core[:i]...), core[i+1:]...)
			if st := s.Only(rest).Solve(); st == Infeasible {
				t.Fatalf("program %d: it needs no %v", k, core[i])
			}
		}
	}
	if seen < 300 {
		t.Errorf("only %d without a solution", seen)
	}
}

func TestUnbounded(t *testing.T) {
	for _, c := range []struct {
		name string
		p    program
		want State
	}{
		{"down for ever", program{cost: []float64{1}, lo: []float64{-Inf}, hi: []float64{0}}, Unbounded},
		{"held by a row", program{cost: []float64{1, 1}, lo: []float64{-Inf, -Inf}, hi: []float64{Inf, Inf},
			rows: [][]float64{{1, 1}}, rlo: []float64{3}, rhi: []float64{Inf}}, Optimal},
		{"a direction free of cost", program{cost: []float64{0, 1}, lo: []float64{-Inf, 0}, hi: []float64{Inf, 1},
			rows: [][]float64{{1, 1}}, rlo: []float64{2}, rhi: []float64{2}}, Optimal},
		{"bounds turned round", program{cost: []float64{1}, lo: []float64{2}, hi: []float64{1}}, Infeasible},
		{"a row turned round", program{cost: []float64{1}, lo: []float64{0}, hi: []float64{1},
			rows: [][]float64{{1}}, rlo: []float64{0.7}, rhi: []float64{0.3}}, Infeasible},
		{"no variables", program{}, Optimal},
	} {
		s := c.p.solver()
		if st := s.Solve(); st != c.want {
			t.Errorf("%s: state %d, want %d", c.name, st, c.want)
		}
		if c.want == Infeasible && !(s.Contradicts(s.Ray()) > 0) {
			t.Errorf("%s: no proof", c.name)
		}
	}
}

// TestCycling is Beale's program of 1955, on which the plain method goes round for ever.
func TestCycling(t *testing.T) {
	p := program{
		cost: []float64{-0.75, 150, -0.02, 6}, lo: make([]float64, 4), hi: []float64{Inf, Inf, Inf, Inf},
		rows: [][]float64{{0.25, -60, -0.04, 9}, {0.5, -90, -0.02, 3}, {0, 0, 1, 0}},
		rlo:  []float64{-Inf, -Inf, -Inf}, rhi: []float64{0, 0, 1},
	}
	s := p.solver()
	if st := s.Solve(); st != Optimal || math.Abs(s.Value()+0.05) > 1e-12 {
		t.Errorf("state %d, cost %g, want -0.05", st, s.Value())
	}
}

func FuzzSolve(f *testing.F) {
	f.Add(uint64(1), uint8(4), uint8(6), 1.0)
	f.Add(uint64(9), uint8(12), uint8(30), 1e-3)
	f.Fuzz(func(t *testing.T, seed uint64, n, m uint8, scale float64) {
		if !(scale > 1e-3 && scale < 1e3) {
			scale = 1
		}
		r := rand.New(rand.NewPCG(seed, 3))
		p := random(r, 1+int(n%30), int(m%60))
		for _, a := range p.rows {
			for j := range a {
				a[j] *= scale
			}
		}
		s := p.solver()
		switch st := s.Solve(); st {
		case Optimal, Infeasible:
			if st == Optimal {
				if z, b := s.Value(), s.Bound(s.Dual()); math.Abs(z-b) > 1e-7*max(1, math.Abs(z)) {
					t.Fatalf("cost %.15g, bound %.15g", z, b)
				}
			} else if !(s.Contradicts(s.Ray()) > 0) {
				t.Fatal("no proof")
			}
		default:
			t.Fatalf("state %d", st)
		}
	})
}

func BenchmarkSolve(b *testing.B) {
	r := rand.New(rand.NewPCG(80, 1))
	const n, m = 25, 120
	p := &program{}
	for range n {
		p.cost, p.lo, p.hi = append(p.cost, 0.2+r.Float64()), append(p.lo, 0), append(p.hi, 30)
	}
	for range m {
		a := make([]float64, n)
		for j := range a {
			if r.IntN(4) == 0 {
				a[j] = r.Float64()
			}
		}
		p.rows, p.rlo, p.rhi = append(p.rows, a), append(p.rlo, 2*r.Float64()), append(p.rhi, 12+4*r.Float64())
	}
	b.ReportAllocs()
	st, count := Unsolved, 0
	for b.Loop() {
		s := p.solver()
		st = s.Solve()
		count = s.Pivots
	}
	if st != Optimal {
		b.Fatal(st)
	}
	b.ReportMetric(float64(count), "pivots")
}
