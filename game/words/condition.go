package words

import (
	"strings"

	"leafwright/geom/judge"
)

// Condition says how a quantity of the leaf or the frame stands to the published
// classes: the figure, and for each standard the best class it keeps.
func (s *Speaker) Condition(c judge.Condition) Line {
	l := Line{Verdict: judge.Good, Word: "good", Figure: s.size(c.Value), Text: s.quantity(c.Quantity)}
	if c.Quantity == judge.FramePlumb || c.Quantity == judge.HeadLevel {
		l.Figure = Millimetres(c.Value) + " per metre" // a slope, whatever the unit of lengths
	}
	if len(c.Grades) == 0 {
		l.Word = ""
	}
	var said []string
	for i := 0; i < len(c.Grades); {
		j := i
		best := -1
		for ; j < len(c.Grades) && c.Grades[j].Standard == c.Grades[i].Standard; j++ {
			if c.Grades[j].Keeps {
				best = j
			}
		}
		said = append(said, s.grade(c.Grades[i:j], best-i))
		if best < 0 {
			l.Verdict, l.Word = judge.Slack, "outside"
		}
		i = j
	}
	l.Cause = Capital(strings.Join(said, "; "))
	if l.Cause != "" {
		l.Cause += "."
	}
	return l
}

// grade says one standard's classes; best is the index of the strictest one kept,
// below zero for none.
func (s *Speaker) grade(g []judge.Grade, best int) string {
	remembered := ""
	if g[0].Remembered {
		remembered = ", figure from memory"
	}
	if best < 0 {
		return "outside " + name(g[0].Class) + " (" + s.size(g[0].Limit) + remembered + ")"
	}
	return "within " + name(g[best].Class) + " (" + s.size(g[best].Limit) + remembered + ")"
}

func name(c judge.Class) string { return strings.TrimSpace(c.Standard + " " + c.Name) }

func (s *Speaker) quantity(q judge.Quantity) string {
	switch q {
	case judge.Twist:
		return "leaf in wind, read 20 mm in from its corners"
	case judge.BowLength:
		return "leaf bowed along a stile, read 20 mm in from its edge"
	case judge.Squareness:
		return "leaf's worst corner out of square, on a 500 mm square"
	case judge.Diagonals:
		return "between the leaf's diagonals"
	case judge.FramePlumb:
		return "frame out of plumb, worst jamb"
	case judge.FrameLean:
		return "frame out of plumb in all"
	case judge.FrameWind:
		return "frame in wind"
	case judge.FrameRack:
		return "between the opening's diagonals"
	case judge.HeadLevel:
		return "head out of level"
	}
	return string(q)
}
