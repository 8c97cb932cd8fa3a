package sheet

import (
	"math"

	"leafwright/game"
	"leafwright/game/words"
	"leafwright/geom/door"
	"leafwright/geom/fit"
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

// heads are the heads of a cut's table.
func (b *bench) heads(c *cut) []string {
	unit := b.a.unit()
	if c.stop {
		return []string{datumOf(b.s, c) + unit, "Stop behind the front edge" + unit}
	}
	what := "Take off"
	switch {
	case c.on && c.frame:
		what = "Pack out"
	case c.on:
		what = "Strip, high"
	}
	left := "Then high" + unit
	switch {
	case c.edge.Upright():
		left = "Then wide" + unit
	case c.frame:
		left = "Then to the floor" + unit
	}
	what += unit
	if line, fine, _ := b.a.steps(); c.round == fine && fine != line {
		what += " (to " + b.a.figure(fine, fine) + ")"
	}
	return []string{datumOf(b.s, c) + unit, what, left}
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
	shares := []float64{1.25, 1.2, 1}[:len(rows[0])]
	if all := height(how, bodyStyle, b.width()) + b.tableHeight(shares, b.heads(c), rows); all < (b.foot-b.top)/2 {
		b.need(all)
	}
	b.para(how, bodyStyle)
	b.table(shares, b.heads(c), rows)
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
		rows = append(rows, []string{names[i], k.what.say(b.s), b.a.figure(k.was, k.round), b.a.figure(k.is, k.round)})
	}
	b.table([]float64{1.1, 2.6, 0.7, 0.7}, []string{"Hinge", "What", "Now" + unit, "Then" + unit}, rows)
}

// checks sets what to measure before the first cut, beside what the sheet counts on.
func (b *bench) checks() {
	b.heading("Before the first cut, measure")
	line := b.a.sizeStep()
	b.para("If anything differs by more than "+b.a.length(2*line, line)+", stop: mend the job and print the sheet anew.", bodyStyle)
	unit := b.a.unit()
	was, is := &b.plan.before.Door, &b.plan.after.Door
	var rows [2][][]string // leaf, opening
	for _, q := range sizesOf(b.s, was, is) {
		then := "the same"
		if toStep(q.was, line) != toStep(q.is, line) {
			then = b.a.figure(q.is, line)
		}
		rows[q.of] = append(rows[q.of], []string{q.what, b.a.figure(q.was, line), blank, then})
	}
	shares := []float64{2, 1.15, 1, 1.15}
	if unit == "" { // 6' 11 17/32"
		shares = []float64{1.75, 1.45, 0.8, 1.45}
	}
	heads := func(of string) []string { return []string{of + unit, "Now", "Read", "Finished"} }
	b.twoTables(shares, [2][]string{heads("Leaf"), heads("Opening")}, rows)
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
	upright := func(d *door.Door, e door.Edge) float64 { return trim.EndsOf(l(d), e).Length() }
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
		both(0, capital(s.HangingEdge), func(d *door.Door) float64 { return upright(d, door.HingeSide) }),
		both(0, capital(s.ClosingEdge), func(d *door.Door) float64 { return upright(d, door.LatchSide) }),
		both(0, "Wide at the top", func(d *door.Door) float64 { return wide(d, 1) }),
		both(0, "Wide half way up", func(d *door.Door) float64 { return wide(d, 0.5) }),
		both(0, "Wide at the foot", func(d *door.Door) float64 { return wide(d, 0) }),
		both(0, "Hanging foot to closing top", func(d *door.Door) float64 { return diagonal(d, true) }),
		both(0, "Hanging top to closing foot", func(d *door.Door) float64 { return diagonal(d, false) }),
		both(1, "Wide at the top", func(d *door.Door) float64 { return gap(d, 1) }),
		both(1, "Wide half way up", func(d *door.Door) float64 { return gap(d, 0.5) }),
		both(1, "Wide at the foot", func(d *door.Door) float64 { return gap(d, 0) }),
		both(1, "High, hinge jamb", func(d *door.Door) float64 { return frameEnds(d, door.HingeSide).Length() }),
		both(1, "High, "+s.LatchJamb, func(d *door.Door) float64 { return frameEnds(d, door.LatchSide).Length() }),
	}
}

