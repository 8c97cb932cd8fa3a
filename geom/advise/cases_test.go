package advise

import (
	"math"
	"testing"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
	"leafwright/geom/trim"
)

// The cases here are common practice, no published source.

// hung gives a square leaf in a square opening: 2.5 mm at the sides and the head, 8 over the floor.
func hung() trim.Piece {
	const w, h, t = 767.0, 1980.5, 40.0
	d := door.Door{
		Leaf: door.Rectangle(762, 1970, t), Frame: door.Square(w, h, t+2, 12),
		Latch: door.Latch{Height: 985}, Floor: door.FlatFloor(0), Opens: 90 * geom.Degree,
	}
	d.Leaf.ClosingBevel = 3 * geom.Degree
	for _, v := range []float64{1780, 245} {
		d.Hinges = append(d.Hinges, door.Hinge{JambHeight: v + 8, LeafHeight: v, Closed: 6.5, LeafGain: 2, JambGain: 2, Pin: 5, Height: 75})
	}
	return trim.Piece{Door: d, Anatomy: door.Ordinary(door.Framed, 762, 1970)}
}

// asked are the usual gaps: 2 to 3 mm, the floor's 4 to 12.
func asked() judge.Wanted {
	l := judge.Limits{Least: 2, Target: 2.5, Most: 3}
	return judge.Wanted{
		Gaps: [door.Edges]judge.Limits{l, l, l, {Least: 4, Target: 8, Most: 12}},
		Stop: judge.Limits{Least: 0.5, Target: 2, Most: 4}, Swing: judge.Limits{Least: 0.5, Target: 1.5}, SwingFloor: judge.Limits{Least: 2, Target: 5},
	}
}

// proven holds every plan against the exact model, its bound, its steps and itself.
func proven(t *testing.T, p *Problem, a Advice) {
	t.Helper()
	for i := range a.Plans {
		plan := &a.Plans[i]
		is, steps := trim.All(p.Piece, plan.Moves)
		var f fit.Fit
		if faults := is.Door.Check(); len(faults) > 0 {
			t.Fatalf("plan %d makes a door with %v", i, faults)
		}
		fit.Evaluate(&f, &is.Door)
		for _, g := range judge.Verdicts(&f, &is.Door, &p.Wanted) {
			if g.Verdict != judge.Good && (p.Sigma == nil || g.Subject != judge.HingeLine) {
				t.Errorf("plan %d (%s) leaves %+v", i, plan.Family, g)
			}
		}
		for _, s := range steps {
			if s.Why != nil {
				t.Errorf("plan %d: %s cannot be done: %+v", i, s.Move.Kind, s.Why)
			}
		}
		if !(plan.Bound <= plan.Price+1e-9) {
			t.Errorf("plan %d costs %g, less than its bound %g", i, plan.Price, plan.Bound)
		}
		if i > 0 && plan.Price < a.Plans[i-1].Price {
			t.Errorf("plan %d is dearer than the next", i-1)
		}
		if len(plan.Why) != len(plan.Moves) {
			t.Errorf("plan %d: %d reasons for %d moves", i, len(plan.Why), len(plan.Moves))
		}
	}
}

func only(t *testing.T, a Advice, f Family) *Plan {
	t.Helper()
	for i := range a.Plans {
		if a.Plans[i].Family == f {
			return &a.Plans[i]
		}
	}
	t.Fatalf("there is no plan of %q among %d", f, len(a.Plans))
	return nil
}

// A head that falls d across the width, the leaf otherwise right, is cured by a taper
// of d off the top.
func TestFallingHeadIsTapered(t *testing.T) {
	for _, d := range []float64{2, 3, 5} {
		piece := hung()
		h := piece.Door.Frame.Head
		h[1].Value -= d
		p := &Problem{Piece: piece, Wanted: asked(), Wishes: Wishes{Prefer: MostEven, HingesStay: true}}
		a := Plans(p)
		proven(t, p, a)
		plan := only(t, a, PlaneOnly)
		if len(plan.Moves) != 1 || plan.Moves[0].Edge != door.HeadSide || plan.Moves[0].First != 0 || plan.Moves[0].Last != d {
			t.Errorf("a head that falls %g is cured by %+v", d, plan.Moves)
		}
		if w := plan.Why[0]; !w.Needed || w.Cures < 0 || a.Findings[w.Cures].Edge != door.HeadSide || w.Without.Edge != door.HeadSide {
			t.Errorf("the taper is for %+v", w)
		}
	}
}

// Where it falls little and the sides have room, the leaf may be tilted with the hinges
// and keeps its timber.
func TestFallingHeadIsTilted(t *testing.T) {
	piece := hung()
	piece.Door.Frame.Head[1].Value -= 0.8
	p := &Problem{Piece: piece, Wanted: asked()}
	a := Plans(p)
	proven(t, p, a)
	plan := only(t, a, HingesOnly)
	if plan.Cost.Cuts != 0 || plan.Cost.Timber > 5 {
		t.Errorf("tilting costs %+v", plan.Cost)
	}
}

