package advise

import (
	"math"
	"testing"

	"leafwright/geom/advise/lp"
	"leafwright/geom/door"
	"leafwright/geom/trim"
)

// TestLeaningOut holds what is left out by steps against every combination of parts.
func TestLeaningOut(t *testing.T) {
	count, best, worst := 0, 0, 0.0
	for n := range (many() + 3) / 4 {
		c := seeded(10, uint64(n))
		piece := c.oldDoor()
		if len(piece.Door.Check()) > 0 {
			continue
		}
		w := Start(&Problem{Piece: piece, Wanted: band(1)})
		w.Step()
		m := w.program(&attempt{family: PlaneOnly, hung: true})
		if m.solve() != lp.Optimal {
			continue
		}
		m.lean()
		got := m.price()
		var parts []int
		seen := make([]bool, len(w.parts))
		for _, i := range m.use {
			if k := w.unknowns[i].part; !seen[k] {
				seen[k] = true
				parts = append(parts, k)
			}
		}
		least := math.Inf(1)
		all := w.program(&attempt{family: PlaneOnly, hung: true})
		for set := range 1 << len(parts) {
			for b, k := range parts {
				if shut := set&(1<<b) == 0; shut != all.shut[k] {
					all.close(k, shut)
				}
			}
			if all.solve() == lp.Optimal {
				least = min(least, all.price())
			}
		}
		count++
		if got < least+1e-6 {
			best++
		}
		worst = max(worst, got/least-1)
	}
	t.Logf("%d of %d as cheap as any combination of parts, %.1f %% dearer at worst", best, count, 100*worst)
	if count == 0 || count > 7 && 10*best < 6*count || worst > 0.15 {
		t.Errorf("parts are left out badly")
	}
}

// Nothing to advise on is no reason to fall over.
func TestNothing(t *testing.T) {
	for _, p := range []*Problem{
		{}, {Wanted: band(1)}, {Piece: hung()}, {Piece: trim.Piece{Door: door.Door{Hinges: make([]door.Hinge, 2)}}},
		{Piece: hung(), Wanted: band(0), Sigma: &Sigmas{}}, {Piece: hung(), Wanted: band(1), Wishes: Wishes{TopRail: 1e9, LeastStrip: -3}},
		{Piece: hung(), Wanted: band(math.Inf(1))}, {Piece: hung(), Wanted: asked(), Risk: 2, Hand: -1, Step: 1e-9, Packers: []float64{-1, 0, 900}},
	} {
		a := Plans(p)
		for _, plan := range a.Plans {
			if len(plan.Stages) == 0 {
				t.Error("a plan without a stage")
			}
		}
		p.After(nil, nil)
	}
}

// TestWild has doors far beyond any house's: a plan is good or there is none.
func TestWild(t *testing.T) {
	plans := 0
	for n := range many() / 2 {
		c := seeded(11, uint64(n))
		piece := c.oldDoor()
		d := &piece.Door
		far := 12 * c.Float64()
		shake := func(at int, v *float64) { *v += far * (c.Float64() - 0.5) * float64(at%2) }
		for i := range d.Leaf.Closing {
			shake(i, &d.Leaf.Closing[i].Value)
			shake(i, &d.Frame.LatchJamb[i].Value)
			shake(i+1, &d.Frame.HingeJamb[i].Value)
			shake(i, &d.Leaf.ClosingFace[i].Value)
			shake(i, &d.Frame.LatchStop[i].Value)
			shake(i, &d.Frame.Head[i].Value)
		}
		if len(d.Check()) > 0 {
			continue
		}
		p := &Problem{Piece: piece, Wanted: band(4 * c.Float64()), Wishes: Wishes{Prefer: Preferences[n%4]}}
		a := Plans(p)
		proven(t, p, a)
		plans += len(a.Plans)
	}
	t.Logf("%d plans", plans)
}
