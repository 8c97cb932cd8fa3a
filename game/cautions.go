package game

import (
	"strconv"

	"leafwright/geom/door"
	"leafwright/geom/trim"
)

// Caution is something that can hurt someone, or that a rule bears on, beside
// the job that calls for it.
type Caution struct {
	Text   string
	Ask    string // who decides
	Source string // what it rests on
}

// caution is a rule: what triggers it, and what it then says.
type caution struct {
	applies func(*Job) bool
	Caution
}

// Figures the cautions turn on.
const (
	twoPeople   = 25   // kg: lifting limit close to the body for one fit man; UK guidance, figure from memory
	denseTimber = 700  // kg/m³: on the heavy side of joinery timbers, so that a mass is not guessed too low
	lowGlass    = 1500 // mm: glass starting below this in a door is a critical place in UK guidance
)

var cautions = []caution{
	{(*Job).rated, Caution{
		"This leaf is marked as rated or labelled, or held to a rated leaf's limits. It takes no trimming, splicing or re-hanging on advice from here: the maker's certificate and the label decide what may be done to it. Linings and cores of old fire doors may hold asbestos.",
		"Ask whoever holds the certificate and the local fire authority.",
		"NFPA 80 on job-site work; UK practice is to follow the leaf's certificate; asbestos from memory"}},
	{func(j *Job) bool { return j.Anatomy.Glazed || j.Anatomy.Panels == door.Glass }, Caution{
		"Glass in a door, the more so where it starts below " + strconv.Itoa(lowGlass) + " mm, may have to be safety glass.",
		"Ask the local building control or a glazier before the leaf is worked or re-hung.",
		"UK glazing guidance; US residential code's hazardous locations for glass"}},
	{func(j *Job) bool { return j.mass() > twoPeople }, Caution{
		"A solid leaf of this size weighs up to " + strconv.Itoa(denseTimber) + " kg a cubic metre, so it may be more than " + strconv.Itoa(twoPeople) + " kg: let two people lift and hang it.",
		"Weigh it if in doubt; many people should lift less.",
		"UK lifting guidance, figures from memory"}},
	{everyJob, Caution{
		"Old paint may hold lead, under later coats too: test it before any sanding, scraping or planing of painted edges, and keep heat guns and dry sanding away from it.",
		"Ask your local health or environment authority; licensed workers where the law asks for them.",
		"US EPA 40 CFR 745 (homes before 1978); Australian guidance (before 1970, possibly later); UK before the 1960s, from memory"}},
	{everyJob, Caution{
		"Wood dust harms lungs and nose: plane rather than sand, take the dust off at the tool, wear a mask that fits. Look for old nails and screws before a saw or a plane meets them.",
		"Ask your safety authority for its dust limits.",
		"OSHA, NIOSH and ACGIH limits for wood dust"}},
	{everyJob, Caution{
		"Escape routes, small toilet rooms and rooms that must take a wheelchair have clear widths and directions of opening laid down.",
		"Ask the local building control before a door is re-hung, re-handed or packed off its jamb.",
		"ADA 404.2.3 (815 mm); Approved Document M (750 to 800 mm); NCC livable housing (820 mm) and its rule for small toilet rooms"}},
}

func everyJob(*Job) bool { return true }

// rated tells whether the leaf is rated, or is held to a rated leaf's limits.
func (j *Job) rated() bool {
	p, ok := PresetNamed(j.WantedName)
	return j.Anatomy.Rated || ok && p.Status == Inspection
}

// mass is the leaf's mass in kg if it were solid and dense.
func (j *Job) mass() float64 {
	l := &j.Door.Leaf
	return l.Width * j.LeafHeight * l.Thickness * 1e-9 * denseTimber
}

// Cautions gives what to take care of in a job, the most binding first. They
// cannot be switched off; local codes and licensed trades decide.
func Cautions(j *Job) []Caution {
	var out []Caution
	for _, c := range cautions {
		if c.applies(j) {
			out = append(out, c.Caution)
		}
	}
	return out
}

// moveCaution is a caution that stands beside the moves it is about.
type moveCaution struct {
	applies func(j *Job, spec *trim.Spec) bool
	Caution
}

var moveCautions = []moveCaution{
	{func(j *Job, s *trim.Spec) bool { return j.rated() }, Caution{
		"Rated or labelled: nothing is done to leaf, hinges, stops or frame on advice from here.",
		"Ask whoever holds the certificate.",
		"NFPA 80; UK practice is to follow the leaf's certificate"}},
	{func(_ *Job, s *trim.Spec) bool { return woodWorked(s) }, Caution{
		"Old paint may hold lead: test it before this, and keep heat and dry sanding away from it. Take dust off at the tool, wear a mask that fits, look for nails and screws first.",
		"Ask your local health or environment authority.",
		"US EPA 40 CFR 745; Australian guidance; OSHA, NIOSH and ACGIH limits for wood dust"}},
	{func(j *Job, s *trim.Spec) bool {
		return s.TakesOff && (j.Anatomy.Glazed || j.Anatomy.Panels == door.Glass)
	}, Caution{
		"Support glass and mask it before the leaf is sawn, planed or clamped; it may have to be safety glass.",
		"Ask a glazier.",
		"UK glazing guidance; US residential code's hazardous locations for glass"}},
	{func(j *Job, s *trim.Spec) bool {
		return j.mass() > twoPeople && s.Trade != trim.TheFrame
	}, Caution{
		"The leaf may weigh more than " + strconv.Itoa(twoPeople) + " kg: two people take it down and hang it.",
		"Weigh it if in doubt.",
		"UK lifting guidance, figures from memory"}},
	{func(_ *Job, s *trim.Spec) bool { return s.Kind == trim.Threshold }, Caution{
		"A threshold is a step: on an escape route or a way for a wheelchair its height is laid down.",
		"Ask the local building control.",
		"ADA 404.2.5 (13 mm); Approved Document M (15 mm)"}},
}

// woodWorked tells whether a kind of move cuts painted wood of leaf or frame.
func woodWorked(s *trim.Spec) bool {
	switch s.Kind {
	case trim.PackJamb, trim.Pack, trim.Set:
		return false
	}
	return true
}

// MoveCautions gives what to take care of at a move, beside which it stands.
func MoveCautions(j *Job, k trim.Kind) (out []Caution) {
	spec := trim.SpecOf(k)
	if spec == nil {
		return nil
	}
	for i := range moveCautions {
		if c := &moveCautions[i]; c.applies(j, spec) {
			out = append(out, c.Caution)
		}
	}
	return out
}
