package fit

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

// Judge gives the verdict on a gap of v mm.
func (l Limits) Judge(v float64) Verdict {
	switch {
	case v < 0:
		return Binds
	case v < l.Least:
		return Tight
	case l.Most > 0 && v > l.Most:
		return Slack
	}
	return Good
}

// Wanted is the fit asked for.
type Wanted struct {
	Gaps       [Edges]Limits // closed, by Edge
	Stop       Limits        // leaf to stop, all round
	Swing      Limits        // least clearance at jambs and head while the leaf swings
	SwingFloor Limits        // least clearance over the floor while the leaf swings
	ClearWidth float64       // least clear way to the latch stop at 90°, mm; 0 = none asked for
}
