package words

import (
	"math"
	"strconv"
	"strings"

	"leafwright/game/measure"
	"leafwright/geom/fit"
	"leafwright/geom/survey"
	"leafwright/geom/trim"
)

// amount writes an amount without its sign: as the person's unit has it, or to the
// hundredth of a mm, as a move may be given, without idle noughts.
func (s *Speaker) amount(mm float64) string {
	if s.Length != nil {
		return s.Length(math.Abs(mm))
	}
	return figures(mm, 2)
}

// measured writes likewise what came of a move, to the tenth of a mm unless that
// would make it nothing.
func (s *Speaker) measured(mm float64) string {
	if s.Length != nil || math.Abs(mm) < 0.05 {
		return s.amount(mm)
	}
	return figures(mm, 1)
}

// figures writes a length without its sign, to n places, two at most.
func figures(mm float64, n int) string {
	t := strconv.FormatFloat(measure.Round(math.Abs(mm), [...]float64{1, 0.1, 0.01}[n]), 'f', n, 64)
	return strings.TrimSuffix(strings.TrimRight(t, "0"), ".") + " mm"
}

// theHinge names a hinge by its number, 1 the top one, 0 all of them.
func (s *Speaker) theHinge(n int) string {
	if n == 0 {
		return "all hinges"
	}
	name := s.hinge(survey.Reading{Hinge: n - 1})
	if strings.HasPrefix(name, "hinge ") { // by number
		return name
	}
	return "the " + name
}

// leafEdge names an edge of the leaf.
func (s *Speaker) leafEdge(e fit.Edge) string {
	switch e {
	case fit.HingeSide:
		return s.HangingEdge
	case fit.LatchSide:
		return s.ClosingEdge
	case fit.HeadSide:
		return "top"
	}
	return "foot"
}

// frameSide names a side of the frame.
func (s *Speaker) frameSide(e fit.Edge) string {
	switch e {
	case fit.HingeSide:
		return "hinge jamb"
	case fit.LatchSide:
		return s.LatchJamb
	}
	return s.Edge(e)
}

// ends names the two ends of an edge.
func (s *Speaker) ends(e fit.Edge) (first, last string) {
	if e.Upright() {
		return "at the foot", "at the top"
	}
	return "at the hinge corner", "at the " + s.LatchCorner
}

// stretch says where on its edge a move is done, nothing for the whole of it, and
// names its two ends.
func (s *Speaker) stretch(m *trim.Move) (span, first, last string) {
	if m.From == 0 && m.To == 0 {
		first, last = s.ends(m.Edge)
		return "", first, last
	}
	along := " across from the hinge side"
	if m.Edge.Upright() {
		along = " up"
	}
	return " from " + s.place(m.From) + " to " + s.place(m.To) + along, "at " + s.place(m.From) + along, "at " + s.place(m.To) + along
}

// taper says an amount along an edge: ": 2 mm all along", or how it tapers.
func (s *Speaker) taper(m *trim.Move) string {
	const none = 0.05 // mm: nothing, as far as it is said
	span, first, last := s.stretch(m)
	a, b := s.amount(m.First), s.amount(m.Last)
	switch {
	case a == b:
		if span == "" {
			span = " all along"
		}
		return ": " + a + span
	case math.Abs(m.Last) < none:
		return ": " + a + " " + first + ", tapering to nothing " + last
	case math.Abs(m.First) < none:
		return ": " + b + " " + last + ", tapering to nothing " + first
	}
	return ": " + a + " " + first + ", " + b + " " + last
}

