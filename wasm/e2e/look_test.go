//go:build !js

package e2e

import (
	"fmt"
	"testing"
)

// TestPictures takes pictures of the page for people to look at.
//
//	go test ./wasm/e2e -run TestPictures -shots FOLDER
func TestPictures(t *testing.T) {
	if *shots == "" {
		t.Skip("pictures are taken only when asked for, with -shots FOLDER")
	}
	for _, c := range []struct {
		name string
		screen
	}{
		{"phone", screen{w: 360, h: 740, ratio: 3, touch: true}},
		{"tablet", screen{w: 820, h: 1180, ratio: 2, touch: true}},
		{"desktop", desktop},
		{"phone-dark", screen{w: 360, h: 740, ratio: 3, touch: true, dark: true}},
		{"desktop-dark", screen{w: 1440, h: 900, ratio: 1, dark: true}},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := open(t, c.screen)
			p.shot(c.name)
			for _, part := range []string{"drawing-section", "section-job", "section-leaf", "section-hinges", "section-floor", "section-wanted", "settings-section"} {
				p.unfold(part)
				ask[bool](p, fmt.Sprintf(`(document.getElementById(%q).scrollIntoView({block: 'start'}), true)`, part))
				p.shot(c.name + "-" + part)
				ask[bool](p, fmt.Sprintf(`(document.getElementById(%q).open = false, true)`, part))
			}
			p.tryWays(c.name)
			p.unfold("section-leaf")
			p.write(field("leaf.width"), "9000")
			p.until(`document.querySelector('[id="f:leaf.width"]').hasAttribute('aria-invalid')`)
			p.shot(c.name + "-fault")
			p.write(field("leaf.width"), "762")
			p.unfold("drawing-section")
			p.write("#place", "1700")
			p.until(`document.getElementById('lens').checked`)
			p.choose("show", "Front")
			p.shot(c.name + "-loupe")
			p.choose("show", "Plan")
			p.shot(c.name + "-plan")
			p.unfold("settings-section")
			p.choose("unit", "feet and inches")
			p.choose("show", "Both")
			ask[bool](p, `(document.getElementById('panel').scrollTop = 0, scrollTo(0, 0), true)`)
			p.shot(c.name + "-inches")
			p.click("#jobs-open")
			p.until(`document.getElementById('jobs').open`)
			p.shot(c.name + "-jobs")
		})
	}
}

// tryWays takes pictures of a way tried, of the tools, and of all ways side by side.
func (p *page) tryWays(name string) {
	p.t.Helper()
	p.click("#way-add")
	p.until(`!document.getElementById('moves-box').hidden`)
	for _, kind := range []string{"cut", "splice", "pack"} {
		p.addMove(kind)
	}
	ask[bool](p, `(document.getElementById('panel').scrollTop = 0, scrollTo(0, 0), true)`)
	p.shot(name + "-ways")
	ask[bool](p, `(document.getElementById('moves-box').scrollIntoView({block: 'start'}), true)`)
	p.shot(name + "-moves")
	for _, tool := range []string{"Plane", "Hinge", "Strip", "Saw"} {
		p.choose("tool", tool)
		p.shot(name + "-" + tool)
	}
	p.choose("tool", "Swing")
	p.click("#compare-open")
	p.until(`document.getElementById('compare').open`)
	p.shot(name + "-side-by-side")
	p.click("#compare-close")
}

// addMove adds a move of a kind to the way shown.
func (p *page) addMove(kind string) {
	p.t.Helper()
	n := ask[int](p, `document.querySelectorAll('#moves > li').length`)
	ask[bool](p, fmt.Sprintf(`(() => { const k = document.getElementById('move-kind'); k.value = [...k.options].find(o => o.value.endsWith(%q)).value; return true; })()`, ".moves."+kind))
	p.click("#move-add")
	p.until(fmt.Sprintf(`document.querySelectorAll('#moves > li').length === %d`, n+1))
}
