package draw

import (
	"math"
	"testing"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fit"
)

// Planing an edge or gluing a strip to it leaves panels, rails and lock where they were
// on the picture, straight, however the planed edge runs.
func TestTheInsideStays(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(d *door.Door, a *door.Anatomy)
	}{
		{"top planed hollow", func(d *door.Door, _ *door.Anatomy) {
			d.Leaf.Top = geom.Profile{{At: 0, Value: 1981}, {At: 250, Value: 1981}, {At: 260, Value: 1978}, {At: 700, Value: 1977}, {At: 762, Value: 1979}}
		}},
		{"closing edge planed in part", func(d *door.Door, _ *door.Anatomy) {
			d.Leaf.Closing = geom.Profile{{At: 0, Value: 762}, {At: 900, Value: 762}, {At: 1000, Value: 759}, {At: 1981, Value: 760}}
		}},
		{"strip on the foot", func(d *door.Door, a *door.Anatomy) {
			d.Leaf.Bottom = geom.Through(0, -4, 762, -3)
			a.Strips = []door.Strip{{Edge: fit.FloorSide, Joint: geom.Through(0, 0, 762, 0), Stock: 34}}
		}},
		{"far too much off the top", func(d *door.Door, _ *door.Anatomy) { d.Leaf.Top = geom.Through(0, 1960, 762, 1975) }},
	} {
		s := situation{d: square(), a: fourPanels(), w: wanted()}
		s.view.Show, s.view.Factor = Front, 8
		was := s.d
		s.view.Was = &was
		var l List
		var sc Scene
		s.draw(&l, &sc, 820, 900)
		g := sc.Sight()
		s.view.Sight = &g
		u0, u1 := s.a.Inner(&s.d.Leaf)
		rails := s.a.Rails
		v0, v1 := rails[0].To, rails[len(rails)-1].From
		at := func() (all [5][5]Pt) {
			for i := range all {
				for j := range all[i] {
					all[i][j] = sc.onLeaf(u0+(u1-u0)*float64(i)/4, v0+(v1-v0)*float64(j)/4)
				}
			}
			return all
		}
		before := at()
		c.change(&s.d, &s.a)
		s.draw(&l, &sc, 820, 900)
		after := at()
		far := 0.0
		for i := range after {
			for j := range after[i] {
				p := after[i][j]
				far = max(far, distance(p, before[i][j]))
				if bent := math.Abs(p.X-after[i][0].X) + math.Abs(p.Y-after[0][j].Y); bent > 1e-6 {
					t.Errorf("%s: %v lies %.2f px off plumb or level with its neighbours", c.name, p, bent)
				}
			}
		}
		if moved := far > 1e-6; moved != (c.name == "far too much off the top") {
			t.Errorf("%s: the inside moved by %.2f px", c.name, far)
		}
		// and the outer member still is seen, inside the drawn edge
		for _, e := range []fit.Edge{fit.HeadSide, fit.LatchSide} {
			lo, hi := g.Ends(e)
			for i := 1; i < 8; i++ {
				place := lo + (hi-lo)*float64(i)/8
				edge, inner := sc.leafSpot(e, sc.edge(e), place), sc.onLeaf(place, v1)
				room := inner.Y - edge.Y
				if e == fit.LatchSide {
					inner = sc.onLeaf(u1, place)
					room = edge.X - inner.X
				}
				if room < 5 {
					t.Errorf("%s: %.1f px of the member are left at %.0f along edge %d", c.name, room, place, e)
				}
			}
		}
	}
}
