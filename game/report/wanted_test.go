package report

import (
	"strings"
	"testing"

	"leafwright/game"
	"leafwright/game/words"
	"leafwright/geom/door"
	"leafwright/geom/timber"
)

// A report says which gaps are wanted today where the year or the paint makes them others
// than those wanted in service, and for what; all good or not.
func TestTheGapsOfTodayAreSaid(t *testing.T) {
	uk := words.Speaker{Lexicon: words.For(words.UK)}
	for _, c := range []struct {
		name string
		put  func(*game.Job)
		want string // "" = they are the same
	}{
		{"nothing said of room or paint", func(*game.Job) {}, ""},
		{"paint", func(j *game.Job) { j.Paint.Leaf.ToCome, j.Paint.Frame.ToCome = 3, 3 }, "At fitting today, for the paint to come: "},
		{"the year", func(j *game.Job) { j.House.Climate, j.House.Room = timber.Maritime, timber.Heated }, "At fitting today, for the year's movement: "},
		{"both", func(j *game.Job) {
			j.House.Climate, j.House.Room = timber.Maritime, timber.Heated
			j.Paint.Leaf.ToCome, j.Paint.Frame.ToCome = 3, 3
		}, "At fitting today, for the year's movement and the paint to come: "},
	} {
		j := game.Blank(762, 1981, 44)
		j.Anatomy = door.Ordinary(door.Framed, 762, 1981)
		j.Anatomy.Timber = "white oak"
		c.put(&j)
		text := strings.Join(strings.Fields(Of(j).Text(uk)), " ")
		_, said, found := strings.Cut(text, "At fitting today")
		if !found {
			said = ""
		} else {
			said = "At fitting today" + said[:min(len(said), 90)]
		}
		if c.want == "" && found || !strings.HasPrefix(said, c.want) {
			t.Errorf("%s: %q, want %q", c.name, said, c.want)
		}
		if found && strings.Contains(said, "hinge side") != strings.Contains(c.want, "paint") {
			t.Errorf("%s: the hinge side moves by paint alone: %q", c.name, said)
		}
	}
}
