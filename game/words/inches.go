package words

import (
	"math"
	"strings"

	"leafwright/game/measure"
)

// Inches writes a length in inches, with the marks, for [Speaker.Length]; one that is
// there and too little for a 64th is told as under it.
func Inches(mm float64) string {
	if x := math.Abs(mm); 0.02 < x && x < measure.PerInch/128 {
		return `under 1/64"`
	}
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

// InInches tells whether a speaker writes lengths in inches.
func InInches(s *Speaker) bool {
	return s.Length != nil && strings.HasSuffix(s.Length(measure.PerInch), `"`)
}
