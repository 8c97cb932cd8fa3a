package survey

import (
	"fmt"
	"math"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/survey/lsq"
)

// What is ordinary where nobody measured, mm, and how far off that may be: common
// practice, no published source, save that each gain takes half of what is to be
// let in (Noyes; Fairham; Building Trades Pocketbook).
const (
	usualRebate = 2.0 // deeper than the leaf is thick by
	usualStop   = 12.0
	usualLatch  = 1000.0
	usualClosed = 6.0
	usualPin    = 5.0
	usualOpens  = 90 * geom.Degree
)

// wish is one way to be ordinary: the terms add up to mean, ± sigma.
type wish struct {
	terms [6]term
	n     int
	mean  float64
	sigma float64
	name  int // of the assumption it stands for, -1 for none

	target float64 // what it is now to come to
	idle   bool    // nothing is left to wish
}

type term struct {
	q    int
	coef float64
}

// assumption is a thing taken for ordinary: what, and what it is taken to be; of
// a size, the quantity whose value says so. What it is of is joined on only when it
// is to be said, which few ever are.
type assumption struct {
	what, join, of string
	taken          string
	size           int // -1 for a shape
}

func (a *assumption) says() string { return a.what + a.join + a.of }

// Assumption is what was taken to be ordinary because no reading says otherwise.
type Assumption struct {
	What  string // "bow of the hinge jamb"
	Taken string // "straight"
	// Sigma is how far off that may ordinarily be, mm; a bevel's in mm per mm.
	Sigma float64
	Tilt  Tilt // of a [Fall]
}

func (a Assumption) String() string {
	return "the " + a.What + " was not measured: taken " + a.Taken
}

func (n *net) named(what, taken string, size int) int { return n.namedOf(what, "", "", taken, size) }

func (n *net) namedOf(what, join, of, taken string, size int) int {
	n.names = append(n.names, assumption{what, join, of, taken, size})
	return len(n.names) - 1
}

func (n *net) hope(name int, mean, sigma float64, terms ...term) {
	w := wish{mean: mean, sigma: sigma, name: name, n: len(terms)}
	copy(w.terms[:], terms)
	n.wishes = append(n.wishes, w)
}

// wish makes the wishes, one at least for each unknown.
func (n *net) wish() {
	if n.wishes == nil {
		n.wishes, n.names = make([]wish, 0, len(n.quantity)), make([]assumption, 0, len(n.quantity))
	}
	for id := range lines {
		n.wishLine(id)
	}
	n.wishLevels()
	n.wishFloor()
	n.wishSizes()
	n.wishHinges()
}

// wishLine wishes a line straight, and plumb, level or square.
//
// A line whose slope wanders evenly (its second derivative is noise of one
// strength all along) and that bows by b at the middle of its length l stands off
// the chord over two stretches r and s by b·4·r·s/√((r+s)·l³).
func (n *net) wishLine(id lineID) {
	spec, p := &lineSpecs[id], &n.line[id]
	long := n.size.length(spec)
	p.wishes = len(n.wishes)
	if k := len(p.at); k > 2 {
		name := -1
		if spec.bowName != "" {
			name = n.namedOf(spec.bowName, " of the ", spec.name, "straight", -1)
		}
		for i := 1; i < k-1; i++ {
			r, s := p.at[i]-p.at[i-1], p.at[i+1]-p.at[i]
			n.hope(name, 0, off(spec.bow, long, r, s), term{p.first + i, 1},
				term{p.first + i - 1, -s / (r + s)}, term{p.first + i + 1, -r / (r + s)})
		}
	}
	switch {
	case spec.lean == 0:
	case spec.leanName == "":
		n.hope(-1, 0, spec.lean*long, term{p.last(), 1}, term{p.first, -1})
	default:
		what, join, of := spec.leanName, " of the ", spec.name
		switch spec.straight {
		case "plumb", "level":
			what, join, of = spec.name, " being ", spec.leanName
		}
		n.hope(n.namedOf(what, join, of, spec.straight, -1), 0, spec.lean*long, term{p.last(), 1}, term{p.first, -1})
	}
}

