package lesson

import (
	"slices"

	"leafwright/game"
	"leafwright/game/measure"
	"leafwright/game/words"
	"leafwright/geom/door"
	"leafwright/geom/fault"
	"leafwright/geom/fit"
)

// Explanation is a short text beside a small door to play with: one or two of its
// fields are sliders.
type Explanation struct {
	Name    string
	Title   string
	Text    string // paragraphs with an empty line between
	Job     game.Job
	Sliders []Slider
	// Open is how far the leaf is shown open, degrees; the page may move it.
	Open float64
	// Beside names lessons and faults it belongs beside.
	Beside []string
}

// Slider is a field of the job's form to play with, by its path; mm or degrees.
type Slider struct {
	Path, Label string
	From, To    float64
	Step        float64
}

// explanationField says that a file is an explanation, and its version.
const explanationField = "leafwright_explanation"

// ParseExplanation reads an explanation's file. The error is a [game.Faults] that holds
// everything that is wrong with it; that a slider can be moved over its whole length is
// tried.
func ParseExplanation(name string, data []byte) (*Explanation, error) {
	var faults game.Faults
	g := game.ReadGroup(data, "", &faults)
	if g == nil {
		return nil, faults
	}
	e := &Explanation{Name: name}
	g.Version(explanationField, Version, "an explanation")
	e.Title = g.Text("title", nameMost, false, true)
	e.Text = g.Text("text", textMost, true, true)
	e.Open, _ = g.Number("open", door.Range{Hi: 120}, false)
	e.Beside = g.Words("beside", kindWords(), len(kindWords()))
	sound := false
	if !g.Has("job") {
		g.Fault("job", "", "missing; a job is wanted")
	} else {
		e.Job, sound = g.Job("job")
	}
	sliders := g.Groups("sliders", 4)
	if !g.Has("sliders") {
		g.Fault("sliders", "", `missing; a list like [{"path": "leaf.bevel.closing", "label": "Bevel", "from": 0, "to": 5}] is wanted`)
	}
	for _, s := range sliders {
		e.Sliders = append(e.Sliders, e.readSlider(s, sound))
	}
	g.Done()
	if len(faults) > 0 {
		return nil, faults
	}
	return e, nil
}

func (e *Explanation) readSlider(g *game.FileGroup, sound bool) (s Slider) {
	any := door.Range{Lo: -5000, Hi: 5000}
	s.Path = g.Text("path", nameMost, false, true)
	s.Label = g.Text("label", nameMost, false, true)
	s.From, _ = g.Number("from", any, true)
	s.To, _ = g.Number("to", any, true)
	s.Step, _ = g.Number("step", door.Range{Lo: 0.01, Hi: 100}, false)
	if s.Step == 0 {
		s.Step = 0.1
	}
	g.Done()
	if s.From >= s.To {
		g.Fault("to", door.Say(s.To), "beyond from, "+door.Say(s.From))
	}
	if sound && s.Path != "" {
		for _, x := range [2]float64{s.From, s.To} {
			if _, err := e.With(s.Path, x); err != nil {
				g.Fault("path", s.Path, "a field of the job that may be "+door.Say(x)+": "+err.Error())
				break
			}
		}
	}
	return s
}

// With gives the explanation's job with a field set to a number of mm or degrees.
func (e *Explanation) With(path string, x float64) (game.Job, error) {
	return game.Form{Units: measure.MM}.Set(e.Job, path, door.Say(x))
}

// Explains gives a teller for explanations, which are of no lesson.
func Explains(s *words.Speaker) *Teller { return &Teller{Speaker: s} }

// Slid says where a slider of the explanation stands, with its unit.
func (t *Teller) Slid(e *Explanation, s *Slider, x float64) string {
	for _, section := range (game.Form{}).Sections(e.Job) {
		for _, g := range section.Groups {
			for _, f := range g.Fields {
				if f.Path == s.Path && f.Unit != "mm" {
					return door.Say(x) + f.Unit
				}
			}
		}
	}
	if t.Length != nil {
		return t.Length(x)
	}
	return door.Say(x) + " mm"
}

// Watch says what is to be watched in the door of an explanation, as the sliders have it,
// of what its drawing does not show: the room at the stop where the explanation belongs
// beside faults that show there, and on the way in where it does beside a square edge.
func (t *Teller) Watch(e *Explanation, job *game.Job) (out []string) {
	stands := job.Stands()
	var f fit.Fit
	fit.Evaluate(&f, &stands.Door)
	if slices.Contains(e.Beside, string(fault.LeafWinds)) {
		stop := &f.Stops[door.LatchSide]
		at := func(y float64) string {
			if room := stop.At(y); room >= 0 {
				return t.Amount(room)
			}
			return "none, and " + t.Amount(-stop.At(y)) + " too little"
		}
		if r := stop.Range(); !r.IsEmpty() {
			out = append(out, "Between leaf and stop at the closing stile: at the foot "+at(r.Lo)+"; at the top "+at(r.Hi)+".")
		}
	}
	if slices.Contains(e.Beside, string(fault.EdgeSquare)) {
		out = append(out, "At the latch side: "+t.Amount(f.Gaps[door.LatchSide].Least)+" when it is shut; "+
			t.Amount(min(f.Gaps[door.LatchSide].Least, f.Swing[door.LatchSide].Least))+" at the least on the way in.")
	}
	return out
}

// IsExplanation tells whether a file says of itself that it is an explanation.
func IsExplanation(data []byte) bool {
	var ignored game.Faults
	return game.ReadGroup(data, "", &ignored).Has(explanationField)
}
