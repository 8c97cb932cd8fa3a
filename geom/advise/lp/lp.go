// Package lp solves small linear programs:
//
//	least Cost·x  where  Lo ≤ x ≤ Hi  and  RowLo ≤ Rows·x ≤ RowHi
//
// by the simplex method on a dense dictionary, in which every row's sum is a
// variable of its own and the basic ones are written in those that rest on a bound.
// Bounds may be infinite or equal. Rows may be added and bounds and costs changed
// between solutions; each goes on from the one before.
//
// Programs without a solution and programs with many alike are the ordinary case.
// Where the method makes no headway it takes the lowest index (R. G. Bland, New
// finite pivoting rules for the simplex method, 1977), so that it ends. What it gives can be checked without it: an optimum by
// [Solver.Bound], a contradiction by [Solver.Contradicts].
package lp

import "math"

// State is what a solution came to.
type State uint8

// The states.
const (
	Unsolved   State = iota
	Optimal          // X is best, and Dual proves it
	Infeasible       // nothing keeps all bounds, and Ray proves it
	Unbounded        // the cost has no least value
	Stuck            // too ill-conditioned for a sound answer
)

// Inf is the bound of what is not bounded.
var Inf = math.Inf(1)

// Numbers of the method.
const (
	keeps  = 1e-9  // how far beyond a bound counts as on it, per unit of the bound
	slopes = 1e-10 // a reduced cost nearer nought than this is nought
	pivots = 1e-9  // a coefficient nearer nought than this is nought
)

// Solver holds one program and where its solution stands. Its variables are the
// program's own, 0 to n−1, and after them the sums of its rows.
type Solver struct {
	n      int
	cost   []float64
	rows   [][]float64
	lo, hi []float64 // of all variables
	keep   []float64 // of all variables, how far beyond a bound counts as on it

	t     [][]float64 // t[i][j]: what basic[i] gains per unit of resting[j]
	basic []int
	rest  []int     // the variables that rest on a bound
	high  []bool    // by variable: rests on its upper bound
	value []float64 // by variable
	d     []float64 // reduced cost of rest[j]
	ray   []float64 // by variable, the proof that nothing keeps all bounds
	spare []float64 // memory for rows to come
	state State

	priced  bool // d is the reduced costs
	checked int  // how many exchanges there were when an answer was last held against the rows as given
	proved  int  // how many exchanges there were when an optimum was last proved
	// Pivots is how many exchanges the solutions took so far.
	Pivots int
}

// New gives a program without rows. The slices are kept and not changed, but by
// [Solver.SetBounds] and [Solver.SetCost], which work on copies.
func New(cost, lo, hi []float64) *Solver {
	n := len(cost)
	s := &Solver{
		n:    n,
		cost: append([]float64(nil), cost...),
		lo:   append(make([]float64, 0, 4*n), lo...),
		hi:   append(make([]float64, 0, 4*n), hi...),
		high: make([]bool, n, 4*n), value: make([]float64, n, 4*n),
		rest: make([]int, n), d: make([]float64, n),
		keep: make([]float64, n, 4*n),
	}
	for j := range s.rest {
		s.rest[j] = j
		s.keep[j] = slack(s.lo[j], s.hi[j])
	}
	return s
}

// AddRow adds a row and gives its number. The coefficients are kept and must not
// change.
func (s *Solver) AddRow(a []float64, lo, hi float64) int {
	if len(s.spare) < s.n {
		const rows = 16
		s.spare = make([]float64, rows*s.n)
	}
	row := s.spare[:s.n:s.n]
	s.spare = s.spare[s.n:]
	s.express(row, a)
	s.rows = append(s.rows, a)
	s.t = append(s.t, row)
	s.basic = append(s.basic, len(s.lo))
	s.lo, s.hi, s.keep = append(s.lo, lo), append(s.hi, hi), append(s.keep, slack(lo, hi))
	s.high, s.value = append(s.high, false), append(s.value, 0)
	s.state = Unsolved
	return len(s.rows) - 1
}

// express writes a sum of the program's own variables in those that rest.
func (s *Solver) express(row, a []float64) {
	clear(row)
	for j, v := range s.rest {
		if v < s.n {
			row[j] = a[v]
		}
	}
	for i, v := range s.basic {
		if v >= s.n || a[v] == 0 {
			continue
		}
		for j, x := range s.t[i] {
			row[j] += float64(a[v] * x)
		}
	}
}

// Row gives a row's coefficients, which must not be changed.
func (s *Solver) Row(i int) []float64 { return s.rows[i] }

