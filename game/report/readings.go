package report

import (
	"fmt"
	"strings"

	"leafwright/game"
	"leafwright/game/words"
	"leafwright/geom/survey"
)

// misfits writes first of all which readings do not fit the others.
func (r Report) misfits(b *strings.Builder, s words.Speaker) {
	said := r.suspects(s)
	if len(said) == 0 {
		return
	}
	b.WriteString("\nREADINGS THAT DO NOT FIT\n")
	for _, text := range said {
		wrap(b, text, 2, 4)
	}
}

// suspects says each suspect and each group that contradicts itself, and then what
// was read of stiles and rails that the leaf cannot have.
func (r Report) suspects(s words.Speaker) (said []string) {
	for _, m := range r.Job.Misfits() {
		if len(m.Readings) == 1 {
			said = append(said, s.Suspect(m.Judged[0], r.Job.Readings[m.Readings[0]].Value.Text))
			continue
		}
		var typed []string
		for _, i := range m.Readings {
			typed = append(typed, r.Job.Readings[i].Value.Text)
		}
		said = append(said, s.Doubt(m.Judged, typed))
	}
	for _, f := range r.Job.MemberFaults() {
		for i := range r.Job.Readings {
			if strings.HasPrefix(f.Path, fmt.Sprintf("readings[%d]", i)) {
				f.Path = s.Thing(r.Job.Readings[i].Survey())
				f.Path = words.Capital(f.Path)
			}
		}
		said = append(said, f.Error()+".")
	}
	return said
}

// readings writes what the door rests on: how the readings agree, what was not
// measured, and what to measure next.
func (r Report) readings(b *strings.Builder, s words.Speaker) {
	if r.Job.Survey == nil {
		return
	}
	b.WriteString("\nWHAT IT RESTS ON\n")
	wrap(b, r.basis(), 2, 2)
	if said := s.Unusual(r.Job.Survey.Unusual()); said != "" {
		wrap(b, said, 2, 2)
	}
	switch {
	case r.Sure != nil && r.Sure.HasNext:
		wrap(b, "Measure next: "+s.Next(r.Sure.Next), 2, 4)
	case len(r.Job.Misfits()) > 0:
		wrap(b, "Measure next: again what does not fit.", 2, 4)
	default:
		wrap(b, "Measure next: nothing on the card would make the tightest gap much surer.", 2, 4)
	}
	said := s.NotMeasured(r.Job.Survey.Assumptions())
	if usual := game.MembersTaken(&r.Job); usual != "" {
		said = append(said, usual)
	}
	if len(said) > 0 {
		b.WriteString("\nNOT MEASURED\n")
		for _, text := range said {
			wrap(b, text, 2, 4)
		}
	}
}

// basis says how many readings there are and how well they agree.
func (r Report) basis() string {
	used := 0
	for _, j := range r.Job.Survey.Readings {
		if j.State == survey.Used {
			used++
		}
	}
	said := fmt.Sprintf("%d readings.", used)
	if used == 1 {
		said = "1 reading."
	}
	if off := len(r.Job.Readings) - len(r.Job.Counted()); off > 0 {
		said += fmt.Sprintf(" %d left out by you.", off)
	}
	sv := r.Job.Survey
	switch {
	case sv.Redundancy < 1:
		return said + " Hardly any checks another, so a slip would not show: ± stands for the instruments alone. A few more would tell."
	case sv.Sigma0 > 1.5:
		return said + " They agree less well than their instruments should: measure with more care, or say so by give or take."
	}
	return said + fmt.Sprintf(" They check each other %.0f times over and agree as well as their instruments should. ± holds the truth 9 times out of 10.", sv.Redundancy)
}
