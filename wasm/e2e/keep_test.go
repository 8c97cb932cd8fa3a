//go:build !js

package e2e

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/browser"
	"github.com/chromedp/cdproto/dom"
	cdppage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
)

// With the server gone, the page opens all the same, and goes on from where it was.
func TestOffline(t *testing.T) {
	t.Parallel()
	p, own := alone(t, desktop)
	p.unfold("section-leaf")
	p.write(field("leaf.thickness"), "44")
	p.blur()
	before := p.look()
	p.until(`navigator.serviceWorker.controller !== null`)
	own.stop()
	p.deaf("ERR_CONNECTION_REFUSED", "ERR_FAILED", "Failed to load resource") // the look for a newer version
	p.load(own.url)
	if after := p.look(); after != before {
		t.Errorf("without the server the page shows %q, want %q", after.findings, before.findings)
	}
	p.click("#jobs-open")
	p.until(`document.querySelectorAll('#demos button').length > 5`)
	p.click("#demos li:last-child button")
	p.until(`!document.getElementById('jobs').open`)
	if after := p.look(); after == before {
		t.Error("another job opened without the server shows the same")
	}
}

// The browser may refuse to keep anything: that is said, and the file offered.
func TestStorageThatFails(t *testing.T) {
	t.Parallel()
	p := open(t, phone)
	ask[bool](p, `(stage.contentWindow.Storage.prototype.setItem = () => { throw new DOMException('full', 'QuotaExceededError'); }, true)`)
	p.unfold("section-leaf")
	p.write(field("leaf.width"), "755")
	p.until(`!document.getElementById('storage').hidden && document.documentElement.dataset.saved === 'no'`)
	if text := p.text("#storage-text"); !strings.Contains(text, "file") {
		t.Errorf("the notice is %q", text)
	}
	if _, ok := p.saved("#storage button")["leaf"]; !ok {
		t.Error("the file offered holds no leaf")
	}
}

// The same job open in two windows: each is told of the other, neither of itself.
func TestTwoWindows(t *testing.T) {
	t.Parallel()
	p := open(t, desktop)
	other := p.tab()
	other.unfold("section-leaf")
	other.write(field("leaf.width"), "740")
	p.until(`!document.getElementById('storage').hidden`)
	if !ask[bool](other, `document.getElementById('storage').hidden`) {
		t.Error("a window is told of its own change")
	}
}

// A record cut short is passed over for the one before it, and that is said.
func TestBrokenRecordFallsBack(t *testing.T) {
	t.Parallel()
	p := open(t, desktop)
	p.unfold("section-job")
	for _, name := range []string{"Kitchen", "Pantry", "Larder"} {
		p.write(field("name"), name)
		p.blur()
		p.until(`Object.values(localStorage).some(v => v.includes('"` + name + `"'))`)
	}
	ask[bool](p, `(() => {
		const revision = k => +localStorage.getItem(k).match(/^kept ".*?" "(\d+)"/m)[1];
		const key = Object.keys(localStorage).filter(k => k.includes(':now.')).sort((a, b) => revision(b) - revision(a))[0];
		localStorage.setItem(key, localStorage.getItem(key).slice(0, -7));
		return true;
	})()`)
	p.load(p.url)
	before := "Pantry"
	switch got := p.text("#job-title"); { // what is typed fast is written together
	case got == "Pantry":
		before = "Kitchen"
	case got == "" || !strings.HasPrefix("Larder", got):
		t.Errorf("after a broken record the job is %q, want one typed just before", got)
	}
	p.click("#undo")
	p.until(`document.getElementById('job-title').textContent === '` + before + `'`)
}

// The graphics may be taken away at any time: the drawing comes back by itself.
func TestLostGraphics(t *testing.T) {
	t.Parallel()
	p := open(t, desktop)
	p.unfold("section-leaf")
	p.choose("show", "Front")
	p.write(field("leaf.width"), "750")
	before := p.look()
	ask[bool](p, `(stage.contentWindow.before = true,
		stage.contentDocument.querySelector('canvas').getContext('webgl2').getExtension('WEBGL_lose_context').loseContext(), true)`)
	p.deaf("CONTEXT_LOST_WEBGL")
	p.until(`!stage.contentWindow.before && stage.contentWindow.paints > 0`)
	if after := p.look(); after != before {
		t.Errorf("after the graphics were lost %q, want %q", after.findings, before.findings)
	}
	if got := ask[string](p, `document.activeElement.value`); got != "750" {
		t.Errorf("the cursor is in a field that holds %q", got)
	}
	paints := p.paints()
	p.write(field("leaf.width"), "740")
	p.until(fmt.Sprintf(`stage.contentWindow.paints > %d`, paints))
}

