package advise

import (
	"math"

	"leafwright/geom/advise/lp"
)

// points is how many points the line of timber against evenness has.
const points = 7

// trade finds the line along which timber is given for evenness, in the kind of work
// the best plan does: for so much timber, the most even gaps there are.
func (w *Work) trade() {
	if len(w.advice.Plans) == 0 || w.eased {
		return
	}
	best := &w.advice.Plans[0]
	m := w.program(&best.attempt)
	m.even = true
	timber, spread, both := make([]float64, m.count()), make([]float64, m.count()), make([]float64, m.count())
	for j := range m.use {
		timber[j] = m.unknown(j).timber
	}
	for e := range w.places {
		m.lp.SetBounds(m.kept(w.places[e].edge), 0, 0)
		m.lp.SetBounds(m.safe(w.places[e].edge), 0, 0)
	}
	spread[m.widest()], spread[m.narrowest()] = 1, -1
	const trifle = 1e-4
	for j := range both {
		both[j] = timber[j] + float64(trifle*spread[j])
	}
	m.lp.SetCost(both)
	if m.solve() != lp.Optimal {
		return
	}
	least := m.sum(timber)
	for j := range both {
		both[j] = spread[j] + float64(trifle*timber[j])
	}
	m.lp.SetCost(both)
	if m.solve() != lp.Optimal {
		return
	}
	most := m.sum(timber)
	cap := m.lp.AddRow(timber, math.Inf(-1), most)
	m.rows = append(m.rows, row{place: -1})
	for k := range points {
		part := float64(k) / (points - 1)
		most := least + float64((most-least)*part*part)
		m.lp.SetRow(cap, math.Inf(-1), most+float64(1e-7*max(1, most)))
		if m.solve() != lp.Optimal {
			continue
		}
		t := Trade{m.sum(timber), m.x[m.widest()] - m.x[m.narrowest()]}
		if n := len(w.advice.Trade); n > 0 && (t.Timber-w.advice.Trade[n-1].Timber < 0.5 || w.advice.Trade[n-1].Uneven-t.Uneven < 0.005) {
			continue
		}
		w.advice.Trade = append(w.advice.Trade, t)
	}
}

func (m *model) sum(of []float64) float64 {
	s := 0.0
	for j, x := range m.x {
		s += float64(of[j] * x)
	}
	return s
}
