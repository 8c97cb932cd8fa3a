package report

import (
	"strconv"
	"strings"

	"leafwright/game"
	"leafwright/game/hardware"
	"leafwright/game/words"
	"leafwright/geom/timber"
	"leafwright/geom/trim"
)

// leaf gives what the leaf reported on weighs and what hangs it.
func (r Report) leaf(s words.Speaker) hardware.Leaf {
	return hardware.LeafIn(&r.Job, &r.Tried, hardware.Region(s.Lexicon))
}

// before gives the door the moves reported on were done to: as it stood for an option's,
// as found for those done for keeps.
func (r Report) before() game.Tried {
	if r.Option >= 0 {
		return r.Stands
	}
	return r.Job.Found()
}

// stepsDone gives those moves.
func (r Report) stepsDone() []trim.Step {
	if r.Option >= 0 {
		return r.Tried.Steps
	}
	return r.Stands.Steps
}

// repairs gives what becomes of the leaf's bad places, nil where there are none.
func (r Report) repairs() *hardware.Repairs {
	before := r.before()
	return hardware.RepairsOf(&r.Job, &before, &r.Tried, r.stepsDone())
}

// work gives the work of the option, or of what was done for keeps; nil where nothing
// is done.
func (r Report) work() *hardware.Work {
	before := r.before()
	if r.Option < 0 && len(r.Stands.Steps) > 0 { // done already, the repairs with it or not
		return hardware.WorkOf(&before, r.Stands.Steps)
	}
	return hardware.WorkIn(&r.Job, &before, r.stepsDone())
}

// hardware writes what the leaf weighs and hangs on, and what the moves take.
func (r Report) hardware(b *strings.Builder, s words.Speaker) {
	if game.Rated(&r.Job) {
		section(b, "WEIGHT, HINGES AND WORK", []string{hardware.RatedLeaf})
		return
	}
	leaf := r.leaf(s)
	section(b, "WEIGHT, HINGES AND SCREWS", leaf.Lines(&s))
	before := r.before()
	hang := hardware.HangOf(&before, &r.Tried)
	section(b, "HANGING IT", hang.Lines(&s))
	if places := r.repairs(); places != nil {
		section(b, "HOLES, BORER AND ROT", places.Lines(&s))
	}
	if gaps := hardware.Gaps(&s, &r.Job, &r.Tried); gaps != nil {
		section(b, "GAPS TO FIT TO TODAY", gaps)
	}
	if year := hardware.Unallowed(&s, &r.Job, &r.Tried); year != "" {
		section(b, "THE YEAR", []string{year})
	}
	w := r.work()
	if w == nil {
		return
	}
	of := ""
	if r.Option < 0 && len(r.Stands.Steps) > 0 {
		of = " OF WHAT WAS DONE FOR KEEPS"
	}
	b.WriteString("\nTHE ORDER OF WORK" + of + "\n")
	tasks, all := w.Order(&s)
	for i, t := range tasks {
		number := strconv.Itoa(i+1) + ". "
		wrap(b, number+t, 2, 2+len(number))
	}
	wrap(b, all, 2, 2)
	b.WriteString("\nWHAT IT TAKES\n")
	takes := w.Takes(&s)
	cost := hardware.CostOf(w, &r.Job.Prices)
	for i, t := range takes {
		if cost != nil && cost.Items[i].Each > 0 {
			t += ": " + cost.Items[i].Say(cost.Currency)
		}
		wrap(b, "- "+t+".", 2, 4)
	}
	if len(takes) == 0 {
		wrap(b, "Nothing but tools.", 2, 2)
	}
	if cost != nil {
		for _, l := range cost.Lines(&s, w) {
			wrap(b, l, 2, 2)
		}
	}
	for i := range w.Strips {
		for k, l := range append(w.Strips[i].Lines(&s), w.Strips[i].Rests()) {
			wrap(b, l, 2+2*min(k, 1), 4)
		}
	}
}

type hang struct {
	Timber    wood     `json:"timber"`
	Mass      massOf   `json:"mass_kg"`
	TwoPeople bool     `json:"two_people"`
	There     int      `json:"hinges"`
	Plates    float64  `json:"plates"`
	Asked     int      `json:"hinges_asked_for"`
	Tall      float64  `json:"plates_asked_for"`
	Heavy     bool     `json:"heavy_weight_asked_for,omitempty"`
	Third     *float64 `json:"third_hinge_at,omitempty"`
	Pull      float64  `json:"pull_newton"`
	Leaning   float64  `json:"leaning_adds_newton"`
	Screws    screws   `json:"screws"`
	Sound     holds    `json:"in_sound_wood"`
	Worn      holds    `json:"in_worn_holes"`
	Text      []string `json:"text"`
}

