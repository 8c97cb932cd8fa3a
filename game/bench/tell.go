package bench

import (
	"leafwright/game"
	"leafwright/game/words"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
)

// speaker says things in the unit and the trade words chosen.
func (s *State) speaker() *words.Speaker {
	w := &words.Speaker{Lexicon: words.For(s.look.Words)}
	if s.look.Inches {
		w.Length, w.Place = s.Length, s.Place
	}
	w.Hinges = s.Job().HingesAsked()
	return w
}

// Headline says in a sentence or two how the door hangs.
func (s *State) Headline() string {
	if s.lacks != nil {
		return s.lacking()
	}
	said := s.speaker().Headline(s.findings())
	if s.season.when != "" {
		said = "In " + s.season.when + ": " + string(said[0]|0x20) + said[1:]
	}
	return said
}

// Findings says every finding, worst first.
func (s *State) Findings() []words.Line {
	return s.speaker().Findings(s.findings())
}

// Conditions says how leaf and frame stand to the published classes.
func (s *State) Conditions() []words.Line {
	w := s.speaker()
	all := judge.Conditions(&s.tried.Door)
	lines := make([]words.Line, len(all))
	for i, c := range all {
		lines[i] = w.Condition(c)
	}
	return lines
}

// EdgeName names a side of the opening.
func (s *State) EdgeName(e fit.Edge) string { return s.speaker().Edge(e) }

// ReadingRange gives the places of an edge where there is a gap to read, mm.
func (s *State) ReadingRange(e fit.Edge) (lo, hi float64) {
	r := s.fit.Gaps[e].Range()
	if r.IsEmpty() {
		return 0, 0
	}
	return r.Lo, r.Hi
}

// GapAt gives the closed gap at a place of an edge, and the gap the eye sees
// there, in mm. A place beyond the edge's ends gives the gap at the end.
func (s *State) GapAt(e fit.Edge, place float64) (gap, shown float64) {
	return s.fit.Gaps[e].Curve.At(place), s.fit.Shown[e].Curve.At(place)
}

// Cautions gives what to take care of in this job.
func (s *State) Cautions() []game.Caution { return game.Cautions(s.Job()) }

// ReadOff says the gap at the place that is read.
func (s *State) ReadOff() string {
	r := s.look.Reading
	lo, hi := s.ReadingRange(r.Edge)
	if !(r.Place >= lo && r.Place <= hi) {
		return "There is a gap to read from " + s.Place(lo) + " to " + s.Place(hi) + " on this side."
	}
	gap, shown := s.GapAt(r.Edge, r.Place)
	verdict := words.Word(s.wanted.Gaps[r.Edge].Judge(gap))
	text := s.Length(gap) + ", " + verdict + "."
	if seen := s.Length(shown); seen != s.Length(gap) {
		text += " At the knuckle face, where the eye sees it, " + seen + "."
	}
	return text
}
