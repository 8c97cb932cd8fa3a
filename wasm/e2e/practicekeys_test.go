//go:build !js

package e2e

import (
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"

	"leafwright/game/draw"
	"leafwright/game/lesson"
	"leafwright/game/lesson/hand"
	"leafwright/game/words"
	"leafwright/geom/door"
)

// keys presses keys.
func (p *page) keys(keys ...string) {
	p.t.Helper()
	for _, k := range keys {
		p.do(chromedp.KeyEvent(k))
	}
}

// tabTo goes to what a selector names by the tab key, as far as need be.
func (p *page) tabTo(selector string) {
	p.t.Helper()
	p.until(fmt.Sprintf(`document.querySelector(%q) && !document.querySelector(%q).disabled`, selector, selector))
	for range 150 {
		if ask[bool](p, fmt.Sprintf(`document.activeElement === document.querySelector(%q)`, selector)) {
			return
		}
		p.keys(kb.Tab)
	}
	p.t.Fatalf("the tab key does not lead to %s", selector)
}

// picked goes to a list by the tab key and chooses in it by its arrow keys.
func (p *page) picked(selector, value string) {
	p.t.Helper()
	p.tabTo(selector)
	at := ask[[2]int](p, fmt.Sprintf(`(() => {
		const s = document.querySelector(%q);
		return [s.selectedIndex, [...s.options].findIndex(o => o.value === %q)];
	})()`, selector, value))
	if at[1] < 0 {
		p.t.Fatalf("%s offers no %q", selector, value)
	}
	for i := at[0]; i != at[1]; {
		key, by := kb.ArrowDown, 1
		if at[1] < i {
			key, by = kb.ArrowUp, -1
		}
		i += by
		p.keys(key)
		p.until(fmt.Sprintf(`document.querySelector(%q)?.selectedIndex === %d && document.activeElement === document.querySelector(%q)`, selector, i, selector))
	}
}

// typed goes to a field by the tab key, and types into it in place of what is there.
func (p *page) typed(selector, text string) {
	p.t.Helper()
	p.tabTo(selector)
	ask[bool](p, `(document.activeElement.select(), true)`) // as the tab key does
	p.keys(text, kb.Tab)
	p.until(fmt.Sprintf(`document.querySelector(%q)?.value === %q`, selector, text))
}

func moveField(name string) string { return `[id="practice:options[0].moves[0].` + name + `"]` }

// A lesson is learnt by the keyboard alone on a phone: tried, read, named, cured and
// judged, with a reload in the middle.
func TestPracticeByKeys(t *testing.T) {
	t.Parallel()
	p := open(t, phone)
	begin := func(acts int) {
		p.tabTo("#practice-begin")
		p.keys(kb.Enter)
		p.tabTo("#practise-02-springs-open")
		p.keys(kb.Enter)
		p.until(`document.querySelector('#practice-try')`)
		p.untilActs(acts)
	}
	begin(0)
	p.tabTo("#practice-try")
	p.keys(kb.Enter)
	p.untilActs(1)
	if said := p.lastSaid(); !strings.Contains(said, "springs back") {
		t.Errorf("trying a hinge-bound leaf says %q", said)
	}
	p.tabTo("#practice-reading summary")
	p.keys(kb.Enter)
	p.picked("#practice-side", "hinge")
	p.typed("#practice-at", "1700")
	p.tabTo("#practice-read-do")
	p.keys(kb.Enter)
	p.untilActs(2)
	if said := p.lastSaid(); !strings.Contains(said, "1700 mm up") || !strings.Contains(said, "not even the thinnest blade") {
		t.Errorf("the gap beside the top hinge of a hinge-bound leaf reads %q", said)
	}
	p.tabTo("#practice-naming summary")
	p.keys(kb.Enter)
	p.tabTo("#fault-gains-deep")
	p.keys(" ")
	p.until(`document.getElementById('fault-gains-deep').checked`)
	p.tabTo("#practice-name-do")
	p.keys(kb.Enter)
	p.untilActs(3)

	spent := p.text("#practice-spent")
	p.load(p.url)
	begin(3)
	if got := p.text("#practice-spent"); got != spent {
		t.Errorf("after a reload %q, before %q", got, spent)
	}

	p.tabTo("#practice-working summary")
	p.keys(kb.Enter)
	p.until(`document.getElementById('practice-move-do')`)
	p.picked("#practice-move-kind", "pack")
	p.until(`document.getElementById('practice-move-said').textContent.startsWith('Pack')`)
	p.picked(moveField("hinge"), "0")
	p.until(`document.getElementById('practice-move-said').textContent.includes('all hinges')`)
	p.typed(moveField("first"), "4.5")
	p.until(`document.getElementById('practice-move-said').textContent.includes('4.5 mm')`)
	p.shot("practice-keys")
	p.tabTo("#practice-move-do")
	p.keys(kb.Enter)
	p.untilActs(4)
	p.tabTo("#practice-try")
	p.keys(kb.Enter)
	p.untilActs(5)
	p.tabTo("#practice-done")
	p.keys(kb.Enter)
	p.untilActs(6)
	judged := p.text("#practice-body")
	for _, s := range []string{"It hangs as wanted", "You named it rightly: hinge-bound", "No timber came off the leaf"} {
		if !strings.Contains(judged, s) {
			t.Errorf("the judgement does not say %q: %s", s, judged)
		}
	}
	if strings.Contains(judged, "Past the limit") {
		t.Errorf("a limit was not kept: %s", judged)
	}
	p.keys(kb.Escape)
	p.until(`!document.getElementById('practice').open`)
}

