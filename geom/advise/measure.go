package advise

import (
	"math"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
)

// place is one thing that is measured of a hung door.
type place struct {
	subject judge.Subject
	edge    door.Edge
	at      float64
	lo, hi  float64 // what it must keep; infinite where it need not
	sigma   float64 // how well it is known
}

// stopsClear is how far, mm, at least, stops are taken out of the leaf's way, so that it
// closes to where the latch is home: a gap to a stop is then what it would be with the
// latch home, and follows everything evenly.
const stopsClear = 10.0

// shifted gives the door with its stops out of the way.
func (w *Work) shifted(d door.Door) door.Door {
	f := &d.Frame
	f.HingeStop, f.LatchStop, f.HeadStop = f.HingeStop.Shift(-w.back), f.LatchStop.Shift(-w.back), f.HeadStop.Shift(-w.back)
	return d
}

// listPlaces names what is measured: every gap where leaf or frame bends and where it
// is least and most, the swing, and what hinges and way through must keep.
func (w *Work) listPlaces() {
	d, f, want := &w.p.Piece.Door, &w.base, &w.p.Wanted
	up, over := f.Pose.Origin.Y, f.Pose.Origin.X
	frame := [door.Edges]geom.Profile{d.Frame.HingeJamb, d.Frame.LatchJamb, d.Frame.Head}
	leaf := [door.Edges]geom.Profile{d.Leaf.Hanging, d.Leaf.Closing, d.Leaf.Top, d.Leaf.Bottom}
	stops := [door.FloorSide]geom.Profile{d.Frame.HingeStop, d.Frame.LatchStop, d.Frame.HeadStop}
	faces := [2]geom.Profile{d.Leaf.HangingFace, d.Leaf.ClosingFace}
	sigma := w.p.Sigma
	if sigma == nil {
		sigma = &Sigmas{}
	}
	var at []float64
	begin := func(over geom.Interval, more ...float64) {
		at = append(append(at[:0], over.Lo, over.Hi), more...)
	}
	add := func(p geom.Profile, lift float64) {
		for _, s := range p {
			at = append(at, s.At+lift)
		}
	}
	keep := func(subject judge.Subject, e door.Edge, over geom.Interval, l judge.Limits, known geom.Profile) {
		geom.Ascending(at)
		last := math.Inf(-1)
		for _, s := range at {
			if over.Contains(s) && (s-last > alike || s == over.Hi) {
				w.places = append(w.places, place{subject, e, s, max(0, l.Least), upper(l), held(known, s)})
				last = s
			}
		}
	}
	for e := range door.Edges {
		g := &f.Gaps[e]
		if len(g.Pieces) == 0 {
			continue
		}
		lift := over
		if e.Upright() {
			lift = up
		}
		begin(g.Range(), g.LeastAt, g.MostAt)
		add(frame[e], 0)
		add(leaf[e], lift)
		if e == door.FloorSide {
			at = append(at, d.Floor.Radii...)
		}
		n := stations
		if w.closely {
			n = closely
		}
		for k := range n {
			at = append(at, w.runs[e].Lo+float64(w.runs[e].Length()*float64(k))/float64(n-1)+lift)
		}
		keep(judge.ClosedGap, e, g.Range(), want.Gaps[e], sigma.Gap[e])
	}
	for e := door.HingeSide; e <= door.HeadSide; e++ {
		g := &f.Stops[e]
		if len(g.Pieces) == 0 {
			continue
		}
		begin(g.Range(), g.LeastAt, g.MostAt)
		add(stops[e], 0)
		add(frame[e], 0)
		if e.Upright() {
			add(faces[0], up)
			add(faces[1], up)
		}
		keep(judge.StopGap, e, g.Range(), want.Stop, sigma.Stop[e])
	}
	for e := range door.Edges {
		least := want.Swing.Least
		if e == door.FloorSide {
			least = want.SwingFloor.Least
		}
		if f.Swing[e].Angle <= f.Closed+1e-3 {
			least = min(least, want.Gaps[e].Least) // closed, the closed gap's own limits rule
		}
		// What is least may be least elsewhere when work is done there: several places.
		from := len(w.places)
		begin(f.Gaps[e].Range(), w.swingAt(e))
		for k := range stations {
			at = append(at, f.Gaps[e].Range().Lo+float64(f.Gaps[e].Range().Length()*float64(k))/(stations-1))
		}
		if e == door.FloorSide || len(f.Gaps[e].Pieces) == 0 {
			w.places = append(w.places, place{judge.SwingGap, e, w.swingAt(e), max(0, least), math.Inf(1), 0})
		} else {
			keep(judge.SwingGap, e, f.Gaps[e].Range(), judge.Limits{Least: least}, nil)
		}
		for i := from; i < len(w.places); i++ {
			w.places[i].sigma = w.swingKnown(sigma, &w.places[i])
		}
	}
	play := hingePlay
	switch {
	case w.p.Sigma != nil:
		play = math.Inf(1)
	case abs(f.Strain) > hingePlay: // who moves a hinge for it moves it all the way, to a step
		play = min(play, w.p.step()/2)
	}
	w.places = append(w.places, place{judge.HingeLine, 0, 0, -play, play, 0})
	if want.ClearWidth > 0 {
		w.places = append(w.places, place{judge.ClearWay, door.LatchSide, 0, want.ClearWidth, math.Inf(1), 0})
	}
}

