package fault

import (
	"math"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
)

// SymptomKind is what is seen, heard or felt.
type SymptomKind string

// The kinds of symptom.
const (
	Rubs         SymptomKind = "rubs"          // an edge against frame or floor, leaf closed
	RubsSwinging SymptomKind = "rubs swinging" // an edge against the frame on the way, clear when closed
	RubsFloor    SymptomKind = "rubs floor"    // the foot on the floor at an angle, clear when closed
	SpringsBack  SymptomKind = "springs back"  // needs force near closed and opens again: bound at the hinges
	HitsStop     SymptomKind = "hits stop"     // at one place, before the latch is home
	LatchMisses  SymptomKind = "latch misses"  // its keep
	Rattles      SymptomKind = "rattles"       // latched, and off its stop everywhere
	StandsOff    SymptomKind = "stands off"    // its stop, over a part of it, latched
	SwingsOpen   SymptomKind = "swings open"   // by itself
	SwingsShut   SymptomKind = "swings shut"   // by itself
	Light        SymptomKind = "light"         // a gap that is too wide
	Hairline     SymptomKind = "hairline"      // hardly a gap
	Creaks       SymptomKind = "creaks"        // a hinge out of line with the others
	HingeOpen    SymptomKind = "hinge open"    // a hinge's plates do not come together as the others' do
)

// Degree is how much of it there is, by eye and hand.
type Degree uint8

// The degrees.
const (
	Slight Degree = iota // found by looking for it
	Plain                // noticed in use
	Gross                // the door is of no use
)

// Symptom is one thing to be noticed on site without a tool. It holds no amount: one
// is had by a reading.
type Symptom struct {
	Kind    SymptomKind
	Edge    door.Edge
	Stretch geom.Interval // along the edge, mm: y upright, x across; empty where it has no length
	At      float64       // where along the edge it is most
	Angle   geom.Angle    // swing angle, where it is not closed that it shows
	Hinge   int           // 1 the top one, where it is a hinge's; else 0
	Degree  Degree
}

// What a person notices, mm. Common practice, no published source.
const (
	hairline    = 1.0 // a gap below it is a line of light, or none
	plainRub    = 0.6 // over which rubbing polishes paint away
	grossRub    = 1.8 // over which the leaf does not go in
	plainLight  = 1.0 // over the widest gap wanted
	grossLight  = 4.0
	plainMiss   = 1.3 // what a latch lacks that is not pushed home
	grossMiss   = 4.0
	plainApart  = 1.5 // of a hinge's plates
	grossApart  = 3.0
	plainSwing  = 0.35 // over which a rub on the way is felt every time
	grossSwing  = 1.2
	platesApart = 0.25 // by which a hinge folded shut differs from the others
	heeded      = 0.05 // what gives way to a push
)

// friction is the lever, mm, at which a leaf moves by itself.
const friction = judge.Friction

// Symptoms gives what is noticed of a door that f was evaluated from, in the order it
// is noticed: how it moves by itself, how it closes, where it rubs, what gaps are
// seen. A sound door has none.
func Symptoms(f *fit.Fit, d *door.Door, w *judge.Wanted) []Symptom {
	var all []Symptom
	add := func(s Symptom) { all = append(all, s) }
	if by, at := judge.Falls(f, d, -1); by > friction {
		add(Symptom{Kind: SwingsOpen, Edge: door.HingeSide, Angle: at, Stretch: geom.Empty(), Degree: degree(by, 2*friction, 5*friction)})
	}
	if by, at := judge.Falls(f, d, 1); by > friction {
		add(Symptom{Kind: SwingsShut, Edge: door.HingeSide, Angle: at, Stretch: geom.Empty(), Degree: degree(by, 2*friction, 5*friction)})
	}
	hanging(f, d, add)
	closing(f, d, w, add)
	for e := door.HingeSide; e < door.Edges; e++ {
		edge(f, w, e, add)
	}
	return all
}

// degree grades an amount.
func degree(x, plain, gross float64) Degree {
	switch {
	case x >= gross:
		return Gross
	case x >= plain:
		return Plain
	}
	return Slight
}

// hanging adds what the hinges show.
func hanging(f *fit.Fit, d *door.Door, add func(Symptom)) {
	least := thinnest(d)
	for i, h := range d.Hinges {
		if apart := h.Closed - least; apart > platesApart {
			add(Symptom{Kind: HingeOpen, Edge: door.HingeSide, At: h.JambHeight, Stretch: geom.Empty(), Hinge: i + 1, Degree: degree(apart, plainApart, grossApart)})
		}
	}
	const play = 0.5 // mm that a hinge between others gives, as package judge has it
	for i := 1; i < len(d.Hinges)-1; i++ {
		if off := max(f.OutOfLine(i), f.Unseated(i)); off > play {
			add(Symptom{Kind: Creaks, Edge: door.HingeSide, At: d.Hinges[i].JambHeight, Stretch: geom.Empty(), Hinge: i + 1, Degree: degree(off, 1, 3)})
		}
	}
}

