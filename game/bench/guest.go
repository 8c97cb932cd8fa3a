package bench

import "leafwright/game"

// Guest puts a job on a bench that only shows it: nothing changes the job, and the
// only tool is the hand that swings.
func Guest(job game.Job) *State {
	s := New(job)
	s.past.fixed = true
	return s
}

// IsGuest tells whether the job is only shown.
func (s *State) IsGuest() bool { return s.past.fixed }
