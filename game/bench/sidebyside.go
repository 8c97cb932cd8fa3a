package bench

import (
	"strings"

	"leafwright/game"
	"leafwright/game/beside"
	"leafwright/game/draw"
)

// SideBySide is every way to leave the door, beside each other.
type SideBySide struct {
	Ways []Way
	Rows []beside.Row // a cell for each way
}

// Way is one of them.
type Way struct {
	Shown Shown
	Name  string
	Wrong []string // what is not as wanted, in sentences
	at    *game.Column
}

// SideBySide sets as found, as it stands and the options beside each other; nothing
// while the readings make no door.
func (s *State) SideBySide() SideBySide {
	if s.lacks != nil {
		return SideBySide{}
	}
	say := s.speaker()
	cols := s.Job().Compare()
	out := SideBySide{Rows: beside.Table(cols, *say)}
	for i := range cols {
		c := &cols[i]
		w := Way{Shown: Shown(c.Option), Name: c.Name, at: c}
		for _, l := range say.Findings(c.Out()) {
			w.Wrong = append(w.Wrong, strings.TrimSpace(l.Word+", "+l.Figure+" "+l.Text))
		}
		out.Ways = append(out.Ways, w)
	}
	return out
}

// WayPicture gives a small picture of a way from the front, px.
func (s *State) WayPicture(w *Way, wide, high float64) *draw.List {
	var scene draw.Scene
	var l draw.List
	job := s.Job()
	draw.Small(&l, &scene, w.at.Fit, &w.at.Tried.Door, &w.at.Tried.Anatomy, &w.at.Wanted, &job.Door, job.Hand == game.Right, wide, high, s.figures())
	return &l
}

// figures writes gaps for a drawing in the unit shown; nil where that is the drawing's own.
func (s *State) figures() func(mm float64) string {
	if s.look.Inches {
		return s.Figure
	}
	return nil
}
