package advise

import (
	"math"

	"leafwright/geom/advise/lp"
	"leafwright/geom/door"
	"leafwright/geom/judge"
)

// doubt is how far, mm, limits are widened in the program: a gap that only just keeps
// one may seem to break it by what the straight lines are off. Trying out has the last
// word.
const doubt = 0.003

// model is one family's linear program. Its variables are the amounts in use, then
// the widest and the narrowest gap of sides and head, then for each edge the part of
// the allowance for errors that is kept towards tight, then towards wide, then towards
// wide before anything is cut.
//
// Of some hundred places a dozen count at any one answer: rows are made when an
// answer breaks them.
type model struct {
	w     *Work
	use   []int // unknowns
	lp    *lp.Solver
	cost  []float64
	value []float64 // of each place, no amounts
	lo    []float64 // tightened by what trying out has shown
	hi    []float64
	rows  []row
	made  [][limits]bool
	asked [][]float64 // of each wish, what every amount adds to it
	shut  []bool      // by part: not to be used
	// sure tells that errors count, and keep is how much of the allowance there is room
	// for, by edge.
	sure    bool
	keep    [3][door.Edges]float64 // towards tight, towards wide, and that before anything is cut
	allow   [2][]float64           // of every place, what errors ask for on either side, mm
	sigma   []float64              // of every place, how well its gap will be known when all is done, mm
	stretch []int                  // of every place, what its odds are counted with
	x       []float64
	now     []float64   // what the program says of every place at the answer
	then    []float64   // the same with all done but what is cut off
	cols    [][]float64 // by amount in use: what every place gains per mm, once asked for
	spare   []float64   // memory for rows to come
	state   lp.State
	even    bool // whether unevenness costs
	fixed   []bool
	least   []float64 // bounds of the amounts in use
	most    []float64
	diving  bool    // amounts are rounded one after another, the program solved between
	step    float64 // what amounts are rounded to; 0 = not rounded
	// elastic tells that every group of limits can give way by a variable of its own,
	// the last ones.
	elastic bool
	hung    bool // the hinges are worked
	faced   bool // a face of the frame is worked though something does without
}

// limit is one thing a place must keep.
type limit uint8

const (
	notLess limit = iota
	notMore
	notWider    // than the widest
	notNarrower // than the narrowest
	notYet      // too wide before anything is cut
	limits
)

// row is a row of the program: a place and its limit, or a wish.
type row struct {
	place int // −1 for a wish
	limit limit
}

func (m *model) widest() int          { return len(m.use) }
func (m *model) narrowest() int       { return len(m.use) + 1 }
func (m *model) kept(e door.Edge) int { return len(m.use) + 2 + int(e) }
func (m *model) safe(e door.Edge) int { return m.kept(e) + int(door.Edges) }
func (m *model) calm(e door.Edge) int { return m.safe(e) + int(door.Edges) }

func (m *model) count() int {
	n := len(m.use) + 2 + 3*int(door.Edges)
	if m.elastic {
		n += groups
	}
	return n
}

func (m *model) unknown(j int) *unknown { return &m.w.unknowns[m.use[j]] }

// widestSpread bounds the two gaps that unevenness is between, mm.
const widestSpread = 200.0

// newModel makes the program of the unknowns in use.
func (w *Work) newModel(use []int) *model { return w.modelOf(use, false) }

// newElastic makes one whose limits can be let give way, and that costs nothing.
func (w *Work) newElastic(use []int) *model {
	m := w.modelOf(use, true)
	clear(m.cost)
	m.lp.SetCost(m.cost)
	m.even = false
	return m
}

func (w *Work) modelOf(use []int, elastic bool) *model {
	m := &model{w: w, use: use, shut: make([]bool, len(w.parts)), elastic: elastic}
	n := m.count()
	lo, hi := make([]float64, n), make([]float64, n)
	m.cost, m.x = make([]float64, n), make([]float64, n)
	m.fixed = make([]bool, len(use))
	for j := range use {
		u := m.unknown(j)
		hi[j] = u.most
		m.cost[j] = float64(w.weight.timber*u.timber) + float64(w.weight.minutes*(u.minutes+handlingOnce))
	}
	m.allow, m.sigma = w.allow, w.sigma
	m.even = w.weight.uneven > 0
	lo[m.widest()], hi[m.widest()] = -widestSpread, widestSpread
	lo[m.narrowest()], hi[m.narrowest()] = -widestSpread, widestSpread
	m.cost[m.widest()], m.cost[m.narrowest()] = w.weight.uneven, -w.weight.uneven
	m.least, m.most = append([]float64(nil), lo[:len(use)]...), append([]float64(nil), hi[:len(use)]...)
	m.lp = lp.New(m.cost, lo, hi)
	m.value = append([]float64(nil), w.start...)
	m.lo, m.hi = make([]float64, len(w.places)), make([]float64, len(w.places))
	for i, p := range w.places {
		m.lo[i], m.hi[i] = p.lo-doubt, p.hi+doubt
	}
	m.made = make([][limits]bool, len(w.places))
	m.now, m.then = make([]float64, len(w.places)), make([]float64, len(w.places))
	m.cols = make([][]float64, len(use))
	for k := range w.wishes {
		m.wish(k)
	}
	return m
}

