package lsq

import (
	"fmt"
	"math"
)

// Factor is the normal matrix N of weighted rows, as L·Lᵀ with L lower triangular
// (Cholesky), after both sides are scaled to a diagonal of ones. Each row of L is
// kept from its first entry on, since N is mostly empty.
type Factor struct {
	n     int
	l     []float64 // n × n by rows, lower half
	first []int     // of each row: the first column that may hold anything
	scale []float64 // of each unknown: 1/√N_ii
	work  []float64
}

// Undetermined tells that the rows say nothing about an unknown that others do
// not say already.
type Undetermined struct{ Unknown int }

func (e Undetermined) Error() string {
	return fmt.Sprintf("unknown %d is not determined by the observations", e.Unknown)
}

// rankless is the part of a scaled pivot's original 1 below which nothing but
// rounding is left of it.
const rankless = 1e-14

// Set factors the normal matrix of the rows in n unknowns. The error is
// [Undetermined] when they do not determine all.
func (f *Factor) Set(r *Rows, n int) error {
	f.n = n
	f.l = grown(f.l, n*n)
	f.scale = grown(f.scale, n)
	f.work = grown(f.work, n)
	clear(f.l)
	if cap(f.first) < n {
		f.first = make([]int, n)
	}
	f.first = f.first[:n]
	for i := range f.first {
		f.first[i] = i
	}
	for i := range r.Len() {
		w := r.weight[i]
		if w == 0 {
			continue
		}
		cols, coefs := r.Row(i)
		for a, ca := range cols {
			wa := float64(w * coefs[a])
			row := f.l[ca*n : ca*n+n]
			for b, cb := range cols {
				if cb <= ca {
					row[cb] += float64(wa * coefs[b])
					if cb < f.first[ca] {
						f.first[ca] = cb
					}
				}
			}
		}
	}
	for i := range n {
		d := f.l[i*n+i]
		if !(d > 0) || math.IsInf(d, 1) {
			return Undetermined{i}
		}
		f.scale[i] = 1 / math.Sqrt(d)
	}
	return f.decompose()
}

func (f *Factor) decompose() error {
	n := f.n
	for i := range n {
		fi := f.first[i]
		row := f.l[i*n : i*n+i+1]
		si := f.scale[i]
		for j := fi; j < i; j++ {
			fj := max(fi, f.first[j])
			other := f.l[j*n : j*n+j+1]
			s := float64(float64(row[j]*si)*f.scale[j]) - Dot(row[fj:j], other[fj:j])
			row[j] = s / other[j]
		}
		s := 1 - Dot(row[fi:i], row[fi:i])
		if !(s > rankless) {
			return Undetermined{i}
		}
		row[i] = math.Sqrt(s)
	}
	return nil
}

// Dot gives the product of two lists of one length, in four sums that do not wait
// for each other.
func Dot(a, b []float64) float64 {
	var s0, s1, s2, s3 float64
	b = b[:len(a)]
	i := 0
	for ; i+3 < len(a); i += 4 {
		s0 += float64(a[i] * b[i])
		s1 += float64(a[i+1] * b[i+1])
		s2 += float64(a[i+2] * b[i+2])
		s3 += float64(a[i+3] * b[i+3])
	}
	for ; i < len(a); i++ {
		s0 += float64(a[i] * b[i])
	}
	return (s0 + s1) + (s2 + s3)
}

// Half sets y to the first half of N⁻¹·g: with L and the scale D, L⁻¹·D·g. The
// product of two such halves is g·N⁻¹·g'. y may be g.
func (f *Factor) Half(y, g []float64) {
	n := f.n
	for i := range n {
		row := f.l[i*n : i*n+i+1]
		fi := f.first[i]
		y[i] = (float64(g[i]*f.scale[i]) - Dot(row[fi:i], y[fi:i])) / row[i]
	}
}

// Back sets z to the other half, D·L⁻ᵀ·y; z may be y.
func (f *Factor) Back(z, y []float64) {
	n := f.n
	copy(f.work, y)
	y = f.work
	for i := n - 1; i >= 0; i-- {
		row := f.l[i*n : i*n+i+1]
		t := y[i] / row[i]
		y[i] = t
		fi := f.first[i]
		part := y[fi:i]
		for k, c := range row[fi:i] {
			part[k] -= float64(c * t)
		}
	}
	for i, t := range y[:n] {
		z[i] = float64(t * f.scale[i])
	}
}

// Solve sets z to N⁻¹·g; z may be g.
func (f *Factor) Solve(z, g []float64) {
	f.Half(z, g)
	f.Back(z, z)
}

func grown(s []float64, n int) []float64 {
	if cap(s) < n {
		return make([]float64, n)
	}
	return s[:n]
}
