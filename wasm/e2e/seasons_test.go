//go:build !js

package e2e

import (
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// untilTold waits until what stands in a section is an answer to its last question.
func (p *page) untilTold(want string) {
	p.t.Helper()
	p.until(fmt.Sprintf(`document.getElementById('%s-told').ariaBusy === 'false'`, want))
}

// run runs the command on the job that stands on the page.
func (p *page) run(name string, more ...string) string {
	p.t.Helper()
	exe, err := command()
	if err != nil {
		p.t.Fatal(err)
	}
	file := filepath.Join(p.t.TempDir(), "job.json")
	if err := os.WriteFile(file, []byte(ask[string](p, `clerk.job(true).job`)), 0o644); err != nil {
		p.t.Fatal(err)
	}
	text, err := exec.Command(exe, append([]string{name, file}, more...)...).Output()
	if bad, is := err.(*exec.ExitError); err != nil && (!is || bad.ExitCode() != 1) { // 1: not all is as wanted
		p.t.Fatal(err)
	}
	return string(text)
}

// yearOf is what leafwright season says of the page's job, with nothing said beside it.
type yearOf struct {
	Headline string `json:"headline"`
	Months   []struct {
		Name    string  `json:"month"`
		Least   float64 `json:"gap_least"`
		Most    float64 `json:"gap_most"`
		Verdict string  `json:"verdict"`
	} `json:"months"`
}

func (p *page) year() (y yearOf) {
	p.t.Helper()
	if err := json.Unmarshal([]byte(p.run("season", "-json")), &y); err != nil {
		p.t.Fatal(err)
	}
	return y
}

// drawn is everything written on the drawing, as it would be printed.
func (p *page) drawn() string {
	p.t.Helper()
	return ask[string](p, `(() => {
		dispatchEvent(new Event('beforeprint'));
		const text = [...document.querySelectorAll('#print text')].map(e => e.textContent).join('\n');
		dispatchEvent(new Event('afterprint'));
		return text;
	})()`)
}

// slideTo puts the slider of the year at a month with the keyboard.
func (p *page) slideTo(month int) {
	p.t.Helper()
	ask[bool](p, `(document.getElementById('season-month').focus(), true)`)
	p.do(chromedp.KeyEvent(kb.Home))
	for range month {
		p.do(chromedp.KeyEvent(kb.ArrowRight))
	}
	if got := p.value("#season-month"); got != strconv.Itoa(month) {
		p.t.Fatalf("the slider stands at %s, want %d", got, month)
	}
}

// latch is the finding of the closing gap.
func (p *page) latch() string {
	p.t.Helper()
	return ask[string](p, `[...document.querySelectorAll('#findings li')].map(e => e.textContent).find(t => t.includes('mm latch side'))`)
}

// sliding is what showing another month takes the page's own thread, the painting apart,
// the median of 25 times, ms.
const sliding = `(() => {
	const took = Array.from({ length: 25 }, (_, i) => {
		const start = performance.now();
		stage.contentWindow.putSeason(0.9 + (24 - i) / 24, i % 2 ? 'May' : 'July');
		return performance.now() - start;
	});
	return took.sort((a, b) => a - b)[12];
})()`

// Slid through the year, the drawing, the findings and the sentence above them show the
// closing gap that the command gives for the month; the job is not touched.
func TestSeason(t *testing.T) {
	t.Parallel()
	type on struct {
		name string
		screen
		demo string
	}
	cases := []on{{"painted", screen{w: 1440, h: 900, ratio: 1, dark: true}, "Harbour house, back hall"}}
	for _, s := range screens {
		cases = append(cases, on{s.name, s.screen, ""})
	}
	mm := func(x float64) string { return strings.Replace(strconv.FormatFloat(x, 'f', 1, 64), "-", "−", 1) }
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			p := open(t, c.screen)
			if c.demo != "" {
				p.openDemo(c.demo)
			}
			if n := ask[int](p, `performance.getEntriesByType('resource').filter(e => e.name.includes('/clerk.')).length`); n != 0 {
				t.Errorf("%d files of the second program were fetched before the section was opened", n)
			}
			p.unfold("season")
			p.untilTold("season")
			if c.demo == "" { // Harbour house was read in July, by its meter
				ask[bool](p, `(document.getElementById('s:house.month').value = 'march', document.getElementById('s:house.month').dispatchEvent(new Event('change')), true)`)
				p.until(`document.getElementById('s:meter.march')`)
			}
			p.untilTold("season")
			ask[bool](p, `(document.getElementById('season').scrollIntoView({block: 'start'}), true)`)
			p.shot("season-" + c.name)
			for last, again := p.look(), 0; again < 20; again++ { // the month said is a change of the job, and is drawn
				p.settle()
				if now := p.look(); now == last {
					break
				} else {
					last = now
				}
			}
			const undone = `document.getElementById('undo').disabled`
			nothing := ask[bool](p, undone)
			job, now, drawing := ask[string](p, `clerk.job(true).job`), p.look(), p.drawn()
			year := p.year()
			if got := p.text("#season-state"); got != year.Headline {
				t.Errorf("the year is %q, by the command %q", got, year.Headline)
			}
			for _, m := range []int{6, 0, 3} {
				want := year.Months[m]
				p.slideTo(m)
				p.until(fmt.Sprintf(`document.getElementById('headline').textContent.startsWith('In %s')`, want.Name))
				least, most := mm(want.Least), mm(want.Most)
				gap := least
				if least != most {
					gap += " to " + most
				}
				paint := ""
				if c.demo != "" {
					paint = ", painted"
				}
				if got := p.text("#season-says"); got != fmt.Sprintf("%s%s: %s mm, %s", want.Name, paint, gap, want.Verdict) {
					t.Errorf("beside the slider %q, by the command %+v", got, want)
				}
				worst := least
				if want.Verdict == "slack" {
					worst = most
				}
				if got := p.latch(); !strings.HasPrefix(got, want.Verdict+worst+" ") {
					t.Errorf("%s: the finding is %q, by the command %s, %s", want.Name, got, want.Verdict, worst)
				}
				p.settle()
				text := p.drawn()
				if painted := strings.Contains(text, "The leaf as in "+want.Name+", painted"); painted != (c.demo != "") {
					t.Errorf("%s: that it is painted is said: %v", want.Name, painted)
				}
				if !strings.Contains(text, "The leaf as in "+want.Name) || !strings.Contains("\n"+text+"\n", "\n"+least+"\n") {
					t.Errorf("%s: the drawing says %q", want.Name, text)
				}
			}
			p.slideTo(6)
			p.settle()
			p.shot("season-july-" + c.name)
			t.Logf("another month takes %.1f ms of the page's own thread", ask[float64](p, sliding))
			if got := ask[string](p, `clerk.job(true).job`); got != job {
				t.Error("sliding changed the job")
			}
			if got := ask[bool](p, undone); got != nothing {
				t.Errorf("there is nothing to undo: %v, before sliding %v", got, nothing)
			}
			p.click("#headline-now")
			p.until(`!document.getElementById('headline').textContent.startsWith('In ') && document.getElementById('headline-now').hidden`)
			if id := ask[string](p, `document.activeElement.id`); id != "season-month" {
				t.Errorf("the cursor is at %q", id)
			}
			p.settle()
			if got := p.look(); got != now {
				t.Errorf("as it is now: %q, was %q", got, now)
			}
			if got := p.drawn(); got != drawing {
				t.Errorf("as it is now the drawing says %q, and said %q", got, drawing)
			}
		})
	}
}

