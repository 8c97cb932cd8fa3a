package game

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"leafwright/game/measure"
	"leafwright/geom"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
	"leafwright/geom/survey"
)

// Sureness is how well the fit of a job that rests on readings is known.
//
// How well its swing is known takes ten times as long to work out as all else. A page
// does it between keystrokes, a little at a time, and weighs the findings again:
//
//	sure := job.Sure(false)       // or job.SureOf(change), of a door tried out
//	sure.Weigh(found)             // closed gaps, stops, latch
//	for idle && !sure.SwingStep() {
//	}
//	sure.Weigh(found)             // once SwingStep told true: the swing too
//
// A nil Sureness is sure of all: it weighs nothing and has nothing left to do.
type Sureness struct {
	gaps  *survey.Gaps
	work  *survey.SwingWork
	swing survey.Swing
	swung bool
	// Next is the reading that would best settle the tightest gap; HasNext tells
	// whether there is one worth taking.
	Next    survey.Advice
	HasNext bool
}

// Sure works out how well the fit of the job as it stands, with the moves made for
// keeps, is known, the swing too if asked. Nil where the shapes were given by hand
// or the readings make no door that can be hung.
func (j *Job) Sure(swing bool) *Sureness {
	if j.Survey == nil || !j.Survey.Hangs {
		return nil
	}
	made := len(j.Made)
	return j.sure(j.Survey.GapsAfter(made), j.Survey.ChangeAfter(made), swing)
}

// SureOf works out how well the fit of a door tried out is known: the one that
// change makes of the door as found. What to measure next is advised for its gaps.
func (j *Job) SureOf(change survey.Change) *Sureness {
	if j.Survey == nil || !j.Survey.Hangs {
		return nil
	}
	return j.sure(j.Survey.GapsOf(change), change, false)
}

func (j *Job) sure(gaps *survey.Gaps, change survey.Change, swing bool) *Sureness {
	if gaps == nil {
		return nil
	}
	s := &Sureness{gaps: gaps, work: j.Survey.SwingWork(change)}
	if swing {
		for !s.SwingStep() {
		}
	}
	s.advise()
	return s
}

// SwingStep does the next part, a millisecond or two of it natively, of working out
// how well the swing is known, and tells whether that is done. From then on
// [Sureness.Weigh] weighs the findings of the swing too.
func (s *Sureness) SwingStep() (done bool) {
	if s == nil || s.swung || s.work == nil {
		return true
	}
	if s.work.Step() {
		s.swing, s.swung, s.work = s.work.Swing(), true, nil
	}
	return s.swung
}

// advise finds what to measure next: for the tightest gap, or where nothing would
// settle that, for the next tightest. Before all others, a level on the floor where it
// decides between cutting the top and cutting the foot.
func (s *Sureness) advise() {
	if s.Next, s.HasNext = s.gaps.Levelled(); s.HasNext {
		return
	}
	edges := []fit.Edge{fit.HingeSide, fit.LatchSide, fit.HeadSide, fit.FloorSide}
	least := func(e fit.Edge) float64 { return s.gaps.Fit.Gaps[e].Least }
	geom.Order(edges, func(a, b fit.Edge) int { return cmp.Compare(least(a), least(b)) })
	for _, e := range edges {
		_, at := s.gaps.Least(e)
		if s.Next, s.HasNext = s.gaps.Next(e, at); s.HasNext {
			return
		}
	}
}

