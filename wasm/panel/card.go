//go:build js

package panel

import (
	"strconv"
	"strings"
	"syscall/js"
	"time"

	"leafwright/game"
	"leafwright/game/bench"
	"leafwright/game/draw"
)

// card is the measuring card: one prompt with its picture, or all at once.
type card struct {
	p       *Panel
	inputs  map[string]*entry // by path: the places of the prompt asked, the table's rows
	picture string            // what the picture was drawn for
	fields  string            // what the place fields were made for
	list    cardList
	pasting pasting
	hand    map[game.Hand]js.Value
	count   map[int]js.Value // of the hinges
	late    bool             // the panels below are behind
	weigh   *time.Timer
}

// entry is a field of the card with its messages.
type entry struct {
	path                 string
	field, fault, misfit js.Value
}

// Size of the picture as drawn, px; the style sheet shows it at that or smaller.
const pictureWide, pictureHigh = 160, 200

// restPause is how long nothing must be typed before it is worked out how sure the
// findings are: long enough not to fall between two figures.
const restPause = 350 * time.Millisecond

func (c *card) init(p *Panel) {
	c.p, c.inputs = p, map[string]*entry{}
	value := byID("card-value")
	on(value, "input", func(js.Value) { c.typed(value.Get("value").String()) })
	on(value, "keydown", func(e js.Value) {
		if e.Get("key").String() == "Enter" && !e.Get("isComposing").Bool() {
			e.Call("preventDefault")
			c.move(p.bench.Advance)
		}
	})
	on(value, "blur", func(js.Value) {
		p.bench.Settle()
		c.show()
	})
	on(byID("card-sign"), "click", func(js.Value) {
		text := strings.TrimSpace(value.Get("value").String())
		if rest, below := strings.CutPrefix(strings.Replace(text, "−", "-", 1), "-"); below {
			text = rest
		} else {
			text = "-" + text
		}
		value.Set("value", text)
		value.Call("focus")
		if text != "-" {
			c.typed(text)
		}
	})
	on(byID("card-back"), "click", func(js.Value) { c.move(p.bench.GoBack) })
	on(byID("card-forth"), "click", func(js.Value) { c.move(p.bench.Advance) })
	on(byID("card-missing"), "click", func(js.Value) { c.ask(p.bench.Unfinished()) })
	on(byID("card-left"), "change", func(js.Value) {
		if now := c.now(); now != nil && now.LeaveOut != "" {
			text := "false"
			if byID("card-left").Get("checked").Bool() {
				text = "true"
			}
			p.bench.Type(now.LeaveOut, text)
			p.bench.Settle()
			p.changed()
		}
	})
	on(byID("card-remove"), "click", func(js.Value) {
		if now := c.now(); now != nil && now.Remove != "" {
			p.bench.Remove(now.Remove)
			p.changed()
			byID("card-back").Call("focus")
		}
	})
	on(byID("card-mode"), "click", func(js.Value) {
		p.bench.ShowAll(!p.bench.Look().AllAtOnce)
		p.changed()
	})
	on(byID("card"), "toggle", func(js.Value) {
		p.bench.ShutCard(!byID("card").Get("open").Bool())
		p.changed()
	})
	var hand js.Value
	c.hand, hand = choose(p, "card-side", "Hinges on the", []game.Hand{game.Left, game.Right},
		func(h game.Hand) string { return string(h) }, func(h game.Hand) {
			p.bench.Type("hand", string(h))
			p.bench.Settle()
		})
	fill(byID("card-hand"), hand)
	var count js.Value
	c.count, count = choose(p, "card-count", "How many hinges", []int{2, 3}, strconv.Itoa, func(n int) {
		p.bench.Type(game.HingesPath, strconv.Itoa(n))
		p.bench.Settle()
	})
	fill(byID("card-count"), count)
	c.list.init(c)
	c.pasting.init(c)
}

// start goes to the first prompt of a new card.
func (c *card) start() {
	byID("card").Set("open", true)
	c.focus()
}

// focus puts the cursor where the prompt asked now is typed.
func (c *card) focus() {
	field := byID("card-value")
	if now := c.now(); c.p.bench.Look().AllAtOnce && now != nil && c.list.rows[now.Path] != nil {
		field = c.list.rows[now.Path].field
	}
	byID("card-ask").Call("scrollIntoView")
	field.Call("focus", map[string]any{"preventScroll": true})
	field.Call("scrollIntoView", map[string]any{"block": "nearest"})
	field.Call("select")
}

