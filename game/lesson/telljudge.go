package lesson

import (
	"strconv"
	"strings"

	"leafwright/game/words"
	"leafwright/geom/door"
	"leafwright/geom/fault"
)

// Passage is a heading and what stands under it, a paragraph a line.
type Passage struct {
	Title string
	Lines []string
}

// Judged says a judgement: how the door hangs, what was named, what was spent, each
// move, and what would have done.
func (t *Teller) Judged(j *Judgement) []Passage {
	out := []Passage{
		{"How it hangs now", t.hangs(j)},
		{"What was wrong", t.diagnosed(j)},
		{"What it took", t.spent(j)},
	}
	if len(j.Moves) > 0 {
		p := Passage{Title: "Move by move"}
		for i := range j.Moves {
			p.Lines = append(p.Lines, strconv.Itoa(i+1)+". "+t.judgedMove(&j.Moves[i]))
		}
		out = append(out, p)
	}
	return append(out, Passage{"What would have done", t.Cure(&j.Least)})
}

func (t *Teller) hangs(j *Judgement) (out []string) {
	if j.Good {
		return []string{"It hangs as wanted: it swings freely, latches, and its gaps are within limits."}
	}
	for i := range j.Out {
		l := t.Finding(j.Out[i])
		text := words.Capital(l.Word)
		if l.Figure != "" {
			text += ", " + l.Figure
		}
		out = append(out, text+": "+l.Text)
	}
	for _, s := range j.Left {
		if s.Kind != fault.Rubs && s.Kind != fault.Light && s.Kind != fault.Hairline && s.Kind != fault.RubsFloor && s.Kind != fault.RubsSwinging {
			out = append(out, t.Symptom(s))
		}
	}
	if out == nil {
		for _, s := range j.Left {
			out = append(out, t.Symptom(s))
		}
	}
	return out
}

func (t *Teller) diagnosed(j *Judgement) (out []string) {
	switch {
	case len(j.Right)+len(j.Wrong) == 0:
		out = append(out, "You did not say what was wrong.")
	case len(j.Missed)+len(j.Wrong) == 0 && len(j.Hidden) == 1:
		out = append(out, "You named it rightly: "+t.faults(j.Right)+".")
	case len(j.Missed)+len(j.Wrong) == 0:
		out = append(out, "You named all of it rightly: "+t.faults(j.Right)+".")
	default:
		if len(j.Right) > 0 {
			out = append(out, "You named rightly: "+t.faults(j.Right)+".")
		}
		if len(j.Wrong) > 0 {
			out = append(out, "You also named what was not there: "+t.faults(j.Wrong)+".")
			if len(j.Right) == 0 {
				out[len(out)-1] = "You named what was not there: " + t.faults(j.Wrong) + "."
			}
		}
	}
	if len(j.Given) > 0 {
		out = append(out, "A hint had given away: "+t.faults(j.Given)+".")
	}
	if j.Late && len(j.Right)+len(j.Wrong) > 0 {
		out = append(out, "You named it only after work had begun. What is cut before it is known what for cannot be put back.")
	}
	for _, k := range j.Hidden {
		line := words.Capital(t.Fault(k)) + ". " + t.Why(k)
		if hasKind(j.Missed, k) {
			line = "Not named: " + t.Fault(k) + ". " + t.Why(k)
		}
		out = append(out, line)
	}
	return out
}

// cm3 writes a volume given in cm³.
func cm3(v float64) string { return words.CubicCentimetres(v * 1000) }

func (t *Teller) spent(j *Judgement) (out []string) {
	const shaving = 1.0 // cm³, not worth a word
	switch {
	case j.Timber < shaving && (j.Least.Timber < shaving || !j.Good):
		out = append(out, "No timber came off the leaf.")
	case j.Good && j.Wasted() < shaving:
		out = append(out, "Timber off the leaf: "+cm3(j.Timber)+", no more than was called for.")
	case j.Good && j.Least.Timber < shaving:
		out = append(out, "Timber off the leaf: "+cm3(j.Timber)+"; it could have been put right without any.")
	case j.Good:
		out = append(out, "Timber off the leaf: "+cm3(j.Timber)+"; "+cm3(j.Least.Timber)+" would have done, so "+cm3(j.Wasted())+" went for nothing.")
	case j.Least.Timber < shaving:
		out = append(out, "Timber off the leaf: "+cm3(j.Timber)+"; putting it right as it was found takes none.")
	default:
		out = append(out, "Timber off the leaf: "+cm3(j.Timber)+"; putting it right as it was found takes "+cm3(j.Least.Timber)+".")
	}
	switch {
	case j.FrameSpoilt():
		out = append(out, "The frame was worked, and need not have been.")
	case j.Frame:
		out = append(out, "The frame was worked, as it had to be.")
	}
	out = append(out, "Time: "+words.Minutes(j.Minutes)+" in all, "+words.Minutes(j.Working)+" of it on the moves. The way below takes "+words.Minutes(j.Least.Minutes)+" of work.")
	n := func(n int, one, many string) string {
		switch n {
		case 0:
			return "no " + many
		case 1:
			return "1 " + one
		}
		return strconv.Itoa(n) + " " + many
	}
	line := words.Capital(n(j.Tries, "trial of the door", "trials of the door")) + ", " + n(j.Readings, "reading", "readings") + ", " + n(j.Asks, "hint", "hints")
	if j.Told > 0 {
		line += " (" + strconv.Itoa(j.Told) + " of them gave the answer)"
	}
	if j.Refused > 0 {
		line += ", and " + n(j.Refused, "move that could not be made", "moves that could not be made")
	}
	out = append(out, line+".")
	for _, l := range j.Limits {
		if l.Kept() {
			continue
		}
		what := map[string]string{"timber": "timber", "minutes": "time", "readings": "readings"}[l.Limit]
		allowed, used := cm3(l.Allowed), cm3(l.Used)
		switch l.Limit {
		case "minutes":
			allowed, used = words.Minutes(l.Allowed), words.Minutes(l.Used)
		case "readings":
			allowed, used = strconv.Itoa(int(l.Allowed)), strconv.Itoa(int(l.Used))
		}
		out = append(out, "Past the limit set for "+what+": "+allowed+" allowed, "+used+" used.")
	}
	return out
}

