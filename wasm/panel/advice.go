//go:build js

package panel

import (
	"syscall/js"

	"leafwright/game"
)

// offerAdvice gives the page's advice.js what it asks about, and takes what it is told
// to try. All the rest of advice is written there and in the second program, because
// here every line weighs on the download.
func (p *Panel) offerAdvice() {
	win.Set("adviceOn", js.FuncOf(func(js.Value, []js.Value) any {
		job := *p.bench.Job()
		job.Options, job.Name, job.Note = nil, "", "" // these have no part in it
		look := p.bench.Look()
		return map[string]any{"job": string(game.Encode(job)), "words": string(look.Words), "inches": look.Inches, "neighbour": len(job.Neighbour) > 0}
	}))
	win.Set("putOption", js.FuncOf(func(_ js.Value, args []js.Value) any {
		if err := p.bench.PutOption(args[0].String()); err != nil {
			p.say(err.Error())
		}
		p.changed()
		return nil
	}))
}

// showAdvice has advice follow what changed.
func (p *Panel) showAdvice() { page.Call("advise", !p.bench.Lacking()) }
