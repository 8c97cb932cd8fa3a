package trim_test

import (
	"math"
	"testing"

	"leafwright/geom"
	"leafwright/geom/caseone"
	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/trim"
)

// caseOne is case 1 of the model's hand-checkable cases: gaps of 4, 4, 4 and 6.
func caseOne() trim.Piece {
	return trim.Piece{Door: caseone.Hinged(100), Anatomy: door.Ordinary(door.Framed, 792, 1990)}
}

// doneTo makes the moves, none of which may be refused.
func doneTo(t *testing.T, p trim.Piece, moves ...trim.Move) (trim.Piece, trim.Done) {
	t.Helper()
	var done trim.Done
	for i, m := range moves {
		var why *trim.Care
		if p, done, why = trim.Do(p, m); why != nil {
			t.Fatalf("move %d, %v, is refused: %+v", i, m.Kind, *why)
		}
	}
	return p, done
}

// fitOf hangs the piece's door.
func fitOf(p trim.Piece) *fit.Fit {
	var f fit.Fit
	d := p.Door.Clone()
	fit.Evaluate(&f, &d)
	return &f
}

// is compares a length with what it must be.
func is(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s is %.6f, want %.6f", what, got, want)
	}
}

// minds tells whether a care about it is among what is to be minded.
func minds(d trim.Done, about trim.About) bool {
	for _, c := range d.Cares {
		if c.About == about {
			return true
		}
	}
	return false
}

// Case 2 of the model's hand-checkable cases: the top gain in the leaf 1 mm deeper,
// hinges 1500 apart.
func TestAGainOneMillimetreDeeper(t *testing.T) {
	p, done := doneTo(t, caseOne(), trim.Move{Kind: trim.Sink, Hinge: 1, On: trim.OnLeaf, First: 1})
	f := fitOf(p)
	is(t, "hinge gap at the top hinge", f.Gaps[fit.HingeSide].At(1756), 3, 1e-3)
	is(t, "hinge gap at the bottom hinge", f.Gaps[fit.HingeSide].At(256), 4, 1e-3)
	is(t, "hinge gap half way", f.Gaps[fit.HingeSide].At(1006), 3.5, 1e-3)
	head := f.Gaps[fit.HeadSide]
	is(t, "head gap at the hanging corner", head.At(head.Range().Lo), 4, 1e-3)
	is(t, "head gap at the closing corner", head.At(head.Range().Hi), 3.472, 1e-3)
	before := fitOf(caseOne())
	corner := geom.Vec{X: 792}
	rise := f.Place(corner, f.Closed).Y - before.Place(corner, before.Closed).Y
	is(t, "rise of the closing edge", rise, 0.528, 1e-3)
	if f.Axis != before.Axis {
		t.Error("a gain in the leaf moved the pins")
	}
	is(t, "timber out of the gain", done.Volume, 100*34, 1e-9) // plates' height by the thickness less 6
	if len(done.Gains) != 1 || done.Gains[0] != 0 || done.Off != 0 || done.Frame {
		t.Errorf("done: %+v", done)
	}
	// the same on the jamb leans the axis as well
	p, _ = doneTo(t, caseOne(), trim.Move{Kind: trim.Sink, Hinge: 1, On: trim.OnJamb, First: 1})
	f = fitOf(p)
	is(t, "lean of the axis", f.Axis.Down.X*1500, 1, 1e-3)
	is(t, "head gap at the closing corner", f.Gaps[fit.HeadSide].At(795), 3.472, 2e-3)
}

