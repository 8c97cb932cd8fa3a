//go:build js

package panel

import (
	"math"
	"strconv"
	"syscall/js"

	"leafwright/wasm/stage"
)

// raster draws writing on a hidden 2D canvas, with the page's own typeface, so
// that the program carries no font of its own.
type raster struct {
	family string
	canvas js.Value
	pen    js.Value
	w, h   int
	bytes  []byte
}

// Raster gives the browser's type to the stage.
func Raster() stage.Raster {
	r := &raster{family: win.Call("getComputedStyle", doc.Get("body")).Get("fontFamily").String()}
	r.canvas = win.Get("document").Call("createElement", "canvas")
	r.pen = r.canvas.Call("getContext", "2d", map[string]any{"willReadFrequently": true})
	r.size(64, 64)
	return r.glyph
}

// size makes the canvas at least so large.
func (r *raster) size(w, h int) {
	if w > r.w || h > r.h {
		r.w, r.h = max(w, r.w), max(h, r.h)
		r.canvas.Set("width", r.w)
		r.canvas.Set("height", r.h)
	}
}

func (r *raster) glyph(text string, size float64, bold bool, shift float64) stage.Glyph {
	font := strconv.FormatFloat(size, 'f', 2, 64) + "px " + r.family
	if bold {
		font = "600 " + font
	}
	r.pen.Set("font", font)
	m := r.pen.Call("measureText", text)
	box := func(side string) int { return int(math.Ceil(m.Get("actualBoundingBox"+side).Float())) + 1 }
	left, right, up, down := box("Left"), box("Right")+1, box("Ascent"), box("Descent")
	g := stage.Glyph{Advance: m.Get("width").Float(), W: left + right, H: up + down, Left: -left, Top: -up}
	if g.W <= 0 || g.H <= 0 || g.W > 4096 || g.H > 1024 {
		return stage.Glyph{Advance: g.Advance}
	}
	r.size(g.W, g.H)
	r.pen.Set("font", font) // a canvas forgets it when its size changes
	r.pen.Set("fillStyle", "#fff")
	r.pen.Call("clearRect", 0, 0, r.w, r.h)
	r.pen.Call("fillText", text, float64(left)+shift, up)
	data := r.pen.Call("getImageData", 0, 0, g.W, g.H).Get("data")
	if n := 4 * g.W * g.H; len(r.bytes) < n {
		r.bytes = make([]byte, n)
	}
	js.CopyBytesToGo(r.bytes, data)
	g.Ink = make([]byte, g.W*g.H)
	for i := range g.Ink {
		g.Ink[i] = r.bytes[4*i+3]
	}
	return g
}
