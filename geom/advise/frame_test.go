package advise

import (
	"testing"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/trim"
)

// The cases here are common practice, no published source.

// Packing that is there is taken out before anything is cut, off the leaf or the jamb.
func TestPackingComesOutFirst(t *testing.T) {
	for _, on := range []trim.Part{trim.OnLeaf, trim.OnJamb} {
		piece := hung()
		for i := range piece.Door.Hinges {
			h := &piece.Door.Hinges[i]
			h.LeafPacker, h.JambPacker = 2, 0
			if on == trim.OnJamb {
				h.LeafPacker, h.JambPacker = 0, 2
			}
		}
		for _, prefer := range Preferences {
			p := &Problem{Piece: piece, Wanted: asked(), Wishes: Wishes{Prefer: prefer}}
			a := Plans(p)
			proven(t, p, a)
			if len(a.Plans) == 0 || len(a.Plans[0].Moves) != 1 {
				t.Fatalf("packed out by 2 on the %s, %s: %d plans, %+v", on, prefer, len(a.Plans), a.Conflict)
			}
			if m := a.Plans[0].Moves[0]; m.Kind != trim.Pack || m.On != on || m.First > -1.5 || m.First < -2 || a.Plans[0].Cost.Gains > 0 {
				t.Errorf("packed out by 2 on the %s, %s: it is cured by %+v", on, prefer, m)
			}
		}
	}
}

// A leaf hung far too low is raised, however far that is.
func TestFarTooLowIsRaised(t *testing.T) {
	for _, by := range []float64{20, 35} {
		piece := hung()
		piece.Door.Frame.Head = piece.Door.Frame.Head.Shift(by)
		piece.Door.Floor = door.FlatFloor(by)
		p := &Problem{Piece: piece, Wanted: asked()}
		a := Plans(p)
		proven(t, p, a)
		plan := only(t, a, HingesOnly)
		if m := plan.Moves[0]; len(plan.Moves) != 1 || m.Kind != trim.Raise || m.First < by-1 || m.First > by+1 {
			t.Errorf("%g too low is cured by %+v", by, plan.Moves)
		}
	}
}

// Hinges that do not fit each other are moved one by one: no hinge is moved twice.
func TestStrainedHingesMoveOnce(t *testing.T) {
	for _, by := range []float64{-4, -2, 2, 4} {
		for _, low := range []float64{0, -3, 3} {
			piece := hung()
			piece.Door.Hinges[1].JambHeight += by
			piece.Door.Frame.Head = piece.Door.Frame.Head.Shift(low)
			p := &Problem{Piece: piece, Wanted: asked()}
			a := Plans(p)
			proven(t, p, a)
			if len(a.Plans) == 0 {
				t.Errorf("bottom hinge %g up on the jamb, head %g up: no plan, %+v", by, low, a.Conflict)
			}
			for i := range a.Plans {
				moved := map[int]int{}
				for _, m := range a.Plans[i].Moves {
					switch m.Kind {
					case trim.Raise:
						moved[1]++
						moved[2]++
					case trim.Shift:
						moved[m.Hinge]++
					}
				}
				if moved[1] > 1 || moved[2] > 1 {
					t.Errorf("bottom hinge %g up on the jamb, head %g up: a hinge is moved twice by %+v", by, low, a.Plans[i].Moves)
				}
			}
		}
	}
}

