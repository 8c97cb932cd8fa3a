package bench

import (
	"strconv"
	"strings"

	"leafwright/game/words"
	"leafwright/geom/fit"
)

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
	lookFlag("keeps", func(l *Look) *bool { return &l.Keeps }),
	{"option", func(l *Look) string { return strconv.Itoa(int(l.Option)) }, func(l *Look, t string) {
		if i, err := strconv.Atoi(t); err == nil {
			l.Option = Shown(i)
		}
	}},
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