// Without WebGL a still picture stands in, and everything else goes on.
func TestWithoutGraphics(t *testing.T) {
	t.Parallel()
	p := &page{t: t, url: serve(t)}
	p.launch(findBrowser(t), desktop, []chromedp.ExecAllocatorOption{chromedp.Flag("disable-3d-apis", true)})
	p.do(chromedp.Navigate(p.url))
	p.until(`document.documentElement.dataset.ready === 'yes' && document.querySelector('#still svg')`)
	p.shot("still")
	before := ask[string](p, `document.getElementById('still').innerHTML`)
	findings := p.text("#findings")
	p.unfold("section-leaf")
	p.write(field("leaf.height"), "1950")
	p.until(fmt.Sprintf(`document.getElementById('still').innerHTML !== %q`, before))
	if p.text("#findings") == findings {
		t.Error("the findings did not change with the picture")
	}
}

// A browser whose graphics hold no picture as large as the frame, or that says so of all,
// not to be known by them, is served like one without graphics.
func TestSmallGraphics(t *testing.T) {
	t.Parallel()
	p := &page{t: t, url: serve(t)}
	p.launch(findBrowser(t), screen{w: 1440, h: 900, ratio: 2}, nil)
	_, err := chromedp.Call(p.ctx, cdppage.AddScriptToEvaluateOnNewDocument, cdppage.AddScriptToEvaluateOnNewDocumentParams{
		Source: `(gl => {
			const get = gl.getParameter;
			gl.getParameter = function (what) { return what === this.MAX_TEXTURE_SIZE ? 2048 : get.call(this, what); };
		})(WebGL2RenderingContext.prototype)`,
	})
	if err != nil {
		t.Fatal(err)
	}
	p.do(chromedp.Navigate(p.url))
	p.until(`document.documentElement.dataset.ready === 'yes' && document.querySelector('#still svg')`)
	if ask[bool](p, `'failed' in document.documentElement.dataset`) {
		t.Errorf("the page says %q", p.text("#status"))
	}
}

func TestEveryDemoOpens(t *testing.T) {
	t.Parallel()
	p := open(t, desktop)
	p.until(`document.querySelector('#demos button')`)
	n := ask[int](p, `document.querySelectorAll('#demos button').length`)
	if n < 7 {
		t.Fatalf("%d doors to try, want seven at least", n)
	}
	shown := map[string]string{}
	for i := range n {
		p.click("#jobs-open")
		p.until(`document.getElementById('jobs').open`)
		button := fmt.Sprintf("#demos li:nth-child(%d) button", i+1)
		name := p.text(button)
		p.click(button)
		p.until(fmt.Sprintf(`!document.getElementById('jobs').open && document.getElementById('job-title').textContent === %q`, name))
		l := p.look().findings
		if other, twice := shown[l]; twice {
			t.Errorf("%s shows what %s shows", name, other)
		}
		shown[l] = name
		p.until(fmt.Sprintf(`stage.contentWindow.paints > %d`, i))
		p.shot("demo-" + fmt.Sprint(i+1))
	}
}

// A job goes out as a file and comes back from one; a bad file changes nothing.
func TestFiles(t *testing.T) {
	t.Parallel()
	p := open(t, phone)
	p.unfold("section-job")
	p.write(field("name"), "Scullery: hot/cold?")
	p.blur()
	before := p.look()
	job := p.saved("#save")
	if job["name"] != "Scullery: hot/cold?" {
		t.Errorf("the file's name is %q", job["name"])
	}
	file := filepath.Join(p.downloads(), "Scullery-hotcold.json")
	if _, err := os.Stat(file); err != nil {
		t.Fatal(err)
	}
	p.click("#jobs-open")
	p.click("#jobs-own")
	p.until(`document.getElementById('job-title').textContent === 'My door'`)
	p.give(file)
	p.until(`document.getElementById('job-title').textContent === 'Scullery: hot/cold?'`)
	if after := p.look(); after.findings != before.findings {
		t.Errorf("the file opened shows %q, want %q", after.findings, before.findings)
	}
	bad := filepath.Join(t.TempDir(), "bad.json")
	if err := os.WriteFile(bad, []byte(`{"leaf": {"width": 8130, "colour": "green"}}`), 0o644); err != nil {
		t.Fatal(err)
	}
	p.click("#jobs-open")
	p.give(bad)
	p.until(`!document.getElementById('open-fault').hidden`)
	if text := p.text("#open-fault"); !strings.Contains(text, "leaf.width") || !strings.Contains(text, "colour") {
		t.Errorf("the fault is %q, want both named", text)
	}
	if after := p.look(); after.findings != before.findings {
		t.Error("a bad file changed the job")
	}
}

