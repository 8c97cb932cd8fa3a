package game

import (
	"cmp"
	"math"
	"strconv"

	"leafwright/game/measure"
	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/survey"
)

// Prompt is one line of the measuring card: a reading to take, or one taken.
type Prompt struct {
	// Path takes what is typed, by [Form.Set] or [Form.SetReading]; with .at, .from
	// or .to behind it, or instead of its .value, where it is read. It stays the same
	// while the job is measured.
	Path  string
	Stage Stage
	// Reading says what to read and where; with what was typed, once it is. Words
	// for it come from package words, by Reading.Survey.
	Reading Reading
	// Index is the reading's place in the job, −1 while it was not read.
	Index   int
	Picture Picture
	Unit    string // beside the field, mm or ft in; empty where there is no value
	Value   string // as typed, or empty
	Min     float64
	Max     float64 // mm
	// Judged is what the survey makes of the reading, nil while it has no say. A
	// suspect or doubted one is not to be averaged away: say it beside the field.
	Judged *survey.Judged
	Fault  string // what is wrong with it beside, or empty
}

// Stage is when on the card a reading is taken.
type Stage int

// The stages, in order.
const (
	Least   Stage = iota // without these there is no door
	Next                 // the one reading that would now tell most
	Sharpen              // what makes the shapes sure
	Members              // what the leaf is made of
	Offered              // with the leaf hung or offered up
	Others               // read beside the card
)

// String names the stage as a heading.
func (s Stage) String() string {
	return [...]string{"To begin with", "What tells most now", "To be sure", "Stiles and rails", "With the leaf offered up", "Read beside"}[s]
}

// cardPath starts the paths of the card's prompts.
const cardPath = "card."

// Survey gives the reading as the survey takes it, hinge 0 the top one.
func (r Reading) Survey() survey.Reading { return r.surveyed() }

// slot is a reading the card asks for.
type slot struct {
	id       string
	stage    Stage
	template Reading
}

// slots gives the card of a job, without what was read.
func (j *Job) slots(u measure.Unit) []slot {
	hinges := j.HingesAsked()
	templates := append(survey.Card(j.OpeningWidth, j.OpeningHeight, hinges), offered(j)...)
	templates = append(templates, survey.MemberReadings(j.Anatomy.HangingStile > 0, len(j.Anatomy.Rails))...)
	counts := map[survey.Reading]int{}
	out := make([]slot, 0, len(templates))
	begun := map[survey.Kind]bool{}
	for _, r := range templates {
		like := survey.Reading{Kind: r.Kind, Side: r.Side, Hinge: r.Hinge, Rail: r.Rail, Angle: r.Angle}
		counts[like]++
		s := slot{id: slotID(r, counts[like]), stage: Sharpen, template: asked(r, u)}
		if isHung(r.Kind) { // of the door as it stands: a cut opens the gaps' prompts anew
			s.template.After = len(j.Made)
		}
		switch r.Kind {
		case survey.OpeningWidth, survey.LeafWidth:
			if counts[like] == 2 { // the middle one of three
				s.stage = Least
			}
		case survey.OpeningHeight, survey.LeafHeight, survey.LeafThickness:
			if !begun[r.Kind] {
				s.stage = Least
			}
		case survey.HingeOnLeaf:
			s.stage = Least
		case survey.GapRead, survey.StopGap:
			s.stage = Offered
		case survey.StileWidth, survey.RailHeight, survey.RailWidth:
			s.stage = Members
		}
		begun[r.Kind] = true
		out = append(out, s)
	}
	return out
}

