package report

import (
	"strconv"

	"leafwright/game"
	"leafwright/game/beside"
	"leafwright/game/words"
	"leafwright/geom/trim"
)

// refusal is a move that cannot be done, why, and the moves after it that lean on it.
type refusal struct {
	Number  int    `json:"number"` // from 1
	Text    string `json:"text"`
	Why     string `json:"why"`
	Without []int  `json:"leaning_moves,omitempty"` // from 1
}

// refusals gives the moves that cannot be done of those a door was tried with.
func refusals(s *words.Speaker, t *game.Tried) (all []refusal) {
	say := *s
	say.Rails = beside.RailNames(&t.Anatomy)
	steps := t.Steps
	for i := range steps {
		if !refused(&steps[i]) || steps[i].Move.Off {
			continue
		}
		r := refusal{Number: i + 1, Text: say.Move(&steps[i].Move), Why: say.Care(steps[i].Why)}
		for k := i + 1; k < len(steps); k++ {
			for _, care := range steps[k].Done.Cares {
				if care.About == trim.WithoutMove && care.Member.Index == i && !refused(&steps[k]) {
					r.Without = append(r.Without, k+1)
				}
			}
		}
		all = append(all, r)
	}
	return all
}

// told says what the figures are without the move.
func (r *refusal) told() string {
	said := "The figures are without it"
	if len(r.Without) == 0 {
		return said + "."
	}
	moves := numbered(r.Without)
	leans := ", which leans on it and is"
	if len(r.Without) > 1 {
		leans = ", which lean on it and are"
	}
	return said + ", and with " + moves + leans + " made all the same."
}

// numbered writes moves by their numbers: "moves 2, 3 and 5".
func numbered(all []int) string {
	names := make([]string, len(all))
	for k, n := range all {
		names[k] = strconv.Itoa(n)
	}
	if len(all) > 1 {
		return "moves " + words.Listed(names)
	}
	return "move " + words.Listed(names)
}

// tried says what the door is reported after, and what of it cannot be done.
func tried(s *words.Speaker, name string, t *game.Tried) string {
	said := "Tried: " + name + "."
	var no []int
	for _, r := range refusals(s, t) {
		no = append(no, r.Number)
	}
	if len(no) == 0 {
		return said
	}
	return said + " Its " + numbered(no) + " cannot be done: what follows is the door without."
}
