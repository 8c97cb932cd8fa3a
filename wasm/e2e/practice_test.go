//go:build !js

package e2e

import (
	"fmt"
	"strings"
	"testing"
)

// toPractice opens the practice dialog and waits for its lessons.
func (p *page) toPractice() {
	p.t.Helper()
	p.click("#practice-begin")
	p.until(`document.querySelectorAll('.lessons .lesson').length >= 10`)
}

// untilActs waits until so many acts stand in the log, and what stood unfolded is filled again.
func (p *page) untilActs(n int) {
	p.t.Helper()
	p.until(fmt.Sprintf(`document.querySelectorAll('#practice-acts > li').length === %d && document.getElementById('practice-body').ariaBusy !== 'true' &&
		!document.querySelector('#practice-body details[open] > div:empty')`, n))
}

// pick chooses in a list.
func (p *page) pick(id, value string) {
	p.t.Helper()
	ask[bool](p, fmt.Sprintf(`(() => {
		const s = document.getElementById(%q);
		s.value = %q;
		s.dispatchEvent(new Event('change', {bubbles: true}));
		return s.value === %q || null;
	})()`, id, value, value))
}

// lastSaid is what came of the last act.
func (p *page) lastSaid() string {
	p.t.Helper()
	return ask[string](p, `document.querySelector('#practice-acts > li:last-child').textContent`)
}

// A lesson is played through on a phone by touch, with a reload in the middle.
func TestPracticeByTouch(t *testing.T) {
	t.Parallel()
	p := open(t, phone)
	p.tap("#practice-begin")
	p.until(`document.querySelectorAll('.lessons .lesson').length >= 10`)
	p.shot("practice-path")
	p.tap("#practise-01-rubs-all-the-way-up")
	p.until(`document.querySelector('#practice-try')`)
	if got := ask[int](p, `document.querySelectorAll('#practice-picture svg text').length`); got != 0 {
		t.Errorf("the door that is to be judged has %d figures on it", got)
	}
	p.tap("#practice-try")
	p.untilActs(1)
	if said := p.lastSaid(); !strings.Contains(said, "latch") {
		t.Errorf("trying a leaf that is too wide says %q", said)
	}
	p.tap("#practice-reading summary")
	p.until(`document.getElementById('practice-read-do')`)
	p.pick("practice-side", "latch")
	p.tap("#practice-read-do")
	p.untilActs(2)
	p.shot("practice-read")
	spent := p.text("#practice-spent")
	p.load(p.url)
	p.tap("#practice-begin")
	p.until(`document.querySelector('#practise-01-rubs-all-the-way-up')`)
	if state := p.text("#practise-01-rubs-all-the-way-up"); !strings.Contains(state, "begun") {
		t.Errorf("after a reload the lesson is %q", state)
	}
	p.tap("#practise-01-rubs-all-the-way-up")
	p.untilActs(2)
	if got := p.text("#practice-spent"); got != spent {
		t.Errorf("after a reload %q, before %q", got, spent)
	}

	p.tap("#practice-naming summary")
	p.tap("label:has(#fault-leaf-wide)")
	p.tap("#practice-name-do")
	p.untilActs(3)
	// two shavings of 2 mm by the plane on the picture, and half a one in figures
	p.tap("label:has(#practice-tool-plane)")
	p.until(`document.getElementById('practice-shaving')`)
	p.pick("practice-shaving", "2")
	pic, high, screen := p.seenPicture("01-rubs-all-the-way-up", "plane")
	for _, off := range []string{"2 mm", "4 mm"} {
		p.strokeUp(pic, high, screen)
		p.until(fmt.Sprintf(`document.getElementById('practice-hand-said').textContent.includes('closing edge: %s all along') && !document.getElementById('practice-hand-do').disabled`, off))
	}
	p.shot("practice-plane")
	if got := ask[string](p, `document.activeElement.id`); got != "practice-hand-do" {
		t.Errorf("after the stroke the focus is on %q", got)
	}
	if got := ask[int](p, `document.querySelectorAll('#practice-acts > li').length`); got != 3 {
		t.Errorf("a stroke alone makes %d acts of 3", got)
	}
	p.tap("#practice-hand-form")
	p.fill("practice:options[0].moves[0].first", "4.5")
	p.fill("practice:options[0].moves[0].last", "4.5")
	p.until(`document.getElementById('practice-hand-said').textContent.includes('4.5 mm')`)
	p.shot("practice-move")
	p.tap("#practice-hand-do")
	p.untilActs(4)
	p.tap("#practice-done")
	p.untilActs(5)
	p.shot("practice-judged")
	judged := p.text("#practice-body")
	for _, s := range []string{"too wide", "4.5 mm", "It hangs as wanted"} {
		if !strings.Contains(judged, s) {
			t.Errorf("the judgement does not speak of %q: %s", s, judged)
		}
	}
	if got := ask[int](p, `document.querySelectorAll('#practice-picture svg text').length`); got < 4 {
		t.Errorf("once it is over the door has %d figures on it", got)
	}
	p.tap("#practice-step-back")
	p.until(`document.querySelectorAll('#practice-acts > li').length === 4`)
	session := p.savedText("#practice-save")
	if n := strings.Count(session, "\n"); n != 6 {
		t.Errorf("the session for the teacher has %d lines:\n%s", n, session)
	}
	p.tap("#practice-back")
	p.until(`document.querySelector('#practise-01-rubs-all-the-way-up')`)
	if state := p.text("#practise-01-rubs-all-the-way-up"); !strings.Contains(state, "done") {
		t.Errorf("played to its end the lesson is %q", state)
	}
}

