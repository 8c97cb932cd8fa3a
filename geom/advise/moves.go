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
	at          [door.Edges][closely]float64
	stations    int // of the lines edges are scribed to
	strip       [door.Edges][2]float64
	scribed     [door.Edges]bool
	steeper     float64
	stop        [door.FloorSide][2]float64
	jambDeeper  [2]float64                 // gains in the jamb of the outer hinges
	seat        bool                       // the hinges between are put right
	jamb        [door.FloorSide][2]float64 // off the faces of the frame, below 0 packed out
}

func (m *model) amounts() (a amounts) {
	a.seat = m.hung
	for j := range m.use {
		x := m.x[j]
		if x <= nothing || m.step == 0 && x < trim.Finest {
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
			a.scribed[u.edge], a.stations = true, u.of
		case strip:
			a.strip[u.edge][u.end] += x
		case sink, unpack, pack:
			a.deeper[outer] += float64(u.sign * x)
		case sinkJamb:
			a.jambDeeper[outer] += x
		case jambOff, jambOn:
			a.jamb[u.edge][u.end] += float64(u.sign * x)
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

// unrounded writes it so before it is rounded.
func (w *Work) unrounded(m *model) []trim.Move {
	m.step = 0
	return w.moves(m)
}

// write writes amounts as moves; hinges between the outer two follow them by halves
// of grid, 0 exactly.
func (w *Work) write(a amounts, grid float64) (out []trim.Move) {
	d := &w.p.Piece.Door
	add := func(m trim.Move) { out = append(out, m) }
	each := func(kind trim.Kind, on trim.Part, x []float64) {
		for i, v := range x {
			if i == 0 && all(x, v) && abs(v) > nothing {
				add(trim.Move{Kind: kind, On: on, First: v})
				break
			}
			if abs(v) > nothing {
				add(trim.Move{Kind: kind, Hinge: i + 1, On: on, First: v})
			}
		}
	}
	h := w.perHinges(&a, grid)
	pack, jamb, sink := make([]float64, len(h.deeper)), make([]float64, len(h.deeper)), make([]float64, len(h.deeper))
	for i, x := range h.deeper {
		pack[i], jamb[i], sink[i] = packingFirst(&d.Hinges[i], x)
	}
	for i, x := range h.jambDeeper {
		if x < 0 {
			jamb[i] -= x
			h.jambDeeper[i] = 0
		}
	}
	each(trim.Pack, trim.OnLeaf, pack)
	each(trim.Pack, trim.OnJamb, jamb)
	each(trim.Sink, trim.OnLeaf, sink)
	each(trim.Sink, trim.OnJamb, h.jambDeeper)
	each(trim.Set, trim.OnJamb, h.jambSet)
	each(trim.Set, trim.OnLeaf, h.set)
	for i, x := range h.up {
		if abs(x) > nothing {
			add(trim.Move{Kind: trim.Shift, Hinge: i + 1, On: trim.OnLeaf, First: x})
		}
	}
	switch {
	case abs(a.low) <= nothing && abs(a.raise) > nothing:
		add(trim.Move{Kind: trim.Raise, On: w.liftOn(), First: a.raise})
	case abs(a.low) > nothing: // one move for a hinge, not two that undo each other
		up := make([]float64, len(d.Hinges))
		for i := range up {
			up[i] = -a.raise
		}
		up[len(up)-1] += a.low
		each(trim.Shift, trim.OnLeaf, up)
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
			line := make(geom.Profile, a.stations)
			for k := range line {
				line[k] = geom.Station{
					At:    w.runs[e].Lo + float64(w.runs[e].Length()*float64(k))/float64(a.stations-1),
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
	for e, s := range a.jamb {
		if s[0] > nothing || s[1] > nothing {
			add(trim.Move{Kind: trim.PlaneJamb, Edge: door.Edge(e), First: max(0, s[0]), Last: max(0, s[1])})
		}
		if s[0] < -nothing || s[1] < -nothing {
			add(trim.Move{Kind: trim.PackJamb, Edge: door.Edge(e), First: max(0, -s[0]), Last: max(0, -s[1])})
		}
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

func all(x []float64, v float64) bool {
	for _, y := range x {
		if y != v {
			return false
		}
	}
	return true
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
		return u.sort == sink && mv.On != trim.OnJamb || u.sort == sinkJamb && mv.On == trim.OnJamb
	case trim.Pack:
		return u.sort == pack && mv.First > 0 || u.sort == unpack && mv.First < 0
	case trim.Set:
		return u.sort == setOut
	case trim.Raise:
		return u.sort == raise
	case trim.Shift:
		return u.sort == shiftLow || u.sort == raise
	case trim.Bevel:
		return u.sort == steeper
	case trim.PlaneJamb:
		return u.sort == jambOff && u.edge == mv.Edge
	case trim.PackJamb:
		return u.sort == jambOn && u.edge == mv.Edge
	case trim.Restop:
		return u.sort == stopBack && u.edge == mv.Edge
	}
	return false
}
