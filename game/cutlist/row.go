package cutlist

import (
	"math"
	"strconv"

	"leafwright/game"
	"leafwright/game/words"
	"leafwright/geom/judge"
)

// Row is one line of the table; lengths in mm, NaN where a cell is empty.
type Row struct {
	What string // of which kind the row is
	Move string // the move's number in its list, "made 1" of one done for keeps; or empty
	Part string // of the door
	From string // what the place is measured from

	Place float64
	Open  float64 // swing angle counted from the pose, or an edge's bevel; degrees

	// The quantity in the door as found, as it stands with what was done for keeps, and
	// after the option.
	Found, Stands, After float64
	// Change is what a move does to it: timber off or glued on, by what the row is of; of
	// anything else, and of a gap, how much greater it gets.
	Change float64

	Least, Most float64 // wanted; Most is NaN too where no gap is too wide
	Judged      string  // how it is after, in a word
	Note        string
}

// row is a row with every number left open.
func row(what string) Row {
	n := math.NaN()
	return Row{What: what, Place: n, Open: n, Found: n, Stands: n, After: n, Change: n, Least: n, Most: n}
}

// wanted fills in the limits and how the value after keeps them.
func (r *Row) wanted(l judge.Limits) {
	r.Least = l.Least
	if l.Most > 0 {
		r.Most = l.Most
	}
	if !math.IsNaN(r.After) {
		r.Judged = words.Word(l.Judge(r.After))
	}
}

// table is a table in the making.
type table struct {
	s                    *words.Speaker
	job                  *game.Job
	found, stands, after game.Column
	rows                 []Row
}

// Rows gives the table of a job's option, or of the door as it stands for
// [game.AsItStands], in the speaker's words: closed gaps, swing, stops, latch and
// clear way; then the moves made for keeps and the option's. The job's shapes must
// give no fault.
func Rows(j *game.Job, option int, s *words.Speaker) []Row {
	t := table{s: s, job: j, found: j.Column(game.AsFound), stands: j.Column(game.AsItStands)}
	t.after = t.stands
	var moves = []string(nil)
	if option >= 0 && option < len(j.Options) {
		t.after = j.Column(option)
		for k := range j.Options[option].Moves {
			moves = append(moves, strconv.Itoa(k+1))
		}
	}
	t.gaps()
	t.swings()
	t.stops()
	t.others()
	made := make([]string, len(j.Made))
	for k := range made {
		made[k] = "made " + strconv.Itoa(k+1)
	}
	t.moves(j.Found(), t.stands.Tried.Steps, made)
	if len(moves) > 0 {
		t.moves(j.Stands(), t.after.Tried.Steps, moves)
	}
	return t.rows
}

func (t *table) add(r Row) { t.rows = append(t.rows, r) }
