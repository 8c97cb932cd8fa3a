// Package measure reads and writes lengths as people type them: millimetres, or
// feet, inches and fractions of an inch.
//
// Read takes, in either unit's field:
//
//	797   797.5   797,5   797 mm   79.7cm   0.797 m
//	2' 7 3/8"   2ft 7in   31-3/8   31 3/8"   31⅜   3/8   2′ 7½″   -1/16"
//
// Rules for what could be read two ways:
//
//   - A plain number is in the unit its field shows, millimetres or inches.
//   - A fraction is always inches, whatever the field shows.
//   - A point or a comma is the decimal mark. A comma with three figures behind it
//     (1,981) could be a thousand, so it is refused.
//   - Inches behind feet are below 12, and a fraction behind whole inches below 1.
//
// Lengths are kept to a millionth of a millimetre, which holds every 64th of an
// inch exactly.
package measure

import (
	"math"
	"strconv"
	"strings"
)

// Unit is what a field shows its lengths in.
type Unit int

// The units.
const (
	MM   Unit = iota // millimetres
	Inch             // feet, inches and 64ths
)

// String names the unit as it stands beside a field.
func (u Unit) String() string {
	if u == Inch {
		return "ft in"
	}
	return "mm"
}

// PerInch is how many millimetres an inch has.
const PerInch = 25.4

// Most is the greatest length read, in mm either way: nothing round a door is
// longer, so anything beyond is a slip.
const Most = 100000

// Length is a length together with the words it was typed in.
type Length struct {
	MM   float64
	Text string // as typed, outer spaces gone
}

// Format gives the length for reading: to 0.1 mm, or to the nearest 64th of an
// inch, the fraction in lowest terms.
func Format(mm float64, u Unit) string {
	if !finite(mm) {
		return strconv.FormatFloat(mm, 'f', -1, 64)
	}
	if u == Inch {
		return sixtyFourths(mm)
	}
	return decimals(Round(mm, 0.1), 1)
}

// Round rounds a length to a step, both in the same unit: half a step, or what noise of
// calculation has made of it, away from zero. Every length told is rounded so, that one
// length is not told as two.
func Round(x, step float64) float64 {
	const noise = 1e-6 // of a step
	return math.Trunc(x/step+math.Copysign(0.5+noise, x))*step + 0
}

// Exact gives the length for editing: read again it is the same to 0.001 mm.
// Inches that are no whole 64th are given as a decimal.
func Exact(mm float64, u Unit) string {
	if u == Inch && finite(mm) {
		if n := math.Round(mm / PerInch * 64); math.Abs(n*PerInch/64-mm) < 0.0005 {
			return sixtyFourths(mm)
		}
		return decimals(mm/PerInch, 5) + `"`
	}
	return decimals(mm, 3)
}

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }

// decimals gives x with at most n figures behind the point and no idle noughts.
func decimals(x float64, n int) string {
	s := strconv.FormatFloat(x, 'f', n, 64)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	if s == "-0" {
		return "0"
	}
	return s
}

func sixtyFourths(mm float64) string {
	n := math.Round(math.Abs(mm) / PerInch * 64)
	if n > 1e15 { // past whole numbers: no tape is that long
		return decimals(mm/PerInch, 0) + `"`
	}
	parts := int64(n)
	var b strings.Builder
	if mm < 0 && parts > 0 {
		b.WriteByte('-')
	}
	feet, inches, over := parts/768, parts/64%12, parts%64
	if feet > 0 {
		b.WriteString(strconv.FormatInt(feet, 10) + "'")
		if inches == 0 && over == 0 {
			return b.String()
		}
		b.WriteByte(' ')
	}
	if inches > 0 || over == 0 {
		b.WriteString(strconv.FormatInt(inches, 10))
		if over > 0 {
			b.WriteByte(' ')
		}
	}
	if over > 0 {
		of := int64(64)
		for over%2 == 0 {
			over, of = over/2, of/2
		}
		b.WriteString(strconv.FormatInt(over, 10) + "/" + strconv.FormatInt(of, 10))
	}
	b.WriteByte('"')
	return b.String()
}
