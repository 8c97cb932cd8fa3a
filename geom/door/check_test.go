package door

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"leafwright/geom"
)

func sound() Door {
	d := Door{
		Leaf:  Rectangle(762, 1981, 40),
		Frame: Square(768, 1990, 42, 12),
		Hinges: []Hinge{
			{JambHeight: 1800, LeafHeight: 1794, LeafGain: 1.5, JambGain: 1.5, Closed: 6, Pin: 5, Height: 75},
			{JambHeight: 230, LeafHeight: 224, LeafGain: 1.5, JambGain: 1.5, Closed: 6, Pin: 5, Height: 75},
		},
		Latch: Latch{Height: 1000},
		Floor: FlatFloor(0),
		Opens: 90 * geom.Degree,
	}
	d.Leaf.ClosingBevel = 3 * geom.Degree
	return d
}

func TestCheck(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, row := range []struct {
		situation string
		spoil     func(*Door)
		want      []string // whole faults, in order
	}{
		{"a square door", func(d *Door) {}, nil},
		{"no floor given", func(d *Door) { d.Floor = Floor{} }, nil},
		{"widest bevel", func(d *Door) { d.Leaf.ClosingBevel = 15 * geom.Degree }, nil},
		{"just past the widest bevel", func(d *Door) { d.Leaf.ClosingBevel = 15.1 * geom.Degree },
			[]string{"leaf.bevel.closing: 15.1 is not between -10 and 15"}},
		{"thickness at the least", func(d *Door) { d.Leaf.Thickness = 10 }, nil},
		{"thickness in centimetres", func(d *Door) { d.Leaf.Thickness = 4 },
			[]string{"leaf.thickness: 4 is not between 10 and 100; is it 40?"}},
		{"thickness in inches", func(d *Door) { d.Leaf.Thickness = 1.75 },
			[]string{"leaf.thickness: 1.75 is not between 10 and 100; is it 17.5, or 1.75 inches, 44.45?"}},
		{"thickness with a lost point", func(d *Door) { d.Leaf.Thickness = 400 },
			[]string{"leaf.thickness: 400 is not between 10 and 100; is it 40?"}},
		{"no number", func(d *Door) { d.Leaf.Width = nan },
			[]string{"leaf.width: NaN is not a number between 200 and 1500"}},
		{"endless", func(d *Door) { d.Hinges[1].Pin = inf },
			[]string{"hinges[1].pin: +Inf is not a number between -5 and 60"}},
		{"no number in a station", func(d *Door) { d.Frame.Head[1].Value = nan },
			[]string{"opening.head[1]: NaN is not a number between -100 and 4100"}},
		{"head written ten times too high", func(d *Door) { d.Frame.Head[1].Value = 19810 },
			[]string{"opening.head[1]: 19810 is not between -100 and 4100; is it 1981?"}},
		{"stations in reversed order", func(d *Door) { d.Leaf.Closing = geom.Through(1981, 762, 0, 762) },
			[]string{"leaf.closing[1]: place 0 is not beyond the one before, 1981, by 1 at least"}},
		{"two values at one station", func(d *Door) { d.Leaf.Top = geom.Profile{{At: 0, Value: 1981}, {At: 0, Value: 1981}} },
			[]string{"leaf.top[1]: place 0 is not beyond the one before, 0, by 1 at least"}},
		{"steepest slope", func(d *Door) { d.Leaf.Top = geom.Through(0, 1981, 100, 1931) }, nil},
		{"just past the steepest slope", func(d *Door) { d.Leaf.Top = geom.Through(0, 1981, 100, 1930.9) },
			[]string{"leaf.top[1]: a slope of 0.501 from the station before is not at most 0.5"}},
		{"too many stations", func(d *Door) {
			d.Leaf.ClosingFace = nil
			for i := range 65 {
				d.Leaf.ClosingFace = append(d.Leaf.ClosingFace, geom.Station{At: float64(i * 20)})
			}
		}, []string{"leaf.face.closing: 65 stations is not at most 64"}},
		{"closing edge far from the width", func(d *Door) { d.Leaf.Closing = geom.Level(600) },
			[]string{"leaf.closing[0]: 600 is not between 612 and 912, near the 762 it is called"}},
		{"closing edge right of the hanging edge at the foot only", func(d *Door) {
			d.Leaf.Width = 240
			d.Leaf.Closing = geom.Profile{{At: 0, Value: 90}, {At: 300, Value: 240}}
			d.Frame.LatchJamb = geom.Level(246)
		}, []string{"leaf.closing: a width of 90 at height 0 is not at least 100"}},
		{"bevels that leave no stop face", func(d *Door) {
			d.Leaf = Rectangle(200, 1981, 100)
			d.Leaf.Closing = geom.Level(120)
			d.Leaf.HangingBevel, d.Leaf.ClosingBevel = 15*geom.Degree, 15*geom.Degree
			d.Frame.LatchJamb = geom.Level(206)
			d.Frame.PlantStops(102)
		}, []string{"leaf.closing: a width of 66.41 at height 0 on the stop face is not at least 100"}},
		{"top below the bottom", func(d *Door) { d.Leaf.Top, d.Leaf.Bottom = geom.Level(300), geom.Level(310) },
			[]string{"leaf.top: a height of -10 at 0 across is not at least 200"}},
		{"jambs that cross", func(d *Door) {
			d.Frame.HingeJamb = geom.Profile{{At: 0, Value: 0}, {At: 1400, Value: 0}, {At: 1700, Value: 150}}
			d.Frame.LatchJamb = geom.Profile{{At: 0, Value: 750}, {At: 1000, Value: 750}, {At: 2000, Value: 300}}
		}, []string{"opening.latch_jamb: a width of 9.5 at height 1990 is not at least 200"}},
		{"stop before the front edge", func(d *Door) {
			d.Frame.LatchStop = geom.Level(-60)
			d.Frame.LatchFront = geom.Through(0, 0, 1990, -58)
		}, []string{"opening.stops.latch: a rebate of 2 at 1990 is not at least 5"}},
		{"leaf of another door", func(d *Door) {
			d.Leaf = Rectangle(500, 1400, 40)
			d.Hinges[0].LeafHeight = 1300
			d.Hinges[0].JambHeight = 1306
		},
			[]string{"leaf.width: 500 is not between 518 and 1018, near the opening's 768", "leaf.height: 1400 is not between 1490 and 2490, near the opening's 1990"}},
		{"one hinge", func(d *Door) { d.Hinges = d.Hinges[:1] }, []string{"hinges: 1 hinge is not between 2 and 6"}},
		{"hinges from the bottom up", func(d *Door) { d.Hinges[0], d.Hinges[1] = d.Hinges[1], d.Hinges[0] },
			[]string{"hinges[1].jamb: 1800 is not below the hinge before, 230: hinges stand from the top one down", "hinges[1].leaf: 1794 is not below the hinge before, 224: hinges stand from the top one down"}},
		{"hinges too near", func(d *Door) {
			d.Hinges[0].JambHeight, d.Hinges[0].LeafHeight = d.Hinges[1].JambHeight+99.9, d.Hinges[1].LeafHeight+100
		}, []string{"hinges[1].jamb: 99.9 below the top hinge is not at least 100"}},
		{"hinge plates that overlap", func(d *Door) {
			d.Hinges = append(d.Hinges, d.Hinges[1])
			d.Hinges[1].JambHeight, d.Hinges[1].LeafHeight = 1730, 1724
		}, []string{"hinges[1].jamb: 70 below the hinge before is not at least 75: the plates would overlap", "hinges[1].leaf: 70 below the hinge before is not at least 75: the plates would overlap"}},
		{"hinge off the top of the leaf", func(d *Door) { d.Hinges[0].LeafHeight, d.Hinges[0].JambHeight = 1960, 1966 },
			[]string{"hinges[0].leaf: 1960 is not between 37.5 and 1943.5, where the hinge's plate is on the leaf"}},
		{"leaf hung through the floor", func(d *Door) { d.Hinges[0].JambHeight, d.Hinges[1].JambHeight = 1600, 30 },
			[]string{"hinges[0]: a leaf hung -194 above the floor is not between -100 and 400", "hinges[1]: a leaf hung -194 above the floor is not between -100 and 400"}},
		{"gain deeper than the range", func(d *Door) { d.Hinges[0].LeafGain = 35 }, []string{"hinges[0].leaf_gain: 35 is not between 0 and 30"}},
		{"latch above the leaf", func(d *Door) { d.Latch.Height = 10000 },
			[]string{"latch.height: 10000 is not between 0 and 1981, where the closing edge is; is it 1000?"}},
		{"floor with a short row", func(d *Door) {
			d.Floor = Floor{Radii: []float64{0, 800}, Angles: []geom.Angle{0}, Heights: [][]float64{{0}}}
		}, []string{"floor.heights[0]: 1 height is not one height for each of the 2 radii"}},
		{"floor with a row missing", func(d *Door) {
			d.Floor = Floor{Radii: []float64{0}, Angles: []geom.Angle{0, 1}, Heights: [][]float64{{0}}}
		}, []string{"floor.heights: 1 row is not one row for each of 2 angles"}},
		{"floor angles not rising", func(d *Door) {
			d.Floor = Floor{Radii: []float64{0}, Angles: []geom.Angle{1, 1}, Heights: [][]float64{{0}, {0}}}
		}, []string{"floor.angles[1]: 57.296 is not above the one before, 57.296, by 0.1 at least"}},
		{"hardly opens", func(d *Door) { d.Opens = 19 * geom.Degree }, []string{"opens: 19 is not between 20 and 180"}},
		{"many at once, in the order of the parts", func(d *Door) {
			d.Leaf.Width, d.Frame.StopWidth, d.Hinges[0].Pin, d.Latch.Proud, d.Opens = 80, 0, 99, 50, 0
		}, []string{
			"leaf.width: 80 is not between 200 and 1500; is it 800?",
			"opening.stop_width: 0 is not between 5 and 60",
			"hinges[0].pin: 99 is not between -5 and 60",
			"latch.proud: 50 is not between -20 and 20; is it 5?",
			"opens: 0 is not between 20 and 180",
		}},
	} {
		t.Run(row.situation, func(t *testing.T) {
			d := sound()
			row.spoil(&d)
			var got []string
			for _, f := range d.Check() {
				got = append(got, f.Error())
			}
			if a, b := strings.Join(got, "\n"), strings.Join(row.want, "\n"); a != b {
				t.Errorf("got:\n%s\nwant:\n%s", a, b)
			}
		})
	}
}

