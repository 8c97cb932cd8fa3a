package draw

import (
	"slices"
	"strings"
	"testing"

	"leafwright/geom"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
)

// A figure just out of its limits that reads like the limit it misses says on which side
// of it it is; one that is within them, or plainly out, is the bare number.
func TestAFigureIsNeverItsLimitAndOutOfIt(t *testing.T) {
	for _, c := range []struct {
		gap         float64 // at the head
		least, most float64
		format      func(mm float64) string
		want        string
		verdict     judge.Verdict
	}{
		{3.04, 2, 2.96, nil, ">3.0", judge.Slack}, // over by more than a feeler's thinnest blade
		{3.02, 2, 3, nil, "3.0", judge.Good},
		{3.0, 2, 3, nil, "3.0", judge.Good},
		{2.98, 2, 3, nil, "3.0", judge.Good},
		{3.2, 2, 3, nil, "3.2", judge.Slack},
		{1.96, 2.04, 3, nil, "<2.0", judge.Tight},
		{1.97, 2, 3, nil, "2.0", judge.Good},
		{1.8, 2, 3, nil, "1.8", judge.Tight},
		{-0.02, 2, 3, nil, "0.0", judge.Binds},
		{-2, 2, 3, nil, "−2.0", judge.Binds},
		{3.3, 2, 3.1, inches, `>0 4/32"`, judge.Slack},
		{1.5, 1.6, 3, inches, `<0 2/32"`, judge.Tight},
		{2.4, 1.6, 3, inches, `0 3/32"`, judge.Good},
	} {
		s := situation{d: square(), a: fourPanels(), w: wanted()}
		was := fit.Fit{}
		fit.Evaluate(&was, &s.d)
		d := c.gap - was.Gaps[fit.HeadSide].Least
		for i := range s.d.Frame.Head {
			s.d.Frame.Head[i].Value += d
		}
		s.w.Gaps[fit.HeadSide] = judge.Limits{Least: c.least, Most: c.most}
		s.view.Format, s.view.Show = c.format, Front
		s.view.Lens = Lens{On: true, Edge: fit.HeadSide, Place: 300}
		var l List
		var sc Scene
		s.draw(&l, &sc, 1000, 850)
		tag, figures := false, 0
		for _, m := range l.Marks {
			if m.Kind != Text {
				continue
			}
			tag = tag || m.Text == c.want+", "+verdictNames[c.verdict]
			if m.Text == c.want && m.Ink == verdictText(c.verdict) {
				figures++
			}
			if strings.TrimLeft(m.Text, "<>") != m.Text && !strings.HasPrefix(m.Text, c.want) {
				t.Errorf("%g within %g to %g: %q", c.gap, c.least, c.most, m.Text)
			}
		}
		if figures == 0 || !tag {
			t.Errorf("%g within %g to %g: %q is written %d times, on the loupe %v", c.gap, c.least, c.most, c.want, figures, tag)
		}
	}
}

// Where a station's figure is good and the gap, a hair on, is not, the one that is not is written.
func TestAnExtremeJustOutOfItsLimitsIsWritten(t *testing.T) {
	s := situation{d: square(), a: fourPanels(), w: wanted()}
	head := s.d.Frame.Head
	first, last := head[0], head[len(head)-1]
	mid := (first.At + last.At) / 2
	s.d.Frame.Head = geom.Profile{first, {At: mid - 60, Value: first.Value}, {At: mid, Value: first.Value + 0.03}, {At: mid + 60, Value: first.Value}, last}
	var f fit.Fit
	fit.Evaluate(&f, &s.d)
	s.w.Gaps[fit.HeadSide] = judge.Limits{Least: 1, Most: f.Gaps[fit.HeadSide].Least - 0.04}
	s.view.Show = Front
	var l List
	var sc Scene
	s.draw(&l, &sc, 1000, 850)
	var all []string
	for _, m := range l.Marks {
		if m.Kind == Text && m.Ink == TextSlack {
			all = append(all, m.Text)
		}
	}
	if !slices.ContainsFunc(all, func(text string) bool { return strings.HasPrefix(text, ">") }) {
		t.Errorf("slack are %q", all)
	}
}

// Of an edge that is wide somewhere and nowhere close the account says slack.
func TestTheAccountTellsOfWideGaps(t *testing.T) {
	s := situation{d: square(), a: fourPanels(), w: wanted()}
	last := &s.d.Frame.Head[len(s.d.Frame.Head)-1]
	last.Value += 4
	var l List
	var sc Scene
	s.draw(&l, &sc, 1000, 850)
	if !strings.Contains(l.Desc, "Head 3.0 to 7.0, slack.") {
		t.Errorf("%q", l.Desc)
	}
}
