// Package report writes a job's fit as text for a person and as JSON for a
// program.
package report

import (
	"fmt"
	"math"
	"strings"
	"unicode/utf8"

	"leafwright/game"
	"leafwright/game/beside"
	"leafwright/game/hardware"
	"leafwright/game/words"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
	"leafwright/geom/timber"
)

// Report is a job hung and judged.
type Report struct {
	Job game.Job
	// Option is the option's place that the door is reported after, or game.AsItStands.
	Option int
	// Stands is the door after what was done for keeps, and Tried the one reported on:
	// the same, or that after the option.
	Stands, Tried game.Tried

	Fit        *fit.Fit
	Wanted     judge.Wanted    // what the fit is held against, as fitted today
	Findings   []judge.Finding // worst first
	Conditions []judge.Condition
	Cautions   []game.Caution
	Sure       *game.Sureness // nil where the shapes were given by hand
}

// Of hangs the job's door as it stands and judges it. The job must have been read without faults, and
// its [game.Job.Shapes] must give none: else what is hung is only as far as the
// readings go.
func Of(j game.Job) Report { return OfOption(j, game.AsItStands) }

// OfOption likewise takes the door after one of its options, by the option's place.
func OfOption(j game.Job, option int) Report {
	r := Report{Job: j, Option: option, Fit: new(fit.Fit), Stands: j.Stands()}
	r.Tried = r.Stands
	if option >= 0 {
		r.Tried = j.Try(option)
	}
	fit.Evaluate(r.Fit, &r.Tried.Door)
	r.Wanted = r.Job.WantedToday(&r.Tried)
	r.Findings = judge.Findings(r.Fit, &r.Tried.Door, &r.Wanted)
	if option < 0 {
		r.Sure = r.Job.Sure(true)
	} else {
		r.Sure = r.Job.SureOf(r.Job.Change(option))
		for r.Sure != nil && !r.Sure.SwingStep() {
		}
	}
	r.Sure.Weigh(r.Findings)
	r.Conditions = judge.Conditions(&r.Tried.Door)
	before := r.before()
	r.Cautions = hardware.Cautions(&r.Job, &before, &r.Tried, r.stepsDone(), timber.UK)
	return r
}

// Worst gives the worst verdict of the findings.
func (r Report) Worst() judge.Verdict { return judge.Worst(r.Findings) }

// AllGood tells whether nothing is out of what is wanted, no move of the option cannot
// be done, and no reading is left that does not fit the others.
func (r Report) AllGood() bool {
	if r.Option >= 0 {
		for i := range r.Tried.Steps {
			if refused(&r.Tried.Steps[i]) {
				return false
			}
		}
	}
	return r.Worst() == judge.Good && len(r.Job.Misfits()) == 0
}

// width is how wide the text is set, in characters.
const width = 78

// Text writes the report for a person.
func (r Report) Text(s words.Speaker) string {
	var b strings.Builder
	j := &r.Job
	name := j.Name
	if name == "" {
		name = "A door without a name"
	}
	fmt.Fprintf(&b, "%s\n", name)
	s.Hinges, s.Rails = len(j.Door.Hinges), beside.RailNames(&j.Anatomy)
	wrap(&b, fmt.Sprintf("Leaf %s × %s × %s, hinges on the %s, in an opening %s × %s. Gaps wanted: %s.",
		number(s, j.Door.Leaf.Width), number(s, j.LeafHeight), number(s, j.Door.Leaf.Thickness), j.Hand,
		number(s, j.OpeningWidth), number(s, j.OpeningHeight), wanted(j, &r.Wanted, s)), 0, 0)
	if r.Option >= 0 {
		wrap(&b, tried(&s, j.OptionName(r.Option), &r.Tried), 0, 0)
	}
	b.WriteString("\n")
	wrap(&b, s.Headline(r.Findings), 0, 0)
	r.misfits(&b, s)

	b.WriteString("\nWHAT THE FIT SHOWS\n")
	for _, l := range s.Findings(r.Findings) {
		r.line(&b, l)
	}
	r.moves(&b, s)
	r.hardware(&b, s)
	r.readings(&b, s)
	b.WriteString("\nTHE LEAF AND THE FRAME BY THEMSELVES\n")
	for _, c := range r.Conditions {
		r.line(&b, s.Condition(c))
	}
	if len(r.Cautions) > 0 {
		b.WriteString("\nTAKE CARE\n")
		for _, c := range r.Cautions {
			wrap(&b, "! "+c.Text+" "+c.Ask+" ("+c.Source+")", 2, 4)
		}
	}
	if j.Note != "" {
		b.WriteString("\nNOTE\n")
		for _, para := range strings.Split(j.Note, "\n") {
			wrap(&b, para, 2, 2)
		}
	}
	return b.String()
}

