package judge

import (
	"math"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fit"
)

// Departure is one way in which a door departs from square, plumb, flat and the
// size wanted.
type Departure string

// The departures of the frame, of the leaf and of the hanging.
const (
	HingeJambLeans  Departure = "hinge jamb leans"
	HingeJambBowed  Departure = "hinge jamb bowed"
	LatchJambLeans  Departure = "latch jamb leans"
	LatchJambBowed  Departure = "latch jamb bowed"
	HeadSlopes      Departure = "head slopes"
	HeadBowed       Departure = "head bowed"
	FrameInWind     Departure = "frame in wind"
	StopsOut        Departure = "stops out of line"
	FloorSlopes     Departure = "floor slopes"
	FloorRises      Departure = "floor rises under the swing"
	HangingBowed    Departure = "hanging edge bowed"
	ClosingTapered  Departure = "leaf tapered"
	ClosingBowed    Departure = "closing edge bowed"
	TopSlopes       Departure = "top out of square"
	TopBowed        Departure = "top bowed"
	BottomSlopes    Departure = "bottom out of square"
	BottomBowed     Departure = "bottom bowed"
	LeafInWind      Departure = "leaf in wind"
	LeafBowed       Departure = "leaf bowed"
	ClosingSquare   Departure = "closing edge not bevelled"
	ClosingBevelled Departure = "closing edge bevelled"
	LeafWide        Departure = "leaf width"
	LeafTall        Departure = "leaf height"
	HungHigh        Departure = "height on the hinges"
	GainsUneven     Departure = "top hinge against bottom hinge"
	GainsAll        Departure = "all gains"
	PinsUneven      Departure = "pins not plumb over each other"
	SetUneven       Departure = "hinges set unevenly out of the frame"
	SetAll          Departure = "hinges set out of the frame"
)

// departure is a departure found in a door: how much of it there is (mm, with
// its sign; degrees for a bevel) and the door with it taken away. Both get a
// clone to work on.
type departure struct {
	name   Departure
	amount float64
	take   func(*door.Door)
}

// slight is the least departure, mm, that is taken for a cause.
const slight = 0.2

// departures lists what departs in the door, as hung in f.
func departures(f *fit.Fit, d *door.Door, w *Wanted) []departure {
	var all []departure
	add := func(name Departure, amount float64, take func(*door.Door)) {
		if math.Abs(amount) >= slight {
			all = append(all, departure{name, amount, take})
		}
	}
	frameDepartures(d, add)
	leafDepartures(d, add)
	hangingDepartures(f, d, w, add)
	return all
}

type adder func(Departure, float64, func(*door.Door))

func frameDepartures(d *door.Door, add adder) {
	fr := &d.Frame
	hingeHead, latchHead := fr.HeadCorners()
	up := geom.Interval{Hi: (hingeHead.Y + latchHead.Y) / 2}
	across := geom.Interval{Lo: hingeHead.X, Hi: latchHead.X}

	add(HingeJambLeans, rise(fr.HingeJamb, up), func(d *door.Door) {
		level(&d.Frame.HingeJamb, up, up.Lo)
	})
	add(HingeJambBowed, bow(fr.HingeJamb, up), func(d *door.Door) {
		straighten(&d.Frame.HingeJamb, up)
	})
	add(LatchJambLeans, rise(fr.LatchJamb, up), func(d *door.Door) {
		level(&d.Frame.LatchJamb, up, up.Lo)
	})
	add(LatchJambBowed, bow(fr.LatchJamb, up), func(d *door.Door) {
		straighten(&d.Frame.LatchJamb, up)
	})
	add(HeadSlopes, rise(fr.Head, across), func(d *door.Door) {
		level(&d.Frame.Head, across, across.Lo)
	})
	add(HeadBowed, bow(fr.Head, across), func(d *door.Door) {
		straighten(&d.Frame.Head, across)
	})

	// The stops follow the front edges where they were planted by them.
	add(FrameInWind, rise(fr.LatchFront, up)-rise(fr.HingeFront, up), func(d *door.Door) {
		fr := &d.Frame
		for _, p := range []struct{ front, stop *geom.Profile }{
			{&fr.HingeFront, &fr.HingeStop}, {&fr.LatchFront, &fr.LatchStop}, {&fr.HeadFront, &fr.HeadStop},
		} {
			*p.stop = less(*p.stop, *p.front)
			*p.front = geom.Level(0)
		}
	})
	uneven := func(stop, front geom.Profile, over geom.Interval) float64 {
		p := less(stop, front)
		least, most := spread(p, over)
		return most - least
	}
	add(StopsOut, max(
		uneven(fr.HingeStop, fr.HingeFront, up),
		uneven(fr.LatchStop, fr.LatchFront, up),
		uneven(fr.HeadStop, fr.HeadFront, across)),
		func(d *door.Door) {
			fr := &d.Frame
			deep := less(fr.LatchStop, fr.LatchFront).At(d.Latch.Height)
			fr.PlantStops(-deep)
		})

	if fl := &d.Floor; len(fl.Heights) > 0 && len(fl.Heights[0]) > 0 {
		row := fl.Heights[0]
		add(FloorSlopes, row[len(row)-1]-row[0], func(d *door.Door) {
			rows := d.Floor.Heights
			for j := len(rows[0]) - 1; j >= 0; j-- {
				drop := rows[0][j] - rows[0][0]
				for i := range rows {
					rows[i][j] -= drop
				}
			}
		})
		var most float64
		for _, r := range fl.Heights {
			for j := range r {
				if u := r[j] - row[j]; math.Abs(u) > math.Abs(most) {
					most = u
				}
			}
		}
		add(FloorRises, most, func(d *door.Door) {
			d.Floor.Heights = d.Floor.Heights[:1]
			d.Floor.Angles = d.Floor.Angles[:1]
		})
	}
}

