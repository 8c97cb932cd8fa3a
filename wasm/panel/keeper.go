//go:build js

package panel

import (
	"strings"
	"syscall/js"

	"leafwright/game/bench"
)

// themeKey is what the theme is kept under; page.js reads it too.
const themeKey = "leafwright:theme"

// keeper keeps every change in the browser, and says so, or says that it cannot. A
// change is drawn first and written right after, or when the page is left.
type keeper struct {
	p         *Panel
	shelf     *bench.Shelf
	notice    js.Value
	job, look bool // changed and not written yet
	asked     bool // for the browser to keep it when room runs short
	failed    bool
	taken     bool // the job on show was just taken over from another window
}

func (k *keeper) init(p *Panel) {
	k.p = p
	k.notice = byID("storage")
	save := el("button", attrs{"type", "button", "text", "Save as a file"})
	on(save, "click", func(js.Value) { p.save() })
	fill(k.notice, el("p", attrs{"id", "storage-text"}), save)
	// Told of what other windows keep, once it can be read here, and of nothing this one does.
	on(win, "storage", func(js.Value) { k.heard() })
	on(win, "pagehide", func(js.Value) { k.write() })
	on(doc, "visibilitychange", func(js.Value) { k.write() })
}

// shelf gives the shelf with all that changed on it.
func (p *Panel) shelf() *bench.Shelf {
	p.keeper.write()
	return p.keeper.shelf
}

// heard takes over what another window made of the job shown here.
func (k *keeper) heard() {
	shelf := k.p.shelf()
	if !shelf.Stale() {
		return
	}
	if b, err := shelf.Open(shelf.ID()); err == nil {
		option, tool := k.p.bench.Shown(), k.p.bench.Tool()
		k.p.bench.Take(b)
		k.p.bench.ShowOption(option)
		k.p.bench.SetTool(tool)
		k.taken = true
		k.tell("This job was changed in another window. What stands there stands here now; Undo goes back.")
		k.p.changed()
	}
}

// report tells what a person should know of the shelf.
func (k *keeper) report() {
	if reports := k.shelf.Reports(); len(reports) > 0 {
		k.tell(strings.Join(reports, "\n"))
	}
}

// keep has what changed written in a moment.
func (k *keeper) keep(job, look bool) {
	k.report()
	if k.p.bench.IsGuest() {
		return
	}
	if k.taken { // it was kept by the window it came from
		job, k.taken = false, false
	}
	k.job, k.look = k.job || job, k.look || look
	if k.job || k.look {
		k.p.soon()
	}
}

// write writes what changed and is not written yet.
func (k *keeper) write() {
	job, look := k.job, k.look
	if !job && !look {
		return
	}
	k.job, k.look = false, false
	var err error
	if job {
		saved, failed := k.shelf.Save(k.p.bench)
		err = failed
		k.job = err != nil
		if saved.Conflict != "" {
			k.tell(saved.Conflict)
			k.p.showHead()
		}
	}
	if look && err == nil {
		err = k.shelf.SaveLook(k.p.bench)
	}
	k.report()
	root := doc.Get("documentElement").Get("dataset")
	switch {
	case err != nil:
		root.Set("saved", "no")
		k.failed = true
		k.tell(err.Error())
		setText(byID("status"), "Not saved")
	case job || k.failed:
		root.Set("saved", "yes")
		if k.failed {
			k.failed = false
			show(k.notice, false)
		}
		setText(byID("status"), "Saved in this browser")
	}
	if job && k.p.bench.CanUndo() && !k.asked {
		k.asked = true
		k.persist()
	}
}

func (k *keeper) tell(text string) {
	setText(byID("storage-text"), text)
	show(k.notice, true)
}

// persist asks the browser not to clear what it keeps when room runs short.
func (k *keeper) persist() {
	try(func() {
		store := win.Get("navigator").Get("storage")
		if store.Truthy() && store.Get("persist").Truthy() {
			then(store.Call("persist"), func(js.Value) {}, func(error) {})
		}
	})
}

// Theme is the theme chosen: "light", "dark", or "" to follow the device.
func Theme() string {
	if t := doc.Get("documentElement").Get("dataset").Get("theme"); t.Type() == js.TypeString {
		return t.String()
	}
	return ""
}

// Dark tells whether the page is dark now.
func Dark() bool {
	switch Theme() {
	case "dark":
		return true
	case "light":
		return false
	}
	return page.Call("matchMedia", "(prefers-color-scheme: dark)").Get("matches").Bool()
}

// OnTheme calls f when the device turns light or dark.
func OnTheme(f func()) {
	on(page.Call("matchMedia", "(prefers-color-scheme: dark)"), "change", func(js.Value) { f() })
}

// setTheme chooses a theme and keeps the choice where the page finds it before
// the program is there.
func setTheme(t string) {
	if t == "" {
		doc.Get("documentElement").Call("removeAttribute", "data-theme")
	} else {
		doc.Get("documentElement").Call("setAttribute", "data-theme", t)
	}
	if store, err := storage(); err == nil {
		try(func() { store.Call("setItem", themeKey, t) })
	}
}

// wide matches a page with room for more than one picture. To ask for its width instead
// would have it laid out at every change.
var wide = page.Call("matchMedia", "(min-width: 700px)")

// Narrow tells whether the page has room for one picture only.
func Narrow() bool { return !wide.Get("matches").Bool() }
