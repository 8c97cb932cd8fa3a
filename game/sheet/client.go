package sheet

import (
	"errors"
	"strconv"
	"strings"
	"unicode"

	"leafwright/game"
	"leafwright/game/draw"
	"leafwright/geom/judge"
)

// What the sheet for the client is made of: a recommendation, the doors beside each
// other, each a picture over what is done, seen, felt and asked for, how well all that
// is known, the words that need explaining, and room to sign.

const mostWays = 3 // that there is room for beside each other

const (
	columnGap = 4 * MM
	inner     = 2.2 * MM // room round what is said in a box
	tick      = 4 * MM   // side of a box to put a cross in
	signRoom  = 9 * MM   // over a line to write on
	paraGap   = 0.8 * MM // after a paragraph of a cell
	leastBand = 22 * MM  // what of a row must find room on a page, if it is so tall

	pictureLeast  = 225.0 // px wide, that a picture's writing finds room
	pictureInches = 300.0 // likewise in inches, which are written longer
)

// clientPages lays out the sheet for the client.
func clientPages(a *Ask) ([]Page, error) {
	if game.Rated(a.Job) {
		return ratedPages(a), nil
	}
	if len(a.Options) > mostWays {
		return nil, errors.New("a sheet for the client is of " + counted(mostWays) + " options at the most")
	}
	c := newClient(a)
	f := newFlow(a, a.Job.Name)
	c.para(f, a.Job.Name, titleStyle)
	c.para(f, c.intro(), bodyStyle)
	f.space(2 * MM)
	if len(c.options()) > 0 || c.ways[c.best].col.Out() == nil {
		c.recommend(f)
		f.space(3 * MM)
	}
	c.beside(f)
	c.foot(f)
	c.sign(f)
	return f.finish(a.Job.Name, c.intro()), nil
}

// para sets a paragraph and keeps its words, for those that need explaining.
func (c *client) para(f *flow, text string, st style) {
	c.said = append(c.said, text)
	f.para(tied(text), st)
}

// options are the ways to make it fit.
func (c *client) options() []way { return c.ways[c.first+1:] }

func (c *client) intro() string {
	switch n := len(c.options()); n {
	case 0:
		return "How the door fits now."
	case 1:
		return "How the door fits now, and one way looked at."
	default:
		return "How the door fits now, and " + counted(n) + " ways looked at."
	}
}