// offered is what feelers tell once the leaf is hung or offered up.
func offered(j *Job) (out []survey.Reading) {
	const in = 100
	w, h := j.Door.Leaf.Width, j.LeafHeight
	for _, s := range []survey.Side{survey.Latch, survey.Hinge} {
		out = append(out, survey.Reading{Kind: survey.GapRead, Side: s, At: in}, survey.Reading{Kind: survey.GapRead, Side: s, At: h / 2},
			survey.Reading{Kind: survey.GapRead, Side: s, At: h - in})
	}
	for _, s := range []survey.Side{survey.Head, survey.Floor} {
		out = append(out, survey.Reading{Kind: survey.GapRead, Side: s, At: in}, survey.Reading{Kind: survey.GapRead, Side: s, At: w - in})
	}
	return append(out, survey.Reading{Kind: survey.StopGap, Side: survey.Latch, At: in}, survey.Reading{Kind: survey.StopGap, Side: survey.Latch, At: h - in})
}

func slotID(r survey.Reading, n int) string {
	id := string(r.Kind)
	if r.Side != "" {
		id += "." + string(r.Side)
	}
	if survey.SpecOf(r.Kind).Needs&survey.NeedHinge != 0 {
		id += "." + ordinal(r.Hinge)
	}
	if survey.SpecOf(r.Kind).Needs&survey.NeedRail != 0 {
		id += "." + ordinal(r.Rail)
	}
	if r.Angle != 0 {
		id += "." + door.Say(math.Round(r.Angle.Degrees()))
	}
	return id + "." + strconv.Itoa(n)
}

// asked gives a template as a person is asked for it: its places round figures.
func asked(t survey.Reading, u measure.Unit) Reading {
	spec := survey.SpecOf(t.Kind)
	r := Reading{Kind: t.Kind, Side: t.Side, Angle: t.Angle}
	if spec.Needs&survey.NeedHinge != 0 {
		r.Hinge = t.Hinge + 1
	}
	if spec.Needs&survey.NeedRail != 0 {
		r.Rail = t.Rail + 1
	}
	step := 50.0
	if u == measure.Inch {
		step = 2 * measure.PerInch
	}
	round := func(mm float64) measure.Length { return asTyped(max(1, math.Round(mm/step))*step, u) }
	if spec.Needs&survey.NeedAt != 0 {
		r.At = round(t.At)
	}
	if spec.Needs&survey.NeedSpan != 0 {
		r.From, r.To = round(t.From), round(t.To)
	}
	return r
}

// Card gives the job's measuring card in the order to walk through it: the least
// set, then the reading that tells most now, then all else, then what the leaf is made
// of, then what feelers tell with the leaf offered up, and last what was read beside the card. sure tells which
// reading that is, by [Job.Sure]; nil when nothing does.
func (fm Form) Card(job Job, sure *Sureness) []Prompt {
	slots := job.slots(fm.Units)
	taken := job.match(slots)
	judged := job.judged()
	var stages [Others + 1][]Prompt
	on := make([]bool, len(job.Readings))
	next := -1
	if sure != nil && sure.HasNext && !sure.Next.Again {
		next = free(slots, taken, sure.Next.Reading, 0.25*job.OpeningHeight)
	}
	for k, s := range slots {
		stage := s.stage
		if k == next {
			stage = Next
		}
		p := fm.prompt(&job, s.template, taken[k], judged)
		p.Path, p.Stage = cardPath+s.id, stage
		if taken[k] >= 0 {
			on[taken[k]] = true
		}
		stages[stage] = append(stages[stage], p)
	}
	for i := range job.Readings {
		if !on[i] {
			p := fm.prompt(&job, job.Readings[i], i, judged)
			p.Path, p.Stage = readingsPath+index(i)+".value", Others
			stages[Others] = append(stages[Others], p)
		}
	}
	var out []Prompt
	for _, s := range stages {
		out = append(out, s...)
	}
	return out
}

