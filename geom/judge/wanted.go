// Package judge holds a fit against the gaps wanted and says what is wrong with
// it, where, by how much and for what reason; and it grades the leaf's and the
// frame's own condition against published tolerances.
package judge

import (
	"math"

	"leafwright/geom/fit"
)

// Limits are what a gap should be, in mm: Least ≤ Target ≤ Most. Most 0 means
// that no gap is too wide.
type Limits struct{ Least, Target, Most float64 }

// Verdict is how a gap stands to its limits.
type Verdict int

// The verdicts, worst first.
const (
	Binds Verdict = iota // below zero: the pieces would overlap
	Tight                // clear, but below the least
	Slack                // above the most
	Good
)

// Blade is the thickness of the thinnest blade of an ordinary feeler set, mm (common
// practice, no published source). A gap that misses a limit by no more keeps it: no
// feeler tells it from one at the limit, and to a tenth of a millimetre both read alike.
const Blade = 0.05

// rounding is how far in mm beyond what it is held against a number may lie and still
// keep it, so that one that is the limit to the last bits keeps it.
const rounding = 1e-6

// Kept gives between what a gap keeps its limits, mm: a [Blade] beyond them. Most is
// without end where no gap is too wide.
func (l Limits) Kept() (least, most float64) {
	least, most = max(0, l.Least)-Blade-rounding, math.Inf(1)
	if l.Most > 0 {
		most = l.Most + Blade + rounding
	}
	return least, most
}

// Bind gives below what a gap binds, mm: nought, or a [Blade] less where the leaf may
// touch, since Least is 0.
func (l Limits) Bind() float64 {
	least, _ := l.Kept()
	return min(-rounding, least)
}

// Judge gives the verdict on a gap of v mm.
func (l Limits) Judge(v float64) Verdict {
	least, most := l.Kept()
	switch {
	case !(v >= l.Bind()): // what is no number is no clearance
		return Binds
	case v < least:
		return Tight
	case v > most:
		return Slack
	}
	return Good
}

// Wanted is the fit asked for.
type Wanted struct {
	Gaps       [fit.Edges]Limits // closed, by Edge
	Stop       Limits            // leaf to stop, all round
	Swing      Limits            // least clearance at jambs and head while the leaf swings
	SwingFloor Limits            // least clearance over the floor while the leaf swings
	ClearWidth float64           // least clear way to the latch stop at 90°, mm; 0 = none asked for
}
