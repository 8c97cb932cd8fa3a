package game

import (
	"strconv"
	"sync"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
)

// table is every field of the job file, in the order it is written. A field's
// default may depend on fields before it only.
func table() []*field {
	once.Do(func() { fields = build() })
	return fields
}

var (
	once   sync.Once
	fields []*field
)

func build() []*field {
	return []*field{
		text("name", "Name", func(j *Job) *string { return &j.Name }).
			helped("The house and the room, as you would say it."),
		(&field{name: "note", label: "Note", at: func(j *Job, _ int) value { return lines{line{&j.Note}} }}).
			or(func(*Job) value { return lines{line{new(string)}} }),
		choice("hand", "Hinges on the", "", hands, func(j *Job) *Hand { return &j.Hand }).
			or(func(*Job) value { h := Left; return word[Hand]{&h, "", hands} }).then(rehang).
			helped("Seen from the side the leaf opens towards, where the knuckles are."),
		leafFields(),
		openingFields(),
		hingeFields(),
		group("latch",
			size("height", "Latch height", door.LeafRange(), func(j *Job) *float64 { return &j.Door.Latch.Height }).
				orMM(func(j *Job) float64 {
					if j.Anatomy.Lock.Kind != door.NoLock {
						return j.Anatomy.Lock.Height
					}
					return j.LeafHeight / 2
				}).helped("Up from the foot of the hanging stile."),
			size("proud", "Face proud of the frame when latched", door.Proud, func(j *Job) *float64 { return &j.Door.Latch.Proud }).orFixed(0),
		),
		(&field{name: "floor", label: "Floor", at: func(j *Job, _ int) value { return floor{&j.Door.Floor} }}).
			or(func(*Job) value { f := door.FlatFloor(0); return floor{&f} }),
		angle("opens", "Opens to", door.Opens, func(j *Job) *geom.Angle { return &j.Door.Opens }).orDegrees(90),
		wantedFields(),
		group("neighbour", neighbourFields()),
		rows("house", "", ofHouse, houseRows),
		group("paint", rows("leaf", "Leaf: ", ofLeaf, coatRows), rows("frame", "Frame: ", ofFrame, coatRows)),
		meterFields(),
		priceFields(),
		readingFields(),
		madeFields(),
		optionFields(),
	}
}

func hands() []Choice { return []Choice{{"left", "left"}, {"right", "right"}} }

func makes() []Choice {
	return []Choice{
		{string(door.Flush), "flush, flat faces over a core"},
		{string(door.Framed), "framed, stiles and rails round panels"},
		{string(door.Boarded), "boarded, upright boards on ledges"},
	}
}

func panelKinds() []Choice {
	return []Choice{{string(door.Flat), "flat"}, {string(door.Raised), "raised and fielded"}, {string(door.Glass), "glass"}}
}

// noLock is the word for no lock.
const noLock = "none"

func lockKinds() []Choice {
	return []Choice{{noLock, "none"}, {string(door.Rim), "rim, on the face"}, {string(door.Mortice), "mortice, let into the edge"}}
}

// What the stations of each kind of line are.
var (
	upLeaf    = [2]string{"Up from the foot", "Across from the hanging edge"}
	overLeaf  = [2]string{"Across from the hanging edge", "Up from the foot"}
	upFace    = [2]string{"Up from the foot", "Out of flat"}
	upJamb    = [2]string{"Up from the floor", "Across from the foot of the hinge jamb"}
	overHead  = [2]string{"Across from the foot of the hinge jamb", "Up from the floor"}
	upFront   = [2]string{"Up from the floor", "Out of plumb, towards you above 0"}
	overFront = [2]string{"Across from the foot of the hinge jamb", "Out of plumb, towards you above 0"}
)

