package main

import (
	"context"
	"flag"
	"fmt"
	"path/filepath"
	"strconv"
	"strings"

	"leafwright/game/lesson"
	"leafwright/game/words"
)

var lessonCommand = command{
	name:  "lesson",
	usage: "lesson [FILE] [-tell] [-play SESSION] [-draw LEVEL,SEED] [-units mm|in] [-words UK|AU|US]",
	about: "checks a lesson that a teacher wrote and proves that it can be solved, shows its answer, or judges a learner's session; leaves with 1 when that did not put the door right within the limits, 2 on bad input",
	run:   lessonRun,
}

// lessonRun leaves with 0 when the lesson is sound or the session ended well, 1 when it
// did not, 2 on bad input.
func lessonRun(_ context.Context, c command, args []string, std std) int {
	flags := flag.NewFlagSet(c.name, flag.ContinueOnError)
	tell := flags.Bool("tell", false, "show the answer: the faults, what they show, the least that puts them right")
	session := flags.String("play", "", "replay the learner's session in `FILE` act by act, and judge it")
	draw := flags.String("draw", "", "draw an attempt of a level by a seed, as `LEVEL,SEED`, instead of reading a file")
	units := flags.String("units", "mm", "units to speak in: `mm or in`")
	region := flags.String("words", string(words.UK), "whose trade words to use: `UK, AU or US`")
	path, args := fileFirst(flags, args)
	if status, good := c.parseJob(flags, path, args, std, false); !good {
		return status
	}
	switch {
	case !known(*region):
		return c.misuse(std, "-words %q is not one of UK, AU and US", *region)
	case *units != "mm" && *units != "in":
		return c.misuse(std, "-units %q is not one of mm and in", *units)
	case (path == "") == (*draw == ""):
		return c.misuse(std, "a FILE or -draw LEVEL,SEED is wanted, and not both")
	}
	speaker := words.Speaker{Lexicon: words.For(words.Region(*region))}
	if *units == "in" {
		speaker.Length, speaker.Place = words.Inches, words.InchPlace
	}
	var l *lesson.Lesson
	if *draw != "" {
		level, seed, ok := levelSeed(*draw)
		if !ok {
			return c.misuse(std, "-draw %q is not a level from 1 to %d and a seed, like 2,17", *draw, len(lesson.Levels))
		}
		if l, ok = lesson.Attempt(level, seed); !ok {
			fmt.Fprintf(std.err, "leafwright lesson: no door was found for level %d by seed %d; try another\n", level, seed)
			return misused
		}
	} else {
		data, err := readFile(path, std.in)
		name := strings.TrimSuffix(filepath.Base(path), filepath.Ext(path))
		if err == nil && lesson.IsExplanation(data) {
			return c.explanation(std, path, name, data, &speaker)
		}
		if err == nil {
			l, err = lesson.Parse(name, data)
		}
		if err != nil {
			return c.refuse(std, path, err)
		}
	}
	if *session != "" {
		return c.judgeSession(std, l, *session, &speaker)
	}
	return c.tellLesson(std, l, &speaker, *tell)
}

func levelSeed(text string) (level int, seed uint64, ok bool) {
	a, b, two := strings.Cut(text, ",")
	level, err := strconv.Atoi(strings.TrimSpace(a))
	seed, err2 := strconv.ParseUint(strings.TrimSpace(b), 10, 64)
	return level, seed, two && err == nil && err2 == nil && level >= 1 && level <= len(lesson.Levels)
}

func (c command) refuse(std std, path string, err error) int {
	fmt.Fprintf(std.err, "leafwright %s: %s cannot be used as it is:\n%v\n", c.name, path, err)
	return misused
}

// explanation checks a short explanation.
func (c command) explanation(std std, path, name string, data []byte, speaker *words.Speaker) int {
	e, err := lesson.ParseExplanation(name, data)
	if err != nil {
		return c.refuse(std, path, err)
	}
	var b strings.Builder
	t := lesson.Explains(speaker)
	fmt.Fprintf(&b, "%s\n\n%s\n", e.Title, wrapped(t.Text(e.Text)))
	for i := range e.Sliders {
		s := &e.Sliders[i]
		fmt.Fprintf(&b, "\nTo play with: %s, from %s to %s.\n", s.Label, t.Slid(e, s, s.From), t.Slid(e, s, s.To))
	}
	return c.write(std, b.String(), ok)
}

