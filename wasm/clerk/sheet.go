//go:build js

package main

import (
	"syscall/js"

	"leafwright/game"
	"leafwright/game/cutlist"
	"leafwright/game/dxf"
	"leafwright/game/measure"
	"leafwright/game/sheet"
	"leafwright/game/words"
)

// sheet is asked with
//
//	kind     a [sheet.Kind]
//	options  places in the job's options
//	paper    the name of a [sheet.Paper]
//
// and answers with
//
//	title  what the sheet is, and of which job
//	pages  each as SVG, as large as its paper
func (c *clerk) sheet(q js.Value, job *game.Job) map[string]any {
	ask, known := askedFor(q, job)
	if !known {
		return noPaper(q)
	}
	if ask.Kind == sheet.Client && len(ask.Options) > 0 {
		plans, done := c.plansOf(q, job)
		if !done {
			return nil
		}
		ask.Plans = plans
	}
	made, err := sheet.Pages(&ask)
	if err != nil {
		return map[string]any{"fault": err.Error()}
	}
	pages := make([]any, len(made))
	for i := range made {
		pages[i] = string(sheet.SVG(&made[i]))
	}
	return map[string]any{"fault": "", "title": made[0].Title, "pages": pages}
}

// files is asked with the same and answers with what a workshop takes of the first
// option, or of the door as it stands where there is none:
//
//	csv  the bytes of a table of every gap and cut
//	dxf  those of the outlines, in the drawing exchange format
//
// There is neither for a rated leaf.
func (c *clerk) files(q js.Value, job *game.Job) map[string]any {
	ask, known := askedFor(q, job)
	if !known {
		return noPaper(q)
	}
	if game.Rated(job) {
		return map[string]any{"fault": sheet.ErrRated.Error()}
	}
	option := game.AsItStands
	if len(ask.Options) > 0 {
		option = ask.Options[0]
	}
	return map[string]any{
		"fault": "",
		"csv":   file(cutlist.CSV(cutlist.Rows(job, option, speaker(q, job)), ask.Unit)),
		"dxf":   file(dxf.Of(job, option, words.For(ask.Words))),
	}
}

func noPaper(q js.Value) map[string]any {
	return map[string]any{"fault": "no sheet is laid out on paper of the name " + q.Get("paper").String()}
}

// file carries a file over as it is: as a text it would lose the mark at its head.
func file(data []byte) js.Value {
	bytes := js.Global().Get("Uint8Array").New(len(data))
	js.CopyBytesToJS(bytes, data)
	return bytes
}

// askedFor reads what sheet is asked for, and tells whether there is such paper.
func askedFor(q js.Value, job *game.Job) (a sheet.Ask, known bool) {
	a = sheet.Ask{Job: job, Kind: sheet.Kind(q.Get("kind").String()), Words: words.Region(q.Get("words").String())}
	a.Paper, known = sheet.PaperNamed(q.Get("paper").String())
	if q.Get("inches").Bool() {
		a.Unit = measure.Inch
	}
	options := q.Get("options")
	for i := range options.Length() {
		a.Options = append(a.Options, options.Index(i).Int())
	}
	return a, known
}