// A leaf w too wide, both stiles to stay alike, loses w/2 off each.
func TestWideLeafLosesHalfEach(t *testing.T) {
	for _, wide := range []float64{2, 4, 6} {
		piece := hung()
		l := &piece.Door.Leaf
		l.Width += wide
		l.Closing = l.Closing.Shift(wide)
		for _, prefer := range Preferences {
			p := &Problem{Piece: piece, Wanted: asked(), Wishes: Wishes{Prefer: prefer, StilesAlike: true}}
			if prefer == MostEven { // held near the target: else as even by the leaf raised
				for e := door.HingeSide; e < door.HeadSide; e++ {
					p.Wanted.Gaps[e].Least, p.Wanted.Gaps[e].Most = 2.3, 2.7
				}
			}
			a := Plans(p)
			proven(t, p, a)
			if len(a.Plans) == 0 {
				t.Fatalf("%g too wide, %s: no plan", wide, prefer)
			}
			for i := range a.Plans {
				if i > 0 && a.Plans[i].Family == JambsToo {
					continue // another kind: the jamb gives way, not the stiles
				}
				off := [door.Edges]float64{}
				for _, m := range a.Plans[i].Moves {
					if m.Kind == trim.Plane && m.Edge.Upright() {
						off[m.Edge] += (m.First + m.Last) / 2
					}
				}
				if off[door.HingeSide] != off[door.LatchSide] || off[door.HingeSide] <= 0 {
					t.Errorf("%g too wide, %s: %g off the hanging stile, %g off the other", wide, prefer, off[door.HingeSide], off[door.LatchSide])
				}
				if prefer == MostEven && i == 0 && math.Abs(off[door.HingeSide]-wide/2) > 0.25 {
					t.Errorf("%g too wide: %g off each", wide, off[door.HingeSide])
				}
			}
		}
	}
}

// A hinge-bound leaf, its gains too deep, is cured by packers and no timber.
func TestHingeBoundIsPacked(t *testing.T) {
	for _, deep := range []float64{1.5, 2, 3} {
		piece := hung()
		for i := range piece.Door.Hinges {
			piece.Door.Hinges[i].LeafGain += deep
		}
		for _, prefer := range Preferences {
			p := &Problem{Piece: piece, Wanted: asked(), Wishes: Wishes{Prefer: prefer}}
			a := Plans(p)
			proven(t, p, a)
			if len(a.Plans) == 0 {
				t.Fatalf("%g too deep, %s: no plan", deep, prefer)
			}
			for _, m := range a.Plans[0].Moves {
				if m.Kind != trim.Pack {
					t.Errorf("%g too deep, %s: it is cured by %s too", deep, prefer, m.Kind)
				}
			}
			if a.Plans[0].Cost.Timber != 0 {
				t.Errorf("packing takes %g cm³", a.Plans[0].Cost.Timber)
			}
		}
	}
}

// Wind k is cured by setting the hinges k/2 apart, measured over the leaf's height, or
// by planting the stops anew.
func TestWindIsSharedOrStopsFollow(t *testing.T) {
	const k = 5.6 // half of it at either edge leaves 2 − 1.4 at the stops, all of it at one 2 − 2.8
	piece := hung()
	piece.Door.Leaf.ClosingFace = geom.Through(0, 0, 1970, k)
	p := &Problem{Piece: piece, Wanted: asked()}
	a := Plans(p)
	proven(t, p, a)
	stops := only(t, a, StopsOnly)
	if stops.Cost.Timber != 0 || !stops.Cost.Frame {
		t.Errorf("moving the stops costs %+v", stops.Cost)
	}
	p.Wishes.LeaveFrame = true
	a = Plans(p)
	proven(t, p, a)
	var set [2]float64
	for _, m := range only(t, a, HingesOnly).Moves {
		if m.Kind != trim.Set {
			t.Errorf("wind is cured by %s", m.Kind)
			continue
		}
		set[m.Hinge-1] += m.First
	}
	apart := (set[1] - set[0]) * 1970 / (1780 - 245)
	if math.Abs(apart-k/2) > 0.75 { // a step either way at each hinge leaves that room
		t.Errorf("hinges are set %g apart over the height for a wind of %g", apart, k)
	}
}

// A rated leaf gets no advice to trim it.
func TestRatedIsRefused(t *testing.T) {
	piece := hung()
	piece.Anatomy.Rated = true
	piece.Door.Frame.Head[1].Value -= 3
	if a := Plans(&Problem{Piece: piece, Wanted: asked()}); a.Refused == nil || len(a.Plans) > 0 {
		t.Errorf("a rated leaf gets %+v", a)
	}
}

