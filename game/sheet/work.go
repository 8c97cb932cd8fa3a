package sheet

import (
	"slices"
	"strings"

	"leafwright/game"
	"leafwright/game/draw"
	"leafwright/game/hardware"
	"leafwright/game/words"
	"leafwright/geom/timber"
	"leafwright/geom/trim"
)

// bench is a marking-out sheet being laid out.
type bench struct {
	*flow
	look
	a     *Ask
	s     *words.Speaker
	plan  *plan
	cares []care

	unmarked string    // what of the moves the drawing has no room for
	later    []setting // gauges that found no room beside it
}

// look is how closely a sheet is set: its writing, and the drawings' height, px.
type look struct {
	body, bold, note style // note: what is said beside a move
	cell, cellBold   style // of tables
	tall             float64
}

// looks are those there are, the easiest read in poor light first; nothing to be worked
// from is smaller than 9.5 pt (common practice, no published source).
var looks = [...]look{lookOf(11, 10, 108*MM), lookOf(10, 9.5, 102*MM), lookOf(9.5, 9.5, 90*MM)}

func lookOf(body, note, tall float64) look {
	plain, bold := style{note * pt, false, draw.TextInk}, style{note * pt, true, draw.TextInk}
	return look{style{body * pt, false, draw.TextInk}, style{body * pt, true, draw.TextInk}, plain, plain, bold, tall}
}

// workMost is how many pages a marking-out sheet is to take: one sheet, printed on both sides,
// that stays with the leaf. An option with more work than goes on them takes more rather than
// smaller writing.
const workMost = 2

// workPages lays out the marking-out sheet of one option: first what the leaf is and what
// comes off it, in one drawing, and what to check; then the work in its order. It is set as
// easy to read as two pages allow.
func workPages(a *Ask) (pages []Page, _ error) {
	p := planOf(a, a.Options[0])
	for i := range looks {
		if pages = workIn(a, p, &looks[i]); len(pages) <= workMost {
			break
		}
	}
	return pages, nil
}

// workIn lays it out in a look.
func workIn(a *Ask, p *plan, k *look) []Page {
	job, name := a.Job.Name, a.Job.OptionName(a.Options[0])
	if job == "" {
		job = "A door without a name"
	}
	b := &bench{flow: newFlow(a, job+" · "+name), look: *k, a: a, s: a.bench(&p.before.Door, p.before.Anatomy.Rails), plan: p}
	b.flow.cell, b.flow.cellBold = k.cell, k.cellBold
	b.title(name)
	b.para(job+". "+b.leafLine(), b.body)
	for i := range p.steps {
		if st := &p.steps[i]; st.Why != nil && st.Why.About.Forbids() && !st.Move.Off {
			b.hung("!", "Move "+number(i+1)+" cannot be done and is not laid out: "+b.s.Care(st.Why)+". What follows is the work without it.", b.bold, 5*MM)
		}
	}
	if p.work == nil {
		b.para("No move of this option is done: there is nothing to mark.", b.body)
		return b.finish(job+", "+name, b.desc())
	}
	if spare, of := b.tightest(); spare < 0 {
		_, fine, _ := a.steps()
		b.hung("!", "This option does not make everything good: with all done the gap at the "+b.s.Edge(of)+" is "+a.length(-spare, fine)+" outside what is wanted.", b.bold, 5*MM)
	}
	b.drawings()
	b.checks()
	b.space(2 * MM)
	b.halves()
	if len(b.later) > 0 {
		b.heading("Gauges and " + b.s.Packer + "s")
		b.setSettings(b.later)
	}
	b.takeCare()
	b.order()
	b.offer()
	b.notes()
	return b.finish(job+", "+name, b.desc())
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
	b.need(2*lead*headStyle.size + 3*lead*b.body.size)
	b.heading("The work, in this order")
	tasks, all := b.plan.work.Order(b.s)
	doing := b.plan.work.Bill.Tasks
	places, rest := b.places()
	n, repaired := 0, false
	for i := 0; i < len(doing) && i < len(tasks); i++ {
		t, text := doing[i], tasks[i]
		n++
		for t.Doing == timber.Prime && i+1 < len(doing) && i+1 < len(tasks) && doing[i+1].Doing == timber.Prime { // coat on coat
			i++
			text += " " + tasks[i]
		}
		if b.need(3 * lead * b.body.size); t.Doing == timber.DoStep {
			b.need(7 * lead * b.body.size) // with its table
		}
		b.space(1 * MM)
		mark := number(n) + "."
		if t.Doing == timber.DoStep {
			b.hung(mark, text, b.bold, taskIn)
			b.step(t.Step)
			continue
		}
		if t.Doing == timber.TryLeaf && b.plan.down() {
			text += " " + b.plan.hang.Stands(b.s)
		}
		var more []string
		if place := t.Void; place >= 0 && place < len(places) && t.Doing != timber.TreatIt { // said closer there
			_, times, _ := strings.Cut(text, ".")
			text, more = places[place][0]+times, places[place][1:]
		}
		if next := i + 1; t.Void >= 0 && !repaired && (next == len(doing) || doing[next].Void < 0) {
			repaired = true // after the last of them what is to be known of all
			more = append(more, rest...)
		}
		b.hung(mark, text, b.body, taskIn)
		b.within(taskIn, func() {
			for _, line := range more {
				b.para(line, b.note)
			}
		})
	}
	b.space(1 * MM)
	b.para(all, smallStyle)
}

