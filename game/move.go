package game

import (
	"slices"
	"strconv"

	"leafwright/game/measure"
	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/trim"
)

// kindLabels names each kind of move on a button or in a list.
var kindLabels = []Choice{
	{string(trim.Plane), "Plane an edge"},
	{string(trim.Scribe), "Plane to a scribed line"},
	{string(trim.Cut), "Cut top or foot"},
	{string(trim.Undercut), "Undercut for a floor covering"},
	{string(trim.Bevel), "Bevel an edge"},
	{string(trim.Ease), "Ease an arris"},
	{string(trim.Splice), "Splice a strip on"},
	{string(trim.Reuse), "Use the offcut as a strip"},
	{string(trim.Shift), "Shift a hinge up or down"},
	{string(trim.Raise), "Raise or lower the leaf"},
	{string(trim.Sink), "Sink a hinge deeper"},
	{string(trim.Pack), "Pack a hinge out"},
	{string(trim.Set), "Set a hinge in or out"},
	{string(trim.Rehinge), "Change the hinges"},
	{string(trim.PlaneJamb), "Plane a jamb or the head"},
	{string(trim.PackJamb), "Pack a jamb or the head"},
	{string(trim.Restop), "Move a stop"},
	{string(trim.Follow), "Plant a stop to follow the leaf"},
	{string(trim.Threshold), "Let in a threshold"},
}

// KindLabel names a kind of move on a button or in a list.
func KindLabel(k trim.Kind) string {
	for _, c := range kindLabels {
		if c.Value == string(k) {
			return c.Label
		}
	}
	return string(k)
}

func kindChoices() []Choice {
	out := make([]Choice, len(trim.Kinds))
	for i := range trim.Kinds {
		out[i] = Choice{string(trim.Kinds[i].Kind), KindLabel(trim.Kinds[i].Kind)}
	}
	return out
}

// amountRange is what First and Last of a kind may be.
func amountRange(k trim.Kind) door.Range {
	if spec := trim.SpecOf(k); spec != nil && spec.Amount != (door.Range{}) {
		return spec.Amount
	}
	return moveLimit
}

// amountLabel says what First, or Last, of a move is.
func amountLabel(m *trim.Move, last bool) string {
	what := "Off"
	switch m.Kind {
	case trim.Splice:
		what = "Height of the strip"
	case trim.Reuse:
		return "Height wanted, 0 for all there is"
	case trim.Ease:
		return "Off each face"
	case trim.Shift, trim.Raise:
		return "Up by"
	case trim.Sink:
		return "Deeper by"
	case trim.Pack:
		return "Thicker by"
	case trim.Set:
		return "Out by"
	case trim.PackJamb:
		what = "Packing"
	case trim.Restop:
		what = "Away from the leaf"
	case trim.Follow:
		return "Gap at the stop"
	}
	if spec := trim.SpecOf(m.Kind); spec == nil || spec.Needs&trim.NeedLast == 0 {
		return what
	}
	return what + ", " + endName(m.Edge, last)
}

// endName names an end of an edge.
func endName(e door.Edge, last bool) string {
	switch {
	case e.Upright() && last:
		return "top end"
	case e.Upright():
		return "foot end"
	case last:
		return "closing corner"
	}
	return "hanging corner"
}

// edgeSpan gives the ends of the edge a move is done on.
func (j *Job) edgeSpan(m *trim.Move) (first, last float64) {
	size := [2]float64{j.Door.Leaf.Width, j.LeafHeight}
	if spec := trim.SpecOf(m.Kind); spec != nil && spec.Trade == trim.TheFrame {
		size = [2]float64{j.OpeningWidth, j.OpeningHeight}
	}
	if m.Edge.Upright() {
		return 0, size[1]
	}
	return 0, size[0]
}