func leafFields() *field {
	leaf := func(j *Job) *door.Leaf { return &j.Door.Leaf }
	width := func(j *Job) float64 { return j.Door.Leaf.Width }
	height := func(j *Job) float64 { return j.LeafHeight }
	flat := func(*Job) geom.Profile { return geom.Level(0) }
	off := door.Range{}.Round(door.EdgeOff)
	face := door.Range{}.Round(door.FaceOff)
	ordinary := func(j *Job) door.Anatomy { return door.Ordinary(j.Anatomy.Make, width(j), height(j)) }
	// A leaf that is measured is an old one, whose joints are to be looked after: framed.
	made := func(j *Job) value {
		m := door.Flush
		if j.IsSurveyed() {
			m = door.Framed
		}
		return word[door.Make]{&m, "", makes}
	}
	panels := func(*Job) value { p := door.Flat; return word[door.Panels]{&p, "", panelKinds} }
	bare := func(*Job) value { k := door.NoLock; return word[door.LockKind]{&k, noLock, lockKinds} }
	// a lock's sizes when only its kind is said: common mortice practice, no published source
	locked := func(x float64) func(j *Job) float64 {
		return func(j *Job) float64 {
			if j.Anatomy.Lock.Kind == door.NoLock {
				return 0
			}
			return x
		}
	}
	return group("leaf",
		size("width", "Width", door.LeafWidth, func(j *Job) *float64 { return &leaf(j).Width }).must().then(rewidenLeaf),
		size("height", "Height", door.LeafHeight, func(j *Job) *float64 { return &j.LeafHeight }).must().then(restretchLeaf),
		size("thickness", "Thickness", door.LeafThickness, func(j *Job) *float64 { return &leaf(j).Thickness }).must(),
		profile("hanging", "Hanging edge", shape{place: door.Place, value: off, columns: upLeaf, span: upTheLeaf},
			func(j *Job) *geom.Profile { return &leaf(j).Hanging },
			func(j *Job) geom.Profile { return geom.Through(0, 0, height(j), 0) }),
		profile("closing", "Closing edge", shape{place: door.Place, value: door.LeafWidth.Round(door.EdgeOff), columns: upLeaf, span: upTheLeaf},
			func(j *Job) *geom.Profile { return &leaf(j).Closing },
			func(j *Job) geom.Profile { return geom.Through(0, width(j), height(j), width(j)) }).
			near("leaf.width", width, door.EdgeOff).with(leafWider),
		profile("top", "Top", shape{place: door.Across, value: door.LeafHeight.Round(door.HeightOff), columns: overLeaf, span: overTheLeaf},
			func(j *Job) *geom.Profile { return &leaf(j).Top },
			func(j *Job) geom.Profile { return geom.Through(0, height(j), width(j), height(j)) }).
			near("leaf.height", height, door.HeightOff).with(topFalls),
		profile("bottom", "Bottom", shape{place: door.Across, value: door.Range{}.Round(door.HeightOff), columns: overLeaf, span: overTheLeaf},
			func(j *Job) *geom.Profile { return &leaf(j).Bottom },
			func(j *Job) geom.Profile { return geom.Through(0, 0, width(j), 0) }).with(bottomRises),
		group("face",
			profile("hanging", "Face down the hanging stile", shape{place: door.Place, value: face, columns: upFace, span: upTheLeaf},
				func(j *Job) *geom.Profile { return &leaf(j).HangingFace }, flat),
			profile("closing", "Face down the closing stile", shape{place: door.Place, value: face, columns: upFace, span: upTheLeaf},
				func(j *Job) *geom.Profile { return &leaf(j).ClosingFace }, flat).with(wind),
		),
		group("bevel",
			angle("hanging", "Bevel of the hanging edge", door.Bevel, func(j *Job) *geom.Angle { return &leaf(j).HangingBevel }).orDegrees(0),
			angle("closing", "Bevel of the closing edge", door.Bevel, func(j *Job) *geom.Angle { return &leaf(j).ClosingBevel }).orDegrees(0).
				helped("The stop face stands back by this angle; 1 in 16 is 3.6°."),
		),
		choice("make", "Make", "", makes, func(j *Job) *door.Make { return &j.Anatomy.Make }).or(made).then(remake),
		group("stiles",
			size("hanging", "Hanging stile", door.Range{Hi: door.Stile.Hi}, func(j *Job) *float64 { return &j.Anatomy.HangingStile }).
				orMM(func(j *Job) float64 { return ordinary(j).HangingStile }),
			size("closing", "Closing stile", door.Range{Hi: door.Stile.Hi}, func(j *Job) *float64 { return &j.Anatomy.ClosingStile }).
				orMM(func(j *Job) float64 { return ordinary(j).ClosingStile }),
		),
		groups("rails", "Rails", "rail", door.Range{Hi: door.RailsMost}, func(j *Job) *[]door.Rail { return &j.Anatomy.Rails },
			func(j *Job, i int) string { return railName(j.Anatomy.Rails, i) },
			(&field{name: "name", label: "Name", at: func(j *Job, i int) value { return line{&j.Anatomy.Rails[i].Name} }}).
				or(func(*Job) value { return line{new(string)} }),
			sizeIn("from", "From", door.LeafRange(), func(j *Job, i int) *float64 { return &j.Anatomy.Rails[i].From }).must(),
			sizeIn("to", "To", door.LeafRange(), func(j *Job, i int) *float64 { return &j.Anatomy.Rails[i].To }).must(),
		).or(func(j *Job) value { r := ordinary(j).Rails; return listOf[door.Rail]{p: &r} }).when(func(j *Job) bool { return j.Anatomy.Make != door.Flush }),
		groups("muntins", "Muntins", "muntin", door.Range{Hi: door.MuntinsMost}, func(j *Job) *[]door.Muntin { return &j.Anatomy.Muntins },
			func(_ *Job, i int) string { return "Muntin " + ordinal(i) },
			sizeIn("at", "Middle", door.LeafRange(), func(j *Job, i int) *float64 { return &j.Anatomy.Muntins[i].At }).must(),
			sizeIn("width", "Width", door.Stile, func(j *Job, i int) *float64 { return &j.Anatomy.Muntins[i].Width }).must(),
			sizeIn("from", "From", door.LeafRange(), func(j *Job, i int) *float64 { return &j.Anatomy.Muntins[i].From }).must(),
			sizeIn("to", "To", door.LeafRange(), func(j *Job, i int) *float64 { return &j.Anatomy.Muntins[i].To }).must(),
		).or(func(j *Job) value { m := ordinary(j).Muntins; return listOf[door.Muntin]{p: &m} }).when(framed),
		jointFields(ordinary),
		choice("panels", "Panels", "", panelKinds, func(j *Job) *door.Panels { return &j.Anatomy.Panels }).or(panels).when(framed),
		group("lock",
			choice("kind", "Lock", noLock, lockKinds, func(j *Job) *door.LockKind { return &j.Anatomy.Lock.Kind }).or(bare).then(relock),
			size("height", "Spindle height", door.LeafRange(), func(j *Job) *float64 { return &j.Anatomy.Lock.Height }).
				orMM(func(j *Job) float64 { return locked(min(950, height(j)/2))(j) }).then(latchToo).when(hasLock),
			size("backset", "Backset", door.Range{Hi: door.Backset.Hi}, func(j *Job) *float64 { return &j.Anatomy.Lock.Backset }).orMM(locked(57)).when(hasLock).
				helped("From the closing edge to the spindle."),
			size("case", "Case height", door.Range{Hi: door.Case.Hi}, func(j *Job) *float64 { return &j.Anatomy.Lock.Case }).orMM(locked(115)).when(hasLock),
			size("depth", "Case depth", door.Range{Hi: door.Case.Hi}, func(j *Job) *float64 { return &j.Anatomy.Lock.Depth }).orMM(locked(76)).when(hasLock),
		),
		text("timber", "Timber", func(j *Job) *string { return &j.Anatomy.Timber }),
		yesNo("glazed", "Glazed", func(j *Job) *bool { return &j.Anatomy.Glazed }),
		yesNo("rated", "Fire-rated, smoke-rated or labelled", func(j *Job) *bool { return &j.Anatomy.Rated }).
			helped("A rated leaf is not for trimming: its label and the local code decide."),
		voidFields(),
	)
}

