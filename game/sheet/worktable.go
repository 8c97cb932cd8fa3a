package sheet

import (
	"math"

	"leafwright/game"
	"leafwright/game/words"
	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
	"leafwright/geom/timber"
	"leafwright/geom/trim"
)

// setback is how far one face of a bevelled edge stands behind the other, mm.
func setback(m *trim.Move, thick float64) float64 {
	return math.Abs(thick * math.Tan(float64(m.Angle)))
}

// datumOf says what the places of a cut are measured from.
func datumOf(s *words.Speaker, c *cut) string {
	switch {
	case c.frame && c.edge.Upright():
		return "Up from the floor"
	case c.frame:
		return "From the hinge jamb"
	case c.edge.Upright():
		return "Up from the foot"
	}
	return "From the " + s.HangingEdge
}

// heads are the heads of a cut's table, the unit of all at its amounts.
func (b *bench) heads(c *cut) []string {
	unit := b.a.unit()
	if c.stop {
		return []string{datumOf(b.s, c), "Stop behind the front edge" + unit}
	}
	what := "Take off"
	switch {
	case c.on && c.frame:
		what = "Pack out"
	case c.on:
		what = "Strip, high"
	}
	left := "Then high"
	switch {
	case c.edge.Upright():
		left = "Then wide"
	case c.frame:
		left = "Then to the floor"
	}
	what += unit
	if line, fine, _ := b.a.steps(); c.round == fine && fine != line {
		what += " (to " + b.a.figure(fine, fine) + ")"
	}
	return []string{datumOf(b.s, c), what, left}
}

// rows are the rows of a cut's table.
func (b *bench) rows(c *cut) (rows [][]string) {
	_, _, tape := b.a.steps()
	left := b.a.sizeStep()
	if _, fine, _ := b.a.steps(); c.round == fine {
		left = fine
	}
	for _, k := range c.marks {
		row := []string{b.a.figure(k.at, tape), b.a.amount(c, &k)}
		if !c.stop {
			row = append(row, b.a.figure(k.left, left))
		}
		rows = append(rows, row)
	}
	return rows
}

// amount writes a mark's amount: a check between two others finer than those.
func (a *Ask) amount(c *cut, k *mark) string {
	if _, fine, _ := a.steps(); k.check {
		return a.figure(k.amount, fine)
	}
	return a.figure(k.amount, c.round)
}

// cutTable sets a cut's marks, and how the line runs between them.
func (b *bench) cutTable(c *cut) {
	name := words.LeafEdge(b.s, c.edge)
	if c.frame {
		name = words.FrameSide(b.s, c.edge)
	}
	rows := b.rows(c)
	how := "Mark both faces from the " + name + " as it is now, straight between the marks:"
	switch {
	case c.stop:
		how = "Mark the stop's face on the " + name + ", straight between:"
	case c.frame:
		how = "Mark the " + name + " at these places as it is now, straight between:"
	case c.on:
		how = "Glue it on, then mark its height from the joint, straight between, and plane to the line:"
	case even(c):
		how = "Gauge the line from the " + name + " as it is now, on both faces; what is left is for checking:"
	}
	shares, heads := b.fitted([]float64{1.2, 1.2, 0}[:len(rows[0])], b.heads(c), rows), b.heads(c)
	if all := height(how, b.note, b.width()) + b.tableHeight(shares, heads, rows); all < (b.foot-b.top)/3 {
		b.need(all)
	}
	b.para(how, b.note)
	b.table(shares, heads, rows)
}

// alike gives the seats with those that are the same at every hinge as one, and what
// each is called: the hinge, or all of them.
func (b *bench) alike(seats []seat) (out []seat, names []string) {
	hinges := len(b.plan.before.Door.Hinges)
	for _, k := range seats {
		same := 0
		for _, o := range seats {
			if o.what == k.what && toStep(o.was, k.round) == toStep(k.was, k.round) && toStep(o.is, k.round) == toStep(k.is, k.round) {
				same++
			}
		}
		switch {
		case same < hinges || hinges == 1:
			out, names = append(out, k), append(names, words.HingeName(b.s, k.hinge))
		case k.hinge == 0:
			out, names = append(out, k), append(names, "all hinges")
		}
	}
	return out, names
}