func leafDepartures(d *door.Door, add adder) {
	l := &d.Leaf
	c := l.Corners(0)
	hang := geom.Interval{Lo: c.HangingFoot.Y, Hi: c.HangingHead.Y}
	close := geom.Interval{Lo: c.ClosingFoot.Y, Hi: c.ClosingHead.Y}
	top := geom.Interval{Lo: c.HangingHead.X, Hi: c.ClosingHead.X}
	foot := geom.Interval{Lo: c.HangingFoot.X, Hi: c.ClosingFoot.X}
	plumb := l.Hanging.Chord(hang).C1 // the hanging edge is what square is taken from

	add(HangingBowed, bow(l.Hanging, hang), func(d *door.Door) { straighten(&d.Leaf.Hanging, hang) })
	add(ClosingTapered, rise(l.Closing, close)-plumb*close.Length(), func(d *door.Door) {
		tilt(&d.Leaf.Closing, plumb-l.Closing.Chord(close).C1, close.Mid())
	})
	add(ClosingBowed, bow(l.Closing, close), func(d *door.Door) { straighten(&d.Leaf.Closing, close) })
	add(TopSlopes, rise(l.Top, top)+plumb*top.Length(), func(d *door.Door) {
		tilt(&d.Leaf.Top, -plumb-l.Top.Chord(top).C1, top.Lo)
	})
	add(TopBowed, bow(l.Top, top), func(d *door.Door) { straighten(&d.Leaf.Top, top) })
	add(BottomSlopes, rise(l.Bottom, foot)+plumb*foot.Length(), func(d *door.Door) {
		tilt(&d.Leaf.Bottom, -plumb-l.Bottom.Chord(foot).C1, foot.Lo)
	})
	add(BottomBowed, bow(l.Bottom, foot), func(d *door.Door) { straighten(&d.Leaf.Bottom, foot) })

	add(LeafInWind, rise(l.ClosingFace, hang)-rise(l.HangingFace, hang), func(d *door.Door) {
		level(&d.Leaf.HangingFace, hang, hang.Mid())
		level(&d.Leaf.ClosingFace, hang, d.Latch.Height)
	})
	bowed := bow(l.ClosingFace, hang)
	if b := bow(l.HangingFace, hang); math.Abs(b) > math.Abs(bowed) {
		bowed = b
	}
	add(LeafBowed, bowed, func(d *door.Door) {
		straighten(&d.Leaf.HangingFace, hang)
		straighten(&d.Leaf.ClosingFace, hang)
	})
	if l.ClosingBevel < bevelWanted {
		add(ClosingSquare, (bevelWanted - l.ClosingBevel).Degrees(), func(d *door.Door) {
			d.Leaf.ClosingBevel = bevelWanted
		})
	} else {
		add(ClosingBevelled, (l.ClosingBevel).Degrees(), func(d *door.Door) { d.Leaf.ClosingBevel = 0 })
	}
}

// bevelWanted is the closing edge's bevel of 1 in 16, 1/8 in. in 2 in.: 3.576°.
// Common practice; the older pocketbooks give the same and more for narrow leaves.
const bevelWanted geom.Angle = 0.062418809995957350

