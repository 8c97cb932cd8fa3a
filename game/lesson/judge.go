package lesson

import (
	"math"

	"leafwright/geom/door"
	"leafwright/geom/fault"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
	"leafwright/geom/trim"
)

// Judgement is what is to be said of a play. It is no score: every part of it stands
// for itself, and [Explain] says it in words.
type Judgement struct {
	Over Deed // how it ended, empty while it goes on

	// Good tells that all is as wanted; Out is what is not, Left what a trial still shows.
	Good bool
	Out  []judge.Finding
	Left []fault.Symptom

	// Hidden are the faults there were; of those named last before the first cut, Right
	// are among them and Wrong are not; Missed were not named then. Late tells that nothing
	// was named before the first cut, and all is of what was named afterwards. Given are
	// those of Right that a hint had given away.
	Hidden, Right, Wrong, Missed, Given []fault.Kind
	Late                                bool

	Timber, Minutes       float64 // cm³ off the leaf; spent in all
	Working               float64 // minutes of them on the moves
	Readings, Tries, Asks int
	Told                  int  // hints that gave away a fault or a move
	Frame                 bool // whether the frame was worked
	Refused               int  // moves that could not be made

	Moves  []MoveJudged
	Least  Cure // what would have put the door right as it was found
	Limits []LimitKept
}

// Next gives the level of the path to go on with after an attempt at one: the next
// when the door was put right within limits, its faults named before the first cut with
// none given away, and no more than one move had from a hint; the one before when it was given up or left
// wrong with nothing rightly named; else the same.
func (j *Judgement) Next(level int) int {
	within := true
	for _, l := range j.Limits {
		within = within && l.Kept()
	}
	switch {
	case j.Good && within && !j.Late && len(j.Missed)+len(j.Wrong)+len(j.Given) == 0 && j.Told <= 1:
		level++
	case !j.Good && len(j.Right) == len(j.Given):
		level--
	}
	return min(max(level, 1), len(Levels))
}

// Wasted gives the timber taken beyond the least there could be, cm³.
func (j *Judgement) Wasted() float64 { return max(0, j.Timber-j.Least.Timber) }

// FrameSpoilt tells whether the frame was worked though it need not have been.
func (j *Judgement) FrameSpoilt() bool { return j.Frame && !j.Least.Frame }

// LimitKept is a limit of the lesson and how it was kept.
type LimitKept struct {
	Limit         string // timber, minutes or readings
	Allowed, Used float64
}

// Kept tells whether the limit was kept.
func (l LimitKept) Kept() bool { return l.Used <= l.Allowed+1e-9 }

// MoveJudged is what a move did, and what less would have done.
type MoveJudged struct {
	Act  int // its place among the acts
	Step trim.Step
	// Gaps are the closed gaps along the edges before and after it, least and most.
	// Stops are the gaps to the stops likewise.
	Gaps  [door.Edges]GapMoved
	Stops [door.FloorSide]GapMoved
	// Better is by how much less the door is out of what is wanted after the move, mm in
	// all; below 0 it made matters worse.
	Better float64
	// Needless tells that without it the door would be no worse in the end. Enough is the
	// part of its amounts that would have done, 1 where all of it was needed.
	Needless bool
	Enough   float64
}

// GapMoved is the closed gap along an edge before and after a move, mm.
type GapMoved struct{ LeastBefore, MostBefore, LeastAfter, MostAfter float64 }

func moved(was, is [2]float64) GapMoved { return GapMoved{was[0], was[1], is[0], is[1]} }

// Moved tells whether it changed by what a feeler would show.
func (g GapMoved) Moved() bool {
	return math.Abs(g.LeastAfter-g.LeastBefore) >= 0.1 || math.Abs(g.MostAfter-g.MostBefore) >= 0.1
}

// Judge judges a play as it stands.
func (p *Play) Judge() *Judgement {
	l := p.Lesson
	j := &Judgement{
		Over: p.over, Out: out(p.all), Left: p.complaints(), Hidden: l.Kinds(), Minutes: p.minutes, Readings: p.readings, Least: l.Cure,
	}
	j.Good = len(j.Out) == 0 && len(j.Left) == 0
	j.diagnosis(p)
	for i := range p.Acts {
		switch s := &p.Seen[i]; p.Acts[i].Deed {
		case Try:
			j.Tries++
		case Ask:
			j.Asks++
			if h := &s.Hint; h.Rung == Answer && (h.Matter == Diagnose || h.Matter == Repair) {
				j.Told++
			}
		case Work:
			if s.Step.Why != nil {
				j.Refused++
				continue
			}
			j.Working += s.Minutes
			j.Timber += s.Step.Done.Volume / 1000
			j.Frame = j.Frame || s.Step.Done.Frame
			j.Moves = append(j.Moves, MoveJudged{Act: i, Step: s.Step})
		}
	}
	j.moves(p)
	add := func(name string, allowed, used float64) {
		if allowed > 0 {
			j.Limits = append(j.Limits, LimitKept{name, allowed, used})
		}
	}
	add("timber", l.Limits.Timber, j.Timber)
	add("minutes", l.Limits.Minutes, j.Minutes)
	add("readings", float64(l.Limits.Readings), float64(j.Readings))
	return j
}

