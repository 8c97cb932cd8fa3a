package survey

import (
	"math"
	"testing"

	"leafwright/geom"
	"leafwright/geom/fit"
)

func TestSparse(t *testing.T) {
	for _, row := range []struct {
		situation string
		p, want   geom.Profile
	}{
		{"straight", geom.Through(0, 0, 500, 0.006, 1000, -0.004, 2000, 0), geom.Through(0, 0, 2000, 0)},
		{"one bend", geom.Through(0, 0, 500, 1, 1000, 2, 1500, 1, 2000, 0), geom.Through(0, 0, 1000, 2, 2000, 0)},
		{"a bow of many slight bends", geom.Through(0, 0, 500, 0.01, 1000, 0.016, 1500, 0.01, 2000, 0), geom.Through(0, 0, 1000, 0.016, 2000, 0)},
		{"two stations", geom.Through(0, 3, 2000, 4), geom.Through(0, 3, 2000, 4)},
		{"one", geom.Level(3), geom.Level(3)},
		{"none", nil, geom.Profile{}},
	} {
		got := sparse(row.p, func(int) float64 { return unseen })
		if len(got) != len(row.want) {
			t.Errorf("%s: %v, want %v", row.situation, got, row.want)
			continue
		}
		for i := range got {
			if got[i] != row.want[i] {
				t.Errorf("%s: %v, want %v", row.situation, got, row.want)
			}
		}
	}
}

// Of doors read with all there is, feelers too: no line of the result is off what the
// unknowns say by a tenth of its standard deviation there, no gap by as much of its
// own.
func TestStationsLeftOutDoNotShow(t *testing.T) {
	had, has := 0, 0
	least := math.Inf(1)
	for seed := range uint64(30) {
		s := simulate(seed)
		d := s.door()
		var truth fit.Fit
		fit.EvaluateClosed(&truth, &d)
		res := Adjust(append(s.read(&d, whole(&d)), s.read(&d, feelers(&truth))...))
		if !res.Hangs {
			t.Fatalf("door %d: %v", seed, res.Faults)
		}
		a := res.adj
		n := a.net
		n.write(a.x)
		g := make([]float64, n.columns)
		for id := range lines {
			p, l := *profileOf(&res.Door, id), *profileOf(&n.d, id)
			had, has = had+len(l), has+len(p)
			for _, st := range l {
				off := math.Abs(p.At(st.At) - st.Value)
				if off == 0 {
					continue
				}
				clear(g)
				note := func(id lineID, k float64) {
					n.line[id].weigh(st.At, func(q int, w float64) {
						if c := n.column[q]; c >= 0 {
							g[c] += k * w
						}
					})
				}
				if id >= hingeRebate && id <= headRebate {
					note(id, -1)
					note(id-hingeRebate+hingeFront, 1)
				} else {
					note(id, 1)
				}
				a.pull(a.spare, g)
				sigma := math.Sqrt(a.variance(a.spare))
				least = math.Min(least, sigma)
				if off > sigma/10 {
					t.Errorf("door %d: the %s at %.0f is %.4f off, ± %.3f", seed, lineSpecs[id].name, st.At, off, sigma)
				}
			}
		}
		var f fit.Fit
		fit.EvaluateClosed(&f, &res.Door)
		gaps := res.Gaps()
		for e := fit.HingeSide; e < fit.Edges; e++ {
			u, at := gaps.Least(e)
			if v := f.Gaps[e].At(at); math.Abs(v-u.Value) > 0.25*u.Sigma {
				t.Errorf("door %d, %s: the gap is %.3f with stations left out, %.3f ± %.3f with all", seed, SideOf(e), v, u.Value, u.Sigma)
			}
		}
	}
	t.Logf("%d stations of %d; of lines the least standard deviation is %.3f", has, had, least)
	if least < 10*unseen/1.1 {
		t.Errorf("a line is known to %.3f mm", least)
	}
}

// A door with nothing bent about it, read with errors, bends at a few places.
func TestStraightDoorHasFewStations(t *testing.T) {
	d := square()
	s := simulate(1)
	had, has := 0, 0
	res := Adjust(s.read(&d, without(whole(&d), FrameBow, LeafBow, FrontBow, StileBow)))
	for id := range lines {
		had, has = had+len(*profileOf(&res.adj.net.d, id)), has+len(*profileOf(&res.Door, id))
	}
	if has > had*4/5 {
		t.Errorf("%d of %d stations are left", has, had)
	}
}
