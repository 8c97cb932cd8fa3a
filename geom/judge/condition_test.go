package judge_test

import (
	"fmt"
	"math"
	"testing"

	"leafwright/geom"
	"leafwright/geom/caseone"
	"leafwright/geom/door"
	"leafwright/geom/judge"
)

// makers build a door whose quantity has the value, all else true.
var makers = map[judge.Quantity]func(float64) door.Door{
	judge.Twist: func(k float64) door.Door {
		d := caseone.Door() // read 20 mm in from the edges, so a little more wind gives k there
		d.Leaf.ClosingFace = geom.Through(0, 0, 1990, k*(792*1990)/((792-40)*(1990-40)))
		return d
	},
	judge.BowLength: func(k float64) door.Door {
		d := caseone.Door() // chord 20 mm in: the middle of an even bow stands 975/995 of it out
		face := geom.Through(0, 0, 995, k*995/975, 1990, 0)
		d.Leaf.HangingFace, d.Leaf.ClosingFace = face, face
		return d
	},
	judge.Squareness: func(k float64) door.Door {
		d := caseone.Door()
		d.Leaf.Top = geom.Through(0, 1990, 792, 1990+k*792/500)
		return d
	},
	judge.Diagonals: func(k float64) door.Door {
		// Sheared by s, the diagonals differ by √((W+s)²+H²) − √((W−s)²+H²): solved for s.
		d := caseone.Door()
		w, h := 792.0, 1990.0
		s := k * math.Sqrt(w*w+h*h) / (2 * w)
		for range 20 {
			got := math.Sqrt((w+s)*(w+s)+h*h) - math.Sqrt((w-s)*(w-s)+h*h)
			s += (k - got) * math.Sqrt(w*w+h*h) / (2 * w)
		}
		d.Leaf.Hanging = geom.Through(0, 0, h, s)
		d.Leaf.Closing = geom.Through(0, w, h, w+s)
		return d
	},
	judge.FramePlumb: func(k float64) door.Door {
		d := caseone.Door()
		d.Frame.LatchJamb = geom.Through(0, 800, 2000, 800+2*k)
		return d
	},
	judge.FrameLean: func(k float64) door.Door {
		d := caseone.Door()
		d.Frame.HingeFront = geom.Through(0, 0, 2000, -k)
		return d
	},
	judge.HeadLevel: func(k float64) door.Door {
		d := caseone.Door()
		d.Frame.Head = geom.Through(0, 2000, 800, 2000-0.8*k)
		return d
	},
}

func TestClassesGradeBothSidesOfEachLimit(t *testing.T) {
	for _, class := range judge.Classes {
		build := makers[class.Quantity]
		if build == nil {
			t.Fatalf("no door is built for %q", class.Quantity)
		}
		for _, c := range []struct {
			side  string
			value float64
			keeps bool
		}{
			{"just within", class.Limit - 0.001, true},
			{"just outside", class.Limit + 0.001, false},
		} {
			t.Run(fmt.Sprintf("%s %s %s %s", class.Standard, class.Name, class.Quantity, c.side), func(t *testing.T) {
				d := build(c.value)
				for _, got := range judge.Conditions(&d) {
					if got.Quantity != class.Quantity {
						continue
					}
					if math.Abs(got.Value-c.value) > 1e-6 {
						t.Fatalf("measured %v, built %v", got.Value, c.value)
					}
					for _, g := range got.Grades {
						if g.Class == class && g.Keeps != c.keeps {
							t.Fatalf("keeps = %v, want %v", g.Keeps, c.keeps)
						}
					}
				}
			})
		}
	}
}

// A parallelogram 762 × 1981 sheared 2 mm at the top has diagonals that differ by
// 1.4360420467 mm: plane geometry, worked by hand.
func TestDiagonalsOfAShearedLeaf(t *testing.T) {
	d := caseone.Door()
	d.Leaf = door.Rectangle(762, 1981, 40)
	d.Leaf.Hanging, d.Leaf.Closing = geom.Through(0, 0, 1981, 2), geom.Through(0, 762, 1981, 764)
	for _, c := range judge.Conditions(&d) {
		if c.Quantity == judge.Diagonals && math.Abs(c.Value-1.4360420467) > 1e-9 {
			t.Errorf("diagonals differ by %.10f", c.Value)
		}
	}
}

// BS 5277 / BS 4787 take twist as the fourth corner's offset from the plane of the
// other three: a leaf out of plumb as a whole, or tilted, has none.
func TestATiltedFlatLeafHasNoTwist(t *testing.T) {
	d := caseone.Door()
	d.Leaf.HangingFace = geom.Through(0, 3, 1990, 9)
	d.Leaf.ClosingFace = geom.Through(0, 8, 1990, 14)
	if k := judge.LeafTwist(&d.Leaf); math.Abs(k) > 1e-9 {
		t.Errorf("twist %v, want 0", k)
	}
}
