package bench

import (
	"errors"
	"strings"

	"leafwright/game"
	"leafwright/game/measure"
)

// act is a kind of change.
type act string

// The acts: a whole job put on the bench, a field set as it was typed, a row or
// an item added or taken out, readings pasted, a move tried in an option of its
// own, a whole option at once, a move made for keeps. A gap stands where steps were lost: like put it is a
// whole job, though no other one.
const (
	put    act = "put"
	set    act = "set"
	add    act = "add"
	remove act = "remove"
	paste  act = "paste"
	try    act = "try"
	plan   act = "plan"
	cut    act = "cut"
	gap    act = "gap"
)

// change is one thing a person did to a job.
type change struct {
	act  act
	path string
	text string
	unit measure.Unit // that a plain number was in
}

// apply does a change that is no whole job. The job given is not changed.
func (c change) apply(job *game.Job) (game.Job, error) {
	form := game.Form{Units: c.unit}
	switch c.act {
	case set:
		return form.Set(*job, c.path, c.text)
	case add:
		return form.Add(*job, c.path)
	case remove:
		return form.Remove(*job, c.path)
	case paste:
		return pasted(job, c.text)
	case try:
		return attempted(job, c.text)
	case plan:
		return form.AddOption(*job, c.text)
	case cut:
		return cutForKeeps(job, c.text)
	}
	return *job, errors.New("a step of an unknown kind: " + string(c.act))
}

// keeps tells whether the change is one that cannot be taken back: timber is off.
func (c *change) keeps() bool {
	switch c.act {
	case add:
		return strings.HasPrefix(c.path, optionList+"[") && strings.HasSuffix(c.path, "].keep")
	case set:
		return strings.HasPrefix(c.path, "made[") && strings.HasSuffix(c.path, "]")
	}
	return c.act == cut
}

// step is a change and the job after it. Jobs in the history are never changed.
type step struct {
	change
	file []byte    // the job as written: of a whole job, and of the first step of a chunk
	job  *game.Job // nil where it is not at hand: [history.reach] does the steps again
}

// Of the jobs in the history those at hand are the ones within near steps of the one
// on the bench; every chunkSteps-th is there as written.
const (
	near       = 16
	chunkSteps = 100
)

// chunk is a stretch of steps that are kept together. All but the last are of
// chunkSteps steps, or as many as are left of them.
type chunk struct {
	from int
	key  string // what it is kept under; empty where it is not, or has changed since
}

// history is every job there has been. Undo goes back in it and redo forward,
// without a limit.
type history struct {
	steps  []step
	chunks []chunk // by rising from, the first 0
	at     int
	// typing tells that the last step's field is still being typed in, so that the
	// next keystroke takes its place.
	typing bool
	lost   int  // steps that could not be done again
	serial int  // of the chunk's key given last
	fixed  bool // there are no more steps: the job is only shown
}

// startingWith gives a history whose first step is a whole job.
func startingWith(job game.Job) history {
	var h history
	h.append(change{act: put}, job)
	return h
}

func (h *history) now() *game.Job { return h.steps[h.at].job }

// before gives the job that a change of the field starts from: while a field is
// being typed in, every keystroke starts from the job before the typing.
func (h *history) before(path string) *game.Job {
	if h.isTyping(path) {
		return h.job(h.at - 1)
	}
	return h.now()
}

// isTyping tells whether the last step is the typing in the field, still going on.
func (h *history) isTyping(path string) bool {
	return h.typing && h.at > 0 && h.steps[h.at].path == path
}

// do adds a step after the current one and forgets what was undone.
func (h *history) do(c change, job game.Job) {
	if h.fixed {
		return
	}
	if c.act == set && h.isTyping(c.path) {
		h.at--
	}
	h.truncate(h.at + 1)
	h.append(c, job)
	h.at++
	h.settle()
	h.typing = c.act == set && !c.keeps()
}

// append adds a step at the end. The chunk's first step and whole jobs are written.
func (h *history) append(c change, job game.Job) {
	st := step{change: c, job: &job}
	n := len(h.steps)
	if k := len(h.chunks); k == 0 || n-h.chunks[k-1].from >= chunkSteps {
		h.chunks = append(h.chunks, chunk{from: n})
		st.file = game.Encode(job)
	} else if c.act == put || c.act == gap {
		st.file = game.Encode(job)
	}
	h.steps = append(h.steps, st)
}

