package bench

import (
	"testing"

	"leafwright/game"
)

// The tape over a stile or a rail lies on the leaf's own, which are drawn as they were
// read.
func TestSketchesOfMembers(t *testing.T) {
	s := own(t)
	s.Type("leaf.make", "framed")
	s.Type("card.stile_width.latch.1", "150")
	s.Type("card.rail_height.2.1", "600")
	a := &s.Job().Anatomy
	if a.ClosingStile != 150 || a.Rails[1].From != 600 {
		t.Fatalf("%+v", a)
	}
	members := 0
	for _, p := range s.Card() {
		if p.Stage != game.Members {
			continue
		}
		members++
		k := sketch(s.Job(), &p.Picture)
		if len(k.Panels) != 2 || k.Panels[0][1].X != k.Width-150 || k.Panels[0][1].Y != 600 || len(k.Laid) != 1 {
			t.Errorf("%s: %+v", p.Path, k)
			continue
		}
		from, to := k.Laid[0].From, k.Laid[0].To
		switch p.Path {
		case "card.stile_width.latch.1":
			if from.X != k.Width-150 || to.X != k.Width || from.Y != to.Y {
				t.Errorf("%s: %+v", p.Path, k.Laid)
			}
		case "card.rail_height.2.1":
			if from.Y != 0 || to.Y != 600 || from.X != to.X {
				t.Errorf("%s: %+v", p.Path, k.Laid)
			}
		}
	}
	if members != 7 {
		t.Errorf("%d members asked after", members)
	}
}