// An opening too wide for its leaf is cured by a strip on either stile, or where none is
// to be glued by packing the latch jamb out; with the frame left alone by neither.
func TestNarrowLeaf(t *testing.T) {
	piece := hung()
	piece.Door.Frame.LatchJamb = piece.Door.Frame.LatchJamb.Shift(12)
	piece.Anatomy.Lock = door.Lock{Kind: door.Mortice, Height: 950, Backset: 57, Case: 80, Depth: 76}
	p := &Problem{Piece: piece, Wanted: asked()}
	a := Plans(p)
	proven(t, p, a)
	var strips [door.Edges]bool
	for i := range a.Plans {
		if a.Plans[i].Family == Splice {
			strips[a.Plans[i].Strip] = true
		}
	}
	if !strips[door.HingeSide] || !strips[door.LatchSide] {
		t.Errorf("strips on %v of hanging, closing, top and bottom edge", strips)
	}
	p.Wishes.NoStrip = true
	a = Plans(p)
	proven(t, p, a)
	plan := only(t, a, JambsToo)
	packed := 0.0
	for _, m := range plan.Moves {
		if m.Kind == trim.PackJamb && m.Edge == door.LatchSide {
			packed += (m.First + m.Last) / 2
		}
	}
	if packed < 10 || packed > 14 || !plan.Cost.Frame || plan.Cost.Timber > 5 {
		t.Errorf("an opening 12 too wide is cured by %+v, at %+v", plan.Moves, plan.Cost)
	}
	p.Wishes.LeaveFrame = true
	if a = Plans(p); len(a.Plans) > 0 || a.Conflict == nil {
		t.Errorf("no strip and no work on the frame: %d plans", len(a.Plans))
	}
}

// Where the hanging stile has no more to give, hinges are let deeper into the jamb.
func TestGainGoesIntoTheJamb(t *testing.T) {
	piece := hung()
	l := &piece.Door.Leaf
	l.Closing = l.Closing.Shift(2)
	l.Width += 2
	for i := range piece.Door.Hinges {
		h := &piece.Door.Hinges[i]
		h.JambGain -= 2 // so that the leaf stands 2 over to the latch
		h.Closed, h.Pin = 6.5, 5
	}
	piece.Anatomy.HangingStile = 0.5 // no timber behind the gains
	p := &Problem{Piece: piece, Wanted: asked(), Wishes: Wishes{StilesAlike: true}}
	a := Plans(p)
	proven(t, p, a)
	for i := range a.Plans {
		for _, m := range a.Plans[i].Moves {
			if m.Kind == trim.Sink && m.On == trim.OnLeaf {
				t.Errorf("a hinge is let into a stile that is not there: %+v", m)
			}
		}
	}
}

// levelSigmas are those of gaps known as well everywhere.
func levelSigmas(s float64) *Sigmas {
	return &Sigmas{Gap: [door.Edges]geom.Profile{geom.Level(s), geom.Level(s), geom.Level(s), geom.Level(s)}}
}

// A gap felt at its limit is likely out of it: the plan makes sure.
func TestJustGoodIsMadeSure(t *testing.T) {
	piece := hung()
	piece.Door.Frame.Head = piece.Door.Frame.Head.Shift(-0.48)
	p := &Problem{Piece: piece, Wanted: asked(), Sigma: levelSigmas(0.12), Offered: true}
	a := Plans(p)
	proven(t, p, a)
	if a.Good || !a.JustGood || len(a.Plans) == 0 {
		t.Fatalf("a head gap of 2.02 is good %v, just good %v, %d plans", a.Good, a.JustGood, len(a.Plans))
	}
	if a.Plans[0].Sure < 0.4 {
		t.Errorf("made sure by a chance of %g", a.Plans[0].Sure)
	}
	p.Piece = hung()
	if a = Plans(p); !a.Good || a.JustGood {
		t.Errorf("gaps in the middle of their limits are good %v, just good %v", a.Good, a.JustGood)
	}
}

// Only the edge whose gap bends is scribed; a straight taper is planed.
func TestOnlyTheBentEdgeIsScribed(t *testing.T) {
	piece := hung()
	f := &piece.Door.Frame
	f.LatchJamb = geom.Profile{{At: 0, Value: 767}, {At: 990, Value: 764}, {At: 1980, Value: 767}}
	f.Head[1].Value -= 3
	p := &Problem{Piece: piece, Wanted: asked(), Wishes: Wishes{HingesStay: true}}
	a := Plans(p)
	proven(t, p, a)
	for _, m := range only(t, a, ScribeOnly).Moves {
		if m.Kind == trim.Scribe && m.Edge != door.LatchSide || m.Kind == trim.Plane && m.Edge != door.HeadSide {
			t.Errorf("a jamb that bends and a head that falls are cured by %s of edge %d", m.Kind, m.Edge)
		}
	}
}
