package survey

import (
	"leafwright/geom/survey/lsq"
)

// draws are doors that may as well be the true one. The errors of the unknowns are
// sums of a few that have nothing to do with each other; each is taken at its
// standard deviation, up in half the draws and down in the other half, and every
// two of them alike in half (the signs are those of a Hadamard matrix). So the mean
// square of what a measure of the door departs from its fitted value is its
// variance: exactly where the measure is straight, and where it is not (a leaf that
// may touch a stop here, or there, or not at all) with its bends seen at the size
// the errors have, which slopes at one place would miss.
type draws struct {
	adj   *adjustment
	moves [][]float64 // by draw, of the unknowns
	x     []float64   // the draw at hand
}

// slight is the standard deviation, mm, below which what is left of the errors of
// an unknown is not drawn.
const slight = 0.02

// draw gives the draws; they are made once.
func (a *adjustment) draw() *draws {
	if a.drawn == nil {
		a.drawn = a.newDraws()
	}
	return a.drawn
}

func (a *adjustment) newDraws() *draws {
	n, rows := a.net.columns, &a.sol.Rows
	scale := make([]float64, n)
	for q, k := range a.net.column {
		if k >= 0 {
			scale[k] = nudge / a.net.nudgeOf(q)
		}
	}
	var all [][]float64
	for i := range rows.Len() {
		if cols, _ := rows.Row(i); rows.Weight(i) != 0 && len(cols) > 0 {
			g := make([]float64, n)
			a.move(g, a.spare, i)
			for k := range g {
				g[k] *= scale[k]
			}
			all = append(all, g)
		}
	}
	moves := append([][]float64{make([]float64, n)}, independent(all, slight*slight)...)
	for len(moves)&(len(moves)-1) != 0 {
		moves = append(moves, make([]float64, n))
	}
	for _, m := range moves {
		for k := range m {
			m[k] /= scale[k]
		}
	}
	hadamard(moves)
	return &draws{a, moves, make([]float64, n)}
}

// independent gives fewer moves whose products sum to the same covariance, but for
// a variance of less than rest in each unknown: the columns of its Cholesky factor,
// taken where most is left.
func independent(moves [][]float64, rest float64) (out [][]float64) {
	if len(moves) == 0 {
		return nil
	}
	n := len(moves[0])
	cov := make([]float64, n*n)
	for _, m := range moves {
		for i, x := range m {
			if x != 0 {
				row := cov[i*n : i*n+i+1]
				for k := range row {
					row[k] += float64(x * m[k])
				}
			}
		}
	}
	at := func(i, k int) float64 {
		if i < k {
			i, k = k, i
		}
		return cov[i*n+k]
	}
	left := make([]float64, n)
	for i := range left {
		left[i] = at(i, i)
	}
	for range n {
		pivot := 0
		for i, v := range left {
			if v > left[pivot] {
				pivot = i
			}
		}
		if !(left[pivot] > rest) {
			break
		}
		root := sqrt(left[pivot])
		c := make([]float64, n)
		for i := range c {
			v := at(i, pivot)
			for _, o := range out {
				v -= float64(o[i] * o[pivot])
			}
			c[i] = v / root
			left[i] -= float64(c[i] * c[i])
		}
		left[pivot] = 0
		out = append(out, c)
	}
	return out
}

// hadamard replaces the lists, a power of two of them, by their sums with the signs
// of a Hadamard matrix.
func hadamard(v [][]float64) {
	for half := 1; half < len(v); half *= 2 {
		for i := range v {
			if i&half == 0 {
				a, b := v[i], v[i|half]
				for k, x := range a {
					a[k], b[k] = x+b[k], x-b[k]
				}
			}
		}
	}
}

// measuring measures count numbers on the fitted door and on every draw, as many
// doors at a time as are asked for: value is the fitted values, and off, by number,
// what each draw departs from them, over √draws.
type measuring struct {
	draws   *draws
	measure func(out []float64)
	value   []float64
	off     [][]float64
	out     []float64
	next    int // draw; -1 is the fitted door
}

func (d *draws) measuring(count int, measure func(out []float64)) *measuring {
	m := &measuring{draws: d, measure: measure, value: make([]float64, count), out: make([]float64, count), next: -1}
	m.off = table(nil, count, len(d.moves))
	return m
}

// step measures so many doors, leaves the net's door the fitted one and tells
// whether that was all.
func (m *measuring) step(doors int) bool {
	d, a := m.draws, m.draws.adj
	root := sqrt(float64(len(d.moves)))
	for ; doors > 0 && m.next < len(d.moves); doors-- {
		if m.next < 0 {
			a.net.write(a.x)
			m.measure(m.value)
			m.next = 0
			continue
		}
		for k := range d.x {
			d.x[k] = a.x[k] + d.moves[m.next][k]
		}
		a.net.write(d.x)
		m.measure(m.out)
		for i, v := range m.out {
			m.off[i][m.next] = (v - m.value[i]) / root
		}
		m.next++
	}
	a.net.write(a.x)
	return m.next >= len(d.moves)
}

// all measures all there is.
func (m *measuring) all() { m.step(len(m.draws.moves) + 1) }

func length(v []float64) float64 { return sqrt(lsq.Dot(v, v)) }
