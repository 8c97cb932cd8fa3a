package advise

import (
	"leafwright/geom/door"
	"leafwright/geom/judge"
	"leafwright/geom/trim"
)

// keep adds a plan to those found, but not one that could have worked the frame, did not,
// and is no cheaper than what did without it.
func (w *Work) keep(m *model, p *Plan) {
	for i := range w.advice.Plans {
		q := &w.advice.Plans[i]
		if p.attempt.family == JambsToo && p.Family != JambsToo && q.Family == p.Family && q.Price <= p.Price+1e-6 {
			return
		}
	}
	copy(m.x, p.x)
	m.step = p.step
	w.advice.Plans = append(w.advice.Plans, *p)
}

// planOf makes a plan of what was tried out.
func (w *Work) planOf(a *attempt, m *model, t *trial, bound float64) *Plan {
	p := Plan{Family: a.family, Strip: a.strip, Moves: t.moves, Steps: t.steps, Sure: 1}
	p.Cost = costOf(t.steps)
	p.Cost.Uneven = uneven(&w.tries)
	price := w.weight.of(&p.Cost, t.moves)
	p.Price, p.Bound = price, min(bound, price)
	if m.sure {
		m.stretches()
		o := m.odds(m.gaps())
		p.Sure = 1 - o.all()
		o.wide = min(1, o.wide)
		o.tight, o.loose = min(1-o.wide, o.tight+o.loose), 0
		price += w.doubted(o)
		bound += w.doubted(o)
		p.Price, p.Bound = price, min(bound, price)
	}
	p.Family = familyOf(a.family, t.moves)
	p.Stages = []Stage{{Moves: t.moves}}
	p.attempt, p.model, p.step = *a, m, m.step
	p.x = append([]float64(nil), m.x...)
	return &p
}

// of prices what moves cost.
func (g *weights) of(c *Cost, moves []trim.Move) float64 {
	sum := float64(g.timber*c.Timber) + float64(g.minutes*c.Minutes) + float64(g.uneven*c.Uneven) + float64(g.gain*float64(c.Gains))
	if c.Frame {
		sum += g.frame
	}
	for i := range moves {
		switch moves[i].Kind {
		case trim.Raise, trim.Shift:
			if c.Gains > 0 && moves[i].On != trim.OnJamb && nearHoles(moves[i].First) { // what was not screwed yet has no holes
				sum += g.plug
			}
		case trim.Splice, trim.PlaneJamb, trim.PackJamb:
			sum += g.last
		case trim.Scribe:
			sum += g.line
		}
	}
	return sum
}

// costOf adds up what steps cost.
func costOf(steps []trim.Step) (c Cost) {
	gains := 0
	for i := range steps {
		d := &steps[i].Done
		c.Timber += d.Volume / 1000
		c.Most = max(c.Most, d.Most)
		c.Minutes += d.Minutes
		c.Cuts += d.Cuts
		for _, h := range d.Gains {
			gains |= 1 << h
		}
		c.Strips += d.Strips
		c.Frame = c.Frame || d.Frame
	}
	c.Gains = ones(gains)
	return c
}

// familyOf names a plan by what its moves are, not by what was allowed.
func familyOf(tried Family, moves []trim.Move) Family {
	var hinges, edges, scribes, strips, stops, jambs bool
	for i := range moves {
		switch moves[i].Kind {
		case trim.Splice:
			strips = true
		case trim.Scribe:
			scribes = true
		case trim.Plane, trim.Cut, trim.Bevel:
			edges = true
		case trim.Restop, trim.Follow:
			stops = true
		case trim.PlaneJamb, trim.PackJamb:
			jambs = true
		default:
			hinges = true
		}
	}
	switch {
	case strips:
		return Splice
	case jambs:
		return JambsToo
	case stops && (edges || scribes || hinges):
		return StopsToo
	case stops:
		return StopsOnly
	case scribes:
		return ScribeOnly
	case edges && hinges:
		return HingePlane
	case edges:
		return PlaneOnly
	case hinges:
		return HingesOnly
	}
	return tried
}

// choose puts the plans in order and drops those that another outdoes in everything,
// and shades of one: the dearer of two that work on the same things alike.
func (w *Work) choose() {
	all := w.advice.Plans
	if w.p.Wishes.Prefer == LeaveFrame {
		all = alone(all)
	}
	var kept []Plan
	taken := make([]bool, len(all))
	for range all {
		i := -1 // the cheapest left
		for k := range all {
			if !taken[k] && (i < 0 || all[k].Price < all[i].Price) {
				i = k
			}
		}
		taken[i] = true
		out := false
		for k := range kept {
			if w.outdoes(&kept[k], &all[i]) {
				out = true
			}
		}
		if !out {
			kept = append(kept, all[i])
		}
	}
	most := plansMost
	if w.eased {
		most = 1
	}
	kept = kept[:min(len(kept), most)]
	w.advice.Plans = kept
	w.advice.Frame = w.p.Wishes.Prefer == LeaveFrame && len(kept) > 0
	for i := range kept {
		w.advice.Frame = w.advice.Frame && kept[i].Cost.Frame
	}
}

