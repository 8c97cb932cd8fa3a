package door

import (
	"math"
	"strconv"
	"strings"
)

// Fault is one thing wrong with what was given. It reads as one line:
//
//	opening.head[2]: 8130 is not between 300 and 3700; is it 813?
//
// When nothing stands there, or the value says nothing, Value is empty and Want
// is the whole sentence.
type Fault struct {
	Path  string // the field in the job file's words, as leaf.rails[1].from
	Value string // what stands there
	Want  string // what is allowed
	Hint  string // a question that may save the reader a search, or empty
}

func (f Fault) Error() string {
	var b strings.Builder
	if f.Path != "" {
		b.WriteString(f.Path + ": ")
	}
	if f.Value != "" {
		b.WriteString(f.Value + " is not ")
	}
	b.WriteString(f.Want)
	if f.Hint != "" {
		b.WriteString("; " + f.Hint)
	}
	return b.String()
}

// Say writes a number as a fault shows it: at most a thousandth, no idle noughts.
func Say(x float64) string {
	s := strconv.FormatFloat(x, 'f', 3, 64)
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return s
	}
	if math.Abs(x) >= 1e9 || x != 0 && math.Abs(x) < 0.001 {
		return strconv.FormatFloat(x, 'g', 6, 64)
	}
	return strings.TrimRight(strings.TrimRight(s, "0"), ".")
}

// String gives the range in words.
func (r Range) String() string { return "between " + Say(r.Lo) + " and " + Say(r.Hi) }

// Fault gives the fault of x at the path, and whether there is one. For a length
// it asks after a slip when a tenth, ten times or inches would be in range.
func (r Range) Fault(path string, x float64, isLength bool) (Fault, bool) {
	if r.Holds(x) {
		return Fault{}, false
	}
	f := Fault{Path: path, Value: Say(x), Want: r.String()}
	if math.IsNaN(x) || math.IsInf(x, 0) {
		f.Want = "a number " + f.Want
	} else if isLength {
		f.Hint = r.slip(x)
	}
	return f, true
}

// slip asks whether the number has a lost or a doubled figure, or is in inches. A
// number not far past the end is more likely meant, and is not asked after.
func (r Range) slip(x float64) string {
	if x == 0 {
		return ""
	}
	var guesses []string
	if math.Abs(x) > r.Hi {
		if math.Abs(x) < 2*r.Hi {
			return ""
		}
		if y := x / 10; r.Holds(y) {
			guesses = append(guesses, Say(y))
		}
	} else {
		if y := x * 10; r.Holds(y) {
			guesses = append(guesses, Say(y))
		}
		if y := x * 25.4; r.Holds(y) {
			guesses = append(guesses, Say(x)+" inches, "+Say(y))
		}
	}
	if len(guesses) == 0 {
		return ""
	}
	return "is it " + strings.Join(guesses, ", or ") + "?"
}
