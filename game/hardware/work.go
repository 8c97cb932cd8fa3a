package hardware

import (
	"leafwright/game"
	"leafwright/geom/door"
	"leafwright/geom/timber"
	"leafwright/geom/trim"
)

// Work is what a list of moves takes and the order it is done in.
type Work struct {
	Made   bool // the moves are those done for keeps
	Steps  []trim.Step
	Bill   timber.Bill
	Strips []Strip
}

// Strip is how the strip that a move glues on is dowelled.
type Strip struct {
	Step     int // of the list, counted from 0
	Dowels   *timber.Dowels
	InStiles bool   // a strip at top or foot has a dowel in each stile's end
	Timber   string // of the leaf, as the job calls it; empty where it does not
}

// WorkOf gives the work of the steps done one after another on the door as it was
// before the first, nil where none of them is done.
func WorkOf(before *game.Tried, steps []trim.Step) *Work {
	p := trim.Piece{Door: before.Door, Anatomy: before.Anatomy, Offcuts: before.Offcuts}
	return workOf(p, steps, timber.Means{Screw: usualScrews()})
}

// WorkIn gives the work of the steps with the repairs of the job's bad places before them,
// and the paint the job says is to come; nil where there is none of either.
func WorkIn(job *game.Job, before *game.Tried, steps []trim.Step) *Work {
	p := trim.Piece{Door: before.Door, Anatomy: before.Anatomy, Offcuts: before.Offcuts}
	means := timber.Means{Screw: usualScrews(), Voids: Voids(job), PotLife: PotLife}
	if c := &job.Paint.Leaf; c.Primer+c.ToCome > 0 {
		means.Coats = game.FaceOf(c).On
	}
	return workOf(p, steps, means)
}

func workOf(p trim.Piece, steps []trim.Step, means timber.Means) *Work {
	w := &Work{Steps: steps, Bill: timber.BillOf(p, steps, means)}
	done := len(means.Voids) > 0
	for i := range steps {
		s := &steps[i]
		if s.Move.Off || s.Why != nil {
			continue
		}
		done = true
		if d, _ := timber.DowelsFor(p, s.Move, 0); d != nil {
			w.Strips = append(w.Strips, Strip{i, d, inStiles(&p, d), p.Anatomy.Timber})
		}
		p, _, _ = trim.Do(p, s.Move)
	}
	if !done {
		return nil
	}
	return w
}

// inStiles tells whether a dowel stands in either stile.
func inStiles(p *trim.Piece, d *timber.Dowels) bool {
	if d.Edge.Upright() || len(d.Places) == 0 {
		return false
	}
	left, right := p.Anatomy.Inner(&p.Door.Leaf)
	c := p.Door.Leaf.Corners(0)
	from := c.HangingFoot.X
	if d.Edge == door.HeadSide {
		from = c.HangingHead.X
	}
	return from+d.Places[0] < left && from+d.Places[len(d.Places)-1] > right
}
