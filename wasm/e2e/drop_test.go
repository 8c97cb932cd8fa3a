//go:build !js

package e2e

import (
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// dropOn drops a file from outside the browser on the middle of what a selector names.
func (p *page) dropOn(selector, file string) {
	p.t.Helper()
	x, y := p.middle(selector)
	data := &input.DragData{Files: []string{file}, DragOperationsMask: 1}
	for _, kind := range []input.DispatchDragEventType{input.DispatchDragEventTypeDragEnter, input.DispatchDragEventTypeDragOver, input.DispatchDragEventTypeDrop} {
		if _, err := chromedp.Call(p.ctx, input.DispatchDragEvent, input.DispatchDragEventParams{Type: kind, X: x, Y: y, Data: data}); err != nil {
			p.t.Fatal(err)
		}
	}
}

// A lesson, what someone did in one and a job are opened where they are dropped: on the
// drawing, among the fields, on the practice that is open. What is none of them changes
// nothing and says so.
func TestDropped(t *testing.T) {
	t.Parallel()
	folder := t.TempDir()
	file := func(name, text string) string {
		path := filepath.Join(folder, name)
		if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		return path
	}
	testdata := func(name string) string {
		path, err := filepath.Abs(filepath.FromSlash("../../testdata/" + name))
		if err != nil {
			t.Fatal(err)
		}
		return path
	}
	p := open(t, desktop)
	found := p.job()

	p.dropOn("#stage", file("handed in.txt", `{"leafwright_session": 1, "lesson": "02-springs-open", "learner": "Ada"}
{"act": "try"}
{"act": "hint"}
`))
	p.until(`document.getElementById('practice').open`)
	p.untilActs(2)
	if title := p.text("#practice-title"); !strings.Contains(title, "Ada") {
		t.Errorf("what Ada handed in is called %q", title)
	}

	p.dropOn("#practice", testdata("lessons/01-rubs-all-the-way-up.json"))
	p.until(`document.getElementById('practice-title').textContent === 'It rubs all the way up'`)
	p.untilActs(0)
	p.do(chromedp.KeyEvent(kb.Escape))
	p.until(`!document.getElementById('practice').open`)
	if now := p.job(); !reflect.DeepEqual(now, found) {
		t.Errorf("what was dropped for practice made the job %v", now)
	}

	p.dropOn("#jobs-open", testdata("lessons/03-tipped.json"))
	p.until(`document.getElementById('practice').open && document.querySelector('#practice-try')`)
	p.do(chromedp.KeyEvent(kb.Escape))
	p.until(`!document.getElementById('practice').open`)

	p.dropOn("#stage", file("odd.json", `{"leafwright": 1, "name": 7}`))
	p.until(`!document.getElementById('open-fault').hidden`)
	if said := p.text("#open-fault"); !strings.Contains(said, "was not opened, and nothing was changed") {
		t.Errorf("of a file that is no job is said %q", said)
	}
	if !ask[bool](p, `document.getElementById('open-fault').checkVisibility()`) {
		t.Error("what is said of a file that is no job cannot be seen")
	}
	if now := p.job(); !reflect.DeepEqual(now, found) {
		t.Errorf("a file that is no job made the job %v", now)
	}

	p.dropOn("#jobs", testdata("jobs/9-ferry-house-feelers.json"))
	p.until(`!document.getElementById('jobs').open`)
	if name := p.job()["name"]; name != readJSON(t, testdata("jobs/9-ferry-house-feelers.json"))["name"] {
		t.Errorf("the job dropped is called %q", name)
	}
	p.dropOn("#stage", testdata("jobs/1-schoolroom-square.json"))
	p.until(`!document.getElementById('jobs').open && document.title.includes('Schoolroom')`)
}
