package lesson

import (
	"math"

	"leafwright/geom/door"
	"leafwright/geom/fault"
	"leafwright/geom/survey"
	"leafwright/geom/trim"
)

// Rung is how much a hint says.
type Rung int

// The rungs of a ladder of hints, in order.
const (
	Question Rung = iota // something to think about
	Look                 // where to look
	Answer               // what it is, or what to do
)

// Matter is what a hint is about.
type Matter string

// The matters.
const (
	Written  Matter = "written"  // the lesson's own hint: Hint.Text
	TryFirst Matter = "try"      // the door was not tried yet
	Diagnose Matter = "diagnose" // a fault not named yet
	Strike   Matter = "strike"   // a fault was named that there is none of
	Repair   Matter = "cure"     // the next move
	AllGood  Matter = "good"     // it hangs as wanted
	Spoilt   Matter = "spoilt"   // no way is left
)

// Hint is a hint. Its words are said by [Teller.Hint].
type Hint struct {
	Matter Matter
	Rung   Rung
	Text   string          // of Written
	Fault  fault.Kind      // of Diagnose and Strike
	Names  []fault.Kind    // what is to be named in the end, so far as it is known after this hint
	Read   *survey.Reading // what to read, on the rung Look
	Move   *trim.Move      // of Repair
}

// Follow gives the act that follows a hint, as one who has nothing but hints would do.
// Not ok where there is only something to think about: then another hint is asked for.
func (h *Hint) Follow() (a Act, ok bool) {
	switch {
	case h.Matter == TryFirst:
		return Act{Deed: Try}, true
	case h.Matter == AllGood:
		return Act{Deed: Finish}, true
	case h.Matter == Spoilt:
		return Act{Deed: GiveUp}, true
	case h.Rung == Look && h.Read != nil:
		return Act{Deed: Read, Reading: *h.Read}, true
	case h.Rung == Answer && h.Matter == Repair:
		return Act{Deed: Work, Move: *h.Move}, true
	case h.Rung == Answer && (h.Matter == Diagnose || h.Matter == Strike):
		return Act{Deed: Name, Faults: h.Names}, true
	}
	return Act{}, false
}

// ladder is where a learner stands among the hints. It follows from the acts.
type ladder struct {
	written int // of the lesson's own given
	rung    Rung
	named   []fault.Kind // last
	tried   bool
	// plan is the way that hints lead along, moves yet to be made; nil where it has to be
	// worked out for the door as it stands.
	plan []trim.Move
}

// after notes what an act changed.
func (l *ladder) after(a *Act, s *Seen) {
	switch a.Deed {
	case Try:
		l.tried = true
	case Name:
		l.named, l.rung = a.Faults, Question
	case Work:
		if s.Step.Why != nil {
			return
		}
		l.rung = Question
		if len(l.plan) > 1 && sameMove(&l.plan[0], &a.Move) {
			l.plan = l.plan[1:]
			if trim.SpecOf(l.plan[0].Kind).Trade == trim.SpecOf(a.Move.Kind).Trade {
				l.rung = Look // the question would be the same
			}
		} else {
			l.plan = nil
		}
	}
}

func sameMove(a, b *trim.Move) bool {
	if len(a.Line) != len(b.Line) {
		return false
	}
	for i := range a.Line {
		if a.Line[i] != b.Line[i] {
			return false
		}
	}
	x, y := *a, *b
	x.Line, y.Line, x.Note, y.Note = nil, nil, "", ""
	return x.Kind == y.Kind && x.Edge == y.Edge && x.Face == y.Face && x.Hinge == y.Hinge && x.On == y.On && x.From == y.From && x.To == y.To &&
		x.First == y.First && x.Last == y.Last && x.Angle == y.Angle && x.Stock == y.Stock && x.SetIn == y.SetIn && x.Hollow == y.Hollow &&
		x.Closed == y.Closed && x.Plates == y.Plates && x.Pin == y.Pin && x.LeafGain == y.LeafGain && x.JambGain == y.JambGain &&
		x.Cover == y.Cover && x.Wide == y.Wide
}

// hint gives the next hint.
func (p *Play) hint() Hint {
	l := &p.ladder
	if l.written < len(p.Lesson.Hints) {
		l.written++
		return Hint{Matter: Written, Text: p.Lesson.Hints[l.written-1]}
	}
	if p.good() {
		return Hint{Matter: AllGood, Rung: Answer}
	}
	if !l.tried {
		return Hint{Matter: TryFirst, Rung: Look}
	}
	h := p.next()
	h.Rung = l.rung
	l.rung = min(l.rung+1, Answer)
	if h.Rung != Look {
		h.Read = nil
	}
	return h
}

// next gives what the next hint is about, whatever its rung.
func (p *Play) next() Hint {
	l := &p.ladder
	hidden := p.Lesson.Kinds()
	var right []fault.Kind
	wrong := fault.Kind("")
	for _, k := range l.named {
		if hasKind(hidden, k) {
			right = append(right, k)
		} else if wrong == "" {
			wrong = k
		}
	}
	for i := range p.Lesson.Faults {
		m := &p.Lesson.Faults[i]
		if !hasKind(right, m.Kind) {
			return Hint{Matter: Diagnose, Fault: m.Kind, Names: append(right[:len(right):len(right)], m.Kind), Read: p.telling(m)}
		}
	}
	if wrong != "" {
		return Hint{Matter: Strike, Fault: wrong, Names: right}
	}
	if l.plan == nil {
		l.plan = p.way()
	}
	if len(l.plan) == 0 {
		return Hint{Matter: Spoilt, Rung: Answer}
	}
	m := l.plan[0]
	return Hint{Matter: Repair, Move: &m, Read: p.before(&m)}
}

