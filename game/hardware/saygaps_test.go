package hardware

import (
	"strings"
	"testing"

	"leafwright/game"
	"leafwright/game/words"
	"leafwright/geom/door"
	"leafwright/geom/judge"
	"leafwright/geom/timber"
)

// What a gap is, beside what is wanted of it: below zero with its sign, too wide at one
// end and too narrow at the other, and never reading like the limit it misses.
func TestGapStands(t *testing.T) {
	w := &words.Speaker{Lexicon: words.For(words.UK)}
	l, open := judge.Limits{Least: 2, Target: 2.5, Most: 3}, judge.Limits{Least: 4, Target: 6}
	for _, c := range []struct {
		least, most float64
		l           judge.Limits
		says        string
	}{
		{2.2, 2.8, l, "It is 2.2 to 2.8 mm now: good."},
		{2.5, 2.5, l, "It is 2.5 mm now: good."},
		{-7, -1, l, "It is −7.0 to −1.0 mm now, where 2.0 to 3.0 mm is wanted: binds."},
		{-7, 5, l, "It is −7.0 to 5.0 mm now, where 2.0 to 3.0 mm is wanted: binds, and slack elsewhere."},
		{1, 4, l, "It is 1.0 to 4.0 mm now, where 2.0 to 3.0 mm is wanted: tight, and slack elsewhere."},
		{1.4, 2.2, l, "It is 1.4 to 2.2 mm now, where 2.0 to 3.0 mm is wanted: tight."},
		{2.4, 7, l, "It is 2.4 to 7.0 mm now, where 2.0 to 3.0 mm is wanted: slack."},
		{2.4, 3.03, l, "It is 2.4 to 3.0 mm now: good."}, // as near as a feeler tells
		{2.4, 3.04, judge.Limits{Least: 2, Most: 2.96}, "It is 2.4 to 3.04 mm now, where 2.0 to 3.0 mm is wanted: slack."},
		{7, 7, open, "It is 7.0 mm now: good."},
		{-7, 0, open, "It is −7.0 to 0.0 mm now, where 4.0 mm or more is wanted: binds."},
		{3, 90, open, "It is 3.0 to 90.0 mm now, where 4.0 mm or more is wanted: tight."},
	} {
		if got := standing(w, c.least, c.most, c.l); got != c.says {
			t.Errorf("%v to %v:\n got %s\nwant %s", c.least, c.most, got, c.says)
		}
	}
}

// The gap to fit to today and the gaps that stay as wanted all the year do not gainsay
// each other: where the middle of what is wanted would be slack in the driest month, the
// most that is not is named.
func TestFittingAgreesWithTheYear(t *testing.T) {
	w := &words.Speaker{Lexicon: words.For(words.UK)}
	seen := map[string]bool{}
	for _, room := range []timber.Room{timber.Heated, timber.Unheated, timber.Outside} {
		for _, month := range []int{0, 3, 6, 9} {
			for _, wide := range []float64{400, 762, 1000} {
				for _, most := range []float64{2.4, 3, 3.6, 4.5, 6} {
					j := game.Blank(wide, 1981, 40)
					j.Anatomy = door.Ordinary(door.Framed, wide, 1981)
					j.Wanted.Gaps[door.LatchSide] = judge.Limits{Least: 2, Target: (2 + most) / 2, Most: most}
					stands := j.Stands()
					f := game.FittingOf(&j, &stands, game.Where{Climate: timber.Maritime, Room: room, Month: month})
					l, all := f.Wanted.Gaps[door.LatchSide], f.Gaps[door.LatchSide].All
					said := allYear(w, &f)
					s := f.Season
					moves, asked := s.Grows[s.Tight]-s.Grows[s.Slack], most-2
					switch {
					case strings.HasPrefix(said, "No gap"):
						seen["none"] = true
						if moves < asked {
							t.Errorf("moves %v in %v: %s", moves, asked, said)
						}
					case strings.HasPrefix(said, "Hardly"):
						seen["hardly"] = true
						if moves >= asked {
							t.Errorf("moves %v in %v: %s", moves, asked, said)
						}
					case strings.HasPrefix(said, "That is slack"):
						seen["less"] = true
						if !(all > l.Most) || !strings.Contains(said, "fit it to "+tenth(w, l.Most)+" today") {
							t.Errorf("%v against %+v: %s", all, l, said)
						}
					default:
						seen["stays"] = true
						if all > l.Most+0.06 || all < l.Least-1e-9 {
							t.Errorf("%v against %+v: %s", all, l, said)
						}
					}
				}
			}
		}
	}
	if len(seen) != 4 {
		t.Errorf("only %v came up", seen)
	}
}
