//go:build js

package panel

import (
	"errors"
	"leafwright/game/words"
	"strings"
	"syscall/js"

	"leafwright/game"
	"leafwright/game/bench"
)

// largest file opened, in bytes: far more than any job holds.
const largest = 1 << 20

// fetch gets a file that belongs to the page.
func fetch(name string, good func(text string), bad func(error)) {
	then(win.Call("fetch", name), func(answer js.Value) {
		if !answer.Get("ok").Bool() {
			bad(errors.New(name + " is not there"))
			return
		}
		then(answer.Call("text"), func(text js.Value) { good(text.String()) }, bad)
	}, bad)
}

// Demo gets one demo job.
func Demo(file string, good func(game.Job), bad func(error)) {
	fetch("jobs/"+file, func(text string) {
		job, err := game.Parse([]byte(text))
		if err != nil {
			bad(err)
			return
		}
		good(job)
	}, bad)
}

// dialog gives the list of jobs its life.
func (p *Panel) dialog() {
	box, opener := byID("jobs"), byID("jobs-open")
	opener.Set("disabled", false)
	on(opener, "click", func(js.Value) {
		show(byID("open-fault"), false)
		setText(byID("lives"), p.lives())
		p.listShelf()
		for _, b := range p.demoButtons() {
			if b.Get("textContent").String() == p.bench.Job().Name {
				b.Call("setAttribute", "aria-current", "true")
			} else {
				b.Call("removeAttribute", "aria-current")
			}
		}
		box.Call("showModal")
	})
	on(byID("jobs-close"), "click", func(js.Value) { box.Call("close") })
	on(box, "click", func(e js.Value) {
		if e.Get("target").Equal(box) { // on the backdrop
			box.Call("close")
		}
	})
	on(byID("save"), "click", func(js.Value) { p.save() })
	on(byID("bin-empty"), "click", func(js.Value) {
		p.shelf().EmptyBin()
		p.listShelf()
		byID("jobs-close").Call("focus")
	})
	file := byID("file")
	on(byID("open"), "click", func(js.Value) { file.Call("click") })
	on(file, "change", func(js.Value) {
		chosen := file.Get("files").Index(0)
		if chosen.Truthy() {
			p.openFile(chosen)
		}
		file.Set("value", "")
	})
	fetch("jobs/list.json", p.listDemos, func(err error) { p.openFault("The doors to try are not there: " + err.Error()) })
}

func (p *Panel) demoButtons() []js.Value {
	all := byID("demos").Call("querySelectorAll", "button")
	buttons := make([]js.Value, all.Length())
	for i := range buttons {
		buttons[i] = all.Index(i)
	}
	return buttons
}

func (p *Panel) listDemos(text string) {
	var items []js.Value
	if err := try(func() {
		list := win.Get("JSON").Call("parse", text)
		for i := range list.Length() {
			d := list.Index(i)
			file, name := d.Get("file").String(), d.Get("name").String()
			button := el("button", attrs{"type", "button", "text", name})
			on(button, "click", func(js.Value) {
				Demo(file, p.open, func(err error) { p.openFault(name + ": " + err.Error()) })
			})
			items = append(items, el("li", nil, button, el("p", attrs{"class", "quiet", "text", d.Get("about").String()})))
		}
	}); err != nil {
		p.openFault("The list of doors to try cannot be read: " + err.Error())
		return
	}
	fill(byID("demos"), items...)
}

// lives says where the job is kept.
func (p *Panel) lives() string {
	if p.keeper.failed {
		return "This browser keeps nothing for this page: what you change here is gone when you leave, unless you save it as a file."
	}
	return "Jobs are kept in this browser on this device and nowhere else, each with every step to undo. " +
		"A file is yours to keep, send and open anywhere."
}

// open puts a job on the shelf and on the bench, and closes the list.
func (p *Panel) open(job game.Job) {
	p.turnTo(p.shelf().New(job))
}

// turnTo goes on with another job.
func (p *Panel) turnTo(b *bench.State) {
	p.bench.Take(b)
	byID("jobs").Call("close")
	p.changed()
	p.toTop()
}

// Plain is the job a person's own begins with: a leaf of a common size in a
// square opening.
func Plain() game.Job {
	job := game.Blank(762, 1981, 35)
	job.Name = "My door"
	return job
}

// own starts a job with an empty measuring card.
func (p *Panel) own() {
	p.open(game.Unmeasured(Plain()))
	p.card.start()
}

func (p *Panel) toTop() {
	byID("panel").Set("scrollTop", 0)
	page.Call("scrollTo", 0, 0)
}

func (p *Panel) openFile(file js.Value) {
	name := file.Get("name").String()
	if file.Get("size").Int() > largest {
		p.openFault(name + " is larger than any job file.")
		return
	}
	then(file.Call("text"), func(text js.Value) {
		job, err := game.Parse([]byte(text.String()))
		if err != nil {
			p.openFault(name + " was not opened, and nothing was changed.\n" + err.Error())
			return
		}
		p.open(job)
	}, func(err error) { p.openFault(name + " cannot be read: " + err.Error()) })
}

func (p *Panel) openFault(text string) {
	e := byID("open-fault")
	setText(e, words.Capital(text))
	show(e, true)
}

// save hands the job over as a file.
func (p *Panel) save() {
	job := p.bench.Job()
	p.download(fileName(job.Name)+".json", "application/json", string(game.Encode(*job)))
}

// download hands a text over as a file.
func (p *Panel) download(name, kind, text string) {
	options := js.Global().Get("Object").New()
	options.Set("type", kind)
	blob := page.Get("Blob").New([]any{text}, options)
	url := page.Get("URL").Call("createObjectURL", blob)
	link := el("a", attrs{"download", name})
	link.Set("href", url)
	link.Call("click")
	var later js.Func
	later = js.FuncOf(func(js.Value, []js.Value) any {
		page.Get("URL").Call("revokeObjectURL", url)
		later.Release()
		return nil
	})
	page.Call("setTimeout", later, 60000)
}

// fileName makes a name that every system takes out of a job's.
func fileName(name string) string {
	clean := strings.Map(func(r rune) rune {
		switch {
		case r < ' ' || strings.ContainsRune(`<>:"/\|?*`, r):
			return -1
		case r == ' ':
			return '-'
		}
		return r
	}, strings.TrimSpace(name))
	clean = strings.Trim(clean, ".-")
	if r := []rune(clean); len(r) > 60 {
		clean = string(r[:60])
	}
	if clean == "" {
		return "door"
	}
	return clean
}
