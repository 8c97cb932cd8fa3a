package survey

import (
	"math"
	"slices"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/survey/lsq"
)

// net is the unknowns and how they make a door. A quantity is one number of the
// door; those the axes hold at 0 have no column among the unknowns.
type net struct {
	size     size
	d        door.Door
	line     [lines]placed
	floor    grid
	scalar   [scalars]int
	hinge    [][fields]int
	hinges   []door.Hinge // memory
	quantity []float64
	begin    []float64 // what they are before any reading has its say
	column   []int     // of each quantity, -1 when it is held
	columns  int
	names    []assumption
	wishes   []wish

	hingeWishes []hingeWishes // of each hinge
}

// apart is the least distance between two stations of a line, mm: nothing made of
// timber bends within a hand's breadth, so readings nearer to each other than that
// are of one place and check each other.
const apart = 100.0

// widest is how far in mm a size that nobody measured may be from the ordinary.
const widest = 30.0

// placed is a line's stations and the first of their quantities; the first of the
// wishes that it be straight, and how much wider than ordinary they are, if over 1.
type placed struct {
	at     []float64
	first  int
	wishes int
	scale  float64
}

// insert puts in a station, unless one is near.
func (p *placed) insert(s float64) {
	i, _ := slices.BinarySearch(p.at, s)
	if i == 0 || i == len(p.at) || s-p.at[i-1] < apart || p.at[i]-s < apart {
		return
	}
	p.at = geom.Insert(p.at, i, s)
}

// weigh calls f with each quantity that the line's value at s follows, and how much.
func (p *placed) weigh(s float64, f func(q int, w float64)) {
	if len(p.at) == 1 {
		f(p.first, 1)
		return
	}
	i := 0
	for i < len(p.at)-2 && p.at[i+1] <= s {
		i++
	}
	t := (s - p.at[i]) / (p.at[i+1] - p.at[i])
	f(p.first+i, 1-t)
	f(p.first+i+1, t)
}

// last is the quantity at the line's far end.
func (p *placed) last() int { return p.first + len(p.at) - 1 }

// grid is the floor's stations; quantities stand by rows of one angle.
type grid struct {
	radii  []float64
	angles []geom.Angle
	first  int
}

// weigh calls f with each quantity that the floor's height follows, and how much.
func (g *grid) weigh(r float64, a geom.Angle, f func(q int, w float64)) {
	i, s := between(len(g.angles), func(i int) float64 { return float64(g.angles[i]) }, float64(a))
	j, t := between(len(g.radii), func(j int) float64 { return g.radii[j] }, r)
	n := len(g.radii)
	for _, row := range [2]struct {
		i int
		w float64
	}{{i, 1 - s}, {i + 1, s}} {
		if row.w == 0 {
			continue
		}
		f(g.first+row.i*n+j, row.w*(1-t))
		if t != 0 {
			f(g.first+row.i*n+j+1, row.w*t)
		}
	}
}

// rise gives how steeply a row of heights rises with the distance.
func (g *grid) rise(heights []float64, r float64) float64 {
	j, part := between(len(g.radii), func(j int) float64 { return g.radii[j] }, r)
	if part == 0 || part == 1 {
		return 0
	}
	return (heights[j+1] - heights[j]) / (g.radii[j+1] - g.radii[j])
}

// between gives the stretch that x lies in and how far along it, held at the ends.
func between(n int, at func(int) float64, x float64) (i int, part float64) {
	if n == 1 || x <= at(0) {
		return 0, 0
	}
	if x >= at(n-1) {
		return n - 2, 1
	}
	for x >= at(i+1) {
		i++
	}
	return i, (x - at(i)) / (at(i+1) - at(i))
}

