package advise

import (
	"math"

	"leafwright/geom"
	"leafwright/geom/advise/lp"
	"leafwright/geom/door"
	"leafwright/geom/judge"
)

// finish rounds the answer of an attempt's program to what can be worked, tries it
// out on the exact model, and keeps it as a plan if it comes out good. Where the
// usual step breaks a limit, whatever is tried, a finer one is taken, at last whole
// shavings.
func (w *Work) finish(a *attempt) {
	m := w.model
	w.model = nil
	if m == nil {
		return
	}
	m.lp.Prove()
	bound := m.lp.Bound(m.lp.Dual()) + m.begun()
	steps := []float64{w.p.step(), w.p.step() / 2, shaving}
	if w.p.Step > 0 { // a rule in inches has no shavings of a tenth of a millimetre
		steps[2] = w.p.Step / 4
	}
	if m.sure && m.roomy() {
		try := func(part, step float64) bool {
			m.ask(part)
			m.step = step
			rounds := 4
			if !w.p.Offered {
				rounds = 2 // there is another way yet
			}
			t := w.rounded(m, 0, rounds)
			if t != nil {
				w.keep(m, w.planOf(a, m, t, bound))
			}
			return t != nil
		}
		// Errors ask for more room than whole steps leave: finer steps are worth it only
		// where the leaf has been offered up, and not done anew once more gaps are read.
		if w.p.Offered && try(1, steps[1]) || try(1, steps[0]) {
			w.bolder(a, m, bound)
			return
		}
		// What was left out for doing little may be what lets the rest be rounded.
		m.loose()
		m.open()
		m.ask(0.5)
		if m.solve() == lp.Optimal {
			m.lean()
			m.lp.Prove()
			bound = m.lp.Bound(m.lp.Dual()) + m.begun()
		}
	}
	m.diving = true
	if m.sure {
		m.ask(0)
	}
	round := func(inside float64, rounds int) bool {
		t := w.rounded(m, inside, rounds)
		if t != nil {
			w.keep(m, w.planOf(a, m, t, bound))
		}
		return t != nil
	}
	for _, step := range steps {
		m.step = step
		for _, inside := range m.insides() {
			if round(inside, 4) {
				return
			}
		}
		// What costs least may be what no step fits: with all that may be done at hand, what
		// steps leave over is made up by something else.
		m.open()
		if round(0, 2) {
			return
		}
		m.open()
		if m.solve() == lp.Optimal {
			m.lean()
		}
	}
}

// bolder tries, where limits are so narrow that no room kept for errors makes a plan sure,
// whether one that keeps none comes to less: then it is. Only of the best so
// far, and of what is dear.
func (w *Work) bolder(a *attempt, m *model, bound float64) {
	const unsure = 0.5
	last := &w.advice.Plans[len(w.advice.Plans)-1]
	if w.p.Offered || last.model != m || last.Sure > unsure {
		return
	}
	for i := range w.advice.Plans {
		if !a.dear() && w.advice.Plans[i].Price < last.Price {
			return
		}
	}
	m.loose()
	m.open()
	m.ask(0)
	if m.solve() == lp.Optimal {
		m.lean()
		m.diving = true
		t := w.rounded(m, 0, 3)
		if t == nil {
			m.open()
			t = w.rounded(m, 0, 2)
		}
		if t != nil {
			if q := w.planOf(a, m, t, bound); q.Price < last.Price {
				*last = *q
			}
		}
		m.diving = false
	}
	copy(m.x, last.x)
	m.step = last.step
}

// insides are how far within the limits, mm, the answer lies that is rounded: one upon
// them costs least, and one within them is the more likely to bear rounding.
func (m *model) insides() []float64 {
	if m.sure {
		return []float64{0}
	}
	return []float64{0, 0.3, 0.15, 0.5}
}

