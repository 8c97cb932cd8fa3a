package bench

import (
	"slices"
	"strconv"
	"strings"

	"leafwright/game"
	"leafwright/game/draw"
	"leafwright/game/measure"
	"leafwright/game/words"
	"leafwright/geom/survey"
)

// Prompt is one line of the measuring card as a page shows it.
type Prompt struct {
	game.Prompt
	Ask    string // how to take the reading, a sentence
	Label  string // what it is of
	Places []PlaceField
	// Misfit says why the reading does not fit the others and what it may have
	// been; empty when it does fit.
	Misfit string
	// LeaveOut is the path that takes true to leave the reading out and false to
	// count it again, empty where nothing was read; Left tells which it is.
	LeaveOut string
	Left     bool
	// Remove is the path of a reading taken beside the card, for [State.Remove].
	Remove string
	// Signed tells that the reading may well be below 0.
	Signed bool
}

// PlaceField is where a reading is taken, as a field to type in.
type PlaceField struct{ Path, Label, Value string }

// Measuring tells whether the job's shapes come from readings, so that there is a
// card to fill.
func (s *State) Measuring() bool { return s.Job().IsSurveyed() }

// card is what the measuring card shows, made anew after every change to the job.
type card struct {
	jobs    int
	prompts []Prompt
}

// Card gives the measuring card in the order to walk through it. It stays good
// until the job changes.
func (s *State) Card() []Prompt {
	if !s.Measuring() {
		return nil
	}
	if s.card.jobs == s.jobs && s.card.prompts != nil {
		return s.card.prompts
	}
	job := s.Job()
	say := s.moveSpeaker()
	misfits := s.misfits(say)
	all := game.Form{Units: s.look.unit()}.Card(*job, s.sure)
	s.card.jobs = s.jobs
	s.card.prompts = s.card.prompts[:0]
	for _, p := range all {
		q := Prompt{Prompt: p, Misfit: misfits[p.Index], Signed: words.Sign(p.Reading.Kind) != ""}
		of := p.Reading.Survey()
		q.Ask, q.Label = say.Ask(of), words.Capital(say.Thing(of))
		if p.Index >= 0 {
			q.Label = s.thing(say, of)
		}
		q.Places = s.places(&q)
		if p.Index >= 0 {
			at := "readings[" + strconv.Itoa(p.Index) + "]"
			q.LeaveOut, q.Left = at+".off", p.Reading.Off && p.Value != ""
			if p.Stage == game.Others {
				q.Remove = at
			}
		}
		s.card.prompts = append(s.card.prompts, q)
	}
	return s.card.prompts
}

// thing names what a reading taken is of, and when it was where that turns on moves made.
func (s *State) thing(say *words.Speaker, of survey.Reading) string {
	name := words.Capital(say.Thing(of))
	if made := len(s.Job().Made); made > 0 && survey.SpecOf(of.Kind).Hung() {
		name += whenRead(of.After, made)
	}
	return name
}

// nameReadings names each reading's group for what the reading is of, and says beside
// what was read which way it is above 0.
func (s *State) nameReadings(all []game.Group) {
	if len(all) == 0 {
		return
	}
	say := s.moveSpeaker()
	for i := range all {
		of := s.Job().Readings[i].Survey()
		all[i].Title = s.thing(say, of)
		for k := range all[i].Fields {
			if f := &all[i].Fields[k]; strings.HasSuffix(f.Path, ".value") {
				f.Help = words.Sign(of.Kind)
			}
		}
	}
}

// places gives the fields of where a reading is taken.
func (s *State) places(p *Prompt) (out []PlaceField) {
	base := strings.TrimSuffix(p.Path, ".value")
	for _, f := range []struct {
		name, label string
		l           measure.Length
	}{{"at", "At", p.Reading.At}, {"from", "From", p.Reading.From}, {"to", "To", p.Reading.To}} {
		if f.l.Text != "" {
			out = append(out, PlaceField{base + "." + f.name, f.label, game.ShowTyped(f.l, s.look.unit())})
		}
	}
	return out
}

// misfits says of each reading that does not fit why not, by its place in the job.
func (s *State) misfits(say *words.Speaker) map[int]string {
	job := s.Job()
	out := map[int]string{}
	for _, m := range job.Misfits() {
		text := s.misfit(say, m)
		for _, i := range m.Readings {
			out[i] = text
		}
	}
	return out
}

func (s *State) misfit(say *words.Speaker, m game.Misfit) string {
	typed := make([]string, len(m.Readings))
	for k, i := range m.Readings {
		typed[k] = game.ShowTyped(s.Job().Readings[i].Value, s.look.unit())
	}
	if len(typed) == 1 {
		return say.Suspect(m.Judged[0], typed[0])
	}
	return say.Doubt(m.Judged, typed)
}

