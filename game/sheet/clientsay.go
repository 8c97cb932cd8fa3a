package sheet

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"leafwright/game"
	"leafwright/game/words"
	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
	"leafwright/geom/trim"
)

// Figures of what an eye and a hand tell (common practice, no published source).
const (
	uneven = 1.0 // mm from one end of a gap to the other, that an eye sees
	lineUp = 2.0 // mm, that two doors' cross-pieces may stand apart and still run on
)

// figure writes a number with its ±, where it has one.
func (p plain) figure(mm, margin float64) string {
	said := p.Span(mm, mm)
	if margin <= 0 {
		return said
	}
	return strings.TrimSuffix(said, " mm") + " ± " + p.Span(max(margin, 0.1), max(margin, 0.1))
}

// gap writes a gap's two ends; one that is closed is nothing.
func (p plain) gap(least, most float64) string {
	switch {
	case most <= 0:
		return "none"
	case least <= 0:
		return "from none to " + p.Span(most, most)
	}
	return p.Span(least, most)
}

// where says on which part of its side a stretch lies.
func (p plain) where(f *judge.Finding, at geom.Interval) string {
	whole := f.Whole
	if !(whole.Length() > 0) || at.IsEmpty() || at.Length() > 0.8*whole.Length() {
		return ""
	}
	mid := (at.Mid() - whole.Lo) / whole.Length()
	if f.Edge.Upright() {
		return [3]string{" low down", " half way up", " high up"}[third(mid)]
	}
	return [3]string{" towards the hinges", " in the middle", " towards the handle"}[third(mid)]
}

func third(x float64) int {
	switch {
	case x < 0.4:
		return 0
	case x > 0.6:
		return 2
	}
	return 1
}

// widest says at which end a gap is widest.
func (p plain) widest(e door.Edge, g *fit.Gap) string {
	low, high := "the bottom", "the top"
	if !e.Upright() {
		low, high = "the hinges", "the handle"
	}
	at := (g.MostAt - g.Range().Lo) / g.Range().Length()
	return [3]string{"widest towards " + low, "widest in the middle", "widest towards " + high}[third(at)]
}

// see says what the eye sees of a door, but of the gap under it only where that is another
// than before.
func (p plain) see(c, before *game.Column) (out []string) {
	least, most := math.Inf(1), math.Inf(-1)
	var unlike, rest []string // gaps that are uneven, and even ones
	for _, e := range [3]door.Edge{door.HingeSide, door.LatchSide, door.HeadSide} {
		g := &c.Fit.Gaps[e]
		if g.Most-g.Least > uneven {
			unlike = append(unlike, p.gap(g.Least, g.Most)+" at the "+p.side(e)+", "+p.widest(e, g))
			continue
		}
		least, most = min(least, g.Least), max(most, g.Most)
		rest = append(rest, p.gap(g.Least, g.Most)+" at the "+p.side(e))
	}
	switch len(unlike) {
	case 0:
	case 1:
		out = append(out, "Uneven gap: "+unlike[0]+".")
	default:
		out = append(out, "Uneven gaps: "+strings.Join(unlike, "; ")+".")
	}
	switch {
	case len(rest) == 3 && most-least <= uneven:
		out = append(out, "Even gaps at both sides and the top: "+p.gap(least, most)+".")
	case len(rest) == 3:
		out = append(out, "Gaps: "+words.Listed(rest)+".")
	case len(rest) > 0:
		out = append(out, "Elsewhere: "+words.Listed(rest)+".")
	}
	under := func(c *game.Column) string {
		g := &c.Fit.Gaps[door.FloorSide]
		return "Under the door: " + p.gap(g.Least, g.Most) + "."
	}
	if now := under(c); c == before || now != under(before) {
		out = append(out, now)
	}
	for i := range c.Tried.Steps {
		s := &c.Tried.Steps[i]
		if s.Why == nil && !s.Move.Off && s.Done.Strips > 0 {
			out = append(out, "A strip of wood glued along the "+p.side(s.Move.Edge)+": the joint shows as a fine line until it is painted.")
		}
	}
	for _, l := range c.Narrows {
		what := "upright at the " + p.side(l.Member.Edge)
		if l.Member.Part == trim.Rail {
			what = "cross-piece"
			switch l.Member.Index {
			case 0:
				what = "bottom cross-piece"
			case len(c.Tried.Anatomy.Rails) - 1:
				what = "top cross-piece"
			}
		}
		out = append(out, "The "+what+" gets narrower: "+p.Amount(l.Before)+", then "+p.Amount(l.Now)+".")
	}
	if len(c.Sightlines) > 0 {
		off := 0.0
		for _, l := range c.Sightlines {
			off = max(off, math.Abs(l.Above))
		}
		if off <= lineUp {
			out = append(out, "Its cross-pieces line up with those of the door beside it.")
		} else {
			out = append(out, "Its cross-pieces stand up to "+p.Amount(off)+" off those of the door beside it.")
		}
	}
	return out
}

