package timber_test

import (
	"slices"
	"strings"
	"testing"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/timber"
	"leafwright/geom/trim"
)

func splice(e door.Edge, height, stock float64, f trim.Face) trim.Move {
	return trim.Move{Kind: trim.Splice, Edge: e, First: height, Last: height, Stock: stock, Face: f}
}

// Half the stock is the most (a furniture maker's rule), a third to a half the practice.
func TestDowelDiameter(t *testing.T) {
	for stock := 18.0; stock <= 60; stock++ {
		d := timber.DowelDiameter(stock)
		if d > stock/2 || d > stock/3+1e-9 {
			t.Errorf("%v mm in stock of %v", d, stock)
		}
	}
	near(t, "38 mm stock", timber.DowelDiameter(38), 12, 0)
}

// The trade's own case: 38 mm stock, centred on a 45 mm leaf and planed flush.
func TestDowelsOfAThinStrip(t *testing.T) {
	p := piece()
	p.Door.Leaf.Thickness = 45
	p.Door.Frame.PlantStops(47)
	d, why := timber.DowelsFor(p, splice(door.FloorSide, 60, 38, trim.Middle), 0)
	if why != nil || d == nil {
		t.Fatal(why)
	}
	near(t, "gauge on the leaf", d.LeafGauge, 22.5, 0)
	near(t, "gauge on the strip", d.StripGauge, 19, 0)
	near(t, "off the leaf, knuckle face", d.OffLeaf[0], 3.5, 0)
	near(t, "off the leaf, stop face", d.OffLeaf[1], 3.5, 0)
	near(t, "off the strip", d.OffStrip[0]+d.OffStrip[1], 0, 0)
	near(t, "diameter", d.Diameter, 12, 0)
	near(t, "into the strip: three diameters and glue room", d.IntoStrip, 38, 0) // three diameters a member
	near(t, "into the leaf", d.IntoLeaf, 38, 0)
	near(t, "a dowel", d.Length, 72, 0)
	near(t, "length", d.Long, 762, 1e-9)
	if len(d.Places) < 3 { // never fewer on a strip as long as a rail
		t.Errorf("only %d dowels", len(d.Places))
	}
	if d.Shorts != [2]int{1, 1} {
		t.Errorf("%v of %v are short", d.Shorts, d.Places)
	}
	near(t, "glue", d.GlueArea, 762*38+3.141592653589793*12*(float64(len(d.Places)-2)*72+2*d.ShortLength), 1e-6)
	if !slices.Contains(d.Cares, timber.StandsBack) || !slices.Contains(d.Cares, timber.OnEndGrain) {
		t.Errorf("cares: %v", d.Cares)
	}
}

func TestDowelsOfThickStock(t *testing.T) {
	p := piece() // 44 thick
	for _, c := range []struct {
		face       trim.Face
		off        [2]float64
		strip      float64
		round, rip float64
	}{
		{trim.Knuckle, [2]float64{0, 6}, 22, 0, 0},
		{trim.Stop, [2]float64{6, 0}, 28, 0, 0},
		{trim.Middle, [2]float64{3, 3}, 25, 3, 0}, // planing takes the rounding
		{trim.Middle, [2]float64{3, 3}, 25, 4, 4}, // it does not
		{trim.Knuckle, [2]float64{0, 6}, 22, 2, 2},
	} {
		d, why := timber.DowelsFor(p, splice(door.LatchSide, 20, 50, c.face), c.round)
		if why != nil || d == nil {
			t.Fatal(why)
		}
		near(t, "off, knuckle face", d.OffStrip[0], c.off[0], 1e-12)
		near(t, "off, stop face", d.OffStrip[1], c.off[1], 1e-12)
		near(t, "leaf gauge", d.LeafGauge, 22, 1e-12)
		near(t, "strip gauge", d.StripGauge, c.strip, 1e-12)
		near(t, "rip", d.Rip, c.rip, 0)
		// the two lines meet once both faces are flush
		near(t, "gauges agree", d.StripGauge-d.OffStrip[0], d.LeafGauge, 1e-12)
	}
}

