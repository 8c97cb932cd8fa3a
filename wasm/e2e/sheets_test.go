//go:build !js

package e2e

import (
	"bytes"
	"fmt"
	"maps"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// onPaper opens what prints and waits until pages are on show.
func (p *page) onPaper() {
	p.t.Helper()
	p.click("#sheets-open")
	p.until(`document.getElementById('sheets').open`)
	p.untilLaid()
}

// untilLaid waits until the pages asked for are on show.
func (p *page) untilLaid() {
	p.t.Helper()
	p.until(`document.getElementById('sheets-pages').ariaBusy === 'false' && document.querySelector('#sheets-pages svg')`)
}

// take chooses one of a few, unless it is chosen, and waits until the pages are laid anew.
func (p *page) take(selector string) {
	p.t.Helper()
	if ask[bool](p, fmt.Sprintf(`document.querySelector(%q).checked`, selector)) {
		return
	}
	ask[bool](p, `(document.getElementById('sheets-pages').replaceChildren(), true)`)
	p.click(selector)
	p.untilLaid()
}

// printed prints the page as the browser's own print does and gives the file.
func (p *page) printed() string {
	p.t.Helper()
	pdf, err := chromedp.Run(p.ctx, chromedp.PrintToPDF(chromedp.PDFPreferCSSPageSize(), chromedp.PDFPrintBackground()))
	if err != nil {
		p.t.Fatal(err)
	}
	file := filepath.Join(p.t.TempDir(), "printed.pdf")
	if err := os.WriteFile(file, pdf, 0o644); err != nil {
		p.t.Fatal(err)
	}
	return file
}

// poppler runs one of poppler's programs and gives what it prints.
func poppler(t *testing.T, name string, args ...string) string {
	t.Helper()
	exe, err := exec.LookPath(name)
	if err != nil {
		skip(t, "no "+name+" on PATH (poppler-utils has it)")
	}
	out, err := exec.Command(exe, args...).Output()
	if err != nil {
		t.Fatalf("%s %s: %v", name, strings.Join(args, " "), err)
	}
	return string(out)
}

// commanded runs the command's sheet of a job file and gives the folder it wrote to.
func commanded(t *testing.T, job, out string, args ...string) string {
	t.Helper()
	exe, err := command()
	if err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(t.TempDir(), out)
	args = append([]string{"sheet", job, "-o", file}, args...)
	if text, err := exec.Command(exe, args...).CombinedOutput(); err != nil {
		t.Fatalf("leafwright %s: %v\n%s", strings.Join(args, " "), err, text)
	}
	return file
}

// lineLength measures, on a rendered page, the check line that ends so far above the
// page's foot, from the middle of its first tick to that of its last, mm.
func lineLength(t *testing.T, pdf string, n int, fromFoot float64) float64 {
	t.Helper()
	const dpi = 600
	root := filepath.Join(t.TempDir(), "page")
	poppler(t, "pdftoppm", "-r", strconv.Itoa(dpi), "-gray", "-singlefile", "-f", strconv.Itoa(n), "-l", strconv.Itoa(n), pdf, root)
	data, err := os.ReadFile(root + ".pgm")
	if err != nil {
		t.Fatal(err)
	}
	var w, h, most int
	if _, err := fmt.Sscanf(string(data[:40]), "P5\n%d %d\n%d", &w, &h, &most); err != nil {
		t.Fatal(err)
	}
	ink := data[len(data)-w*h:]
	px := func(mm float64) int { return int(math.Round(mm / 25.4 * dpi)) }
	longest, thick := 0, 0
	for y := h - px(fromFoot+1); y < h-px(fromFoot-1); y++ {
		run := 0
		for x := range w {
			if ink[y*w+x] < 128 {
				run++
			} else {
				run = 0
			}
			longest = max(longest, run)
		}
	}
	// The ticks are as thick as the line: half of one at each end.
	for y := h - px(fromFoot+1); y < h-px(fromFoot-1); y++ {
		if ink[y*w+px(12+50)] < 128 {
			thick++
		}
	}
	return float64(longest-thick) * 25.4 / dpi
}

// sortedWords are a text's words in the order of their letters with how often each
// stands there, so that two settings of the text can be compared.
func sortedWords(text string) string {
	all := strings.Fields(text)
	counts := map[string]int{}
	for _, w := range all {
		counts[w]++
	}
	var b bytes.Buffer
	for _, w := range slices.Sorted(maps.Keys(counts)) {
		fmt.Fprintln(&b, w, counts[w])
	}
	return b.String()
}

// terrace is the job a page that has kept none opens with.
const terrace = "../../testdata/jobs/2-terrace-falling-head.json"

// papers are the sizes of paper in points, as a PDF has them.
var papers = map[string][2]float64{"A4": {595.28, 841.89}, "Letter": {612, 792}}

// samePages holds what the page prints against what the command writes: as many pages,
// as large, with the same words and numbers on each, and the check line as long as it
// says.
func (p *page) samePages(pdf, want, paper string) {
	t := p.t
	t.Helper()
	info, wanted := poppler(t, "pdfinfo", pdf), poppler(t, "pdfinfo", want)
	line := func(info, name string) string {
		for l := range strings.SplitSeq(info, "\n") {
			if v, ok := strings.CutPrefix(l, name+":"); ok {
				return strings.TrimSpace(v)
			}
		}
		return ""
	}
	n, err := strconv.Atoi(line(wanted, "Pages"))
	if err != nil {
		t.Fatal(err)
	}
	if got := line(info, "Pages"); got != strconv.Itoa(n) {
		t.Errorf("%s pages printed, and the command's sheet has %d", got, n)
	}
	var w, h float64
	if _, err := fmt.Sscanf(line(info, "Page size"), "%g x %g", &w, &h); err != nil {
		t.Fatal(err)
	}
	if want := papers[paper]; math.Abs(w-want[0]) > 1 || math.Abs(h-want[1]) > 1 { // the browser rounds to its dots
		t.Errorf("a page printed is %v × %v points, want %v", w, h, want)
	}
	for i := 1; i <= n; i++ {
		page := strconv.Itoa(i)
		got := sortedWords(poppler(t, "pdftotext", "-layout", "-f", page, "-l", page, pdf, "-"))
		if want := sortedWords(poppler(t, "pdftotext", "-layout", "-f", page, "-l", page, want, "-")); got != want {
			t.Errorf("page %d printed says\n%s\nand the command's\n%s", i, got, want)
		}
		// The line's distance from the foot: game/sheet's margin, 12 mm, and 8.5 mm.
		long := lineLength(t, pdf, i, 20.5)
		t.Logf("page %d: the check line is %.3f mm long", i, long)
		if math.Abs(long-100) > 0.2 {
			t.Errorf("page %d: the check line is %.2f mm long, want 100", i, long)
		}
	}
}

// pages are the pages on show as the files they are saved as.
func (p *page) pages() (files []string) {
	p.t.Helper()
	for i := range ask[int](p, `document.querySelectorAll('#sheets-pages figure').length`) {
		files = append(files, p.savedFile("#sheets-svg-"+strconv.Itoa(i)))
	}
	return files
}

// What the page shows is what the command writes, and what it prints has its numbers
// and its size.
func TestSheets(t *testing.T) {
	t.Parallel()
	p := open(t, desktop)
	p.onPaper()
	for _, c := range []struct {
		kind, paper string
		options     []string
	}{
		{"work", "A4", []string{"1"}},
		{"client", "Letter", []string{"1", "2", "3"}},
		{"template", "A4", []string{"3"}},
	} {
		p.take("#sheet-" + c.kind)
		if c.kind != "client" {
			n, _ := strconv.Atoi(c.options[0])
			p.take(fmt.Sprintf("#sheet-option-%d", n-1))
		}
		p.take("#paper-" + strings.ToLower(c.paper))
		p.shot("sheets-" + c.kind)
		args := []string{"-kind", c.kind, "-paper", c.paper}
		for _, o := range c.options {
			args = append(args, "-option", o)
		}
		svg := commanded(t, terrace, "x.svg", args...)
		for i, file := range p.pages() {
			want := svg
			if i > 0 {
				want = strings.TrimSuffix(svg, ".svg") + fmt.Sprintf("-%d.svg", i+1)
			}
			if !bytes.Equal(contents(t, file), contents(t, want)) {
				t.Errorf("%s: page %d is not the command's", c.kind, i+1)
			}
		}
		pdf := p.printed()
		if *shots != "" {
			os.WriteFile(filepath.Join(*shots, "printed-"+c.kind+".pdf"), contents(t, pdf), 0o644)
		}
		p.samePages(pdf, commanded(t, terrace, "x.pdf", args...), c.paper)
	}
	if title := ask[string](p, `document.title`); !strings.HasPrefix(title, "Terrace") {
		t.Errorf("after printing the page is called %q", title)
	}
	for _, ext := range []string{"csv", "dxf"} {
		got := contents(t, p.savedFile("#sheets-"+ext))
		if want := contents(t, commanded(t, terrace, "x."+ext, "-option", "3")); !bytes.Equal(got, want) {
			t.Errorf("the page's %s of %d bytes is not the command's of %d", ext, len(got), len(want))
		}
	}
	p.click("#sheets-close")
	p.until(`!document.getElementById('sheets').open`)
	if text := poppler(t, "pdftotext", p.printed(), "-"); strings.Contains(text, "Check the print") || !strings.Contains(text, "What the fit shows") {
		t.Errorf("with the sheets closed the page prints\n%s", text)
	}
}

func contents(t *testing.T, file string) []byte {
	t.Helper()
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// Without a signal a link is opened, made one's own and printed, with the numbers of
// the command's sheet.
func TestOfflineLinkToPaper(t *testing.T) {
	t.Parallel()
	p, own := alone(t, phone)
	p.until(`navigator.serviceWorker.controller !== null`)
	p.unfold("section-job")
	p.write(field("name"), "Mine")
	p.untilClerkKept() // a while after work has begun
	own.stop()
	p.deaf("ERR_CONNECTION_REFUSED", "ERR_FAILED", "Failed to load resource") // the look for a newer version
	job := filepath.Join("..", "..", "testdata", "jobs", "6-coach-house-rising-floor.json")
	p.do(chromedp.Navigate("about:blank"))
	p.load(own.url + fragment(t, "UK mm -2\n"+string(contents(t, job))))
	p.until(`document.documentElement.dataset.guest`)
	p.restarts(func() { p.click("#guest-own") })
	p.until(`!document.documentElement.dataset.guest`)
	p.onPaper()
	if *shots != "" {
		p.shot("sheets-phone")
	}
	if wide := ask[int](p, `document.documentElement.scrollWidth - innerWidth`); wide > 0 {
		t.Errorf("the page is %d px too wide", wide)
	}
	p.samePages(p.printed(), commanded(t, job, "x.pdf", "-kind", "work", "-option", "1"), "A4")
}

// What is asked for and cannot be laid out says why.
func TestNoSheet(t *testing.T) {
	t.Parallel()
	p := &page{t: t, url: serve(t)}
	p.launch(findBrowser(t), desktop, nil)
	rated := strings.Replace(string(contents(t, terrace)), `"make": "framed",`, `"make": "framed", "rated": true,`, 1)
	p.load(p.url + fragment(t, "UK mm 0\n"+rated))
	p.click("#sheets-open")
	p.until(`document.getElementById('sheets-state').textContent.includes('rated')`)
	if ask[bool](p, `!document.getElementById('sheets-print').disabled || !document.getElementById('sheets-csv').disabled`) {
		t.Error("it can be printed or saved all the same")
	}
	bare := string(contents(t, terrace))
	bare = bare[:strings.Index(bare, `"options"`)] + `"options": []}`
	p.click("#sheets-close")
	p.follow(p.url + fragment(t, "UK mm -2\n"+bare))
	p.onPaper()
	if !ask[bool](p, `document.getElementById('sheet-client').checked && document.getElementById('sheets-options').hidden`) {
		t.Error("with no way tried, the client's sheet is not offered")
	}
	p.click("#sheet-work")
	p.until(`document.getElementById('sheets-state').textContent.includes('No way')`)
}

// The sheets' dialog keeps nobody out and fits the narrowest phone.
func TestSheetsAccessible(t *testing.T) {
	t.Parallel()
	source := axe(t)
	for _, dark := range []bool{false, true} {
		p := open(t, screen{w: 360, h: 740, ratio: 1, touch: true, dark: dark})
		p.onPaper()
		p.shot(fmt.Sprint("sheets-dark-", dark))
		p.inFrame(source)
		ask[bool](p, `(() => {`+source+`; return true; })()`)
		p.violations("sheets")
		if small := ask[[]string](p, `[...document.querySelectorAll('#sheets button, #sheets label')]
			.filter(e => e.offsetParent && e.getBoundingClientRect().height < 44).map(e => e.id || e.textContent)`); len(small) > 0 {
			t.Errorf("lower than 44 px: %q", small)
		}
		if wide := ask[int](p, `document.getElementById('sheets').scrollWidth - document.getElementById('sheets').clientWidth`); wide > 0 {
			t.Errorf("the dialog is %d px too wide", wide)
		}
	}
}
