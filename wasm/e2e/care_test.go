//go:build !js

package e2e

import (
	"bytes"
	"fmt"
	"net/http"
	"net/http/httptest"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/cdp"
	cdppage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// At rest the page asks for no frame: two seconds are long enough that a page
// that does would ask for a hundred. The engine's own look at the clock, ten times a
// second, comes down to one; a change is drawn at once all the same.
func TestRestsWhenNothingChanges(t *testing.T) {
	p := open(t, desktop)
	p.until(`stage.contentWindow.ticks > 2`)
	const count = `stage.contentWindow.ticks`
	settled := `new Promise(done => {
		let last = -1;
		const look = () => {
			const now = document.getElementById('stage').contentWindow.ticks;
			if (now === last) return done(now);
			last = now;
			setTimeout(look, 300);
		};
		look();
	})`
	evaluate[int](p, settled)
	before := [2]int{ask[int](p, count), p.paints()}
	evaluate[bool](p, `new Promise(done => setTimeout(() => done(true), 2000))`)
	if after := [2]int{ask[int](p, count), p.paints()}; after != before {
		t.Errorf("frames and paintings went from %v to %v in two seconds of rest", before, after)
	}
	evaluate[bool](p, `new Promise(done => setTimeout(() => done(true), 1000))`)
	const clock = `stage.contentWindow.timers`
	looked := ask[int](p, clock)
	evaluate[bool](p, `new Promise(done => setTimeout(() => done(true), 3000))`)
	if n := ask[int](p, clock) - looked; n > 6 {
		t.Errorf("the clock was asked %d times in three seconds of rest", n)
	}
	if !ask[bool](p, `(() => {
		const frame = document.getElementById('stage').contentWindow, was = frame.ticks;
		document.getElementById('swing').value = 30;
		document.getElementById('swing').dispatchEvent(new Event('input', { bubbles: true }));
		return frame.ticks > was;
	})()`) {
		t.Error("a change after rest waited for the slow clock")
	}
}

// evaluate waits for a promise.
func evaluate[T any](p *page, expression string) T {
	p.t.Helper()
	v, err := chromedp.Run(p.ctx, chromedp.Evaluate[T](expression, chromedp.EvalAwaitPromise))
	if err != nil {
		p.t.Fatal(err)
	}
	return v
}

// axe gives the script that looks for what keeps people out of a page.
func axe(t *testing.T) string {
	t.Helper()
	file := os.Getenv("LEAFWRIGHT_AXE")
	if file == "" {
		skip(t, "no path to axe.min.js (npm package axe-core) in LEAFWRIGHT_AXE")
	}
	source, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	return string(source)
}

// violations tells what axe, run in the page before, finds wrong with it now.
func (p *page) violations(where string) {
	p.t.Helper()
	for _, v := range evaluate[[]string](p, `axe.run(document).then(r => r.violations.map(v => v.id + ' (' + v.impact + '): ' +
		v.nodes.map(n => n.html.slice(0, 120) + ' ' + (n.any[0] || n.all[0] || n.none[0] || {}).message).join(' | ')))`) {
		p.t.Errorf("%s: %s", where, v)
	}
}

// handAndDesk are the screens that what is seldom open is looked at on.
var handAndDesk = []struct {
	name string
	screen
}{
	{"phone, light", phone},
	{"desktop, dark", screen{w: 1440, h: 900, ratio: 1, dark: true}},
}

// Nothing on the page or in the drawing's frame keeps people out.
func TestAccessible(t *testing.T) {
	t.Parallel()
	source := axe(t)
	for _, c := range []struct {
		name string
		screen
	}{
		{"phone, light", phone},
		{"phone, dark", screen{w: 360, h: 740, ratio: 1, touch: true, dark: true}},
		{"desktop, light", desktop},
		{"desktop, dark", screen{w: 1440, h: 900, ratio: 1, dark: true}},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := open(t, c.screen)
			p.until(`document.querySelector('#demos button')`)
			// Run by the debugger: a script element the policy would refuse. From the
			// page axe looks into the frame too, if it finds itself there.
			p.inFrame(source)
			ask[bool](p, `(() => {`+source+`; return true; })()`)
			if n := evaluate[int](p, `axe.run(document).then(r => r.passes.flatMap(v => v.nodes).filter(n => n.target.length > 1).length)`); n == 0 {
				t.Error("the drawing's frame was not looked into")
			}
			p.violations("folded")
			ask[bool](p, `(document.querySelectorAll('details').forEach(d => { d.open = true; }), true)`)
			p.write(field("leaf.width"), "nonsense")
			p.until(`document.querySelector('[id="f:leaf.width"]').getAttribute('aria-invalid') === 'true'`)
			p.violations("unfolded, with a fault")
			p.click("#jobs-open")
			p.until(`document.getElementById('jobs').open`)
			p.violations("jobs")
		})
	}
}

