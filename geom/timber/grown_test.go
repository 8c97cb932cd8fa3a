package timber_test

import (
	"math"
	"testing"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/timber"
)

// The leaf grows at its closing edge alone, and the door given stays as it was.
func TestGrown(t *testing.T) {
	p := piece()
	was := p.Door.Leaf.Closing.At(1000)
	g := timber.Grown(p.Door, 0.8)
	near(t, "wider", g.Leaf.Closing.At(1000), was+0.8, 1e-12)
	near(t, "as it was", p.Door.Leaf.Closing.At(1000), was, 0)
	near(t, "hanging edge", g.Leaf.Hanging.At(1000), p.Door.Leaf.Hanging.At(1000), 0)
	if n := timber.Grown(p.Door, math.NaN()).Leaf.Closing.At(1000); n != was {
		t.Errorf("grown by no number: %v", n)
	}
}

// What is done about a void when the person does not say.
func TestCureFor(t *testing.T) {
	deep := func(d timber.Decay, mm float64) timber.Void {
		return timber.Void{Decay: d, Across: geom.Interval{Lo: 300, Hi: 320}, Up: geom.Interval{Lo: 400, Hi: 440}, Depth: mm}
	}
	edge := deep(timber.Hole, 16)
	edge.FromEdge, edge.Edge = true, door.LatchSide
	for _, c := range []struct {
		name string
		v    timber.Void
		r    timber.Repair
		want timber.Cure
	}{
		{"shallow", deep(timber.Borer, 15), timber.Repair{}, timber.FillIt},
		{"deeper than three skins", deep(timber.Borer, 15.1), timber.Repair{}, timber.FoamIt},
		{"in from an edge it is as deep as it goes in", edge, timber.Repair{}, timber.FoamIt},
		{"it must bear", deep(timber.Borer, 15), timber.Repair{CutOut: true}, timber.CutItOut},
		{"sound filler", deep(timber.Putty, 30), timber.Repair{}, timber.LeaveIt},
		{"filler that must bear", deep(timber.Putty, 30), timber.Repair{CutOut: true}, timber.CutItOut},
	} {
		if got := timber.CureFor(c.v, c.r, 40); got != c.want {
			t.Errorf("%s: %s, want %s", c.name, got, c.want)
		}
		c.v.Cure = timber.LeaveIt
		if got := timber.CureFor(c.v, c.r, 40); got != timber.LeaveIt {
			t.Errorf("%s: %s where the person leaves it", c.name, got)
		}
	}
	// 40 long, 16 of the thickness open, 20 in from the edge
	f := timber.FillerFor(edge, 40, true)
	near(t, "skin at the edge", f.Filler, 40*16*5, 1e-9)
	near(t, "core", f.Foam, 40*16*15, 1e-9)
	edge.Edge = door.HeadSide // now 20 long and 40 in
	f = timber.FillerFor(edge, 40, false)
	near(t, "solid", f.Filler, 20*16*40, 1e-9)
}
