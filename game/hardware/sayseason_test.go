package hardware

import (
	"strings"
	"testing"

	"leafwright/game/words"
	"leafwright/geom/judge"
	"leafwright/geom/timber"
)

// What the year says in a sentence agrees with its rows: what binds in every month binds
// all the year, and a gap that binds at one place and gapes at another is both.
func TestTheYearInASentenceAgreesWithItsRows(t *testing.T) {
	w := &words.Speaker{Lexicon: words.For(words.UK)}
	for _, c := range []struct {
		least, most float64 // of the closing gap in April, between January and July by 0.5
		headline    string
		january     string
		july        string
	}{
		{2.5, 2.5, "The closing gap is as wanted all the year: 2.0 mm at the least, in July.", "good", "good"},
		{2.45, 2.55, "The closing gap is as wanted all the year: 2.0 mm at the least, in July.", "good", "good"},
		{2.9, 2.9, "The closing gap is slack in January: 3.4 mm, where 3 mm at the most is wanted.", "slack", "good"},
		{4, 4, "The closing gap is slack in January: 4.5 mm, where 3 mm at the most is wanted.", "slack", "slack"},
		{2.5, 3.2, "The closing gap, where it is widest, is slack in January: 3.7 mm, where 3 mm at the most is wanted.", "slack", "good"},
		{2, 2, "The closing gap is tight in July: 1.5 mm, where 2 mm is wanted.", "good", "tight"},
		{1, 1, "The closing gap is tight all the year, the most in July: 0.5 mm, where 2 mm is wanted.", "tight", "tight"},
		{0.5, 0.5, "The leaf just touches at the latch side in July.", "tight", "tight"},
		{0, 0, "The leaf binds at the latch side in July, by 0.5 mm.", "tight", "binds"},
		{-0.8, 3.9, "The leaf binds at the latch side all the year, by 1.3 mm in July; where it is widest it is slack in January: 4.4 mm, where 3 mm at the most is wanted.",
			"binds, slack elsewhere", "binds, slack elsewhere"},
		{1, 3.2, "The closing gap is tight all the year, the most in July: 0.5 mm, where 2 mm is wanted; where it is widest it is slack in January: 3.7 mm, where 3 mm at the most is wanted.",
			"tight, slack elsewhere", "tight"},
	} {
		s := Season{Across: 200, Wanted: judge.Limits{Least: 2, Target: 2.5, Most: 3}, Season: timber.Season{Tight: 6, Slack: 0}}
		for m := range s.Least {
			s.Grows[m] = 0.5 * (1 - 2*float64(max(6-m, m-6))/6)
			s.Least[m], s.Most[m] = c.least-s.Grows[m], c.most-s.Grows[m]
			s.Verdicts[m] = min(s.Wanted.Judge(s.Least[m]), s.Wanted.Judge(s.Most[m]))
		}
		if got := s.Headline(w); got != c.headline {
			t.Errorf("%v to %v:\n got %s\nwant %s", c.least, c.most, got, c.headline)
		}
		if a, b := s.judged(0), s.judged(6); a != c.january || b != c.july {
			t.Errorf("%v to %v: January %s, July %s; want %s, %s", c.least, c.most, a, b, c.january, c.july)
		}
	}
}

// A leaf that does not move and binds is not said to have room.
func TestAStillLeafThatBinds(t *testing.T) {
	s := Season{Wanted: judge.Limits{Least: 2, Most: 3}}
	for m := range s.Least {
		s.Least[m], s.Most[m] = -0.8, -0.8
	}
	if got, want := s.Headline(&words.Speaker{Lexicon: words.For(words.UK)}), "The closing gap stays as it is all the year, −0.8 mm at the least: binds."; got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
}

// Nobody marks a tenth of a millimetre: the hinges' middles and the packers under the
// foot are said to the half of one, and two packers that come out alike as one.
func TestMarksAreHalves(t *testing.T) {
	w := &words.Speaker{Lexicon: words.For(words.UK)}
	for _, c := range []struct {
		under [2]float64
		want  string
	}{
		{[2]float64{17.6, 12.3}, "On the jamb, mark the hinges' middles at 1777.5 mm and 258 mm above the floor at its foot. Hang the leaf on packers of 17.5 mm under the hanging end of its foot and 12.5 mm under the closing end."},
		{[2]float64{12.3, 12.6}, "On the jamb, mark the hinges' middles at 1777.5 mm and 258 mm above the floor at its foot. Hang the leaf on packers of 12.5 mm under its foot."},
	} {
		h := Hang{Marks: []float64{1777.6, 257.9}, Under: c.under}
		if got := strings.Join(h.Lines(w), " "); got != c.want {
			t.Errorf("got  %s\nwant %s", got, c.want)
		}
	}
	in := &words.Speaker{Lexicon: words.For(words.US), Length: words.Inches}
	if got := mark(in, 25.4*1.03125); got != `1 1/32"` { // what a person's unit offers
		t.Errorf("in inches %s", got)
	}
}
