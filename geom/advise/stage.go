package advise

import (
	"math"

	"leafwright/geom"
	"leafwright/geom/advise/lp"
	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
	"leafwright/geom/survey"
	"leafwright/geom/trim"
)

// cuts tells whether an amount of the unknown cannot be put back.
func (u *unknown) cuts() bool { return u.sort == offEnd || u.sort == offAt || u.sort == steeper }

// stage parts a plan in two where its cuts, done at once, could go too far: first as
// much as is safe with everything that can be undone, so that no gap is above its most
// but with the chance borne; then, the gaps having been read, the rest.
func (w *Work) stage(p *Plan, m *model) {
	final := append([]float64(nil), m.x...)
	var cut []int
	for j := range m.use {
		if m.unknown(j).cuts() && final[j] > nothing {
			cut = append(cut, j)
		}
	}
	if len(cut) == 0 {
		return
	}
	once := w.atOnce(m, cut, final)
	first, rest := m.x, make([]float64, len(final))
	left := 0.0
	for k, j := range cut {
		first[j] = min(final[j], m.step/2*math.Floor(2*once[k]/m.step+nothing))
		rest[j] = final[j] - first[j]
		left += rest[j]
	}
	if left <= nothing {
		copy(m.x, final)
		return
	}
	one := w.moves(m)
	m.x = rest
	two := w.laterBevel(w.moves(m), p.Moves)
	m.x = final
	w.judged(w.try(one))
	p.Stages = []Stage{{Moves: one, Read: Offering(&w.tries)}, {Moves: two}}
}

// laterBevel gives a later bevel the angle it has in the end, not that of its own
// amount.
func (w *Work) laterBevel(later, all []trim.Move) []trim.Move {
	for i := range later {
		if later[i].Kind != trim.Bevel {
			continue
		}
		for k := range all {
			if all[k].Kind == trim.Bevel {
				later[i].Angle = all[k].Angle
			}
		}
	}
	return later
}

// kept is the part of the allowance for errors that a program at least keeps where
// there is room for all of it.
const kept = 0.9

// atOnce gives how much of each cut can be done at once.
func (w *Work) atOnce(m *model, cut []int, final []float64) []float64 {
	n := len(cut)
	cost, lo, hi := make([]float64, n), make([]float64, n), make([]float64, n)
	for k, j := range cut {
		cost[k], hi[k] = -1, final[j]
		m.x[j] = 0
	}
	s := lp.New(cost, lo, hi)
	for i := range w.places {
		p := &w.places[i]
		if p.subject != judge.ClosedGap || math.IsInf(p.hi, 1) {
			continue
		}
		// Before the leaf is offered up the chance is each place's: more caution leaves a
		// leaf that does not go in, and gaps that cannot be read.
		none, room := m.gap(i), w.z*m.sigma[i]
		if w.p.Offered {
			room = kept * m.allow[i]
		}
		a := make([]float64, n)
		widens := false
		for k, j := range cut {
			u := m.unknown(j)
			a[k] = u.sign * w.column(u)[i]
			widens = widens || a[k] > 1e-3
		}
		if widens {
			// A place that is too wide before anything is cut must not become wider.
			s.AddRow(a, math.Inf(-1), max(p.hi-room-none, 0))
		}
	}
	out := make([]float64, n)
	if s.Solve() == lp.Optimal {
		for k := range out {
			out[k] = s.X(k)
		}
	}
	return out
}

// inset is how far from a corner a feeler is put, mm.
const inset = 60.0

// Offering gives the gaps worth reading once a leaf hangs, as templates: along every
// edge, upright ones at more places, those where the fit has the least gap first.
func Offering(f *fit.Fit) (out []survey.Reading) {
	var gaps []float64
	for e := range door.Edges {
		over := f.Gaps[e].Range()
		if over.Length() < 3*inset {
			continue
		}
		over.Lo += inset
		over.Hi -= inset
		n := 3
		if e.Upright() {
			n = 5
		}
		for k := range n {
			at := math.Round(over.Lo + float64(over.Length()*float64(k))/float64(n-1))
			gap := f.Gaps[e].At(at)
			i := len(gaps)
			for i > 0 && gaps[i-1] > gap {
				i--
			}
			gaps, out = append(gaps, 0), append(out, survey.Reading{})
			copy(gaps[i+1:], gaps[i:])
			copy(out[i+1:], out[i:])
			gaps[i], out[i] = gap, survey.Reading{Kind: survey.GapRead, Side: survey.SideOf(e), At: at}
		}
	}
	return out
}

// After gives the problem that is left when moves have been made, the leaf offered up
// and gaps read: the shapes put right by what was read, which is then known as well as
// a feeler tells. Readings of other kinds are passed over. The problem is not changed.
func (p *Problem) After(moves []trim.Move, read []survey.Reading) *Problem {
	q := *p
	q.Offered = true
	q.Piece, _ = trim.All(p.Piece, moves)
	if len(q.Piece.Door.Check()) > 0 {
		return &q
	}
	q.Piece.Door = q.Piece.Door.Clone()
	w := Start(&q)
	if p.Sigma != nil {
		s := *p.Sigma
		for e := range door.Edges { // the hand was off by as much again
			s.Gap[e] = worse(s.Gap[e], handOften*p.hand())
		}
		q.Sigma = &s
	}
	for e := range door.Edges {
		w.putRight(e, read)
	}
	return &q
}

