package advise

import (
	"math"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
	"leafwright/geom/survey"
	"leafwright/geom/trim"
)

// cuts tells whether an amount of the unknown cannot be put back.
func (u *unknown) cuts() bool { return u.sort == offEnd || u.sort == offAt || u.sort == steeper }

// stage parts a plan in two where its cuts, done at once, could go too far: first all
// that can be put back, and every cut but what is held back along its edge, so that no
// gap is above its most but with the chance borne; then, the gaps having been read, the
// rest. What may prove needless once they are read waits till then.
func (w *Work) stage(p *Plan, m *model) {
	all := m.amounts()
	one, two := all, amounts{stations: all.stations}
	var clipped [door.Edges]bool
	staged := false
	for e := range door.Edges {
		back := w.heldBack(m, e)
		glued := some(all.strip[e][:])
		packed := e < door.FloorSide && (abs(all.jamb[e][0]) > nothing || abs(all.jamb[e][1]) > nothing)
		if !w.p.Offered && (glued || packed) {
			// Nothing is glued on, and no lining touched, before it was seen how the leaf hangs.
			staged = true
			if glued {
				one.strip[e], two.strip[e] = [2]float64{}, all.strip[e]
				one.off[e], two.off[e] = [2]float64{}, all.off[e]
				back = 0
			}
			if packed {
				one.jamb[e], two.jamb[e] = [2]float64{}, all.jamb[e]
			}
		}
		if back <= nothing {
			continue
		}
		staged = true
		for end, x := range all.off[e] {
			one.off[e][end] = max(0, x-back)
			two.off[e][end] = min(x, back)
			clipped[e] = clipped[e] || x < back && max(all.off[e][0], all.off[e][1]) > back
		}
		for k, x := range all.at[e] {
			one.at[e][k] = max(0, x-back)
			two.at[e][k] = min(x, back)
			two.scribed[e] = two.scribed[e] || x > 0
		}
		one.scribed[e] = some(one.at[e][:])
	}
	if !staged {
		return
	}
	first, then := w.write(one, m.step), w.write(two, m.step)
	for i := range first {
		if e := first[i].Edge; clipped[e] && (first[i].Kind == trim.Plane || first[i].Kind == trim.Cut) {
			first[i].Kind = trim.Plane
			w.setDown(&first[i], all.off[e])
		}
	}
	for i := range then {
		if e := then[i].Edge; clipped[e] && (then[i].Kind == trim.Plane || then[i].Kind == trim.Cut) {
			then[i] = w.leftOver(e, all.off[e], max(then[i].First, then[i].Last))
		}
	}
	w.judged(w.try(first))
	p.Stages = []Stage{{Moves: first, Read: append(Offering(&w.tries), w.stopsInDoubt()...)}, {Moves: then}}
}

// stopsInDoubt gives the gaps to the stops that are worth reading once a leaf hangs, as
// templates: at either end of a stop, where that gap may be out of its limits.
func (w *Work) stopsInDoubt() (out []survey.Reading) {
	const likely = 3.0 // standard deviations
	l := w.p.Wanted.Stop
	for e := range door.FloorSide {
		gap := &w.tries.Stops[e]
		over := gap.Range()
		if over.Length() < 3*inset {
			continue
		}
		for _, at := range [2]float64{math.Round(over.Lo + inset), math.Round(over.Hi - inset)} {
			s := likely * held(w.p.Sigma.Stop[e], at)
			if gap.At(at)-s < max(0, l.Least) || gap.At(at)+s > upper(l) {
				out = append(out, survey.Reading{Kind: survey.StopGap, Side: survey.SideOf(e), At: at})
			}
		}
	}
	return out
}

func some(all []float64) bool {
	for _, x := range all {
		if x > nothing {
			return true
		}
	}
	return false
}

// crossing is where along an edge a straight cut of so much at its ends comes to as much
// as is held back.
func (w *Work) crossing(e door.Edge, off [2]float64, back float64) float64 {
	run := w.runs[e]
	return run.Lo + float64(run.Length()*(back-off[0]))/(off[1]-off[0])
}