// closing adds how the leaf comes home: what springs it back, what stops it, whether
// the latch catches, whether it then has play.
func closing(f *fit.Fit, d *door.Door, w *judge.Wanted, add func(Symptom)) {
	bound, at := hingeBound(f)
	held, where := hingeHeld(d)
	hard := max(degree(bound, plainRub, grossRub), degree(held, plainApart, grossApart))
	if held > bound {
		at = where
	}
	if bound > heeded || held > platesApart {
		add(Symptom{Kind: SpringsBack, Edge: door.HingeSide, At: at, Stretch: geom.Empty(), Degree: hard})
	}
	if f.StopBound && f.LatchMiss > heeded {
		add(Symptom{Kind: HitsStop, Edge: f.FirstStop, At: f.FirstStopAt, Stretch: geom.Empty(), Degree: degree(f.LatchMiss, plainMiss, grossMiss)})
		const play = 0.5 // mm by which a latch that misses is pushed home, as package judge has it
		if f.LatchMiss > play {
			add(Symptom{Kind: LatchMisses, Edge: door.LatchSide, At: d.Latch.Height, Stretch: geom.Empty(), Degree: degree(f.LatchMiss, plainMiss, grossMiss)})
		}
		return
	}
	most := w.Stop.Most
	if most == 0 {
		return
	}
	g := &f.Stops[door.LatchSide]
	if len(g.Pieces) > 0 && g.Least > most {
		add(Symptom{Kind: Rattles, Edge: door.LatchSide, At: d.Latch.Height, Stretch: g.Range(), Degree: degree(g.Least-most, 1, 4)})
		return
	}
	for _, e := range [2]door.Edge{door.LatchSide, door.HeadSide} {
		g := &f.Stops[e]
		for _, at := range geom.Joined(g.Above(most, nil), together) {
			_, _, x, where := g.Within(at).Extremes()
			add(Symptom{Kind: StandsOff, Edge: e, At: where, Stretch: at, Degree: degree(x-most, 1, 4)})
		}
	}
}

// hingeBound gives how far the leaf would have to press into jamb or stop at its
// hinges to close, mm, and where.
func hingeBound(f *fit.Fit) (by, at float64) {
	by = math.Inf(-1)
	for _, g := range [2]*fit.Gap{&f.Gaps[door.HingeSide], &f.Stops[door.HingeSide]} {
		if len(g.Pieces) > 0 && -g.Least > by {
			by, at = -g.Least, g.LeastAt
		}
	}
	return by, at
}

// thinnest is the closed thickness of the hinge that folds best.
func thinnest(d *door.Door) float64 {
	least := math.Inf(1)
	for i := range d.Hinges {
		least = min(least, d.Hinges[i].Closed)
	}
	return least
}

// hingeHeld gives how much farther apart than the others' a hinge's plates stay, and at
// what height.
func hingeHeld(d *door.Door) (apart, at float64) {
	least := thinnest(d)
	for i := range d.Hinges {
		if x := d.Hinges[i].Closed - least; x > apart {
			apart, at = x, d.Hinges[i].JambHeight
		}
	}
	return apart, at
}

// edge adds where an edge rubs and what its gap looks like.
func edge(f *fit.Fit, w *judge.Wanted, e door.Edge, add func(Symptom)) {
	g := &f.Gaps[e]
	if len(g.Pieces) == 0 {
		return
	}
	tell := func(k SymptomKind, stretches []geom.Interval, mark func(least, most float64) Degree) {
		for _, at := range geom.Joined(stretches, together) {
			least, where, most, widest := g.Within(at).Extremes()
			if k == Light {
				where = widest
			}
			add(Symptom{Kind: k, Edge: e, At: where, Stretch: at, Degree: mark(least, most)})
		}
	}
	below := g.Below(-heeded, nil)
	rubs := len(below) > 0
	tell(Rubs, below, func(least, _ float64) Degree { return degree(-least, plainRub, grossRub) })
	if s := &f.Swing[e]; !rubs && s.Least < -heeded {
		k, at, hard := RubsSwinging, s.At.Y, degree(-s.Least, plainSwing, grossSwing)
		if !e.Upright() {
			at = s.At.X
		}
		if e == door.FloorSide {
			k, hard = RubsFloor, degree(-s.Least, plainRub, grossRub)
		}
		add(Symptom{Kind: k, Edge: e, At: at, Angle: s.Angle, Stretch: geom.Empty(), Degree: hard})
	}
	if l := w.Gaps[e].Least; !rubs && l > 0 {
		tell(Hairline, g.Below(min(hairline, l), nil), func(least, _ float64) Degree { return Slight })
	}
	if m := w.Gaps[e].Most; m > 0 {
		tell(Light, g.Above(m+heeded, nil), func(_, most float64) Degree { return degree(most-m, plainLight, grossLight) })
	}
}

// together is how near two stretches lie that an eye would not part, mm.
const together = 10.0

// Feel gives the thickest feeler that goes in between an edge and what it looks at, the
// leaf closed, in steps of a twentieth of a millimetre; 0 where none does. Places are
// y upright, x across; false where the edge has none there.
func Feel(f *fit.Fit, e door.Edge, at float64) (mm float64, ok bool) {
	if e < 0 || e >= door.Edges || len(f.Gaps[e].Pieces) == 0 || !f.Gaps[e].Range().Contains(at) {
		return 0, false
	}
	steps := math.Floor(max(0, f.Gaps[e].At(at))/judge.Blade + 1e-9)
	return float64(steps*5) / 100, true
}