// handOften is how many times its error the hand is off by at an edge when moves have
// been made: at the hinges and at the edge itself.
const handOften = 1.5

// worse gives how well a gap is known when an error is added.
func worse(known geom.Profile, by float64) geom.Profile {
	out := make(geom.Profile, len(known))
	for i, s := range known {
		out[i] = geom.Station{At: s.At, Value: root(float64(s.Value*s.Value) + float64(by*by))}
	}
	return out
}

// ordinaryBow is what an edge's line may bow, mm, one sigma, between two places
// bowOver mm apart (common practice, no published source).
const (
	ordinaryBow = 0.15
	bowOver     = 700.0
	noFeeler    = 0.05 // mm: the thinnest blade
	halfNormal  = 0.6  // of a normal error's sigma, where only one half of it is left
)

// putRight moves one line so that the gap along the edge is what was read.
func (w *Work) putRight(e door.Edge, read []survey.Reading) {
	d := &w.p.Piece.Door
	fit.EvaluateClosed(&w.hung, d)
	var by, known geom.Profile
	for _, r := range read {
		if r.Kind != survey.GapRead || r.Side != survey.SideOf(e) || len(w.hung.Gaps[e].Pieces) == 0 {
			continue
		}
		now := w.hung.Gaps[e].At(r.At)
		sigma := survey.SigmaOf(r)
		if r.Value <= noFeeler && now < r.Value { // no feeler goes in, which is no more than was known
			by = insert(by, geom.Station{At: r.At})
			if w.p.Sigma != nil {
				sigma = halfNormal * held(w.p.Sigma.Gap[e], r.At)
			}
			known = insert(known, geom.Station{At: r.At, Value: sigma})
			continue
		}
		weight := 1.0
		if w.p.Sigma != nil {
			before := held(w.p.Sigma.Gap[e], r.At)
			weight = float64(before*before) / (float64(before*before) + float64(sigma*sigma))
			sigma *= root(weight)
		}
		by = insert(by, geom.Station{At: r.At, Value: weight * (r.Value - now)})
		known = insert(known, geom.Station{At: r.At, Value: sigma})
	}
	if len(by) == 0 {
		return
	}
	lift := w.hung.Pose.Origin.X
	if e.Upright() {
		lift = w.hung.Pose.Origin.Y
	}
	leaf := make(geom.Profile, len(by))
	for i, s := range by {
		leaf[i] = geom.Station{At: s.At - lift, Value: s.Value}
	}
	switch e {
	case door.HingeSide: // the edge moves, and what the hinges hold stays where it is
		d.Leaf.Hanging = plus(d.Leaf.Hanging, leaf)
		for i := range d.Hinges {
			d.Hinges[i].Closed += held(leaf, d.Hinges[i].LeafHeight)
		}
	case door.LatchSide:
		d.Frame.LatchJamb = plus(d.Frame.LatchJamb, by)
	case door.HeadSide:
		d.Frame.Head = plus(d.Frame.Head, by)
	default:
		d.Leaf.Bottom = plus(d.Leaf.Bottom, leaf)
	}
	if w.p.Sigma != nil {
		w.p.Sigma.Gap[e] = bowed(known, w.p.Sigma.Gap[e])
	}
}

// bowed gives how well a gap is known between the places it was read at: worse by
// what the line may bow, but no worse than before.
func bowed(known, before geom.Profile) geom.Profile {
	out := geom.Profile{known[0]}
	for i := 1; i < len(known); i++ {
		a, b := known[i-1], known[i]
		part := (b.At - a.At) / bowOver
		bow := ordinaryBow * part * part
		mid := (a.At + b.At) / 2
		s := (a.Value + b.Value) / 2
		out = append(out, geom.Station{At: mid, Value: min(max(s, held(before, mid)), root(float64(s*s)+float64(bow*bow)))}, b)
	}
	return out
}

// insert puts a station in its place; of two at one place the later holds.
func insert(p geom.Profile, s geom.Station) geom.Profile {
	i := 0
	for i < len(p) && p[i].At < s.At-door.ApartLeast {
		i++
	}
	if i < len(p) && p[i].At <= s.At+door.ApartLeast {
		p[i].Value = s.Value
		return p
	}
	p = append(p, geom.Station{})
	copy(p[i+1:], p[i:])
	p[i] = s
	return p
}

// plus gives p raised by q, which is held level beyond its ends, with the bends of
// both but for q's that come too near to p's own.
func plus(p, q geom.Profile) geom.Profile {
	var out geom.Profile
	for _, s := range p {
		out = append(out, geom.Station{At: s.At, Value: s.Value + held(q, s.At)})
	}
	for _, s := range q {
		near := false
		for _, o := range p {
			near = near || abs(o.At-s.At) < 3*door.ApartLeast
		}
		if !near {
			out = insert(out, geom.Station{At: s.At, Value: p.At(s.At) + s.Value})
		}
	}
	return out
}
