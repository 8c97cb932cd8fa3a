package timber

import (
	"math"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/trim"
)

// What dowelling a strip goes by, mm.
const (
	glueRoom    = 2.0        // left at the bottom of a hole for glue and air (common practice: 1/16 in, 1 to 2 mm)
	dowelCover  = 5.0        // of the strip left over a blind hole (common practice, no published source)
	dowelEnd    = 40.0       // from the strip's end to the first dowel's middle (common practice, no published source)
	dowelApart  = 240.0      // 9 to 10 in apart along an edge (Fairham)
	dowelPair   = 2.5 * inch // two at each end of a long joint (Fairham), 2½ in apart (Architectural Woodwork Standards)
	dowelDeep   = 3.0        // diameters into each piece (a furniture maker's rule)
	dowelLeast  = 3          // on a strip as long as a rail (common practice, no published source)
	fittingRoom = 6.0        // round a lock's case or a hinge's plate (common practice, no published source)
	grooveWall  = 6.0        // of a rail left between a hole and its panel groove (common practice, no published source)
	muntinTenon = 50.0       // a muntin's stub tenon, about 2 in (International Correspondence Schools)
)

// dowelSizes are diameters as sold, mm; the first is the least that holds.
var dowelSizes = [...]float64{6, 8, 10, 12, 16}

// DowelDiameter gives the dowel for stock so thick, mm: the greatest sold of at most a third of
// it (common practice; half is in print and is the most), 6 at least.
func DowelDiameter(stock float64) float64 {
	d := dowelSizes[0]
	for _, s := range dowelSizes {
		if float64(3*s) <= held(stock, 0, 1000) {
			d = s
		}
	}
	return d
}

// Dowels is how a strip is dowelled to an edge of the leaf, mm.
type Dowels struct {
	Edge     door.Edge
	Diameter float64
	// Length is a dowel's; IntoStrip and IntoLeaf are the depths of its holes, glue room
	// counted. A strip too low to hide a dowel is bored right through, and the dowel dressed off.
	Length, IntoStrip, IntoLeaf float64
	Through                     bool
	// Short and ShortLength are IntoLeaf and Length of those in the stiles' ends, where
	// tenon or wedge leaves less room; 0 where they are as deep as the others.
	Short, ShortLength float64
	Shorts             [2]int // how many of Places those are, from its beginning and from its end
	// Places are the holes' middles from the strip's foot or hanging end, rising; they are
	// marked on both pieces from that one end.
	Places []float64
	// LeafGauge is the line of the holes from the leaf's knuckle face; StripGauge the same
	// from the strip's face on that side, as the stock is before it is dressed.
	LeafGauge, StripGauge float64
	// OffStrip is what planing flush takes off the strip's two faces, OffLeaf how far it stands
	// behind the leaf's where it is the thinner; knuckle face first.
	OffStrip, OffLeaf [2]float64
	// Rip is what comes off the strip's gluing edge first, because the stock's rounded
	// arrises would leave a furrow at a face that is not planed as deep.
	Rip   float64
	Long  float64 // length of the strip
	Low   float64 // its least height after dressing
	High  float64 // its greatest
	Stock float64 // thickness after dressing
	// Blank is what a new strip is sawn to, before it is dressed: length × height × thickness.
	// An offcut has none.
	Blank    [3]float64
	GlueArea float64 // mm², the joint and the dowels' sides
	Cares    []StripCare
}

// StripCare is what to mind with a strip.
type StripCare string

// The cares.
const (
	FewDowels   StripCare = "few dowels"      // no room for three
	OverWedge   StripCare = "over a wedge"    // it covers tenon ends: every wedge is made firm, and trimmed flush, first
	WedgeLoose  StripCare = "wedge loose"     // too little haunch is left for the wedge to bear on: glue and pin it first
	UnderHinge  StripCare = "under a hinge"   // hinge screws must go through it into the leaf
	UnderLock   StripCare = "under the lock"  // the lock's forend is let into it
	StandsBack  StripCare = "stands back"     // thinner than the leaf, so that it shows
	OnEndGrain  StripCare = "on end grain"    // it crosses the stiles' ends, where glue alone does not hold
	RoundedEdge StripCare = "rounded arrises" // see Rip
)

