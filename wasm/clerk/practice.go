//go:build js

package main

import (
	"math"
	"strconv"
	"strings"
	"syscall/js"

	"leafwright/game"
	"leafwright/game/lesson"
	"leafwright/game/measure"
	"leafwright/geom/door"
	"leafwright/geom/fault"
	"leafwright/geom/survey"
	"leafwright/geom/trim"
)

// practice is asked with
//
//	do       begin, act, move, read, hand or explain
//	dark     whether the page is dark
//	width, height  of the drawing, px
//	swing    how far the leaf is shown open, degrees
//	show     front or plan, both where it is neither
//	inches, words  as in all questions
//
// and, but for explain, with
//
//	lesson   the text of a lesson file, empty for an attempt
//	name     the lesson's name: the file's, or an attempt's
//	session  the session so far, empty to begin with
//	upto     how many of its acts are shown, below 0 all
//	act      of do act: the act's line in a session; at, from and to as typed
//	move     of do move: the move's text, or empty for a new one of the kind
//	kind     of do move: what kind a new one is; of do read: what is to be read
//	theirs   whether it is another's session, that is only looked at
//	path, value  of do move: a field and what was typed there
//	tool     in hand over the picture, a [hand.Tool]'s kind; empty for none
//	from, to, moved, shaving, tap  of do hand: a [hand.Stroke], tap packs or home; from and to as [x, y] px
//	         of the picture, from missing where nothing is held; move as for do move
//
// and answers with what the functions below say. It keeps no state but the lesson
// last played, so that the page's own record of a session is all there is.
func (c *clerk) practice(q js.Value, _ *game.Job) map[string]any {
	if text(q, "do") == "explain" {
		return explain(q)
	}
	play, fault := c.played(q)
	if fault != "" {
		return map[string]any{"fault": fault}
	}
	switch text(q, "do") {
	case "move":
		return composed(q, play)
	case "read":
		return asked(q, play)
	case "hand":
		return held(q, play)
	case "act":
		if why := act(q, play); why != "" {
			return map[string]any{"fault": "", "refused": why}
		}
		session := play.Session("")
		c.session = session.Text()
	}
	return told(q, play)
}

func text(q js.Value, name string) string {
	if v := q.Get(name); v.Type() == js.TypeString {
		return v.String()
	}
	return ""
}

// played gives the play that a question is about, or what is wrong with it.
func (c *clerk) played(q js.Value) (*lesson.Play, string) {
	file, name, session := text(q, "lesson"), text(q, "name"), text(q, "session")
	if c.play == nil || c.play.Lesson.Name != name || c.file != file {
		var l *lesson.Lesson
		if level, seed, ok := lesson.AttemptNamed(name); ok && file == "" {
			if l, ok = lesson.Attempt(level, seed); !ok {
				return nil, "No door was found for " + name + ": draw another one."
			}
		} else {
			var err error
			if l, err = lesson.Parse(name, []byte(file)); err != nil {
				return nil, err.Error()
			}
		}
		c.play, c.file, c.session = lesson.Begin(l), file, ""
	}
	if session == c.session {
		return c.play, ""
	}
	var acts []lesson.Act
	if session != "" {
		s, err := lesson.ParseSession([]byte(session))
		if err != nil {
			return nil, err.Error()
		}
		acts = s.Acts
	}
	play, err := lesson.Replay(c.play.Lesson, acts)
	if err != nil {
		return nil, err.Error()
	}
	c.play, c.session = play, session
	return play, ""
}

// unit is the unit lengths are typed in.
func unit(q js.Value) measure.Unit {
	if q.Get("inches").Bool() {
		return measure.Inch
	}
	return measure.MM
}

