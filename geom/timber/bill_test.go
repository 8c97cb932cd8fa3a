package timber_test

import (
	"math"
	"testing"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/timber"
	"leafwright/geom/trim"
)

// billOf does one move on the sound door and gives what it takes.
func billOf(t *testing.T, m trim.Move, means timber.Means) timber.Bill {
	t.Helper()
	p := piece()
	_, steps := trim.All(p, []trim.Move{m})
	if why := steps[0].Why; why != nil {
		t.Fatalf("%s: refused: %v %v", m.Kind, why.About, why.Faults)
	}
	return timber.BillOf(p, steps, means)
}

func only(t *testing.T, b timber.Bill, what timber.Thing) timber.Item {
	t.Helper()
	for _, i := range b.Items {
		if i.Thing == what {
			return i
		}
	}
	t.Fatalf("no %s in %+v", what, b.Items)
	return timber.Item{}
}

// What every kind of move takes, counted by hand: a leaf 762 × 1981 × 44 on two hinges.
func TestBillByKind(t *testing.T) {
	type size = [3]float64
	const inch = 25.4
	for _, c := range []struct {
		move trim.Move
		item timber.Item
	}{
		{trim.Move{Kind: trim.Shift, Hinge: 1, On: trim.OnBoth, First: 20}, timber.Item{Thing: timber.PlugStock, N: 8, Size: size{10, 1.25 * inch}}},
		{trim.Move{Kind: trim.Raise, On: trim.OnJamb, First: 5}, timber.Item{Thing: timber.PlugStock, N: 8, Size: size{10, 1.25 * inch}}},
		{trim.Move{Kind: trim.Raise, On: trim.OnLeaf, First: 5}, timber.Item{Thing: timber.PlugStock, N: 8, Size: size{10, 1.25 * inch}}},
		{trim.Move{Kind: trim.Pack, On: trim.OnLeaf, First: 1}, timber.Item{Thing: timber.PackerCard, N: 2, Size: size{100, 1}}},
		{trim.Move{Kind: trim.Pack, Hinge: 2, On: trim.OnJamb, First: 0.5}, timber.Item{Thing: timber.PackerCard, N: 1, Size: size{100, 0.5}}},
		{trim.Move{Kind: trim.Rehinge, Hinge: 1, Closed: 7, Plates: 75, Pin: 5, LeafGain: 2, JambGain: 2}, timber.Item{Thing: timber.HingeStock, N: 1, Size: size{75, 7}}},
		{trim.Move{Kind: trim.Rehinge, Hinge: 1, Closed: 7, Plates: 75, Pin: 5, LeafGain: 2, JambGain: 2}, timber.Item{Thing: timber.ScrewStock, N: 8, Size: size{timber.Shank(8), 1.25 * inch}}},
		{trim.Move{Kind: trim.PackJamb, Edge: door.LatchSide, First: 1, Last: 2}, timber.Item{Thing: timber.LiningWood, N: 1, Size: size{1981, 44, 2}}},
		{trim.Move{Kind: trim.PackJamb, Edge: door.HeadSide, First: 1, Last: 1}, timber.Item{Thing: timber.LiningWood, N: 1, Size: size{762, 44, 1}}},
		{trim.Move{Kind: trim.Follow, Edge: door.LatchSide, First: 1}, timber.Item{Thing: timber.LiningWood, N: 1, Size: size{1981, 44, 12}}},
		{trim.Move{Kind: trim.Threshold, Cover: 5, Wide: 90}, timber.Item{Thing: timber.SillStock, N: 1, Size: size{768, 90, 5}}},
		{splice(door.LatchSide, 20, 50, trim.Middle), timber.Item{Thing: timber.StripStock, N: 1, Size: size{1981 + 20, 20 + 3, 50}}},
	} {
		got := only(t, billOf(t, c.move, timber.Means{}), c.item.Thing)
		if got.N != c.item.N || got.Paint != c.item.Paint || got.Amount != c.item.Amount {
			t.Errorf("%s: %+v, want %+v", c.move.Kind, got, c.item)
		}
		for k := range got.Size {
			near(t, string(c.move.Kind)+" size", got.Size[k], c.item.Size[k], 1e-9)
		}
	}
	// plugs are glued: eight of 10 mm, 1¼ in long
	shift := billOf(t, trim.Move{Kind: trim.Shift, Hinge: 1, On: trim.OnBoth, First: 20}, timber.Means{})
	near(t, "plugs' glue", shift.Glued, 8*math.Pi*10*31.75e-6, 1e-12)
	if shift.Bared != 0 {
		t.Error("moving a hinge bares an edge")
	}
	// the stock's rounding is ripped off a strip flush with a face
	round := billOf(t, splice(door.LatchSide, 20, 50, trim.Knuckle), timber.Means{Round: 3})
	near(t, "with the rounding", only(t, round, timber.StripStock).Size[1], 26, 1e-9)
}

