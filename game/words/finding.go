package words

import (
	"math"
	"strconv"
	"strings"

	"leafwright/geom/fit"
	"leafwright/geom/judge"
)

// Findings says all findings in their order, those about good gaps to stops as
// one.
func (s *Speaker) Findings(all []judge.Finding) []Line {
	var lines []Line
	stops := -1 // the line that says the good ones
	var around judge.Finding
	many := 0
	for _, f := range all {
		if f.Subject != judge.StopGap || f.Verdict != judge.Good || !f.Sure() {
			lines = append(lines, s.Finding(f))
			continue
		}
		if many++; many == 1 {
			stops, around = len(lines), f
			lines = append(lines, s.Finding(f))
			continue
		}
		widen(&around, f)
		lines[stops].Figure = s.from(around)
		lines[stops].Text = "at " + number(many) + " of the stops."
		if many == 3 {
			lines[stops].Text = "at all three stops."
		}
	}
	return lines
}

// widen makes a finding's two extremes those of it and another.
func widen(around *judge.Finding, f judge.Finding) {
	if f.Worst < around.Worst {
		around.Worst, around.Margin = f.Worst, f.Margin
	}
	if f.Other > around.Other {
		around.Other, around.OtherMargin = f.Other, f.OtherMargin
	}
}

// Finding says one finding.
func (s *Speaker) Finding(f judge.Finding) Line {
	l := Line{Verdict: f.Verdict, Word: Word(f.Verdict), Figure: s.figure(f)}
	switch f.Subject {
	case judge.ClosedGap:
		s.closedGap(&l, f)
	case judge.StopGap:
		s.stopGap(&l, f)
	case judge.Latching:
		s.latching(&l, f)
	case judge.SwingGap, judge.SwingFloor:
		s.swing(&l, f)
	case judge.HingeLine:
		s.hingeLine(&l, f)
	case judge.ClearWay:
		s.clearWay(&l, f)
	case judge.LetGo:
		l.Verdict, l.Word = judge.Slack, "swings" // it is told with the sign of what is out
		l.Figure, l.Text = s.size(f.Worst), "out of plumb, the top pin "+s.leans(f)+" than the bottom one: "+letGo(f)+"."
	}
	if odds := s.odds(f); odds != "" {
		l.Text += " " + odds
	}
	if f.InDoubt() {
		l.Word = inDoubt
	}
	l.Cause = s.causes(f.Causes)
	return l
}

// inDoubt is the word for what is good as read and yet likelier not to be.
const inDoubt = "in doubt"

func (s *Speaker) closedGap(l *Line, f judge.Finding) {
	edge := s.Edge(f.Edge)
	if f.Verdict == judge.Good {
		l.Figure = s.from(f)
		l.Text = edge + "."
		return
	}
	if f.Edge == fit.HingeSide && f.Verdict == judge.Binds {
		edge = "hinge side (hinge-bound: it springs open)"
	}
	l.Text = edge + ", "
	if f.Verdict == judge.Binds && f.Binding.Length() < f.Stretch.Length()-1 {
		l.Text += "binding " + s.where(f.Edge, f.Binding, f.Whole) + ", tight "
	}
	l.Text += s.where(f.Edge, f.Stretch, f.Whole) + ". " + s.wanted(f.Limits)
}

// Range writes the limits of a gap; most 0 stands for none.
func (s *Speaker) Range(least, most float64) string {
	if most <= 0 {
		return s.size(least) + " or more"
	}
	return s.span(least, most)
}

// span writes two lengths as a range, or one where they read alike.
func (s *Speaker) span(least, most float64) string {
	a, b := s.length(least), s.length(most)
	if a == b {
		return a
	}
	return s.between(a, b, " to ")
}

// between puts a word between two lengths, with a unit they share said once.
func (s *Speaker) between(a, b, word string) string {
	if unit := strings.LastIndexByte(a, ' '); unit > 0 && !strings.ContainsAny(a[unit:], "/\"") && strings.HasSuffix(b, a[unit:]) {
		a = a[:unit]
	}
	return a + word + b
}

// wanted says the limits as a sentence.
func (s *Speaker) wanted(l judge.Limits) string {
	return s.Range(l.Least, l.Most) + " wanted."
}

