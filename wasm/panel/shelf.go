//go:build js

package panel

import (
	"strings"
	"syscall/js"

	"leafwright/game/bench"
)

// listShelf shows the jobs kept on this device, those deleted and what was set
// aside as damaged.
func (p *Panel) listShelf() {
	focus := focusedID()
	kept, binned := []js.Value{}, []js.Value{}
	for _, e := range p.shelf().List() {
		if e.Binned {
			binned = append(binned, p.binRow(e))
		} else {
			kept = append(kept, p.shelfRow(e))
		}
	}
	fill(byID("shelf"), kept...)
	show(byID("shelf-box"), len(kept) > 0)
	fill(byID("bin"), binned...)
	show(byID("bin-box"), len(binned) > 0)
	aside := []js.Value{}
	for _, key := range p.shelf().Aside() {
		aside = append(aside, p.asideRow(key))
	}
	fill(byID("aside"), aside...)
	show(byID("aside-box"), len(aside) > 0)
	refocus(focus)
}

func jobName(e bench.Entry) string {
	if e.Name == "" {
		return "A door without a name"
	}
	return e.Name
}

// shelfButton does something to a job of the list and shows the list anew.
func (p *Panel) shelfButton(id, label, spoken string, do func() error) js.Value {
	b := el("button", attrs{"type", "button", "class", "plain", "id", id, "text", label, "aria-label", spoken})
	on(b, "click", func(js.Value) {
		if err := do(); err != nil {
			p.openFault(err.Error())
		}
		p.listShelf()
	})
	return b
}

func (p *Panel) shelfRow(e bench.Entry) js.Value {
	name := jobName(e)
	open := el("button", attrs{"type", "button", "class", "shelf-name", "id", "job-open-" + e.ID, "text", name})
	if e.Open {
		open.Call("setAttribute", "aria-current", "true")
	}
	on(open, "click", func(js.Value) {
		if e.Open {
			byID("jobs").Call("close")
			return
		}
		b, err := p.shelf().Open(e.ID)
		if err != nil {
			p.openFault(name + ": " + err.Error())
			p.listShelf()
			return
		}
		p.turnTo(b)
	})
	li := el("li", nil, open)
	rename := el("button", attrs{"type", "button", "class", "plain", "id", "job-rename-" + e.ID, "text", "Rename", "aria-label", "Rename " + name})
	on(rename, "click", func(js.Value) { p.renaming(li, e) })
	li.Call("append",
		rename,
		p.shelfButton("job-copy-"+e.ID, "Copy", "Copy "+name, func() error {
			_, err := p.shelf().Duplicate(e.ID)
			return err
		}),
		p.shelfButton("job-delete-"+e.ID, "Delete", "Delete "+name, func() error { return p.deleteJob(e) }))
	return li
}

// deleteJob puts a job in the bin; where it is the open one, the newest of the
// others comes on the bench.
func (p *Panel) deleteJob(e bench.Entry) error {
	if err := p.shelf().Delete(e.ID); err != nil || !e.Open {
		return err
	}
	for _, other := range p.shelf().List() {
		if other.Binned {
			continue
		}
		if b, err := p.shelf().Open(other.ID); err == nil {
			p.bench.Take(b)
			p.changed()
			return nil
		}
	}
	p.bench.Take(p.shelf().New(Plain()))
	p.changed()
	return nil
}

// renaming puts a field in place of a job's name.
func (p *Panel) renaming(li js.Value, e bench.Entry) {
	field := el("input", attrs{"type", "text", "value", e.Name, "aria-label", "New name of " + jobName(e), "autocomplete", "off"})
	done := el("button", attrs{"type", "button", "text", "Rename"})
	take := func() {
		name := strings.TrimSpace(field.Get("value").String())
		var err error
		if e.Open {
			p.bench.Type("name", name)
			p.bench.Settle()
			p.changed()
		} else {
			err = p.shelf().Rename(e.ID, name)
		}
		if err != nil {
			p.openFault(err.Error())
		}
		p.listShelf()
		if b := byID("job-rename-" + e.ID); b.Truthy() {
			b.Call("focus")
		}
	}
	on(done, "click", func(js.Value) { take() })
	on(field, "keydown", func(ev js.Value) {
		switch ev.Get("key").String() {
		case "Enter":
			ev.Call("preventDefault")
			take()
		case "Escape":
			ev.Call("preventDefault")
			ev.Call("stopPropagation")
			p.listShelf()
		}
	})
	fill(li, el("span", attrs{"class", "box"}, field), done)
	field.Call("focus")
	field.Call("select")
}

func (p *Panel) binRow(e bench.Entry) js.Value {
	return el("li", nil, el("span", attrs{"class", "shelf-name", "text", jobName(e)}),
		p.shelfButton("job-back-"+e.ID, "Bring back", "Bring back "+jobName(e), func() error {
			p.shelf().Undelete(e.ID)
			return nil
		}))
}

func (p *Panel) asideRow(key string) js.Value {
	save := p.shelfButton("", "Save as a file", "Save what was set aside as a file", func() error {
		p.download("set-aside.txt", "text/plain", p.shelf().AsideText(key))
		return nil
	})
	drop := p.shelfButton("", "Drop", "Drop what was set aside", func() error {
		p.shelf().DropAside(key)
		return nil
	})
	return el("li", nil, el("span", attrs{"class", "shelf-name", "text", "A job that could not be read"}), save, drop)
}