// newNet lays out the unknowns for the readings that use counts.
func newNet(readings []Reading, use []bool) *net {
	n := &net{size: sizeOf(readings, use)}
	n.quantity = make([]float64, 0, 128)
	n.start(readings, use)
	var touched [lines][]float64
	o := observer{d: &n.d, seen: func(id lineID, at float64) { touched[id] = append(touched[id], at) }}
	var radii, angles []float64
	for i := range readings {
		r := &readings[i]
		if !use[i] {
			continue
		}
		switch r.Kind {
		case FloorHeight:
			radii, angles = append(radii, r.At), append(angles, float64(r.Angle))
		case FloorSlope:
			radii, angles = append(radii, r.From, r.To), append(angles, float64(r.Angle))
		default:
			specs[r.Kind].observe(&o, r)
		}
	}
	for id := range lines {
		n.lay(id, touched[id])
		switch id {
		case head:
			n.layFloor(radii, angles)
		case bottom:
			n.layScalar(thickness)
		}
	}
	for id := range scalars {
		if id != thickness {
			n.layScalar(id)
		}
	}
	n.layHinges()
	n.begin = slices.Clone(n.quantity)
	n.column = make([]int, len(n.quantity))
	n.hold(readings, use)
	n.settle()
	n.wish()
	return n
}

// start makes the door square, plumb and of its ordinary size, its hinges and
// latch where they were read.
func (n *net) start(readings []Reading, use []bool) {
	s := &n.size
	n.d.Leaf = door.Rectangle(s.leafWidth, s.leafHeight, s.thickness)
	n.d.Frame = door.Square(s.openingWidth, s.openingHeight, s.thickness+usualRebate, usualStop)
	n.d.Latch.Height = min(usualLatch, s.leafHeight/2)
	n.d.Opens = usualOpens
	for i := range s.hinges {
		v := s.leafPlace(i)
		n.d.Hinges = append(n.d.Hinges, door.Hinge{
			JambHeight: v + usualLift, LeafHeight: v, Closed: usualClosed,
			LeafGain: usualClosed / 3, JambGain: usualClosed / 3, Pin: usualPin, Height: usualPlate,
		})
	}
	for i, r := range readings {
		if !use[i] {
			continue
		}
		put := func(leaf float64) {
			h := &n.d.Hinges[r.Hinge]
			h.LeafHeight, h.JambHeight = leaf, leaf+usualLift
		}
		switch r.Kind {
		case HingeOnLeaf:
			put(r.Value)
		case HingeFromTop:
			put(s.leafHeight - r.Value)
		case HingeOnJamb:
			put(r.Value - usualLift)
		case HingeFromHead:
			put(s.openingHeight - r.Value - usualLift)
		case LatchHeight:
			n.d.Latch.Height = r.Value
		}
	}
}

// matters gives the places of a line on which the leaf's pose hangs.
func (n *net) matters(id lineID) (at []float64) {
	switch id {
	case hingeJamb, hingeFront:
		for _, h := range n.d.Hinges {
			at = append(at, h.JambHeight)
		}
	case hanging, hangingFace:
		for _, h := range n.d.Hinges {
			at = append(at, h.LeafHeight)
		}
	case latchFront, closingFace:
		at = append(at, n.d.Latch.Height)
	}
	return at
}

// lay gives a line its stations: its two ends, where it was read, where the leaf's
// pose hangs on it, and some between where there are none for long; none nearer
// than apart.
func (n *net) lay(id lineID, touched []float64) {
	spec := &lineSpecs[id]
	long := n.size.length(spec)
	if id >= hingeRebate && id <= headRebate { // a stop bends where its front edge does, or well away
		for i, s := range touched {
			for _, f := range n.line[id-hingeRebate+hingeFront].at {
				if s-f < apart && f-s < apart {
					touched[i] = f
				}
			}
		}
	}
	p := placed{at: []float64{0, long}}
	geom.Ascending(touched)
	for _, s := range touched {
		p.insert(s)
	}
	for _, s := range n.matters(id) {
		p.insert(s)
	}
	for i := 1; i < len(p.at); i++ {
		if s, most := p.at[i]-p.at[i-1], float64(spec.fill*long)+1e-6; s > most {
			pieces := math.Ceil(s / most)
			p.insert(p.at[i-1] + s/pieces)
		}
	}
	p.first = len(n.quantity)
	o := observer{d: &n.d}
	for _, s := range p.at {
		n.quantity = append(n.quantity, o.value(id, s))
	}
	n.line[id] = p
}