func (s *Speaker) stopGap(l *Line, f judge.Finding) {
	stop := "stop at the " + s.Edge(f.Edge)
	switch f.Verdict {
	case judge.Good:
		l.Figure = s.from(f)
		l.Text = stop + "."
	case judge.Binds:
		l.Text = stop + ", " + s.where(f.Edge, f.Stretch, f.Whole) + ": it is in the leaf's way."
		if f.Edge == fit.HingeSide {
			l.Text = "hinge-bound: the leaf bears on the " + stop + ", " + s.where(f.Edge, f.Stretch, f.Whole) +
				", and springs open."
		}
	case judge.Tight:
		l.Text = stop + ", " + s.where(f.Edge, f.Stretch, f.Whole) + ". " + s.wanted(f.Limits)
	case judge.Slack:
		l.Text = "the leaf stands off the " + stop + ", " + s.where(f.Edge, f.Stretch, f.Whole) + ". " + s.wanted(f.Limits)
	}
}

func (s *Speaker) latching(l *Line, f judge.Finding) {
	if f.Verdict == judge.Good {
		l.Figure = ""
		l.Text = "no stop holds the latch short of its " + s.Keep + "."
		return
	}
	l.Figure = s.size(f.Worst)
	l.Text = "short of the " + s.Keep + ": the stop at the " + s.Edge(f.Edge) + " holds the leaf, " + s.spot(f.Edge, f.At, f.Whole) + "."
}

func (s *Speaker) swing(l *Line, f judge.Finding) {
	over := "at the " + s.Edge(f.Edge)
	if f.Subject == judge.SwingFloor {
		over = "over the floor"
	}
	if !f.Opened {
		l.Text = "least " + over + " as it swings, no less than when closed."
		return
	}
	l.Text = "least " + over + " as it swings, " + strconv.FormatFloat(math.Abs(f.Angle.Degrees()), 'f', 1, 64) + "° open"
	if f.Subject != judge.SwingFloor {
		l.Text += ", " + s.spot(f.Edge, f.At, f.Whole)
	}
	l.Text += "."
	if f.Verdict != judge.Good {
		l.Text += " " + s.wanted(f.Limits)
	}
}

func (s *Speaker) hingeLine(l *Line, f judge.Finding) {
	l.Figure = s.size(f.Worst)
	switch {
	case f.Verdict == judge.Good:
		l.Figure = ""
		l.Text = "the hinges line up."
	case f.Other == 0:
		l.Word, l.Text = "strained", "the hinge "+s.place(f.At)+" up does not sit with the outer two: it creaks and works its screws loose."
	case f.Other > 0:
		l.Word, l.Text = "strained", "the hinges are farther apart on the leaf than on the jamb: the bottom one is strained."
	default:
		l.Word, l.Text = "strained", "the hinges are closer together on the leaf than on the jamb: the bottom one is strained."
	}
}

func (s *Speaker) clearWay(l *Line, f judge.Finding) {
	l.Figure = s.place(f.Worst)
	if f.Margin > 0 {
		l.Figure = s.between(s.place(f.Worst), s.place(max(f.Margin, leastPlaceMargin)), " ± ")
	}
	l.Text = "clear way at 90°, leaf to stop."
	if f.Verdict != judge.Good {
		l.Word = "narrow"
		if l.Figure == s.place(f.Limits.Least) {
			l.Figure = "just under " + l.Figure
		}
		l.Text += " " + s.place(f.Limits.Least) + " wanted."
	}
}

// leans says which way the pins lean by which a leaf swings by itself.
func (s *Speaker) leans(f judge.Finding) string {
	switch opens := f.Worst > 0; {
	case f.WideOpen() && opens:
		return "farther from the " + s.Latch
	case f.WideOpen():
		return "nearer the " + s.Latch
	case opens:
		return "farther out"
	}
	return "farther back"
}

// letGo says how a leaf swings by itself.
func letGo(f judge.Finding) string {
	from, way := "ajar", "opens"
	if f.Opened {
		from = strconv.FormatFloat(f.Angle.Degrees(), 'f', 0, 64) + "° open"
	}
	if f.Worst < 0 {
		way = "closes"
	}
	return "let go " + from + " it " + way + " by itself"
}

// Headline says in a few sentences how the door hangs, and how it swings by itself.
func (s *Speaker) Headline(all []judge.Finding) string {
	said := s.hangs(all)
	for _, f := range all {
		if f.Subject == judge.LetGo {
			said += " " + Capital(letGo(f)) + "."
		}
	}
	return said
}

