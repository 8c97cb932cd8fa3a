// Package caseone is case 1 of the model's hand-checkable cases, the door many tests begin
// with. No program uses it.
package caseone

import (
	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
)

// Door is a square-edged leaf in a square opening, with gaps of 4 mm at the jambs and the
// head and 6 mm over the floor. Its hinges have no height of their own.
func Door() door.Door {
	h := func(y float64) door.Hinge {
		return door.Hinge{JambHeight: y, LeafHeight: y - 6, Closed: 8, LeafGain: 2, JambGain: 2, Pin: 5}
	}
	return door.Door{
		Leaf:   door.Rectangle(792, 1990, 40),
		Frame:  door.Square(800, 2000, 42, 12),
		Hinges: []door.Hinge{h(1756), h(256)},
		Latch:  door.Latch{Height: 1000},
		Floor:  door.FlatFloor(0),
		Opens:  90 * geom.Degree,
	}
}

// Hinged is that door on hinges of a height, mm.
func Hinged(height float64) door.Door {
	d := Door()
	for i := range d.Hinges {
		d.Hinges[i].Height = height
	}
	return d
}

// Wanted are limits that it keeps everywhere.
func Wanted() judge.Wanted {
	side := judge.Limits{Least: 3, Target: 4, Most: 5.5}
	return judge.Wanted{
		Gaps:       [fit.Edges]judge.Limits{side, side, side, {Least: 4, Target: 6, Most: 10}},
		Stop:       judge.Limits{Least: 0.5, Target: 2, Most: 4},
		Swing:      judge.Limits{Least: 1},
		SwingFloor: judge.Limits{Least: 3},
	}
}
