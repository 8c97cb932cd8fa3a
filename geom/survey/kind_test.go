package survey

import (
	"math"
	"testing"

	"leafwright/geom"
	"leafwright/geom/caseone"
	"leafwright/geom/door"
)

// square is a square leaf in a square opening, on two hinges: case 1 of the
// model's hand-checkable cases, with a level floor measured at two radii.
func square() door.Door {
	d := caseone.Hinged(75)
	d.Floor = door.Floor{Radii: []float64{0, 800}, Angles: []geom.Angle{0, 90 * geom.Degree}, Heights: [][]float64{{0, 0}, {0, 8}}}
	return d
}

// What each instrument reads on a square door with one thing about it, by plain
// geometry.
func TestWhatIsRead(t *testing.T) {
	for _, row := range []struct {
		situation string
		spoil     func(*door.Door)
		reading   Reading
		want      float64
	}{
		{"width where the latch jamb leans away", func(d *door.Door) { d.Frame.LatchJamb = geom.Through(0, 800, 2000, 804) },
			Reading{Kind: OpeningWidth, At: 500}, 801},
		{"height over a floor that falls", func(d *door.Door) { d.Floor.Heights[0] = []float64{0, -8} },
			Reading{Kind: OpeningHeight, At: 400}, 2004},
		{"diagonal of 800 by 2000", nil, Reading{Kind: OpeningDiagonal, Side: Rising}, math.Sqrt(800*800 + 2000*2000)},
		{"other diagonal of an opening leaning 10", func(d *door.Door) {
			d.Frame.HingeJamb, d.Frame.LatchJamb = geom.Through(0, 0, 2000, 10), geom.Through(0, 800, 2000, 810)
		}, Reading{Kind: OpeningDiagonal, Side: Falling}, math.Sqrt(790*790 + 2000*2000)},
		{"jamb leaning to the latch side", func(d *door.Door) { d.Frame.HingeJamb = geom.Through(0, 0, 2000, 4) },
			Reading{Kind: JambPlumb, Side: Hinge, From: 500, To: 1500}, 2},
		{"jamb leaning into the room", func(d *door.Door) { d.Frame.LatchFront = geom.Through(0, 0, 2000, 4) },
			Reading{Kind: JambPlumbAcross, Side: Latch, From: 500, To: 1500}, 2},
		{"hollow hinge jamb", func(d *door.Door) { d.Frame.HingeJamb = geom.Through(0, 0, 1000, -3, 2000, 0) },
			Reading{Kind: FrameBow, Side: Hinge, From: 0, To: 2000, At: 1000}, 3},
		{"hollow latch jamb", func(d *door.Door) { d.Frame.LatchJamb = geom.Through(0, 800, 1000, 803, 2000, 800) },
			Reading{Kind: FrameBow, Side: Latch, From: 0, To: 2000, At: 1000}, 3},
		{"head sagging", func(d *door.Door) { d.Frame.Head = geom.Through(0, 2000, 400, 1997, 800, 2000) },
			Reading{Kind: FrameBow, Side: Head, From: 0, To: 800, At: 400}, -3},
		{"front edge hollow", func(d *door.Door) { d.Frame.HingeFront = geom.Through(0, 0, 1000, -2, 2000, 0) },
			Reading{Kind: FrontBow, Side: Hinge, From: 0, To: 2000, At: 1000}, 2},
		{"head rising to the latch", func(d *door.Door) { d.Frame.Head = geom.Through(0, 2000, 800, 2004) },
			Reading{Kind: HeadSlope, From: 0, To: 400}, 2},
		{"floor rising under the open leaf", nil, Reading{Kind: FloorSlope, From: 0, To: 400, Angle: 90 * geom.Degree}, 4},
		{"floor half way round", nil, Reading{Kind: FloorHeight, At: 800, Angle: 45 * geom.Degree}, 4},
		{"rebate", nil, Reading{Kind: RebateDepth, Side: Head, At: 400}, 42},
		{"stop", nil, Reading{Kind: StopWidth}, 12},
		{"strings over a frame in wind", func(d *door.Door) { d.Frame.LatchFront = geom.Through(0, 0, 2000, 6) },
			Reading{Kind: CrossStrings}, 3},
		{"sticks over a frame in wind", func(d *door.Door) { d.Frame.LatchFront = geom.Through(0, 0, 2000, 6) },
			Reading{Kind: FrameWind, From: 500, To: 1500}, 3},
		{"width of a leaf that tapers", func(d *door.Door) { d.Leaf.Closing = geom.Through(0, 792, 1990, 790) },
			Reading{Kind: LeafWidth, At: 995}, 791},
		{"height of a leaf cut short", func(d *door.Door) { d.Leaf.Top = geom.Through(0, 1990, 792, 1982) },
			Reading{Kind: LeafHeight, At: 396}, 1986},
		{"diagonal of a leaf", nil, Reading{Kind: LeafDiagonal, Side: Falling}, math.Sqrt(792*792 + 1990*1990)},
		{"thickness", nil, Reading{Kind: LeafThickness}, 40},
		// 1.5 mm at 500 mm is 1.5·762/500 = 2.286 mm across 762 mm.
		{"corner that is more than square", func(d *door.Door) { d.Leaf.Top = geom.Through(0, 1990, 762, 1990+2.286) },
			Reading{Kind: LeafSquare, Side: HingeHead}, 1.5},
		{"the corner across the same top", func(d *door.Door) { d.Leaf.Top = geom.Through(0, 1990, 762, 1990+2.286) },
			Reading{Kind: LeafSquare, Side: LatchHead}, -1.5},
		{"corner at the foot of a closing edge running out", func(d *door.Door) { d.Leaf.Closing = geom.Through(0, 792, 500, 794, 1990, 794) },
			Reading{Kind: LeafSquare, Side: LatchFoot}, 2},
		{"hollow hanging edge", func(d *door.Door) { d.Leaf.Hanging = geom.Through(0, 0, 1000, 2, 1990, 0) },
			Reading{Kind: LeafBow, Side: Hinge, From: 0, To: 1990, At: 1000}, 2},
		{"round closing edge", func(d *door.Door) { d.Leaf.Closing = geom.Through(0, 792, 1000, 794, 1990, 792) },
			Reading{Kind: LeafBow, Side: Latch, From: 0, To: 1990, At: 1000}, -2},
		{"hollow top", func(d *door.Door) { d.Leaf.Top = geom.Through(0, 1990, 400, 1988, 792, 1990) },
			Reading{Kind: LeafBow, Side: Head, From: 0, To: 792, At: 400}, 2},
		{"hollow bottom", func(d *door.Door) { d.Leaf.Bottom = geom.Through(0, 0, 400, 2, 792, 0) },
			Reading{Kind: LeafBow, Side: Floor, From: 0, To: 792, At: 400}, 2},
		{"leaf in wind", func(d *door.Door) { d.Leaf.ClosingFace = geom.Through(0, 0, 1990, 8) },
			Reading{Kind: LeafWind, From: 0, To: 995}, 4},
		{"stile hollow on the knuckle face", func(d *door.Door) { d.Leaf.ClosingFace = geom.Through(0, 0, 1000, -2, 1990, 0) },
			Reading{Kind: StileBow, Side: Latch, From: 0, To: 1990, At: 1000}, 2},
		// 1/8 in 2: the stop face of a leaf 40 thick stands back 2.5.
		{"bevelled closing edge", func(d *door.Door) { d.Leaf.ClosingBevel = geom.Turn{Cos: 16, Sin: 1}.Angle() },
			Reading{Kind: LeafBevel, Side: Latch}, 2.5},
		{"hinge on the leaf", nil, Reading{Kind: HingeOnLeaf, Hinge: 1}, 250},
		{"hinge below the leaf's top", nil, Reading{Kind: HingeFromTop}, 240},
		{"hinge on the jamb", nil, Reading{Kind: HingeOnJamb}, 1756},
		{"hinge below the head", nil, Reading{Kind: HingeFromHead, Hinge: 1}, 1744},
		{"gain in the leaf", nil, Reading{Kind: LeafGain}, 2},
		{"gain in the jamb", nil, Reading{Kind: JambGain}, 2},
		{"packer in the leaf", func(d *door.Door) { d.Hinges[1].LeafPacker = 1 }, Reading{Kind: LeafPacker, Hinge: 1}, 1},
		{"packer in the jamb", func(d *door.Door) { d.Hinges[1].JambPacker = 1 }, Reading{Kind: JambPacker, Hinge: 1}, 1},
		{"hinge shut", nil, Reading{Kind: HingeClosed}, 8},
		{"pin", nil, Reading{Kind: HingePin}, 5},
		{"leaf proud", func(d *door.Door) { d.Hinges[0].Proud = 1 }, Reading{Kind: HingeProud}, 1},
		{"plates", nil, Reading{Kind: HingePlate}, 75},
		{"latch", nil, Reading{Kind: LatchHeight}, 1000},
		{"latch proud", func(d *door.Door) { d.Latch.Proud = -1 }, Reading{Kind: LatchProud}, -1},
		// Case 1: 4 at the jambs, 4 at the head, 6 at the foot; 42 less 40 at the stops.
		{"feeler at the hinge side", nil, Reading{Kind: GapRead, Side: Hinge, At: 1000}, 4},
		{"feeler at the latch side", nil, Reading{Kind: GapRead, Side: Latch, At: 1000}, 4},
		{"feeler at the head", nil, Reading{Kind: GapRead, Side: Head, At: 400}, 4},
		{"feeler at the foot", nil, Reading{Kind: GapRead, Side: Floor, At: 400}, 6},
		{"feeler at the stop", nil, Reading{Kind: StopGap, Side: Latch, At: 1000}, 2},
		{"where it rubs", func(d *door.Door) { d.Frame.LatchJamb = geom.Through(0, 796, 2000, 796) },
			Reading{Kind: Rub, Side: Latch, At: 1000}, 0},
	} {
		t.Run(row.situation, func(t *testing.T) {
			d := square()
			if row.spoil != nil {
				row.spoil(&d)
			}
			if f := d.Check(); len(f) > 0 {
				t.Fatal(f)
			}
			if got := Expect(&d, row.reading); math.Abs(got-row.want) > 2e-4 {
				t.Errorf("reads %.5f, want %.5f", got, row.want)
			}
		})
	}
}

