package bench

import (
	"math"
	"strings"
	"testing"

	"leafwright/game"
	"leafwright/game/internal/demos"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
)

// written gives everything written on the drawing.
func written(s *State) string {
	var all []string
	for _, m := range s.Drawing(800, 600).Marks {
		all = append(all, m.Text)
	}
	return strings.Join(all, "\n")
}

// A leaf seen in another month has another closing gap and no other, says so, and is
// as it was when that is over; the job never changes.
func TestSeason(t *testing.T) {
	s := New(game.Blank(762, 1981, 35))
	job, was, said := string(game.Encode(*s.Job())), s.fit, s.Headline()
	jobs, _ := s.Changes()
	closing := latchGap(s)
	s.SetSeason(0.9, "July")
	if got := latchGap(s); math.Abs(got-(closing-0.9)) > 1e-9 {
		t.Errorf("the closing gap is %v, want %v", got, closing-0.9)
	}
	for _, e := range []fit.Edge{fit.HingeSide, fit.HeadSide, fit.FloorSide} {
		if s.fit.Gaps[e].Least != was.Gaps[e].Least {
			t.Errorf("edge %v: %v, want %v", e, s.fit.Gaps[e].Least, was.Gaps[e].Least)
		}
	}
	if h := s.Headline(); !strings.HasPrefix(h, "In July: ") {
		t.Errorf("headline %q", h)
	}
	if !strings.Contains(written(s), "The leaf as in July") {
		t.Error("the drawing does not say which month it is")
	}
	if now, _ := s.Changes(); now != jobs || string(game.Encode(*s.Job())) != job || s.CanUndo() {
		t.Error("it counts as a change of the job")
	}
	s.SetSeason(closing+1, "August")
	if !strings.HasPrefix(s.Headline(), "In August: binds") || s.Findings()[0].Verdict != judge.Binds {
		t.Errorf("grown by more than its gap: %q", s.Headline())
	}
	s.SetSeason(0, "")
	if s.fit.Gaps[fit.LatchSide].Least != was.Gaps[fit.LatchSide].Least || s.Headline() != said || s.Season() != "" {
		t.Errorf("as it is now it says %q, closing gap %v", s.Headline(), latchGap(s))
	}
	if strings.Contains(written(s), "as in") {
		t.Error("the drawing still says a month")
	}
}

// A move is made on the leaf as it is now and seen in the month shown.
func TestSeasonAndMoves(t *testing.T) {
	s := New(game.Blank(762, 1981, 35))
	closing := latchGap(s)
	s.SetSeason(2, "July")
	m := stroke(1.5)
	if step := s.Preview(&m); step.Why != nil {
		t.Fatal(step.Why)
	}
	if got := latchGap(s); math.Abs(got-(closing-2+1.5)) > 1e-6 {
		t.Errorf("with the move tried the closing gap is %v, want %v", got, closing-0.5)
	}
	s.Preview(nil)
	if got := latchGap(s); math.Abs(got-(closing-2)) > 1e-9 {
		t.Errorf("with it taken away %v, want %v", got, closing-2)
	}
	if err := s.PutMove(m); err != nil {
		t.Fatal(err)
	}
	s.SetSeason(0, "")
	if got := latchGap(s); math.Abs(got-(closing+1.5)) > 1e-6 {
		t.Errorf("as it is now with the move made %v, want %v", got, closing+1.5)
	}
}

// Another job is shown as it is now, and no number does harm.
func TestSeasonGoesWithTheJob(t *testing.T) {
	s := New(game.Blank(762, 1981, 35))
	was := latchGap(s)
	for _, bad := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), -1e9} {
		s.SetSeason(bad, "May")
		s.Drawing(800, 600)
	}
	s.SetSeason(1, "May")
	s.Open(game.Blank(762, 1981, 35))
	if s.Season() != "" || latchGap(s) != was {
		t.Errorf("the job opened is shown as in %q, closing gap %v", s.Season(), latchGap(s))
	}
	s.SetSeason(1, "May")
	s.Undo()
	if s.Season() != "" || latchGap(s) != was {
		t.Errorf("the job before is shown as in %q, closing gap %v", s.Season(), latchGap(s))
	}
	own := New(game.Measure(game.Blank(762, 1981, 35)))
	own.SetSeason(1, "May") // there is no door yet
	if own.Headline() == "" {
		t.Error("nothing is said of a door that is not measured")
	}
}

// In another month the margins of the readings stand, and no odds.
func TestSeasonOfReadings(t *testing.T) {
	s := New(demos.Job(t, read))
	s.Weigh()
	now := s.Headline()
	found := append([]judge.Finding{}, s.findings()...)
	s.SetSeason(0.5, "July")
	margins := 0
	for _, f := range s.findings() {
		if f.Odds.Told() {
			t.Errorf("odds of %+v", f)
		}
		if f.Margin > 0 {
			margins++
		}
	}
	if margins == 0 {
		t.Error("no margins")
	}
	s.SetSeason(0, "")
	if s.Headline() != now || len(s.findings()) != len(found) || s.findings()[0].Odds != found[0].Odds {
		t.Errorf("as it is now again: %q, was %q", s.Headline(), now)
	}
}
