package game

import (
	"slices"

	"leafwright/game/measure"
	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/trim"
)

// Where a job file keeps what was done, and what might be.
const (
	madePath    = "made"
	optionsPath = "options"
)

// How many options a job may have, and how many moves one may.
const (
	OptionsMost = 12
	MovesMost   = 200
)

// moveLimit bounds every amount of a move; its kind allows less.
var moveLimit = door.Range{}.Round(door.HeightOff)

func madeFields() *field {
	return movesField(madePath, "Done for keeps", func(j *Job, _ int) *[]trim.Move { return &j.Made },
		func(j *Job, i int) *trim.Move { return &j.Made[i] }).
		helped("What was done to the door, in order. The shapes are those before it.")
}

func optionFields() *field {
	option := func(j *Job, i int) *Option { return &j.Options[i] }
	name := &field{name: "name", label: "Name", at: func(j *Job, i int) value { return line{&option(j, i).Name} }}
	f := &field{
		name: optionsPath, label: "Ways to make it fit", one: "way to make it fit", count: door.Range{Hi: OptionsMost},
		item: func(j *Job, i int) string { return "Option " + ordinal(i) },
		list: func(j *Job, _ int) list { return listOf[Option]{&j.Options, sameOptions} },
		at:   func(j *Job, _ int) value { return listOf[Option]{&j.Options, sameOptions} },
		parts: []*field{
			name.or(func(*Job) value { return line{new(string)} }),
			movesField("moves", "Moves", func(j *Job, i int) *[]trim.Move { return &option(j, i).Moves },
				func(j *Job, i int) *trim.Move { return &option(j, i/spread).Moves[i%spread] }),
		},
	}
	return f.or(func(*Job) value { return listOf[Option]{p: new([]Option)} }).
		helped("Each is tried on the door as it stands, after what was done for keeps.")
}

// movesField is a list of moves; m gives one by the place of its fields.
func movesField(name, label string, p func(j *Job, i int) *[]trim.Move, m func(j *Job, i int) *trim.Move) *field {
	f := &field{
		name: name, label: label, one: "move", count: door.Range{Hi: MovesMost}, parts: moveParts(m),
		list: func(j *Job, i int) list { return listOf[trim.Move]{p(j, i), sameMoves} },
		at:   func(j *Job, i int) value { return listOf[trim.Move]{p(j, i), sameMoves} },
		item: func(j *Job, i int) string { return ordinal(i%spread) + ". " + KindLabel(m(j, i).Kind) },
	}
	return f.or(func(*Job) value { return listOf[trim.Move]{p: new([]trim.Move)} })
}

func sameMoves(a, b []trim.Move) bool { return slices.EqualFunc(a, b, sameMove) }

func sameMove(a, b trim.Move) bool { return MoveText(a) == MoveText(b) }

func sameOptions(a, b []Option) bool {
	return slices.EqualFunc(a, b, func(a, b Option) bool { return a.Name == b.Name && sameMoves(a.Moves, b.Moves) })
}

