package survey

import (
	"math"

	"leafwright/geom/fit"
)

// Tilt is a fall across the opening of which nothing tells whether it is the head's or
// the floor's: heights give their sum alone.
type Tilt struct {
	Fall float64 // by how much, mm, the opening is lower at the latch side; below 0 higher
	Head float64 // what of it was taken to be the head's
}

// tilted is from how much on, mm, a floor's share of a fall is worth a level.
const tilted = 1.0

// Tilt gives the fall there is no telling of, and whether there is any worth a word.
func (r *Result) Tilt() (t Tilt, is bool) { return r.adj.tilt() }

func (a *adjustment) tilt() (t Tilt, is bool) {
	n := a.net
	if len(n.size.missing) > 0 || a.sol.Rows.Len() == 0 {
		return t, false
	}
	n.write(a.x)
	k := len(n.floor.radii)
	far := n.floor.first + k - 1
	floor := n.quantity[far] - n.quantity[n.floor.first]
	p := &n.line[head]
	t.Head = n.quantity[p.first] - n.quantity[p.last()]
	t.Fall = t.Head + floor
	c := n.column[far]
	if c < 0 || math.Abs(floor) < tilted || floor*t.Fall < 0 {
		return t, false
	}
	clear(a.half)
	a.half[c] = 1
	a.pull(a.spare, a.half)
	return t, a.variance(a.spare) >= tilted*tilted
}

// Levelled gives what a level on the floor would settle where a fall may be the head's
// or the floor's, see [Result.Tilt]; false where there is no such fall.
func (g *Gaps) Levelled() (Advice, bool) {
	a := g.draws.adj
	if _, is := a.tilt(); !is {
		return Advice{}, false
	}
	for _, r := range a.candidates() {
		if r.Kind == FloorSlope && r.Angle == 0 {
			return g.most([]Reading{r})
		}
	}
	return Advice{}, false
}

// most gives what a reading settles most, of the gaps at the ends of head and floor.
func (g *Gaps) most(of []Reading) (best Advice, found bool) {
	for e := fit.HeadSide; e <= fit.FloorSide; e++ {
		over := g.Fit.Gaps[e].Range()
		if over.IsEmpty() {
			continue
		}
		for _, at := range [2]float64{over.Lo, over.Hi} {
			a, is := g.best(e, at, of, false)
			if is && (!found || a.Then/a.Now.Sigma < best.Then/best.Now.Sigma) {
				best, found = a, true
			}
		}
	}
	return best, found
}