// setDown has a plane begin or end where the cut is more than is held back.
func (w *Work) setDown(m *trim.Move, off [2]float64) {
	m.From, m.To = w.runs[m.Edge].Lo, w.runs[m.Edge].Hi
	at := w.crossing(m.Edge, off, max(off[0], off[1])-max(m.First, m.Last))
	if off[0] < off[1] {
		m.From = at
	} else {
		m.To = at
	}
}

// leftOver is what a cut that was set down so leaves to be done.
func (w *Work) leftOver(e door.Edge, off [2]float64, back float64) trim.Move {
	run := w.runs[e]
	line := geom.Profile{
		{At: run.Lo, Value: min(off[0], back)}, {At: w.crossing(e, off, back), Value: back}, {At: run.Hi, Value: min(off[1], back)},
	}
	return trim.Move{Kind: trim.Scribe, Edge: e, Line: line}
}

// heldBack is how much of an edge's cut is left until its gaps have been read, mm, in
// whole steps; none where they are known.
func (w *Work) heldBack(m *model, e door.Edge) float64 {
	back := 0.0
	hand := w.p.hand()
	now, uncut := m.gaps(), m.uncut()
	for i, g := range now {
		p := &w.places[i]
		if p.subject != judge.ClosedGap || p.edge != e || math.IsInf(p.hi, 1) || w.p.Offered && p.sigma < 2*felt {
			continue
		}
		cut := g - uncut[i]
		if cut <= 1e-3 {
			continue
		}
		// Before the leaf is offered up the chance is each place's: more caution leaves a
		// leaf that does not go in, and gaps that cannot be read.
		sigma := root(float64(p.sigma*p.sigma) + float64(hand*hand))
		room := min(w.z*sigma, p.hi/2)
		back = max(back, min(cut, g+room-p.hi))
		if !w.p.Offered {
			// What the readings make out to be needed may not be: it is left on as far as the
			// leaf still goes in.
			back = max(back, min(cut, sigma*leftOn, g-sigma*goesIn))
		}
	}
	return m.step * math.Ceil(back/m.step-0.1)
}

// leftOn is how much of what is planned is left on for what the readings may be off by
// before the leaf is offered up, and goesIn how much of a gap is kept for it to go in, in
// standard deviations of the gap.
const (
	leftOn = 0.5
	goesIn = 1.0
)

// inset is how far from a corner a feeler is put, mm.
const inset = 30.0