// layFloor gives the floor its stations: where it was read, and the leaf's reach.
func (n *net) layFloor(radii, angles []float64) {
	const most, turn = 8, float64(10 * geom.Degree) // stations of each; the least angle between two
	reach := n.size.openingWidth
	radii = slices.DeleteFunc(radii, func(r float64) bool { return r > reach-apart && r < reach })
	n.floor.radii = thinned(append(radii, reach), most, apart)
	for i := 1; i < len(n.floor.radii) && len(n.floor.radii) < most; i++ {
		if s := n.floor.radii[i] - n.floor.radii[i-1]; s > 0.4*reach {
			n.floor.radii = geom.Insert(n.floor.radii, i, n.floor.radii[i-1]+s/math.Ceil(s/(0.4*reach)))
		}
	}
	for _, a := range thinned(append(angles, float64(90*geom.Degree)), most, turn) {
		n.floor.angles = append(n.floor.angles, geom.Angle(a))
	}
	n.floor.first = len(n.quantity)
	cells := len(n.floor.radii) * len(n.floor.angles)
	n.quantity = append(n.quantity, make([]float64, cells)...)
}

// thinned gives 0 and the others in rising order, none nearer than apart to the
// one before, no more than most.
func thinned(at []float64, most int, apart float64) []float64 {
	geom.Ascending(at)
	apart = max(apart, at[len(at)-1]/float64(most-1))
	out := []float64{0}
	for _, s := range at {
		if s-out[len(out)-1] >= apart-1e-9 {
			out = append(out, s)
		}
	}
	return out
}

func (n *net) layScalar(id scalarID) {
	n.scalar[id] = len(n.quantity)
	n.quantity = append(n.quantity, scalarOf(&n.d, id))
}

func (n *net) layHinges() {
	n.hinge = make([][fields]int, len(n.d.Hinges))
	for i := range n.d.Hinges {
		for f := range fields {
			n.hinge[i][f] = len(n.quantity)
			n.quantity = append(n.quantity, *fieldOf(&n.d.Hinges[i], f))
		}
	}
}

// hold takes the columns of what the axes pass through, of the floor under the
// hinge jamb's foot, and of packers and plates nobody saw.
func (n *net) hold(readings []Reading, use []bool) {
	held := func(q int) { n.column[q] = -1 }
	for id := range lines {
		if lineSpecs[id].foot {
			held(n.line[id].first)
		}
		if lineSpecs[id].top {
			held(n.line[id].last())
		}
	}
	for i := range n.floor.angles {
		held(n.floor.first + i*len(n.floor.radii))
	}
	for i := range n.hinge {
		for _, f := range [...]field{fieldLeafPacker, fieldJambPacker, fieldHeight} {
			held(n.hinge[i][f])
		}
	}
	for i := range readings {
		if f, ok := fieldRead[readings[i].Kind]; ok && use[i] {
			n.column[n.hinge[readings[i].Hinge][f]] = 0
		}
	}
	for q, c := range n.column {
		if c == 0 {
			n.column[q] = n.columns
			n.columns++
		}
	}
}

// fieldRead tells which of a hinge's numbers a kind of reading reads.
var fieldRead = map[Kind]field{
	HingeOnJamb: fieldJambHeight, HingeOnLeaf: fieldLeafHeight, LeafGain: fieldLeafGain, JambGain: fieldJambGain,
	LeafPacker: fieldLeafPacker, JambPacker: fieldJambPacker, HingeClosed: fieldClosed, HingePin: fieldPin,
	HingeProud: fieldProud, HingePlate: fieldHeight,
}

