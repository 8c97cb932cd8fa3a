package fault

import (
	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/trim"
)

// Put gives the piece with exactly these faults in it, put in in the order of [All].
// Fields left zero get what is usual for the kind. Neither the piece nor its parts are
// changed, and one that cannot be measured is given back as it is. Whether a door comes
// of it that can be is for its Check to say.
func Put(sound trim.Piece, faults []Made) trim.Piece {
	if len(sound.Door.Check()) > 0 {
		return sound
	}
	p := sound
	p.Door = p.Door.Clone()
	p.Anatomy = cloned(p.Anatomy)
	for i := range All {
		for k := range faults {
			if m := faults[k]; m.Kind == All[i].Kind {
				m.usual(&p.Door)
				m.put(&p)
			}
		}
	}
	return p
}

func cloned(a door.Anatomy) door.Anatomy {
	a.Rails = append([]door.Rail(nil), a.Rails...)
	a.Muntins = append([]door.Muntin(nil), a.Muntins...)
	return a
}

// usual fills the fields left zero.
func (m *Made) usual(d *door.Door) {
	spec := SpecOf(m.Kind)
	if !one(spec.Edges, m.Edge) {
		m.Edge = spec.Edges[0]
	}
	if !one(spec.Ways, m.Way) {
		m.Way = spec.Ways[0]
	}
	if m.On == "" {
		m.On = trim.OnLeaf
	}
	up := heights(d)
	if m.At == 0 {
		m.At = up.Mid()
	}
	if m.Long == 0 {
		m.Long = 0.8 * up.Length()
	}
	if m.Kind == JambSprung && len(d.Hinges) > 2 {
		m.Edge = door.LatchSide // a third hinge holds the hinge jamb, or breaks
	}
}

func one[T comparable](of []T, x T) bool {
	for _, y := range of {
		if x == y {
			return true
		}
	}
	return false
}

// heights gives the stretch of the jambs, from the floor to the head.
func heights(d *door.Door) geom.Interval {
	hinge, latch := d.Frame.HeadCorners()
	return geom.Interval{Hi: max(1, (hinge.Y+latch.Y)/2)}
}

// across gives the stretch of the head.
func across(d *door.Door) geom.Interval {
	hinge, latch := d.Frame.HeadCorners()
	return geom.Interval{Lo: hinge.X, Hi: max(hinge.X+1, latch.X)}
}

// lift is how far above the floor's origin the foot of the leaf hangs.
func lift(d *door.Door) float64 { return d.Hinges[0].JambHeight - d.Hinges[0].LeafHeight }

// share is how much of a change at one outer hinge comes upon the i-th: hinges between
// go with the line through the outer two.
func share(d *door.Door, way Way, i int) float64 {
	h := d.Hinges
	n := len(h) - 1
	x := (h[i].LeafHeight - h[n].LeafHeight) / (h[0].LeafHeight - h[n].LeafHeight)
	if way == Lower {
		return 1 - x
	}
	return x
}

// leaning is the amount at one end of a stretch falling to nothing at the other.
func leaning(over geom.Interval, way Way, amount float64) geom.Profile {
	lo, hi := 0.0, amount
	if way == Lower {
		lo, hi = amount, 0
	}
	return geom.Through(over.Lo, lo, over.Hi, hi)
}

// bow is a parabola of the amount over the stretch, in straight pieces.
func bow(over geom.Interval, amount float64) geom.Profile {
	const n = 8
	p := make(geom.Profile, n+1)
	for i := range p {
		t := float64(i) / n
		p[i] = geom.Station{At: over.Lo + float64(over.Length()*t), Value: float64(4 * amount * t * (1 - t))}
	}
	return p
}

// spot is a parabola of the amount over a stretch, and nothing beyond it.
func (m *Made) spot() geom.Profile {
	return within(bow(geom.Interval{Lo: m.At - m.Long/2, Hi: m.At + m.Long/2}, m.Amount))
}

// within gives a profile that is nothing beyond its ends, where it comes to nothing.
func within(p geom.Profile) geom.Profile {
	const flat = 10.0
	return append(append(geom.Profile{{At: p[0].At - flat}}, p...), geom.Station{At: p[len(p)-1].At + flat})
}

// plus adds q, times sign, to a profile. Stations that q has too near to one of p's are
// left out, so that the sum is one that a door may have.
func plus(p, q geom.Profile, sign float64) geom.Profile {
	const near = 2 * door.ApartLeast
	var at []float64
	put := func(s float64) {
		for _, x := range at {
			if x-near < s && s < x+near {
				return
			}
		}
		at = append(at, s)
	}
	if len(p) > 1 {
		for _, s := range p {
			put(s.At)
		}
	}
	for _, s := range q {
		put(s.At)
	}
	geom.Ascending(at)
	sum := make(geom.Profile, len(at))
	for i, s := range at {
		sum[i] = geom.Station{At: s, Value: p.At(s) + float64(sign*q.At(s))}
	}
	return sum
}

