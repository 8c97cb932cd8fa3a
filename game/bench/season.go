package bench

import (
	"math"

	"leafwright/game"
	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
)

// season is another time of the year that the leaf is shown in.
type season struct {
	wider float64 // than it is, mm
	when  string  // "July"; empty now
}

// SetSeason shows the leaf so much wider, mm, as it is in the month named; no name
// shows it as it is now. Hung by its hinges it grows at its closing edge. The job is
// not changed, moves are made on the leaf as it is now, and another job is shown as
// it is now.
func (s *State) SetSeason(wider float64, month string) {
	if math.IsNaN(wider) {
		wider = 0
	}
	s.dropPreview()
	s.season = season{geom.Interval{Lo: -widest, Hi: widest}.Clamp(wider), month}
	s.hang(s.stood)
	s.find()
	s.looks++
}

// Season tells the month the leaf is shown in, empty now.
func (s *State) Season() string { return s.season.when }

// widest is more than any leaf grows, mm.
const widest = 100

// on makes a door as it is then.
func (w *season) on(d *door.Door) {
	if w.when != "" {
		d.Leaf.Closing = d.Leaf.Closing.Shift(w.wider)
	}
}

// hang shows a door, as it is in the season: today it is held against the gaps to fit
// it to, in another season against those wanted in service.
func (s *State) hang(t game.Tried) {
	s.tried = t
	if s.wanted = s.Job().Wanted; s.season.when == "" {
		s.wanted = s.Job().WantedToday(&t)
	}
	s.season.on(&s.tried.Door)
	fit.Evaluate(&s.fit, &s.tried.Door)
}

// find finds what is to be said of the door shown, but for its causes where they rest
// on readings and are not weighed yet.
func (s *State) find() {
	if s.lacks != nil {
		return
	}
	find := judge.Findings
	if s.Measuring() && !s.weighed {
		find = judge.Verdicts
	}
	s.found = find(&s.fit, &s.tried.Door, &s.wanted)
	s.weigh(s.found)
}

// weigh gives findings their margins, once they are worked out. In another season
// they are those of now: how far the season's growth is from true is not in them, and
// no odds are given.
func (s *State) weigh(all []judge.Finding) {
	s.sure.Weigh(all)
	if s.season.when != "" {
		for i := range all {
			all[i].Odds = judge.Odds{}
		}
	}
}
