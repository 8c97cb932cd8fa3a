package timber_test

import (
	"slices"
	"testing"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/timber"
	"leafwright/geom/trim"
)

// piece is a sound framed door: 762 × 1981 × 44 in an opening with 3 mm all round.
func piece() trim.Piece {
	return trim.Piece{
		Door: door.Door{
			Leaf: door.Rectangle(762, 1981, 44), Frame: door.Square(768, 1994, 46, 12),
			Hinges: []door.Hinge{
				{JambHeight: 1791, LeafHeight: 1781, LeafGain: 2.5, JambGain: 2.5, Closed: 8, Pin: 5, Height: 100},
				{JambHeight: 290, LeafHeight: 280, LeafGain: 2.5, JambGain: 2.5, Closed: 8, Pin: 5, Height: 100},
			},
			Latch: door.Latch{Height: 1000}, Floor: door.FlatFloor(0), Opens: 90 * geom.Degree,
		},
		Anatomy: door.Ordinary(door.Framed, 762, 1981),
	}
}

func TestMass(t *testing.T) {
	// a solid leaf 1981 × 762 × 35 at 510 kg/m³ is 26.9 kg
	l := door.Rectangle(762, 1981, 35)
	a := door.Ordinary(door.Flush, 762, 1981)
	near(t, "solid", timber.MassOf(&l, &a, timber.Stuff{Density: 510}).All, 26.9, 0.05)
	near(t, "solid, its timber not known", timber.MassOf(&l, &a, timber.Stuff{}).All, 26.9, 0.05)
	near(t, "with its lock", timber.MassOf(&l, &a, timber.Stuff{Fitted: 2}).All, 28.9, 0.05)

	// by hand: stiles 2·100 × 1981, rails 150 + 200 between, a muntin, two panels
	l = door.Rectangle(800, 2000, 40)
	a = door.Anatomy{Make: door.Framed, HangingStile: 100, ClosingStile: 100, Panels: door.Flat,
		Rails:   []door.Rail{{Name: "bottom", From: 0, To: 200}, {Name: "top", From: 1850, To: 2000}},
		Muntins: []door.Muntin{{At: 400, Width: 90, From: 200, To: 1850}}}
	m := timber.MassOf(&l, &a, timber.Stuff{Density: 500, Panel: 10, Fitted: 1.5})
	near(t, "stiles", m.Stiles, 200*2000*40*500e-9, 1e-9)
	near(t, "rails", m.Rails, 350*600*40*500e-9, 1e-9)
	near(t, "muntin", m.Muntins, 90*1650*40*500e-9, 1e-9)
	near(t, "panels", m.Panels, (600-90)*1650*10*500e-9, 1e-9)
	near(t, "all", m.All, m.Stiles+m.Rails+m.Muntins+m.Panels+1.5, 1e-9)
	a.Panels = door.Raised
	near(t, "raised panels, half the leaf's thickness", timber.MassOf(&l, &a, timber.Stuff{Density: 500}).Panels, 510*1650*20*500e-9, 1e-9)
	a.Panels = door.Flat
	near(t, "flat ones, a third", timber.MassOf(&l, &a, timber.Stuff{Density: 500}).Panels, 510*1650*40/3.0*500e-9, 1e-9)
	a.Panels = door.Glass
	near(t, "4 mm of glass", timber.MassOf(&l, &a, timber.Stuff{Density: 500}).Panels, 510*1650*4*2500e-9, 1e-9)

	// a strip of half the thickness weighs half
	whole := timber.MassOf(&l, &a, timber.Stuff{Density: 500})
	a.Strips = []door.Strip{{Edge: door.LatchSide, Joint: geom.Level(790), Stock: 20}}
	near(t, "thin strip", whole.Stiles-timber.MassOf(&l, &a, timber.Stuff{Density: 500}).Stiles, 10*2000*20*500e-9, 1e-9)
}

// The couple of published layouts: EN 1935's test leaf, 2000 × 1000 with 1540 mm between hinges.
func TestPull(t *testing.T) {
	near(t, "EN 1935, 80 kg", timber.Pull(80, 1000, 1540), 254.7181818, 1e-6)
	near(t, "its ratio", timber.Pull(80, 1000, 1540)/(80*timber.Gravity), 0.3246753246753247, 1e-12)
	near(t, "25 kg", timber.Pull(25, 762, 1500), 62.2722275, 1e-6)
	near(t, "40 kg", timber.Pull(40, 838, 1500), 109.5729693, 1e-6)
}

// EN 1935's allowance for wide leaves, as a supplier's guide prints it.
func TestWidthAllowance(t *testing.T) {
	for _, c := range [][2]float64{{1000, 0}, {1050, 10}, {1100, 18}, {1150, 26}, {1200, 33}, {1250, 40}} {
		near(t, "width allowance", timber.WidthAllowance(2000, c[0]), c[1], 0.5)
	}
	near(t, "narrow", timber.WidthAllowance(2000, 762), 0, 0)
}