// seatTable sets what a move changes of the hinges.
func (b *bench) seatTable(seats []seat) {
	unit := b.a.unit()
	var rows [][]string
	seats, names := b.alike(seats)
	for i, k := range seats {
		rows = append(rows, []string{words.Capital(names[i]) + ": " + k.what.say(b.s), b.a.figure(k.was, k.round), b.a.figure(k.is, k.round)})
	}
	heads := []string{"At the hinges" + unit, "Now", "Then"}
	b.table(b.fitted([]float64{1, 0, 0}, heads, rows), heads, rows)
}

// checks sets what to measure before the first cut, beside what the sheet counts on.
func (b *bench) checks() {
	b.heading("Before the first cut, measure")
	line := b.a.sizeStep()
	_, fine, _ := b.a.steps()
	said := "If anything differs by " + b.a.length(line, line) + " or more, stop: mend the job and print the sheet anew."
	if spare, of := b.tightest(); spare >= 0 && spare < line && b.cuts(of) {
		has := b.a.length(spare, fine)
		if toStep(spare, fine) == 0 {
			has = "nothing"
		}
		said += " The gap at the " + b.s.Edge(of) + " has less than that to spare (" + has + "): leave a last shaving there for the dry hang, which tells it by feeler."
	}
	b.para(said, b.body)
	unit := b.a.unit()
	was, is := &b.plan.before.Door, &b.plan.after.Door
	var rows [2][][]string // leaf, opening
	var changes [2]bool
	sizes := sizesOf(b.s, was, is)
	for _, q := range sizes {
		changes[q.of] = changes[q.of] || toStep(q.was, line) != toStep(q.is, line)
	}
	for _, q := range sizes {
		row := []string{q.what, b.a.figure(q.was, line), blank}
		if changes[q.of] {
			then := "same"
			if toStep(q.was, line) != toStep(q.is, line) {
				then = b.a.figure(q.is, line)
			}
			row = append(row, then)
		}
		rows[q.of] = append(rows[q.of], row)
	}
	var shares [2][]float64
	var heads [2][]string
	for of, name := range [2]string{"Leaf", "Opening"} {
		n := len(rows[of][0])
		heads[of] = []string{name + unit, "Now", "Read", "Then"}[:n]
		shares[of] = []float64{3, 1, 1, 1}[:n]
		if unit == "" { // 6' 11 17/32"
			shares[of] = []float64{1.95, 1.6, 0.85, 1.6}[:n]
		}
	}
	b.twoTables(shares, heads, rows)
}

// size is a measurement of leaf or opening, before and after, mm.
type size struct {
	of      int // 0 leaf, 1 opening
	what    string
	was, is float64
}

