package advise

import (
	"leafwright/geom/door"
	"leafwright/geom/judge"
	"leafwright/geom/trim"
)

// keep adds what was tried out as a plan.
func (w *Work) keep(a *attempt, m *model, t *trial, bound float64) {
	price := m.price()
	p := Plan{Family: a.family, Strip: a.strip, Moves: t.moves, Steps: t.steps, Bound: min(bound, price), Price: price, Sure: 1}
	p.Cost = costOf(t.steps)
	p.Cost.Uneven = uneven(&w.tries)
	if m.sure {
		gaps := make([]float64, len(w.places))
		for i := range gaps {
			gaps[i] = m.gap(i)
		}
		m.stretches()
		o := m.odds(gaps)
		p.Sure = max(0, 1-o.tight-o.wide)
		o.tight, o.wide = min(1, o.tight), min(1, o.wide)
		price += w.doubted(o)
		bound += w.doubted(o)
		p.Price, p.Bound = price, min(bound, price)
	}
	p.Family = familyOf(a.family, t.moves)
	p.Stages = []Stage{{Moves: t.moves}}
	p.model = m
	w.advice.Plans = append(w.advice.Plans, p)
}

// costOf adds up what steps cost.
func costOf(steps []trim.Step) (c Cost) {
	for i := range steps {
		d := &steps[i].Done
		c.Timber += d.Volume / 1000
		c.Most = max(c.Most, d.Most)
		c.Minutes += d.Minutes
		c.Cuts += d.Cuts
		c.Gains += len(d.Gains)
		c.Strips += d.Strips
		c.Frame = c.Frame || d.Frame
	}
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
	w.advice.Plans = kept
}

// outdoes tells whether plan a, no dearer by the preference, is as good as b in
// everything a person would choose b for, or is b in another shade.
func (w *Work) outdoes(a, b *Plan) bool {
	if a.Family == b.Family && a.Strip == b.Strip {
		return true
	}
	if a.Family == Splice && b.Family == Splice && a.Strip.Upright() && b.Strip.Upright() {
		return w.p.Piece.Anatomy.Lock.Kind == door.NoLock // a strip on the hanging stile leaves the lock where it is
	}
	const timber, time = 2, 5 // cm³, minutes: less is no reason
	even := 0.5               // mm
	if w.p.Wishes.Prefer == MostEven {
		even = 0.1
	}
	return a.Cost.Timber <= b.Cost.Timber+timber && a.Cost.Minutes <= b.Cost.Minutes+time &&
		a.Cost.Gains <= b.Cost.Gains && a.Cost.Strips <= b.Cost.Strips && a.Cost.Uneven <= b.Cost.Uneven+even &&
		(!a.Cost.Frame || b.Cost.Frame)
}

// explain gives a plan its stages, and tells of every move which finding it cures and
// what would be wrong without it.
func (w *Work) explain(p *Plan) {
	if p.model.sure {
		w.stage(p, p.model)
	}
	p.model = nil
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