// worse widens what is ordinary for lines that turn out to bow by more than far
// times as much: between the places where it was read such a line is likely the
// less even too. It tells whether any is widened further than it was.
func (n *net) worse() bool {
	const far = 3.0
	any := false
	for id := range lines {
		spec, p := &lineSpecs[id], &n.line[id]
		if len(p.at) < 3 || spec.bow == 0 {
			continue
		}
		value := func(i int) float64 { return n.quantity[p.first+i] }
		last := len(p.at) - 1
		var bow float64
		for i := 1; i < last; i++ {
			part := p.at[i] / p.at[last]
			bow = max(bow, math.Abs(value(i)-float64((1-part)*value(0))-float64(part*value(last))))
		}
		scale := bow / (far * spec.bow)
		if scale <= 1.02*max(1, p.scale) {
			continue
		}
		any = true
		for i := 1; i < last; i++ {
			n.wishes[p.wishes+i-1].sigma *= scale / max(1, p.scale)
		}
		p.scale = scale
	}
	return any
}

// off gives how far a line that bows by so much over its length stands off a chord
// at a place r from one end of it and s from the other.
func off(bow, long, r, s float64) float64 {
	return bow * 4 * r * s / sqrt((r+s)*long*long*long)
}

// bump is how far the floor in the opening ordinarily is off straight, mm.
const bump = 1.5

// between gives the variance of what a line bends between its stations about s.
func (n *net) between(id lineID, s float64) float64 {
	spec, p := &lineSpecs[id], &n.line[id]
	return bridge(p.at, s, spec.bow*max(1, p.scale), n.size.length(spec))
}

// floorBetween does so for the floor in the opening.
func (n *net) floorBetween(r float64) float64 {
	return bridge(n.floor.radii, r, bump, n.size.openingWidth)
}

func bridge(at []float64, s, bow, long float64) float64 {
	i, part := between(len(at), func(i int) float64 { return at[i] }, s)
	if part <= 0 || part >= 1 {
		return 0
	}
	d := off(bow, long, s-at[i], at[i+1]-s)
	return d * d
}

// wishLevels wishes each line the place that goes with its size.
func (n *net) wishLevels() {
	s := &n.size
	level := func(id lineID, what string, mean, sigma float64) {
		q := n.line[id].first
		n.hope(n.named(what, "as", q), mean, sigma, term{q, 1})
	}
	level(latchJamb, "width of the opening", s.openingWidth, widest)
	level(head, "height of the opening", s.openingHeight, widest)
	level(closing, "width of the leaf", s.leafWidth, widest)
	level(top, "height of the leaf", s.leafHeight, widest)

	// The head is mitred flush with the jambs.
	hf, hh, lh := &n.line[headFront], &n.line[hingeFront], &n.line[latchFront]
	const mitre = 0.3
	n.hope(-1, 0, mitre, term{hf.first, 1}, term{hh.last(), -1})
	n.hope(-1, 0, mitre, term{hf.last(), 1}, term{lh.last(), -1})

	// The latch side's rebate takes the leaf; the others are run to match.
	l := n.line[latchRebate].first
	n.hope(n.named("rebate of the latch jamb", "as", l), usualRebate, 2, term{l, 1}, term{n.scalar[thickness], -1})
	for _, id := range []lineID{hingeRebate, headRebate} {
		q := n.line[id].first
		n.hope(n.namedOf("depth", " of the ", lineSpecs[id].name, "as", q), 0, 1, term{q, 1}, term{l, -1})
	}
}

// Fall is what is taken to be partly the head's and partly the floor's, see [Tilt].
const Fall = "fall across the opening"

// floorLevel is what is taken to be level.
const floorLevel = "floor in the opening"

// FloorSwung is what is taken to be ordinary of the floor the leaf opens over.
const FloorSwung = "floor under the swing"

// wishFloor wishes the floor level and straight out from the hinge, and the same
// at all swing angles.
func (n *net) wishFloor() {
	const slope, turn = 3e-3, 4.0 // mm/mm; mm at the leaf's reach by 90°
	g := &n.floor
	k, reach := len(g.radii), n.size.openingWidth
	level := n.named(floorLevel, "level", -1)
	swung := n.named(FloorSwung, "to run on as in the opening", -1)
	for i, a := range g.angles {
		row := g.first + i*k
		for j := 1; j < k; j++ {
			r := g.radii[j]
			switch {
			case i > 0:
				part := sqrt(float64((a - g.angles[i-1]) / (90 * geom.Degree)))
				n.hope(swung, 0, turn*part*r/reach, term{row + j, 1}, term{row + j - k, -1})
			case j < k-1:
				before, after := r-g.radii[j-1], g.radii[j+1]-r
				both := before + after
				n.hope(level, 0, off(bump, reach, before, after), term{row + j, 1},
					term{row + j - 1, -after / both}, term{row + j + 1, -before / both})
			default:
				n.hope(level, 0, slope*r, term{row + j, 1}, term{row, -1})
			}
		}
	}
}