// moveParts is the part of the table that says what a move is. Which fields count
// turns on what is done, the first of them.
func moveParts(m func(j *Job, i int) *trim.Move) []*field {
	needs := func(n trim.Needs) func(j *Job, i int) bool {
		return func(j *Job, i int) bool {
			spec := trim.SpecOf(m(j, i).Kind)
			return spec == nil || spec.Needs&n != 0
		}
	}
	// mm is a length; left out it is std, where the kind has it.
	mm := func(n trim.Needs, name, label string, limits door.Range, std func(m *trim.Move) float64, p func(m *trim.Move) *float64) *field {
		f := sizeIn(name, label, limits, func(j *Job, i int) *float64 { return p(m(j, i)) })
		f.counts = needs(n)
		f.std = func(j *Job, i int) value {
			x := 0.0
			if spec := trim.SpecOf(m(j, i).Kind); spec != nil && f.counts(j, i) {
				x = std(m(j, i))
			}
			return length{&x}
		}
		return f
	}
	fixed := func(x float64) func(*trim.Move) float64 { return func(*trim.Move) float64 { return x } }
	nought := fixed(0)
	place := door.Place.Round(0)
	amount := func(name string, std func(m *trim.Move) float64, need trim.Needs, p func(m *trim.Move) *float64) *field {
		f := mm(need, name, "Amount", moveLimit, std, p)
		f.called = func(j *Job, i int) string { return amountLabel(m(j, i), name == "last") }
		f.within = func(j *Job, i int) door.Range { return amountRange(m(j, i).Kind) }
		return f
	}
	kind := &field{name: "do", label: "What", need: true, at: func(j *Job, i int) value { return word[trim.Kind]{&m(j, i).Kind, "", kindChoices} }}
	edge := &field{name: "edge", label: "Edge", need: true, counts: needs(trim.NeedEdge), at: func(j *Job, i int) value { return edgeWord{&m(j, i).Edge, m(j, i).Kind} }}
	face := &field{name: "face", label: "Face", need: true, counts: needs(trim.NeedFace), at: func(j *Job, i int) value { return word[trim.Face]{&m(j, i).Face, "", faceChoices} }}
	hinge := &field{name: "hinge", label: "Hinge", limits: door.Range{Hi: door.HingesMost}, counts: needs(trim.NeedHinge), at: func(j *Job, i int) value { return whole{&m(j, i).Hinge} }}
	on := &field{name: "on", label: "On", need: true, counts: needs(trim.NeedOn), at: func(j *Job, i int) value { return word[trim.Part]{&m(j, i).On, "", partChoices} }}
	line1 := &field{name: "note", label: "Note", at: func(j *Job, i int) value { return line{&m(j, i).Note} }}
	scribed := &field{name: "line", label: "Line", counts: needs(trim.NeedLine),
		shape: &shape{place: place, value: moveLimit, columns: [2]string{"Place along the edge", "Off there"}, spanIn: func(j *Job, i int) (float64, float64) { return j.edgeSpan(m(j, i)) }},
		at:    func(j *Job, i int) value { return stations{&m(j, i).Line} }}
	angle := &field{name: "angle", label: "Bevel", limits: door.Bevel, counts: needs(trim.NeedAngle), at: func(j *Job, i int) value { return degrees{&m(j, i).Angle} }}
	off := &field{name: "off", label: "Leave out", at: func(j *Job, i int) value { return truth{&m(j, i).Off} }}
	return []*field{
		kind.then(rekind),
		off.or(func(*Job) value { return truth{new(bool)} }).helped("Kept in the list, but not done."),
		edge.then(reedge).helped("Of the leaf: hanging, closing, top, foot. Of the frame: hinge_jamb, latch_jamb, head."),
		face.helped("The arris to ease, or the face a strip is flush with."),
		hinge.or(func(*Job) value { return whole{new(int)} }).helped("Which one, 1 the top one; 0 for all of them."),
		on.helped("Whether leaf or jamb is cut or moved."),
		mm(trim.NeedSpan, "from", "From", place, nought, func(m *trim.Move) *float64 { return &m.From }).
			helped("Up from the foot, or across from the hinge side whichever hand the leaf is; from and to both 0 for the whole edge."),
		mm(trim.NeedSpan, "to", "To", place, nought, func(m *trim.Move) *float64 { return &m.To }),
		amount("first", nought, trim.NeedFirst, func(m *trim.Move) *float64 { return &m.First }).
			helped("How much, at the foot or the hinge side where it tapers."),
		amount("last", func(m *trim.Move) float64 { return m.First }, trim.NeedLast, func(m *trim.Move) *float64 { return &m.Last }).
			helped("How much at the top or the closing side; as first when left out."),
		scribed.or(func(*Job) value { return stations{new(geom.Profile)} }).
			helped("The amount off at places along the edge, straight between; places across run from the hinge side whichever hand the leaf is."),
		angle.orDegrees(0).helped("Of the whole edge from now on."),
		mm(trim.NeedStock, "stock", "Thickness of the stock", door.LeafThickness.Round(0), fixed(0), func(m *trim.Move) *float64 { return &m.Stock }).must(),
		mm(trim.NeedStock, "set_in", "Set in from the face", door.Range{Hi: door.LeafThickness.Hi}, nought, func(m *trim.Move) *float64 { return &m.SetIn }).
			helped("How far the strip stands behind the face it is set from."),
		mm(trim.NeedHollow, "hollow", "Gap between the faces to be glued", door.Range{Hi: 20}, nought, func(m *trim.Move) *float64 { return &m.Hollow }).
			helped("The greatest, dry and laid together."),
		mm(trim.NeedHinges, "closed", "Thickness folded shut", door.Closed, fixed(6), func(m *trim.Move) *float64 { return &m.Closed }),
		mm(trim.NeedHinges, "plates", "Height of the plates", door.HingePlate, fixed(75), func(m *trim.Move) *float64 { return &m.Plates }),
		mm(trim.NeedHinges, "pin", "Pin out of the front edge", door.Pin, fixed(5), func(m *trim.Move) *float64 { return &m.Pin }),
		mm(trim.NeedHinges, "leaf_gain", "Gain in the leaf", door.Gain, fixed(2), func(m *trim.Move) *float64 { return &m.LeafGain }),
		mm(trim.NeedHinges, "jamb_gain", "Gain in the jamb", door.Gain, fixed(2), func(m *trim.Move) *float64 { return &m.JambGain }),
		mm(trim.NeedCover, "cover", "Height", door.FloorHeight, fixed(0), func(m *trim.Move) *float64 { return &m.Cover }).must().
			helped("Of the floor covering, or of the threshold."),
		mm(trim.NeedWide, "wide", "Width through the wall", door.Range{Lo: 1, Hi: 1000}, fixed(0), func(m *trim.Move) *float64 { return &m.Wide }).must(),
		line1.or(func(*Job) value { return line{new(string)} }),
	}
}

