package game

import (
	"strings"

	"leafwright/geom/door"
	"leafwright/geom/judge"
	"leafwright/geom/timber"
)

// Where is where the leaf hangs and what is known of its moisture.
type Where struct {
	Climate timber.Climate // "" not said, or Room not: no season is counted
	Room    timber.Room
	South   bool    // of the equator
	Month   int     // it was read in, 0 January to 11 December; −1 not said
	Meter   float64 // what a moisture meter read on the leaf then, %; 0 not read
	Read    Meter   // what it read in other months
}

// WhereOf gives what the job says of it. The door was read in the month the job says;
// where it says none and the meter was read in one month only, in that.
func WhereOf(j *Job) Where {
	w := Where{Climate: j.House.Climate, Room: j.House.Room, South: j.House.South, Month: -1, Read: j.Meter}
	n := 0
	for m, x := range j.Meter {
		if x > 0 {
			n, w.Month = n+1, m
		}
	}
	if n != 1 {
		w.Month = -1
	}
	for m := range Months {
		if strings.EqualFold(Months[m], j.House.Month) {
			w.Month = m
		}
	}
	if w.Month >= 0 {
		w.Meter = j.Meter[w.Month]
	}
	return w
}

// Basis is what the leaf's moisture today is taken from.
type Basis string

// The bases.
const (
	ByMeter Basis = "meter"        // read today
	ByMonth Basis = "month"        // what timber comes to in this month's air, or the meter's year
	ByYear  Basis = "mean of year" // the middle of the year, nothing being known
)

// MoistureOf gives the leaf's moisture through the year and today, %, and what today's
// rests on. Climate and room must have a preset.
func MoistureOf(w *Where) (year [12]float64, today float64, by Basis) {
	if p := timber.PresetFor(w.Climate, w.Room); p != nil {
		air := p.Year(w.South)
		year = air.Moisture()
	}
	var read []timber.Meter
	for m, x := range w.Read {
		if x > 0 {
			read = append(read, timber.Meter{Month: m, Moisture: x})
		}
	}
	named := w.Month >= 0 && w.Month < 12
	if w.Meter > 0 && named {
		read = append(read, timber.Meter{Month: w.Month, Moisture: w.Meter})
	}
	year = timber.Metered(year, read)
	switch {
	case w.Meter > 0:
		return year, w.Meter, ByMeter
	case named:
		return year, year[w.Month], ByMonth
	}
	for _, m := range year {
		today += m / 12
	}
	return year, today, ByYear
}

// Fitting is what the gaps wanted in service come to at fitting.
type Fitting struct {
	Season  *timber.Season // nil where nothing is said of the room, or the leaf does not move
	Across  float64        // mm of the leaf's timber that moves
	Leaf    timber.Allowance
	Frame   timber.Allowance
	Holds   bool // the gaps wanted are for bare wood and hold the paint to come
	Gaps    [door.Edges]timber.Gap
	Wanted  judge.Wanted // at fitting
	Crowded bool         // the leaf moves as much as the closing gap's limits leave, or more: the least is kept, the most is not
}

// FittingOf gives what the gaps the job wants come to when the leaf is fitted, as it is
// after moves: each with the paint to come, and the closing gap with what the leaf is
// still to grow until the month it is widest in. The gaps keep within their limits
// through the year when they are fitted to within those of Wanted.
func FittingOf(j *Job, t *Tried, w Where) (f Fitting) {
	f.Across = timber.MovingOf(&t.Door.Leaf, &t.Anatomy).Across
	if timber.PresetFor(w.Climate, w.Room) != nil && f.Across > 0 {
		year, today, _ := MoistureOf(&w)
		species, _ := timber.Find(t.Anatomy.Timber)
		s := timber.SeasonOf(f.Across, species.Coefficient(timber.AnyWay), today, year)
		f.Season = &s
	}
	return f.with(j)
}