// settings sets every gauge, packer and bevel setting once, with what it is for.
func (b *bench) settings() {
	type setting struct{ what, of string }
	var all []setting
	add := func(what, of string) {
		for i := range all {
			if all[i].what == what {
				all[i].of = all[i].of + "; " + of
				return
			}
		}
		all = append(all, setting{what, of})
	}
	_, fine, _ := b.a.steps()
	for i := range b.plan.steps {
		m := &b.plan.steps[i].Move
		if !done(&b.plan.steps[i]) {
			continue
		}
		of := "move " + number(i+1)
		for k := range b.plan.cuts {
			c := &b.plan.cuts[k]
			if c.step != i || c.stop || c.frame {
				continue
			}
			if first := toStep(c.marks[0].amount, c.round); first > 0 && even(c) {
				add(b.a.length(first, c.round), words.LeafEdge(b.s, c.edge)+", "+of)
			}
		}
		if m.Kind == trim.Ease {
			add(b.a.length(m.First, fine), b.s.Arris+" of the "+words.LeafEdge(b.s, m.Edge)+", both ways, "+of)
		}
		if m.Kind == trim.Bevel {
			add(b.a.length(setback(m, b.plan.before.Door.Leaf.Thickness), fine), "set back, bevel of the "+words.LeafEdge(b.s, m.Edge)+", "+of)
		}
		spec := trim.SpecOf(m.Kind)
		seats, names := b.alike(b.seatsAt(i))
		for k, q := range seats {
			if spec.Trade != trim.TheHinges && q.was != q.is {
				continue // it comes of itself
			}
			switch q.what {
			case leafGain, jambGain, leafPack, jambPack:
				add(b.a.length(q.is, fine), names[k]+", "+q.what.say(b.s)+", "+of)
			}
		}
	}
	for _, p := range b.plan.work.Strips {
		of := "move " + number(p.Step+1)
		add(b.a.length(p.Dowels.LeafGauge, fine), "dowels, on the leaf from the knuckle face, "+of)
		add(b.a.length(p.Dowels.StripGauge, fine), "dowels, on the strip, "+of)
	}
	if len(all) == 0 {
		return
	}
	const in = 28 * MM
	room := headStyle.size*lead + 4*MM
	for _, q := range all {
		room += height(q.of+".", bodyStyle, b.width()-in)
	}
	b.need(min(room, (b.foot-b.top)/2))
	b.heading("Gauges and " + b.s.Packer + "s")
	for _, q := range all {
		b.hung(q.what, q.of+".", bodyStyle, in)
	}
}

// offer sets the gaps to read with the leaf hung in the end.
func (b *bench) offer() {
	b.need(62 * MM)
	b.heading("Offer it up: the gaps to read")
	b.para("Offer the leaf up before the last shavings of every cut, and read these again when it hangs.", bodyStyle)
	b.gaps(&b.plan.after, true)
	var wanted []string
	today := b.a.Job.WantedToday(&b.plan.after)
	for e := range fit.Edges {
		lim := today.Gaps[e]
		wanted = append(wanted, b.s.Edge(e)+" "+b.s.Range(lim.Least, lim.Most))
	}
	b.para("Wanted today: "+join(wanted)+". "+b.spare(), bodyStyle)
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
		if room < spare {
			spare, of = room, e
		}
	}
	return spare, of
}

// gaps sets a table of the gaps of a door, with blanks for what is read.
func (b *bench) gaps(t *game.Tried, hung bool) {
	d := t.Door
	var f fit.Fit
	fit.Evaluate(&f, &d)
	_, fine, _ := b.a.steps()
	var rows [2][][]string // upright edges, the others
	for e := range fit.Edges {
		g, ends := &f.Gaps[e], f.Gaps[e].Range()
		if ends.IsEmpty() {
			continue
		}
		side := 1
		wheres := [3]string{"hinge corner", "middle", b.s.LatchCorner}
		if e.Upright() {
			side, wheres = 0, [3]string{"foot", "middle", "top"}
		}
		for k, part := range [3]float64{0, 0.5, 1} {
			at := ends.Lo + part*ends.Length()
			row := []string{capital(b.s.Edge(e)) + ", " + wheres[k], b.a.figure(g.At(at), fine), blank}
			if hung {
				row = append(row, blank)
			}
			rows[side] = append(rows[side], row)
		}
	}
	shares := []float64{2.2, 0.95, 1.15, 1}[:len(rows[0][0])]
	heads := []string{"Where" + b.a.unit(), "Aim", "Offered", "Hung"}[:len(shares)]
	b.twoTables(shares, [2][]string{heads, heads}, rows)
}
