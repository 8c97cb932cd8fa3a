package cutlist

import (
	"math"
	"strconv"

	"leafwright/game"
	"leafwright/game/hardware"
	"leafwright/game/words"
	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/trim"
)

// What rows of the moves are of. Amounts off and on are above zero.
const (
	MoveRow    = "move"
	TimberOff  = "timber off the leaf"
	TimberOn   = "strip on the leaf"
	BevelTo    = "bevel"
	Section    = "arris or face of the edge"
	HingeRow   = "hinge"
	FrameOff   = "timber off the frame"
	FrameOn    = "packing on the frame"
	StopMoved  = "stop moved towards the knuckle side"
	FloorRow   = "covering or threshold on the floor"
	DowelRow   = "dowel"
	fromCorner = "across from the hanging edge as found"
	fromFoot   = "up from the foot of the hanging stile as found"
)

// moves adds what each step of a list does, the door being so before the first.
func (t *table) moves(before game.Tried, steps []trim.Step, numbers []string) {
	strips := hardware.WorkOf(&before, steps)
	p := trim.Piece{Door: before.Door, Anatomy: before.Anatomy, Offcuts: before.Offcuts}
	for k := range steps {
		s := &steps[k]
		r := row(MoveRow)
		r.Move, r.Note = numbers[k], t.s.Move(&s.Move)
		switch {
		case s.Move.Off:
			r.Judged = "left out"
		case s.Why != nil:
			r.Judged = "cannot be done"
			r.Note += ": " + t.s.Care(s.Why)
		}
		if s.Move.Note != "" {
			r.Note += " (" + s.Move.Note + ")"
		}
		t.add(r)
		if s.Move.Off || s.Why != nil {
			continue
		}
		is, _, _ := trim.Do(p, s.Move)
		d := did{t, numbers[k], &s.Move, &p.Door, &is.Door}
		d.leaf()
		d.hinges()
		d.frame()
		if strips != nil {
			d.dowels(strips.Strips, k)
		}
		p = is
	}
}

// did is a move done: the door before and after it.
type did struct {
	*table
	number  string
	m       *trim.Move
	was, is *door.Door
}

// doors are those of a row's cells.
func (d *did) doors() [3]*door.Door {
	return [3]*door.Door{&d.found.Tried.Door, &d.stands.Tried.Door, &d.after.Tried.Door}
}

// tell adds a row of a quantity in every door, and what the move changes it by.
func (d *did) tell(what, part, from string, place, change float64, of func(*door.Door) float64) {
	r := row(what)
	r.Move, r.Part, r.From, r.Place, r.Change = d.number, part, from, place, change
	for i, cell := range r.cells() {
		*cell = of(d.doors()[i])
	}
	d.add(r)
}

// leaf tells what a move does to the leaf's edges: where each stands at the places
// its line before or after bends, as u or v.
func (d *did) leaf() {
	for e := range door.Edges {
		old, in := d.was.Leaf.Line(e)
		now, _ := d.is.Leaf.Line(e)
		measured := fromCorner
		if e.Upright() {
			measured = fromFoot
		}
		off := func(at float64) float64 { return in * (now.At(at) - old.At(at)) }
		for _, at := range changed(*old, *now, d.was.Leaf.Ends(e, 0)) {
			what, amount := TimberOff, off(at)
			if amount < 0 || amount == 0 && (d.m.Kind == trim.Splice || d.m.Kind == trim.Reuse) {
				what, amount = TimberOn, -amount
			}
			d.tell(what, words.LeafEdge(d.s, e), measured, at, amount+0, func(x *door.Door) float64 {
				line, _ := x.Leaf.Line(e)
				return line.At(at)
			})
		}
		d.sections(e)
	}
	for e, bevel := range [2]func(l *door.Leaf) geom.Angle{
		func(l *door.Leaf) geom.Angle { return l.HangingBevel },
		func(l *door.Leaf) geom.Angle { return l.ClosingBevel },
	} {
		if to := bevel(&d.is.Leaf); to != bevel(&d.was.Leaf) {
			r := row(BevelTo)
			r.Move, r.Part, r.Open, r.Note = d.number, words.LeafEdge(d.s, door.Edge(e)), to.Degrees(), "off square, the stop face standing back"
			d.add(r)
		}
	}
}

// sections tells of arrises taken off, and of a strip that stands back from a face.
func (d *did) sections(e door.Edge) {
	of := func(x *door.Door) [4]float64 {
		s := x.Leaf.Sections[e]
		return [4]float64{s.KnuckleEase, s.StopEase, s.KnuckleBack, s.StopBack}
	}
	was, is := of(d.was), of(d.is)
	for i, name := range [4]string{
		d.s.Arris + " on the knuckle face, taken off at 45°", d.s.Arris + " on the stop face, taken off at 45°",
		"stands back from the knuckle face", "stands back from the stop face",
	} {
		if is[i] != was[i] {
			d.tell(Section, words.LeafEdge(d.s, e)+": "+name, "", math.NaN(), is[i]-was[i], func(x *door.Door) float64 { return of(x)[i] })
		}
	}
}