// WantedToday gives what is wanted of the door as it is fitted today: the gaps the job
// wants in service, with the paint to come and what the leaf is still to grow. Where the
// job says nothing of paint and room it is the same, and of a rated leaf, whose gaps its
// certificate lays down.
func (j *Job) WantedToday(t *Tried) judge.Wanted {
	if j.rated() {
		return j.Wanted
	}
	return FittingOf(j, t, WhereOf(j)).Wanted
}

// FittingIn gives what [FittingOf] does by a season that is known.
func FittingIn(j *Job, across float64, s *timber.Season) Fitting {
	f := Fitting{Across: across}
	if across > 0 {
		f.Season = s
	}
	return f.with(j)
}

func (f Fitting) with(j *Job) Fitting {
	var none timber.Face
	f.Holds = holdsPaint(j.WantedName)
	if !f.Holds {
		f.Leaf, f.Frame = timber.AllowanceOf(FaceOf(&j.Paint.Leaf), none), timber.AllowanceOf(none, FaceOf(&j.Paint.Frame))
	}
	both := f.Leaf.Loses() + f.Frame.Loses()
	var wanted [door.Edges]float64
	var paint [door.Edges]timber.Allowance
	f.Wanted = j.Wanted
	for e := range paint {
		paint[e] = f.Leaf
		if door.Edge(e) != door.FloorSide { // the floor is no painted face
			paint[e].Takes += f.Frame.Takes
			paint[e].Gives += f.Frame.Gives
		}
		g := &f.Wanted.Gaps[e]
		wanted[e] = g.Target
		raise(g, paint[e].Loses(), paint[e].Loses())
	}
	raise(&f.Wanted.Stop, both, both)
	raise(&f.Wanted.Swing, both, both)
	raise(&f.Wanted.SwingFloor, f.Leaf.Loses(), f.Leaf.Loses())
	f.Gaps = timber.Fitting(wanted, f.Season, paint)
	if s := f.Season; s != nil {
		f.Crowded = raise(&f.Wanted.Gaps[door.LatchSide], s.Grows[s.Tight], s.Grows[s.Slack])
		raise(&f.Wanted.Swing, max(0, s.Grows[s.Tight]), 0)
	}
	return f
}

// workable is the least room between two limits that a gap is fitted to with a plane, mm
// (common practice, no published source).
const workable = 0.5

// raise makes a gap's limits greater by what it loses at the most, and its greatest by
// what it loses at the least; below 0 they grow less. Where that leaves less room than
// can be worked to, the least counts, with as much room above it as there was, and it
// says so.
func raise(l *judge.Limits, most, least float64) (crowded bool) {
	room := l.Most - l.Least
	l.Least = max(0, l.Least+most)
	l.Target = max(0, l.Target+most)
	if l.Most > 0 {
		l.Most = max(0, l.Most+least)
		if crowded = l.Most < l.Least+min(workable, room); crowded {
			l.Most = l.Least + room
		}
		l.Target = max(l.Least, min(l.Target, l.Most))
		l.Most = max(l.Most, l.Target)
	}
	return crowded
}

// holdsPaint tells whether a preset's gaps are for bare wood, paint still to come.
func holdsPaint(preset string) bool {
	return preset == "bare" || preset == "us-before-paint" || preset == "carpentry-1916"
}

// FaceOf gives a painted face as package timber has it.
func FaceOf(c *Coating) (f timber.Face) {
	kind := func(p, usual timber.Paint) timber.Paint {
		if p == "" {
			return usual
		}
		return p
	}
	if c.Strip {
		f.Off = []timber.Layers{{Paint: kind(c.Old, timber.OldPaint), Coats: c.On}}
		f.OffMM = c.Film
	}
	f.On = []timber.Layers{{Paint: timber.Primer, Coats: c.Primer}, {Paint: kind(c.Kind, timber.Enamel), Coats: c.ToCome}}
	return f
}
