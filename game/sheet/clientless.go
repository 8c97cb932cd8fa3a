package sheet

import (
	"math"

	"leafwright/game"
	"leafwright/game/hardware"
	"leafwright/game/words"
	"leafwright/geom/door"
)

// When a way of the advice's takes plainly less of the old wood than the one recommended:
// less than this part of it, and so much less, cm³ (our own choice).
const (
	plainlyPart = 0.5
	plainlyLess = 10.0
)

// lesser gives the first of the advice's ways that makes the door fit where the one
// recommended does not, or takes plainly less of it; nil where there is none, and where
// nothing needs to be done.
func (c *client) lesser() *way {
	b := &c.ways[c.best]
	if b.letter == "" && b.merit.fits() {
		return nil
	}
	for i := range c.a.Plans {
		p, j := &c.a.Plans[i], c.a.Job.Clone()
		if len(p.Given) > 0 {
			continue // it makes the door fit by a limit that is not the job's
		}
		stands := j.Stands()
		j.Options = []game.Option{game.OptionOf(p, c.a.speaker(&stands).PlanTitle(p))}
		a := *c.a
		a.Job = &j
		w := (&client{a: &a}).way(0)
		if w.merit.fits() && (!b.merit.fits() || w.merit.timber < plainlyPart*b.merit.timber && w.merit.timber < b.merit.timber-plainlyLess) {
			return &w
		}
	}
	return nil
}

// known says of a way that is not shown what it takes and what it leaves, beside the way
// recommended.
func (w *way) known(b *way) string {
	said := "A way that takes less is known"
	if !b.merit.fits() {
		said = "A way that makes everything right is known"
	}
	said += " but not shown here: “" + w.name + "”. It takes "
	if w.col.Volume > 0 {
		said += words.CubicCentimetres(w.col.Volume*1000) + " of the old wood"
	} else {
		said += "no wood of the door"
	}
	beside := func(of string) string {
		if b.letter == "" {
			return ""
		}
		return " (" + b.letter + ": " + of + ")"
	}
	said += beside(words.CubicCentimetres(b.col.Volume * 1000))
	if w.work != nil {
		said += " and about " + hardware.Time(w.minutes()) + " of work" + beside(hardware.Time(b.minutes()))
	}
	if w.col.Frame {
		said += ", on the frame too"
	}
	least, most := math.Inf(1), math.Inf(-1)
	for _, e := range [3]door.Edge{door.HingeSide, door.LatchSide, door.HeadSide} {
		g := &w.col.Fit.Gaps[e]
		least, most = min(least, g.Least), max(most, g.Most)
	}
	return said + "; it leaves gaps of " + w.say.gap(least, most) + " at both sides and the top. Ask to see the advice on this door."
}
