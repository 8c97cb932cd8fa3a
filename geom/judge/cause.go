package judge

import (
	"cmp"
	"math"
	"slices"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fit"
)

// Cause is a departure behind a finding.
type Cause struct {
	Departure Departure
	// Amount is how much of the departure there is, mm with its sign (degrees for
	// a bevel): a jamb leaning to +x, a head rising towards the latch, a leaf too
	// wide or too tall, gaps at the hinges too wide are above zero.
	Amount float64
	// Effect is what the finding's value would change by if the departure were
	// taken away, mm.
	Effect float64
}

// A departure is named as a cause when taking it away would mend at least
// mendPart of what is out of limits, and a further one when it does at least
// alsoPart of what the first does and the first does not mend wholePart by itself.
const (
	mendPart  = 0.2
	alsoPart  = 0.45
	wholePart = 0.95
	maxNamed  = 2
)

// findCauses takes each departure away in turn, hangs the door again and sees
// what each finding's value does.
func findCauses(f *fit.Fit, d *door.Door, w *Wanted, all []Finding) {
	wanting := false
	for i := range all {
		wanting = wanting || all[i].needsCause()
	}
	if !wanting {
		return
	}
	var trial fit.Fit
	for _, dep := range departures(f, d, w) {
		other := d.Clone()
		dep.take(&other)
		fit.Evaluate(&trial, &other)
		for i := range all {
			a := &all[i]
			if !a.needsCause() {
				continue
			}
			effect := value(&trial, &other, *a) - value(f, d, *a)
			mends := effect
			if a.Verdict == Slack {
				mends = -effect
			}
			if mends >= mendPart*a.short() && mends >= slight/2 {
				a.Causes = append(a.Causes, Cause{dep.name, dep.amount, effect})
			}
		}
	}
	for i := range all {
		all[i].Causes = chief(all[i])
	}
}

// needsCause tells whether something is behind the finding.
func (f *Finding) needsCause() bool { return f.Verdict != Good || f.Subject == LetGo }

// chief keeps the causes worth naming, the greatest first.
func chief(f Finding) []Cause {
	c := f.Causes
	size := func(c Cause) float64 {
		if f.Verdict == Slack {
			return -c.Effect
		}
		return c.Effect
	}
	geom.Order(c, func(a, b Cause) int { return cmp.Compare(size(b), size(a)) })
	seen := map[Departure]bool{} // one departure may be taken away in two ways: the better one counts
	c = slices.DeleteFunc(c, func(x Cause) bool { was := seen[x.Departure]; seen[x.Departure] = true; return was })
	n := 0
	for n < len(c) && n < maxNamed && size(c[n]) >= alsoPart*size(c[0]) {
		n++
	}
	if n > 1 && size(c[0]) >= wholePart*f.short() {
		n = 1
	}
	return c[:n]
}

// value gives what a finding is about, at its own place, in another fit.
func value(f *fit.Fit, d *door.Door, a Finding) float64 {
	switch a.Subject {
	case ClosedGap:
		return f.Gaps[a.Edge].At(a.At)
	case StopGap:
		return f.Stops[a.Edge].At(a.At)
	case SwingGap, SwingFloor:
		return f.Swing[a.Edge].Least
	case Latching:
		return -f.LatchMiss
	case HingeLine:
		return -hingeLine(f, d).Worst
	case LetGo:
		by, _ := Falls(f, d, math.Copysign(1, -a.Worst))
		return -by
	}
	return f.ClearToStop
}
