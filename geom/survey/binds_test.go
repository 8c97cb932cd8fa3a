package survey

import (
	"math"
	"testing"

	"leafwright/geom"
	"leafwright/geom/fit"
)

// The chance that a gap binds anywhere, against hanging a thousand doors with random
// errors of the readings and of what was not read, their lines bent at random
// between the stations too.
func TestBindsAgainstChance(t *testing.T) {
	const doors = 1500
	var worst, more float64
	tested, wider := 0, 0
	for seed := range uint64(10) {
		s := simulate(seed)
		d := s.door()
		rs := s.read(&d, whole(&d))
		if seed%2 == 0 {
			rs = s.read(&d, least(whole(&d)))
		}
		res := Adjust(rs)
		g := res.Gaps()
		a := res.adj
		rows := &a.sol.Rows
		var moves [][]float64
		for i := range rows.Len() {
			if cols, _ := rows.Row(i); rows.Weight(i) != 0 && len(cols) > 0 {
				m := make([]float64, a.net.columns)
				a.move(m, a.spare, i)
				moves = append(moves, m)
			}
		}
		limits := [fit.Edges]float64{}
		for e := range limits { // where it is as likely as not
			u, _ := g.Least(fit.Edge(e))
			limits[e] = u.Value - u.Sigma*float64(seed%3)/2
		}
		var count, single [fit.Edges]float64
		x := make([]float64, len(a.x))
		var f fit.Fit
		for range doors {
			copy(x, a.x)
			for _, m := range moves {
				z := s.NormFloat64()
				for k := range x {
					x[k] += z * m[k]
				}
			}
			a.net.write(x)
			c := a.net.d.Clone()
			fit.EvaluateClosed(&f, &c)
			for e := range count {
				edge := fit.Edge(e)
				var low bool
				for _, at := range g.gaps[e].at {
					low = low || f.Gaps[e].At(at) < limits[e]
				}
				at := g.gaps[e].at
				for i := 1; i < len(at); i++ {
					m := (at[i-1] + at[i]) / 2
					low = low || f.Gaps[e].At(m)+sqrt(g.bend(edge, m))*s.NormFloat64() < limits[e]
				}
				if low {
					count[e]++
				}
				if f.Gaps[e].At(g.Fit.Gaps[e].LeastAt) < limits[e] {
					single[e]++
				}
			}
		}
		a.net.write(a.x)
		for e := range count {
			edge := fit.Edge(e)
			got, want := g.Below(edge, g.Fit.Gaps[e].Range(), limits[e]), count[e]/doors
			tested++
			worst = math.Max(worst, math.Abs(got-want))
			more += want - single[e]/doors
			if want > single[e]/doors+0.05 {
				wider++
			}
			t.Logf("door %d, %s: %.3f, by chance %.3f, at the least place %.3f", seed, SideOf(edge), got, want, single[e]/doors)
			if math.Abs(got-want) > 0.08 {
				t.Errorf("door %d, %s: the chance is %.3f, of %d random doors %.3f bind", seed, SideOf(edge), got, doors, want)
			}
		}
	}
	t.Logf("worst %.3f apart", worst)
	if wider < tested/4 {
		t.Errorf("only %d of %d edges bind elsewhere than at the least place with a chance worth a word", wider, tested)
	}
}

// By plain reasoning: of no stretch there is no chance; a limit far off is met or
// missed for sure; and no chance is below that at the place itself.
func TestBelowAtItsEnds(t *testing.T) {
	d := square()
	rs := whole(&d)
	for i := range rs {
		rs[i].Value = Expect(&d, rs[i])
	}
	g := Adjust(rs).Gaps()
	for e := fit.HingeSide; e < fit.Edges; e++ {
		over := g.Fit.Gaps[e].Range()
		if p := g.Below(e, geom.Empty(), 0); p != 0 {
			t.Errorf("%s: nowhere it binds with a chance of %v", SideOf(e), p)
		}
		if lo, hi := g.Below(e, over, -50), g.Below(e, over, 50); lo != 0 || hi != 1 {
			t.Errorf("%s: below -50 mm with a chance of %v, below 50 of %v", SideOf(e), lo, hi)
		}
		u, at := g.Least(e)
		if p, one := g.Below(e, over, u.Value+u.Sigma), u.Below(u.Value+u.Sigma); p < one {
			t.Errorf("%s: %v along the edge, %v at its least place alone", SideOf(e), p, one)
		}
		near := geom.Interval{Lo: at, Hi: at}
		if p, one := g.Below(e, near, u.Value), u.Below(u.Value); math.Abs(p-one) > 0.01 {
			t.Errorf("%s: %v at one place, which by itself is %v", SideOf(e), p, one)
		}
	}
}
