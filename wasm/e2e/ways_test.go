//go:build !js

package e2e

import (
	"fmt"
	"os/exec"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// The edges of the leaf, as the drawing's probe takes them.
const (
	hingeSide = iota
	latchSide
	headSide
	floorSide
)

// spot is where a place of an edge is on the drawing, in the page.
func (p *page) spot(edge int, place float64) (x, y float64) {
	p.t.Helper()
	at := ask[[2]float64](p, fmt.Sprintf(`(() => {
		const r = stage.getBoundingClientRect(), g = stage.contentWindow.spot(%d, %g);
		return [r.x + g[0], r.y + g[1]];
	})()`, edge, place))
	return at[0], at[1]
}

// moves are the sentences of the moves in the list.
func (p *page) moves() []string {
	p.t.Helper()
	return ask[[]string](p, `[...document.querySelectorAll('#moves .move-say')].map(e => e.textContent)`)
}

// untilMoves waits until the list has so many moves.
func (p *page) untilMoves(n int) {
	p.t.Helper()
	p.until(fmt.Sprintf(`document.querySelectorAll('#moves > li').length === %d`, n))
}

// startWay adds a way to try.
func (p *page) startWay() {
	p.t.Helper()
	p.click("#way-add")
	p.until(`!document.getElementById('moves-box').hidden`)
}

// Every kind of move can be made in the panel, by pointer and by keys.
func TestEveryMoveInThePanel(t *testing.T) {
	t.Parallel()
	p := open(t, desktop)
	p.startWay()
	kinds := ask[[]string](p, `[...document.getElementById('move-kind').options].map(o => o.value.split('.').pop())`)
	if len(kinds) < 19 {
		t.Fatalf("%d kinds of move are offered: %v", len(kinds), kinds)
	}
	for i, kind := range kinds {
		before := p.look()
		if i%2 == 0 {
			p.addMove(kind)
		} else {
			p.addMoveByKeys(kind)
		}
		if n := ask[int](p, fmt.Sprintf(`document.querySelectorAll('#move-numbers-%d input, #move-numbers-%d select').length`, i, i)); n < 1 {
			t.Errorf("%s has no numbers to change", kind)
		}
		refused := ask[bool](p, fmt.Sprintf(`document.querySelectorAll('#moves > li')[%d].classList.contains('refused')`, i))
		if after := p.look(); after.drawing == before.drawing && !refused && kind != "ease" && kind != "bevel" { // these two are seen in the loupe only
			t.Errorf("%s changes nothing on the drawing", kind)
		}
	}
	// the same with pointer and keys changed round
	for ask[bool](p, `!document.getElementById('undo').disabled`) {
		p.click("#undo")
	}
	p.startWay()
	for i, kind := range kinds {
		if i%2 == 0 {
			p.addMoveByKeys(kind)
		} else {
			p.addMove(kind)
		}
	}
	// off and on again, by the keyboard
	before := p.look()
	ask[bool](p, `(document.getElementById('move-on-0').focus(), true)`)
	p.do(chromedp.KeyEvent(" "))
	p.until(`document.querySelector('#moves > li').classList.contains('off')`)
	if after := p.look(); after == before {
		t.Error("a move switched off still shows")
	}
	p.do(chromedp.KeyEvent(" "))
	p.until(`!document.querySelector('#moves > li').classList.contains('off')`)
	if after := p.look(); after != before {
		t.Error("switched off and on again, a move shows something else")
	}
	// carried to another place by the arrow keys
	first := p.moves()[0]
	ask[bool](p, `(document.getElementById('move-grip-0').focus(), true)`)
	p.do(chromedp.KeyEvent(kb.ArrowDown))
	p.until(fmt.Sprintf(`document.querySelectorAll('#moves .move-say')[1].textContent === %q`, first))
	// and all of it undone
	for ask[bool](p, `!document.getElementById('undo').disabled`) {
		p.click("#undo")
	}
	p.until(`document.getElementById('moves-box').hidden`)
}

// addMoveByKeys adds a move of a kind with the keyboard alone.
func (p *page) addMoveByKeys(kind string) {
	p.t.Helper()
	n := len(p.moves())
	ask[bool](p, `(document.getElementById('move-kind').focus(), document.getElementById('move-kind').selectedIndex = 0, true)`)
	for range ask[int](p, fmt.Sprintf(`[...document.getElementById('move-kind').options].findIndex(o => o.value.endsWith(%q))`, ".moves."+kind)) {
		p.do(chromedp.KeyEvent(kb.ArrowDown))
	}
	if got := p.value("#move-kind"); !strings.HasSuffix(got, ".moves."+kind) {
		p.t.Fatalf("by keys the kind chosen is %q, want %s", got, kind)
	}
	p.do(chromedp.KeyEvent(kb.Tab), chromedp.KeyEvent(kb.Enter))
	p.untilMoves(n + 1)
}

// A way tried on the page and the same way by the command come to the same.
func TestCommandAgreesWithThePage(t *testing.T) {
	t.Parallel()
	p := open(t, desktop)
	p.startWay()
	p.addMove("plane")
	p.write(`#move-numbers-0 input[id$=".first"]`, "1.5")
	p.addMove("sink")
	p.until(`document.querySelectorAll('#moves > li .quiet:not([hidden])').length >= 2`)
	job := p.savedFile("#save")
	exe, err := command()
	if err != nil {
		t.Fatal(err)
	}
	way := ask[string](p, `document.querySelector('[name=way]:checked').parentNode.textContent`)
	out, err := exec.Command(exe, "check", "-option", way, job).Output()
	if _, bound := err.(*exec.ExitError); err != nil && !bound {
		t.Fatal(err)
	}
	squeeze := func(s string) string { return strings.Join(strings.Fields(s), " ") }
	text := squeeze(string(out))
	if headline := squeeze(p.text("#headline")); !strings.Contains(text, headline) {
		t.Errorf("the page says %q, the command\n%s", headline, out)
	}
	for _, figure := range ask[[]string](p, `[...document.querySelectorAll('#findings b')].map(e => e.textContent)`) {
		if !strings.Contains(text, squeeze(figure)) {
			t.Errorf("the page's figure %q is not in the command's report:\n%s", figure, out)
		}
	}
	for _, m := range p.moves() {
		if !strings.Contains(text, squeeze(m)) {
			t.Errorf("the move %q is not in the command's report:\n%s", m, out)
		}
	}
}

// A stroke of the plane, by mouse and by touch; a second one adds to the first.
func TestPlaneStroke(t *testing.T) {
	t.Parallel()
	for _, c := range screens {
		t.Run(c.name, func(t *testing.T) {
			p := open(t, c.screen)
			p.choose("show", "Front")
			p.choose("tool", "Plane")
			stroke := func() {
				x0, y0 := p.spot(latchSide, 300)
				x1, y1 := p.spot(latchSide, 1700)
				if c.touch {
					p.touch(input.DispatchTouchEventTypeTouchStart, &input.TouchPoint{X: x0, Y: y0})
					for i := 1.0; i <= 8; i++ {
						p.touch(input.DispatchTouchEventTypeTouchMove, &input.TouchPoint{X: x0 + (x1-x0)*i/8, Y: y0 + (y1-y0)*i/8})
					}
					if !ask[bool](p, `document.getElementById('hand-says').textContent.includes('mm off')`) {
						t.Errorf("while stroking the hand says %q", p.text("#hand-says"))
					}
					p.shot(c.name + "-stroking")
					p.touch(input.DispatchTouchEventTypeTouchEnd)
					return
				}
				p.do(chromedp.DragAndDropXY(x0, y0, x1, y1))
			}
			stroke()
			p.untilMoves(1)
			first := p.moves()[0]
			if !strings.Contains(first, "losing edge") && !strings.Contains(first, "latch") || !strings.Contains(first, "0.5 mm") {
				t.Errorf("the stroke made %q", first)
			}
			stroke()
			p.until(fmt.Sprintf(`document.querySelector('#moves .move-say').textContent !== %q || document.querySelectorAll('#moves > li').length === 2`, first))
			p.shot(c.name + "-stroked")
			p.click("#undo")
			p.until(fmt.Sprintf(`document.querySelectorAll('#moves > li').length === 1 && document.querySelector('#moves .move-say').textContent === %q`, first))
		})
	}
}

// The tools are worked by keys too.
func TestToolsByKeys(t *testing.T) {
	t.Parallel()
	p := open(t, desktop)
	ask[bool](p, `(stage.focus(), stage.contentDocument.querySelector('canvas').focus(), true)`)
	p.do(chromedp.KeyEvent("2"), chromedp.KeyEvent("]"))
	p.until(`document.getElementById('hand-says').textContent.includes('off')`)
	p.do(chromedp.KeyEvent("\r"))
	p.untilMoves(1)
	p.do(chromedp.KeyEvent("3"), chromedp.KeyEvent("]"), chromedp.KeyEvent("\r"))
	p.untilMoves(2)
	p.do(chromedp.KeyEvent("4"), chromedp.KeyEvent("]"), chromedp.KeyEvent(kb.ArrowUp), chromedp.KeyEvent(kb.ArrowUp), chromedp.KeyEvent(kb.ArrowUp))
	p.do(chromedp.KeyEvent("5"), chromedp.KeyEvent("]"), chromedp.KeyEvent(kb.ArrowDown), chromedp.KeyEvent(kb.ArrowDown), chromedp.KeyEvent("\r"))
	p.untilMoves(3)
	if said := p.text("#hand-says"); said == "" {
		t.Error("the tool in hand says nothing")
	}
	t.Log(strings.Join(p.moves(), "\n"))
}

// A page reloaded in the middle, and one whose tab is killed, find every move and every
// step of undo.
func TestMovesAreKept(t *testing.T) {
	t.Parallel()
	p := open(t, desktop)
	p.startWay()
	p.addMove("plane")
	p.addMove("pack")
	p.write(`#move-numbers-1 input[id$=".first"]`, "1.5x") // no number: a draft
	p.until(`document.querySelector('#move-numbers-1 input[id$=".first"]').getAttribute('aria-invalid') === 'true'`)
	before, moves := p.look(), p.moves()
	same := func(p *page, when string) {
		t.Helper()
		p.untilMoves(2)
		if got := p.moves(); strings.Join(got, "|") != strings.Join(moves, "|") {
			t.Errorf("%s the moves are %q, want %q", when, got, moves)
		}
		if after := p.look(); after.findings != before.findings {
			t.Errorf("%s the page shows %q, want %q", when, after.findings, before.findings)
		}
		ask[bool](p, `(document.querySelectorAll('.move-numbers').forEach(d => { d.open = true; }), true)`)
		if got := p.value(`#move-numbers-1 input[id$=".first"]`); got != "1.5x" {
			t.Errorf("%s what was typed is %q", when, got)
		}
	}
	p.load(p.url)
	same(p, "reloaded,")

	other := p.tab()
	same(other, "in another tab,")
	ask[bool](other, `(setTimeout(() => { stage.contentWindow.location = 'about:blank'; }, 0), true)`) // the program is gone without a word
	third := p.tab()
	same(third, "after a tab was killed,")
	third.click("#undo")
	third.click("#undo")
	third.until(`document.querySelectorAll('#moves > li').length < 2`)
}

// For keeps, a cut is a cut.
func TestForKeeps(t *testing.T) {
	t.Parallel()
	p := open(t, phone)
	p.startWay()
	p.addMove("plane")
	p.addMove("pack")
	first := p.moves()[0]
	p.click("#move-keep")
	p.untilMoves(1)
	p.choose("way", "As it stands")
	p.until(`document.getElementById('moves-title').textContent === 'Done for keeps'`)
	if got := p.moves(); len(got) != 1 || got[0] != first {
		t.Errorf("done for keeps are %q, want %q", got, first)
	}
	p.click("#undo")
	p.until(`!document.getElementById('storage').hidden`)
	if text := p.text("#storage-text"); !strings.Contains(text, "cut is a cut") {
		t.Errorf("undo says %q", text)
	}
	if got := p.moves(); len(got) != 1 {
		t.Errorf("after undo %q are done for keeps", got)
	}
	if job := p.saved("#save"); len(job["made"].([]any)) != 1 {
		t.Errorf("the file holds %v as made", job["made"])
	}
}

// All ways side by side, sorted by a row; as found always first.
func TestSideBySide(t *testing.T) {
	t.Parallel()
	p := open(t, desktop)
	p.startWay()
	p.addMove("plane")
	p.startWay()
	p.addMove("pack")
	p.click("#compare-open")
	p.until(`document.getElementById('compare').open`)
	names := func() []string {
		return ask[[]string](p, `[...document.querySelectorAll('#compare-body thead button')].map(e => e.textContent)`)
	}
	before := names()
	if len(before) < 3 || before[0] != "As found" {
		t.Fatalf("the columns are %q", before)
	}
	if n := ask[int](p, `document.querySelectorAll('#compare-body svg path').length`); n < 60 {
		t.Errorf("%d paths in the pictures", n)
	}
	sorted := 0
	for i := range ask[int](p, `document.querySelectorAll('#compare-body .sort').length`) {
		p.click(fmt.Sprintf("#way-row-%d", i))
		p.until(fmt.Sprintf(`document.getElementById('way-row-%d').getAttribute('aria-pressed') === 'true'`, i))
		after := names()
		if after[0] != "As found" || len(after) != len(before) {
			t.Errorf("sorted by row %d the columns are %q", i, after)
		}
		if strings.Join(after, "|") != strings.Join(before, "|") {
			sorted++
		}
	}
	if sorted == 0 {
		t.Error("no row changes the order")
	}
	p.click("#compare-body thead th:nth-child(3) button")
	p.until(`!document.getElementById('compare').open`)
}

// Jobs on this device: copied, renamed, deleted and brought back; a damaged one is set
// aside and takes no other with it.
func TestShelf(t *testing.T) {
	t.Parallel()
	p := open(t, phone)
	p.unfold("section-job")
	p.write(field("name"), "Porch")
	p.blur()
	list := func() []string {
		return ask[[]string](p, `[...document.querySelectorAll('#shelf .shelf-name')].map(e => e.textContent)`)
	}
	p.click("#jobs-open")
	p.until(`document.getElementById('jobs').open`)
	p.click("#shelf li:first-child [id^=job-copy]")
	p.until(`document.querySelectorAll('#shelf li').length === 2`)
	copied := ask[string](p, `[...document.querySelectorAll('#shelf .shelf-name')].find(e => e.textContent !== 'Porch').id`)
	id := strings.TrimPrefix(copied, "job-open-")
	p.click("#job-rename-" + id)
	p.until(`document.activeElement.tagName === 'INPUT'`)
	ask[bool](p, `(document.activeElement.select(), true)`)
	p.do(chromedp.KeyEvent("Scullery"))
	p.click("#shelf input + button, #shelf .box + button")
	p.until(`[...document.querySelectorAll('#shelf .shelf-name')].some(e => e.textContent === 'Scullery')`)
	p.click("#job-open-" + id)
	p.until(`document.getElementById('job-title').textContent === 'Scullery'`)
	p.click("#jobs-open")
	p.click("#job-delete-" + id)
	p.until(`document.querySelectorAll('#bin li').length === 1`)
	if got := list(); len(got) != 1 || got[0] != "Porch" {
		t.Errorf("with one deleted the list is %q", got)
	}
	p.click("#job-back-" + id)
	p.until(`document.querySelectorAll('#shelf li').length === 2`)

	// damage every record of one job
	ask[bool](p, fmt.Sprintf(`(Object.keys(localStorage).filter(k => k.includes(%q)).forEach(k => localStorage.setItem(k, localStorage.getItem(k).slice(0, 20))), true)`, id))
	p.load(p.url)
	p.click("#jobs-open")
	p.until(`document.getElementById('jobs').open`)
	if ask[bool](p, fmt.Sprintf(`!!document.getElementById(%q)`, "job-open-"+id)) {
		p.click("#job-open-" + id)
	}
	p.until(`!document.getElementById('aside-box').hidden`)
	if got := list(); len(got) != 1 || got[0] != "Porch" {
		t.Errorf("with one damaged the list is %q", got)
	}
}

// Two tabs with the same job: neither overwrites the other.
func TestTwoTabsOneJob(t *testing.T) {
	t.Parallel()
	p := open(t, desktop)
	other := p.tab()
	other.startWay()
	other.addMove("plane")
	p.until(`document.querySelectorAll('[name=way]').length > 1`)
	p.front()
	p.unfold("section-job")
	p.write(field("name"), "Both")
	p.blur()
	other.until(`document.getElementById('job-title').textContent === 'Both'`)
	if n := len(other.moves()); n != 1 {
		t.Errorf("after a change in one tab the other has %d moves", n)
	}
}

// Nothing in the ways, the tools, the table and the shelf keeps people out.
func TestWaysAccessible(t *testing.T) {
	t.Parallel()
	source := axe(t)
	for _, c := range handAndDesk {
		t.Run(c.name, func(t *testing.T) {
			p := open(t, c.screen)
			p.startWay()
			for _, kind := range []string{"scribe", "splice", "rehinge", "reuse"} { // the last is refused
				p.addMove(kind)
			}
			ask[bool](p, `(() => {`+source+`; return true; })()`)
			p.violations("moves")
			if small := ask[string](p, `[...document.querySelectorAll('#ways button, #ways label, #moves-box button, #moves-box input[type=text], #moves-box select, #moves-box summary, #hands label, #hands select')]
				.filter(e => e.offsetParent && e.getBoundingClientRect().height < 43.5).map(e => e.id || e.textContent).join(', ')`); small != "" {
				t.Errorf("too low for a finger: %s", small)
			}
			if over := ask[float64](p, `document.documentElement.scrollWidth - window.innerWidth`); over > 0 {
				t.Errorf("the page is %v px wider than the screen", over)
			}
			for _, tool := range []string{"Plane", "Hinge", "Strip", "Saw"} {
				p.choose("tool", tool)
				p.violations(tool)
			}
			p.click("#compare-open")
			p.until(`document.getElementById('compare').open`)
			p.violations("side by side")
			p.click("#compare-close")
			p.click("#jobs-open")
			p.until(`document.getElementById('jobs').open`)
			p.click("#shelf [id^=job-copy]")
			p.until(`document.querySelectorAll('#shelf li').length === 2`)
			p.click("#shelf [id^=job-delete]")
			p.until(`document.querySelectorAll('#bin li').length === 1`)
			p.click("#shelf [id^=job-rename]")
			p.violations("shelf")
		})
	}
}
