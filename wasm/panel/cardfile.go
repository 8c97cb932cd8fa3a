//go:build js

package panel

import (
	"syscall/js"

	"leafwright/game/bench"
)

// pasting is the way in and out for a whole table of readings.
type pasting struct {
	c    *card
	open bool
}

func (t *pasting) init(c *card) {
	t.c = c
	b := c.p.bench
	text, file := byID("card-text"), byID("card-file")
	take := func(table string) {
		if b.Paste(table) {
			text.Set("value", "")
			t.open = false
		}
		c.p.changed()
		t.show()
		if t.open {
			text.Call("focus")
		} else {
			byID("card-paste").Call("focus")
		}
	}
	on(byID("card-paste"), "click", func(js.Value) {
		t.open = !t.open
		if !t.open {
			b.DropPaste()
			text.Set("value", "")
		}
		t.show()
		c.p.changed()
		if t.open {
			text.Call("focus")
		}
	})
	on(byID("card-take"), "click", func(js.Value) { take(text.Get("value").String()) })
	on(byID("card-open"), "click", func(js.Value) { file.Call("click") })
	on(file, "change", func(js.Value) {
		chosen := file.Get("files").Index(0)
		if !chosen.Truthy() {
			return
		}
		if chosen.Get("size").Int() > largest {
			show(byID("card-text-fault"), true)
			setText(byID("card-text-fault"), chosen.Get("name").String()+" is larger than any table of readings.")
		} else {
			then(chosen.Call("text"), func(read js.Value) {
				text.Set("value", read)
				take(read.String())
			}, func(err error) { setText(byID("card-text-fault"), err.Error()) })
		}
		file.Set("value", "")
	})
	on(byID("card-save"), "click", func(js.Value) {
		c.p.download(fileName(b.Job().Name)+"-readings.csv", "text/csv", string(b.ReadingsCSV()))
	})
}

func (t *pasting) show() {
	draft, bad := t.c.p.bench.Draft(bench.PastePath)
	t.open = t.open || bad
	show(byID("card-table"), t.open)
	byID("card-paste").Call("setAttribute", "aria-expanded", map[bool]string{true: "true", false: "false"}[t.open])
	text, fault := byID("card-text"), byID("card-text-fault")
	if bad && text.Get("value").String() == "" {
		text.Set("value", draft.Text)
	}
	setText(fault, draft.Why)
	show(fault, bad)
	invalid(text, bad)
	byID("card-save").Set("disabled", len(t.c.p.bench.Job().Readings) == 0)
}
