package advise

import (
	"leafwright/geom/advise/lp"
	"leafwright/geom/door"
)

// nearly is the search for a way that is far less work than the best there is and leaves
// some gap a little wider than wanted: what a joiner does who has better things to do.
type nearly struct {
	p    Problem
	way  []Relax
	work *Work
}

// What is worth saving: so many minutes or cm³; and by how much a gap may be wider for it,
// mm, at an edge and all together, each millimetre weighing as so many cm³ would.
const (
	nearMinutes, nearTimber = 40.0, 150.0
	nearMost, nearAll       = 3.0, 4.0
	nearPrice               = 15.0
)

// beginNear finds which gaps would be how much wider if no more than planing were done;
// false where that is not worth looking at.
func (w *Work) beginNear() bool {
	if len(w.advice.Plans) == 0 || w.eased || w.p.Offered || w.advice.JustGood || w.p.Wishes.Prefer == MostEven {
		return false
	}
	best := &w.advice.Plans[0]
	if c := &best.Cost; c.Minutes < nearMinutes && c.Timber < nearTimber && c.Strips == 0 {
		return false
	}
	a := attempt{family: PlaneOnly, hung: w.unseated}
	var use []int
	for i := range w.unknowns {
		if w.allowed(&a, &w.unknowns[i]) {
			use = append(use, i)
		}
	}
	m := w.modelOf(use, true)
	give := func(e door.Edge) int {
		return m.count() - groups + (int(GapLimit)*int(door.Edges)+int(e))*2 + int(notMore)
	}
	for e := range door.Edges {
		if w.hasLimit(GapLimit, e, notMore) {
			m.lp.SetBounds(give(e), 0, nearMost)
			m.cost[give(e)] = nearPrice
		}
	}
	m.even = false
	m.cost[m.widest()], m.cost[m.narrowest()] = 0, 0
	m.lp.SetCost(m.cost)
	if m.solve() != lp.Optimal {
		return false
	}
	n := &nearly{}
	sum := 0.0
	for e := range door.Edges {
		if by := m.x[give(e)]; by > nothing {
			sum += by
			n.way = append(n.way, Relax{Limit: Limit{Sort: GapLimit, Edge: e, Upper: true}, By: by})
		}
	}
	if len(n.way) == 0 || sum > nearAll {
		return false
	}
	n.p = *w.p
	n.p.Wanted, n.p.Wishes = w.p.eased(n.way, w.p.step()/2)
	n.work = w.heir(&n.p)
	n.work.ceiling = best.Price / 2
	w.nearly = n
	return true
}

// near does a slice of that search and tells whether it was the last.
func (w *Work) near() bool {
	n := w.nearly
	if !n.work.Step() {
		return false
	}
	if found := n.work.advice.Plans; len(found) > 0 {
		p := found[0]
		w.remember(&p, n.way)
		best := &w.advice.Plans[0]
		c, b := &p.Cost, &best.Cost
		if p.Price < best.Price/2 && c.Minutes < b.Minutes && c.Timber < b.Timber+nearPrice && len(p.Given) > 0 && givesLittle(p.Given) {
			w.advice.Near = append(w.advice.Near, p)
		}
	}
	return true
}

// givesLittle tells whether what a plan lets give way is only that gaps are a little wide.
func givesLittle(given []Relax) bool {
	sum := 0.0
	for _, r := range given {
		if r.Sort != GapLimit || !r.Upper || r.By > nearMost {
			return false
		}
		sum += r.By
	}
	return sum <= nearAll
}
