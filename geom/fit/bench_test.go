package fit_test

import (
	"testing"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fit"
)

// plain is case 1 of the model's hand-checkable cases.
func plain() door.Door {
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

// old is a door with every departure there is, as an old house may have it.
func old() door.Door {
	d := plain()
	d.Leaf.Closing = geom.Through(0, 791, 700, 792.5, 1400, 792, 1990, 790)
	d.Leaf.Hanging = geom.Through(0, 0, 1000, 0.6, 1990, 0)
	d.Leaf.Top = geom.Through(0, 1990, 400, 1988, 792, 1985)
	d.Leaf.Bottom = geom.Through(0, 0, 792, 2)
	d.Leaf.HangingFace = geom.Through(0, 0, 1000, 1.5, 1990, 0)
	d.Leaf.ClosingFace = geom.Through(0, 0, 1000, 4, 1990, 9)
	d.Leaf.ClosingBevel = 2 * geom.Degree
	d.Frame.HingeJamb = geom.Through(0, 0, 1000, -1, 2000, 2)
	d.Frame.LatchJamb = geom.Through(0, 800, 600, 799, 1400, 797, 2000, 799)
	d.Frame.Head = geom.Through(0, 2000, 400, 1997, 800, 1993)
	d.Frame.HingeFront = geom.Through(0, 0, 2000, 3)
	d.Frame.LatchFront = geom.Through(0, 1, 1000, 0, 2000, -4)
	d.Frame.HeadFront = geom.Through(0, 3, 800, -4)
	d.Frame.PlantStops(43)
	d.Hinges = []door.Hinge{d.Hinges[0], d.Hinges[0], d.Hinges[1]}
	d.Hinges[1].JambHeight, d.Hinges[1].LeafHeight = 1000, 994
	d.Hinges[0].LeafGain, d.Hinges[2].JambGain, d.Hinges[2].Pin = 2.6, 2.4, 6
	d.Floor = door.Floor{
		Radii:   []float64{0, 300, 600, 850},
		Angles:  []geom.Angle{0, 30 * geom.Degree, 60 * geom.Degree, 90 * geom.Degree},
		Heights: [][]float64{{0, 0, -1, -2}, {0, 1, 2, 2}, {0, 1, 3, 5}, {0, 2, 4, 7}},
	}
	return d
}

func BenchmarkEvaluate(b *testing.B) {
	for _, c := range []struct {
		name string
		door door.Door
	}{{"plain", plain()}, {"old", old()}} {
		b.Run(c.name, func(b *testing.B) {
			var f fit.Fit
			b.ReportAllocs()
			for b.Loop() {
				fit.Evaluate(&f, &c.door)
			}
		})
	}
}
