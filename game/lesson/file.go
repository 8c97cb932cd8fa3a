package lesson

import (
	"strconv"

	"leafwright/game"
	"leafwright/geom/door"
	"leafwright/geom/fault"
	"leafwright/geom/survey"
	"leafwright/geom/trim"
)

// A lesson file is written as a job file is:
//
//	{
//	  "leafwright_lesson": 1,
//	  "title": "The door that springs open",
//	  "before": "Read this first.",
//	  "door": {"seed": 4, "old": 0.3},          or "job": {a job file}
//	  "faults": [{"kind": "gains deep", "amount": 2}],
//	                                             or "draw": {"kinds": ["gains deep"], "seed": 1, "hard": 0.2}
//	                                             or "draw": {"count": 2, "seed": 1, "hard": 0.2}
//	  "in_job": true,                            the job's shapes hold the faults already
//	  "limits": {"timber": 60, "minutes": 90, "readings": 20},
//	  "hints": ["..."],
//	  "after": "What there was to learn."
//	}

// Version is the version of lessons, explanations and sessions that this program reads.
const Version = 1

const versionField = "leafwright_lesson"

// How long texts may be, in letters, and how many hints there may be.
const (
	textMost  = 4000
	hintsMost = 12
	drawnMost = 3 // faults at once
)

var seeds = door.Range{Hi: 1e9}

// Parse reads a lesson file; name is what it is to be called by, its file's name without
// the ending. The error is a [game.Faults] that holds everything that is wrong with it,
// and at last whether the door can be put right.
func Parse(name string, data []byte) (*Lesson, error) {
	var faults game.Faults
	l := &Lesson{Name: name}
	g := game.ReadGroup(data, "", &faults)
	if g == nil {
		return nil, faults
	}
	g.Version(versionField, Version, "a lesson")
	l.Title = g.Text("title", nameMost, false, true)
	l.Before = g.Text("before", textMost, true, false)
	l.After = g.Text("after", textMost, true, false)
	l.Hints = g.Texts("hints", hintsMost, textMost)
	l.readLimits(g.Group("limits"))
	inJob := g.Flag("in_job")
	haveDoor := l.readDoor(g)
	made, draw := l.readFaults(g, inJob)
	g.Done()
	if len(faults) == 0 && haveDoor {
		l.spoil(made, draw, inJob, &faults)
	}
	if len(faults) > 0 {
		return nil, faults
	}
	return l, nil
}

// IsLesson tells whether a file says of itself that it is a lesson.
func IsLesson(data []byte) bool {
	var ignored game.Faults
	return game.ReadGroup(data, "", &ignored).Has(versionField)
}

func (l *Lesson) readLimits(g *game.FileGroup) {
	if g == nil {
		return
	}
	l.Limits.Timber, _ = g.Number("timber", door.Range{Hi: 1e5}, false)
	l.Limits.Minutes, _ = g.Number("minutes", door.Range{Hi: 1e4}, false)
	l.Limits.Readings, _ = g.Whole("readings", door.Range{Hi: 1000}, false)
	g.Done()
}

// readDoor reads the door before its faults.
func (l *Lesson) readDoor(g *game.FileGroup) (sound bool) {
	switch hasJob, hasDoor := g.Has("job"), g.Has("door"); {
	case hasJob && hasDoor:
		g.Ignore("door")
		g.Fault("door", "", "this lesson gives a job: take one of the two out")
		fallthrough
	case hasJob:
		if l.Job, sound = g.Job("job"); !sound {
			return false
		}
		if _, _, err := l.Job.Shapes(); err != nil {
			g.Fault("job", "", "a job with a door that can be hung: "+err.Error())
			return false
		}
		if l.Job.IsSurveyed() {
			g.Fault("job.readings", "", "a lesson's door is given by its shapes, and not by readings")
			return false
		}
		if len(l.Job.Made) > 0 {
			g.Fault("job.made", "", "a lesson's door is one that nothing was done to yet")
			return false
		}
		return true
	case hasDoor:
		d := g.Group("door")
		seed, _ := d.Whole("seed", seeds, true)
		old, _ := d.Number("old", door.Range{Hi: 1}, false)
		d.Done()
		l.Job = soundDoor(uint64(seed), old)
		l.Job.Name = l.Title
		return d != nil
	}
	g.Fault("job", "", `missing; a job, or a door like {"seed": 4, "old": 0.3} in its place, is wanted`)
	return false
}

// drawn is faults to be drawn by a seed.
type drawn struct {
	kinds []fault.Kind
	count int
	seed  uint64
	hard  float64
}

func (l *Lesson) readFaults(g *game.FileGroup, inJob bool) (made []fault.Made, draw *drawn) {
	hasFaults, hasDraw := g.Has("faults"), g.Has("draw")
	switch {
	case hasFaults && hasDraw:
		g.Fault("draw", "", "this lesson gives its faults: take one of the two out")
	case !hasFaults && !hasDraw:
		g.Fault("faults", "", `missing; a list like [{"kind": "leaf wide", "amount": 3}] is wanted, or a group "draw" in its place`)
	case hasDraw && inJob:
		g.Fault("draw", "", "the faults are in the job already: say which there are in faults")
	}
	for _, f := range g.Groups("faults", drawnMost) {
		made = append(made, readMade(f))
	}
	if hasFaults && made == nil {
		g.Fault("faults", "", "an empty list; one fault at least is wanted")
	}
	d := g.Group("draw")
	if d == nil {
		return made, nil
	}
	draw = &drawn{}
	for _, k := range d.Words("kinds", kindWords(), drawnMost) {
		draw.kinds = addKind(draw.kinds, fault.Kind(k))
	}
	draw.count, _ = d.Whole("count", door.Range{Lo: 1, Hi: drawnMost}, !d.Has("kinds"))
	if d.Has("count") && d.Has("kinds") {
		d.Fault("count", "", "the kinds are given: take one of the two out")
	}
	seed, _ := d.Whole("seed", seeds, true)
	draw.seed = uint64(seed)
	draw.hard, _ = d.Number("hard", door.Range{Hi: 1}, false)
	d.Done()
	return made, draw
}

