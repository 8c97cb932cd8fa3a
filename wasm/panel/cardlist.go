//go:build js

package panel

import (
	"strconv"
	"strings"
	"syscall/js"

	"leafwright/game/bench"
)

// cardList is the whole card at once: a field for each prompt, by stage.
type cardList struct {
	c     *card
	shape string
	rows  map[string]*entry // by path
}

func (l *cardList) init(c *card) {
	l.c, l.rows = c, map[string]*entry{}
	box := byID("card-all")
	fill(box)
	// One listener serves all rows, however often they are made anew.
	pathOf := func(e js.Value) string {
		if p := e.Get("target").Get("dataset").Get("path"); p.Type() == js.TypeString {
			return p.String()
		}
		return ""
	}
	b := c.p.bench
	on(box, "input", func(e js.Value) {
		if path := pathOf(e); path != "" {
			c.enter(path, e.Get("target").Get("value").String())
		}
	})
	on(box, "focusin", func(e js.Value) {
		if path := pathOf(e); path != "" && path != b.Look().Asked {
			b.Ask(path)
			c.p.changed()
		}
	})
	on(box, "focusout", func(js.Value) {
		b.Settle()
		c.show()
	})
	on(box, "keydown", func(e js.Value) {
		if e.Get("key").String() == "Enter" && pathOf(e) != "" && !e.Get("isComposing").Bool() {
			e.Call("preventDefault")
			c.move(b.Advance)
		}
	})
	for _, id := range []string{"card-misfits", "card-next"} {
		on(byID(id), "click", func(e js.Value) {
			if path := pathOf(e); path != "" {
				c.ask(path)
			}
		})
	}
}

// show brings the list up to date, or folds it away.
func (l *cardList) show(visible bool) {
	box := byID("card-all")
	show(box, visible)
	if !visible {
		return
	}
	all := l.c.p.bench.Card()
	var shape strings.Builder
	for i := range all {
		shape.WriteString(all[i].Path + all[i].Label + all[i].Unit + ";")
	}
	if shape.String() != l.shape {
		l.shape = shape.String()
		l.build(all)
	}
	for i := range all {
		if e := l.rows[all[i].Path]; e != nil {
			l.c.put(e, all[i].Value, all[i].Misfit, all[i].Fault)
		}
	}
}

func (l *cardList) build(all []bench.Prompt) {
	focus := doc.Get("activeElement").Get("dataset").Get("path")
	l.rows = map[string]*entry{}
	var parts []js.Value
	var group js.Value
	for i := range all {
		p := &all[i]
		if i == 0 || all[i-1].Stage != p.Stage {
			group = el("fieldset", attrs{"class", "card-stage"}, el("legend", attrs{"text", p.Stage.String()}))
			parts = append(parts, group)
		}
		if p.Unit == "" {
			group.Call("append", el("p", attrs{"class", "quiet", "text", p.Label}))
			continue
		}
		id := "card-row-" + strconv.Itoa(i)
		mode := "decimal"
		if p.Unit == "ft in" {
			mode = "text"
		}
		e := &entry{
			path:   p.Path,
			field:  el("input", attrs{"type", "text", "id", id, "inputmode", mode, "autocomplete", "off", "spellcheck", "false", "enterkeyhint", "next", "data-path", p.Path}),
			fault:  el("p", attrs{"class", "fault", "id", id + "-fault"}),
			misfit: el("p", attrs{"class", "misfit", "id", id + "-misfit"}),
		}
		l.rows[p.Path] = e
		group.Call("append", el("div", attrs{"class", "field short"},
			el("label", attrs{"for", id, "text", p.Label}),
			el("span", attrs{"class", "box has-unit"}, e.field, el("span", attrs{"class", "unit", "aria-hidden", "true", "text", p.Unit})), e.fault, e.misfit))
	}
	fill(byID("card-all"), parts...)
	if focus.Type() == js.TypeString {
		if e := l.rows[focus.String()]; e != nil {
			at := e.field
			at.Call("focus", map[string]any{"preventScroll": true})
		}
	}
}
