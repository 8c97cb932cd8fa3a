package advise

import (
	"math"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
	"leafwright/geom/trim"
)

func abs(x float64) float64  { return math.Abs(x) }
func root(x float64) float64 { return math.Sqrt(x) }

// amounts gathers an answer by what it is done to.
type amounts struct {
	deeper, set [2]float64 // of the outer hinges: deeper less packing, out of the plane
	raise, low  float64
	off         [door.Edges][2]float64
	at          [door.Edges][stations]float64
	strip       [door.Edges][2]float64
	scribed     [door.Edges]bool
	steeper     float64
	stop        [door.FloorSide][2]float64
}

func (m *model) amounts() (a amounts) {
	for j := range m.use {
		x := m.x[j]
		if x <= nothing {
			continue
		}
		if m.step > 0 {
			x = math.Round(x*1e6) / 1e6 // what the solver left of a whole step
		}
		u := m.unknown(j)
		outer := 0
		if u.hinge > 0 {
			outer = 1
		}
		switch u.sort {
		case offEnd:
			a.off[u.edge][u.end] += x
		case offAt:
			a.at[u.edge][u.end] += x
			a.scribed[u.edge] = true
		case strip:
			a.strip[u.edge][u.end] += x
		case sink, unpack, pack:
			a.deeper[outer] += float64(u.sign * x)
		case setOut:
			a.set[outer] += float64(u.sign * x)
		case raise:
			a.raise += float64(u.sign * x)
		case shiftLow:
			a.low += float64(u.sign * x)
		case steeper:
			a.steeper += x
		case stopBack:
			a.stop[u.edge][u.end] += float64(u.sign * x)
		}
	}
	return a
}

// moves writes the model's answer as moves, in the order they are best done: hinges,
// then edges, strips, bevel and stops.
func (w *Work) moves(m *model) []trim.Move { return w.write(m.amounts(), m.step) }

// write writes amounts as moves; hinges between the outer two follow them by halves
// of grid, 0 exactly.
func (w *Work) write(a amounts, grid float64) (out []trim.Move) {
	d := &w.p.Piece.Door
	add := func(m trim.Move) { out = append(out, m) }
	w.perHinge(a.deeper, grid, func(i int, x float64) {
		if x > 0 {
			add(trim.Move{Kind: trim.Sink, Hinge: i, On: trim.OnLeaf, First: x})
		} else {
			add(trim.Move{Kind: trim.Pack, Hinge: i, On: trim.OnLeaf, First: -x})
		}
	})
	w.perHinge(a.set, grid, func(i int, x float64) {
		add(trim.Move{Kind: trim.Set, Hinge: i, On: trim.OnLeaf, First: x})
	})
	if abs(a.raise) > nothing {
		add(trim.Move{Kind: trim.Raise, On: trim.OnLeaf, First: a.raise})
	}
	if abs(a.low) > nothing {
		add(trim.Move{Kind: trim.Shift, Hinge: len(d.Hinges), On: trim.OnLeaf, First: a.low})
	}
	for e := range door.Edges {
		if o := a.off[e]; o[0] > nothing || o[1] > nothing {
			kind := trim.Plane
			if w.sawn(e, max(o[0], o[1])) {
				kind = trim.Cut
			}
			add(trim.Move{Kind: kind, Edge: e, First: o[0], Last: o[1]})
		}
		if a.scribed[e] {
			line := make(geom.Profile, stations)
			for k := range line {
				line[k] = geom.Station{
					At:    w.runs[e].Lo + float64(w.runs[e].Length()*float64(k))/(stations-1),
					Value: a.at[e][k],
				}
			}
			add(trim.Move{Kind: trim.Scribe, Edge: e, Line: line})
		}
		if s := a.strip[e]; s[0] > nothing || s[1] > nothing {
			add(trim.Move{Kind: trim.Splice, Edge: e, First: s[0], Last: s[1], Stock: d.Leaf.Thickness, Face: trim.Knuckle})
		}
	}
	if a.steeper > nothing {
		back := float64(d.Leaf.ClosingSetback()*d.Leaf.Thickness) + a.steeper
		add(trim.Move{Kind: trim.Bevel, Edge: door.LatchSide, Angle: bevelFor(&d.Leaf, back)})
	}
	for e, s := range a.stop {
		if abs(s[0]) > nothing || abs(s[1]) > nothing {
			add(trim.Move{Kind: trim.Restop, Edge: door.Edge(e), First: s[0], Last: s[1]})
		}
	}
	return out
}