// plansMost is how many plans anyone weighs against each other.
const plansMost = 4

// works tells what of the leaf a plan works: its edges, its hinges.
func works(p *Plan) (of struct{ edges, hinges bool }) {
	for i := range p.Moves {
		switch p.Moves[i].Kind {
		case trim.Plane, trim.Cut, trim.Scribe, trim.Bevel, trim.Splice:
			of.edges = true
		case trim.Restop, trim.Follow, trim.PlaneJamb, trim.PackJamb:
		default:
			of.hinges = true
		}
	}
	return of
}

// alone gives the plans that leave the frame alone, or all where none does.
func alone(all []Plan) []Plan {
	var out []Plan
	for i := range all {
		if !all[i].Cost.Frame {
			out = append(out, all[i])
		}
	}
	if len(out) == 0 {
		return all
	}
	return out
}

// outdoes tells whether plan a, no dearer by the preference, is as good as b in
// everything a person would choose b for, or is b in another shade.
func (w *Work) outdoes(a, b *Plan) bool {
	const timber, time = 2, 5 // cm³, minutes: less is no reason
	if w.shade(a, b) {
		return true
	}
	if b.Family == JambsToo && a.Family != JambsToo && a.Cost.Strips == 0 {
		return a.Cost.Timber <= b.Cost.Timber+timber // a face of the frame is worked where that spares the leaf
	}
	if a.Family == Splice && b.Family == Splice && a.Strip.Upright() && b.Strip.Upright() {
		return false // a strip on the hanging stile leaves the lock where it is
	}
	if b.Family == Splice && a.Family != JambsToo && a.Cost.Strips == 0 && a.Cost.Timber <= b.Cost.Timber {
		return true // a strip is glued on where that saves timber, or nothing less does
	}
	if a.Cost.Cuts > 0 && b.Cost.Cuts == 0 {
		return false // a leaf left uncut is a reason
	}
	even := 0.5 // mm
	if w.p.Wishes.Prefer == MostEven {
		even = 0.1
	}
	return a.Cost.Timber <= b.Cost.Timber+timber && a.Cost.Minutes <= b.Cost.Minutes+time &&
		a.Cost.Gains <= b.Cost.Gains && a.Cost.Strips <= b.Cost.Strips && a.Cost.Uneven <= b.Cost.Uneven+even &&
		(!a.Cost.Frame || b.Cost.Frame)
}

// shade tells whether plan b is plan a, no dearer, in another shade.
func (w *Work) shade(a, b *Plan) bool {
	switch {
	case a.Family == b.Family && a.Strip == b.Strip:
		return a.Family != JambsToo || works(a) == works(b)
	case b.Family == ScribeOnly:
		// an edge is scribed where it saves
		return b.attempt.scribed == everyEdge && a.Family != JambsToo && a.Cost.Strips == 0 && w.p.Wishes.Prefer != MostEven
	case a.Family == Splice && b.Family == Splice && a.Strip.Upright() && b.Strip.Upright():
		return w.p.Piece.Anatomy.Lock.Kind == door.NoLock
	}
	return false
}

// explain gives a plan its stages, and tells of every move which finding it cures and
// what would be wrong without it.
func (w *Work) explain(p *Plan) {
	if p.model.sure {
		w.stage(p, p.model)
	}
	p.model, p.x = nil, nil
	p.Why = make([]Cure, len(p.Moves))
	rest := make([]trim.Move, 0, len(p.Moves))
	for i := range p.Moves {
		rest = append(append(rest[:0], p.Moves[:i]...), p.Moves[i+1:]...)
		t := w.try(rest)
		w.judged(t)
		c := &p.Why[i]
		c.Cures = -1
		if len(t.findings) == 0 || t.good {
			continue
		}
		c.Needed = true
		c.Without = t.findings[0]
		for j := len(t.findings) - 1; j >= 0; j-- { // the worst that is not passed over
			if f := &t.findings[j]; f.Verdict != judge.Good && !w.passed(f) {
				c.Without = *f
			}
		}
		for k := range w.advice.Findings {
			f := &w.advice.Findings[k]
			for j := range t.findings {
				g := &t.findings[j]
				if g.Verdict != judge.Good && g.Subject == f.Subject && g.Edge == f.Edge && (g.Verdict == judge.Slack) == (f.Verdict == judge.Slack) {
					c.Cures, c.Without = k, *g
					break
				}
			}
			if c.Cures >= 0 {
				break
			}
		}
	}
}