// alike is how near, mm, two places are told apart no longer, and hingePlay what
// hinges may be out of step; the latter as package judge has it.
const (
	alike     = 8.0
	hingePlay = 0.5
)

func upper(l judge.Limits) float64 {
	if l.Most > 0 {
		return l.Most
	}
	return math.Inf(1)
}

// measure hangs the door, its stops out of the way, and reads every place.
func (w *Work) measure(d door.Door) []float64 {
	away := w.shifted(d)
	fit.Evaluate(&w.hung, &away)
	return w.read(&w.hung)
}

// measureClosed is measure where closed tells that nothing is asked of the swing, which
// then reads as whatever was swung last.
func (w *Work) measureClosed(d door.Door, closed bool) []float64 {
	if !closed {
		return w.measure(d)
	}
	away := w.shifted(d)
	fit.EvaluateClosed(&w.hung, &away)
	return w.read(&w.hung)
}

// read reads every place off a fit whose stops were taken back.
func (w *Work) read(f *fit.Fit) []float64 {
	g := make([]float64, len(w.places))
	for i, p := range w.places {
		switch p.subject {
		case judge.ClosedGap:
			g[i] = f.Gaps[p.edge].At(p.at)
		case judge.StopGap:
			g[i] = f.Stops[p.edge].At(p.at) - w.back
		case judge.SwingGap:
			g[i] = swung(f, p.edge, p.at)
		case judge.HingeLine:
			g[i] = f.Strain
		case judge.ClearWay:
			g[i] = f.ClearToStop
		}
	}
	return g
}

// column gives how every place follows the unknown, per mm, worked out when first
// asked for.
func (w *Work) column(u *unknown) []float64 {
	c := w.columns[u.column]
	if c == nil {
		c = w.follow(u)
		w.columns[u.column] = c
	}
	return c
}

// small is the change a column is taken over, mm.
const small = 0.25

func (w *Work) follow(u *unknown) []float64 {
	if u.sort == stopBack { // a stop has no say in anything else, the latch being home
		c := make([]float64, len(w.places))
		over := w.stopRuns[u.edge]
		h := hat(over, u.end, 2)
		for i, p := range w.places {
			if p.subject == judge.StopGap && p.edge == u.edge {
				c[i] = h.At(p.at)
			}
		}
		return c
	}
	switch {
	case u.sort == jambOff || u.sort == jambOn:
		return w.followJamb(u)
	case u.sort == offEnd || u.sort == offAt || u.sort == strip && u.edge != door.HingeSide:
		return w.followEdge(u)
	}
	one := *u
	one.sign = 1
	closed := u.sort != steeper && u.sort != sinkJamb // a gain in the jamb tilts the pins
	c := w.measureClosed(w.shape(&one, small), closed && w.p.Wanted.ClearWidth <= 0)
	for i := range c {
		c[i] = (c[i] - w.start[i]) / small
		if math.IsNaN(c[i]) || math.IsInf(c[i], 0) {
			c[i] = 0
		}
	}
	if !closed {
		return c
	}
	// The least of a swing may lie anywhere along an edge that is even, and jumps; the
	// clearance of the place where it lies now follows as the closed gap there does.
	for i, p := range w.places {
		if p.subject == judge.SwingGap {
			c[i] = w.gapFollows(c, p.edge, p.at)
		}
	}
	return c
}

