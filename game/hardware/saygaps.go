package hardware

import (
	"math"
	"strconv"
	"strings"

	"leafwright/game"
	"leafwright/game/words"
	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
	"leafwright/geom/timber"
)

// Parts says what a gap to fit to today is made of: "2.5 mm wanted in July + 0.3 mm
// for paint to come on leaf and frame + 0.8 mm the leaf is still to grow = 3.6 mm at
// fitting today". Nothing is said of what is nothing.
func Parts(w *words.Speaker, f *game.Fitting, e door.Edge) string {
	g := &f.Gaps[e]
	season := f.Season != nil && e == door.LatchSide
	mm := []float64{g.Wanted, g.Paint}
	said := []string{" wanted", paintPart(f, e)}
	if season {
		said[0] += " in " + Months[f.Season.Tight]
		grows := "the leaf is still to grow"
		if g.Season < 0 {
			grows = "that the leaf is wider today than it ever is in the year"
		}
		mm, said = append(mm, g.Season), append(said, " "+grows)
	}
	shown := addUp(mm, g.All)
	text := ""
	for i, x := range shown {
		sign := " + "
		switch {
		case i == 0:
			sign = ""
		case math.Abs(x) < 0.05 && math.Abs(mm[i]) < 0.05:
			continue
		case x < 0:
			sign = " − "
		}
		text += sign + tenth(w, x) + said[i]
	}
	if !strings.ContainsAny(text, "+−") {
		return tenth(w, g.All) + ", as" + said[0]
	}
	return text + " = " + tenth(w, g.All) + " at fitting today"
}

// allYear says within what the closing gap must be fitted to stay as wanted all the year.
func allYear(w *words.Speaker, f *game.Fitting) string {
	l, all := &f.Wanted.Gaps[door.LatchSide], f.Gaps[door.LatchSide].All
	slack := Months[f.Season.Slack]
	switch {
	case l.Most <= 0:
		return "It stays as wanted all the year when fitted at " + tenth(w, l.Least) + " or more."
	case f.Crowded:
		few := "Hardly any gap keeps what is wanted all the year: the leaf moves nearly as much as the limits leave."
		if s, asked := f.Season, l.Most-l.Least; s.Grows[s.Tight]-s.Grows[s.Slack] >= asked {
			few = "No gap keeps what is wanted all the year: the leaf moves more than the limits leave."
		}
		return few + " Let it be slack in " + slack + " rather than bind in " + Months[f.Season.Tight] + "."
	case all > l.Most && tenth(w, all) != tenth(w, l.Most):
		return "That is slack in " + slack + ": it stays as wanted all the year when fitted at " + w.Range(l.Least, l.Most) + ", so fit it to " + tenth(w, l.Most) + " today."
	}
	return "It stays as wanted all the year when fitted at " + w.Range(l.Least, l.Most) + "."
}

// paintPart names what paint takes from a gap, or gives it.
func paintPart(f *game.Fitting, e door.Edge) string {
	leaf, frame := &f.Leaf, &f.Frame
	if e == door.FloorSide {
		frame = &timber.Allowance{}
	}
	where := ""
	on := func(l, r bool) string {
		switch {
		case l && r:
			return "leaf and frame"
		case l:
			return "the leaf"
		}
		return "the frame"
	}
	switch takes, gives := leaf.Takes+frame.Takes > 0, leaf.Gives+frame.Gives > 0; {
	case takes && gives:
		where = "paint to come on " + on(leaf.Takes > 0, frame.Takes > 0) + ", less what is stripped"
	case gives:
		where = "paint stripped off " + on(leaf.Gives > 0, frame.Gives > 0)
	default:
		where = "paint to come on " + on(leaf.Takes > 0, frame.Takes > 0)
	}
	return " for " + where
}

// addUp rounds parts to tenths so that they come to their rounded sum: those rounded
// farthest give way. What a sum of 0 cuts off is left as it is.
func addUp(mm []float64, sum float64) []float64 {
	out, all := make([]float64, len(mm)), 0.0
	for i, x := range mm {
		out[i] = math.Round(x*10) / 10
		all += x
	}
	if math.Abs(all-sum) > 1e-6 {
		return out
	}
	for range mm {
		off := math.Round(sum*10) - math.Round(10*total(out))
		if off == 0 {
			break
		}
		best := 0
		for i := range mm {
			if (mm[i]-out[i])*off > (mm[best]-out[best])*off {
				best = i
			}
		}
		out[best] += math.Copysign(0.1, off)
	}
	return out
}

func total(xs []float64) (sum float64) {
	for _, x := range xs {
		sum += x
	}
	return sum
}