// What the trade does for a fault (reference, section 12): the shim and the gain
// cut deeper, at one hinge or at both.
func TestCuresOfTheTrade(t *testing.T) {
	pack := func(h int, by float64) trim.Move {
		return trim.Move{Kind: trim.Pack, Hinge: h, On: trim.OnJamb, First: by}
	}
	sink := func(h int, by float64) trim.Move {
		return trim.Move{Kind: trim.Sink, Hinge: h, On: trim.OnLeaf, First: by}
	}
	foot := func(f *fit.Fit) float64 { g := f.Gaps[fit.FloorSide]; return g.At(g.Range().Hi) }
	head := func(f *fit.Fit) float64 { g := f.Gaps[fit.HeadSide]; return g.At(g.Range().Hi) }
	latch := func(f *fit.Fit) float64 { return f.Gaps[fit.LatchSide].Least }
	hinge := func(f *fit.Fit) float64 { return f.Gaps[fit.HingeSide].Least }
	before := fitOf(caseOne())
	for _, c := range []struct {
		fault, source string
		moves         []trim.Move
		gap           func(*fit.Fit) float64
		grows         float64
		within        float64
	}{
		// a shim of 1 mm at one hinge turns the leaf by 1 in 1500: 0.528 at 792 across
		{"toe drags at the sill", "Whitman; a home-repair guide", []trim.Move{pack(2, 1)}, foot, 0.528, 0.01},
		{"toe drags at the sill", "Whitman; a home-repair guide", []trim.Move{sink(1, 1)}, foot, 0.528, 0.01},
		{"toe hits the head", "Whitman; a home-repair guide", []trim.Move{pack(1, 1)}, head, 0.528, 0.01},
		{"toe hits the head", "Whitman; a home-repair guide", []trim.Move{sink(2, 1)}, head, 0.528, 0.01},
		{"rubs evenly at the hinge side", "a home-repair guide", []trim.Move{pack(0, 1.5)}, hinge, 1.5, 1e-9},
		{"rubs evenly at the lock side", "a home-repair guide; Whitman", []trim.Move{sink(0, 1.5)}, latch, 1.5, 1e-9},
		{"wide hinge gap, lock edge rubs", "Griffith; Noyes", []trim.Move{sink(0, 1)}, latch, 1, 1e-9},
		{"wide hinge gap, lock edge rubs", "Griffith; Noyes", []trim.Move{sink(0, 1)}, hinge, -1, 1e-9},
		{"swollen leaf rubs the lock edge", "US Navy 14045", []trim.Move{{Kind: trim.Plane, Edge: door.LatchSide, First: 2, Last: 2}}, latch, 2, 1e-9},
		{"lock corner drags the floor", "US Navy 14045", []trim.Move{{Kind: trim.Plane, Edge: door.FloorSide, Last: 3}}, foot, 3, 1e-9},
		{"lock side settles, binds at the head", "US Navy 14045", []trim.Move{{Kind: trim.Plane, Edge: door.HeadSide, Last: 3}}, head, 3, 1e-9},
		{"rubs at the lock side", "a home-repair guide; Whitman", []trim.Move{{Kind: trim.Plane, Edge: door.HingeSide, First: 1, Last: 1}, sink(0, 1)}, latch, 1, 1e-9},
	} {
		p, _ := doneTo(t, caseOne(), c.moves...)
		if got := c.gap(fitOf(p)) - c.gap(before); !(math.Abs(got-c.grows) <= c.within) {
			t.Errorf("%s (%s): the gap grows by %.4f, want %.4f", c.fault, c.source, got, c.grows)
		}
	}
}

// Hinge-bound for gains cut too deep is cured by packing (Fairham); the packing is
// out again before a gain is cut.
func TestPackingCuresHingeBound(t *testing.T) {
	p := caseOne()
	for i := range p.Door.Hinges {
		p.Door.Hinges[i].LeafGain, p.Door.Hinges[i].JambGain = 4.5, 4
	}
	is(t, "hinge gap before", fitOf(p).Gaps[fit.HingeSide].Least, -0.5, 1e-9)
	packed, done := doneTo(t, p, trim.Move{Kind: trim.Pack, On: trim.OnLeaf, First: 2.5})
	is(t, "hinge gap packed", fitOf(packed).Gaps[fit.HingeSide].Least, 2, 1e-9)
	if len(done.Gains) != 0 || done.Volume != 0 {
		t.Errorf("packing cuts: %+v", done)
	}
	out, done := doneTo(t, packed, trim.Move{Kind: trim.Sink, On: trim.OnLeaf, First: 2})
	h := out.Door.Hinges[0]
	if h.LeafPacker != 0.5 || h.LeafGain != 4.5 || done.Volume != 0 || len(done.Gains) != 0 || !minds(done, trim.PackerOut) {
		t.Errorf("packer %v, gain %v, done %+v", h.LeafPacker, h.LeafGain, done)
	}
	deeper, done := doneTo(t, packed, trim.Move{Kind: trim.Sink, On: trim.OnLeaf, First: 3})
	h = deeper.Door.Hinges[1]
	if h.LeafPacker != 0 || h.LeafGain != 5 || len(done.Gains) != 2 {
		t.Errorf("packer %v, gain %v, done %+v", h.LeafPacker, h.LeafGain, done)
	}
	is(t, "seat of the hinge", h.LeafGain-h.LeafPacker, 5, 1e-12)
}

