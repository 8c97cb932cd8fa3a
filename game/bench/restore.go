package bench

import "leafwright/game"

// Restore takes up what [State.Records] gave: the job's own record, and the chunks of
// steps by their names. The job as it stands is taken up even where steps before it
// are lost; [State.Lost] then says how many. Without a sound job nothing is.
func Restore(now []byte, chunk func(key string) ([]byte, bool), look []byte) (*State, error) {
	r, err := readJobRecord(now)
	if err != nil {
		return nil, err
	}
	return r.restore(chunk, look)
}

func (r *jobRecord) restore(chunk func(key string) ([]byte, bool), look []byte) (*State, error) {
	job, err := game.Parse([]byte(r.now))
	if err != nil {
		return nil, err
	}
	s := New(job)
	if past, ok := r.history(job, chunk); ok {
		s.past = past
	} else {
		s.past.lost = max(1, r.count()-1)
	}
	for path, d := range r.drafts {
		s.drafts[path] = d
	}
	s.setLook(readLook(string(look)))
	s.measure()
	return s, nil
}

// count gives how many steps there are, or were.
func (r *jobRecord) count() int {
	n := len(r.steps)
	for _, c := range r.chunks {
		n += c.count
	}
	return n
}

// history puts the steps together again, as far as they are there, around the job as
// it stands. False where the record does not even say where that is among them.
func (r *jobRecord) history(job game.Job, chunk func(key string) ([]byte, bool)) (h history, ok bool) {
	if r.at < 0 || r.at >= r.count() {
		return h, false
	}
	p := pile{stands: &job, at: r.at}
	for _, c := range r.chunks {
		data, _ := chunk(c.key)
		steps, sound := readChunk(data)
		p.put(steps, c.count, c.key, sound && len(steps) == c.count)
	}
	if n := len(r.steps); n > 0 {
		p.put(r.steps, n, "", r.steps[0].file != nil)
	}
	h = p.history
	if h.steps[h.at].job == nil {
		h.stand(&job)
	}
	h.rechunk()
	return h, true
}

// pile is a history put together chunk by chunk.
type pile struct {
	history
	stands *game.Job
	at     int  // where that is among all steps there were
	seen   int  // steps so far, with those lost
	hole   bool // steps are lost just before
}

// put adds a chunk's steps, or a gap for n that are not sound.
func (p *pile) put(steps []step, n int, key string, sound bool) {
	h := &p.history
	here := p.at >= p.seen && p.at < p.seen+n
	switch {
	case sound:
		if here {
			h.at = len(h.steps) + p.at - p.seen
		}
		if p.hole {
			steps[0].change, key = change{act: gap}, ""
		}
	case here:
		h.at = len(h.steps)
		steps, key = []step{whole(p.stands)}, ""
		h.lost += n - 1
	default:
		steps = nil
		h.lost += n
	}
	p.seen += n
	p.hole = !sound
	if len(steps) > 0 {
		h.chunks = append(h.chunks, chunk{len(h.steps), key})
		h.steps = append(h.steps, steps...)
	}
}

// whole gives a job as a step that stands over a gap.
func whole(job *game.Job) step {
	return step{change{act: gap}, game.Encode(*job), job}
}

// stand makes the job the one on the bench. Steps from which another one comes are
// taken out of the history.
func (h *history) stand(job *game.Job) {
	is, bad := h.replay(h.at)
	if is != nil && string(game.Encode(*is)) == string(game.Encode(*job)) {
		return
	}
	lo := bad
	if is != nil {
		for lo = h.at; h.steps[lo].file == nil; lo-- {
		}
		lo = min(lo+1, h.at)
	}
	hi := h.at + 1
	for hi < len(h.steps) && h.steps[hi].file == nil {
		hi++
	}
	h.at = lo
	h.lost++
	h.steps[lo] = whole(job)
	for i := range h.chunks {
		if c := &h.chunks[i]; c.from <= lo && (i+1 == len(h.chunks) || h.chunks[i+1].from > lo) {
			c.key = ""
		}
	}
	if lo+1 < hi {
		h.drop(lo+1, hi)
	}
	for i := range h.steps {
		if i != h.at {
			h.steps[i].job = nil
		}
	}
}

// rechunk parts a chunk that is longer than they are now.
func (h *history) rechunk() {
	for {
		next := h.chunks[len(h.chunks)-1].from + chunkSteps
		if next >= len(h.steps) {
			break
		}
		job, _ := h.replay(next)
		if job == nil {
			break
		}
		h.steps[next].file = game.Encode(*job)
		h.chunks = append(h.chunks, chunk{from: next})
	}
	for i := range h.steps {
		if i != h.at {
			h.steps[i].job = nil
		}
	}
}

// salvage takes up what chunks of steps alone still hold of a job, in the order they
// were kept: the job after the last of them. False where no step of them is sound.
func salvage(chunks [][]byte, look []byte) (*State, bool) {
	p := pile{at: -1}
	for _, data := range chunks {
		if steps, sound := readChunk(data); sound {
			p.put(steps, len(steps), "", true)
		} else {
			p.hole = true
		}
	}
	h := p.history
	for n := len(h.steps); n > 0; n-- {
		job, bad := h.replay(n - 1)
		if job != nil {
			h.truncate(n)
			h.at = n - 1
			h.lost++ // at least: those in the job's own record
			s := New(*job)
			s.past = h
			s.past.steps[h.at].job = job
			s.setLook(readLook(string(look)))
			s.measure()
			return s, true
		}
		n = bad + 1
	}
	return nil, false
}

// Lost tells how many steps of the job could not be read back, so that they cannot be
// undone.
func (s *State) Lost() int { return s.past.lost }
