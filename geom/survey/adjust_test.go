package survey

import (
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/survey/lsq"
)

// exact reads the templates on the door without error.
func exact(d *door.Door, card []Reading) []Reading {
	out := slices.Clone(card)
	for i := range out {
		out[i].Value = Expect(d, out[i])
	}
	return out
}

// Of a departure that readings know λ times as well, in variance, as what is
// ordinary, the wishes keep (1 + λ)^−3 of what is read: next to nothing.
func TestWishesMoveNoReading(t *testing.T) {
	base := Adjust(plainLeast())
	for _, r := range []Reading{
		{Kind: JambPlumb, Side: Latch, From: 50, To: 1900},
		{Kind: JambPlumbAcross, Side: Hinge, From: 50, To: 1900},
		{Kind: HeadSlope, From: 50, To: 700},
		{Kind: FloorSlope, From: 50, To: 700},
		{Kind: LeafWind, From: 50, To: 1900},
		{Kind: LeafSquare, Side: LatchHead},
		{Kind: FrameBow, Side: Hinge, From: 0, To: 1990, At: 995},
		{Kind: LeafBow, Side: Latch, From: 0, To: 1981, At: 990},
		{Kind: StileBow, Side: Hinge, From: 0, To: 1981, At: 990},
	} {
		t.Run(string(r.Kind), func(t *testing.T) {
			a := base.adj
			var rows lsq.Rows
			o := observer{d: &a.net.d, net: a.net, rows: &rows}
			specs[r.Kind].observe(&o, &r)
			rows.End(0, 1)
			g := make([]float64, len(a.x))
			rows.Scatter(g, 0, 1)
			a.pull(a.spare, g)
			ordinary := a.variance(a.spare)
			r.Value = 2 * math.Sqrt(ordinary)
			lambda := ordinary / (SigmaOf(r) * SigmaOf(r))
			want := r.Value * math.Pow(1+lambda, -times)
			got := Adjust(append(plainLeast(), r)).Readings[7].Residual
			if math.Abs(got-want) > 0.4*want+1e-4 { // the stations, and so the wishes, are not quite the same
				t.Errorf("λ %.1f: of %.3f read %.5f is lost, want %.5f", lambda, r.Value, got, want)
			}
			if got > r.Value/100 {
				t.Errorf("of %.3f read %.3f is lost", r.Value, got)
			}
		})
	}
}

// Of doors read without error no reading is moved by as much as its own error, and
// most by far less.
func TestReadingsAreMet(t *testing.T) {
	var sum, count float64
	for n := range 50 {
		s := simulate(uint64(n))
		d := s.door()
		rs := whole(&d)
		for i := range rs {
			rs[i].Value = Expect(&d, rs[i])
		}
		for _, j := range Adjust(rs).Readings {
			if j.State != Used || math.Abs(j.Residual) > j.Sigma {
				t.Errorf("door %d: %s %s: %.3f read, %.3f fitted, state %d", n, j.Kind, j.Side, j.Value, j.Fitted, j.State)
			}
			sum += j.Residual * j.Residual / (j.Sigma * j.Sigma)
			count++
		}
	}
	if rms := math.Sqrt(sum / count); rms > 0.1 {
		t.Errorf("readings are moved by %.3f of their standard deviations", rms)
	}
}

// The least set gives a square, plumb, straight door, and says what was not read.
func TestLeastSet(t *testing.T) {
	res := Adjust(plainLeast())
	if !res.Hangs || len(res.Faults) > 0 || len(res.Missing) > 0 {
		t.Fatalf("hangs %v, %v", res.Hangs, res.Faults)
	}
	d := &res.Door
	for _, p := range []geom.Profile{d.Frame.HingeJamb, d.Frame.HingeFront, d.Frame.LatchFront, d.Leaf.Hanging, d.Leaf.HangingFace, d.Leaf.ClosingFace, d.Leaf.Bottom} {
		for _, s := range p {
			if math.Abs(s.Value) > 1e-9 {
				t.Errorf("not straight and true: %v", p)
			}
		}
	}
	for _, c := range []struct {
		p    geom.Profile
		want float64
	}{{d.Frame.LatchJamb, 768}, {d.Frame.Head, 1990}, {d.Leaf.Closing, 762}, {d.Leaf.Top, 1981}} {
		for _, s := range c.p {
			if math.Abs(s.Value-c.want) > 1e-6 {
				t.Errorf("%v, want %v", c.p, c.want)
			}
		}
	}
	var words []string
	for _, a := range res.Assumptions() {
		words = append(words, a.String())
	}
	for _, want := range []string{
		"the bow of the hinge jamb was not measured: taken straight",
		"the latch jamb being plumb in the wall's plane was not measured: taken plumb",
		"the wind of the closing stile's face was not measured: taken out of wind",
		"the floor in the opening was not measured: taken level",
		"the closed thickness of the top hinge was not measured: taken as 6",
	} {
		if !slices.Contains(words, want) {
			t.Errorf("does not say %q", want)
		}
	}
	for _, w := range words {
		if strings.Contains(w, "width of the opening") || strings.Contains(w, "thickness of the leaf") {
			t.Errorf("was read, but says %q", w)
		}
	}
}

