package game

import (
	"slices"
	"strconv"
	"strings"

	"leafwright/geom"
	"leafwright/geom/trim"
)

// madeStays is why what was done for keeps does not change.
const madeStays = "what was done for keeps stays as it was done"

// placed is a path that leads to an option or one of its moves.
type placed struct {
	option, move int    // move below zero where the path is the option's
	rest         string // after the last place
}

// placeOf takes an option's path apart: options[1] and options[1].moves[2], with
// what follows them.
func (j *Job) placeOf(path string) (p placed, ok bool) {
	rest, ok := strings.CutPrefix(path, optionsPath)
	if !ok {
		return p, false
	}
	p.move = -1
	if p.option, p.rest, ok = cutIndex(rest); !ok || p.option >= len(j.Options) {
		return p, false
	}
	if rest, ok := strings.CutPrefix(p.rest, ".moves"); ok {
		if k, after, ok := cutIndex(rest); ok && k < MovesMost {
			p.move, p.rest = k, after
		}
	}
	return p, true
}

// addMove adds what only options have. Not mine, the path is one of the table's.
func (j *Job) addMove(path string) (why string, mine bool) {
	if path == optionsPath {
		if n := len(j.Options); n >= OptionsMost {
			return full(n), true
		}
		j.Options = append(j.Options, Option{Name: j.freeName(optionName(len(j.Options)))})
		return "", true
	}
	p, ok := j.placeOf(path)
	if !ok {
		return "", false
	}
	o := &j.Options[p.option]
	moves := len(o.Moves)
	kind, isKind := strings.CutPrefix(p.rest, ".moves")
	switch {
	case p.move < 0 && p.rest == ".copy":
		if n := len(j.Options); n >= OptionsMost {
			return full(n), true
		}
		twin := Option{j.freeName(cutLine(j.OptionName(p.option) + " (copy)")), cloneMoves(o.Moves)}
		j.Options = geom.Insert(j.Options, p.option+1, twin)
	case p.move < 0 && p.rest == ".keep":
		return j.keep(p.option), true
	case p.move < 0 && isKind || p.move >= 0 && p.move < moves && p.rest == ".copy":
		if moves >= MovesMost {
			return full(moves), true
		}
		if p.move >= 0 {
			o.Moves = geom.Insert(o.Moves, p.move+1, cloneMoves(o.Moves[p.move : p.move+1])[0])
			break
		}
		k := trim.Kind(strings.TrimPrefix(kind, "."))
		if kind == "" {
			k = trim.Plane
		}
		if trim.SpecOf(k) == nil {
			return (&node{kind: textNode, text: string(k)}).said() + " is not " + among(kindChoices(), string(k)), true
		}
		o.Moves = append(o.Moves, j.NewMove(k))
	default:
		return "", false
	}
	return "", true
}

// cutLine keeps a text to the most letters a line may have.
func cutLine(s string) string {
	if r := []rune(s); len(r) > lineMost {
		return string(r[:lineMost])
	}
	return s
}

// freeName gives the name, numbered where another option has it.
func (j *Job) freeName(name string) string {
	taken := func(s string) bool {
		for i := range j.Options {
			if strings.EqualFold(j.OptionName(i), s) {
				return true
			}
		}
		return false
	}
	free := name
	for n := 2; taken(free); n++ {
		free = name + " " + strconv.Itoa(n)
	}
	return cutLine(free)
}

// putMove sets what only options have: a place in a list, a whole move.
func (j *Job) putMove(path, text string) (faults Faults, mine bool) {
	if path == MadePath(len(j.Made)) {
		return j.doNow(path, text), true
	}
	p, ok := j.placeOf(path)
	if !ok {
		return nil, false
	}
	refuse := func(why string) (Faults, bool) { return Faults{{Path: path, Want: why}}, true }
	moves := &j.Options[p.option].Moves
	switch {
	case p.rest == ".place" && p.move < len(*moves):
		at, n := p.option, len(j.Options)
		if p.move >= 0 {
			at, n = p.move, len(*moves)
		}
		to, err := strconv.Atoi(strings.TrimSpace(text))
		if err != nil || to < 1 || to > n {
			return refuse("a place between 1 and " + strconv.Itoa(n) + " is wanted")
		}
		if p.move >= 0 {
			*moves = shifted(*moves, at, to-1)
		} else {
			j.Options = shifted(j.Options, at, to-1)
		}
	case p.rest == "" && p.move >= 0 && p.move <= len(*moves):
		if p.move == MovesMost {
			return refuse(full(p.move))
		}
		m, faults := takeMove(text, path)
		if len(faults) > 0 {
			return faults, true
		}
		if p.move == len(*moves) {
			*moves = append(*moves, m)
		}
		(*moves)[p.move] = m
	default:
		return nil, false
	}
	return nil, true
}

// doNow does a move for keeps that stood in no option.
func (j *Job) doNow(path, text string) Faults {
	m, faults := takeMove(text, path)
	if len(faults) > 0 {
		return faults
	}
	inside := j.filed()
	why := inside.cannot(&m)
	if m.Off {
		why = madeStays
	}
	if why != "" {
		return Faults{{Path: path, Want: why}}
	}
	j.Made = append(j.Made, m)
	return nil
}

// shifted takes the item at one place of a list to another.
func shifted[T any](all []T, from, to int) []T {
	x := all[from]
	return geom.Insert(slices.Delete(all, from, from+1), to, x)
}

// Option gives the i-th option as a form shows it: its name, then its moves, each a
// group of the fields its kind has. Adds has one action for each kind of move.
func (fm Form) Option(job *Job, i int) Section {
	file := job.filed()
	f := find(optionsPath)
	s := Section{Name: OptionPath(i), Title: job.OptionName(i), Help: f.help}
	own := Group{Remove: OptionPath(i)}
	for _, p := range f.parts {
		fm.show(&s, &own, p, &file, join(OptionPath(i), p.name), i)
	}
	s.Groups = append([]Group{own}, s.Groups...)
	s.Adds = nil
	if len(file.Options[i].Moves) < MovesMost {
		for _, c := range kindChoices() {
			s.Adds = append(s.Adds, Action{AddMovePath(i, trim.Kind(c.Value)), c.Label})
		}
	}
	return s
}

// Made gives what was done for keeps as a form shows it: only notes can be changed.
func (fm Form) Made(job *Job) Section {
	file := job.filed()
	f := find(madePath)
	s := Section{Name: madePath, Title: f.label, Help: f.help}
	var own Group
	fm.show(&s, &own, f, &file, madePath, 0)
	s.Adds = nil
	for g := range s.Groups {
		s.Groups[g].Remove = ""
		for k := range s.Groups[g].Fields {
			if c := &s.Groups[g].Fields[k]; !strings.HasSuffix(c.Path, ".note") {
				lock(c)
			}
		}
	}
	return s
}

// lock makes a field one that is only read.
func lock(c *Field) {
	if c.Kind == Pick {
		for _, x := range c.Choices {
			if x.Value == c.Value {
				c.Value = x.Label
			}
		}
	}
	if c.Kind != Table {
		c.Kind, c.Choices = Words, nil
	}
	for r := range c.Rows {
		c.Rows[r].Remove = ""
		for k := range c.Rows[r].Cells {
			lock(&c.Rows[r].Cells[k])
		}
	}
}
