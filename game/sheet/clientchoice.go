package sheet

import (
	"math"

	"leafwright/game"
	"leafwright/game/words"
	"leafwright/geom/judge"
)

// merit is what the ways to make a door fit are chosen by, the first that differs
// deciding, the less the better: how well it fits, then the old wood, then the time.
type merit struct {
	undone              bool // some of its moves cannot be done: it is not to be had
	binds, tight, slack int  // things not as wanted, the worse first
	sticks              bool // in the dampest month, where the house's climate is known
	timber              float64
	minutes             float64
}

// alike is how near two volumes of wood are the same, cm³, and two times, minutes: no
// closer than they are known.
const (
	alikeTimber  = 1.0
	alikeMinutes = 5.0
)

func meritOf(c *game.Column, minutes float64, sticks bool) (m merit) {
	m = merit{undone: c.Refused > 0, sticks: sticks, timber: c.Volume, minutes: minutes}
	for i := range c.Findings {
		switch c.Findings[i].Verdict {
		case judge.Binds:
			m.binds++
		case judge.Tight:
			m.tight++
		case judge.Slack:
			m.slack++
		}
	}
	return m
}

// fits tells whether nothing is out.
func (m *merit) fits() bool { return m.binds+m.tight+m.slack == 0 && !m.sticks && !m.undone }

// fit compares how well two ways fit, below 0 where m does it better.
func (m *merit) fit(o *merit) int {
	for _, d := range [...]int{truth(m.undone) - truth(o.undone), m.binds - o.binds, m.tight - o.tight, m.slack - o.slack, truth(m.sticks) - truth(o.sticks)} {
		if d != 0 {
			return d
		}
	}
	return 0
}

func truth(b bool) int {
	if b {
		return 1
	}
	return 0
}

// choose gives the place of the best of the ways, the first of those alike; the first
// of them all is the door left as it is. Two that are alike by little steps of wood or
// time are told apart by the whole order: the least wood among those that fit best,
// then the least time among those near it.
func choose(all []merit) (best int) {
	var left []int
	for i := range all {
		switch {
		case len(left) == 0 || all[i].fit(&all[left[0]]) < 0:
			left = append(left[:0], i)
		case all[i].fit(&all[left[0]]) == 0:
			left = append(left, i)
		}
	}
	left = nearest(left, alikeTimber, func(i int) float64 { return all[i].timber })
	left = nearest(left, alikeMinutes, func(i int) float64 { return all[i].minutes })
	return left[0]
}

// nearest keeps of places those whose value is the least, or alike it.
func nearest(left []int, alike float64, of func(i int) float64) (out []int) {
	least := math.Inf(1)
	for _, i := range left {
		least = min(least, of(i))
	}
	for _, i := range left {
		if of(i) <= least+alike {
			out = append(out, i)
		}
	}
	return out
}

// reason says why the best of the ways is the best, in a sentence or two. The names
// are theirs; the first, the door left as it is, has none.
func (p plain) reason(all []merit, names []string, best int) string {
	b := &all[best]
	if best == 0 {
		if b.fits() {
			return "It fits as it is: nothing needs to be done."
		}
		if len(all) == 1 {
			return "No way to make it fit better is shown here."
		}
		return "None of the ways shown makes it fit better."
	}
	var same []string // as good a fit
	least := [2]float64{math.Inf(1), math.Inf(1)}
	for i := range all {
		if i == best || all[i].fit(b) != 0 {
			continue
		}
		if i > 0 {
			same = append(same, names[i])
		}
		least = [2]float64{min(least[0], all[i].timber), min(least[1], all[i].minutes)}
	}
	said := "It makes the door fit well all round"
	if !b.fits() {
		said = "It does not make everything right, but comes nearest"
		if len(same) > 0 {
			said = "It does not make everything right; nor does " + words.Listed(same) + ", which comes as near"
			if len(same) > 1 {
				said = "It does not make everything right; nor do " + words.Listed(same) + ", which come as near"
			}
		}
	}
	switch {
	case len(same) == 0 && len(all) == 2:
		return said + "."
	case len(same) == 0 && b.fits():
		return said + "; none of the others does."
	case len(same) == 0:
		return said + "."
	case b.fits():
		said += ", as " + words.Listed(same) + more(float64(1-len(same)), " does", " do")
	}
	switch {
	case least[0]-b.timber > alikeTimber:
		if b.timber == 0 {
			return said + ". Of these it leaves all the old wood in place, where the next takes " + words.CubicCentimetres(least[0]*1000) + "."
		}
		return said + ". Of these it takes the least of the old wood: " + words.CubicCentimetres(b.timber*1000) + ", where the next takes " + words.CubicCentimetres(least[0]*1000) + "."
	case least[1]-b.minutes > alikeMinutes:
		return said + ". Of those that keep as much of the old wood it takes the least time."
	}
	return said + ". They are alike in what they take; this one stands first."
}