// diagnosis holds what was named against what was hidden.
func (j *Judgement) diagnosis(p *Play) {
	var named, given []fault.Kind
	cut := false
	for i := range p.Acts {
		switch p.Acts[i].Deed {
		case Name:
			if !cut || len(named) == 0 {
				named, j.Late = p.Acts[i].Faults, cut
			}
		case Work:
			cut = cut || p.Seen[i].Step.Why == nil
		case Ask:
			if h := &p.Seen[i].Hint; h.Matter == Diagnose && h.Rung == Answer && !hasKind(named, h.Fault) {
				given = addKind(given, h.Fault)
			}
		}
	}
	if cut && len(named) == 0 {
		j.Late = true
	}
	for _, k := range named {
		if hasKind(j.Hidden, k) {
			j.Right = append(j.Right, k)
			if hasKind(given, k) {
				j.Given = append(j.Given, k)
			}
		} else {
			j.Wrong = append(j.Wrong, k)
		}
	}
	for _, k := range j.Hidden {
		if !hasKind(named, k) {
			j.Missed = append(j.Missed, k)
		}
	}
}

// moves judges the moves one by one.
func (j *Judgement) moves(p *Play) {
	piece := p.Lesson.piece()
	was := hung(&piece, p.Lesson)
	end := hung(&p.piece, p.Lesson)
	for i := range j.Moves {
		m := &j.Moves[i]
		piece, _ = trim.All(piece, []trim.Move{m.Step.Move})
		is := hung(&piece, p.Lesson)
		for e := range door.Edges {
			m.Gaps[e] = moved(was.gaps[e], is.gaps[e])
		}
		for e := range door.FloorSide {
			m.Stops[e] = moved(was.stops[e], is.stops[e])
		}
		m.Better = was.beyond - is.beyond
		was = is
		m.Enough = j.enough(p, i, end)
		m.Needless = m.Enough == 0
	}
}

// state is how a door hangs, as far as a judgement goes.
type state struct {
	gaps   [door.Edges][2]float64 // least and most
	stops  [door.FloorSide][2]float64
	beyond float64 // mm out of what is wanted, and a mm for each thing a trial shows
}

func hung(piece *trim.Piece, l *Lesson) (s state) {
	var f fit.Fit
	fit.Evaluate(&f, &piece.Door)
	for e := range door.Edges {
		s.gaps[e] = [2]float64{f.Gaps[e].Least, f.Gaps[e].Most}
	}
	for e := range door.FloorSide {
		s.stops[e] = [2]float64{f.Stops[e].Least, f.Stops[e].Most}
	}
	s.beyond = beyond(judge.Verdicts(&f, &piece.Door, l.wanted())) + float64(len(complaints(piece, l)))
	return s
}

// worthless is how much less of a move is not worth a word, mm.
const worthless = 1.0

// enough gives the least part of the i-th move's amounts, by tenths, with which the
// door would in the end be no worse; 1 where so little less would do that it is not
// worth a word.
func (j *Judgement) enough(p *Play, i int, end state) float64 {
	moves := make([]trim.Move, len(j.Moves))
	for k := range j.Moves {
		moves[k] = j.Moves[k].Step.Move
	}
	full := moves[i]
	for tenth := range 10 {
		part := float64(tenth) / 10
		moves[i] = scaled(full, part)
		moves[i].Off = tenth == 0
		if tenth > 0 && (!scales(full.Kind) || amountOf(&full)*(1-part) < worthless) {
			break
		}
		piece, steps := trim.All(p.Lesson.piece(), moves)
		went := true
		for k := range steps {
			went = went && steps[k].Why == nil
		}
		if went && hung(&piece, p.Lesson).beyond <= end.beyond+1e-6 {
			return part
		}
	}
	return 1
}

// amountOf is the greatest amount of a move, mm.
func amountOf(m *trim.Move) float64 {
	most := max(math.Abs(m.First), math.Abs(m.Last))
	for _, s := range m.Line {
		most = max(most, math.Abs(s.Value))
	}
	return most
}

// scales tells whether less of a move of the kind is a move too, and one that saves
// timber.
func scales(k trim.Kind) bool {
	switch k {
	case trim.Plane, trim.Scribe, trim.Cut, trim.PlaneJamb:
		return true
	}
	return false
}

// scaled gives a part of a move.
func scaled(m trim.Move, part float64) trim.Move {
	m.First, m.Last = m.First*part, m.Last*part
	m.Line = append(m.Line[:0:0], m.Line...)
	for i := range m.Line {
		m.Line[i].Value *= part
	}
	return m
}