// A leaf is raised as well by hinges higher on the jamb as lower on the leaf.
func TestRaisedEitherWay(t *testing.T) {
	for _, by := range []float64{3, -2} {
		for _, on := range []trim.Part{trim.OnJamb, trim.OnLeaf, trim.OnBoth} {
			p, done := doneTo(t, caseOne(), trim.Move{Kind: trim.Raise, On: on, First: by})
			f := fitOf(p)
			is(t, string(on)+": head gap", f.Gaps[fit.HeadSide].Least, 4-by, 1e-9)
			is(t, string(on)+": floor gap", f.Gaps[fit.FloorSide].Least, 6+by, 1e-9)
			is(t, string(on)+": hinge gap", f.Gaps[fit.HingeSide].Least, 4, 1e-9)
			is(t, string(on)+": strain", f.Strain, 0, 1e-9)
			if len(done.Gains) != 2 {
				t.Errorf("%v: gains cut anew: %v", on, done.Gains)
			}
		}
	}
}

// A hinge shifted on both comes to another place and changes no gap of a square
// door; on one only it strains.
func TestShiftedHinge(t *testing.T) {
	p, done := doneTo(t, caseOne(), trim.Move{Kind: trim.Shift, Hinge: 2, On: trim.OnBoth, First: -30})
	if h := p.Door.Hinges[1]; h.JambHeight != 226 || h.LeafHeight != 220 {
		t.Errorf("hinge at %v and %v", h.JambHeight, h.LeafHeight)
	}
	f := fitOf(p)
	is(t, "floor gap", f.Gaps[fit.FloorSide].Least, 6, 1e-9)
	is(t, "new timber in the gain", done.Volume, 30*2*34, 1e-9)
	p, _ = doneTo(t, caseOne(), trim.Move{Kind: trim.Shift, Hinge: 2, On: trim.OnLeaf, First: -1})
	is(t, "strain", fitOf(p).Strain, 1, 1e-9)
	_, _, why := trim.Do(caseOne(), trim.Move{Kind: trim.Shift, Hinge: 3, On: trim.OnLeaf, First: 1})
	if why == nil || !why.About.Forbids() {
		t.Errorf("a third hinge of two: %+v", why)
	}
	_, _, why = trim.Do(caseOne(), trim.Move{Kind: trim.Shift, Hinge: 1, On: trim.OnBoth, First: 195})
	if why == nil || why.About != trim.DoorSpoilt || len(why.Faults) == 0 {
		t.Errorf("a plate off the leaf: %+v", why)
	}
}

