package lesson

import (
	"math"

	"leafwright/game"
	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fault"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
	"leafwright/geom/trim"
)

// soundDoor gives a door with nothing wrong with it as a job, every seed another; old
// is 0 for a new door in a square frame to 1 for an old one, long since fitted to a
// frame out of square.
func soundDoor(seed uint64, old float64) game.Job {
	j := jobOf(fault.Sound(seed, old), fault.Wanted())
	if seed%3 == 2 { // so that one door in three is seen the other way round
		j.Hand = game.Right
	}
	return j
}

// jobOf gives a door as a job, called by the whole millimetres its sizes are nearest to.
func jobOf(p trim.Piece, w judge.Wanted) game.Job {
	d := &p.Door
	across := d.Leaf.Width / 2
	up := func(f geom.Profile) float64 { return math.Round(f.At(across)) }
	j := game.Blank(math.Round(d.Leaf.Width), up(d.Leaf.Top), d.Leaf.Thickness)
	j.Door, j.Anatomy = p.Door.Clone(), p.Anatomy
	positive(&j.Door)
	j.OpeningHeight = up(d.Frame.Head)
	mid := j.OpeningHeight / 2
	j.OpeningWidth = math.Round(d.Frame.LatchJamb.At(mid) - d.Frame.HingeJamb.At(mid))
	j.Rebate = math.Round(d.Frame.LatchFront.At(mid) - d.Frame.LatchStop.At(mid))
	j.Wanted, j.WantedName = w, game.Own
	return j
}

// positive writes −0 as 0 in a door's lines and floor, as a file has it.
func positive(d *door.Door) {
	l, f := &d.Leaf, &d.Frame
	for _, p := range []geom.Profile{
		l.Hanging, l.Closing, l.Top, l.Bottom, l.HangingFace, l.ClosingFace, f.HingeJamb, f.LatchJamb, f.Head,
		f.HingeFront, f.LatchFront, f.HeadFront, f.HingeStop, f.LatchStop, f.HeadStop,
	} {
		for i := range p {
			p[i].At, p[i].Value = p[i].At+0, p[i].Value+0
		}
	}
	for _, row := range d.Floor.Heights {
		for i := range row {
			row[i] += 0
		}
	}
}

// pieceOf gives the job's door as found.
func pieceOf(j *game.Job) trim.Piece { return trim.Piece{Door: j.Door, Anatomy: j.Anatomy} }

// verdicts judges a door, without causes.
func verdicts(p *trim.Piece, w *judge.Wanted) []judge.Finding {
	var f fit.Fit
	fit.Evaluate(&f, &p.Door)
	return judge.Verdicts(&f, &p.Door, w)
}

// out gives the findings that are not good.
func out(all []judge.Finding) (bad []judge.Finding) {
	for _, f := range all {
		if f.Verdict != judge.Good {
			bad = append(bad, f)
		}
	}
	return bad
}

// beyond is how far in all a door is out of what is wanted, mm: 0 for a good one.
func beyond(all []judge.Finding) (mm float64) {
	for i := range all {
		f := &all[i]
		switch f.Verdict {
		case judge.Binds, judge.Tight:
			if f.Subject == judge.Latching || f.Subject == judge.HingeLine {
				mm += max(math.Abs(f.Worst)-f.Limits.Most, 0.01)
			} else {
				mm += max(f.Limits.Least-f.Worst, 0.01)
			}
		case judge.Slack:
			mm += max(f.Worst-f.Limits.Most, 0.01)
		}
	}
	return mm
}
