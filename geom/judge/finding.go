package judge

import (
	"cmp"
	"math"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fit"
)

// Subject is what a finding is about.
type Subject int

// The subjects, in the order good findings are told.
const (
	ClosedGap  Subject = iota // the gap along an edge, leaf closed
	Latching                  // whether the latch comes home, or a stop holds the leaf
	StopGap                   // the gap to a stop
	SwingGap                  // the least clearance at a jamb or the head while swinging
	SwingFloor                // the least clearance over the floor while swinging
	HingeLine                 // pins out of one line, or hinges at odds between leaf and jamb
	ClearWay                  // the free width at 90°
	LetGo                     // how the leaf swings by itself
)

// Finding is one thing to say about a fit.
type Finding struct {
	Subject Subject
	Edge    fit.Edge
	Verdict Verdict
	// Stretch is where the gap does not keep its limits, in places along the edge (y
	// upright, x across); where it is good, the whole edge.
	Stretch geom.Interval
	// Whole is all the places of that gap.
	Whole geom.Interval
	// Binding is the part of the stretch where the gap binds; empty when there is none.
	Binding geom.Interval
	// Worst is the value in mm farthest out of limits and At its place; Other is
	// the stretch's other extreme. A good gap has its least and its most.
	Worst, At, Other float64
	// Angle is the swing angle of the leaf: where it is closed for a finding about
	// the latch, where it comes nearest for one about the swing; Opened tells that
	// the latter is not the closed position.
	Angle  geom.Angle
	Opened bool
	Limits Limits
	Causes []Cause
	// Of a door that rests on readings: half the interval that holds the truth nine
	// times out of ten, mm, of Worst and of Other, and the chances of each verdict.
	Margin, OtherMargin float64
	Odds                Odds
}

// short gives how far the finding is out of its limits, mm, never below 0.
func (f Finding) short() float64 {
	switch f.Subject {
	case HingeLine:
		return max(0, f.Worst-f.Limits.Most)
	case LetGo:
		return f.Other - f.Limits.Most
	}
	switch f.Verdict {
	case Binds, Tight:
		return f.Limits.Least - f.Worst
	case Slack:
		return f.Worst - f.Limits.Most
	}
	return 0
}

// Everyday sizes of what is too much, in mm. Common practice, no published source.
const (
	latchPlay = 0.5  // a latch that misses by less is eased with a file
	hingePlay = 0.5  // pins out of line, or hinges out of step, by less give a little
	heeded    = 0.05 // a stop that holds the leaf by less gives way to a push
)

// standing is the swing below which a leaf is as good as closed.
const standing = 0.01 * geom.Degree

// Findings says how a fit, evaluated from the door, stands to what is wanted:
// every gap, the latch, the stops and the swing, worst first, each with its
// causes. Good ones are there too, and before them how the leaf swings by itself, if it
// does.
func Findings(f *fit.Fit, d *door.Door, w *Wanted) []Finding {
	all := append(letGo(f, d), gather(f, d, w)...)
	findCauses(f, d, w, all)
	rank(all)
	return all
}

// Verdicts gives the verdicts among these, in the same order, without their causes, which
// take by far the longest to find: a leaf that swings by itself is none.
func Verdicts(f *fit.Fit, d *door.Door, w *Wanted) []Finding {
	all := gather(f, d, w)
	rank(all)
	return all
}

// gather gives every finding, edge by edge.
func gather(f *fit.Fit, d *door.Door, w *Wanted) []Finding {
	var all []Finding
	for e := fit.HingeSide; e < fit.Edges; e++ {
		all = append(all, alongEdge(ClosedGap, e, f.Gaps[e].Curve, w.Gaps[e])...)
	}
	all = append(all, latching(f, d))
	held := hingeBoundStop(f)
	for e := fit.HingeSide; e <= fit.HeadSide; e++ {
		for _, a := range atStop(f, e, w.Stop) {
			if held && e != fit.HingeSide && a.Verdict == Slack {
				continue // the leaf stands off because it is held at the hinges
			}
			all = append(all, a)
		}
	}
	all = append(all, swinging(f, w)...)
	all = append(all, hingeLine(f, d))
	all = append(all, Finding{
		Subject: ClearWay, Edge: fit.LatchSide, Verdict: clearVerdict(f.ClearToStop, w.ClearWidth),
		Worst: f.ClearToStop, Other: f.ClearWidth, Limits: Limits{Least: w.ClearWidth},
		Stretch: geom.Empty(), Whole: geom.Empty(), Binding: geom.Empty(),
	})
	return all
}

// rank puts the worst findings first.
func rank(all []Finding) {
	geom.Order(all, func(a, b Finding) int {
		if a.Verdict != b.Verdict {
			return int(a.Verdict) - int(b.Verdict)
		}
		if a.Verdict == Good {
			return 0
		}
		if h := hingeBound(b) - hingeBound(a); h != 0 {
			return h
		}
		if a.Subject == ClearWay || b.Subject == ClearWay {
			return int(a.Subject) - int(b.Subject) // a way in is no gap to be measured against one
		}
		return cmp.Compare(b.short(), a.short())
	})
}

// hingeBoundStop tells whether a stop is in the leaf's way at the hinges.
func hingeBoundStop(f *fit.Fit) bool { return f.Stops[fit.HingeSide].Least < -heeded }

// hingeBound is 1 for a leaf that bears at the hinges: what the rest of it then
// does, the miss at the latch above all, is no measure.
func hingeBound(f Finding) int {
	if f.Edge == fit.HingeSide && f.Verdict == Binds && f.Subject != SwingGap {
		return 1
	}
	return 0
}

