package words

import (
	"math"
	"strings"

	"leafwright/game/measure"
)

// Inches writes a length in inches, with the marks, for [Speaker.Length].
func Inches(mm float64) string {
	text := measure.Format(mm, measure.Inch)
	if rest, below := strings.CutPrefix(text, "-"); below {
		return "−" + rest
	}
	return text
}

// InchPlace writes a distance along an edge to the eighth of an inch, for
// [Speaker.Place].
func InchPlace(mm float64) string {
	const eighth = measure.PerInch / 8
	return Inches(math.Round(mm/eighth) * eighth)
}
