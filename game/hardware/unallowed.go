package hardware

import (
	"leafwright/game"
	"leafwright/game/words"
	"leafwright/geom/timber"
)

// Unallowed says what of the year the gaps wanted today do not allow for, since the job
// says neither where the leaf hangs nor when it was read; "" where nothing is left out.
func Unallowed(s *words.Speaker, job *game.Job, t *game.Tried) string {
	const worth = 0.1 // mm of movement that no gap shows
	at := game.WhereOf(job)
	placed := timber.PresetFor(at.Climate, at.Room) != nil
	if placed && at.Month >= 0 {
		return ""
	}
	year := SeasonOf(job, t, Usual(at))
	if year.Sawn[0] < worth {
		return ""
	}
	moves := tenth(s, year.Sawn[0]) + " from " + Months[year.Slack] + " to " + Months[year.Tight]
	if placed {
		return "No month is said in which the door was read: its leaf is taken as in the middle of the year. It grows " + moves + ", and the closing gap is out by up to half of that. Say the month."
	}
	return "The year's movement is not allowed for, since climate and room are not said: in a heated room of a maritime climate the leaf grows " + moves + ". Say where it hangs and in which month it was read."
}