// prompt fills one line of the card.
func (fm Form) prompt(j *Job, r Reading, i int, judged map[int]*survey.Judged) Prompt {
	p := Prompt{Reading: r, Index: i}
	if i >= 0 {
		p.Reading = j.Readings[i]
		p.Judged = judged[i]
		p.Value = ShowTyped(p.Reading.Value, fm.Units)
	}
	spec := survey.SpecOf(p.Reading.Kind)
	if spec.Needs&survey.NoValue == 0 {
		p.Unit, p.Min, p.Max = fm.Units.String(), spec.Allowed.Lo, spec.Allowed.Hi
	}
	p.Picture = picture(&p.Reading, j)
	if j.Survey != nil && i >= 0 {
		for _, f := range append(j.surveyFaults(), j.MemberFaults()...) {
			if within(f.Path, readingsPath+index(i)) {
				f.Path = ""
				p.Fault = f.Error()
			}
		}
	}
	return p
}

// judged gives what the survey makes of each reading that has a say, by its place.
func (j *Job) judged() map[int]*survey.Judged {
	out := map[int]*survey.Judged{}
	if j.Survey == nil {
		return out
	}
	for k, i := range j.Counted() {
		if k < len(j.Survey.Readings) {
			told := j.slipped(i, j.Survey.Readings[k])
			out[i] = &told
		}
	}
	return out
}

// match finds, for each slot, the reading that was taken for it, −1 where none was:
// the nearest of its kind that is nearer than a quarter of the door's size.
func (j *Job) match(slots []slot) []int {
	type pair struct {
		off           float64
		slot, reading int
	}
	var pairs []pair
	for k := range slots {
		for i := range j.Readings {
			if off := slots[k].template.apart(&j.Readings[i]); off < 0.25*j.OpeningHeight {
				pairs = append(pairs, pair{off, k, i})
			}
		}
	}
	geom.Order(pairs, func(a, b pair) int { return cmp.Compare(a.off, b.off) })
	taken, used := make([]int, len(slots)), make([]bool, len(j.Readings))
	for k := range taken {
		taken[k] = -1
	}
	for _, p := range pairs {
		if taken[p.slot] < 0 && !used[p.reading] {
			taken[p.slot], used[p.reading] = p.reading, true
		}
	}
	return taken
}

// apart gives how far in mm two readings are from being of one thing, infinite when
// they are of different ones.
func (r *Reading) apart(q *Reading) float64 {
	const degreesApart = 15 * geom.Degree
	if r.Kind != q.Kind || r.Side != q.Side || r.Hinge != q.Hinge || r.Rail != q.Rail || r.After != q.After || math.Abs(float64(r.Angle-q.Angle)) > float64(degreesApart) {
		return math.Inf(1)
	}
	if given(r.From) { // of one line, wherever on it the level lay
		return 0
	}
	return math.Abs(r.At.MM - q.At.MM)
}

// free gives the slot, not taken yet, of a reading near to the one given, or −1.
func free(slots []slot, taken []int, want survey.Reading, near float64) int {
	r := asked(want, measure.MM)
	best := -1
	for k := range slots {
		r.After = slots[k].template.After
		if off := slots[k].template.apart(&r); taken[k] < 0 && off < near {
			best, near = k, off
		}
	}
	return best
}

// SetReading gives the job with what was typed at a prompt of its card.
func (fm Form) SetReading(job Job, p Prompt, text string) (Job, error) {
	return fm.Set(job, p.Path, text)
}

// AddReading gives the job with another reading of the kind, not read yet, and its
// place among the readings.
func (fm Form) AddReading(job Job, kind survey.Kind) (Job, int, error) {
	if !job.IsSurveyed() {
		return job, 0, measureFirst(readingsPath)
	}
	if survey.SpecOf(kind) == nil {
		return job, 0, Faults{{Path: readingsPath, Want: strconv.Quote(string(kind)) + " is not " + among(readingKinds(), string(kind))}}
	}
	file := job.filed()
	r := file.fresh(kind, fm.Units)
	r.Off = survey.SpecOf(kind).Needs&survey.NoValue == 0
	file.Readings = append(file.Readings, r)
	out, err := fm.accept(job, file)
	return out, len(out.Readings) - 1, err
}

