package fault_test

import (
	"math"
	"testing"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fault"
	"leafwright/geom/fit"
	"leafwright/geom/trim"
)

// square is a door with 3 mm at the sides and the head, 8 under it and 2 to its stops.
func square() trim.Piece {
	d := door.Door{Leaf: door.Rectangle(794, 1989, 40), Frame: door.Square(800, 2000, 42, 12), Latch: door.Latch{Height: 1000}, Opens: 90 * geom.Degree, Floor: door.FlatFloor(0)}
	for _, v := range []float64{1750, 250} {
		d.Hinges = append(d.Hinges, door.Hinge{LeafHeight: v, JambHeight: v + 8, Closed: 7, LeafGain: 2, JambGain: 2, Pin: 5, Height: 75})
	}
	return trim.Piece{Door: d}
}

func TestWhatShows(t *testing.T) {
	type shown struct {
		kind   fault.SymptomKind
		edge   door.Edge
		degree fault.Degree
	}
	for _, row := range []struct {
		situation string
		put       func(d *door.Door)
		want      []shown
	}{
		{"sound", func(*door.Door) {}, nil},
		{"closing edge 0.4 mm over", func(d *door.Door) { d.Leaf.Closing = d.Leaf.Closing.Shift(3.4) }, []shown{{fault.Rubs, door.LatchSide, fault.Slight}}},
		{"1 mm over", func(d *door.Door) { d.Leaf.Closing = d.Leaf.Closing.Shift(4) }, []shown{{fault.Rubs, door.LatchSide, fault.Plain}}},
		{"3 mm over", func(d *door.Door) { d.Leaf.Closing = d.Leaf.Closing.Shift(6) }, []shown{{fault.Rubs, door.LatchSide, fault.Gross}}},
		{"half a millimetre left", func(d *door.Door) { d.Leaf.Top = d.Leaf.Top.Shift(2.5) }, []shown{{fault.Hairline, door.HeadSide, fault.Slight}}},
		{"6 mm too narrow", func(d *door.Door) { d.Leaf.Closing = d.Leaf.Closing.Shift(-6) }, []shown{{fault.Light, door.LatchSide, fault.Gross}}},
		{"gains 4 mm too deep", func(d *door.Door) {
			for i := range d.Hinges {
				d.Hinges[i].LeafGain += 4
			}
		}, []shown{{fault.SpringsBack, door.HingeSide, fault.Plain}, {fault.Rubs, door.HingeSide, fault.Plain}, {fault.Light, door.LatchSide, fault.Plain}}},
		{"hinge stop 3 mm forward", func(d *door.Door) { d.Frame.HingeStop = d.Frame.HingeStop.Shift(3) }, []shown{{fault.SpringsBack, door.HingeSide, fault.Plain}}},
		{"latch stop 5 mm forward", func(d *door.Door) { d.Frame.LatchStop = d.Frame.LatchStop.Shift(5) }, []shown{{fault.HitsStop, door.LatchSide, fault.Plain}, {fault.LatchMisses, door.LatchSide, fault.Plain}}},
		{"latch stop 0.2 mm too far forward: pushed home", func(d *door.Door) { d.Frame.LatchStop = d.Frame.LatchStop.Shift(2.2) }, []shown{{fault.HitsStop, door.LatchSide, fault.Slight}}},
		{"latch stop 4 mm back", func(d *door.Door) { d.Frame.LatchStop = d.Frame.LatchStop.Shift(-4) }, []shown{{fault.Rattles, door.LatchSide, fault.Plain}}},
		{"floor 9 mm higher at 90°", func(d *door.Door) {
			d.Floor = door.Floor{Radii: []float64{0, 800}, Angles: []geom.Angle{0, 90 * geom.Degree}, Heights: [][]float64{{0, 0}, {0, 9}}}
		}, []shown{{fault.RubsFloor, door.FloorSide, fault.Plain}}},
		{"one hinge 1.6 mm thicker", func(d *door.Door) { d.Hinges[0].Closed += 1.6; d.Hinges[0].LeafGain += 1.6 }, []shown{{fault.HingeOpen, door.HingeSide, fault.Plain}, {fault.SpringsBack, door.HingeSide, fault.Plain}}},
		{"middle hinge 1.5 mm out of line", func(d *door.Door) {
			h := d.Hinges[0]
			h.LeafHeight, h.JambHeight, h.LeafGain = 1000, 1008, 3.5
			d.Hinges = []door.Hinge{d.Hinges[0], h, d.Hinges[1]}
		}, []shown{{fault.Creaks, door.HingeSide, fault.Plain}}},
	} {
		p := square()
		row.put(&p.Door)
		_, got := look(t, &p)
		if len(got) != len(row.want) {
			t.Errorf("%s: %+v", row.situation, got)
			continue
		}
		for i, w := range row.want {
			if g := got[i]; g.Kind != w.kind || g.Edge != w.edge || g.Degree != w.degree {
				t.Errorf("%s: %+v, want %v", row.situation, g, w)
			}
		}
	}
}

