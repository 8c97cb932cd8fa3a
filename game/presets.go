package game

import (
	"leafwright/geom/fit"
	"leafwright/geom/judge"
)

// Preset is a set of gaps wanted that a person can start from: choosing one
// copies its numbers. A preset's numbers never change once published, since job
// files refer to them by name; other numbers are another preset.
type Preset struct {
	Name    string // in the job file
	Label   string // what it is
	Source  string // where its figures for sides, head and floor come from
	Status  Status
	Caution string // what must be said beside it, or empty
	Wanted  judge.Wanted
}

// Status is how firm a preset's figures are.
type Status string

// The statuses.
const (
	Practice   Status = "common practice, no published source"
	Published  Status = "published"
	Inspection Status = "published as an inspection limit"
)

// Own is the WantedName of gaps that are no preset's.
const Own = "own"

const mmPerInch = 25.4

// rated stands beside every preset for a rated leaf.
const rated = "These are limits an inspector holds a rated leaf to, not a licence to trim one. The leaf's label, its certificate and the local code decide."

// around gives the same limits on hinge side, latch side and head; floor is the floor's.
func around(side, floor judge.Limits) judge.Wanted {
	w := judge.Wanted{Stop: stopWanted, Swing: swingWanted, SwingFloor: swingFloorWanted}
	for e := range w.Gaps {
		w.Gaps[e] = side
	}
	w.Gaps[fit.FloorSide] = floor
	return w
}

// Clearances no source gives figures for. Common practice, no published source:
// paint or a draught strip fits between leaf and stop, and a leaf that swings
// clears by a shaving and the floor by a thin mat.
var (
	stopWanted       = judge.Limits{Least: 0.5, Target: 2, Most: 4}
	swingWanted      = judge.Limits{Least: 0.5, Target: 1.5}
	swingFloorWanted = judge.Limits{Least: 2, Target: 5}
)

func inches(least, target, most float64) judge.Limits {
	return judge.Limits{Least: least * mmPerInch, Target: target * mmPerInch, Most: most * mmPerInch}
}

// presets, the usual one first.
var presets = []Preset{
	{
		Name: "finished", Label: "Painted, ordinary door: 2 to 3 mm, floor 10 to 15 mm to carpet",
		Source: "AU/NZ and UK general practice, after paint", Status: Practice,
		Wanted: around(judge.Limits{Least: 2, Target: 2.5, Most: 3}, judge.Limits{Least: 10, Target: 12, Most: 15}),
	},
	{
		Name: "bare", Label: "Bare, paint to come: 4 to 5 mm all round",
		Source: "the trade's rule for a leaf first hung bare", Status: Practice,
		Wanted: around(judge.Limits{Least: 4, Target: 4.5, Most: 5}, judge.Limits{Least: 4, Target: 6, Most: 10}),
	},
	{
		Name: "uk-unfinished-floor", Label: "UK ordinary door: 2 to 3 mm, floor 10 to 22 mm before it is finished",
		Source: "UK decorating and guarantee-body guidance as quoted on trade pages", Status: Published,
		Wanted: around(judge.Limits{Least: 2, Target: 2.5, Most: 3}, judge.Limits{Least: 10, Target: 12, Most: 22}),
	},
	{
		Name: "us-prefit-2009", Label: "US prefit: 1/8 in, floor 1/2 in",
		Source: "Architectural Woodwork Standards ed. 1 (2009), appendix B, informative; 1/32 in either way, floor 3/4 in at most", Status: Published,
		Wanted: around(inches(3.0/32, 1.0/8, 5.0/32), inches(3.0/8, 1.0/2, 3.0/4)),
	},
	{
		Name: "us-before-paint", Label: "US before paint: 1/16 to 1/8 in at head and latch, 1/16 in at the hinges",
		Source: "US general practice; the hinge side from a door maker's fitting sheet", Status: Practice,
		Wanted: withHinge(around(inches(1.0/16, 3.0/32, 1.0/8), inches(3.0/8, 1.0/2, 3.0/4)), inches(1.0/32, 1.0/16, 1.0/8)),
	},
	{
		Name: "pocketbook-1900s", Label: "1900s pocketbook: 3/32 in, 1/4 to 1/2 in over a floor covering",
		Source: "Building Trades Pocketbook (1900s): leaf 3/16 in narrower than the frame; 1/32 in either way is ours", Status: Published,
		Wanted: around(inches(1.0/16, 3.0/32, 1.0/8), inches(1.0/4, 3.0/8, 1.0/2)),
	},
	{
		Name: "carpentry-1916", Label: "1916 carpentry book: a scant 1/16 in, 1/8 in over a threshold",
		Source: "Griffith, Carpentry (1916), s. 67: an allowance for later coats of paint or varnish", Status: Published,
		Wanted: around(judge.Limits{Least: 0.8, Target: 1.2, Most: 1.6}, inches(1.0/16, 1.0/8, 1.0/4)),
	},
	{
		Name: "rated-uk-2016", Label: "UK timber fire door: 2 to 4 mm, threshold 10 mm at most",
		Source: "BS 8214:2016 as inspectors quote it; thresholds by certificate, 3 mm for smoke control", Status: Inspection, Caution: rated,
		Wanted: around(judge.Limits{Least: 2, Target: 3, Most: 4}, judge.Limits{Least: 3, Target: 6, Most: 10}),
	},
	{
		Name: "rated-us-wood", Label: "US wood fire door: 1/8 in at most, floor 3/4 in at most",
		Source: "NFPA 80 clauses 6.3.1.7.1 and 4.8.4 as inspection guides quote them", Status: Inspection, Caution: rated,
		Wanted: around(inches(1.0/32, 3.0/32, 1.0/8), inches(1.0/8, 3.0/8, 3.0/4)),
	},
}