// What is said of where the leaf hangs is the job's, and is there again after a reload;
// the month seen is not kept, another option has its own gap, and a section folded up
// shows the leaf as it is now.
func TestSeasonKept(t *testing.T) {
	t.Parallel()
	p := open(t, phone)
	p.unfold("season")
	p.untilTold("season")
	before := p.text("#season-state")
	pick := func(field, value string) {
		t.Helper()
		ask[bool](p, fmt.Sprintf(`(() => {
			const s = document.getElementById(%q);
			s.value = %q;
			s.dispatchEvent(new Event('change'));
			return true;
		})()`, field, value))
	}
	if got, want := before, p.year().Headline; got != want {
		t.Errorf("no month is said, and the year is %q, by the command %q", got, want)
	}
	pick("s:house.month", "september")
	p.untilTold("season")
	pick("s:house.climate", "continental")
	pick("s:house.room", "outside")
	p.click(`[id="s:house.south"]`)
	p.write(`[id="s:meter.september"]`, "12.5")
	p.until(`document.getElementById('f:meter.september').value === '12.5' && document.getElementById('season-why').textContent.includes('by the meter in September')`)
	p.untilTold("season")
	if got := p.text("#season-state"); got == before {
		t.Errorf("elsewhere it is still %q", got)
	}
	if got, want := p.text("#season-state"), p.year().Headline; got != want {
		t.Errorf("the year is %q, by the command %q", got, want)
	}
	p.write(`[id="s:meter.september"]`, "900")
	p.until(`document.getElementById('s:meter.september:fault').textContent !== ''`)
	p.write(`[id="s:meter.september"]`, "12.5")
	p.until(`document.getElementById('s:meter.september:fault').textContent === ''`)
	p.untilTold("season")
	ask[bool](p, `(document.getElementById('season-where').scrollIntoView({block: 'center'}), true)`)
	p.shot("season-where")

	p.slideTo(0)
	p.until(`document.getElementById('headline').textContent.startsWith('In January: ')`)
	way := p.text("#season-says")
	p.click("#headline-now")
	p.until(`document.getElementById('headline-now').hidden`)
	at := ask[[2]float64](p, `(() => {
		const s = document.getElementById('season-month');
		s.scrollIntoView({block: 'center'});
		const r = s.getBoundingClientRect();
		return [r.x + 12, r.y + r.height / 2];
	})()`)
	p.touch(input.DispatchTouchEventTypeTouchStart, &input.TouchPoint{X: at[0], Y: at[1]})
	p.touch(input.DispatchTouchEventTypeTouchEnd)
	p.until(`document.getElementById('headline').textContent.startsWith('In January: ')`)
	if got := p.text("#season-says"); got != way {
		t.Errorf("touched it says %q, by keys %q", got, way)
	}
	p.choose("way", "Tilt it on the hinges")
	p.untilTold("season")
	p.until(fmt.Sprintf(`document.getElementById('season-says').textContent !== %q`, way))
	if h := p.text("#headline"); !strings.HasPrefix(h, "In January: ") {
		t.Errorf("another option is shown as it is now: %q", h)
	}
	p.click("#season > summary")
	p.until(`!document.getElementById('headline').textContent.startsWith('In January: ')`)

	p.unfold("season")
	p.slideTo(0)
	p.until(`document.getElementById('headline').textContent.startsWith('In January: ')`)
	p.load(p.url)
	if h := p.text("#headline"); strings.HasPrefix(h, "In ") {
		t.Errorf("after a reload: %q", h)
	}
	p.unfold("season")
	p.untilTold("season")
	for field, want := range map[string]string{"house.climate": "continental", "house.room": "outside", "house.month": "september"} {
		if got := p.value(`[id="s:` + field + `"]`); got != want {
			t.Errorf("after a reload %s is %q, want %q", field, got, want)
		}
	}
	if !ask[bool](p, `document.getElementById('s:house.south').checked`) {
		t.Error("after a reload it is not in the south")
	}
	p.slideTo(0)
	p.until(`document.getElementById('headline').textContent.startsWith('In January: ')`)
	p.openDemo("Schoolroom, cloakroom door")
	p.untilTold("season")
	p.until(`document.getElementById('headline-now').hidden && document.getElementById('season-month').value === String(new Date().getMonth())`)
	if h := p.text("#headline"); strings.HasPrefix(h, "In ") {
		t.Errorf("another job is shown as %q", h)
	}
}

