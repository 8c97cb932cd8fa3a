package bench

import (
	"errors"
	"strconv"
	"strings"

	"leafwright/game"
	"leafwright/game/measure"
	"leafwright/game/words"
	"leafwright/geom"
	"leafwright/geom/fit"
)

// A record is text: a heading, then a line for each thing kept, of a word and
// quoted texts. It is read and written by hand because encoding/json would add a
// thirtieth to the page's download.

// recordHeading names the form of the records written here.
const recordHeading = "leafwright bench 1"

// jobRecord is the job with everything that was done to it. Now is the job as it
// stands, so that it is safe even should an older step no longer be understood.
type jobRecord struct {
	now    string // the job file
	at     int
	steps  []stepRecord
	drafts map[string]Draft
}

type stepRecord struct {
	change change
	file   string // of a put
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

// JobRecord writes the job, its undo and what stands typed, for keeping.
func (s *State) JobRecord() []byte {
	var b strings.Builder
	b.WriteString(recordHeading + "\n")
	line(&b, "now", string(game.Encode(*s.Job())))
	line(&b, "at", strconv.Itoa(s.past.at))
	for _, st := range s.past.steps {
		line(&b, "step", string(st.act), st.path, st.text, st.unit.String(), string(st.file))
	}
	paths := make([]string, 0, len(s.drafts))
	for path := range s.drafts {
		paths = append(paths, path)
	}
	geom.Ascending(paths)
	for _, path := range paths {
		line(&b, "draft", path, s.drafts[path].Text, s.drafts[path].Why)
	}
	return []byte(b.String())
}

// readJobRecord takes a record apart. Lines of a word it does not know are left
// out; one that is no line makes the whole record unsound.
func readJobRecord(data []byte) (r jobRecord, err error) {
	heading, rest, _ := strings.Cut(string(data), "\n")
	if heading != recordHeading {
		return r, errors.New("the kept job is of a form that this page does not read")
	}
	r.at, r.drafts = -1, map[string]Draft{}
	for l := range strings.SplitSeq(rest, "\n") {
		word, t, ok := unline(l)
		switch {
		case !ok:
			return r, errors.New("the kept job is damaged")
		case word == "now" && len(t) == 1:
			r.now = t[0]
		case word == "at" && len(t) == 1:
			if r.at, err = strconv.Atoi(t[0]); err != nil {
				return r, errors.New("the kept job is damaged")
			}
		case word == "step" && len(t) == 5:
			c := change{act: act(t[0]), path: t[1], text: t[2]}
			if t[3] == measure.Inch.String() {
				c.unit = measure.Inch
			}
			r.steps = append(r.steps, stepRecord{c, t[4]})
		case word == "draft" && len(t) == 3:
			r.drafts[t[0]] = Draft{t[1], t[2]}
		}
	}
	return r, nil
}

// Restore takes up kept records. Without a sound job record nothing is taken up.
func Restore(job, look []byte) (*State, error) {
	r, err := readJobRecord(job)
	if err != nil {
		return nil, err
	}
	now, err := game.Parse([]byte(r.now))
	if err != nil {
		return nil, err
	}
	s := New(now)
	if past, ok := r.replay(); ok {
		s.past = past
		s.measure()
	}
	for path, d := range r.drafts {
		s.drafts[path] = d
	}
	s.setLook(readLook(string(look)))
	return s, nil
}

// replay does every step again and tells whether that leads to the job kept.
func (r *jobRecord) replay() (history, bool) {
	var h history
	for _, rec := range r.steps {
		var job game.Job
		var err error
		switch {
		case rec.change.act == put:
			job, err = game.Parse([]byte(rec.file))
		case len(h.steps) == 0:
			err = errors.New("the first step is no whole job")
		default:
			job, err = rec.change.apply(&h.steps[len(h.steps)-1].job)
		}
		if err != nil {
			return h, false
		}
		h.steps = append(h.steps, step{rec.change, job, []byte(rec.file)})
	}
	if r.at < 0 || r.at >= len(h.steps) {
		return h, false
	}
	h.at = r.at
	return h, string(game.Encode(*h.now())) == r.now
}

// lookField is one thing of a look that is kept: its word, how it is written and
// how it is read.
type lookField struct {
	word  string
	write func(*Look) string
	read  func(*Look, string)
}

func lookNumber(word string, of func(*Look) *float64) lookField {
	return lookField{word,
		func(l *Look) string { return strconv.FormatFloat(*of(l), 'g', -1, 64) },
		func(l *Look, t string) {
			if v, err := strconv.ParseFloat(t, 64); err == nil {
				*of(l) = v
			}
		}}
}

func lookFlag(word string, of func(*Look) *bool) lookField {
	return lookField{word,
		func(l *Look) string { return strconv.FormatBool(*of(l)) },
		func(l *Look, t string) { *of(l) = t == "true" }}
}

var lookFields = []lookField{
	{"show", func(l *Look) string { return string(l.Show) }, func(l *Look, t string) { l.Show = Show(t) }},
	{"words", func(l *Look) string { return string(l.Words) }, func(l *Look, t string) { l.Words = words.Region(t) }},
	{"asked", func(l *Look) string { return l.Asked }, func(l *Look, t string) { l.Asked = t }},
	lookNumber("factor", func(l *Look) *float64 { return &l.Factor }),
	lookNumber("section", func(l *Look) *float64 { return &l.Section }),
	lookNumber("swing", func(l *Look) *float64 { return &l.Swing }),
	lookNumber("place", func(l *Look) *float64 { return &l.Reading.Place }),
	lookFlag("loupe", func(l *Look) *bool { return &l.Reading.On }),
	lookFlag("inches", func(l *Look) *bool { return &l.Inches }),
	lookFlag("all_at_once", func(l *Look) *bool { return &l.AllAtOnce }),
	lookFlag("card_shut", func(l *Look) *bool { return &l.CardShut }),
	{"edge", func(l *Look) string { return strconv.Itoa(int(l.Reading.Edge)) }, func(l *Look, t string) {
		if e, err := strconv.Atoi(t); err == nil {
			l.Reading.Edge = fit.Edge(e)
		}
	}},
}

// LookRecord writes how the job is looked at, for keeping.
func (s *State) LookRecord() []byte {
	var b strings.Builder
	for _, f := range lookFields {
		line(&b, f.word, f.write(&s.look))
	}
	return []byte(b.String())
}

// readLook reads a look as far as it is one; what it does not find is as at first.
func readLook(text string) Look {
	look := firstLook
	for l := range strings.SplitSeq(text, "\n") {
		word, t, ok := unline(l)
		if !ok || len(t) != 1 {
			continue
		}
		for _, f := range lookFields {
			if f.word == word {
				f.read(&look, t[0])
			}
		}
	}
	return look
}
