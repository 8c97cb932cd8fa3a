//go:build js

package panel

import (
	"syscall/js"

	"leafwright/game"
	"leafwright/game/bench"
)

// Panel is the document round the drawing. It shows what the bench holds and
// tells the bench what is done in it.
type Panel struct {
	bench   *bench.State // the same one for as long as the page is open
	changed func()       // after anything was done to the bench

	form     form
	card     card
	controls controls
	hands    hands
	ways     ways
	moves    moves
	compare  compare
	keeper   keeper

	findings, conditions lines
	cautions             []game.Caution // as they stand in the document

	still       bool // the drawing is a still picture in the document
	jobs, looks int  // what was shown last
	due         bool // what is late is made up for in a moment
	moment      js.Func
}

// New fills the document for the bench. changed is called after everything that
// may have changed the bench.
func New(b *bench.State, shelf *bench.Shelf, changed func()) *Panel {
	p := &Panel{bench: b, changed: changed, keeper: keeper{shelf: shelf}, jobs: -1, looks: -1, findings: lines{id: "findings"}, conditions: lines{id: "conditions"}}
	p.form.init(p)
	p.card.init(p)
	p.controls.init(p)
	p.hands.init(p)
	p.ways.p = p
	p.moves.init(p)
	p.offerClerk()
	p.compare.init(p)
	p.keeper.init(p)
	p.head()
	p.dialog()
	p.print()
	p.moment = js.FuncOf(func(js.Value, []js.Value) any {
		p.due = false
		guard("making up for what is late", func() {
			if p.form.late {
				p.form.late = false
				p.showRest()
			}
		})
		guard("keeping", p.keeper.write)
		return nil
	})
	return p
}

// soon has what is late made up for when there was time to draw what changed.
func (p *Panel) soon() {
	const moment = 50 // ms
	if !p.due {
		p.due = true
		win.Call("setTimeout", p.moment, moment)
	}
}

// Show brings the document up to date with the bench, and keeps what changed.
func (p *Panel) Show() {
	jobs, looks := p.bench.Changes()
	newJob, newLook := jobs != p.jobs, looks != p.looks
	p.jobs, p.looks = jobs, looks
	if newJob {
		p.showHead()
		p.showFindings()
		p.moves.show()
		p.compare.show()
		if p.form.late {
			p.soon()
		} else if !p.card.typing() {
			p.showRest()
		}
	}
	if newJob || newLook {
		p.controls.show()
		p.hands.show()
		p.ways.show()
		p.moves.showMode()
		p.tellClerk()
		p.card.show()
		p.showStill()
	}
	p.keeper.keep(newJob, newLook)
}

// showRest shows what can wait while a reading or a number is typed.
func (p *Panel) showRest() {
	p.showConditions()
	p.form.show()
}

// Ready tells the page that everything is there.
func (p *Panel) Ready() {
	doc.Get("documentElement").Get("dataset").Set("ready", "yes")
}

// head gives the page's head its life: undo, redo, and the way to the jobs.
func (p *Panel) head() {
	on(byID("undo"), "click", func(js.Value) { p.undo(false) })
	on(byID("redo"), "click", func(js.Value) { p.undo(true) })
	on(page, "keydown", func(e js.Value) {
		if !e.Get("ctrlKey").Bool() && !e.Get("metaKey").Bool() || e.Get("altKey").Bool() {
			return
		}
		redo := e.Get("shiftKey").Bool()
		switch e.Get("key").String() {
		case "z", "Z":
		case "y", "Y":
			redo = true
		default:
			return
		}
		// In a text field that is being typed in, the browser's own undo comes first.
		if p.form.typing() {
			return
		}
		e.Call("preventDefault")
		p.undo(redo)
	})
	for _, id := range []string{"own", "jobs-own"} {
		on(byID(id), "click", func(js.Value) { p.own() })
		byID(id).Set("disabled", false)
	}
}

// undo goes a step back, or forward again, or says why there is no going back.
func (p *Panel) undo(redo bool) {
	switch {
	case redo:
		p.bench.Redo()
	case p.bench.CanUndo():
		p.bench.Undo()
	default:
		if why := p.bench.UndoStops(); why != "" {
			p.say(why)
		}
	}
	p.changed()
}

// say tells something where the person is looking, and to a screen reader.
func (p *Panel) say(text string) { p.keeper.tell(text) }

// Undo is undo from the drawing's keys.
func (p *Panel) Undo(redo bool) { p.undo(redo) }

func (p *Panel) showHead() {
	name := p.bench.Job().Name
	if name == "" {
		name = "A door without a name"
	}
	setText(byID("job-title"), name)
	doc.Set("title", name+" · Leafwright")
	byID("undo").Set("disabled", !p.bench.CanUndo() && p.bench.UndoStops() == "")
	byID("redo").Set("disabled", !p.bench.CanRedo())
}