// Each missing part of the least set is told, with a template of the reading, and
// the rest is known as far as it goes.
func TestLackOfLeastSet(t *testing.T) {
	all := plainLeast()
	for i, r := range all {
		t.Run(string(r.Kind), func(t *testing.T) {
			res := Adjust(slices.Delete(slices.Clone(all), i, i+1))
			if res.Hangs || len(res.Faults) != 1 || res.Faults[0].Path != "readings" {
				t.Fatalf("hangs %v, %v", res.Hangs, res.Faults)
			}
			if len(res.Missing) != 1 || res.Missing[0].Kind != r.Kind || res.Missing[0].Hinge != r.Hinge {
				t.Errorf("asks for %v", res.Missing)
			}
			if res.Gaps() != nil {
				t.Error("states gaps of a door that cannot be hung")
			}
			if r.Kind != LeafHeight && math.Abs(res.Door.Leaf.Top[0].Value-1981) > 1e-6 {
				t.Errorf("leaf's height lost: %v", res.Door.Leaf.Top)
			}
			if r.Kind != OpeningWidth && math.Abs(res.Door.Frame.LatchJamb[0].Value-768) > 1e-6 {
				t.Errorf("opening's width lost: %v", res.Door.Frame.LatchJamb)
			}
		})
	}
	t.Run("nothing at all", func(t *testing.T) {
		res := Adjust(nil)
		if res.Hangs || len(res.Faults) != 7 || len(res.Missing) != 7 {
			t.Errorf("hangs %v, faults %v", res.Hangs, res.Faults)
		}
		if f := res.Door.Check(); len(f) > 0 {
			t.Errorf("nothing to draw: %v", f)
		}
	})
}