// jointFields are how a framed leaf's rails are joined to its stiles.
func jointFields(ordinary func(j *Job) door.Anatomy) *field {
	joints := func(j *Job) *door.Joints { return &j.Anatomy.Joints }
	usual := func(j *Job) door.Joints { return ordinary(j).Joints }
	return group("joints",
		choice("kind", "Joints of rails and stiles", noJoints, jointKinds, func(j *Job) *door.JointKind { return &joints(j).Kind }).
			or(func(j *Job) value { k := usual(j).Kind; return word[door.JointKind]{&k, noJoints, jointKinds} }).when(framed),
		size("tenon", "Tenon into the stile", door.Range{Hi: door.Stile.Hi}, func(j *Job) *float64 { return &joints(j).Tenon }).
			orMM(func(j *Job) float64 { return usual(j).Tenon }).when(framed).
			helped("How far a stub tenon or a dowel reaches, from the stile's inner edge."),
		size("haunch", "Haunch", door.Range{Hi: door.Stile.Hi}, func(j *Job) *float64 { return &joints(j).Haunch }).
			orMM(func(j *Job) float64 { return usual(j).Haunch }).when(framed).
			helped("From the outer edge of top and bottom rail to the tenon."),
		size("wedge", "Wedge", door.Range{Hi: door.Stile.Hi}, func(j *Job) *float64 { return &joints(j).Wedge }).
			orMM(func(j *Job) float64 { return usual(j).Wedge }).when(framed).
			helped("Its width at the stile's outer edge, beside a through tenon; 0 without."),
	)
}