// Weigh gives findings of the job's fit their margins and odds.
func (s *Sureness) Weigh(all []judge.Finding) {
	if s == nil {
		return
	}
	judge.Weigh(all, func(f *judge.Finding) (worst, other judge.Known) {
		switch f.Subject {
		case judge.ClosedGap:
			worst := s.gaps.At(f.Edge, f.At)
			other := s.gaps.At(f.Edge, s.otherAt(f, &s.gaps.Fit.Gaps[f.Edge].Curve))
			if f.Verdict == judge.Slack { // its worst is its most
				return worst, anywhere{other, s.gaps, f}
			}
			return anywhere{worst, s.gaps, f}, other
		case judge.StopGap:
			return s.gaps.Stop(f.Edge, f.At), s.gaps.Stop(f.Edge, s.otherAt(f, &s.gaps.Fit.Stops[f.Edge].Curve))
		case judge.Latching:
			miss := s.gaps.LatchMiss
			return survey.Uncertain{Value: 0 - miss.Value, Sigma: miss.Sigma}, nil
		case judge.HingeLine:
			if f.Worst == f.Other || f.Worst == -f.Other { // the outer hinges, not one between
				return s.gaps.Strain, nil
			}
		case judge.SwingGap, judge.SwingFloor:
			if s.swung && f.Opened {
				return s.swing.Edges[f.Edge], nil
			}
		case judge.ClearWay:
			if s.swung {
				return s.swing.ClearToStop, nil
			}
		}
		return nil, nil
	})
}

// anywhere is the least of a closed gap's finding, which may be below a limit at any
// place of its stretch.
type anywhere struct {
	survey.Uncertain
	gaps *survey.Gaps
	of   *judge.Finding
}

// Below is the chance that the gap is below the limit anywhere in the stretch.
func (a anywhere) Below(limit float64) float64 {
	return a.gaps.Below(a.of.Edge, a.of.Stretch, limit)
}

// otherAt gives the place of a finding's other extreme.
func (s *Sureness) otherAt(f *judge.Finding, c *fit.Curve) float64 {
	_, leastAt, _, mostAt := c.Within(f.Stretch).Extremes()
	if f.Verdict == judge.Slack {
		return leastAt
	}
	return mostAt
}

// Misfit is a reading that does not fit the others, or a group that cannot all be
// true though nothing tells which is wrong.
type Misfit struct {
	Readings []int // their places in the job
	Judged   []survey.Judged
}

// Misfits gives the readings that do not fit: those left out, then the groups.
func (j *Job) Misfits() (out []Misfit) {
	if j.Survey == nil {
		return nil
	}
	of := j.Counted()
	judged := j.Survey.Readings
	for k := range judged {
		if judged[k].State == survey.Suspect && k < len(of) {
			out = append(out, Misfit{[]int{of[k]}, []survey.Judged{j.slipped(of[k], judged[k])}})
		}
	}
	for _, d := range j.Survey.Doubts {
		var m Misfit
		for _, k := range d.Readings {
			if k < len(of) && judged[k].State == survey.Doubted {
				m.Readings = append(m.Readings, of[k])
				m.Judged = append(m.Judged, j.slipped(of[k], judged[k]))
			}
		}
		if len(m.Readings) > 1 {
			out = append(out, m)
		}
	}
	return out
}

// slipFits is how many of its standard deviations a value may be from what the
// other readings say and still be offered for a slip.
const slipFits = 2.5

// slipped adds, for a reading typed in inches, the values with two of the typed
// figures changed round: the survey knows millimetres only.
func (j *Job) slipped(i int, judged survey.Judged) survey.Judged {
	l := j.Readings[i].Value
	if judged.State != survey.Suspect && judged.State != survey.Doubted {
		return judged
	}
	if metric, err := measure.Read(l.Text, measure.MM); err != nil || judged.Standardised == 0 || isNumber(l.Text) || strings.HasSuffix(l.Text, "m") || metric.MM != l.MM {
		return judged
	}
	want, sigma := l.MM-judged.Residual, math.Abs(judged.Residual/judged.Standardised)
	var more []survey.Slip
	b := []byte(l.Text)
	for k := 1; k < len(b); k++ {
		if !figure(b[k-1]) || !figure(b[k]) || b[k-1] == b[k] {
			continue
		}
		c := slices.Clone(b)
		c[k-1], c[k] = c[k], c[k-1]
		if v, err := measure.Read(string(c), measure.MM); err == nil && math.Abs(v.MM-want) <= slipFits*sigma {
			more = append(more, survey.Slip{Kind: survey.Transposed, Value: v.MM})
		}
	}
	judged.Slips = append(more, judged.Slips...)
	return judged
}

func figure(c byte) bool { return c >= '0' && c <= '9' }
