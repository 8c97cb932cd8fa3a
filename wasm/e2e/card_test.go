//go:build !js

package e2e

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// tap touches the middle of what a selector names.
func (p *page) tap(selector string) {
	p.t.Helper()
	x, y := p.middle(selector)
	p.do(chromedp.TapXY(x, y))
}

// ownCard begins a card of one's own from the page's button.
func (p *page) ownCard() {
	p.t.Helper()
	p.tap("#own")
	p.until(`!document.getElementById('card').hidden && document.activeElement.id === 'card-value'`)
}

// insert puts text in at the cursor, as a paste does.
func (p *page) insert(text string) {
	p.t.Helper()
	if _, err := chromedp.Call(p.ctx, input.InsertText, input.InsertTextParams{Text: text}); err != nil {
		p.t.Fatal(err)
	}
}

// answer types at the prompt that has the cursor and goes on with Enter.
func (p *page) answer(text string) {
	p.t.Helper()
	before := p.text("#card-say")
	p.do(chromedp.KeyEvent(text))
	p.until(fmt.Sprintf(`document.getElementById('card-value').value === %q`, text))
	p.do(chromedp.KeyEvent(kb.Enter))
	p.until(fmt.Sprintf(`document.getElementById('card-say').textContent !== %q && document.activeElement.id === 'card-value'`, before))
}

var leastRead = []string{"769", "1992", "762", "1978", "40", "1786", "270"}

// A door measured from nothing with a thumb: each figure is on the drawing at once,
// and once there are enough the findings tell how sure they are.
func TestMeasureFromNothing(t *testing.T) {
	t.Parallel()
	p := open(t, phone)
	p.ownCard()
	p.shot("card-empty-phone")
	if h := p.text("#headline"); !strings.Contains(h, "Nothing is read yet") {
		t.Errorf("headline %q", h)
	}
	for i, text := range leastRead {
		before := p.look().drawing
		if got := p.text("#card-where"); got != fmt.Sprintf("To begin with: %d of 7", i+1) {
			t.Errorf("prompt %d stands at %q", i+1, got)
		}
		p.do(chromedp.KeyEvent(text))
		if i != 4 { // nobody sees a thickness from the front
			p.until(fmt.Sprintf(`stage.contentWindow.digest() !== %q`, before))
		}
		p.until(fmt.Sprintf(`document.getElementById('card-needed').textContent.startsWith('%d read')`, i+1))
		if i == 2 {
			p.shot("card-typing-phone")
		}
		p.tap("#card-forth")
		p.until(`document.activeElement.id === 'card-value' && document.activeElement.value === ''`)
	}
	p.until(`document.getElementById('findings').textContent.includes('±') && document.getElementById('card-where').textContent === 'What tells most now'`)
	p.shot("card-next-phone")
	p.tap("#card-forth")
	p.until(`!document.getElementById('card-next').hidden`)
	if next := p.text("#card-next-text"); !strings.Contains(next, "sure to ±") {
		t.Errorf("to measure next: %q", next)
	}
	p.tap("#card-next-go")
	p.until(`document.activeElement.id === 'card-value' && document.getElementById('card-next').hidden`)
	if over := ask[float64](p, `document.documentElement.scrollWidth - window.innerWidth`); over > 0 {
		t.Errorf("the page is %v px wider than the screen", over)
	}
	if small := ask[string](p, `[...document.querySelectorAll('#card button, #card input[type=text], #card summary, #card .check')]
		.filter(e => e.offsetParent && e.getBoundingClientRect().height < 43.5).map(e => e.id || e.textContent).join(', ')`); small != "" {
		t.Errorf("too low for a finger: %s", small)
	}
	p.click("#undo")
	p.until(`document.getElementById('findings').textContent === '' && document.getElementById('headline').textContent.startsWith('Still to be read')`)
	if got := p.text("#card-say"); !strings.Contains(got, "bottom hinge") || p.value("#card-value") != "" {
		t.Errorf("undo leads to %q with %q", got, p.value("#card-value"))
	}
	p.click("#redo")
	p.until(`document.getElementById('card-value').value === '270'`)
}

