package trim_test

import (
	"testing"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/trim"
)

// A steeper bevel takes a wedge off behind the knuckle arris, t²·tan/2 in section; a
// lesser one takes the same off the knuckle arris.
func TestBevelled(t *testing.T) {
	const thick, high = 40.0, 1990.0
	three, one := (3 * geom.Degree).Tan(), (1 * geom.Degree).Tan()
	p, done := doneTo(t, caseOne(), trim.Move{Kind: trim.Bevel, Edge: door.LatchSide, Angle: 3 * geom.Degree})
	is(t, "wedge", done.Volume, thick*thick*three/2*high, 1e-3)
	is(t, "knuckle arris", p.Door.Leaf.Closing.At(1000), 792, 0)
	is(t, "off the knuckle face", done.Off, 0, 0)
	is(t, "most", done.Most, thick*three, 1e-12)
	q, done := doneTo(t, p, trim.Move{Kind: trim.Bevel, Edge: door.LatchSide, Angle: 1 * geom.Degree})
	back := thick * (three - one)
	is(t, "lesser wedge", done.Volume, thick*back/2*high, 1e-3)
	is(t, "knuckle arris back", q.Door.Leaf.Closing.At(1000), 792-back, 1e-9)
	is(t, "off the knuckle face", done.Off, back*high, 1e-6)
	was, now := p.Door.Leaf.Corners(thick), q.Door.Leaf.Corners(thick)
	is(t, "stop arris stays", now.ClosingHead.X, was.ClosingHead.X, 1e-9)
	is(t, "latch gap", fitOf(q).Gaps[fit.LatchSide].Least, 4+back, 1e-6)

	// on the hanging edge a lesser bevel lets the gains' floors be
	p, _ = doneTo(t, caseOne(), trim.Move{Kind: trim.Bevel, Edge: door.HingeSide, Angle: 2 * geom.Degree})
	is(t, "knuckle arris", p.Door.Leaf.Hanging.At(1000), 0, 0)
	q, _ = doneTo(t, p, trim.Move{Kind: trim.Bevel, Edge: door.HingeSide})
	two := (2 * geom.Degree).Tan()
	is(t, "knuckle arris back", q.Door.Leaf.Hanging.At(1000), thick*two, 1e-9)
	is(t, "gain", q.Door.Hinges[0].LeafGain, 2-thick*two, 1e-9)
}

// An arris taken off at 45°, and planed away again with the edge.
func TestEased(t *testing.T) {
	p, done := doneTo(t, caseOne(), trim.Move{Kind: trim.Ease, Edge: door.LatchSide, Face: trim.Knuckle, First: 3})
	is(t, "prism", done.Volume, 3*3/2.0*1990, 1e-9)
	if s := p.Door.Leaf.Sections[door.LatchSide]; s != (door.Section{KnuckleEase: 3}) || done.Off != 0 {
		t.Errorf("%+v, %+v", s, done)
	}
	q, done := doneTo(t, p, trim.Move{Kind: trim.Ease, Edge: door.LatchSide, Face: trim.Knuckle, First: 4})
	is(t, "what more there is", done.Volume, (16-9)/2.0*1990, 1e-9)
	refused(t, q, trim.Move{Kind: trim.Ease, Edge: door.LatchSide, Face: trim.Knuckle, First: 4}, trim.SoAlready, 4)
	q, _ = doneTo(t, q, trim.Move{Kind: trim.Plane, Edge: door.LatchSide, First: 1.5, Last: 2})
	is(t, "planed", q.Door.Leaf.Sections[door.LatchSide].KnuckleEase, 2.5, 1e-12)
	q, _ = doneTo(t, q, trim.Move{Kind: trim.Plane, Edge: door.LatchSide, First: 3, Last: 3})
	is(t, "planed away", q.Door.Leaf.Sections[door.LatchSide].KnuckleEase, 0, 0)
	q, _ = doneTo(t, p, trim.Move{Kind: trim.Ease, Edge: door.LatchSide, Face: trim.Stop, First: 1})
	if s := q.Door.Leaf.Sections[door.LatchSide]; s != (door.Section{KnuckleEase: 3, StopEase: 1}) {
		t.Errorf("%+v", s)
	}
}