// Gaps says the gaps to fit to today, a line an edge, with what they are now held against
// them, and what paint's share rests on;
// nothing where the job says nothing of room and paint.
func Gaps(w *words.Speaker, job *game.Job, t *game.Tried) (lines []string) {
	f := game.FittingOf(job, t, game.WhereOf(job))
	if f.Season == nil && job.Paint == (game.Paint{}) {
		return nil
	}
	var now fit.Fit
	fit.Evaluate(&now, &t.Door)
	for _, e := range [...]door.Edge{door.HingeSide, door.LatchSide, door.HeadSide, door.FloorSide} {
		lines = append(lines, words.Capital(w.Edge(e))+": "+Parts(w, &f, e)+". "+standing(w, now.Gaps[e].Least, now.Gaps[e].Most, f.Wanted.Gaps[e]))
		if e == door.LatchSide && f.Season != nil {
			lines = append(lines, allYear(w, &f))
		}
	}
	if job.Paint != (game.Paint{}) {
		lines = append(lines, paintLine(job, &f))
	}
	return append(lines, "What the fit shows is held against the gaps at fitting.")
}

// standing says what a gap is, along its edge, and how that stands to what is wanted of
// it today. An end that misses a limit by less than is said does not read like the limit.
func standing(w *words.Speaker, least, most float64, l judge.Limits) string {
	end := func(mm, limit float64) string {
		said := w.Span(mm, mm)
		if l.Judge(mm) != judge.Good && w.Length == nil && said == w.Span(limit, limit) {
			return fine(w, mm)
		}
		return said
	}
	low, high := l.Judge(least), l.Judge(most)
	a, b := end(least, l.Least), end(most, l.Most)
	if low == judge.Slack {
		a = end(least, l.Most)
	}
	if high < judge.Slack {
		b = end(most, l.Least)
	}
	said := "It is " + a
	if a != b {
		if w.Length == nil {
			a = strings.TrimSuffix(a, " mm")
		}
		said = "It is " + a + " to " + b
	}
	if low == judge.Good && high == judge.Good {
		return said + " now: good."
	}
	said += " now, where " + w.Range(l.Least, l.Most) + " is wanted: " + words.Word(min(low, high))
	if low < judge.Slack && high == judge.Slack {
		said += ", and slack elsewhere"
	}
	return said + "."
}

// paintLine says what the paint's share rests on.
func paintLine(job *game.Job, f *game.Fitting) string {
	if f.Holds {
		return "The gaps wanted are for bare wood, paint still to come: none is added for it."
	}
	said := "Paint: " + coatsSaid("leaf", &job.Paint.Leaf, f.Leaf) + "; " + coatsSaid("frame", &job.Paint.Frame, f.Frame) + " (films from memory"
	if job.Paint.Leaf.Film > 0 || job.Paint.Frame.Film > 0 {
		said += ", what was measured as measured"
	}
	return said + "). Measure an old film by a chip taken off: many coats are 0.2 to 0.6 mm a face."
}

func coatsSaid(who string, c *game.Coating, a timber.Allowance) string {
	kind := func(p, usual timber.Paint) string {
		if p == "" {
			p = usual
		}
		return paint(p)
	}
	var does []string
	if c.Strip {
		n := "what is on"
		if c.On > 0 && c.Film == 0 {
			n = count(c.On, "coat", "coats") + " of " + kind(c.Old, timber.OldPaint)
		}
		does = append(does, n+" stripped off gives "+hundredths(a.Gives))
	}
	var come []string
	if c.Primer > 0 {
		come = append(come, count(c.Primer, "coat", "coats")+" of primer")
	}
	if c.ToCome > 0 {
		come = append(come, count(c.ToCome, "coat", "coats")+" of "+kind(c.Kind, timber.Enamel))
	}
	if len(come) > 0 {
		takes := " take "
		if c.Primer+c.ToCome == 1 {
			takes = " takes "
		}
		does = append(does, strings.Join(come, " and ")+takes+hundredths(a.Takes))
	}
	if len(does) == 0 {
		return "nothing on the " + who
	}
	said := "on the " + who + " " + strings.Join(does, ", ")
	if a.Most-a.Least > 0.005 {
		said += ", in all between " + signedFilm(a.Least) + " and " + signedFilm(a.Most)
	}
	return said
}

// signedFilm writes what a gap loses to paint; below 0 it gains.
func signedFilm(mm float64) string {
	if mm < 0 {
		return "−" + hundredths(-mm)
	}
	return hundredths(mm)
}

// hundredths writes a film, which tenths would round away.
func hundredths(mm float64) string { return strconv.FormatFloat(mm, 'f', 2, 64) + " mm" }
