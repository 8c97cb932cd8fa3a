package game

import (
	"strconv"

	"leafwright/game/measure"
	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/survey"
)

// Reading is one thing a person read off the door, as typed. Places run from the
// hinge side and heights from the floor, whichever hand the leaf is, so nothing in
// a reading changes with the hand. Places its kind has no use for are left empty.
type Reading struct {
	Kind     survey.Kind
	Side     survey.Side
	Hinge    int // 1 the top one; 0 where the kind is of no hinge
	Rail     int // 1 the bottom one; 0 where the kind is of no rail
	At       measure.Length
	From, To measure.Length
	Angle    geom.Angle
	// Value is what was read; one without a text was not read yet, and is off.
	Value      measure.Length
	Sigma      measure.Length // standard deviation; without a text the instrument's
	Instrument survey.Instrument
	Note       string
	Off        bool // kept, but without a say
	// After is how many of the moves made were done when a reading of the hung door was
	// taken, 0 as found.
	After int
}

// isHung tells whether a kind is read of the hung door, which moves change.
func isHung(k survey.Kind) bool {
	spec := survey.SpecOf(k)
	return spec != nil && spec.Hung()
}

// readsAfter tells whether a reading with a say was taken after moves made.
func (j *Job) readsAfter() bool {
	for i := range j.Readings {
		if r := &j.Readings[i]; r.counts() && r.After > 0 {
			return true
		}
	}
	return false
}

// counts tells whether the reading has a say.
func (r *Reading) counts() bool { return !r.Off }

// surveyed gives the reading as the survey takes it.
func (r *Reading) surveyed() survey.Reading {
	return survey.Reading{
		Kind: r.Kind, Side: r.Side, Hinge: max(0, r.Hinge-1), Rail: max(0, r.Rail-1),
		At: r.At.MM, From: r.From.MM, To: r.To.MM, Angle: r.Angle,
		Value: r.Value.MM, Sigma: r.Sigma.MM, Instrument: r.Instrument, After: r.After,
	}
}

// given tells whether a length was typed at all.
func given(l measure.Length) bool { return l.Text != "" }

// part is a field of a reading that some kinds need and others have no use for.
type part struct {
	name string
	need survey.Needs
	what string // what is missing
	none string // what a kind without it has none of
	has  func(r *Reading) bool
	said func(r *Reading) string
}

var readingParts = []part{
	{"side", survey.NeedSide, "a side", "side", func(r *Reading) bool { return r.Side != "" }, func(r *Reading) string { return string(r.Side) }},
	{"hinge", survey.NeedHinge, "which hinge, 1 the top one,", "hinge", func(r *Reading) bool { return r.Hinge != 0 }, func(r *Reading) string { return strconv.Itoa(r.Hinge) }},
	{"rail", survey.NeedRail, "which rail, 1 the bottom one,", "rail", func(r *Reading) bool { return r.Rail != 0 }, func(r *Reading) string { return strconv.Itoa(r.Rail) }},
	{"at", survey.NeedAt, "the place", "place to be read at", func(r *Reading) bool { return given(r.At) }, func(r *Reading) string { return r.At.Text }},
	{"from", survey.NeedSpan, "the place", "ends", func(r *Reading) bool { return given(r.From) }, func(r *Reading) string { return r.From.Text }},
	{"to", survey.NeedSpan, "the place", "ends", func(r *Reading) bool { return given(r.To) }, func(r *Reading) string { return r.To.Text }},
	{"angle", survey.NeedAngle, "", "swing angle", func(r *Reading) bool { return r.Angle != 0 }, func(r *Reading) string { return door.Say(r.Angle.Degrees()) }},
}