// judgedMove says a move, what it did to which gap, and what less would have done.
func (t *Teller) judgedMove(m *MoveJudged) string {
	say := []string{t.Move(&m.Step.Move) + "."}
	for e := range door.Edges {
		if g := &m.Gaps[e]; g.Moved() {
			say = append(say, "The gap at the "+t.Edge(e)+" went from "+t.gap(g.LeastBefore, g.MostBefore)+" to "+t.gap(g.LeastAfter, g.MostAfter)+".")
		}
	}
	for e := range door.FloorSide {
		if g := &m.Stops[e]; g.Moved() {
			say = append(say, "The gap to the stop at the "+t.Edge(e)+" went from "+t.gap(g.LeastBefore, g.MostBefore)+" to "+t.gap(g.LeastAfter, g.MostAfter)+".")
		}
	}
	if len(say) == 1 {
		say = append(say, "No closed gap changed by as much as a feeler shows.")
	}
	const worse = -0.05 // mm
	switch {
	case m.Needless && m.Better < worse:
		say = append(say, "It made matters worse, and nothing needed it.")
	case m.Better < worse:
		say = append(say, "By itself it made matters worse; what follows needed it.")
	}
	switch {
	case m.Needless && m.Better < worse:
	case m.Needless:
		say = append(say, "It was not needed: without it the door would hang no worse.")
	case m.Enough < 0.95:
		less := scaled(m.Step.Move, m.Enough)
		say = append(say, "Less would have done: "+lower(t.Move(&less))+".")
	}
	return strings.Join(say, " ")
}

func lower(s string) string {
	if s == "" {
		return s
	}
	return strings.ToLower(s[:1]) + s[1:]
}

// gap says the range of a gap, binding where it is below zero.
func (t *Teller) gap(least, most float64) string {
	switch {
	case most < 0:
		return "binding by up to " + t.Amount(least)
	case least < 0:
		return "binding by " + t.Amount(least) + " at the worst, " + t.Amount(most) + " at the widest"
	}
	return t.Span(least, most)
}

// Cure says what would put a door right, a line a move.
func (t *Teller) Cure(c *Cure) (out []string) {
	switch {
	case !c.Found:
		return []string{"Nothing was found that puts it right."}
	case len(c.Moves) == 0:
		return []string{"Nothing: it hangs as wanted."}
	}
	for i := range c.Moves {
		line := strconv.Itoa(i+1) + ". "
		if _, ours := t.onSite(&c.Moves[i]); !ours && c.Plan != nil && c.Advice != nil && i < len(c.Plan.Why) {
			line += t.PlanMove(c.Plan, i, c.Advice)
		} else {
			line += t.remedy(&c.Moves[i]) + "."
		}
		out = append(out, line)
	}
	cost := "That takes no timber off the leaf"
	if c.Timber >= 0.05 {
		cost = "That takes " + cm3(c.Timber) + " off the leaf"
	}
	cost += " and " + words.Minutes(c.Minutes) + " of work"
	if c.Frame {
		cost += "; the frame is worked"
	}
	return append(out, cost+".")
}

// Answer says the answer of a lesson: its faults, what a trial of the door shows, and
// what puts it right.
func (t *Teller) Answer(l *Lesson) []Passage {
	what := Passage{Title: "What is wrong"}
	for i := range l.Faults {
		m := &l.Faults[i]
		line := words.Capital(t.Fault(m.Kind)) + t.made(m, l) + ". " + t.Why(m.Kind)
		what.Lines = append(what.Lines, line)
	}
	p := l.piece()
	shows := Passage{Title: "What it shows"}
	for _, s := range complaints(&p, l) {
		shows.Lines = append(shows.Lines, t.Symptom(s))
	}
	return []Passage{what, shows, {"What puts it right", t.Cure(&l.Cure)}}
}
