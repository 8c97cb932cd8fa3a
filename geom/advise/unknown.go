package advise

import (
	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/trim"
)

// sort is what an unknown is an amount of.
type sort uint8

const (
	offEnd   sort = iota // off an edge at one of its ends, straight between
	offAt                // off an edge at a station, straight to the next ones
	strip                // height of a strip on an edge at one of its ends
	sink                 // a gain in the leaf deeper
	sinkJamb             // a gain in the jamb deeper
	unpack               // packing behind a hinge taken out
	pack                 // packing behind a hinge put in
	setOut               // a hinge out of the plane
	raise                // the leaf up on its hinges
	steeper              // the closing edge's stop arris back by more bevel
	stopBack             // a stop away from the leaf at one of its ends
	shiftLow             // the bottom hinge up on the leaf
	jambOff              // off the face of a jamb or the head at one of its ends
	jambOn               // a jamb or the head packed out into the opening at one of its ends
)

// unknown is one amount to be found, mm, never below 0: what can go both ways is
// two of them.
type unknown struct {
	sort  sort
	edge  door.Edge
	hinge int
	end   int     // 0 the first end or the lowest station
	of    int     // how many stations the line has, of offAt
	sign  float64 // 1 or −1
	most  float64 // its upper bound
	// timber is the cm³ of leaf it costs per mm, and minutes the time.
	timber, minutes float64
	part            int // the part it belongs to
	column          int // which column of the model it follows, by sign
}

// part is a piece of work that costs time by being begun at all.
type part struct {
	sort    sort
	edge    door.Edge
	hinge   int
	minutes float64
	gains   int // a bit for each hinge let in anew
	frame   bool
	last    int // strips and faces of the frame: what is done last
}

// Times, in minutes, for one person, as package trim has them: they weigh one way
// against another, and a plan is priced by what its moves come to in the end.
const (
	planeBegun   = 10.0
	shavedPerCM3 = 0.1
	scribeBegun  = 15.0
	bevelBegun   = 10.0
	gainBegun    = 15.0
	packBegun    = 8.0
	setBegun     = 25.0
	shiftBegun   = 25.0
	raiseBegun   = 20.0 // of each hinge
	stopBegun    = 25.0
	stripBegun   = 90.0 // without the glue's own time
	jambBegun    = 40.0
	liningBegun  = 45.0
	handlingOnce = 0.02 // per mm of anything, so that nothing idle is done
)

// stations is how many places along an edge a scribed line is given at, and closely as
// many where no line through so few does.
const (
	stations = 5
	closely  = 9
)

// far is the most that is thought of off an edge, and small changes are taken over
// step; mm.
const (
	far        = 40.0
	gainMost   = 12.0
	packMost   = 8.0
	liftMost   = 50.0
	shiftMost  = 150.0 // where hinges are at odds: a reclaimed leaf's gains are anywhere
	stopMost   = 30.0
	backMost   = 4.0
	stripTop   = 60.0
	jambMost   = 6.0 // deeper, and the lining is more easily made anew
	liningMost = 30.0
)

// begin adds a part, and use one amount of it.
func (w *Work) begin(p part) int {
	w.parts = append(w.parts, p)
	return len(w.parts) - 1
}

func (w *Work) use(u unknown) { w.unknowns = append(w.unknowns, u) }

// newColumn adds a column to the model.
func (w *Work) newColumn() int {
	w.columns = append(w.columns, nil)
	return len(w.columns) - 1
}

// both adds an amount that can go both ways.
func (w *Work) both(u unknown) {
	u.column = w.newColumn()
	u.sign = 1
	w.use(u)
	u.sign = -1
	w.use(u)
}

