package survey

import (
	"leafwright/geom/fit"
	"leafwright/geom/survey/lsq"
)

// Advice is the one reading that would best settle a gap.
type Advice struct {
	Reading Reading  // a template: its places, its instrument's sigma, no value
	Again   bool     // it was taken already, and is worth taking a second time by itself
	Edge    fit.Edge // the gap it is for
	At      float64  // its place, mm
	Now     Uncertain
	Then    float64 // the gap's standard deviation with the reading, mm
}

// Margin is what would be written behind ± with the reading.
func (a Advice) Margin() float64 { return Uncertain{Sigma: a.Then}.Margin() }

// worth is the least part of a gap's standard deviation that a reading must take
// away to be worth taking.
const worth = 0.03

// thinnest is the least gap in mm that a feeler goes into.
const thinnest = 0.2

// NextForTightest gives the reading that would most reduce the uncertainty of the
// tightest closed gap, be it one not taken yet or one to be taken again; false when
// none is worth taking.
func (g *Gaps) NextForTightest() (Advice, bool) {
	e, _, at := g.Tightest()
	return g.Next(e, at)
}

// Next does so for the gap of an edge at a place.
func (g *Gaps) Next(e fit.Edge, at float64) (Advice, bool) {
	return g.best(e, at, g.draws.adj.candidates(), true)
}

// best gives the best of some readings not taken yet, and if asked of those to be taken
// with a feeler or a second time.
func (g *Gaps) best(e fit.Edge, at float64, of []Reading, more bool) (Advice, bool) {
	a := g.draws.adj
	now := g.At(e, at)
	best := Advice{Edge: e, At: at, Now: now, Then: now.Sigma * (1 - worth)}
	found := false
	if !(now.Sigma > 0) {
		return best, false
	}
	better := func(r Reading, again bool, then float64) {
		if then < best.Then {
			r.Value = 0
			best.Reading, best.Again, best.Then, found = r, again, then, true
		}
	}
	if more && a.hanging && g.after >= 0 && now.Value >= thinnest { // the leaf is at hand: a feeler in the gap itself
		r := Reading{Kind: GapRead, Side: SideOf(e), At: at, After: g.after}
		v, own := float64(now.Sigma*now.Sigma), SigmaOf(r)
		better(r, a.taken(&r), own*sqrt(v/(v+float64(own*own))))
	}
	u := a.renewal()
	g.follows(u.g, e, at)
	a.sol.Factor.Solve(u.z, u.g)
	bent := float64(now.Sigma*now.Sigma) - u.with(nil, 1) // what is not straight about the gap stays
	var row lsq.Rows
	o := observer{d: &a.net.d, net: a.net, rows: &row}
	try := func(r Reading, again bool) {
		row.Reset()
		r.Value = specs[r.Kind].observe(&o, &r)
		row.End(0, 1)
		row.Scatter(u.j, 0, 1)
		better(r, again, sqrt(max(0, bent)+u.with(u.j, SigmaOf(r))))
	}
	for _, r := range of {
		try(r, false)
	}
	for i := range a.readings {
		if r := a.readings[i]; more && a.use[i] && a.judged[i].State == Used && !specs[r.Kind].hung {
			try(r, true)
		}
	}
	return best, found
}

// follows gives how the gap follows each unknown: by levers where those tell the truth,
// else by hanging the door for each.
func (g *Gaps) follows(slope []float64, e fit.Edge, at float64) {
	n := g.net
	if g.levers != nil {
		g.levers.lever.row(&g.levers.rows, &Reading{Kind: GapRead, Side: SideOf(e), At: at})
		copy(slope, g.levers.lever.dense)
		return
	}
	var f fit.Fit
	_, slopes := n.differ(g.draws.adj.x, 1, func(out []float64) {
		fit.EvaluateClosed(&f, g.change.on(n))
		out[0] = f.Gaps[e].At(at)
	})
	for k := range slope {
		slope[k] = slopes[k][0]
	}
}

// renewal tells what the variance of g·x would be with one reading j more: N' is
// N + j·jᵀ/σ², so N'⁻¹·v is N⁻¹·v − p·(p·v)/(σ² + j·p), p = N⁻¹·j, in closed form.
type renewal struct {
	a      *adjustment
	g, z   []float64 // z = N⁻¹·g
	j, p   []float64
	list   pulled // (N'⁻¹P)^k·N'⁻¹·g
	wishes pulled // P times the same
}

func (a *adjustment) renewal() *renewal {
	n := len(a.x)
	vec := func() []float64 { return make([]float64, n) }
	return &renewal{a, vec(), vec(), vec(), vec(), newPulled(n), newPulled(n)}
}

// with gives the variance of g·x with the reading j of standard deviation sigma, or
// with none. With q_k = g·(N'⁻¹P)^k·N'⁻¹·g it is 2·Σ q_k up to times less Σ q_k up to
// 2·times − 1, see [adjustment.variance].
func (u *renewal) with(j []float64, sigma float64) float64 {
	f := &u.a.sol.Factor
	var v float64
	if j != nil {
		f.Solve(u.p, j)
		v = float64(sigma*sigma) + lsq.Dot(j, u.p)
	}
	renew := func(z, of []float64) { // z = N⁻¹·of, to N'⁻¹·of
		if j == nil {
			return
		}
		k := lsq.Dot(u.p, of) / v
		for i := range z {
			z[i] -= float64(k * u.p[i])
		}
	}
	copy(u.list[0], u.z)
	renew(u.list[0], u.g)
	for k := 1; k < times; k++ {
		u.a.wishful(u.wishes[k-1], u.list[k-1])
		f.Solve(u.list[k], u.wishes[k-1])
		renew(u.list[k], u.wishes[k-1])
	}
	var sum float64
	for k := range 2*times - 1 {
		if k < times {
			sum += lsq.Dot(u.g, u.list[k])
		} else {
			sum -= lsq.Dot(u.list[times-1], u.wishes[k-times])
		}
	}
	return max(0, sum)
}

// candidates gives the readings worth thinking of that were not taken yet.
func (a *adjustment) candidates() []Reading {
	var out []Reading
	for _, r := range Card(a.net.size.openingWidth, a.net.size.openingHeight, a.net.size.hinges) {
		if !a.taken(&r) {
			out = append(out, r)
		}
	}
	return out
}

// taken tells whether a reading was taken already: of a thing that has one place
// only, anywhere; else near by.
func (a *adjustment) taken(r *Reading) bool {
	const there = 60.0 // mm
	only := specs[r.Kind].Needs&NeedAt == 0
	for i := range a.readings {
		q := &a.readings[i]
		if a.use[i] && (q.same(r, there) || only && q.Kind == r.Kind && q.Side == r.Side && q.Hinge == r.Hinge) {
			return true
		}
	}
	return false
}
