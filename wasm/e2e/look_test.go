//go:build !js

package e2e

import "testing"

// The page on each kind of screen, light and dark.
func TestScreens(t *testing.T) {
	for _, c := range []struct {
		name string
		screen
	}{
		{"phone", phone},
		{"tablet", tablet},
		{"desktop", desktop},
		{"phone-dark", screen{w: 360, h: 740, ratio: 3, touch: true, dark: true}},
		{"desktop-dark", screen{w: 1440, h: 900, ratio: 1, dark: true}},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := open(t, c.screen)
			p.shot(c.name)
			if *shots == "" {
				return
			}
			for _, part := range []string{"drawing-section", "section-leaf", "section-hinges", "section-floor", "section-wanted"} {
				ask[bool](p, `document.getElementById('`+part+`').open = true`)
				ask[bool](p, `(document.getElementById('`+part+`').scrollIntoView({block: 'start'}), true)`)
				p.shot(c.name + "-" + part)
				ask[bool](p, `document.getElementById('`+part+`').open = false`)
			}
			ask[bool](p, `(document.getElementById('jobs-open').click(), true)`)
			p.shot(c.name + "-jobs")
		})
	}
}