// With the phone's keypad up a part of the drawing, the prompt's field and the way
// on stay in sight.
func TestCardOverTheKeypad(t *testing.T) {
	t.Parallel()
	p := open(t, screen{w: 360, h: 430, ratio: 1, touch: true})
	p.ownCard()
	p.answer("768")
	p.shot("card-keypad-phone")
	seen := ask[[4]float64](p, `(() => {
		const f = document.getElementById('card-value').getBoundingClientRect(), s = stage.getBoundingClientRect();
		return [s.top, s.bottom, f.top, f.bottom];
	})()`)
	if seen[1] < 100 || seen[2] < seen[1] || seen[3] > 430 {
		t.Errorf("the drawing from %v to %v, the field from %v to %v", seen[0], seen[1], seen[2], seen[3])
	}
}

// Inches stay as typed, whatever the page shows.
func TestMeasureInInches(t *testing.T) {
	t.Parallel()
	p := open(t, phone)
	p.unfold("settings-section")
	p.choose("unit", "feet and inches")
	p.ownCard()
	if unit, mode := p.text("#card-unit"), ask[string](p, `document.getElementById('card-value').inputMode`); unit != "ft in" || mode != "text" {
		t.Errorf("unit %q, keypad %q", unit, mode)
	}
	for _, text := range []string{`2' 6 1/4"`, `78-7/16`, `762 mm`, `6' 5 7/8"`} {
		p.answer(text)
	}
	p.click("#card-back")
	p.until(`document.getElementById('card-value').value === "6' 5 7/8\""`)
	p.click("#card-back")
	p.until(`document.getElementById('card-value').value === '762 mm'`)
	p.load(p.url)
	if got := p.value("#card-value"); got != "762 mm" {
		t.Errorf("after a reload %q", got)
	}
	p.click("#card-back")
	p.until(`document.getElementById('card-value').value === '78-7/16'`)
}

func TestNonsenseOnTheCardIsKept(t *testing.T) {
	t.Parallel()
	p := open(t, phone)
	p.ownCard()
	p.answer("768")
	before := p.look()
	p.do(chromedp.KeyEvent("19920"))
	check := func(when string) {
		t.Helper()
		p.until(`document.getElementById('card-value').getAttribute('aria-invalid') === 'true'`)
		if got := p.value("#card-value"); got != "19920" {
			t.Errorf("%s the field holds %q", when, got)
		}
		if fault := p.text("#card-fault"); !strings.Contains(fault, "19920 is not between") {
			t.Errorf("%s the message is %q", when, fault)
		}
		if after := p.look(); after != before {
			t.Errorf("%s nonsense changed the drawing or what is said", when)
		}
	}
	check("when typed")
	p.shot("card-fault-phone")
	p.load(p.url)
	check("after a reload")
	p.write("#card-value", "1992")
	p.until(`!document.getElementById('card-value').hasAttribute('aria-invalid')`)
}

// A table with one faulty line says which, stays to be mended, and comes in whole.
func TestPasteReadings(t *testing.T) {
	t.Parallel()
	p := open(t, desktop)
	p.ownCard()
	const table = "kind,at,value\nopening_width,1000,768\nopening_height,700,19920\nleaf_width,990,762\n"
	p.click("#card-paste")
	p.until(`document.activeElement.id === 'card-text'`)
	p.insert(table)
	p.click("#card-take")
	p.until(`!document.getElementById('card-text-fault').hidden`)
	if fault := p.text("#card-text-fault"); !strings.Contains(fault, "line 3, value: 19920") {
		t.Errorf("the fault is %q", fault)
	}
	p.shot("card-paste-desktop")
	p.load(p.url)
	p.until(`!document.getElementById('card-table').hidden`)
	if got := p.value("#card-text"); got != table {
		t.Errorf("after a reload the table is %q", got)
	}
	p.click("#card-text")
	ask[bool](p, `(document.getElementById('card-text').select(), true)`)
	p.insert(strings.Replace(table, "19920", "1992", 1))
	p.click("#card-take")
	p.until(`document.getElementById('card-table').hidden && document.getElementById('card-needed').textContent.startsWith('3 read')`)
	p.click("#undo")
	p.until(`document.getElementById('card-needed').textContent.startsWith('0 read')`)
	p.click("#redo")
	p.until(`document.getElementById('card-needed').textContent.startsWith('3 read')`)
	got := p.savedText("#card-save")
	if want := strings.Replace(table, "19920", "1992", 1); got != want {
		t.Errorf("saved %q", got)
	}
}

