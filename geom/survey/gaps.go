package survey

import (
	"slices"

	"leafwright/geom"
	"leafwright/geom/fit"
)

// Gaps is how well the closed gaps are known. Its memory is its own.
type Gaps struct {
	Fit    fit.Fit   // of the fitted door; closed only
	Strain Uncertain // see fit.Fit
	// LatchMiss is the z distance the latch still has to go.
	LatchMiss Uncertain

	draws *draws
	net   *net
	gaps  [fit.Edges]places
	stop  [fit.FloorSide]places
	off   [][]float64 // of each number, what each draw departs
}

// places are where along an edge a gap's uncertainty was worked out: at everything
// that bends there, between which it runs on evenly.
type places struct {
	at    []float64
	first int // of the numbers
}

// Gaps works out how uncertain every closed gap is, by hanging as many doors as
// there are errors, rounded up to a power of two; nil when the door cannot be hung.
func (r *Result) Gaps() *Gaps {
	if !r.Hangs {
		return nil
	}
	a := r.adj
	g := &Gaps{net: a.net, draws: a.draw()}
	a.net.write(a.x)
	fit.EvaluateClosed(&g.Fit, &a.net.d)
	count := 0
	for e := fit.HingeSide; e < fit.Edges; e++ {
		g.gaps[e] = g.bends(e, g.Fit.Gaps[e].Range(), &count)
		if e < fit.FloorSide {
			g.stop[e] = g.bends(e, g.Fit.Stops[e].Range(), &count)
		}
	}
	var f fit.Fit
	var value []float64
	value, g.off = g.draws.measure(count+2, func(out []float64) {
		fit.EvaluateClosed(&f, &a.net.d)
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
		out[count], out[count+1] = f.Strain, f.LatchMiss
	})
	g.Strain = Uncertain{value[count], length(g.off[count])}
	g.LatchMiss = Uncertain{value[count+1], length(g.off[count+1])}
	// The fit's door is the net's, which other measures move: give it one to keep.
	door := r.Door.Clone()
	fit.EvaluateClosed(&g.Fit, &door)
	return g
}

// bends gives the places of an edge at which leaf or frame has a station, and its
// ends.
func (g *Gaps) bends(e fit.Edge, over geom.Interval, count *int) places {
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
	bend := g.net.between(hanging+lineID(e), at-g.lift(e))
	if e < fit.FloorSide {
		bend += g.net.between(hingeJamb+lineID(e), at)
	} else {
		bend += g.net.floorBetween(at)
	}
	return g.uncertain(g.gaps[e], at, g.Fit.Gaps[e].At(at), bend)
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

// Swing is how well the clearances through the swing are known.
type Swing struct {
	Edges                   [fit.Edges]Uncertain // the least clearance of each edge, closed to fully open
	ClearWidth, ClearToStop Uncertain
}

// Swing works that out, by swinging as many doors as [Result.Gaps] hangs: by far the
// dearest measure. False when the door cannot be hung.
func (r *Result) Swing() (Swing, bool) {
	if !r.Hangs {
		return Swing{}, false
	}
	a := r.adj
	const count = int(fit.Edges) + 2
	var f fit.Fit
	value, off := a.draw().measure(count, func(out []float64) {
		fit.Evaluate(&f, &a.net.d)
		for e := range fit.Edges {
			out[e] = f.Swing[e].Least
		}
		out[fit.Edges], out[fit.Edges+1] = f.ClearWidth, f.ClearToStop
	})
	number := func(i int) Uncertain { return Uncertain{value[i], length(off[i])} }
	var w Swing
	for e := range w.Edges {
		w.Edges[e] = number(e)
	}
	w.ClearWidth, w.ClearToStop = number(count-2), number(count-1)
	return w, true
}