// better looks for a cheaper way to do what a plan does that might come to cost the least
// of all: by other parts, by another rounding, by finer steps. It takes the plan of the
// lowest bound first and tells whether there was one to look at.
func (w *Work) better() bool {
	const near, trifle, finer = 0.02, 0.5, 5.0 // of a price, and prices
	pick, least := -1, math.Inf(1)
	for i := range w.advice.Plans {
		least = min(least, w.advice.Plans[i].Price)
	}
	for i := range w.advice.Plans {
		p := &w.advice.Plans[i]
		if p.tried || p.model.sure || p.Bound > least-trifle || p.Price < p.Bound+max(trifle, float64(near*p.Bound)) {
			continue
		}
		if pick < 0 || p.Bound < w.advice.Plans[pick].Bound {
			pick = i
		}
	}
	const most = 3
	if pick < 0 || w.bettered == most {
		return false
	}
	p := &w.advice.Plans[pick]
	p.tried = true
	m := p.model
	best := *p
	look := func(step, inside float64) {
		m.step = step
		if t := w.rounded(m, inside, 3); t != nil {
			worth := 1e-6
			if step < best.step-nothing { // finer is harder to work
				worth = max(finer, float64(0.05*best.Price))
			}
			if q := w.planOf(&p.attempt, m, t, p.Bound); q.Price < best.Price-worth {
				best = *q
			}
		}
	}
	look(p.step, m.insides()[1])
	for _, step := range [...]float64{w.p.step() / 2, shaving} {
		if step < p.step-nothing && (step != shaving || !(w.p.Step > 0)) {
			look(step, 0)
		}
	}
	if best.Price <= least && w.bettered == 0 && m.swap() {
		for range 3 {
			if t := w.try(w.unrounded(m)); t.refused != nil || m.correct(w.measure(t.piece.Door)) < trueEnough || m.solve() != lp.Optimal {
				break
			}
		}
		look(w.p.step(), 0)
		look(w.p.step(), m.insides()[1])
		for _, step := range [...]float64{w.p.step() / 2, shaving} {
			if step != shaving || !(w.p.Step > 0) {
				look(step, 0)
			}
		}
	}
	m.loose()
	copy(m.x, best.x)
	m.step, best.tried = best.step, true
	*p = best
	w.bettered++
	return true
}

// roomy tells whether there is room for any of the allowance for errors.
func (m *model) roomy() bool {
	for e := range door.Edges {
		if max(m.keep[0][e], m.keep[1][e], m.keep[2][e]) > 0.1 {
			return true
		}
	}
	return false
}

// rounded rounds the answer to the model's step, tries it out and takes what is found
// into account, so many times; nil where nothing good comes of it. The answer that is
// first rounded lies so far within the limits, if any does.
func (w *Work) rounded(m *model, inside float64, rounds int) *trial {
	m.loose()
	m.within(-hair)
	for range rounds {
		m.loose()
		if inside > 0 {
			m.within(inside)
			if m.solve() != lp.Optimal {
				break
			}
		}
		whole := m.sure && !m.diving || !m.dive()
		if whole && inside > 0 {
			m.loose()
			m.within(-hair)
			whole = !m.dive()
		}
		if whole {
			m.nearest()
		}
		if inside > 0 {
			m.within(-hair)
			inside = 0
		}
		if !m.polish() {
			if !m.anew() {
				break
			}
			continue
		}
		t := w.try(w.moves(m))
		if t.refused != nil {
			if m.loose(); !m.heed(t) {
				break
			}
			if m.solve() != lp.Optimal && !m.anew() {
				break
			}
			continue
		}
		w.judged(t)
		if t.good {
			return t
		}
		w.miss(t)
		x := append([]float64(nil), m.x...)
		m.loose()
		copy(m.x, x)
		m.correct(w.measure(t.piece.Door))
		m.tighten(t.findings)
		if m.solve() != lp.Optimal && !m.anew() {
			break
		}
	}
	m.loose()
	return nil
}

// anew opens the parts that were left out, for what was found since may call for them;
// false where none was, or they are of no help.
func (m *model) anew() bool {
	m.loose()
	out := false
	for _, shut := range m.shut {
		out = out || shut
	}
	if !out {
		return false
	}
	m.open()
	if m.solve() != lp.Optimal {
		return false
	}
	m.lean()
	return m.state == lp.Optimal
}

// within narrows every gap's limits by so much on either side, or widens them below 0, but
// lets nothing bind; 0 puts them as they are.
func (m *model) within(by float64) {
	for i, p := range m.w.places {
		m.lo[i], m.hi[i] = p.lo-doubt, p.hi+doubt
		if p.subject > judge.SwingGap {
			continue
		}
		m.lo[i] += max(-p.lo, min(by, (p.hi-p.lo)/4))
		m.hi[i] -= min(by, (p.hi-p.lo)/4)
	}
	m.refresh()
}

// loose frees what was fixed to whole steps.
func (m *model) loose() {
	for j := range m.use {
		if m.fixed[j] {
			m.fixed[j] = false
			m.lp.SetBounds(j, m.least[j], m.most[j])
		}
	}
}