// truncate leaves the first n steps, n > 0. A chunk that it cuts is kept anew.
func (h *history) truncate(n int) {
	if n >= len(h.steps) {
		return
	}
	clear(h.steps[n:])
	end := len(h.steps)
	h.steps = h.steps[:n]
	for k := len(h.chunks) - 1; h.chunks[k].from >= n; k-- {
		end = h.chunks[k].from
		h.chunks = h.chunks[:k]
	}
	if n < end {
		h.chunks[len(h.chunks)-1].key = ""
	}
}

// untype takes back what the typing in the field has done so far.
func (h *history) untype(path string) {
	if h.isTyping(path) {
		h.at--
		h.job(h.at)
		h.truncate(h.at + 1)
		h.settle()
		h.typing = false
	}
}

// settle lets go of the jobs that are no longer near.
func (h *history) settle() {
	for i := max(0, h.at-2*near); i < min(len(h.steps), h.at+2*near); i++ {
		if i < h.at-near || i > h.at+near {
			h.steps[i].job = nil
		}
	}
}

// job gives the job after step i, doing the steps before it again where it is not
// at hand.
func (h *history) job(i int) *game.Job {
	job, _ := h.replay(i)
	return job
}

// replay does steps again up to i and gives the job after it, nil where one of them
// cannot be done: then bad is that step's number.
func (h *history) replay(i int) (job *game.Job, bad int) {
	k := i
	for h.steps[k].job == nil && h.steps[k].file == nil {
		k-- // a chunk's first step is always written
	}
	if job = h.steps[k].job; job == nil {
		read, err := game.Parse(h.steps[k].file)
		if err != nil {
			return nil, k
		}
		job = &read
		h.steps[k].job = job
	}
	for m := k + 1; m <= i; m++ {
		next, err := h.steps[m].apply(job)
		if err != nil {
			return nil, m
		}
		job = &next
		if m >= i-near {
			h.steps[m].job = job
		}
	}
	if k < i-near {
		h.steps[k].job = nil
	}
	return job, 0
}

// reach makes the job after step i, which is not the one on the bench, the one at
// hand, and gives the step's number: steps on the way that can no longer be done are
// taken out of the history, and i then moves with them.
func (h *history) reach(i int) int {
	for {
		job, bad := h.replay(i)
		if job != nil {
			return i
		}
		end := bad + 1
		for end < len(h.steps) && end != h.at && h.steps[end].file == nil {
			end++
		}
		h.drop(bad, end)
		i = max(0, bad-1)
	}
}

// drop takes the steps from lo to before hi out. The one behind, a whole job, then
// stands over a gap.
func (h *history) drop(lo, hi int) {
	n := hi - lo
	h.lost += n
	copy(h.steps[lo:], h.steps[hi:])
	clear(h.steps[len(h.steps)-n:])
	h.steps = h.steps[:len(h.steps)-n]
	if lo < len(h.steps) {
		st := &h.steps[lo]
		st.change = change{act: gap}
		if st.file == nil {
			st.file = game.Encode(*st.job)
		}
	}
	if h.at >= hi {
		h.at -= n
	}
	old := h.chunks
	h.chunks = nil
	for k, c := range old {
		end := len(h.steps) + n
		if k+1 < len(old) {
			end = old[k+1].from
		}
		switch {
		case end <= lo:
		case c.from > hi:
			c.from -= n
		case c.from == hi:
			c.from, c.key = lo, ""
		case c.from < lo:
			c.key = ""
		default: // begins among those that go
			if end <= hi {
				continue
			}
			c.from, c.key = lo, ""
		}
		if m := len(h.chunks); c.from >= len(h.steps) || m > 0 && h.chunks[m-1].from == c.from {
			continue
		}
		h.chunks = append(h.chunks, c)
	}
}

// canUndo tells whether there is a step to go back to. What was done for keeps is
// not undone, nor a gap in which something was.
func (h *history) canUndo() bool {
	if h.at == 0 || h.steps[h.at].keeps() {
		return false
	}
	if h.steps[h.at].act == gap {
		if i := h.reach(h.at - 1); i == h.at || len(h.steps[i].job.Made) != len(h.now().Made) {
			return false
		}
	}
	return true
}

func (h *history) canRedo() bool { return h.at < len(h.steps)-1 }

// undo and redo give the change that was taken back or done again.
func (h *history) undo() change {
	c := h.steps[h.at].change
	h.at = h.reach(h.at - 1)
	h.settle()
	h.typing = false
	return c
}

func (h *history) redo() change {
	h.at = h.reach(h.at + 1)
	h.settle()
	h.typing = false
	return h.steps[h.at].change
}