// direct gives the quantity that is all a reading reads, if there is one.
func (n *net) direct(r *Reading) (q int, ok bool) {
	switch r.Kind {
	case LeafThickness:
		return n.scalar[thickness], true
	case StopWidth:
		return n.scalar[stopWidth], true
	case LatchHeight:
		return n.scalar[latchHeight], true
	case LatchProud:
		return n.scalar[latchProud], true
	}
	if r.Kind == LeafBevel { // over the thickness, which is known far better than any bevel
		id := hangingTan
		if r.Side == Latch {
			id = closingTan
		}
		return n.scalar[id], true
	}
	f, ok := fieldRead[r.Kind]
	if !ok {
		return 0, false
	}
	return n.hinge[r.Hinge][f], true
}

// add adds to the row at hand that it follows the quantity by coef.
func (n *net) add(rows *lsq.Rows, q int, coef float64) {
	if c := n.column[q]; c >= 0 {
		rows.Add(c, coef)
	}
}

// unknowns gives the start of the search.
func (n *net) unknowns() []float64 {
	x := make([]float64, n.columns)
	for q, c := range n.column {
		if c >= 0 {
			x[c] = n.quantity[q]
		}
	}
	return x
}

// settle gives the door its stations, so that [net.write] has only to fill in
// values.
func (n *net) settle() {
	for id := range lines {
		p := make(geom.Profile, len(n.line[id].at))
		for i, s := range n.line[id].at {
			p[i].At = s
		}
		if id >= hingeRebate && id <= headRebate {
			front := *profileOf(&n.d, id-hingeRebate+hingeFront)
			p = front.Plus(p)
		}
		*profileOf(&n.d, id) = p
	}
	g := &n.floor
	n.d.Floor = door.Floor{Radii: g.radii, Angles: g.angles, Heights: make([][]float64, len(g.angles))}
	for i := range g.angles {
		n.d.Floor.Heights[i] = make([]float64, len(g.radii))
	}
}

// stand gives the door, sharing all but the hinges. A gain that came out below
// nothing is the same as packing there, which is how it is given: a gain read as 0 is
// as likely to come out a hair below as above.
func (n *net) stand() door.Door {
	d := n.d
	n.hinges = append(n.hinges[:0], d.Hinges...)
	d.Hinges = n.hinges
	for i := range d.Hinges {
		h := &d.Hinges[i]
		letIn(&h.LeafGain, &h.LeafPacker)
		letIn(&h.JambGain, &h.JambPacker)
	}
	return d
}

// letIn keeps gain and packer of a hinge above nothing, their difference being all
// that counts.
func letIn(gain, packer *float64) {
	if low := min(*gain, *packer); low < 0 {
		*gain -= low
		*packer -= low
	}
}

// hangs tells whether the door passes its check.
func (n *net) hangs() bool {
	d := n.stand()
	return len(d.Check()) == 0
}

// write makes the door what the unknowns say.
func (n *net) write(x []float64) {
	for q, c := range n.column {
		if c >= 0 {
			n.quantity[q] = x[c]
		}
	}
	for id := range lines {
		p := *profileOf(&n.d, id)
		l := &n.line[id]
		if id < hingeRebate || id > headRebate {
			for i := range p {
				p[i].Value = n.quantity[l.first+i]
			}
			continue
		}
		front := *profileOf(&n.d, id-hingeRebate+hingeFront)
		for i := range p {
			p[i].Value = front.At(p[i].At)
			l.weigh(p[i].At, func(q int, w float64) { p[i].Value -= float64(w * n.quantity[q]) })
		}
	}
	for i, row := range n.d.Floor.Heights {
		copy(row, n.quantity[n.floor.first+i*len(row):])
	}
	for id := range scalars {
		setScalar(&n.d, id, n.quantity[n.scalar[id]])
	}
	for i := range n.d.Hinges {
		for f := range fields {
			*fieldOf(&n.d.Hinges[i], f) = n.quantity[n.hinge[i][f]]
		}
	}
}
