package lsq

import (
	"errors"
	"math"
)

// Problem gives the observations linearised at x, into rows that have been reset.
type Problem func(x []float64, rows *Rows)

// Options steer the search. The zero value does for any problem.
type Options struct {
	// Near is the length of a step, in standard deviations of what is observed,
	// below which the factor of the step before will do. 0 factors every time,
	// which strongly bent problems need.
	Near float64
	// Steps is the most steps taken; 0 = 100.
	Steps int
	// Settled is the length of a step, in standard deviations of what is observed,
	// that is no longer worth taking; 0 = 1e-9.
	Settled float64
	// Halvings is how often a step that makes things worse is halved; 0 = 20.
	Halvings int
	// Keep tells that the factor of the last Solve, of as many unknowns, will do to
	// begin with.
	Keep bool
	// Known tells that Rows are those at x already.
	Known bool
}

// The usual Settled, and the length of a step below which one that is no shorter
// than half the one before is nothing but rounding.
const (
	settled  = 1e-9
	rounding = 1e-5
)

// ErrAstray tells that no step made things better though the search was not home.
var ErrAstray = errors.New("least squares did not settle")

// Solution is where the sum of weighted squares is least, and what it takes to
// tell how well that is known. Its memory is used again by the next Solve.
type Solution struct {
	Rows   Rows   // at the solution
	Factor Factor // of the normal matrix there
	Steps  int

	trial Rows
	g, s  []float64
	next  []float64
}

// Solve moves x to the least sum of weighted squares by Gauss-Newton steps, each
// halved until the sum does not grow. The coefficients may be slopes that are only
// nearly right: a step of less than one standard deviation may let the sum grow by
// as much as it is long, squared. On an error x is where it got to.
func (sol *Solution) Solve(p Problem, x []float64, o Options) error {
	n := len(x)
	sol.g, sol.s, sol.next = grown(sol.g, n), grown(sol.s, n), grown(sol.next, n)
	if o.Steps == 0 {
		o.Steps = 100
	}
	if o.Halvings == 0 {
		o.Halvings = 20
	}
	if o.Settled == 0 {
		o.Settled = settled
	}
	if !o.Known {
		sol.Rows.Reset()
		p(x, &sol.Rows)
	}
	best := sol.Rows.Objective()
	if math.IsNaN(best) || math.IsInf(best, 0) {
		return ErrAstray
	}
	fresh, before := o.Keep && sol.Factor.n == n, math.Inf(1)
	for sol.Steps = 0; sol.Steps < o.Steps; sol.Steps++ {
		if !fresh {
			if err := sol.Factor.Set(&sol.Rows, n); err != nil {
				return err
			}
		}
		sol.Rows.gradient(sol.g)
		sol.Factor.Solve(sol.s, sol.g)
		long := math.Sqrt(max(0, Dot(sol.s, sol.g))) // √(sᵀNs)
		if !(long > o.Settled) || long < rounding && long > before/2 {
			return nil
		}
		slack := float64(1e-12 * best)
		if long < 1 {
			slack += float64(long * long)
		}
		if !sol.advance(p, x, &best, slack, o.Halvings) {
			if fresh { // an old factor may lead astray
				fresh = false
				continue
			}
			if long < rounding {
				return nil
			}
			return ErrAstray
		}
		fresh, before = long < o.Near, long
	}
	return ErrAstray
}

// Room makes room for so many rows with so many coefficients in all.
func (sol *Solution) Room(rows, coefs int) {
	sol.Rows.Room(rows, coefs)
	sol.trial.Room(rows, coefs)
}

// advance takes the step, or the half of it and so on, that does not let the sum
// grow by more than slack.
func (sol *Solution) advance(p Problem, x []float64, best *float64, slack float64, halvings int) bool {
	part := 1.0
	for range halvings {
		for i := range x {
			sol.next[i] = x[i] + float64(part*sol.s[i])
		}
		sol.trial.Reset()
		p(sol.next, &sol.trial)
		if sum := sol.trial.Objective(); sum <= *best+slack {
			*best = sum
			copy(x, sol.next)
			sol.Rows, sol.trial = sol.trial, sol.Rows
			return true
		}
		part /= 2
	}
	return false
}

// Variance gives the variance of g·x.
func (sol *Solution) Variance(g []float64) float64 {
	y := sol.next
	sol.Factor.Half(y, g)
	return Dot(y, y)
}
