package bench

import (
	"errors"
	"strconv"
	"strings"

	"leafwright/game"
	"leafwright/game/measure"
	"leafwright/geom"
)

// A record is text: a heading, then a line for each thing kept, of a word and
// quoted texts. It is read and written by hand because encoding/json would add a
// thirtieth to the page's download.
//
// A job is kept in several. One, the job's own, holds the job as it stands, the latest
// steps and the names of the others; each of those holds a chunk of earlier steps and
// is never written again under the same name. So a change rewrites the job's own only,
// and that alone decides which state is kept: whatever is cut short leaves a whole one.

// The headings name the form of the records written here; the first form was one
// record with all steps, the first of them a whole job.
const (
	firstHeading  = "leafwright bench 1"
	recordHeading = "leafwright bench 2"
	chunkHeading  = "leafwright steps 1"
)

// errDamaged says that a record is none; errForm that it is of another form.
var (
	errDamaged = errors.New("the kept job is damaged")
	errForm    = errors.New("the kept job is of a form that this page does not read")
)

// Record is something to keep under a name.
type Record struct {
	Key  string
	Data []byte
}

// jobRecord is a job's own record. Now is the job as it stands, so that it is safe
// even should an older step no longer be understood.
type jobRecord struct {
	now    string // the job file
	at     int
	chunks []chunkRef
	steps  []step // after those of the chunks
	drafts map[string]Draft
	kept   keeping
}

// chunkRef names a chunk's record, and how many steps it holds.
type chunkRef struct {
	key   string
	count int
}

// keeping is what a shelf notes in a job's own record.
type keeping struct {
	name     string // the job's
	revision int    // counts how often it was kept
	by       string // the window that did so
	order    int    // the greater, the later it was worked on
}

func (k *keeping) write(b *strings.Builder) {
	line(b, "kept", k.name, strconv.Itoa(k.revision), k.by, strconv.Itoa(k.order))
}

// line writes one thing kept.
func line(b *strings.Builder, word string, texts ...string) {
	b.WriteString(word)
	for _, t := range texts {
		b.WriteByte(' ')
		b.WriteString(strconv.Quote(t))
	}
	b.WriteByte('\n')
}

// unline reads one thing kept.
func unline(l string) (word string, texts []string, ok bool) {
	word, rest, _ := strings.Cut(l, " ")
	for rest != "" {
		quoted, err := strconv.QuotedPrefix(rest)
		if err != nil {
			return "", nil, false
		}
		text, err := strconv.Unquote(quoted)
		if err != nil {
			return "", nil, false
		}
		texts = append(texts, text)
		rest = strings.TrimPrefix(rest[len(quoted):], " ")
	}
	return word, texts, true
}

func (st *step) write(b *strings.Builder) {
	line(b, "step", string(st.act), st.path, st.text, st.unit.String(), string(st.file))
}

// readStep reads a step's texts.
func readStep(t []string) step {
	c := change{act: act(t[0]), path: t[1], text: t[2]}
	if t[3] == measure.Inch.String() {
		c.unit = measure.Inch
	}
	st := step{change: c}
	if t[4] != "" {
		st.file = []byte(t[4])
	}
	return st
}

// Records gives what is to be kept, in the order to keep it: chunks of steps that are
// not yet, as has tells by their names, and last the job's own record under the name
// [NowKey]. Names of new chunks begin with the tag, so that two windows never give the
// same one.
func (s *State) Records(tag string, has func(key string) bool) []Record {
	return s.records(tag, has, keeping{})
}

// NowKey is the name of a job's own record.
const NowKey = "now"

func (s *State) records(tag string, has func(key string) bool, k keeping) (out []Record) {
	h := &s.past
	last := len(h.chunks) - 1
	for i := range last {
		c := &h.chunks[i]
		if c.key == "" {
			h.serial++
			c.key = "steps." + tag + "." + strconv.Itoa(h.serial)
		}
		if has(c.key) {
			continue
		}
		var b strings.Builder
		b.WriteString(chunkHeading + "\n")
		for m := c.from; m < h.chunks[i+1].from; m++ {
			h.steps[m].write(&b)
		}
		out = append(out, Record{c.key, []byte(b.String())})
	}
	var b strings.Builder
	b.WriteString(recordHeading + "\n")
	k.write(&b)
	line(&b, "now", string(game.Encode(*s.Job())))
	line(&b, "at", strconv.Itoa(h.at))
	for i := range last {
		line(&b, "chunk", h.chunks[i].key, strconv.Itoa(h.chunks[i+1].from-h.chunks[i].from))
	}
	for m := h.chunks[last].from; m < len(h.steps); m++ {
		h.steps[m].write(&b)
	}
	paths := make([]string, 0, len(s.drafts))
	for path := range s.drafts {
		paths = append(paths, path)
	}
	geom.Ascending(paths)
	for _, path := range paths {
		line(&b, "draft", path, s.drafts[path].Text, s.drafts[path].Why)
	}
	return append(out, Record{NowKey, []byte(b.String())})
}

// chunkKeys gives the names of the chunks of steps that are kept.
func (s *State) chunkKeys() (keys []string) {
	for _, c := range s.past.chunks {
		if c.key != "" {
			keys = append(keys, c.key)
		}
	}
	return keys
}

// readJobRecord takes a job's own record apart. Lines of a word it does not know are
// left out; one that is no line makes the whole record unsound.
func readJobRecord(data []byte) (r jobRecord, err error) {
	heading, rest, _ := strings.Cut(string(data), "\n")
	if heading != recordHeading && heading != firstHeading {
		return r, errForm
	}
	r.at, r.drafts = -1, map[string]Draft{}
	for l := range strings.SplitSeq(rest, "\n") {
		word, t, ok := unline(l)
		switch {
		case !ok:
			return r, errDamaged
		case word == "now" && len(t) == 1:
			r.now = t[0]
		case word == "kept" && len(t) == 4:
			var why [2]error
			r.kept.name, r.kept.by = t[0], t[2]
			r.kept.revision, why[0] = strconv.Atoi(t[1])
			r.kept.order, why[1] = strconv.Atoi(t[3])
			if why != [2]error{} {
				return r, errDamaged
			}
		case word == "at" && len(t) == 1:
			if r.at, err = strconv.Atoi(t[0]); err != nil {
				return r, errDamaged
			}
		case word == "chunk" && len(t) == 2:
			n, err := strconv.Atoi(t[1])
			if err != nil || n < 1 || n > mostInChunk {
				return r, errDamaged
			}
			r.chunks = append(r.chunks, chunkRef{t[0], n})
		case word == "step" && len(t) == 5:
			r.steps = append(r.steps, readStep(t))
		case word == "draft" && len(t) == 3:
			r.drafts[t[0]] = Draft{t[1], t[2]}
		}
	}
	return r, nil
}

// mostInChunk is more steps than any chunk holds.
const mostInChunk = 1 << 20

// readChunk reads a chunk of steps, which begins with a whole job.
func readChunk(data []byte) (steps []step, ok bool) {
	heading, rest, _ := strings.Cut(string(data), "\n")
	if heading != chunkHeading {
		return nil, false
	}
	for l := range strings.SplitSeq(rest, "\n") {
		word, t, ok := unline(l)
		if !ok {
			return nil, false
		}
		if word == "step" && len(t) == 5 {
			steps = append(steps, readStep(t))
		}
	}
	return steps, len(steps) > 0 && steps[0].file != nil
}