// Hints can be followed by the keyboard to the answer, and a door can be given up.
func TestPracticeHintsByKeys(t *testing.T) {
	t.Parallel()
	p := open(t, desktop)
	p.tabTo("#practice-begin")
	p.keys(kb.Enter)
	p.tabTo("#practise-03-tipped")
	p.keys(kb.Enter)
	p.shot("practice-desktop")
	acts := 0
	for range 4 {
		acts++
		p.tabTo("#practice-hint")
		p.keys(kb.Enter)
		p.untilActs(acts)
		if p.lastSaid() == "" {
			t.Error("a hint says nothing")
		}
	}
	p.tabTo("#practice-give-up")
	p.keys(kb.Enter)
	p.untilActs(acts + 1)
	if got := p.text("#practice-answer"); !strings.Contains(got, "home on its seat") {
		t.Errorf("the answer to a hinge off its seat is %q", got)
	}
	p.shot("practice-answer")
	p.keys(kb.Escape)
	p.until(`!document.getElementById('practice').open`)
	p.tabTo("#practice-begin")
	p.keys(kb.Enter)
	p.untilActs(acts + 1)
}

// seenPicture is the picture a lesson's page shows, as the core draws it, and where a
// point of it is on the screen; with the height of its leaf.
func (p *page) seenPicture(file, tool string) (pic *hand.Picture, high float64, screen func(draw.Pt) *input.TouchPoint) {
	p.t.Helper()
	data, err := os.ReadFile(filepath.Join("..", "..", "testdata", "lessons", file+".json"))
	if err != nil {
		p.t.Fatal(err)
	}
	l, err := lesson.Parse(file, data)
	if err != nil {
		p.t.Fatal(err)
	}
	at := ask[[5]float64](p, `(() => {
		const svg = document.querySelector('#practice-view svg');
		svg.scrollIntoView({block: 'center'});
		const r = svg.getBoundingClientRect();
		return [svg.viewBox.baseVal.width, svg.viewBox.baseVal.height, r.x, r.y, r.width];
	})()`)
	k := at[4] / at[0]
	pic = hand.Show(&l.Job, hand.ToolOf(tool), draw.View{Width: at[0], Height: at[1]})
	return pic, l.Job.LeafHeight, func(q draw.Pt) *input.TouchPoint {
		return &input.TouchPoint{X: at[2] + k*q.X, Y: at[3] + k*q.Y}
	}
}

