// Package judge holds a fit against the gaps wanted and says what is wrong with
// it, where, by how much and for what reason; and it grades the leaf's and the
// frame's own condition against published tolerances.
package judge

import "leafwright/geom/fit"

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

// rounding is how far in mm beyond a limit a gap may lie and still keep it, so
// that a gap that is the limit to the last bits keeps it.
const rounding = 1e-6

// Judge gives the verdict on a gap of v mm.
func (l Limits) Judge(v float64) Verdict {
	switch {
	case !(v >= -rounding): // what is no number is no clearance
		return Binds
	case v < l.Least-rounding:
		return Tight
	case l.Most > 0 && v > l.Most+rounding:
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
