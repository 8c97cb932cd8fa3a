//go:build !js

package e2e

import (
	"bytes"
	"net/http"
	"net/http/httptest"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/cdp"
	cdppage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
)

// The browser finds nothing that keeps the page off a home screen.
func TestInstallable(t *testing.T) {
	t.Parallel()
	p := open(t, phone)
	p.until(`navigator.serviceWorker.controller !== null`)
	manifest, err := chromedp.Call(p.ctx, cdppage.GetAppManifest, cdppage.GetAppManifestParams{})
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range manifest.Errors {
		t.Errorf("the manifest, line %d: %s", e.Line, e.Message)
	}
	if !strings.Contains(manifest.Data, `"maskable"`) {
		t.Errorf("the manifest is %q", manifest.Data)
	}
	found, err := chromedp.Call(p.ctx, cdppage.GetInstallabilityErrors, cdp.Empty{})
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range found.InstallabilityErrors {
		t.Errorf("it cannot be installed: %s %v", e.ErrorID, e.ErrorArguments)
	}
	// Every icon the manifest names is there and as large as it says.
	if wrong := evaluate[[]string](p, `(async () => {
		const at = document.querySelector('link[rel=manifest]').href, wrong = [];
		for (const { src, sizes } of (await (await fetch(at)).json()).icons) {
			const img = new Image();
			img.src = new URL(src, at).href;
			try { await img.decode(); } catch { wrong.push(src + ' is no picture'); continue; }
			if (sizes !== 'any' && sizes !== img.naturalWidth + 'x' + img.naturalHeight) wrong.push(src + ' is ' + img.naturalWidth);
		}
		return wrong;
	})()`); len(wrong) > 0 {
		t.Errorf("icons: %v", wrong)
	}
}

// A new version is told of and never takes the place of one under which a job is not
// kept, whether it is asked for here or in another window.
func TestNewVersionWaitsForUnsavedJob(t *testing.T) {
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
	host := httptest.NewServer(http.FileServer(http.Dir(dir)))
	t.Cleanup(host.Close)
	p := &page{t: t, url: host.URL + "/"}
	p.launch(browser, desktop, nil)
	p.load(p.url)
	p.until(`navigator.serviceWorker.controller !== null`)
	p.load(p.url)

	file := filepath.Join(dir, "sw.js")
	worker, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(file, bytes.Replace(worker, []byte(`VERSION = "leafwright-`), []byte(`VERSION = "leafwright-next-`), 1), 0o644); err != nil {
		t.Fatal(err)
	}
	ask[bool](p, `(stage.contentWindow.Storage.prototype.setItem = () => { throw new DOMException('full', 'QuotaExceededError'); }, window.before = true)`)
	p.unfold("section-job")
	p.write(field("name"), "Kept nowhere")
	p.blur()
	p.until(`document.documentElement.dataset.saved === 'no'`)
	ask[bool](p, `(navigator.serviceWorker.getRegistration().then(r => r.update()), true)`)
	p.until(`!document.getElementById('update').hidden`)
	p.click("#update-now")
	p.until(`document.getElementById('update-text').textContent.includes('file')`)
	// Another window takes the new version over.
	ask[bool](p, `(navigator.serviceWorker.getRegistration().then(r => r.waiting.postMessage('take over')), true)`)
	p.until(`(navigator.serviceWorker.getRegistration().then(r => { window.none = !r.waiting; }), window.none)`)
	p.settle()
	if got := p.text("#job-title"); got != "Kept nowhere" || !ask[bool](p, `window.before === true`) {
		t.Errorf("the page was loaded anew under the job, which is now %q", got)
	}
}
