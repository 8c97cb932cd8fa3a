//go:build !js

package e2e

import (
	"bytes"
	"compress/gzip"
	"fmt"
	"io"
	"maps"
	"net/http"
	"net/http/httptest"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"testing"

	"github.com/andybalholm/brotli"
	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/systeminfo"
	"github.com/chromedp/chromedp"
)

// TestMeasure prints what the page weighs and how fast it is, beside a bare
// Ebitengine program built the same way. It judges nothing.
//
//	go test ./wasm/e2e -run TestMeasure -measure -v
func TestMeasure(t *testing.T) {
	if !*measure {
		t.Skip("measured only when asked to, with -measure")
	}
	exe, err := command()
	if err != nil {
		t.Fatal(err)
	}
	made, bare := t.TempDir(), t.TempDir()
	if text, err := exec.Command(exe, "build", "-quick", "-o", made).CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	buildBare(t, made, bare)
	weigh(t, "page, its program", glob(t, made, "leafwright.h-*.wasm"))
	weigh(t, "bare, its program", filepath.Join(bare, "bare.wasm"))
	var rest []string
	for _, pattern := range []string{"*.html", "*.js", "*.css", "*.svg", "*.webmanifest"} {
		found, _ := filepath.Glob(filepath.Join(made, pattern))
		rest = append(rest, found...)
	}
	weigh(t, "page, all but its program", rest...)

	times := map[string][]float64{}
	for range 5 {
		start := func(name, url, painted string) *page {
			p := &page{t: t, url: url}
			p.launch(findBrowser(t), desktop, nil)
			p.do(chromedp.Navigate(url))
			p.until(painted)
			at := ask[float64](p, `(`+painted+`) - performance.timeOrigin`)
			times[name] = append(times[name], at)
			return p
		}
		host := httptest.NewServer(http.FileServer(http.Dir(bare)))
		p := start("bare, first drawing", host.URL, `window.paintedAt`)
		chromedp.Cancel(p.ctx)
		host.Close()
		p = start("page, first visit, first drawing", serve(t), `stage.contentWindow.paintedAt`)
		times["page, first contentful paint"] = append(times["page, first contentful paint"],
			ask[float64](p, `performance.getEntriesByName('first-contentful-paint')[0].startTime`))
		p.until(`navigator.serviceWorker.controller !== null`)
		p.do(chromedp.Navigate(p.url))
		p.until(`stage.contentWindow.paintedAt`)
		times["page, next visit, first drawing"] = append(times["page, next visit, first drawing"],
			ask[float64](p, `stage.contentWindow.paintedAt - performance.timeOrigin`))
		chromedp.Cancel(p.ctx)
	}
	for _, name := range slices.Sorted(maps.Keys(times)) {
		print(name+", ms", times[name])
	}

	for _, c := range screens {
		p := open(t, c.screen)
		p.choose("show", "Both")
		p.until(`stage.contentDocument.querySelector('canvas').height === stage.clientHeight * devicePixelRatio`)
		took := evaluate[[][]float64](p, dragging)
		print("dragging the swing, "+c.name+", frame to frame, ms", took[0])
		print("dragging the swing, "+c.name+", handling the pointer, ms", took[1])
		print("dragging the swing, "+c.name+", painting, ms", took[2])
		if c.name == "desktop" {
			typed := evaluate[[][]float64](p, typing)
			print("typing a number, its handling, ms", typed[0])
			print("typing a number, to the drawn frame, ms", typed[1])
			p.largest()
			took := evaluate[[][]float64](p, stroking)
			print("a stroke of the plane, largest demo, handling, ms", took[0])
			print("a stroke of the plane, largest demo, to the drawn frame, ms", took[1])
			print("letting go of the plane, all its handling, ms", took[2])
			rests(p)
		}
		chromedp.Cancel(p.ctx)
	}
}

// dragging swings the leaf to and fro for 150 frames and tells the times between
// frames, those spent handling the pointer and those spent painting.
const dragging = `new Promise(done => {
	const frame = document.getElementById('stage').contentWindow, grip = frame.grip();
	const tell = (type, x, y) => frame.dispatchEvent(new frame.CustomEvent('stage:pointer', {detail: {type, x, y, touch: false}}));
	const between = [], within = [], painting = [];
	const native = window.requestAnimationFrame; // the frame's own is held back by its script
	let n = 0, last = 0;
	tell('down', grip[0], grip[1]);
	const step = now => {
		if (last) between.push(now - last);
		last = now;
		const start = performance.now();
		tell('move', grip[0] - 100 * Math.abs(Math.sin(n / 20)), grip[1] + 90 * Math.sin(n / 20));
		const end = performance.now();
		within.push(end - start);
		native.call(frame, () => { painting.push(performance.now() - end); }); // behind the engine's own
		if (++n < 150) return requestAnimationFrame(step);
		tell('up', grip[0], grip[1]);
		done([between, within, painting]);
	};
	requestAnimationFrame(step);
})`

// largest opens the demo with the most readings and takes the plane in hand.
func (p *page) largest() {
	p.t.Helper()
	p.click("#jobs-open")
	p.until(`document.querySelectorAll('#demos button').length > 5`)
	p.click("#demos li:last-child button")
	p.until(`!document.getElementById('jobs').open`)
	p.choose("tool", "Plane")
}

