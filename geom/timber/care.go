package timber

// Facts are what cautions turn on. A zero value is not known, or not so.
type Facts struct {
	Region    Region
	Built     int  // year the house was built
	Reclaimed bool // the leaf came from elsewhere: the year of the house says nothing of it
	Bare      bool // never painted, or stripped to the wood
	LeadFree  bool // its paint, buried coats too, was tested and holds no lead
	Outer     bool // the work is outside
	Unsaid    bool // nothing is said of house and room
	Paid      bool // done for pay, in a house lived in

	Rated     bool
	Glazed    bool
	GlassFrom float64 // mm above the floor, the lowest glass
	Mass      float64 // kg

	Escape     bool    // on an escape route
	Toilet     bool    // of a small room with a toilet
	Inward     bool    // opens into the room
	ClearWas   float64 // clear width to the stop at 90°, mm
	ClearIs    float64 // the same after the work
	Narrows    bool    // the work may take clear width, how much not being known
	Step       float64 // height of the threshold, mm
	ActiveBore bool    // beetles at work, or rot still damp
	Lost       float64 // greatest part of a stile or rail that is gone, 0 to 1
	HoldsNot   bool    // the top hinge's screws hold too little
	Cedar      bool    // western redcedar

	// What is done to it.
	Cuts      bool    // planed or sawn
	Sands     bool    // sanded or scraped
	Heats     bool    // stripped with heat or flame
	Strips    bool    // stripped with solvent, filled with two-part filler or painted with solvent-borne paint
	Machine   bool    // with a machine
	Lifts     bool    // taken down or hung
	Rehung    bool    // on the other hand, or the other way
	Disturbed float64 // m² of old paint disturbed in the room, as [Disturbs] counts it
}

// works tells whether the wood under the paint is worked at all.
func (f *Facts) works() bool { return f.Cuts || f.Sands || f.Heats }

// old tells whether the paint may be from before a year.
func (f *Facts) old(year int) bool {
	return !f.Bare && !f.LeadFree && (f.Reclaimed || f.Built <= 0 || f.Built < year)
}

// LeadYears gives the years before which paint likely holds lead, and may. US: sold till
// 1978 (40 CFR 745). AU: most before 1970 (Lead Alert, 5th ed. 2014); the limit of
// 0.1 % came in 1997. NZ: before 1980, from memory. UK: before the 1960s, sold till
// 1992, from memory. Elsewhere, the latest of them.
func LeadYears(r Region) (likely, may int) {
	switch r {
	case US:
		return 1978, 1978
	case AU:
		return 1970, 1997
	case NZ:
		return 1980, 1980
	case UK:
		return 1960, 1992
	}
	return 1980, 1997
}

// What paid work may disturb of paint older than 1978 in the US before the rule on
// renovation bears on it, m²: 6 ft² a room within 30 days inside, 20 ft² outside (40
// CFR 745.82 to 745.85, US EPA).
const (
	LeadInside  = 6 * foot2
	LeadOutside = 20 * foot2
	foot2       = 144 * inch * inch * 1e-6
)

// Disturbs gives the painted surface, m², that trimming a strip off an edge counts as: the
// strip's height, mm, along the edge's whole length, whatever the kerf (US EPA FAQ
// 23002-14294).
func Disturbs(long, strip float64) float64 {
	return float64(held(long, 0, 1e4)*held(strip, 0, 1e4)) * 1e-6
}

// TwoPeople is the mass, kg, above which two people lift: the UK guideline for a fit man
// close to the body (from memory; 16 for a woman).
const TwoPeople = 25.0

// LowGlass is how high above the floor, mm, glass in a door may start and be a critical
// place: UK guidance.
const LowGlass = 1500.0

// ClearWidth gives the least clear width, mm, laid down for those who need it wide. US:
// 32 in, ADA 404.2.3. UK: 750, the least of Approved Document M's 750 to 800. AU: 820,
// NCC 2022 livable housing. NZ: none found, AU's is taken.
func ClearWidth(r Region) float64 {
	switch r {
	case US:
		return 815
	case UK:
		return 750
	}
	return 820
}

// StepMost is the highest threshold, mm, for a wheelchair: ½ in, ADA 404.2.5.
const StepMost = 13.0

// Caution is a code for what a caution says.
type Caution string

// The cautions, the most binding first.
const (
	RatedLeaf     Caution = "rated leaf"
	Asbestos      Caution = "asbestos"
	LeadBanned    Caution = "lead: barred ways" // heat, flame, sanding machines without suction
	LeadLikely    Caution = "lead likely"
	LeadPossible  Caution = "lead possible"
	LeadRegulated Caution = "lead: regulated area"
	BadScrews     Caution = "hinge screws"
	Structure     Caution = "structural doubt"
	LiveBorer     Caution = "active borer"
	LowGlazing    Caution = "low glass"
	GlassWork     Caution = "glass"
	EscapeRoute   Caution = "escape route"
	SmallToilet   Caution = "small toilet room"
	ClearNarrow   Caution = "clear width"
	UnsaidUse     Caution = "ways out" // and rooms laid down for, where nothing is said of the room
	HighStep      Caution = "threshold"
	HeavyLeaf     Caution = "two people"
	CedarDust     Caution = "cedar dust"
	WoodDust      Caution = "wood dust"
	Solvents      Caution = "solvents"
	HiddenMetal   Caution = "nails and screws"
)

// Authority is who decides.
type Authority string