// act does an act; what it says is why it cannot be done.
func act(q js.Value, p *lesson.Play) string {
	var faults game.Faults
	a, good := lesson.ReadAct([]byte(text(q, "act")), "act", &faults)
	if !good {
		return faults.Error()
	}
	if spec := survey.SpecOf(a.Reading.Kind); a.Deed == lesson.Read && spec != nil {
		for _, f := range []struct {
			name string
			need survey.Needs
			to   *float64
		}{{"at", survey.NeedAt, &a.Reading.At}, {"from", survey.NeedSpan, &a.Reading.From}, {"to", survey.NeedSpan, &a.Reading.To}} {
			if spec.Needs&f.need == 0 {
				continue
			}
			l, err := measure.Read(text(q, f.name), unit(q))
			if err != nil {
				return placeWord[f.name] + ": " + err.Error()
			}
			*f.to = l.MM
		}
	}
	if _, err := p.Do(a); err != nil {
		return err.Error()
	}
	return ""
}

var placeWord = map[string]string{"at": "The place", "from": "From", "to": "To"}

// told shows a play:
//
//	title, before   what is said first, before as paragraphs
//	session         its text
//	acts            each with said, what came of it, and deed
//	minutes, readings, spent  spent says both
//	over            how it ended, empty while it goes on
//	svg             the door as a learner sees it, or with its figures once it is over
//	hand            what lies over it: what the tool in hand can take hold of, SVG or empty
//	tools, shavings  for the picture, while it goes on
//	reads, faults, moves      what can be read, named and done: each kind and name
//	next            once a door drawn by chance is over: the level to go on with
//	judged, answer, after     once it is over, or is another's: passages of title and lines
func told(q js.Value, p *lesson.Play) map[string]any {
	l := p.Lesson
	all := len(p.Acts)
	shown := all
	if n := q.Get("upto"); n.Type() == js.TypeNumber && n.Int() >= 0 && n.Int() < all {
		shown = n.Int()
	}
	over := p.Over()
	view := p
	if shown < all {
		if view, _ = lesson.Replay(l, p.Acts[:shown]); view == nil {
			view = p
		}
	}
	job := view.Stands()
	say := speaker(q, &l.Job)
	t := lesson.TellerOf(l, say)
	acts := make([]any, all)
	for i := range acts {
		acts[i] = map[string]any{"deed": string(p.Acts[i].Deed), "said": texts(t.Seen(&p.Acts[i], &p.Seen[i]))}
	}
	minutes, readings := p.Spent()
	session := p.Session("")
	out := map[string]any{
		"fault": "", "title": l.Title, "before": paragraphs(t.Text(l.Before)), "session": session.Text(), "acts": acts,
		"spent": spent(minutes) + ", " + counted(readings, "reading", "taken") + limits(l),
		"over":  string(over), "number": all,
	}
	if over == "" && !q.Get("theirs").Truthy() {
		pic := seen(q, &job)
		out["svg"], out["hand"] = svg(q, pic.List()), ""
		if text(q, "tool") != "" {
			out["hand"] = svg(q, pic.Over())
		}
		out["tools"], out["shavings"] = tools(), shavings(q, say)
		reads, faults, moves := []any{}, []any{}, []any{}
		for _, k := range lesson.Readable() {
			s := survey.SpecOf(k)
			reads = append(reads, named(string(k), s.Asks, s.Hung()))
		}
		for i := range fault.All {
			faults = append(faults, named(string(fault.All[i].Kind), t.Fault(fault.All[i].Kind), false))
		}
		for _, a := range withOption(job).Adds {
			kind := a.Path[strings.LastIndexByte(a.Path, '.')+1:]
			moves = append(moves, named(kind, a.Label, trim.SpecOf(trim.Kind(kind)).TakesOff))
		}
		out["reads"], out["faults"], out["moves"] = reads, faults, moves
		return out
	}
	out["svg"] = picture(q, &job)
	j := p.Judge()
	if level, _, drawn := lesson.AttemptNamed(l.Name); drawn && over != "" {
		out["next"] = j.Next(level)
	}
	out["judged"], out["answer"], out["after"] = passages(t.Judged(j)), passages(t.Answer(l)), paragraphs(t.Text(l.After))
	return out
}

