package lesson

import (
	"math"
	"strconv"
	"strings"

	"leafwright/geom/fault"
	"leafwright/geom/trim"
)

// Level is a step of the path: how many faults at once, on how old a door, how faint.
type Level struct {
	Faults    int
	Old, Hard float64
	About     string
}

// Levels is the path, the easiest first: level 1 is Levels[0].
var Levels = []Level{
	{1, 0, 0.1, "one fault on a new door, plain to see"},
	{1, 0.6, 0.3, "one fault on an older door"},
	{2, 0, 0.3, "two faults at once on a new door"},
	{2, 0.8, 0.5, "two faults at once on an old door"},
	{3, 0.2, 0.5, "three faults at once"},
	{3, 1, 0.8, "three faults at once on an old door, fainter"},
}

// redraws is how many doors are drawn for an attempt before giving up.
const redraws = 60

// AttemptName is what an attempt is called by, and AttemptNamed reads one.
func AttemptName(level int, seed uint64) string {
	return "attempt " + strconv.Itoa(level) + " " + strconv.FormatUint(seed, 10)
}

// AttemptNamed gives the level and the seed of an attempt's name.
func AttemptNamed(name string) (level int, seed uint64, ok bool) {
	rest, ok := strings.CutPrefix(name, "attempt ")
	of, number, two := strings.Cut(rest, " ")
	level, err := strconv.Atoi(of)
	seed, err2 := strconv.ParseUint(number, 10, 64)
	ok = ok && two && err == nil && err2 == nil && level >= 1 && level <= len(Levels) && AttemptName(level, seed) == name
	return level, seed, ok
}

// Attempt draws a lesson of a level, 1 the first; every seed is another. It can be
// solved: a cure is proven, and doors without one are drawn anew. A level there is none
// of is taken for the nearest. Not ok where no door was found, which no seed tried gave.
func Attempt(level int, seed uint64) (l *Lesson, ok bool) {
	level = min(max(level, 1), len(Levels))
	of := &Levels[level-1]
	for n := range uint64(redraws) {
		s := mixed(seed, uint64(level), n)
		if l := draw(of, s); l != nil {
			l.Name = AttemptName(level, seed)
			l.Title = "Attempt " + strconv.FormatUint(seed, 10) + ", " + of.About
			l.Job.Name = l.Title
			l.Before = attemptBefore(len(l.Faults))
			return l, true
		}
	}
	return nil, false
}

// mixed gives a number that follows from others with no pattern to it (the finishing
// steps of SplitMix64; from memory).
func mixed(xs ...uint64) (h uint64) {
	for _, x := range xs {
		h += x + 0x9e3779b97f4a7c15
		h = (h ^ h>>30) * 0xbf58476d1ce4e5b9
		h = (h ^ h>>27) * 0x94d049bb133111eb
		h ^= h >> 31
	}
	return h
}

// draw gives a lesson of a level, nil where the door drawn is none for a learner.
func draw(of *Level, seed uint64) *Lesson {
	sound := soundDoor(seed, of.Old)
	before := pieceOf(&sound)
	l := &Lesson{Job: sound, Sound: sound.Clone()}
	if !good(&before, l) {
		return nil
	}
	kinds := fault.Mix(before, nil, of.Faults, seed, of.Hard)
	p, made := fault.Make(before, kinds, seed, of.Hard)
	l.put(p)
	l.Faults = made
	if len(l.Kinds()) != of.Faults || !l.proven() {
		return nil
	}
	l.Limits = usualLimits(&l.Cure)
	return l
}

// put makes the door the learner finds.
func (l *Lesson) put(p trim.Piece) {
	hand, name := l.Job.Hand, l.Job.Name
	l.Job = jobOf(p, l.Job.Wanted)
	l.Job.Hand, l.Job.Name = hand, name
}

// proven finds the cure, and tells whether the lesson can be played: the door can be
// hung, shows that something is wrong, and can be cured.
func (l *Lesson) proven() bool {
	if len(l.Job.Check()) > 0 {
		return false
	}
	p := l.piece()
	if len(complaints(&p, l)) == 0 {
		return false
	}
	l.Cure = cureOf(&p, l)
	return l.Cure.Found
}

// usualLimits leaves room for a slip, for looking about and for reading twice.
func usualLimits(c *Cure) Limits {
	return Limits{
		Timber:   math.Ceil((c.Timber*1.5+40)/10) * 10,
		Minutes:  math.Ceil((c.Minutes*2+60)/15) * 15,
		Readings: 40,
	}
}

func attemptBefore(n int) string {
	if n == 1 {
		return "Something is wrong with this door. Try it, read its gaps where you choose, say what is wrong, and then put it right with as little work as will do."
	}
	return []string{"Two", "Three"}[min(n, 3)-2] + " things are wrong with this door, and one may hide another. Try it, read its gaps where you choose, say what is wrong, and then put it right with as little work as will do."
}
