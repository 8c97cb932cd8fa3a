package survey

import (
	"math"

	"leafwright/geom/fit"
	"leafwright/geom/survey/lsq"
)

// How far an unknown is moved to see what a fit makes of it: lengths in mm, and the
// slopes of bevels. Fits are exact to far less and all but straight over such steps.
const (
	nudge      = 0.02
	nudgeSlope = 0.0005
)

// nudgeOf gives the step for a quantity.
func (n *net) nudgeOf(q int) float64 {
	if q == n.scalar[hangingTan] || q == n.scalar[closingTan] {
		return nudgeSlope
	}
	return nudge
}

// differ measures count numbers with the door at x, and once more with each unknown
// moved a little: at the numbers, slopes[k] how they follow unknown k.
func (n *net) differ(x []float64, count int, measure func(out []float64)) (at []float64, slopes [][]float64) {
	at = make([]float64, count)
	n.write(x)
	measure(at)
	slopes = make([][]float64, n.columns)
	memory := make([]float64, count*n.columns)
	for q, k := range n.column {
		if k < 0 {
			continue
		}
		s := memory[k*count : (k+1)*count]
		h, was := n.nudgeOf(q), x[k]
		x[k] = was + h
		n.write(x)
		measure(s)
		x[k] = was
		for i := range s {
			s[i] = (s[i] - at[i]) / h
		}
		slopes[k] = s
	}
	n.write(x)
	return at, slopes
}

// hung is what the readings of a leaf hung or offered up take: how each follows
// the unknowns where they last stood.
type hung struct {
	of     []int // readings, by their row
	slopes [][]float64
	at     []float64 // unknowns where the slopes were taken
	fit    fit.Fit
}

// stray is how far, in mm, an unknown may go from where the slopes were taken
// before they are taken afresh.
const stray = 3.0

// straying tells whether the slopes must be taken afresh.
func (h *hung) straying(x []float64) bool {
	for k, v := range h.at {
		if math.Abs(x[k]-v) > stray {
			return true
		}
	}
	return h.at == nil
}

// take takes the slopes at x.
func (a *adjustment) take(x []float64) {
	h := &a.hung
	h.at = append(h.at[:0], x...)
	o := a.observer()
	_, h.slopes = a.net.differ(x, len(h.of), func(out []float64) {
		fit.EvaluateClosed(&h.fit, &a.net.d)
		for i, row := range h.of {
			r := &a.readings[a.rowOf[row]]
			out[i] = specs[r.Kind].observe(o, r)
		}
	})
}

// observer gives an observer of the net's door whose fit has been evaluated.
func (a *adjustment) observer() *observer {
	return &observer{d: &a.net.d, net: a.net, closed: func() *fit.Fit { return &a.hung.fit }}
}

// lean notes in the row at hand how the i-th hung reading follows the unknowns.
func (h *hung) lean(rows *lsq.Rows, i int) {
	for k := range h.slopes {
		rows.Add(k, h.slopes[k][i])
	}
}