// fill puts text into a field and leaves it.
func (p *page) fill(id, text string) {
	p.t.Helper()
	p.until(fmt.Sprintf(`document.getElementById(%q)`, id))
	ask[bool](p, fmt.Sprintf(`(() => {
		const e = document.getElementById(%q);
		e.value = %q;
		e.dispatchEvent(new Event('change', {bubbles: true}));
		return true;
	})()`, id, text))
	p.until(fmt.Sprintf(`document.getElementById(%q)?.value === %q`, id, text))
}

// The door in an explanation follows its sliders.
func TestExplanations(t *testing.T) {
	t.Parallel()
	p := open(t, phone)
	p.toPractice()
	for _, name := range ask[[]string](p, `[...document.querySelectorAll('.lessons .lesson[id^="practise-why-"]')].map(b => b.id)`) {
		p.click("#" + name)
		p.until(`document.querySelector('#why-0')`)
		before := ask[string](p, `document.getElementById('practice-picture').innerHTML`)
		ask[bool](p, `(() => { const s = document.getElementById('why-0'); s.value = s.value === s.max ? s.min : s.max; s.dispatchEvent(new Event('input')); return true; })()`)
		p.until(fmt.Sprintf(`document.getElementById('practice-picture').innerHTML !== %q`, before))
		p.shot(name)
		p.click("#practice-back")
		p.until(`document.querySelectorAll('.lessons .lesson').length >= 10`)
	}
}

// A door drawn by chance can be played, and a lesson file that is wrong says what is.
func TestPracticeDrawnAndOpened(t *testing.T) {
	t.Parallel()
	p := open(t, desktop)
	p.toPractice()
	p.click("#practice-draw")
	p.until(`document.querySelector('#practice-try')`)
	p.click("#practice-try")
	p.untilActs(1)
	p.click("#practice-back")
	p.until(`document.querySelectorAll('.lesson[id^="practise-attempt"]').length === 1`)
	if said := p.text("#practice-body"); strings.Contains(said, "null") {
		t.Errorf("the path says %q", said)
	}

	// who gives a door up goes on with an easier one
	p.pick("practice-level", "3")
	p.click("#practice-draw")
	p.until(`document.querySelector('#practice-try')`)
	p.click("#practice-give-up")
	p.untilActs(1)
	p.click("#practice-back")
	p.until(`document.getElementById('practice-level')?.value === '2'`)

	p.hand("a lesson.json", `{"leafwright_lesson": 1, "title": "Mine", "door": {"seed": -1}, "faults": [{"kind": "hinge loose"}]}`)
	p.until(`document.getElementById('practice-state').textContent.includes('hinge loose')`)
	if said := p.text("#practice-state"); !strings.Contains(said, "door.seed") {
		t.Errorf("a bad lesson is refused with %q", said)
	}
	p.hand("handed in.txt", `{"leafwright_session": 1, "lesson": "02-springs-open", "learner": "Ada"}
{"act": "try"}
{"act": "hint"}
`)
	p.untilActs(2)
	if title := p.text("#practice-title"); !strings.Contains(title, "Ada") {
		t.Errorf("what Ada handed in is called %q", title)
	}
	p.click("#practice-step-back")
	p.untilActs(1)
	p.click("#practice-back")
	p.until(`document.querySelector('#practise-02-springs-open')`)
	if state := p.text("#practise-02-springs-open"); strings.Contains(state, "begun") {
		t.Errorf("what another one did counts as one's own: %q", state)
	}
}

// hand gives a file to the practice dialog.
func (p *page) hand(name, text string) {
	p.t.Helper()
	ask[bool](p, fmt.Sprintf(`(() => {
		const given = new DataTransfer();
		given.items.add(new File([%q], %q));
		const input = document.getElementById('practice-file');
		input.files = given.files;
		input.dispatchEvent(new Event('change'));
		return true;
	})()`, text, name))
}

// Practice keeps nobody out.
func TestPracticeAccessible(t *testing.T) {
	t.Parallel()
	source := axe(t)
	for _, dark := range []bool{false, true} {
		p := open(t, screen{w: 360, h: 740, ratio: 1, touch: true, dark: dark})
		ask[bool](p, `(() => {`+source+`; return true; })()`)
		p.toPractice()
		p.violations("the lessons")
		p.click("#practise-03-tipped")
		p.until(`document.querySelector('#practice-try')`)
		p.click("#practice-try")
		p.untilActs(1)
		p.click("#practice-working summary")
		p.until(`document.getElementById('practice-move-do')`)
		p.violations("a lesson")
		p.click("label:has(#practice-tool-hinge)")
		p.until(`document.getElementById('practice-tap')`)
		p.violations("a tool in hand")
		p.click("#practice-give-up")
		p.untilActs(2)
		p.violations("its answer")
	}
}