// Glue sets before the next step, and every coat dries.
func TestBillWaits(t *testing.T) {
	b := billOf(t, splice(door.LatchSide, 20, 44, trim.Knuckle), timber.Means{Coats: []timber.Layers{{Paint: timber.Primer, Coats: 1}, {Paint: "whitewash", Coats: 3}, {Paint: timber.Enamel, Coats: 0}}})
	glue, coats := 0.0, 0
	for _, task := range b.Tasks {
		switch task.Doing {
		case timber.SetGlue:
			glue += task.Wait
		case timber.Prime:
			coats++
		}
	}
	near(t, "the glue sets, minutes", glue, 60+12*60, 0) // common practice
	if coats != 1 {
		t.Errorf("%d coats", coats)
	}
	near(t, "waits", b.Waits, glue+16*60, 1e-9)
	// edge and faces of the strip
	near(t, "bared", b.Bared, 1.981*(0.044+2*0.020), 1e-6)
	// a measured film sets how far the paint goes: 42 % solids at 42 µm goes 10 m² a litre
	b = billOf(t, trim.Move{Kind: trim.Plane, Edge: door.LatchSide, First: 1, Last: 1}, timber.Means{Coats: []timber.Layers{{Paint: timber.Primer, Coats: 1, Film: 42}}})
	near(t, "ml", only(t, b, timber.PaintStock).Amount, 1.981*0.044/10*1000, 1e-6)
	// an unsound void is pieced, not filled
	void := timber.Void{Decay: timber.Rot, Across: geom.Interval{Lo: 300, Hi: 350}, Up: geom.Interval{Lo: 50, Hi: 90}, Depth: 20}
	b = billOf(t, trim.Move{Kind: trim.Plane, Edge: door.LatchSide, First: 1, Last: 1}, timber.Means{Voids: []timber.Void{void}})
	near(t, "glued", b.Glued, 50*40e-6, 1e-12)
	for _, i := range b.Items {
		if i.Thing == timber.FillerMix {
			t.Error("rot is filled")
		}
	}
}

func TestStripCares(t *testing.T) {
	has := func(d *timber.Dowels, c timber.StripCare) bool {
		for _, x := range d.Cares {
			if x == c {
				return true
			}
		}
		return false
	}
	dowels := func(p trim.Piece, m trim.Move) *timber.Dowels {
		d, why := timber.DowelsFor(p, m, 0)
		if why != nil || d == nil {
			t.Fatal(why)
		}
		return d
	}
	p := piece()
	strip := splice(door.LatchSide, 20, 44, trim.Knuckle)
	if d := dowels(p, strip); !has(d, timber.OverWedge) || has(d, timber.UnderLock) || has(d, timber.UnderHinge) || has(d, timber.OnEndGrain) {
		t.Errorf("closing edge: %v", d.Cares)
	}
	p.Anatomy.Lock = door.Lock{Kind: door.Rim, Height: 1000, Backset: 60, Case: 100, Depth: 90}
	if d := dowels(p, strip); !has(d, timber.UnderLock) {
		t.Errorf("with a lock: %v", d.Cares)
	}
	strip.Edge = door.HingeSide
	if d := dowels(p, strip); !has(d, timber.UnderHinge) {
		t.Errorf("hanging edge: %v", d.Cares)
	}
	p.Anatomy.Joints.Kind = door.Stub
	if d := dowels(p, strip); has(d, timber.OverWedge) {
		t.Errorf("stub tenons are not wedged: %v", d.Cares)
	}
	// a foot cut to where less than the wedge's seat is left: 38 of haunch, 10 of wedge
	strip.Edge = door.FloorSide
	for _, c := range []struct {
		cut   float64
		loose bool
	}{{0, false}, {26, false}, {30, true}} {
		p = piece()
		// the joints as an old cut has left them
		p.Anatomy.Joints.FootCut = c.cut
		if d := dowels(p, strip); has(d, timber.WedgeLoose) != c.loose || !has(d, timber.OnEndGrain) {
			t.Errorf("%v cut off the foot: %v", c.cut, d.Cares)
		}
	}
	flush := piece()
	flush.Anatomy = door.Ordinary(door.Flush, 762, 1981)
	if d := dowels(flush, strip); len(d.Cares) != 0 || d.Short != 0 || len(d.Places) < 3 {
		t.Errorf("a flush leaf: %+v", d)
	}
}