// feel says what is felt of a door that is used: what is out of what is wanted, the
// worst first, or that nothing is.
func (p plain) feel(c *game.Column) (out []string) {
	rattles, draughty := false, false
	var close, wide []string // at the frame: gaps that are alike in what is felt of them
	kept := true
	for i := range c.Findings {
		f := &c.Findings[i]
		atFrame := f.Subject == judge.ClosedGap && f.Edge != door.FloorSide
		switch {
		case f.Verdict == judge.Good:
			continue
		case atFrame && f.Verdict == judge.Tight:
			close = append(close, p.figure(f.Worst, f.Margin)+" at the "+p.side(f.Edge)+p.where(f, f.Stretch))
			continue
		case atFrame && f.Verdict == judge.Slack:
			wide = append(wide, p.figure(f.Worst, f.Margin)+" at the "+p.side(f.Edge)) // where is seen
			kept = kept && !standsOff(c, f.Edge)
			continue
		case f.Subject == judge.StopGap && f.Verdict == judge.Slack:
			rattles = rattles || f.Edge == door.LatchSide
			draughty = true
		case f.Verdict == judge.Slack:
			draughty = true
		}
		out = append(out, p.felt(f))
	}
	if len(close) > 0 {
		out = append(out, "Only "+words.Listed(close)+": it may stick in damp weather or after painting.")
	}
	if len(wide) > 0 {
		said := "Wider than usual, up to " + words.Listed(wide)
		if kept {
			said += ", but the strip it shuts against keeps most of the draught and light out."
		} else {
			said, draughty = said+": draught and light come through.", true
		}
		out = append(out, said)
	}
	if len(out) == 0 {
		return []string{"Swings freely, shuts easily and stays shut. No more draught or light than is usual; nothing to rattle."}
	}
	if rattles {
		out = append(out, "It can rattle when the air moves.")
	}
	if !draughty && len(wide) == 0 {
		out = append(out, "No more draught or light than is usual.")
	}
	return out
}

// standsOff tells whether the leaf stands farther off the stop at a side than wanted.
func standsOff(c *game.Column, e door.Edge) bool {
	return slices.ContainsFunc(c.Findings, func(f judge.Finding) bool {
		return f.Subject == judge.StopGap && f.Edge == e && f.Verdict == judge.Slack
	})
}

