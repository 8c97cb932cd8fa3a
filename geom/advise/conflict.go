package advise

import (
	"math"

	"leafwright/geom/advise/lp"
	"leafwright/geom/door"
	"leafwright/geom/judge"
	"leafwright/geom/trim"
)

// Sort is what a limit is of.
type Sort uint8

// The sorts of limit: what gaps must keep, and what the person wishes.
const (
	GapLimit    Sort = iota // closed, along an edge
	StopLimit               // to a stop
	SwingLimit              // through the swing; over the floor on the floor side
	HingeLimit              // the outer hinges as far apart on the leaf as on the jamb
	WayLimit                // the clear way
	StilesAlike             // as much off one stile as off the other
	TopRail                 // the top rail's height
	FrameStays              // nothing is done to the frame
	HingesStay              // nothing is done to the hinges
	NoStrip                 // nothing is glued on

	gainLeft // no wish: what is planed off a hinge's gain
)

// Limit is one thing that is to be kept. Edge and Upper count for gaps: Upper tells
// that it is the most, not the least.
type Limit struct {
	Sort  Sort
	Edge  door.Edge
	Upper bool
}

// Relax is a limit and how far it would have to give way, mm; 0 for a wish that
// either holds or does not.
type Relax struct {
	Limit
	By float64
	// Enough tells that this one giving way so far is enough by itself.
	Enough bool
}

// Conflict is why there is no plan.
type Conflict struct {
	// Limits contradict each other, and would not without any one of them; a single one
	// contradicts what must be, that nothing binds. None where the gaps could be had but
	// not the timber: Care then tells of it.
	Limits []Relax
	// Together is how little would do if every gap's limit gave way, the least in sum.
	Together []Relax
	// Care is what forbade the last of the moves that would have done, if one did.
	Care *trim.Care
	// Oversize tells where the leaf is bigger by more than may come off it.
	Oversize []Oversize
	// Missed is by what the nearest to a plan that could be worked misses limits, none
	// where nothing came near, or limits contradict each other.
	Missed []Relax
	// Plans are what would do if limits gave way, as each one's Given tells.
	Plans []Plan
}

// The groups of limits a place may belong to, two for each subject and edge.
const (
	subjects  = 5
	groups    = subjects * int(door.Edges) * 2
	givesMost = 300.0 // mm: more than anything could give way
)

// sortOf gives the sort of limit of a place.
func sortOf(s judge.Subject) Sort {
	switch s {
	case judge.ClosedGap:
		return GapLimit
	case judge.StopGap:
		return StopLimit
	case judge.SwingGap:
		return SwingLimit
	case judge.HingeLine:
		return HingeLimit
	}
	return WayLimit
}

// group gives the group of a place's limit.
func group(p *place, k limit) int {
	return (int(sortOf(p.subject))*int(door.Edges)+int(p.edge))*2 + int(k)
}

// conflict is the search for what contradicts itself. Every group of limits may be
// made to give way, in the program by a variable of its own, and so may every wish.
type conflict struct {
	m     *model
	all   []Limit // what may give way
	var0  int
	next  int
	core  []int // of all
	given []bool
	alone int
}

// oppose does a slice of that search and tells whether it was the last.
func (w *Work) oppose() bool {
	c := w.conflict
	switch {
	case c == nil:
		return w.beginConflict()
	case c.next < len(c.all):
		const slice = 6
		for range slice {
			if c.next == len(c.all) {
				break
			}
			c.give(c.next, true)
			if c.m.solve() == lp.Infeasible {
				c.given[c.next] = true
			} else {
				c.give(c.next, false)
				c.core = append(c.core, c.next)
			}
			c.next++
		}
		return false
	case c.alone < len(c.core):
		if c.alone == 0 {
			for i := range c.all {
				c.give(i, false)
			}
		}
		w.advice.Conflict.Limits = append(w.advice.Conflict.Limits, c.byItself(c.core[c.alone]))
		c.alone++
		return false
	}
	w.advice.Conflict.Together = c.together()
	if w.p.Wishes.NoStrip {
		for _, e := range [...]door.Edge{door.LatchSide, door.HeadSide, door.FloorSide} {
			m := w.program(&attempt{family: Splice, strip: e, hung: !w.p.Wishes.HingesStay})
			if m.solve() == lp.Optimal {
				w.advice.Conflict.Limits = append(w.advice.Conflict.Limits, Relax{Limit: Limit{Sort: NoStrip}, Enough: true})
				break
			}
		}
	}
	return true
}