// Note is a sentence about the readings, and the prompt it is about.
type Note struct{ Text, Path string }

// Misfits says which readings could not be taken as typed, but for the one that is asked
// now, and which do not fit the others.
func (s *State) Misfits() (out []Note) {
	if !s.Measuring() {
		return nil
	}
	say, card := s.speaker(), s.Card()
	for k := range card {
		p := &card[k]
		if d, is := s.drafts[p.Path]; is && k != s.Asked() {
			out = append(out, Note{p.Label + ": " + d.Text + " is not taken: " + d.Why + ".", p.Path})
		}
	}
	for _, m := range s.Job().Misfits() {
		n := Note{Text: s.misfit(say, m)}
		if k := slices.IndexFunc(card, func(p Prompt) bool { return p.Index == m.Readings[0] }); k >= 0 {
			n.Path = card[k].Path
		}
		out = append(out, n)
	}
	return out
}

// Advice says what to measure next and what it is good for, once that is worked
// out; the path is empty where it is none of the card's prompts.
func (s *State) Advice() (n Note, is bool) {
	if s.sure == nil || !s.sure.HasNext {
		return n, false
	}
	n.Text = s.speaker().Next(s.sure.Next)
	for _, p := range s.Card() {
		if p.Stage == game.Next {
			n.Path = p.Path
		}
	}
	return n, true
}

// Asked gives the place on the card of the prompt that is asked now.
func (s *State) Asked() int {
	card := s.Card()
	if k := place(card, s.look.Asked); k >= 0 {
		return k
	}
	return max(0, s.unfinished())
}

func place(card []Prompt, path string) int {
	return slices.IndexFunc(card, func(p Prompt) bool { return p.Path == path })
}

// unfinished gives the place of the first prompt without which there is no door,
// −1 when none is left.
func (s *State) unfinished() int {
	return slices.IndexFunc(s.Card(), s.isMissing)
}

// isMissing tells whether there is no door without what the prompt asks, or not
// with as many hinges as were asked for.
func (s *State) isMissing(p Prompt) bool {
	if p.Stage != game.Least || p.Value != "" {
		return false
	}
	of, job := p.Reading.Survey(), s.Job()
	if of.Kind == survey.HingeOnLeaf && of.Hinge > 0 && of.Hinge < job.HingesAsked()-1 {
		return true
	}
	return slices.ContainsFunc(job.Survey.Missing, func(r survey.Reading) bool {
		last := r.Hinge > 0 && of.Hinge == job.HingesAsked()-1
		return r.Kind == of.Kind && (r.Hinge == of.Hinge || last)
	})
}

// Ask goes to a prompt of the card.
func (s *State) Ask(path string) {
	s.Settle()
	l := s.look
	l.Asked, l.CardShut = path, false
	s.advised = false
	card := s.Card()
	if k := place(card, path); k >= 0 {
		s.advised = card[k].Stage == game.Next
	}
	s.setLook(l)
}

// stay keeps the prompt that was come to by itself while it is typed in: it is the
// first not read yet, until it is read.
func (s *State) stay() {
	if card := s.Card(); s.look.Asked == "" && len(card) > 0 {
		s.look.Asked = card[s.Asked()].Path
	}
}

// Advance goes to the next prompt in order. From the one that told most it goes,
// once read, to the one that does so then.
func (s *State) Advance() bool {
	if len(s.Card()) == 0 {
		return false
	}
	if k := s.Asked(); s.advised || k+1 < len(s.Card()) && s.Card()[k].Stage == game.Least && s.Card()[k+1].Stage != game.Least {
		s.Weigh() // where to go depends on it
	}
	card, k := s.Card(), s.Asked()
	next := k + 1
	if s.advised && card[k].Value != "" {
		if n := slices.IndexFunc(card, func(p Prompt) bool { return p.Stage == game.Next }); n >= 0 && n != k {
			next = n
		}
	}
	if next >= len(card) {
		return false
	}
	s.Ask(card[next].Path)
	return true
}

// GoBack goes to the prompt before.
func (s *State) GoBack() bool {
	k := s.Asked()
	if k == 0 {
		return false
	}
	s.Ask(s.Card()[k-1].Path)
	return true
}