// Every dowel is clear of tenons, wedges, lock, hinges, ends and the next dowel.
func TestDowelsKeepClear(t *testing.T) {
	p := piece()
	p.Anatomy.Lock = door.Lock{Kind: door.Mortice, Height: 1000, Backset: 57, Case: 150, Depth: 80}
	a := &p.Anatomy
	for _, e := range []door.Edge{door.HingeSide, door.LatchSide, door.HeadSide, door.FloorSide} {
		for _, high := range []float64{10, 25, 60} {
			d, why := timber.DowelsFor(p, splice(e, high, 44, trim.Knuckle), 0)
			if why != nil || d == nil {
				t.Fatal(e, why)
			}
			if len(d.Places) < 3 || !slices.IsSorted(d.Places) {
				t.Errorf("edge %d, %v high: dowels at %v", e, high, d.Places)
			}
			r := d.Diameter / 2
			for i, at := range d.Places {
				if at < r+d.Diameter || at > d.Long-r-d.Diameter { // a diameter from the end
					t.Errorf("edge %d: a dowel at %v of %v", e, at, d.Long)
				}
				if i > 0 && at-d.Places[i-1] < 3*d.Diameter-1e-9 {
					t.Errorf("edge %d: dowels at %v and %v", e, d.Places[i-1], at)
				}
				if e.Upright() {
					for k := range a.Rails {
						if lo, hi := a.Tenon(k); at+r > lo-a.Joints.Wedge && at-r < hi+a.Joints.Wedge {
							t.Errorf("edge %d: a dowel at %v in the tenon %v to %v", e, at, lo, hi)
						}
					}
				}
				if e == door.LatchSide && at+r > 925 && at-r < 1075 {
					t.Errorf("a dowel at %v in the lock's case", at)
				}
				for _, h := range p.Door.Hinges {
					if e == door.HingeSide && at+r > h.LeafHeight-50 && at-r < h.LeafHeight+50 {
						t.Errorf("a dowel at %v under a hinge", at)
					}
				}
				if !e.Upright() { // in the stiles the hole would meet the tenon: 38 mm of haunch less the wedge's 10
					deep := d.IntoLeaf
					if d.Short > 0 {
						deep = d.Short
					}
					if (at-r < a.HangingStile || at+r > 762-a.ClosingStile) && deep > 28 {
						t.Errorf("edge %d: a dowel at %v meets the stile's tenon", e, at)
					}
				}
			}
			if !d.Through && d.IntoStrip > high-3+1e-9 { // dowelCover less glue room
				t.Errorf("edge %d: %v deep in a strip %v high", e, d.IntoStrip, high)
			}
			if d.Through != (high == 10) {
				t.Errorf("edge %d, %v high: bored through %v", e, high, d.Through)
			}
		}
	}
}

// Nothing in the way: 9 to 10 in apart and two at each end of a long joint (Fairham), 2½ in
// apart (Architectural Woodwork Standards).
func TestDowelPlaces(t *testing.T) {
	p := piece()
	p.Anatomy = door.Ordinary(door.Flush, 762, 1981)
	places := func(e door.Edge, want ...float64) {
		t.Helper()
		d, why := timber.DowelsFor(p, splice(e, 20, 44, trim.Knuckle), 0)
		if why != nil || d == nil {
			t.Fatal(why)
		}
		if len(d.Places) != len(want) {
			t.Fatalf("dowels at %v, want %v", d.Places, want)
		}
		for i := range want {
			near(t, "dowel", d.Places[i], want[i], 1e-9)
		}
	}
	third := (762 - 80) / 3.0
	places(door.FloorSide, 40, 40+third, 40+2*third, 722)
	p.Anatomy.Lock = door.Lock{Kind: door.Rim, Height: 1000, Case: 100, Backset: 60, Depth: 90} // on the face: nothing in the edge
	step := (1981 - 80) / 8.0
	if step < 228 || step > 254 {
		t.Errorf("%v apart", step)
	}
	places(door.LatchSide, 40, 103.5, 40+step, 40+2*step, 40+3*step, 40+4*step, 40+5*step, 40+6*step, 40+7*step, 1877.5, 1941)

	// a muntin's tenon, 50 deep, over a rail too low to be bored beside it
	p = piece()
	p.Anatomy.Rails[0].To = 50
	p.Anatomy.Muntins[0].From = 50
	p.Anatomy.Muntins[0].At = 267
	d, _ := timber.DowelsFor(p, splice(door.FloorSide, 20, 44, trim.Knuckle), 0)
	near(t, "no deeper than the rail less groove, wall and glue room", d.IntoLeaf, 50-44/3.0-6, 1e-9)
	for _, at := range d.Places {
		if at+6 > 267-48.5 && at-6 < 267+48.5 {
			t.Errorf("a dowel at %v in the muntin's tenon", at)
		}
	}

	// a narrow leaf still has its three
	p = piece()
	p.Door.Leaf = door.Rectangle(260, 1981, 44)
	p.Door.Frame = door.Square(266, 1994, 46, 12)
	p.Anatomy = door.Ordinary(door.Flush, 260, 1981)
	places(door.FloorSide, 40, 130, 220)
}

