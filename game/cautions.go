package game

import (
	"strconv"

	"leafwright/geom/door"
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
	twoPeople   = 25   // kg: lifting limit close to the body for one fit person; UK guidance, figure from memory
	denseTimber = 700  // kg/m³: on the heavy side of joinery timbers, so that a mass is not guessed too low
	narrowClear = 800  // mm clear to the stop, below which regulated routes may ask for more
	lowGlass    = 1500 // mm: glass starting below this in a door is a critical place in UK guidance
)

var cautions = []caution{
	{func(j *Job) bool { return j.Anatomy.Rated }, Caution{
		"This leaf is marked as rated or labelled. It takes no trimming, splicing or re-hanging on advice from here: the maker's certificate and the label service decide what may be done to it.",
		"Ask whoever holds the certificate and the local fire authority.",
		"NFPA 80 on job-site work; UK practice is to follow the leaf's certificate"}},
	{func(j *Job) bool { return j.Anatomy.Glazed || j.Anatomy.Panels == door.Glass }, Caution{
		"Glass in a door, the more so where it starts below " + strconv.Itoa(lowGlass) + " mm, may have to be safety glass, and the leaf must be propped so that a plane's stroke does not rack it.",
		"Ask the local building control or a glazier.",
		"UK glazing guidance; US residential code's hazardous locations for glass"}},
	{func(j *Job) bool { return j.mass() > twoPeople }, Caution{
		"A leaf of this size may weigh more than " + strconv.Itoa(twoPeople) + " kg: let two people lift and hang it.",
		"Weigh it if in doubt.",
		"volume at " + strconv.Itoa(denseTimber) + " kg/m³; UK lifting guidance, figure from memory"}},
	{func(j *Job) bool { return true }, Caution{
		"Old paint may hold lead, under later coats too: test it before any sanding, scraping or planing of painted edges, and keep heat guns and dry sanding away from it.",
		"Ask your local health or environment authority; licensed workers where the law asks for them.",
		"US EPA 40 CFR 745 (homes before 1978); Australian guidance (before 1970, possibly later)"}},
	{func(j *Job) bool { return j.Wanted.ClearWidth > 0 || j.Door.Leaf.Width < narrowClear }, Caution{
		"Escape routes, small toilet rooms and rooms that must take a wheelchair have clear widths and directions of opening laid down.",
		"Ask the local building control before a door is re-hung, re-handed or packed off its jamb.",
		"ADA 404.2.3 (815 mm); Approved Document M (750 to 800 mm); NCC livable housing (820 mm)"}},
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