func TestCheckAnatomy(t *testing.T) {
	leaf := Rectangle(762, 1981, 40)
	for _, row := range []struct {
		situation string
		spoil     func(*Anatomy)
		want      string
	}{
		{"ordinary four-panel leaf", func(a *Anatomy) {}, ""},
		{"flush leaf with nothing said", func(a *Anatomy) { *a = Anatomy{Make: Flush, Panels: Flat} }, ""},
		{"unknown make", func(a *Anatomy) { a.Make = "cast" }, `leaf.make: "cast" is not one of framed, boarded, flush`},
		{"framed with one rail", func(a *Anatomy) { a.Rails = a.Rails[:1]; a.Muntins = nil }, "leaf.rails: 1 rail is not between 2 and 12 in a framed leaf"},
		{"framed without a stile", func(a *Anatomy) { a.HangingStile = 0 }, "leaf.stiles.hanging: 0 is not between 20 and 400"},
		{"stiles wider than the leaf", func(a *Anatomy) { a.HangingStile, a.ClosingStile, a.Muntins = 390, 390, nil }, "leaf.stiles: 780 together is not less than the leaf's width, 762"},
		{"rails that overlap", func(a *Anatomy) { a.Rails[1].From = 150 }, "leaf.rails[1].from: 150 is not at or above the end of the rail below, 200"},
		{"rail upside down", func(a *Anatomy) { a.Rails[2].To = 1800 }, "leaf.rails[2].to: 1800 is not above its from, 1871"},
		{"rail beyond the top", func(a *Anatomy) { a.Rails[2].To = 2000 }, "leaf.rails[2].to: 2000 is not between 0 and 1981"},
		{"muntin in a stile", func(a *Anatomy) { a.Muntins[0].At = 120 }, "leaf.muntins[0].at: 120 is not between 158.5 and 603.5"},
		{"lock below the foot", func(a *Anatomy) { a.Lock = Lock{Mortice, 50, 57, 150, 76} }, "leaf.lock.height: 50 is not between 75 and 1906"},
	} {
		t.Run(row.situation, func(t *testing.T) {
			a := Ordinary(Framed, 762, 1981)
			row.spoil(&a)
			var got []string
			for _, f := range a.Check(&leaf) {
				got = append(got, f.Error())
			}
			if s := strings.Join(got, "\n"); s != row.want {
				t.Errorf("got:\n%s\nwant:\n%s", s, row.want)
			}
		})
	}
}

