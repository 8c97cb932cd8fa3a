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

// draw makes the draws.
func (a *adjustment) draw() *draws {
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

// measure measures count numbers on the fitted door and on every draw: the fitted
// values, and by number what each draw departs from them, over √draws.
func (d *draws) measure(count int, measure func(out []float64)) (value []float64, off [][]float64) {
	a := d.adj
	value = make([]float64, count)
	a.net.write(a.x)
	measure(value)
	memory := make([]float64, count*len(d.moves))
	for range count {
		off, memory = append(off, memory[:len(d.moves)]), memory[len(d.moves):]
	}
	x := d.x
	out := make([]float64, count)
	root := sqrt(float64(len(d.moves)))
	for s, move := range d.moves {
		for k := range x {
			x[k] = a.x[k] + move[k]
		}
		a.net.write(x)
		measure(out)
		for i, v := range out {
			off[i][s] = (v - value[i]) / root
		}
	}
	a.net.write(a.x)
	return value, off
}

func length(v []float64) float64 { return sqrt(lsq.Dot(v, v)) }