// places gives what is said of every bad place, a line what it is and what is done and lines
// of what to mind, and what is said of all.
func (b *bench) places() (all [][]string, rest []string) {
	if b.plan.repairs == nil {
		return nil, nil
	}
	for _, line := range b.plan.repairs.Lines(b.s) {
		switch {
		case strings.HasPrefix(line, "Bad place "):
			all = append(all, []string{line})
		case strings.HasPrefix(line, "Mind: ") && len(all) > 0:
			all[len(all)-1] = append(all[len(all)-1], line)
		default:
			rest = append(rest, line)
		}
	}
	for i := range all { // those left alone have no task
		if !slices.ContainsFunc(b.plan.work.Bill.Tasks, func(t timber.Task) bool { return t.Void == i && t.Doing != timber.TreatIt }) {
			rest = append(rest, all[i]...)
		}
	}
	return all, rest
}

// taskIn is how far tasks are set in behind their numbers.
const taskIn = 7 * MM

// step sets a move's marks, what to mind and the cautions.
func (b *bench) step(i int) { b.within(taskIn, func() { b.stepLines(i) }) }

func (b *bench) stepLines(i int) {
	st := &b.plan.steps[i]
	if st.Move.Note != "" {
		b.para(st.Move.Note, b.note)
	}
	if st.Move.Note == game.OfferUp {
		heads, shares, rows := b.gapTable(&b.plan.stood[i], false)
		b.table(shares, heads, rows)
	}
	dowelled := false
	for _, p := range b.plan.work.Strips {
		if p.Step == i {
			dowelled = true
			for _, line := range p.Lines(b.s) {
				b.para(line, b.note)
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
		if trim.SpecOf(st.Move.Kind).Trade == trim.TheHinges {
			is := b.plan.then(i)
			hang := hardware.HangOf(&b.plan.stood[i], &is)
			for _, line := range hang.Reseats(b.s) {
				b.para(line, b.note)
			}
		}
	}
	switch st.Move.Kind {
	case trim.Restop, trim.Follow:
		if b.plan.stood[i].Anatomy.SolidStops {
			break // which the move's own words mind
		}
		b.para("Only a stop planted on is moved so. One worked from the solid is planed where it is to go back, and packed out where it is to come forward.", b.note)
	}
	if len(st.Done.Left) > 0 {
		said := make([]string, len(st.Done.Left))
		for k, l := range st.Done.Left {
			said[k] = b.s.Left(l)
		}
		b.para("It leaves: "+strings.Join(said, "; ")+".", b.note)
	}
	for _, c := range st.Done.Cares {
		if dowelled && c.About == trim.EndGrainGlued {
			continue // the strip's own lines say where its dowels go
		}
		b.hung("Mind", b.s.Care(&c)+".", b.note, 11*MM)
	}
	b.cautions(i)
}

func (b *bench) seatsAt(i int) []seat {
	if !done(&b.plan.steps[i]) {
		return nil
	}
	is := b.plan.then(i)
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
		b.para("Set the bevel: over the thickness of "+b.a.length(thick, fine)+" the "+back+" face stands back "+b.a.length(setback(m, thick), fine)+" from the "+from+" face.", b.note)
	}
}