// A leaf on pins that lean out of the wall at the top by s in 1500 falls open: its middle,
// r from the axis, then sinks by r·cos φ·s/1500 per radian (elementary statics), and
// moves once that is more than the 0.7 mm of friction.
func TestPinsThatLean(t *testing.T) {
	p := square()
	h := &p.Door.Hinges[0]
	x := 397.0 + 3 - (h.Closed/2 - h.JambGain) // of the leaf's middle from the pin
	for _, row := range []struct {
		part float64
		want bool
	}{{0.97, false}, {1.03, true}} {
		for _, out := range []int{0, 1} {
			q := square()
			// the middle also lies z behind the pin: it is ahead of the lean by that angle
			lever := x*math.Cos(8*math.Pi/180) + (20+h.Pin)*math.Sin(8*math.Pi/180)
			if out == 1 { // falls shut, hardest ajar likewise
				lever = x*math.Cos(8*math.Pi/180) + (20+h.Pin)*math.Sin(8*math.Pi/180)
			}
			q.Door.Hinges[out].Pin += row.part * 0.7 * 1500 / lever
			_, shows := look(t, &q)
			kind := fault.SwingsOpen
			if out == 1 {
				kind = fault.SwingsShut
			}
			s := seen{shows: shows}
			if s.any(kind) != row.want || len(shows) > 1 {
				t.Errorf("hinge %d out by %v of what moves it: %+v", out+1, row.part, shows)
			}
			if row.want && math.Abs(shows[0].Angle.Degrees()-8) > 0.1 {
				t.Errorf("moves at %v°", shows[0].Angle.Degrees())
			}
		}
	}
}

// A jamb that leans towards the latch shuts the door, hardest when it is open.
func TestJambThatLeansShuts(t *testing.T) {
	p := square()
	p.Door.Frame.HingeJamb = geom.Through(0, 0, 2000, 8)
	p.Door.Frame.LatchJamb = geom.Through(0, 800, 2000, 808)
	_, shows := look(t, &p)
	for _, s := range shows {
		if s.Kind == fault.SwingsShut {
			if s.Angle.Degrees() < 75 {
				t.Errorf("hardest at %v°", s.Angle.Degrees())
			}
			return
		}
	}
	t.Errorf("does not swing shut: %+v", shows)
}

func TestFeel(t *testing.T) {
	p := square()
	p.Door.Frame.Head = geom.Through(0, 2000, 800, 1996)
	f, _ := look(t, &p)
	for _, row := range []struct {
		edge door.Edge
		at   float64
		want float64
		ok   bool
	}{
		{door.LatchSide, 1000, 3, true}, {door.HeadSide, 400, 1, true}, {door.HeadSide, 390, 1.05, true}, {door.HeadSide, 790, 0, true},
		{door.FloorSide, 400, 8, true}, {door.LatchSide, 2500, 0, false}, {door.Edges, 0, 0, false}, {-1, 0, 0, false},
	} {
		got, ok := fault.Feel(f, row.edge, row.at)
		if got != row.want || ok != row.ok {
			t.Errorf("edge %d at %v: %v, %v; want %v, %v", row.edge, row.at, got, ok, row.want, row.ok)
		}
	}
	if _, ok := fault.Feel(&fit.Fit{}, door.HeadSide, 400); ok {
		t.Error("a fit of nothing is felt")
	}
}
