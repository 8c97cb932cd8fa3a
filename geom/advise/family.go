package advise

import (
	"leafwright/geom/door"
	"leafwright/geom/judge"
)

// listFamilies names the combinations of yes and no that are worth trying.
func (w *Work) listFamilies() {
	v := &w.p.Wishes
	add := func(f Family) { w.families = append(w.families, attempt{family: f}) }
	if !v.HingesStay {
		add(HingesOnly)
	}
	add(PlaneOnly)
	if !v.HingesStay {
		add(HingePlane)
	}
	add(ScribeOnly)
	if w.p.Sigma != nil && w.p.Offered && !v.HingesStay {
		w.families = append(w.families, attempt{family: ScribeOnly, still: true})
	}
	if !v.leaveFrame() && w.stopsCount() {
		add(StopsOnly)
		add(StopsToo)
	}
	if v.NoStrip {
		return
	}
	for _, e := range [...]door.Edge{door.LatchSide, door.HeadSide, door.FloorSide} {
		if e == door.LatchSide && v.StilesAlike {
			continue
		}
		if most := w.p.Wanted.Gaps[e].Most; most > 0 && w.tries.Gaps[e].Most > most || e == door.HeadSide && v.TopRail > 0 {
			w.families = append(w.families, attempt{family: Splice, strip: e})
		}
	}
}

// spared tells whether an attempt is not worth its time: edges are scribed to a line
// where straight ones do not do, or for the sake of even gaps; and where shapes are not
// well known yet no strip is glued to a leaf that may do without.
func (w *Work) spared(a *attempt) bool {
	for i := range w.advice.Plans {
		p := &w.advice.Plans[i]
		switch {
		case a.family == ScribeOnly && w.p.Wishes.Prefer != MostEven && p.Sure > sureEnough:
			return true
		case a.family == Splice && w.p.Sigma != nil && p.Cost.Strips == 0 && (!w.p.Offered || p.Sure > sureEnough):
			return true
		}
	}
	return false
}

// sureEnough is the part of the allowance for errors that is enough to look no further.
const sureEnough = 0.9

// stopsCount tells whether anything is wrong at the stops or the latch.
func (w *Work) stopsCount() bool {
	for _, f := range w.advice.Findings {
		if f.Subject == judge.StopGap || f.Subject == judge.Latching {
			return true
		}
	}
	return false
}

// allowed tells whether an attempt may use an unknown.
func (w *Work) allowed(a *attempt, u *unknown) bool {
	v := &w.p.Wishes
	hinges, edges, stops := !a.still, true, false
	scribed := a.family == ScribeOnly
	switch a.family {
	case HingesOnly:
		edges = false
	case PlaneOnly:
		hinges = false
	case StopsOnly:
		hinges, edges, stops = false, false, true
	case StopsToo:
		stops = true
	}
	switch u.sort {
	case offEnd:
		return edges && (!scribed || v.StilesAlike && u.edge.Upright() || v.TopRail > 0 && u.edge == door.HeadSide)
	case offAt:
		return edges && scribed && !(v.StilesAlike && u.edge.Upright()) && !(v.TopRail > 0 && u.edge == door.HeadSide)
	case strip:
		return a.family == Splice && u.edge == a.strip
	case steeper:
		return edges
	case stopBack:
		return stops && !v.leaveFrame()
	case setOut:
		return hinges && !v.HingesStay && w.stopsCount() // it is for what stands out of the plane
	case shiftLow:
		return hinges && !v.HingesStay && w.strained()
	}
	return hinges && !v.HingesStay
}

// strained tells whether the outer hinges are farther apart on leaf or jamb than they
// give.
func (w *Work) strained() bool { return w.p.Sigma == nil && abs(w.base.Strain) > hingePlay }
