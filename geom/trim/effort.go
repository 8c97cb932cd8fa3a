package trim

// minutes gives a rough time for one person, offering the leaf up once, mm³ of
// shavings at a tenth of a litre in ten minutes (common practice, no published
// source).
func (w *work) minutes(m *Move) float64 {
	hinges := 1.0
	if m.Hinge == 0 {
		hinges = float64(len(w.p.Door.Hinges))
	}
	if hinges > 0 && w.marks(m) {
		return 0 // they are to be marked and cut in any case
	}
	const shaved = 10000.0 // mm³ a minute, by a sharp plane on softwood
	switch m.Kind {
	case Plane, Bevel:
		return 10 + w.done.Volume/shaved
	case Scribe:
		return 15 + w.done.Volume/shaved
	case Cut, Undercut:
		return 25
	case Ease:
		return 5
	case Splice:
		return 90 // the glue's setting not counted
	case Reuse:
		return 75
	case Shift, Set:
		return float64(25 * hinges)
	case Raise:
		return float64(20 * hinges)
	case Sink:
		return float64(15 * hinges)
	case Pack:
		return float64(8 * hinges)
	case Rehinge:
		return float64(35 * hinges)
	case PlaneJamb:
		return 40
	case PackJamb, Follow:
		return 45
	case Restop:
		return 25
	case Threshold:
		return 120
	}
	return 0
}

// marks tells whether a move only has hinges marked elsewhere, or let in deeper, where
// nothing is cut yet.
func (w *work) marks(m *Move) bool {
	switch m.Kind {
	case Shift, Raise, Sink:
	default:
		return false
	}
	for i := range w.p.Door.Hinges {
		h := &w.p.Door.Hinges[i]
		if (m.Hinge == 0 || m.Hinge == i+1) && (m.On != OnJamb && !h.UncutLeaf || m.On != OnLeaf && !h.UncutJamb) {
			return false
		}
	}
	return true
}
