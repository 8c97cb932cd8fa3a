package advise

// What is not worth its time: most of it goes into attempts that come to nothing, or to
// what was found before.

// spared tells whether an attempt is not worth its time: everything at once where less
// does; the hinges left alone where one between the outer two is out; the frame where it is to be left alone if that can be; and, where shapes are not
// well known yet, edges scribed to a line where straight ones do, and a strip or the frame
// where the leaf may do without; and what costs no timber is outdone by no strip or face of
// the frame.
func (w *Work) spared(a *attempt) bool {
	rough := w.p.Sigma != nil
	if w.unseated && !a.hung || w.ceiling > 0 && (a.all || a.dear() && w.ceiling < w.weight.last) {
		return true
	}
	for i := range w.advice.Plans {
		p := &w.advice.Plans[i]
		switch {
		case a.all:
			return true
		case a.dear() && p.Family != JambsToo && p.Cost.Strips == 0 && p.Cost.Timber == 0:
			return true
		case a.frame && w.p.Wishes.Prefer == LeaveFrame: // what there is leaves it alone, or came of these too
			return !p.Cost.Frame
		case w.eased && a.dear() && p.Price < w.weight.last:
			return true // it costs that much by being begun
		case rough && a.scribed == everyEdge && w.p.Wishes.Prefer != MostEven:
			return true
		case rough && a.dear() && p.Cost.Strips == 0:
			return true
		}
	}
	return false
}

// dear tells whether an attempt glues a strip on or works a face of the frame.
func (a *attempt) dear() bool { return a.family == Splice || a.family == JambsToo }

// outbid tells whether an attempt to scribe what may be planed cannot come to cost less than
// what there is: its program's bound, and one line at least begun, is above that.
func (w *Work) outbid(a *attempt, m *model) bool {
	if a.all || a.scribed != everyEdge || w.p.Wishes.Prefer == MostEven || m.sure {
		return false
	}
	least := m.lp.Value() + float64(w.weight.minutes*scribeBegun) + w.weight.line
	for i := range w.advice.Plans {
		if p := &w.advice.Plans[i]; p.Price <= least && p.Price < w.weight.last {
			return true
		}
	}
	return false
}

// proof is what contradicted itself in a program: so much of every row. What else may be
// done in another program may resolve it, and mostly does not.
type proof []weighed

type weighed struct {
	row    row
	wish   int // which, where the row is one
	weight float64
}

// proofsMost is how many proofs are kept, the newest first.
const proofsMost = 6

// refuted keeps the proof that a program has no answer.
func (w *Work) refuted(m *model) {
	y := m.lp.Ray()
	if m.lp.Rows() != len(m.rows) || y == nil {
		return
	}
	var p proof
	wish := 0
	for r, of := range m.rows {
		if y[r] != 0 {
			p = append(p, weighed{of, wish, y[r]})
		}
		if of.place < 0 {
			wish++
		}
	}
	w.proofs = append(w.proofs, nil)
	copy(w.proofs[1:], w.proofs)
	w.proofs[0] = p
	if len(w.proofs) > proofsMost {
		w.proofs = w.proofs[:proofsMost]
	}
}

// hopeless tells whether what contradicted itself in an earlier program does in this one.
func (m *model) hopeless() bool {
	for _, p := range m.w.proofs {
		for _, q := range p {
			if q.row.place >= 0 && !m.made[q.row.place][q.row.limit] {
				m.add(q.row.place, q.row.limit)
			}
		}
		y := make([]float64, len(m.rows))
		wish := 0
		for r, of := range m.rows {
			for _, q := range p {
				if of == q.row && (of.place >= 0 || q.wish == wish) {
					y[r] = q.weight
				}
			}
			if of.place < 0 {
				wish++
			}
		}
		if m.lp.Contradicts(y) > hopes {
			return true
		}
	}
	return false
}

// hopes is by how much, mm, a contradiction must hold to be one that rounding did not make.
const hopes = 1e-6

// found is what a program's answer was, by unknown, and whether a plan came of it.
type found struct {
	x    []float64
	plan bool
}

// foundBefore tells whether a program's answer is one that a plan was already made of, and
// keeps it.
func (w *Work) foundBefore(m *model) bool {
	x := make([]float64, len(w.unknowns))
	for j, i := range m.use {
		x[i] = m.x[j]
	}
	for k := range w.found {
		if f := &w.found[k]; f.plan && same(f.x, x) {
			return true
		}
	}
	w.found = append(w.found, found{x: x})
	return false
}

func same(a, b []float64) bool {
	const little = 1e-4 // mm
	for i, x := range b {
		was := 0.0
		if i < len(a) {
			was = a[i]
		}
		if abs(x-was) > little {
			return false
		}
	}
	return true
}

// outshone tells whether what could come of a program's answer would not be listed: it
// works a face of the frame by name only, or what it is another shade of costs no more than
// its bound. Where limits give way the best alone is told.
func (w *Work) outshone(a *attempt, m *model) bool {
	moves := w.unrounded(m)
	p := Plan{Family: familyOf(a.family, moves), Strip: a.strip, Moves: moves, attempt: *a}
	if a.family == JambsToo && p.Family != JambsToo && len(w.advice.Plans) > 0 {
		return true
	}
	if m.sure {
		return false
	}
	bound := m.price()
	for i := range w.advice.Plans {
		if q := &w.advice.Plans[i]; q.Price <= bound && (w.eased || w.shade(q, &p)) {
			return true
		}
	}
	return false
}
