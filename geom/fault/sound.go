package fault

import (
	"math"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
	"leafwright/geom/trim"
)

// Wanted is the fit that sound doors have and cures are to reach: 2 to 4 mm at the
// sides and the head, 4 to 15 over the floor (common practice, no published source).
func Wanted() judge.Wanted {
	side := judge.Limits{Least: 2, Target: 3, Most: 4}
	return judge.Wanted{
		Gaps: [door.Edges]judge.Limits{side, side, side, {Least: 4, Target: 8, Most: 15}},
		Stop: judge.Limits{Least: 0.5, Target: 2, Most: 4},
		// by a shaving, and over a thin mat
		Swing: judge.Limits{Least: 0.5, Target: 1.5}, SwingFloor: judge.Limits{Least: 2, Target: 5},
	}
}

// Sound gives a door that fits: within [Wanted], and with no symptom. old, from 0 to
// 1, is how far the opening is out of square, the leaf out of flat and the work
// uneven; an old leaf is cut to its old opening. Every seed is another door.
func Sound(seed uint64, old float64) trim.Piece {
	out := geom.Interval{Hi: 1}.Clamp(old)
	if !(out >= 0) {
		out = 0
	}
	for {
		p := build(seed, out, out)
		if out == 0 || isSound(&p) {
			return p
		}
		out = max(0, float64(out*0.7)-0.01) // the same door, less out of true
	}
}

// inside is how far inside the limits a sound door stays, mm, so that a cure that is
// right to a few tenths is right.
const inside = 0.3

// isSound tells whether a piece can be measured, keeps [inside] of [Wanted] to the last
// bits, without the blade that a verdict allows, and shows nothing.
func isSound(p *trim.Piece) bool {
	if len(p.Door.Check()) > 0 || len(p.Anatomy.Check(&p.Door.Leaf)) > 0 {
		return false
	}
	seen, held := inner(0), inner(judge.Blade)
	var f fit.Fit
	fit.Evaluate(&f, &p.Door)
	return judge.Worst(judge.Verdicts(&f, &p.Door, &held)) == judge.Good && len(Symptoms(&f, &p.Door, &seen)) == 0
}

// inner gives the limits that lie [inside] of [Wanted], and so much more, mm.
func inner(more float64) judge.Wanted {
	w := Wanted()
	in := inside + more
	for e := range w.Gaps {
		w.Gaps[e].Least += in
		w.Gaps[e].Most -= in
	}
	w.Stop.Least += inside + in // a swollen leaf is thicker too
	w.Stop.Most -= in
	w.Swing.Least += in
	w.SwingFloor.Least += in
	return w
}

// tidy rounds a length to a twentieth of a millimetre, so that a job file reads well.
func tidy(x float64) float64 { return math.Round(x*20)/20 + 0 } // + 0: no negative zero

// whole rounds a length to whole millimetres.
func whole(x float64) float64 { return math.Round(x) + 0 }

// line gives a straight line from base that leans by so much over its length, and bows.
func line(long, base, lean, bowed float64) geom.Profile {
	if bowed == 0 {
		return geom.Through(0, tidy(base), long, tidy(base+lean))
	}
	const n = 4
	p := make(geom.Profile, n+1)
	for i := range p {
		t := float64(i) / n
		p[i] = geom.Station{At: whole(long * t), Value: tidy(base + float64(lean*t) + float64(4*bowed*t*(1-t)))}
	}
	return p
}

// build makes a door so old, out of true by so much: 0 is square, plumb and flat.
func build(seed uint64, old, out float64) trim.Piece {
	r := throws(seed, 0)
	var p trim.Piece
	d := &p.Door
	l, f := &d.Leaf, &d.Frame

	wide, high := whole(r.within(640, 920)), whole(r.within(1960, 2080))
	gap := tidy(r.within(2.7, 3.3))
	under := tidy(r.within(5.5, 8.5))
	thick := [3]float64{35, 40, 44}[r.of(3)]
	if r.chance(old) {
		thick = whole(r.within(32, 46))
	}
	leafWide, leafHigh := wide-2*gap, high-under-gap

	*l = door.Rectangle(leafWide, leafHigh, thick)
	l.ClosingBevel = geom.Angle(whole(r.within(4, 7))/2) * geom.Degree
	l.ClosingFace = line(leafHigh, 0, r.about(2*out), r.about(0.7*out))

	hingeLean, latchLean, headRise := r.about(2.5*out), r.about(4*out), r.about(5*out)
	f.HingeJamb, f.LatchJamb = line(high, 0, hingeLean, r.about(0.5*out)), line(high, wide, latchLean, r.about(1*out))
	f.Head = line(wide, high, headRise, r.about(0.8*out))
	hingeOut, latchOut := r.about(1.5*out), r.about(1.5*out)
	f.HingeFront, f.LatchFront = line(high, 0, hingeOut, 0), line(high, 0, latchOut, 0)
	f.HeadFront = geom.Through(0, f.HingeFront.At(high), wide, f.LatchFront.At(high))
	f.StopWidth = whole(r.within(10, 15))
	f.PlantStops(thick + 2)

	d.Latch.Height = whole(r.within(920, 1050))
	d.Opens = geom.Angle(whole(r.within(18, 24))*5) * geom.Degree
	d.Floor = door.Floor{
		Radii: []float64{0, wide}, Angles: []geom.Angle{0, d.Opens},
		Heights: [][]float64{{0, tidy(r.about(4 * out))}, {0, tidy(r.about(4 * out))}},
	}
	hang(d, &r, gap, under, out)
	makeUp(&p, &r, old)
	if out > 0 && len(d.Check()) == 0 {
		cutToFit(d, &r, gap, out)
	}
	return p
}

