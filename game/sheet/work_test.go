package sheet_test

import (
	"math"
	"testing"

	"leafwright/game"
	"leafwright/game/internal/demos"
	"leafwright/game/measure"
	"leafwright/game/sheet"
	"leafwright/game/words"
	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/trim"
)

// Carrying out the sheet's own cuts, in their order, at their rounded numbers, on the door
// as it stands gives the option's shapes to the rounding the sheet states.
func TestCarryingOutTheSheet(t *testing.T) {
	tried := 0
	for _, j := range demos.All(t) {
		if j.Anatomy.Rated {
			continue
		}
		for i := range j.Options {
			for _, unit := range []measure.Unit{measure.MM, measure.Inch} {
				carry(t, &j, i, unit)
				tried++
			}
		}
	}
	if tried < 10 {
		t.Errorf("only %d options", tried)
	}
}

// The same for every kind of move by itself, and two and three after another, on every job.
func TestCarryingOutEveryKind(t *testing.T) {
	tried := map[trim.Kind]int{}
	for n, j := range demos.All(t) {
		if j.Anatomy.Rated {
			continue
		}
		kinds := len(trim.Kinds)
		for k := range trim.Kinds {
			moves := []trim.Move{}
			for m := range 1 + (n+k)%3 {
				move := j.NewMove(trim.Kinds[(k+m*5)%kinds].Kind)
				if move.First != 0 && move.Kind != trim.Ease {
					move.First *= 1 + 0.13*float64(n)
				}
				if move.Last != 0 {
					move.Last = move.First * 0.7
				}
				if move.Kind == trim.Plane && k%2 == 0 {
					move.Edge, move.From, move.To, move.First, move.Last = door.LatchSide, 410.3, 1207.9, 1.5, 2.25
				}
				if move.Kind == trim.Scribe {
					move.Line = geom.Through(0, 1.3, 333, 2.2, 900, 0.4, 1700, 1.9)
				}
				moves = append(moves, move)
			}
			j.Options = []game.Option{{Name: "Try", Moves: moves}}
			for _, s := range j.Try(0).Steps {
				if s.Why == nil {
					tried[s.Move.Kind]++
				}
			}
			carry(t, &j, 0, measure.MM)
		}
	}
	for _, k := range trim.Kinds {
		if tried[k.Kind] == 0 && k.Kind != trim.Reuse {
			t.Errorf("%s was never done", k.Kind)
		}
	}
}

// tolerances of carrying out, mm: half of what the sheet states, for a line the half of its
// ends' and bends' rounding and of a check's between them, and what a place rounded to its
// step makes at the steepest line drawn here (a run-out of 5 in 100).
func half(unit measure.Unit) (line, fine, size float64) {
	if unit == measure.Inch {
		return 25.4/64 + 0.05, 25.4/128 + 1e-3, 25.4/64 + 1e-3
	}
	return 0.25 + 0.05 + 0.03, 0.05 + 1e-3, 0.25 + 1e-3
}

