// Package bench is what lies between a page and the job on it: the job with its
// undo, the door shown and the moves tried on it, what was typed and could not be
// taken, how the drawing is looked at, what pointer and keys do to it, and the shelf
// that jobs are kept on. It knows no screen, no clock and no chance; a page tells it
// what happened and asks what to show.
package bench

import (
	"strings"

	"leafwright/game"
	"leafwright/game/draw"
	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
)

// State is everything a page shows. Make one with [New].
type State struct {
	past   history
	drafts map[string]Draft
	look   Look

	jobs, looks int

	stood   game.Tried // the door shown
	tried   game.Tried // with what is previewed, as in the season
	preview preview
	season  season
	was     door.Door // as found, in the season
	base    base

	fit     fit.Fit
	found   []judge.Finding
	lacks   error          // what keeps the readings from making a door
	sure    *game.Sureness // how well the findings are known, once weighed
	weighed bool
	swung   bool // the swing too
	card    card
	wanted  judge.Wanted // what the door shown is held against
	nothing judge.Wanted // no limits at all
	advised bool         // the prompt asked now told most when it was come to

	scene  draw.Scene
	list   draw.List
	sheet  sheet
	under  draw.Target
	hold   hold
	finger draw.Pt
}

// Draft is what stands typed in a field and could not be taken, and why.
type Draft struct {
	Text string
	Why  string
}

// New puts a job on an empty bench. The job must be sound, as all jobs given by
// package game are.
func New(job game.Job) *State {
	s := &State{past: startingWith(job), drafts: map[string]Draft{}, look: firstLook, sheet: sheet{w: 800, h: 600}}
	s.measure()
	s.lookAfresh()
	return s
}

// Job is the job as it stands; it must not be changed.
func (s *State) Job() *game.Job { return s.past.now() }

// Changes counts the changes to the job or what is typed in its fields, and those
// to how it is looked at, so that a page can tell what to show anew.
func (s *State) Changes() (job, look int) { return s.jobs, s.looks }

// Draft gives what stands typed in a field and was not taken.
func (s *State) Draft(path string) (Draft, bool) {
	d, ok := s.drafts[path]
	return d, ok
}

// Drafts tells how many fields hold what could not be taken.
func (s *State) Drafts() int { return len(s.drafts) }

// Open puts another job on the bench; the one before can be had back by undo.
func (s *State) Open(job game.Job) {
	s.past.do(change{act: put}, job)
	s.drafts = map[string]Draft{}
	s.look.Option = AsStands
	s.measure()
	s.lookAfresh()
}

// Type takes what now stands in a field. What cannot be taken stays as a draft,
// with the reason, and the job is as it was before the typing.
func (s *State) Type(path, text string) {
	s.stay()
	c := change{set, path, text, s.look.unit()}
	job, err := c.apply(s.past.before(path))
	if err != nil {
		s.drafts[path] = Draft{text, s.why(path, err)}
		s.past.untype(path) // 900 on the way to 9000 was never meant
		s.measure()
		return
	}
	delete(s.drafts, path)
	s.dropDrafts(c.shifted())
	s.past.do(c, job)
	s.reshow(c)
	s.measure()
}

// dropDrafts drops what stands typed in the fields of a list, if there is one.
func (s *State) dropDrafts(list string) {
	for path := range s.drafts {
		if list != "" && strings.HasPrefix(path, list) {
			delete(s.drafts, path)
		}
	}
}

// why says what is wrong with what was typed in a field; faults elsewhere are
// named by their fields' labels.
func (s *State) why(path string, err error) string {
	faults, ok := err.(game.Faults)
	if !ok {
		return err.Error()
	}
	var lines []string
	for _, f := range faults {
		if f.Path == path {
			f.Path = ""
		} else if label := s.label(f.Path); label != "" {
			f.Path = label
		}
		lines = append(lines, f.Error())
	}
	return strings.Join(lines, "\n")
}

// label gives a field's label, with its item's where it has one.
func (s *State) label(path string) string {
	for _, section := range s.Sections() {
		for _, g := range section.Groups {
			for _, f := range g.Fields {
				if f.Path == path && g.Title != "" {
					return g.Title + ", " + f.Label
				} else if f.Path == path {
					return f.Label
				}
				for _, r := range f.Rows {
					for _, c := range r.Cells {
						if c.Path == path {
							return c.Label
						}
					}
				}
			}
		}
	}
	return ""
}

// Typing tells whether the field is the one being typed in.
func (s *State) Typing(path string) bool {
	_, draft := s.drafts[path]
	return draft || s.past.isTyping(path)
}

// Add adds a row or an item at the path, and Remove takes one out. What cannot be
// done changes nothing and is told.
func (s *State) Add(path string) error    { return s.rearrange(change{act: add, path: path}) }
func (s *State) Remove(path string) error { return s.rearrange(change{act: remove, path: path}) }

func (s *State) rearrange(c change) error {
	c.unit = s.look.unit()
	job, err := c.apply(s.Job())
	if err != nil {
		return err
	}
	s.dropDrafts(c.shifted())
	s.past.typing = false
	s.past.do(c, job)
	s.past.typing = false
	s.reshow(c)
	s.measure()
	return nil
}

// CanAdd tells whether there is room for another row or item at the path.
func (s *State) CanAdd(path string) bool {
	_, err := change{act: add, path: path}.apply(s.Job())
	return err == nil
}

// Sections gives the job's fields as a form shows them.
func (s *State) Sections() []game.Section {
	all := game.Form{Units: s.look.unit()}.Sections(*s.Job())
	for i := range all {
		if all[i].Name == "readings" {
			s.nameReadings(all[i].Groups)
		}
	}
	return all
}

// Settle ends the typing in a field: the next change there is a step of its own.
func (s *State) Settle() { s.past.typing = false }

// CanUndo and CanRedo tell whether there is a step to go back or forward to.
func (s *State) CanUndo() bool { return s.past.canUndo() }
func (s *State) CanRedo() bool { return s.past.canRedo() }

// Undo takes back the last step, if there is one, and what stood typed in the
// field it changed.
func (s *State) Undo() {
	if s.CanUndo() {
		s.moved(s.past.undo())
	}
}

// Redo does again what was undone last.
func (s *State) Redo() {
	if s.CanRedo() {
		s.moved(s.past.redo())
	}
}

func (s *State) moved(c change) {
	delete(s.drafts, c.path)
	if i, _, in := optionOf(c.path); in || c.adds() {
		if c.adds() {
			i = len(s.Job().Options) - 1
		}
		if i < len(s.Job().Options) { // to see what has changed
			s.look.Option = Shown(i)
			s.looks++
		}
	}
	s.measure()
	if c.path == "" {
		s.drafts = map[string]Draft{}
		s.lookAfresh()
	}
	if !strings.HasPrefix(c.path, optionList) {
		s.follow(c.path)
	}
}

// measure works the job out anew.
func (s *State) measure() {
	job := s.Job()
	s.look.Option = s.within(s.look.Option)
	s.preview = preview{}
	s.stood = s.tryShown()
	s.hang(s.stood)
	s.found, s.sure, s.weighed, s.swung = nil, nil, false, false
	_, _, s.lacks = job.Shapes()
	s.find()
	s.jobs++
}
