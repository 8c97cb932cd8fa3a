//go:build js

package panel

import (
	"syscall/js"

	"leafwright/game/draw"
)

// picture gives the drawing as an element of the document.
func (p *Panel) picture(w, h float64, palette *draw.Palette) js.Value {
	return importSVG(p.bench.Picture(w, h), palette)
}

// importSVG makes an element of the document of a drawing.
func importSVG(list *draw.List, palette *draw.Palette) js.Value {
	parsed := page.Get("DOMParser").New().Call("parseFromString", string(list.SVG(palette)), "image/svg+xml")
	return doc.Call("importNode", parsed.Get("documentElement"), true)
}

// print puts the drawing on the sheet when the page is printed.
func (p *Panel) print() {
	sheet := byID("print")
	on(page, "beforeprint", func(js.Value) { fill(sheet, p.picture(1000, 700, &draw.Print)) })
	on(page, "afterprint", func(js.Value) { fill(sheet) })
}

// Still shows the drawing as a still picture, where the browser cannot paint it.
// It is renewed with every Show.
func (p *Panel) Still() {
	show(byID("stage"), false)
	show(byID("still"), true)
	p.still = true
	on(page, "resize", func(js.Value) { p.showStill() })
}

func (p *Panel) showStill() {
	if !p.still {
		return
	}
	box := byID("still")
	palette := &draw.Day
	if Dark() {
		palette = &draw.Night
	}
	fill(box, p.picture(box.Get("clientWidth").Float(), box.Get("clientHeight").Float(), palette))
}