func hangingDepartures(f *fit.Fit, d *door.Door, w *Wanted, add adder) {
	n := len(d.Hinges) - 1
	top, foot := d.Hinges[0], d.Hinges[n]

	add(GainsUneven, top.Gap()-foot.Gap(), func(d *door.Door) {
		for i := range d.Hinges {
			d.Hinges[i].LeafGain += d.Hinges[i].Gap() - foot.Gap()
		}
	})
	mean := (top.Gap() + foot.Gap()) / 2
	deep := mean - w.Gaps[fit.HingeSide].Target
	add(GainsAll, deep, func(d *door.Door) {
		for i := range d.Hinges {
			d.Hinges[i].LeafGain += deep
		}
	})
	add(PinsUneven, fit.Pin(d, 0).Z-fit.Pin(d, n).Z, func(d *door.Door) {
		z := fit.Pin(d, n).Z
		for i := range d.Hinges {
			d.Hinges[i].Pin += z - fit.Pin(d, i).Z
		}
	})
	add(SetUneven, top.Proud-foot.Proud, func(d *door.Door) {
		for i := range d.Hinges {
			d.Hinges[i].Proud = (top.Proud + foot.Proud) / 2
		}
	})
	add(SetAll, (top.Proud+foot.Proud)/2, func(d *door.Door) {
		out := (top.Proud + foot.Proud) / 2
		for i := range d.Hinges {
			d.Hinges[i].Proud -= out
		}
	})

	// Size: what the leaf has more than the opening less the gaps wanted, at the
	// middle of each edge.
	wide := w.Gaps[fit.LatchSide].Target - middle(f.Gaps[fit.LatchSide].Curve)
	add(LeafWide, wide, func(d *door.Door) { d.Leaf.Closing = d.Leaf.Closing.Shift(-wide) })
	head := middle(f.Gaps[fit.HeadSide].Curve) - w.Gaps[fit.HeadSide].Target
	floor := middle(f.Gaps[fit.FloorSide].Curve) - w.Gaps[fit.FloorSide].Target
	add(LeafTall, -(head + floor), func(d *door.Door) { d.Leaf.Top = d.Leaf.Top.Shift(head + floor) })
	high := (floor - head) / 2
	if head < 0 != (floor < 0) { // too little at one end and too much at the other
		add(HungHigh, high, func(d *door.Door) {
			for i := range d.Hinges {
				d.Hinges[i].LeafHeight += high
			}
		})
	}
}

// middle is the gap at the middle of the edge as its ends have it: what a bow
// between them adds is not the leaf's size.
func middle(c fit.Curve) float64 {
	r := c.Range()
	return (c.At(r.Lo) + c.At(r.Hi)) / 2
}

// rise is how much a profile's chord rises over an interval.
func rise(p geom.Profile, over geom.Interval) float64 { return p.At(over.Hi) - p.At(over.Lo) }

// bow is how far a profile departs from its chord.
func bow(p geom.Profile, over geom.Interval) float64 {
	b, _ := p.Bow(over)
	return b
}

// spread is the least and greatest value over an interval.
func spread(p geom.Profile, over geom.Interval) (least, most float64) {
	least = min(p.At(over.Lo), p.At(over.Hi))
	most = max(p.At(over.Lo), p.At(over.Hi))
	for i := range p.Knots() {
		if over.Contains(p.Knot(i)) {
			v := p.At(p.Knot(i))
			least, most = min(least, v), max(most, v)
		}
	}
	return least, most
}

// straighten lays a profile on its chord.
func straighten(p *geom.Profile, over geom.Interval) {
	*p = geom.Through(over.Lo, p.At(over.Lo), over.Hi, p.At(over.Hi))
}

// tilt turns a profile by a slope about the place s.
func tilt(p *geom.Profile, slope, s float64) {
	q := p.Shift(0)
	if len(q) == 1 {
		q = geom.Through(s, q[0].Value, s+1, q[0].Value)
	}
	for i := range q {
		q[i].Value += slope * (q[i].At - s)
	}
	*p = q
}

// level takes a profile's slope away about the place s and keeps its bow.
func level(p *geom.Profile, over geom.Interval, s float64) {
	tilt(p, -p.Chord(over).C1, s)
}

// less gives p − q, with the bends of both.
func less(p, q geom.Profile) geom.Profile {
	neg := make(geom.Profile, len(q))
	for i, s := range q {
		neg[i] = geom.Station{At: s.At, Value: -s.Value}
	}
	return p.Plus(neg)
}