// The authorities.
const (
	Certificate Authority = "certificate holder and fire authority"
	Health      Authority = "health or environment authority"
	Building    Authority = "building control"
	Glazier     Authority = "glazier"
	Safety      Authority = "safety authority"
	Joiner      Authority = "joiner"
	PestControl Authority = "pest controller"
	Anyone      Authority = "weigh it"
	Yourself    Authority = "look to it"
)

// Rule is a caution: what triggers it, what it rests on, whom to ask.
type Rule struct {
	Caution Caution
	When    func(*Facts) bool
	Source  string
	Ask     Authority
	Status  Status
}

// Rules are the cautions, the most binding first. They cannot be switched off; local codes
// and licensed trades decide.
var Rules = []Rule{
	{RatedLeaf, func(f *Facts) bool { return f.Rated }, "NFPA 80; UK practice is to follow the leaf's certificate", Certificate, Published},
	{Asbestos, func(f *Facts) bool { return f.Rated && (f.Reclaimed || f.Built < 2004) }, "bans UK 1999, Australia end of 2003", Health, Memory},
	{LeadBanned, func(f *Facts) bool {
		_, may := LeadYears(f.Region)
		return f.old(may) && (f.Heats || f.Sands && f.Machine)
	}, "40 CFR 745.85: open flame, heat guns over 1100 °F (593 °C), machines without HEPA suction", Health, Published},
	{LeadLikely, func(f *Facts) bool { likely, _ := LeadYears(f.Region); return f.old(likely) && f.works() }, "40 CFR 745 (US before 1978); Lead Alert 2014 (Australia before 1970); UK and NZ from memory", Health, Partly},
	{LeadPossible, func(f *Facts) bool {
		likely, may := LeadYears(f.Region)
		return f.old(may) && !f.old(likely) && f.works()
	}, "Australian limits of 1965, 1992 and 1997; UK retail sale ended 1992", Health, Partly},
	{LeadRegulated, func(f *Facts) bool {
		return f.Region == US && f.Paid && f.old(1978) && (!f.Outer && f.Disturbed > LeadInside || f.Outer && f.Disturbed > LeadOutside)
	}, "40 CFR 745.82 to 745.85", Health, Published},
	{BadScrews, func(f *Facts) bool { return f.HoldsNot }, "Wood Handbook ch. 8, withdrawal of wood screws", Joiner, Published},
	{Structure, func(f *Facts) bool { return f.Lost > mostLost }, "common practice: a third of a member's width", Joiner, Practice},
	{LiveBorer, func(f *Facts) bool { return f.ActiveBore }, "common practice: treated before it is closed up", PestControl, Practice},
	{LowGlazing, func(f *Facts) bool { return f.Glazed && f.GlassFrom < LowGlass }, "UK glazing guidance (below 1500 mm); US IRC R308.4", Building, Published},
	{GlassWork, func(f *Facts) bool { return f.Glazed && (f.works() || f.Lifts) }, "common practice: glass held and masked before the leaf is worked", Glazier, Practice},
	{EscapeRoute, func(f *Facts) bool { return f.Escape && (f.Rehung || f.narrower() || f.Step > 0) }, "US egress door 32 in × 78 in; local codes", Building, Memory},
	{SmallToilet, func(f *Facts) bool { return f.Toilet && (f.Rehung || f.Inward) }, "Australia, NCC: opens outward, slides or lifts off, unless 1.2 m stand clear of the pan", Building, Published},
	{ClearNarrow, func(f *Facts) bool { return f.narrower() || f.ClearIs > 0 && f.ClearIs < ClearWidth(f.Region) }, "ADA 404.2.3 (815 mm); Approved Document M (750 to 800 mm); NCC 2022 (820 mm)", Building, Published},
	{UnsaidUse, func(f *Facts) bool { return f.Unsaid && (f.Rehung || f.Narrows) }, "ADA 404.2.3 (815 mm); Approved Document M (750 to 800 mm); NCC livable housing (820 mm) and its rule for small toilet rooms", Building, Published},
	{HighStep, func(f *Facts) bool { return f.Step > StepMost }, "ADA 404.2.5 (13 mm); Approved Document M (15 mm)", Building, Published},
	{HeavyLeaf, func(f *Facts) bool { return f.Lifts && f.Mass > TwoPeople }, "UK lifting guideline, 25 kg for a man, 16 for a woman", Anyone, Memory},
	{CedarDust, func(f *Facts) bool { return f.Cedar && (f.Cuts || f.Sands) }, "ACGIH: 0.5 mg/m³ for western redcedar, 1 for others", Safety, Published},
	{WoodDust, func(f *Facts) bool { return f.Cuts || f.Sands }, "OSHA 5 mg/m³ respirable; NIOSH 1; Australia 1 hard, 5 soft", Safety, Published},
	{Solvents, func(f *Facts) bool { return f.Strips }, "common practice: the maker's sheet, open windows, no flame", Safety, Practice},
	{HiddenMetal, func(f *Facts) bool { return f.Cuts || f.Machine }, "common practice: looked for with a magnet before a saw or plane meets it", Yourself, Practice},
}

// narrower tells whether the work takes clear width.
func (f *Facts) narrower() bool {
	const noise = 0.5 // mm: no tape tells less
	return f.Narrows || f.ClearWas > 0 && f.ClearIs > 0 && f.ClearIs < f.ClearWas-noise
}

// Cautions gives the rules the facts trigger, the most binding first.
func Cautions(f *Facts) (out []*Rule) {
	for i := range Rules {
		if Rules[i].When(f) {
			out = append(out, &Rules[i])
		}
	}
	return out
}
