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
	FrameLeans      Departure = "frame leans out of the wall"
	HingeJambWinds  Departure = "frame in wind by its hinge jamb"
	LatchJambWinds  Departure = "frame in wind by its latch jamb"
	HingeFrontBowed Departure = "hinge jamb's front edge bowed"
	LatchFrontBowed Departure = "latch jamb's front edge bowed"
	StopsOut        Departure = "stops out of line"
	StopsNear       Departure = "stops too near for the leaf's thickness"
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
	LeafBowed       Departure = "leaf bowed" // both stiles much alike
	HangingStileBow Departure = "hanging stile bowed"
	ClosingStileBow Departure = "closing stile bowed"
	StripBack       Departure = "strip behind the leaf's stop face"
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

// front is a front edge of the frame and the stop that was planted by it.
type front struct {
	edge, stop *geom.Profile
	upright    bool
}

func fronts(fr *door.Frame) [3]front {
	return [3]front{
		{&fr.HingeFront, &fr.HingeStop, true},
		{&fr.LatchFront, &fr.LatchStop, true},
		{&fr.HeadFront, &fr.HeadStop, false},
	}
}

// follow changes the front edge and takes the stop along.
func (f front) follow(change func(geom.Profile) geom.Profile) {
	deep := less(*f.stop, *f.edge)
	*f.edge = change(f.edge.Shift(0))
	*f.stop = f.edge.Plus(deep)
}

type adder func(Departure, float64, func(*door.Door))

func frameDepartures(d *door.Door, add adder) {
	fr := &d.Frame
	hingeHead, latchHead := fr.HeadCorners()
	up := geom.Interval{Hi: (hingeHead.Y + latchHead.Y) / 2}
	across := geom.Interval{Lo: hingeHead.X, Hi: latchHead.X}

	for _, stay := range [2]float64{up.Lo, up.Hi} {
		add(HingeJambLeans, rise(fr.HingeJamb, up), func(d *door.Door) {
			level(&d.Frame.HingeJamb, up, stay)
		})
		add(LatchJambLeans, rise(fr.LatchJamb, up), func(d *door.Door) {
			level(&d.Frame.LatchJamb, up, stay)
		})
	}
	add(HingeJambBowed, bow(fr.HingeJamb, up), func(d *door.Door) {
		straighten(&d.Frame.HingeJamb, up)
	})
	add(LatchJambBowed, bow(fr.LatchJamb, up), func(d *door.Door) {
		straighten(&d.Frame.LatchJamb, up)
	})
	for _, stay := range [2]float64{across.Lo, across.Hi} {
		add(HeadSlopes, rise(fr.Head, across), func(d *door.Door) {
			level(&d.Frame.Head, across, stay)
		})
	}
	add(HeadBowed, bow(fr.Head, across), func(d *door.Door) {
		straighten(&d.Frame.Head, across)
	})

	// The stops follow the front edges where they were planted by them. A frame in
	// wind is told by the jamb that departs from plumb.
	hingeOut, latchOut := rise(fr.HingeFront, up), rise(fr.LatchFront, up)
	if (hingeOut > 0) == (latchOut > 0) {
		both := math.Copysign(min(math.Abs(hingeOut), math.Abs(latchOut)), hingeOut)
		add(FrameLeans, both, func(d *door.Door) {
			for _, p := range fronts(&d.Frame) {
				if p.upright {
					p.follow(func(q geom.Profile) geom.Profile { tilt(&q, -both/up.Length(), up.Lo); return q })
				} else {
					p.follow(func(q geom.Profile) geom.Profile { return q.Shift(-both) })
				}
			}
		})
		hingeOut, latchOut = hingeOut-both, latchOut-both
	}
	flat := func(d *door.Door) {
		for _, p := range fronts(&d.Frame) {
			p.follow(func(geom.Profile) geom.Profile { return geom.Level(0) })
		}
	}
	add(HingeJambWinds, hingeOut, flat)
	add(LatchJambWinds, latchOut, flat)
	bowed := func(name Departure, front geom.Profile, side int) {
		add(name, bow(front, up), func(d *door.Door) {
			fronts(&d.Frame)[side].follow(func(q geom.Profile) geom.Profile { straighten(&q, up); return q })
		})
	}
	bowed(HingeFrontBowed, fr.HingeFront, 0)
	bowed(LatchFrontBowed, fr.LatchFront, 1)
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
			deep, _ := spread(less(fr.LatchStop, fr.LatchFront), up)
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
		for _, sign := range [2]float64{1, -1} {
			var most float64
			for _, r := range fl.Heights {
				for j := range r {
					most = max(most, sign*(r[j]-row[j]))
				}
			}
			add(FloorRises, sign*most, func(d *door.Door) {
				for _, r := range d.Floor.Heights[1:] {
					for j := range r {
						if flat := d.Floor.Heights[0][j]; sign*(r[j]-flat) > 0 {
							r[j] = flat
						}
					}
				}
			})
		}
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

	for e := range l.Sections { // a strip of stock thinner than the leaf
		add(StripBack, l.Sections[e].StopBack, func(d *door.Door) { d.Leaf.Sections[e].StopBack = 0 })
	}
	add(LeafInWind, rise(l.ClosingFace, hang)-rise(l.HangingFace, hang), func(d *door.Door) {
		level(&d.Leaf.HangingFace, hang, hang.Mid())
		level(&d.Leaf.ClosingFace, hang, d.Latch.Height)
	})
	// Stiles that bow each their own way are told apart.
	const alike = 2.0 / 3
	one, other := bow(l.HangingFace, hang), bow(l.ClosingFace, hang)
	if one*other > 0 && min(math.Abs(one), math.Abs(other)) >= alike*max(math.Abs(one), math.Abs(other)) {
		add(LeafBowed, (one+other)/2, func(d *door.Door) {
			straighten(&d.Leaf.HangingFace, hang)
			straighten(&d.Leaf.ClosingFace, hang)
		})
		return
	}
	add(HangingStileBow, one, func(d *door.Door) { straighten(&d.Leaf.HangingFace, hang) })
	add(ClosingStileBow, other, func(d *door.Door) { straighten(&d.Leaf.ClosingFace, hang) })
}

