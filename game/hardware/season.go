package hardware

import (
	"leafwright/game"
	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
	"leafwright/geom/timber"
)

// Where is where the leaf hangs and what is known of its moisture.
type Where struct {
	Climate timber.Climate
	Room    timber.Room
	South   bool    // of the equator
	Month   int     // it is now, 0 January to 11 December; −1 not said
	Meter   float64 // what a moisture meter reads on the leaf now, %; 0 not read
}

// Basis is what the leaf's moisture today is taken from.
type Basis string

// The bases.
const (
	ByMeter Basis = "meter"        // read
	ByMonth Basis = "month"        // what timber comes to in this month's air
	ByYear  Basis = "mean of year" // the middle of the year, nothing being known
)

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
	Least, Most [12]float64 // the same in every month
	Verdicts    [12]judge.Verdict
	Wanted      judge.Limits // of the closing gap

	// Fit are the gaps to fit to today for the targets wanted in the month the leaf is widest
	// in, by edge. The closing gap keeps within its limits through the year when it is fitted
	// to between Low and High, mm; Low > High when none does, High = 0 when no greatest
	// one is wanted. Paint to come is in none of them: Paint is what it takes from each gap at jambs and head, a
	// primer and two enamel coats on leaf and frame.
	Fit       [door.Edges]timber.Gap
	Low, High float64
	Paint     timber.Allowance
}

// SeasonOf gives the season of the job's leaf after moves. The climate and the room
// must have a preset.
func SeasonOf(job *game.Job, t *game.Tried, at Where) Season {
	l, a := &t.Door.Leaf, &t.Anatomy
	s := Season{Where: at, Wood: woodOf(a), Across: timber.MovingOf(l, a).Across, Wanted: job.Wanted.Gaps[fit.LatchSide]}
	if p := timber.PresetFor(at.Climate, at.Room); p != nil {
		s.Air = p.Year(at.South)
	}
	moisture := s.Air.Moisture()
	today := 0.0
	for _, m := range moisture {
		today += m / 12
	}
	s.Basis = ByYear
	named := at.Month >= 0 && at.Month < 12
	switch {
	case at.Meter > 0:
		s.Basis, today = ByMeter, at.Meter
		if named {
			moisture = timber.Metered(moisture, []timber.Meter{{Month: at.Month, Moisture: at.Meter}})
		}
	case named:
		s.Basis, today = ByMonth, moisture[at.Month]
	}
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
	s.Least, s.Most = s.Through(g.Least), s.Through(g.Most)
	for m := range s.Verdicts {
		s.Verdicts[m] = min(s.Wanted.Judge(s.Least[m]), s.Wanted.Judge(s.Most[m]))
	}
	var wanted [door.Edges]float64
	for e, w := range job.Wanted.Gaps {
		wanted[e] = w.Target
	}
	s.Fit = timber.Fitting(wanted, &s.Season, [door.Edges]timber.Allowance{})
	s.Low = s.AtFitting(s.Wanted.Least)
	if s.Wanted.Most > 0 {
		s.High = max(0, s.Wanted.Most+s.Grows[s.Slack])
	}
	coats := timber.Face{On: []timber.Layers{{Paint: timber.Primer, Coats: 1}, {Paint: timber.Enamel, Coats: 2}}}
	s.Paint = timber.AllowanceOf(coats, coats)
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