// Published constants of the withdrawal formula and figures worked with it.
func TestWithdrawal(t *testing.T) {
	near(t, "5 × 50 mm, gravity 0.42", timber.Withdrawal(0.42, 5, 50), 4773.825, 1e-9)
	const pound, inch = 4.4482216, 25.4
	near(t, "15700 in pounds and inches", timber.Withdrawal(1, inch/10, inch)/pound*10, 15700, 15700*3e-5)
	allowed := timber.Withdrawal(0.45, 0.190*inch, inch) / pound / timber.Factor
	near(t, "No. 10 in spruce, allowed, printed 109", allowed, 109.65375, 0.01)
	near(t, "factor", timber.Factor, 5.51, 0.005)
	for n, mm := range map[int]float64{6: 3.51, 8: 4.17, 9: 4.5, 10: 4.83, 12: 5.49} {
		near(t, "shank", timber.Shank(n), mm, 0.01)
	}
}

func TestHold(t *testing.T) {
	pine, _ := timber.Find("scots pine")
	s := timber.Screws{Number: 4, Diameter: timber.Shank(10), Into: 25, Ground: timber.Sound}
	light := timber.HoldOf(timber.Pull(25, 762, 1500), s, pine.Gravity, 0)
	if !light.Enough || light.Do != nil {
		t.Errorf("a light leaf: %+v", light)
	}
	near(t, "fails", light.Fails, 4*timber.Withdrawal(pine.Gravity, s.Diameter, 25), 1e-9)
	near(t, "need", timber.Withdrawal(pine.Gravity, s.Diameter, light.Need)*4/timber.Factor, light.Pull, 1e-9)
	for _, c := range []struct {
		ground timber.Ground
		pull   float64
		into   float64
		want   []timber.Remedy
	}{
		{timber.Sound, 1000, 10, []timber.Remedy{timber.LongerScrews}},
		{timber.Worn, 1000, 20, []timber.Remedy{timber.PlugAndGlue}},
		{timber.Filled, 200, 25, []timber.Remedy{timber.PlugAndGlue}},
		{timber.Filled, 3000, 25, []timber.Remedy{timber.PlugAndGlue, timber.LongerScrews}},
		{timber.Sound, 6000, 25, []timber.Remedy{timber.LongerScrews, timber.ThirdHinge}},
		{timber.Sound, 11000, 25, []timber.Remedy{timber.LongerScrews, timber.ThirdHinge, timber.NewTimber}},
	} {
		s.Ground, s.Into = c.ground, c.into
		if h := timber.HoldOf(c.pull, s, pine.Gravity, 0); h.Enough || !slices.Equal(h.Do, c.want) {
			t.Errorf("%s, %v N, %v mm: %v, want %v (%+v)", c.ground, c.pull, c.into, h.Do, c.want, h)
		}
	}
	// published: end grain about three quarters of side grain
	near(t, "end grain", timber.EndGrain.Grips(), 0.75, 0)
	if timber.Filled.Grips() != 0 {
		t.Error("filler holds a screw")
	}
}

// US trade pages: one for every 30 in; a third for heavy, high and wide leaves.
func TestHinges(t *testing.T) {
	const inch = 25.4
	for _, c := range []struct {
		height, width, kg float64
		want              int
	}{
		{60 * inch, 762, 15, 2}, {61 * inch, 762, 15, 3}, {90 * inch, 762, 15, 3}, {91 * inch, 762, 15, 4}, {120 * inch, 762, 15, 4},
		{1500, 762, 21, 3}, {1500, 49 * inch, 15, 3}, {1500, 600, 15, 2}, {300, 300, 3, 2},
	} {
		if got := timber.Hinges(c.height, c.width, c.kg); got != c.want {
			t.Errorf("%v × %v, %v kg: %d hinges, want %d", c.height, c.width, c.kg, got, c.want)
		}
	}
	for _, c := range []struct {
		thick, wide, want float64
		heavy             bool
	}{
		{1.375, 30, 3.5, false}, {1.375, 32, 3.5, false}, {1.375, 32.1, 4, false}, {1.375, 34, 4, false}, {1.375, 36.1, 5, false}, {1.75, 36, 4.5, false}, {1.75, 40, 5, false},
		{1.75, 50, 6, false}, {2.25, 42, 5, true}, {2.5, 48, 6, true}, {40 / inch, 30, 4.5, false}, {35 / inch, 30, 3.5, false},
	} {
		b := timber.ButtFor(c.thick*inch, c.wide*inch)
		if b.Inches != c.want || b.Heavy != c.heavy {
			t.Errorf("%v × %v in: %+v, want %v, heavy %v", c.thick, c.wide, b, c.want, c.heavy)
		}
		near(t, "height", b.Height, c.want*inch, 1e-9)
	}
	// Building Trades Pocketbook: 2 in thick, casing 1 7/8 in: 5 3/8 in
	near(t, "width of butt", timber.ButtWidth(2*inch, 1.875*inch), 5.375*inch, 1e-9)
	// half the knuckle each less half the gap: 8 mm folded, 2 mm wanted
	near(t, "gains", timber.Gains(8, 2), 3, 0)
	near(t, "no gap: half the knuckle", timber.Gains(7, 0), 3.5, 0)
}