func named(kind, name string, first bool) map[string]any {
	return map[string]any{"kind": kind, "name": name, "first": first}
}

func spent(minutes float64) string {
	if n := int(math.Round(minutes)); n > 0 {
		return counted(n, "minute", "spent")
	}
	return "No time spent yet"
}

func counted(n int, what, done string) string {
	switch n {
	case 0:
		return "no " + what + " " + done
	case 1:
		return "1 " + what + " " + done
	}
	return strconv.Itoa(n) + " " + what + "s " + done
}

// limits says what a lesson asks to keep within.
func limits(l *lesson.Lesson) string {
	var parts []string
	if l.Limits.Minutes > 0 {
		parts = append(parts, whole(l.Limits.Minutes)+" minutes")
	}
	if l.Limits.Readings > 0 {
		parts = append(parts, strconv.Itoa(l.Limits.Readings)+" readings")
	}
	if l.Limits.Timber > 0 {
		parts = append(parts, whole(l.Limits.Timber)+" cm³ of timber")
	}
	if len(parts) == 0 {
		return "."
	}
	return ". Keep within " + strings.Join(parts, ", ") + "."
}

func whole(x float64) string { return strconv.FormatFloat(x, 'f', 0, 64) }

func paragraphs(s string) []any {
	var out []string
	for _, p := range strings.Split(s, "\n\n") {
		if p != "" {
			out = append(out, p)
		}
	}
	return texts(out)
}

func passages(all []lesson.Passage) []any {
	out := make([]any, len(all))
	for i := range all {
		out[i] = map[string]any{"title": all[i].Title, "lines": texts(all[i].Lines)}
	}
	return out
}

// withOption gives the form of an option without moves on the job's door.
func withOption(job game.Job) game.Section {
	job.Options = []game.Option{{}}
	return game.Form{}.Option(&job, 0)
}

// composed shows a move being composed on the door as it stands: move, its text; said,
// the sentence for it; fields, each with path, label, help, unit, kind, value, choices
// and fault.
func composed(q js.Value, p *lesson.Play) map[string]any {
	job := p.Stands()
	m := job.NewMove(trim.Kind(text(q, "kind")))
	job.Options = []game.Option{{Moves: []trim.Move{m}}}
	form := game.Form{Units: unit(q)}
	path := game.MovePath(0, 0)
	if move := text(q, "move"); move != "" {
		if j, err := form.Set(job, path, move); err == nil {
			job = j
		}
	}
	bad, why := text(q, "path"), ""
	if bad != "" {
		if j, err := form.Set(job, bad, text(q, "value")); err != nil {
			why = err.Error()
		} else {
			job = j
		}
	}
	m = job.Options[0].Moves[0]
	fields := []any{}
	for _, g := range form.Option(&job, 0).Groups {
		if !strings.HasPrefix(g.Remove, path) {
			continue
		}
		for _, f := range g.Fields {
			end := f.Path[strings.LastIndexByte(f.Path, '.')+1:]
			if end == "off" || end == "note" || end == "do" || f.Kind == game.Table {
				continue
			}
			if end == "edge" { // its words are the file's
				f.Help = ""
			}
			if m.Kind == trim.Pack && end == "first" {
				f.Help += " Below 0, packing comes out from behind the hinge, or it is drawn home."
			}
			choices := []any{}
			for _, c := range f.Choices {
				choices = append(choices, map[string]any{"value": c.Value, "label": c.Label})
			}
			field := map[string]any{"path": f.Path, "label": f.Label, "help": f.Help, "unit": f.Unit, "kind": string(f.Kind), "value": f.Value, "choices": choices, "fault": ""}
			if f.Path == bad && why != "" {
				field["value"], field["fault"] = text(q, "value"), why
			}
			fields = append(fields, field)
		}
	}
	say := speaker(q, &job)
	return map[string]any{"fault": "", "move": game.MoveText(m), "said": say.Move(&m) + ".", "fields": fields, "bad": why != ""}
}

