package game

import (
	"strconv"

	"leafwright/geom/door"
	"leafwright/geom/trim"
)

// Options of a job are lists of moves; a form changes them by path and text like any
// other field. Beside the fields of package game's table there are
//
//	Add    options                   a new option without a move
//	Add    options[1].copy           the option once more, behind it
//	Add    options[1].moves.sink     a move of that kind, with numbers to begin from
//	Add    options[1].moves[2].copy  the move once more, behind it
//	Add    options[1].keep           its first move that is not off is done for keeps
//	Set    options[1].place          puts the option at that place of the list, from 1
//	Set    options[1].moves[2].place likewise a move
//	Set    options[1].moves[2]       the whole move, as [MoveText] writes it; at the
//	                                 list's length it is a new one
//	Set    made[0]                   likewise, at the list's length only: a move done for
//	                                 keeps that stood in no option
//	Remove options[1], options[1].moves[2]
//
// What was done for keeps cannot be changed any more, but for its note.

// Option is one way to make the door fit: moves tried on the door as it stands.
type Option struct {
	Name  string
	Moves []trim.Move
}

// Tried is the door after moves.
type Tried struct {
	Door    door.Door
	Anatomy door.Anatomy
	Offcuts []trim.Offcut
	Steps   []trim.Step // what came of each move
}

// Found is the door as found, before any move. What was done to it for keeps was done,
// whatever is learned of the leaf later: to those moves it is no rated one.
func (j *Job) Found() Tried {
	t := Tried{Door: j.Door, Anatomy: j.Anatomy}
	t.Anatomy.Rated = false
	return t
}

// Stands is the door as it stands: as found, and what was done for keeps.
func (j *Job) Stands() Tried {
	t := j.Found().with(j.Made)
	t.Anatomy.Rated = j.rated()
	return t
}

// Try is the door as it would be after the i-th option's moves.
func (j *Job) Try(i int) Tried { return j.Stands().with(j.Options[i].Moves) }

// with gives the door after more moves; its steps are of those only.
func (t Tried) with(moves []trim.Move) Tried {
	p, steps := trim.All(t.piece(), moves)
	return Tried{p.Door, p.Anatomy, p.Offcuts, steps}
}

func (t Tried) piece() trim.Piece {
	return trim.Piece{Door: t.Door, Anatomy: t.Anatomy, Offcuts: t.Offcuts}
}

// OptionName is what the i-th option is called, by its number where it has no name.
func (j *Job) OptionName(i int) string {
	if name := j.Options[i].Name; name != "" {
		return name
	}
	return optionName(i)
}

func optionName(i int) string { return "Option " + ordinal(i) }

// OptionPath is where the i-th option is in a job file, MovePath its k-th move, and
// MadePath the k-th move made.
func OptionPath(i int) string  { return optionsPath + index(i) }
func MovePath(i, k int) string { return movesPath(i) + index(k) }
func MadePath(k int) string    { return madePath + index(k) }
func movesPath(i int) string   { return OptionPath(i) + ".moves" }

// AddMovePath, CopyPath and KeepPath are paths for [Form.Add], PlacePath one for
// [Form.Set], as the comment at the top of this file has them.
func AddMovePath(i int, k trim.Kind) string { return movesPath(i) + "." + string(k) }
func CopyPath(path string) string           { return path + ".copy" }
func KeepPath(i int) string                 { return OptionPath(i) + ".keep" }
func PlacePath(path string) string          { return path + ".place" }

// Keepable gives which of an option's moves is the next to be done for keeps, the
// first that is not off, below zero where there is none. The error is a [Faults]
// that says why it cannot be done now.
func (j *Job) Keepable(i int) (k int, err error) {
	why := "there is no move left to be done"
	k = -1
	for n := range j.Options[i].Moves {
		if !j.Options[i].Moves[n].Off {
			k, why = n, ""
			break
		}
	}
	if k >= 0 {
		why = j.cannot(&j.Options[i].Moves[k])
	}
	if why == "" {
		return k, nil
	}
	return k, Faults{{Path: KeepPath(i), Want: why}}
}

// cannot says why a move cannot be done for keeps now, or nothing.
func (j *Job) cannot(m *trim.Move) (why string) {
	if len(j.Made) >= MovesMost {
		return full(len(j.Made))
	}
	if _, _, care := trim.Do(j.Stands().piece(), *m); care != nil && care.About.Forbids() {
		return "this move cannot be done on the door as it stands"
	}
	return ""
}

// keep does an option's next move for keeps.
func (j *Job) keep(i int) (why string) {
	inside := j.filed()
	k, err := inside.Keepable(i)
	if err != nil {
		return err.(Faults)[0].Want
	}
	o := &j.Options[i]
	j.Made = append(j.Made, o.Moves[k])
	o.Moves = append(o.Moves[:k:k], o.Moves[k+1:]...)
	return ""
}

func full(n int) string { return "there are " + strconv.Itoa(n) + ", as many as there can be" }

// MoveText writes a move in the job file's words, in mm.
func MoveText(m trim.Move) string {
	n := written(moveParts(func(*Job, int) *trim.Move { return &m }), new(Job), "", 0)
	return string(n.flat(nil))
}

// takeMove reads a move as [MoveText] writes it.
func takeMove(text, path string) (m trim.Move, faults Faults) {
	root, bad := scan([]byte(text))
	if bad != nil {
		return m, Faults{{Path: path, Want: bad.want}}
	}
	if root.kind != groupNode {
		return m, Faults{{Path: path, Value: root.said(), Want: "a move in braces"}}
	}
	r := &reader{given: map[string]bool{}}
	parts := moveParts(func(*Job, int) *trim.Move { return &m })
	r.group(parts, &root, path, 0)
	if len(r.faults) == 0 {
		for _, f := range parts {
			if f.std != nil && !r.given[join(path, f.name)] {
				f.at(&r.job, 0).set(f.std(&r.job, 0))
			}
		}
	}
	return m, r.faults
}