// Where the haunch has room the stiles' ends have their dowels too, shorter ones; a foot
// cut close to the tenon has none there.
func TestDowelsInStileEnds(t *testing.T) {
	p := piece()
	for _, c := range []struct {
		cut, short float64
		first      float64
	}{
		{0, 28, 40}, {5, 23, 40},
		{15, 0, 110 + 12 + 1}, // clear of the shoulder by a diameter
	} {
		q := p
		if c.cut > 0 {
			var why *trim.Care
			if q, _, why = trim.Do(p, trim.Move{Kind: trim.Cut, Edge: door.FloorSide, First: c.cut, Last: c.cut}); why != nil {
				t.Fatal(why)
			}
		}
		d, why := timber.DowelsFor(q, splice(door.FloorSide, 30, 44, trim.Knuckle), 0)
		if why != nil || d == nil {
			t.Fatal(why)
		}
		near(t, "short holes", d.Short, c.short, 1e-9)
		near(t, "first dowel", d.Places[0], c.first, 1e-9)
		if c.short > 0 {
			near(t, "short dowel", d.ShortLength, d.Length-(d.IntoLeaf-d.Short), 1e-9)
		}
	}
}

// An offcut of the top used again at the foot, and what it takes.
func TestDowelsOfAnOffcut(t *testing.T) {
	p := piece()
	moves := []trim.Move{
		{Kind: trim.Cut, Edge: door.HeadSide, First: 25, Last: 25},
		{Kind: trim.Reuse, Edge: door.FloorSide, First: 20},
	}
	q, _, _ := trim.Do(p, moves[0])
	d, why := timber.DowelsFor(q, moves[1], 0)
	if why != nil || d == nil {
		t.Fatal(why)
	}
	near(t, "stock", d.Stock, 44, 0)
	near(t, "height", d.High, 20, 1e-9)
	_, steps := trim.All(p, moves)
	b := timber.BillOf(p, steps, timber.Means{})
	for _, i := range b.Items {
		if i.Thing == timber.StripStock {
			t.Errorf("a strip is bought though an offcut is used: %+v", i)
		}
	}
	if !(b.Glued > 0.762*0.044) {
		t.Errorf("glued %v m²", b.Glued)
	}
}

func TestDowelsRefused(t *testing.T) {
	p := piece()
	if d, why := timber.DowelsFor(p, trim.Move{Kind: trim.Plane, Edge: door.LatchSide, First: 2}, 0); d != nil || why != nil {
		t.Error("dowels for a plane")
	}
	m := splice(door.FloorSide, 20, 44, trim.Knuckle)
	m.Hollow = 2
	if d, why := timber.DowelsFor(p, m, 0); d != nil || why == nil || why.About != trim.Crooked {
		t.Errorf("a crooked joint is dowelled: %v", why)
	}
}

func TestFiller(t *testing.T) {
	v := timber.Void{Decay: timber.Hole, Across: geom.Interval{Lo: 300, Hi: 340}, Up: geom.Interval{Lo: 900, Hi: 1000}, Depth: 25}
	near(t, "solid", timber.FillerFor(v, 44, false).Filler, 40*100*25, 1e-9)
	f := timber.FillerFor(v, 44, true)
	near(t, "skin: the last 5 mm (common practice)", f.Filler, 40*100*5, 1e-9)
	near(t, "core", f.Foam, 40*100*20, 1e-9)
	v.Depth = 44
	f = timber.FillerFor(v, 44, true)
	near(t, "a skin on both faces", f.Filler, 40*100*10, 1e-9)
	v.Depth, v.Part = 4, 0.5
	if f = timber.FillerFor(v, 44, true); f.Foam != 0 || f.Filler != 40*100*4*0.5 {
		t.Errorf("a shallow void: %+v", f)
	}
	n, each := timber.Batches(250_000, 5, 20_000)
	if n != 3 {
		t.Errorf("%d batches of %v", n, each)
	}
	near(t, "each", each*3, 250_000, 1e-6)
	if n, _ := timber.Batches(0, 5, 0); n != 0 {
		t.Error("a batch of nothing")
	}
}

func TestRepair(t *testing.T) {
	p := piece()
	p.Anatomy.Lock = door.Lock{Kind: door.Mortice, Height: 1000, Backset: 57, Case: 150, Depth: 80}
	at := func(u0, u1, v0, v1 float64) timber.Void {
		return timber.Void{Decay: timber.Hole, Across: geom.Interval{Lo: u0, Hi: u1}, Up: geom.Interval{Lo: v0, Hi: v1}, Depth: 20}
	}
	for _, c := range []struct {
		what   string
		void   timber.Void
		member trim.MemberPart
		cut    bool
	}{
		{"in a stile", at(50, 60, 1300, 1320), trim.Stile, false},
		{"in the bottom rail", at(300, 320, 80, 90), trim.Rail, false},
		{"at the top hinge", at(0, 10, 1770, 1790), trim.HingeSeat, true},
		{"at the lock", at(740, 762, 990, 1010), trim.LockCase, true},
		{"across a stile", at(10, 105, 1300, 1320), trim.Stile, true},
		{"over a tenon", at(30, 40, 60, 80), trim.Tenon, true},
	} {
		r := timber.RepairOf(&p, c.void)
		if !slices.ContainsFunc(r.Meets, func(m trim.Member) bool { return m.Part == c.member }) || r.CutOut != c.cut {
			t.Errorf("%s: %+v", c.what, r)
		}
	}
	v := at(50, 60, 1300, 1320)
	v.Decay, v.Active = timber.Rot, true
	if r := timber.RepairOf(&p, v); !r.CutOut || !r.Treat || r.Edge {
		t.Errorf("rot: %+v", r)
	}
	if !timber.RepairOf(&p, at(0, 10, 1300, 1310)).Edge {
		t.Error("a void at the hanging edge does not reach it")
	}
}