func TestPlaces(t *testing.T) {
	p := piece()
	p.Anatomy.Joints.Kind = "" // joints not known: practice stands
	l := &p.Door.Leaf
	for _, c := range []struct {
		r         timber.Region
		top, foot float64
	}{{timber.UK, 150, 230}, {timber.AU, 150, 200}, {timber.US, 152, 254}} {
		got := timber.Places(l, &p.Anatomy, c.r, 3, 100, 30)
		near(t, "top", 1981-(got[0].At+50), c.top, 1e-9)
		near(t, "foot", got[2].At-50, c.foot, 1e-9)
		near(t, "middle", got[1].At, (got[0].At+got[2].At)/2, 1e-9)
	}
	// with through tenons, every hinge keeps off tenons and wedges
	p = piece()
	a := &p.Anatomy
	for _, r := range []timber.Region{timber.UK, timber.AU, timber.NZ, timber.US} {
		for n := 2; n <= 4; n++ {
			got := timber.Places(l, a, r, n, 100, 30)
			for i, place := range got {
				if !place.Clear {
					t.Errorf("%s, %d hinges: no place for %d", r, n, i)
				}
				for k := range a.Rails {
					lo, hi := a.Tenon(k)
					if place.At+50 > lo-a.Joints.Wedge+1e-6 && place.At-50 < hi+a.Joints.Wedge-1e-6 {
						t.Errorf("%s, hinge %d of %d at %v meets the tenon %v to %v", r, i, n, place.At, lo, hi)
					}
				}
				if i > 0 && place.At > got[i-1].At-100+1e-6 {
					t.Errorf("%s: hinges %v and %v lie on each other", r, got[i-1].At, place.At)
				}
			}
		}
	}
	// the third hinge wants the tenon of a lock rail so high, and is moved off it
	a.Rails[1].From, a.Rails[1].To = 900, 1080
	if got := timber.Places(l, a, timber.UK, 3, 100, 30)[1]; got.At == got.Want {
		t.Errorf("the middle hinge stays at %v, in the lock rail's tenon", got.At)
	}
	// a cupboard's are a seventh from its ends (a consumer page)
	small := door.Rectangle(400, 700, 20)
	b := door.Ordinary(door.Flush, 400, 700)
	near(t, "cupboard", 700-(timber.Places(&small, &b, timber.UK, 2, 50, 15)[0].At+25), 100, 1e-9)
}

func TestReseat(t *testing.T) {
	old := timber.Seat{At: 1000, Height: 75, Across: 30, Depth: 2.5}
	if got := timber.ReseatOf(old, old); got != (timber.Reseat{}) {
		t.Errorf("the same hinge: %+v", got)
	}
	// a larger one over it: nothing to piece
	got := timber.ReseatOf(old, timber.Seat{At: 1000, Height: 100, Across: 36, Depth: 3})
	near(t, "cut", got.Cut, 100*36*3-75*30*2.5, 1e-9)
	near(t, "pieced", got.Piece+got.Above+got.Below+got.Back+got.Pack, 0, 0)
	// a smaller, shallower one higher up
	got = timber.ReseatOf(old, timber.Seat{At: 1010, Height: 65, Across: 25, Depth: 2})
	near(t, "below", got.Below, 1010-32.5-(1000-37.5), 1e-9)
	near(t, "above", got.Above, 0, 0)
	near(t, "back", got.Back, 5, 0)
	near(t, "pack", got.Pack, 0.5, 1e-12)
	near(t, "cut", got.Cut, 65*25*2-60*25*2, 1e-9)
	near(t, "piece", got.Piece, (75*30-60*25)*2.5, 1e-9)
}

// The model's cases 1 and 2: foot at 6; a gain 1 mm deeper lifts the closing edge by 792/1500.
func TestUnder(t *testing.T) {
	d := door.Door{Leaf: door.Rectangle(792, 1990, 40), Frame: door.Square(800, 2000, 42, 12), Floor: door.FlatFloor(0),
		Hinges: []door.Hinge{{JambHeight: 1756, LeafHeight: 1750, LeafGain: 2, JambGain: 2, Closed: 8}, {JambHeight: 256, LeafHeight: 250, LeafGain: 2, JambGain: 2, Closed: 8}}}
	h, c := timber.Under(&d)
	near(t, "hanging", h, 6, 1e-9)
	near(t, "closing", c, 6, 1e-9)
	d.Hinges[0].LeafGain = 3
	h, c = timber.Under(&d)
	near(t, "hanging, tilted", h, 6, 1e-9)
	near(t, "closing, tilted", c, 6+792.0/1500, 1e-9)
	d.Floor = door.FlatFloor(2)
	h, _ = timber.Under(&d)
	near(t, "a higher floor", h, 4, 1e-9)
	near(t, "mark", timber.Mark(1750, 0, 6), 1756, 0)
}
