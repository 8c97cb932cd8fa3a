//go:build js

package panel

import (
	"syscall/js"

	"leafwright/game"
)

// offerClerk gives the page's scripts what they ask the second program about, and takes
// the way it advises. All the rest is written there, because here every line weighs on
// the download.
func (p *Panel) offerClerk() {
	// benchJob(whole) gives the job, without its options and its name unless it is whole,
	// and what a file of it is called.
	win.Set("benchJob", js.FuncOf(func(_ js.Value, args []js.Value) any {
		job := *p.bench.Job()
		file := fileName(job.Name)
		if !args[0].Bool() {
			job.Options, job.Name, job.Note = nil, "", ""
		}
		look := p.bench.Look()
		return map[string]any{
			"job": string(game.Encode(job)), "words": string(look.Words), "inches": look.Inches,
			"neighbour": len(job.Neighbour) > 0, "shown": int(p.bench.Shown()), "file": file,
			"season": p.bench.Season(),
		}
	}))
	// putSeason(wider, month) shows the leaf so much wider, mm, as it is in that month.
	win.Set("putSeason", js.FuncOf(func(_ js.Value, args []js.Value) any {
		p.bench.SetSeason(args[0].Float(), args[1].String())
		p.showFindings()
		p.changed()
		return nil
	}))
	win.Set("putOption", js.FuncOf(func(_ js.Value, args []js.Value) any {
		if err := p.bench.PutOption(args[0].String()); err != nil {
			p.say(err.Error())
		}
		p.changed()
		return nil
	}))
}

// tellClerk has what was asked of the second program follow what changed.
func (p *Panel) tellClerk() { page.Call("changed", !p.bench.Lacking()) }