// way is the moves that put the door right as it stands.
func (p *Play) way() []trim.Move {
	if len(p.moves) == 0 {
		return p.Lesson.Cure.Moves
	}
	return cureOf(&p.piece, p.Lesson).Moves
}

// telling gives the reading that tells a fault, nil where the trial itself tells it.
func (p *Play) telling(m *fault.Made) *survey.Reading {
	d := &p.piece.Door
	l := &d.Leaf
	across := l.Width / 2
	foot, top := 100.0, l.Top.At(across)-100
	var r survey.Reading
	span := func(kind survey.Kind, side survey.Side, from, to float64) {
		r = survey.Reading{Kind: kind, Side: side, From: from, To: to, At: (from + to) / 2}
	}
	hinge := 0
	if m.Way == fault.Lower {
		hinge = len(d.Hinges) - 1
	}
	switch m.Kind {
	case fault.JambLeans:
		span(survey.JambPlumb, survey.Latch, foot, top)
	case fault.JambSprung:
		span(survey.FrameBow, survey.SideOf(m.Edge), foot, top)
		if m.At > foot && m.At < top {
			r.At = m.At
		}
	case fault.HeadFalls:
		span(survey.HeadSlope, "", 50, l.Width-50)
	case fault.FrameWinds:
		span(survey.FrameWind, "", foot, top)
	case fault.FloorRises:
		r = survey.Reading{Kind: survey.FloorHeight, At: l.Width - 20, Angle: d.Opens}
	case fault.EdgeSquare:
		r = survey.Reading{Kind: survey.LeafBevel, Side: survey.Latch, At: d.Latch.Height}
	case fault.LeafWinds:
		span(survey.LeafWind, "", foot, top)
	case fault.LeafWide:
		r = survey.Reading{Kind: survey.LeafWidth, At: l.Top.At(across) / 2}
	case fault.LeafTall:
		r = gapAt(m.Edge, across)
	case fault.LeafShort:
		r = gapAt(door.HeadSide, across)
	case fault.LeafSwollen:
		r = survey.Reading{Kind: survey.LeafThickness}
	case fault.EdgeUneven:
		at := m.At
		if at == 0 {
			at = l.Top.At(across) / 2
		}
		r = gapAt(door.LatchSide, at)
	case fault.PaintThick:
		r = gapAt(door.HingeSide, (d.Hinges[0].JambHeight+d.Hinges[len(d.Hinges)-1].JambHeight)/2)
	case fault.GainsDeep, fault.HingeSags:
		r = gapAt(door.HingeSide, d.Hinges[0].JambHeight)
	case fault.ScrewsProud:
		r = gapAt(door.HingeSide, d.Hinges[hinge].JambHeight)
	case fault.PinsLean:
		r = survey.Reading{Kind: survey.HingePin, Hinge: hinge}
	case fault.StopNear:
		at := l.Top.At(across) / 2
		switch m.Way {
		case fault.Upper:
			at = top
		case fault.Lower:
			at = foot
		}
		r = survey.Reading{Kind: survey.StopGap, Side: survey.Latch, At: at}
	case fault.KeepOut:
		r = survey.Reading{Kind: survey.StopGap, Side: survey.Latch, At: d.Latch.Height}
	}
	return p.possible(r)
}

// before gives the reading worth taking before a move: the gap at the place it works.
func (p *Play) before(m *trim.Move) *survey.Reading {
	d := &p.piece.Door
	switch spec := trim.SpecOf(m.Kind); {
	case spec.Trade == trim.TheHinges:
		i := max(m.Hinge, 1) - 1
		if i >= len(d.Hinges) {
			i = 0
		}
		return p.possible(gapAt(door.HingeSide, d.Hinges[i].JambHeight))
	case m.Kind == trim.Restop || m.Kind == trim.Follow:
		return p.possible(survey.Reading{Kind: survey.StopGap, Side: survey.SideOf(m.Edge), At: p.middle(m.Edge)})
	default:
		return p.possible(gapAt(m.Edge, p.middle(m.Edge)))
	}
}

// middle is the middle of a side.
func (p *Play) middle(e door.Edge) float64 {
	across := p.piece.Door.Leaf.Width / 2
	if e.Upright() {
		return p.piece.Door.Leaf.Top.At(across) / 2
	}
	return across
}

func gapAt(e door.Edge, at float64) survey.Reading {
	return survey.Reading{Kind: survey.GapRead, Side: survey.SideOf(e), At: at}
}

// possible gives the reading if it can be taken now, in whole millimetres, else nil.
func (p *Play) possible(r survey.Reading) *survey.Reading {
	if r.Kind == "" {
		return nil
	}
	r.At, r.From, r.To = math.Round(r.At), math.Round(r.From), math.Round(r.To)
	if len(p.check(&Act{Deed: Read, Reading: r})) > 0 {
		return nil
	}
	return &r
}
