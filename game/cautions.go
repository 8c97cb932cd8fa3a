package game

import (
	"strconv"

	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/timber"
	"leafwright/geom/trim"
)

// Caution is something that can hurt someone, or that a rule bears on, beside the job
// or the step that calls for it. The rules, what triggers them and what they rest on
// are [timber.Rules].
type Caution struct {
	Text   string
	Ask    string // who decides
	Source string // what it rests on
	About  timber.Caution
}

// FactsOf gives what is known of a job that cautions turn on, before anything is done.
// What is not said is taken to be the worse.
func FactsOf(j *Job) timber.Facts {
	h := &j.House
	f := timber.Facts{
		Region: h.Region, Built: h.Built, Reclaimed: h.Reclaimed, Outer: h.Outer, Paid: h.Paid, Escape: h.Escape, Toilet: h.Toilet,
		Unsaid: *h == House{},
		Rated:  j.rated(),
		Glazed: j.Anatomy.Glazed || j.Anatomy.Panels == door.Glass,
	}
	_, _, f.Mass = timber.Weigh(&j.Door.Leaf, &j.Anatomy)
	if level, sill, is := isThreshold(&j.Door.Floor); is {
		f.Step = sill - level
	}
	for i := range j.Voids {
		f.ActiveBore = f.ActiveBore || j.Voids[i].Live
	}
	return f
}

// Rated tells whether the job's leaf is rated, or is held to a rated leaf's limits.
func Rated(j *Job) bool { return j.rated() }

func (j *Job) rated() bool {
	p, ok := PresetNamed(j.WantedName)
	return j.Anatomy.Rated || ok && p.Status == Inspection
}

// Might adds to the facts all that might be done to the job's door: it is worked, taken
// down and hung anew, and stripped, filled and painted where the job says so.
func Might(j *Job, f *timber.Facts) {
	f.Cuts, f.Sands, f.Lifts, f.Rehung = true, true, true, true
	for _, c := range [...]*Coating{&j.Paint.Leaf, &j.Paint.Frame} {
		if c.Strip { // by heat, solvent or machine: a person has not said
			f.Heats, f.Machine, f.Strips = true, true, true
			f.Disturbed += 2 * float64(j.Door.Leaf.Width*j.LeafHeight) * 1e-6
		}
		f.Strips = f.Strips || c.ToCome > 0 && c.Kind == timber.Alkyd
	}
	for i := range j.Voids {
		f.Strips = f.Strips || j.Voids[i].Do != timber.CutItOut && j.Voids[i].Do != timber.LeaveIt
	}
}

// Cautions gives what to take care of in a job, the most binding first. They cannot be
// switched off; local codes and licensed trades decide.
func Cautions(j *Job) []Caution {
	f := FactsOf(j)
	Might(j, &f)
	if !f.Unsaid {
		stands := j.Stands()
		f.ClearWas, f.ClearIs = ClearWay(&j.Door), ClearWay(&stands.Door)
	}
	return Said(&f)
}

// ClearWay gives the clear width to the latch stop at 90°, mm.
func ClearWay(d *door.Door) float64 {
	var f fit.Fit
	fit.Evaluate(&f, d)
	return f.ClearToStop
}

// MoveCautions gives what to take care of at a kind of move, beside which it stands.
func MoveCautions(j *Job, k trim.Kind) (out []Caution) { return StepCautions(j, &trim.Move{Kind: k}) }

// StepCautions gives what to take care of at a move.
func StepCautions(j *Job, m *trim.Move) (out []Caution) {
	spec := trim.SpecOf(m.Kind)
	if spec == nil {
		return nil
	}
	f := FactsOf(j)
	f.Step, f.ActiveBore = 0, f.ActiveBore && spec.TakesOff
	does(&f, spec)
	f.Narrows = f.Narrows && m.Edge != door.HeadSide // which lowers the way and does not narrow it
	return Said(&f)
}

// does adds to the facts what a kind of move does.
func does(f *timber.Facts, spec *trim.Spec) {
	switch spec.Kind {
	case trim.PackJamb, trim.Pack, trim.Set:
	default: // painted wood is cut
		f.Cuts = true
	}
	f.Lifts = spec.Trade != trim.TheFrame
	f.Narrows = spec.Kind == trim.PackJamb || spec.Kind == trim.Pack || spec.Kind == trim.Rehinge
	f.Glazed = f.Glazed && spec.TakesOff
	if spec.Kind == trim.Threshold {
		f.Step = 2 * timber.StepMost
	}
}