// NewMove gives a move of the kind with numbers to begin from on this door.
func (j *Job) NewMove(k trim.Kind) trim.Move {
	m := trim.Move{Kind: k}
	spec := trim.SpecOf(k)
	if spec == nil {
		return m
	}
	needs := func(n trim.Needs) bool { return spec.Needs&n != 0 }
	if needs(trim.NeedEdge) {
		m.Edge = usualEdge(spec)
	}
	if needs(trim.NeedFace) {
		m.Face = trim.Knuckle
		if k == trim.Splice || k == trim.Reuse {
			m.Face = trim.Middle
		}
	}
	if needs(trim.NeedHinge) && k != trim.Raise && k != trim.Rehinge {
		m.Hinge = 1
	}
	if needs(trim.NeedOn) {
		m.On = trim.OnLeaf
		if k == trim.Raise || k == trim.Set {
			m.On = trim.OnJamb
		}
	}
	if needs(trim.NeedFirst) && k != trim.Reuse {
		m.First = usualAmount(k, spec, j.Wanted.Stop.Target)
	}
	if needs(trim.NeedLast) {
		m.Last = m.First
	}
	if needs(trim.NeedLine) {
		first, last := j.edgeSpan(&m)
		m.Line = geom.Through(first, 1, last, 1)
	}
	if needs(trim.NeedAngle) {
		m.Angle = 3 * geom.Degree // common practice, no published source
	}
	if needs(trim.NeedStock) {
		m.Stock = j.Door.Leaf.Thickness
	}
	if needs(trim.NeedHinges) && len(j.Door.Hinges) > 0 { // the next size up of those that are there
		h := &j.Door.Hinges[0]
		m.Closed, m.Pin, m.LeafGain, m.JambGain = h.Closed, h.Pin, h.LeafGain, h.JambGain
		m.Plates = min(h.Height+25, door.HingePlate.Hi)
	}
	if needs(trim.NeedCover) {
		m.Cover = 10
	}
	if needs(trim.NeedWide) {
		m.Wide = 100
	}
	return m
}

// usualEdge is the edge a move of the kind is mostly done on: the closing edge
// before the top, these before the others; a leaf that wants a strip was mostly cut
// down at an end.
func usualEdge(spec *trim.Spec) door.Edge {
	first := [2]door.Edge{fit.LatchSide, fit.HeadSide}
	if spec.Kind == trim.Splice {
		first[0] = fit.HeadSide
	}
	for _, e := range first {
		if slices.Contains(spec.Edges, e) {
			return e
		}
	}
	if len(spec.Edges) > 0 {
		return spec.Edges[0]
	}
	return 0
}

// usualAmount is an amount to begin from.
func usualAmount(k trim.Kind, spec *trim.Spec, stop float64) float64 {
	x := 1.0
	switch k {
	case trim.Cut, trim.Undercut:
		x = 3
	case trim.Splice:
		x = 10
	case trim.Follow:
		x = stop
	}
	if spec.Amount != (door.Range{}) {
		x = min(max(x, spec.Amount.Lo), spec.Amount.Hi)
	}
	return x
}

// rekind goes along with a change of what is done: what the new kind has no use for
// goes, what it lacks comes as [Job.NewMove] gives it.
func rekind(old, j *Job) {
	for i := range min(len(old.Options), len(j.Options)) {
		was, is := old.Options[i].Moves, j.Options[i].Moves
		for k := range min(len(was), len(is)) {
			if was[k].Kind != is[k].Kind {
				is[k] = j.renewed(was[k], is[k].Kind)
			}
		}
	}
}

// renewed gives a move done as another kind.
func (j *Job) renewed(was trim.Move, k trim.Kind) trim.Move {
	m := j.NewMove(k)
	m.Off, m.Note = was.Off, was.Note
	before, now := trim.SpecOf(was.Kind), trim.SpecOf(k)
	if before == nil || now == nil {
		return m
	}
	both := before.Needs & now.Needs
	if both&trim.NeedEdge != 0 && slices.Contains(now.Edges, was.Edge) {
		m.Edge = was.Edge
		if both&trim.NeedSpan != 0 && before.Trade == now.Trade {
			m.From, m.To = was.From, was.To
		}
		if now.Needs&trim.NeedLine != 0 {
			first, last := j.edgeSpan(&m)
			m.Line = geom.Through(first, 1, last, 1)
		}
	}
	if both&trim.NeedHinge != 0 {
		m.Hinge = was.Hinge
	}
	if both&trim.NeedFirst != 0 && before.Trade == now.Trade && now.Amount.Holds(was.First) && now.Amount.Holds(was.Last) {
		m.First = was.First
		if both&trim.NeedLast != 0 {
			m.Last = was.Last
		} else if now.Needs&trim.NeedLast != 0 {
			m.Last = was.First
		}
	}
	if len(m.Check()) > 0 {
		m = j.NewMove(k)
		m.Off, m.Note = was.Off, was.Note
	}
	return m
}

