package survey

import (
	"leafwright/geom"
	"leafwright/geom/door"
)

// Card gives the readings worth taking of a door, as templates with their places
// and no values, in the order a person would take them: the least set first, then
// the opening, the leaf and its hinges, then what is left. Width and height are
// the opening's, mm; a width or height of 0 takes the ordinary one.
func Card(width, height float64, hinges int) []Reading {
	if !(width > 0) {
		width = usualWidth + usualAcross
	}
	if !(height > 0) {
		height = usualHeight + usualOver
	}
	const in = 50.0 // mm from a corner: where a tape or a straightedge still finds the face
	w, h := width-usualAcross, height-usualOver
	var c []Reading
	add := func(r ...Reading) { c = append(c, r...) }
	up := func(k Kind, long float64) {
		add(Reading{Kind: k, At: in}, Reading{Kind: k, At: long / 2}, Reading{Kind: k, At: long - in})
	}
	across := func(k Kind, long float64) { add(Reading{Kind: k, At: in}, Reading{Kind: k, At: long - in}) }

	up(OpeningWidth, height)
	across(OpeningHeight, width)
	up(LeafWidth, h)
	across(LeafHeight, w)
	add(Reading{Kind: LeafThickness})
	for i := range hinges {
		add(Reading{Kind: HingeOnLeaf, Hinge: i})
	}
	for i := range hinges {
		add(Reading{Kind: HingeOnJamb, Hinge: i})
	}
	// By way of floor and foot the gap at the head is known half as well.
	add(Reading{Kind: HingeFromTop}, Reading{Kind: HingeFromHead})

	add(Reading{Kind: OpeningDiagonal, Side: Rising}, Reading{Kind: OpeningDiagonal, Side: Falling})
	for _, s := range jambs {
		add(Reading{Kind: JambPlumb, Side: s, From: in, To: height - in})
	}
	for _, s := range jambs {
		add(Reading{Kind: FrameBow, Side: s, From: in, To: height - in, At: height / 2})
	}
	add(Reading{Kind: HeadSlope, From: in, To: width - in})
	add(Reading{Kind: FloorSlope, From: in, To: width - in})
	for _, s := range jambs {
		add(Reading{Kind: JambPlumbAcross, Side: s, From: in, To: height - in})
	}
	add(Reading{Kind: CrossStrings}, Reading{Kind: FrameWind, From: in, To: height - in})
	for _, s := range jambs {
		add(Reading{Kind: FrontBow, Side: s, From: in, To: height - in, At: height / 2})
	}
	for _, s := range jambs {
		add(Reading{Kind: RebateDepth, Side: s, At: height / 2})
	}
	add(Reading{Kind: RebateDepth, Side: Head, At: width / 2}, Reading{Kind: StopWidth})

	add(Reading{Kind: LeafDiagonal, Side: Rising}, Reading{Kind: LeafDiagonal, Side: Falling})
	for _, s := range cornered {
		add(Reading{Kind: LeafSquare, Side: s})
	}
	for _, s := range jambs {
		add(Reading{Kind: LeafBow, Side: s, From: in, To: h - in, At: h / 2})
	}
	add(Reading{Kind: LeafWind, From: in, To: h - in})
	for _, s := range jambs {
		add(Reading{Kind: StileBow, Side: s, From: in, To: h - in, At: h / 2})
	}
	for _, s := range []Side{Latch, Hinge} {
		add(Reading{Kind: LeafBevel, Side: s})
	}

	for i := range hinges {
		for _, k := range []Kind{LeafGain, JambGain, HingeClosed, HingePin, HingeProud} {
			add(Reading{Kind: k, Hinge: i})
		}
	}
	add(Reading{Kind: LatchHeight}, Reading{Kind: LatchProud})
	for _, a := range []geom.Angle{45 * geom.Degree, 90 * geom.Degree} {
		add(Reading{Kind: FloorHeight, At: width / 2, Angle: a}, Reading{Kind: FloorHeight, At: width - in, Angle: a})
	}
	return c
}

// HingeReadings gives the readings that say what is already known of hinges: one of
// each number, but for packers there are none of.
func HingeReadings(hinges []door.Hinge) []Reading {
	var out []Reading
	for i := range hinges {
		for _, s := range Kinds {
			f, ok := fieldRead[s.Kind]
			if !ok {
				continue
			}
			v := *fieldOf(&hinges[i], f)
			if packer := f == fieldLeafPacker || f == fieldJambPacker; !packer || v != 0 {
				out = append(out, Reading{Kind: s.Kind, Hinge: i, Value: v})
			}
		}
	}
	return out
}