func withHinge(w judge.Wanted, l judge.Limits) judge.Wanted {
	w.Gaps[fit.HingeSide] = l
	return w
}

// Presets gives every preset, the usual one first.
func Presets() []Preset { return append([]Preset(nil), presets...) }

// preset gives the preset of that name, or the usual one: what own gaps start from.
func preset(name string) Preset {
	for _, p := range presets {
		if p.Name == name {
			return p
		}
	}
	return presets[0]
}

func presetChoices() []Choice {
	all := make([]Choice, 0, len(presets)+1)
	for _, p := range presets {
		all = append(all, Choice{p.Name, p.Label})
	}
	return append(all, Choice{Own, "your own numbers"})
}

// sides gives a wanted fit without what a room decides, floor and clear way, to
// tell whether it is still its preset's.
func sides(w judge.Wanted) judge.Wanted {
	w.Gaps[fit.FloorSide], w.ClearWidth = judge.Limits{}, 0
	return w
}

// rename makes gaps that are no longer their preset's the person's own.
func (j *Job) rename() {
	if j.WantedName == "" {
		j.WantedName = presets[0].Name
	}
	if j.WantedName != Own && sides(j.Wanted) != sides(preset(j.WantedName).Wanted) {
		j.WantedName = Own
	}
}

// FloorPreset is a floor gap wanted, to choose apart from the sides.
type FloorPreset struct {
	Name, Label, Source string
	Status              Status
	Limits              judge.Limits
}

// FloorPresets gives the floor gaps wanted.
func FloorPresets() []FloorPreset { return append([]FloorPreset(nil), floorPresets...) }

var floorPresets = []FloorPreset{
	{"carpet", "over carpet: 10 to 15 mm", "AU/NZ general practice", Practice, judge.Limits{Least: 10, Target: 12, Most: 15}},
	{"unfinished", "over a floor still to be finished: 10 to 22 mm", "UK guarantee-body guidance as quoted on trade pages", Published, judge.Limits{Least: 10, Target: 12, Most: 22}},
	{"boards", "over bare boards: 4 to 10 mm", "the trade's rule", Practice, judge.Limits{Least: 4, Target: 6, Most: 10}},
	{"covering-1900s", "over a floor covering: 1/4 to 1/2 in", "Building Trades Pocketbook (1900s)", Published, inches(1.0/4, 3.0/8, 1.0/2)},
	{"saddle-1900s", "over a saddle: 3/32 in", "Building Trades Pocketbook (1900s); 1/32 in either way is ours", Published, inches(1.0/16, 3.0/32, 1.0/8)},
	{"threshold-1916", "over a threshold: 1/8 in", "Griffith, Carpentry (1916), s. 67; 1/16 in either way is ours", Published, inches(1.0/16, 1.0/8, 3.0/16)},
	{"covering-2009", "over a decorative floor covering: 1/2 in", "Architectural Woodwork Standards ed. 1 (2009), appendix B; 1/8 in less and 3/4 in at most", Published, inches(3.0/8, 1.0/2, 3.0/4)},
}

// floorChoicePath is the form's field that copies a floor preset's numbers.
const floorChoicePath = "wanted.floor.preset"

// floorChoice shows which floor preset the floor gap wanted is.
func floorChoice(j *Job) Field {
	f := Field{Path: floorChoicePath, Label: "Floor gap wanted", Kind: Pick, Value: Own}
	for _, p := range floorPresets {
		f.Choices = append(f.Choices, Choice{p.Name, p.Label})
		if f.Value == Own && p.Limits == j.Wanted.Gaps[fit.FloorSide] {
			f.Value = p.Name
		}
	}
	f.Choices = append(f.Choices, Choice{Own, "your own numbers"})
	return f
}

// chooseFloor copies a floor preset's numbers.
func chooseFloor(j *Job, name string) (why string) {
	for _, p := range floorPresets {
		if p.Name == name {
			j.Wanted.Gaps[fit.FloorSide] = p.Limits
			return ""
		}
	}
	if name == Own {
		return ""
	}
	return oneOf(floorChoice(j).Choices) + " is wanted"
}

// PresetNamed gives the preset of that name, and whether there is one.
func PresetNamed(name string) (Preset, bool) {
	p := preset(name)
	return p, p.Name == name
}
