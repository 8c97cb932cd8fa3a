package sheet

import (
	"leafwright/game/words"
	"math"
	"strconv"
	"strings"

	"leafwright/game"
	"leafwright/game/hardware"
	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/judge"
	"leafwright/geom/timber"
	"leafwright/geom/trim"
)

// way is one door of the sheet for the client: as found, as it stands, or after one of
// the ways to make it fit.
type way struct {
	col    game.Column
	name   string // "As found", or a letter and the option's name
	letter string // of an option
	say    plain
	work   *hardware.Work // nil where nothing is done
	year   hardware.Season

	repairs *hardware.Repairs // nil where there is nothing to mend
	merit   merit
	margin  float64 // the greatest ± of a gap, 0 where the job has no readings
	doubt   float64 // the chance that the least sure finding is another than good
}

// client is a sheet for the client.
type client struct {
	a     *Ask
	ways  []way
	first int      // the place among ways of the door as it stands, then of the options
	best  int      // likewise, of the one recommended
	rated bool     // a rated leaf: what its gaps are is said, and not whether they are right
	wide  float64  // of a door's column, px
	said  []string // all that is written, for the words that need explaining
}

func newClient(a *Ask) *client {
	c := &client{a: a}
	j := a.Job
	if len(j.Made) == 0 || len(a.Options) < 3 { // five pictures beside each other are too small
		c.ways = append(c.ways, c.way(game.AsFound))
	}
	if len(j.Made) > 0 {
		c.first = len(c.ways)
		c.ways = append(c.ways, c.way(game.AsItStands))
	}
	for i, o := range a.Options {
		w := c.way(o)
		w.letter = string(rune('A' + i))
		w.name = w.letter + ": " + w.name
		c.ways = append(c.ways, w)
	}
	c.best = c.first + choose(c.merits())
	return c
}

// merits are what the ways are chosen by, the first of the door as it stands.
func (c *client) merits() (all []merit) {
	for i := range c.ways[c.first:] {
		all = append(all, c.ways[c.first+i].merit)
	}
	return all
}

// way gives the door of an option's place, [game.AsFound] or [game.AsItStands].
func (c *client) way(option int) way {
	j := c.a.Job
	w := way{col: j.Column(option), name: "As it is now"}
	w.say = plain{c.a.speaker(&w.col.Tried)}
	before := j.Stands()
	switch {
	case option >= 0:
		w.name = short(j.OptionName(option))
		w.work = hardware.WorkIn(j, &before, w.col.Tried.Steps)
		w.repairs = hardware.RepairsOf(j, &before, &w.col.Tried, w.col.Tried.Steps)
	case option == game.AsFound && len(j.Made) > 0:
		w.name = "As it was found"
	default:
		w.repairs = hardware.RepairsOf(j, &before, &before, nil)
	}
	w.year = hardware.SeasonOf(j, &w.col.Tried, hardware.Usual(game.WhereOf(j)))
	w.merit = meritOf(&w.col, w.minutes(), w.sticks() && j.House.Climate != "")
	if s := j.Survey; s != nil {
		change := s.ChangeAfter(0)
		if option != game.AsFound {
			change = j.Change(option)
		}
		j.SureOf(change).Weigh(w.col.Findings)
		for i := range w.col.Findings {
			f := &w.col.Findings[i]
			if f.Subject == judge.ClosedGap {
				w.margin = max(w.margin, f.Margin, f.OtherMargin)
			}
			if f.Odds.Told() && f.Verdict == judge.Good {
				w.doubt = max(w.doubt, f.Odds[judge.Binds])
			}
		}
	}
	return w
}

// longest is how many letters of a way's name are written: a column's head must find
// room on a page.
const longest = 160

func short(name string) string {
	if r := []rune(name); len(r) > longest {
		return string(r[:longest]) + "…"
	}
	return name
}

// minutes are what its work takes.
func (w *way) minutes() float64 {
	if w.work == nil {
		return 0
	}
	return w.work.Bill.Hands
}

// sticks tells whether the leaf is too wide in the dampest month though it is not now.
func (w *way) sticks() bool {
	now := w.year.Wanted.Judge(w.col.Fit.Gaps[door.LatchSide].Least)
	return now != judge.Binds && w.year.Wanted.Judge(w.year.Least[w.year.Tight]) == judge.Binds
}

// mended says what is done about the bad places, empty where there are none.
func (w *way) mended() string {
	if w.repairs == nil {
		return ""
	}
	n := map[timber.Cure]int{}
	for i := range w.repairs.Places {
		n[w.repairs.Places[i].Cure]++
	}
	var said []string
	for _, c := range [...]struct {
		cure timber.Cure
		how  string
	}{{timber.CutItOut, "cut out and replaced with new wood"}, {timber.FillIt, "filled"}, {timber.FoamIt, "filled"}} {
		if k := n[c.cure]; k > 0 {
			places := " places are "
			if k == 1 {
				places = " place is "
			}
			if c.cure == timber.FillIt { // with foam under it or without
				k += n[timber.FoamIt]
				n[timber.FoamIt] = 0
				if k > 1 {
					places = " places are "
				}
			}
			said = append(said, counted(k)+" bad"+places+c.how)
		}
	}
	if len(said) == 0 {
		return ""
	}
	return words.Capital(words.Listed(said)) + "."
}