func carry(t *testing.T, j *game.Job, option int, unit measure.Unit) {
	t.Helper()
	pages, err := sheet.Pages(&sheet.Ask{Job: j, Options: []int{option}, Kind: sheet.Work, Paper: sheet.Papers[0], Unit: unit, Words: words.UK})
	if err != nil {
		t.Fatalf("%s: %v", j.Name, err)
	}
	moves := readSheet(pages, unit)
	d := j.Stands().Door.Clone()
	want := j.Try(option)
	n := 0
	for k, s := range want.Steps {
		if s.Move.Off || s.Why != nil {
			continue
		}
		m := moves[k+1]
		if m == nil {
			t.Fatalf("%s: move %d is not on the sheet", j.Name, k+1)
		}
		m.carryOut(&d)
		for _, c := range m.cuts {
			if half := 0.5 + 0.5*float64(unit)*0.6; c.missed > half+0.3 { // of a tape's step; the edge is the hand's
				t.Errorf("%s, move %d: the marks miss the ends of the edge by %.2f", j.Name, k+1, c.missed)
			}
		}
		if s.Move.Cover > 0 { // a threshold or a covering: what its sentence says is laid
			part := *j
			part.Options = []game.Option{{Moves: j.Options[option].Moves[:k+1]}}
			d.Floor = part.Try(0).Door.Floor
		}
		n++
	}
	line, fine, size := half(unit)
	where := j.Name + ", " + j.OptionName(option)
	profile := func(what string, got, want geom.Profile, ends geom.Interval, tol float64) {
		t.Helper()
		worst, at := 0.0, 0.0
		for i := range 201 {
			s := ends.Lo + (ends.Hi-ends.Lo)*float64(i)/200
			if off := math.Abs(got.At(s) - want.At(s)); off > worst {
				worst, at = off, s
			}
		}
		if worst > tol {
			t.Errorf("%s: %s is %.3f off at %.0f, more than %.3f", where, what, worst, at, tol)
			for k, s := range want2(j, option) {
				t.Logf("  %d %+v", k+1, s)
			}
		}
	}
	l, w := &d.Leaf, &want.Door.Leaf
	c := w.Corners(0)
	profile("hanging edge", l.Hanging, w.Hanging, geom.Interval{Lo: c.HangingFoot.Y, Hi: c.HangingHead.Y}, line)
	profile("closing edge", l.Closing, w.Closing, geom.Interval{Lo: c.ClosingFoot.Y, Hi: c.ClosingHead.Y}, line)
	profile("top", l.Top, w.Top, geom.Interval{Lo: c.HangingHead.X, Hi: c.ClosingHead.X}, line)
	profile("foot", l.Bottom, w.Bottom, geom.Interval{Lo: c.HangingFoot.X, Hi: c.ClosingFoot.X}, line)
	f, g := &d.Frame, &want.Door.Frame
	hinge, latch := g.HeadCorners()
	profile("hinge jamb", f.HingeJamb, g.HingeJamb, geom.Interval{Lo: 0, Hi: hinge.Y}, line)
	profile("latch jamb", f.LatchJamb, g.LatchJamb, geom.Interval{Lo: 0, Hi: latch.Y}, line)
	profile("head", f.Head, g.Head, geom.Interval{Lo: hinge.X, Hi: latch.X}, line)
	profile("hinge stop", f.HingeStop, g.HingeStop, geom.Interval{Lo: 0, Hi: hinge.Y}, fine+0.05)
	profile("latch stop", f.LatchStop, g.LatchStop, geom.Interval{Lo: 0, Hi: latch.Y}, fine+0.05)
	profile("head stop", f.HeadStop, g.HeadStop, geom.Interval{Lo: hinge.X, Hi: latch.X}, fine+0.05)
	near := func(what string, got, want, tol float64) {
		t.Helper()
		if math.Abs(got-want) > tol {
			t.Errorf("%s: %s is %.3f, not %.3f", where, what, got, want)
		}
	}
	near("closing bevel", l.Thickness*math.Tan(float64(l.ClosingBevel)), w.Thickness*math.Tan(float64(w.ClosingBevel)), fine)
	near("hanging bevel", l.Thickness*math.Tan(float64(l.HangingBevel)), w.Thickness*math.Tan(float64(w.HangingBevel)), fine)
	for i := range d.Hinges {
		a, b := &d.Hinges[i], &want.Door.Hinges[i]
		near("hinge on the leaf", a.LeafHeight, b.LeafHeight, size+line)
		near("hinge on the jamb", a.JambHeight, b.JambHeight, size+line)
		near("gain in the leaf", a.LeafGain, b.LeafGain, fine)
		near("gain in the jamb", a.JambGain, b.JambGain, fine)
		near("packer on the leaf", a.LeafPacker, b.LeafPacker, fine)
		near("packer on the jamb", a.JambPacker, b.JambPacker, fine)
		near("pin", a.Pin, b.Pin, fine)
		near("leaf's face", a.Proud, b.Proud, 2*fine)
		near("plates", a.Height, b.Height, fine)
		near("folded", a.Closed, b.Closed, fine)
	}
	if n == 0 && len(moves) > 0 {
		t.Errorf("%s: moves on the sheet that are not done", where)
	}
}

func want2(j *game.Job, option int) []trim.Move { return j.Options[option].Moves }
