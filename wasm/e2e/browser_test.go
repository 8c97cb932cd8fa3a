//go:build !js

package e2e

import (
	"bufio"
	"context"
	"encoding/json"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/log"
	cdppage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
)

var (
	shots   = flag.String("shots", "", "write pictures of the page into this `folder`")
	measure = flag.Bool("measure", false, "measure start and frame times and print them")
)

// skip skips a test, or fails it where nothing may be skipped.
func skip(t *testing.T, why string) {
	t.Helper()
	if os.Getenv("CI") != "" {
		t.Fatal(why + ", and nothing may be skipped with CI set")
	}
	t.Skip(why)
}

// findBrowser gives the browser's program.
func findBrowser(t *testing.T) string {
	t.Helper()
	if testing.Short() {
		t.Skip("a browser takes its time")
	}
	if exe := os.Getenv("BROWSER_EXE"); exe != "" {
		return exe
	}
	for _, name := range []string{"chromium", "chromium-browser", "google-chrome", "chrome"} {
		if exe, err := exec.LookPath(name); err == nil {
			return exe
		}
	}
	skip(t, "no browser on PATH and none in BROWSER_EXE")
	return ""
}

// command is the built leafwright, made once for all tests.
var command = sync.OnceValues(func() (string, error) {
	exe := filepath.Join(scratch, "leafwright")
	build := exec.Command("go", "build", "-o", exe, "leafwright/cmd/leafwright")
	text, err := build.CombinedOutput()
	if err != nil {
		return "", fmt.Errorf("building the command: %w\n%s", err, text)
	}
	return exe, nil
})

// scratch is a folder for the whole run.
var scratch string

func TestMain(m *testing.M) {
	flag.Parse()
	var err error
	if scratch, err = os.MkdirTemp("", "leafwright-e2e-"); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
	status := m.Run()
	if shared.stop != nil {
		shared.stop()
	}
	os.RemoveAll(scratch)
	os.Exit(status)
}

// server is a running leafwright serve.
type server struct {
	url  string
	stop func()
}

var addressLine = regexp.MustCompile(`The page is at (http://\S+/)`)

// start runs leafwright serve and waits for the address it prints.
func start() (server, error) {
	exe, err := command()
	if err != nil {
		return server{}, err
	}
	c := exec.Command(exe, "serve", "-addr", "127.0.0.1:0")
	c.Stderr = os.Stderr
	out, err := c.StdoutPipe()
	if err != nil {
		return server{}, err
	}
	if err := c.Start(); err != nil {
		return server{}, err
	}
	stop := sync.OnceFunc(func() {
		c.Process.Signal(os.Interrupt)
		c.Wait()
	})
	lines := bufio.NewScanner(out)
	for lines.Scan() {
		if m := addressLine.FindStringSubmatch(lines.Text()); m != nil {
			return server{m[1], stop}, nil
		}
	}
	stop()
	return server{}, fmt.Errorf("leafwright serve ended without an address")
}

var shared struct {
	sync.Mutex
	server
}

// serve gives the server all tests share.
func serve(t *testing.T) string {
	t.Helper()
	shared.Lock()
	defer shared.Unlock()
	if shared.stop == nil {
		s, err := start()
		if err != nil {
			t.Fatal(err)
		}
		shared.server = s
	}
	return shared.url
}

// screen is the device a page is opened on.
type screen struct {
	w, h  int64
	ratio float64
	touch bool
	dark  bool
}

var (
	// Devices have two or three pixels to one of these; drawn by the processor alone they
	// would take most of the tests' time. TestSharpAtEveryRatio and the pictures have them.
	phone   = screen{w: 360, h: 740, ratio: 1, touch: true}
	tablet  = screen{w: 820, h: 1180, ratio: 1, touch: true}
	desktop = screen{w: 1440, h: 900, ratio: 1}
)

// page is one open tab. What the browser complains of fails the test.
type page struct {
	t        *testing.T
	ctx      context.Context
	url      string
	mu       sync.Mutex
	bad      []string
	expected []string // complaints that belong to the test
}

// open opens the served page on a screen, in a browser of its own, and waits
// until it is ready.
func open(t *testing.T, s screen, flags ...chromedp.ExecAllocatorOption) *page {
	t.Helper()
	exe := findBrowser(t)
	p := &page{t: t, url: serve(t)}
	p.launch(exe, s, flags)
	p.load(p.url)
	return p
}

// alone opens the page like open, but served by a server of its own, which may be stopped.
func alone(t *testing.T, s screen) (*page, server) {
	t.Helper()
	exe := findBrowser(t)
	own, err := start()
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(own.stop)
	p := &page{t: t, url: own.url}
	p.launch(exe, s, nil)
	p.load(own.url)
	return p, own
}

func (p *page) launch(exe string, s screen, flags []chromedp.ExecAllocatorOption) {
	t := p.t
	t.Helper()
	options := append(chromedp.DefaultExecAllocatorOptions[:len(chromedp.DefaultExecAllocatorOptions):len(chromedp.DefaultExecAllocatorOptions)],
		chromedp.ExecPath(exe), chromedp.Flag("use-gl", "angle"), chromedp.Flag("use-angle", "swiftshader"),
		chromedp.Flag("enable-unsafe-swiftshader", true), chromedp.Flag("disable-quic", true), chromedp.Flag("disable-component-update", true))
	ctx, stop := chromedp.NewExecAllocator(context.Background(), append(options, flags...)...)
	t.Cleanup(stop)
	ctx, cancel := chromedp.NewContext(ctx)
	t.Cleanup(cancel)
	ctx, late := context.WithTimeout(ctx, 3*time.Minute)
	t.Cleanup(late)
	p.ctx = ctx
	p.watch()
	size := []chromedp.EmulateViewportOption{chromedp.EmulateScale(s.ratio)}
	if s.touch {
		size = append(size, chromedp.EmulateTouch, chromedp.EmulateMobile)
	}
	p.do(chromedp.EmulateViewport(s.w, s.h, size...))
	p.dark(s.dark)
}