// lastWay is the button of the last option.
func lastWay(p *page) string {
	p.t.Helper()
	return "#" + ask[string](p, `[...document.querySelectorAll('[name=way]')].pop().id`)
}

// What it hangs on is what the command's report says of the shown option.
func TestLeafSection(t *testing.T) {
	t.Parallel()
	p := open(t, desktop)
	p.unfold("leaf")
	p.untilTold("leaf")
	for _, c := range []struct {
		demo  string
		parts []string
	}{
		{"", nil},
		{"Harbour house, back hall", []string{"Holes, borer and rot", "Gaps to fit to today"}},
	} {
		if c.demo != "" {
			p.openDemo(c.demo)
		}
		was := p.text("#leaf-told")
		p.click(lastWay(p))
		name := ask[string](p, `document.querySelector('[name=way]:checked').parentNode.textContent`)
		p.until(fmt.Sprintf(`document.getElementById('leaf-told').textContent !== %q`, was))
		p.untilTold("leaf")
		report := p.run("check", "-option", name)
		plain := strings.Join(strings.Fields(report), " ")
		lines := ask[[]string](p, `[...document.querySelectorAll('#leaf-told p, #leaf-told li')].map(e => e.textContent)`)
		if len(lines) < 12 {
			t.Errorf("%d lines", len(lines))
		}
		for _, l := range lines {
			if !strings.Contains(plain, strings.Join(strings.Fields(l), " ")) {
				t.Errorf("the command does not say %q", l)
			}
		}
		titles := ask[[]string](p, `[...document.querySelectorAll('#leaf-told h3')].map(e => e.textContent)`)
		for _, title := range titles {
			if !strings.Contains(report, "\n"+strings.ToUpper(title)+"\n") {
				t.Errorf("the command has no %q", title)
			}
		}
		for _, want := range append(c.parts, "Weight, hinges and screws", "Hanging it", "The order of work", "What it takes", "Take care") {
			if !slices.Contains(titles, want) {
				t.Errorf("%q is missing among %q", want, titles)
			}
		}
		ask[bool](p, `(document.querySelector('#leaf-told h3:nth-last-of-type(3)').scrollIntoView({block: 'start'}), true)`)
		p.shot("leaf-desktop" + c.demo)
	}
}