// DowelsFor gives how to dowel the strip that a splice or a re-used offcut puts on the piece;
// round is the radius of the stock's arrises, 0 where they are sharp. Why it cannot be
// done is the move's care; for a move that glues no strip both are nil.
func DowelsFor(p trim.Piece, m trim.Move, round float64) (*Dowels, *trim.Care) {
	if m.Kind != trim.Splice && m.Kind != trim.Reuse {
		return nil, nil
	}
	q, _, why := trim.Do(p, m)
	if why != nil {
		return nil, why
	}
	if len(q.Anatomy.Strips) == 0 {
		return nil, nil
	}
	l := &p.Door.Leaf
	strip := &q.Anatomy.Strips[len(q.Anatomy.Strips)-1]
	d := &Dowels{Edge: strip.Edge, Stock: strip.Stock}
	ends := edgeEnds(l, d.Edge)
	d.Long = ends.Length()
	outer, _ := q.Door.Leaf.Line(d.Edge)
	d.Low, d.High = heights(strip, *outer, ends)
	d.faces(l, &m, strip, held(round, 0, 20))
	if m.Kind == trim.Splice {
		d.Blank = [3]float64{d.Long + sawnLong, d.High + sawnHigh + d.Rip, max(m.Stock, d.Stock)}
	}
	d.Diameter = DowelDiameter(min(d.Stock, l.Thickness))
	d.depths(&p)
	d.places(&p, ends)
	girth := math.Pi * d.Diameter
	short := d.Shorts[0] + d.Shorts[1]
	d.GlueArea = float64(d.Long*d.Stock) + float64(girth*float64(float64(len(d.Places)-short)*d.Length)) + float64(girth*float64(float64(short)*d.ShortLength))
	d.mind(&p, ends)
	return d, nil
}

// heights gives a strip's least and greatest height, at its ends and bends.
func heights(s *door.Strip, outer geom.Profile, ends geom.Interval) (low, high float64) {
	low = math.Inf(1)
	try := func(at float64) {
		if ends.Contains(at) {
			h := outer.At(at) - s.Joint.At(at)
			h = max(h, -h)
			low, high = min(low, h), max(high, h)
		}
	}
	try(ends.Lo)
	try(ends.Hi)
	for _, k := range s.Joint {
		try(k.At)
	}
	for _, k := range outer {
		try(k.At)
	}
	return min(low, high), high
}

// faces sets gauges, and what planing flush takes off.
func (d *Dowels) faces(l *door.Leaf, m *trim.Move, s *door.Strip, round float64) {
	rough := s.Stock
	if m.Kind == trim.Splice {
		rough = max(s.Stock, held(m.Stock, 0, 1000))
	}
	over := rough - s.Stock
	switch m.Face { // a re-used offcut has none, and lies flush with the knuckle face
	case trim.Middle:
		d.OffStrip = [2]float64{over / 2, over / 2}
	case trim.Stop:
		d.OffStrip = [2]float64{over, 0}
	default:
		d.OffStrip = [2]float64{0, over}
	}
	d.OffLeaf = [2]float64{max(0, s.Back), max(0, l.Thickness-s.Back-s.Stock)}
	d.LeafGauge = s.Back + s.Stock/2
	d.StripGauge = d.OffStrip[0] + s.Stock/2
	if round > min(d.OffStrip[0], d.OffStrip[1]) {
		d.Rip = round
		d.Cares = append(d.Cares, RoundedEdge)
	}
	if d.OffLeaf[0]+d.OffLeaf[1] > 0 {
		d.Cares = append(d.Cares, StandsBack)
	}
}