// Ordinary leaves of every allowed size must themselves be in order.
func TestOrdinaryIsSound(t *testing.T) {
	for width := LeafWidth.Lo; width <= LeafWidth.Hi; width += 13 {
		for height := LeafHeight.Lo; height <= LeafHeight.Hi; height += 50 {
			a, leaf := Ordinary(Framed, width, height), Rectangle(width, height, 40)
			if f := a.Check(&leaf); len(f) > 0 {
				t.Fatalf("%v x %v: %v", width, height, f)
			}
		}
	}
}

// A published check on Ordinary: stiles and top rail 4.6 in, bottom rail 8 in for
// a leaf 2 ft 8 in by 6 ft 8 in (derived from the Building Trades Pocketbook's
// fractions), to the nearest 5 mm.
func TestOrdinaryAgainstThePocketbook(t *testing.T) {
	a := Ordinary(Framed, 32*25.4, 80*25.4)
	for _, row := range []struct {
		what      string
		got, want float64
	}{
		{"stile", a.HangingStile, 4.6 * 25.4},
		{"bottom rail", a.Rails[0].To - a.Rails[0].From, 8 * 25.4},
		{"lock rail's top", a.Rails[1].To, 38 * 25.4},
	} {
		if math.Abs(row.got-row.want) > 3 {
			t.Errorf("%s: %v mm, want %v", row.what, row.got, row.want)
		}
	}
}