// Move says what a move is, without a full stop.
func (s *Speaker) Move(m *trim.Move) string {
	edge, side, hinge, n := s.leafEdge(m.Edge), s.frameSide(m.Edge), s.theHinge(m.Hinge), s.amount(m.First)
	pick := func(above, below string) string {
		if m.First < 0 {
			return below
		}
		return above
	}
	switch m.Kind {
	case trim.Plane:
		return "Plane the " + edge + s.taper(m)
	case trim.Scribe:
		span, _, _ := s.stretch(m)
		return "Plane the " + edge + " to the scribed line" + span + ", " + s.most(m) + " where it is most"
	case trim.Cut:
		return "Cut the " + edge + " straight" + s.taper(m)
	case trim.Undercut:
		foot := *m
		foot.Edge = fit.FloorSide
		return "Undercut the foot" + s.taper(&foot) + "; a floor covering of " + s.amount(m.Cover) + " outside it"
	case trim.Bevel:
		if m.Angle < 0 {
			return "Bevel the " + edge + " backwards, " + degrees(-m.Angle.Degrees()) + " off square"
		}
		return "Bevel the " + edge + " to " + degrees(m.Angle.Degrees())
	case trim.Ease:
		return "Ease the " + edge + "'s " + s.Arris + " on the " + string(m.Face) + " face by " + n
	case trim.Splice:
		high := n
		if last := s.amount(m.Last); last != n {
			high = s.between(n, last, " to ")
		}
		said := "Splice " + article(high) + high + " strip onto the " + edge + ", from " + s.amount(m.Stock) + " stock" + s.stands(m)
		if m.Hollow > 0 {
			said += "; the faces to be glued meet to " + s.amount(m.Hollow)
		}
		return said
	case trim.Reuse:
		high := "the whole of it"
		if m.First > 0 {
			high = n + " of it"
		}
		return "Glue the offcut to the " + edge + " as a strip, " + high + s.stands(m)
	case trim.Shift:
		on := " on leaf and jamb"
		if m.On != trim.OnBoth {
			on = " on the " + string(m.On)
		}
		return "Shift " + hinge + " " + pick("up ", "down ") + n + on
	case trim.Raise:
		how := ", by the hinges' places " + pick("higher", "lower") + " on the jamb"
		switch m.On {
		case trim.OnLeaf:
			how = ", by the hinges' places " + pick("lower", "higher") + " on the leaf"
		case trim.OnBoth:
			how = ", half by the hinges' places on the leaf, half by those on the jamb"
		}
		return pick("Raise", "Lower") + " the leaf " + n + how
	case trim.Sink:
		return "Sink " + hinge + " " + n + " deeper" + s.in(m.On)
	case trim.Pack:
		if m.First < 0 {
			return "Take " + n + " of packing out from behind " + hinge + s.in(m.On)
		}
		return "Pack " + hinge + " out " + n + s.in(m.On)
	case trim.Set:
		return s.outOfPlane(m, hinge, n, pick)
	case trim.Rehinge:
		return "Change " + hinge + " for " + s.amount(m.Plates) + " ones, " + s.amount(m.Closed) + " thick folded shut, " + s.LetIn + " " +
			s.amount(m.LeafGain) + " in the leaf and " + s.amount(m.JambGain) + " in the jamb"
	case trim.PlaneJamb:
		return "Plane the " + side + s.taper(m)
	case trim.PackJamb:
		return "Pack the " + side + " out into the opening" + s.taper(m)
	case trim.Restop:
		return s.restop(m, side)
	case trim.Follow:
		return "Plant the stop at the " + side + " anew to follow the closed leaf, " + n + " off it"
	case trim.Threshold:
		return "Let in a threshold " + s.amount(m.Cover) + " high and " + s.amount(m.Wide) + " wide"
	}
	return string(m.Kind)
}

// article gives the article before a number: an 8, an 11, an 18, a 12, a 1/8".
func article(number string) string {
	whole := number
	if i := strings.IndexAny(number, " .\"'/"); i >= 0 {
		whole = number[:i]
	}
	if whole == "11" || whole == "18" || strings.HasPrefix(whole, "8") {
		return "an "
	}
	return "a "
}

// restop says a stop's move; where its ends go different ways both are said.
func (s *Speaker) restop(m *trim.Move, side string) string {
	const none = 0.05 // mm: nothing, as far as it is said
	away := func(mm float64) string {
		if math.Abs(mm) < none {
			return "nothing"
		}
		if mm < 0 {
			return s.amount(mm) + " towards the leaf"
		}
		return s.amount(mm) + " away from the leaf"
	}
	first, last := s.ends(m.Edge)
	if s.amount(m.First) == s.amount(m.Last) && (m.First < 0) == (m.Last < 0) {
		return "Move the stop at the " + side + " " + away(m.First)
	}
	return "Move the stop at the " + side + ": " + away(m.First) + " " + first + ", " + away(m.Last) + " " + last
}

// most is the most a scribed line takes off.
func (s *Speaker) most(m *trim.Move) string {
	most := 0.0
	for _, p := range m.Line {
		most = max(most, p.Value)
	}
	return s.amount(most)
}

func (s *Speaker) in(on trim.Part) string {
	if on == trim.OnBoth {
		return " in leaf and jamb"
	}
	return " in the " + string(on)
}

// stands says how a strip stands to the leaf's faces.
func (s *Speaker) stands(m *trim.Move) string {
	switch {
	case m.Face == "":
		return ""
	case m.Face == trim.Middle:
		return ", centred"
	case m.SetIn > 0:
		return ", " + s.amount(m.SetIn) + " behind the " + string(m.Face) + " face"
	}
	return ", flush with the " + string(m.Face) + " face"
}

// outOfPlane says a hinge's move in or out of the plane. On the leaf the plate goes the
// other way than the leaf.
func (s *Speaker) outOfPlane(m *trim.Move, hinge, n string, pick func(above, below string) string) string {
	switch m.On {
	case trim.OnLeaf:
		return "Let the plate of " + hinge + " in " + n + pick(" farther back from", " farther forward to") +
			" the knuckle face of the leaf, which then stands that much farther " + pick("out", "in") + " there"
	case trim.OnBoth:
		return "Set " + hinge + " " + n + pick(" farther out", " farther in") + ", half by its place on the jamb, half by its plate's on the leaf"
	}
	return "Set " + hinge + " " + n + pick(" farther out", " farther in") + " on the jamb"
}