// Every kind has a row above it can be told by, and all a card needs to ask.
func TestKindsAreWhole(t *testing.T) {
	seen := map[Kind]bool{}
	for _, s := range Kinds {
		if seen[s.Kind] {
			t.Errorf("%s stands in the table twice", s.Kind)
		}
		seen[s.Kind] = true
		member := s.Kind == StileWidth || s.Kind == RailHeight || s.Kind == RailWidth
		if s.Asks == "" || (s.observe == nil) != member || s.Place == (door.Range{}) {
			t.Errorf("%s: %+v", s.Kind, s)
		}
		if (s.Needs&NeedSide != 0) != (len(s.Sides) > 0) {
			t.Errorf("%s: sides %v", s.Kind, s.Sides)
		}
		if _, known := instruments[s.Instrument]; !known {
			t.Errorf("%s: instrument %q", s.Kind, s.Instrument)
		}
		if both := s.Allowed.Lo < 0 && s.Allowed.Hi > 0; both && s.Sign == "" && !s.hung {
			switch s.Kind {
			case HingeOnJamb, HingeOnLeaf, HingeFromHead, HingeFromTop, LatchHeight, HingePin, LeafBevel: // hardly ever below nought
			default:
				t.Errorf("%s may have either sign and does not say which is which", s.Kind)
			}
		}
	}
	if len(Instruments) != len(instruments) {
		t.Errorf("%d instruments named, %d known", len(Instruments), len(instruments))
	}
	for _, i := range Instruments {
		if _, known := instruments[i]; !known {
			t.Errorf("instrument %q is not known", i)
		}
	}
	if s := SpecOf("a guess"); s != nil {
		t.Errorf("a kind nobody knows: %+v", s)
	}
}