// A wrong reading gets a fault that names its field, all at once, and costs the
// others nothing.
func TestFaults(t *testing.T) {
	for _, row := range []struct {
		situation string
		reading   Reading
		want      string
	}{
		{"a lost point", Reading{Kind: OpeningWidth, At: 500, Value: 7680}, "readings[7].value: 7680 is not between 200 and 1700; is it 768?"},
		{"inches", Reading{Kind: LeafThickness, Value: 1.75}, "readings[7].value: 1.75 is not between 10 and 100; is it 17.5, or 1.75 inches, 44.45?"},
		{"no number", Reading{Kind: LeafWidth, At: 500, Value: math.NaN()}, "readings[7].value: NaN is not a number between 200 and 1500"},
		{"no such kind", Reading{Kind: "colour"}, `readings[7].kind: "colour" is not a kind of reading`},
		{"no such side", Reading{Kind: JambPlumb, Side: Floor, To: 1900}, `readings[7].side: "floor" is not one of hinge, latch`},
		{"no side", Reading{Kind: RebateDepth, At: 900, Value: 42}, `readings[7].side: "" is not one of hinge, latch, head`},
		{"hinge out of count", Reading{Kind: LeafGain, Hinge: 6, Value: 2}, "readings[7].hinge: 6 is not between 0, the top one, and 5"},
		{"level of no length", Reading{Kind: HeadSlope, From: 300, To: 350}, "readings[7].to: 350 is not beyond from, 300, by 100 at least"},
		{"bow read beside the straightedge", Reading{Kind: FrameBow, Side: Hinge, From: 100, To: 1800, At: 1900}, "readings[7].at: 1900 is not between from, 100, and to, 1800"},
		{"width read above the opening", Reading{Kind: OpeningWidth, At: 2500, Value: 768}, "readings[7].at: 2500 is not between -100 and 2090"},
		{"level laid past the head", Reading{Kind: JambPlumb, Side: Hinge, From: 200, To: 2300}, "readings[7].to: 2300 is not between -100 and 2090"},
		{"angle behind the wall", Reading{Kind: FloorHeight, At: 500, Angle: -1}, "readings[7].angle: -57.296 is not between 0 and 180"},
		{"no such instrument", Reading{Kind: LeafWidth, At: 500, Value: 762, Instrument: "thumb"}, `readings[7].instrument: "thumb" is not an instrument known here`},
		{"sure to a hair", Reading{Kind: LeafWidth, At: 500, Value: 762, Sigma: 0.001}, "readings[7].sigma: 0.001 is not between 0.01 and 50; is it 0.01, or 0.001 inches, 0.025?"},
		{"a rub with a size", Reading{Kind: Rub, Side: Latch, At: 500, Value: 3}, "readings[7].value: 3 is not between 0 and 0"},
	} {
		t.Run(row.situation, func(t *testing.T) {
			res := Adjust(append(plainLeast(), row.reading, Reading{Kind: LeafThickness, Value: -1}))
			var said []string
			for _, f := range res.Faults {
				said = append(said, f.Error())
			}
			if len(said) != 2 || said[0] != row.want && said[1] != row.want {
				t.Errorf("says %q, want %q and that of the thickness", said, row.want)
			}
			if res.Readings[7].State != Faulty || res.Readings[8].State != Faulty {
				t.Errorf("states %v %v", res.Readings[7].State, res.Readings[8].State)
			}
			if !res.Hangs {
				t.Error("the sound readings no longer hang")
			}
		})
	}
	t.Run("more readings than anybody takes", func(t *testing.T) {
		many := plainLeast()
		for len(many) <= ReadingsMost {
			many = append(many, Reading{Kind: LeafThickness, Value: 40})
		}
		res := Adjust(many)
		if len(res.Faults) != 1 || res.Faults[0].Path != "readings" {
			t.Error(res.Faults)
		}
	})
}

// The hung leaf's readings need a door that can be hung.
func TestFeelerWithoutADoor(t *testing.T) {
	res := Adjust([]Reading{{Kind: OpeningWidth, At: 1000, Value: 768}, {Kind: GapRead, Side: Latch, At: 1000, Value: 3}})
	if s := res.Readings[1].State; s != Unused {
		t.Errorf("state %d", s)
	}
}

// The same readings give the same bits.
func TestAdjustIsAFunction(t *testing.T) {
	s := simulate(3)
	d := s.door()
	rs := s.read(&d, whole(&d))
	was := slices.Clone(rs)
	a, b := Adjust(rs), Adjust(rs)
	if !reflect.DeepEqual(a.Door, b.Door) || !reflect.DeepEqual(a.Readings, b.Readings) {
		t.Error("two fits of one set of readings differ")
	}
	if !reflect.DeepEqual(rs, was) {
		t.Error("the readings were changed")
	}
	if !reflect.DeepEqual(a.Gaps().off, b.Gaps().off) {
		t.Error("two propagations of one fit differ")
	}
}

// errors sets u to the part of every row's error in g·x, g pulled to p: each by its
// own, where [adjustment.variance] sums them in closed form.
func (a *adjustment) errors(u []float64, p pulled) {
	rows, f := &a.sol.Rows, &a.sol.Factor
	all, last := make([]float64, len(a.x)), make([]float64, len(a.x))
	for k := range p {
		for i, v := range p[k] {
			all[i] += v
		}
	}
	f.Back(all, all)
	f.Back(last, p[times-1])
	for row := range u {
		z := all
		if row >= len(a.rowOf) {
			z = last
		}
		u[row] = math.Sqrt(rows.Weight(row)) * rows.Dot(row, z)
	}
}