func (r Report) line(b *strings.Builder, l words.Line) {
	lead := fmt.Sprintf("  %-9s", l.Word)
	said := l.Text
	if l.Figure != "" {
		said = l.Figure + "  " + said
	}
	wrap(b, lead+said, 0, 11)
	if l.Cause != "" {
		wrap(b, l.Cause, 11, 11)
	}
}

// wrap writes text in lines of at most width characters, the first indented by
// first spaces and the others by rest.
func wrap(b *strings.Builder, text string, first, rest int) {
	col, gap := first, 0
	b.WriteString(strings.Repeat(" ", first))
	started := false
	for _, word := range strings.SplitAfter(text, " ") {
		said := strings.TrimRight(word, " ")
		n := utf8.RuneCountInString(said)
		switch {
		case said == "":
			gap++
			continue
		case started && col+gap+n > width:
			b.WriteString("\n" + strings.Repeat(" ", rest))
			col = rest
		default:
			b.WriteString(strings.Repeat(" ", gap))
			col += gap
		}
		b.WriteString(said)
		col += n
		gap = len(word) - len(said)
		started = true
	}
	b.WriteString("\n")
}

// wanted says which gaps are wanted, whose they are, and those that are wanted otherwise
// at fitting today, for the year's movement and the paint to come.
func wanted(j *game.Job, today *judge.Wanted, s words.Speaker) string {
	of := func(w *judge.Wanted, e fit.Edge) string {
		l := w.Gaps[e]
		return s.Range(l.Least, l.Most) + " at the " + s.Edge(e)
	}
	side := func(e fit.Edge) string { return of(&j.Wanted, e) }
	g := j.Wanted.Gaps
	said := side(fit.HingeSide) + ", " + side(fit.LatchSide) + ", " + side(fit.HeadSide)
	if g[fit.HingeSide] == g[fit.LatchSide] && g[fit.LatchSide] == g[fit.HeadSide] {
		said = s.Range(g[fit.HeadSide].Least, g[fit.HeadSide].Most) + " at jambs and head"
	}
	said += ", " + side(fit.FloorSide)
	if p, ok := game.PresetNamed(j.WantedName); ok {
		name, _, _ := strings.Cut(p.Label, ":")
		said += " (" + name + "; " + p.Source + ")"
		if p.Caution != "" {
			said += ". " + strings.TrimSuffix(p.Caution, ".")
		}
	}
	var other []string
	for e := range fit.Edges {
		if now := of(today, e); now != side(e) {
			other = append(other, now)
		}
	}
	if len(other) > 0 {
		// Paint is on all sides, and the year at the latch alone.
		by := func(e fit.Edge) float64 { return today.Gaps[e].Least - g[e].Least }
		why := "the year's movement"
		switch painted := by(fit.HingeSide); {
		case painted != 0 && math.Abs(by(fit.LatchSide)-painted) > judge.Blade:
			why += " and the paint to come"
		case painted != 0:
			why = "the paint to come"
		}
		said += ". At fitting today, for " + why + ": " + strings.Join(other, ", ")
	}
	return said
}

// number writes a size, in mm without a needless point and without the unit.
func number(s words.Speaker, mm float64) string {
	if s.Length != nil {
		return s.Length(mm)
	}
	return strings.TrimSuffix(fmt.Sprintf("%.1f", mm), ".0")
}