// beginConflict makes the program with everything in it that could be done, forbidden
// or not, but strips.
func (w *Work) beginConflict() bool {
	v := &w.p.Wishes
	w.advice.Conflict = &Conflict{Care: w.refusal, Oversize: w.oversizes()}
	if len(w.advice.Conflict.Oversize) > 0 {
		return true
	}
	var use []int
	for i := range w.unknowns {
		u := &w.unknowns[i]
		if u.sort == strip || u.of == closely || u.sort == shiftLow && !w.strained() || u.sort == sinkJamb && !w.spent() {
			continue
		}
		if u.sort == offAt && (v.StilesAlike && u.edge.Upright() || v.TopRail > 0 && u.edge == door.HeadSide) {
			continue // a wish is about whole edges
		}
		use = append(use, i)
	}
	m := w.newElastic(use)
	c := &conflict{m: m, var0: m.count() - groups}
	for s := GapLimit; s <= WayLimit; s++ {
		for e := range door.Edges {
			for k := range 2 {
				if w.hasLimit(s, e, limit(k)) {
					c.all = append(c.all, Limit{s, e, k == 1})
				}
			}
		}
	}
	if v.StilesAlike {
		c.all = append(c.all, Limit{Sort: StilesAlike})
	}
	if len(w.wishes) > 0 && v.TopRail > 0 {
		c.all = append(c.all, Limit{Sort: TopRail})
	}
	if v.LeaveFrame {
		c.all = append(c.all, Limit{Sort: FrameStays})
	}
	if v.HingesStay {
		c.all = append(c.all, Limit{Sort: HingesStay})
	}
	c.given = make([]bool, len(c.all))
	for i := range c.all {
		c.give(i, false)
	}
	if m.solve() != lp.Infeasible { // the limits bear with each other: it is the timber, or the rounding
		if w.missed != nil {
			w.advice.Conflict.Missed = w.missed.given
		}
		return true
	}
	w.conflict = c
	return false
}

// gives is the most that a limit could give way: no least below nought would help, for
// there the pieces bind.
func (w *Work) gives(l Limit) float64 {
	if l.Upper || l.Sort == HingeLimit || l.Sort == WayLimit {
		return givesMost
	}
	most := 0.0
	for i := range w.places {
		if p := &w.places[i]; sortOf(p.subject) == l.Sort && p.edge == l.Edge {
			most = max(most, p.lo)
		}
	}
	return most
}

func (w *Work) hasLimit(s Sort, e door.Edge, k limit) bool {
	for i := range w.places {
		p := &w.places[i]
		if sortOf(p.subject) == s && p.edge == e && !math.IsInf([...]float64{p.lo, p.hi}[k], 0) {
			return true
		}
	}
	return false
}

// give lets a limit or a wish give way, or holds it.
func (c *conflict) give(i int, way bool) {
	m, l := c.m, c.all[i]
	forbid := func(of func(u *unknown) bool) {
		for j := range m.use {
			if u := m.unknown(j); of(u) {
				if way {
					m.lp.SetBounds(j, m.least[j], m.most[j])
				} else {
					m.lp.SetBounds(j, 0, 0)
				}
			}
		}
	}
	switch l.Sort {
	case StilesAlike, TopRail:
		k := 0
		for r, of := range m.rows {
			if of.place >= 0 {
				continue
			}
			if q := &m.w.wishes[k]; q.sort == l.Sort {
				if way {
					m.lp.SetRow(r, math.Inf(-1), math.Inf(1))
				} else {
					m.lp.SetRow(r, q.lo, q.hi)
				}
			}
			k++
		}
	case FrameStays:
		forbid(func(u *unknown) bool { return m.w.parts[u.part].frame })
	case HingesStay:
		forbid(func(u *unknown) bool { return u.hung() })
	default:
		most := 0.0
		if way {
			most = c.m.w.gives(l)
		}
		m.lp.SetBounds(c.variable(i), 0, most)
	}
}

// hung tells whether an unknown is of the hinges.
func (u *unknown) hung() bool {
	switch u.sort {
	case sink, sinkJamb, unpack, pack, setOut, raise, shiftLow:
		return true
	}
	return false
}

func (c *conflict) variable(i int) int {
	l := c.all[i]
	k := notLess
	if l.Upper {
		k = notMore
	}
	return c.var0 + (int(l.Sort)*int(door.Edges)+int(l.Edge))*2 + int(k)
}

// byItself finds how far one limit would have to give way, all others holding.
func (c *conflict) byItself(i int) Relax {
	r := Relax{Limit: c.all[i]}
	cost := make([]float64, c.m.count())
	if r.Sort <= WayLimit {
		cost[c.variable(i)] = 1
	}
	c.m.lp.SetCost(cost)
	c.give(i, true)
	if c.m.solve() == lp.Optimal {
		r.Enough = true
		if r.Sort <= WayLimit {
			r.By = c.m.x[c.variable(i)]
		}
	}
	c.give(i, false)
	return r
}

// together finds the least in sum by which gaps' limits would have to give way, the
// wishes holding; none where the wishes alone are too much.
func (c *conflict) together() (out []Relax) {
	cost := make([]float64, c.m.count())
	for i, l := range c.all {
		if l.Sort <= WayLimit {
			cost[c.variable(i)] = 1
			c.give(i, true)
		}
	}
	c.m.lp.SetCost(cost)
	if c.m.solve() != lp.Optimal {
		return nil
	}
	for i, l := range c.all {
		if l.Sort <= WayLimit {
			if by := c.m.x[c.variable(i)]; by > nothing {
				out = append(out, Relax{Limit: l, By: by})
			}
		}
	}
	return out
}