// noJoints is the word for a leaf whose members are not known to be joined.
const noJoints = "none"

func jointKinds() []Choice {
	return []Choice{
		{noJoints, "none"}, {string(door.Through), "through tenons, wedged"}, {string(door.Stub), "stub tenons"}, {string(door.Dowelled), "dowels"},
	}
}

func openingFields() *field {
	frame := func(j *Job) *door.Frame { return &j.Door.Frame }
	across := func(j *Job) float64 { return j.side() * j.OpeningWidth }
	height := func(j *Job) float64 { return j.OpeningHeight }
	flat := func(*Job) geom.Profile { return geom.Level(0) }
	off := door.Range{}.Round(door.EdgeOff)
	face := door.Range{}.Round(door.FaceOff)
	back := door.Range{Lo: -door.Rebate.Hi, Hi: -door.Rebate.Lo}.Round(door.FaceOff)
	upright := shape{place: door.Place, columns: upFront, span: up}
	level := shape{place: door.Across, columns: overFront, turns: places, span: overTheOpening}
	front := func(name, label string, turns axis, p func(j *Job) *geom.Profile, s ...slant) *field {
		kind := upright
		if turns == places {
			kind = level
		}
		kind.value = face
		return profile(name, label, kind, p, flat).then(replant).with(s...)
	}
	stop := func(name, label string, turns axis, p, front func(j *Job) *geom.Profile) *field {
		kind := upright
		if turns == places {
			kind = level
		}
		kind.value = back
		return profile(name, label, kind, p,
			func(j *Job) geom.Profile { return front(j).Shift(-j.Rebate) })
	}
	hingeFront := func(j *Job) *geom.Profile { return &frame(j).HingeFront }
	latchFront := func(j *Job) *geom.Profile { return &frame(j).LatchFront }
	headFront := func(j *Job) *geom.Profile { return &frame(j).HeadFront }
	return group("opening",
		size("width", "Width", door.OpeningWidth, func(j *Job) *float64 { return &j.OpeningWidth }).must().then(rewidenOpening),
		size("height", "Height", door.OpeningHeight, func(j *Job) *float64 { return &j.OpeningHeight }).must().then(restretchOpening).
			helped("From the floor to the head, at the hinge side."),
		profile("hinge_jamb", "Hinge jamb", shape{place: door.Place, value: off, turns: values, columns: upJamb, span: up},
			func(j *Job) *geom.Profile { return &frame(j).HingeJamb },
			func(j *Job) geom.Profile { return geom.Through(0, 0, height(j), 0) }).with(hingeLeans),
		profile("latch_jamb", "Latch jamb", shape{place: door.Place, value: door.OpeningWidth.Round(door.EdgeOff), turns: values, columns: upJamb, span: up},
			func(j *Job) *geom.Profile { return &frame(j).LatchJamb },
			func(j *Job) geom.Profile { return geom.Through(0, across(j), height(j), across(j)) }).
			near("opening.width", across, door.EdgeOff).with(latchLeans),
		profile("head", "Head", shape{place: door.Across, value: door.OpeningHeight.Round(door.HeightOff), turns: places, columns: overHead, span: overTheOpening},
			func(j *Job) *geom.Profile { return &frame(j).Head },
			func(j *Job) geom.Profile {
				x := across(j)
				return geom.Through(min(0, x), height(j), max(0, x), height(j))
			}).near("opening.height", height, door.HeightOff).with(headFalls),
		group("front",
			front("hinge", "Front edge, hinge jamb", neither, hingeFront, hingeFrontLeans),
			front("latch", "Front edge, latch jamb", neither, latchFront, latchFrontLeans),
			front("head", "Front edge, head", places, headFront),
		),
		size("rebate", "Rebate", door.Rebate, func(j *Job) *float64 { return &j.Rebate }).
			orMM(func(j *Job) float64 { return j.Door.Leaf.Thickness + 2 }).then(rebate).
			helped("From the frame's front edge back to the stop."),
		group("stops",
			stop("hinge", "Stop, hinge jamb", neither, func(j *Job) *geom.Profile { return &frame(j).HingeStop }, hingeFront),
			stop("latch", "Stop, latch jamb", neither, func(j *Job) *geom.Profile { return &frame(j).LatchStop }, latchFront),
			stop("head", "Stop, head", places, func(j *Job) *geom.Profile { return &frame(j).HeadStop }, headFront),
		),
		size("stop_width", "Stop width", door.StopWidth, func(j *Job) *float64 { return &frame(j).StopWidth }).orFixed(12).
			helped("How far a stop stands in from the frame's face."),
	)
}

