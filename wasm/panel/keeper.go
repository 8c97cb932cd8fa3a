//go:build js

package panel

import (
	"syscall/js"

	"leafwright/game/bench"
)

// What is kept in the browser, and under which names.
const (
	jobKey   = "leafwright:job"
	lookKey  = "leafwright:look"
	themeKey = "leafwright:theme" // read by page.js too
)

// Restore takes up what was kept when the page was last open.
func Restore() (b *bench.State, found bool) {
	for _, k := range []string{jobKey, former(jobKey)} {
		job, ok := kept(k)
		if !ok {
			continue
		}
		look, _ := kept(lookKey)
		if b, err := bench.Restore(job, look); err == nil {
			return b, true
		}
	}
	return nil, false
}

// keeper keeps every change in the browser, and says so, or says that it cannot.
type keeper struct {
	p      *Panel
	notice js.Value
	asked  bool // for the browser to keep it when room runs short
	kept   bool // once; opening the page changes nothing
	failed bool
	// channel tells other windows that the job they show was changed here.
	channel js.Value
}

func (k *keeper) init(p *Panel) {
	k.p = p
	k.notice = byID("storage")
	save := el("button", attrs{"type": "button", "text": "Save as a file"})
	on(save, "click", func(js.Value) { p.save() })
	fill(k.notice, el("p", attrs{"id": "storage-text"}), save)
	// Heard by every other window with this page, and not by the one that speaks.
	try(func() {
		k.channel = win.Get("BroadcastChannel").New("leafwright")
		on(k.channel, "message", func(js.Value) {
			k.tell("This job was changed in another window too. What you change here takes its place; a file keeps both.")
		})
	})
}

// keep writes the records that changed.
func (k *keeper) keep(job, look bool) {
	var err error
	if job {
		err = keep(jobKey, bench.Seal(k.p.bench.JobRecord()))
		if k.channel.Truthy() && k.kept {
			k.channel.Call("postMessage", "changed")
		}
		k.kept = true
	}
	if look && err == nil {
		err = keep(lookKey, bench.Seal(k.p.bench.LookRecord()))
	}
	root := doc.Get("documentElement").Get("dataset")
	switch {
	case err != nil:
		root.Set("saved", "no")
		k.failed = true
		k.tell("The browser cannot keep this job (" + err.Error() + "). Save it as a file before you leave.")
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

// Narrow tells whether the page has room for one picture only.
func Narrow() bool { return page.Get("innerWidth").Int() < 700 }
