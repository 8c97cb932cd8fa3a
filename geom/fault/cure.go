package fault

import (
	"math"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/trim"
)

// Cure gives what the manuals do about the faults in a piece, as moves in the order they
// are done: hinges, then the leaf's edges, then stops. A keep is no member of the
// model: where a manual moves it, the stop is moved to it.
func Cure(p trim.Piece, made []Made) []trim.Move {
	var c cure
	c.p = &p
	if len(p.Door.Check()) > 0 {
		return nil
	}
	for i := range All {
		for k := range made {
			if m := made[k]; m.Kind == All[i].Kind {
				m.usual(&p.Door)
				c.of(&m)
			}
		}
	}
	moves := append(append(append(append(c.first, c.hinges...), c.edges...), c.frame...), c.last...)
	for _, fitted := range c.tried { // what is measured on the door as it then is
		now, _ := trim.All(p, moves)
		if len(now.Door.Check()) == 0 {
			moves = append(moves, fitted(&now.Door))
		}
	}
	return moves
}

// cure gathers moves by when they are done.
type cure struct {
	p                                 *trim.Piece
	first, hinges, edges, frame, last []trim.Move
	tried                             []func(d *door.Door) trim.Move
}

// strip is the height of a strip glued on, mm: lower ones are hard to cramp.
const strip = 8.0

// of adds what cures one fault.
func (c *cure) of(m *Made) {
	a := m.Amount
	edge := func(x trim.Move) { c.edges = append(c.edges, x) }
	plane := func(e door.Edge, first, last float64) {
		edge(trim.Move{Kind: trim.Plane, Edge: e, First: first, Last: last})
	}
	splice := func(e door.Edge, high float64) {
		edge(trim.Move{Kind: trim.Splice, Edge: e, Face: trim.Knuckle, Stock: c.p.Door.Leaf.Thickness, First: high, Last: high})
	}
	d := &c.p.Door
	// taper gives the amounts at the ends of an edge that begins so far along its side
	taper := func(over geom.Interval, from, long float64) (first, last float64) {
		line := leaning(over, m.Way, a)
		return max(0, line.At(from)), max(0, line.At(from+long))
	}
	l := &d.Leaf
	switch m.Kind {
	case JambLeans:
		first, last := taper(heights(d), lift(d), l.Top.At(l.Width))
		plane(door.LatchSide, first, last)
	case HeadFalls:
		first, last := taper(across(d), d.Hinges[0].Gap(), l.Width)
		plane(door.HeadSide, first, last)
	case FloorRises:
		c.tried = append(c.tried, clearing)
	case JambSprung:
		line := positive(bow(heights(d), a), -lift(d))
		edge(trim.Move{Kind: trim.Scribe, Edge: m.Edge, Line: line})
		for i := range d.Hinges { // what goes deeper than a gain leaves the hinge nothing to lie on
			if h := &d.Hinges[i]; m.Edge == door.HingeSide {
				c.after(i, max(0, line.At(h.LeafHeight)-h.LeafGain))
			}
		}
	case LeafWide, LeafSwollen:
		plane(door.LatchSide, a, a)
	case LeafTall:
		plane(m.Edge, a, a)
	case LeafShort:
		if a < strip {
			plane(door.HeadSide, strip-a, strip-a)
		}
		splice(door.HeadSide, max(a, strip))
	case EdgeUneven:
		if m.Way == Whole {
			edge(trim.Move{Kind: trim.Scribe, Edge: door.LatchSide, Line: m.spot()})
			break
		}
		high := max(a, strip) // planed parallel again, and a strip dressed to what it was
		first, last := taper(geom.Interval{Hi: l.Top.At(l.Width)}, 0, l.Top.At(l.Width))
		plane(door.LatchSide, high-first, high-last)
		splice(door.LatchSide, high)
	case EdgeSquare:
		c.tried = append(c.tried, bevelled)
	case PaintThick:
		for _, e := range [3]door.Edge{door.HingeSide, door.LatchSide, door.HeadSide} {
			plane(e, a, a)
			c.frame = append(c.frame, trim.Move{Kind: trim.PlaneJamb, Edge: e, First: a, Last: a})
		}
	case GainsDeep:
		leaf, jamb := parted(m.On, a)
		for _, x := range [2]struct {
			on trim.Part
			by float64
		}{{trim.OnLeaf, leaf}, {trim.OnJamb, jamb}} {
			if x.by > 0 {
				c.hinges = append(c.hinges, trim.Move{Kind: trim.Pack, On: x.on, First: x.by})
			}
		}
	case ScrewsProud, HingeSags, PinsLean:
		for i := range d.Hinges {
			c.rehang(m, i, float64(a*share(d, m.Way, i)))
		}
	case StopNear:
		first, last := a, a
		switch m.Way {
		case Upper:
			first = 0
		case Lower:
			last = 0
		}
		c.frame = append(c.frame, trim.Move{Kind: trim.Restop, Edge: door.LatchSide, First: first, Last: last})
	case KeepOut:
		if m.Way == Out {
			a = -a
		}
		c.frame = append(c.frame, trim.Move{Kind: trim.Restop, Edge: door.LatchSide, First: a, Last: a},
			trim.Move{Kind: trim.Restop, Edge: door.HeadSide, Last: a})
	case LeafWinds, FrameWinds: // stops planted anew to the leaf as it closes
		if len(c.last) > 0 {
			return
		}
		w := Wanted()
		for _, e := range [3]door.Edge{door.HingeSide, door.LatchSide, door.HeadSide} {
			c.last = append(c.last, trim.Move{Kind: trim.Follow, Edge: e, First: w.Stop.Target})
		}
	}
}

