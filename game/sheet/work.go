package sheet

import (
	"strings"

	"leafwright/game"
	"leafwright/game/words"
	"leafwright/geom/timber"
	"leafwright/geom/trim"
)

// bench is a marking-out sheet being laid out.
type bench struct {
	*flow
	a    *Ask
	s    *words.Speaker
	plan *plan
	said []string // cautions that stand on the sheet, and at which move
	at   []string
}

// workPages lays out the marking-out sheet of one option: first what the leaf is and what
// comes off it, in one drawing, and what to check; then the work in its order.
func workPages(a *Ask) ([]Page, error) {
	option := a.Options[0]
	job, name := a.Job.Name, a.Job.OptionName(option)
	if job == "" {
		job = "A door without a name"
	}
	p := planOf(a, option)
	b := &bench{flow: newFlow(a, job+" · "+name), a: a, s: a.bench(&p.before.Door, p.before.Anatomy.Rails), plan: p}
	b.title(name)
	b.para(job+". "+b.leafLine(), bodyStyle)
	for i := range p.steps {
		if st := &p.steps[i]; st.Why != nil && st.Why.About.Forbids() && !st.Move.Off {
			b.hung("!", "Move "+number(i+1)+" cannot be done and is not laid out: "+b.s.Care(st.Why)+". What follows is the work without it.", boldStyle, 6*MM)
		}
	}
	if p.work == nil {
		b.para("No move of this option is done: there is nothing to mark.", bodyStyle)
		return b.finish(job+", "+name, b.desc()), nil
	}
	if spare, of := b.tightest(); spare < 0 {
		_, fine, _ := a.steps()
		b.hung("!", "This option does not make everything good: with all done the gap at the "+b.s.Edge(of)+" is "+a.length(-spare, fine)+" outside what is wanted.", boldStyle, 5*MM)
	}
	b.drawings()
	b.checks()
	b.settings()
	b.order()
	b.offer()
	return b.finish(job+", "+name, b.desc()), nil
}

func (b *bench) desc() string {
	return "Marking-out sheet: what is cut where, in the order it is done."
}

// leafLine says which leaf it is.
func (b *bench) leafLine() string {
	j := b.a.Job
	_, fine, tape := b.a.steps()
	side := "left"
	if j.Hand == game.Right {
		side = "right"
	}
	said := "Leaf " + b.a.length(j.Door.Leaf.Width, tape) + " wide, " + b.a.length(j.LeafHeight, tape) + " high, " + b.a.length(j.Door.Leaf.Thickness, fine) + " thick"
	if t := j.Anatomy.Timber; t != "" {
		said += ", " + t
	}
	said += ". Hinges on the " + side + ", seen from the knuckle side. "
	if len(j.Made) > 0 {
		said += "As the door stands after what was done for keeps. "
	}
	return said
}

// order sets the work's tasks with their marks, and the cautions beside them.
func (b *bench) order() {
	b.need(3*lead*headStyle.size + 5*lead*bodyStyle.size)
	b.heading("The work, in this order")
	tasks, all := b.plan.work.Order(b.s)
	doing := b.plan.work.Bill.Tasks
	n, repaired := 0, false
	for i := 0; i < len(doing) && i < len(tasks); i++ {
		t, text := doing[i], tasks[i]
		n++
		for t.Doing == timber.Prime && i+1 < len(doing) && i+1 < len(tasks) && doing[i+1].Doing == timber.Prime { // coat on coat
			i++
			text += " " + tasks[i]
		}
		if b.need(4 * lead * bodyStyle.size); t.Doing == timber.DoStep {
			b.need(11 * lead * bodyStyle.size) // with its table
		}
		b.space(1.2 * MM)
		if t.Doing == timber.DoStep {
			b.hung(number(n)+".", text, boldStyle, 8*MM)
			b.step(t.Step)
			continue
		}
		b.hung(number(n)+".", text, bodyStyle, 8*MM)
		if next := i + 1; t.Void >= 0 && !repaired && (next == len(doing) || doing[next].Void < 0) {
			repaired = true // after the last of them what is to be known of all
			b.within(8*MM, func() {
				for _, line := range b.plan.repairs.Lines(b.s) {
					b.para(line, cellStyle)
				}
			})
		}
	}
	b.space(1 * MM)
	b.para(all, smallStyle)
}

// within sets something so far in.
func (b *bench) within(in float64, set func()) {
	left := b.left
	b.left += in
	set()
	b.left = left
}

// step sets a move's marks, what to mind and the cautions.
func (b *bench) step(i int) { b.within(8*MM, func() { b.stepLines(i) }) }

func (b *bench) stepLines(i int) {
	st := &b.plan.steps[i]
	if st.Move.Note != "" {
		b.para(st.Move.Note, bodyStyle)
	}
	if st.Move.Note == game.OfferUp {
		b.gaps(&b.plan.stood[i], false)
	}
	for _, p := range b.plan.work.Strips {
		if p.Step == i {
			for _, line := range p.Lines(b.s) {
				b.para(line, bodyStyle)
			}
		}
	}
	for k := range b.plan.cuts {
		if b.plan.cuts[k].step == i {
			b.cutTable(&b.plan.cuts[k])
		}
	}
	b.bevelLine(&st.Move)
	if seats := b.seatsAt(i); len(seats) > 0 {
		b.seatTable(seats)
	}
	if len(st.Done.Left) > 0 {
		said := make([]string, len(st.Done.Left))
		for k, l := range st.Done.Left {
			said[k] = b.s.Left(l)
		}
		b.para("It leaves: "+strings.Join(said, "; ")+".", cellStyle)
	}
	for _, c := range st.Done.Cares {
		b.hung("Mind", b.s.Care(&c)+".", cellStyle, 12*MM)
	}
	b.cautions(i)
}

// cautions sets those of a move; what stands on the sheet already is referred to.
func (b *bench) cautions(i int) {
	here := "move " + number(i+1)
	seen := map[string]bool{}
	for _, c := range game.MoveCautions(b.a.Job, b.plan.steps[i].Move.Kind) {
		text := c.Text + " " + c.Ask
		before := ""
		for k := range b.said {
			if b.said[k] == text {
				before = b.at[k]
			}
		}
		if before == "" {
			b.hung("!", text, cellStyle, 5*MM)
			b.said, b.at = append(b.said, text), append(b.at, here)
		} else if before != here && !seen[before] {
			seen[before] = true
			b.hung("!", "Take care as at "+before+".", cellStyle, 5*MM)
		}
	}
}

func (b *bench) seatsAt(i int) []seat {
	is := b.plan.after
	if i+1 < len(b.plan.stood) {
		is = b.plan.stood[i+1]
	}
	if !done(&b.plan.steps[i]) {
		return nil
	}
	return seatsOf(b.a, &b.plan.stood[i], &is, b.plan.steps[i].Done.Gains)
}

// bevelLine says how an edge is bevelled, which no marks along it tell.
func (b *bench) bevelLine(m *trim.Move) {
	_, fine, _ := b.a.steps()
	thick := b.plan.before.Door.Leaf.Thickness
	if m.Kind == trim.Bevel {
		back, from := "stop", "knuckle"
		if m.Angle < 0 {
			back, from = from, back
		}
		b.para("Set the bevel: over the thickness of "+b.a.length(thick, fine)+" the "+back+" face stands back "+b.a.length(setback(m, thick), fine)+" from the "+from+" face.", bodyStyle)
	}
}
