package advise

import (
	"leafwright/geom/door"
	"leafwright/geom/judge"
	"leafwright/geom/trim"
)

// attempt is a family to be tried.
type attempt struct {
	family Family
	strip  door.Edge
	// scribed tells the edges that are scribed where others are planed straight.
	scribed [door.Edges]bool
	hung    bool // the hinges are worked
	level   bool // hinges are not moved along the edge
	still   bool // no gain is cut anew: each is one more thing to be a little off
	pared   bool // faces of the frame are planed, not packed out
	all     bool // everything at once, where nothing less did
	close   bool // scribed lines have many stations
	frame   bool // the frame is worked
}

// listFamilies names the combinations of yes and no that are worth trying. What a person
// forbids strikes combinations off and changes none, so that forbidding never finds
// what would not be found without; nor does what is preferred.
func (w *Work) listFamilies() {
	v := &w.p.Wishes
	add := func(a attempt) {
		if a.hung && v.HingesStay || a.frame && v.LeaveFrame || a.family == Splice && v.NoStrip {
			return
		}
		w.families = append(w.families, a)
	}
	both := func(a attempt) {
		add(a)
		a.hung = true
		add(a)
	}
	add(attempt{family: HingesOnly, hung: true})
	both(attempt{family: PlaneOnly})
	if w.spent() {
		add(attempt{family: HingesOnly, hung: true, frame: true})
		add(attempt{family: PlaneOnly, hung: true, frame: true})
	}
	w.listScribed(both)
	for _, e := range [...]door.Edge{door.LatchSide, door.HingeSide, door.HeadSide, door.FloorSide} {
		if w.maySplice(e) {
			a := attempt{family: Splice, strip: e}
			if e != door.HingeSide {
				add(a)
			}
			a.hung = true
			add(a)
		}
	}
	if w.stopsCount() {
		add(attempt{family: StopsOnly, frame: true})
		both(attempt{family: StopsToo, frame: true})
	}
	both(attempt{family: JambsToo, frame: true})
	both(attempt{family: JambsToo, frame: true, pared: true})
	for _, frame := range [...]bool{false, true} { // where nothing less did
		add(attempt{family: ScribeOnly, hung: !v.HingesStay, all: true, close: true, frame: frame, scribed: everyEdge})
		for _, e := range [...]door.Edge{door.LatchSide, door.HingeSide, door.HeadSide, door.FloorSide} {
			if e != door.HingeSide || !v.HingesStay {
				a := attempt{family: Splice, strip: e, hung: !v.HingesStay, all: true, close: true, frame: frame, scribed: everyEdge}
				a.scribed[e] = false
				add(a)
			}
		}
	}
	if v.Prefer == LeaveFrame { // the frame last
		var last []attempt
		rest := w.families[:0]
		for _, a := range w.families {
			if a.frame {
				last = append(last, a)
			} else {
				rest = append(rest, a)
			}
		}
		w.families = append(rest, last...)
	}
}

var everyEdge = [door.Edges]bool{true, true, true, true}

// maySplice tells whether a strip on an edge is worth thinking of.
func (w *Work) maySplice(e door.Edge) bool {
	v := &w.p.Wishes
	gapes := func(e door.Edge) bool {
		most := w.p.Wanted.Gaps[e].Most
		return most > 0 && w.tries.Gaps[e].Most > most
	}
	if e.Upright() && v.StilesAlike {
		return false
	}
	return gapes(e) || e == door.HeadSide && v.TopRail > 0 || e == door.HingeSide && gapes(door.LatchSide)
}

// listScribed names what is worth trying with edges scribed: those that are the surer for
// it, or all of them.
func (w *Work) listScribed(both func(attempt)) {
	finishing := w.p.Sigma != nil && w.p.Offered && !w.p.Wishes.HingesStay
	all := attempt{family: ScribeOnly, scribed: everyEdge}
	some := attempt{family: ScribeOnly, scribed: w.bent()}
	if some.scribed != [door.Edges]bool{} && some.scribed != all.scribed {
		if finishing {
			still := some
			still.hung, still.still = true, true
			w.families = append(w.families, still)
		}
		both(some)
	}
	if finishing {
		w.families = append(w.families, attempt{family: PlaneOnly, hung: true, still: true})
	}
	both(all)
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

// listClosely adds the amounts of edges scribed to lines of many stations, and the places
// where these may bend. There are no plans yet when it is called.
func (w *Work) listClosely() {
	if w.closely {
		return
	}
	w.closely = true
	for e := range door.Edges {
		w.listLine(e, closely)
	}
	w.tried = make([]bool, len(w.parts))
	clear(w.columns)
	w.places = w.places[:0]
	w.listPlaces()
	w.start = w.read(&w.base)
	w.weighErrors()
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
	edges := a.all || a.family != HingesOnly && a.family != StopsOnly
	stops := a.family == StopsOnly || a.family == StopsToo || a.all
	scribed := a.scribed[u.edge] && !(v.StilesAlike && u.edge.Upright()) && !(v.TopRail > 0 && u.edge == door.HeadSide)
	switch u.sort {
	case offEnd:
		return edges && !(scribed && a.scribed != everyEdge) // where every edge may be scribed, straight is cheaper
	case offAt:
		return edges && scribed && (u.of == closely) == a.close
	case strip:
		return a.family == Splice && u.edge == a.strip
	case steeper:
		return edges
	case pack, unpack:
		return a.hung
	case sinkJamb:
		return a.hung && (w.p.Piece.Door.Hinges[u.hinge].UncutJamb || !a.still && a.frame && w.spent())
	case raise:
		return a.hung && !a.level && (!a.still || w.liftOn() == trim.OnJamb)
	case jambOff:
		return a.frame && (a.family == JambsToo && a.pared || a.all)
	case jambOn:
		return a.frame && (a.family == JambsToo && !a.pared || a.all)
	case stopBack:
		return a.frame && stops
	case setOut:
		return a.hung && !a.still && w.stopsCount() // it is for what stands out of the plane
	case shiftLow:
		return a.hung && !a.still && !a.level && w.strained()
	}
	return a.hung && !a.still
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