// put changes the shapes. Every field is filled.
func (m *Made) put(p *trim.Piece) {
	switch SpecOf(m.Kind).Works {
	case trim.TheFrame:
		m.putFrame(&p.Door)
	case trim.TheLeaf:
		m.putLeaf(p)
	case trim.TheHinges:
		m.putHinges(&p.Door)
	}
}

func (m *Made) putFrame(d *door.Door) {
	f, up, a := &d.Frame, heights(d), m.Amount
	switch m.Kind {
	case JambLeans:
		f.LatchJamb = plus(f.LatchJamb, leaning(up, m.Way, a), -1)
	case JambSprung:
		if m.Edge == door.LatchSide {
			f.LatchJamb = plus(f.LatchJamb, bow(up, a), -1)
			break
		}
		f.HingeJamb = plus(f.HingeJamb, bow(up, a), 1)
		for i := range d.Hinges { // their screws hold the hinges where they were, and the jamb comes out round them
			d.Hinges[i].JambGain += bow(up, a).At(d.Hinges[i].JambHeight)
		}
	case HeadFalls:
		f.Head = plus(f.Head, leaning(across(d), m.Way, a), -1)
	case FrameWinds: // turned about the latch's height, where its keep stays
		sign := 1.0
		if m.Way == Lower {
			sign = -1
		}
		slope := sign * a / up.Length()
		y := d.Latch.Height + lift(d)
		jamb := geom.Through(up.Lo, -float64(slope*y), up.Hi, float64(slope*(up.Hi-y)))
		head := leaning(across(d), Upper, jamb.At(up.Hi))
		f.LatchFront, f.LatchStop = plus(f.LatchFront, jamb, 1), plus(f.LatchStop, jamb, 1)
		f.HeadFront, f.HeadStop = plus(f.HeadFront, head, 1), plus(f.HeadStop, head, 1)
	case FloorRises:
		m.raiseFloor(d)
	case StopNear:
		by := geom.Level(a)
		if m.Way != Whole {
			by = leaning(up, m.Way, a)
		}
		if len(by) == 1 {
			f.LatchStop = f.LatchStop.Shift(a)
		} else {
			f.LatchStop = plus(f.LatchStop, by, 1)
		}
	case KeepOut:
		if m.Way == In {
			a = -a
		}
		d.Latch.Proud += a
	}
}

// levelTo is the swing up to which a rising floor is as it was: the leaf goes over
// that much before it meets the rise.
const levelTo = 15 * geom.Degree

// raiseFloor lets the floor rise from nothing at the hinges, and up to [levelTo], to
// the amount at the closing edge of the open leaf.
func (m *Made) raiseFloor(d *door.Door) {
	was := d.Floor
	wide := d.Leaf.Closing.At(0)
	const apart = 5.0 // mm; and degrees
	radii, angles := was.Radii, was.Angles
	rise := func(list []float64, x, near float64) []float64 {
		for _, y := range list {
			if y-near < x && x < y+near {
				return list
			}
		}
		list = append(append([]float64(nil), list...), x)
		geom.Ascending(list)
		return list
	}
	radii = rise(rise(radii, 0, apart), wide, apart)
	turns := make([]float64, len(angles))
	for i, a := range angles {
		turns[i] = float64(a)
	}
	for _, a := range [3]geom.Angle{0, levelTo, max(d.Opens, 2*levelTo)} {
		turns = rise(turns, float64(a), float64(apart*geom.Degree))
	}
	is := door.Floor{Radii: radii}
	for _, t := range turns {
		a := geom.Angle(t)
		row := make([]float64, len(radii))
		part := geom.Interval{Hi: 1}.Clamp(float64((a - levelTo) / max(d.Opens-levelTo, levelTo)))
		for i, r := range radii {
			row[i] = was.Polar(r, a) + float64(m.Amount*part*min(1.5, r/wide))
		}
		is.Angles, is.Heights = append(is.Angles, a), append(is.Heights, row)
	}
	d.Floor = is
}