// hang sets two or three butt hinges to leave the gap: plates of 75 to 100 mm, their
// middles about 180 mm from the top and 250 from the foot, let in by halves.
func hang(d *door.Door, r *dice, gap, under, out float64) {
	plates := [3]float64{75, 90, 100}[r.of(3)]
	closed := tidy(r.within(5.5, 7.5))
	pin := whole(r.within(10, 16)) / 2
	high := d.Leaf.Top.At(0)
	top, foot := whole(high-r.within(140, 170)-plates/2), whole(r.within(220, 260))
	at := []float64{top, foot}
	if r.chance(0.35) {
		at = []float64{top, whole((top + foot) / 2), foot}
	}
	leaf := tidy((closed - gap) / 2)
	gains := [2]float64{r.about(0.3 * out), r.about(0.3 * out)} // too deep, at the top and the bottom hinge
	pins := [2]float64{r.about(0.8 * out), r.about(0.8 * out)}
	for _, v := range at {
		x := (v - foot) / (top - foot)
		d.Hinges = append(d.Hinges, door.Hinge{
			LeafHeight: v, JambHeight: v + under, Closed: closed, Height: plates,
			LeafGain: leaf + tidy(gains[1]+float64((gains[0]-gains[1])*x)), JambGain: closed - gap - leaf,
			Pin: pin + tidy(pins[1]+float64((pins[0]-pins[1])*x)),
		})
	}
}

// makeUp says how the leaf is built and locked.
func makeUp(p *trim.Piece, r *dice, old float64) {
	l := &p.Door.Leaf
	kind := door.Framed
	switch {
	case r.chance(0.3 * (1 - old)):
		kind = door.Flush
	case r.chance(0.15 * old):
		kind = door.Boarded
	}
	p.Anatomy = door.Ordinary(kind, l.Width, l.Top.At(0))
	p.Anatomy.Timber = [4]string{"red deal", "Baltic pine", "larch", "pitch pine"}[r.of(4)]
	if kind == door.Framed && r.chance(0.3) {
		p.Anatomy.Panels = door.Raised
	}
	lock := door.Lock{Kind: door.Mortice, Height: p.Door.Latch.Height, Backset: 55, Case: 75, Depth: 80}
	if kind == door.Boarded || r.chance(0.5*old) { // boards take no mortice
		lock = door.Lock{Kind: door.Rim, Height: p.Door.Latch.Height, Backset: 60, Case: 100, Depth: 120}
	}
	p.Anatomy.Lock = lock
}

// cutToFit planes closing edge and top to the opening as the leaf hangs in it, to a gap
// that is even but for the hand's own unevenness.
func cutToFit(d *door.Door, r *dice, gap, out float64) {
	const n = 4
	var uneven [door.Edges][n + 1]float64
	for _, e := range [2]door.Edge{door.LatchSide, door.HeadSide} {
		for i := range uneven[e] {
			uneven[e][i] = r.about(0.5 * out)
		}
	}
	for range 3 { // one edge's cut hardly moves the other's gap
		var f fit.Fit
		fit.EvaluateClosed(&f, d)
		for _, e := range [2]door.Edge{door.LatchSide, door.HeadSide} {
			line, lifted := &d.Leaf.Closing, f.Pose.Origin.Y
			if e == door.HeadSide {
				line, lifted = &d.Leaf.Top, f.Pose.Origin.X
			}
			g := &f.Gaps[e]
			if len(g.Pieces) == 0 {
				continue
			}
			over := g.Range()
			q := make(geom.Profile, n+1)
			for i := range q {
				at := over.Lo + float64(over.Length()*float64(i))/n
				s := whole(at - lifted)
				q[i] = geom.Station{At: s, Value: tidy(line.At(s) + g.At(at) - gap + uneven[e][i])}
			}
			*line = q
		}
		if len(d.Check()) > 0 {
			return
		}
	}
}
