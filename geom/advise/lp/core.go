package lp

import "math"

// Side is one bound of one variable: the program's own first, then the rows' sums.
type Side struct {
	Var   int
	Upper bool
}

// Core gives, of a program that nothing satisfies, bounds that contradict each other
// though without any one of them they would not; nil of any other program. It takes
// the bounds in the proof and leaves out, one after another, those without which
// there is still no solution.
func (s *Solver) Core() []Side {
	if s.state != Infeasible {
		return nil
	}
	y := s.ray[s.n:]
	var sides []Side
	see := func(v int, k float64) {
		if k > 0 {
			sides = append(sides, Side{v, false})
		} else if k < 0 {
			sides = append(sides, Side{v, true})
		}
	}
	for j := range s.n {
		k, most := 0.0, 0.0
		for i, a := range s.rows {
			k -= float64(y[i] * a[j])
			most += math.Abs(float64(y[i] * a[j]))
		}
		if math.Abs(k) > 1e-9*most {
			see(j, k)
		}
	}
	for i, k := range y {
		see(s.n+i, k)
	}
	for k := 0; k < len(sides); {
		rest := append(append([]Side(nil), sides[:k]...), sides[k+1:]...)
		if s.only(rest).Solve() == Infeasible {
			sides = rest
			continue
		}
		k++
	}
	return sides
}

// only gives the program with no bounds but those named, and no cost.
func (s *Solver) only(sides []Side) *Solver {
	all := len(s.lo)
	lo, hi := make([]float64, all), make([]float64, all)
	for v := range lo {
		lo[v], hi[v] = -Inf, Inf
	}
	for _, k := range sides {
		if k.Upper {
			hi[k.Var] = s.hi[k.Var]
		} else {
			lo[k.Var] = s.lo[k.Var]
		}
	}
	o := New(make([]float64, s.n), lo[:s.n], hi[:s.n])
	for i, a := range s.rows {
		if v := s.n + i; !math.IsInf(lo[v], 0) || !math.IsInf(hi[v], 0) {
			o.AddRow(a, lo[v], hi[v])
		}
	}
	return o
}

// Only is the program with no bounds but those named, for a check of [Solver.Core].
func (s *Solver) Only(sides []Side) *Solver { return s.only(sides) }
