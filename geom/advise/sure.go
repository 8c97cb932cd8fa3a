package advise

import (
	"leafwright/geom/advise/lp"
	"leafwright/geom/door"
)

// weighErrors works out what errors ask for at every place: how well the gap is known,
// and by how much the hand is off in each amount in use that it follows.
func (m *model) weighErrors() {
	hand := m.w.p.hand()
	sources := 0 // the chance is borne once, and each of them may use it up
	m.allow = make([]float64, len(m.w.places))
	for i := range m.allow {
		s := m.w.places[i].sigma
		m.allow[i] = float64(s * s)
	}
	for j := range m.use {
		u := m.unknown(j)
		if m.x[j] <= nothing || u.sort == pack || u.sort == unpack || u.sort == strip || u.sort == stopBack {
			continue // what is bought in thicknesses, or offered up and set
		}
		sources++
		for i, c := range m.w.column(u) {
			off := float64(hand * c)
			m.allow[i] += float64(off * off)
		}
	}
	z := quantile(m.w.p.risk() / float64(max(1, sources)))
	m.sigma = make([]float64, len(m.allow))
	for i, v := range m.allow {
		m.sigma[i] = root(v)
		m.allow[i] = z * m.sigma[i]
	}
}

// keepSure gives errors as much of the room they ask for as there is, edge by edge.
// What is cut too far stays so, and what is left tight can be planed: so the room
// towards wide comes first.
func (m *model) keepSure() lp.State {
	m.sure = m.w.p.Sigma != nil
	most := make([]float64, m.count())
	for e := range door.Edges {
		hi := 0.0
		if m.sure {
			hi = 1
		}
		m.lp.SetBounds(m.kept(e), 0, hi)
		m.lp.SetBounds(m.safe(e), 0, hi)
		most[m.kept(e)], most[m.safe(e)] = -1, -safeFirst
	}
	if !m.sure {
		return lp.Optimal
	}
	even := m.even
	m.even = false
	m.lp.SetCost(most)
	st := m.solve()
	m.even = even
	if st == lp.Optimal {
		for e := range door.Edges {
			m.keep[0][e], m.keep[1][e] = m.x[m.kept(e)], m.x[m.safe(e)]
		}
		m.ask(1)
	}
	m.lp.SetCost(m.cost)
	return st
}

// safeFirst is how much more room towards wide counts.
const safeFirst = 2.0

// ask has the program keep so much of the allowance there is room for.
func (m *model) ask(part float64) {
	const given = 0.03 // so that cost has a say
	for e := range door.Edges {
		if m.sure {
			m.lp.SetBounds(m.kept(e), max(0, float64(m.keep[0][e]*part)-given), 1)
			m.lp.SetBounds(m.safe(e), max(0, float64(m.keep[1][e]*part)-given), 1)
		}
	}
}

// room gives how much of the allowance for errors an edge's gaps leave room for, at
// most all of it.
func (m *model) room(e door.Edge) float64 {
	part := 1.0
	for i := range m.w.places {
		p := &m.w.places[i]
		a := m.allowance(i)
		if p.edge != e || a <= 0 {
			continue
		}
		g := m.gap(i)
		part = min(part, (g-m.lo[i])/a, (m.hi[i]-g)/a)
	}
	return max(0, part)
}