// A cut of so much, mm, is sawn and not planed where the edge is straight, so that the
// new line is the old one moved (common practice, no published source).
const (
	sawnFrom = 8.0
	straight = 0.2
)

func (w *Work) sawn(e door.Edge, most float64) bool {
	if e.Upright() || most < sawnFrom {
		return false
	}
	line := w.p.Piece.Door.Leaf.Top
	if e == door.FloorSide {
		line = w.p.Piece.Door.Leaf.Bottom
	}
	bow, _ := line.Bow(w.runs[e])
	return abs(bow) <= straight
}

// perHinge gives each hinge its share of amounts at the outer two, one move for all
// where they are alike.
func (w *Work) perHinge(x [2]float64, grid float64, add func(hinge int, x float64)) {
	all := w.p.Piece.Door.Hinges
	if abs(x[0]) <= nothing && abs(x[1]) <= nothing {
		return
	}
	if abs(x[0]-x[1]) <= nothing {
		add(0, x[0])
		return
	}
	top, low := all[0].LeafHeight, all[len(all)-1].LeafHeight
	for i := range all {
		part := (top - all[i].LeafHeight) / (top - low)
		y := x[0] + float64((x[1]-x[0])*part)
		if grid > 0 && i > 0 && i < len(all)-1 {
			y = grid * math.Round(y/grid)
		}
		if abs(y) > nothing {
			add(i+1, y)
		}
	}
}

// trial is what came of trying moves out.
type trial struct {
	moves    []trim.Move
	piece    trim.Piece
	steps    []trim.Step
	refused  *trim.Care // the first care that forbade one
	which    int        // that move
	findings []judge.Finding
	good     bool
}

// try makes the moves, hangs the door and judges it.
func (w *Work) try(moves []trim.Move) *trial {
	t := &trial{moves: moves}
	t.piece, t.steps = trim.All(w.p.Piece, moves)
	for i := range t.steps {
		if why := t.steps[i].Why; why != nil {
			t.refused, t.which = why, i
			w.refusal = why
			return t
		}
	}
	return t
}

// judged hangs what was tried and judges it.
func (w *Work) judged(t *trial) {
	fit.Evaluate(&w.tries, &t.piece.Door)
	t.findings = judge.Verdicts(&w.tries, &t.piece.Door, &w.p.Wanted)
	t.good = true
	for i := range t.findings {
		t.good = t.good && (t.findings[i].Verdict == judge.Good || w.passed(&t.findings[i]))
	}
}

// heed takes a care that forbade a move into account: where it tells how much too
// little would be left, so much less may be taken; otherwise the part is not to be
// used. False where that leaves nothing to try.
func (m *model) heed(t *trial) bool {
	mv := &t.moves[t.which]
	less := t.refused.Need - t.refused.Left
	if !(less > 0) {
		less = 0
	}
	did := false
	for j := range m.use {
		u := m.unknown(j)
		if m.fixed[j] || m.x[j] <= nothing || !u.makes(mv) {
			continue
		}
		did = true
		most := 0.0
		if less > 0 {
			most = max(0, m.x[j]-less-m.w.p.step())
		}
		m.most[j] = most
		m.lp.SetBounds(j, min(m.least[j], most), most)
	}
	return did
}

// makes tells whether an amount of the unknown becomes part of the move.
func (u *unknown) makes(mv *trim.Move) bool {
	switch mv.Kind {
	case trim.Plane, trim.Cut:
		return u.sort == offEnd && u.edge == mv.Edge
	case trim.Scribe:
		return u.sort == offAt && u.edge == mv.Edge
	case trim.Splice:
		return u.sort == strip && u.edge == mv.Edge
	case trim.Sink:
		return u.sort == sink || u.sort == unpack
	case trim.Pack:
		return u.sort == pack
	case trim.Set:
		return u.sort == setOut
	case trim.Raise:
		return u.sort == raise
	case trim.Shift:
		return u.sort == shiftLow
	case trim.Bevel:
		return u.sort == steeper
	case trim.Restop:
		return u.sort == stopBack && u.edge == mv.Edge
	}
	return false
}