// Tape errors by UK SI 2016/1153 Sch. 1I = Directive 2014/32/EU Annex X, from the
// hook: class II, 1981 mm 0.9 mm, 2030 mm 1.1 mm; class III, 1981 mm 1.7 mm. Over √3,
// with 0.5 for reading.
func TestSigmaByInstrument(t *testing.T) {
	for _, row := range []struct {
		situation string
		reading   Reading
		want      float64
	}{
		{"usual tape, two metres", Reading{Kind: OpeningHeight, Value: 1981}, math.Hypot(0.9/math.Sqrt(3), 0.5)},
		{"usual tape, just over", Reading{Kind: OpeningHeight, Value: 2030}, math.Hypot(1.1/math.Sqrt(3), 0.5)},
		{"coarse tape", Reading{Kind: OpeningHeight, Value: 1981, Instrument: CoarseTape}, math.Hypot(1.7/math.Sqrt(3), 0.5)},
		{"level of two metres", Reading{Kind: JambPlumb, Side: Hinge, From: 0, To: 2000, Value: 3}, math.Hypot(2/math.Sqrt(3), 0.3)},
		{"own standard deviation", Reading{Kind: OpeningHeight, Value: 1981, Sigma: 2}, 2},
		{"unknown instrument", Reading{Kind: OpeningHeight, Value: 1981, Instrument: "thumb"}, 0},
	} {
		t.Run(row.situation, func(t *testing.T) {
			if got := SigmaOf(row.reading); math.Abs(got-row.want) > 1e-12 {
				t.Errorf("%.6f, want %.6f", got, row.want)
			}
		})
	}
}

// What a kind of reading has no use for has no say in how well it is known.
func TestSigmaHeedsNoFieldItsKindHasNoUseFor(t *testing.T) {
	for _, s := range Kinds {
		if s.Needs&NeedSpan != 0 {
			continue
		}
		r := Reading{Kind: s.Kind, Value: 12}
		want := SigmaOf(r)
		r.From, r.To = 97, math.Inf(1)
		if got := SigmaOf(r); got != want {
			t.Errorf("%s: ± %v with a span written that it has no use for, %v without", s.Kind, got, want)
		}
	}
}