// felt says one thing that is not as wanted.
func (p plain) felt(f *judge.Finding) string {
	side, worst := p.side(f.Edge), p.figure(math.Abs(f.Worst), f.Margin)
	at := side + p.where(f, f.Stretch)
	switch f.Subject {
	case judge.ClosedGap:
		return p.closed(f, worst)
	case judge.StopGap:
		switch f.Verdict {
		case judge.Binds:
			return "It meets the strip it shuts against too soon at the " + at + ", by " + worst + "."
		case judge.Tight:
			return "It lies close to the strip it shuts against at the " + at + ": " + worst + ". Paint may make it stick."
		}
		return "It stands up to " + worst + " off the strip it shuts against at the " + at + ": draught comes through."
	case judge.Latching:
		if f.Verdict == judge.Tight {
			return "It stays shut only when it is pressed home."
		}
		return "It does not stay shut by itself: it stops " + worst + " short."
	case judge.SwingGap:
		if f.Verdict == judge.Binds {
			return "It catches on the frame at the " + side + " as it swings, by " + worst + "."
		}
		return "It only just clears the frame at the " + side + " as it swings: " + worst + "."
	case judge.SwingFloor:
		if f.Verdict == judge.Binds {
			return "It scrapes on the floor as it opens, by " + worst + "."
		}
		return "It only just clears the floor as it opens: " + worst + "."
	case judge.HingeLine:
		return "The hinges pull against each other by " + worst + ": it creaks, and the screws work loose."
	}
	return "The way through is " + worst + " wide, less than the " + p.Span(f.Limits.Least, f.Limits.Least) + " asked for."
}

// closed says of a closed gap that the door is too big for it, and of the floor's that
// it is not as wanted.
func (p plain) closed(f *judge.Finding, worst string) string {
	switch {
	case f.Verdict == judge.Slack:
		return "Up to " + worst + " under the door: draught, light and sound come through."
	case f.Verdict == judge.Tight:
		return "Only " + worst + " under the door: it may drag."
	case f.Edge == door.FloorSide:
		return "It stands on the floor" + p.where(f, f.Binding) + ": " + worst + " too low."
	case f.Edge == door.HingeSide:
		return "It presses on the frame at the hinge side" + p.where(f, f.Binding) + " and springs back open: " + worst + " too much there."
	}
	return "It will not shut freely: at the " + p.side(f.Edge) + p.where(f, f.Binding) + " it is " + worst + " too big for the frame."
}

// headline says in a few words how the door fits.
func (p plain) headline(c *game.Column) string {
	if c.Refused > 0 {
		return "Cannot all be done"
	}
	out := c.Out()
	if len(out) == 0 {
		for i := range c.Findings {
			if c.Findings[i].InDoubt() {
				return "Fits as measured, but that is in doubt"
			}
		}
		return "Fits well all round"
	}
	f := out[0]
	switch f.Verdict {
	case judge.Binds:
		switch f.Subject {
		case judge.SwingGap, judge.SwingFloor:
			return "Catches as it swings"
		case judge.Latching, judge.StopGap:
			return "Does not shut fully"
		case judge.HingeLine:
			return "Hinges at odds"
		}
		return "Does not shut freely"
	case judge.Tight:
		if f.Subject == judge.ClearWay {
			return "Fits, but the way through is narrow"
		}
		return "Shuts, but is tight"
	}
	return "Shuts, with gaps too wide"
}

// timber says what becomes of the old wood; whole is the door's volume, mm³.
func (p plain) timber(c *game.Column, whole float64) string {
	var said string
	switch {
	case c.Volume == 0:
		said = "No wood of the door is cut."
		if c.Strips == 0 && !c.Frame {
			said += " It can all be undone."
		}
	case c.Off < 0.05 && len(c.Recut) == 0:
		said = words.CubicCentimetres(c.Volume*1000) + ", off its sharp edges."
	case c.Off < 0.05:
		said = words.CubicCentimetres(c.Volume*1000) + ", all out of the pockets for the hinges."
	default:
		said = words.CubicCentimetres(c.Volume*1000) + ", " + percent(c.Volume*1000/whole) + " of the door; " + p.Amount(c.Off) + " off its edges where most."
	}
	if c.Frame {
		said += " The frame is worked on too."
	}
	return said
}

// percent writes a part to the tenth of a per cent, or that it is less.
func percent(part float64) string {
	if part < 0.0005 {
		return "less than 0.1 %"
	}
	return strconv.FormatFloat(100*part, 'f', 1, 64) + " %"
}
