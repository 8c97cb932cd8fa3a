package survey

import (
	"math"

	"leafwright/geom"
	"leafwright/geom/fit"
	"leafwright/geom/survey/lsq"
)

// Binds is the chance that the closed gap of an edge is below zero anywhere along it.
func (g *Gaps) Binds(e fit.Edge) float64 { return g.Below(e, g.Fit.Gaps[e].Range(), 0) }

// Below is the chance that the closed gap of an edge is below the limit, mm, anywhere
// in a stretch of it: no less than at the place where it is likeliest, no more than
// the chances of all places together. 0 for a stretch without a gap.
//
// The gap's errors at the places looked at are taken as jointly normal. One error
// they share, the whole error of the place likeliest to be below, is left open: the
// rest, in doors of a fixed set, evenly spread, tells between which two sizes of it
// the gap is clear everywhere, and the normal distribution how likely that is; what is
// told is the mean over the set.
func (g *Gaps) Below(e fit.Edge, over geom.Interval, limit float64) float64 {
	over = g.Fit.Gaps[e].Range().Intersect(over)
	if over.IsEmpty() {
		return 0
	}
	b := g.along(e, over, limit)
	if b.worst < 0 {
		return 0
	}
	b.sort()
	b.times = lattice(sharedMost + len(b.room))
	least := b.room[b.worst].Below(0)
	var clear float64
	for s := range spread {
		lo, hi := b.between(s)
		if lo < hi {
			clear += normal(hi) - normal(lo)
		}
	}
	return max(least, min(b.most, 1-clear/spread))
}

// below is what it takes to tell how likely gaps at several places are below a limit.
type below struct {
	room  []Uncertain // what each gap has to spare
	off   [][]float64 // what each draw departs from it
	own   []float64   // the standard deviation of what each errs by alone
	worst int         // the likeliest to be below; -1 when there is none
	most  float64     // all chances together

	times  []int
	shared [][]float64 // by error, what it does to each place; the first is the worst place's own
}

// looks is how many places at most lie between two of a gap's bends.
const looks = 2

// along gathers the places: where the gap bends, its least place, and some between.
func (g *Gaps) along(e fit.Edge, over geom.Interval, limit float64) *below {
	b := &below{worst: -1}
	p := &g.gaps[e]
	curve := &g.Fit.Gaps[e].Curve
	_, leastAt, _, _ := curve.Within(over).Extremes()
	at := []float64{over.Lo, over.Hi, leastAt}
	for i, s := range p.at {
		if over.Contains(s) {
			at = append(at, s)
		}
		if i > 0 {
			for k := range looks {
				m := p.at[i-1] + (s-p.at[i-1])*float64(k+1)/(looks+1)
				if over.Contains(m) {
					at = append(at, m)
				}
			}
		}
	}
	geom.Ascending(at)
	var likeliest float64
	for i, s := range at {
		if !(over.Contains(s)) || i > 0 && s-at[i-1] < 1 {
			continue
		}
		bend := g.bend(e, s)
		room := g.uncertain(*p, s, curve.At(s)-limit, bend)
		off := make([]float64, len(g.off[p.first]))
		k, j, part := p.weigh(s)
		for d := range off {
			off[d] = float64((1-part)*g.off[k][d]) + float64(part*g.off[j][d])
		}
		chance := room.Below(0)
		if b.worst < 0 || chance > likeliest || chance == likeliest && room.Value < b.room[b.worst].Value {
			b.worst, likeliest = len(b.room), chance
		}
		b.most += chance
		b.room, b.off, b.own = append(b.room, room), append(b.off, off), append(b.own, sqrt(bend))
	}
	return b
}

// sort takes the errors of the places apart into shared ones that have nothing to do
// with each other, the worst place's own first and then where most is left, and what
// each has alone (a Cholesky factor with pivots).
func (b *below) sort() {
	const slight = 1e-4 // mm², of variance left
	n := len(b.room)
	left := make([]float64, n)
	for i := range left {
		left[i] = lsq.Dot(b.off[i], b.off[i])
	}
	pivot := b.worst
	for len(b.shared) < sharedMost && left[pivot] > slight {
		root := sqrt(left[pivot])
		c := make([]float64, n)
		for i := range c {
			v := lsq.Dot(b.off[i], b.off[pivot])
			for _, o := range b.shared {
				v -= float64(o[i] * o[pivot])
			}
			c[i] = v / root
			left[i] -= float64(c[i] * c[i])
		}
		b.shared = append(b.shared, c)
		left[pivot] = 0
		for i, v := range left {
			if v > left[pivot] {
				pivot = i
			}
		}
	}
	for i, v := range left {
		b.own[i] = sqrt(float64(b.own[i]*b.own[i]) + max(0, v))
	}
}

// between gives, in the s-th door of the set, between which sizes of the first
// shared error the gap is nowhere below the limit.
func (b *below) between(s int) (lo, hi float64) {
	lo, hi = -9, 9 // no error is larger
	for i := range b.room {
		spare := b.room[i].Value
		for k := 1; k < len(b.shared); k++ {
			spare += float64(b.shared[k][i] * b.even(s, k))
		}
		spare += float64(b.own[i] * b.even(s, sharedMost+i))
		var slope float64
		if len(b.shared) > 0 {
			slope = b.shared[0][i]
		}
		switch {
		case slope > 0:
			lo = max(lo, -spare/slope)
		case slope < 0:
			hi = min(hi, -spare/slope)
		case spare < 0:
			return 0, 0
		}
	}
	return lo, hi
}

// spread is how many doors there are in the set, a prime, and sharedMost the most
// errors told apart as shared.
const (
	spread     = 251
	sharedMost = 8
)

// lattice gives so many errors their multiples over the set: the powers of 6, a
// primitive root of the prime, so that each error takes each of its sizes once and
// no two go together.
func lattice(errors int) []int {
	times := make([]int, errors)
	t := 1
	for k := range times {
		times[k] = t
		t = t * 6 % spread
	}
	return times
}

// even gives the k-th error of the s-th door of the set, in standard deviations.
func (b *below) even(s, k int) float64 { return quantiles[(s*b.times[k]+37*k)%spread] }

// quantiles are the middles of as many equal parts of the normal distribution, found
// by Newton's steps.
var quantiles = func() (q [spread]float64) {
	x := -2.9
	for i := range spread / 2 {
		p := (float64(i) + 0.5) / spread
		for range 7 {
			x -= (normal(x) - p) / float64(decay(x*x/2)/math.Sqrt(2*math.Pi))
		}
		q[i], q[spread-1-i] = x, -x
	}
	return q
}()
