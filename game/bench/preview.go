package bench

import (
	"slices"

	"leafwright/game"
	"leafwright/geom/judge"
	"leafwright/geom/trim"
)

// preview is a move that is seen and measured but not made.
type preview struct {
	on    bool
	step  trim.Step
	found []judge.Finding // of the door without it
}

// base is the door some of a list's moves make, kept while a hand tries what comes
// next on it.
type base struct {
	jobs   int
	list   int // the option; −1 what was made
	moves  int // how many of the list are done
	usable bool
	piece  trim.Piece
}

// Target tells where [State.PutMove] puts a move: made for keeps, or in an option,
// −1 for one that is not there yet.
func (s *State) Target() (option int, made bool) {
	if s.look.Keeps {
		return -1, true
	}
	return max(-1, int(s.look.Option)), false
}

// targeted gives the moves of the target.
func (s *State) targeted() (option int, moves []trim.Move) {
	option, made := s.Target()
	job := s.Job()
	switch {
	case made:
		return -1, job.Made
	case option < 0:
		return len(job.Options), nil
	}
	return option, job.Options[option].Moves
}

// merged gives the move as it would be in the list, and how many of the list's moves
// it comes after: a stroke like the last one is one with it.
func (s *State) merged(m trim.Move) (is trim.Move, after int) {
	_, moves := s.targeted()
	n := len(moves)
	if n == 0 || !joins(&moves[n-1], &m) || s.look.Keeps && readAfter(s.Job(), n) {
		return m, n
	}
	if sum, ok := joined(moves[n-1], m); ok {
		return sum, n - 1
	}
	return m, n
}

// pieceAfter gives the door after so many of the target's moves.
func (s *State) pieceAfter(n int) trim.Piece {
	list, moves := s.targeted()
	if b := &s.base; b.usable && b.jobs == s.jobs && b.list == list && b.moves == n {
		return b.piece
	}
	t := s.Job().Found()
	if list >= 0 {
		t = s.Job().Stands()
	}
	p, _ := trim.All(trim.Piece{Door: t.Door, Anatomy: t.Anatomy, Offcuts: t.Offcuts}, moves[:n])
	p.Anatomy.Rated = game.Rated(s.Job())
	s.base = base{s.jobs, list, n, true, p}
	return p
}

// Preview shows and measures the door with one move more, where [State.PutMove] would
// put it, and tells what it would do; nil takes it away. The job is not changed. It
// costs one move and one fit, so that it can follow the pointer.
func (s *State) Preview(m *trim.Move) trim.Step {
	if m == nil {
		s.dropPreview()
		return trim.Step{}
	}
	is, after := s.merged(*m)
	return s.PreviewAt(after, is)
}

// PreviewAt does so with a move in the place of the target's k-th; those after it are
// done again.
func (s *State) PreviewAt(k int, m trim.Move) trim.Step {
	_, moves := s.targeted()
	if k < 0 || k > len(moves) {
		return trim.Step{Move: m, Why: &trim.Care{About: trim.NotThere}}
	}
	if !s.preview.on {
		s.preview.found = s.found
	}
	p, step := s.pieceAfter(k), trim.Step{Move: m}
	if !m.Off {
		p, step.Done, step.Why = trim.Do(p, m)
	}
	if step.Why != nil {
		s.hang(s.stood)
	} else {
		var more []trim.Step
		if k+1 < len(moves) {
			p, more = trim.All(p, moves[k+1:])
		}
		s.hang(game.Tried{Door: p.Door, Anatomy: p.Anatomy, Offcuts: p.Offcuts, Steps: more})
	}
	s.preview.on, s.preview.step = true, step
	s.found = nil
	s.looks++
	return step
}

// Previewed gives what the previewed move does, and whether there is one.
func (s *State) Previewed() (trim.Step, bool) { return s.preview.step, s.preview.on }

func (s *State) dropPreview() {
	if !s.preview.on {
		return
	}
	s.found = s.preview.found
	s.preview = preview{}
	s.hang(s.stood)
	s.looks++
}

// findings gives the door's findings; a previewed door's are without their causes.
func (s *State) findings() []judge.Finding {
	if s.preview.on && s.found == nil && s.lacks == nil {
		s.found = judge.Verdicts(&s.fit, &s.tried.Door, &s.wanted)
	}
	return s.found
}

// PutMove makes a move: at the end of the option shown, in a new one where none is,
// or for keeps on the door as it stands. A stroke of the plane like the last one adds
// to it. It is one step to undo. What cannot be done for keeps changes nothing and
// is told.
func (s *State) PutMove(m trim.Move) error {
	s.dropPreview()
	option, made := s.Target()
	switch {
	case made:
		if err := s.rearrange(change{act: cut, path: "made", text: game.MoveText(m)}); err != nil {
			return s.said(err)
		}
		s.ShowOption(AsStands)
		return nil
	case option < 0:
		return s.said(s.rearrange(change{act: try, path: optionList, text: game.MoveText(m)}))
	}
	is, at := s.merged(m)
	return s.AlterMove(at, is)
}

// AlterMove puts a move in the place of the k-th of the option shown, or behind its
// last. It is one step to undo.
func (s *State) AlterMove(k int, m trim.Move) error {
	s.dropPreview()
	if s.look.Option < 0 {
		return errNoOption
	}
	return s.said(s.rearrange(change{act: set, path: game.MovePath(int(s.look.Option), k), text: game.MoveText(m)}))
}

// MovesPut gives a copy of the moves a hand works on: the option's, or those made.
func (s *State) MovesPut() []trim.Move {
	_, moves := s.targeted()
	return slices.Clone(moves)
}
