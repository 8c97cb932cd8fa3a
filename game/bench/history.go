package bench

import (
	"leafwright/game"
	"leafwright/game/measure"
)

// act is a kind of change.
type act string

// The acts: a whole job put on the bench, a field set as it was typed, a row or
// an item added or taken out, readings pasted.
const (
	put    act = "put"
	set    act = "set"
	add    act = "add"
	remove act = "remove"
	paste  act = "paste"
)

// change is one thing a person did to a job.
type change struct {
	act  act
	path string
	text string
	unit measure.Unit // that a plain number was in
}

// apply does a change that is no put. The job given is not changed.
func (c change) apply(job *game.Job) (game.Job, error) {
	form := game.Form{Units: c.unit}
	switch c.act {
	case add:
		return form.Add(*job, c.path)
	case remove:
		return form.Remove(*job, c.path)
	case paste:
		return pasted(job, c.text)
	}
	return form.Set(*job, c.path, c.text)
}

// step is a change and the job after it. Jobs in the history are never changed.
type step struct {
	change
	job  game.Job
	file []byte // the job as written, of a put
}

// putting gives the step that puts a job on the bench.
func putting(job game.Job) step { return step{change{act: put}, job, game.Encode(job)} }

// history is every job there has been. Undo goes back in it and redo forward,
// without a limit; the first step is always a whole job.
type history struct {
	steps []step
	at    int
	// typing tells that the last step's field is still being typed in, so that the
	// next keystroke takes its place.
	typing bool
}

func (h *history) now() *game.Job { return &h.steps[h.at].job }

// before gives the job that a change of the field starts from: while a field is
// being typed in, every keystroke starts from the job before the typing.
func (h *history) before(path string) *game.Job {
	if h.typing && h.at > 0 && h.steps[h.at].path == path {
		return &h.steps[h.at-1].job
	}
	return h.now()
}

// do adds a step after the current one and forgets what was undone.
func (h *history) do(s step) {
	if s.act == set && h.typing && h.at > 0 && h.steps[h.at].path == s.path {
		h.at--
	}
	h.steps = append(h.steps[:h.at+1:h.at+1], s)
	h.at++
	h.typing = s.act == set
}

// untype takes back what the typing in the field has done so far.
func (h *history) untype(path string) {
	if h.typing && h.at > 0 && h.steps[h.at].path == path {
		h.at--
		h.steps = h.steps[:h.at+1]
		h.typing = false
	}
}

func (h *history) canUndo() bool { return h.at > 0 }
func (h *history) canRedo() bool { return h.at < len(h.steps)-1 }

// undo and redo give the field that changes by it, "" where a whole job does.
func (h *history) undo() (path string) {
	path = h.steps[h.at].path
	h.at--
	h.typing = false
	return path
}

func (h *history) redo() (path string) {
	h.at++
	h.typing = false
	return h.steps[h.at].path
}
