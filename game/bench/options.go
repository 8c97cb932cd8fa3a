package bench

import (
	"errors"
	"leafwright/game/words"
	"slices"
	"strconv"
	"strings"

	"leafwright/game"
	"leafwright/geom/trim"
)

// Shown is the door that is shown: an option's by its place in the job, or one of
// the two below.
type Shown int

// The doors that are no option's.
const (
	AsFound  Shown = -2
	AsStands Shown = -1 // as found, and what was done for keeps
)

// optionList is the options' path.
const optionList = "options"

// optionOf gives the option a path lies in, and the rest of the path behind it.
func optionOf(path string) (i int, rest string, is bool) {
	path, is = strings.CutPrefix(path, optionList+"[")
	number, rest, closed := strings.Cut(path, "]")
	i, err := strconv.Atoi(number)
	return i, rest, is && closed && err == nil && i >= 0
}

// Shown tells which door is shown.
func (s *State) Shown() Shown { return s.look.Option }

// ShowOption shows another door.
func (s *State) ShowOption(which Shown) {
	if which = s.within(which); which == s.look.Option {
		return
	}
	s.alter(func(l *Look) {
		l.Option = which
	})
	s.measure()
}

// within gives the door as it stands for an option that is not there.
func (s *State) within(which Shown) Shown {
	if which < AsFound || int(which) >= len(s.Job().Options) {
		return AsStands
	}
	return which
}

// Tried is the door shown, with what is previewed; it must not be changed and stays
// good until something changes.
func (s *State) Tried() *game.Tried { return &s.tried }

// Steps tells what came of each move of the option shown, or of what was done for
// keeps where the door is shown as it stands.
func (s *State) Steps() []trim.Step { return s.stood.Steps }

// tryShown works the door shown out.
func (s *State) tryShown() game.Tried {
	job := s.Job()
	switch s.look.Option {
	case AsFound:
		return job.Found()
	case AsStands:
		return job.Stands()
	}
	return job.Try(int(s.look.Option))
}

// OptionForm gives an option as a form shows it, and MadeForm what was done for keeps.
func (s *State) OptionForm(i int) game.Section {
	return game.Form{Units: s.look.unit()}.Option(s.Job(), i)
}

func (s *State) MadeForm() game.Section {
	return game.Form{Units: s.look.unit()}.Made(s.Job())
}

// Keeps tells whether tools work for keeps, on the door itself, and not on an option.
func (s *State) Keeps() bool { return s.look.Keeps }

// SetKeeps chooses that; for keeps the door is shown as it stands.
func (s *State) SetKeeps(on bool) {
	s.alter(func(l *Look) {
		l.Keeps = on
	})
	if on {
		s.ShowOption(AsStands)
	}
}

// errNoOption says that no option is shown.
var errNoOption = errors.New("no option is shown: show the one whose next move is to be made")

// Keepable gives the move of the option shown that is next to be done for keeps.
func (s *State) Keepable() (k int, why error) {
	if s.look.Option < 0 {
		return -1, errNoOption
	}
	k, err := s.Job().Keepable(int(s.look.Option))
	return k, s.said(err)
}

// Keep does that move for keeps: it can then be neither changed nor undone.
func (s *State) Keep() error {
	if _, err := s.Keepable(); err != nil {
		return err
	}
	return s.said(s.Add(game.KeepPath(int(s.look.Option))))
}

// said gives an error without the paths of the fields in it.
func (s *State) said(err error) error {
	faults, ok := err.(game.Faults)
	if !ok {
		return err
	}
	lines := make([]string, len(faults))
	for i, f := range faults {
		f.Path = s.label(f.Path)
		lines[i] = words.Capital(f.Error()) + "."
	}
	return errors.New(strings.Join(lines, "\n"))
}

// UndoStops says why there is no going back further, empty where there is, or where
// nothing was done.
func (s *State) UndoStops() string {
	if s.past.at == 0 || s.past.canUndo() {
		return ""
	}
	if s.past.steps[s.past.at].act == gap {
		return "The steps before this could not be read back, and something was cut for keeps among them."
	}
	return "That was cut for keeps: a cut is a cut, and cannot be undone."
}