// A slip is named with what it probably was, beside its field.
func TestPlantedSlipIsNamed(t *testing.T) {
	t.Parallel()
	p := open(t, phone)
	p.openDemo("Weaver's cottage, stair door")
	p.until(`!document.getElementById('card-misfits-box').hidden`)
	p.shot("card-slip-phone")
	if ask[bool](p, `document.getElementById('card').open`) {
		t.Error("the card of a door that is measured stands open")
	}
	if said := p.text("#card-misfits"); !strings.Contains(said, "776") || !strings.Contains(said, "is it 767") {
		t.Errorf("it is said: %q", said)
	}
	p.tap("#card-misfits button")
	p.until(`document.getElementById('card-value').value === '776' && !document.getElementById('card-misfit').hidden`)
	p.shot("card-slip-asked-phone")
	described := ask[string](p, `document.getElementById('card-value').getAttribute('aria-describedby').split(' ').map(id => document.getElementById(id).textContent).join(' ')`)
	if !strings.Contains(described, "is it 767") {
		t.Errorf("the field is described by %q", described)
	}
	p.write("#card-value", "767")
	p.until(`document.getElementById('card-misfits-box').hidden && document.getElementById('card-misfit').hidden`)
	p.click("#undo")
	p.until(`!document.getElementById('card-misfits-box').hidden`)
	p.tap("#card-left-row")
	p.until(`document.getElementById('card-misfits-box').hidden && document.getElementById('card-left').checked`)
}

// The whole card at once takes the same figures.
func TestAllAtOnce(t *testing.T) {
	t.Parallel()
	p := open(t, tablet)
	p.ownCard()
	p.tap("#card-mode")
	p.until(`document.querySelectorAll('#card-all input').length > 60`)
	p.shot("card-all-tablet")
	for i, text := range leastRead {
		row := fmt.Sprintf("#card-row-%d", i)
		p.write(row, text)
		p.until(fmt.Sprintf(`document.querySelector(%q).value === %q`, row, text))
	}
	p.until(`document.getElementById('findings').textContent.includes('±')`)
	p.do(chromedp.KeyEvent(kb.Enter))
	p.until(`document.activeElement.dataset.path && document.activeElement.value === ''`)
	if say := p.text("#card-say"); say == "" {
		t.Error("no prompt stands over the table")
	}
	p.shot("card-all-filled-tablet")
	p.click("#card-mode")
	p.until(`document.getElementById('card-all').hidden && !document.getElementById('card-one').hidden`)
}

// How many hinges there are, and on which side, is said on the card.
func TestHingesOnTheCard(t *testing.T) {
	t.Parallel()
	p := open(t, phone)
	p.ownCard()
	drawing, picture := p.look().drawing, ask[string](p, `document.getElementById('card-picture').innerHTML`)
	p.choose("card-count", "3")
	p.until(`document.getElementById('card-where').textContent === 'To begin with: 1 of 8'`)
	p.choose("card-side", "right")
	p.until(fmt.Sprintf(`stage.contentWindow.digest() !== %q && document.getElementById('card-picture').innerHTML !== %q`, drawing, picture))
	p.shot("card-hinges-phone")
	p.click("#undo")
	p.click("#undo")
	p.until(`document.getElementById('card-where').textContent === 'To begin with: 1 of 7'`)
	if got := ask[string](p, `document.getElementById('card-picture').innerHTML`); got != picture {
		t.Error("undone, the picture is another")
	}
}

// Everything on the card can be done with keys.
func TestCardByKeys(t *testing.T) {
	t.Parallel()
	p := open(t, desktop)
	ask[bool](p, `(document.getElementById('own').focus(), true)`)
	p.do(chromedp.KeyEvent(kb.Enter))
	p.until(`document.activeElement.id === 'card-value'`)
	ask[bool](p, `(document.querySelector('#card-places > summary').focus(), true)`)
	p.do(chromedp.KeyEvent(kb.Enter))
	p.until(`document.getElementById('card-places').open`)
	p.do(chromedp.KeyEvent(kb.Tab))
	p.until(`document.activeElement.id === 'card-at'`)
	ask[bool](p, `(document.activeElement.select(), true)`)
	p.do(chromedp.KeyEvent("900"))
	p.until(`document.getElementById('card-say').textContent.includes('900 mm up')`)
	p.do(chromedp.KeyEvent(kb.Tab))
	p.until(`document.activeElement.id === 'card-value'`)
	for _, text := range leastRead[:6] {
		p.answer(text)
	}
	p.do(chromedp.KeyEvent(leastRead[6]))
	p.until(`document.getElementById('findings').textContent.includes('±')`)
	p.shot("card-least-desktop")
	for _, want := range []string{"card-back", "card-forth", "card-next-go", "card-mode", "card-save", "card-paste"} {
		for range 8 { // past the choice of the hand
			if p.do(chromedp.KeyEvent(kb.Tab)); ask[string](p, `document.activeElement.id`) == want {
				break
			}
		}
		if at := ask[string](p, `document.activeElement.id`); at != want {
			t.Errorf("Tab comes to %q, want %s", at, want)
		}
	}
	ask[bool](p, `(document.getElementById('card-next-go').focus(), true)`)
	p.do(chromedp.KeyEvent(kb.Enter))
	p.until(`document.activeElement.id === 'card-value' && document.getElementById('card-where').textContent.startsWith('What tells most now')`)
	p.shot("card-next-desktop")
}