// wish adds the k-th equation the person asks for.
func (m *model) wish(k int) {
	q := &m.w.wishes[k]
	a := make([]float64, m.count())
	for j := range m.use {
		u := m.unknown(j)
		a[j] = q.of(u)
	}
	m.lp.AddRow(a, q.lo, q.hi)
	m.rows = append(m.rows, row{place: -1})
	m.asked = append(m.asked, a)
}

// allowance is how much of a gap's limits errors ask for at the place on a side, mm.
func (m *model) allowance(i int, k limit) float64 {
	p := &m.w.places[i]
	if !m.sure || p.subject != judge.ClosedGap && p.subject != judge.SwingGap && (p.subject != judge.StopGap || k == notYet) {
		return 0
	}
	if k == notYet {
		return min(m.w.z*p.sigma, p.hi/2)
	}
	return m.allow[k][i]
}

// add makes the row of a place and a limit.
func (m *model) add(i int, k limit) {
	m.made[i][k] = true
	n := m.count()
	if len(m.spare) < n {
		const rows = 16
		m.spare = make([]float64, rows*n)
	}
	a := m.spare[:n:n]
	m.spare = m.spare[n:]
	for j := range m.use {
		u := m.unknown(j)
		if k != notYet || !u.cuts() {
			a[j] = float64(u.sign * m.column(j)[i])
		}
	}
	switch p := &m.w.places[i]; k {
	case notLess:
		a[m.kept(p.edge)] = -m.allowance(i, k)
	case notMore:
		a[m.safe(p.edge)] = m.allowance(i, k)
	case notWider:
		a[m.widest()] = -1
	case notNarrower:
		a[m.narrowest()] = -1
	case notYet:
		a[m.calm(p.edge)] = m.allowance(i, k)
	}
	if m.elastic && k <= notMore {
		give := 1.0
		if k == notMore {
			give = -1
		}
		a[m.count()-groups+group(&m.w.places[i], k)] = give
	}
	lo, hi := m.bounds(i, k)
	m.lp.AddRow(a, lo, hi)
	m.rows = append(m.rows, row{i, k})
}

// bounds gives what the row of a place and a limit is held to.
func (m *model) bounds(i int, k limit) (lo, hi float64) {
	lo, hi = math.Inf(-1), math.Inf(1)
	switch k {
	case notLess:
		lo = m.lo[i] - m.value[i]
	case notMore, notYet:
		hi = m.hi[i] - m.value[i]
	case notWider:
		hi = -m.value[i]
	case notNarrower:
		lo = -m.value[i]
	}
	return lo, hi
}

// refresh brings the rows' bounds up to date.
func (m *model) refresh() {
	for r, of := range m.rows {
		if of.place >= 0 {
			lo, hi := m.bounds(of.place, of.limit)
			m.lp.SetRow(r, lo, hi)
		}
	}
}

// column gives what every place gains per mm of an amount in use that is above 0.
func (m *model) column(j int) []float64 {
	if m.cols[j] == nil {
		m.cols[j] = m.w.column(m.unknown(j))
	}
	return m.cols[j]
}

// gaps works out what the model says of every place at the answer, kept in now.
func (m *model) gaps() []float64 { return m.say(m.now, true) }

// uncut works out the same with all done but what is cut off, kept in then.
func (m *model) uncut() []float64 { return m.say(m.then, false) }

func (m *model) say(g []float64, cut bool) []float64 {
	copy(g, m.value)
	for j, x := range m.x[:len(m.use)] {
		if x == 0 {
			continue
		}
		u := m.unknown(j)
		if !cut && u.cuts() {
			continue
		}
		k := u.sign * x
		for i, c := range m.column(j)[:len(g)] {
			g[i] += float64(k * c)
		}
	}
	return g
}

// broken is how far beyond a limit an answer may be before its row is made, mm.
const broken = 1e-7

// solve finds the least cost, making the rows that its answers break.
func (m *model) solve() lp.State {
	for range 60 {
		m.state = m.lp.Solve()
		for j := range m.x {
			m.x[j] = m.lp.X(j)
		}
		if m.state != lp.Optimal || !m.complete() {
			if m.state == lp.Optimal {
				continue
			}
		}
		return m.state
	}
	m.state = lp.Stuck
	return m.state
}