// tab opens a second tab on the page's address in the same browser, and waits until it
// is ready.
func (p *page) tab() *page {
	p.t.Helper()
	ctx, cancel := chromedp.NewContext(p.ctx)
	p.t.Cleanup(cancel)
	other := &page{t: p.t, url: p.url, ctx: ctx}
	other.watch()
	other.do(chromedp.EmulateViewport(desktop.w, desktop.h))
	other.load(other.url)
	return other
}

// front brings the tab before the others, where it gets what is typed.
func (p *page) front() {
	p.t.Helper()
	if _, err := chromedp.Call(p.ctx, cdppage.BringToFront, cdp.Empty{}); err != nil {
		p.t.Fatal(err)
	}
}

// watch makes what the browser complains of fail the test.
func (p *page) watch() {
	t, ctx := p.t, p.ctx
	t.Helper()
	err := chromedp.Listen(ctx, func(ev any) {
		p.mu.Lock()
		defer p.mu.Unlock()
		switch e := ev.(type) {
		case *runtime.EventExceptionThrown:
			p.bad = append(p.bad, "exception: "+e.ExceptionDetails.Text)
		case *runtime.EventConsoleAPICalled:
			if e.Type == runtime.ConsoleAPICalledTypeError || e.Type == runtime.ConsoleAPICalledTypeWarning {
				for _, a := range e.Args {
					p.bad = append(p.bad, fmt.Sprintf("console %s: %s", e.Type, a.Value))
				}
			}
		case *log.EventEntryAdded:
			if e.Entry.Level == log.EntryLevelError || e.Entry.Level == log.EntryLevelWarning {
				p.bad = append(p.bad, fmt.Sprintf("%s: %s %s", e.Entry.Level, e.Entry.Text, e.Entry.URL))
			}
		}
	})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		p.mu.Lock()
		defer p.mu.Unlock()
		for _, s := range p.bad {
			if !harmless(s) && !slices.ContainsFunc(p.expected, func(part string) bool { return strings.Contains(s, part) }) {
				t.Error("the browser complains: " + s)
			}
		}
	})
}

// deaf passes over complaints that a test brings about.
func (p *page) deaf(parts ...string) {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.expected = append(p.expected, parts...)
}

// harmless are remarks about the machine's drawing in software, which no page can help.
func harmless(s string) bool {
	return strings.Contains(s, "GPU stall due to ReadPixels") || strings.Contains(s, "GL Driver Message")
}

// dark sets the device to dark or light.
func (p *page) dark(on bool) {
	p.t.Helper()
	theme := "light"
	if on {
		theme = "dark"
	}
	_, err := chromedp.Call(p.ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{
		Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: theme}},
	})
	if err != nil {
		p.t.Fatal(err)
	}
}

// load goes to an address and waits until the page is ready and drawn.
func (p *page) load(url string) {
	p.t.Helper()
	p.do(chromedp.Navigate(url))
	p.ready()
}

func (p *page) ready() {
	p.t.Helper()
	p.until(`document.documentElement.dataset.ready === 'yes' && stage.contentWindow.paints > 0`)
}

func (p *page) do(actions ...chromedp.Action[chromedp.Void]) {
	p.t.Helper()
	if err := chromedp.Do(p.ctx, actions...); err != nil {
		p.t.Fatal(err)
	}
}

// stageVar names the frame for the expressions below.
const stageVar = `const stage = document.getElementById('stage');`

// ask evaluates an expression in the page.
func ask[T any](p *page, expression string) T {
	p.t.Helper()
	v, err := chromedp.Run(p.ctx, chromedp.Evaluate[T](`(() => {`+stageVar+` return (`+expression+`); })()`))
	if err != nil {
		p.t.Fatalf("%s: %v", expression, err)
	}
	return v
}

// until waits for an expression to come true.
func (p *page) until(expression string) {
	p.t.Helper()
	ctx, cancel := context.WithTimeout(p.ctx, 60*time.Second)
	defer cancel()
	for {
		_, err := chromedp.Run(ctx, chromedp.Poll[bool](`(() => {`+stageVar+` return !!(`+expression+`); })()`,
			chromedp.WithPollingInterval(30*time.Millisecond), chromedp.WithPollingTimeout(60*time.Second)))
		if err == nil {
			return
		}
		gone := strings.Contains(err.Error(), "navigated") || strings.Contains(err.Error(), "context with specified id")
		if ctx.Err() != nil || !gone { // a page that reloads meanwhile is asked again
			p.t.Fatalf("waiting for %s: %v", expression, err)
		}
	}
}

// shot writes a picture of the page, where pictures are asked for.
func (p *page) shot(name string) {
	p.t.Helper()
	if *shots == "" {
		return
	}
	png, err := chromedp.Run(p.ctx, chromedp.CaptureScreenshot())
	if err != nil {
		p.t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(*shots, name+".png"), png, 0o644); err != nil {
		p.t.Fatal(err)
	}
}

func readJSON(t *testing.T, file string) map[string]any {
	t.Helper()
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	var v map[string]any
	if err := json.Unmarshal(data, &v); err != nil {
		t.Fatal(err)
	}
	return v
}
