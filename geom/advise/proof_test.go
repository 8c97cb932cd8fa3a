package advise

import (
	"math"
	"math/rand/v2"
	"reflect"
	"testing"

	"leafwright/geom"
	"leafwright/geom/advise/lp"
	"leafwright/geom/door"
	"leafwright/geom/survey"
	"leafwright/geom/trim"

	"gonum.org/v1/gonum/mat"
	simplex "gonum.org/v1/gonum/optimize/convex/lp"
)

// other solves a program by gonum's simplex: every variable from its lower bound up,
// one slack for each bound that is finite. ok is false where it gives no answer.
func other(s *lp.Solver) (z float64, feasible, ok bool) {
	n := len(s.Cost())
	type line struct {
		a         []float64
		rhs, free float64
	}
	var lines []line
	shift := make([]float64, n)
	for j := range n {
		lo, hi := s.Bounds(j)
		shift[j] = lo
		a := make([]float64, n)
		a[j] = 1
		lines = append(lines, line{a, hi - lo, 1})
	}
	for i := range s.Rows() {
		lo, hi := s.Bounds(n + i)
		a := s.Row(i)
		off := 0.0
		for j := range a {
			off += a[j] * shift[j]
		}
		if !math.IsInf(lo, 0) {
			lines = append(lines, line{a, lo - off, -1})
		}
		if !math.IsInf(hi, 0) {
			lines = append(lines, line{a, hi - off, 1})
		}
	}
	A, b, c := mat.NewDense(len(lines), n+len(lines), nil), make([]float64, len(lines)), make([]float64, n+len(lines))
	copy(c, s.Cost())
	for i, l := range lines {
		for j, x := range l.a {
			A.Set(i, j, x)
		}
		A.Set(i, n+i, l.free)
		b[i] = l.rhs
	}
	defer func() {
		if recover() != nil {
			ok = false
		}
	}()
	z, _, err := simplex.Simplex(c, A, b, 1e-10, nil)
	for j := range n {
		z += s.Cost()[j] * shift[j]
	}
	switch err {
	case nil:
		return z, true, true
	case simplex.ErrInfeasible:
		return 0, false, true
	}
	return 0, false, false
}

// TestSameOptimum takes the programs of random doors and has another solver solve them.
// The rows an answer does not break are not made; that none is broken is checked here,
// so that the optimum is the whole program's.
func TestSameOptimum(t *testing.T) {
	most := (many() + 3) / 4 // the other solver takes its time
	same, none, mute := 0, 0, 0
	for n := range most {
		c := seeded(4, uint64(n))
		piece := c.oldDoor()
		if len(piece.Door.Check()) > 0 {
			continue
		}
		for _, prefer := range Preferences {
			p := &Problem{Piece: piece, Wanted: band(0.3 + 1.2*c.Float64()), Wishes: Wishes{Prefer: prefer}}
			w := Start(p)
			w.Step()
			for i := range w.families {
				m := w.program(&w.families[i])
				st := m.solve()
				z, feasible, ok := other(m.lp)
				if !ok {
					mute++
					continue
				}
				if feasible != (st == lp.Optimal) {
					t.Fatalf("door %d, %s, %s: the other solver says feasible %v, this one %d", n, prefer, w.families[i].family, feasible, st)
				}
				if !feasible {
					none++
					if !(m.lp.Contradicts(m.lp.Ray()) > 0) {
						t.Fatalf("door %d, %s: no proof", n, w.families[i].family)
					}
					continue
				}
				same++
				if !m.lp.Prove() {
					t.Errorf("door %d, %s: no proof", n, w.families[i].family)
				}
				v := m.lp.Value()
				if math.Abs(z-v) > 1e-6*max(1, math.Abs(z)) {
					t.Errorf("door %d, %s, %s: the other solver has %.10g, this one %.10g", n, prefer, w.families[i].family, z, v)
				}
				if b := m.lp.Bound(m.lp.Dual()); math.Abs(v-b) > 1e-9*max(1, math.Abs(v)) {
					t.Errorf("door %d, %s: optimum %.15g, its proof %.15g", n, w.families[i].family, v, b)
				}
				for k, g := range m.gaps() {
					if g < m.lo[k]-1e-6 || g > m.hi[k]+1e-6 {
						t.Errorf("door %d, %s: place %+v is %g", n, w.families[i].family, w.places[k], g)
					}
				}
			}
		}
	}
	t.Logf("%d with the same optimum, %d with none, %d the other solver gave up on", same, none, mute)
	if same < 4*most || none < most {
		t.Errorf("too few were compared")
	}
}

