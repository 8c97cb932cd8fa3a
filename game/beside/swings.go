package beside

import (
	"leafwright/game"
	"leafwright/game/words"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
)

// Swings says how the leaf of a job as it stands swings by itself, which no way of the
// advice cures; empty where it does not.
func Swings(s *words.Speaker, t *game.Tried, w *judge.Wanted) string {
	var f fit.Fit
	fit.Evaluate(&f, &t.Door)
	for _, f := range judge.Findings(&f, &t.Door, w) {
		if f.Subject == judge.LetGo {
			for _, l := range s.Findings([]judge.Finding{f}) {
				return "What is advised here leaves this: the leaf " + l.Word + " " + l.Figure + " " + l.Text
			}
		}
	}
	return ""
}