func TestBill(t *testing.T) {
	p := piece()
	moves := []trim.Move{
		{Kind: trim.Plane, Edge: door.LatchSide, First: 2, Last: 2},
		splice(door.FloorSide, 20, 44, trim.Knuckle),
		{Kind: trim.Sink, Hinge: 1, On: trim.OnLeaf, First: 0.5},
		{Kind: trim.Pack, Hinge: 2, On: trim.OnBoth, First: 1},
		{Kind: trim.Plane, Edge: door.HingeSide, First: 1, Last: 1, Off: true},
		{Kind: trim.Plane, Edge: door.HeadSide, First: 400},
	}
	_, steps := trim.All(p, moves)
	b := timber.BillOf(p, steps, timber.Means{})
	item := func(th timber.Thing, paint timber.Paint) *timber.Item {
		for i := range b.Items {
			if b.Items[i].Thing == th && b.Items[i].Paint == paint {
				return &b.Items[i]
			}
		}
		t.Fatalf("no %s %s in %+v", th, paint, b.Items)
		return nil
	}
	d, _ := timber.DowelsFor(p, moves[1], 0)
	n := 0
	for _, i := range b.Items {
		if i.Thing == timber.DowelStock {
			n += i.N
		}
	}
	if i := item(timber.DowelStock, ""); n != len(d.Places) || i.Size[0] != d.Diameter {
		t.Errorf("%d dowels", i.N)
	}
	if i := item(timber.StripStock, ""); i.N != 1 || i.Size[0] < 760 || i.Size[1] < 20 || i.Size[2] != 44 {
		t.Errorf("strip %+v", i)
	}
	if i := item(timber.PackerCard, ""); i.N != 2 || i.Size[1] != 1 {
		t.Errorf("packers %+v", i)
	}
	near(t, "glue", item(timber.Glue, "").Amount, b.Glued*180, 1e-9)
	// bared: closing edge 1981 (+20) × 44; foot 760 × (44 + 2·20)
	near(t, "bared", b.Bared, (1981+20)*44e-6+760*84e-6, 0.001)
	primer := item(timber.PaintStock, timber.Primer)
	near(t, "primer, ml", primer.Amount, b.Bared/12*1000, 1e-9)
	near(t, "enamel, ml", item(timber.PaintStock, timber.Enamel).Amount, 2*b.Bared/14*1000, 1e-9)
	var work float64
	order := ""
	for _, task := range b.Tasks {
		work += task.Minutes
		if task.Step > 3 {
			t.Errorf("step %d was not done", task.Step)
		}
		order += string(task.Doing[0])
	}
	near(t, "hands", b.Hands, work, 1e-9)
	if !strings.HasPrefix(order, "tt") || !strings.HasSuffix(order, "ppph") {
		t.Errorf("the order of work: %s", order)
	}
	// nothing done: nothing to buy
	if none := timber.BillOf(p, nil, timber.Means{}); none.Items != nil || none.Bared != 0 {
		t.Errorf("no steps: %+v", none)
	}
	// new hinges and a hole filled
	_, steps = trim.All(p, []trim.Move{{Kind: trim.Rehinge, Closed: 8, Plates: 100, Pin: 5, LeafGain: 2.5, JambGain: 2.5}})
	b = timber.BillOf(p, steps, timber.Means{Foam: true, Voids: []timber.Void{{Across: geom.Interval{Lo: 300, Hi: 320}, Up: geom.Interval{Lo: 80, Hi: 90}, Depth: 20}}})
	if i := item(timber.HingeStock, ""); i.N != 2 || i.Size[0] != 100 {
		t.Errorf("hinges %+v", i)
	}
	if i := item(timber.ScrewStock, ""); i.N != 16 {
		t.Errorf("screws %+v", i)
	}
	near(t, "filler, cm³", item(timber.FillerMix, "").Amount, 20*10*5e-3, 1e-12)
	near(t, "foam, cm³", item(timber.FoamCore, "").Amount, 20*10*15e-3, 1e-12)
}
