package advise

import "leafwright/geom/advise/lp"

// swap betters what lean left: it lets in one part that was left out, leaves out others
// as far as that is cheaper, and keeps what costs less. It tells whether anything did.
func (m *model) swap() bool {
	m.loose()
	m.within(0)
	if m.solve() != lp.Optimal {
		return false
	}
	mine := make([]bool, len(m.shut))
	for j := range m.use {
		mine[m.unknown(j).part] = true
	}
	better := false
	best := m.price()
	const least = 0.1
	for k := range mine {
		if !mine[k] || !m.shut[k] || m.w.parts[k].sort == strip {
			continue
		}
		was := append([]bool(nil), m.shut...)
		m.close(k, false)
		if m.solve() != lp.Optimal || m.lp.Value()+float64(m.w.weight.minutes*m.w.parts[k].minutes) > best-least {
			m.close(k, true)
			continue
		}
		if m.drop(k, best-least) {
			best, better = m.price(), true
			continue
		}
		for i := range mine {
			if mine[i] && m.shut[i] != was[i] {
				m.close(i, was[i])
			}
		}
	}
	m.solve()
	m.single()
	return better
}

// drop leaves out parts, all but the one given, where that saves; it tells whether what is
// left comes below a price.
func (m *model) drop(keep int, below float64) bool {
	price := m.price()
	for k, used := range m.used() {
		if !used || k == keep || m.shut[k] || m.w.parts[k].sort == strip {
			continue
		}
		m.close(k, true)
		if m.solve() == lp.Optimal {
			if v := m.price(); v < price-1e-9 {
				price = v
				continue
			}
		}
		m.close(k, false)
	}
	if price > below {
		return false
	}
	m.solve()
	used := m.used()
	for k := range used {
		if !used[k] && !m.shut[k] && m.w.parts[k].sort != strip {
			m.close(k, true)
		}
	}
	return m.solve() == lp.Optimal && m.price() < below
}
