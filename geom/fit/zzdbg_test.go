package fit_test

import (
	"fmt"
	"math"
	"testing"

	"leafwright/geom/fit"
)

func TestZZDebug(t *testing.T) {
	for n := *first; n < *first+*doors; n++ {
		d := randomDoor(randomSource(n))
		var f fit.Fit
		fit.Evaluate(&f, &d)
		s := hang(&d)
		for _, e := range []fit.Edge{2, 3} {
			w := s.swing(e)
			g := f.Swing[e]
			if math.Abs(w.least-g.Least) > 0.0001 {
				q := s.turned(w.phi).point(w.leaf)
				th := math.Atan2(q.Z, q.X) / degree
				kink := 999.0
				for _, a := range d.Floor.Angles {
					kink = min(kink, math.Abs(a.Degrees()-th))
				}
				fmt.Printf("door %d %v fit %.6f slow %.6f at fit's place by slow %.6f u %.2f/%.2f phi %.3f/%.3f r %.2f th %.3f off kink %.2g opens %v\n", n, e, g.Least, w.least, s.clear(e, s.turned(float64(g.Angle)).point(g.Leaf)), g.Leaf.X, w.leaf.X, g.Angle.Degrees(), w.phi/degree, math.Hypot(q.X, q.Z), th, kink, w.phi == float64(d.Opens))
			}
		}
	}
}