// dive fixes the amounts to whole steps one after another, the one nearest to a step
// first, each to the step that leaves the rest cheaper; false where neither leaves
// anything.
func (m *model) dive() bool {
	if m.solve() != lp.Optimal {
		return false
	}
	for range m.use {
		best, off := -1, math.Inf(1)
		for j := range m.use {
			if m.fixed[j] || m.x[j] <= nothing { // nought is left free: it may have to make up for what others are rounded by
				continue
			}
			down, up := m.round(j)
			if d := min(m.x[j]-down, up-m.x[j]); d < off {
				best, off = j, d
			}
		}
		if best < 0 {
			return true
		}
		down, up := m.round(best)
		if off <= nothing { // there already: no need to solve for it
			if m.x[best]-down > up-m.x[best] {
				down = up
			}
			m.fix(best, down)
			continue
		}
		near, far := down, up
		if m.x[best]-down > up-m.x[best] {
			near, far = up, down
		}
		dear, cheap := m.fixing(best, far), m.fixing(best, near)
		switch {
		case math.IsInf(dear, 1) && math.IsInf(cheap, 1):
			return false
		case dear < cheap:
			m.fixing(best, far)
		}
	}
	return m.solve() == lp.Optimal
}

// round gives the whole steps next to an amount, within its bounds.
func (m *model) round(j int) (down, up float64) {
	u := m.unknown(j)
	x := m.x[j]
	if u.sort == pack {
		down, up = 0, math.Inf(1)
		for _, p := range m.w.packs {
			if p <= x+nothing {
				down = p
			}
			if p >= x-nothing {
				up = min(up, p)
			}
		}
		return down, up
	}
	step := m.stepOf(u)
	down = step * math.Floor(x/step+nothing)
	up = step * math.Ceil(x/step-nothing)
	if down < m.least[j] {
		down = step * math.Ceil(m.least[j]/step-nothing)
		up = max(up, down)
	}
	if up > m.most[j] {
		if u.sort == unpack {
			up = m.most[j] // no step: packing taken out whole
		} else {
			up = max(0, step*math.Floor(m.most[j]/step+nothing))
		}
		down = min(down, up)
	}
	return down, up
}

// stepOf is what an amount is a whole multiple of: where a plate or a stop is moved never less than
// half a millimetre or 1/64 in., for no chisel sets it finer; of the hinges never shavings.
func (m *model) stepOf(u *unknown) float64 {
	switch u.sort {
	case setOut, raise, shiftLow, stopBack:
		if m.w.p.Step > 0 {
			return max(m.step, m.w.p.Step/2)
		}
		return max(m.step, usualStep)
	}
	if u.hung() {
		return max(m.step, m.w.p.step()/2)
	}
	return m.step
}

// nearest rounds every amount to its nearest step, whatever that breaks.
func (m *model) nearest() {
	m.loose()
	m.solve()
	for j := range m.use {
		if m.x[j] <= nothing {
			m.fix(j, 0)
			continue
		}
		down, up := m.round(j)
		if m.x[j]-down > up-m.x[j] {
			down = up
		}
		m.fix(j, down)
	}
}

func (m *model) fix(j int, x float64) {
	m.fixed[j] = true
	m.x[j] = x
	m.lp.SetBounds(j, x, x)
}

// fixing fixes an amount and gives what the rest then costs; infinite where nothing
// keeps the limits.
func (m *model) fixing(j int, x float64) float64 {
	if math.IsInf(x, 1) {
		return x
	}
	m.fix(j, x)
	if m.solve() != lp.Optimal {
		return math.Inf(1)
	}
	return m.lp.Value()
}

// tighten narrows limits where the exact model found them broken, by a little more
// than they were.
func (m *model) tighten(all []judge.Finding) {
	const more, near = 0.01, 150.0 // mm
	for _, f := range all {
		if f.Verdict == judge.Good {
			continue
		}
		subject, edge, by, high := f.Subject, f.Edge, f.Limits.Least-f.Worst, false
		switch {
		case f.Subject == judge.Latching:
			subject, by = judge.StopGap, -f.Worst
		case f.Subject == judge.SwingFloor:
			subject, edge = judge.SwingGap, door.FloorSide
		case f.Subject == judge.HingeLine:
			continue
		case f.Verdict == judge.Slack:
			by, high = f.Worst-f.Limits.Most, true
		}
		for i, p := range m.w.places {
			if p.subject != subject || p.edge != edge || subject != judge.SwingGap && abs(p.at-f.At) > near {
				continue
			}
			if high {
				m.hi[i] -= by + more
			} else {
				m.lo[i] += by + more
			}
		}
	}
	m.refresh()
}

// packings gives the thicknesses that one packer or two make, rising.
func packings(of []float64) (out []float64) {
	out = append(out, of...)
	for i, a := range of {
		for _, b := range of[i:] {
			out = append(out, a+b)
		}
	}
	fit := out[:0:0]
	for _, x := range out {
		if x > 0 && x <= packMost {
			fit = append(fit, x)
		}
	}
	geom.Ascending(fit)
	return fit
}
