package advise

import (
	"leafwright/geom/advise/lp"
)

// single leaves an edge that is scribed without being planed straight as well.
func (m *model) single() {
	used := m.used()
	for k, p := range m.w.parts {
		if !used[k] || p.sort != offAt {
			continue
		}
		for i, q := range m.w.parts {
			if used[i] && q.sort == offEnd && q.edge == p.edge {
				m.close(i, true)
				m.solve()
			}
		}
	}
}

// face tells whether a part works a face of the frame.
func (p *part) face() bool { return p.sort == jambOff || p.sort == jambOn }

// lastFace tells whether a part is the only one in use that works a face of the frame.
func (m *model) lastFace(used []bool, k int) bool {
	n := 0
	for i := range used {
		if used[i] && m.w.parts[i].face() {
			n++
		}
	}
	return n == 1 && m.w.parts[k].face()
}

// lean leaves out parts, and has hinges moved far enough for their screws or not at all
// where that costs less.
func (m *model) lean() {
	m.leave()
	m.clearHoles()
}

// leave leaves out parts one after another, the one that does least first, where the
// rest does as well for less: what is begun costs, and a linear program knows nothing
// of beginnings.
func (m *model) leave() {
	best := m.price()
	tried := m.w.tried
	x := append([]float64(nil), m.x...)
	for range len(m.w.parts) {
		used := m.used()
		share := make([]float64, len(m.w.parts))
		for j := range m.use {
			share[m.unknown(j).part] += m.x[j]
		}
		least := -1
		for k := range used {
			if used[k] && !tried[k] && m.w.parts[k].sort != strip && !(m.faced && m.lastFace(used, k)) && (least < 0 || share[k] < share[least]) {
				least = k
			}
		}
		if least < 0 {
			break
		}
		tried[least] = true
		m.close(least, true)
		if m.solve() == lp.Optimal && m.price() < best-1e-9 {
			best = m.price()
			copy(x, m.x)
			continue
		}
		m.close(least, false)
		copy(m.x, x) // and the program solved with the next part left out, or at the end
	}
	m.solve()
	clear(tried)
	m.single()
	for k, used := range m.used() {
		if !used && m.w.parts[k].sort != strip {
			m.close(k, true)
		}
	}
	m.solve()
}
