package advise

import (
	"math"

	"leafwright/geom/advise/lp"
	"leafwright/geom/door"
	"leafwright/geom/judge"
	"leafwright/geom/survey"
)

// The chances that are borne of a door whose gaps are known with an error. Cutting too
// far is not put right by more of it, and one more trim cures what is left tight.
const (
	usualRisk = 0.005 // of cutting too far
	usualMiss = 0.06  // of coming out tight
	offerRisk = 0.025 // of a place gaping before the leaf was offered up
)

// felt is how well a gap is known, mm, one sigma, once a leaf was offered up and a
// feeler put in at its places: the feeler's error and what lines bow between.
const felt = 0.14

// weighErrors works out what errors ask for by and large: how well gaps will be known,
// and the hand off once.
func (w *Work) weighErrors() {
	n := len(w.places)
	w.allow, w.sigma = [2][]float64{make([]float64, n), make([]float64, n)}, make([]float64, n)
	if w.p.Sigma == nil {
		return
	}
	w.z = quantile(offerRisk)
	hand := w.p.hand()
	tight, wide := quantile(usualMiss/ordinarily), quantile(w.p.risk()/ordinarily)
	for i := range w.places {
		s := w.known(i)
		w.sigma[i] = root(float64(s*s) + float64(hand*hand))
		w.allow[0][i], w.allow[1][i] = tight*w.sigma[i], wide*w.sigma[i]
	}
}

// ordinarily is how many amounts a plan has whose errors share the chance borne.
const ordinarily = 6

// weighErrors works out what errors ask for at every place: how well the gap is known
// when all is done, and by how much the hand is off in each amount in use that it
// follows. Before the leaf was offered up its gaps are taken as they will be known then.
func (m *model) weighErrors() {
	hand := m.w.p.hand()
	sources := 0 // the chance is borne once, and each of them may use it up
	m.sigma = make([]float64, len(m.w.places))
	for i := range m.sigma {
		s := m.w.known(i)
		m.sigma[i] = float64(s * s)
	}
	for j := range m.use {
		u := m.unknown(j)
		if m.x[j] <= nothing || u.exact() {
			continue
		}
		sources++
		for i, c := range m.column(j) {
			off := float64(hand * c)
			m.sigma[i] += float64(off * off)
		}
	}
	m.allow = [2][]float64{make([]float64, len(m.sigma)), make([]float64, len(m.sigma))}
	n := float64(max(1, sources))
	tight, wide := quantile(usualMiss/n), quantile(m.w.p.risk()/n)
	for i, v := range m.sigma {
		m.sigma[i] = root(v)
		m.allow[0][i], m.allow[1][i] = tight*m.sigma[i], wide*m.sigma[i]
	}
}

// doubtful tells whether a leaf that was offered up fits by what was read, but is likely
// out of a limit all the same, for the feeler is not that exact.
func (w *Work) doubtful() bool {
	if w.p.Sigma == nil || !w.p.Offered || w.p.Piece.Anatomy.Rated {
		return false
	}
	w.measureOnce()
	m := w.newModel(nil)
	m.sigma = make([]float64, len(w.places))
	for i := range m.sigma {
		m.sigma[i] = w.known(i)
	}
	m.stretches()
	o := m.odds(w.start)
	return o.all() > justGood
}

// justGood is the chance of a gap being out of its limits that is let pass.
const justGood = 0.3

// exact tells whether an amount comes out as it is asked for: what is bought in
// thicknesses, or offered up and set.
func (u *unknown) exact() bool {
	return u.sort == pack || u.sort == unpack || u.sort == strip || u.sort == stopBack
}

// known is how well the gap at a place is known when the last of the work is done, but
// for the hand.
func (w *Work) known(i int) float64 {
	if s := w.places[i].sigma; w.p.Offered {
		return s
	} else {
		return min(s, felt)
	}
}

// evenly are the parts of the allowance for errors that are sought one after another, on
// both sides of every gap: a first half is worth more than a second. Where it is only to be
// found which parts are of use, it is sought at once.
var evenly = []float64{0.4, 0.7, 1}

// keepSure gives errors as much of the room they ask for as there is, edge by edge.
// What is cut too far stays so, and what is left tight can be planed: so the room
// towards wide comes first.
func (m *model) keepSure(tiers ...float64) lp.State {
	m.sure = m.w.p.Sigma != nil
	staged := m.sure && !m.w.p.Offered
	for e := range door.Edges {
		m.lp.SetBounds(m.kept(e), 0, 0)
		m.lp.SetBounds(m.safe(e), 0, 0)
		m.lp.SetBounds(m.calm(e), 0, 0)
	}
	if !m.sure {
		return lp.Optimal
	}
	most := make([]float64, m.count())
	for e := range door.Edges {
		most[m.kept(e)], most[m.safe(e)], most[m.calm(e)] = -1, -safeFirst, -calmFirst
	}
	even := m.even
	m.even = false
	m.lp.SetCost(most)
	m.keep = [3][door.Edges]float64{}
	st := lp.Optimal
	const slack = 1e-7
	for _, t := range tiers {
		for e := range door.Edges {
			m.lp.SetBounds(m.kept(e), max(0, m.keep[0][e]-slack), t)
			m.lp.SetBounds(m.safe(e), max(0, m.keep[1][e]-slack), t)
			if staged {
				m.lp.SetBounds(m.calm(e), max(0, m.keep[2][e]-slack), t)
			}
		}
		if st = m.solve(); st != lp.Optimal {
			break
		}
		for e := range door.Edges {
			m.keep[0][e], m.keep[1][e], m.keep[2][e] = m.x[m.kept(e)], m.x[m.safe(e)], m.x[m.calm(e)]
		}
	}
	m.even = even
	if st == lp.Optimal {
		m.ask(1)
	}
	m.lp.SetCost(m.cost)
	return st
}

