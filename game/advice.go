package game

import (
	"leafwright/game/measure"
	"leafwright/geom/advise"
	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
	"leafwright/geom/survey"
)

// AdviceWishes are what a person prefers and forbids when asking what to do about a
// door. The zero value prefers the least timber and forbids nothing.
type AdviceWishes struct {
	Prefer      advise.Preference
	KeepFrame   bool // nothing is done to the frame and its stops
	KeepHinges  bool // nothing is done to the hinges
	NoStrip     bool
	StilesAlike bool // as much off one stile as off the other
	TopRail     bool // as high in the end as the one beside it, where that is given
	Inches      bool // amounts go by 1/32 in., packers likewise; else by half a mm
}

// inchStep is what amounts in inches are whole multiples of, and inchPackers what
// packing there is, mm (common practice, no published source).
const inchStep = measure.PerInch / 32

var inchPackers = []float64{inchStep / 2, inchStep, 2 * inchStep, 3 * inchStep, 4 * inchStep}

// NeighbourTopRail gives how high the top rail of the door beside this one is, edge to
// edge, mm; none where its rails are not given.
func (j *Job) NeighbourTopRail() (mm float64, has bool) {
	if len(j.Neighbour) == 0 {
		return 0, false
	}
	top := &j.Neighbour[0]
	for i := range j.Neighbour {
		if r := &j.Neighbour[i]; r.To > top.To {
			top = r
		}
	}
	return top.To - top.From, true
}

// Advice tells what to do about the door as it stands. Where readings give no door
// that can be hung there is neither a plan nor a conflict.
func Advice(j *Job, w AdviceWishes) advise.Advice {
	a := StartAdvice(j, w)
	for !a.Step() {
	}
	return a.Advice()
}

// AdviceWork is a job's advice in the making, in slices of a millisecond or two
// natively; the first, of a job that rests on readings, takes as long as [Job.Sure] but
// for the swing.
type AdviceWork struct {
	j       *Job
	problem advise.Problem
	work    *advise.Work
	none    bool // there is no door to advise on
}

// StartAdvice begins advice that is worked out by [AdviceWork.Step]. The job must not
// change while that lasts. It is no method: the linker keeps every method of a job, and
// the page's own program has no use for this one.
func StartAdvice(j *Job, w AdviceWishes) *AdviceWork {
	return &AdviceWork{j: j, problem: j.problem(w), none: j.Survey != nil && !j.Survey.Hangs}
}

// Step does a slice of the work and tells whether that was the last.
func (a *AdviceWork) Step() (done bool) {
	switch {
	case a.none:
		return true
	case a.work != nil:
		return a.work.Step()
	case a.j.Survey != nil:
		gaps := a.j.Survey.GapsAfter(len(a.j.Made))
		if gaps == nil {
			a.none = true
			return true
		}
		a.problem.Sigma = advise.SigmasOf(gaps, floorUnread(a.j.Survey))
	}
	a.work = advise.Start(&a.problem)
	return false
}

// floorUnread is how far the floor under the swing may be off what it was taken to be,
// mm, one sigma: none where it was read.
func floorUnread(r *survey.Result) (sigma float64) {
	for _, a := range r.Assumptions() {
		if a.What == survey.FloorSwung {
			sigma = max(sigma, a.Sigma)
		}
	}
	return sigma
}

// Advice gives the advice, all of it once Step has told that it is done; plans given
// before that are in no order, and without stages and reasons.
func (a *AdviceWork) Advice() advise.Advice {
	if a.work == nil {
		return advise.Advice{}
	}
	return a.work.Advice()
}

// problem is the door as it stands and what is wished of it.
func (j *Job) problem(w AdviceWishes) advise.Problem {
	stands := j.Stands()
	p := advise.Problem{
		Piece: stands.piece(), Wanted: j.WantedToday(&stands), Offered: j.offered(),
		Wishes: advise.Wishes{Prefer: w.Prefer, LeaveFrame: w.KeepFrame, HingesStay: w.KeepHinges, NoStrip: w.NoStrip, StilesAlike: w.StilesAlike},
	}
	p.Piece.Anatomy.Rated = j.rated()
	if w.TopRail {
		p.Wishes.TopRail, _ = j.NeighbourTopRail()
	}
	if w.Inches {
		p.Step, p.Packers = inchStep, inchPackers
	}
	return p
}

// offered tells whether the leaf was hung as it stands and its gaps read at both
// jambs and the head.
func (j *Job) offered() bool {
	var at [door.Edges]bool
	for i := range j.Readings {
		r := &j.Readings[i]
		if r.counts() && r.Kind == survey.GapRead && r.After == len(j.Made) {
			for e := range door.Edges {
				at[e] = at[e] || r.Side == survey.SideOf(e)
			}
		}
	}
	return at[door.HingeSide] && at[door.LatchSide] && at[door.HeadSide]
}

// OfferUp is the note of an option's move before which the leaf is to be offered up.
const OfferUp = "First offer the leaf up and read its gaps: they may ask for a little more or less."

// OptionOf gives a plan as an option of that name, of ordinary moves. Those of a later
// stage stand behind, the first of them with the note [OfferUp].
func OptionOf(p *advise.Plan, name string) Option {
	o := Option{Name: cutLine(name)}
	for i := range p.Stages {
		begins := len(o.Moves)
		o.Moves = append(o.Moves, cloneMoves(p.Stages[i].Moves)...)
		if i > 0 && begins > 0 && begins < len(o.Moves) {
			o.Moves[begins].Note = OfferUp
		}
	}
	return o
}

// FindingsAfter gives the findings of a job's door once an option is carried out, with
// what the readings' errors leave open, but not of the swing: that takes longer than
// anyone waits for advice that follows every figure typed.
func FindingsAfter(job *Job, o Option) []judge.Finding {
	j := job.Clone()
	j.Options = []Option{o}
	tried := j.Try(0)
	hung := new(fit.Fit)
	fit.Evaluate(hung, &tried.Door)
	wanted := j.WantedToday(&tried)
	found := judge.Findings(hung, &tried.Door, &wanted)
	j.SureOf(j.Change(0)).Weigh(found)
	return found
}