// swingAt is where along an edge its clearance through the swing is least.
func (w *Work) swingAt(e door.Edge) float64 {
	s := &w.base.Swing[e]
	switch {
	case e.Upright():
		return s.At.Y
	case e == door.FloorSide:
		return s.Leaf.X + w.base.Pose.Origin.X
	}
	return s.At.X
}

// swung is an edge's clearance through the swing at a place: as much more than the least of
// all as the closed gap there is more than where that is. Over the floor, which is not
// level, it is the least.
func swung(f *fit.Fit, e door.Edge, at float64) float64 {
	s, g := &f.Swing[e], &f.Gaps[e]
	if e == door.FloorSide || len(g.Pieces) == 0 {
		return s.Least
	}
	where := s.At.X
	if e.Upright() {
		where = s.At.Y
	}
	over := g.Range()
	hold := func(at float64) float64 { return g.At(max(over.Lo, min(over.Hi, at))) }
	return max(s.Least, s.Least+hold(at)-hold(where))
}

// swingKnown is how well a place's clearance through the swing is known.
func (w *Work) swingKnown(known *Sigmas, p *place) float64 {
	s := held(known.Gap[p.edge], p.at)
	if p.edge == door.FloorSide {
		s = root(float64(s*s) + float64(known.Floor*known.Floor))
	}
	return s
}

// gapFollows gives how the closed gap of an edge follows at a place, by the places on
// either side of it.
func (w *Work) gapFollows(c []float64, e door.Edge, at float64) float64 {
	last := -1
	for i, p := range w.places {
		if p.subject != judge.ClosedGap || p.edge != e {
			continue
		}
		if p.at >= at {
			if last < 0 {
				return c[i]
			}
			q := &w.places[last]
			return c[last] + float64((c[i]-c[last])*((at-q.at)/(p.at-q.at)))
		}
		last = i
	}
	if last < 0 {
		return 0
	}
	return c[last]
}

// followJamb gives how places follow what comes off the face of a jamb or the head: the
// gap there and the clearance through the swing, and nothing else.
func (w *Work) followJamb(u *unknown) []float64 {
	c := make([]float64, len(w.places))
	h := hat(w.stopRuns[u.edge], u.end, 2)
	for i, p := range w.places {
		if p.edge != u.edge {
			continue
		}
		switch p.subject {
		case judge.ClosedGap:
			c[i] = held(h, p.at)
		case judge.SwingGap:
			c[i] = held(h, p.at)
		}
	}
	return c
}

// followEdge gives how places follow what comes off an edge: the edge's own gap by
// what comes off there, and its clearance through the swing by what comes off where it
// is least. What hangs on the edge stays where it was, so that nothing else follows,
// but for hundredths.
func (w *Work) followEdge(u *unknown) []float64 {
	c := make([]float64, len(w.places))
	n := 2
	if u.sort == offAt {
		n = u.of
	}
	h := hat(w.runs[u.edge], u.end, n)
	lift := w.base.Pose.Origin.X
	if u.edge.Upright() {
		lift = w.base.Pose.Origin.Y
	}
	for i, p := range w.places {
		if p.edge != u.edge {
			continue
		}
		if p.subject == judge.ClosedGap || p.subject == judge.SwingGap {
			c[i] = held(h, p.at-lift)
		}
	}
	return c
}
