//go:build js

package panel

import (
	"leafwright/game"
	"leafwright/game/bench"
	"leafwright/game/words"
)

// Linked gives the bench of the job that came with a link, nil where none did or what
// came is no job. The page's script share.js unpacks the link and is told what is wrong
// with it. Such a job is only shown, unless it is to be a job of one's own: then it is
// kept on the shelf.
func Linked(shelf *bench.Shelf) *bench.State {
	link := page.Get("linked")
	if !link.Truthy() {
		return nil
	}
	job, err := game.Parse([]byte(link.Get("job").String()))
	if err != nil {
		link.Call("bad", err.Error())
		return nil
	}
	if link.Get("own").Bool() {
		b := shelf.New(job)
		_, err := shelf.Save(b)
		link.Call("kept", err == nil)
		return b
	}
	b := bench.Guest(job)
	b.SetInches(link.Get("inches").Bool())
	b.SetWords(words.Region(link.Get("words").String()))
	b.ShowOption(bench.Shown(link.Get("shown").Int()))
	if Narrow() {
		b.SetShow(bench.Front)
	}
	return b
}