// sizesOf gives the sizes the marks rest on: the leaf's, then the opening's.
func sizesOf(s *words.Speaker, was, is *door.Door) []size {
	l := func(d *door.Door) *door.Leaf { return &d.Leaf }
	corners := func(d *door.Door) door.Corners { return l(d).Corners(0) }
	upright := func(d *door.Door, e door.Edge) float64 { return l(d).Ends(e, 0).Length() }
	wide := func(d *door.Door, part float64) float64 {
		c := corners(d)
		v := part*min(c.HangingHead.Y, c.ClosingHead.Y) + (1-part)*max(c.HangingFoot.Y, c.ClosingFoot.Y)
		return l(d).Closing.At(v) - l(d).Hanging.At(v)
	}
	diagonal := func(d *door.Door, up bool) float64 {
		c := corners(d)
		a, b := c.HangingFoot, c.ClosingHead
		if !up {
			a, b = c.HangingHead, c.ClosingFoot
		}
		return b.Sub(a).Len()
	}
	gap := func(d *door.Door, part float64) float64 {
		hinge, latch := frameEnds(d, door.HingeSide), frameEnds(d, door.LatchSide)
		y := part*min(hinge.Hi, latch.Hi) + (1-part)*max(hinge.Lo, latch.Lo)
		return acrossFrame(d, door.HingeSide)(y)
	}
	both := func(of int, what string, f func(d *door.Door) float64) size { return size{of, what, f(was), f(is)} }
	return []size{
		both(0, words.Capital(s.HangingEdge), func(d *door.Door) float64 { return upright(d, door.HingeSide) }),
		both(0, words.Capital(s.ClosingEdge), func(d *door.Door) float64 { return upright(d, door.LatchSide) }),
		both(0, "Wide at the top", func(d *door.Door) float64 { return wide(d, 1) }),
		both(0, "Wide half way up", func(d *door.Door) float64 { return wide(d, 0.5) }),
		both(0, "Wide at the foot", func(d *door.Door) float64 { return wide(d, 0) }),
		both(0, "Diagonal, hanging foot", func(d *door.Door) float64 { return diagonal(d, true) }),
		both(0, "Diagonal, hanging top", func(d *door.Door) float64 { return diagonal(d, false) }),
		both(1, "Wide at the top", func(d *door.Door) float64 { return gap(d, 1) }),
		both(1, "Wide half way up", func(d *door.Door) float64 { return gap(d, 0.5) }),
		both(1, "Wide at the foot", func(d *door.Door) float64 { return gap(d, 0) }),
		both(1, "High, hinge jamb", func(d *door.Door) float64 { return frameEnds(d, door.HingeSide).Length() }),
		both(1, "High, "+s.LatchJamb, func(d *door.Door) float64 { return frameEnds(d, door.LatchSide).Length() }),
	}
}

// offer sets the gaps to read with the leaf hung dry, and again when it is painted.
func (b *bench) offer() {
	said := "Offer it up before the last shavings of every cut, and read these when all is cut."
	takes := b.paintTakes()
	_, fine, _ := b.a.steps()
	most := max(takes[door.HingeSide], takes[door.LatchSide], takes[door.HeadSide], takes[door.FloorSide])
	switch {
	case most > 0:
		said += " Aim at them dry: the paint to come, up to " + b.a.length(most, fine) + " of each, is still in them."
	case b.plan.work.Bill.Bared > 0:
		said += " The job names no paint to come: on bared wood it takes about " + b.a.length(usualFilm(), fine) + " more a face."
	}
	heads, shares, rows := b.gapTable(&b.plan.after, true)
	if b.half == 1 && b.top == margin { // work left, what is read right
		b.onward()
	}
	b.need(min(b.foot-b.top, 4*MM+lead*headStyle.size+height(said, b.body, b.width())+b.tableHeight(shares, heads, rows)))
	b.heading("Offer it up: the gaps to read")
	b.para(said, b.body)
	b.table(shares, heads, rows)
	var wanted []string
	today := b.a.Job.WantedToday(&b.plan.after)
	for e := range fit.Edges {
		lim := today.Gaps[e]
		wanted = append(wanted, b.s.Edge(e)+" "+b.s.Range(lim.Least, lim.Most))
	}
	when := "Wanted today: "
	if most > 0 {
		when = "Wanted today, hung dry: "
	}
	b.para(when+words.Listed(wanted)+". "+b.spare(), b.body)
}

// paintTakes gives what the paint to come and what is stripped take from the gaps, mm.
func (b *bench) paintTakes() (mm [door.Edges]float64) {
	paint, none := &b.a.Job.Paint, timber.Face{}
	leaf, frame := timber.AllowanceOf(game.FaceOf(&paint.Leaf), none), timber.AllowanceOf(none, game.FaceOf(&paint.Frame))
	for e := range mm {
		if mm[e] = leaf.Loses(); door.Edge(e) != door.FloorSide { // the floor is no painted face
			mm[e] += frame.Loses()
		}
	}
	return mm
}