// Hinges set apart in z share a leaf's wind between its two stiles: set in the
// proportion k/2 to the leaf's height they leave half of it at the closing edge, so
// that its corners stand k/4 out and k/4 in, the latch at mid height flush (common
// practice, no published source).
func TestWindSharedByTheHinges(t *testing.T) {
	const k, spacing, high = 6.0, 1500.0, 1990.0
	p := caseOne()
	p.Door.Leaf.ClosingFace = geom.Through(0, 0, high, k)
	p.Door.Latch.Height = high / 2
	p.Door.Frame.PlantStops(60) // out of the way
	stand := func(p trim.Piece) (foot, head float64) {
		f := fitOf(p)
		at := func(v float64) float64 {
			return f.Place(geom.Vec{X: 792, Y: v, Z: p.Door.Leaf.Face(792, v)}, f.Closed).Z
		}
		return at(0), at(high)
	}
	foot, head := stand(p)
	is(t, "closing foot before", foot, -k/2, 0.01)
	is(t, "closing head before", head, k/2, 0.01)
	half := k / 2 * spacing / high / 2
	p, done := doneTo(t, p,
		trim.Move{Kind: trim.Set, Hinge: 2, On: trim.OnJamb, First: half},
		trim.Move{Kind: trim.Set, Hinge: 1, On: trim.OnJamb, First: -half})
	foot, head = stand(p)
	is(t, "closing foot after", foot, -k/4, 0.03)
	is(t, "closing head after", head, k/4, 0.03)
	if p.Door.Hinges[0].Pin != 5-half || p.Door.Hinges[0].Proud != -half || len(done.Gains) != 1 {
		t.Errorf("%+v, %+v", p.Door.Hinges[0], done)
	}
	leaf, _ := doneTo(t, caseOne(), trim.Move{Kind: trim.Set, Hinge: 1, On: trim.OnLeaf, First: 1})
	if h := leaf.Door.Hinges[0]; h.Pin != 5 || h.Proud != 1 {
		t.Errorf("set on the leaf: %+v", h)
	}
}

// A heavier hinge let in deeper by what it is thicker keeps the gap; old gains
// deeper than the new hinge asks for are filled up.
func TestLargerHinges(t *testing.T) {
	m := trim.Move{Kind: trim.Rehinge, Closed: 10, Plates: 125, Pin: 6, LeafGain: 3, JambGain: 3}
	p, done := doneTo(t, caseOne(), m)
	is(t, "hinge gap", fitOf(p).Gaps[fit.HingeSide].Least, 4, 1e-9)
	is(t, "timber out of the gains", done.Volume, 2*34*(25*3+100*1), 1e-9)
	if h := p.Door.Hinges[1]; h.Pin != 6 || h.Height != 125 || h.LeafHeight != 250 || len(done.Gains) != 2 {
		t.Errorf("%+v, %+v", h, done)
	}
	m = trim.Move{Kind: trim.Rehinge, Closed: 6, Plates: 75, Pin: 4, LeafGain: 1, JambGain: 1}
	p, done = doneTo(t, caseOne(), m)
	is(t, "hinge gap of the smaller", fitOf(p).Gaps[fit.HingeSide].Least, 4, 1e-9)
	if h := p.Door.Hinges[0]; h.LeafGain != 2 || h.LeafPacker != 1 || done.Volume != 0 {
		t.Errorf("%+v, %+v", h, done)
	}
}

// A hinge between the outer two is brought back onto their line by a packer (US
// Navy manual 14045 has pins off one line re-aligned).
func TestPinBroughtIntoLine(t *testing.T) {
	p := caseOne()
	mid := p.Door.Hinges[0]
	mid.JambHeight, mid.LeafHeight, mid.JambGain = 1000, 994, 3
	p.Door.Hinges = []door.Hinge{p.Door.Hinges[0], mid, p.Door.Hinges[1]}
	is(t, "out of line before", fitOf(p).OutOfLine(1), 1, 1e-9)
	p, _ = doneTo(t, p, trim.Move{Kind: trim.Pack, Hinge: 2, On: trim.OnJamb, First: 1})
	is(t, "out of line packed", fitOf(p).OutOfLine(1), 0, 1e-9)
}

