package sheet

import (
	"math"
	"slices"

	"leafwright/game"
	"leafwright/game/hardware"
	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/timber"
	"leafwright/geom/trim"
)

// plan is the work of one option: the door before each of its moves, what is marked
// for each, and the order it is done in.
type plan struct {
	before, after game.Tried
	steps         []trim.Step
	stood         []game.Tried // before each step, as the ones before it leave the door
	cuts          []cut        // of the steps that are done, in order
	work          *hardware.Work
	repairs       *hardware.Repairs // nil where there are none
	hang          hardware.Hang     // of all that is done
}

// then is the door after a step.
func (p *plan) then(i int) game.Tried {
	if i+1 < len(p.stood) {
		return p.stood[i+1]
	}
	return p.after
}

// down tells whether the leaf is taken down.
func (p *plan) down() bool {
	return slices.ContainsFunc(p.work.Bill.Tasks, func(t timber.Task) bool { return t.Doing == timber.TakeDown })
}

// cut is what is marked for one move along an edge of the leaf or a side of the frame.
// Every number is counted from what is there when the move is made.
type cut struct {
	step  int // of the option, from 0
	edge  door.Edge
	frame bool    // a side of the frame, else an edge of the leaf
	stop  bool    // its stop
	on    bool    // amounts are put on, else taken off
	round float64 // what amounts are rounded to, mm
	marks []mark
}

// mark is an amount at a place of an edge, mm.
type mark struct {
	at     float64 // from the edge's beginning as it is then, rounded to what a tape tells
	place  float64 // the same in the leaf's or the opening's own axes
	amount float64 // off or on there; of a stop how far it then stands behind the frame's front edge
	left   float64 // then between this edge and the one across
	check  bool    // on a straight line between two others: there to check the plane by
}

// planOf works out an option's plan.
func planOf(a *Ask, option int) *plan {
	before := a.Job.Stands()
	p := &plan{before: before}
	now := before
	hand := before.Door.Clone()
	for _, m := range a.Job.Options[option].Moves {
		was := trim.Piece{Door: now.Door, Anatomy: now.Anatomy, Offcuts: now.Offcuts}
		p.stood = append(p.stood, now)
		is, steps := trim.All(was, []trim.Move{m})
		p.steps = append(p.steps, steps[0])
		next := game.Tried{Door: is.Door, Anatomy: is.Anatomy, Offcuts: is.Offcuts}
		if done(&steps[0]) {
			if c, any := cutOf(a, &now, &next, &m, &hand); any {
				c.step = len(p.steps) - 1
				p.cuts = append(p.cuts, c)
			}
		}
		now = next
	}
	p.after = now
	p.work = hardware.WorkIn(a.Job, &before, p.steps)
	p.hang = hardware.HangOf(&before, &p.after)
	p.repairs = hardware.RepairsOf(a.Job, &before, &p.after, p.steps)
	return p
}

// done tells whether a step is done at all.
func done(s *trim.Step) bool {
	return !s.Move.Off && (s.Why == nil || !s.Why.About.Forbids())
}

// cutOf gives the marks of a move along an edge, and whether it has any. Amounts are
// counted from the edge as the rounded marks before have left it, the hand's, so that
// rounding does not add up; the hand is taken along.
func cutOf(a *Ask, was, is *game.Tried, m *trim.Move, hand *door.Door) (c cut, any bool) {
	c = cut{edge: m.Edge}
	line, fine, tape := a.steps()
	c.round = line
	var from, old, now *geom.Profile // exact before, by the hand's marks before, exact after
	var ends geom.Interval
	sign, across := 1.0, (func(float64) float64)(nil)
	switch m.Kind {
	case trim.Plane, trim.Scribe, trim.Cut, trim.Undercut, trim.Bevel, trim.Splice, trim.Reuse:
		if m.Kind == trim.Undercut {
			c.edge = door.FloorSide
		}
		from, _ = was.Door.Leaf.Line(c.edge)
		old, sign = hand.Leaf.Line(c.edge)
		now, _ = is.Door.Leaf.Line(c.edge)
		if c.on = m.Kind == trim.Splice || m.Kind == trim.Reuse; c.on {
			sign = -sign
		}
		ends = was.Door.Leaf.Ends(c.edge, 0)
		across = acrossLeaf(&hand.Leaf, c.edge)
	case trim.PlaneJamb, trim.PackJamb:
		c.frame, c.on = true, m.Kind == trim.PackJamb
		from, _ = was.Door.Frame.Face(c.edge)
		old, sign = hand.Frame.Face(c.edge)
		now, _ = is.Door.Frame.Face(c.edge)
		if c.on {
			sign = -sign
		}
		ends = frameEnds(&was.Door, c.edge)
		across = acrossFrame(hand, c.edge)
	case trim.Restop, trim.Follow:
		c.frame, c.stop, c.round = true, true, fine
		front, stop := frontOf(&is.Door.Frame, c.edge), is.Door.Frame.Stop(c.edge)
		ends = frameEnds(&was.Door, c.edge)
		behind := func(s float64) float64 { return front.At(s) - stop.At(s) }
		knots := bends(behind, ends, *front, *stop)
		c.place(knots, ends, tape, behind, func(float64) float64 { return 0 })
		return c, len(c.marks) > 0
	default:
		return c, false
	}
	amount := func(s float64) float64 { return sign * (now.At(s) - old.At(s)) }
	exact := func(s float64) float64 { return sign * (now.At(s) - from.At(s)) }
	c.place(bends(amount, ends, *old, *now), ends, tape, amount, across)
	any = false
	least, most := math.Inf(1), math.Inf(-1)
	for _, k := range c.marks {
		least, most = min(least, exact(k.place)), max(most, exact(k.place))
	}
	odd := func(x float64) bool { return math.Abs(toStep(x, line)-x) > fineStep/4 } // asked for finer than a line is marked
	if most-least < fineStep/2 {                                                    // gauged all along, so as finely as a gauge is set
		c.round = fine
		c.marks = slices.DeleteFunc(c.marks, func(k mark) bool { return k.check })
	}
	for _, k := range c.marks {
		by := exact(k.place)
		if m.Kind == trim.Scribe || odd(m.First) || odd(m.Last) || by > 1e-6 && toStep(by, line) == 0 {
			c.round = fine
		}
		any = any || by > 1e-6
	}
	if !any {
		return c, false
	}
	var taken geom.Profile
	for i := range c.marks {
		if k := &c.marks[i]; !k.check {
			k.amount = max(0, toStep(k.amount, c.round))
			taken = append(taken, geom.Station{At: k.place, Value: k.amount})
		}
	}
	signed := slices.Clone(taken)
	for i := range signed {
		signed[i].Value *= sign
	}
	for i := range c.marks {
		if k := &c.marks[i]; k.check {
			k.amount = taken.At(k.place)
		}
	}
	*old = old.Plus(signed)
	for i := range c.marks {
		c.marks[i].left = across(c.marks[i].place)
	}
	return c, true
}

