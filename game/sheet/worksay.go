package sheet

import (
	"math"
	"strconv"
	"strings"

	"leafwright/game/measure"
	"leafwright/game/words"
	"leafwright/geom/door"
)

// What a person can mark or set, mm: a line by rule and knife, a depth or a thickness by
// gauge and calliper, a place along an edge by tape (common practice, no published
// source). In inches a 64th for the first two, a 16th along an edge, a 32nd for sizes.
const (
	lineStep  = 0.5
	fineStep  = 0.1
	placeStep = 1.0
)

// sizeStep is what a size or a height on the rod is rounded to.
func (a *Ask) sizeStep() float64 {
	if a.Unit == measure.Inch {
		return measure.PerInch / 32
	}
	return lineStep
}

// steps gives them in the ask's unit.
func (a *Ask) steps() (line, fine, place float64) {
	if a.Unit == measure.Inch {
		return measure.PerInch / 64, measure.PerInch / 64, measure.PerInch / 16
	}
	return lineStep, fineStep, placeStep
}

// toStep rounds a length to what can be marked.
func toStep(mm, step float64) float64 { return measure.Round(mm, step) }

// figure writes a length rounded to a step: a bare number of mm, or inches with their
// marks.
func (a *Ask) figure(mm, step float64) string {
	mm = toStep(mm, step)
	text := measure.Format(mm, a.Unit)
	return strings.Replace(text, "-", "−", 1)
}

// length writes it with its unit; one that is there and less than half a step as under one.
func (a *Ask) length(mm, step float64) string {
	if x := math.Abs(mm); x > 0.02 && toStep(x, step) == 0 {
		return "under " + a.length(step, step)
	}
	if a.Unit == measure.Inch {
		return a.figure(mm, step)
	}
	return a.figure(mm, step) + " mm"
}

// unit is what stands in a table's head where its figures have none.
func (a *Ask) unit() string {
	if a.Unit == measure.Inch {
		return ""
	}
	return ", mm"
}

// rounding says how the sheet's numbers are rounded.
func (a *Ask) rounding() string {
	if a.Unit == measure.Inch {
		return "Rounded: amounts, depths and thicknesses to 1/64 in, sizes and heights to 1/32 in, places along an edge to 1/16 in."
	}
	return "Rounded: sizes, heights and lines to 0.5 mm, lines to 0.1 where a column says so; depths and thicknesses to 0.1; places along an edge to 1."
}

// bench speaks as the sheets for the bench do: lengths without idle noughts.
func (a *Ask) bench(d *door.Door, rails []door.Rail) *words.Speaker {
	s := &words.Speaker{Lexicon: words.For(a.Words), Hinges: len(d.Hinges)}
	for i := range rails {
		s.Rails = append(s.Rails, rails[i].Name)
	}
	_, fine, place := a.steps()
	s.Length = func(mm float64) string { return a.length(mm, fine) }
	s.Place = func(mm float64) string { return a.length(mm, place) }
	return s
}

func number(n int) string { return strconv.Itoa(n) }
