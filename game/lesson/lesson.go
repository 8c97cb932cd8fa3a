package lesson

import (
	"leafwright/game"
	"leafwright/geom/fault"
	"leafwright/geom/judge"
	"leafwright/geom/trim"
)

// Lesson is a door with hidden faults, and what is said before and after.
type Lesson struct {
	// Name is what a session calls the lesson by: its file's name without the ending, or
	// level and seed of an attempt, as [AttemptName] writes them.
	Name          string
	Title         string
	Before, After string // what to read first, and once it is over; paragraphs with an empty line between
	Hints         []string
	Limits        Limits

	// Job is the door as the learner finds it, Sound the one the faults were made into;
	// Sound has no size where the job's shapes hold the faults already.
	Job, Sound game.Job
	Faults     []fault.Made
	Cure       Cure // what would put it right at the least cost
}

// Limits are what a lesson asks a learner to keep within; 0 sets none.
type Limits struct {
	Timber   float64 // cm³ off the leaf
	Minutes  float64
	Readings int
}

// Kinds gives the kinds of the lesson's faults, each once, in order.
func (l *Lesson) Kinds() (out []fault.Kind) {
	for _, m := range l.Faults {
		out = addKind(out, m.Kind)
	}
	return out
}

func addKind(to []fault.Kind, k fault.Kind) []fault.Kind {
	if hasKind(to, k) {
		return to
	}
	return append(to, k)
}

func hasKind(in []fault.Kind, k fault.Kind) bool {
	for _, has := range in {
		if has == k {
			return true
		}
	}
	return false
}

// piece is the door as the learner finds it.
func (l *Lesson) piece() trim.Piece { return pieceOf(&l.Job) }

func (l *Lesson) wanted() *judge.Wanted { return &l.Job.Wanted }