// now gives the prompt asked now, nil without a card.
func (c *card) now() *bench.Prompt {
	all := c.p.bench.Card()
	if len(all) == 0 {
		return nil
	}
	return &all[c.p.bench.Asked()]
}

func (c *card) typed(text string) {
	if now := c.now(); now != nil {
		c.enter(now.Path, text)
	}
}

// enter takes what was typed on the card. What need not be seen at once is shown
// when the typing rests.
func (c *card) enter(path, text string) {
	c.late = true
	c.p.bench.Type(path, text)
	c.p.changed()
}

// typing tells that what need not be seen at once waits for a rest.
func (c *card) typing() bool { return c.late }

// move goes to another prompt, if there is one.
func (c *card) move(to func() bool) {
	if to() {
		c.p.changed()
	}
	c.focus()
}

func (c *card) ask(path string) {
	if path == "" {
		return
	}
	c.p.bench.Ask(path)
	c.p.changed()
	c.focus()
}

// show brings the card up to date with the bench.
func (c *card) show() {
	b, now := c.p.bench, c.now()
	box := byID("card")
	show(box, now != nil)
	if now == nil {
		show(byID("card-misfits-box"), false)
		return
	}
	look := b.Look()
	if box.Get("open").Bool() == look.CardShut {
		box.Set("open", !look.CardShut)
	}
	where, needed := b.Progress()
	if look.CardShut {
		where = needed
	}
	setText(byID("card-where"), where)
	setText(byID("card-needed"), needed)
	missing := b.Unfinished()
	show(byID("card-missing"), missing != "" && now.Stage != game.Least)
	setText(byID("card-say"), now.Ask)
	c.showPicture(now)
	c.showPlaces(now)
	show(byID("card-one"), !look.AllAtOnce)
	if !look.AllAtOnce {
		c.showOne(now)
	}
	c.list.show(look.AllAtOnce)
	mode := "All at once"
	if look.AllAtOnce {
		mode = "One at a time"
	}
	setText(byID("card-mode"), mode)
	for h, button := range c.hand {
		button.Set("checked", h == b.Job().Hand)
	}
	for n, button := range c.count {
		button.Set("checked", n == b.Job().HingesAsked())
	}
	refused, is := b.Draft(game.HingesPath)
	setText(byID("card-count-fault"), refused.Why)
	show(byID("card-count-fault"), is)
	c.showNotes()
	c.pasting.show()
	c.rest()
}

func (c *card) showOne(now *bench.Prompt) {
	b := c.p.bench
	value := byID("card-value")
	show(byID("card-entry"), now.Unit != "")
	show(byID("card-sign"), now.Signed)
	setText(byID("card-unit"), now.Unit)
	c.put(&entry{now.Path, value, byID("card-fault"), byID("card-misfit")}, now.Value, now.Misfit, now.Fault)
	mode := "decimal"
	if now.Unit == "ft in" {
		mode = "text" // a numeric keypad has no foot and inch marks
	}
	value.Call("setAttribute", "inputmode", mode)
	left := byID("card-left")
	show(byID("card-left-row"), now.Misfit != "" || now.Left)
	left.Set("checked", now.Left)
	show(byID("card-remove"), now.Remove != "")
	byID("card-back").Set("disabled", b.Asked() == 0)
	forth := "Next"
	if now.Value == "" {
		forth = "Skip"
	}
	setText(byID("card-forth"), forth)
	byID("card-forth").Set("disabled", b.Asked() == len(b.Card())-1)
}

// put shows a field's value, or what stands typed in it, and what is wrong.
func (c *card) put(e *entry, value, misfit, fault string) {
	b := c.p.bench
	draft, isDraft := b.Draft(e.path)
	if e.field.Get("dataset").Get("path").String() != e.path {
		e.field.Get("dataset").Set("path", e.path)
		setValue(e.field, value)
	}
	switch {
	case isDraft:
		setValue(e.field, draft.Text)
	case !focused(e.field) || !b.Typing(e.path):
		setValue(e.field, value)
	}
	if isDraft {
		fault = draft.Why
	}
	invalid(e.field, isDraft)
	setText(e.fault, fault)
	show(e.fault, fault != "")
	said := e.fault.Get("id").String()
	if e.misfit.Truthy() {
		setText(e.misfit, misfit)
		show(e.misfit, misfit != "")
		said += " " + e.misfit.Get("id").String()
	}
	e.field.Call("setAttribute", "aria-describedby", said)
}

