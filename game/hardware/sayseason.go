package hardware

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"leafwright/game"
	"leafwright/game/words"
	"leafwright/geom/door"
	"leafwright/geom/judge"
	"leafwright/geom/timber"
)

// Months are the names of the months.
var Months = game.Months

// Climates and Rooms are those there are presets for, in their order.
func Climates() (all []timber.Climate) {
	for _, p := range timber.Presets {
		if len(all) == 0 || all[len(all)-1] != p.Climate {
			all = append(all, p.Climate)
		}
	}
	return all
}

// Rooms likewise.
func Rooms() (all []timber.Room) {
	for _, p := range timber.Presets {
		if p.Climate == timber.Presets[0].Climate {
			all = append(all, p.Room)
		}
	}
	return all
}

func percent(x float64) string { return strconv.FormatFloat(x, 'f', 1, 64) + " %" }

func signed(s *words.Speaker, mm float64) string {
	said := tenth(s, mm)
	switch {
	case strings.HasPrefix(said, "0.0 "):
		return said
	case mm < 0:
		return "−" + said
	}
	return "+" + said
}

// AirLines says where the leaf hangs and what its moisture rests on.
func (s *Season) AirLines() []string {
	p := timber.PresetFor(s.Climate, s.Room)
	room := map[timber.Room]string{timber.Heated: "heated room", timber.Unheated: "unheated room", timber.Washroom: "wet room", timber.Outside: "outer door under cover"}[s.Room]
	where := "midwinter is January"
	if s.South {
		where = "south of the equator, midwinter is July"
	}
	air := fmt.Sprintf("%s climate, %s; %s. Midwinter %s °C and %s %% humidity, midsummer %s °C and %s %% (round figures of our own; a hygrometer in the room tells better).",
		words.Capital(string(s.Climate)), room, where, whole(p.Winter.Celsius), whole(p.Winter.Humidity), whole(p.Summer.Celsius), whole(p.Summer.Humidity))
	today := "The leaf's moisture today is " + percent(s.Today)
	switch s.Basis {
	case ByMeter:
		today += ", by the meter"
		if s.Month >= 0 {
			today += " in " + Months[s.Month] + ", and the year is moved to pass through it"
		}
		today += "."
	case ByMonth:
		today += ", what timber comes to in the air of " + Months[s.Month] + ": read it with a meter, which counts before this."
	default:
		today += ", the mean of the year, for neither the month nor a meter's reading is said: read it with a meter, which counts before this."
	}
	return []string{air, today}
}

// Moves says how much of the leaf moves, and how far.
func (s *Season) Moves(w *words.Speaker, m door.Make) []string {
	if s.Across == 0 {
		return []string{"A flush leaf, its faces glued crosswise, moves by nothing worth counting: its gaps stay the year round."}
	}
	what := "its full width"
	if m == door.Framed {
		what = "its two stiles, for the rails hold it along their grain and the panels float"
	}
	said := fmt.Sprintf("A %s leaf moves across by %s: %s of %s. ", m, what, long(w, math.Round(s.Across)), s.name())
	source := "Wood Handbook, table 13-5"
	switch s.Species.Status {
	case timber.Practice:
		source = "the middle of the softwoods, common practice"
	case timber.Memory:
		source = "figures from memory"
	}
	said += fmt.Sprintf("From %s, when it is narrowest, to %s, when it is widest, it grows %s; %s if its timber is sawn on the quarter, %s if flat (%s).",
		Months[s.Slack], Months[s.Tight], tenth(w, s.Sawn[0]), tenth(w, s.Sawn[1]), tenth(w, s.Sawn[2]), source)
	lines := []string{said}
	if m == door.Boarded {
		lines = append(lines, "Boards whose tongues stand open take part of that up among themselves (common practice): it is the most it does.")
	}
	if doubt := s.say(); doubt != "" {
		lines = append(lines, doubt)
	}
	if s.BeyondTable {
		lines = append(lines, fmt.Sprintf("Some of the moistures lie outside %s to %s %%, for which its movement is published: less sure there.", whole(timber.Trusted.Lo), whole(timber.Trusted.Hi)))
	}
	return lines
}

// Rows gives the table of the year: a row a month, after a row of heads.
func (s *Season) Rows(w *words.Speaker) (rows [][]string) {
	gap := "closing gap"
	if s.Fit[door.LatchSide].Paint != 0 {
		gap += ", painted"
	}
	rows = append(rows, []string{"", "moisture", "leaf", gap, ""})
	for m := range Months {
		rows = append(rows, []string{Months[m], percent(s.Moisture[m]), signed(w, s.Grows[m]), s.gap(w, m), s.judged(m)})
	}
	return rows
}

// judged says how the gap is in a month, at its narrowest place and at its widest.
func (s *Season) judged(m int) string {
	if v := s.Verdicts[m]; v < judge.Slack && s.Wanted.Judge(s.Most[m]) == judge.Slack {
		return words.Word(v) + ", slack elsewhere"
	}
	return words.Word(s.Verdicts[m])
}