// Without a signal the first time, that is said, and it can be asked again.
func TestSeasonWithoutSignal(t *testing.T) {
	t.Parallel()
	p, own := alone(t, phone)
	own.stop()
	p.deaf("ERR_CONNECTION_REFUSED", "ERR_FAILED", "Failed to load resource", "Failed to load", "when fetching the script")
	for _, want := range []string{"season", "leaf"} {
		p.unfold(want)
		p.until(fmt.Sprintf(`document.querySelector('#%s-state button')`, want))
		if text := p.text("#" + want + "-state"); !strings.Contains(text, "signal") {
			t.Errorf("%s: it says %q", want, text)
		}
		p.click("#" + want + "-state button")
		p.until(fmt.Sprintf(`document.querySelector('#%s-state button')`, want))
	}
}

// The two sections keep nobody out, and hold on the narrowest phone.
func TestSeasonAccessible(t *testing.T) {
	t.Parallel()
	source := axe(t)
	for _, dark := range []bool{false, true} {
		p := open(t, screen{w: 360, h: 740, ratio: 1, touch: true, dark: dark})
		p.unfold("season")
		p.untilTold("season")
		p.unfold("season-more")
		p.unfold("leaf")
		p.untilTold("leaf")
		p.slideTo(6)
		p.until(`!document.getElementById('headline-now').hidden`)
		p.inFrame(source)
		ask[bool](p, `(() => {`+source+`; return true; })()`)
		p.violations("season")
		if small := ask[[]string](p, `[...document.querySelectorAll('#season, #leaf')].flatMap(d => [...d.querySelectorAll('button, summary, select, input:not([type=checkbox]), .check')])
			.filter(e => e.offsetParent && e.getBoundingClientRect().height < 43.5).map(e => e.id || e.textContent)`); len(small) > 0 {
			t.Errorf("lower than 44 px: %q", small)
		}
		if wide := ask[int](p, `document.documentElement.scrollWidth - innerWidth`); wide > 0 {
			t.Errorf("the page is %d px too wide", wide)
		}
		for _, id := range []string{"season", "season-fit", "season-more", "leaf"} {
			ask[bool](p, `(document.getElementById('`+id+`').scrollIntoView({block: 'start'}), true)`)
			p.shot(fmt.Sprintf("year-%s-dark-%v", id, dark))
		}
	}
}