func (m *Made) putLeaf(p *trim.Piece) {
	d, a := &p.Door, m.Amount
	l, f := &d.Leaf, &d.Frame
	switch m.Kind {
	case LeafWide:
		l.Closing = l.Closing.Shift(a)
	case LeafTall:
		if m.Edge == door.FloorSide {
			l.Bottom = l.Bottom.Shift(-a)
			if r := p.Anatomy.Rails; len(r) > 0 {
				r[0].From -= a
			}
		} else {
			l.Top = l.Top.Shift(a)
			if r := p.Anatomy.Rails; len(r) > 0 {
				r[len(r)-1].To += a
			}
		}
	case LeafShort:
		l.Top = l.Top.Shift(-a)
		if r := p.Anatomy.Rails; len(r) > 0 {
			r[len(r)-1].To -= a
			p.Anatomy.Joints.TopCut += a // it was cut, not made so
		}
	case LeafSwollen:
		m.swell(p)
	case LeafWinds:
		sign := 1.0
		if m.Way == Lower {
			sign = -1
		}
		high := l.Top.At(l.Width)
		slope := sign * a / high
		v := d.Latch.Height
		l.ClosingFace = plus(l.ClosingFace, geom.Through(0, -float64(slope*v), high, float64(slope*(high-v))), 1)
	case EdgeUneven:
		if m.Way == Whole {
			l.Closing = plus(l.Closing, m.spot(), 1)
		} else {
			l.Closing = plus(l.Closing, leaning(geom.Interval{Hi: l.Top.At(l.Width)}, m.Way, a), -1)
		}
	case EdgeSquare:
		m.thicken(d)
	case PaintThick:
		l.Closing, l.Top, l.Hanging = l.Closing.Shift(a), l.Top.Shift(a), l.Hanging.Shift(-a)
		f.LatchJamb, f.Head, f.HingeJamb = f.LatchJamb.Shift(-a), f.Head.Shift(-a), f.HingeJamb.Shift(a)
		for i := range d.Hinges { // paint round their plates: they sit as deep in the timber as they did
			d.Hinges[i].LeafGain += a
			d.Hinges[i].JambGain += a
		}
	}
}

// swell lets the timber that lies across the width grow by the same part each way: two
// stiles of a framed leaf, whose rails hold the rest, the whole width of a boarded one.
// The gains sit in the timber, so all of it comes out at the closing edge. In thickness
// the leaf grows by half as much per mm: boards that lie flat across the width move
// tangentially there and radially through it (Wood Handbook, table 13-5: ponderosa
// pine 0.00133 radially and 0.00216 tangentially, western white pine 0.00141, 0.00259).
func (m *Made) swell(p *trim.Piece) {
	l, a := &p.Door.Leaf, &p.Anatomy
	wood := a.HangingStile + a.ClosingStile
	if !(wood > 0) || a.Make != door.Framed {
		wood = l.Width
	}
	l.Thickness += float64(l.Thickness * (m.Amount / wood) / 2)
	l.Closing = l.Closing.Shift(m.Amount)
	l.Width += m.Amount
	if a.Make == door.Framed && a.HangingStile > 0 {
		first := float64(m.Amount * (a.HangingStile / wood))
		a.HangingStile += first
		a.ClosingStile += m.Amount - first
		for i := range a.Muntins {
			a.Muntins[i].At += first
		}
	}
}

// thicken makes the leaf thicker and its closing edge square, in a rebate as much
// deeper; a gap at the latch wider than it need be is taken up, as the leaf is to bind
// by its thickness.
func (m *Made) thicken(d *door.Door) {
	l, f := &d.Leaf, &d.Frame
	l.Thickness += m.Amount
	l.ClosingBevel = 0
	f.HingeStop, f.LatchStop, f.HeadStop = f.HingeStop.Shift(-m.Amount), f.LatchStop.Shift(-m.Amount), f.HeadStop.Shift(-m.Amount)
	const least = 0.1 // mm over the least wanted
	w := Wanted()
	if len(d.Check()) > 0 {
		return
	}
	var hung fit.Fit
	fit.EvaluateClosed(&hung, d)
	if g := &hung.Gaps[door.LatchSide]; len(g.Pieces) > 0 {
		if spare := g.Least - w.Gaps[door.LatchSide].Least - least; spare > 0 {
			l.Closing = l.Closing.Shift(spare)
		}
	}
}

func (m *Made) putHinges(d *door.Door) {
	for i := range d.Hinges {
		h := &d.Hinges[i]
		by := float64(m.Amount * share(d, m.Way, i))
		switch m.Kind {
		case GainsDeep:
			leaf, jamb := parted(m.On, m.Amount)
			h.LeafGain += leaf
			h.JambGain += jamb
		case ScrewsProud:
			h.Closed += by
		case HingeSags:
			h.JambPacker += by
		case PinsLean:
			h.Pin += by
		}
	}
}

// parted gives the leaf's and the jamb's part of an amount.
func parted(on trim.Part, amount float64) (leaf, jamb float64) {
	switch on {
	case trim.OnJamb:
		return 0, amount
	case trim.OnBoth:
		return amount / 2, amount / 2
	}
	return amount, 0
}
