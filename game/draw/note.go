package draw

import (
	"leafwright/geom/fit"
	"leafwright/geom/judge"
)

// note is a sentence about the swing, written under the plan with its verdict's
// sign.
type note struct {
	verdict judge.Verdict
	text    string
}

// gatherNotes lists what the swing shows that a closed leaf does not.
func (s *Scene) gatherNotes() []note {
	notes := s.notes[:0]
	for e := fit.HingeSide; e <= fit.HeadSide; e++ {
		if !s.fouls(e) {
			continue
		}
		sw := s.f.Swing[e]
		w := s.words.say(foulNames[e]).say(" fouls by ")
		s.gap(-sw.Least).say(" at ").degrees(sw.Angle.Degrees())
		if e.Upright() {
			w.say(", ")
			s.length(sw.At.Y).say(" up")
		}
		notes = append(notes, note{judge.Binds, w.say(".").keep()})
	}
	if s.f.StopBound && s.f.LatchMiss > 0.05 {
		w := s.words.say("A stop holds the leaf ")
		s.gap(s.f.LatchMiss)
		notes = append(notes, note{judge.Binds, w.say(" short of latching.").keep()})
	}
	if by := s.hingeBound(); by > worse {
		w := s.words.say("Hinge-bound: presses the hinge stop by ")
		s.gap(by)
		notes = append(notes, note{judge.Binds, w.say(".").keep()})
	}
	if v := s.floorVerdict(); v != judge.Good && !s.strip {
		notes = append(notes, note{v, s.sayFloor()})
	}
	s.notes = notes
	return notes
}

var foulNames = [...]string{fit.HingeSide: "Hanging edge", fit.LatchSide: "Closing edge", fit.HeadSide: "Top edge"}

// noteRoom is the height the notes take up above the plan's caption.
func (s *Scene) noteRoom() float64 {
	n, size := 0, s.v.captionSize()
	for _, k := range s.gatherNotes() {
		n += countLines(k.text, size*bolder, s.noteWidth())
	}
	return float64(n) * leading * size
}

func (s *Scene) noteWidth() float64 { return 0.92*s.planBox.width() - signSize - signGap }

// drawNotes writes the notes from top down, each line centred.
func (s *Scene) drawNotes(top float64) {
	size, mid := s.v.captionSize(), s.planBox.middle()
	y := top + (leading-descent)*size
	for _, k := range s.gatherNotes() {
		first := true
		_, even := lines(k.text, size*bolder, s.noteWidth())
		for rest := k.text; rest != ""; first = false {
			var line string
			line, rest = cut(rest, size*bolder, even)
			if first {
				s.signed(k.verdict, Pt{mid, y}, verdictText(k.verdict), size, line)
			} else {
				s.pen.text(Pt{mid, y}, Middle, verdictText(k.verdict), size, true, line)
			}
			y += leading * size
		}
	}
}

// sayPlan says how the plan is drawn and what it shows.
func (s *Scene) sayPlan() string {
	w := s.words.say("Plan at ")
	s.length(s.section)
	return w.say(" up, from above, true to scale.").keep()
}