// RemoveReading gives the job without a reading.
func (fm Form) RemoveReading(job Job, i int) (Job, error) {
	return fm.Remove(job, readingsPath+index(i))
}

func measureFirst(path string) Faults {
	return Faults{{Path: path, Want: "this door's shapes were given by hand: measure it anew first"}}
}

// slotOf gives the card's slots and the place among them of the one with that id,
// or what is wrong with the path that names it.
func (fm Form) slotOf(job *Job, id, path string) (slots []slot, k int, err error) {
	slots = job.slots(fm.Units)
	for k < len(slots) && slots[k].id != id {
		k++
	}
	if k == len(slots) {
		return nil, 0, Faults{{Path: path, Want: noField}}
	}
	if !job.IsSurveyed() {
		return nil, 0, measureFirst(path)
	}
	return slots, k, nil
}

// setPrompt takes what was typed at the prompt of that slot.
func (fm Form) setPrompt(job Job, id, text string) (Job, error) {
	if id == hingesID {
		return fm.setHinges(job, text)
	}
	if slot, part, is := cutPlace(id); is {
		return fm.setPlace(job, slot, part, text)
	}
	path := cardPath + id
	slots, k, err := fm.slotOf(&job, id, path)
	if err != nil {
		return job, err
	}
	file := job.filed()
	i := job.match(slots)[k]
	var was measure.Length
	if i >= 0 {
		was = file.Readings[i].Value
	}
	value := was
	if why := (verbatim{&value}).take(text, fm.Units); why != "" {
		return job, Faults{{Path: path, Want: why}}
	}
	switch {
	case i < 0 && !given(value):
		return job, nil
	case i < 0:
		i = len(file.Readings)
		file.Readings = append(file.Readings, slots[k].template)
	case !given(value) && file.Readings[i].plain(&slots[k].template):
		file.Readings = append(file.Readings[:i:i], file.Readings[i+1:]...)
		return fm.accept(job, file)
	}
	r := &file.Readings[i]
	if r.Value != value || value == (measure.Length{}) {
		r.Value, r.Off = value, !given(value)
	}
	out, err := fm.accept(job, file)
	if faults, ok := err.(Faults); ok { // the page knows the prompt, not the reading
		for n := range faults {
			if faults[n].Path == readingsPath+index(i)+".value" {
				faults[n].Path = path
			}
		}
	}
	return out, err
}

// plain tells whether a reading holds nothing beside its value that the template
// does not.
func (r *Reading) plain(template *Reading) bool {
	q := *r
	q.Value, q.Off = template.Value, template.Off
	return q == *template
}

// fresh gives a reading of the kind at a place the card would ask for.
func (j *Job) fresh(kind survey.Kind, u measure.Unit) Reading {
	slots := j.slots(u)
	taken := j.match(slots)
	first := -1
	for k := range slots {
		if slots[k].template.Kind != kind {
			continue
		}
		if taken[k] < 0 {
			return slots[k].template
		}
		if first < 0 {
			first = k
		}
	}
	if first >= 0 {
		return slots[first].template
	}
	t := survey.Reading{Kind: kind, At: j.LeafHeight / 2, From: 50, To: j.LeafHeight - 50}
	if spec := survey.SpecOf(kind); len(spec.Sides) > 0 {
		t.Side = spec.Sides[0]
	}
	return asked(t, u)
}

// next gives the first reading of the card that was not taken, not read yet.
func (j *Job) next(u measure.Unit) Reading {
	slots := j.slots(u)
	taken := j.match(slots)
	for _, least := range []bool{true, false} {
		for k := range slots {
			if taken[k] < 0 && (slots[k].stage == Least) == least {
				r := slots[k].template
				r.Off = true
				return r
			}
		}
	}
	r := j.fresh(survey.OpeningWidth, u)
	r.Off = true
	return r
}
