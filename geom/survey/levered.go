package survey

import (
	"math"

	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/survey/lsq"
)

// levered are the numbers of [Gaps] as its draws have them, by levers, where hanging
// every draw would tell the same for ten times the work: how well each is known comes
// out to 0.05 mm or a fiftieth of itself, what the latch misses by to a tenth
// (TestLeversAgainstHangingEveryDraw). What bends is kept: which arris is the nearest at a place, and what holds the leaf, the
// latch or one of many places on the stops.
type levered struct {
	g     *Gaps
	lever lever
	rows  lsq.Rows
	o     observer
	spots []followed
	rests []int // of the spots, the latch, first, and those on a stop that can hold the leaf
}

// followed is a spot and its part in a number: the gap there, how it follows the
// unknowns while the leaf keeps its swing angle, and how it follows that, mm per rad.
// Of spots of one number the least gap counts.
type followed struct {
	number int // -1: it is only what may hold the leaf
	gap    float64
	row    []float64
	turn   float64
}

// So many of the draws are hung to see whether levers tell the truth: they do where no
// number is farther off than untrue and untruePart of what is not known of it. That is
// room for what they leave out, and not for what they do not see: a move that gives a
// hinge or a stop a place of its own, whatever the place it had.
const (
	checked    = 2
	untrue     = 0.1 // mm
	untruePart = 0.12
)

// byLevers works out what the draws depart, of every number; false where levers do not
// tell the truth. The door is the one whose fit the gaps have.
func (g *Gaps) byLevers(d *door.Door) bool {
	l := &levered{g: g}
	l.lever.set(g.net, d, &g.Fit)
	l.o = observer{d: d, net: g.net, rows: &l.rows}
	l.gather()
	moves := g.draws.moves
	root := sqrt(float64(len(moves)))
	value, out := make([]float64, g.numbers), make([]float64, g.numbers)
	l.read(value, nil)
	g.off = table(nil, g.numbers, len(moves))
	for s, move := range moves {
		l.read(out, move)
		for i, v := range out {
			g.off[i][s] = (v - value[i]) / root
		}
	}
	if !l.isTrue() {
		return false
	}
	g.levers = l
	g.sum(value)
	return true
}

// isTrue tells whether levers tell the truth of the draws looked at, and leaves the
// net's door the fitted one.
func (l *levered) isTrue() bool {
	g, a := l.g, l.g.draws.adj
	var f fit.Fit
	value, out := make([]float64, g.numbers), make([]float64, g.numbers)
	defer a.net.write(a.x)
	g.read(&g.Fit, value)
	n := len(g.draws.moves)
	root := sqrt(float64(n))
	for k := range checked {
		s := (2*k + 1) * n / (2 * checked)
		for i, m := range g.draws.moves[s] {
			g.draws.x[i] = a.x[i] + m
		}
		a.net.write(g.draws.x)
		g.measure(&f, out)
		for i, v := range out {
			off := v - value[i] - float64(root*g.off[i][s])
			if !(math.Abs(off) <= untrue+float64(untruePart*length(g.off[i]))) {
				return false
			}
		}
	}
	return true
}

// gather lists the spots.
func (l *levered) gather() {
	const reach = 2.0 // mm, that another arris is nearer by in no draw
	f := &l.g.Fit
	clear := f.Axis.At.X + fit.Springing
	latch := l.lever.latch()
	l.rests = append(l.rests, l.add(&latch, -1, f.LatchMiss))
	for e := fit.HingeSide; e < fit.Edges; e++ {
		p := &l.g.gaps[e]
		for i, at := range p.at {
			near, next := l.lever.nearest(e, at)
			l.add(&near, p.first+i, near.gap)
			if next.gap-near.gap < reach {
				l.add(&next, p.first+i, next.gap)
			}
		}
		if e == fit.FloorSide {
			continue
		}
		p = &l.g.stop[e]
		for i, at := range p.at {
			s := l.lever.stop(e, at)
			k := l.add(&s, p.first+i, f.Stops[e].At(at))
			if e == fit.LatchSide || e == fit.HeadSide && at > clear {
				l.rests = append(l.rests, k)
			}
		}
	}
	if f.Stops[fit.HeadSide].Range().Contains(clear) {
		s := l.lever.stop(fit.HeadSide, clear)
		l.rests = append(l.rests, l.add(&s, -1, f.Stops[fit.HeadSide].At(s.m)))
	}
	if f.StopBound {
		s := l.lever.stop(f.FirstStop, f.FirstStopAt)
		l.rests = append(l.rests, l.add(&s, -1, 0))
	}
	l.rows.Reset()
	l.strain()
	row := make([]float64, l.g.net.columns)
	l.rows.End(0, 1)
	l.rows.Scatter(row, 0, 1)
	l.spots = append(l.spots, followed{number: l.g.numbers - 2, gap: f.Strain, row: row})
}

// add lists a spot that the number follows and gives its place in the list.
func (l *levered) add(s *spot, number int, gap float64) int {
	l.rows.Reset()
	l.lever.local(&l.o, s, 1)
	var k [holds]float64
	for j := range k {
		k[j] = l.lever.by(s, j)
	}
	l.lever.spread(&l.o, &k)
	l.rows.End(0, 1)
	row := make([]float64, l.g.net.columns)
	l.rows.Scatter(row, 0, 1)
	l.spots = append(l.spots, followed{number, gap, row, l.lever.by(s, holds)})
	return len(l.spots) - 1
}

// strain notes how the strain follows the unknowns: it is how much farther apart the
// hinges' places are on the leaf than on the jamb.
func (l *levered) strain() {
	h := &l.lever.hold
	seat, bed := h.Seat[1].Sub(h.Seat[0]).Unit(), h.Bed[1].Sub(h.Bed[0]).Unit()
	k := [holds]float64{-seat.X, -seat.Y, -seat.Z, seat.X, seat.Y, seat.Z, bed.X, bed.Y, bed.Z, -bed.X, -bed.Y, -bed.Z}
	l.lever.spread(&l.o, &k)
}

// read gives the numbers when the unknowns have moved; nil is not at all.
func (l *levered) read(out []float64, move []float64) {
	at := func(s *followed) float64 {
		if move == nil {
			return s.gap
		}
		return s.gap + lsq.Dot(s.row, move)
	}
	turn := math.Inf(-1) // that the first to hold the leaf asks for
	for _, k := range l.rests {
		s := &l.spots[k]
		turn = max(turn, -at(s)/s.turn)
	}
	for i := range out {
		out[i] = math.Inf(1)
	}
	for k := range l.spots {
		s := &l.spots[k]
		v := at(s) + float64(s.turn*turn)
		if k == 0 {
			out[len(out)-1] = max(0, v)
		}
		if s.number >= 0 {
			out[s.number] = min(out[s.number], v)
		}
	}
}