// The gain's end grain and what is left of the stile.
func TestHingeTimber(t *testing.T) {
	p := caseOne()
	p.Anatomy.HangingStile = 110
	p.Anatomy.Rails = []door.Rail{{Name: "bottom", From: 0, To: 200}, {Name: "lock", From: 800, To: 965}, {Name: "top", From: 1880, To: 1990}}
	p.Anatomy.Joints = door.Joints{Kind: door.Through, Haunch: 40}
	up := trim.Move{Kind: trim.Shift, Hinge: 1, On: trim.OnBoth, First: 60} // plate 1760 to 1860: clear
	if _, done := doneTo(t, p, up); minds(done, trim.HingeOnTenon) {
		t.Errorf("clear of the tenon: %+v", done.Cares)
	}
	_, done := doneTo(t, p, trim.Move{Kind: trim.Sink, Hinge: 2, On: trim.OnLeaf, First: 1})
	want := trim.Left{Member: trim.Member{Part: trim.HingeSeat, Edge: door.HingeSide, Index: 1}, Before: 108, Now: 107}
	if len(done.Left) != 1 || done.Left[0] != want {
		t.Errorf("left: %+v", done.Left)
	}
	up.First = 90 // plate up to 1890
	_, done = doneTo(t, p, up)
	if !minds(done, trim.HingeOnTenon) {
		t.Errorf("on the tenon's end: %+v", done.Cares)
	}
	p.Anatomy.Joints = door.Joints{Kind: door.Stub, Tenon: 107, Haunch: 40}
	if _, _, why := trim.Do(p, up); why != nil {
		t.Errorf("clear of a stub tenon by 1 mm: %+v", why)
	}
	p.Anatomy.Joints.Tenon = 109
	if _, _, why := trim.Do(p, up); why == nil || why.About != trim.IntoTenon || math.Abs(why.Left+1) > 1e-9 {
		t.Errorf("1 mm into a stub tenon: %+v", why)
	}
	// a small hinge on the haunches only, clear of the tenons between them
	small := caseOne()
	small.Anatomy = p.Anatomy
	small.Anatomy.Joints = door.Joints{Kind: door.Through, Haunch: 40}
	for i, v := range []float64{1970, 20} {
		h := &small.Door.Hinges[i]
		h.LeafHeight, h.JambHeight, h.Height = v, v+6, 30
	}
	deeper := trim.Move{Kind: trim.Sink, On: trim.OnLeaf, First: 0.5}
	if _, done = doneTo(t, small, deeper); minds(done, trim.HingeOnTenon) {
		t.Errorf("on the haunches only: %+v", done.Cares)
	}
	for _, cut := range []door.Joints{{FootCut: 10}, {TopCut: 10}} { // of a leaf cut before
		cut.Kind, cut.Haunch = door.Through, 40
		small.Anatomy.Joints = cut
		if _, done = doneTo(t, small, deeper); !minds(done, trim.HingeOnTenon) {
			t.Errorf("%+v: on the tenon: %+v", cut, done.Cares)
		}
	}
	p.Anatomy.HangingStile = 30
	_, done = doneTo(t, p, trim.Move{Kind: trim.Sink, Hinge: 2, On: trim.OnLeaf, First: 6})
	if !minds(done, trim.Slender) {
		t.Errorf("22 mm left behind the gain: %+v", done.Cares)
	}
}

// A packer that holds a hinge off its seat is taken out, and no more than is there.
func TestPackingTakenOut(t *testing.T) {
	p := caseOne()
	p.Door.Hinges = append([]door.Hinge(nil), p.Door.Hinges...)
	p.Door.Hinges[0].JambPacker = 2.5
	q, done := doneTo(t, p, trim.Move{Kind: trim.Pack, Hinge: 1, On: trim.OnJamb, First: -2.5})
	if got := q.Door.Hinges[0].JambPacker; got != 0 || done.Volume != 0 {
		t.Errorf("packing of %v is left and %v mm³ is cut", got, done.Volume)
	}
	if _, _, why := trim.Do(q, trim.Move{Kind: trim.Pack, Hinge: 1, On: trim.OnJamb, First: -1}); why == nil || why.About != trim.NoPacker {
		t.Errorf("where there is no packing: %+v", why)
	}
}

// A stroke beside the leaf takes nothing, and says so.
func TestStrokeOffTheLeaf(t *testing.T) {
	for _, m := range []trim.Move{
		{Kind: trim.Plane, Edge: door.LatchSide, From: 2500, To: 3000, First: 2, Last: 2},
		{Kind: trim.Plane, Edge: door.HeadSide, From: -200, To: -50, First: 2, Last: 2},
	} {
		if _, _, why := trim.Do(caseOne(), m); why == nil || why.About != trim.OffTheLeaf {
			t.Errorf("%+v: %+v", m, why)
		}
	}
}