// inFrame runs a script inside the drawing's frame, in a world of its own there.
func (p *page) inFrame(script string) {
	p.t.Helper()
	tree, err := chromedp.Call(p.ctx, cdppage.GetFrameTree, cdp.Empty{})
	if err != nil {
		p.t.Fatal(err)
	}
	world, err := chromedp.Call(p.ctx, cdppage.CreateIsolatedWorld, cdppage.CreateIsolatedWorldParams{FrameID: tree.FrameTree.ChildFrames[0].Frame.ID})
	if err != nil {
		p.t.Fatal(err)
	}
	r, err := chromedp.Call(p.ctx, runtime.Evaluate, runtime.EvaluateParams{Expression: script + "; true", ContextID: world.ExecutionContextID})
	if err != nil || r.ExceptionDetails != nil {
		p.t.Fatal(err, r.ExceptionDetails)
	}
}

// Everything can be reached and used with the keyboard alone.
func TestKeyboardWalk(t *testing.T) {
	t.Parallel()
	p := open(t, desktop)
	p.until(`document.querySelector('#demos button')`)
	const here = `(() => {
		let e = document.activeElement;
		if (e === stage) e = stage.contentDocument.activeElement;
		const r = e.getBoundingClientRect();
		return (e.id || e.className || e.tagName) + (r.width < 1 || r.height < 1 ? ' UNSEEN' : '');
	})()`
	var walk []string
	for range 60 {
		p.do(chromedp.KeyEvent(kb.Tab))
		at := ask[string](p, here)
		if at == "BODY" || len(walk) > 3 && at == walk[0] {
			break
		}
		walk = append(walk, at)
	}
	way := strings.Join(walk, " > ")
	for _, want := range []string{"skip", "jobs-open", "CANVAS", "show-", "swing-rein", "factor-rein", "own"} {
		if !strings.Contains(way, want) {
			t.Errorf("Tab never comes to %s: %s", want, way)
		}
	}
	if strings.Contains(way, "UNSEEN") {
		t.Errorf("Tab comes to what cannot be seen: %s", way)
	}
	if n := strings.Count(way, "SUMMARY"); n < 12 {
		t.Errorf("Tab comes to %d of the panel's sections: %s", n, way)
	}

	ask[bool](p, `(document.getElementById('section-leaf').querySelector('summary').focus(), true)`)
	p.do(chromedp.KeyEvent(kb.Enter))
	p.until(`document.getElementById('section-leaf').open`)
	p.do(chromedp.KeyEvent(kb.Tab))
	p.until(`document.activeElement.id === 'f:leaf.width'`)
	before := p.look()
	p.do(chromedp.KeyEvent("770"))
	p.until(fmt.Sprintf(`stage.contentWindow.digest() !== %q`, before.drawing))

	ask[bool](p, `(document.getElementById('jobs-open').focus(), true)`)
	p.do(chromedp.KeyEvent(kb.Enter))
	p.until(`document.getElementById('jobs').open`)
	p.do(chromedp.KeyEvent(kb.Escape))
	p.until(`!document.getElementById('jobs').open && document.activeElement.id === 'jobs-open'`)

	ask[bool](p, `(document.querySelector('.skip').focus(), true)`)
	p.do(chromedp.KeyEvent(kb.Enter))
	p.until(`document.activeElement.id === 'findings'`)
}

// A plain host that knows nothing of the page serves it from any folder, and when
// the files there change, the new version is offered and comes when asked for.
func TestAnyHostAndNewVersion(t *testing.T) {
	t.Parallel()
	browser := findBrowser(t)
	exe, err := command()
	if err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	if text, err := exec.Command(exe, "build", "-quick", "-o", dir).CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	host := httptest.NewServer(http.StripPrefix("/some/folder", http.FileServer(http.Dir(dir))))
	t.Cleanup(host.Close)
	p := &page{t: t, url: host.URL + "/some/folder/"}
	p.launch(browser, desktop, nil)
	p.load(p.url)
	p.until(`navigator.serviceWorker.controller !== null`)
	p.load(p.url)
	if !ask[bool](p, `document.getElementById('update').hidden`) {
		t.Error("a new version is offered where there is none")
	}
	p.click("#advice-ask")
	p.untilAdvised()
	p.untilClerkKept()

	file := filepath.Join(dir, "sw.js")
	worker, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(file, bytes.Replace(worker, []byte(`VERSION = "leafwright-`), []byte(`VERSION = "leafwright-next-`), 1), 0o644); err != nil {
		t.Fatal(err)
	}
	os.Remove(file + ".gz")
	p.load(p.url)
	p.unfold("section-leaf")
	p.write(field("leaf.width"), "751")
	p.until(`!document.getElementById('update').hidden`)
	ask[bool](p, `(window.before = true)`)
	p.click("#update-now")
	p.until(`!window.before && document.documentElement.dataset.ready === 'yes' && stage.contentWindow.paints > 0`)
	if got := evaluate[[]string](p, `caches.keys()`); len(got) != 1 || !strings.HasPrefix(got[0], "leafwright-next-") {
		t.Errorf("stores %v, want the new version's alone", got)
	}
	p.untilClerkKept() // as it was under the old one
	if got := p.value(field("leaf.width")); got != "751" {
		t.Errorf("under the new version the width is %q", got)
	}
}