// The printed sheet carries the drawing as lines, not as the screen's pixels.
func TestPrint(t *testing.T) {
	t.Parallel()
	p := open(t, desktop)
	ask[bool](p, `(window.addEventListener('afterprint', () => { window.printed = true; }), true)`)
	pdf, err := chromedp.Run(p.ctx, chromedp.PrintToPDF(chromedp.PDFPreferCSSPageSize()))
	if err != nil {
		t.Fatal(err)
	}
	if *shots != "" {
		os.WriteFile(filepath.Join(*shots, "print.pdf"), pdf, 0o644)
	}
	if len(pdf) < 20000 || strings.Contains(string(pdf), "/Subtype /Image") && !strings.Contains(string(pdf), "/Font") {
		t.Errorf("a PDF of %d bytes without the drawing", len(pdf))
	}
	ask[bool](p, `(dispatchEvent(new Event('beforeprint')), true)`)
	if n := ask[int](p, `document.querySelectorAll('#print svg path').length`); n < 20 {
		t.Errorf("%d paths on the sheet", n)
	}
	ask[bool](p, `(dispatchEvent(new Event('afterprint')), true)`)
}

// downloads is where the page's files go.
func (p *page) downloads() string { return filepath.Join(scratch, p.t.Name()) }

// saved presses a button that hands the job over and gives the file's content.
func (p *page) saved(button string) map[string]any {
	p.t.Helper()
	return readJSON(p.t, p.savedFile(button))
}

// savedFile presses a button that hands a file over and gives the file's name.
func (p *page) savedFile(button string) string {
	p.t.Helper()
	dir := p.downloads()
	if err := os.MkdirAll(dir, 0o755); err != nil {
		p.t.Fatal(err)
	}
	_, err := chromedp.CallBrowser(p.ctx, browser.SetDownloadBehavior, browser.SetDownloadBehaviorParams{
		Behavior: browser.SetDownloadBehaviorBehaviorAllow, DownloadPath: dir, EventsEnabled: new(true),
	})
	if err != nil {
		p.t.Fatal(err)
	}
	done := make(chan string, 1)
	ctx, cancel := context.WithCancel(p.ctx)
	defer cancel()
	name := ""
	err = chromedp.ListenBrowser(ctx, func(ev any) {
		switch e := ev.(type) {
		case *browser.EventDownloadWillBegin:
			name = e.SuggestedFilename
		case *browser.EventDownloadProgress:
			if e.State == browser.DownloadProgressStateCompleted {
				done <- name
			}
		}
	})
	if err != nil {
		p.t.Fatal(err)
	}
	ask[bool](p, fmt.Sprintf(`(document.querySelector(%q).click(), true)`, button))
	select {
	case name := <-done:
		return filepath.Join(dir, name)
	case <-p.ctx.Done():
		p.t.Fatal("no file came")
	}
	return ""
}

// give chooses a file for the page to open.
func (p *page) give(file string) {
	p.t.Helper()
	root, err := chromedp.Call(p.ctx, dom.GetDocument, dom.GetDocumentParams{})
	if err != nil {
		p.t.Fatal(err)
	}
	input, err := chromedp.Call(p.ctx, dom.QuerySelector, dom.QuerySelectorParams{NodeID: root.Root.NodeID, Selector: "#file"})
	if err != nil {
		p.t.Fatal(err)
	}
	_, err = chromedp.Call(p.ctx, dom.SetFileInputFiles, dom.SetFileInputFilesParams{Files: []string{file}, NodeID: input.NodeID})
	if err != nil {
		p.t.Fatal(err)
	}
}
