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
	w.listScribed()
	if !v.leaveFrame() && w.stopsCount() {
		add(StopsOnly)
		add(StopsToo)
	}
	gapes := func(e door.Edge) bool {
		most := w.p.Wanted.Gaps[e].Most
		return most > 0 && w.tries.Gaps[e].Most > most
	}
	for _, e := range [...]door.Edge{door.LatchSide, door.HingeSide, door.HeadSide, door.FloorSide} {
		if v.NoStrip || e.Upright() && v.StilesAlike || e == door.HingeSide && v.HingesStay {
			continue
		}
		if gapes(e) || e == door.HeadSide && v.TopRail > 0 || e == door.HingeSide && gapes(door.LatchSide) {
			w.families = append(w.families, attempt{family: Splice, strip: e})
		}
	}
	if !v.leaveFrame() {
		w.families = append(w.families, attempt{family: JambsToo}, attempt{family: JambsToo, pared: true})
	}
}

// listScribed names what is worth trying with edges scribed: those that are the surer for
// it, or all of them.
func (w *Work) listScribed() {
	finishing := w.p.Sigma != nil && w.p.Offered && !w.p.Wishes.HingesStay
	all := attempt{family: ScribeOnly, scribed: [door.Edges]bool{true, true, true, true}}
	some := attempt{family: ScribeOnly, scribed: w.bent()}
	if some.scribed != [door.Edges]bool{} && some.scribed != all.scribed {
		still := some
		still.still = true
		if finishing {
			w.families = append(w.families, still)
		}
		w.families = append(w.families, some)
	}
	if finishing {
		w.families = append(w.families, attempt{family: HingePlane, still: true})
	}
	w.families = append(w.families, all)
}

// bent tells at which edges the gap bends so much that it comes within its limits more
// surely by a scribed line, each of whose stations the hand may miss, than by a straight
// one, which leaves the bend.
func (w *Work) bent() (out [door.Edges]bool) {
	const off, none = 1.1, 0.02 // of the hand's error and that of the reading together; mm, where none counts
	sigma := off * w.p.hand()
	if w.p.Sigma == nil {
		sigma = none
	}
	for e := range door.Edges {
		l := w.p.Wanted.Gaps[e]
		if l.Most <= 0 {
			continue
		}
		var bow, hollow float64
		from, to := w.closed(e)
		if to < from+3 {
			continue
		}
		to--
		first, last := w.places[from].at, w.places[to].at
		for i := from; i <= to; i++ {
			part := (w.places[i].at - first) / (last - first)
			d := w.start[i] - w.start[from] - float64(part*(w.start[to]-w.start[from]))
			bow, hollow = max(bow, d), min(hollow, d)
		}
		half := (l.Most - max(0, l.Least)) / 2
		straight, scribed := 2*2*w.beyond((half-(bow-hollow)/2)/sigma), 2*stations*w.beyond(half/sigma)
		out[e] = scribed < straight-0.005
	}
	return out
}

// spared tells whether an attempt is not worth its time: edges are scribed to a line
// where straight ones do not do, or for the sake of even gaps; and where shapes are not
// well known yet no strip is glued to a leaf that may do without.
func (w *Work) spared(a *attempt) bool {
	for i := range w.advice.Plans {
		p := &w.advice.Plans[i]
		switch {
		case a.family == ScribeOnly && a.scribed[door.HeadSide] && a.scribed[door.FloorSide] && w.p.Wishes.Prefer != MostEven:
			return true
		case a.family == Splice && w.p.Sigma != nil && p.Cost.Strips == 0:
			return true
		case a.family == JambsToo && p.Cost.Strips == 0: // a lining is packed out rather than a strip glued on, or where the leaf has no more to give
			return true
		}
	}
	return false
}

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
	hinges, edges, stops := true, true, false
	scribed := a.scribed[u.edge] && !(v.StilesAlike && u.edge.Upright()) && !(v.TopRail > 0 && u.edge == door.HeadSide)
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
		return edges && !scribed
	case offAt:
		return edges && scribed
	case strip:
		return a.family == Splice && u.edge == a.strip
	case steeper:
		return edges
	case pack, unpack:
		return hinges && !v.HingesStay
	case sinkJamb:
		return hinges && !a.still && !v.HingesStay && !v.leaveFrame() && w.spent()
	case jambOff:
		return a.family == JambsToo && a.pared
	case jambOn:
		return a.family == JambsToo && !a.pared
	case stopBack:
		return stops && !v.leaveFrame()
	case setOut:
		return hinges && !a.still && !v.HingesStay && w.stopsCount() // it is for what stands out of the plane
	case shiftLow:
		return hinges && !a.still && !v.HingesStay && w.strained()
	}
	return hinges && !a.still && !v.HingesStay
}

// spent tells whether the hanging stile has hardly any timber left behind a gain, so that
// hinges are rather let into the jamb.
func (w *Work) spent() bool {
	a, l := &w.p.Piece.Anatomy, &w.p.Piece.Door.Leaf
	inner, _ := a.Inner(l)
	for i := range w.p.Piece.Door.Hinges {
		h := &w.p.Piece.Door.Hinges[i]
		if a.HangingStile > 0 && inner-l.Hanging.At(h.LeafHeight)-h.LeafGain < stileSpent {
			return true
		}
	}
	return false
}

// stileSpent is so little, mm (common practice, no published source).
const stileSpent = 30.0

// strained tells whether the outer hinges are farther apart on leaf or jamb than they
// give.
func (w *Work) strained() bool { return w.p.Sigma == nil && abs(w.base.Strain) > hingePlay }
