package lp

import "math"

// sound tells whether the answer holds on the program as given.
func (s *Solver) sound() bool {
	switch s.state {
	case Optimal:
		if s.Pivots-s.checked >= fresh {
			for j := range s.n {
				if !s.within(j, s.value[j]) {
					return false
				}
			}
			for i := range s.rows {
				if !s.within(s.n+i, s.Sum(i)) {
					return false
				}
			}
			s.checked = s.Pivots
		}
		if s.Pivots-s.proved < trusted {
			return true
		}
		z := s.Value()
		if math.Abs(z-s.Bound(s.Dual())) > 1e-9*max(1, math.Abs(z)) {
			return false
		}
		s.proved = s.Pivots
		return true
	case Infeasible:
		return s.Contradicts(s.ray[s.n:]) > 0
	case Unbounded:
		return true
	}
	return false
}

// Prove makes sure that an optimum's [Solver.Dual] proves it to the last figures, and
// tells whether it does.
func (s *Solver) Prove() bool {
	if s.state != Optimal {
		return false
	}
	s.checked, s.proved = s.Pivots-fresh, s.Pivots-trusted
	if s.sound() {
		return true
	}
	s.rebuild()
	s.state = s.attempt()
	return s.sound()
}

// trusted is for how many exchanges reduced costs are trusted that were last found to
// prove an optimum.
const trusted = 20

// fresh is for how many exchanges the values a dictionary gives are trusted that was last
// found to keep the rows as they were given.
const fresh = 6

func (s *Solver) within(v int, x float64) bool {
	const allowed = 10 // rounding's share
	return x >= s.lo[v]-allowed*s.keep[v] && x <= s.hi[v]+allowed*s.keep[v]
}

// rebuild works the dictionary out anew for the same basis, to be rid of what
// rounding has left in it.
func (s *Solver) rebuild() {
	in := make([]bool, s.n)
	for _, v := range s.basic {
		if v < s.n {
			in[v] = true
		}
	}
	kept := make([]bool, len(s.rows)) // rows whose sums stay basic
	for _, v := range s.basic {
		if v >= s.n {
			kept[v-s.n] = true
		}
	}
	s.priced = false
	s.basic = s.basic[:0]
	for i, a := range s.rows {
		copy(s.t[i], a)
		s.basic = append(s.basic, s.n+i)
	}
	for j := range s.rest {
		s.rest[j] = j
	}
	for j := range s.n {
		if !in[j] {
			continue
		}
		best := -1
		for i, v := range s.basic {
			if v >= s.n && !kept[v-s.n] && (best < 0 || math.Abs(s.t[i][j]) > math.Abs(s.t[best][j])) {
				best = i
			}
		}
		if best >= 0 && math.Abs(s.t[best][j]) >= pivots {
			s.exchange(best, j)
		}
	}
	for i := range s.high { // what is now resting stands where it stood
		s.value[i] = 0
	}
}