// Worst gives the worst verdict among findings.
func Worst(all []Finding) Verdict {
	worst := Good
	for _, f := range all {
		worst = min(worst, f.Verdict)
	}
	return worst
}

// alongEdge gives one finding for each stretch of a curve out of its limits, or
// one good finding for the whole.
func alongEdge(s Subject, e fit.Edge, c fit.Curve, l Limits) []Finding {
	if len(c.Pieces) == 0 {
		return nil
	}
	var out []Finding
	whole := c.Range()
	low, high := l.Kept()
	for _, at := range geom.Joined(c.Below(low, nil), together) {
		part := c.Within(at)
		least, leastAt, most, _ := part.Extremes()
		f := Finding{
			Subject: s, Edge: e, Verdict: l.Judge(least), Stretch: at, Whole: whole, Binding: geom.Empty(),
			Worst: least, At: leastAt, Other: most, Limits: l,
		}
		for _, b := range part.Below(l.Bind(), nil) {
			f.Binding = f.Binding.With(b.Lo).With(b.Hi)
		}
		out = append(out, f)
	}
	if l.Most > 0 {
		for _, at := range geom.Joined(c.Above(high, nil), together) {
			least, _, most, mostAt := c.Within(at).Extremes()
			out = append(out, Finding{
				Subject: s, Edge: e, Verdict: Slack, Stretch: at, Whole: whole, Binding: geom.Empty(),
				Worst: most, At: mostAt, Other: least, Limits: l,
			})
		}
	}
	if out == nil {
		least, leastAt, most, _ := c.Extremes()
		out = append(out, Finding{
			Subject: s, Edge: e, Verdict: Good, Stretch: whole, Whole: whole, Binding: geom.Empty(),
			Worst: least, At: leastAt, Other: most, Limits: l,
		})
	}
	return out
}

// together is how far in mm two stretches may lie apart and still be told as one: no
// plane works in a narrower place.
const together = 10.0

// latching tells whether the latch comes home. Worst is the distance it still has
// to go, below zero.
func latching(f *fit.Fit, d *door.Door) Finding {
	out := Finding{
		Subject: Latching, Edge: fit.LatchSide, Verdict: Good, Angle: f.Closed,
		At: d.Latch.Height, Stretch: geom.Empty(), Whole: geom.Empty(), Binding: geom.Empty(),
	}
	if f.StopBound && f.LatchMiss > heeded {
		out.Worst = -f.LatchMiss
		out.Edge, out.At = f.FirstStop, f.FirstStopAt
		out.Whole = f.Stops[f.FirstStop].Range()
		out.Verdict = Tight
		if f.LatchMiss > latchPlay {
			out.Verdict = Binds
		}
	}
	return out
}

// atStop gives the findings of a gap to a stop. Where the leaf rests on its stop
// the touch itself is told by [Latching], and there it may come as near as it likes;
// a stop in the leaf's way near the hinges is told here as a gap below zero.
func atStop(f *fit.Fit, e fit.Edge, l Limits) []Finding {
	asked := l
	if f.StopBound && e != fit.HingeSide {
		l.Least = 0
	}
	all := alongEdge(StopGap, e, f.Stops[e].Curve, l)
	for i := range all {
		all[i].Limits = asked
	}
	return all
}

// swinging gives the findings of the swing: for the closing edge and the floor
// always, for hanging edge and head where they foul only while swinging.
func swinging(f *fit.Fit, w *Wanted) []Finding {
	var out []Finding
	for e := fit.HingeSide; e < fit.Edges; e++ {
		s := f.Swing[e]
		l, subject := w.Swing, SwingGap
		if e == fit.FloorSide {
			l, subject = w.SwingFloor, SwingFloor
		}
		l.Most = 0
		v := l.Judge(s.Least)
		opening := s.Angle > f.Closed+standing
		closed := w.Gaps[e].Judge(f.Gaps[e].Least)
		if v == Tight && !opening && closed > Tight {
			v = Good // closed, over a threshold say, the closed gap's own limits rule
		}
		if v != Good && closed <= v {
			continue // the closed gap says it
		}
		if v == Good && e != fit.LatchSide && e != fit.FloorSide {
			continue
		}
		at := s.At.X
		if e.Upright() {
			at = s.At.Y
		}
		out = append(out, Finding{
			Subject: subject, Edge: e, Verdict: v, Worst: s.Least, Other: s.Least, At: at, Angle: s.Angle, Opened: opening,
			Limits: l, Stretch: geom.Empty(), Whole: geom.Empty(), Binding: geom.Empty(),
		})
	}
	return out
}

// hingeLine tells whether the hinges agree: the worst of pins out of line and of
// the outer hinges' spacing on leaf and jamb. At is the hinge's height.
func hingeLine(f *fit.Fit, d *door.Door) Finding {
	out := Finding{
		Subject: HingeLine, Verdict: Good, Worst: math.Abs(f.Strain), Other: f.Strain,
		At:     d.Hinges[len(d.Hinges)-1].JambHeight,
		Limits: Limits{Most: hingePlay}, Stretch: geom.Empty(), Whole: geom.Empty(), Binding: geom.Empty(),
	}
	for i := 1; i < len(d.Hinges)-1; i++ {
		if off := f.OutOfLine(i); off > out.Worst {
			out.Worst, out.Other, out.At = off, 0, d.Hinges[i].JambHeight
		}
		if off := f.Unseated(i); off > out.Worst {
			out.Worst, out.Other, out.At = off, 0, d.Hinges[i].JambHeight
		}
	}
	if out.Worst > hingePlay {
		out.Verdict = Tight
	}
	return out
}

func clearVerdict(clear, wanted float64) Verdict {
	if clear < wanted-rounding {
		return Tight
	}
	return Good
}