// Whatever is done to a door's numbers, Check answers and does not panic, and
// what it lets pass has corners in order.
func TestCheckOfAnyNumbers(t *testing.T) {
	const seed = 20
	rnd := rand.New(rand.NewPCG(seed, 1))
	odd := []float64{0, -1, 1, 1e-300, 1e300, math.NaN(), math.Inf(1), math.Inf(-1), 100, 1981}
	sizes := func(d *Door) (all []*float64) {
		for _, p := range []geom.Profile{d.Leaf.Hanging, d.Leaf.Closing, d.Leaf.Top, d.Leaf.Bottom, d.Leaf.ClosingFace, d.Frame.HingeJamb, d.Frame.LatchJamb, d.Frame.Head, d.Frame.LatchStop, d.Frame.HeadFront} {
			for i := range p {
				all = append(all, &p[i].At, &p[i].Value)
			}
		}
		for i := range d.Hinges {
			h := &d.Hinges[i]
			all = append(all, &h.JambHeight, &h.LeafHeight, &h.LeafGain, &h.Closed, &h.Height)
		}
		return append(all, &d.Leaf.Width, &d.Leaf.Thickness, &d.Latch.Height, &d.Floor.Radii[0], &d.Floor.Heights[0][0])
	}
	passed := 0
	for n := range 4000 {
		d := sound()
		all := sizes(&d)
		for range 1 + rnd.IntN(3) {
			x := all[rnd.IntN(len(all))]
			if rnd.IntN(4) == 0 {
				*x = odd[rnd.IntN(len(odd))]
			} else {
				*x += 40 * rnd.NormFloat64()
			}
		}
		if len(d.Check()) > 0 {
			continue
		}
		passed++
		c := d.Leaf.Corners(0)
		if !(c.HangingFoot.X < c.ClosingFoot.X && c.HangingHead.X < c.ClosingHead.X && c.HangingFoot.Y < c.HangingHead.Y && c.ClosingFoot.Y < c.ClosingHead.Y) {
			t.Fatalf("seed %d, door %d passed with corners %+v", seed, n, c)
		}
	}
	if passed < 400 {
		t.Errorf("only %d of 4000 passed: the test hardly looks", passed)
	}
}
