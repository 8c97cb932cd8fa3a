package hardware

import (
	"strings"
	"testing"

	"leafwright/game"
	"leafwright/game/words"
	"leafwright/geom/door"
)

// Where a job says neither where nor when, what the year does is said not to be in the
// gaps wanted; where it says both, or the leaf does not move, nothing is.
func TestYearNotAllowedFor(t *testing.T) {
	s := &words.Speaker{Lexicon: words.For(words.UK)}
	for _, c := range []struct {
		name  string
		house game.House
		made  door.Make
		says  string
	}{
		{"nothing said", game.House{}, door.Framed, "climate and room are not said"},
		{"a month alone", game.House{Month: "june"}, door.Framed, "climate and room are not said"},
		{"no month", game.House{Climate: "maritime", Room: "heated"}, door.Framed, "No month is said"},
		{"all said", game.House{Climate: "maritime", Room: "heated", Month: "june"}, door.Framed, ""},
		{"flush", game.House{}, door.Flush, ""},
	} {
		job := game.Blank(762, 1981, 40)
		job.House = c.house
		job.Anatomy = door.Ordinary(c.made, 762, 1981)
		tried := job.Stands()
		got := Unallowed(s, &job, &tried)
		if c.says == "" && got != "" || !strings.Contains(got, c.says) {
			t.Errorf("%s: %q, want %q in it", c.name, got, c.says)
		}
	}
}
