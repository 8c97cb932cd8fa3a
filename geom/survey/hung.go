package survey

import (
	"math"
	"slices"

	"leafwright/geom/door"
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

// Made gives the door as it is once the first n moves made for keeps are done to d,
// which is as found, and which it must not change. It must be a pure function.
type Made func(d door.Door, n int) door.Door

// hung is what the readings of a leaf hung or offered up take: what they come to,
// and how each follows the unknowns, where those last stood.
type hung struct {
	of     []int // readings, by their row
	made   Made
	stands []stand
	now    *fit.Fit // that readings are read off at the moment

	at    []float64 // unknowns where the slopes were taken
	value []float64 // what the readings came to there
	out   []float64
	rows  lsq.Rows // one for each: how it follows the unknowns
	spare lsq.Rows
	lever lever
	read  bool // value is what they come to at x already, by the fits at hand
	known bool // the factor of the last solve has the slopes
	exact bool // every step is by the fit itself, not by the slopes
	leant int  // how many readings lean on the unknowns
}

// stand is the door as it stood when some of the readings were taken.
type stand struct {
	after int
	door  door.Door
	fit   fit.Fit
	of    []int // places in hung.of
	dead  bool  // no door can be so: the readings have no say
}

// arrange sorts the hung readings by the door they were read on.
func (a *adjustment) arrange() {
	h := &a.hung
next:
	for i, row := range h.of {
		after := a.readings[a.rowOf[row]].After
		if h.made == nil {
			after = 0
		}
		for k := range h.stands {
			if s := &h.stands[k]; s.after == after {
				s.of = append(s.of, i)
				continue next
			}
		}
		h.stands = append(h.stands, stand{after: after, of: []int{i}})
	}
	h.value, h.out = make([]float64, len(h.of)), make([]float64, len(h.of))
}

// doorOf gives the door of a stand, the unknowns being written.
func (a *adjustment) doorOf(s *stand) *door.Door {
	if s.after == 0 {
		return &a.net.d
	}
	d := a.net.stand()
	s.door = a.hung.made(d, s.after)
	return &s.door
}

// evaluate hangs a stand's door as the unknowns have it and reads its readings off.
func (a *adjustment) evaluate(s *stand, out []float64) {
	d := a.doorOf(s)
	fit.EvaluateClosed(&s.fit, d)
	a.hung.now = &s.fit
	o := observer{d: d, net: a.net, closed: func() *fit.Fit { return a.hung.now }}
	for _, i := range s.of {
		r := &a.readings[a.rowOf[a.hung.of[i]]]
		out[i] = specs[r.Kind].observe(&o, r)
	}
}

// hangs tells whether the doors of all stands can be hung; those of unknowns that
// are far off cannot.
func (a *adjustment) hangs() bool {
	if !a.net.hangs() {
		return false
	}
	for k := range a.hung.stands {
		if s := &a.hung.stands[k]; !s.dead && s.after != 0 && len(a.doorOf(s).Check()) > 0 {
			return false
		}
	}
	return true
}

// revive notes which stands can be hung at all, the unknowns being written, and
// whose readings so have a say.
func (a *adjustment) revive() {
	for k := range a.hung.stands {
		s := &a.hung.stands[k]
		s.dead = s.after != 0 && len(a.doorOf(s).Check()) > 0
		for _, i := range s.of {
			j := &a.judged[a.rowOf[a.hung.of[i]]]
			switch {
			case s.dead:
				j.State = Unused
			case j.State == Unused:
				j.State = Used
			}
		}
	}
}

// take takes the slopes at x by levers; of a door trimmed since, where those do not
// tell the truth, by trimming and hanging it anew for each unknown.
func (a *adjustment) take(x []float64) {
	h := &a.hung
	h.at = append(h.at[:0], x...)
	a.net.write(x)
	slopes := table(nil, len(h.of), a.net.columns)
	for k := range h.stands {
		s := &h.stands[k]
		if s.dead {
			continue
		}
		if !h.read {
			a.evaluate(s, h.value)
		}
		h.lever.set(a.net, a.doorOf(s), &s.fit)
		for _, i := range s.of {
			h.lever.row(&h.spare, &a.readings[a.rowOf[h.of[i]]])
			copy(slopes[i], h.lever.dense)
		}
		if s.after != 0 && !a.hold(s, x, slopes) {
			_, by := a.net.differ(x, len(h.of), func(out []float64) { a.evaluate(s, out) })
			for _, i := range s.of {
				for c := range by {
					slopes[i][c] = by[c][i]
				}
			}
		}
	}
	h.read = false
	h.rows.Reset()
	h.rows.Room(len(h.of), len(h.of)*a.net.columns)
	for i := range h.of {
		if !h.standOf(i).dead {
			for c, v := range slopes[i] {
				h.rows.Add(c, v)
			}
		}
		h.rows.End(0, 1)
	}
}

// hold tells whether slopes hold for a door trimmed since: whether they tell by how much
// its readings differ when every unknown moves by an amount of its own, and when it
// moves as far the other way. They do not where a move gives a thing a place of its own,
// as other hinges do.
func (a *adjustment) hold(s *stand, x []float64, slopes [][]float64) bool {
	const untrue = 0.01 // mm, of twice a nudge
	h := &a.hung
	moved, told := slices.Clone(x), make([]float64, len(h.of))
	for _, sign := range [2]float64{-1, 1} {
		for q, k := range a.net.column {
			if k < 0 {
				continue
			}
			by := sign * a.net.nudgeOf(q) * float64(1+q%7) / 4
			if q%2 == 1 {
				by = -by
			}
			moved[k] = x[k] + by
			for _, i := range s.of {
				told[i] += float64(sign * by * slopes[i][k])
			}
		}
		a.net.write(moved)
		a.evaluate(s, h.out)
		for _, i := range s.of {
			told[i] -= float64(sign * h.out[i])
		}
	}
	a.net.write(x)
	for _, i := range s.of {
		if !(math.Abs(told[i]) <= untrue) {
			return false
		}
	}
	return true
}

func (h *hung) standOf(i int) *stand {
	for k := range h.stands {
		for _, j := range h.stands[k].of {
			if i == j {
				return &h.stands[k]
			}
		}
	}
	return nil
}

// read gives what the hung readings come to at x, by the fit itself or by the slopes.
func (a *adjustment) read(x []float64) []float64 {
	h := &a.hung
	if h.exact {
		for k := range h.stands {
			if s := &h.stands[k]; !s.dead {
				a.evaluate(s, h.out)
			}
		}
		return h.out
	}
	for i := range h.of {
		cols, coefs := h.rows.Row(i)
		v := h.value[i]
		for k, c := range cols {
			v += float64(coefs[k] * (x[c] - h.at[c]))
		}
		h.out[i] = v
	}
	return h.out
}

// short gives what a hung reading is off, and whether it leans on the unknowns: one
// of rubbing does not where it rubs.
func short(r *Reading, value float64) (off float64, leans bool) {
	off = r.Value - value
	if r.Kind == Rub && off >= 0 {
		return 0, false
	}
	return off, true
}

// lean notes in the row at hand how the i-th hung reading follows the unknowns.
func (h *hung) lean(rows *lsq.Rows, i int) {
	rows.AddAll(h.rows.Row(i))
}

// settle solves with the readings of the hung leaf: by their slopes, taken afresh
// until these tell what the fit tells, or where that cannot be had (a leaf that
// just touches a stop) by the fit itself at every step.
func (a *adjustment) settle() error {
	if !a.hanging {
		return a.solve()
	}
	h := &a.hung
	start := slices.Clone(a.x)
	h.read = false
	first := h.at == nil // which follows on a look at whether the leaf can be hung
	afresh := first
	h.known = false // what has a say may have changed
	for range takes {
		if h.exact {
			break
		}
		if afresh {
			a.net.write(a.x)
			if !first && !a.hangs() {
				break
			}
			first = false
			a.take(a.x)
			h.known = false
		}
		if a.solve() != nil {
			break
		}
		wrong := a.told()
		if wrong <= near {
			return nil
		}
		afresh = wrong > far
	}
	if !h.exact {
		h.exact = true
		h.read = false
		copy(a.x, start)
		a.net.write(a.x)
		a.take(a.x)
	}
	return a.solve()
}

// takes is how often what the slopes tell is put right before each step is by the
// fit itself. How wrong they may be, in standard deviations of a reading: no more
// than near to be let be, no more than far to need no fresh slopes.
const (
	takes = 5
	near  = 0.05
	far   = 0.3
)

// told gives by how much, in standard deviations of a reading, the slopes tell
// something else than the fit does, sets what each hung reading is off to the latter,
// and goes on from there.
func (a *adjustment) told() (wrong float64) {
	h := &a.hung
	a.net.write(a.x)
	if !a.hangs() {
		return math.Inf(1)
	}
	a.read(a.x)
	copy(h.at, a.x)
	for k := range h.stands {
		if s := &h.stands[k]; !s.dead {
			a.evaluate(s, h.value)
		}
	}
	h.read = true
	for i, row := range h.of {
		if h.standOf(i).dead {
			continue
		}
		r := &a.readings[a.rowOf[row]]
		was, _ := short(r, h.out[i])
		is, _ := short(r, h.value[i])
		if a.weight[row] != 0 {
			wrong = max(wrong, math.Abs(was-is)/a.sigma[row])
		}
		a.sol.Rows.SetOff(row, is)
	}
	return wrong
}