// usualFilm is what a primer and two coats of enamel come to on a face, mm.
func usualFilm() float64 {
	coats := timber.Face{On: []timber.Layers{{Paint: timber.Primer, Coats: 1}, {Paint: timber.Enamel, Coats: 2}}}
	return timber.AllowanceOf(coats, timber.Face{}).Takes
}

// spare says how much the gaps may come out otherwise before one is no longer as wanted.
func (b *bench) spare() string {
	spare, of := b.tightest()
	_, fine, _ := b.a.steps()
	if spare < 0 {
		return "With all done the gap at the " + b.s.Edge(of) + " is still " + b.a.length(-spare, fine) + " outside them."
	}
	if toStep(spare, fine) == 0 {
		return "The tightest, at the " + b.s.Edge(of) + ", has nothing to spare; every gap within its limits is good."
	}
	return "The tightest, at the " + b.s.Edge(of) + ", has " + b.a.length(spare, fine) + " to spare; every gap within its limits is good, nothing need be finer."
}

// tightest gives the edge whose gap is nearest to what is wanted no more, with all done, and
// by how much, below 0 outside; mm.
func (b *bench) tightest() (float64, door.Edge) {
	d := b.plan.after.Door
	var f fit.Fit
	fit.Evaluate(&f, &d)
	spare, of := math.Inf(1), door.Edge(0)
	today := b.a.Job.WantedToday(&b.plan.after)
	for e := range fit.Edges {
		g, lim := &f.Gaps[e], today.Gaps[e]
		if g.Range().IsEmpty() {
			continue
		}
		room := g.Least - lim.Least
		if lim.Most > 0 {
			room = min(room, lim.Most-g.Most)
		}
		if room < 0 && room >= -judge.Blade { // no feeler tells it from the limit
			room = 0
		}
		if room < spare {
			spare, of = room, e
		}
	}
	return spare, of
}

// cuts tells whether timber comes off the leaf's edge or the frame beside it.
func (b *bench) cuts(e door.Edge) bool {
	for _, st := range b.plan.steps {
		m := &st.Move
		if st.Why == nil && !m.Off && m.Edge == e && (trim.SpecOf(m.Kind).TakesOff || m.Kind == trim.PlaneJamb) {
			return true
		}
	}
	return false
}

// gapTable gives a table of the gaps of a door, with blanks for what is read; in the end those
// after the paint stand beside those hung dry, where it takes anything.
func (b *bench) gapTable(t *game.Tried, last bool) (heads []string, shares []float64, rows [][]string) {
	d := t.Door
	var f fit.Fit
	fit.Evaluate(&f, &d)
	_, fine, _ := b.a.steps()
	takes := b.paintTakes()
	heads, shares = []string{"Where" + b.a.unit(), "Aim", "Read"}, []float64{2.3, 0.9, 1}
	painted := false
	for e := range takes {
		painted = painted || last && toStep(takes[e], fine) != 0
	}
	switch {
	case painted:
		heads, shares = []string{"Where" + b.a.unit(), "Dry", "Read", "Painted", "Read"}, []float64{2.5, 0.62, 0.93, 1.1, 0.93}
	case last:
		heads, shares = []string{"Where" + b.a.unit(), "Aim", "Dry", "Hung"}, []float64{2.3, 0.9, 1, 1}
	}
	for e := range fit.Edges {
		g, ends := &f.Gaps[e], f.Gaps[e].Range()
		if ends.IsEmpty() {
			continue
		}
		wheres := [3]string{"hinge corner", "middle", b.s.LatchCorner}
		if e.Upright() {
			wheres = [3]string{"foot", "middle", "top"}
		}
		for k, part := range [3]float64{0, 0.5, 1} {
			at := g.At(ends.Lo + part*ends.Length())
			row := []string{words.Capital(b.s.Edge(e)) + ", " + wheres[k], b.a.figure(at, fine), blank}
			if painted {
				row = append(row, b.a.figure(at-takes[e], fine))
			}
			if last {
				row = append(row, blank)
			}
			rows = append(rows, row)
		}
	}
	return heads, shares, rows
}