// wishAnew makes the wishes what they were to begin with, and puts the quantities
// back to the start of the search.
func (n *net) wishAnew() {
	n.names, n.wishes = n.names[:0], n.wishes[:0]
	for id := range n.line {
		n.line[id].scale = 0
	}
	copy(n.quantity, n.begin)
	n.wish()
}

func (n *net) wishSizes() {
	s := &n.size
	size := func(id scalarID, what string, mean, sigma float64) {
		q := n.scalar[id]
		n.hope(n.named(what, "as", q), mean, sigma, term{q, 1})
	}
	size(thickness, "thickness of the leaf", s.thickness, 5)
	size(stopWidth, "width of the stop", usualStop, 3)
	bevel := func(id scalarID, what string, sigma float64) {
		n.hope(n.named(what, "square", -1), 0, sigma, term{n.scalar[id], 1})
	}
	bevel(hangingTan, "bevel of the hanging edge", 0.01)
	bevel(closingTan, "bevel of the closing edge", 0.02)
	size(latchHeight, "height of the latch", min(usualLatch, s.leafHeight/2), 50)
	size(latchProud, "stand of the leaf at the latch", 0, 0.7)
}

func (n *net) wishHinges() {
	count := len(n.hinge)
	n.hingeWishes = n.hingeWishes[:0]
	for i, h := range n.hinge {
		named := hingeName(i, count)
		size := func(f field, what string) int { return n.namedOf(what, " of the ", named, "as", h[f]) }
		one := func(f field) term { return term{h[f], 1} }
		less := func(f field) term { return term{h[f], -1} }
		first := func(f field, k float64) term { return term{n.hinge[0][f], k} }

		var of hingeWishes
		of.onLeaf = len(n.wishes)
		n.hope(size(fieldLeafHeight, "place on the leaf"), n.size.leafPlace(i), 100, one(fieldLeafHeight))
		place := size(fieldJambHeight, "place on the jamb")
		gain := size(fieldLeafGain, "gain in the leaf")
		other := size(fieldJambGain, "gain in the jamb")
		closed := size(fieldClosed, "closed thickness")
		pin := size(fieldPin, "pin's distance out")
		proud := size(fieldProud, "stand of the leaf")
		of.other = len(n.wishes)
		n.hope(other, 0, 0.5, one(fieldJambGain), less(fieldLeafGain))
		of.place, of.gain = of.other+1, of.other+2
		n.hingeWishes = append(n.hingeWishes, of)
		if i == 0 {
			n.hope(place, usualLift, 4, one(fieldJambHeight), less(fieldLeafHeight))
			n.hope(gain, usualClosed/3, 0.7, one(fieldLeafGain))
			n.hope(closed, usualClosed, 1, one(fieldClosed))
			n.hope(pin, usualPin, 2, one(fieldPin))
			n.hope(proud, 0, 0.7, one(fieldProud))
		} else { // of one packet, and set by one hand
			n.hope(place, 0, 0.6, one(fieldJambHeight), less(fieldLeafHeight), first(fieldJambHeight, -1), first(fieldLeafHeight, 1))
			n.hope(gain, 0, 0.5, one(fieldLeafGain), first(fieldLeafGain, -1))
			n.hope(closed, 0, 0.3, one(fieldClosed), first(fieldClosed, -1))
			n.hope(pin, 0, 0.5, one(fieldPin), first(fieldPin, -1))
			n.hope(proud, 0, 0.5, one(fieldProud), first(fieldProud, -1))
		}
		for _, f := range []field{fieldLeafPacker, fieldJambPacker} {
			n.hope(-1, 0, 1, one(f))
		}
		n.hope(-1, usualPlate, 20, one(fieldHeight))
	}
}

// rows adds the wishes to the rows.
func (n *net) rows(rows *lsq.Rows) {
	for i := range n.wishes {
		w := &n.wishes[i]
		weight := 1 / float64(w.sigma*w.sigma)
		if w.idle {
			weight = 0
		}
		for _, t := range w.terms[:w.n] {
			n.add(rows, t.q, t.coef)
		}
		rows.End(w.target-n.is(w), weight)
	}
}

// say gives an assumption in words, its size as it came out.
func (n *net) say(a assumption, sigma float64) Assumption {
	out := Assumption{What: a.says(), Taken: a.taken, Sigma: sigma}
	if a.size >= 0 {
		out.Taken = fmt.Sprint("as ", door.Say(n.quantity[a.size]))
	}
	return out
}
