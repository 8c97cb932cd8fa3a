package advise

import (
	"math"

	"leafwright/geom/door"
	"leafwright/geom/judge"
)

// polisher betters amounts that are whole steps by whole steps.
type polisher struct {
	m     *model
	gaps  []float64
	uncut []float64           // gaps with all done but what is cut off; none where that does not count
	keep  [door.Edges]float64 // part of the allowance for errors that is kept before anything is cut
	on    []int               // amounts that may change
	looks int                 // at what amounts come to, so far
}

// looksMost is how many looks are taken before amounts are no longer changed two at a
// time: on a door that many parts bring near and none within, pairs never end.
const looksMost = 2000

// calmly is the part of the room kept before anything is cut that rounding leaves.
const calmly = 0.8

// breach is what breaking a limit by a millimetre counts, and hair by how much, mm, a limit
// may be broken by rounding: a little less than is judged to break it.
const (
	breach = 1e5
	hair   = judge.Blade - 0.01
)

// room is what a millimetre of room to a limit counts: less than a shaving costs, more than
// a stop set a little otherwise.
const room = 0.5

// polish changes amounts by whole steps, one or two at a time, as long as that breaks
// limits less or costs less; false where limits stay broken.
func (m *model) polish() bool {
	p := &polisher{m: m, gaps: make([]float64, len(m.w.places))}
	for e := range door.Edges {
		if m.sure {
			p.keep[e], _ = m.lp.Bounds(m.calm(e))
			p.keep[e] *= calmly
		}
	}
	used := m.used()
	for j := range m.use {
		if used[m.unknown(j).part] {
			p.on = append(p.on, j)
		}
	}
	if m.sure && !m.w.p.Offered {
		p.uncut = make([]float64, len(m.w.places))
	}
	if m.sure {
		m.stretches()
	}
	p.afresh()
	best := p.worth()
	for range 40 {
		next, a, b, da, db := best, -1, -1, 0.0, 0.0
		for _, j := range p.on {
			for way := range 2 {
				d := p.by(j, way == 1)
				if d == 0 {
					continue
				}
				p.change(j, d)
				if v := p.worth(); v < next-1e-9 {
					next, a, b, da = v, j, -1, d
				}
				p.change(j, -d)
			}
		}
		for part := range used { // or a whole part left out
			if v := p.without(part); v < next-1e-9 {
				next, a, b = v, -2-part, -1
			}
		}
		other := -1
		if a == -1 { // or two, one of which only mends what the other spoils
			for part := range used {
				for k := part + 1; used[part] && k < len(used); k++ {
					if !used[k] {
						continue
					}
					if v := p.without(part, k); v < next-1e-9 {
						next, a, other = v, -2-part, k
					}
				}
			}
		}
		if a == -1 && p.looks < looksMost {
			for x, j := range p.on {
				for _, k := range p.on[x+1:] {
					if m.sure && !m.unknown(j).hung() && !m.unknown(k).hung() {
						continue // edges do not help each other
					}
					for way := range 4 {
						dj, dk := p.by(j, way&1 == 1), p.by(k, way&2 == 2)
						if dj == 0 || dk == 0 {
							continue
						}
						p.change(j, dj)
						p.change(k, dk)
						if v := p.worth(); v < next-1e-9 {
							next, a, b, da, db = v, j, k, dj, dk
						}
						p.change(k, -dk)
						p.change(j, -dj)
					}
				}
			}
		}
		if a == -1 {
			break
		}
		if a < -1 {
			p.leave(-2 - a)
			if other >= 0 {
				p.leave(other)
			}
		} else {
			p.change(a, da)
			if b >= 0 {
				p.change(b, db)
			}
		}
		best = next
	}
	p.afresh() // changes add up what rounding leaves
	m.x[m.widest()], m.x[m.narrowest()] = p.spread()
	for _, j := range p.on {
		m.fix(j, m.x[j])
	}
	return p.broken() < 1e-6
}

// afresh works the gaps out.
func (p *polisher) afresh() {
	copy(p.gaps, p.m.gaps())
	if p.uncut != nil {
		copy(p.uncut, p.m.uncut())
	}
}

// by gives the change of an amount to its next whole step, 0 where there is none.
func (p *polisher) by(j int, up bool) float64 {
	m := p.m
	x := m.x[j]
	u := m.unknown(j)
	next := x - m.stepOf(u)
	if up {
		next = x + m.stepOf(u)
	}
	if u.sort == pack {
		next = -1
		for _, t := range m.w.packs {
			if up && t > x+nothing && (next < 0 || t < next) || !up && t < x-nothing && t > next {
				next = t
			}
		}
		if !up && next < 0 {
			next = 0
		}
		if up && next < 0 {
			return 0
		}
	}
	if next < m.least[j] && x > m.least[j]+nothing && !up && m.least[j] == 0 {
		next = 0
	}
	if next < m.least[j]-nothing || next > m.most[j]+nothing {
		return 0
	}
	return next - x
}