func counted(n int) string {
	names := [...]string{"none", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine"}
	if n >= 0 && n < len(names) {
		return names[n]
	}
	return strconv.Itoa(n)
}

// recommend says which way is best and why.
func (c *client) recommend(f *flow) {
	b, all := &c.ways[c.best], c.merits()
	var names []string
	for i := range all {
		names = append(names, c.ways[c.first+i].letter)
	}
	head := "We recommend " + b.name
	if b.letter == "" {
		head = "We recommend leaving the door as it is"
		if !all[0].fits() {
			head = "We recommend none of these"
		}
	}
	text := []string{b.say.reason(all, names, c.best-c.first)}
	less := c.lesser()
	if less != nil && b.letter != "" {
		head = "Of these we recommend " + b.name
	}
	if b.letter == "" && b.mended() != "" && all[0].fits() {
		head = "We recommend leaving the fit of the door as it is"
		text[0] = "It fits as it is: only its bad places need mending."
	}
	if c.a.Job.Survey != nil && all[c.best-c.first].fits() {
		text[0] = "As far as the measurements tell: " + strings.ToLower(text[0][:1]) + text[0][1:]
	}
	if b.sticks() {
		text = append(text, "But mind the damp months: "+b.seasons())
	}
	if len(all) > 2 {
		text = append(text, "Chosen by how well the door fits, then by how much of the old wood stays, then by time.")
	}
	if less != nil {
		text = append(text, tied(less.known(b)))
	}
	inside := f.width() - 2*inner
	tall := height(head, boldStyle, inside) + 2*inner
	for _, t := range text {
		tall += height(t, bodyStyle, inside)
	}
	f.need(tall)
	l, y := f.l(), f.y
	corners := []draw.Pt{{X: f.left, Y: y}, {X: f.right, Y: y}, {X: f.right, Y: y + tall}, {X: f.left, Y: y + tall}}
	area(l, draw.Raised, corners...)
	outline(l, draw.Line, thick, corners...)
	y = set(l, head, boldStyle, f.left+inner, y+inner, inside)
	for _, t := range text {
		y = set(l, t, bodyStyle, f.left+inner, y, inside)
	}
	c.said = append(append(c.said, head), text...)
	f.y += tall
}

// beside sets the doors beside each other.
func (c *client) beside(f *flow) {
	n := float64(len(c.ways))
	c.wide = (f.width() - columnGap*(n-1)) / n
	c.heads(f, boldStyle)
	c.pictures(f)
	f.y += 1 * MM
	c.band(f, "", boldStyle, func(w *way) []string { return []string{c.headline(w)} })
	c.legend(f)
	of := func(say func(w *way) []string) func(w *way) []string {
		return func(w *way) []string {
			if w.letter == "" {
				return nil
			}
			return say(w)
		}
	}
	options := len(c.options()) > 0
	if options {
		c.band(f, "What is done", cellStyle, of((*way).done))
	}
	c.band(f, "What you will see", cellStyle, func(w *way) []string { return w.say.see(&w.col, &c.ways[0].col) })
	c.band(f, "What you will feel", cellStyle, c.feel)
	c.band(f, "Through the year", cellStyle, func(w *way) []string { return []string{w.seasons()} })
	if !options {
		return
	}
	stands := c.a.Job.Stands()
	whole := volume(&stands.Door.Leaf)
	c.band(f, "Old wood it takes", cellStyle, of(func(w *way) []string {
		out := []string{w.say.timber(&w.col, whole)}
		if w.mended() != "" {
			out = append(out, "What is bad of it and is mended is not counted.")
		}
		return out
	}))
	c.band(f, "Time it takes", cellStyle, of(func(w *way) []string { return []string{w.time()} }))
	priced := false
	for i := range c.ways {
		priced = priced || c.cost(&c.ways[i]) != nil
	}
	if priced {
		c.band(f, "What it costs", cellStyle, of(func(w *way) []string {
			if said := money(c.cost(w)); said != "" {
				return []string{said}
			}
			return []string{"Nothing."}
		}))
	}
}

// at gives where the i-th door's column begins.
func (c *client) at(f *flow, i int) float64 { return f.left + float64(i)*(c.wide+columnGap) }

// heads sets what each door is called, the one recommended on a ground of its own.
func (c *client) heads(f *flow, st style) {
	tall := 0.0
	for i := range c.ways {
		tall = max(tall, height(c.ways[i].name, st, c.wide))
	}
	f.need(tall + inner)
	for i := range c.ways {
		w, x := &c.ways[i], c.at(f, i)
		if w.letter != "" && i == c.best {
			const out = 1 * MM
			x0, x1, y1 := max(f.left, x-out), min(f.right, x+c.wide+out), f.y+tall+inner/2
			area(f.l(), draw.Raised, draw.Pt{X: x0, Y: f.y}, draw.Pt{X: x1, Y: f.y}, draw.Pt{X: x1, Y: y1}, draw.Pt{X: x0, Y: y1})
		}
		set(f.l(), w.name, st, x, f.y+inner/4, c.wide)
		c.said = append(c.said, w.name)
	}
	f.y += tall + inner
}

// band sets a row of cells, one under each door, under a title; a cell is paragraphs.
// Those that do not fit on the page go on on the next, the doors' names over them again.
func (c *client) band(f *flow, title string, st style, say func(w *way) []string) {
	cells, tall := make([][]string, len(c.ways)), 0.0
	for i := range c.ways {
		cells[i] = say(&c.ways[i])
		c.said = append(c.said, cells[i]...)
		h := 0.0
		for k, t := range cells[i] {
			cells[i][k] = tied(t)
			h += c.tall(cells[i][k], st)
		}
		tall = max(tall, h)
	}
	beside := len(cells[0]) == 0 && len(cells) > 1 // the title stands where the first door's cell would
	head := 0.0
	if title != "" && !beside {
		head = lead*cellBold.size + 1.5*MM
	}
	if f.y+head+min(tall, leastBand) > f.foot {
		c.turn(f)
	}
	if title != "" {
		f.y += 0.5 * MM
		f.rule()
		if y := set(f.l(), title, cellBold, f.left, f.y, f.width()); !beside {
			f.y = y
		}
	}
	for left := true; left; {
		left = false
		top, foot := f.y, f.y
		for i := range cells {
			y := top
			for len(cells[i]) > 0 && (y == top || y+c.tall(cells[i][0], st) <= f.foot) {
				y = set(f.l(), cells[i][0], st, c.at(f, i), y, c.wide) + paraGap
				cells[i] = cells[i][1:]
			}
			left = left || len(cells[i]) > 0
			foot = max(foot, y)
		}
		f.y = foot
		if left {
			c.turn(f)
		}
	}
}

// tall is what a paragraph takes up in a column.
func (c *client) tall(text string, st style) float64 { return height(text, st, c.wide) + paraGap }

// turn goes on to the next page and says there again which column is which.
func (c *client) turn(f *flow) {
	f.newPage()
	if len(c.ways) > 1 {
		c.heads(f, cellBold)
	}
}

// headline says in a few words how a door fits; of a rated leaf only what keeps it from
// shutting, for its label says what its gaps may be.
func (c *client) headline(w *way) string {
	if c.rated && w.merit.binds == 0 {
		return "Shuts; its gaps are not judged here"
	}
	return w.say.headline(&w.col)
}

// feel says what is felt of it, of a rated leaf likewise.
func (c *client) feel(w *way) (out []string) {
	if !c.rated {
		return w.say.feel(&w.col)
	}
	for i := range w.col.Findings {
		if f := &w.col.Findings[i]; f.Verdict == judge.Binds {
			out = append(out, w.say.felt(f))
		}
	}
	return append(out, "Whether its gaps are as its label asks is not judged here: whoever looks after its certificate measures them.")
}

// foot says what harms while it is done, how sure it all is, and explains words.
func (c *client) foot(f *flow) {
	f.space(2 * MM)
	c.named(f, "While the work is done:", c.harm())
	c.named(f, "How sure this is:", []string{strings.Join(c.sureness(), " ")})
	var meant []string
	for _, w := range explained(c.said) {
		meant = append(meant, w[0]+": "+w[1]+".")
	}
	c.named(f, "Words used here:", meant)
}

// named sets paragraphs, the first with their name before it, and keeps their words.
func (c *client) named(f *flow, name string, all []string) {
	c.said = append(c.said, all...)
	for i, t := range all {
		if i == 0 {
			f.space(1 * MM)
			f.runIn(name, tied(t), cellStyle)
			continue
		}
		f.para(tied(t), cellStyle)
	}
}

// sign leaves room to choose and to sign.
func (c *client) sign(f *flow) {
	f.need(22 * MM)
	f.space(3 * MM)
	head := "Seen"
	if len(c.options()) > 0 {
		head = "Your choice"
		c.choices(f, f.left+draw.TextWidth(head, headStyle.size, true)+6*MM)
	}
	set(f.l(), head, headStyle, f.left, f.y, f.width())
	f.y += lead*headStyle.size + signRoom
	l := f.l()
	third := (f.width() - 2*columnGap) / 3
	for i, text := range [3]string{"Name", "Signature", "Date"} {
		x := f.left + float64(i)*(third+columnGap)
		line(l, draw.Line, hair, draw.Pt{X: x, Y: f.y}, draw.Pt{X: x + third, Y: f.y})
		set(l, text, smallStyle, x, f.y+0.5*MM, third)
	}
	f.y += lead*smallStyle.size + 1*MM
}

// choices sets a box to put a cross in for each way, from x on.
func (c *client) choices(f *flow, x float64) {
	l, top := f.l(), f.y+0.8*MM
	put := func(text string) {
		room := tick + 2*MM + draw.TextWidth(text, bodyStyle.size, false) + 8*MM
		outline(l, draw.Line, hair, draw.Pt{X: x, Y: top}, draw.Pt{X: x + tick, Y: top}, draw.Pt{X: x + tick, Y: top + tick}, draw.Pt{X: x, Y: top + tick})
		write(l, text, bodyStyle, draw.Start, x+tick+2*MM, top+tick-0.6*MM)
		x += room
	}
	for _, w := range c.options() {
		put(w.letter)
	}
	put("leave it as it is")
}

// ratedPages is the sheet of a leaf that takes no advice.
func ratedPages(a *Ask) []Page {
	j := *a.Job
	j.Options = nil
	b := *a
	b.Job, b.Options = &j, nil
	c := newClient(&b)
	c.rated = true
	f := newFlow(&b, j.Name)
	c.para(f, j.Name, titleStyle)
	c.para(f, "How the door fits now.", bodyStyle)
	f.space(2 * MM)
	c.para(f, "This is a fire door or another labelled door, or one held to such a door's limits. Nothing may be cut off it, glued to it or changed on it on the strength of this sheet, so no way to change it is shown and none is recommended. The maker's certificate and the label decide what may be done: ask whoever holds them, and the local fire authority.", boldStyle)
	f.space(3 * MM)
	c.beside(f)
	c.foot(f)
	return f.finish(j.Name, "How the door fits now.")
}

// tied keeps units on the line of their numbers, and what is written between numbers.
func tied(text string) string {
	const hard = '\u00a0'
	r := []rune(text)
	digit := func(i int) bool {
		return i >= 0 && i < len(r) && (unicode.IsDigit(r[i]) || strings.ContainsRune("%±°\"'", r[i]))
	}
	for i := range r {
		if r[i] != ' ' || !digit(i-1) {
			continue
		}
		rest := string(r[i+1 : min(len(r), i+5)])
		for _, unit := range [...]string{"mm", "cm³", "h", "min", "%", "±"} {
			if after, ok := strings.CutPrefix(rest, unit); ok && (after == "" || !unicode.IsLetter([]rune(after)[0])) {
				r[i] = hard
			}
		}
	}
	for i := range r {
		if r[i] == ' ' && i > 0 && r[i-1] == '±' {
			r[i] = hard
		}
	}
	return string(r)
}
