// Package lsq is weighted least squares for a few hundred observations of a
// hundred unknowns or so: sparse rows, a dense symmetric factor, Gauss-Newton
// steps that never make things worse. Every product is rounded before it is
// summed, so that the bits are the same on all processors.
package lsq

import "slices"

// Rows are observations, linearised where the unknowns stand, each with its weight:
// 1 over the variance of its error, or 0 for one that has no say. The zero value is
// empty and ready.
type Rows struct {
	start  []int // of each row in cols, and the end of the last
	cols   []int
	coefs  []float64
	off    []float64
	weight []float64
}

// Reset empties the rows and keeps their memory.
func (r *Rows) Reset() {
	r.start, r.cols, r.coefs = append(r.start[:0], 0), r.cols[:0], r.coefs[:0]
	r.off, r.weight = r.off[:0], r.weight[:0]
}

// Room makes room for so many rows with so many coefficients in all.
func (r *Rows) Room(rows, coefs int) {
	r.start = slices.Grow(r.start, rows+1)
	r.cols, r.coefs = slices.Grow(r.cols, coefs), slices.Grow(r.coefs, coefs)
	r.off, r.weight = slices.Grow(r.off, rows), slices.Grow(r.weight, rows)
}

// Add adds coef to the row at hand for the unknown col. Adding to one col twice
// adds up.
func (r *Rows) Add(col int, coef float64) {
	if coef != 0 {
		r.cols, r.coefs = append(r.cols, col), append(r.coefs, coef)
	}
}

// AddAll adds the coefficients, none of them 0, to the row at hand for the unknowns
// cols.
func (r *Rows) AddAll(cols []int, coefs []float64) {
	r.cols, r.coefs = append(r.cols, cols...), append(r.coefs, coefs...)
}

// End closes the row at hand: off is what was observed less what the unknowns give.
func (r *Rows) End(off, weight float64) {
	if len(r.start) == 0 {
		r.start = append(r.start, 0)
	}
	r.start = append(r.start, len(r.cols))
	r.off, r.weight = append(r.off, off), append(r.weight, weight)
}

// Len tells how many rows are closed.
func (r *Rows) Len() int { return len(r.off) }

// Row gives the unknowns of the i-th row and their coefficients, not to be changed.
func (r *Rows) Row(i int) (cols []int, coefs []float64) {
	a, b := r.start[i], r.start[i+1]
	return r.cols[a:b], r.coefs[a:b]
}

// Off gives what the i-th row was observed to be, less what the unknowns give.
func (r *Rows) Off(i int) float64 { return r.off[i] }

// SetOff sets what Off gives, where it is known better than by the coefficients.
func (r *Rows) SetOff(i int, off float64) { r.off[i] = off }

// Weight gives the weight of the i-th row.
func (r *Rows) Weight(i int) float64 { return r.weight[i] }

// Scatter sets g to the i-th row, k-fold.
func (r *Rows) Scatter(g []float64, i int, k float64) {
	clear(g)
	cols, coefs := r.Row(i)
	for j, c := range cols {
		g[c] += float64(k * coefs[j])
	}
}

// Dot gives the i-th row times z.
func (r *Rows) Dot(i int, z []float64) float64 {
	cols, coefs := r.Row(i)
	var sum float64
	for k, c := range cols {
		sum += float64(coefs[k] * z[c])
	}
	return sum
}

// Objective is the sum of the weighted squares.
func (r *Rows) Objective() float64 {
	var sum float64
	for i, v := range r.off {
		sum += float64(r.weight[i] * float64(v*v))
	}
	return sum
}

// gradient sets g to the weighted sum of the rows times their offs.
func (r *Rows) gradient(g []float64) {
	clear(g)
	for i, v := range r.off {
		cols, coefs := r.Row(i)
		w := float64(r.weight[i] * v)
		for k, c := range cols {
			g[c] += float64(coefs[k] * w)
		}
	}
}