func (p *polisher) change(j int, d float64) {
	m := p.m
	u := m.unknown(j)
	k := u.sign * d
	column := m.column(j)
	for i, c := range column[:len(p.gaps)] {
		p.gaps[i] += float64(k * c)
	}
	if p.uncut != nil && !u.cuts() {
		for i, c := range column[:len(p.uncut)] {
			p.uncut[i] += float64(k * c)
		}
	}
	m.x[j] += d
	if abs(m.x[j]) < nothing {
		m.x[j] = 0
	}
}

// without gives what it would be worth to leave one part or two out.
func (p *polisher) without(parts ...int) float64 {
	var was [2 * (closely + 4)]float64
	n := 0
	var does [2]bool // anything, each of the one or two
	in := func(part int) int {
		for k := range parts {
			if parts[k] == part {
				return k
			}
		}
		return -1
	}
	for _, j := range p.on {
		u := p.m.unknown(j)
		k := in(u.part)
		if k < 0 {
			continue
		}
		if u.sort == strip || n == len(was) {
			return math.Inf(1)
		}
		was[n] = p.m.x[j]
		does[k] = does[k] || was[n] > nothing
		n++
	}
	for k, part := range parts {
		if !does[k] || p.m.faced && p.m.w.parts[part].face() {
			return math.Inf(1)
		}
	}
	for _, part := range parts {
		p.leave(part)
	}
	v := p.worth()
	n = 0
	for _, j := range p.on {
		if in(p.m.unknown(j).part) >= 0 {
			p.change(j, was[n])
			n++
		}
	}
	return v
}

func (p *polisher) leave(part int) {
	for _, j := range p.on {
		if p.m.unknown(j).part == part {
			p.change(j, -p.m.x[j])
		}
	}
}

// worth is the price, with what broken limits count.
func (p *polisher) worth() float64 {
	m := p.m
	p.looks++
	sum := m.begun() + float64(breach*p.broken())
	for j := range m.use {
		sum += float64(m.cost[j] * m.x[j])
	}
	hi, lo := p.spread()
	sum += float64(m.cost[m.widest()] * (hi - lo))
	if m.sure {
		return sum + m.w.doubted(m.odds(p.gaps))
	}
	return sum + float64(room*p.narrow())
}

func (p *polisher) spread() (hi, lo float64) {
	hi, lo = math.Inf(-1), math.Inf(1)
	for i, g := range p.gaps {
		if q := &p.m.w.places[i]; q.subject == judge.ClosedGap && q.edge != door.FloorSide {
			if g > hi {
				hi = g
			}
			if g < lo {
				lo = g
			}
		}
	}
	if hi < lo {
		return 0, 0
	}
	return hi, lo
}

// narrow is how much nearer than wanted the tightest place of every edge is to a limit, added
// up, mm: a little room is taken where it costs nothing.
func (p *polisher) narrow() float64 {
	const wanted = 0.3
	sum, worst := 0.0, 0.0
	places := p.m.w.places
	for i, g := range p.gaps {
		q := &places[i]
		if q.subject > judge.SwingGap {
			continue
		}
		if i > 0 && (q.subject != places[i-1].subject || q.edge != places[i-1].edge) {
			sum, worst = sum+worst, 0
		}
		if d := wanted - (g - q.lo); d > worst {
			worst = d
		}
		if d := wanted - (q.hi - g); d > worst {
			worst = d
		}
	}
	return sum + worst
}

// broken adds up how far limits are broken.
func (p *polisher) broken() float64 {
	sum := 0.0
	lo, hi := p.m.lo[:len(p.gaps)], p.m.hi[:len(p.gaps)]
	for i, g := range p.gaps {
		if d := lo[i] - g; d > 0 {
			sum += d
		}
		if d := g - hi[i]; d > 0 {
			sum += d
		}
	}
	for i, g := range p.uncut {
		q := &p.m.w.places[i]
		if q.subject == judge.ClosedGap {
			if d := g + float64(p.m.allowance(i, notYet)*p.keep[q.edge]) - hi[i]; d > 0 {
				sum += d
			}
		}
	}
	for k := range p.m.w.wishes {
		q := &p.m.w.wishes[k]
		s := 0.0
		for j := range p.m.use {
			s += float64(p.m.asked[k][j] * p.m.x[j])
		}
		sum += max(0, q.lo-s) + max(0, s-q.hi)
	}
	return sum
}