func (c *card) showPicture(now *bench.Prompt) {
	palette, theme := &draw.Day, "day"
	if Dark() {
		palette, theme = &draw.Night, "night"
	}
	key := now.Path + string(c.p.bench.Job().Hand) + theme
	for _, f := range now.Places {
		key += "," + f.Value
	}
	if key == c.picture {
		return
	}
	c.picture = key
	list := c.p.bench.Sketch(now, pictureWide, pictureHigh)
	fill(byID("card-picture"), parsed(list.SVG(palette)))
}

// parsed gives a drawing's text as an element of the document.
func parsed(text []byte) js.Value {
	made := page.Get("DOMParser").New().Call("parseFromString", string(text), "image/svg+xml")
	return doc.Call("importNode", made.Get("documentElement"), true)
}

// showPlaces shows where the reading is taken, to be changed.
func (c *card) showPlaces(now *bench.Prompt) {
	shape := ""
	for _, f := range now.Places {
		shape += f.Label + ","
	}
	box := byID("card-places")
	show(box, shape != "")
	if shape != c.fields {
		c.fields = shape
		c.inputs = map[string]*entry{}
		parts := []js.Value{}
		for _, f := range now.Places {
			id := "card-" + strings.ToLower(f.Label)
			e := &entry{
				field: el("input", attrs{"type", "text", "id", id, "autocomplete", "off", "spellcheck", "false", "enterkeyhint", "done"}),
				fault: el("p", attrs{"class", "fault", "id", id + "-fault"}),
			}
			c.inputs[f.Label] = e
			on(e.field, "input", func(js.Value) {
				c.enter(e.path, e.field.Get("value").String())
			})
			on(e.field, "blur", func(js.Value) {
				c.p.bench.Settle()
				c.show()
			})
			parts = append(parts, el("div", attrs{"class", "field"},
				el("label", attrs{"for", id, "text", f.Label}),
				el("span", attrs{"class", "box has-unit"}, e.field, el("span", attrs{"class", "unit", "aria-hidden", "true"})), e.fault))
		}
		fill(byID("card-place-fields"), parts...)
	}
	for _, f := range now.Places {
		e := c.inputs[f.Label]
		e.path = f.Path
		mode := "decimal"
		if c.p.bench.Look().Inches {
			mode = "text"
		}
		e.field.Call("setAttribute", "inputmode", mode)
		setText(e.field.Get("nextSibling"), c.p.bench.Unit().String())
		c.put(e, f.Value, "", "")
	}
}

// showNotes says which readings do not fit, and what to measure next.
func (c *card) showNotes() {
	b := c.p.bench
	advice, is := b.Advice()
	next := byID("card-next")
	is = is && advice.Path != c.now().Path // that one stands above already
	show(next, is)
	if is {
		setText(byID("card-next-text"), advice.Text)
		button := byID("card-next-go")
		show(button, advice.Path != "")
		button.Get("dataset").Set("path", advice.Path)
	}
	rows := []js.Value{}
	said := ""
	for _, n := range b.Misfits() {
		said += n.Text + n.Path
		li := el("li", nil, el("p", attrs{"text", n.Text}))
		if n.Path != "" {
			li.Call("append", el("button", attrs{"type", "button", "data-path", n.Path, "text", "Go to it"}))
		}
		rows = append(rows, li)
	}
	list := byID("card-misfits")
	if list.Get("dataset").Get("said").String() != said {
		list.Get("dataset").Set("said", said)
		fill(list, rows...)
	}
	title := "A reading that does not fit"
	if len(rows) > 1 {
		title = "Readings that do not fit"
	}
	setText(byID("card-misfits-title"), title)
	show(byID("card-misfits-box"), len(rows) > 0)
}

// rest works out how sure the findings are once nothing was typed for a moment.
func (c *card) rest() {
	if c.weigh != nil {
		c.weigh.Stop()
		c.weigh = nil
	}
	if !c.p.bench.Unsure() && !c.late {
		c.swing()
		return
	}
	c.weigh = time.AfterFunc(restPause, func() {
		guard("weighing", func() {
			late := c.late
			c.late = false
			c.p.bench.Weigh()
			c.p.changed()
			if late {
				c.p.showRest()
			}
		})
	})
}

// slicePause is how long the page is left to itself between two slices of working out
// how well the swing is known: what is typed or dragged meanwhile comes first, and
// drops it.
const slicePause = 4 * time.Millisecond

// swing works that out, a slice at a time.
func (c *card) swing() {
	if !c.p.bench.Swinging() {
		return
	}
	c.weigh = time.AfterFunc(slicePause, func() {
		guard("weighing the swing", func() {
			if c.p.bench.WeighMore() {
				c.p.changed()
			} else {
				c.swing()
			}
		})
	})
}