// reshow keeps the option shown in view while options come, go and change places,
// and goes to a new one.
func (s *State) reshow(c change) {
	shown := int(s.look.Option)
	i, rest, in := optionOf(c.path)
	switch {
	case c.adds() || c.act == add && c.path == optionList:
		shown = len(s.Job().Options) - 1
	case !in:
		return
	case c.act == add && rest == ".copy":
		shown = i + 1
	case c.act == add && !c.keeps():
		shown = i
	case c.act == remove && rest == "":
		if shown == i {
			shown = int(AsStands)
		} else if shown > i {
			shown--
		}
	case c.act == set && rest == ".place":
		shown = replaced(shown, i, c.text)
	}
	if now := s.within(Shown(shown)); now != s.look.Option {
		s.look.Option = now
		s.looks++
	}
}

// replaced gives where the option at place k is once the i-th was put at a place
// counted from 1.
func replaced(k, i int, place string) int {
	to, err := strconv.Atoi(strings.TrimSpace(place))
	to--
	switch {
	case err != nil || k < 0:
		return k
	case k == i:
		return to
	case k > i && k <= to:
		return k - 1
	case k < i && k >= to:
		return k + 1
	}
	return k
}

// shifted gives the list whose items a change may have given other places, so that
// what stood typed in their fields now stands by others; "" where there is none.
func (c *change) shifted() string {
	path := c.path
	if c.act == set {
		at, is := strings.CutSuffix(path, ".place")
		if !is {
			return ""
		}
		path = at
	}
	if i, rest, in := optionOf(path); in {
		switch {
		case c.keeps():
			return game.OptionPath(i) + ".moves"
		case c.act == add && strings.HasPrefix(rest, ".moves.") || rest == ".moves":
			return "" // behind all others
		}
	}
	if i := strings.LastIndexByte(path, '['); i > 0 {
		return path[:i]
	}
	return path
}

// joins tells whether two moves are strokes of the plane over the same place, so that
// they are one with the amounts added up.
func joins(a, b *trim.Move) bool {
	return a.Kind == trim.Plane && b.Kind == trim.Plane && !a.Off && !b.Off && a.Note == "" && b.Note == "" &&
		a.Edge == b.Edge && a.From == b.From && a.To == b.To
}

// joined gives the two strokes as one, and whether that is a move that can be.
func joined(a, b trim.Move) (trim.Move, bool) {
	a.First += b.First
	a.Last += b.Last
	return a, len(a.Check()) == 0
}

// Joined gives a stroke of the plane and a second one like it as one; not ok where they
// are not alike, or one move cannot be both.
func Joined(a, b trim.Move) (is trim.Move, ok bool) {
	if !joins(&a, &b) {
		return b, false
	}
	return joined(a, b)
}

// attempted gives the job with a move in a new option of its own.
func attempted(job *game.Job, text string) (game.Job, error) {
	var form game.Form
	i := len(job.Options)
	with, err := form.Add(*job, optionList)
	if err != nil {
		return *job, err
	}
	if with, err = form.Set(with, game.MovePath(i, 0), text); err != nil {
		return *job, err
	}
	return with, nil
}

// cutForKeeps gives the job with a move done on the door as it stands. A stroke like
// the one before takes more off by the same move, unless something was read between
// the two.
func cutForKeeps(job *game.Job, text string) (game.Job, error) {
	var form game.Form
	n := len(job.Made)
	with, err := form.Set(*job, game.MadePath(n), text)
	if err != nil {
		return *job, err
	}
	if n > 0 && joins(&with.Made[n-1], &with.Made[n]) && !readAfter(job, n) {
		if m, ok := joined(with.Made[n-1], with.Made[n]); ok {
			without := job.Clone()
			without.Made = without.Made[:n-1]
			if one, err := form.Set(without, game.MadePath(n-1), game.MoveText(m)); err == nil {
				return one, nil
			}
		}
	}
	return with, nil
}

// readAfter tells whether something was read once n moves were made.
func readAfter(job *game.Job, n int) bool {
	return slices.ContainsFunc(job.Readings, func(r game.Reading) bool { return r.After >= n })
}
