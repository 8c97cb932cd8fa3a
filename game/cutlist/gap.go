package cutlist

import (
	"math"

	"leafwright/game"
	"leafwright/geom"
	"leafwright/geom/fit"
)

// What rows of the door as a whole are of.
const (
	ClosedGap = "closed gap"
	SwingGap  = "least while it swings"
	StopGap   = "gap to the stop"
	LatchMiss = "latch still to go"
	ClearWay  = "clear way"
)

// What places in the opening are measured from.
const (
	fromFloor = "up from the floor at the foot of the hinge jamb"
	fromHinge = "across from the foot of the hinge jamb"
)

func from(e fit.Edge) string {
	if e.Upright() {
		return fromFloor
	}
	return fromHinge
}

// near is how close two stations are one, mm.
const near = 1.0

// columns are the doors of a row, in the order of its cells.
func (t *table) columns() [3]*game.Column {
	return [3]*game.Column{&t.found, &t.stands, &t.after}
}

// cells are where a row keeps what belongs to the columns.
func (r *Row) cells() [3]*float64 { return [3]*float64{&r.Found, &r.Stands, &r.After} }

// gaps adds the closed gaps.
func (t *table) gaps() {
	for e := range fit.Edges {
		var all [3]*fit.Gap
		for i, c := range t.columns() {
			all[i] = &c.Fit.Gaps[e]
		}
		for _, at := range t.stations(e, all) {
			r := t.at(ClosedGap, e, t.s.Edge(e), all, at)
			r.wanted(t.after.Wanted.Gaps[e])
			t.add(r)
		}
	}
}

// stops adds the gaps to the stops.
func (t *table) stops() {
	for e := range fit.FloorSide {
		var all [3]*fit.Gap
		for i, c := range t.columns() {
			all[i] = &c.Fit.Stops[e]
		}
		for _, at := range t.stations(e, all) {
			r := t.at(StopGap, e, "stop, "+t.s.Edge(e), all, at)
			r.wanted(t.after.Wanted.Stop)
			t.add(r)
		}
	}
}

// at gives the row of gaps at a place; a door whose gap does not reach there has none.
func (t *table) at(what string, e fit.Edge, part string, all [3]*fit.Gap, at float64) Row {
	r := row(what)
	r.Part, r.From, r.Place = part, from(e), at
	for i, cell := range r.cells() {
		if all[i].Range().Contains(at) {
			*cell = all[i].At(at)
		}
	}
	r.Change = r.After - r.Stands
	for i, name := range [3]string{"as found", "as it stands", "after"} {
		if i == 1 && len(t.job.Made) == 0 {
			continue
		}
		if at == all[i].LeastAt {
			r.Note = also(r.Note, "least "+name)
		}
		if at == all[i].MostAt {
			r.Note = also(r.Note, "most "+name)
		}
	}
	return r
}

func also(note, more string) string {
	if note == "" {
		return more
	}
	return note + "; " + more
}

// stations gives the places along an edge at which its gaps are told, rising: where
// they begin, bend and end, where they are least and most; on upright edges the
// hinges and the latch, on the others the middle.
func (t *table) stations(e fit.Edge, all [3]*fit.Gap) (places []float64) {
	whole := geom.Empty()
	for _, g := range all { // exactly these
		if len(g.Pieces) == 0 {
			continue
		}
		places = append(places, g.LeastAt, g.MostAt)
		whole = whole.With(g.Range().Lo).With(g.Range().Hi)
	}
	geom.Ascending(places)
	places = distinct(places)
	more := func(at float64) {
		for _, p := range places {
			if math.Abs(p-at) < near {
				return
			}
		}
		if whole.Contains(at) {
			places = append(places, at)
		}
	}
	for _, g := range all {
		for i, p := range g.Pieces {
			more(p.Lo)
			if i == len(g.Pieces)-1 {
				more(p.Hi)
			}
		}
	}
	if e.Upright() {
		for _, h := range t.after.Tried.Door.Hinges {
			more(h.JambHeight)
		}
		d := &t.after.Tried.Door
		more(t.after.Fit.Place(geom.Vec{X: d.Leaf.Closing.At(d.Latch.Height), Y: d.Latch.Height}, t.after.Fit.Closed).Y)
	} else {
		more(whole.Mid())
	}
	geom.Ascending(places)
	return places
}

// distinct takes out of rising numbers those that are there already.
func distinct(all []float64) []float64 {
	n := 0
	for i, x := range all {
		if i == 0 || x != all[n-1] {
			all[n] = x
			n++
		}
	}
	return all[:n]
}

// swings adds, for every edge, the least clearance through the swing of each door,
// with the place and the angle where it is.
func (t *table) swings() {
	for e := range fit.Edges {
		limits := t.after.Wanted.Swing
		if e == fit.FloorSide {
			limits = t.after.Wanted.SwingFloor
		}
		for i, c := range t.columns() {
			if i == 1 && len(t.job.Made) == 0 {
				continue
			}
			s := c.Fit.Swing[e]
			r := row(SwingGap)
			r.Part, r.From, r.Place, r.Open = t.s.Edge(e), from(e), s.At.X, s.Angle.Degrees()
			if e.Upright() {
				r.Place = s.At.Y
			}
			*r.cells()[i] = s.Least
			r.wanted(limits)
			t.add(r)
		}
	}
}

// others adds how far the latch falls short, and the clear way.
func (t *table) others() {
	r := row(LatchMiss)
	r.Part = t.s.Latch
	for i, c := range t.columns() {
		*r.cells()[i] = c.Fit.LatchMiss
	}
	r.Change = r.After - r.Stands
	t.add(r)
	r = row(ClearWay)
	r.Part, r.Open = "leaf to stop", 90
	for i, c := range t.columns() {
		*r.cells()[i] = c.Fit.ClearToStop
	}
	r.Change = r.After - r.Stands
	if w := t.after.Wanted.ClearWidth; w > 0 {
		r.Least = w
	}
	t.add(r)
}
