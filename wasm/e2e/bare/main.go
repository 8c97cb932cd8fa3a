//go:build js

// Bare is the least Ebitengine program: one filled screen, painted once. The page
// is measured against it.
package main

import (
	"image/color"
	"syscall/js"

	"github.com/hajimehoshi/ebiten/v2"
)

type bare struct{ painted bool }

func (b *bare) Update() error              { return nil }
func (b *bare) Layout(w, h int) (int, int) { return w, h }
func (b *bare) Draw(screen *ebiten.Image) {
	if b.painted {
		return
	}
	b.painted = true
	screen.Fill(color.NRGBA{R: 0xf7, G: 0xf3, B: 0xeb, A: 0xff})
	clock := js.Global().Get("performance")
	js.Global().Set("paintedAt", clock.Get("timeOrigin").Float()+clock.Call("now").Float())
}

func main() {
	ebiten.SetScreenClearedEveryFrame(false)
	if err := ebiten.RunGame(&bare{}); err != nil {
		js.Global().Get("console").Call("error", err.Error())
	}
}