// asked shows what a reading of a kind needs to be told: sides, hinges (how many, 0 where
// it is of none), at, span and angle, whether it needs them, across, whether its places are counted across
// from the hinges where no side tells, and up and over, the middle of the leaf.
func asked(q js.Value, p *lesson.Play) map[string]any {
	s := survey.SpecOf(survey.Kind(text(q, "kind")))
	if s == nil {
		return map[string]any{"fault": "There is no such reading."}
	}
	job := p.Stands()
	say := speaker(q, &job)
	sides := []any{}
	if s.Needs&survey.NeedSide != 0 {
		for _, side := range s.Sides {
			name := strings.ReplaceAll(string(side), "_", " ")
			if e, ok := edges[side]; ok {
				name = say.Edge(e)
			}
			sides = append(sides, map[string]any{"kind": string(side), "name": name})
		}
	}
	hinges := 0
	if s.Needs&survey.NeedHinge != 0 {
		hinges = len(job.Door.Hinges)
	}
	half := func(mm float64) string { return measure.Format(math.Round(mm/2), unit(q)) }
	across := s.Place.Hi < 2000
	return map[string]any{
		"fault": "", "sides": sides, "hinges": hinges, "at": s.Needs&survey.NeedAt != 0, "span": s.Needs&survey.NeedSpan != 0,
		"angle": s.Needs&survey.NeedAngle != 0, "sign": s.Sign, "unit": unit(q).String(), "across": across,
		"up": half(job.LeafHeight), "over": half(job.Door.Leaf.Width),
	}
}

var edges = map[survey.Side]door.Edge{"hinge": door.HingeSide, "latch": door.LatchSide, "head": door.HeadSide, "floor": door.FloorSide}

// explain shows an explanation: title, text as paragraphs, sliders, each with path, label,
// from, to, step, at and says, at with its unit, watch, what
// the drawing does not show of the door, and svg. It is asked with lesson, the file's text, name and
// at, a number for each slider or nothing.
func explain(q js.Value) map[string]any {
	e, err := lesson.ParseExplanation(text(q, "name"), []byte(text(q, "lesson")))
	if err != nil {
		return map[string]any{"fault": err.Error()}
	}
	job := e.Job
	t := lesson.Explains(speaker(q, &job))
	sliders := make([]any, len(e.Sliders))
	for i, s := range e.Sliders {
		at := s.From
		given := q.Get("at")
		if given.Truthy() && i < given.Length() {
			at = given.Index(i).Float()
		} else if now, ok := valueAt(&job, s.Path); ok {
			at = now
		}
		if given.Truthy() {
			one := *e
			one.Job = job
			if j, err := one.With(s.Path, at); err == nil {
				job = j
			}
		}
		sliders[i] = map[string]any{"path": s.Path, "label": s.Label, "from": s.From, "to": s.To, "step": s.Step, "at": at, "says": t.Slid(e, &s, at)}
	}
	if q.Get("swing").Type() != js.TypeNumber {
		q.Set("swing", e.Open)
	}
	return map[string]any{"fault": "", "title": e.Title, "text": paragraphs(t.Text(e.Text)), "sliders": sliders, "open": e.Open, "watch": texts(t.Watch(e, &job)), "svg": picture(q, &job)}
}

// valueAt gives the number in a field of the job's form.
func valueAt(job *game.Job, path string) (float64, bool) {
	for _, s := range (game.Form{}).Sections(*job) {
		for _, g := range s.Groups {
			for _, f := range g.Fields {
				if f.Path == path {
					x, err := strconv.ParseFloat(f.Value, 64)
					return x, err == nil
				}
			}
		}
	}
	return 0, false
}
