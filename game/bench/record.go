package bench

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"

	"leafwright/game"
	"leafwright/game/measure"
)

// recordVersion is the form of the records written here.
const recordVersion = 1

// jobRecord is the job with everything that was done to it. Now is the job as it
// stands, so that it is safe even should an older step no longer be understood.
type jobRecord struct {
	Version int              `json:"version"`
	Now     json.RawMessage  `json:"now"`
	Steps   []stepRecord     `json:"steps"`
	At      int              `json:"at"`
	Drafts  map[string]Draft `json:"drafts,omitempty"`
}

type stepRecord struct {
	Act    act             `json:"act"`
	Job    json.RawMessage `json:"job,omitempty"`
	Path   string          `json:"path,omitempty"`
	Text   string          `json:"text,omitempty"`
	Inches bool            `json:"inches,omitempty"`
}

// JobRecord writes the job, its undo and what stands typed, for keeping.
func (s *State) JobRecord() []byte {
	r := jobRecord{Version: recordVersion, Now: game.Encode(*s.Job()), At: s.past.at, Drafts: s.drafts}
	for _, st := range s.past.steps {
		r.Steps = append(r.Steps, stepRecord{st.act, st.file, st.path, st.text, st.unit == measure.Inch})
	}
	data, err := json.Marshal(r)
	if err != nil { // only if Encode gave no JSON
		return nil
	}
	return data
}

// LookRecord writes how the job is looked at, for keeping.
func (s *State) LookRecord() []byte {
	data, err := json.Marshal(s.look)
	if err != nil { // only for a number that is none, which no setter lets in
		return nil
	}
	return data
}

// Restore takes up kept records. Without a sound job record nothing is taken up.
func Restore(job, look []byte) (*State, error) {
	var r jobRecord
	if err := json.Unmarshal(job, &r); err != nil {
		return nil, err
	}
	if r.Version != recordVersion {
		return nil, fmt.Errorf("the kept job is of version %d, this page reads %d", r.Version, recordVersion)
	}
	now, err := game.Parse(r.Now)
	if err != nil {
		return nil, err
	}
	s := New(now)
	if past, ok := r.replay(r.Now); ok {
		s.past = past
		s.measure()
	}
	for path, d := range r.Drafts {
		s.drafts[path] = d
	}
	var l Look
	if json.Unmarshal(look, &l) == nil {
		s.setLook(l)
	}
	return s, nil
}

// replay does every step again and tells whether that leads to the job kept.
func (r *jobRecord) replay(now []byte) (history, bool) {
	var h history
	for _, rec := range r.Steps {
		c := change{act: rec.Act, path: rec.Path, text: rec.Text}
		if rec.Inches {
			c.unit = measure.Inch
		}
		var job game.Job
		var err error
		switch {
		case c.act == put:
			job, err = game.Parse(rec.Job)
		case len(h.steps) == 0:
			err = errors.New("the first step is no whole job")
		default:
			job, err = c.apply(&h.steps[len(h.steps)-1].job)
		}
		if err != nil {
			return h, false
		}
		h.steps = append(h.steps, step{c, job, rec.Job})
	}
	if r.At < 0 || r.At >= len(h.steps) {
		return h, false
	}
	h.at = r.At
	return h, compact(game.Encode(*h.now())) == compact(now)
}

func compact(data []byte) string {
	var b bytes.Buffer
	if json.Compact(&b, data) != nil {
		return string(data)
	}
	return b.String()
}