// depths sets the holes' depths.
func (d *Dowels) depths(p *trim.Piece) {
	in := float64(dowelDeep * d.Diameter)
	leaf := min(in, d.behind(p))
	d.IntoLeaf = leaf + glueRoom
	least := float64(1.5 * d.Diameter) // shorter it holds nothing (common practice, no published source)
	strip := min(in, d.Low-dowelCover)
	d.IntoStrip = strip + glueRoom
	if strip < least {
		d.Through = true
		strip = d.High
		d.IntoStrip = d.High
	}
	d.Length = strip + leaf
	if d.Edge.Upright() {
		return
	}
	if room, has := haunch(p, d.Edge); has && room < d.IntoLeaf && room-glueRoom >= least {
		d.Short = room
		d.ShortLength = strip + room - glueRoom
	}
}

// behind gives how deep a dowel may go into the member behind the edge, mm: a rail's or a
// stile's width less its panel groove and a wall. The groove is about as deep as it is
// wide, a third of the stuff (Noyes).
func (d *Dowels) behind(p *trim.Piece) float64 {
	a, l := &p.Anatomy, &p.Door.Leaf
	member := 0.0
	switch {
	case a.Make != door.Framed:
		return 1e3
	case d.Edge == door.HingeSide:
		member = a.HangingStile
	case d.Edge == door.LatchSide:
		member = a.ClosingStile
	case len(a.Rails) == 0:
		return 1e3
	case d.Edge == door.HeadSide:
		r := a.Rails[len(a.Rails)-1]
		member = r.To - r.From
	default:
		member = a.Rails[0].To - a.Rails[0].From
	}
	return max(float64(2*d.Diameter), member-l.Thickness/3-grooveWall-glueRoom)
}

// places sets the holes along the edge, clear of joints and fittings and of each other.
func (d *Dowels) places(p *trim.Piece, ends geom.Interval) {
	blocked := d.blocked(p, ends)
	half := d.Diameter
	room := geom.Interval{Lo: ends.Lo + dowelEnd - half, Hi: ends.Hi - dowelEnd + half}
	first, last := ends.Lo+dowelEnd, ends.Hi-dowelEnd
	// put sets a hole near the place wanted, no nearer to another than apart; one that
	// would end up farther off than most is left out
	put := func(want, apart, most float64) (at float64) {
		off := blocked
		for _, x := range d.Places {
			off = append(off, geom.Interval{Lo: ends.Lo + x - apart + half, Hi: ends.Lo + x + apart - half})
		}
		at, ok := clearPlace(want, half, room, off)
		if ok && max(at-want, want-at) <= most {
			d.Places = append(d.Places, at-ends.Lo)
		}
		return at
	}
	if !(first < last) {
		put(ends.Mid(), dowelPair, d.Long)
	} else {
		n := max(dowelLeast, int(math.Ceil((last-first)/dowelApart-1e-9))+1)
		lo, hi := put(first, dowelPair, d.Long), put(last, dowelPair, d.Long)
		if d.Edge.Upright() && hi-lo > 3*dowelPair {
			put(lo+dowelPair, dowelPair, dowelApart/2)
			put(hi-dowelPair, dowelPair, dowelApart/2)
		}
		for i := 1; i < n-1; i++ {
			put(first+float64((last-first)*(float64(i)/float64(n-1))), dowelApart/2, dowelApart/2)
		}
		for _, part := range [...]float64{0.5, 0.25, 0.75} { // where it is cramped, closer
			if len(d.Places) < dowelLeast {
				put(first+float64((last-first)*part), float64(3*d.Diameter), d.Long)
			}
		}
	}
	geom.Ascending(d.Places)
	if d.Short > 0 {
		left, right := p.Anatomy.Inner(&p.Door.Leaf)
		for _, at := range d.Places {
			if at+ends.Lo < left {
				d.Shorts[0]++
			} else if at+ends.Lo > right {
				d.Shorts[1]++
			}
		}
	}
	if len(d.Places) < dowelLeast {
		d.Cares = append(d.Cares, FewDowels)
	}
}