// Said gives the cautions the facts trigger, in words.
func Said(f *timber.Facts) (out []Caution) {
	for _, r := range timber.Cautions(f) {
		out = append(out, Caution{cautionText(r.Caution, f), askText(r.Ask), r.Source, r.Caution})
	}
	return out
}

func askText(a timber.Authority) string {
	who := ""
	switch a {
	case timber.Certificate:
		who = "whoever holds the certificate and the local fire authority"
	case timber.Health:
		who = "your local health or environment authority; licensed workers where the law asks for them"
	case timber.Building:
		who = "the local building control"
	case timber.Glazier:
		who = "a glazier"
	case timber.Safety:
		who = "your safety authority for its limits"
	case timber.Joiner:
		who = "a joiner if in doubt"
	case timber.PestControl:
		who = "a pest controller"
	case timber.Yourself:
		return "It is yours to look to."
	default:
		return "Weigh it if in doubt; many people should lift less."
	}
	return "Ask " + who + "."
}

// cautionText says a caution; the facts are those that triggered it.
func cautionText(c timber.Caution, f *timber.Facts) string {
	const test = " hold lead, under later coats too: test it before any sanding, scraping or planing of painted edges, and keep flame, heat guns and sanding machines without suction off it."
	whole := func(mm float64) string { return strconv.Itoa(int(mm+0.5)) + " mm" }
	switch c {
	case timber.RatedLeaf:
		return "Rated or labelled, or held to a rated leaf's limits: it takes no trimming, splicing or re-hanging on advice from here. The maker's certificate and the label decide what may be done to leaf, hinges, stops and frame."
	case timber.Asbestos:
		return "Linings and cores of old fire doors may hold asbestos: bore, saw and plane nothing before it is known."
	case timber.LeadBanned:
		return "Barred on paint that may hold lead: open flame, heat guns hotter than 593 °C, and machines that sand or plane it without suction through a fine filter."
	case timber.LeadLikely:
		if f.Built <= 0 && !f.Reclaimed {
			return "Old paint may" + test
		}
		return "Paint so old is likely to" + test
	case timber.LeadPossible:
		return "Paint of those years may still" + test
	case timber.LeadRegulated:
		return "Paid work that disturbs so much paint of before 1978 falls under the rule on renovation: certified firms and workers only."
	case timber.BadScrews:
		return "The top hinge's screws hold too little for this leaf: do not hang it before that is put right."
	case timber.Structure:
		return "More than a third of a stile or a rail is gone somewhere: cut it out and piece it with timber, for filler carries nothing."
	case timber.LiveBorer:
		return "Beetles at work, or rot still damp: it is treated and dry before it is closed up, and so is what stands beside it."
	case timber.LowGlazing:
		return "Glass in a door, the more so where it starts below " + whole(timber.LowGlass) + ", may have to be safety glass."
	case timber.GlassWork:
		return "Support glass and mask it before the leaf is sawn, planed, clamped or carried."
	case timber.EscapeRoute:
		return "On an escape route: nothing may narrow it, raise a step in it or turn the way it opens without leave."
	case timber.SmallToilet:
		return "The door of a small toilet room opens outward, slides or lifts off in some countries, unless there is room inside: do not turn it inward unasked."
	case timber.ClearNarrow:
		said := "This may take from the clear way."
		if f.ClearIs > 0 {
			said = "The clear way at 90° is " + whole(f.ClearIs) + "."
			if f.ClearWas > f.ClearIs+0.5 {
				said = "The clear way at 90° is " + whole(f.ClearIs) + ", where it was " + whole(f.ClearWas) + "."
			}
		}
		return said + " Where a wheelchair must pass, " + whole(timber.ClearWidth(f.Region)) + " or more is laid down."
	case timber.UnsaidUse:
		return "Escape routes, small toilet rooms and rooms that must take a wheelchair have clear widths and directions of opening laid down; nothing is said of this one."
	case timber.HighStep:
		return "A threshold is a step: on an escape route or a way for a wheelchair its height is laid down, " + whole(timber.StepMost) + " as a rule."
	case timber.HeavyLeaf:
		return "The leaf may weigh more than " + strconv.Itoa(timber.TwoPeople) + " kg: two people take it down and hang it."
	case timber.CedarDust:
		return "Dust of western red cedar harms at half of what other wood's does."
	case timber.WoodDust:
		return "Wood dust harms lungs and nose: plane rather than sand, take the dust off at the tool, wear a mask that fits."
	case timber.Solvents:
		return "Strippers, two-part fillers and solvent-borne paints: windows open, no flame, gloves and the maker's sheet at hand."
	case timber.HiddenMetal:
		return "Look for old nails and screws with a magnet before a saw or a plane meets them."
	}
	return string(c)
}
