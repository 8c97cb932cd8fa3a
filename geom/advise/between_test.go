package advise

import (
	"testing"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/trim"
)

// threeHinged is a leaf that fits on three hinges.
func threeHinged() trim.Piece {
	p := hung()
	d := &p.Door
	top, low := d.Hinges[0], d.Hinges[1]
	middle := top
	middle.LeafHeight, middle.JambHeight = (top.LeafHeight+low.LeafHeight)/2, (top.JambHeight+low.JambHeight)/2
	d.Hinges = []door.Hinge{top, middle, low}
	return p
}

// A hinge between the outer two that is out by itself is put right by itself, by what it is
// out by (common practice, no published source), and no timber goes.
func TestHingesBetween(t *testing.T) {
	for _, c := range []struct {
		name string
		out  func(h []door.Hinge)
		want trim.Move
	}{
		{"its gain 2.5 mm too deep", func(h []door.Hinge) { h[1].LeafGain += 2.5 }, trim.Move{Kind: trim.Pack, Hinge: 2, On: trim.OnLeaf, First: 2.5}},
		{"its gain 1 mm too shallow", func(h []door.Hinge) { h[1].LeafGain-- }, trim.Move{Kind: trim.Sink, Hinge: 2, On: trim.OnLeaf, First: 1}},
		{"packing left behind it", func(h []door.Hinge) { h[1].LeafPacker += 2 }, trim.Move{Kind: trim.Pack, Hinge: 2, On: trim.OnLeaf, First: -2}},
		{"set 2 mm out of the plane", func(h []door.Hinge) { h[1].Proud += 2 }, trim.Move{Kind: trim.Set, Hinge: 2, On: trim.OnLeaf, First: -2}},
		{"packing left behind the top one in the jamb", func(h []door.Hinge) { h[0].JambPacker += 3 }, trim.Move{Kind: trim.Pack, Hinge: 1, On: trim.OnJamb, First: -3}},
	} {
		p := &Problem{Piece: threeHinged(), Wanted: asked()}
		c.out(p.Piece.Door.Hinges)
		a := Plans(p)
		if len(a.Plans) == 0 {
			t.Errorf("%s: no plan", c.name)
			continue
		}
		if got := a.Plans[0].Moves; len(got) != 1 || got[0].Kind != c.want.Kind || got[0].Hinge != c.want.Hinge || got[0].On != c.want.On || abs(got[0].First-c.want.First) > 1e-6 {
			t.Errorf("%s: %+v, want %+v", c.name, got, c.want)
		}
	}
}

// Whatever else is out with it, no plan leaves a hinge of three out of line or step.
func TestHingesBetweenAreSeated(t *testing.T) {
	planned := 0
	for n := range 40 {
		c := seeded(31, uint64(n))
		p := &Problem{Piece: threeHinged(), Wanted: asked()}
		h := p.Piece.Door.Hinges
		h[1].LeafGain += c.about(1.5)
		h[1].JambGain += c.about(0.5)
		h[0].LeafGain += c.about(1)
		p.Piece.Door.Frame.Head[1].Value += c.about(1)
		if len(p.Piece.Door.Check()) > 0 {
			continue
		}
		a := Plans(p)
		for i := range a.Plans {
			planned++
			is, _ := trim.All(p.Piece, a.Plans[i].Moves)
			var f fit.Fit
			fit.Evaluate(&f, &is.Door)
			if off := max(f.Unseated(1), f.OutOfLine(1)); off > hingePlay {
				t.Errorf("door %d, plan %d leaves the middle hinge %.2f mm out", n, i, off)
			}
		}
		if !a.Good && len(a.Plans) == 0 {
			t.Errorf("door %d: no plan: %+v", n, a.Findings)
		}
	}
	if planned < 30 {
		t.Errorf("only %d plans", planned)
	}
}

// A reclaimed leaf whose gains are elsewhere than the jamb's has the hinge shifted all the
// way, however far that is: no strain is left to save a shaving.
func TestHingesAtOdds(t *testing.T) {
	for _, by := range []float64{15, 81, -40} {
		p := &Problem{Piece: hung(), Wanted: asked()}
		p.Piece.Door.Hinges[0].LeafHeight -= by
		a := Plans(p)
		if len(a.Plans) == 0 {
			t.Errorf("%g mm: no plan", by)
			continue
		}
		if got := a.Plans[0].Moves; len(got) != 1 || got[0].Kind != trim.Shift || got[0].Hinge != 1 || abs(got[0].First-by) > 0.25 {
			t.Errorf("%g mm: %+v", by, got)
		}
	}
}

// Where what costs least fits no step, something else makes up for what steps leave over: no
// strip is glued on for a hair.
func TestNoStripForAHair(t *testing.T) {
	p := &Problem{Piece: hung(), Wanted: asked(), Wishes: Wishes{LeaveFrame: true}}
	f := &p.Piece.Door.Frame
	f.HingeJamb = geom.Through(0, f.HingeJamb.At(0), f.Head[0].Value, f.HingeJamb.At(f.Head[0].Value)-3)
	f.LatchJamb = geom.Through(0, f.LatchJamb.At(0), f.Head[0].Value, f.LatchJamb.At(f.Head[0].Value)-3)
	p.Piece.Door.Hinges[0].LeafGain += 1.5
	a := Plans(p)
	if len(a.Plans) == 0 || a.Plans[0].Cost.Strips > 0 {
		t.Errorf("%+v", a.Plans)
	}
}
