package bench

import (
	"slices"
	"strings"

	"leafwright/game"
	"leafwright/game/beside"
	"leafwright/game/words"
	"leafwright/geom/trim"
)

// MoveLine is one move in the list of those of the door shown, in words.
type MoveLine struct {
	Text    string         // what is done
	Did     string         // what it takes and leaves, empty where it is not done
	Refused string         // why it cannot be done, empty where it can
	Minded  []string       // what is to be minded of the joints and the door
	Care    []game.Caution // what can hurt someone and no move before it says
	Off     bool
}

// MoveLines says every move of the option shown, or of what was done for keeps.
func (s *State) MoveLines() []MoveLine {
	say := s.moveSpeaker()
	steps := s.Steps()
	lines := make([]MoveLine, len(steps))
	var said []game.Caution
	for i := range steps {
		st := &steps[i]
		l := MoveLine{Text: say.Move(&st.Move), Off: st.Move.Off}
		switch {
		case l.Off:
		case st.Why != nil:
			l.Refused = "Not done. " + sentence(say.Care(st.Why))
		default:
			l.Did = sentence(say.Did(&st.Done))
			for k := range st.Done.Cares {
				l.Minded = append(l.Minded, sentence(say.Care(&st.Done.Cares[k])))
			}
		}
		if !l.Off {
			for _, c := range game.StepCautions(s.Job(), &st.Move) {
				if !slices.Contains(said, c) {
					said = append(said, c)
					l.Care = append(l.Care, c)
				}
			}
		}
		lines[i] = l
	}
	return lines
}

// MovesTotal says what all moves of the door shown come to.
func (s *State) MovesTotal() string {
	var all trim.Done
	done := 0
	for _, st := range s.Steps() {
		if st.Move.Off || st.Why != nil {
			continue
		}
		done++
		d := &st.Done
		all.Volume += d.Volume
		all.Minutes += d.Minutes
		all.Cuts += d.Cuts
		all.Strips += d.Strips
		for _, h := range d.Gains {
			if !slices.Contains(all.Gains, h) {
				all.Gains = append(all.Gains, h)
			}
		}
	}
	if done < 2 {
		return ""
	}
	return "In all: " + strings.TrimSuffix(s.moveSpeaker().Did(&all), ".") + "."
}

// sentence ends a text with a full stop.
func sentence(text string) string {
	if text == "" || strings.HasSuffix(text, ".") {
		return text
	}
	return words.Capital(text) + "."
}

// moveSpeaker says what moves do, with the leaf's own names for its rails.
func (s *State) moveSpeaker() *words.Speaker {
	say := s.speaker()
	say.Rails = beside.RailNames(&s.Job().Anatomy)
	return say
}

// AddOption adds an empty option and shows it.
func (s *State) AddOption() error { return s.Add(optionList) }
