package words

import (
	"math"
	"strconv"
	"strings"

	"leafwright/game/measure"
	"leafwright/geom"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
)

// Speaker turns findings into sentences.
type Speaker struct {
	Lexicon
	// Length writes a length in the person's unit, with the unit, a minus sign
	// before what is below zero. Nil writes millimetres to the tenth.
	Length func(mm float64) string
	// Place writes a distance along an edge, to the nearest whole mm or what the
	// person's unit offers. Nil writes whole millimetres.
	Place func(mm float64) string
	// Hinges is how many there are, so that the lowest can be called the bottom one;
	// 0 numbers them.
	Hinges int
	// Rails are the names of the leaf's rails from the foot up; those without one are
	// called by their place.
	Rails []string
}

// Line is one finding in words.
type Line struct {
	Verdict judge.Verdict
	Word    string // binds, tight, slack, good; strained or narrow; empty where nothing is judged
	Figure  string // the number that matters most
	Text    string // what and where, without the figure
	Cause   string // why; empty when all is good or nothing in the shapes is behind it
}

// Word names a verdict.
func Word(v judge.Verdict) string {
	switch v {
	case judge.Binds:
		return "binds"
	case judge.Tight:
		return "tight"
	case judge.Slack:
		return "slack"
	}
	return "good"
}

func (s *Speaker) length(mm float64) string {
	if s.Length != nil {
		return s.Length(mm)
	}
	return Millimetres(mm)
}

// size writes a length without its sign.
func (s *Speaker) size(mm float64) string { return s.length(math.Abs(mm)) }

func (s *Speaker) place(mm float64) string {
	if s.Place != nil {
		return s.Place(mm)
	}
	return strconv.FormatFloat(math.Round(mm), 'f', 0, 64) + " mm"
}

// Millimetres writes a length to the tenth of a millimetre, with a true minus
// sign and never as minus zero.
func Millimetres(mm float64) string {
	t := strconv.FormatFloat(measure.Round(mm, 0.1), 'f', 1, 64)
	return strings.Replace(t, "-", "−", 1) + " mm"
}

// Edge names what a side of the leaf looks at.
func (s *Speaker) Edge(e fit.Edge) string {
	switch e {
	case fit.HingeSide:
		return "hinge side"
	case fit.LatchSide:
		return s.LatchSide
	case fit.HeadSide:
		return "head"
	}
	return "floor"
}

// where says a stretch of an edge in words.
func (s *Speaker) where(e fit.Edge, at, whole geom.Interval) string {
	const near = 25 // mm: as good as the end
	fromLow, toHigh := at.Lo-whole.Lo < near, whole.Hi-at.Hi < near
	if e.Upright() {
		switch {
		case fromLow && toHigh:
			return "over the whole height"
		case fromLow:
			return "from the foot to " + s.place(at.Hi) + " up"
		case toHigh:
			return "from " + s.place(at.Lo) + " up to the top"
		}
		return "between " + s.place(at.Lo) + " and " + s.place(at.Hi) + " up"
	}
	switch {
	case fromLow && toHigh:
		return "over the whole width"
	case fromLow:
		return "in the first " + s.place(at.Hi-whole.Lo) + " from the hinge corner"
	case toHigh:
		return "in the last " + s.place(whole.Hi-at.Lo) + " to the " + s.LatchCorner
	}
	return "between " + s.place(at.Lo) + " and " + s.place(at.Hi) + " from the hinge jamb"
}

// spot says one place of an edge in words; whole is all its places, empty where
// they are not known.
func (s *Speaker) spot(e fit.Edge, at float64, whole geom.Interval) string {
	const near = 25 // mm: as good as the end
	low, high := at-whole.Lo < near, whole.Hi-at < near
	switch {
	case e.Upright() && !whole.IsEmpty() && low:
		return "at the foot"
	case e.Upright() && !whole.IsEmpty() && high:
		return "at the top"
	case e.Upright():
		return s.place(at) + " up"
	case !whole.IsEmpty() && low:
		return "at the hinge corner"
	case !whole.IsEmpty() && high:
		return "at the " + s.LatchCorner
	}
	return s.place(at) + " from the hinge jamb"
}
