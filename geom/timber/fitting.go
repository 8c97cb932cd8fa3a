package timber

import "leafwright/geom/door"

// Gap is a gap to fit to today and what it is made of, mm.
type Gap struct {
	Wanted float64 // in service, in the month the leaf is widest in
	Paint  float64 // taken by coats to come less those stripped
	Season float64 // that the leaf is still to grow; below 0 it is wider today than it ever is in the year
	All    float64 // the sum, not below 0: the gap to fit to
}

// Fitting gives the gaps to fit a leaf to today, from those wanted in service along its
// edges, its season (nil = it does not move) and what paint takes at each edge. Only the
// closing gap has a season ([Season]).
func Fitting(wanted [door.Edges]float64, s *Season, paint [door.Edges]Allowance) (gaps [door.Edges]Gap) {
	for e := range gaps {
		g := &gaps[e]
		g.Wanted = held(wanted[e], -1e3, 1e3)
		g.Paint = held(paint[e].Loses(), -100, 100)
		if s != nil && door.Edge(e) == door.LatchSide {
			g.Season = held(s.Grows[s.Tight], -1e3, 1e3)
		}
		g.All = max(0, g.Wanted+g.Paint+g.Season)
	}
	return gaps
}