// blocked gives the stretches of the edge a dowel keeps off.
func (d *Dowels) blocked(p *trim.Piece, ends geom.Interval) []geom.Interval {
	a, l := &p.Anatomy, &p.Door.Leaf
	var out []geom.Interval
	if d.Edge.Upright() {
		out = joints(l, a, d.Edge, d.IntoLeaf)
		if k := &a.Lock; d.Edge == door.LatchSide && k.Kind == door.Mortice {
			half := held(k.Case, 0, 1000)/2 + fittingRoom
			out = append(out, geom.Interval{Lo: k.Height - half, Hi: k.Height + half})
		}
		if d.Edge == door.HingeSide {
			for _, h := range p.Door.Hinges {
				half := held(h.Height, 0, 1000)/2 + fittingRoom
				out = append(out, geom.Interval{Lo: h.LeafHeight - half, Hi: h.LeafHeight + half})
			}
		}
		return out
	}
	if a.Make != door.Framed || len(a.Rails) == 0 {
		return nil
	}
	left, right := a.Inner(l)
	out = append(out, geom.Interval{Lo: left - 1, Hi: left + 1}, geom.Interval{Lo: right - 1, Hi: right + 1}) // the shoulders
	if room, has := haunch(p, d.Edge); has && room < d.IntoLeaf && d.Short == 0 {                             // in the stiles a hole would meet tenon or wedge
		out = append(out, geom.Interval{Lo: ends.Lo - 1, Hi: left}, geom.Interval{Lo: right, Hi: ends.Hi + 1})
	}
	rail, at := a.Rails[0], a.Rails[0].To
	if d.Edge == door.HeadSide {
		rail = a.Rails[len(a.Rails)-1]
		at = rail.From
	}
	if rail.To-rail.From-muntinTenon < d.IntoLeaf {
		for _, n := range a.Muntins {
			if n.From == at || n.To == at {
				out = append(out, geom.Interval{Lo: n.At - n.Width/2, Hi: n.At + n.Width/2})
			}
		}
	}
	return out
}

// haunch gives what stands between top or foot and its rail's tenon, or the wedge beside
// it, in the stiles, mm, and whether there is a tenon.
func haunch(p *trim.Piece, e door.Edge) (room float64, has bool) {
	a := &p.Anatomy
	i := 0
	if e == door.HeadSide {
		i = len(a.Rails) - 1
	}
	lo, hi := a.Tenon(i)
	if !(lo < hi) {
		return 0, false
	}
	wedge := 0.0
	if a.Joints.Kind == door.Through {
		wedge = held(a.Joints.Wedge, 0, 100)
	}
	c := p.Door.Leaf.Corners(0)
	if e == door.HeadSide {
		return min(c.HangingHead.Y, c.ClosingHead.Y) - hi - wedge, true
	}
	return lo - max(c.HangingFoot.Y, c.ClosingFoot.Y) - wedge, true
}

// mind sets what to mind.
func (d *Dowels) mind(p *trim.Piece, ends geom.Interval) {
	a := &p.Anatomy
	wedged := a.Make == door.Framed && a.Joints.Kind == door.Through && a.Joints.Wedge > 0
	if !d.Edge.Upright() {
		if a.Make != door.Flush {
			d.Cares = append(d.Cares, OnEndGrain)
		}
		if room, has := haunch(p, d.Edge); wedged && has && room < 0 {
			d.Cares = append(d.Cares, WedgeLoose)
		}
		return
	}
	if wedged {
		d.Cares = append(d.Cares, OverWedge)
	}
	if d.Edge == door.HingeSide && len(p.Door.Hinges) > 0 {
		d.Cares = append(d.Cares, UnderHinge)
	}
	if d.Edge == door.LatchSide && a.Lock.Kind != door.NoLock {
		d.Cares = append(d.Cares, UnderLock)
	}
}