// listUnknowns names everything that could be done.
func (w *Work) listUnknowns() {
	d := &w.p.Piece.Door
	t := d.Leaf.Thickness
	for e := range door.Edges {
		volume := w.volume(e)
		k := w.begin(part{sort: offEnd, edge: e, minutes: planeBegun})
		s := w.begin(part{sort: strip, edge: e, minutes: stripBegun, last: 1})
		for end := range 2 {
			c := w.newColumn()
			w.use(unknown{sort: offEnd, edge: e, end: end, sign: 1, most: far, timber: volume / 2, minutes: shavedPerCM3 * volume / 2, part: k, column: c})
			if e == door.HingeSide { // the gains are cut anew in it: the leaf hangs by as much farther over
				c = w.newColumn()
			}
			w.use(unknown{sort: strip, edge: e, end: end, sign: -1, most: stripTop, part: s, column: c})
		}
		w.listLine(e, stations)
	}
	outer := [2]int{0, len(d.Hinges) - 1}
	for _, i := range outer {
		h := &d.Hinges[i]
		packed := w.begin(part{sort: pack, hinge: i, minutes: packBegun})
		plates := max(0, t-6) * h.Height / 1000
		c := w.newColumn()
		w.use(unknown{sort: sink, hinge: i, sign: 1, most: gainMost, timber: plates, part: w.begin(part{sort: sink, hinge: i, minutes: gainBegun, gains: 1 << i}), column: c})
		if there := h.LeafPacker + h.JambPacker; there > 0 {
			w.use(unknown{sort: unpack, hinge: i, sign: 1, most: there, part: packed, column: c})
		}
		w.use(unknown{sort: pack, hinge: i, sign: -1, most: packMost, part: packed, column: c})
		deeper := part{sort: sinkJamb, hinge: i, minutes: gainBegun, gains: 1 << i, frame: true}
		if h.UncutJamb { // it is to be cut anyhow
			deeper = part{sort: sinkJamb, hinge: i}
		}
		jamb := w.begin(deeper)
		w.use(unknown{sort: sinkJamb, hinge: i, sign: 1, most: gainMost, part: jamb, column: w.newColumn()})
		w.both(unknown{sort: setOut, hinge: i, most: trim.SetMost(t), part: w.begin(part{sort: setOut, hinge: i, minutes: setBegun, gains: 1 << i})})
	}
	all := len(d.Hinges)
	lift := part{sort: raise, minutes: raiseBegun * float64(all), gains: 1<<all - 1}
	if w.liftOn() != trim.OnLeaf || d.Hinges[0].UncutLeaf {
		lift = part{sort: raise}
	}
	most := liftMost
	if w.strained() {
		most = shiftMost
	}
	w.both(unknown{sort: raise, most: most, part: w.begin(lift)})
	w.both(unknown{sort: shiftLow, hinge: all - 1, most: shiftMost, part: w.begin(part{sort: shiftLow, minutes: shiftBegun, gains: 1 << (all - 1)})})
	back := w.volume(door.LatchSide) / 2
	w.use(unknown{sort: steeper, edge: door.LatchSide, sign: 1, most: backMost, timber: back, minutes: shavedPerCM3 * back,
		part: w.begin(part{sort: steeper, edge: door.LatchSide, minutes: bevelBegun}), column: w.newColumn()})
	for e := door.HingeSide; e <= door.HeadSide; e++ {
		k := w.begin(part{sort: stopBack, edge: e, minutes: stopBegun, frame: true})
		for end := range 2 {
			w.both(unknown{sort: stopBack, edge: e, end: end, most: stopMost, part: k})
		}
	}
	for e := door.LatchSide; e <= door.HeadSide; e++ {
		off := w.begin(part{sort: jambOff, edge: e, minutes: jambBegun, frame: true, last: 1})
		on := w.begin(part{sort: jambOn, edge: e, minutes: liningBegun, frame: true, last: 1})
		for end := range 2 {
			c := w.newColumn()
			w.use(unknown{sort: jambOff, edge: e, end: end, sign: 1, most: jambMost, part: off, column: c})
			w.use(unknown{sort: jambOn, edge: e, end: end, sign: -1, most: liningMost, part: on, column: c})
		}
	}
}

// liftOn is where the hinges are moved to raise the leaf: on the jamb where nothing is
// cut there yet.
func (w *Work) liftOn() trim.Part {
	if w.p.Piece.Door.Hinges[0].UncutJamb {
		return trim.OnJamb
	}
	return trim.OnLeaf
}

// volume is what a millimetre off an edge comes to, cm³.
func (w *Work) volume(e door.Edge) float64 {
	return w.p.Piece.Door.Leaf.Thickness * w.runs[e].Length() / 1000
}

// listLine adds the amounts of an edge that is scribed to a line of so many stations.
func (w *Work) listLine(e door.Edge, n int) {
	k := w.begin(part{sort: offAt, edge: e, minutes: scribeBegun})
	for i := range n {
		share := w.volume(e) / float64(n-1)
		if i == 0 || i == n-1 {
			share /= 2
		}
		w.use(unknown{sort: offAt, edge: e, end: i, of: n, sign: 1, most: far, timber: share, minutes: shavedPerCM3 * share, part: k, column: w.newColumn()})
	}
}

// hat is the profile that is 1 at one of n stations, 0 at the others, straight
// between and held beyond.
func hat(over geom.Interval, i, n int) geom.Profile {
	p := make(geom.Profile, n)
	for k := range p {
		p[k].At = over.Lo + float64(over.Length()*float64(k))/float64(n-1)
	}
	p[i].Value = 1
	return p
}

// shape makes on a copy of the door what an amount of one unknown comes to. It is
// the move's geometry without its cares: what the columns are taken from.
func (w *Work) shape(u *unknown, amount float64) door.Door {
	d := w.p.Piece.Door
	d.Hinges = append([]door.Hinge(nil), d.Hinges...)
	amount *= u.sign
	switch u.sort {
	case sinkJamb:
		d.Hinges[u.hinge].JambGain += amount
	case sink, unpack, pack:
		d.Hinges[u.hinge].LeafGain += amount
	case setOut:
		d.Hinges[u.hinge].Proud += amount
	case raise:
		for i := range d.Hinges {
			if h := &d.Hinges[i]; h.UncutJamb {
				h.JambHeight += amount
			} else {
				h.LeafHeight -= amount
			}
		}
	case shiftLow:
		d.Hinges[u.hinge].LeafHeight += amount
	case strip: // on the hanging edge
		off := hat(w.runs[door.HingeSide], u.end, 2)
		off[u.end].Value = amount
		d.Leaf.Hanging = plus(d.Leaf.Hanging, off)
	case steeper:
		d.Leaf.ClosingBevel = bevelFor(&d.Leaf, float64(d.Leaf.ClosingSetback()*d.Leaf.Thickness)+amount)
	}
	return d
}

// bevelFor gives the closing bevel that sets the stop arris back so far, mm.
func bevelFor(l *door.Leaf, back float64) geom.Angle {
	return geom.Turn{Cos: l.Thickness, Sin: back}.Angle()
}
