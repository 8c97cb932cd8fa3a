package words

import (
	"math"
	"strconv"
	"strings"

	"leafwright/game/measure"
	"leafwright/geom"
	"leafwright/geom/survey"
)

// Suspect says, of a reading that does not fit the others, by how much, what it may
// have been, and what became of it. typed is what was typed for it.
func (s *Speaker) Suspect(j survey.Judged, typed string) string {
	said := Capital(s.Thing(j.Reading)) + s.typed(typed) + ", does not fit the other readings by " + s.size(j.Residual)
	if typed == "" { // a place where it rubs
		said = Capital(s.Thing(j.Reading)) + " does not fit the other readings: they say " + s.length(j.Fitted)
	}
	if asked := s.slips(j, typed); asked != "" {
		return said + ": " + asked + " It was left out."
	}
	return said + ". It was left out: read it again."
}

func (s *Speaker) typed(text string) string {
	if text == "" {
		return ""
	}
	return ", " + text
}

// slips asks after what a reading may have been.
func (s *Speaker) slips(j survey.Judged, typed string) string {
	const most = 2
	var parts []string
	for _, slip := range j.Slips[:min(most, len(j.Slips))] {
		if slip.Kind == survey.OtherDiagonal {
			parts = append(parts, "is it the other diagonal")
			continue
		}
		parts = append(parts, "is it "+like(typed, slip.Value)+" ("+slipNames[slip.Kind]+")")
	}
	if len(parts) == 0 {
		return ""
	}
	return strings.Join(parts, ", or ") + "?"
}

var slipNames = map[survey.SlipKind]string{
	survey.Transposed:   "two figures changed round",
	survey.PointSlipped: "the point slipped",
	survey.Inches:       "inches taken for millimetres",
	survey.WrongZero:    "the tape not read from its zero",
	survey.WrongSign:    "the other way",
}

// like writes a length the way another was typed.
func like(typed string, mm float64) string {
	plain, err := measure.Read(typed, measure.Inch)
	if metric, e := measure.Read(typed, measure.MM); err == nil && e == nil && plain.MM == metric.MM && !strings.HasSuffix(typed, "m") {
		return measure.Format(mm, measure.Inch)
	}
	return measure.Exact(mm, measure.MM)
}

// Doubt says of readings that contradict each other that nothing tells which of
// them is wrong. typed is what was typed for each.
func (s *Speaker) Doubt(group []survey.Judged, typed []string) string {
	said := "These cannot all be true, and nothing tells which is wrong, so none counts for much."
	for i, j := range group {
		said += " " + Capital(s.Thing(j.Reading)) + s.typed(typed[i])
		if asked := s.slips(j, typed[i]); asked != "" {
			said += ": " + asked
		} else {
			said += "."
		}
	}
	return said + " Read them again."
}

// Assumed says what was not measured and what it was taken for.
func (s *Speaker) Assumed(a survey.Assumption) string {
	if size, is := assumedSize(a); is {
		return a.What + ": taken as " + s.length(size)
	}
	return a.What + ": taken " + a.Taken
}

// assumedSize gives the size something was taken to have, if it has one.
func assumedSize(a survey.Assumption) (mm float64, is bool) {
	text, is := strings.CutPrefix(a.Taken, "as ")
	mm, err := strconv.ParseFloat(text, 64)
	return mm, is && err == nil
}

// NotMeasured says all that was not measured, what was taken alike in one line.
func (s *Speaker) NotMeasured(all []survey.Assumption) []string {
	var order, falls []string
	things := map[string][]string{}
	const usual = "as is usual"
	for _, a := range all {
		if a.What == survey.Fall {
			falls = append(falls, s.Fall(a.Tilt))
			continue
		}
		taken, what := a.Taken, a.What
		if size, is := assumedSize(a); is {
			taken, what = usual, what+" ("+s.length(size)+")"
		}
		if things[taken] == nil {
			order = append(order, taken)
		}
		things[taken] = append(things[taken], what)
	}
	out := falls
	for _, taken := range order {
		out = append(out, Capital(Listed(sharing(things[taken], "bow of the ")))+": taken "+taken+".")
	}
	return out
}

// Fall says how a fall across the opening was shared out between head and floor.
func (s *Speaker) Fall(t survey.Tilt) string {
	floor := t.Fall - t.Head
	lower, head, sill := "lower", "fall", "rise"
	if t.Fall < 0 {
		lower, head, sill = "higher", "rise", "fall"
	}
	share := "half of it was taken for the head's " + head + " and half for the floor's " + sill
	if part := floor / t.Fall; math.Abs(part-0.5) > 0.1 {
		share = s.size(math.Abs(t.Head)) + " of it was taken for the head's " + head + " and " + s.size(math.Abs(floor)) + " for the floor's " + sill
	}
	return "The opening is " + s.size(math.Abs(t.Fall)) + " " + lower + " at its latch side, and nothing tells whether head or floor is out of level: " + share + ". Level the floor to know: it decides whether the top is cut or the foot."
}

// sharing says a beginning that all share only once.
func sharing(things []string, beginning string) []string {
	out := append([]string(nil), things...)
	for i := range out {
		rest, has := strings.CutPrefix(out[i], beginning)
		if !has {
			return things
		}
		if i > 0 {
			out[i] = rest
		}
	}
	return out
}

// Unusual says what is far from ordinary though nothing contradicts it; "" where
// nothing is.
func (s *Speaker) Unusual(all []survey.Unusual) string {
	if len(all) == 0 {
		return ""
	}
	what := make([]string, len(all))
	for i := range all {
		what[i] = all[i].What
	}
	return "Far from ordinary: " + Listed(what) + ". Where only one reading says so, take it again."
}

// Next says what to measure next, and what it is good for.
func (s *Speaker) Next(a survey.Advice) string {
	ask := s.Ask(a.Reading)
	if a.Again {
		ask = "Measure " + s.Thing(a.Reading) + " again, with the tool set afresh."
	}
	return ask + " It would make the gap at the " + s.Edge(a.Edge) + ", " + s.spot(a.Edge, a.At, geom.Empty()) + ", sure to ± " +
		s.between(s.size(a.Margin()), s.size(a.Now.Margin()), " instead of ± ") + "."
}
