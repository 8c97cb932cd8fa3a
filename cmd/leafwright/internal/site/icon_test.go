package site

import (
	"bytes"
	"image/color"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// The icons in pixels show what icon.svg shows: its colours at places read off it.
func TestIcons(t *testing.T) {
	f := unlinked(t)
	rgb := func(c color.Color) [4]uint32 {
		r, g, b, a := c.RGBA()
		return [4]uint32{r >> 8, g >> 8, b >> 8, a >> 8}
	}
	ground, frame, leaf, panel := [4]uint32{0xf5, 0xf0, 0xe6, 255}, [4]uint32{0x24, 0x21, 0x1c, 255}, [4]uint32{0xc0, 0x8a, 0x4e, 255}, [4]uint32{0xa9, 0x74, 0x40, 255}
	for _, i := range icons {
		img, err := png.Decode(bytes.NewReader(f[i.name]))
		if err != nil {
			t.Fatalf("%s: %v", i.name, err)
		}
		if b := img.Bounds(); b.Dx() != i.size || b.Dy() != i.size {
			t.Errorf("%s is %v", i.name, b)
		}
		if n := len(f[i.name]); n > 16000 {
			t.Errorf("%s takes %d bytes", i.name, n)
		}
		at := func(x, y float64) [4]uint32 {
			if i.masked {
				x, y = 32+safe*(x-32), 32+safe*(y-32)
			}
			return rgb(img.At(int(x*float64(i.size)/side), int(y*float64(i.size)/side)))
		}
		for _, c := range []struct {
			what string
			x, y float64
			want [4]uint32
		}{
			{"the ground", 56, 30, ground}, {"the frame's left side", 15, 40, frame}, {"its head", 32, 9, frame},
			{"the gap", 19.5, 40, ground}, {"the leaf's stile", 23.5, 40, leaf}, {"its upper panel", 30, 28, panel},
			{"its lower panel", 30, 46, panel}, {"the rail between", 30, 36.5, leaf}, {"the knob", 40, 37, frame},
		} {
			if got := at(c.x, c.y); got != c.want {
				t.Errorf("%s: %s is %x, want %x", i.name, c.what, got, c.want)
			}
		}
		corner := rgb(img.At(0, 0))
		if want := uint32(0); !i.masked && corner[3] != want || i.masked && corner != ground {
			t.Errorf("%s: the corner is %x", i.name, corner)
		}
		// What may be cut off a masked one holds the ground alone.
		for y := range i.size {
			for x := range i.size {
				half := float64(i.size) / 2
				if i.masked && math.Hypot(float64(x)-half, float64(y)-half) > 0.8*half && rgb(img.At(x, y)) != ground {
					t.Fatalf("%s: %d, %d is not the ground", i.name, x, y)
				}
			}
		}
	}
}

func TestDrawingsThatAreNone(t *testing.T) {
	const head, foot = `<svg viewBox="0 0 64 64">`, `</svg>`
	for _, c := range []struct{ svg, want string }{
		{``, "no drawing"},
		{`<svg viewBox="0 0 64 64"></svg>`, "no drawing"},
		{`<svg viewBox="0 0 64 32"/>`, "viewBox"},
		{head + `<ellipse fill="#ffffff"/>` + foot, "ellipse"},
		{head + `<rect fill="red"/>` + foot, "red"},
		{head + `<rect fill="#ffffff" width="wide"/>` + foot, "wide"},
		{head + `<path fill="#ffffff" d="M1 1C2 2 3 3 4 4"/>` + foot, "C2 2"},
		{head + `<path fill="#ffffff" d="M1 1 2"/>` + foot, "3 numbers"},
		{head + `<path fill="#ffffff" d="M1 1z2"/>` + foot, "1 numbers"},
		{head + `<path fill="#ffffff" d="M1 1L-"/>` + foot, "no number"},
		{head + `<path fill="#ffffff" d="M1 1`, "no drawing"},
	} {
		if _, err := readDrawing([]byte(c.svg)); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v, want %s", c.svg, err, c.want)
		}
	}
	data, err := os.ReadFile(filepath.Join(checkout(t), "wasm", "site", icon))
	if err != nil {
		t.Fatal(err)
	}
	if d, err := readDrawing(data); err != nil || len(d) != 5 {
		t.Errorf("icon.svg: %d shapes, %v", len(d), err)
	}
}
