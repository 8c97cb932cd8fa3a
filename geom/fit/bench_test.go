package fit_test

import (
	"testing"

	"leafwright/geom"
	"leafwright/geom/caseone"
	"leafwright/geom/door"
	"leafwright/geom/fit"
)

// old is a door with every departure there is, as an old house may have it.
func old() door.Door {
	d := caseone.Door()
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
	}{{"plain", caseone.Door()}, {"old", old()}} {
		b.Run(c.name, func(b *testing.B) {
			var f fit.Fit
			b.ReportAllocs()
			for b.Loop() {
				fit.Evaluate(&f, &c.door)
			}
		})
	}
}
