package trim_test

import (
	"fmt"
	"math"
	"reflect"
	"slices"
	"testing"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/trim"
)

// deep copies a piece so that nothing is shared.
func deep(p trim.Piece) trim.Piece {
	p.Door = p.Door.Clone()
	p.Anatomy.Rails = slices.Clone(p.Anatomy.Rails)
	p.Anatomy.Muntins = slices.Clone(p.Anatomy.Muntins)
	p.Anatomy.Strips = slices.Clone(p.Anatomy.Strips)
	for i := range p.Anatomy.Strips {
		p.Anatomy.Strips[i].Joint = slices.Clone(p.Anatomy.Strips[i].Joint)
	}
	p.Offcuts = slices.Clone(p.Offcuts)
	return p
}

// same compares two pieces bit for bit: numbers are written so that they read back exactly.
func same(a, b trim.Piece) bool {
	return fmt.Sprint(a) == fmt.Sprint(b)
}

// Random moves one after another never panic; each is refused with a reason and
// leaves the piece alone, or gives a door that can be hung and measured. No piece
// on the way is ever changed by what is done after.
func TestAnyMovesGiveADoor(t *testing.T) {
	made, refused := map[trim.Kind]int{}, map[trim.Kind]int{}
	var f fit.Fit
	for n := range pieces(300) {
		p := randomPiece(n)
		c := throw(1_000_000 + n)
		var way, kept []trim.Piece
		for i := range 15 {
			m := c.move(&p)
			m.Off = false
			way, kept = append(way, p), append(kept, deep(p))
			q, done, why := trim.Do(p, m)
			if why != nil {
				refused[m.Kind]++
				if !why.About.Forbids() || why.About == trim.Nothing {
					t.Fatalf("piece %d, move %d %+v: refused for %+v", n, i, m, *why)
				}
				if !same(kept[i], q) || !reflect.DeepEqual(done, trim.Done{}) {
					t.Fatalf("piece %d, move %d %+v: refused, but %+v", n, i, m, done)
				}
				continue
			}
			made[m.Kind]++
			if faults := q.Door.Check(); len(faults) > 0 {
				t.Fatalf("piece %d, move %d %+v: %v", n, i, m, faults)
			}
			for _, care := range done.Cares {
				if care.About.Forbids() {
					t.Fatalf("piece %d, move %d %+v: done in spite of %+v", n, i, m, care)
				}
			}
			for _, x := range []float64{done.Off, done.On, done.Volume, done.Most, done.Minutes} {
				if !(x >= 0 && x < 1e10) {
					t.Fatalf("piece %d, move %d %+v: %+v", n, i, m, done)
				}
			}
			fit.Evaluate(&f, &q.Door)
			for e := range f.Gaps {
				if math.IsNaN(f.Gaps[e].Least) || math.IsNaN(f.Swing[e].Least) {
					t.Fatalf("piece %d, move %d %+v: no gap on edge %d", n, i, m, e)
				}
			}
			p = q
		}
		for i := range way {
			if !same(way[i], kept[i]) {
				t.Fatalf("piece %d: state %d was changed by what came after", n, i)
			}
		}
	}
	for _, s := range trim.Kinds {
		if made[s.Kind] < pieces(12) {
			t.Errorf("%s: made %d times, refused %d: too one-sided a test", s.Kind, made[s.Kind], refused[s.Kind])
		}
	}
	t.Logf("made %v, refused %v", made, refused)
}

// A move switched off is a move never made, to the last bit, and so is one that is
// refused; switched on again it is there again.
func TestOffIsNeverMade(t *testing.T) {
	for n := range pieces(200) {
		p := randomPiece(n)
		c := throw(2_000_000 + n)
		moves := c.moves(12, &p)
		all, steps := trim.All(p, moves)
		var on []trim.Move
		var of []trim.Step
		for i, m := range moves {
			if len(steps) != len(moves) || steps[i].Move.Kind != m.Kind {
				t.Fatalf("piece %d: %d steps for %d moves", n, len(steps), len(moves))
			}
			if m.Off && (steps[i].Why != nil || !reflect.DeepEqual(steps[i].Done, trim.Done{})) {
				t.Fatalf("piece %d: move %d is off, yet %+v", n, i, steps[i])
			}
			if !m.Off && steps[i].Why == nil {
				steps[i].Done.Cares = slices.DeleteFunc(steps[i].Done.Cares, func(c trim.Care) bool { return c.About == trim.WithoutMove })
				on, of = append(on, m), append(of, steps[i])
			}
		}
		without, their := trim.All(p, on)
		if !same(all, without) || fmt.Sprint(of) != fmt.Sprint(their) {
			t.Fatalf("piece %d: moves that are off leave a trace", n)
		}
		off := slices.Clone(moves)
		for i := range off {
			off[i].Off = true
		}
		if none, _ := trim.All(p, off); !same(none, p) {
			t.Fatalf("piece %d: all off, and not as found", n)
		}
		if again, _ := trim.All(p, moves); !same(all, again) {
			t.Fatalf("piece %d: on again, and not the same", n)
		}
	}
}