// strokeUp runs the plane up the closing edge by a finger, from foot to top.
func (p *page) strokeUp(pic *hand.Picture, high float64, screen func(draw.Pt) *input.TouchPoint) {
	p.t.Helper()
	const foot, steps = 20, 6
	top := high - foot
	p.touch(input.DispatchTouchEventTypeTouchStart, screen(pic.Spot(door.LatchSide, foot)))
	for i := range steps + 1 {
		p.touch(input.DispatchTouchEventTypeTouchMove, screen(pic.Spot(door.LatchSide, foot+(top-foot)*float64(i)/steps)))
	}
	p.touch(input.DispatchTouchEventTypeTouchEnd)
}

// What a learner did is handed to the teacher as a file, and says the same on the page,
// opened as a job is, and on the command line.
func TestPracticeHandedIn(t *testing.T) {
	t.Parallel()
	session := `{"leafwright_session": 1, "lesson": "a teacher's own", "learner": "Ada"}
{"act": "try"}
{"act": "name", "faults": ["leaf wide"]}
{"act": "move", "move": {"do": "plane", "edge": "closing", "first": 3, "last": 3}}
{"act": "done"}
`
	own, err := os.ReadFile(filepath.FromSlash("../../testdata/lessons/01-rubs-all-the-way-up.json"))
	if err != nil {
		t.Fatal(err)
	}
	p := open(t, desktop)
	p.openAsJob("handed in.txt", session)
	p.until(`document.getElementById('practice-state').textContent.includes('open its file first')`)
	p.keys(kb.Escape)
	p.openAsJob("a teacher's own.json", string(own))
	p.until(`document.getElementById('practice-title').textContent === 'It rubs all the way up'`)
	p.keys(kb.Escape)
	p.openAsJob("handed in.txt", session)
	p.untilActs(4)
	if title := p.text("#practice-title"); !strings.Contains(title, "Ada") {
		t.Errorf("what Ada handed in is called %q", title)
	}
	onPage := strings.Join(strings.Fields(p.text("#practice-body")), " ")

	dir := t.TempDir()
	for name, text := range map[string]string{"a teacher's own.json": string(own), "handed in.txt": session} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	exe, err := command()
	if err != nil {
		t.Fatal(err)
	}
	// it ends with 1: the door is not right
	said, _ := exec.Command(exe, "lesson", filepath.Join(dir, "a teacher's own.json"), "-play", filepath.Join(dir, "handed in.txt")).CombinedOutput()
	onLine := strings.Join(strings.Fields(string(said)), " ")

	l, err := lesson.Parse("a teacher's own", own)
	if err != nil {
		t.Fatal(err)
	}
	s, err := lesson.ParseSession([]byte(session))
	if err != nil {
		t.Fatal(err)
	}
	play, err := lesson.Replay(l, s.Acts)
	if err != nil {
		t.Fatal(err)
	}
	lines := 0
	for _, passage := range lesson.TellerOf(l, &words.Speaker{Lexicon: words.For(words.UK)}).Judged(play.Judge()) {
		for _, line := range passage.Lines {
			lines++
			for where, told := range map[string]string{"page": onPage, "command": onLine} {
				if !strings.Contains(told, line) {
					t.Errorf("the %s does not say %q: %s", where, line, told)
				}
			}
		}
	}
	if lines < 6 {
		t.Errorf("the judgement is %d lines", lines)
	}
	for range 4 {
		p.click("#practice-step-back")
		p.until(`document.getElementById('practice-body').ariaBusy !== 'true'`)
	}
	p.untilActs(0)
	p.click("#practice-step-on")
	p.untilActs(1)
}

// openAsJob opens a file as jobs are opened.
func (p *page) openAsJob(name, text string) {
	p.t.Helper()
	p.click("#jobs-open")
	quoted, _ := json.Marshal(text)
	ask[bool](p, fmt.Sprintf(`(() => {
		const given = new DataTransfer();
		given.items.add(new File([%s], %q));
		const input = document.getElementById('file');
		input.files = given.files;
		input.dispatchEvent(new Event('change'));
		return true;
	})()`, quoted, name))
	p.until(`document.getElementById('practice').open`)
}