// hinge adds a move of the i-th hinge by an amount that is worth it.
func (c *cure) hinge(k trim.Kind, i int, on trim.Part, by float64) {
	const nothing = 1e-6
	if math.Abs(by) > nothing {
		c.hinges = append(c.hinges, trim.Move{Kind: k, Hinge: i + 1, On: on, First: by})
	}
}

// after packs the i-th hinge in the leaf, once its edge is planed.
func (c *cure) after(i int, by float64) {
	const little = 0.05 // mm
	if by > little {
		c.edges = append(c.edges, trim.Move{Kind: trim.Pack, Hinge: i + 1, On: trim.OnLeaf, First: by})
	}
}

// rehang puts the i-th hinge right that is out by an amount.
func (c *cure) rehang(m *Made, i int, by float64) {
	h := &c.p.Door.Hinges[i]
	switch m.Kind {
	case ScrewsProud: // heads sunk: the same hinge, and it folds as it should; before its gain is touched
		if by > 0 {
			c.first = append(c.first, trim.Move{
				Kind: trim.Rehinge, Hinge: i + 1, Closed: h.Closed - by, Plates: h.Height, Pin: h.Pin,
				LeafGain: max(0, h.LeafGain-h.LeafPacker), JambGain: max(0, h.JambGain-h.JambPacker),
			})
		}
	case HingeSags: // drawn home by longer screws
		c.hinge(trim.Pack, i, trim.OnJamb, -by)
	case PinsLean: // moved on the jamb, the leaf as much the other way over the plate
		c.hinge(trim.Set, i, trim.OnJamb, -by)
		c.hinge(trim.Set, i, trim.OnLeaf, by)
	}
}

// positive gives a line moved along by so much, none of it below 0.
func positive(p geom.Profile, along float64) geom.Profile {
	q := make(geom.Profile, len(p))
	for i, s := range p {
		q[i] = geom.Station{At: s.At + along, Value: max(0, s.Value)}
	}
	return q
}

// bevelled gives the bevel with which the closing edge passes with a shaving to spare,
// to half a degree; the steepest tried is the 7° of narrow leaves.
func bevelled(d *door.Door) trim.Move {
	const spare, steepest = 0.8, 7
	w := d.Clone()
	var f fit.Fit
	a := 1.0
	for ; a < steepest; a += 0.5 {
		w.Leaf.ClosingBevel = geom.Angle(a) * geom.Degree
		fit.Evaluate(&f, &w)
		if f.Swing[door.LatchSide].Least >= spare {
			break
		}
	}
	return trim.Move{Kind: trim.Bevel, Edge: door.LatchSide, Angle: geom.Angle(a) * geom.Degree}
}

// clearing gives the planing of the foot, most at the closing edge, that lets the leaf
// pass over the floor with what is wanted and a little.
func clearing(d *door.Door) trim.Move {
	const little = 0.5 // mm
	w := Wanted()
	var f fit.Fit
	fit.Evaluate(&f, d)
	s := &f.Swing[door.FloorSide]
	off := w.SwingFloor.Least + little - s.Least
	if part := s.Leaf.X / d.Leaf.Width; part > 0.2 && part < 1 {
		off /= part
	}
	return trim.Move{Kind: trim.Plane, Edge: door.FloorSide, Last: max(0, off)}
}