type massOf struct {
	Stiles  float64 `json:"stiles"`
	Rails   float64 `json:"rails"`
	Muntins float64 `json:"muntins"`
	Panels  float64 `json:"panels"`
	Fitted  float64 `json:"fitted"`
	All     float64 `json:"all"`
	Least   float64 `json:"least"`
	Most    float64 `json:"most"`
}

type screws struct {
	Number   int     `json:"number"`
	Diameter float64 `json:"diameter"`
	Into     float64 `json:"into"`
	Gravity  float64 `json:"gravity"`
}

type holds struct {
	Borne  float64         `json:"borne_newton"`
	Enough bool            `json:"enough"`
	Leant  bool            `json:"enough_with_somebody_on_the_handle"`
	Do     []timber.Remedy `json:"do,omitempty"`
}

func (r Report) hang(s words.Speaker) *hang {
	w := r.leaf(s)
	m := w.Mass
	out := &hang{
		Timber: woodOf(&w.Wood), Mass: massOf{m.Stiles, m.Rails, m.Muntins, m.Panels, m.Fitted, m.All, w.Least, w.Most},
		TwoPeople: w.Most > timber.TwoPeople, There: w.There, Plates: w.Plates, Asked: w.Asked, Tall: w.Butt.Height, Heavy: w.Butt.Heavy,
		Pull: w.Pull, Leaning: w.Leaning, Screws: screws{w.Screws.Number, w.Screws.Diameter, w.Screws.Into, w.Gravity},
		Sound: holds{w.Sound.Borne, w.Sound.Enough, w.SoundLeant.Enough, w.Sound.Do}, Worn: holds{w.Worn.Borne, w.Worn.Enough, w.WornLeant.Enough, w.Worn.Do},
		Text: w.Lines(&s),
	}
	if w.Third != nil {
		out.Third = &w.Third.At
	}
	return out
}

type workOf struct {
	Tasks  []task  `json:"tasks"`
	Hands  float64 `json:"work_minutes"`
	Waits  float64 `json:"waiting_minutes"`
	Items  []item  `json:"takes"`
	Strips []strip `json:"strips,omitempty"`
	Cost   *costOf `json:"cost,omitempty"` // by the job's own prices
	Bared  float64 `json:"bared_m2"`
	Glued  float64 `json:"glued_m2"`
	Rests  string  `json:"figures"`
}

type task struct {
	Doing   timber.Doing `json:"doing"`
	Move    int          `json:"move,omitempty"` // from 1
	Minutes float64      `json:"minutes"`
	Wait    float64      `json:"wait_minutes,omitempty"`
	Text    string       `json:"text"`
}

type item struct {
	Thing  timber.Thing `json:"thing"`
	Paint  timber.Paint `json:"paint,omitempty"`
	Number int          `json:"number,omitempty"`
	Size   []float64    `json:"size,omitempty"`
	Amount float64      `json:"amount,omitempty"` // glue g, paint ml, filler and foam cm³
	Text   string       `json:"text"`
}

type strip struct {
	Move       int       `json:"move"` // from 1
	Edge       string    `json:"edge"`
	Diameter   float64   `json:"diameter"`
	Length     float64   `json:"dowel_length"`
	IntoLeaf   float64   `json:"into_leaf"`
	IntoStrip  float64   `json:"into_strip"`
	Through    bool      `json:"through_strip,omitempty"`
	Short      float64   `json:"short_into_leaf,omitempty"`
	Shorts     [2]int    `json:"short_at_ends"`
	Places     []float64 `json:"places"` // from the hanging end or the foot
	LeafGauge  float64   `json:"leaf_gauge"`
	StripGauge float64   `json:"strip_gauge"`
	Text       []string  `json:"text"`
}

func (r Report) workFor(s words.Speaker) *workOf {
	w := r.work()
	if w == nil {
		return nil
	}
	out := &workOf{Hands: w.Bill.Hands, Waits: w.Bill.Waits, Bared: w.Bill.Bared, Glued: w.Bill.Glued, Items: []item{}, Rests: string(timber.Practice)}
	text, _ := w.Order(&s)
	for i, t := range w.Bill.Tasks {
		out.Tasks = append(out.Tasks, task{t.Doing, t.Step + 1, t.Minutes, t.Wait, text[i]})
	}
	for _, i := range w.Bill.Items {
		x := item{i.Thing, i.Paint, i.N, nil, i.Amount, hardware.Item(&s, i)}
		for _, mm := range i.Size {
			if mm > 0 {
				x.Size = append(x.Size, mm)
			}
		}
		out.Items = append(out.Items, x)
	}
	out.Cost = costFor(&s, w, &r.Job)
	for i := range w.Strips {
		p := &w.Strips[i]
		d := p.Dowels
		out.Strips = append(out.Strips, strip{p.Step + 1, edge(d.Edge), d.Diameter, d.Length, d.IntoLeaf, d.IntoStrip, d.Through, d.Short, d.Shorts, d.Places, d.LeafGauge, d.StripGauge, append(p.Lines(&s), p.Rests())})
	}
	return out
}