// farApart is how far marks along an edge stand from one another at most, mm: a plane is
// checked against them on the way (common practice, no published source).
const farApart = 500.0

// bends gives the places between the ends where an amount bends, those of either profile
// where it does; rising.
func bends(amount func(float64) float64, ends geom.Interval, old, now geom.Profile) (at []float64) {
	const straight = 0.005 // mm off a straight line
	var all []float64
	for _, p := range [2]geom.Profile{old, now} {
		for _, s := range p {
			if ends.Lo+1 < s.At && s.At < ends.Hi-1 {
				all = append(all, s.At)
			}
		}
	}
	geom.Ascending(all)
	last := ends.Lo
	for i, s := range all {
		next := ends.Hi
		if i+1 < len(all) {
			next = all[i+1]
		}
		if s-last < 0.5 || next-s < 1e-9 {
			continue
		}
		t := (s - last) / (next - last)
		if math.Abs(amount(s)-(1-t)*amount(last)-t*amount(next)) > straight {
			at = append(at, s)
			last = s
		}
	}
	return at
}

// place sets the marks: the ends, the bends and as many between as a plane is checked
// against.
func (c *cut) place(bends []float64, ends geom.Interval, tape float64, amount, left func(float64) float64) {
	places := append(append([]float64{ends.Lo}, bends...), ends.Hi)
	var all []float64
	var check []bool
	for i, s := range places {
		if i > 0 {
			for n, k := math.Ceil((s-places[i-1])/farApart), 1.0; k < n; k++ {
				all, check = append(all, places[i-1]+(s-places[i-1])*k/n), append(check, true)
			}
		}
		all, check = append(all, s), append(check, false)
	}
	for i, s := range all {
		if i > 0 && i+1 < len(all) && math.Abs(amount(all[i-1]))+math.Abs(amount(s))+math.Abs(amount(all[i+1])) < 1e-6 {
			continue // nothing for a long way
		}
		at := toStep(s-ends.Lo, tape)
		if i > 0 && at <= c.marks[len(c.marks)-1].at {
			continue
		}
		here := ends.Lo + at
		if i == len(all)-1 {
			here = s // the end is where it is
		}
		c.marks = append(c.marks, mark{at, here, amount(here), left(here), check[i]})
	}
}

// acrossLeaf gives the leaf's size at a place of an edge, to the edge across.
func acrossLeaf(l *door.Leaf, e door.Edge) func(float64) float64 {
	if e.Upright() {
		return func(v float64) float64 { return l.Closing.At(v) - l.Hanging.At(v) }
	}
	return func(u float64) float64 { return l.Top.At(u) - l.Bottom.At(u) }
}

func frontOf(f *door.Frame, e door.Edge) *geom.Profile {
	return [3]*geom.Profile{&f.HingeFront, &f.LatchFront, &f.HeadFront}[min(e, door.HeadSide)]
}

// frameEnds gives the ends of a side of the frame: a jamb from the floor there up to the
// head, the head from jamb to jamb.
func frameEnds(d *door.Door, e door.Edge) geom.Interval {
	ends := d.Frame.Run(e)
	if face, _ := d.Frame.Face(e); e.Upright() {
		ends.Lo = d.Floor.At(face.At(0), 0)
	}
	return ends
}

// acrossFrame gives the opening's size at a place of a side.
func acrossFrame(d *door.Door, e door.Edge) func(float64) float64 {
	f := &d.Frame
	if e.Upright() {
		return func(y float64) float64 { return f.LatchJamb.At(y) - f.HingeJamb.At(y) }
	}
	return func(x float64) float64 { return f.Head.At(x) - d.Floor.At(x, 0) }
}
