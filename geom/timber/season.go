package timber

// Air is a month's mean.
type Air struct{ Celsius, Humidity float64 }

// Year is the air from January to December.
type Year [12]Air

// Climate is where a house stands, Room where the leaf hangs.
type (
	Climate string
	Room    string
)

// The climates and the rooms.
const (
	Maritime    Climate = "maritime"    // mild and damp: British Isles, Tasmania, New Zealand's south
	Continental Climate = "continental" // cold winters, warm damp summers: inland Europe and North America
	DrySummer   Climate = "dry summer"  // Mediterranean, south-west Australia, California
	DampSummer  Climate = "damp summer" // east coast of Australia, New Zealand's north, southern United States
	Tropical    Climate = "tropical"

	Heated   Room = "heated"   // lived in, heated in winter
	Unheated Room = "unheated" // hall, porch, a room that stands empty
	Washroom Room = "wet"      // bathroom, laundry
	Outside  Room = "outside"  // an outer door under cover
)

// Preset is the air in a room, in midwinter and midsummer.
type Preset struct {
	Climate        Climate
	Room           Room
	Winter, Summer Air
}

// Presets are round figures of our own (common practice, no published source): where a
// meter or a hygrometer has been read, it counts before them.
var Presets = []Preset{
	{Maritime, Heated, Air{19, 45}, Air{20, 60}},
	{Maritime, Unheated, Air{8, 75}, Air{17, 65}},
	{Maritime, Washroom, Air{19, 60}, Air{20, 70}},
	{Maritime, Outside, Air{6, 85}, Air{16, 75}},
	{Continental, Heated, Air{20, 30}, Air{23, 60}},
	{Continental, Unheated, Air{2, 75}, Air{21, 65}},
	{Continental, Washroom, Air{20, 45}, Air{23, 70}},
	{Continental, Outside, Air{-1, 80}, Air{20, 70}},
	{DrySummer, Heated, Air{19, 55}, Air{25, 45}},
	{DrySummer, Unheated, Air{12, 70}, Air{25, 45}},
	{DrySummer, Washroom, Air{19, 65}, Air{25, 55}},
	{DrySummer, Outside, Air{11, 75}, Air{24, 50}},
	{DampSummer, Heated, Air{18, 50}, Air{25, 65}},
	{DampSummer, Unheated, Air{13, 60}, Air{25, 70}},
	{DampSummer, Washroom, Air{18, 60}, Air{25, 75}},
	{DampSummer, Outside, Air{12, 65}, Air{24, 75}},
	{Tropical, Heated, Air{26, 60}, Air{28, 75}}, // the dry season and the wet
	{Tropical, Unheated, Air{26, 65}, Air{28, 80}},
	{Tropical, Washroom, Air{26, 70}, Air{28, 85}},
	{Tropical, Outside, Air{25, 70}, Air{28, 85}},
}

// PresetFor gives the preset of a climate and a room, nil where there is none.
func PresetFor(c Climate, r Room) *Preset {
	for i := range Presets {
		if Presets[i].Climate == c && Presets[i].Room == r {
			return &Presets[i]
		}
	}
	return nil
}

// summer is how far a month is from midwinter to midsummer in the northern half of the
// world, half a cosine from January to July.
var summer = [12]float64{0, 0.067, 0.25, 0.5, 0.75, 0.933, 1, 0.933, 0.75, 0.5, 0.25, 0.067}

// Year gives the air month by month; south of the equator midsummer is January.
func (p *Preset) Year(south bool) (y Year) {
	for m := range y {
		s := summer[m]
		if south {
			s = 1 - s
		}
		y[m].Celsius = p.Winter.Celsius + float64(s*(p.Summer.Celsius-p.Winter.Celsius))
		y[m].Humidity = p.Winter.Humidity + float64(s*(p.Summer.Humidity-p.Winter.Humidity))
	}
	return y
}

// Moisture gives the moisture content, %, that timber would come to in every month. A
// leaf follows late, and the less the better it is painted: this is the most it does.
func (y *Year) Moisture() (m [12]float64) {
	for i, a := range y {
		m[i] = Equilibrium(a.Celsius, a.Humidity)
	}
	return m
}

// Meter is a moisture meter's reading on the leaf: the month it was taken in, 0 January
// to 11 December, and the moisture content, %.
type Meter struct {
	Month    int
	Moisture float64
}

// Metered gives the year corrected so that it passes through the meter's readings: one
// moves every month alike, several share what lies between them by the months apart,
// round the turn of the year. The last of two in one month counts.
func Metered(year [12]float64, readings []Meter) [12]float64 {
	var off [12]float64
	var read [12]bool
	some := false
	for _, r := range readings {
		if r.Month >= 0 && r.Month < 12 {
			off[r.Month] = held(r.Moisture, 0, 100) - year[r.Month]
			read[r.Month], some = true, true
		}
	}
	if !some {
		return year
	}
	for m := range year {
		before, after := 0, 0
		for !read[(m-before+12)%12] {
			before++
		}
		for !read[(m+after)%12] {
			after++
		}
		by := off[(m-before+12)%12]
		if before+after > 0 {
			by += float64((off[(m+after)%12] - by) * (float64(before) / float64(before+after)))
		}
		year[m] = held(year[m]+by, 0, 100)
	}
	return year
}

// Season is how a leaf goes through the year. It is held by its hinges, so all it
// grows it grows at the closing edge; the gaps at hinges and head stay.
type Season struct {
	Today       float64     // moisture content, %
	Moisture    [12]float64 // %
	Grows       [12]float64 // mm the leaf is wider than today, month by month; below 0 narrower
	Tight       int         // the first month it is widest in
	Slack       int         // the first month it is narrowest in
	BeyondTable bool        // some moisture is outside [Trusted]: the growth is less sure
}

// SeasonOf gives a leaf's season: how much of it moves ([MovingOf]), mm, its coefficient,
// its moisture content today, %, and through the year.
func SeasonOf(across, coefficient, today float64, year [12]float64) Season {
	today = held(today, 0, 100)
	s := Season{Today: today, Moisture: year, BeyondTable: !Trusted.Holds(today)}
	for m, moisture := range year {
		s.Grows[m] = Change(across, coefficient, today, moisture)
		if s.Grows[m] > s.Grows[s.Tight] {
			s.Tight = m
		}
		if s.Grows[m] < s.Grows[s.Slack] {
			s.Slack = m
		}
		s.BeyondTable = s.BeyondTable || !Trusted.Holds(moisture)
	}
	return s
}

// AtFitting gives the closing gap to fit to today, mm, so that it is the one wanted in
// the month the leaf is widest in; not below 0.
func (s *Season) AtFitting(wanted float64) float64 {
	return held(held(wanted, -1e3, 1e3)+s.Grows[s.Tight], 0, 2e3)
}

// Through gives what a closing gap of today, mm, is in every month.
func (s *Season) Through(today float64) (gaps [12]float64) {
	today = held(today, -1e3, 1e3)
	for m, g := range s.Grows {
		gaps[m] = today - g
	}
	return gaps
}
