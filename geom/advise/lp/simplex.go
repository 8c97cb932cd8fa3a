package lp

import "math"

// Solve finds the least cost, or that there is none.
func (s *Solver) Solve() State {
	for v := range s.lo {
		if !(s.lo[v] <= s.hi[v]+s.keep[v]) { // turned round, or no number
			s.state = s.crossed(v)
			return s.state
		}
	}
	s.state = s.attempt()
	for range 2 {
		if s.sound() {
			return s.state
		}
		s.rebuild()
		s.state = s.attempt()
	}
	if !s.sound() {
		s.state = Stuck
	}
	return s.state
}

// crossed gives the proof against a variable whose bounds have changed places. A
// proof has one multiplier for each row and takes one bound of it, so the variable is
// said once more by a row of its own.
func (s *Solver) crossed(v int) State {
	a := make([]float64, s.n)
	if v < s.n {
		a[v] = 1
	} else {
		copy(a, s.rows[v-s.n])
	}
	i := s.AddRow(a, s.lo[v], s.hi[v])
	s.ray = make([]float64, len(s.lo))
	s.ray[s.n+i] = 1
	s.ray[v] = -1
	return Infeasible
}

func (s *Solver) attempt() State {
	s.settle()
	s.price()
	if s.turnToCost() {
		return s.dual(true)
	}
	clear(s.d)
	s.priced = false
	if st := s.dual(false); st != Optimal {
		return st
	}
	s.price()
	return s.primal()
}

// slack is how far beyond a variable's bounds counts as on them.
func slack(lo, hi float64) float64 {
	size := 1.0
	if x := math.Abs(lo); x > size && x <= math.MaxFloat64 {
		size = x
	}
	if x := math.Abs(hi); x > size && x <= math.MaxFloat64 {
		size = x
	}
	return keeps * size
}

// settle puts what rests onto a bound it has.
func (s *Solver) settle() {
	for _, v := range s.rest {
		switch {
		case s.high[v] && !math.IsInf(s.hi[v], 0):
		case !math.IsInf(s.lo[v], 0):
			s.high[v] = false
		default:
			s.high[v] = !math.IsInf(s.hi[v], 0)
		}
		s.value[v] = s.resting(v)
	}
}

// resting is the value of a variable that rests: nought where it has no bounds.
func (s *Solver) resting(v int) float64 {
	switch {
	case s.high[v]:
		return s.hi[v]
	case math.IsInf(s.lo[v], 0):
		return 0
	}
	return s.lo[v]
}

// price works out the reduced costs. Bounds and rows change none, and exchanges keep them
// right.
func (s *Solver) price() {
	if s.priced {
		return
	}
	s.priced = true
	for j, v := range s.rest {
		s.d[j] = 0
		if v < s.n {
			s.d[j] = s.cost[v]
		}
	}
	for i, v := range s.basic {
		if v >= s.n || s.cost[v] == 0 {
			continue
		}
		for j, x := range s.t[i] {
			s.d[j] += float64(s.cost[v] * x)
		}
	}
}

// turnToCost puts everything that rests onto the bound its reduced cost asks for;
// false where one has no such bound.
func (s *Solver) turnToCost() bool {
	all := true
	for j, v := range s.rest {
		if math.Abs(s.d[j]) <= slopes {
			continue
		}
		want := s.d[j] < 0
		if want == s.high[v] && !s.free(v) {
			continue
		}
		if bound := s.lo[v]; want && math.IsInf(s.hi[v], 0) || !want && math.IsInf(bound, 0) {
			all = false
			continue
		}
		s.high[v] = want
		s.value[v] = s.resting(v)
	}
	return all
}

func (s *Solver) free(v int) bool { return math.IsInf(s.lo[v], 0) && math.IsInf(s.hi[v], 0) }

// work gives the basic variables their values.
func (s *Solver) work() {
	for i, v := range s.basic {
		sum := 0.0
		for j, x := range s.t[i] {
			sum += float64(x * s.value[s.rest[j]])
		}
		s.value[v] = sum
	}
}

// move lets the resting variable j go by d, and the basic ones with it.
func (s *Solver) move(j int, d float64) {
	for l, v := range s.basic {
		if k := s.t[l][j]; k != 0 {
			s.value[v] += float64(k * d)
		}
	}
	s.value[s.rest[j]] += d
}

// patience is how many exchanges without headway are borne before the lowest
// index is taken, and most how many there may be at all.
func (s *Solver) patience() (patience, most int) {
	k := s.n + len(s.rows)
	return k + 20, 60*k + 2000
}

// few is how many steps values are added up over and not worked out anew.
const few = 6

// dual takes variables out of the basis that are beyond their bounds, keeping the
// reduced costs right. Where they are all nought it only seeks what keeps all bounds.
func (s *Solver) dual(costs bool) State {
	patience, most := s.patience()
	still, best := 0, math.Inf(-1)
	s.work()
	added := 0 // how often something was added to the values since they were worked out
	for range most {
		lowest := still > patience
		i, up := s.beyond(lowest)
		if i < 0 && added < few {
			return Optimal
		}
		if i < 0 {
			s.work()
			added = 0
			continue
		}
		j := s.yields(i, up, lowest)
		if j < 0 {
			s.refute(i, up)
			return Infeasible
		}
		out := s.basic[i]
		s.high[out] = !up
		to := s.resting(out)
		s.move(j, (to-s.value[out])/s.t[i][j])
		s.exchange(i, j)
		s.value[out] = to
		added++
		still++
		if z := s.Value(); costs && z > best+float64(1e-12*max(1, math.Abs(best))) {
			still, best = 0, z
		}
	}
	return Stuck
}