// stroking makes ten strokes of the plane along the closing edge, each of twenty
// pointer events a frame apart, and tells how long each event's handling takes, how
// long it is from the event to the end of the painting of its frame, and how long
// the handling of letting go takes.
const stroking = `new Promise(done => {
	const frame = document.getElementById('stage').contentWindow;
	const tell = (type, x, y) => frame.dispatchEvent(new frame.CustomEvent('stage:pointer', {detail: {type, x, y, touch: false}}));
	const handling = [], drawn = [], letting = [];
	const native = window.requestAnimationFrame;
	let strokes = 0, n = 0, a, b;
	const step = () => {
		if (n === 0) {
			a = frame.spot(1, 300);
			b = frame.spot(1, 1700);
			tell('down', a[0], a[1]);
		}
		const t = ++n / 20, start = performance.now();
		tell('move', a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t);
		handling.push(performance.now() - start);
		native.call(frame, () => { drawn.push(performance.now() - start); }); // behind the engine's own
		if (n === 20) {
			return requestAnimationFrame(() => {
				const start = performance.now();
				tell('up', b[0], b[1]);
				letting.push(performance.now() - start);
				n = 0;
				if (++strokes === 10) return done([handling, drawn, letting]);
				requestAnimationFrame(step);
			});
		}
		requestAnimationFrame(step);
	};
	requestAnimationFrame(step);
})`

// typing changes the leaf's width fifty times, a frame apart, and tells how long each
// change's handling takes and how long it is to the end of the painting of its frame.
// Other fields and the keeping follow after that, in a moment of their own.
const typing = `new Promise(done => {
	const field = document.getElementById('f:leaf.width'), within = [], drawn = [];
	const frame = document.getElementById('stage').contentWindow, native = window.requestAnimationFrame;
	const step = () => {
		if (within.length === 50) return done([within, drawn]);
		field.value = within.length % 2 ? '762' : '761';
		const start = performance.now();
		field.dispatchEvent(new Event('input'));
		within.push(performance.now() - start);
		native.call(frame, () => { drawn.push(performance.now() - start); }); // behind the engine's own
		requestAnimationFrame(step);
	};
	step();
})`

// rests prints the processor time the whole browser takes in ten seconds of rest.
func rests(p *page) {
	p.t.Helper()
	used := func() float64 {
		info, err := chromedp.CallBrowser(p.ctx, systeminfo.GetProcessInfo, cdp.Empty{})
		if err != nil {
			p.t.Fatal(err)
		}
		sum := 0.0
		for _, process := range info.ProcessInfo {
			sum += process.CPUTime
		}
		return sum
	}
	wait := func(ms int) {
		evaluate[bool](p, fmt.Sprintf(`new Promise(done => setTimeout(() => done(true), %d))`, ms))
	}
	wait(3000)
	before := used()
	wait(10000)
	fmt.Printf("%-58s %8.3f s\n", "at rest, whole browser, processor time in 10 s", used()-before)
}

// print prints the median and the nineteen in twenty of some numbers.
func print(name string, all []float64) {
	slices.Sort(all)
	fmt.Printf("%-58s median %8.1f   95 %% below %8.1f   (%d)\n", name, all[len(all)/2], all[(len(all)-1)*95/100], len(all))
}

// weigh prints the size of some files, plain and packed.
func weigh(t *testing.T, name string, files ...string) {
	t.Helper()
	var plain, zip, br int
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		plain += len(data)
		zip += packed(t, data, func(w io.Writer) io.WriteCloser { z, _ := gzip.NewWriterLevel(w, gzip.BestCompression); return z })
		br += packed(t, data, func(w io.Writer) io.WriteCloser {
			return brotli.NewWriterOptions(w, brotli.WriterOptions{Quality: brotli.BestCompression, LGWin: 24})
		})
	}
	fmt.Printf("%-58s %10d plain %10d gzip %10d brotli\n", name+", bytes", plain, zip, br)
}

func packed(t *testing.T, data []byte, writer func(io.Writer) io.WriteCloser) int {
	t.Helper()
	var b bytes.Buffer
	w := writer(&b)
	if _, err := w.Write(data); err != nil {
		t.Fatal(err)
	}
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	return b.Len()
}

func glob(t *testing.T, dir, pattern string) string {
	t.Helper()
	found, err := filepath.Glob(filepath.Join(dir, pattern))
	if err != nil || len(found) != 1 {
		t.Fatalf("%s: %v, %v", pattern, found, err)
	}
	return found[0]
}

// buildBare makes the bare program's page, with the page's own copy of Go's script.
func buildBare(t *testing.T, page, dir string) {
	t.Helper()
	c := exec.Command("go", "build", "-trimpath", "-buildvcs=false", "-ldflags=-s -w", "-o", filepath.Join(dir, "bare.wasm"), "leafwright/wasm/e2e/bare")
	c.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm", "CGO_ENABLED=0")
	if text, err := c.CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	glue, err := os.ReadFile(glob(t, page, "wasm_exec.h-*.js"))
	if err != nil {
		t.Fatal(err)
	}
	for name, text := range map[string]string{
		"wasm_exec.js": string(glue),
		"index.html":   `<!doctype html><title>Bare</title><link rel="icon" href="data:,"><script src="wasm_exec.js"></script><script src="boot.js"></script>`,
		"boot.js":      `const go = new Go(); WebAssembly.instantiateStreaming(fetch('bare.wasm'), go.importObject).then(r => go.run(r.instance));`,
	} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}
