package survey

import (
	"math/rand/v2"

	"leafwright/geom"
	"leafwright/geom/door"
)

// simulator makes doors as an old house may have them, and reads them with
// errors. It is seeded, so every run sees the same doors.
type simulator struct{ *rand.Rand }

func simulate(seed uint64) simulator { return simulator{rand.New(rand.NewPCG(20250611, seed))} }

// line gives a line that leans and bows: the lean is between its ends, the bow at
// its middle, a quarter of it uneven.
func (s simulator) line(long, base, lean, bow float64) geom.Profile {
	lean, even := lean*s.NormFloat64(), bow*s.NormFloat64()
	uneven := bow * 0.257 * s.NormFloat64()
	var p geom.Profile
	const n = 16
	for i := range n + 1 {
		t := float64(i) / n
		wave := 4 * t * (1 - t) * (1 - 2*t) * 2.6 // 0 at ends and middle
		p = append(p, geom.Station{At: long * t, Value: base + lean*t + even*4*t*(1-t) + uneven*wave})
	}
	return p
}

// door gives a random door. Departures are as large as is ordinary.
func (s simulator) door() door.Door {
	leafW, leafH := 600+300*s.Float64(), 1900+200*s.Float64()
	t := 34 + 12*s.Float64()
	w, h := leafW+5+3*s.Float64(), leafH+8+6*s.Float64()
	var d door.Door
	l, f := &d.Leaf, &d.Frame
	l.Width, l.Thickness = leafW, t
	lineOf := func(id lineID, base float64) geom.Profile {
		spec := &lineSpecs[id]
		long := map[[2]bool]float64{{true, true}: leafH, {false, true}: leafW, {true, false}: h, {false, false}: w}[[2]bool{spec.upright, spec.ofLeaf}]
		lean := spec.lean * long
		if spec.top {
			lean = 0
		}
		return s.line(long, base, lean, spec.bow)
	}
	l.Hanging, l.Closing = lineOf(hanging, 0), lineOf(closing, leafW)
	l.Top, l.Bottom = lineOf(top, leafH), lineOf(bottom, 0)
	l.HangingFace, l.ClosingFace = lineOf(hangingFace, 0), lineOf(closingFace, 0)
	f.HingeJamb, f.LatchJamb = lineOf(hingeJamb, 0), lineOf(latchJamb, w)
	f.Head = lineOf(head, h)
	f.HingeFront, f.LatchFront = lineOf(hingeFront, 0), lineOf(latchFront, 0)
	a, b := f.HingeFront.At(h)+0.3*s.NormFloat64(), f.LatchFront.At(h)+0.3*s.NormFloat64()
	f.HeadFront = s.line(w, 0, 0, 0.5).Plus(geom.Through(0, a, w, b))
	rebate := t + usualRebate + 2*s.NormFloat64()
	stop := func(id lineID, front geom.Profile, off float64) geom.Profile {
		spec := &lineSpecs[id]
		depth := s.line(front[len(front)-1].At, rebate+off, spec.lean*front[len(front)-1].At, spec.bow)
		for i := range depth {
			depth[i].Value = front.At(depth[i].At) - max(depth[i].Value, 6)
		}
		return depth
	}
	f.LatchStop = stop(latchRebate, f.LatchFront, 0)
	f.HingeStop = stop(hingeRebate, f.HingeFront, s.NormFloat64())
	f.HeadStop = stop(headRebate, f.HeadFront, s.NormFloat64())
	f.StopWidth = usualStop + s.NormFloat64()
	l.ClosingBevel = geom.Turn{Cos: 1, Sin: 0.02 * s.NormFloat64()}.Angle()
	l.HangingBevel = geom.Turn{Cos: 1, Sin: 0.01 * s.NormFloat64()}.Angle()
	d.Latch = door.Latch{Height: 1000 + 30*s.NormFloat64(), Proud: 0.7 * s.NormFloat64()}
	d.Opens = 90 * geom.Degree

	first := door.Hinge{
		Closed: usualClosed + s.NormFloat64(), Pin: usualPin + 2*s.NormFloat64(), Proud: 0.7 * s.NormFloat64(), Height: usualPlate,
	}
	gain := usualClosed/3 + 0.7*s.NormFloat64()
	lift := usualLift + 4*s.NormFloat64()
	sz := size{leafHeight: leafH, hinges: 2}
	for i := range 2 {
		hg := first
		hg.LeafHeight = sz.leafPlace(i) + 20*s.NormFloat64()
		hg.JambHeight = hg.LeafHeight + lift
		hg.LeafGain = gain
		if i > 0 {
			hg.JambHeight += 0.6 * s.NormFloat64()
			hg.LeafGain += 0.5 * s.NormFloat64()
			hg.Closed += 0.3 * s.NormFloat64()
			hg.Pin += 0.5 * s.NormFloat64()
			hg.Proud += 0.5 * s.NormFloat64()
		}
		hg.LeafGain = max(0, hg.LeafGain)
		hg.JambGain = max(0, hg.LeafGain+0.5*s.NormFloat64())
		hg.Closed = max(2, hg.Closed)
		hg.Pin = max(-4, hg.Pin)
		d.Hinges = append(d.Hinges, hg)
	}

	g := &d.Floor
	g.Radii = []float64{0, w / 4, w / 2, 3 * w / 4, w}
	g.Angles = []geom.Angle{0, 45 * geom.Degree, 90 * geom.Degree}
	row := s.line(w, 0, 3e-3*w, 1.5)
	heights := make([]float64, len(g.Radii))
	for j, r := range g.Radii {
		heights[j] = row.At(r)
	}
	g.Heights = append(g.Heights, heights)
	for range g.Angles[1:] {
		tilt := 2.8 * s.NormFloat64()
		next := make([]float64, len(heights))
		for j, r := range g.Radii {
			next[j] = g.Heights[len(g.Heights)-1][j] + tilt*r/w
		}
		g.Heights = append(g.Heights, next)
	}
	return d
}

// read reads the templates on the door, each with a random error of its instrument.
func (s simulator) read(d *door.Door, card []Reading) []Reading {
	out := make([]Reading, len(card))
	for i, r := range card {
		r.Value = Expect(d, r)
		r.Value += SigmaOf(r) * s.NormFloat64()
		if a := SpecOf(r.Kind).Allowed; r.Kind != Rub && SpecOf(r.Kind).Needs&NoValue == 0 {
			r.Value = min(max(r.Value, a.Lo), a.Hi)
		} else {
			r.Value = 0
		}
		out[i] = r
	}
	return out
}
