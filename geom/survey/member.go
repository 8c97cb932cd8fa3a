package survey

import "math"

// Member is what the readings of one size of one stile or rail come to. They say
// nothing of the leaf's shape: each is held only against others of the same size.
type Member struct {
	Kind Kind
	Side Side // of a stile
	Rail int  // 0 the bottom one
	// Mean is the mean of the readings that have a say, weighted by their variances,
	// and Sigma its standard deviation, mm; of readings that contradict each other
	// half their spread at the least.
	Mean, Sigma float64
	Readings    []int // those that have a say, by their places among the readings
}

// apartMost is how many standard deviations two readings of one member may be
// apart. Timber is no gauge block: a stile may taper, and three or so is a slip.
const apartMost = 3.0

// ofMember tells whether a kind is of a stile or a rail and says nothing of shapes.
func (s *Spec) ofMember() bool { return s.observe == nil }

// setApart takes readings of members out of those the shapes are fitted to, and
// gives their places.
func (a *adjustment) setApart() (of []int) {
	for i := range a.readings {
		if a.use[i] && specs[a.readings[i].Kind].ofMember() {
			a.use[i] = false
			of = append(of, i)
		}
	}
	return of
}

// members judges the readings of members: the worst of three or more that does not
// fit the others has no say; of two, or of more among which none can be told, all
// are doubted.
func (a *adjustment) members(of []int) (all []Member, doubts []Doubt) {
	for n, i := range of {
		first := &a.readings[i]
		group := []int{i}
		for _, k := range of[n+1:] {
			if a.readings[k].same(first, 0) {
				group = append(group, k)
			}
		}
		if listed(all, first) {
			continue
		}
		m := Member{Kind: first.Kind, Side: first.Side, Rail: first.Rail}
		m.Readings = append(m.Readings, group...)
		for {
			worst, off, sigma := a.worstOf(m.Readings)
			if worst < 0 || math.Abs(off) <= float64(apartMost*sigma) {
				break
			}
			if len(m.Readings) == 2 {
				m.Readings = group
				for _, k := range group {
					a.judged[k].State = Doubted
				}
				doubts = append(doubts, Doubt{group})
				break
			}
			a.judged[m.Readings[worst]].State = Suspect
			m.Readings = append(m.Readings[:worst:worst], m.Readings[worst+1:]...)
		}
		m.Mean, m.Sigma = a.mean(m.Readings, -1)
		for _, k := range group {
			a.judgeMember(&m, k)
		}
		all = append(all, m)
	}
	return all, doubts
}

// listed tells whether there is a member already that the reading is of.
func listed(all []Member, r *Reading) bool {
	for i := range all {
		if m := &all[i]; m.Kind == r.Kind && m.Side == r.Side && m.Rail == r.Rail {
			return true
		}
	}
	return false
}

// mean gives the weighted mean of the readings but the one at the place except, and
// its standard deviation.
func (a *adjustment) mean(of []int, except int) (mean, sigma float64) {
	var sum, weight float64
	for n, i := range of {
		if n != except {
			w := 1 / float64(a.judged[i].Sigma*a.judged[i].Sigma)
			sum += float64(w * a.readings[i].Value)
			weight += w
		}
	}
	return sum / weight, 1 / sqrt(weight)
}

// worstOf gives the place in of of the reading that fits the others worst, how far
// it is off them, and the standard deviation of that; −1 where there is but one.
func (a *adjustment) worstOf(of []int) (worst int, off, sigma float64) {
	worst = -1
	for n, i := range of {
		if len(of) == 1 {
			break
		}
		rest, s := a.mean(of, n)
		d := a.readings[i].Value - rest
		s = sqrt(float64(s*s) + float64(a.judged[i].Sigma*a.judged[i].Sigma))
		if worst < 0 || math.Abs(d)*sigma > math.Abs(off)*s {
			worst, off, sigma = n, d, s
		}
	}
	return worst, off, sigma
}

// judgeMember tells how the reading at place i stands to its member.
func (a *adjustment) judgeMember(m *Member, i int) {
	j := &a.judged[i]
	j.Fitted, j.Residual = m.Mean, j.Value-m.Mean
	sigma := sqrt(float64(m.Sigma*m.Sigma) + float64(j.Sigma*j.Sigma)) // of the residual, of one that has no say in the mean
	if j.State == Suspect {
		j.Redundancy, j.Standardised = 1, j.Residual/sigma
		j.Shows = (apartMost + power) * sigma
		j.Slips = a.slipsOf(i, m.Mean, sigma)
		return
	}
	for n, k := range m.Readings {
		if k != i || len(m.Readings) == 1 {
			continue
		}
		rest, s := a.mean(m.Readings, n)
		s = sqrt(float64(s*s) + float64(j.Sigma*j.Sigma))
		j.Redundancy = float64(j.Sigma*j.Sigma) / float64(s*s)
		j.Standardised = (j.Value - rest) / s
		j.Shows = (apartMost + power) * s
		if j.State == Doubted {
			m.Sigma = max(m.Sigma, math.Abs(j.Value-rest)/2)
			j.Slips = a.slipsOf(i, rest, s)
		}
	}
}

// MemberReadings gives the readings worth taking of a leaf's stiles and rails, as
// templates without values: the widths of both stiles, and from the foot up each
// rail's width and, but for the bottom one's, how high its lower edge is.
func MemberReadings(stiles bool, rails int) (out []Reading) {
	if stiles {
		out = append(out, Reading{Kind: StileWidth, Side: Hinge}, Reading{Kind: StileWidth, Side: Latch})
	}
	for i := range rails {
		if i > 0 {
			out = append(out, Reading{Kind: RailHeight, Rail: i})
		}
		out = append(out, Reading{Kind: RailWidth, Rail: i})
	}
	return out
}