// Offering gives the gaps worth reading once a leaf hangs, as templates: along every
// edge, at the floor at fewer places, those where the fit has the least gap first.
func Offering(f *fit.Fit) (out []survey.Reading) {
	var gaps []float64
	for e := range door.Edges {
		over := f.Gaps[e].Range()
		if over.Length() < 3*inset {
			continue
		}
		over.Lo += inset
		over.Hi -= inset
		n := stations // as many as a line is scribed at: the hand is off at each by itself
		if e == door.FloorSide {
			n = 3
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
		for e := range door.FloorSide {
			s.Stop[e] = worse(s.Stop[e], p.hand())
		}
		q.Sigma = &s
	}
	for e := range door.Edges {
		w.putRight(e, read)
	}
	for e := range door.FloorSide {
		w.putStopRight(e, read)
	}
	return &q
}

// handOften is how many times its error the hand is off by at an edge when moves have
// been made: at the hinges and at the edge itself.
const handOften = 1.5

// worse gives how well a gap is known when an error is added.
func worse(known geom.Profile, by float64) geom.Profile {
	if len(known) == 0 {
		return geom.Level(by)
	}
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
	noFeeler    = judge.Blade // mm
)

// putRight moves one line so that the gap along the edge is what was read.
func (w *Work) putRight(e door.Edge, read []survey.Reading) {
	d := &w.p.Piece.Door
	fit.EvaluateClosed(&w.hung, d)
	var by, known geom.Profile
	gaps := &w.hung.Gaps[e]
	if len(gaps.Pieces) == 0 {
		return
	}
	for pass := range 2 { // what no feeler goes into is weighed by what the others say
		others := append(geom.Profile(nil), by...)
		for _, r := range read {
			if r.Kind != survey.GapRead || r.Side != survey.SideOf(e) || (r.Value <= noFeeler) != (pass == 1) {
				continue
			}
			now, sigma := gaps.At(r.At), survey.SigmaOf(r)
			if w.p.Sigma == nil {
				if pass == 0 || now > r.Value {
					by, known = insert(by, geom.Station{At: r.At, Value: r.Value - now}), insert(known, geom.Station{At: r.At, Value: sigma})
				}
				continue
			}
			before := held(w.p.Sigma.Gap[e], r.At)
			off := 0.0
			if pass == 1 {
				off, sigma = tight(now, before, r.At, others, gaps.Range())
			} else {
				weight := float64(before*before) / (float64(before*before) + float64(sigma*sigma))
				off = weight * (r.Value - now)
				sigma *= root(weight)
			}
			by, known = insert(by, geom.Station{At: r.At, Value: off}), insert(known, geom.Station{At: r.At, Value: sigma})
		}
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

// putStopRight moves a stop so that the gap to it is what was read.
func (w *Work) putStopRight(e door.Edge, read []survey.Reading) {
	d := &w.p.Piece.Door
	fit.EvaluateClosed(&w.hung, d)
	gaps := &w.hung.Stops[e]
	if len(gaps.Pieces) == 0 {
		return
	}
	var by, known geom.Profile
	for _, r := range read {
		if r.Kind != survey.StopGap || r.Side != survey.SideOf(e) {
			continue
		}
		now, sigma := gaps.At(r.At), survey.SigmaOf(r)
		off := now - r.Value
		if w.p.Sigma != nil {
			before := held(w.p.Sigma.Stop[e], r.At)
			weight := float64(before*before) / (float64(before*before) + float64(sigma*sigma))
			off *= weight
			sigma *= root(weight)
			if r.Value <= noFeeler { // it is in the way, who knows how far
				off, sigma = tight(now, before, r.At, nil, gaps.Range())
				off = -off
			}
		}
		by, known = insert(by, geom.Station{At: r.At, Value: off}), insert(known, geom.Station{At: r.At, Value: sigma})
	}
	if len(by) == 0 {
		return
	}
	stop := [door.FloorSide]*geom.Profile{&d.Frame.HingeStop, &d.Frame.LatchStop, &d.Frame.HeadStop}[e]
	*stop = plus(*stop, by)
	if w.p.Sigma != nil {
		w.p.Sigma.Stop[e] = known
	}
}

// tight gives what is to be put right at a place no feeler goes into, and how well that
// is known. What is off along an edge is off by a straight line more than by anything
// else, so two places that were felt foretell it, less well the farther it lies from
// them; the rest is that there is no gap. now and before are the gap that was
// believed and how well, others what was off at the places that were felt.
func tight(now, before, at float64, others geom.Profile, over geom.Interval) (off, sigma float64) {
	sigma = before
	if n := len(others); n > 1 {
		var mean, value, square, cross float64
		for _, s := range others {
			mean += s.At / float64(n)
			value += s.Value / float64(n)
		}
		for _, s := range others {
			square += float64((s.At - mean) * (s.At - mean))
			cross += float64((s.At - mean) * (s.Value - value))
		}
		far := (at - mean) / over.Length()
		spread := square / float64(over.Length()*over.Length())
		foretold := value + float64(cross/square*(at-mean))
		own := foretoldBy * root(1/float64(n)+1+float64(far*far)/spread)
		weight := float64(before*before) / (float64(before*before) + float64(own*own))
		off, sigma = weight*foretold, own*root(weight)
	}
	// A normal error of which only the part that leaves no gap is left (N. L. Johnson,
	// S. Kotz, Continuous univariate distributions, from memory).
	unit := survey.Uncertain{Sigma: 1}
	a := -(now + off) / sigma
	if !(sigma > 0) || a > 4 {
		return off, sigma
	}
	if a < -4 {
		return -now, noFeeler
	}
	const near = 1e-3
	density := (unit.Below(a+near) - unit.Below(a-near)) / (2 * near)
	k := density / unit.Below(a)
	off -= float64(sigma * k)
	return off, sigma * root(max(0.01, 1-float64(k*(k+a))))
}

// foretoldBy is how far, mm, one sigma, a gap ordinarily is off the line that is off
// along its edge (common practice, no published source).
const foretoldBy = 0.35

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