// done says what is done, a sentence each.
func (w *way) done() (out []string) {
	if said := w.mended(); said != "" {
		out = append(out, said)
	}
	for i := range w.col.Tried.Steps {
		s := &w.col.Tried.Steps[i]
		if s.Move.Note == game.OfferUp && !s.Move.Off {
			out = append(out, "Then the door is hung and measured again, before the rest:")
		}
		switch {
		case s.Move.Off:
			continue
		case s.Why != nil && s.Why.About.Forbids():
			out = append(out, "Cannot be done: "+w.say.done(&s.Move))
		default:
			out = append(out, w.say.done(&s.Move))
		}
	}
	if len(out) == 0 {
		out = append(out, "Nothing.")
	}
	return out
}

// time says how long the work takes.
func (w *way) time() string {
	if w.work == nil {
		return "None."
	}
	b := &w.work.Bill
	said := "About " + hardware.Time(b.Hands) + " of work"
	if b.Waits > 0 {
		said += ", and " + hardware.Time(b.Waits) + " for glue and paint to dry"
	}
	return said + "."
}

// seasons says how the door goes through the year.
func (w *way) seasons() string {
	y, p := &w.year, w.say
	if y.Across == 0 {
		return "A door made like this hardly changes with the weather."
	}
	least := y.Least[y.Tight]
	month := game.Months[y.Tight]
	switch y.Wanted.Judge(least) {
	case judge.Binds:
		if w.col.Fit.Gaps[door.LatchSide].Least <= 0 {
			return "Damp weather makes it worse: in " + month + " it is " + p.Span(-least, -least) + " too big at the handle side."
		}
		return "Sticks in damp weather: in " + month + " it is " + p.Span(-least, -least) + " too big at the handle side."
	case judge.Tight:
		return "Close in damp weather: " + p.Span(least, least) + " left at the handle side in " + month + "."
	}
	if most := y.Most[y.Slack]; y.Wanted.Judge(most) == judge.Slack {
		return "Free at the handle side all year: " + p.Span(least, least) + " at the least, in " + month + "; but up to " + p.Span(most, most) + " in " + game.Months[y.Slack] + "."
	}
	return "Free at the handle side all year: never less than " + p.Span(least, least) + ", in " + month + "."
}

// volume is what the leaf measures, mm³.
func volume(l *door.Leaf) float64 {
	empty := *l
	c := l.Corners(0)
	empty.Top = geom.Level(min(c.HangingFoot.Y, c.ClosingFoot.Y) - 1)
	empty.Bottom = geom.Level(min(c.HangingFoot.Y, c.ClosingFoot.Y) - 2)
	off, _ := trim.Took(l, &empty)
	return off * l.Thickness
}

// harm says in plain words what the work may stir up, where any is done: lead in old paint, by
// the year of the house, and dust.
func (c *client) harm() (out []string) {
	worked := false
	for _, w := range c.options() {
		worked = worked || w.work != nil
	}
	if !worked {
		return nil
	}
	f := game.FactsOf(c.a.Job)
	f.Cuts, f.Sands = true, true
	const lead = " Lead harms, children and the unborn most. The paint is tested before it is planed, scraped or sanded; until it is known to be free of it, children and pregnant women stay away, dust is kept in and wiped up wet, and your local rules say who may do it."
	for _, r := range timber.Cautions(&f) {
		switch r.Caution {
		case timber.LeadLikely:
			if f.Built <= 0 && !f.Reclaimed {
				out = append(out, "If the paint is old it may hold lead, in coats under newer ones too."+lead)
			} else {
				out = append(out, "Paint so old is likely to hold lead, in coats under newer ones too."+lead)
			}
		case timber.LeadPossible:
			out = append(out, "Paint of those years may still hold lead."+lead)
		case timber.WoodDust, timber.CedarDust:
			if len(out) == 0 || !strings.HasPrefix(out[len(out)-1], "Wood dust") {
				out = append(out, "Wood dust harms lungs and nose: it is taken up at the tool, or the work is done outside.")
			}
		}
	}
	return out
}

// leastMargin is what a ± reads at the least, mm.
const leastMargin = 0.1

// sureness says how well all this is known.
func (c *client) sureness() (out []string) {
	margin := 0.0
	for i := range c.ways {
		margin = max(margin, c.ways[i].margin)
	}
	p := c.ways[c.best].say
	if c.a.Job.Survey == nil {
		out = append(out, "The sizes of door and frame were entered as exact. The gaps are as right as those sizes are.")
	} else {
		out = append(out, "The gaps are worked out from measurements taken by hand. Nine times out of ten the true gap is within "+p.Amount(max(margin, leastMargin))+" of the one given here; numbers with ± say their own.")
		if b := &c.ways[c.best]; b.letter != "" && b.doubt > judge.Doubtful && len(b.col.Out()) == 0 {
			out = append(out, "So there is a chance of about "+chance(b.doubt)+", or more, that after "+b.letter+" it rubs somewhere or does not stay shut at first, and needs a little more fitting.")
		}
	}
	y := &c.ways[c.best].year
	if y.Across > 0 {
		said := "How the door changes over the year is an estimate"
		if c.a.Job.House.Climate == "" {
			said += " for a mild, damp climate and a heated room, since nothing else was said"
		}
		out = append(out, said+": the most that bare wood does. Paint slows it.")
	}
	if len(c.options()) > 0 {
		said := "Times are rough"
		if c.cost(&c.ways[c.best]) != nil {
			said += ", and so are costs that go by them"
		}
		out = append(out, said+".")
	}
	return out
}

// chance says a chance in tenths.
func chance(p float64) string {
	return strconv.Itoa(int(min(9, max(1, math.Round(10*p))))) + " in 10"
}
