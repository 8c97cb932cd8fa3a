package hardware

import (
	"leafwright/game"
	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
	"leafwright/geom/timber"
)

// Where is where the leaf hangs and what is known of its moisture, Basis what its
// moisture today is taken from.
type (
	Where = game.Where
	Basis = game.Basis
)

// The bases.
const (
	ByMeter = game.ByMeter
	ByMonth = game.ByMonth
	ByYear  = game.ByYear
)

// Usual gives where the leaf hangs with the usual climate and room for what is not said.
func Usual(w Where) Where {
	if w.Climate == "" {
		w.Climate = timber.Maritime
	}
	if w.Room == "" {
		w.Room = timber.Heated
	}
	return w
}

// Season is how the leaf goes through the year, and the gaps to fit it to.
type Season struct {
	Where
	Wood
	Basis       Basis
	Air         timber.Year
	Across      float64 // mm of timber across the grain that moves
	Coefficient float64
	timber.Season
	// Sawn is how far the leaf moves between the months it is narrowest and widest in, mm:
	// with the coefficient taken, and if it were sawn on the quarter or flat.
	Sawn [3]float64

	Closing     [2]float64  // least and most of the closing gap today, mm
	Least, Most [12]float64 // the same in every month, painted
	Verdicts    [12]judge.Verdict
	Wanted      judge.Limits // of the closing gap

	// Plan is what the gaps wanted come to at fitting, and Fit its gaps by edge. The closing
	// gap keeps within its limits through the year when it is fitted to between Low and
	// High, mm; Low > High when none does, High = 0 when no greatest one is wanted.
	Plan      game.Fitting
	Fit       [door.Edges]timber.Gap
	Low, High float64
	Painted   bool // the job says what paint is to come, or comes off
	// Paint is what that takes from each gap at jambs and head; where the job says nothing,
	// what a primer and two enamel coats on leaf and frame would take, which is in no gap.
	Paint timber.Allowance

	job *game.Job
}

// SeasonOf gives the season of the job's leaf after moves. The climate and the room
// must have a preset.
func SeasonOf(job *game.Job, t *game.Tried, at Where) Season {
	l, a := &t.Door.Leaf, &t.Anatomy
	s := Season{job: job, Where: at, Wood: woodOf(a), Across: timber.MovingOf(l, a).Across, Wanted: job.Wanted.Gaps[fit.LatchSide]}
	if p := timber.PresetFor(at.Climate, at.Room); p != nil {
		s.Air = p.Year(at.South)
	}
	moisture, today, basis := game.MoistureOf(&at)
	s.Basis = basis
	for i, sawn := range [...]timber.Sawn{timber.AnyWay, timber.Quarter, timber.Flat} {
		c := s.Species.Coefficient(sawn)
		se := timber.SeasonOf(s.Across, c, today, moisture)
		s.Sawn[i] = se.Grows[se.Tight] - se.Grows[se.Slack]
		if i == 0 {
			s.Coefficient, s.Season = c, se
		}
	}

	var f fit.Fit
	fit.Evaluate(&f, &t.Door)
	g := f.Gaps[fit.LatchSide]
	s.Closing = [2]float64{g.Least, g.Most}
	s.Plan = game.FittingIn(job, s.Across, &s.Season)
	s.Fit = s.Plan.Gaps
	paint := s.Fit[door.LatchSide].Paint
	s.Least, s.Most = s.Through(g.Least-paint), s.Through(g.Most-paint)
	for m := range s.Verdicts {
		s.Verdicts[m] = min(s.Wanted.Judge(s.Least[m]), s.Wanted.Judge(s.Most[m]))
	}
	s.Low = max(0, s.Wanted.Least+paint+s.Grows[s.Tight])
	if s.Wanted.Most > 0 {
		s.High = max(0, s.Wanted.Most+paint+s.Grows[s.Slack])
	}
	s.Painted = job.Paint != game.Paint{}
	leaf, frame := s.Plan.Leaf, s.Plan.Frame
	s.Paint = timber.Allowance{Takes: leaf.Takes + frame.Takes, Gives: leaf.Gives + frame.Gives, Least: leaf.Least + frame.Least, Most: leaf.Most + frame.Most}
	if !s.Painted {
		coats := timber.Face{On: []timber.Layers{{Paint: timber.Primer, Coats: 1}, {Paint: timber.Enamel, Coats: 2}}}
		s.Paint = timber.AllowanceOf(coats, coats)
	}
	return s
}

// Worst gives the worst verdict of the year.
func (s *Season) Worst() judge.Verdict {
	worst := judge.Good
	for _, v := range s.Verdicts {
		worst = min(worst, v)
	}
	return worst
}
