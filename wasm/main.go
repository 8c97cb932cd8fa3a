//go:build js

// The page's program. It joins the bench to the page's two sides: the drawing on
// the canvas and the panels round it.
package main

import (
	"hash/fnv"
	"math"
	"strconv"
	"syscall/js"
	"time"

	"leafwright/game"
	"leafwright/game/bench"
	"leafwright/game/draw"
	"leafwright/geom/fit"
	"leafwright/wasm/panel"
	"leafwright/wasm/stage"
)

// win is the drawing's frame, in which the program runs.
var win = js.Global()

func main() {
	shelf := bench.NewShelf(panel.Store{}, panel.Token())
	b := panel.Linked(shelf)
	if b == nil {
		b = lastOn(shelf)
	}
	p := &program{bench: b}
	p.stage = stage.New(stage.Config{
		Ratio:   win.Get("devicePixelRatio").Float(),
		Drawing: b.Drawing,
		Palette: palette,
		Raster:  panel.Raster(),
		Wake:    func() { win.Call("wake", 2) },
		Painted: p.painted,
	})
	p.panel = panel.New(b, shelf, p.changed)
	panel.OnTheme(p.changed)
	p.listen()
	p.probe()
	if err := p.stage.Run(); err != nil {
		win.Get("console").Call("info", "no drawing with WebGL here ("+err.Error()+"): a still picture stands in")
		p.panel.Still()
		p.fill()
		select {}
	}
}

// lastOn gives the job worked on last, or the first one.
func lastOn(shelf *bench.Shelf) *bench.State {
	b, err := shelf.Open(shelf.Last())
	if err != nil {
		b = shelf.New(opener())
		if panel.Narrow() {
			b.SetShow(bench.Front)
		}
	}
	return b
}

// firstJob is the demo a page opens with that has kept no job: one with something
// to see.
const firstJob = "2-terrace-falling-head.json"

// opener gives the first job, or a plain door where it cannot be had.
func opener() game.Job {
	got := make(chan game.Job, 1)
	panel.Demo(firstJob, func(j game.Job) { got <- j }, func(error) { got <- panel.Plain() })
	return <-got
}

func palette() *draw.Palette {
	if panel.Dark() {
		return &draw.Night
	}
	return &draw.Day
}

type program struct {
	bench *bench.State
	stage *stage.Stage
	panel *panel.Panel

	job, look int        // changes seen
	list      *draw.List // painted last
	paints    int
}

// changed shows whatever has changed.
func (p *program) changed() {
	p.panel.Show()
	p.stage.Invalidate()
}

// painted counts the paintings, for tests and measurements, and tells the page
// when there is something to see.
func (p *program) painted(list *draw.List) {
	p.list = list
	p.paints++
	win.Set("paints", p.paints)
	if p.paints == 1 {
		clock := win.Get("performance")
		win.Set("paintedAt", clock.Get("timeOrigin").Float()+clock.Call("now").Float())
		time.AfterFunc(time.Millisecond, p.fill) // the drawing first, its numbers right after
	}
}

// fill fills the panels for the first time.
func (p *program) fill() {
	p.panel.Show()
	p.panel.Ready()
}

// listen takes pointer, wheel and keys from the frame's script.
func (p *program) listen() {
	on := func(event string, f func(detail js.Value)) {
		win.Call("addEventListener", event, js.FuncOf(func(_ js.Value, args []js.Value) any {
			f(args[0].Get("detail"))
			return nil
		}))
	}
	on("stage:pointer", func(e js.Value) {
		at := draw.Pt{X: e.Get("x").Float(), Y: e.Get("y").Float()}
		switch e.Get("type").String() {
		case "down":
			p.bench.Alt(e.Get("alt").Truthy())
			p.bench.Press(at)
		case "move":
			p.bench.Move(at)
		case "up":
			p.bench.Release()
		case "cancel":
			p.bench.Cancel()
		case "out":
			p.bench.Leave()
		}
		p.handled()
	})
	on("stage:wheel", func(e js.Value) {
		p.bench.Zoom(-e.Get("y").Float())
		p.handled()
	})
	on("stage:key", func(e js.Value) {
		p.bench.Key(e.Get("key").String(), e.Get("shift").Bool())
		p.handled()
	})
	on("stage:undo", func(e js.Value) { p.panel.Undo(e.Get("redo").Bool()) })
}

// handled shows what an event on the drawing changed, if anything.
func (p *program) handled() {
	job, look := p.bench.Changes()
	if job != p.job || look != p.look {
		p.job, p.look = job, look
		p.changed()
		win.Get("document").Get("body").Get("style").Set("cursor", p.bench.Cursor())
	}
}

// probe lets tests ask for a digest of the drawing last painted, and where on it the
// swing's handle and the places of an edge are.
func (p *program) probe() {
	win.Set("grip", js.FuncOf(func(js.Value, []js.Value) any {
		at := p.bench.Grip()
		return []any{at.X, at.Y}
	}))
	win.Set("spot", js.FuncOf(func(_ js.Value, args []js.Value) any {
		at := p.bench.Spot(fit.Edge(args[0].Int()), args[1].Float())
		return []any{at.X, at.Y}
	}))
	win.Set("digest", js.FuncOf(func(js.Value, []js.Value) any {
		h := fnv.New64a()
		var b [8]byte
		for _, m := range p.list.Marks {
			h.Write([]byte(m.Text))
			h.Write([]byte{byte(m.Kind), byte(m.Ink)})
		}
		for _, q := range p.list.Points {
			for i := range b {
				b[i] = byte(math.Float64bits(q.X+1e4*q.Y) >> (8 * i))
			}
			h.Write(b[:])
		}
		return strconv.FormatUint(h.Sum64(), 16)
	}))
}
