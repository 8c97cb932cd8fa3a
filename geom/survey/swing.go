package survey

import "leafwright/geom/fit"

// Swing is how well the clearances through the swing are known.
type Swing struct {
	Edges                   [fit.Edges]Uncertain // the least clearance of each edge, closed to fully open
	ClearWidth, ClearToStop Uncertain
}

// Swing works that out of the door as found, by swinging as many doors as
// [Result.Gaps] hangs: by far the dearest measure. False when the door cannot be
// hung.
func (r *Result) Swing() (Swing, bool) {
	w := r.SwingWork(nil)
	if w == nil {
		return Swing{}, false
	}
	for !w.Step() {
	}
	return w.Swing(), true
}

// SwingWork is the work of [Result.Swing], to be done a little at a time:
//
//	w := result.SwingWork(nil)
//	for !w.Step() {
//	}
//	swing := w.Swing()
//
// In between, the result may be put to other uses, though not from another goroutine.
type SwingWork struct {
	adj     *adjustment
	fit     fit.Fit
	measure *measuring // nil before the first step
	change  Change
	done    bool
}

// swings is how many doors are swung in one step: a millisecond's worth, or two.
const swings = 12

// SwingWork begins the work, of the door as the change leaves it or, where that is
// nil, as found; nil when it cannot be hung.
func (r *Result) SwingWork(change Change) *SwingWork {
	if !r.Hangs {
		return nil
	}
	if change != nil && len(change.of(&r.Door).Check()) > 0 {
		return nil
	}
	return &SwingWork{adj: r.adj, change: change}
}

// The numbers measured: the least clearance of each edge, then these two.
const (
	clearWidth = int(fit.Edges) + iota
	clearToStop
	swung
)

// Step does the next part of the work and tells whether all is done.
func (w *SwingWork) Step() bool {
	switch {
	case w.done:
	case w.measure == nil:
		w.measure = w.adj.draw().measuring(swung, func(out []float64) {
			f := &w.fit
			fit.Evaluate(f, w.change.on(w.adj.net))
			for e := range fit.Edges {
				out[e] = f.Swing[e].Least
			}
			out[clearWidth], out[clearToStop] = f.ClearWidth, f.ClearToStop
		})
	default:
		w.done = w.measure.step(swings)
	}
	return w.done
}

// Swing gives what the work came to; all 0 before it is done.
func (w *SwingWork) Swing() (s Swing) {
	if !w.done {
		return s
	}
	number := func(i int) Uncertain { return Uncertain{w.measure.value[i], length(w.measure.off[i])} }
	for e := range s.Edges {
		s.Edges[e] = number(e)
	}
	s.ClearWidth, s.ClearToStop = number(clearWidth), number(clearToStop)
	return s
}
