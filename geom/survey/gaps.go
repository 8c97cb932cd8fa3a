package survey

import (
	"slices"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fit"
)

// Gaps is how well the closed gaps are known. Its memory is its own.
type Gaps struct {
	Fit    fit.Fit   // of the fitted door; closed only
	Strain Uncertain // see fit.Fit
	// LatchMiss is the z distance the latch still has to go.
	LatchMiss Uncertain

	draws   *draws
	net     *net
	change  Change
	after   int // moves made for keeps before the door was so; -1 where it only may come to be
	gaps    [fit.Edges]places
	stop    [fit.FloorSide]places
	numbers int
	levers  *levered    // nil where doors were hung
	off     [][]float64 // of each number, what each draw departs
}

// places are where along an edge a gap's uncertainty was worked out: at everything
// that bends there, between which it runs on evenly.
type places struct {
	at    []float64
	first int // of the numbers
}

// Change gives the door as moves leave it, d being the door as found, which it must
// not change. It must be a pure function.
type Change func(d door.Door) door.Door

// Gaps works out how uncertain every closed gap of the door as found is, from as many
// doors as there are errors, rounded up to a power of two, to 0.05 mm or a fiftieth of
// itself; nil when the door cannot be hung.
func (r *Result) Gaps() *Gaps { return r.gaps(nil, 0) }

// GapsAfter works it out of the door as it stands after the first n moves made for
// keeps, see [AdjustMade]; nil when it cannot be hung then.
func (r *Result) GapsAfter(n int) *Gaps { return r.gaps(r.ChangeAfter(n), n) }

// ChangeAfter gives what the first n moves made for keeps do; nil where that is
// nothing.
func (r *Result) ChangeAfter(n int) Change {
	made := r.adj.hung.made
	if n <= 0 || made == nil {
		return nil
	}
	return func(d door.Door) door.Door { return made(d, n) }
}

// GapsOf works it out of a door as it may come to be; nil when that cannot be hung.
func (r *Result) GapsOf(change Change) *Gaps { return r.gaps(change, -1) }

// of gives the door a change makes of d; d itself where there is none.
func (change Change) of(d *door.Door) *door.Door {
	if change == nil {
		return d
	}
	c := change(*d)
	return &c
}

// on gives the door a change makes of the net's.
func (change Change) on(n *net) *door.Door {
	if change == nil {
		return &n.d
	}
	d := n.stand()
	return change.of(&d)
}

func (r *Result) gaps(change Change, after int) *Gaps {
	if !r.Hangs {
		return nil
	}
	a := r.adj
	g := &Gaps{net: a.net, draws: a.draw(), change: change, after: after}
	a.net.write(a.x)
	// The net's door is moved by other measures: give the fit one to keep.
	stands := a.net.stand()
	found := stands.Clone()
	door := change.of(&found)
	if change != nil && len(door.Check()) > 0 {
		return nil
	}
	fit.EvaluateClosed(&g.Fit, door)
	count := 0
	for e := fit.HingeSide; e < fit.Edges; e++ {
		g.gaps[e] = g.bends(door, e, g.Fit.Gaps[e].Range(), &count)
		if e < fit.FloorSide {
			g.stop[e] = g.bends(door, e, g.Fit.Stops[e].Range(), &count)
		}
	}
	g.numbers = count + 2
	if !g.byLevers(door) {
		g.byHanging()
	}
	return g
}

// byHanging works out what the draws depart, of every number, by hanging each.
func (g *Gaps) byHanging() {
	var f fit.Fit
	m := g.draws.measuring(g.numbers, func(out []float64) { g.measure(&f, out) })
	m.all()
	g.off = m.off
	g.sum(m.value)
}

// measure hangs the door as the net has it and reads its numbers.
func (g *Gaps) measure(f *fit.Fit, out []float64) {
	fit.EvaluateClosed(f, g.change.on(g.net))
	g.read(f, out)
}

// read gives the numbers of a fit: gaps at their places, then the strain and what the
// latch misses by.
func (g *Gaps) read(f *fit.Fit, out []float64) {
	for e := fit.HingeSide; e < fit.Edges; e++ {
		for i, at := range g.gaps[e].at {
			out[g.gaps[e].first+i] = f.Gaps[e].At(at)
		}
		if e < fit.FloorSide {
			for i, at := range g.stop[e].at {
				out[g.stop[e].first+i] = f.Stops[e].At(at)
			}
		}
	}
	out[g.numbers-2], out[g.numbers-1] = f.Strain, f.LatchMiss
}