func (s *Season) gap(w *words.Speaker, m int) string {
	a, b := words.Millimetres(s.Least[m]), words.Millimetres(s.Most[m])
	if w.Length != nil {
		a, b = w.Length(s.Least[m]), w.Length(s.Most[m])
	}
	less, more := "", ""
	if s.Verdicts[m] == judge.Tight && tenth(w, s.Least[m]) == tenth(w, s.Wanted.Least) {
		less = "just under "
	}
	if s.Verdicts[m] == judge.Slack && tenth(w, s.Most[m]) == tenth(w, s.Wanted.Most) {
		more = "just over "
	}
	if a == b {
		return less + more + a
	}
	a, b = less+a, more+b
	return strings.TrimSuffix(a, " mm") + " to " + b
}

// Headline says the year in a sentence.
func (s *Season) Headline(w *words.Speaker) string {
	least := s.Least[s.Tight]
	if s.Across == 0 {
		said := "The closing gap stays as it is all the year, " + w.Span(least, least) + " at the least"
		if s.Worst() == judge.Good {
			return said + ": as wanted."
		}
		return said + ": " + words.Word(s.Worst()) + "."
	}
	tight, slack := s.Wanted.Judge(least), s.Wanted.Judge(s.Most[s.Slack])
	said, when := "", " in "+Months[s.Tight]
	always := true
	for m := range s.Least {
		always = always && s.Wanted.Judge(s.Least[m]) == tight
	}
	touches := math.Abs(least) < judge.Blade
	switch {
	case touches && tight < judge.Slack:
		said = "The leaf just touches at the " + w.LatchSide + when
	case tight == judge.Binds && always:
		said = "The leaf binds at the " + w.LatchSide + " all the year, by " + tenth(w, least) + when
	case tight == judge.Binds:
		said = "The leaf binds at the " + w.LatchSide + when + ", by " + tenth(w, least)
	case tight == judge.Tight:
		if always {
			when = " all the year, the most" + when
		}
		said = "The closing gap is tight" + when + ": " + apart(w, least, s.Wanted.Least) + ", where " + long(w, s.Wanted.Least) + " is wanted"
	}
	if slack == judge.Slack {
		switch part := s.Wanted.Judge(s.Least[s.Slack]) != judge.Slack; {
		case said == "" && part:
			said = "The closing gap, where it is widest, is"
		case said == "":
			said = "The closing gap is"
		case part:
			said += "; where it is widest it is"
		default:
			said += ";"
		}
		said += " slack in " + Months[s.Slack] + ": " + apart(w, s.Most[s.Slack], s.Wanted.Most) + ", where " + long(w, s.Wanted.Most) + " at the most is wanted"
	}
	if said == "" {
		said = "The closing gap is as wanted all the year: " + tenth(w, least) + " at the least, in " + Months[s.Tight]
	}
	return said + "."
}

// apart writes a gap that misses a limit, so that it does not read like the limit.
func apart(w *words.Speaker, mm, limit float64) string {
	if said := tenth(w, mm); said != tenth(w, limit) {
		return said
	}
	return fine(w, mm)
}

// Fitting says the gaps to fit to today.
func (s *Season) Fitting(w *words.Speaker) (lines []string) {
	paint := s.Fit[door.LatchSide].Paint
	switch {
	case s.Across == 0 && paint == 0:
		return append(lines, "As wanted: a leaf that does not move needs nothing added.", s.paint())
	case s.Across == 0:
		lines = append(lines, words.Capital(w.LatchSide)+": "+Parts(w, &s.Plan, door.LatchSide)+".")
	default:
		lines = append(lines, words.Capital(w.LatchSide)+": "+Parts(w, &s.Plan, door.LatchSide)+".")
		lines = append(lines, allYear(w, &s.Plan))
	}
	others := [...]door.Edge{door.HingeSide, door.HeadSide, door.FloorSide}
	if paint != 0 {
		for _, e := range others {
			lines = append(lines, words.Capital(w.Edge(e))+": "+Parts(w, &s.Plan, e)+".")
		}
		return append(lines, s.paint())
	}
	same := "Hinge side, head and floor: the leaf hangs on its hinges and does not grow in height, so their gaps stay:"
	for i, e := range others {
		if i > 0 {
			same += ","
		}
		same += " " + tenth(w, s.Fit[e].All) + " at the " + w.Edge(e)
	}
	lines = append(lines, same+".")
	return append(lines, s.paint())
}

func (s *Season) paint() string {
	if s.Painted || s.Plan.Holds {
		return paintLine(s.job, &s.Plan)
	}
	return fmt.Sprintf("Paint is not in these. Where it is still to come, a primer and two coats of enamel on leaf and frame take %s more from each gap at jambs and head, between %s and %s (films from memory): add that, unless the gaps wanted are for bare wood.",
		hundredths(s.Paint.Loses()), hundredths(s.Paint.Least), hundredths(s.Paint.Most))
}

// Caution says how far the year's figures go.
const Caution = "A painted leaf follows the air weeks late and by less, the less the better it is painted, top and foot too: these are the most it does. Heating, a bathroom's steam and sun on one face do more than the calendar. Where a meter has been read, it counts first."