// steepest is the greatest bevel worth advising: 1/4 in. in 2 in., 7.125°, which
// the Building Trades Pocketbook gives for narrow leaves.
const steepest = 7.125016348901798 * geom.Degree

func hangingDepartures(f *fit.Fit, d *door.Door, w *Wanted, add adder) {
	n := len(d.Hinges) - 1
	top, foot := d.Hinges[0], d.Hinges[n]

	for _, right := range [2]float64{foot.Gap(), top.Gap()} {
		add(GainsUneven, top.Gap()-foot.Gap(), func(d *door.Door) {
			for i := range d.Hinges {
				d.Hinges[i].LeafGain += d.Hinges[i].Gap() - right
			}
		})
	}
	mean := (top.Gap() + foot.Gap()) / 2
	deep := mean - w.Gaps[fit.HingeSide].Target
	choice := top.UncutJamb || top.UncutLeaf // of whoever hangs it, and no departure
	if choice {
		deep = 0
	}
	add(GainsAll, deep, func(d *door.Door) {
		for i := range d.Hinges {
			d.Hinges[i].LeafGain += deep
		}
	})
	add(PinsUneven, top.Pin-foot.Pin, func(d *door.Door) {
		for i := range d.Hinges {
			d.Hinges[i].Pin = foot.Pin
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

	// The bevel that would let the closing edge pass with the clearance wanted: what
	// is missing comes off the stop face's arris.
	if missing := w.Swing.Least - f.Swing[fit.LatchSide].Least; missing > 0 {
		needed := geom.Angle(math.Atan(d.Leaf.ClosingBevel.Tan() + missing/d.Leaf.Thickness))
		if needed <= steepest {
			add(ClosingSquare, needed.Degrees(), func(d *door.Door) { d.Leaf.ClosingBevel = needed })
		}
	}
	if bevel := d.Leaf.ClosingBevel; bevel > 0 {
		add(ClosingBevelled, bevel.Degrees(), func(d *door.Door) { d.Leaf.ClosingBevel = 0 })
	}

	// A leaf latched where it should be stands this far off its stop.
	fr := &d.Frame
	off := fr.LatchFront.At(d.Latch.Height) + d.Latch.Proud - d.Leaf.Thickness - fr.LatchStop.At(d.Latch.Height)
	near := w.Stop.Target - off
	add(StopsNear, near, func(d *door.Door) {
		fr := &d.Frame
		fr.HingeStop, fr.LatchStop, fr.HeadStop = fr.HingeStop.Shift(-near), fr.LatchStop.Shift(-near), fr.HeadStop.Shift(-near)
	})

	// Size: what the leaf has more than the opening less the gaps wanted, at the
	// middle of each edge.
	wide := w.Gaps[fit.LatchSide].Target - middle(f.Gaps[fit.LatchSide].Curve) +
		w.Gaps[fit.HingeSide].Target - middle(f.Gaps[fit.HingeSide].Curve)
	add(LeafWide, wide, func(d *door.Door) { d.Leaf.Closing = d.Leaf.Closing.Shift(-wide) })
	head := middle(f.Gaps[fit.HeadSide].Curve) - w.Gaps[fit.HeadSide].Target
	floor := middle(f.Gaps[fit.FloorSide].Curve) - w.Gaps[fit.FloorSide].Target
	// What one end has too much and the other too little is the hanging's, not the leaf's.
	high := 0.0
	if (head < 0) != (floor < 0) && !choice {
		high = math.Copysign(min(math.Abs(head), math.Abs(floor)), floor)
	}
	add(HungHigh, high, func(d *door.Door) {
		for i := range d.Hinges {
			d.Hinges[i].LeafHeight += high
		}
	})
	head, floor = head+high, floor-high
	add(LeafTall, -(head + floor), func(d *door.Door) {
		d.Leaf.Top, d.Leaf.Bottom = d.Leaf.Top.Shift(head), d.Leaf.Bottom.Shift(-floor)
	})
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
