package survey

import (
	"errors"

	"leafwright/geom/survey/lsq"
)

// The wishes pull what was read towards the ordinary. The first fit gives them
// their due: the sum of squares over readings and wishes alike, N = JᵀWJ + P. Then
// the pull is taken back: the wish of each further fit is to be as the fit before
// came out, so that the shape stays ordinary only where nothing was read.
//
// Of a departure that the readings know λ times as well as it is known without
// them, in variance, there is left after so many times a pull of (1 + λ)^−times: an
// eighth where readings and ordinary know as much, a two-hundredth of what was read
// where λ is 5 (a bow found by three widths with a tape), 1 in 10⁵ where it is 50
// (one under a straightedge). And where λ is small the errors of the readings are
// not let loose on the shape, as a fit without wishes would. (Iterated Tikhonov
// regularisation; from memory of the literature on ill-posed problems.)
//
// With M = L⁻¹·P·L⁻ᵀ, N = L·Lᵀ, the fit follows the readings by
// Z = L⁻ᵀ(1 + M + ... + M^(times−1))L⁻¹ and the wishes by L⁻ᵀ·M^(times−1)·L⁻¹.
const times = 3

// aim gives each wish its own mean to aim at, and lets go of those about sizes
// that were each read themselves.
func (a *adjustment) aim() {
	n := a.net
	read := a.direct
	clear(read)
	for row, i := range a.rowOf {
		r := &a.readings[i]
		if a.weight[row] == 0 {
			continue
		}
		if q, direct := n.direct(r); direct {
			read[q] = true
		}
	}
	for i := range n.wishes {
		w := &n.wishes[i]
		w.target = w.mean
		w.idle = true
		for _, t := range w.terms[:w.n] {
			w.idle = w.idle && read[t.q]
		}
	}
}

// rest gives each wish to stay as it is now.
func (n *net) rest() {
	for i := range n.wishes {
		w := &n.wishes[i]
		w.target = n.is(w)
	}
}

// is gives what a wish's terms add up to.
func (n *net) is(w *wish) float64 {
	var sum float64
	for _, t := range w.terms[:w.n] {
		sum += float64(t.coef * n.quantity[t.q])
	}
	return sum
}

// solve moves the unknowns to the shape nearest to the ordinary of those that fit
// the readings that have a say.
func (a *adjustment) solve() error {
	a.aim()
	a.fresh = false
	o := lsq.Options{Near: nearly, Steps: 40}
	switch {
	case a.hanging: // by slopes that are only nearly right
		o.Settled, o.Steps, o.Halvings = 1e-2, 8, 3
		o.Keep = a.hung.known
	case a.starting:
		o.Settled = 1e-2
	}
	leant := a.hung.leant
	for k := range times {
		err := a.sol.Solve(a.say, a.x, o)
		// A hung leaf may settle where it just touches a stop, which is no place where
		// slopes are level: there, as near as it gets is home.
		if err != nil && !(a.hanging && errors.Is(err, lsq.ErrAstray)) {
			return err
		}
		if !o.Keep {
			leant = a.hung.leant
		}
		o.Keep = true
		if k < times-1 {
			a.net.write(a.x)
			a.net.rest()
			for row := len(a.rowOf); row < a.sol.Rows.Len(); row++ {
				a.sol.Rows.SetOff(row, 0)
			}
			o.Known = true
		}
	}
	if a.starting || a.hanging && !a.hung.exact && a.hung.leant == leant {
		a.hung.known = !a.starting
		return nil // the slopes are those the factor has
	}
	a.hung.known = false
	return a.sol.Factor.Set(&a.sol.Rows, a.net.columns)
}

// nearly is the length of a step in standard deviations below which the factor of
// the step before will do: openings and leaves are all but linear.
const nearly = 100.0

// wishful sets g to P·z; g must not be z.
func (a *adjustment) wishful(g, z []float64) {
	clear(g)
	rows := &a.sol.Rows
	for row := len(a.rowOf); row < rows.Len(); row++ {
		cols, coefs := rows.Row(row)
		if k := float64(rows.Weight(row) * rows.Dot(row, z)); k != 0 {
			for i, c := range cols {
				g[c] += float64(coefs[i] * k)
			}
		}
	}
}

// pulled is a list of what is left of a half-solved row y after each pull: y, M·y,
// M²·y and so on.
type pulled [times][]float64

func newPulled(n int) (p pulled) {
	memory := make([]float64, times*n)
	for k := range p {
		p[k], memory = memory[:n], memory[n:]
	}
	return p
}

// pull fills the list for g.
func (a *adjustment) pull(p pulled, g []float64) {
	f := &a.sol.Factor
	f.Half(p[0], g)
	for k := 1; k < times; k++ {
		f.Back(a.back, p[k-1])
		a.wishful(p[k], a.back)
		f.Half(p[k], p[k])
	}
}

// product gives y·(1 + M + ... + M^(n−1))·y', n at most 2·times − 1.
func (p pulled) product(q pulled, n int) float64 {
	var sum float64
	for k := range n {
		i := min(k, times-1)
		sum += lsq.Dot(p[i], q[k-i])
	}
	return sum
}

// variance gives the variance of g·x.
func (a *adjustment) variance(p pulled) float64 {
	// y·[(1 − M^times)(1 + M + ...) + M^(2·times−1)]·y' = y·[2·(1 + ... + M^(times−1)) − (1 + ... + M^(2·times−2))]·y'
	return 2*p.product(p, times) - p.product(p, 2*times-1)
}

// move sets g to what the unknowns do when the row's error is one standard deviation.
func (a *adjustment) move(g []float64, p pulled, row int) {
	rows := &a.sol.Rows
	rows.Scatter(a.half, row, sqrt(rows.Weight(row)))
	a.pull(p, a.half)
	copy(g, p[times-1])
	if row < len(a.rowOf) {
		for k := range times - 1 {
			for i, v := range p[k] {
				g[i] += v
			}
		}
	}
	a.sol.Factor.Back(g, g)
}
