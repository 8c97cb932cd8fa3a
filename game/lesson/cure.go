package lesson

import (
	"math"

	"leafwright/geom/advise"
	"leafwright/geom/fault"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
	"leafwright/geom/trim"
)

// Cure is moves that put a door right: nothing is out of what is wanted, and trying it
// shows nothing.
type Cure struct {
	Found   bool
	Moves   []trim.Move
	Steps   []trim.Step
	Timber  float64 // cm³ off the leaf
	Minutes float64
	Frame   bool // the frame is worked
	// Plan is the advice's, where the cure is one of its plans and nothing else; Advice
	// is what it is out of.
	Plan   *advise.Plan
	Advice *advise.Advice
}

// price is what a cure costs, in minutes of work: two cm³ of timber count as one, and the
// frame being worked as a quarter of an hour. The weights are our own, so that no learner
// is shown five hours at the hinges to save a shaving.
func (c *Cure) price() float64 {
	const frame, cm3 = 15, 0.5
	p := cm3*c.Timber + c.Minutes
	if c.Frame {
		p += frame
	}
	return p
}

// cureOf gives the cure that costs least, or one that is plainer: of the plans found by linear programs and
// confirmed by the exact fit, of the cure the trade has for the faults, and of that cure
// with a plan for what it leaves. Not found where none of them puts the door right.
func cureOf(p *trim.Piece, l *Lesson) (best Cure) {
	if good(p, l) {
		return Cure{Found: true}
	}
	first := advise.Plans(problem(p, l))
	planned := func(faces bool) {
		for i := range first.Plans {
			if (first.Plans[i].Family == advise.JambsToo) == faces && best.lesser(made(p, l, first.Plans[i].Moves)) {
				best.Plan, best.Advice = &first.Plans[i], &first
			}
		}
	}
	planned(false)
	moves := fault.Cure(*p, l.Faults)
	usual := made(p, l, rounded(moves))
	if !usual.Found {
		usual = made(p, l, moves)
	}
	if !best.lesser(usual) && usual.plainer(&best) {
		best = usual
	}
	if !best.Found { // then the faces of the frame's jambs are worked
		planned(true)
	}
	if !best.Found {
		after, steps := trim.All(*p, moves)
		moves = done(steps)
		rest := advise.Plans(problem(&after, l))
		for i := range rest.Plans {
			best.lesser(made(p, l, append(moves[:len(moves):len(moves)], rest.Plans[i].Moves...)))
		}
	}
	return best.pruned(p, l)
}

// plainer tells whether a cure of the trade's is to be shown instead of one that costs
// less: it is one, has fewer moves, and does not cost a third more (common practice, no
// published source).
func (c *Cure) plainer(than *Cure) bool {
	return c.Found && len(c.Moves) < len(than.Moves) && c.price() < than.price()*4/3
}

// lesser takes the other cure if it is one and costs less, and tells whether.
func (c *Cure) lesser(other Cure) bool {
	if !other.Found || c.Found && other.price() >= c.price() {
		return false
	}
	*c = other
	return true
}

// rounded gives moves whose amounts are half millimetres, what comes off rounded up
// unless it is next to nothing more.
func rounded(moves []trim.Move) []trim.Move {
	const step = 0.5
	out := append([]trim.Move(nil), moves...)
	for i := range out {
		m := &out[i]
		round := func(x float64) float64 { return math.Round(x/step) * step }
		if trim.SpecOf(m.Kind).TakesOff {
			round = func(x float64) float64 { return math.Ceil(x/step-0.1) * step }
		}
		m.First, m.Last = round(m.First), round(m.Last)
	}
	return out
}

// pruned leaves out the moves without which the door comes right as well: a plan's for
// more room than is asked for here, a manual's that another of its moves made needless.
func (c Cure) pruned(p *trim.Piece, l *Lesson) Cure {
	for i := len(c.Moves) - 1; i >= 0 && len(c.Moves) > 1; i-- {
		without := append(c.Moves[:i:i], c.Moves[i+1:]...)
		if less := made(p, l, without); less.Found {
			c = less
		}
	}
	return c
}

// done gives the moves that were made.
func done(steps []trim.Step) (moves []trim.Move) {
	for i := range steps {
		if steps[i].Why == nil && !steps[i].Move.Off {
			moves = append(moves, steps[i].Move)
		}
	}
	return moves
}

// made tries moves out.
func made(p *trim.Piece, l *Lesson, moves []trim.Move) Cure {
	after, steps := trim.All(*p, moves)
	c := Cure{Moves: moves, Steps: steps}
	for i := range steps {
		if steps[i].Why != nil {
			return c
		}
		d := &steps[i].Done
		c.Timber += d.Volume / 1000
		c.Minutes += d.Minutes
		c.Frame = c.Frame || d.Frame
	}
	c.Found = len(moves) > 0 && good(&after, l)
	return c
}

func problem(p *trim.Piece, l *Lesson) *advise.Problem {
	return &advise.Problem{Piece: *p, Wanted: *l.wanted(), Wishes: advise.Wishes{Prefer: advise.LeastTimber}}
}

// good tells whether all is as wanted and trying the door shows nothing.
func good(p *trim.Piece, l *Lesson) bool {
	var f fit.Fit
	fit.Evaluate(&f, &p.Door)
	return len(out(judge.Verdicts(&f, &p.Door, l.wanted()))) == 0 && len(fault.Symptoms(&f, &p.Door, l.wanted())) == 0
}

// complaints is what trying a door shows.
func complaints(p *trim.Piece, l *Lesson) []fault.Symptom {
	var f fit.Fit
	fit.Evaluate(&f, &p.Door)
	return fault.Symptoms(&f, &p.Door, l.wanted())
}

func (p *Play) complaints() []fault.Symptom { return complaints(&p.piece, p.Lesson) }
func (p *Play) good() bool                  { return good(&p.piece, p.Lesson) }
