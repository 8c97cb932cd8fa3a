package advise

import (
	"leafwright/geom"
	"leafwright/geom/door"
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
	gains   int
	frame   bool
}

// Times, in minutes, for one person. Common practice, no published source: they
// only weigh one way against another.
const (
	planeBegun   = 10.0 // leaf off, edge marked out
	planePerMM   = 3.0  // and metre
	scribeBegun  = 18.0
	bevelBegun   = 10.0
	gainBegun    = 14.0 // screws out, gain pared, screws in
	gainPerMM    = 3.0
	packBegun    = 5.0
	setBegun     = 18.0
	shiftBegun   = 20.0 // of one hinge: old gain filled
	stopBegun    = 22.0
	stripBegun   = 75.0 // without the glue's own time
	jambBegun    = 30.0 // stops off, face planed, made good
	liningBegun  = 90.0 // casings off, the lining packed out, made good
	frameMore    = 10.0 // to make good about a gain in the jamb
	stripPerMM   = 0.5
	setPerMM     = 1.0
	handlingOnce = 0.02 // per mm of anything, so that nothing idle is done
)

// stations is how many places along an edge a scribed line is given at.
const stations = 5

// far is the most that is thought of off an edge, and small changes are taken over
// step; mm.
const (
	far        = 40.0
	gainMost   = 12.0
	packMost   = 8.0
	setMost    = 15.0
	liftMost   = 50.0
	stopMost   = 30.0
	backMost   = 4.0
	stripTop   = 60.0
	jambMost   = 6.0 // deeper, and the lining is more easily made anew
	liningMost = 30.0
)

// listUnknowns names everything that could be done.
func (w *Work) listUnknowns() {
	d := &w.p.Piece.Door
	l := &d.Leaf
	t := l.Thickness
	columns := 0
	add := func(u unknown) { w.unknowns = append(w.unknowns, u) }
	begin := func(p part) int {
		w.parts = append(w.parts, p)
		return len(w.parts) - 1
	}
	both := func(u unknown) {
		u.column = columns
		columns++
		u.sign = 1
		add(u)
		u.sign = -1
		add(u)
	}
	for e := range door.Edges {
		long := w.runs[e].Length()
		volume := t * long / 1000
		time := planePerMM * long / 1000
		k := begin(part{sort: offEnd, edge: e, minutes: planeBegun})
		s := begin(part{sort: strip, edge: e, minutes: stripBegun})
		for end := range 2 {
			add(unknown{sort: offEnd, edge: e, end: end, sign: 1, most: far, timber: volume / 2, minutes: time / 2, part: k, column: columns})
			glued := unknown{sort: strip, edge: e, end: end, sign: -1, most: stripTop, minutes: stripPerMM, part: s, column: columns}
			columns++
			if e == door.HingeSide { // the gains are cut anew in it: the leaf hangs by as much farther over
				glued.column = columns
				columns++
			}
			add(glued)
		}
		k = begin(part{sort: offAt, edge: e, minutes: scribeBegun})
		for i := range stations {
			share := 1.0 / (stations - 1)
			if i == 0 || i == stations-1 {
				share /= 2
			}
			add(unknown{sort: offAt, edge: e, end: i, sign: 1, most: far, timber: volume * share, minutes: time * share, part: k, column: columns})
			columns++
		}
	}
	outer := [2]int{0, len(d.Hinges) - 1}
	for _, i := range outer {
		h := &d.Hinges[i]
		deep := begin(part{sort: sink, hinge: i, minutes: gainBegun, gains: 1})
		packed := begin(part{sort: pack, hinge: i, minutes: packBegun})
		plates := max(0, t-6) * h.Height / 1000
		add(unknown{sort: sink, hinge: i, sign: 1, most: gainMost, timber: plates, minutes: gainPerMM, part: deep, column: columns})
		jamb := begin(part{sort: sinkJamb, hinge: i, minutes: gainBegun + frameMore, gains: 1, frame: true})
		if there := h.LeafPacker + h.JambPacker; there > 0 {
			add(unknown{sort: unpack, hinge: i, sign: 1, most: there, minutes: handlingOnce, part: packed, column: columns})
		}
		add(unknown{sort: pack, hinge: i, sign: -1, most: packMost, minutes: handlingOnce, part: packed, column: columns})
		columns++
		add(unknown{sort: sinkJamb, hinge: i, sign: 1, most: gainMost, minutes: gainPerMM, part: jamb, column: columns})
		columns++
		both(unknown{sort: setOut, hinge: i, most: setMost, minutes: setPerMM, part: begin(part{sort: setOut, hinge: i, minutes: setBegun, gains: 1})})
	}
	all := len(d.Hinges)
	both(unknown{sort: raise, most: liftMost, minutes: 1, part: begin(part{sort: raise, minutes: shiftBegun * float64(all), gains: all})})
	both(unknown{sort: shiftLow, hinge: all - 1, most: liftMost, minutes: 1, part: begin(part{sort: shiftLow, minutes: shiftBegun, gains: 1})})
	add(unknown{sort: steeper, edge: door.LatchSide, sign: 1, most: backMost, timber: t * w.runs[door.LatchSide].Length() / 2000, minutes: planePerMM,
		part: begin(part{sort: steeper, edge: door.LatchSide, minutes: bevelBegun}), column: columns})
	columns++
	for e := door.HingeSide; e <= door.HeadSide; e++ {
		k := begin(part{sort: stopBack, edge: e, minutes: stopBegun, frame: true})
		for end := range 2 {
			both(unknown{sort: stopBack, edge: e, end: end, most: stopMost, minutes: 0.5, part: k})
		}
	}
	for e := door.LatchSide; e <= door.HeadSide; e++ {
		off := begin(part{sort: jambOff, edge: e, minutes: jambBegun, frame: true})
		on := begin(part{sort: jambOn, edge: e, minutes: liningBegun, frame: true})
		for end := range 2 {
			add(unknown{sort: jambOff, edge: e, end: end, sign: 1, most: jambMost, minutes: planePerMM, part: off, column: columns})
			add(unknown{sort: jambOn, edge: e, end: end, sign: -1, most: liningMost, minutes: setPerMM, part: on, column: columns})
			columns++
		}
	}
	w.columns = make([][]float64, columns)
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
			d.Hinges[i].LeafHeight -= amount
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