// Cost gives the costs, which must not be changed.
func (s *Solver) Cost() []float64 { return s.cost }

// Rows tells how many rows there are.
func (s *Solver) Rows() int { return len(s.rows) }

// SetBounds changes the bounds of one of the program's own variables.
func (s *Solver) SetBounds(j int, lo, hi float64) {
	s.lo[j], s.hi[j], s.keep[j], s.state = lo, hi, slack(lo, hi), Unsolved
}

// SetRow changes the bounds of a row's sum.
func (s *Solver) SetRow(i int, lo, hi float64) { s.SetBounds(s.n+i, lo, hi) }

// Bounds gives the bounds of a variable, the program's own first, then the rows'.
func (s *Solver) Bounds(v int) (lo, hi float64) { return s.lo[v], s.hi[v] }

// SetCost changes the costs.
func (s *Solver) SetCost(c []float64) {
	copy(s.cost, c)
	s.state, s.priced = Unsolved, false
}

// X gives the value of one of the program's own variables.
func (s *Solver) X(j int) float64 { return s.value[j] }

// Value gives the cost.
func (s *Solver) Value() float64 {
	sum := 0.0
	for j, c := range s.cost {
		sum += float64(c * s.value[j])
	}
	return sum
}

// Sum gives the value of a row.
func (s *Solver) Sum(i int) float64 {
	sum := 0.0
	for j, a := range s.rows[i] {
		sum += float64(a * s.value[j])
	}
	return sum
}

// Dual gives what the least cost rises by per unit of each row's bound, of an
// optimum: above 0 the lower bound counts, below 0 the upper one.
func (s *Solver) Dual() []float64 {
	y := make([]float64, len(s.rows))
	for j, v := range s.rest {
		if v >= s.n && math.Abs(s.d[j]) > slopes { // less is what rounding left of nought
			y[v-s.n] = s.d[j]
		}
	}
	return y
}

// Bound gives a cost that no x within all bounds can be below, whatever y is: each
// row's sum less what its own coefficients make of it is nought, so
//
//	Cost·x = Σ y·(row sum) + Σ (Cost − Σ y·row)·x
//
// and every term is held by its bounds. For the [Solver.Dual] of an optimum it is
// the optimum's cost.
func (s *Solver) Bound(y []float64) float64 {
	d := append([]float64(nil), s.cost...)
	sum := 0.0
	for i, a := range s.rows {
		if y[i] == 0 {
			continue
		}
		sum += s.least(s.n+i, y[i])
		for j := range d {
			d[j] -= float64(y[i] * a[j])
		}
	}
	for j, k := range d {
		if math.Abs(k) <= s.noise(j, y) {
			k = 0 // what rounding left of nought
		}
		sum += s.least(j, k)
	}
	return sum
}

// noise is what rounding may leave of a reduced cost that is nought: more is let pass
// where the variable has no bound, for a nought there is no proof at all without.
func (s *Solver) noise(j int, y []float64) float64 {
	most := math.Abs(s.cost[j])
	for i, a := range s.rows {
		most += math.Abs(float64(y[i] * a[j]))
	}
	if math.IsInf(s.lo[j], 0) || math.IsInf(s.hi[j], 0) {
		return 1e-8 * max(1, most)
	}
	return 1e-11 * most
}

// least gives the least of k·x over the variable's bounds.
func (s *Solver) least(v int, k float64) float64 {
	switch {
	case k > 0:
		return k * s.lo[v]
	case k < 0:
		return k * s.hi[v]
	}
	return 0
}

// Ray gives, of a program that nothing satisfies, the multipliers of the rows that
// prove it; see [Solver.Contradicts].
func (s *Solver) Ray() []float64 {
	if s.state != Infeasible {
		return nil
	}
	return append([]float64(nil), s.ray[s.n:]...)
}

// Contradicts gives the least that Σ y·(row sum) − Σ y·row·x, which is nought for
// every x, could be by the bounds alone. Above nought the bounds contradict each
// other: that is Farkas's proof, and any y will do.
func (s *Solver) Contradicts(y []float64) float64 {
	sum := 0.0
	for i, k := range y {
		sum += s.least(s.n+i, k)
	}
	for j := range s.n {
		k, most := 0.0, 0.0
		for i, a := range s.rows {
			k -= float64(y[i] * a[j])
			most += math.Abs(float64(y[i] * a[j]))
		}
		if math.Abs(k) > 1e-11*most {
			sum += s.least(j, k)
		}
	}
	return sum
}
