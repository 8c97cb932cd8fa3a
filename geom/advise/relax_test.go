package advise

import (
	"testing"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/trim"
)

// Where limits contradict each other there is a plan under limits that give way, which
// breaks just what it tells, by no more than it tells.
func TestConflictHasAPlanThatEasesIt(t *testing.T) {
	piece := hung()
	piece.Door.Floor = door.Floor{Radii: []float64{0, 762}, Angles: []geom.Angle{0, 90 * geom.Degree}, Heights: [][]float64{{0, 0}, {0, 11}}}
	p := &Problem{Piece: piece, Wanted: asked()}
	a := Plans(p)
	if a.Conflict == nil || len(a.Conflict.Plans) == 0 || len(a.Plans) > 0 {
		t.Fatalf("no plan under limits that give way: %+v", a.Conflict)
	}
	for i := range a.Conflict.Plans {
		plan := &a.Conflict.Plans[i]
		if len(plan.Given) == 0 || len(plan.Why) != len(plan.Moves) || len(plan.Stages) == 0 {
			t.Errorf("plan %d: given way %+v, %d reasons of %d moves", i, plan.Given, len(plan.Why), len(plan.Moves))
		}
		want, wishes := p.eased(plan.Given, 0)
		eased := &Problem{Piece: p.Piece, Wanted: want, Wishes: wishes}
		proven(t, eased, Advice{Plans: []Plan{*plan}, Findings: a.Findings})
		_, steps := trim.All(p.Piece, plan.Moves)
		for k := range steps {
			if steps[k].Why != nil {
				t.Errorf("plan %d, move %d is refused", i, k)
			}
		}
		needed := false
		for _, r := range a.Conflict.Limits {
			for _, g := range plan.Given {
				needed = needed || g.Limit == r.Limit && g.By >= r.By-0.01 && g.By <= r.By+1.1
			}
		}
		if !needed {
			t.Errorf("plan %d lets %+v give way, of %+v", i, plan.Given, a.Conflict.Limits)
		}
	}
}

// A leaf that is too wide by more than its edges may lose is told to be so, by as much
// as it is: the opening is brought in by 100.
func TestLeafFarTooWide(t *testing.T) {
	piece := hung()
	piece.Door.Frame.LatchJamb = piece.Door.Frame.LatchJamb.Shift(-100)
	a := Plans(&Problem{Piece: piece, Wanted: asked()})
	if len(a.Plans) > 0 || a.Conflict == nil || len(a.Conflict.Oversize) != 1 {
		t.Fatalf("%d plans, %+v", len(a.Plans), a.Conflict)
	}
	o := a.Conflict.Oversize[0]
	if o.Upright || o.By < 95 || o.By > 100 || o.May > 2*far {
		t.Errorf("%+v", o)
	}
}

// No hinge is moved along its edge by less than a screw is wide where the rest does as
// well without, and none but by whole half millimetres.
func TestHingesMoveByWhatScrewsHold(t *testing.T) {
	shifts := 0
	for n := range many() {
		c := seeded(21, uint64(n))
		piece := c.oldDoor()
		if len(piece.Door.Check()) > 0 {
			continue
		}
		p := &Problem{Piece: piece, Wanted: band(1)}
		a := Plans(p)
		p.Wishes.HingesStay = true
		for i := range a.Plans {
			for _, m := range a.Plans[i].Moves {
				if m.Kind != trim.Raise && m.Kind != trim.Shift && m.Kind != trim.Set || m.Hinge > 1 {
					continue
				}
				shifts++
				if k := m.First / usualStep; abs(k-float64(int(k))) > 1e-6 {
					t.Errorf("door %d, plan %d: %s by %g", n, i, m.Kind, m.First)
				}
				if i == 0 && m.Kind != trim.Set && nearHoles(m.First) && m.On != trim.OnJamb {
					b := Plans(p)
					if len(b.Plans) > 0 && b.Plans[0].Price < a.Plans[0].Price-1 {
						t.Errorf("door %d: hinges moved by %g though %.1f does without, not %.1f", n, m.First, b.Plans[0].Price, a.Plans[0].Price)
					}
				}
			}
		}
	}
	t.Logf("%d hinges moved or set", shifts)
}
