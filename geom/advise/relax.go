package advise

import (
	"math"

	"leafwright/geom/door"
	"leafwright/geom/judge"
	"leafwright/geom/trim"
)

// Oversize is a leaf too big for the opening and the gaps wanted by more than may come
// off it.
type Oversize struct {
	Upright bool    // too high, not too wide
	By      float64 // mm
	May     float64 // mm, off both its edges together
	// Care is what forbids more; nil where it is only more than is thought of.
	Care *trim.Care
}

// oversizes tells in which ways the leaf is too big for anything to help.
func (w *Work) oversizes() (out []Oversize) {
	for _, o := range [...]struct{ a, b door.Edge }{{door.LatchSide, door.HingeSide}, {door.HeadSide, door.FloorSide}} {
		by := w.excess(o.a, o.b)
		first, why := w.mayGo(o.a)
		second, other := w.mayGo(o.b)
		may := first + second
		frame := 0.0
		if !w.p.Wishes.LeaveFrame {
			frame = jambMost
		}
		if by <= may+frame {
			continue
		}
		if why == nil {
			why = other
		}
		out = append(out, Oversize{Upright: o.a == door.HeadSide, By: by, May: may, Care: why})
	}
	return out
}

// excess is how much bigger the leaf is, where it is most, than two opposite gaps at
// their least leave, mm.
func (w *Work) excess(a, b door.Edge) float64 {
	most := math.Inf(-1)
	for i := range w.places {
		p := &w.places[i]
		if p.subject != judge.ClosedGap || p.edge != a {
			continue
		}
		over := -1
		for k := range w.places {
			if q := &w.places[k]; q.subject == judge.ClosedGap && q.edge == b && (over < 0 || abs(q.at-p.at) < abs(w.places[over].at-p.at)) {
				over = k
			}
		}
		if over < 0 {
			continue
		}
		least := func(lo float64) float64 {
			if math.IsInf(lo, 0) {
				return 0
			}
			return lo
		}
		most = max(most, least(p.lo)+least(w.places[over].lo)-w.start[i]-w.start[over])
	}
	return most
}

// mayGo is how much may be planed off an edge evenly, mm, to half a millimetre, and what
// forbids more.
func (w *Work) mayGo(e door.Edge) (mm float64, why *trim.Care) {
	refused := func(x float64) *trim.Care {
		_, steps := trim.All(w.p.Piece, []trim.Move{{Kind: trim.Plane, Edge: e, First: x, Last: x}})
		return steps[0].Why
	}
	if refused(far) == nil {
		return far, nil
	}
	lo, hi := 0, int(far*2)
	for hi-lo > 1 {
		mid := (lo + hi) / 2
		if c := refused(float64(mid) / 2); c != nil {
			hi, why = mid, c
		} else {
			lo = mid
		}
	}
	if why == nil {
		why = refused(float64(hi) / 2)
	}
	return float64(lo) / 2, why
}

// nearMiss is the best that was tried and did not come out good.
type nearMiss struct {
	given []Relax
	by    float64
}

// miss keeps what was tried where it came nearer than anything before.
func (w *Work) miss(t *trial) {
	given, free := w.given(t.findings)
	if !free || len(given) == 0 {
		return
	}
	by := 0.0
	for i := range given {
		by += given[i].By
	}
	if w.missed == nil || by < w.missed.by {
		w.missed = &nearMiss{given, by}
	}
}

// given tells which limits findings break and by how much; not free where something
// binds or the latch does not come home, which no limit giving way would help.
func (w *Work) given(all []judge.Finding) (out []Relax, free bool) {
	for i := range all {
		f := &all[i]
		if f.Verdict == judge.Good || w.passed(f) {
			continue
		}
		r := Relax{Limit: Limit{Edge: f.Edge, Upper: f.Verdict == judge.Slack}, By: f.Limits.Least - f.Worst}
		if r.Upper {
			r.By = f.Worst - f.Limits.Most
		}
		switch f.Subject {
		case judge.ClosedGap, judge.StopGap, judge.SwingGap:
			r.Sort = sortOf(f.Subject)
			if f.Verdict == judge.Binds {
				return nil, false
			}
		case judge.SwingFloor:
			r.Sort, r.Edge = SwingLimit, door.FloorSide
			if f.Verdict == judge.Binds {
				return nil, false
			}
		default:
			return nil, false
		}
		out = append(out, r)
	}
	return out, true
}

// easing is the search for a plan under limits that give way a little.
type easing struct {
	ways [][]Relax // each a set that gives way at once
	next int
	more int // how often the way under way was widened anew
	p    Problem
	work *Work
}

// easings is how many plans under limits that give way are looked for, and widened how
// often a way is widened anew by half a step: once it is from the first, for what just does
// seldom bears rounding.
const (
	easings = 2
	widened = 1
)