// TestPlansHold has every plan of random doors tried out: rounding breaks no limit.
func TestPlansHold(t *testing.T) {
	count, finer := 0, 0
	for n := range many() {
		c := seeded(6, uint64(n))
		piece := c.oldDoor()
		if len(piece.Door.Check()) > 0 {
			continue
		}
		p := &Problem{Piece: piece, Wanted: band(0.4 + c.Float64()), Wishes: Wishes{Prefer: Preferences[n%len(Preferences)]}}
		if n%3 == 0 {
			middle(&p.Piece.Door)
		}
		step := 0.5
		if n%5 == 0 {
			p.Step = 25.4 / 32
			step = p.Step
		}
		a := Plans(p)
		proven(t, p, a)
		for i := range a.Plans {
			count++
			ok := true
			for _, m := range a.Plans[i].Moves {
				amounts := []float64{m.First, m.Last}
				for _, s := range m.Line {
					amounts = append(amounts, s.Value)
				}
				for _, x := range amounts {
					if m.Kind == trim.Pack {
						continue // by the packers there are
					}
					if !whole(x, step) && !whole(x, shaving) && !whole(x, step/2) && !(p.Step > 0 && whole(x, step/4)) {
						t.Errorf("door %d: %s by %g is no whole step", n, m.Kind, x)
					}
					ok = ok && whole(x, step)
				}
			}
			if !ok {
				finer++
			}
		}
		if again := Plans(p); !reflect.DeepEqual(a, again) {
			t.Errorf("door %d is advised on in two ways", n)
		}
	}
	t.Logf("%d plans, %d of them by finer steps than the usual", count, finer)
	if count < many() {
		t.Errorf("only %d plans", count)
	}
}

// middle puts a third hinge between the two, in line with them.
func middle(d *door.Door) {
	h := d.Hinges[0]
	a, b := d.Hinges[0], d.Hinges[1]
	at := (a.LeafHeight + b.LeafHeight) / 2
	half := func(x, y float64) float64 { return (x + y) / 2 }
	bowed := func(p geom.Profile) float64 {
		return p.At(half(a.JambHeight, b.JambHeight)) - half(p.At(a.JambHeight), p.At(b.JambHeight))
	}
	leafBow := func(p geom.Profile) float64 { return p.At(at) - half(p.At(a.LeafHeight), p.At(b.LeafHeight)) }
	h.LeafHeight, h.JambHeight = at, half(a.JambHeight, b.JambHeight)
	h.Closed = half(a.Closed, b.Closed)
	h.JambGain = half(a.JambGain, b.JambGain) + bowed(d.Frame.HingeJamb)
	h.LeafGain = half(a.LeafGain, b.LeafGain) - leafBow(d.Leaf.Hanging)
	h.Pin = half(a.Pin, b.Pin) - bowed(d.Frame.HingeFront)
	h.Proud = half(a.Proud, b.Proud) - bowed(d.Frame.HingeFront) + leafBow(d.Leaf.HangingFace)
	d.Hinges = []door.Hinge{a, h, b}
}

func whole(x, step float64) bool { return math.Abs(x/step-math.Round(x/step)) < 1e-6 }

