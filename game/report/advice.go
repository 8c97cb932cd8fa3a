package report

import (
	"fmt"
	"strings"

	"leafwright/game"
	"leafwright/game/beside"
	"leafwright/game/hardware"
	"leafwright/game/measure"
	"leafwright/game/words"
	"leafwright/geom/advise"
)

// Advice is what to do about a job's door as it stands.
type Advice struct {
	Job    game.Job
	Wishes game.AdviceWishes
	Found  advise.Advice
	// Plans are those found, then those that nearly do; where limits contradict each other
	// those that let some give way.
	Plans []Planned
}

// Planned is a plan and the door after it, done as an option.
type Planned struct {
	*advise.Plan
	Title  string
	Option game.Option
	After  Report
}

// Advise works out the advice on a job, whose [game.Job.Shapes] must give no fault;
// plans are called as the speaker calls them.
func Advise(j game.Job, w game.AdviceWishes, s words.Speaker) Advice {
	a := Advice{Job: j, Wishes: w, Found: game.Advice(&j, w)}
	plans := append(a.Found.Plans[:len(a.Found.Plans):len(a.Found.Plans)], a.Found.Near...)
	if c := a.Found.Conflict; c != nil {
		plans = c.Plans
	}
	for i := range plans {
		p := Planned{Plan: &plans[i]}
		p.Title = s.PlanTitle(p.Plan)
		p.Option = game.OptionOf(p.Plan, p.Title)
		with := j.Clone()
		with.Options = []game.Option{p.Option}
		p.After = OfOption(with, 0)
		a.Plans = append(a.Plans, p)
	}
	return a
}

// Helped tells whether the door fits as it is or there is a plan that makes it fit
// within all limits and wishes.
func (a Advice) Helped() bool { return a.Found.Good || len(a.Found.Plans) > 0 }

// Saved gives the job with the plans added as options. The error is a [game.Faults]:
// there are too many.
func (a Advice) Saved() (game.Job, error) {
	j := a.Job
	for i := range a.Plans {
		with, err := game.Form{}.AddOption(j, game.OptionText(a.Plans[i].Option))
		if err != nil {
			return a.Job, err
		}
		j = with
	}
	return j, nil
}

// Text writes the advice for a person.
func (a Advice) Text(s words.Speaker) string {
	var b strings.Builder
	j := &a.Job
	s.Hinges, s.Rails = len(j.Door.Hinges), beside.RailNames(&j.Anatomy)
	name := j.Name
	if name == "" {
		name = "A door without a name"
	}
	b.WriteString(name + "\n")
	stands := j.Stands()
	today := j.WantedToday(&stands)
	wrap(&b, "Wished for: "+a.wished()+". Gaps wanted: "+wanted(j, &today, s)+".", 0, 0)
	b.WriteString("\n")
	wrap(&b, s.AdviceHeadline(&a.Found), 0, 0)
	if a.Found.Refused == nil {
		if year := hardware.Unallowed(&s, j, &stands); year != "" {
			wrap(&b, year, 0, 0)
		}
		if swings := beside.Swings(&s, &stands, &today); swings != "" {
			wrap(&b, swings, 0, 0)
		}
	}
	if len(a.Found.Findings) > 0 {
		b.WriteString("\nWHAT IS NOT AS WANTED NOW\n")
		for _, l := range s.Findings(a.Found.Findings) {
			wrap(&b, l.Word+", "+l.Figure+"  "+l.Text, 2, 4)
		}
	}
	if c := a.Found.Conflict; c != nil {
		b.WriteString("\nWHY NOT\n")
		for _, said := range s.Conflict(c) {
			wrap(&b, said, 2, 4)
		}
	}
	for i := range a.Plans {
		a.plan(&b, s, i)
	}
	a.trade(&b, s)
	if cautions := game.Cautions(j); len(cautions) > 0 {
		b.WriteString("\nTAKE CARE\n")
		for _, c := range cautions {
			wrap(&b, "! "+c.Text+" "+c.Ask+" ("+c.Source+")", 2, 4)
		}
	}
	return b.String()
}

// wished says the wishes.
func (a Advice) wished() string {
	w := &a.Wishes
	said := []string{words.PreferenceWord(w.Prefer)}
	for _, x := range []struct {
		on   bool
		text string
	}{
		{w.KeepFrame, "nothing done to the frame"},
		{w.KeepHinges, "nothing done to the hinges"},
		{w.NoStrip, "no strip glued on"},
		{w.StilesAlike, "as much off one stile as off the other"},
		{w.TopRail, "the top rail as high as its neighbour"},
	} {
		if x.on {
			said = append(said, x.text)
		}
	}
	return strings.Join(said, "; ")
}

// plan writes the i-th plan: what it costs, its moves with their reasons and what to
// take care of, and how it then hangs.
func (a Advice) plan(b *strings.Builder, s words.Speaker, i int) {
	p := &a.Plans[i]
	fmt.Fprintf(b, "\n%d. %s\n", i+1, strings.ToUpper(p.Title))
	if given := s.PlanIf(p.Plan); given != "" {
		wrap(b, given, 3, 3)
	}
	wrap(b, s.PlanCost(p.Plan), 3, 3)
	if sure := s.PlanSure(p.Plan, a.Job.IsSurveyed()); sure != "" {
		wrap(b, sure, 3, 3)
	}
	wrap(b, words.PlanThen(&s, p.Plan, p.After.Findings), 3, 3)
	for k := range p.Steps {
		st := &p.Steps[k]
		wrap(b, fmt.Sprintf("%d. %s", k+1, s.PlanMove(p.Plan, k, &a.Found)), 3, 6)
		if did := s.Did(&st.Done); did != "" {
			wrap(b, did+".", 6, 8)
		}
		for _, c := range cares(st) {
			wrap(b, "Mind: "+s.Care(&c)+".", 6, 8)
		}
		p.After.cautions(b, p.Steps, k)
	}
	if stages := s.PlanStages(p.Plan); len(stages) > 0 {
		wrap(b, "Not all at once:", 3, 3)
		for _, said := range stages {
			wrap(b, "- "+said, 3, 5)
		}
	}
}

// trade writes what timber buys in evenness, in the kind of work of the best plan.
func (a Advice) trade(b *strings.Builder, s words.Speaker) {
	if len(a.Found.Trade) < 2 {
		return
	}
	b.WriteString("\nTIMBER AGAINST EVEN GAPS\n")
	wrap(b, "In the kind of work of plan 1, not rounded; the gaps at jambs and head end within:", 2, 2)
	fmt.Fprintf(b, "  %14s  %14s\n", "timber lost", "each other")
	for _, t := range a.Found.Trade {
		uneven := fmt.Sprintf("%.2f mm", t.Uneven)
		if s.Length != nil {
			uneven = fmt.Sprintf("%.3f\"", t.Uneven/measure.PerInch)
		}
		fmt.Fprintf(b, "  %14s  %14s\n", words.CubicCentimetres(t.Timber*1000), uneven)
	}
}