// check gives what is wrong with the reading by itself, named under the path.
func (r *Reading) check(path string) (faults Faults) {
	spec := survey.SpecOf(r.Kind)
	if spec == nil {
		return Faults{{Path: path + ".kind", Want: "missing; a word like opening_width is wanted"}}
	}
	for _, p := range readingParts {
		switch has := p.has(r); {
		case spec.Needs&p.need == 0 && has:
			faults = append(faults, door.Fault{Path: path + "." + p.name, Value: p.said(r), Want: "wanted: " + string(r.Kind) + " has no " + p.none})
		case spec.Needs&p.need != 0 && !has && p.name == "side":
			faults = append(faults, door.Fault{Path: path + ".side", Want: "missing; " + oneOf(sideChoices(spec)) + " is wanted for " + string(r.Kind)})
		case spec.Needs&p.need != 0 && !has && p.what != "":
			faults = append(faults, door.Fault{Path: path + "." + p.name, Want: "missing; " + p.what + " is wanted for " + string(r.Kind)})
		}
	}
	if spec.Needs&survey.NeedHinge != 0 && r.Hinge != 0 && (r.Hinge < 1 || r.Hinge > door.HingesMost) {
		faults = append(faults, door.Fault{Path: path + ".hinge", Value: strconv.Itoa(r.Hinge), Want: "between 1, the top one, and " + strconv.Itoa(door.HingesMost)})
	}
	if spec.Needs&survey.NeedRail != 0 && r.Rail != 0 && (r.Rail < 1 || r.Rail > door.RailsMost) {
		faults = append(faults, door.Fault{Path: path + ".rail", Value: strconv.Itoa(r.Rail), Want: "between 1, the bottom one, and " + strconv.Itoa(door.RailsMost)})
	}
	if r.After != 0 && !isHung(r.Kind) {
		faults = append(faults, door.Fault{Path: path + ".after", Value: strconv.Itoa(r.After), Want: "wanted: " + string(r.Kind) + " has no after"})
	}
	if spec.Needs&survey.NoValue == 0 && !given(r.Value) && r.counts() {
		faults = append(faults, door.Fault{Path: path + ".value", Want: "missing; what was read is wanted, or off: true where it was not read yet"})
	}
	if len(r.Value.Text) > textMost {
		faults = append(faults, door.Fault{Path: path + ".value", Want: "a text of at most " + strconv.Itoa(textMost) + " letters"})
	}
	s := r.surveyed()
	for _, f := range s.Check(path) {
		if f.Path == path+".value" && !given(r.Value) {
			continue
		}
		faults.add(f)
	}
	return faults
}

// textMost is how long a typed length may be, in bytes.
const textMost = 64

// checkReadings adds what is wrong with each reading by itself.
func (j *Job) checkReadings(faults *Faults) {
	for i := range j.Readings {
		r, path := &j.Readings[i], readingsPath+index(i)
		faults.add(r.check(path)...)
		if r.After < 0 || r.After > len(j.Made) {
			faults.add(door.Fault{Path: path + ".after", Value: strconv.Itoa(r.After), Want: "between 0, as found, and " + strconv.Itoa(len(j.Made)) + ", the moves made"})
		}
	}
}

// sideChoices gives the sides a kind of reading may be of.
func sideChoices(spec *survey.Spec) []Choice {
	out := make([]Choice, len(spec.Sides))
	for i, s := range spec.Sides {
		out[i] = Choice{string(s), sideNames[s]}
	}
	return out
}

var sideNames = map[survey.Side]string{
	survey.Hinge: "hinge side", survey.Latch: "latch side", survey.Head: "head or top", survey.Floor: "floor or foot",
	survey.Rising: "rising to the latch side", survey.Falling: "falling to the latch side",
	survey.HingeFoot: "hinge side, foot", survey.LatchFoot: "latch side, foot",
	survey.HingeHead: "hinge side, head", survey.LatchHead: "latch side, head",
}

func sideWords() (out []Choice) {
	for _, s := range []survey.Side{
		survey.Hinge, survey.Latch, survey.Head, survey.Floor, survey.Rising, survey.Falling,
		survey.HingeFoot, survey.LatchFoot, survey.HingeHead, survey.LatchHead,
	} {
		out = append(out, Choice{string(s), sideNames[s]})
	}
	return out
}

func readingKinds() []Choice {
	out := make([]Choice, len(survey.Kinds))
	for i, s := range survey.Kinds {
		out[i] = Choice{string(s.Kind), s.Asks}
	}
	return out
}

// usual is the word for the instrument a kind of reading is usually read with.
const usual = "usual"

func instrumentChoices() []Choice {
	return []Choice{
		{usual, "the usual one"},
		{string(survey.Tape), "tape, class II"}, {string(survey.FineTape), "tape, class I"}, {string(survey.CoarseTape), "tape, class III"},
		{string(survey.Rule), "steel rule"}, {string(survey.Level), "spirit level"}, {string(survey.PlumbLine), "plumb line"},
		{string(survey.Straightedge), "straightedge and feelers"}, {string(survey.Feeler), "feeler gauge"}, {string(survey.Coins), "stack of coins"},
		{string(survey.Sticks), "winding sticks"}, {string(survey.Strings), "strings"}, {string(survey.TrySquare), "square"}, {string(survey.Eye), "by eye"},
	}
}

// middle gives the middle one of the counting readings of a kind, in mm.
func (j *Job) middle(kind survey.Kind) (mm float64, ok bool) {
	var all []float64
	for i := range j.Readings {
		if r := &j.Readings[i]; r.Kind == kind && r.counts() {
			all = append(all, r.Value.MM)
		}
	}
	if len(all) == 0 {
		return 0, false
	}
	geom.Ascending(all)
	return all[(len(all)-1)/2], true
}
