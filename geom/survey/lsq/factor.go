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
// for each other. Stretches of eight are taken at once: their bounds are looked at
// once.
func Dot(a, b []float64) float64 {
	var s0, s1, s2, s3 float64
	b = b[:len(a)]
	for len(a) >= 8 && len(b) >= 8 {
		x, y := (*[8]float64)(a), (*[8]float64)(b)
		s0 += float64(x[0] * y[0])
		s1 += float64(x[1] * y[1])
		s2 += float64(x[2] * y[2])
		s3 += float64(x[3] * y[3])
		s0 += float64(x[4] * y[4])
		s1 += float64(x[5] * y[5])
		s2 += float64(x[6] * y[6])
		s3 += float64(x[7] * y[7])
		a, b = a[8:], b[8:]
	}
	if len(a) >= 4 && len(b) >= 4 {
		x, y := (*[4]float64)(a), (*[4]float64)(b)
		s0 += float64(x[0] * y[0])
		s1 += float64(x[1] * y[1])
		s2 += float64(x[2] * y[2])
		s3 += float64(x[3] * y[3])
		a, b = a[4:], b[4:]
	}
	for i, v := range a {
		s0 += float64(v * b[i])
	}
	return (s0 + s1) + (s2 + s3)
}

// take takes t times the row from the list, which is as long.
func take(list, row []float64, t float64) {
	list = list[:len(row)]
	for len(row) >= 8 && len(list) >= 8 {
		x, y := (*[8]float64)(row), (*[8]float64)(list)
		y[0] -= float64(x[0] * t)
		y[1] -= float64(x[1] * t)
		y[2] -= float64(x[2] * t)
		y[3] -= float64(x[3] * t)
		y[4] -= float64(x[4] * t)
		y[5] -= float64(x[5] * t)
		y[6] -= float64(x[6] * t)
		y[7] -= float64(x[7] * t)
		row, list = row[8:], list[8:]
	}
	for k, c := range row {
		list[k] -= float64(c * t)
	}
}

// Half sets y to the first half of N⁻¹·g: with L and the scale D, L⁻¹·D·g. The
// product of two such halves is g·N⁻¹·g'. y may be g.
func (f *Factor) Half(y, g []float64) {
	n := f.n
	from := 0
	for from < n && g[from] == 0 {
		y[from] = 0
		from++
	}
	for i := from; i < n; i++ {
		row := f.l[i*n : i*n+i+1]
		fi := max(from, f.first[i])
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
		take(y[fi:i], row[fi:i], t)
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