// Errors of the draws are those of the rows: of every unknown, and so of all that
// follows them straight, the variance over the draws is that of the closed form.
func TestDrawsHaveTheVariance(t *testing.T) {
	s := simulate(5)
	d := s.door()
	for _, card := range [][]Reading{whole(&d), least(whole(&d))} {
		res := Adjust(s.read(&d, card))
		a := res.adj
		moves := a.draw().moves
		g := make([]float64, len(a.x))
		u := make([]float64, a.sol.Rows.Len())
		for k := range a.x {
			clear(g)
			g[k] = 1
			a.pull(a.spare, g)
			want := a.variance(a.spare)
			var drawn float64
			for _, m := range moves {
				drawn += m[k] * m[k] / float64(len(moves))
			}
			if math.Abs(drawn-want) > slight*slight+1e-9*want {
				t.Errorf("unknown %d: variance %.9f drawn, %.9f in closed form", k, drawn, want)
			}
			a.errors(u, a.spare)
			if by := length(u) * length(u); math.Abs(by-want) > 1e-9*want {
				t.Errorf("unknown %d: variance %.12f by the rows' errors, %.12f in closed form", k, by, want)
			}
		}
	}
}

// A hinge far thicker than the other is no slip anything contradicts, but is said
// to be unusual.
func TestUnusual(t *testing.T) {
	rs := append(plainLeast(), Reading{Kind: HingeClosed, Value: 6}, Reading{Kind: HingeClosed, Hinge: 1, Value: 16})
	res := Adjust(rs)
	u := res.Unusual()
	if len(u) == 0 || u[0].What != "closed thickness of the bottom hinge" || math.Abs(u[0].Off-10) > 0.1 {
		t.Errorf("%+v", u)
	}
	if u := Adjust(plainLeast()).Unusual(); len(u) > 0 {
		t.Errorf("an ordinary door: %+v", u)
	}
}

// Hinges known already come back as they were.
func TestHingeReadings(t *testing.T) {
	d := square()
	d.Hinges[1].LeafPacker, d.Hinges[0].Proud = 1.5, 0.5
	rs := exact(&d, []Reading{{Kind: OpeningWidth, At: 1000}, {Kind: OpeningHeight, At: 400}, {Kind: LeafWidth, At: 1000}, {Kind: LeafHeight, At: 400}, {Kind: LeafThickness}})
	res := Adjust(append(rs, HingeReadings(d.Hinges)...))
	for i, h := range res.Door.Hinges {
		for f := range fields {
			if a, b := *fieldOf(&h, f), *fieldOf(&d.Hinges[i], f); math.Abs(a-b) > 1e-6 {
				t.Errorf("hinge %d: %+v, want %+v", i, h, d.Hinges[i])
				break
			}
		}
	}
}

// A jamb bowed far beyond the ordinary, about which all readings agree, is no slip
// of any; and between the places read it is known the less well for it.
func TestFarFromStraight(t *testing.T) {
	d := square()
	d.Frame.LatchJamb = nil
	for i := range 21 {
		y := 100 * float64(i)
		d.Frame.LatchJamb = append(d.Frame.LatchJamb, geom.Station{At: y, Value: 800 + 12*y*(2000-y)/1e6})
	}
	card := whole(&d)
	for i := range card {
		card[i].Value = Expect(&d, card[i])
	}
	res := Adjust(card)
	for _, j := range res.Readings {
		if j.State != Used {
			t.Errorf("%s %s: state %d, standardised %.1f", j.Kind, j.Side, j.State, j.Standardised)
		}
	}
	var truth fit.Fit
	fit.EvaluateClosed(&truth, &d)
	g := res.Gaps()
	for _, y := range []float64{100, 250, 500, 750, 1000, 1250, 1500, 1750, 1900} {
		if u, v := g.At(fit.LatchSide, y), truth.Gaps[fit.LatchSide].At(y); math.Abs(u.Value-v) > u.Margin() {
			t.Errorf("at %.0f: %.2f ± %.2f, truly %.2f", y, u.Value, u.Margin(), v)
		}
	}
	straight := square()
	for i := range card {
		card[i].Value = Expect(&straight, card[i])
	}
	if a, b := g.At(fit.LatchSide, 500).Sigma, Adjust(card).Gaps().At(fit.LatchSide, 500).Sigma; !(a > 1.02*b) {
		t.Errorf("± %.3f beside a bow, ± %.3f on a straight jamb", a, b)
	}
}