// safeFirst is how much more room towards wide counts when all is done, and calmFirst
// before anything is cut.
const (
	safeFirst = 2.0
	calmFirst = 1.5
)

// ask has the program keep so much of the allowance there is room for.
func (m *model) ask(part float64) {
	const given = 0.04 // so that cost has a say
	if !m.sure {
		return
	}
	for e := range door.Edges {
		for side, v := range [...]int{m.kept(e), m.safe(e), m.calm(e)} {
			_, hi := m.lp.Bounds(v)
			m.lp.SetBounds(v, max(0, float64(m.keep[side][e]*part)-given), max(hi, m.keep[side][e]))
		}
	}
}

// odds are the chances that a door does not come out as wanted: that a place is left
// tight, is wide though nothing was cut there, or is cut too far.
type odds struct{ tight, loose, wide float64 }

// all is the chance that something is out of its limits.
func (o odds) all() float64 { return min(1, o.tight+o.loose+o.wide) }

// odds adds up the chances that gaps at the places leave: of every edge by the worst
// place in each stretch of it that an error of its own works on, half of an edge planed
// straight and a quarter about each station of one that is scribed. Chances are added,
// which is never too little, and may come to more than 1.
func (m *model) odds(gaps []float64) (o odds) {
	const least = 1e-3 // mm
	tight, wide := math.Inf(1), math.Inf(1)
	var cut [door.Edges]bool
	for j := range m.use {
		if u := m.unknown(j); m.x[j] > nothing && u.cuts() {
			cut[u.edge] = true
		}
	}
	edge := door.HingeSide
	count := func() {
		o.tight += m.w.beyond(tight)
		if cut[edge] {
			o.wide += m.w.beyond(wide)
		} else {
			o.loose += m.w.beyond(wide)
		}
		tight, wide = math.Inf(1), math.Inf(1)
	}
	for i, g := range gaps {
		k := m.stretch[i]
		if k < 0 {
			continue
		}
		if i > 0 && k != m.stretch[i-1] {
			count()
		}
		edge = m.w.places[i].edge
		s := max(m.sigma[i], least)
		tight, wide = min(tight, (g-m.lo[i])/s), min(wide, (m.hi[i]-g)/s)
	}
	count()
	return o
}

// stretches parts every edge into the stretches that odds are counted by: of each place
// a number, none of places that are no closed gap's.
func (m *model) stretches() {
	var parts [door.Edges]int
	for e := range parts {
		parts[e] = 2
	}
	for j := range m.use {
		if u := m.unknown(j); u.sort == offAt && m.x[j] > nothing {
			parts[u.edge] = u.of
		}
	}
	m.stretch = make([]int, len(m.w.places))
	for i := range m.stretch {
		m.stretch[i] = -1
	}
	for e := range door.Edges {
		from, to := m.w.closed(e)
		if from == to {
			continue
		}
		at, long := m.w.places[from].at, m.w.places[to-1].at-m.w.places[from].at
		for i := from; i < to; i++ {
			k := 0.0
			if long > 0 {
				k = math.Floor(float64(float64(parts[e]-1)*(m.w.places[i].at-at))/long + 0.5)
			}
			m.stretch[i] = int(e)*closely + int(k)
		}
	}
}

// closed gives the places of an edge's closed gap, from and to, the last not among them.
func (w *Work) closed(e door.Edge) (from, to int) {
	is := func(i int) bool { return w.places[i].subject == judge.ClosedGap && w.places[i].edge == e }
	for from < len(w.places) && !is(from) {
		from++
	}
	for to = from; to < len(w.places) && is(to); {
		to++
	}
	return from, to
}

// The chances of a normal error are kept in steps: they are asked for many times.
const (
	tailStep = 0.05
	tailEnd  = 7.0
)

// beyond is the chance that a normal error is more than z standard deviations.
func (w *Work) beyond(z float64) float64 {
	if z < 0 {
		return 1 - w.beyond(-z)
	}
	if !(z < tailEnd) {
		return 0
	}
	if w.tail == nil {
		unit := survey.Uncertain{Sigma: 1}
		for i := range int(tailEnd/tailStep) + 2 {
			w.tail = append(w.tail, unit.Below(-tailStep*float64(i)))
		}
	}
	k := math.Floor(z / tailStep)
	part := z/tailStep - k
	a, b := w.tail[int(k)], w.tail[int(k)+1]
	return a + float64((b-a)*part)
}

// doubted is what the chances of a plan weigh in its price.
func (w *Work) doubted(o odds) float64 {
	return float64(w.weight.unsure*(o.tight+o.loose)) + float64(w.weight.spoilt*o.wide)
}