// beginEasing lists what could give way: first the gap's limit that need give way least,
// then a wish, else all together, else what the nearest that was tried missed.
func (w *Work) beginEasing() {
	c := w.advice.Conflict
	e := &easing{}
	w.easing = e
	gap, wish := -1, -1
	for i := range c.Limits {
		r := &c.Limits[i]
		switch {
		case !r.Enough || r.Sort == HingeLimit:
		case r.Sort > WayLimit:
			if wish < 0 {
				wish = i
			}
		case gap < 0 || r.By < c.Limits[gap].By:
			gap = i
		}
	}
	add := func(of ...Relax) {
		if len(of) > 0 {
			e.ways = append(e.ways, of)
		}
	}
	if gap >= 0 {
		add(c.Limits[gap])
	}
	if wish >= 0 {
		add(c.Limits[wish])
	}
	if len(e.ways) == 0 {
		add(c.Together...)
	}
	if w.missed != nil {
		add(w.missed.given...)
	}
}

// ease does a slice of that search and tells whether it was the last.
func (w *Work) ease() bool {
	c, e := w.advice.Conflict, w.easing
	switch {
	case e == nil:
		w.beginEasing()
		return false
	case e.next == len(e.ways) || len(c.Plans) == easings || len(c.Plans) > 0 && len(e.ways[e.next]) > 1:
		return true
	case e.work == nil:
		e.p = *w.p
		e.p.Wanted, e.p.Wishes = w.p.eased(e.ways[e.next], float64(1+e.more)*w.p.step()/2)
		e.work = w.heir(&e.p)
		return false
	case !e.work.Step():
		return false
	}
	found := e.work.advice.Plans
	e.work = nil
	if len(found) > 0 {
		p := found[0]
		w.remember(&p, e.ways[e.next])
		c.Plans = append(c.Plans, p)
	} else if e.more < widened && e.ways[e.next][0].Sort <= WayLimit {
		e.more++
		return false
	}
	e.next, e.more = e.next+1, 0
	return false
}

// heir begins the work on a problem that differs by its limits alone: what was measured
// holds for it, and what was proven may.
func (w *Work) heir(p *Problem) *Work {
	h := Start(p)
	h.eased = true
	h.base, h.back, h.runs, h.stopRuns = w.base, w.back, w.runs, w.stopRuns
	h.unknowns, h.parts = w.unknowns, w.parts
	h.unseated = w.unseated
	h.columns = append([][]float64(nil), w.columns...)
	h.start, h.closely = w.start, w.closely
	h.tried, h.packs, h.tail = make([]bool, len(w.parts)), w.packs, w.tail
	h.listPlaces()
	h.weighErrors()
	h.proofs = append(h.proofs, w.proofs...)
	return h
}

// remember has a plan under limits that gave way tell which did, and by how much at what
// it comes to, and its reasons speak of this advice's findings.
func (w *Work) remember(p *Plan, way []Relax) {
	t := w.try(p.Moves)
	w.judged(t)
	p.Given, _ = w.given(t.findings)
	for _, r := range way {
		if r.Sort > WayLimit {
			p.Given = append(p.Given, r)
		}
	}
	if len(p.Given) == 0 {
		p.Given = way
	}
	for i := range p.Why {
		c := &p.Why[i]
		c.Cures = -1
		for k := range w.advice.Findings {
			if f, g := &w.advice.Findings[k], &c.Without; c.Needed && g.Subject == f.Subject && g.Edge == f.Edge && (g.Verdict == judge.Slack) == (f.Verdict == judge.Slack) {
				c.Cures = k
				break
			}
		}
	}
}

// eased gives what is wanted and wished with some of it given way, by so much more than
// it must, mm.
func (p *Problem) eased(way []Relax, more float64) (judge.Wanted, Wishes) {
	const little = 0.05
	want, v := p.Wanted, p.Wishes
	for _, r := range way {
		by := r.By + more + little
		ease := func(l *judge.Limits) {
			if r.Upper {
				l.Most += by
			} else {
				l.Least = max(0, l.Least-by)
			}
		}
		switch r.Sort {
		case GapLimit:
			ease(&want.Gaps[r.Edge])
		case StopLimit:
			ease(&want.Stop)
		case SwingLimit:
			if r.Edge == door.FloorSide {
				ease(&want.SwingFloor)
			} else {
				ease(&want.Swing)
			}
		case WayLimit:
			want.ClearWidth = max(0, want.ClearWidth-by)
		case StilesAlike:
			v.StilesAlike = false
		case TopRail:
			v.TopRail = 0
		case FrameStays:
			v.LeaveFrame = false
		case HingesStay:
			v.HingesStay = false
		case NoStrip:
			v.NoStrip = false
		}
	}
	return want, v
}