// complete makes, of every edge and limit, the row that the answer breaks most; false
// where it broke any.
func (m *model) complete() bool {
	whole := true
	var worst [limits]int
	var by [limits]float64
	places := m.w.places
	staged := m.sure && !m.w.p.Offered
	now := m.gaps()
	if staged {
		m.uncut()
	}
	hi, lo := m.x[m.widest()], m.x[m.narrowest()]
	for i := range places {
		p := &places[i]
		if i == 0 || p.subject != places[i-1].subject || p.edge != places[i-1].edge {
			for k := range limits {
				worst[k], by[k] = -1, broken
			}
		}
		g := now[i]
		less, more := m.lo[i]-g, g-m.hi[i]
		if m.sure {
			less += float64(m.allowance(i, notLess) * m.x[m.kept(p.edge)])
			more += float64(m.allowance(i, notMore) * m.x[m.safe(p.edge)])
		}
		if m.elastic {
			give := m.x[m.count()-groups:]
			less -= give[group(p, notLess)]
			more -= give[group(p, notMore)]
		}
		made := &m.made[i]
		if less > by[notLess] && !made[notLess] {
			worst[notLess], by[notLess] = i, less
		}
		if more > by[notMore] && !made[notMore] {
			worst[notMore], by[notMore] = i, more
		}
		if p.subject == judge.ClosedGap {
			if m.even && p.edge != door.FloorSide {
				if over := g - hi; over > by[notWider] && !made[notWider] {
					worst[notWider], by[notWider] = i, over
				}
				if under := lo - g; under > by[notNarrower] && !made[notNarrower] {
					worst[notNarrower], by[notNarrower] = i, under
				}
			}
			if staged && !made[notYet] {
				if over := m.then[i] + float64(m.allowance(i, notYet)*m.x[m.calm(p.edge)]) - m.hi[i]; over > by[notYet] {
					worst[notYet], by[notYet] = i, over
				}
			}
		}
		if i+1 < len(places) && p.subject == places[i+1].subject && p.edge == places[i+1].edge {
			continue
		}
		for k, at := range worst {
			if at >= 0 {
				m.add(at, limit(k))
				whole = false
			}
		}
	}
	return whole
}

// correct takes the places' true values at the answer in, so that the model is true
// there; it gives how far it was off.
func (m *model) correct(g []float64) float64 {
	most := 0.0
	now := m.gaps()
	for i := range g {
		d := g[i] - now[i]
		if math.IsNaN(d) {
			continue
		}
		m.value[i] += d
		if p := &m.w.places[i]; p.subject != judge.HingeLine {
			most = max(most, math.Abs(d))
		}
	}
	m.refresh()
	return most
}

// price is what the answer costs, with what parts cost by being begun.
func (m *model) price() float64 {
	sum := 0.0
	for j, c := range m.cost {
		sum += float64(c * m.x[j])
	}
	return sum + m.begun()
}

// begun is the price of the parts in use: the frame is worked or not, and a gain is cut
// anew once, whatever for.
func (m *model) begun() float64 {
	sum, gains, frame := 0.0, 0, false
	used := m.used()
	for k, p := range m.w.parts {
		if used[k] {
			sum += float64(m.w.weight.minutes*p.minutes) + float64(m.w.weight.last*float64(p.last))
			if p.sort == offAt {
				sum += m.w.weight.line
			}
			gains |= p.gains
			frame = frame || p.frame
		}
	}
	if frame {
		sum += m.w.weight.frame
	}
	sum += float64(m.w.weight.plug * float64(m.plugged()))
	return sum + float64(m.w.weight.gain*float64(ones(gains)))
}

// ones counts the bits of a set.
func ones(set int) (n int) {
	for ; set != 0; set &= set - 1 {
		n++
	}
	return n
}

// nothing is an amount that is none, mm.
const nothing = 1e-6

// used tells which parts the answer uses.
func (m *model) used() []bool {
	used := make([]bool, len(m.w.parts))
	for j := range m.use {
		if m.x[j] > nothing {
			used[m.unknown(j).part] = true
		}
	}
	return used
}

// close forbids or allows a part.
func (m *model) close(part int, shut bool) {
	m.shut[part] = shut
	for j := range m.use {
		if u := m.unknown(j); u.part == part && !m.fixed[j] {
			if shut {
				m.lp.SetBounds(j, 0, 0)
			} else {
				m.lp.SetBounds(j, m.least[j], m.most[j])
			}
		}
	}
}