// A top rail that is to match its neighbour's height loses just that.
func TestTopRailMatches(t *testing.T) {
	piece := hung()
	rails := piece.Anatomy.Rails
	have := 1970 - rails[len(rails)-1].From
	p := &Problem{Piece: piece, Wanted: asked(), Wishes: Wishes{TopRail: have - 4}}
	a := Plans(p)
	proven(t, p, a)
	if len(a.Plans) == 0 {
		t.Fatal("no plan")
	}
	for i := range a.Plans {
		off := 0.0
		for _, m := range a.Plans[i].Moves {
			switch {
			case (m.Kind == trim.Plane || m.Kind == trim.Cut) && m.Edge == door.HeadSide:
				off += (m.First + m.Last) / 2
			case m.Kind == trim.Splice && m.Edge == door.HeadSide:
				off -= (m.First + m.Last) / 2
			}
		}
		if math.Abs(off-4) > 0.25 {
			t.Errorf("plan %d takes %g off the top rail, not 4", i, off)
		}
	}
}

// A leaf too short is spliced; without strips the wishes contradict each other.
func TestShortLeafIsSpliced(t *testing.T) {
	piece := hung()
	piece.Door.Frame.Head = piece.Door.Frame.Head.Shift(12)
	p := &Problem{Piece: piece, Wanted: asked()}
	a := Plans(p)
	proven(t, p, a)
	for _, m := range only(t, a, Splice).Moves {
		if m.Kind == trim.Splice && (m.First < leastStrip || m.Last < leastStrip) {
			t.Errorf("the strip is %g to %g high", m.First, m.Last)
		}
	}
	p.Wishes.NoStrip, p.Wishes.LeaveFrame = true, true
	a = Plans(p)
	if len(a.Plans) > 0 || a.Conflict == nil {
		t.Fatalf("without strips there are %d plans", len(a.Plans))
	}
	found := false
	for _, r := range a.Conflict.Limits {
		found = found || r.Sort == NoStrip
	}
	if !found {
		t.Errorf("the conflict is %+v", a.Conflict.Limits)
	}
}

// A floor that rises under the swing and a closed gap that may not be wide contradict
// each other; the relaxation named does, and not much less does.
func TestRisingFloorContradicts(t *testing.T) {
	piece := hung()
	piece.Door.Floor = door.Floor{Radii: []float64{0, 762}, Angles: []geom.Angle{0, 90 * geom.Degree}, Heights: [][]float64{{0, 0}, {0, 11}}}
	want := asked()
	p := &Problem{Piece: piece, Wanted: want}
	a := Plans(p)
	if len(a.Plans) > 0 || a.Conflict == nil {
		t.Fatalf("%d plans over a floor that rises 11", len(a.Plans))
	}
	limits := a.Conflict.Limits
	if len(limits) < 2 {
		t.Fatalf("the conflict is %+v", limits)
	}
	for _, r := range limits {
		if !r.Enough || r.By <= 0 {
			t.Errorf("%+v giving way is not enough", r)
			continue
		}
		for _, c := range []struct {
			by   float64
			does bool
		}{{r.By + 0.6, true}, {r.By - 0.2, false}} {
			w := want
			switch {
			case r.Sort == SwingLimit && r.Edge == door.FloorSide:
				w.SwingFloor.Least -= c.by
			case r.Sort == GapLimit && r.Edge == door.FloorSide && r.Upper:
				w.Gaps[door.FloorSide].Most += c.by
			default:
				t.Fatalf("%+v is in the conflict", r)
			}
			if got := len(Plans(&Problem{Piece: piece, Wanted: w}).Plans) > 0; got != c.does {
				t.Errorf("%+v giving way by %g: a plan %v", r.Limit, c.by, got)
			}
		}
	}
}

// Wishes are kept.
func TestWishesAreKept(t *testing.T) {
	for n := range 20 {
		piece := seeded(3, uint64(n)).oldDoor()
		want := band(1)
		for _, v := range []Wishes{{LeaveFrame: true}, {HingesStay: true}, {NoStrip: true}} {
			a := Plans(&Problem{Piece: piece, Wanted: want, Wishes: v})
			for i := range a.Plans {
				c := a.Plans[i].Cost
				if v.LeaveFrame && c.Frame || v.NoStrip && c.Strips > 0 {
					t.Errorf("door %d, %+v: %+v", n, v, c)
				}
				for _, m := range a.Plans[i].Moves {
					if v.HingesStay && trim.SpecOf(m.Kind).Trade == trim.TheHinges {
						t.Errorf("door %d: %s", n, m.Kind)
					}
				}
			}
		}
	}
}

// Much off the foot is sawn: it leaves an offcut.
func TestMuchIsSawn(t *testing.T) {
	piece := hung()
	piece.Door.Floor = door.FlatFloor(16)
	p := &Problem{Piece: piece, Wanted: asked(), Wishes: Wishes{HingesStay: true}}
	a := Plans(p)
	proven(t, p, a)
	plan := only(t, a, PlaneOnly)
	if m := plan.Moves[0]; len(plan.Moves) != 1 || m.Kind != trim.Cut || m.Edge != door.FloorSide || m.First != 12 || m.Last != 12 {
		t.Errorf("a floor 16 mm up is cured by %+v", plan.Moves)
	}
	if is, _ := trim.All(piece, plan.Moves); len(is.Offcuts) != 1 {
		t.Errorf("%d offcuts", len(is.Offcuts))
	}
}
