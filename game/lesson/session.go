package lesson

import (
	"bytes"
	"strconv"
	"strings"

	"leafwright/game"
	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fault"
	"leafwright/geom/survey"
)

// A session is a text: a group of fields on the first line, that says which lesson is
// played, and one on each line after it, an act each. So an act more is a line more, and
// what is cut short is whole but for its last line.

// sessionField says in a session which version of it is written there.
const sessionField = "leafwright_session"

// LargestSession is the most bytes a session may have.
const LargestSession = 1 << 20

// Session is a play as it is written.
type Session struct {
	Lesson  string // Lesson.Name
	Learner string // what the learner is to be called, or empty
	Acts    []Act
}

// Session gives the play as a session.
func (p *Play) Session(learner string) Session {
	return Session{Lesson: p.Lesson.Name, Learner: learner, Acts: p.Acts}
}

// Text writes a session, one line for its head and one for each act.
func (s *Session) Text() string {
	var b strings.Builder
	b.WriteString(s.Head())
	for i := range s.Acts {
		b.WriteString(s.Acts[i].Line())
	}
	return b.String()
}

// Head writes a session's first line, with its line feed.
func (s *Session) Head() string {
	head := "{" + game.Quoted(sessionField) + ": 1, \"lesson\": " + game.Quoted(s.Lesson)
	if s.Learner != "" {
		head += ", \"learner\": " + game.Quoted(s.Learner)
	}
	return head + "}\n"
}

// Line writes an act as a line of a session, with its line feed.
func (a *Act) Line() string {
	var b strings.Builder
	text := func(name, value string) {
		if b.Len() > 1 {
			b.WriteString(", ")
		}
		b.WriteString(game.Quoted(name) + ": " + value)
	}
	number := func(name string, x float64) { text(name, strconv.FormatFloat(x, 'f', -1, 64)) }
	b.WriteByte('{')
	text("act", game.Quoted(string(a.Deed)))
	switch a.Deed {
	case Read:
		r, spec := &a.Reading, survey.SpecOf(a.Reading.Kind)
		text("kind", game.Quoted(string(r.Kind)))
		if spec == nil {
			break
		}
		if spec.Needs&survey.NeedSide != 0 {
			text("side", game.Quoted(string(r.Side)))
		}
		if spec.Needs&survey.NeedHinge != 0 {
			number("hinge", float64(r.Hinge+1))
		}
		if spec.Needs&survey.NeedAt != 0 {
			number("at", r.At)
		}
		if spec.Needs&survey.NeedSpan != 0 {
			number("from", r.From)
			number("to", r.To)
		}
		if spec.Needs&survey.NeedAngle != 0 {
			number("angle", r.Angle.Degrees())
		}
	case Name:
		names := make([]string, len(a.Faults))
		for i, k := range a.Faults {
			names[i] = game.Quoted(string(k))
		}
		text("faults", "["+strings.Join(names, ", ")+"]")
	case Work:
		text("move", game.MoveText(a.Move))
	}
	b.WriteString("}\n")
	return b.String()
}

// ParseSession reads a session. The error is a [game.Faults] that holds everything that
// is wrong with it, by its lines; the session has what could be read. Whether the acts
// can be done is told by [Replay].
func ParseSession(data []byte) (Session, error) {
	var s Session
	var faults game.Faults
	if len(data) > LargestSession {
		return s, game.Faults{{Path: "file", Value: strconv.Itoa(len(data)) + " bytes", Want: "at most " + strconv.Itoa(LargestSession)}}
	}
	n, headed := 0, false
	for len(data) > 0 {
		line, rest, _ := bytes.Cut(data, []byte("\n"))
		data, n = rest, n+1
		if len(bytes.TrimSpace(line)) == 0 {
			continue
		}
		path := "line " + strconv.Itoa(n)
		if !headed {
			headed = true
			s.readHead(game.ReadGroup(line, path, &faults))
			continue
		}
		if len(s.Acts) >= mostActs {
			faults = append(faults, door.Fault{Path: path, Want: "at most " + strconv.Itoa(mostActs) + " acts"})
			break
		}
		if a, good := ReadAct(line, path, &faults); good {
			s.Acts = append(s.Acts, a)
		}
	}
	if !headed {
		faults = append(faults, door.Fault{Path: "line 1", Want: "a session; the file is empty"})
	}
	if len(faults) > 0 {
		return s, faults
	}
	return s, nil
}

func (s *Session) readHead(g *game.FileGroup) {
	g.Version(sessionField, Version, "a session")
	s.Lesson = g.Text("lesson", nameMost, false, true)
	s.Learner = g.Text("learner", nameMost, false, false)
	g.Done()
}

// nameMost is the most letters of a lesson's name, of a title and of a learner's name.
const nameMost = 120

// ReadAct reads one line of a session, told under the path; not good when it added to
// the faults.
func ReadAct(line []byte, path string, faults *game.Faults) (a Act, good bool) {
	had := len(*faults)
	g := game.ReadGroup(line, path, faults)
	deeds := make([]string, len(Deeds))
	for i, d := range Deeds {
		deeds[i] = string(d)
	}
	a.Deed = Deed(g.Word("act", deeds, true))
	switch a.Deed {
	case Read:
		a.Reading = readReading(g)
	case Name:
		var kinds []string
		for i := range fault.All {
			kinds = append(kinds, string(fault.All[i].Kind))
		}
		for _, k := range g.Words("faults", kinds, len(kinds)) {
			a.Faults = addKind(a.Faults, fault.Kind(k))
		}
	case Work:
		a.Move, _ = g.Move("move")
	}
	if a.Deed != "" && (a.Deed != Read || a.Reading.Kind != "") {
		g.Done()
	}
	return a, len(*faults) == had
}

func readReading(g *game.FileGroup) (r survey.Reading) {
	var kinds []string
	for _, k := range Readable() {
		kinds = append(kinds, string(k))
	}
	r.Kind = survey.Kind(g.Word("kind", kinds, true))
	spec := survey.SpecOf(r.Kind)
	if spec == nil {
		return r
	}
	if spec.Needs&survey.NeedSide != 0 {
		var sides []string
		for _, side := range spec.Sides {
			sides = append(sides, string(side))
		}
		r.Side = survey.Side(g.Word("side", sides, true))
	}
	if spec.Needs&survey.NeedHinge != 0 {
		n, _ := g.Whole("hinge", door.Range{Lo: 1, Hi: door.HingesMost}, true)
		r.Hinge = n - 1
	}
	place := func(name string) float64 {
		x, _ := g.Number(name, spec.Place, true)
		return x
	}
	if spec.Needs&survey.NeedAt != 0 {
		r.At = place("at")
	}
	if spec.Needs&survey.NeedSpan != 0 {
		r.From, r.To = place("from"), place("to")
	}
	if spec.Needs&survey.NeedAngle != 0 {
		x, _ := g.Number("angle", door.Range{Hi: 180}, true)
		r.Angle = geom.Angle(x) * geom.Degree
	}
	return r
}
