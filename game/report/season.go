package report

import (
	"encoding/json"
	"strings"
	"unicode/utf8"

	"leafwright/game"
	"leafwright/game/beside"
	"leafwright/game/hardware"
	"leafwright/game/words"
	"leafwright/geom/judge"
	"leafwright/geom/timber"
)

// Season is a job's leaf through the year.
type Season struct {
	Job    game.Job
	Option int // the option's place, or game.AsItStands
	Tried  game.Tried
	Year   hardware.Season
}

// SeasonOf takes the job's leaf through the year, as it stands or after an option. The
// climate and the room must be among those of package hardware.
func SeasonOf(j game.Job, option int, at hardware.Where) Season {
	s := Season{Job: j, Option: option}
	if option >= 0 {
		s.Tried = j.Try(option)
	} else {
		s.Tried = j.Stands()
	}
	s.Year = hardware.SeasonOf(&s.Job, &s.Tried, at)
	return s
}

// AllGood tells whether the closing gap is as wanted in every month.
func (r *Season) AllGood() bool { return r.Year.Worst() == judge.Good }

// Text writes the year for a person.
func (r *Season) Text(s words.Speaker) string {
	var b strings.Builder
	s.Hinges, s.Rails = len(r.Job.Door.Hinges), beside.RailNames(&r.Job.Anatomy)
	name := r.Job.Name
	if name == "" {
		name = "A door without a name"
	}
	b.WriteString(name + "\n")
	if r.Option >= 0 {
		wrap(&b, tried(&s, r.Job.OptionName(r.Option), &r.Tried), 0, 0)
	}
	b.WriteString("\n")
	wrap(&b, r.Year.Headline(&s), 0, 0)
	section(&b, "WHERE IT HANGS", r.Year.AirLines())
	section(&b, "HOW IT MOVES", r.Year.Moves(&s, r.Tried.Anatomy.Make))
	b.WriteString("\nTHE YEAR\n")
	table(&b, r.Year.Rows(&s))
	if game.Rated(&r.Job) {
		section(&b, "MIND", []string{hardware.RatedLeaf, hardware.Caution})
		return b.String()
	}
	section(&b, "GAPS TO FIT TO TODAY", r.Year.Fitting(&s))
	section(&b, "MIND", []string{hardware.Caution})
	return b.String()
}

// section writes paragraphs under a title.
func section(b *strings.Builder, title string, lines []string) {
	b.WriteString("\n" + title + "\n")
	for _, l := range lines {
		wrap(b, l, 2, 4)
	}
}

// table writes rows in columns, all but the first and the last set to the right.
func table(b *strings.Builder, rows [][]string) {
	wide := make([]int, len(rows[0]))
	for _, r := range rows {
		for i, c := range r {
			wide[i] = max(wide[i], utf8.RuneCountInString(c))
		}
	}
	for _, r := range rows {
		line := " "
		for i, c := range r {
			pad := strings.Repeat(" ", wide[i]-utf8.RuneCountInString(c))
			if i == 0 || i == len(r)-1 {
				line += " " + c + pad + "  "
			} else {
				line += pad + c + "   "
			}
		}
		b.WriteString(strings.TrimRight(line, " ") + "\n")
	}
}

// SeasonVersion is the version of the year's form.
const SeasonVersion = 1

