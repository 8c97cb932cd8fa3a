//go:build js

package panel

import (
	"strconv"
	"strings"
	"syscall/js"

	"leafwright/game/bench"
)

// ways is the row that says which door is shown: as found, as it stands, or one of
// the options tried.
type ways struct {
	p       *Panel
	shape   string
	buttons map[bench.Shown]js.Value
	now     bench.Shown
}

func (w *ways) show() {
	job := w.p.bench.Job()
	all := []bench.Shown{bench.AsFound}
	if len(job.Made) > 0 {
		all = append(all, bench.AsStands)
	}
	for i := range job.Options {
		all = append(all, bench.Shown(i))
	}
	var shape strings.Builder
	for _, v := range all {
		shape.WriteString(strconv.Itoa(int(v)) + w.name(v) + "\n")
	}
	if w.buttons == nil || shape.String() != w.shape {
		w.shape = shape.String()
		w.build(all)
	}
	now := w.p.bench.Shown()
	if now == bench.AsStands && len(job.Made) == 0 {
		now = bench.AsFound
	}
	for v, b := range w.buttons {
		b.Set("checked", v == now)
		if v == now && v != w.now {
			row := b.Call("closest", ".scroll") // where there is more of it than fits
			if row.Truthy() {
				row.Set("scrollLeft", b.Get("parentNode").Get("offsetLeft").Int()-row.Get("offsetLeft").Int()-24)
			}
		}
	}
	w.now = now
	show(byID("ways"), !w.p.bench.Lacking())
}

func (w *ways) name(v bench.Shown) string {
	switch v {
	case bench.AsFound:
		return "As found"
	case bench.AsStands:
		return "As it stands"
	}
	return w.p.bench.Job().OptionName(int(v))
}

func (w *ways) build(all []bench.Shown) {
	p := w.p
	refocusing := focusedID()
	var row js.Value
	w.buttons, row = choose(p, "way", "The door shown", all, w.name, p.bench.ShowOption)
	row.Get("classList").Call("add", "ways-choice")
	parts := []js.Value{}
	if len(all) > 1 {
		parts = append(parts, el("div", attrs{"class", "scroll"}, row))
	}
	add := el("button", attrs{"type", "button", "id", "way-add", "text", "Try a way"})
	if len(all) == 1 {
		add.Set("textContent", "Try it before cutting")
		add.Call("setAttribute", "class", "main")
	}
	on(add, "click", func(js.Value) {
		if err := p.bench.AddOption(); err != nil {
			p.say(err.Error())
		}
		p.changed()
		byID("moves-box").Call("scrollIntoView", map[string]any{"block": "nearest"})
	})
	buttons := []js.Value{add}
	if len(all) > 1 {
		side := el("button", attrs{"type", "button", "id", "compare-open", "aria-haspopup", "dialog", "text", "Side by side"})
		on(side, "click", func(js.Value) { p.compare.open() })
		buttons = append(buttons, side)
	}
	fill(byID("ways"), append(parts, el("div", attrs{"class", "row"}, buttons...))...)
	refocus(refocusing)
}

func focusedID() string { return doc.Get("activeElement").Get("id").String() }