// sum notes how well the numbers that are no gap are known.
func (g *Gaps) sum(value []float64) {
	n := g.numbers
	g.Strain = Uncertain{value[n-2], length(g.off[n-2])}
	g.LatchMiss = Uncertain{value[n-1], length(g.off[n-1])}
}

// bends gives the places of an edge at which leaf or frame has a station, and its
// ends.
func (g *Gaps) bends(d *door.Door, e fit.Edge, over geom.Interval, count *int) places {
	if over.IsEmpty() {
		return places{}
	}
	n := g.net
	at := []float64{over.Lo, over.Hi}
	add := func(s float64) {
		if over.Contains(s) {
			at = append(at, s)
		}
	}
	if e < fit.FloorSide {
		for _, s := range n.line[hingeJamb+lineID(e)].at {
			add(s)
		}
	} else {
		for _, r := range n.floor.radii {
			add(r)
		}
	}
	for _, s := range n.line[hanging+lineID(e)].at {
		add(s + g.lift(e))
	}
	if g.change != nil { // moves make bends of their own
		if e < fit.FloorSide {
			for _, s := range *profileOf(d, hingeJamb+lineID(e)) {
				add(s.At)
			}
		}
		for _, s := range *profileOf(d, hanging+lineID(e)) {
			add(s.At + g.lift(e))
		}
	}
	geom.Ascending(at)
	const apart = 10.0 // mm: told apart no better by a feeler
	at = slices.CompactFunc(at, func(a, b float64) bool { return a-b < apart && b-a < apart })
	p := places{at, *count}
	*count += len(at)
	return p
}

// lift gives how much farther a place along an edge is in the world than on the leaf.
func (g *Gaps) lift(e fit.Edge) float64 {
	if e.Upright() {
		return g.Fit.Pose.Origin.Y
	}
	return g.Fit.Pose.Origin.X
}

// At gives the gap of an edge at a place, held at the ends of its range.
func (g *Gaps) At(e fit.Edge, at float64) Uncertain {
	return g.uncertain(g.gaps[e], at, g.Fit.Gaps[e].At(at), g.bend(e, at))
}

// bend gives the variance of what the lines along a gap may bend between stations.
func (g *Gaps) bend(e fit.Edge, at float64) float64 {
	bend := g.net.between(hanging+lineID(e), at-g.lift(e))
	if e < fit.FloorSide {
		bend += g.net.between(hingeJamb+lineID(e), at)
	} else {
		bend += g.net.floorBetween(at)
	}
	return bend
}

// Stop gives the gap to a stop at a place; the floor side has none.
func (g *Gaps) Stop(e fit.Edge, at float64) Uncertain {
	if e >= fit.FloorSide {
		return Uncertain{}
	}
	bend := g.net.between(hingeFront+lineID(e), at) + g.net.between(hingeRebate+lineID(e), at)
	if e.Upright() {
		bend += g.net.between(hangingFace+lineID(e), at-g.lift(e))
	}
	return g.uncertain(g.stop[e], at, g.Fit.Stops[e].At(at), bend)
}

// Least gives the least gap of an edge and its place.
func (g *Gaps) Least(e fit.Edge) (gap Uncertain, at float64) {
	at = g.Fit.Gaps[e].LeastAt
	return g.At(e, at), at
}

// Tightest gives the edge with the least gap, that gap, and its place.
func (g *Gaps) Tightest() (e fit.Edge, gap Uncertain, at float64) {
	e = fit.HingeSide
	gap, at = g.Least(e)
	for other := e + 1; other < fit.Edges; other++ {
		if u, place := g.Least(other); u.Value < gap.Value {
			e, gap, at = other, u, place
		}
	}
	return e, gap, at
}

// weigh gives the two numbers next to a place and the second's part.
func (p *places) weigh(at float64) (i, j int, part float64) {
	k, part := between(len(p.at), func(i int) float64 { return p.at[i] }, at)
	i = p.first + k
	j = i
	if part > 0 {
		j = i + 1
	}
	return i, j, part
}

// uncertain gives a gap at a place; bend is the variance of what its lines may bend
// between their stations.
func (g *Gaps) uncertain(p places, at, value, bend float64) Uncertain {
	if len(p.at) == 0 {
		return Uncertain{Value: value}
	}
	i, j, part := p.weigh(at)
	b := g.off[j]
	for k, x := range g.off[i] {
		v := float64((1-part)*x) + float64(part*b[k])
		bend += float64(v * v)
	}
	return Uncertain{value, sqrt(bend)}
}