func kindWords() (out []string) {
	for i := range fault.All {
		out = append(out, string(fault.All[i].Kind))
	}
	return out
}

// edgeWords are the sides in a fault, by their places in door.Edge.
func edgeWords() (out []string) {
	for e := range door.Edges {
		out = append(out, string(survey.SideOf(e)))
	}
	return out
}

func readMade(g *game.FileGroup) (m fault.Made) {
	m.Kind = fault.Kind(g.Word("kind", kindWords(), true))
	spec := fault.SpecOf(m.Kind)
	sound := false
	m.Amount, sound = g.Number("amount", door.Range{}.Round(1e6), true)
	words := edgeWords()
	m.Edge = firstEdge(spec)
	if side := g.Word("side", words, false); side != "" {
		for e := range door.Edges {
			if words[e] == side {
				m.Edge = e
			}
		}
	}
	m.Way = readWay(g, spec)
	m.On = trim.Part(g.Word("on", []string{string(trim.OnLeaf), string(trim.OnJamb), string(trim.OnBoth)}, false))
	m.At, _ = g.Number("at", door.Place, false)
	m.Long, _ = g.Number("long", door.Range{Hi: door.Place.Hi}, false)
	g.Done()
	if spec != nil {
		for _, f := range m.Check() {
			name := f.Path
			if name == "edge" {
				name = "side"
			}
			if name != "amount" || sound {
				g.Fault(name, f.Value, f.Want)
			}
		}
	}
	return m
}

// readWay gives the way a fault goes, one that its kind has.
func readWay(g *game.FileGroup, spec *fault.Spec) fault.Way {
	var words []string
	if spec == nil {
		words = []string{string(fault.Upper), string(fault.Lower), string(fault.In), string(fault.Out)}
	} else {
		for _, w := range spec.Ways {
			if w != fault.Whole {
				words = append(words, string(w))
			}
		}
		if words == nil && g.Has("way") {
			g.Fault("way", "", "this kind of fault goes one way only: leave it out")
			g.Ignore("way")
			return fault.Whole
		}
	}
	return fault.Way(g.Word("way", words, false))
}

func firstEdge(s *fault.Spec) door.Edge {
	if s == nil || len(s.Edges) == 0 {
		return 0
	}
	return s.Edges[0]
}

// spoil makes the faults into the door, and proves that they can be cured.
func (l *Lesson) spoil(made []fault.Made, draw *drawn, inJob bool, faults *game.Faults) {
	no := func(path, want string) { *faults = append(*faults, door.Fault{Path: path, Want: want}) }
	before := l.piece()
	where := "faults"
	switch {
	case inJob:
		l.Faults = made
	default:
		if !good(&before, l) {
			no("job", "a door that hangs as wanted before its faults are made, or in_job where its shapes hold them; "+l.firstOut(&before))
			return
		}
		l.Sound = l.Job.Clone()
		var after trim.Piece
		if draw == nil {
			after, l.Faults = fault.Put(before, made), made
		} else {
			where = "draw"
			kinds := draw.kinds
			if draw.count > 0 {
				kinds = fault.Mix(before, nil, draw.count, draw.seed, draw.hard)
			}
			after, l.Faults = fault.Make(before, kinds, draw.seed, draw.hard)
			if len(l.Faults) < max(len(kinds), draw.count) {
				no(where, "only "+strconv.Itoa(len(l.Faults))+" of the faults can be had in this door; try another seed")
			}
		}
		if draw == nil || len(l.Faults) > 0 {
			l.put(after)
		}
	}
	for _, f := range l.Job.Check() {
		no(where, "no door that can be hung comes of them: "+f.Error())
		return
	}
	p := l.piece()
	switch {
	case good(&p, l):
		no(where, "the door hangs as wanted all the same: more of a fault is needed")
	case len(complaints(&p, l)) == 0:
		no(where, "trying the door shows nothing: more of a fault is needed")
	default:
		if l.Cure = cureOf(&p, l); !l.Cure.Found {
			no(where, "nothing was found that puts the door right; less of a fault, or another, is needed")
			return
		}
	}
	if most := l.Limits.Timber; most > 0 && most < l.Cure.Timber {
		no("limits.timber", "at least what the least cure takes off, "+door.Say(l.Cure.Timber)+" cm³")
	}
	if most := l.Limits.Minutes; most > 0 && most < l.Cure.Minutes {
		no("limits.minutes", "at least what the least cure takes, "+door.Say(l.Cure.Minutes))
	}
}

// firstOut says the worst that is out of what is wanted.
func (l *Lesson) firstOut(p *trim.Piece) string {
	bad := out(verdicts(p, l.wanted()))
	if len(bad) == 0 {
		return "trying it shows that something is wrong"
	}
	return "worst is " + door.Say(bad[0].Worst) + " mm on the " + string(survey.SideOf(bad[0].Edge)) + " side"
}
