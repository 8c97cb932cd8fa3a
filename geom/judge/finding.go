package judge

import (
	"math"
	"slices"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fit"
)

// Subject is what a finding is about.
type Subject int

// The subjects, in the order they are told when their verdicts are alike.
const (
	ClosedGap  Subject = iota // the gap along an edge, leaf closed
	Latching                  // whether the latch comes home, or a stop holds the leaf
	StopGap                   // the gap to a stop
	SwingGap                  // the least clearance at a jamb or the head while swinging
	SwingFloor                // the least clearance over the floor while swinging
	HingeLine                 // pins out of one line, or hinges at odds between leaf and jamb
	ClearWay                  // the free width at 90°
)

// Finding is one thing to say about a fit.
type Finding struct {
	Subject Subject
	Edge    fit.Edge
	Verdict Verdict
	// Stretch is where the gap is out of its limits, in places along the edge (y
	// upright, x across); where it is good, the whole edge.
	Stretch geom.Interval
	// Whole is all the places of that gap.
	Whole geom.Interval
	// Binding is the part of the stretch where the gap is below zero; empty when
	// there is none.
	Binding geom.Interval
	// Worst is the value in mm farthest out of limits and At its place; Other is
	// the stretch's other extreme. A good gap has its least and its most.
	Worst, At, Other float64
	// Angle is the swing angle of a finding about the swing, and Opened tells that
	// it is not the closed position.
	Angle  geom.Angle
	Opened bool
	Limits Limits
	Causes []Cause
}

// short gives how far the finding is out of its limits, mm, never below 0.
func (f Finding) short() float64 {
	if f.Subject == HingeLine {
		return max(0, f.Worst-f.Limits.Most)
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
	latchPlay = 0.5 // a latch that misses by less is eased with a file
	hingePlay = 0.5 // pins out of line, or hinges out of step, by less give a little
)

// standing is the swing below which a leaf is as good as closed.
const standing = 0.01 * geom.Degree

// Findings says how a fit, evaluated from the door, stands to what is wanted:
// every gap, the latch, the stops and the swing, worst first, each with its
// causes. Good ones are there too.
func Findings(f *fit.Fit, d *door.Door, w *Wanted) []Finding {
	var all []Finding
	for e := fit.HingeSide; e < fit.Edges; e++ {
		all = append(all, alongEdge(ClosedGap, e, f.Gaps[e].Curve, w.Gaps[e])...)
	}
	all = append(all, latching(f, d))
	for e := fit.HingeSide; e <= fit.HeadSide; e++ {
		all = append(all, atStop(f, e, w.Stop)...)
	}
	all = append(all, swinging(f, w)...)
	all = append(all, hingeLine(f, d))
	all = append(all, Finding{
		Subject: ClearWay, Edge: fit.LatchSide, Verdict: clearVerdict(f.ClearToStop, w.ClearWidth),
		Worst: f.ClearToStop, Other: f.ClearWidth, Limits: Limits{Least: w.ClearWidth},
		Stretch: geom.Empty(), Whole: geom.Empty(), Binding: geom.Empty(),
	})
	findCauses(f, d, w, all)
	slices.SortStableFunc(all, func(a, b Finding) int {
		if a.Verdict != b.Verdict {
			return int(a.Verdict) - int(b.Verdict)
		}
		if a.Verdict == Good {
			return 0
		}
		return cmp(b.short(), a.short())
	})
	return all
}

func cmp(a, b float64) int {
	switch {
	case a < b:
		return -1
	case a > b:
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
	for _, at := range c.Below(max(0, l.Least)-rounding, nil) {
		part := c.Within(at)
		least, leastAt, most, _ := part.Extremes()
		f := Finding{
			Subject: s, Edge: e, Verdict: l.Judge(least), Stretch: at, Whole: whole, Binding: geom.Empty(),
			Worst: least, At: leastAt, Other: most, Limits: l,
		}
		for _, b := range part.Below(-rounding, nil) {
			f.Binding = f.Binding.With(b.Lo).With(b.Hi)
		}
		out = append(out, f)
	}
	if l.Most > 0 {
		for _, at := range c.Above(l.Most+rounding, nil) {
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

// latching tells whether the latch comes home. Worst is the distance it still has
// to go, below zero.
func latching(f *fit.Fit, d *door.Door) Finding {
	out := Finding{
		Subject: Latching, Edge: fit.LatchSide, Verdict: Good, Angle: f.Closed,
		At: d.Latch.Height, Stretch: geom.Empty(), Whole: geom.Empty(), Binding: geom.Empty(),
	}
	if f.StopBound {
		out.Worst = -f.LatchMiss
		out.Edge, out.At = contact(f)
		switch {
		case f.LatchMiss > latchPlay:
			out.Verdict = Binds
		case f.LatchMiss > rounding:
			out.Verdict = Tight
		}
	}
	return out
}

// contact gives the stop that holds the leaf, and where.
func contact(f *fit.Fit) (fit.Edge, float64) {
	if l, h := &f.Stops[fit.LatchSide], &f.Stops[fit.HeadSide]; h.Least < l.Least {
		return fit.HeadSide, h.LeastAt
	}
	return fit.LatchSide, f.Stops[fit.LatchSide].LeastAt
}

// atStop gives the findings of a gap to a stop. Where the leaf rests on its stop
// the touch itself is told by [Latching]; a stop in the leaf's way near the hinges
// is told here as a gap below zero.
func atStop(f *fit.Fit, e fit.Edge, l Limits) []Finding {
	c := f.Stops[e].Curve
	if f.StopBound {
		l.Least = 0
	}
	return alongEdge(StopGap, e, c, l)
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
		if !opening && v != Good {
			v = Good // no worse than closed, where it is told
		}
		told := f.Gaps[e].Least < w.Gaps[e].Least-rounding // the closed gap says it
		if e != fit.LatchSide && e != fit.FloorSide && (v == Good || told) {
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