// Nothing on the card keeps people out.
func TestCardAccessible(t *testing.T) {
	t.Parallel()
	source := axe(t)
	for _, c := range handAndDesk {
		t.Run(c.name, func(t *testing.T) {
			p := open(t, c.screen)
			p.openDemo("Weaver's cottage, stair door")
			ask[bool](p, `(() => {`+source+`; return true; })()`)
			p.until(`!document.getElementById('card-misfits-box').hidden && !document.getElementById('card-next').hidden`)
			p.violations("folded")
			p.click("#card-misfits button")
			p.until(`!document.getElementById('card-misfit').hidden`)
			ask[bool](p, `(document.getElementById('card-places').open = true)`)
			p.violations("one at a time, a slip")
			p.write("#card-value", "nonsense")
			p.click("#card-paste")
			p.until(`!document.getElementById('card-table').hidden`)
			p.write("#card-text", "nonsense")
			p.click("#card-take")
			p.until(`!document.getElementById('card-text-fault').hidden`)
			p.violations("with faults")
			p.click("#card-mode")
			p.until(`!document.getElementById('card-all').hidden`)
			p.shot("card-all-" + strings.Fields(c.name)[0][:5])
			p.violations("all at once")
		})
	}
}

// openDemo opens one of the doors to try, by its name.
func (p *page) openDemo(name string) {
	p.t.Helper()
	p.until(`document.querySelector('#demos button')`)
	ask[bool](p, fmt.Sprintf(`([...document.querySelectorAll('#demos button')].find(b => b.textContent === %q).click(), true)`, name))
	p.until(fmt.Sprintf(`document.getElementById('job-title').textContent === %q`, name))
}

// savedText presses a button that hands a file over and gives what is in it.
func (p *page) savedText(button string) string {
	p.t.Helper()
	data, err := os.ReadFile(p.savedFile(button))
	if err != nil {
		p.t.Fatal(err)
	}
	return string(data)
}

// TestMeasureCard prints how long one keystroke on the card takes, to the frame
// that shows it. It judges nothing.
//
//	go test ./wasm/e2e -run TestMeasureCard -measure -v
func TestMeasureCard(t *testing.T) {
	if !*measure {
		t.Skip("measured only when asked to, with -measure")
	}
	p := open(t, desktop)
	p.openDemo("Weaver's cottage, stair door")
	p.unfold("card")
	ask[bool](p, `(document.getElementById('card-value').focus(), true)`)
	took := evaluate[[][]float64](p, keystrokes)
	print("a keystroke on the card, all its handling, ms", took[0])
	print("a keystroke on the card, to the drawn frame, ms", took[1])
}

// keystrokes changes the reading that is asked for fifty times.
const keystrokes = `new Promise(done => {
	const field = document.getElementById('card-value'), frame = document.getElementById('stage').contentWindow;
	const within = [], drawn = [];
	const step = () => {
		field.value = within.length % 2 ? '767' : '768';
		const paints = frame.paints, start = performance.now();
		field.dispatchEvent(new Event('input'));
		within.push(performance.now() - start);
		const wait = () => {
			if (frame.paints === paints) return requestAnimationFrame(wait);
			drawn.push(performance.now() - start);
			if (within.length < 50) return setTimeout(step, 60);
			done([within, drawn]);
		};
		wait();
	};
	step();
})`

// How well the swing is known is worked out in slices once nothing is typed, and comes
// to the findings by itself.
func TestSwingIsWeighed(t *testing.T) {
	t.Parallel()
	p := open(t, phone)
	p.openDemo("Weaver's cottage, stair door")
	p.until(`[...document.querySelectorAll('#findings li')].some(li => li.textContent.includes('swings') && li.textContent.includes('±'))`)
}
