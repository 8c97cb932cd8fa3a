package survey

import (
	"math"
	"slices"
	"testing"

	"leafwright/geom/fit"
)

// How gaps and stop gaps follow each unknown, by levers, against hanging the door
// anew with each unknown moved either way: on random doors whose leaf rests on the
// latch, on the latch stop or on the head's.
func TestLeversAgainstHangingAnew(t *testing.T) {
	rests := map[bool]int{}
	var tested, apart int
	for seed := range uint64(24) {
		s := simulate(seed)
		d := s.door()
		rs := s.read(&d, whole(&d))
		if seed%3 == 0 { // the stops stand forward and hold the leaf
			for i := range rs {
				if rs[i].Kind == RebateDepth {
					rs[i].Value -= 4
				}
			}
		}
		a := Adjust(rs).adj
		n := a.net
		n.write(a.x)
		if len(n.d.Check()) > 0 {
			continue
		}
		var f fit.Fit
		fit.EvaluateClosed(&f, &n.d)
		rests[f.StopBound]++
		var places []Reading
		for e := fit.HingeSide; e < fit.Edges; e++ {
			for _, part := range []float64{0.03, 0.37, 0.71, 0.97} {
				over := f.Gaps[e].Range()
				places = append(places, Reading{Kind: GapRead, Side: SideOf(e), At: over.Lo + part*over.Length()})
				if e < fit.FloorSide {
					over = f.Stops[e].Range()
					places = append(places, Reading{Kind: StopGap, Side: SideOf(e), At: over.Lo + part*over.Length()})
				}
			}
		}
		read := func(out []float64) {
			var g fit.Fit
			fit.EvaluateClosed(&g, &n.d)
			o := observer{d: &n.d, net: n, closed: func() *fit.Fit { return &g }}
			for i := range places {
				out[i] = specs[places[i].Kind].observe(&o, &places[i])
			}
		}
		var l lever
		l.set(n, &n.d, &f)
		l.blunt = 1e-6
		less, more := make([]float64, len(places)), make([]float64, len(places))
		byLever := make([][]float64, len(places))
		for i := range places {
			l.row(&a.hung.spare, &places[i])
			byLever[i] = slices.Clone(l.dense)
		}
		x := slices.Clone(a.x)
		for q, c := range n.column {
			if c < 0 {
				continue
			}
			h := n.nudgeOf(q) / 100
			was := x[c]
			x[c] = was - h
			n.write(x)
			read(less)
			x[c] = was + h
			n.write(x)
			read(more)
			x[c] = was
			unit := nudge / n.nudgeOf(q) // a bevel's slope counts by what it does over a leaf
			for i := range places {
				want, got := (more[i]-less[i])/(2*h)*unit, byLever[i][c]*unit
				tested++
				if math.Abs(want-got) > 1e-2 {
					apart++
					if apart < 4 {
						t.Logf("door %d: %s %s at %.0f by quantity %d (%s): %.5f by lever, %.5f hung anew", seed, places[i].Kind, places[i].Side, places[i].At, q, name(n, q), got, want)
					}
				}
			}
		}
		n.write(a.x)
	}
	t.Logf("%d slopes, %d apart; rests %v", tested, apart, rests)
	if apart > tested/1000 { // the arris ends there, and where it ends follows a corner
		// of the leaf, which the lever leaves where it is
		t.Errorf("%d of %d slopes are apart", apart, tested)
	}
	if rests[true] < 4 || rests[false] < 4 {
		t.Errorf("of the doors %v rest on a stop", rests)
	}
}

// name tells what a quantity is, for messages.
func name(n *net, q int) string {
	for id := lines - 1; id >= 0; id-- {
		if p := &n.line[id]; q >= p.first && q <= p.last() {
			return lineSpecs[id].name
		}
	}
	for id, k := range n.scalar {
		if k == q {
			return []string{"stop width", "thickness", "hanging bevel", "closing bevel", "latch height", "latch stand"}[id]
		}
	}
	for _, h := range n.hinge {
		for f, k := range h {
			if k == q {
				return []string{"jamb height", "leaf height", "leaf gain", "jamb gain", "leaf packer", "jamb packer", "closed", "pin", "proud", "plate"}[f]
			}
		}
	}
	return "floor"
}