// Butts and gains when a file leaves them out: 75 mm steel butts of 2 mm gauge, let
// in flush both sides, which leaves the 2 mm that stand between their leaves when
// folded (UK practice for 75 mm butts).
func hingeFields() *field {
	of := func(p func(h *door.Hinge) *float64) func(j *Job, i int) *float64 {
		return func(j *Job, i int) *float64 { return p(&j.Door.Hinges[i]) }
	}
	return groups("hinges", "Hinges", "hinge", door.Range{Lo: door.HingesLeast, Hi: door.HingesMost}, func(j *Job) *[]door.Hinge { return &j.Door.Hinges }, hingeName,
		sizeIn("jamb", "Height on the jamb", door.OpeningRange(), of(func(h *door.Hinge) *float64 { return &h.JambHeight })).must().
			helped("Its middle, up from the floor at the hinge jamb."),
		sizeIn("leaf", "Height on the leaf", door.LeafRange(), of(func(h *door.Hinge) *float64 { return &h.LeafHeight })).must().
			helped("Its middle, up from the foot of the hanging stile."),
		sizeIn("closed", "Thickness folded shut", door.Closed, of(func(h *door.Hinge) *float64 { return &h.Closed })).orFixed(6).
			helped("Between the two screwed faces."),
		sizeIn("leaf_gain", "Gain in the leaf", door.Gain, of(func(h *door.Hinge) *float64 { return &h.LeafGain })).orFixed(2),
		sizeIn("jamb_gain", "Gain in the jamb", door.Gain, of(func(h *door.Hinge) *float64 { return &h.JambGain })).orFixed(2),
		sizeIn("leaf_packer", "Packer in the leaf's gain", door.Packer, of(func(h *door.Hinge) *float64 { return &h.LeafPacker })).orFixed(0),
		sizeIn("jamb_packer", "Packer in the jamb's gain", door.Packer, of(func(h *door.Hinge) *float64 { return &h.JambPacker })).orFixed(0),
		sizeIn("pin", "Pin out of the front edge", door.Pin, of(func(h *door.Hinge) *float64 { return &h.Pin })).orFixed(5).
			helped("The pin's middle, out from the frame's front edge."),
		sizeIn("proud", "Face proud of the frame here", door.Proud, of(func(h *door.Hinge) *float64 { return &h.Proud })).orFixed(0),
		sizeIn("height", "Height of the plates", door.HingePlate, of(func(h *door.Hinge) *float64 { return &h.Height })).orFixed(75),
	).must()
}