// Progress says how far the card is filled: where on it the prompt asked now is,
// and what is still needed.
func (s *State) Progress() (where, needed string) {
	card := s.Card()
	if len(card) == 0 {
		return "", ""
	}
	now := &card[s.Asked()]
	n, of, least, missing, all, refused := 0, 0, 0, 0, 0, 0
	for k := range card {
		p := &card[k]
		if _, is := s.drafts[p.Path]; is && p != now {
			refused++
		}
		if p.Stage == now.Stage {
			of++
			if p.Path == now.Path {
				n = of
			}
		}
		if p.Value != "" {
			all++
		}
		if p.Stage == game.Least {
			least++
		}
		if s.isMissing(*p) {
			missing++
		}
	}
	where = now.Stage.String()
	if s.look.CardShut {
		return "", strconv.Itoa(all) + " read"
	}
	if of > 1 && now.Stage == game.Least { // the rest is as much as one likes
		where += ": " + strconv.Itoa(n) + " of " + strconv.Itoa(of)
	}
	switch {
	case s.lacks == nil && all == 1:
		needed = "1 read; each one more makes the door surer."
	case s.lacks == nil:
		needed = strconv.Itoa(all) + " read; each one more makes the door surer."
	default:
		needed = strconv.Itoa(least-missing) + " read of the " + strconv.Itoa(least) + " needed at least."
	}
	if refused > 0 {
		needed += " Not taken as typed: " + strconv.Itoa(refused) + "."
	}
	return where, needed
}

// Unfinished gives the path of the first prompt still needed, empty when none is.
func (s *State) Unfinished() string {
	if !s.Measuring() {
		return ""
	}
	if k := s.unfinished(); k >= 0 {
		return s.Card()[k].Path
	}
	return ""
}

// Sketch gives the small picture of where a prompt's reading is taken.
func (s *State) Sketch(p *Prompt, w, h float64) *draw.List {
	k := sketch(s.Job(), &p.Picture)
	var l draw.List
	k.Draw(&l, w, h)
	return &l
}

// asked gives the sketch of the prompt asked now, for its mark on the drawing; nil
// where there is none.
func (s *State) asked() *draw.Sketch {
	if !s.Measuring() || s.look.CardShut {
		return nil
	}
	card := s.Card()
	if len(card) == 0 {
		return nil
	}
	k := sketch(s.Job(), &card[s.Asked()].Picture)
	return &k
}

// ShutCard folds the card away, or opens it.
func (s *State) ShutCard(shut bool) {
	s.alter(func(l *Look) {
		l.CardShut = shut
	})
}

// ShowAll shows the whole card at once, or one prompt at a time.
func (s *State) ShowAll(all bool) {
	s.alter(func(l *Look) {
		l.AllAtOnce = all
	})
}

// follow goes to the prompt whose field an undo has changed.
func (s *State) follow(path string) {
	card := s.Card()
	for k := range card {
		p := &card[k]
		if path == p.Path || p.LeaveOut != "" && path == p.LeaveOut || slices.ContainsFunc(p.Places, func(f PlaceField) bool { return f.Path == path }) {
			s.Ask(p.Path)
			return
		}
	}
}

// PastePath is where what was pasted and could not be taken stays as a draft.
const PastePath = "card.paste"

// Paste adds readings from a table of text. What cannot be taken stays as a draft
// under [PastePath], with what is wrong with each line, and the job is as it was.
func (s *State) Paste(text string) bool {
	c := change{act: paste, path: PastePath, text: text, unit: s.look.unit()}
	job, err := c.apply(s.Job())
	if err != nil {
		s.drafts[PastePath] = Draft{text, s.why(PastePath, err)}
		s.jobs++
		return false
	}
	delete(s.drafts, PastePath)
	s.past.do(c, job)
	s.measure()
	return true
}

// DropPaste forgets what was pasted and could not be taken.
func (s *State) DropPaste() {
	if _, is := s.drafts[PastePath]; is {
		delete(s.drafts, PastePath)
		s.jobs++
	}
}

// pasted gives the job with the readings of a table added; a door whose shapes were
// given by hand is measured anew by it.
func pasted(job *game.Job, text string) (game.Job, error) {
	more, err := game.ParseReadings([]byte(text))
	if err != nil {
		return *job, err
	}
	return game.Measure(*job).WithReadings(more)
}

// ReadingsCSV gives the readings as a table of text that [State.Paste] takes.
func (s *State) ReadingsCSV() []byte { return game.EncodeReadings(s.Job().Readings) }

// whenRead says at which stage of the work a reading of the hung door was taken.
func whenRead(after, made int) string {
	switch {
	case after == made:
		return ", as it stands"
	case after == 0:
		return ", as found"
	case after == 1:
		return ", after the first move"
	}
	return ", after " + strconv.Itoa(after) + " moves"
}