// tellLesson says what a lesson is, and its answer where that is asked for.
func (c command) tellLesson(std std, l *lesson.Lesson, speaker *words.Speaker, tell bool) int {
	t := lesson.TellerOf(l, speaker)
	var b strings.Builder
	fmt.Fprintf(&b, "%s\n", l.Title)
	if l.Before != "" {
		fmt.Fprintf(&b, "\n%s\n", wrapped(t.Text(l.Before)))
	}
	var limits []string
	if x := l.Limits.Timber; x > 0 {
		limits = append(limits, words.CubicCentimetres(x*1000)+" of timber")
	}
	if x := l.Limits.Minutes; x > 0 {
		limits = append(limits, words.Minutes(x))
	}
	if x := l.Limits.Readings; x > 0 {
		limits = append(limits, strconv.Itoa(x)+" readings")
	}
	if limits != nil {
		fmt.Fprintf(&b, "\nAllowed: %s.\n", strings.Join(limits, ", "))
	}
	if !tell {
		faults := "one hidden fault"
		if n := len(l.Kinds()); n > 1 {
			faults = strconv.Itoa(n) + " hidden faults"
		}
		fmt.Fprintf(&b, "\nThe lesson is sound: %s, and a way to put the door right is proven. -tell shows them.\n", faults)
		return c.write(std, b.String(), ok)
	}
	passages(&b, t.Answer(l))
	if l.After != "" {
		fmt.Fprintf(&b, "\n%s\n", wrapped(t.Text(l.After)))
	}
	return c.write(std, b.String(), ok)
}

// judgeSession replays a learner's session and says what is to be said of it.
func (c command) judgeSession(std std, l *lesson.Lesson, path string, speaker *words.Speaker) int {
	data, err := readFile(path, std.in)
	if err != nil {
		return c.refuse(std, path, err)
	}
	s, err := lesson.ParseSession(data)
	if err != nil {
		return c.refuse(std, path, err)
	}
	if s.Lesson != l.Name {
		fmt.Fprintf(std.err, "leafwright %s: %s is a session of another lesson, %q; this one is %q\n", c.name, path, s.Lesson, l.Name)
		return misused
	}
	p, err := lesson.Replay(l, s.Acts)
	if err != nil {
		return c.refuse(std, path, err)
	}
	t := lesson.TellerOf(l, speaker)
	var b strings.Builder
	fmt.Fprintf(&b, "%s\n", l.Title)
	if s.Learner != "" {
		fmt.Fprintf(&b, "%s\n", s.Learner)
	}
	b.WriteString("\nAct by act\n")
	for i := range p.Acts {
		for k, line := range t.Seen(&p.Acts[i], &p.Seen[i]) {
			mark := fmt.Sprintf("%3d. ", i+1)
			if k > 0 {
				mark = "     "
			}
			b.WriteString(mark + indented(line, "     ") + "\n")
		}
	}
	j := p.Judge()
	passages(&b, t.Judged(j))
	status := ok
	if !j.Good {
		status = failed
	}
	for _, limit := range j.Limits {
		if !limit.Kept() {
			status = failed
		}
	}
	return c.write(std, b.String(), status)
}

func passages(b *strings.Builder, all []lesson.Passage) {
	for _, p := range all {
		fmt.Fprintf(b, "\n%s\n", p.Title)
		for _, line := range p.Lines {
			fmt.Fprintf(b, "  %s\n", indented(line, "  "))
		}
	}
}

// textWidth is how wide texts are written on the command line, in letters.
const textWidth = 96

// wrapped breaks paragraphs into lines.
func wrapped(text string) string { return indented(text, "") }

func indented(text, indent string) string {
	var b strings.Builder
	for i, paragraph := range strings.Split(text, "\n") {
		if i > 0 {
			b.WriteString("\n" + indent)
		}
		at := len(indent)
		for k, word := range strings.Fields(paragraph) {
			n := len([]rune(word))
			switch {
			case k == 0:
			case at+1+n > textWidth:
				b.WriteString("\n" + indent)
				at = len(indent)
			default:
				b.WriteByte(' ')
				at++
			}
			b.WriteString(word)
			at += n
		}
	}
	return b.String()
}

func (c command) write(std std, text string, status int) int {
	if _, err := fmt.Fprint(std.out, text); err != nil {
		fmt.Fprintf(std.err, "leafwright %s: the report was not written: %v\n", c.name, err)
		return misused
	}
	return status
}