// hinges tells what a move changes of every hinge.
func (d *did) hinges() {
	const onLeaf, onJamb = fromFoot, fromFloor
	for i := range min(len(d.was.Hinges), len(d.is.Hinges)) {
		for _, q := range [...]struct {
			name, from string
			of         func(h *door.Hinge) float64
		}{
			{"height of its middle on the leaf", onLeaf, func(h *door.Hinge) float64 { return h.LeafHeight }},
			{"height of its middle on the jamb", onJamb, func(h *door.Hinge) float64 { return h.JambHeight }},
			{"depth of its " + d.s.Gain + " in the leaf", onLeaf, func(h *door.Hinge) float64 { return h.LeafGain }},
			{"depth of its " + d.s.Gain + " in the jamb", onJamb, func(h *door.Hinge) float64 { return h.JambGain }},
			{d.s.Packer + " behind it in the leaf", onLeaf, func(h *door.Hinge) float64 { return h.LeafPacker }},
			{d.s.Packer + " behind it in the jamb", onJamb, func(h *door.Hinge) float64 { return h.JambPacker }},
			{"thickness folded shut", onJamb, func(h *door.Hinge) float64 { return h.Closed }},
			{"pin out of the frame's front edge", onJamb, func(h *door.Hinge) float64 { return h.Pin }},
			{"leaf's face out of the frame's front edge", onJamb, func(h *door.Hinge) float64 { return h.Proud }},
			{"height of its plates", onJamb, func(h *door.Hinge) float64 { return h.Height }},
		} {
			if was, is := q.of(&d.was.Hinges[i]), q.of(&d.is.Hinges[i]); is != was {
				at := d.is.Hinges[i].JambHeight
				if q.from == onLeaf {
					at = d.is.Hinges[i].LeafHeight
				}
				d.tell(HingeRow, "hinge "+strconv.Itoa(i+1)+": "+q.name, q.from, at, is-was, func(x *door.Door) float64 { return q.of(&x.Hinges[i]) })
			}
		}
	}
}

// frame tells what a move does to the opening: faces, stops, floor.
func (d *did) frame() {
	names := [3]string{"hinge jamb", d.s.LatchJamb, "head"}
	for e := range door.FloorSide {
		face := func(x *door.Door) geom.Profile {
			line, _ := x.Frame.Face(e)
			return *line
		}
		stop := func(x *door.Door) geom.Profile { return *x.Frame.Stop(e) }
		_, away := d.was.Frame.Face(e)
		ends := d.was.Frame.Run(e)
		for _, at := range changed(face(d.was), face(d.is), ends) {
			what, amount := FrameOff, away*(face(d.is).At(at)-face(d.was).At(at))
			if amount < 0 || amount == 0 && d.m.Kind == trim.PackJamb {
				what, amount = FrameOn, -amount
			}
			d.tell(what, names[e], from(e), at, amount+0, func(x *door.Door) float64 { return face(x).At(at) })
		}
		for _, at := range changed(stop(d.was), stop(d.is), ends) {
			d.tell(StopMoved, "stop at the "+d.s.Edge(e), from(e), at, stop(d.is).At(at)-stop(d.was).At(at), func(x *door.Door) float64 { return stop(x).At(at) })
		}
	}
	if d.m.Kind == trim.Undercut || d.m.Kind == trim.Threshold {
		r := row(FloorRow)
		r.Move, r.Part, r.Change = d.number, "floor", d.m.Cover
		if d.m.Kind == trim.Threshold {
			r.Note = "through the wall " + number(d.m.Wide, 1, 2) + " mm"
		}
		d.add(r)
	}
}

// dowels tells the places of the dowels of the strip that the k-th step glues on.
func (d *did) dowels(strips []hardware.Strip, k int) {
	for _, s := range strips {
		if s.Step != k {
			continue
		}
		end := "along from the strip's hanging end"
		if s.Dowels.Edge.Upright() {
			end = "up from the strip's foot"
		}
		for i, at := range s.Dowels.Places {
			into := s.Dowels.IntoLeaf
			if n := len(s.Dowels.Places); s.Dowels.Short > 0 && (i < s.Dowels.Shorts[0] || i >= n-s.Dowels.Shorts[1]) {
				into = s.Dowels.Short
			}
			r := row(DowelRow)
			r.Move, r.Part, r.From, r.Place = d.number, words.LeafEdge(d.s, s.Dowels.Edge), end, at
			r.Note = "hole of " + number(s.Dowels.Diameter, 1, 1) + " mm, " + number(into, 1, 1) + " mm into the leaf, " + number(s.Dowels.IntoStrip, 1, 1) +
				" mm into the strip, its line " + number(s.Dowels.LeafGauge, 1, 1) + " mm from the leaf's knuckle face"
			d.add(r)
		}
	}
}

// changed gives the places where a line that was old and is now is told, rising: the
// ends and the bends of both, as far as the line is another beside them.
func changed(old, now geom.Profile, over geom.Interval) (places []float64) {
	all := []float64{over.Lo, over.Hi}
	for _, p := range [2]geom.Profile{old, now} {
		for _, s := range p {
			if over.Lo < s.At && s.At < over.Hi {
				all = append(all, s.At)
			}
		}
	}
	geom.Ascending(all)
	all = apart(all)
	differs := func(i int) bool {
		const less = 1e-9 // mm: rounding
		return i >= 0 && i < len(all) && math.Abs(now.At(all[i])-old.At(all[i])) > less
	}
	for i, at := range all {
		if differs(i-1) || differs(i) || differs(i+1) {
			places = append(places, at)
		}
	}
	return places
}

// apart takes out of rising places those that the table would write like the one
// before.
func apart(all []float64) []float64 {
	const least = 0.01 // mm
	n := 0
	for i, x := range all {
		if i == 0 || x-all[n-1] > least {
			all[n] = x
			n++
		}
	}
	return all[:n]
}