// Paint is tested where painted wood is worked, the leaf comes down where it or the hinge
// jamb's face is, and a plug's glue sets before a screw goes in (common practice).
func TestBillBeginsWithWhatIsNeeded(t *testing.T) {
	for _, c := range []struct {
		move         trim.Move
		paint, down  bool
		waitsForGlue bool
	}{
		{trim.Move{Kind: trim.Plane, Edge: door.LatchSide, First: 1, Last: 1}, true, true, false},
		{trim.Move{Kind: trim.Pack, On: trim.OnLeaf, First: 1}, false, true, false},
		{trim.Move{Kind: trim.Raise, On: trim.OnJamb, First: 5}, true, true, true},
		{trim.Move{Kind: trim.Restop, Edge: door.LatchSide, First: 1, Last: 1}, true, false, false},
		{trim.Move{Kind: trim.PackJamb, Edge: door.LatchSide, First: 1, Last: 1}, false, false, false},
		{trim.Move{Kind: trim.PackJamb, Edge: door.HingeSide, First: 1, Last: 1}, false, true, false},
		{trim.Move{Kind: trim.PlaneJamb, Edge: door.LatchSide, First: 1, Last: 1}, true, false, false},
		{trim.Move{Kind: trim.Threshold, Cover: 5, Wide: 90}, false, false, false},
	} {
		does := map[timber.Doing]bool{}
		for _, task := range billOf(t, c.move, timber.Means{}).Tasks {
			does[task.Doing] = true
		}
		if !does[timber.TryLeaf] {
			t.Errorf("%s of edge %d is not tried: %v", c.move.Kind, c.move.Edge, does)
		}
		if does[timber.TestPaint] != c.paint || does[timber.TakeDown] != c.down || does[timber.HangLeaf] != c.down || does[timber.SetGlue] != c.waitsForGlue {
			t.Errorf("%s of edge %d: %v", c.move.Kind, c.move.Edge, does)
		}
	}
}

// The leaf is hung dry and tried once all is cut and its glue hard, comes down to be painted,
// and is hung for good last: paint over an edge still to be eased is lost (common practice).
// Where no wood is bared nothing is painted, and it stays up.
func TestTriedDryBeforePaint(t *testing.T) {
	order := func(b timber.Bill) (all []timber.Doing, work float64) {
		for _, task := range b.Tasks {
			work += task.Minutes
			if n := len(all); n == 0 || all[n-1] != task.Doing {
				all = append(all, task.Doing)
			}
		}
		return all, work
	}
	same := func(a, b []timber.Doing) bool {
		if len(a) != len(b) {
			return false
		}
		for i := range a {
			if a[i] != b[i] {
				return false
			}
		}
		return true
	}
	for _, c := range []struct {
		move trim.Move
		want []timber.Doing
	}{
		{splice(door.LatchSide, 20, 44, trim.Knuckle), []timber.Doing{timber.TestPaint, timber.TakeDown, timber.DoStep, timber.SetGlue, timber.TryLeaf, timber.TakeDown, timber.Prime, timber.HangLeaf}},
		{trim.Move{Kind: trim.Plane, Edge: door.LatchSide, First: 1, Last: 1}, []timber.Doing{timber.TestPaint, timber.TakeDown, timber.DoStep, timber.TryLeaf, timber.TakeDown, timber.Prime, timber.HangLeaf}},
		{trim.Move{Kind: trim.Pack, On: trim.OnLeaf, First: 1}, []timber.Doing{timber.TakeDown, timber.DoStep, timber.TryLeaf, timber.HangLeaf}},
		{trim.Move{Kind: trim.Restop, Edge: door.LatchSide, First: 1, Last: 1}, []timber.Doing{timber.TestPaint, timber.DoStep, timber.TryLeaf}},
	} {
		b := billOf(t, c.move, timber.Means{})
		got, work := order(b)
		if !same(got, c.want) {
			t.Errorf("%s: %v, want %v", c.move.Kind, got, c.want)
		}
		near(t, "work in all", b.Hands, work, 1e-9)
	}
	if b := timber.BillOf(piece(), nil, timber.Means{}); len(b.Tasks) != 0 {
		t.Errorf("nothing is done, and %v", b.Tasks)
	}
}