// edgeWord is an edge of the leaf, or the side of the frame it looks at, in the word
// for the kind of move.
type edgeWord struct {
	p    *door.Edge
	kind trim.Kind
}

var (
	leafEdges  = [door.Edges]Choice{{"hanging", "hanging edge"}, {"closing", "closing edge"}, {"top", "top"}, {"foot", "foot"}}
	frameEdges = [door.Edges]Choice{{"hinge_jamb", "hinge jamb"}, {"latch_jamb", "latch jamb"}, {"head", "head"}, {"floor", "floor"}}
)

// options gives the words allowed, all there are where the kind is not known.
func (v edgeWord) options() (out []Choice) {
	spec := trim.SpecOf(v.kind)
	if spec == nil {
		return append(append(out, leafEdges[:]...), frameEdges[:door.FloorSide]...)
	}
	for _, e := range spec.Edges {
		out = append(out, edgeChoice(spec, e))
	}
	return out
}

func edgeChoice(spec *trim.Spec, e door.Edge) Choice {
	if e < 0 || e >= door.Edges {
		return Choice{}
	}
	if spec != nil && spec.Trade == trim.TheFrame {
		return frameEdges[e]
	}
	return leafEdges[e]
}

func (v edgeWord) read(n *node, miss missing) {
	if n.kind != textNode || v.take(n.text, 0) != "" {
		miss("", n, among(v.options(), n.text))
	}
}
func (v edgeWord) write() node              { return node{kind: textNode, text: v.show(0)} }
func (v edgeWord) set(from value)           { *v.p = *from.(edgeWord).p }
func (v edgeWord) same(as value) bool       { return *v.p == *as.(edgeWord).p }
func (v edgeWord) show(measure.Unit) string { return edgeChoice(trim.SpecOf(v.kind), *v.p).Value }
func (v edgeWord) take(text string, _ measure.Unit) string {
	spec := trim.SpecOf(v.kind)
	for e := range door.Edges {
		if (spec == nil || slices.Contains(spec.Edges, e)) && text == edgeChoice(spec, e).Value {
			*v.p = e
			return ""
		}
	}
	return (&node{kind: textNode, text: text}).said() + " is not " + among(v.options(), text)
}

func (v edgeWord) schema(f *field, about string) node {
	kind, edge := trim.Kind(""), door.Edge(0)
	return word[trim.Kind]{&kind, "", edgeWord{&edge, ""}.options}.schema(f, about)
}

func faceChoices() []Choice {
	return []Choice{{string(trim.Knuckle), "knuckle face"}, {string(trim.Stop), "stop face"}, {string(trim.Middle), "middle"}}
}

func partChoices() []Choice {
	return []Choice{{string(trim.OnLeaf), "leaf"}, {string(trim.OnJamb), "jamb"}, {string(trim.OnBoth), "both"}}
}

// neighbourFields are the rails of a door that stands beside this one.
func neighbourFields() *field {
	rail := func(j *Job, i int) *door.Rail { return &j.Neighbour[i] }
	up := door.OpeningRange()
	f := groups("rails", "Rails of the door beside it", "rail of the door beside it", door.Range{Hi: door.RailsMost}, func(j *Job) *[]door.Rail { return &j.Neighbour },
		func(j *Job, i int) string { return railName(j.Neighbour, i) + " of the door beside it" },
		(&field{name: "name", label: "Name", at: func(j *Job, i int) value { return line{&rail(j, i).Name} }}).
			or(func(*Job) value { return line{new(string)} }).helped("As this leaf's rail is called that ought to run on with it."),
		sizeIn("from", "Lower edge", up, func(j *Job, i int) *float64 { return &rail(j, i).From }).must(),
		sizeIn("to", "Upper edge", up, func(j *Job, i int) *float64 { return &rail(j, i).To }).must(),
	)
	return f.or(func(*Job) value { return listOf[door.Rail]{p: new([]door.Rail)} }).
		helped("Heights above the floor. Named alike, or counted from the foot up, they are compared with this leaf's.")
}
