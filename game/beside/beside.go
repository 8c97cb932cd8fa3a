// Package beside says what ways come to, for a page and for a terminal alike: the columns
// of a comparison side by side as a table, and how the door hangs after a plan.
package beside

import (
	"strconv"
	"strings"

	"leafwright/game"
	"leafwright/game/words"
	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
)

// Row is one line of the table.
type Row struct {
	Label string
	Cells []Cell // one a column
}

// Cell is what stands in a row under a column.
type Cell struct {
	Text    string
	By      float64 // what the row is sorted by, the better the lower
	Verdict judge.Verdict
}

// Table gives the rows for the columns; every row has a cell for each.
func Table(cols []game.Column, s words.Speaker) []Row {
	var rows []Row
	add := func(label string, cell func(c *game.Column) Cell) {
		r := Row{Label: label}
		for i := range cols {
			r.Cells = append(r.Cells, cell(&cols[i]))
		}
		rows = append(rows, r)
	}
	amount := func(by float64, text string) Cell { return Cell{text, by, judge.Good} }
	for e := range fit.Edges {
		add("Gap, "+s.Edge(e), func(c *game.Column) Cell {
			g := c.Edges[e]
			text := s.Span(g.Least, g.Most)
			if g.Verdict != judge.Good {
				text += ", " + words.Word(g.Verdict)
				if g.Slack && g.Verdict != judge.Slack {
					text += " and slack"
				}
			}
			return Cell{text, 0 - g.Least, g.Verdict}
		})
	}
	add("Spread round the leaf", func(c *game.Column) Cell { return amount(c.Evenness, s.Span(c.Evenness, c.Evenness)) })
	add("Not as wanted", func(c *game.Column) Cell {
		out := c.Out()
		cell := amount(float64(len(out)), orNone(len(out)))
		if len(out) > 0 {
			cell.Verdict = out[0].Verdict
		}
		return cell
	})
	add("Off the leaf, where most", func(c *game.Column) Cell { return amount(c.Off, orNothing(c.Off, s.Amount(c.Off))) })
	add("Timber off", func(c *game.Column) Cell {
		return amount(c.Volume, orNothing(c.Volume, words.CubicCentimetres(c.Volume*1000)))
	})
	add("Narrows", func(c *game.Column) Cell {
		t := s
		t.Rails = RailNames(&c.Tried.Anatomy)
		said, by := []string{}, 0.0
		for _, l := range c.Narrows {
			said, by = append(said, t.Left(l)), by+l.Before-l.Now
		}
		return amount(by, orText(strings.Join(said, "; "), "none"))
	})
	add("Strips glued on", func(c *game.Column) Cell { return amount(float64(c.Strips), orNone(c.Strips)) })
	add("Cuts", func(c *game.Column) Cell { return amount(float64(c.Cuts), orNone(c.Cuts)) })
	add("Hinges cut anew", func(c *game.Column) Cell { return amount(float64(len(c.Recut)), orNone(len(c.Recut))) })
	add("Frame", func(c *game.Column) Cell {
		if c.Frame {
			return amount(1, "touched")
		}
		return amount(0, "left alone")
	})
	add("Time, roughly", func(c *game.Column) Cell { return amount(c.Minutes, words.Minutes(c.Minutes)) })
	if some(cols, func(c *game.Column) bool { return c.Refused > 0 }) {
		add("Moves that cannot be done", func(c *game.Column) Cell {
			cell := amount(float64(c.Refused), orNone(c.Refused))
			if c.Refused > 0 {
				cell.Verdict = judge.Tight
			}
			return cell
		})
	}
	if some(cols, func(c *game.Column) bool { return len(c.Sightlines) > 0 }) {
		add("Rails beside the next door's", func(c *game.Column) Cell {
			t := s
			t.Rails = RailNames(&c.Tried.Anatomy)
			said, by := []string{}, 0.0
			for _, l := range c.Sightlines {
				said, by = append(said, t.Sightline(l.Rail, l.Above)), max(by, l.Above, -l.Above)
			}
			return amount(by, strings.Join(said, "; "))
		})
	}
	return rows
}

// Order gives the columns' places sorted by a row, the best first, with those alike
// left in their order; the first column, as found, stays first.
func Order(r Row) []int {
	at := make([]int, len(r.Cells))
	for i := range at {
		at[i] = i
		for k := i; k > 1 && r.Cells[at[k]].By < r.Cells[at[k-1]].By; k-- {
			at[k], at[k-1] = at[k-1], at[k]
		}
	}
	return at
}

// RailNames gives the names of a leaf's rails as a speaker takes them.
func RailNames(a *door.Anatomy) []string {
	names := make([]string, len(a.Rails))
	for i := range names {
		names[i] = a.Rails[i].Name
	}
	return names
}

func some(cols []game.Column, is func(c *game.Column) bool) bool {
	for i := range cols {
		if is(&cols[i]) {
			return true
		}
	}
	return false
}

func orNone(n int) string {
	if n == 0 {
		return "none"
	}
	return strconv.Itoa(n)
}

func orNothing(x float64, text string) string {
	if x == 0 {
		return "nothing"
	}
	return text
}

func orText(text, none string) string {
	if text == "" {
		return none
	}
	return text
}
