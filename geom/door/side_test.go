package door

import (
	"testing"

	"leafwright/geom"
)

// The four edges of a leaf: each line at its ends meets the neighbours', and a step along the
// sign goes into the leaf; the bevels move the ends of top and foot by the depth.
func TestLinesOfTheLeaf(t *testing.T) {
	l := Rectangle(762, 1981, 40)
	l.Top = geom.Through(0, 1981, 762, 1975)
	l.ClosingBevel = 3 * geom.Degree
	for e, want := range map[Edge]struct {
		ends geom.Interval
		at   float64 // the line half way along
		in   float64
	}{
		HingeSide: {geom.Interval{Lo: 0, Hi: 1981}, 0, 1},
		LatchSide: {geom.Interval{Lo: 0, Hi: 1975}, 762, -1},
		HeadSide:  {geom.Interval{Lo: 0, Hi: 762}, 1978, -1},
		FloorSide: {geom.Interval{Lo: 0, Hi: 762}, 0, 1},
	} {
		line, in := l.Line(e)
		if ends := l.Ends(e, 0); ends != want.ends || line.At(ends.Mid()) != want.at || in != want.in {
			t.Errorf("edge %d: from %g to %g, %g half way, %+g", e, ends.Lo, ends.Hi, line.At(ends.Mid()), in)
		}
	}
	if front, back := l.Ends(FloorSide, 0), l.Ends(FloorSide, 40); back.Hi != front.Hi-40*l.ClosingSetback() || back.Lo != front.Lo {
		t.Errorf("the foot is from %g to %g behind", back.Lo, back.Hi)
	}
}

func TestSidesOfTheFrame(t *testing.T) {
	f := Square(769, 1990, 42, 13)
	for e, want := range map[Edge]struct {
		face *geom.Profile
		away float64
		stop *geom.Profile
		run  geom.Interval
	}{
		HingeSide: {&f.HingeJamb, -1, &f.HingeStop, geom.Interval{Hi: 1990}},
		LatchSide: {&f.LatchJamb, 1, &f.LatchStop, geom.Interval{Hi: 1990}},
		HeadSide:  {&f.Head, 1, &f.HeadStop, geom.Interval{Hi: 769}},
		FloorSide: {nil, 0, nil, geom.Interval{Hi: 769}},
	} {
		face, away := f.Face(e)
		if face != want.face || away != want.away || f.Stop(e) != want.stop || f.Run(e) != want.run {
			t.Errorf("side %d: the face, stop or run of another: %+g, %v", e, away, f.Run(e))
		}
	}
}