// beyond gives the basic variable farthest beyond its bounds, or the one of lowest
// index; up tells that it has to rise.
func (s *Solver) beyond(lowest bool) (row int, up bool) {
	row = -1
	worst := 0.0
	for i, v := range s.basic {
		under, over := s.lo[v]-s.value[v], s.value[v]-s.hi[v]
		far, rise := over, false
		if under > over {
			far, rise = under, true
		}
		if !(far > s.keep[v]) {
			continue
		}
		if row < 0 || !lowest && far > worst || lowest && v < s.basic[row] {
			row, up, worst = i, rise, far
		}
	}
	return row, up
}

// yields gives the resting variable that can bring the basic one to its bound and
// whose reduced cost allows it soonest.
func (s *Solver) yields(i int, up, lowest bool) int {
	best, ratio := -1, math.Inf(1)
	row := s.t[i]
	for j, v := range s.rest {
		k := row[j]
		if math.Abs(k) < pivots || s.lo[v] == s.hi[v] {
			continue
		}
		if !s.free(v) && (k > 0) == up == s.high[v] {
			continue // it would have to leave its bound outwards
		}
		r := math.Abs(s.d[j]) / math.Abs(k)
		const alike = 1e-11
		switch {
		case best < 0 || r < ratio-alike:
		case r > ratio+alike:
			continue
		case lowest:
			if v > s.rest[best] {
				continue
			}
		case math.Abs(k) <= math.Abs(row[best]):
			continue
		}
		best, ratio = j, min(ratio, r)
	}
	return best
}

// refute keeps the proof that the basic variable cannot reach its bound.
func (s *Solver) refute(i int, up bool) {
	s.ray = make([]float64, len(s.lo))
	sign := -1.0
	if up {
		sign = 1
	}
	s.ray[s.basic[i]] = sign
	for j, v := range s.rest {
		if math.Abs(s.t[i][j]) >= pivots {
			s.ray[v] = -sign * s.t[i][j]
		}
	}
}

// exchange lets the resting variable j into the basis in place of row i's.
func (s *Solver) exchange(i, j int) {
	s.Pivots++
	row := s.t[i]
	inv := 1 / row[j]
	for k := range row {
		row[k] *= -inv
	}
	row[j] = inv
	for l, other := range s.t {
		if l != i {
			subtract(other, row, j, inv)
		}
	}
	subtract(s.d, row, j, inv)
	s.basic[i], s.rest[j] = s.rest[j], s.basic[i]
}

// subtract writes a row in the exchanged variables.
func subtract(other, row []float64, j int, inv float64) {
	f := other[j]
	if f == 0 {
		return
	}
	row = row[:len(other)]
	for k, x := range row {
		other[k] += float64(f * x)
	}
	other[j] = f * inv
}

// primal lowers the cost from what keeps all bounds.
func (s *Solver) primal() State {
	patience, most := s.patience()
	still := 0
	for range most {
		s.work()
		j, up := s.cheaper(still > patience)
		if j < 0 {
			return Optimal
		}
		i, far, toHigh := s.room(j, up, still > patience)
		v := s.rest[j]
		if i < 0 && math.IsInf(far, 1) {
			return Unbounded
		}
		if far > 1e-12 {
			still = 0
		} else {
			still++
		}
		if i < 0 { // to its own other bound
			s.high[v] = up
			s.value[v] = s.resting(v)
			continue
		}
		out := s.basic[i]
		s.exchange(i, j)
		s.high[out] = toHigh
		s.value[out] = s.resting(out)
	}
	return Stuck
}

// cheaper gives a resting variable whose move lowers the cost; up tells which way.
func (s *Solver) cheaper(lowest bool) (best int, up bool) {
	best = -1
	for j, v := range s.rest {
		d := s.d[j]
		if math.Abs(d) <= slopes || s.lo[v] == s.hi[v] {
			continue
		}
		rise := d < 0
		if !s.free(v) && rise == s.high[v] {
			continue
		}
		if best < 0 || !lowest && math.Abs(d) > math.Abs(s.d[best]) || lowest && v < s.rest[best] {
			best, up = j, rise
		}
	}
	return best, up
}

// room gives how far the resting variable can move before a basic one, in row i,
// comes to a bound, toHigh to its upper one; i is −1 where its own other bound is
// nearer.
func (s *Solver) room(j int, up, lowest bool) (i int, far float64, toHigh bool) {
	v := s.rest[j]
	i, far = -1, s.hi[v]-s.lo[v]
	if s.free(v) {
		far = math.Inf(1)
	}
	for l, w := range s.basic {
		k := s.t[l][j]
		if !up {
			k = -k
		}
		if math.Abs(k) < pivots {
			continue
		}
		bound := s.lo[w]
		if k > 0 {
			bound = s.hi[w]
		}
		if math.IsInf(bound, 0) {
			continue
		}
		r := max(0, (bound-s.value[w])/k)
		const alike = 1e-11
		switch {
		case r < far-alike:
		case r > far+alike:
			continue
		case i < 0: // its own bound as soon: no exchange needed
			continue
		case lowest:
			if w > s.basic[i] {
				continue
			}
		case math.Abs(k) <= math.Abs(s.t[i][j]):
			continue
		}
		i, far, toHigh = l, min(far, r), k > 0
	}
	return i, far, toHigh
}