// hangs says in one sentence or two how the door hangs.
func (s *Speaker) hangs(all []judge.Finding) string {
	bad, doubts := 0, 0
	for _, f := range all {
		if f.Verdict != judge.Good {
			bad++
		}
		if f.InDoubt() {
			doubts++
		}
	}
	if bad == 0 {
		return s.allGood(all)
	}
	f := all[0]
	l := s.Finding(f)
	text := strings.TrimSuffix(firstSentence(l.Text), ".")
	var say string
	switch {
	case f.Subject == judge.ClosedGap && f.Verdict == judge.Binds && f.Edge == fit.HingeSide:
		say = "Hinge-bound: bears on the hinge jamb by " + s.sized(f) + " and springs open"
	case f.Subject == judge.ClosedGap && f.Verdict == judge.Binds:
		say = "Binds by " + s.sized(f) + " at the " + s.Edge(f.Edge) + ", " + s.where(f.Edge, f.Binding, f.Whole)
	case f.Subject == judge.ClosedGap && f.Verdict == judge.Tight && l.Figure == touching:
		say = "Touches at the " + text
	case f.Subject == judge.ClosedGap && f.Verdict == judge.Tight:
		say = "Tight, " + l.Figure + ", at the " + text
	case f.Subject == judge.ClosedGap:
		say = "Gapes " + l.Figure + " at the " + text
	case f.Subject == judge.Latching:
		say = "Will not latch: " + l.Figure + " " + text
		if f.Verdict == judge.Tight {
			say = "Latches only when pressed: " + l.Figure + " " + text
		}
	case f.Subject == judge.StopGap && f.Edge == fit.HingeSide && f.Verdict == judge.Binds:
		say = "Hinge-bound by " + s.sized(f) + ": it springs open"
	case f.Subject == judge.StopGap && f.Verdict == judge.Binds:
		say = "Stop-bound by " + s.sized(f) + " at the " + text
	case f.Subject == judge.StopGap && f.Verdict == judge.Slack:
		say = "Stands " + l.Figure + " off the stop at the " + s.Edge(f.Edge)
	case f.Subject == judge.SwingFloor && f.Verdict == judge.Binds:
		say = "Drags on the floor by " + s.sized(f) + " as it swings"
	case f.Subject == judge.SwingGap && f.Verdict == judge.Binds:
		say = "Shuts, but fouls the " + s.Edge(f.Edge) + " by " + s.sized(f) + " on the way"
	default:
		say = Capital(l.Word) + ", " + l.Figure + ": " + text
	}
	if f.Verdict == judge.Binds && f.Odds.Told() && !f.Sure() {
		say += ": " + chance(f.Odds[judge.Binds]) + " that it does"
	}
	switch bad {
	case 1:
		if doubts > 0 {
			return say + ". All else is good as read, and in doubt."
		}
		return say + ". All else is good."
	case 2:
		return say + ". One more thing is not as wanted."
	}
	return say + ". " + Capital(number(bad-1)) + " more things are not as wanted."
}

func (s *Speaker) allGood(all []judge.Finding) string {
	var around judge.Finding // the gaps at jambs and head as one
	first := true
	doubt := -1
	for i, f := range all {
		if !f.Sure() && (doubt < 0 || f.Odds[judge.Good] < all[doubt].Odds[judge.Good]) {
			doubt = i
		}
		if f.Subject != judge.ClosedGap || f.Edge == fit.FloorSide {
			continue
		}
		if first {
			around, first = f, false
		}
		widen(&around, f)
	}
	said := s.from(around) + " at jambs and head."
	if doubt < 0 {
		return "It hangs as wanted: " + said
	}
	f := all[doubt]
	likely := judge.Binds
	for v, p := range f.Odds {
		if v := judge.Verdict(v); v != judge.Good && p > f.Odds[likely] {
			likely = v
		}
	}
	if f.InDoubt() {
		return "As read it hangs as wanted, but that is in doubt: " + said + " Least sure is " + s.subject(f) + ": " +
			chance(f.Odds[likely]) + " that it " + turn(f, likely) + "."
	}
	return "As far as the readings tell it hangs as wanted: " + said + " Least sure is " + s.subject(f) + ": " +
		chance(f.Odds[likely]) + " that it " + turn(f, likely) + "."
}

// subject names what a finding is about.
func (s *Speaker) subject(f judge.Finding) string {
	switch f.Subject {
	case judge.StopGap:
		return "the stop at the " + s.Edge(f.Edge)
	case judge.Latching:
		return "the latch"
	case judge.SwingGap:
		return "the swing past the " + s.Edge(f.Edge)
	case judge.SwingFloor:
		return "the swing over the floor"
	case judge.ClearWay:
		return "the clear way"
	}
	return "the gap at the " + s.Edge(f.Edge)
}

func firstSentence(t string) string {
	if i := strings.Index(t, ". "); i >= 0 {
		return t[:i+1]
	}
	return t
}

func number(n int) string {
	names := [...]string{"no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"}
	if n < len(names) {
		return names[n]
	}
	return strconv.Itoa(n)
}