// Two shavings are one of both thicknesses, and so with every amount the trade adds up.
func TestTwoAreOne(t *testing.T) {
	var all []trim.Move
	for _, e := range []door.Edge{door.HingeSide, door.LatchSide, door.HeadSide, door.FloorSide} {
		all = append(all, trim.Move{Kind: trim.Plane, Edge: e, First: 0.5, Last: 1.5},
			trim.Move{Kind: trim.Plane, Edge: e, From: 200, To: 400, First: 1, Last: 0.4})
		if e != door.FloorSide {
			all = append(all, trim.Move{Kind: trim.PlaneJamb, Edge: e, First: 0.4, Last: 1},
				trim.Move{Kind: trim.PackJamb, Edge: e, First: 1, Last: 1},
				trim.Move{Kind: trim.Restop, Edge: e, First: 1, Last: 0.5})
		}
	}
	for _, on := range []trim.Part{trim.OnLeaf, trim.OnJamb, trim.OnBoth} {
		for _, k := range []trim.Kind{trim.Shift, trim.Raise, trim.Sink, trim.Pack, trim.Set} {
			all = append(all, trim.Move{Kind: k, On: on, First: 0.7})
		}
	}
	p := caseOne()
	p.Door.Leaf.Closing = geom.Through(0, 790, 900, 793, 1990, 791)
	p.Door.Leaf.ClosingFace = geom.Through(0, 0, 1990, 5)
	p.Anatomy.Joints = door.Joints{}
	for _, m := range all {
		twice, _ := doneTo(t, p, m, m)
		m.First, m.Last = 2*m.First, 2*m.Last
		once, _ := doneTo(t, p, m)
		alike(t, m, fitOf(twice), fitOf(once), 2e-5) // the second taper is laid from corners that moved by microns
	}
}

// Work on different edges may be done in either order.
func TestOrderOfEdges(t *testing.T) {
	var all []trim.Move
	for _, e := range []door.Edge{door.HingeSide, door.LatchSide, door.HeadSide, door.FloorSide} {
		all = append(all, trim.Move{Kind: trim.Plane, Edge: e, First: 1, Last: 1})
	}
	all = append(all, trim.Move{Kind: trim.Sink, Hinge: 1, On: trim.OnJamb, First: 0.5},
		trim.Move{Kind: trim.Set, Hinge: 2, On: trim.OnLeaf, First: 1},
		trim.Move{Kind: trim.PlaneJamb, Edge: door.LatchSide, First: 1, Last: 1},
		trim.Move{Kind: trim.Restop, Edge: door.LatchSide, First: 1, Last: 1},
		trim.Move{Kind: trim.Threshold, Cover: 3, Wide: 50})
	for n := range 20 {
		p := randomPiece(n)
		p.Anatomy.Joints = door.Joints{}
		for i, a := range all {
			for _, b := range all[i+1:] {
				ab, _ := trim.All(p, []trim.Move{a, b})
				ba, _ := trim.All(p, []trim.Move{b, a})
				within := 1e-6
				if a.Kind == trim.Plane && b.Kind == trim.Threshold {
					within = 0.05 // its width is told from the closing edge as it is then
				}
				alike(t, []trim.Move{a, b}, fitOf(ab), fitOf(ba), within)
			}
		}
		if t.Failed() {
			t.Fatalf("piece %d", n)
		}
	}
}

func alike(t *testing.T, of any, a, b *fit.Fit, within float64) {
	t.Helper()
	for e := range a.Gaps {
		for _, d := range []float64{
			a.Gaps[e].Least - b.Gaps[e].Least, a.Gaps[e].Most - b.Gaps[e].Most, a.Swing[e].Least - b.Swing[e].Least,
		} {
			if !(math.Abs(d) <= within) {
				t.Errorf("%+v: edge %d differs by %v", of, e, d)
			}
		}
	}
	for e := range a.Stops {
		if d := a.Stops[e].Least - b.Stops[e].Least; !(math.Abs(d) <= within) {
			t.Errorf("%+v: stop %d differs by %v", of, e, d)
		}
	}
}