// What the gaps wanted may be, mm.
var (
	wantedGap   = door.Range{Hi: 60}
	wantedFloor = door.Range{Hi: 150}
	wantedWay   = door.Range{Hi: 1500}
)

func wantedFields() *field {
	limits := func(name, label string, allow door.Range, closed bool, of func(w *judge.Wanted) *judge.Limits) *field {
		part := func(name, what string, p func(l *judge.Limits) *float64) *field {
			return size(name, label+", "+what, allow, func(j *Job) *float64 { return p(of(&j.Wanted)) }).
				orMM(func(j *Job) float64 { w := preset(j.WantedName).Wanted; return *p(of(&w)) })
		}
		least := part("least", "least", func(l *judge.Limits) *float64 { return &l.Least })
		target := part("target", "wanted", func(l *judge.Limits) *float64 { return &l.Target })
		if !closed {
			return group(name, least, target) // no clearance is too much while it swings
		}
		most := part("most", "most", func(l *judge.Limits) *float64 { return &l.Most }).helped("0 where no gap is too wide.")
		return group(name, least, target, most)
	}
	gap := func(name, label string, e fit.Edge, allow door.Range) *field {
		return limits(name, label, allow, true, func(w *judge.Wanted) *judge.Limits { return &w.Gaps[e] })
	}
	return group("wanted",
		choice("preset", "Gaps wanted", "", presetChoices, func(j *Job) *string { return &j.WantedName }).
			or(func(*Job) value { n := presets[0].Name; return word[string]{&n, "", presetChoices} }).then(copyPreset),
		gap("hinge", "Hinge side", fit.HingeSide, wantedGap),
		gap("latch", "Latch side", fit.LatchSide, wantedGap),
		gap("head", "Head", fit.HeadSide, wantedGap),
		gap("floor", "Floor", fit.FloorSide, wantedFloor),
		limits("stop", "Stops", wantedGap, true, func(w *judge.Wanted) *judge.Limits { return &w.Stop }),
		limits("swing", "Jambs and head while it swings", wantedGap, false, func(w *judge.Wanted) *judge.Limits { return &w.Swing }),
		limits("swing_floor", "Floor while it swings", wantedFloor, false, func(w *judge.Wanted) *judge.Limits { return &w.SwingFloor }),
		size("clear_width", "Clear way at 90°", wantedWay, func(j *Job) *float64 { return &j.Wanted.ClearWidth }).orFixed(0).
			helped("To the latch stop; 0 where none is asked for."),
	)
}

func framed(j *Job) bool  { return j.Anatomy.Make == door.Framed }
func hasLock(j *Job) bool { return j.Anatomy.Lock.Kind != door.NoLock }

func hingeName(j *Job, i int) string {
	switch n := len(j.Door.Hinges); {
	case i == 0:
		return "Top hinge"
	case i == n-1:
		return "Bottom hinge"
	case n == 3:
		return "Middle hinge"
	}
	return "Hinge " + ordinal(i)
}

func railName(rails []door.Rail, i int) string {
	if name := rails[i].Name; name != "" {
		return name + " rail"
	}
	return "Rail " + ordinal(i)
}

func ordinal(i int) string { return strconv.Itoa(i + 1) }
