//go:build !js

package e2e

import (
	"fmt"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// spills names what reaches past the panel's right or left edge, and what can be moved
// sideways in it though it has no need to: only the card of ways fades out at its ends,
// and the month's table has more columns than a phone is wide.
const spills = `(() => {
	const panel = document.getElementById('panel'), box = panel.getBoundingClientRect(), out = [];
	const name = e => e.tagName + '#' + e.id + '.' + e.className + ' ' + (e.textContent || '').slice(0, 40);
	const pad = parseFloat(getComputedStyle(panel).paddingRight);
	const wide = document.documentElement.scrollWidth;
	if (wide > innerWidth) out.push('the page is ' + wide + ' px wide in a window of ' + innerWidth);
	if (panel.scrollWidth > panel.clientWidth) out.push('the panel is ' + panel.scrollWidth + ' px wide in ' + panel.clientWidth);
	for (const e of panel.querySelectorAll('*')) {
		if (!e.getClientRects().length || e.closest('.unseen, svg, #ways .scroll, #season-more .scroll')) continue;
		const r = e.getBoundingClientRect();
		if (r.right > box.left + panel.clientWidth - pad + 1.5 || r.left < box.left + pad - .5) out.push(name(e) + ' from ' + r.left + ' to ' + r.right);
		if (e.matches('.scroll') && e.scrollWidth > e.clientWidth) out.push(name(e) + ' is ' + e.scrollWidth + ' px wide in ' + e.clientWidth);
	}
	return out.slice(0, 12).join('\n');
})()`

// crossed names the figures of the year's drawing that stand across a month's mark or an
// edge of the gap wanted.
const crossed = `(() => {
	const box = e => e.getBoundingClientRect(), out = [], svg = document.querySelector('#season-graph svg');
	const band = box(svg.querySelector('rect'));
	for (const e of svg.querySelectorAll(':scope > text')) {
		const t = box(e);
		for (const m of svg.querySelectorAll('g[data-month] path')) {
			const r = box(m);
			if (r.left - 4 < t.right && t.left < r.right + 4 && r.top < t.bottom - 2 && t.top + 2 < r.bottom) out.push(e.textContent + ' over the mark of ' + m.parentNode.dataset.month);
		}
		for (const y of [band.top, band.bottom]) if (band.height && t.top + 2 < y && y < t.bottom - 2) out.push(e.textContent + ' over an edge of the band');
	}
	return out.join('\n');
})()`

// With everything that can be opened open, nothing in the panel is wider than the panel and
// the page no wider than the window, on every screen.
func TestNothingSpillsSideways(t *testing.T) {
	t.Parallel()
	for _, s := range []screen{phone, tablet, desktop} {
		t.Run(fmt.Sprint(s.w), func(t *testing.T) {
			p := open(t, s)
			for k, demo := range []string{"Weaver's cottage, stair door", "Harbour house, back hall", "Coach house, tack room"} {
				p.openDemo(demo)
				for _, unit := range []string{"feet and inches", "mm"} {
					p.unfold("settings-section")
					p.choose("unit", unit)
					ask[bool](p, `(document.querySelectorAll('#panel details').forEach(d => { d.open = true; }), true)`)
					p.settle() // the clerk is asked anew only after a rest
					evaluate[bool](p, `new Promise(done => setTimeout(() => done(true), 500))`)
					p.untilTold("season")
					p.untilTold("leaf")
					if at := ask[string](p, crossed); at != "" {
						t.Errorf("%s in %s, the year: %s", demo, unit, at)
					}
					if at := ask[string](p, spills); at != "" {
						t.Errorf("%s in %s:\n%s", demo, unit, at)
					}
				}
				for _, part := range []string{"season", "leaf", "section-leaf", "section-opening", "section-floor"} {
					ask[bool](p, `(document.getElementById('`+part+`').scrollIntoView({block: 'start'}), true)`)
					p.shot(fmt.Sprintf("open-%d-%d-%s", s.w, k, part))
				}
			}
		})
	}
}

// Every reading is a line that says what it is of, what was read and whether it has a say;
// open, it has the fields its kind has, and no others.
func TestReadingsAsAList(t *testing.T) {
	t.Parallel()
	for _, s := range []screen{phone, tablet, desktop} {
		t.Run(fmt.Sprint(s.w), func(t *testing.T) {
			p := open(t, s)
			p.openDemo("Weaver's cottage, stair door")
			p.unfold("section-readings")
			lines := ask[[]string](p, `[...document.querySelectorAll('#section-readings .list > details > summary')].map(e => [...e.children].map(c => c.textContent).join(' | '))`)
			if read := p.job()["readings"].([]any); len(lines) != len(read) {
				t.Fatalf("%d lines for %d readings", len(lines), len(read))
			}
			if want := "The opening's width 50 mm up | "; !strings.HasPrefix(lines[0], want) || !strings.HasSuffix(lines[0], " mm") {
				t.Errorf("the first line is %q, not %q and millimetres", lines[0], want)
			}
			p.shot(fmt.Sprintf("readings-%d", s.w))
			const first = "f:readings[0]:fold"
			ask[bool](p, `(document.getElementById('`+first+`').open = true)`)
			fields := func() string {
				return strings.Join(ask[[]string](p, `[...document.querySelectorAll('[id="`+first+`"] label')].map(e => e.textContent)`), ", ")
			}
			if got := fields(); got != "What, At, Read, Give or take, Read with, Note, Leave out" {
				t.Errorf("a width has the fields %s", got)
			}
			p.write(field("readings[0].value"), "760.5")
			p.do(chromedp.KeyEvent(kb.Tab))
			p.until(`document.querySelector('[id="` + first + `"] summary').textContent.endsWith('760.5 mm')`)
			p.click(field("readings[0].off"))
			p.until(`document.querySelector('[id="` + first + `"] summary').textContent.endsWith('760.5 mm, left out')`)
			p.shot(fmt.Sprintf("reading-%d", s.w))
			ask[bool](p, `(() => { const k = document.querySelector('[id="f:readings[0].kind"]'); k.value = 'jamb_plumb'; return k.dispatchEvent(new Event('change')); })()`)
			p.until(`document.querySelector('[id="` + first + `"] summary').textContent.startsWith('The plumb of the hinge jamb')`)
			if got := fields(); got != "What, Side, From, To, Read, Give or take, Read with, Note, Leave out" {
				t.Errorf("a plumb reading has the fields %s", got)
			}
			if !ask[bool](p, `document.getElementById('`+first+`').open`) {
				t.Error("a change of kind folds the reading away")
			}
			p.click("#section-readings .row button")
			p.until(fmt.Sprintf(`document.querySelectorAll('#section-readings .list > details').length === %d`, len(lines)+1))
			if !ask[bool](p, `document.querySelector('#section-readings .list > details:last-child').open`) {
				t.Error("a reading added is folded away")
			}
			if at := ask[[]float64](p, `(() => { const e = document.activeElement, r = e.getBoundingClientRect(); return [+e.matches('.list > details:last-child select'), r.top, innerHeight - r.bottom]; })()`); at[0] == 0 || at[1] < 0 || at[2] < 0 {
				t.Errorf("a reading added is not gone to, or out of sight: %v", at)
			}
			p.shot(fmt.Sprintf("reading-added-%d", s.w))
			ask[bool](p, `(() => {`+axe(t)+`; return true; })()`)
			p.violations("the readings")
			ask[bool](p, `(document.activeElement.blur(), true)`)
			const where = `Math.round(document.querySelector('#section-readings .row button').getBoundingClientRect().top)`
			before := ask[int](p, where)
			ask[bool](p, `([...document.querySelectorAll('#section-readings .list > details:last-child button')].pop().click(), true)`)
			p.until(fmt.Sprintf(`document.querySelectorAll('#section-readings .list > details').length === %d`, len(lines)))
			if top := ask[int](p, where); top > before || top < -40 {
				t.Errorf("with a reading removed the page stands elsewhere: the list's end at %d, then at %d px", before, top)
			}
		})
	}
}