// reedge goes along with a change of the edge a move is on: places on the old edge
// mean nothing on one that runs the other way.
func reedge(old, j *Job) {
	for i := range min(len(old.Options), len(j.Options)) {
		was, is := old.Options[i].Moves, j.Options[i].Moves
		for k := range min(len(was), len(is)) {
			m := &is[k]
			if was[k].Edge.Upright() == m.Edge.Upright() {
				continue
			}
			m.From, m.To = 0, 0
			if len(m.Line) > 0 {
				first, last := j.edgeSpan(m)
				m.Line = geom.Through(first, m.Line[0].Value, last, m.Line[len(m.Line)-1].Value)
			}
		}
	}
}

// checkMoves adds what is wrong with each move by itself. That it cannot be done on
// this door is no fault of the file: its step says so.
func (j *Job) checkMoves(faults *Faults, given func(path string) bool) {
	parts := find(madePath).parts
	check := func(moves []trim.Move, path string) {
		only := Job{Made: moves}
		for k := range moves {
			m, here := &moves[k], path+index(k)
			if m.Kind == "" {
				continue // told already
			}
			if trim.SpecOf(m.Kind) == nil {
				faults.add(door.Fault{Path: here + ".do", Value: (&node{kind: textNode, text: string(m.Kind)}).said(), Want: among(kindChoices(), string(m.Kind))})
				continue
			}
			for _, f := range parts {
				if f.counts != nil && !f.counts(&only, k) && !f.at(&only, k).same(f.sample()) {
					faults.add(door.Fault{Path: join(here, f.name), Value: f.at(&only, k).show(measure.MM), Want: "wanted: " + string(m.Kind) + " has no " + f.name})
				}
			}
			for _, f := range m.Check() {
				f.Path = join(here, f.Path)
				if last := join(here, "last"); f.Path == last && !given(last) && !faults.sound(join(here, "first")) {
					continue // it is as first
				}
				faults.add(f)
			}
		}
	}
	tooMany := func(path string, n, most int) {
		if n > most {
			faults.add(door.Fault{Path: path, Value: strconv.Itoa(n), Want: "at most " + strconv.Itoa(most)})
		}
	}
	tooMany(madePath, len(j.Made), MovesMost)
	tooMany(optionsPath, len(j.Options), OptionsMost)
	check(j.Made, madePath)
	for i := range j.Options {
		tooMany(movesPath(i), len(j.Options[i].Moves), MovesMost)
		check(j.Options[i].Moves, movesPath(i))
	}
	for i := range j.Made {
		if j.Made[i].Off {
			faults.add(door.Fault{Path: madePath + index(i) + ".off", Value: "true", Want: "allowed: what was done is done"})
		}
	}
}

// checkNeighbour adds what is wrong with the rails of the door beside this one.
func (j *Job) checkNeighbour(faults *Faults) {
	const path = "neighbour.rails"
	if n := len(j.Neighbour); n > door.RailsMost {
		faults.add(door.Fault{Path: path, Value: strconv.Itoa(n), Want: "at most " + strconv.Itoa(door.RailsMost)})
	}
	for i := range j.Neighbour {
		if r := &j.Neighbour[i]; !(r.From < r.To) {
			faults.add(door.Fault{Path: path + index(i) + ".to", Value: door.Say(r.To), Want: "above the rail's lower edge, " + door.Say(r.From)})
		}
	}
}
