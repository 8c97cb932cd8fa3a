package lesson

import (
	"math"
	"strconv"
	"strings"

	"leafwright/game"
	"leafwright/geom/door"
	"leafwright/geom/fault"
	"leafwright/geom/judge"
	"leafwright/geom/survey"
	"leafwright/geom/trim"
)

// Deed is what a learner does, in the session's word.
type Deed string

// The deeds.
const (
	Try    Deed = "try"     // the leaf is swung, shut and let go
	Read   Deed = "read"    // something is measured
	Name   Deed = "name"    // the faults are named
	Work   Deed = "move"    // a move is made for keeps
	Ask    Deed = "hint"    // the next hint is asked for
	Finish Deed = "done"    // the learner calls it done
	GiveUp Deed = "give up" // and is shown the answer
)

// Deeds is every deed.
var Deeds = []Deed{Try, Read, Name, Work, Ask, Finish, GiveUp}

// Act is one thing a learner does.
type Act struct {
	Deed    Deed
	Reading survey.Reading // of Read: what and where; hinge 0 the top one, no value
	Faults  []fault.Kind   // of Name
	Move    trim.Move      // of Work
}

// Seen is what came of an act.
type Seen struct {
	Minutes  float64 // it took
	Symptoms []fault.Symptom
	Took     Took
	Step     trim.Step // of Work; Step.Why tells why it was not done
	Hint     Hint
}

// mostActs a session may have.
const mostActs = 1000

// trying is what trying the door takes, minutes (common practice, no published source).
const trying = 1.0

// Play is a lesson being played. Its acts and what came of them are in Acts and Seen,
// the same number of each.
type Play struct {
	Lesson *Lesson
	Acts   []Act
	Seen   []Seen

	piece    trim.Piece
	all      []judge.Finding // of the piece, no causes
	moves    []trim.Move     // made
	minutes  float64
	readings int
	over     Deed // Finish or GiveUp once it is

	ladder ladder
}

// Begin begins to play a lesson, which must not change from then on.
func Begin(l *Lesson) *Play {
	p := &Play{Lesson: l, piece: l.piece()}
	p.all = verdicts(&p.piece, l.wanted())
	return p
}

// Over tells how the play ended: Finish or GiveUp, empty while it goes on.
func (p *Play) Over() Deed { return p.over }

// Stands is the job as the learner has it now: the door as found, and the moves made.
func (p *Play) Stands() game.Job {
	j := p.Lesson.Job.Clone()
	j.Made = append(j.Made, p.moves...)
	return j
}

// Spent gives the minutes spent and the readings taken so far.
func (p *Play) Spent() (minutes float64, readings int) { return p.minutes, p.readings }

// Do does one act and gives what came of it. The error is a [game.Faults]: the act
// cannot be done at all, and nothing changed. A move that cannot be made is no error:
// the learner tried, and is told why it does not go.
func (p *Play) Do(a Act) (Seen, error) {
	if faults := p.check(&a); len(faults) > 0 {
		return Seen{}, faults
	}
	var s Seen
	switch a.Deed {
	case Try:
		s.Minutes, s.Symptoms = trying, p.complaints()
	case Read:
		s.Took, s.Minutes = take(&p.piece, a.Reading)
		p.readings++
	case Work:
		next, steps := trim.All(p.piece, []trim.Move{a.Move})
		s.Step = steps[0]
		if s.Step.Why == nil {
			s.Minutes = s.Step.Done.Minutes
			p.piece, p.moves = next, append(p.moves, a.Move)
			p.all = verdicts(&p.piece, p.Lesson.wanted())
		}
	case Ask:
		s.Hint = p.hint()
	case Finish, GiveUp:
		p.over = a.Deed
	}
	p.minutes += s.Minutes
	p.Acts, p.Seen = append(p.Acts, a), append(p.Seen, s)
	p.ladder.after(&a, &s)
	return s, nil
}

// check gives what is wrong with an act.
func (p *Play) check(a *Act) (faults game.Faults) {
	no := func(path, value, want string) {
		faults = append(faults, door.Fault{Path: path, Value: value, Want: want})
	}
	switch {
	case p.over != "":
		no("act", "", "the lesson is over, and nothing more can be done")
		return faults
	case len(p.Acts) >= mostActs && a.Deed != Finish && a.Deed != GiveUp:
		no("act", "", "there are "+strconv.Itoa(mostActs)+" acts, as many as there can be: call it done or give it up")
		return faults
	}
	switch a.Deed {
	case Try, Ask, Finish, GiveUp:
	case Read:
		p.checkReading(&a.Reading, no)
	case Name:
		if len(a.Faults) == 0 {
			no("faults", "", "missing; the name of a fault is wanted")
		}
		for _, k := range a.Faults {
			if fault.SpecOf(k) == nil {
				no("faults", string(k), "the name of a fault known here")
			}
		}
	case Work:
		for _, f := range a.Move.Check() {
			no("move."+f.Path, f.Value, f.Want)
		}
		if a.Move.Off {
			no("move.off", "", "a move made for keeps cannot be left out")
		}
	default:
		no("act", string(a.Deed), "one of "+deedList())
	}
	return faults
}

func deedList() (s string) {
	for i, d := range Deeds {
		if i > 0 {
			s += ", "
		}
		s += string(d)
	}
	return s
}

func (p *Play) checkReading(r *survey.Reading, no func(path, value, want string)) {
	spec := survey.SpecOf(r.Kind)
	if !readable(spec) {
		no("kind", string(r.Kind), "a kind of reading that gives a length; where the leaf rubs is seen by trying it")
		return
	}
	if most := p.Lesson.Limits.Readings; most > 0 && p.readings >= most {
		no("act", "", "this lesson allows "+strconv.Itoa(most)+" readings, and they are taken")
	}
	*r = survey.Reading{Kind: r.Kind, Side: r.Side, Hinge: r.Hinge, At: r.At, From: r.From, To: r.To, Angle: r.Angle}
	if spec.Needs&survey.NeedHinge != 0 && (r.Hinge < 0 || r.Hinge >= len(p.piece.Door.Hinges)) {
		no("hinge", strconv.Itoa(r.Hinge+1), "between 1, the top one, and "+strconv.Itoa(len(p.piece.Door.Hinges)))
		return
	}
	asked := *r
	asked.Value = spec.Allowed.Lo // what it will be is not known yet
	bad := asked.Check("")
	for _, f := range bad {
		no(strings.TrimPrefix(f.Path, "."), f.Value, f.Want)
	}
	if len(bad) > 0 {
		return
	}
	if v := survey.Expect(&p.piece.Door, *r); math.IsNaN(v) || math.IsInf(v, 0) {
		no("at", door.Say(r.At), "a place where there is something to read")
	}
}

// Replay plays a lesson by acts, as far as they can be done. The error is a
// [game.Faults] and tells of the first that cannot.
func Replay(l *Lesson, acts []Act) (*Play, error) {
	p := Begin(l)
	for i, a := range acts {
		if _, err := p.Do(a); err != nil {
			faults := err.(game.Faults)
			for k := range faults {
				faults[k].Path = "acts[" + strconv.Itoa(i) + "]." + faults[k].Path
			}
			return p, faults
		}
	}
	return p, nil
}
