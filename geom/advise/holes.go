package advise

import (
	"leafwright/geom/advise/lp"
	"leafwright/geom/trim"
)

// ScrewClear is how far a hinge is moved along an edge at least, mm, for its screws to hold:
// less than a screw is wide, and the new hole runs into the old one (common practice, no
// published source).
const ScrewClear = 3.0

// nearHoles tells whether a hinge so moved has its new screw holes run into the old.
func nearHoles(by float64) bool {
	return abs(by) > 1e-3 && abs(by) < ScrewClear-nothing
}

// moves tells whether an unknown moves hinges along an edge where they were screwed: the
// leaf's height on hinges that are yet to be screwed on is had for nothing.
func (u *unknown) moves() bool { return u.sort == raise || u.sort == shiftLow }

// plugged counts how often hinges are moved by so little that old screw holes are plugged:
// all but the bottom one as the leaf is raised, and that one, where it is moved by itself.
func (m *model) plugged() (n int) {
	up, low, screwed := 0.0, 0.0, false
	for j := range m.use {
		u := m.unknown(j)
		switch u.sort {
		case raise:
			up -= float64(u.sign * m.x[j])
			screwed = m.w.parts[u.part].gains != 0
		case shiftLow:
			low += float64(u.sign * m.x[j])
		}
	}
	if screwed && nearHoles(up) {
		n++
	}
	if abs(low) > nothing && nearHoles(up+low) {
		n++
	}
	return n
}

// clearHoles has hinges that are moved by too little for their screws left where they are,
// or moved as far as these ask, where that costs less than plugging the holes.
func (m *model) clearHoles() {
	if m.state != lp.Optimal {
		return
	}
	for j := range m.use {
		u := m.unknown(j)
		if !u.moves() || m.fixed[j] || !nearHoles(m.x[j]) || m.w.parts[u.part].gains == 0 {
			continue
		}
		price, was := m.price(), append([]bool(nil), m.shut...)
		again := func() bool {
			if m.solve() == lp.Optimal {
				m.leave()
			}
			return m.state == lp.Optimal && m.price() < price-1e-9
		}
		m.open()
		m.close(u.part, true)
		if again() {
			continue
		}
		m.open()
		if m.most[j] >= ScrewClear {
			m.bound(j, ScrewClear)
			if again() {
				continue
			}
			m.bound(j, 0)
		}
		for k := range was {
			m.close(k, was[k])
		}
		m.solve()
	}
}

// level has a plan whose new screw holes would run into the old ones tried anew with the
// leaf left as high as it hangs.
func (w *Work) level(p *Plan) {
	if p.model.sure || p.attempt.level || p.Cost.Gains == 0 {
		return
	}
	for i := range p.Moves {
		if m := &p.Moves[i]; (m.Kind == trim.Raise || m.Kind == trim.Shift) && m.On != trim.OnJamb && nearHoles(m.First) {
			a := p.attempt
			a.level = true
			w.families = append(w.families, a)
			return
		}
	}
}

// bound has an amount be so much at least.
func (m *model) bound(j int, least float64) {
	m.least[j] = least
	m.lp.SetBounds(j, least, m.most[j])
}
