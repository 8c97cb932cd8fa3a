package bench

import (
	"strconv"
	"strings"

	"leafwright/game"
	"leafwright/game/words"
	"leafwright/geom/survey"
)

// Unsure tells whether the findings rest on readings and it is not worked out yet
// why they are so and how well they are known: that takes too long for every
// keystroke. A page calls [State.Weigh] once nothing was typed for a moment.
func (s *State) Unsure() bool { return s.Measuring() && s.lacks == nil && !s.weighed }

// Weigh works out the causes of the findings of the door shown, how well they are
// known and what to measure next. While a move is tried it can wait.
func (s *State) Weigh() {
	if !s.Unsure() || s.preview.on {
		return
	}
	s.weighed = true
	s.sure = s.surenessShown()
	s.find()
	s.jobs++
}

// surenessShown works out how well the fit of the door shown is known: the readings'
// errors go through its moves. How true the moves themselves come out is not in it.
func (s *State) surenessShown() *game.Sureness {
	job := s.Job()
	switch s.look.Option {
	case AsFound:
		return job.SureOf(nil)
	case AsStands:
		return job.Sure(false)
	}
	return job.SureOf(job.Change(int(s.look.Option)))
}

// Swinging tells whether [State.WeighMore] has something to do.
func (s *State) Swinging() bool { return s.weighed && s.sure != nil && !s.swung }

// WeighMore does a little of working out how well the swing is known, after
// [State.Weigh], and tells whether that is done: then the findings of the swing have
// their margins. A change drops what was worked out so far.
func (s *State) WeighMore() (done bool) {
	if !s.Swinging() {
		return true
	}
	if !s.sure.SwingStep() {
		return false
	}
	s.swung = true
	found := s.found
	if s.preview.on {
		found = s.preview.found
	}
	s.weigh(found)
	s.jobs++
	return true
}

// Lacking tells that the readings do not make a door yet: what is drawn is as far
// as they go, and there are no findings.
func (s *State) Lacking() bool { return s.lacks != nil }

// lacking says what keeps the readings from making a door.
func (s *State) lacking() string {
	say, job := s.speaker(), s.Job()
	wanted := job.Survey.Missing
	if len(wanted) == 0 {
		return s.contrary(say)
	}
	parts := make([]string, len(wanted))
	for i, r := range wanted {
		parts[i] = least(say, r)
	}
	if len(job.Counted()) == 0 {
		return "Nothing is read yet: " + strconv.Itoa(len(wanted)) + " readings are enough to hang the door."
	}
	return "Still to be read before the door can be hung: " + words.Listed(parts) + "."
}

// least names a reading of the least set, wherever it is taken.
func least(say *words.Speaker, r survey.Reading) string {
	switch r.Kind {
	case survey.OpeningWidth:
		return "the opening's width"
	case survey.OpeningHeight:
		return "the opening's height"
	case survey.LeafWidth:
		return "the leaf's width"
	case survey.LeafHeight:
		return "the leaf's height"
	}
	return say.Thing(r)
}

// contrary says which readings no door can have.
func (s *State) contrary(say *words.Speaker) string {
	faults, ok := s.lacks.(game.Faults)
	if !ok {
		return s.lacks.Error()
	}
	said := "No door has all these readings."
	for i, f := range faults {
		if i == 3 {
			said += " And more."
			break
		}
		for k := range s.Job().Readings {
			if strings.HasPrefix(f.Path, "readings["+strconv.Itoa(k)+"]") {
				f.Path = words.Capital(say.Thing(s.Job().Readings[k].Survey()))
			}
		}
		if f.Path == "readings" {
			f.Path = ""
		}
		text := strings.Replace(f.Error(), "they make a door whose ", "", 1)
		for k := range s.Job().Door.Hinges {
			hinge := "hinges[" + strconv.Itoa(k) + "]"
			text = strings.Replace(text, hinge+".leaf", say.Thing(survey.Reading{Kind: survey.HingeOnLeaf, Hinge: k}), 1)
			text = strings.Replace(text, hinge+".jamb", say.Thing(survey.Reading{Kind: survey.HingeOnJamb, Hinge: k}), 1)
		}
		said += " " + words.Capital(text) + "."
	}
	return said
}