type year struct {
	Version     int              `json:"leafwright_season"`
	Name        string           `json:"name"`
	Option      string           `json:"option,omitempty"`
	Verdict     string           `json:"verdict"` // the year's worst
	Headline    string           `json:"headline"`
	Climate     timber.Climate   `json:"climate"`
	Room        timber.Room      `json:"room"`
	South       bool             `json:"south"`
	Timber      wood             `json:"timber"`
	Coefficient float64          `json:"coefficient"` // of the width, by % of moisture
	Across      float64          `json:"across"`      // mm that moves
	Today       float64          `json:"moisture"`
	Basis       hardware.Basis   `json:"moisture_by"`
	Moves       float64          `json:"moves"`
	Quarter     float64          `json:"moves_if_quarter_sawn"`
	Flat        float64          `json:"moves_if_flat_sawn"`
	Beyond      bool             `json:"beyond_table"`
	Tight       string           `json:"widest_in"`
	Slack       string           `json:"narrowest_in"`
	Months      []month          `json:"months"`
	Wanted      limits           `json:"wanted"`
	Fit         map[string]fitTo `json:"fit_to,omitempty"` // for the targets wanted; of a rated leaf none, nor the next two
	Low         *float64         `json:"closing_gap_least_to_fit_to,omitempty"`
	High        *float64         `json:"closing_gap_most_to_fit_to,omitempty"`
	Paint       allowance        `json:"paint_takes"`
	Painted     bool             `json:"paint_said"` // by the job; else what is usual, and in no gap
	Caution     string           `json:"caution"`
}

type wood struct {
	Said   string        `json:"said"`
	Name   string        `json:"taken_as"`
	Known  bool          `json:"known"`
	Sure   bool          `json:"sure"`
	Status timber.Status `json:"figures"`
}

type month struct {
	Name     string   `json:"month"`
	Celsius  float64  `json:"celsius"`
	Humidity float64  `json:"humidity"`
	Moisture float64  `json:"moisture"`
	Grows    float64  `json:"grows"`
	Least    *float64 `json:"gap_least"`
	Most     *float64 `json:"gap_most"`
	Verdict  string   `json:"verdict"`
}

type fitTo struct {
	Wanted float64 `json:"wanted"`
	Paint  float64 `json:"paint"`
	Season float64 `json:"season"`
	All    float64 `json:"all"`
	Text   string  `json:"text"`
}

type allowance struct {
	Middle float64 `json:"middle"`
	Least  float64 `json:"least"`
	Most   float64 `json:"most"`
}

func woodOf(w *hardware.Wood) wood {
	return wood{w.Said, w.Species.Name, w.Known, w.Sure, w.Species.Status}
}

// JSON writes the year for a program: lengths in mm, moistures and humidities in %.
// Numbers are as computed, unrounded.
func (r *Season) JSON(s words.Speaker) ([]byte, error) {
	y := &r.Year
	out := year{
		Version: SeasonVersion, Name: r.Job.Name, Verdict: words.Word(y.Worst()), Headline: y.Headline(&s),
		Climate: y.Climate, Room: y.Room, South: y.South, Timber: woodOf(&y.Wood), Coefficient: y.Coefficient, Across: y.Across,
		Today: y.Today, Basis: y.Basis, Moves: y.Sawn[0], Quarter: y.Sawn[1], Flat: y.Sawn[2], Beyond: y.BeyondTable,
		Tight: hardware.Months[y.Tight], Slack: hardware.Months[y.Slack],
		Wanted: limits{y.Wanted.Least, y.Wanted.Target, y.Wanted.Most},
		Paint:  allowance{y.Paint.Loses(), y.Paint.Least, y.Paint.Most}, Painted: y.Painted, Caution: hardware.Caution,
	}
	if r.Option >= 0 {
		out.Option = r.Job.OptionName(r.Option)
	}
	if !game.Rated(&r.Job) {
		out.Fit, out.Low = fitsTo(&s, &y.Plan), &y.Low
		if y.Wanted.Most > 0 {
			out.High = &y.High
		}
	} else {
		out.Caution = hardware.RatedLeaf + " " + out.Caution
	}
	for m, name := range hardware.Months {
		out.Months = append(out.Months, month{name, y.Air[m].Celsius, y.Air[m].Humidity, y.Moisture[m], y.Grows[m], number64(y.Least[m]), number64(y.Most[m]), words.Word(y.Verdicts[m])})
	}
	b, err := json.MarshalIndent(out, "", "  ")
	return append(b, '\n'), err
}
