//go:build !js

package e2e

import (
	"fmt"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// What the tests do with the page, in a person's terms.

// seen is what a change must change: the findings in words, and the drawing.
type seen struct{ findings, drawing string }

// look sees it from the top of the page: on a phone the drawing is lower while the panel is
// read.
func (p *page) look() seen {
	p.t.Helper()
	if ask[bool](p, `(scrollTo(0, 0), document.documentElement.hasAttribute('data-reading'))`) {
		p.until(`!document.documentElement.hasAttribute('data-reading')`)
		p.settle()
	}
	return seen{
		ask[string](p, `document.getElementById('headline').textContent + '\n' + document.getElementById('findings').textContent`),
		ask[string](p, `stage.contentWindow.digest()`),
	}
}

// unfold opens a section of the panel.
func (p *page) unfold(id string) {
	p.t.Helper()
	if !ask[bool](p, `document.getElementById('`+id+`').open`) {
		p.click(`#` + id + ` > summary`)
	}
	p.until(`document.getElementById('` + id + `').open`)
}

// click presses what a selector names, scrolled into sight first.
func (p *page) click(selector string) {
	p.t.Helper()
	x, y := p.middle(selector)
	p.do(chromedp.MouseClickXY(x, y))
}

// middle scrolls what a selector names into sight and gives its middle, once it stands
// still there: what is above it may still be growing, and a click would go astray. An
// element that something else covers (a label over its box) is taken where it is, after
// a while.
func (p *page) middle(selector string) (x, y float64) {
	p.t.Helper()
	at := evaluate[[2]float64](p, fmt.Sprintf(`(async () => {
		const frame = () => new Promise(done => { requestAnimationFrame(done); setTimeout(done, 100); });
		let last = '';
		for (let tries = 0; ; tries++) {
			const e = document.querySelector(%q);
			if (e) {
				e.scrollIntoView({block: 'center'});
				const r = e.getBoundingClientRect();
				const at = [r.x + r.width / 2, r.y + r.height / 2];
				const seen = document.elementFromPoint(...at);
				const free = !e.disabled && seen && (e.contains(seen) || seen.contains(e)) || tries > 60;
				if (free && at.join() === last) return at;
				last = at.join();
			}
			if (tries > 600) throw new Error('nothing to click');
			await frame();
		}
	})()`, selector))
	return at[0], at[1]
}

// field is the selector of a job's field.
func field(path string) string { return `[id="f:` + path + `"]` }

// write puts text into a field with the keyboard, in place of what is there.
func (p *page) write(selector, text string) {
	p.t.Helper()
	p.click(selector)
	p.until(fmt.Sprintf(`document.activeElement === document.querySelector(%q)`, selector))
	ask[bool](p, `(document.activeElement.select(), true)`)
	p.do(chromedp.KeyEvent(text))
}

func (p *page) value(selector string) string {
	p.t.Helper()
	return ask[string](p, fmt.Sprintf(`document.querySelector(%q).value`, selector))
}

func (p *page) text(selector string) string {
	p.t.Helper()
	return ask[string](p, fmt.Sprintf(`document.querySelector(%q).textContent`, selector))
}

// blur leaves the field that has the cursor.
func (p *page) blur() { ask[bool](p, `(document.activeElement.blur(), true)`) }

// settle waits until the drawing has been still for a moment.
func (p *page) settle() {
	p.t.Helper()
	evaluate[bool](p, `new Promise(done => {
		const frame = document.getElementById('stage').contentWindow;
		let last = -1;
		const look = () => {
			if (frame.paints === last) return done(true);
			last = frame.paints;
			setTimeout(look, 250);
		};
		look();
	})`)
}

// paints is how often the drawing has been painted.
func (p *page) paints() int { return ask[int](p, `stage.contentWindow.paints`) }

// choose presses one of the radio buttons named so, by its text.
func (p *page) choose(name, text string) {
	p.t.Helper()
	id := ask[string](p, fmt.Sprintf(`[...document.querySelectorAll('input[name=%s]')].find(i => i.parentNode.textContent === %q).id`, name, text))
	p.click("#" + id)
	p.until(`document.getElementById('` + id + `').checked`)
}

// grip is where the handle of the swing is, in the page.
func (p *page) grip() (x, y float64) {
	p.t.Helper()
	at := ask[[2]float64](p, `(() => {
		const r = stage.getBoundingClientRect(), g = stage.contentWindow.grip();
		return [r.x + g[0], r.y + g[1]];
	})()`)
	return at[0], at[1]
}

// touch sends one touch event.
func (p *page) touch(kind input.DispatchTouchEventType, points ...*input.TouchPoint) {
	p.t.Helper()
	if points == nil {
		points = []*input.TouchPoint{}
	}
	_, err := chromedp.Call(p.ctx, input.DispatchTouchEvent, input.DispatchTouchEventParams{Type: kind, TouchPoints: points})
	if err != nil {
		p.t.Fatal(err)
	}
}

var screens = []struct {
	name string
	screen
}{{"phone", phone}, {"tablet", tablet}, {"desktop", desktop}}

func TestOpens(t *testing.T) {
	t.Parallel()
	for _, c := range screens {
		t.Run(c.name, func(t *testing.T) {
			p := open(t, c.screen)
			p.shot(c.name)
			if h := p.text("#headline"); !strings.Contains(h, "mm") {
				t.Errorf("headline %q says no gap", h)
			}
			if n := ask[int](p, `document.querySelectorAll('#findings li').length`); n < 6 {
				t.Errorf("%d findings", n)
			}
			if over := ask[float64](p, `document.documentElement.scrollWidth - window.innerWidth`); over > 0 {
				t.Errorf("the page is %v px wider than the screen", over)
			}
			if small := ask[string](p, `[...document.querySelectorAll('button, summary, select, input:not([type=checkbox]):not([type=radio]):not([type=file]), .choice label, .check')]
				.filter(e => e.offsetParent && e.getBoundingClientRect().height < 43.5).map(e => e.id || e.textContent).join(', ')`); small != "" {
				t.Errorf("too low for a finger: %s", small)
			}
			if small := ask[string](p, `[...document.querySelectorAll('input[type=text], select, textarea')]
				.filter(e => parseFloat(getComputedStyle(e).fontSize) < 16).map(e => e.id).join(', ')`); small != "" {
				t.Errorf("type below 16 px in %s", small)
			}
		})
	}
}

func TestSharpAtEveryRatio(t *testing.T) {
	t.Parallel()
	for _, ratio := range []float64{1, 1.25, 2, 3} {
		t.Run(fmt.Sprint(ratio), func(t *testing.T) {
			p := open(t, screen{w: 820, h: 900, ratio: ratio})
			got := ask[[4]float64](p, `(() => {
				const r = stage.getBoundingClientRect(), c = stage.contentDocument.querySelector('canvas');
				return [c.width, c.height, r.width, r.height];
			})()`)
			if got[0] != got[2]*ratio || got[1] != got[3]*ratio {
				t.Errorf("canvas %v × %v for a frame of %v × %v at %v", got[0], got[1], got[2], got[3], ratio)
			}
			if at := ask[[2]float64](p, `(r => [r.x, r.y])(stage.getBoundingClientRect())`); at[0]*ratio != float64(int(at[0]*ratio)) || at[1]*ratio != float64(int(at[1]*ratio)) {
				t.Errorf("the frame stands at %v, between device pixels", at)
			}
		})
	}
}

// Zoom, or a window moved to another screen, changes the ratio of a page in use.
func TestRatioThatChanges(t *testing.T) {
	t.Parallel()
	p := open(t, desktop)
	p.unfold("section-leaf")
	p.write(field("leaf.width"), "755")
	p.blur()
	p.do(chromedp.EmulateViewport(desktop.w, desktop.h, chromedp.EmulateScale(2)))
	p.do(chromedp.MouseEvent(input.DispatchMouseEventTypeMouseMoved, 300, 300)) // a resting page may not be told
	p.until(`stage.contentWindow.paints > 0 && stage.contentDocument.querySelector('canvas').width === 2 * stage.clientWidth`)
	p.until(`document.querySelector('[id="f:leaf.width"]').value === '755'`)
}

func TestNumberChangesFindingsAndDrawing(t *testing.T) {
	t.Parallel()
	for _, c := range screens {
		t.Run(c.name, func(t *testing.T) {
			p := open(t, c.screen)
			before, paints := p.look(), p.paints()
			p.unfold("section-leaf")
			p.write(field("leaf.height"), "1950")
			p.until(fmt.Sprintf(`stage.contentWindow.paints > %d && stage.contentWindow.digest() !== %q`, paints, before.drawing))
			if after := p.look(); after.findings == before.findings {
				t.Errorf("a leaf 10 mm shorter left the findings at %q", after.findings)
			}
			p.blur()
			p.click("#undo")
			p.until(fmt.Sprintf(`stage.contentWindow.digest() === %q`, before.drawing))
			if after := p.look(); after != before {
				t.Errorf("undo left %q, want %q", after.findings, before.findings)
			}
			if got := p.value(field("leaf.height")); got != "1960" {
				t.Errorf("undo left %s in the field, want 1960", got)
			}
		})
	}
}

func TestSwingByMouse(t *testing.T) {
	t.Parallel()
	p := open(t, desktop)
	before := p.text("#swing-rein + output")
	x, y := p.grip()
	p.do(chromedp.DragAndDropXY(x, y, x-150, y+150))
	p.until(fmt.Sprintf(`document.querySelector('#swing-rein + output').textContent !== %q`, before))
	wide := p.text("#swing-rein + output")
	x, y = p.grip()
	p.do(chromedp.DragAndDropXY(x, y, x+2000, y-2000)) // far outside the drawing
	p.until(fmt.Sprintf(`document.querySelector('#swing-rein + output').textContent !== %q`, wide))
	p.until(`stage.contentDocument.body.style.cursor !== 'grabbing'`)
	if now := p.text("#swing-rein + output"); now != "0°" {
		t.Errorf("dragged shut past the jamb the leaf stands at %s", now)
	}
}

func TestSwingByTouch(t *testing.T) {
	t.Parallel()
	p := open(t, phone)
	p.choose("show", "Plan")
	p.until(`!document.getElementById('swing-rein').closest('.slide').hidden`)
	before, scrolled := p.text("#swing-rein + output"), ask[float64](p, `window.scrollY`)
	x, y := p.grip()
	p.touch(input.DispatchTouchEventTypeTouchStart, &input.TouchPoint{X: x, Y: y})
	for i := 1.0; i <= 6; i++ {
		p.touch(input.DispatchTouchEventTypeTouchMove, &input.TouchPoint{X: x - 12*i, Y: y + 14*i})
	}
	p.touch(input.DispatchTouchEventTypeTouchEnd)
	p.until(fmt.Sprintf(`document.querySelector('#swing-rein + output').textContent !== %q`, before))
	if now := ask[float64](p, `window.scrollY`); now != scrolled {
		t.Errorf("dragging the leaf scrolled the page by %v px", now-scrolled)
	}
}

// Whatever the pointer does on the drawing, the keys do too, and the panel.
func TestSwingByKeys(t *testing.T) {
	t.Parallel()
	p := open(t, desktop)
	ask[bool](p, `(stage.focus(), stage.contentDocument.querySelector('canvas').focus(), true)`)
	p.do(chromedp.KeyEvent(kb.ArrowRight))
	p.until(`document.querySelector('#swing-rein + output').textContent === '26°'`)
	p.do(chromedp.KeyEvent(kb.Home))
	p.until(`document.querySelector('#swing-rein + output').textContent === '0°'`)
	p.do(chromedp.KeyEvent("+"))
	p.until(`document.querySelector('#factor-rein + output').textContent !== '× 12'`)
	p.unfold("drawing-section")
	p.write("#swing-number", "60")
	p.until(`document.querySelector('#swing-rein + output').textContent === '60°'`)
	p.write("#section-number", "300")
	before := p.text("#reading")
	p.write("#place", "1700")
	p.until(fmt.Sprintf(`document.getElementById('reading').textContent !== %q`, before))
	if r := p.text("#reading"); !strings.Contains(r, "mm, ") {
		t.Errorf("the reading is %q", r)
	}
}

func TestNonsenseIsSaidAndKept(t *testing.T) {
	t.Parallel()
	p := open(t, phone)
	before := p.look()
	p.unfold("section-leaf")
	p.write(field("leaf.width"), "seven hundred")
	p.until(`document.querySelector('[id="f:leaf.width"]').getAttribute('aria-invalid') === 'true'`)
	check := func(when string) {
		t.Helper()
		if got := p.value(field("leaf.width")); got != "seven hundred" {
			t.Errorf("%s the field holds %q", when, got)
		}
		fault := ask[string](p, `(() => {
			const ids = document.querySelector('[id="f:leaf.width"]').getAttribute('aria-describedby').split(' ');
			return document.getElementById(ids[0]).textContent;
		})()`)
		if fault == "" {
			t.Errorf("%s no message stands by the field", when)
		}
		if after := p.look(); after != before {
			t.Errorf("%s nonsense changed the drawing or the findings", when)
		}
	}
	check("when typed")
	p.blur()
	check("after leaving the field")
	p.load(p.url)
	p.unfold("section-leaf")
	check("after a reload")
	p.write(field("leaf.width"), "750")
	p.until(`!document.querySelector('[id="f:leaf.width"]').hasAttribute('aria-invalid')`)
	if after := p.look(); after == before {
		t.Error("a good number after nonsense changed nothing")
	}
}

func TestReloadKeepsEverything(t *testing.T) {
	t.Parallel()
	p := open(t, desktop)
	p.unfold("section-hinges")
	p.write(field("hinges[0].leaf_gain"), "3.1")
	p.blur()
	p.unfold("section-job")
	p.write(field("name"), "Vestry, north side")
	p.blur()
	p.choose("show", "Plan")
	x, y := p.grip()
	p.do(chromedp.DragAndDropXY(x, y, x-100, y+140))
	p.unfold("settings-section")
	p.choose("unit", "feet and inches")
	p.choose("words", "US")
	p.choose("theme", "Dark")
	keep := `JSON.stringify([document.getElementById('job-title').textContent,
		document.getElementById('findings').textContent, stage.contentWindow.digest(),
		document.querySelector('#swing-rein + output').textContent, document.documentElement.dataset.theme,
		document.querySelector('[id="f:hinges[0].leaf_gain"]').value, document.getElementById('undo').disabled])`
	x, y = p.middle("#headline")
	p.do(chromedp.MouseClickXY(x, y)) // the pointer rests off the drawing
	p.settle()
	before := ask[string](p, keep)
	p.load(p.url)
	p.settle()
	if after := ask[string](p, keep); after != before {
		t.Errorf("after a reload\n%s\nwas\n%s", after, before)
	}
	p.click("#undo")
	p.until(`document.getElementById('job-title').textContent === 'Terrace house, back bedroom'`)
	p.click("#redo")
	p.until(`document.getElementById('job-title').textContent === 'Vestry, north side'`)
}
