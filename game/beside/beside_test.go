package beside

import (
	"reflect"
	"strings"
	"testing"

	"leafwright/game"
	"leafwright/game/words"
	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
	"leafwright/geom/trim"
)

// column is a column of numbers by hand.
func column(name string, head, off, minutes float64) game.Column {
	c := game.Column{Name: name, Evenness: head, Off: off, Volume: off * 25, Minutes: minutes}
	for e := range c.Edges {
		c.Edges[e] = game.EdgeGap{Least: 2, Most: 3, Verdict: judge.Good}
	}
	c.Edges[fit.HeadSide] = game.EdgeGap{Least: head, Most: head, Verdict: judge.Tight}
	return c
}

func cells(rows []Row, label string) []string {
	for _, r := range rows {
		if r.Label == label {
			var out []string
			for _, c := range r.Cells {
				out = append(out, c.Text)
			}
			return out
		}
	}
	return nil
}

func TestTable(t *testing.T) {
	a, b, c := column("As found", 1, 0, 0), column("Plane", 2.5, 4.5, 17), column("Pack", 2, 0, 150)
	b.Tried.Anatomy.Rails = []door.Rail{{}, {Name: "lock"}, {}}
	b.Narrows = []trim.Left{{Member: trim.Member{Part: trim.Rail, Index: 2}, Before: 110, Now: 105.5}}
	b.Sightlines = []game.Sightline{{Rail: 1, Above: -2}}
	a.Edges[fit.LatchSide] = game.EdgeGap{Least: 1, Most: 5, Verdict: judge.Tight, Slack: true}
	b.Edges[fit.LatchSide] = game.EdgeGap{Least: 2, Most: 5, Verdict: judge.Slack, Slack: true}
	c.Recut, c.Frame, c.Refused = []int{0, 1}, true, 2
	rows := Table([]game.Column{a, b, c}, words.Speaker{Lexicon: words.For(words.UK)})
	for label, want := range map[string][]string{
		"Gap, hinge side":              {"2.0 to 3.0 mm", "2.0 to 3.0 mm", "2.0 to 3.0 mm"},
		"Gap, head":                    {"1.0 mm, tight", "2.5 mm, tight", "2.0 mm, tight"},
		"Gap, latch side":              {"1.0 to 5.0 mm, tight and slack", "2.0 to 5.0 mm, slack", "2.0 to 3.0 mm"},
		"Off the leaf, where most":     {"nothing", "4.5 mm", "nothing"},
		"Timber off":                   {"nothing", "112 cm³", "nothing"},
		"Narrows":                      {"none", "top rail 110 to 105.5 mm", "none"},
		"Hinges cut anew":              {"none", "none", "2"},
		"Frame":                        {"left alone", "left alone", "touched"},
		"Time, roughly":                {"none", "about 15 min", "about 2.5 h"},
		"Moves that cannot be done":    {"none", "none", "2"},
		"Rails beside the next door's": {"", "lock rail 2 mm below", ""},
	} {
		if got := cells(rows, label); !reflect.DeepEqual(got, want) {
			t.Errorf("%s: %q, want %q", label, got, want)
		}
	}
	for _, r := range Table([]game.Column{a}, words.Speaker{}) {
		if strings.HasPrefix(r.Label, "Moves that") || strings.HasPrefix(r.Label, "Rails") {
			t.Errorf("%s has nothing to say", r.Label)
		}
	}
}

// The first column stays, the others go by the row, those alike as they were.
func TestOrder(t *testing.T) {
	for _, row := range []struct{ by, want []float64 }{
		{[]float64{9, 3, 1, 2}, []float64{0, 2, 3, 1}},
		{[]float64{0, 1, 1, 0}, []float64{0, 3, 1, 2}},
		{[]float64{5}, []float64{0}},
		{nil, nil},
	} {
		var r Row
		for _, by := range row.by {
			r.Cells = append(r.Cells, Cell{By: by})
		}
		got := Order(r)
		for i := range row.want {
			if float64(got[i]) != row.want[i] {
				t.Errorf("%v is sorted %v, want %v", row.by, got, row.want)
				break
			}
		}
	}
}