// TestStagesAddUp expects stages to come to the plan's amounts, the first not beyond
// them.
func TestStagesAddUp(t *testing.T) {
	staged := 0
	for n := range many() {
		c := seeded(1, uint64(n))
		truth := c.oldDoor()
		res := c.measured(&truth.Door)
		if !res.Hangs {
			continue
		}
		p := &Problem{Piece: trim.Piece{Door: res.Door, Anatomy: truth.Anatomy}, Wanted: band(1), Sigma: SigmasOf(res.Gaps(), 0)}
		a := Plans(p)
		proven(t, p, a)
		for i := range a.Plans {
			plan := &a.Plans[i]
			if len(plan.Stages) == 2 {
				staged++
				if len(plan.Stages[0].Read) == 0 {
					t.Errorf("door %d: nothing is read between the stages", n)
				}
			}
			runs := runsOf(&p.Piece.Door)
			for e := range door.Edges {
				for k := range 21 {
					at := runs[e].Lo + runs[e].Length()*float64(k)/20
					var want, got, first float64
					for _, m := range plan.Moves {
						want += takes(&m, e, runs[e], at)
					}
					for k, s := range plan.Stages {
						for _, m := range s.Moves {
							got += takes(&m, e, runs[e], at)
							if k == 0 {
								first += takes(&m, e, runs[e], at)
							}
						}
					}
					if math.Abs(want-got) > 1e-6 || first > want+1e-6 {
						t.Errorf("door %d, plan %d, edge %d at %g: %g in all, %g by stages, %g in the first", n, i, e, at, want, got, first)
					}
				}
			}
		}
	}
	if staged == 0 {
		t.Error("no plan is staged")
	}
}

// takes is what a move takes off an edge at a place.
func takes(m *trim.Move, e door.Edge, run geom.Interval, at float64) float64 {
	if m.Edge != e {
		return 0
	}
	switch m.Kind {
	case trim.Plane, trim.Cut:
		from, to := run.Lo, run.Hi
		if m.From != 0 || m.To != 0 {
			from, to = m.From, m.To
			if at < from-1e-6 || at > to+1e-6 {
				return 0
			}
		}
		return m.First + (m.Last-m.First)*(at-from)/(to-from)
	case trim.Scribe:
		return held(m.Line, at)
	}
	return 0
}

// TestReadingsPutRight expects the door after offering up to have the gaps read, where
// nothing else was known.
func TestReadingsPutRight(t *testing.T) {
	for n := range many() {
		c := seeded(8, uint64(n))
		truth := c.oldDoor()
		believed := truth
		believed.Door = truth.Door.Clone()
		f := &believed.Door.Frame
		f.Head, f.LatchJamb = f.Head.Shift(c.about(1)), f.LatchJamb.Shift(c.about(1))
		p := &Problem{Piece: believed, Wanted: band(1)}
		read := c.feelExactly(&truth.Door)
		q := p.After(nil, read)
		if faults := q.Piece.Door.Check(); len(faults) > 0 {
			t.Fatalf("door %d: %v", n, faults)
		}
		back := c.feelExactly(&q.Piece.Door)
		for i := range read {
			for k := range back {
				if back[k].Kind == read[i].Kind && back[k].Side == read[i].Side && math.Abs(back[k].At-read[i].At) < 2 && read[i].Value > noFeeler && math.Abs(back[k].Value-read[i].Value) > 0.03 {
					t.Errorf("door %d: %s at %g was read as %g and is %g", n, read[i].Side, read[i].At, read[i].Value, back[k].Value)
				}
			}
		}
	}
}

func (c chance) feelExactly(d *door.Door) []survey.Reading {
	silent := chance{rand.New(noise{})}
	return silent.feel(d, everywhere(d), false)
}

// noise is a source of normal numbers that are all nought, or next to it.
type noise struct{}

func (noise) Uint64() uint64 { return 0 }

func FuzzPlans(f *testing.F) {
	f.Add(uint64(1), uint8(0), 0.5, 0.0)
	f.Add(uint64(7), uint8(255), 1.0, 110.0)
	f.Fuzz(func(t *testing.T, seed uint64, wishes uint8, half, rail float64) {
		if !(half > 0 && half < 20) || !(rail >= 0 && rail < 1e4) {
			return
		}
		piece := seeded(9, seed).oldDoor()
		if len(piece.Door.Check()) > 0 {
			return
		}
		v := Wishes{
			Prefer: Preferences[int(wishes)%len(Preferences)], LeaveFrame: wishes&4 > 0, HingesStay: wishes&8 > 0,
			NoStrip: wishes&16 > 0, StilesAlike: wishes&32 > 0, TopRail: rail,
		}
		p := &Problem{Piece: piece, Wanted: band(half), Wishes: v}
		if wishes&64 > 0 {
			p.Sigma = &Sigmas{}
		}
		a := Plans(p)
		proven(t, p, a)
	})
}
