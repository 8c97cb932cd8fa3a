//go:build !js

package e2e

import (
	"fmt"
	"strings"
	"testing"
)

// untilAdvised waits until what stands there as advice is an answer to the last question.
func (p *page) untilAdvised() {
	p.t.Helper()
	p.until(`document.getElementById('advice').ariaBusy === 'false' && document.getElementById('advice-state').textContent !== ''`)
}

// untilClerkKept waits until the browser keeps the second program for use without a signal.
func (p *page) untilClerkKept() {
	p.t.Helper()
	ask[bool](p, `((async () => {
		for (window.clerkKept = false; !window.clerkKept;) {
			for (const n of await caches.keys()) {
				if ((await (await caches.open(n)).keys()).filter(r => r.url.includes('/clerk.')).length === 2) window.clerkKept = true;
			}
		}
	})(), true)`)
	p.until(`window.clerkKept`)
}

// advice is everything that stands there as advice.
func (p *page) advice() string {
	p.t.Helper()
	return p.text("#advice-state") + "\n" + p.text("#advice")
}

// busiest is the longest the page's own thread was held up since it was asked last, ms.
const busiest = `(() => {
	const all = window.heldUp || [];
	window.heldUp = [];
	if (!window.watching) {
		window.watching = true;
		new PerformanceObserver(l => { for (const e of l.getEntries()) window.heldUp.push(e.duration); }).observe({ type: 'longtask' });
	}
	return Math.max(0, ...all);
})()`

// answering asks once more and tells how long the answer took, ms.
const answering = `new Promise(done => {
	const start = performance.now();
	new MutationObserver((_, o) => {
		if (document.getElementById('advice').ariaBusy === 'true') return;
		o.disconnect();
		done(performance.now() - start);
	}).observe(document.getElementById('advice'), { attributes: true });
	document.getElementById('wish-strip').click();
})`

// putting is the most the first program takes to write down what is asked about, of 20 times, ms.
const putting = `Math.max(...Array.from({ length: 20 }, () => {
	const start = performance.now();
	clerk.job();
	return performance.now() - start;
}))`

// One tap on advice makes an option of ordinary moves, which one undo takes away again;
// advice follows what is typed.
func TestAdvice(t *testing.T) {
	t.Parallel()
	for _, c := range screens {
		t.Run(c.name, func(t *testing.T) {
			p := open(t, c.screen)
			if n := ask[int](p, `performance.getEntriesByType('resource').filter(e => e.name.includes('/clerk.')).length`); n != 0 {
				t.Errorf("%d files of the second program were fetched before advice was asked for", n)
			}
			ask[float64](p, busiest)
			p.unfold("section-leaf")
			height := p.value(field("leaf.height"))
			for _, typed := range []string{"1950", height} {
				p.write(field("leaf.height"), typed)
				p.blur()
			}
			t.Logf("held up for %.0f ms at most while a number was typed without advice", ask[float64](p, busiest))
			p.click("#advice-ask")
			p.untilAdvised()
			t.Logf("the page's own thread was held up for %.0f ms at most while the first advice was sought", ask[float64](p, busiest))
			first := p.advice()
			t.Log(first)
			ask[bool](p, `(document.getElementById('advice-box').scrollIntoView({block: 'start'}), true)`)
			p.shot("advice-" + c.name)
			ways := ask[int](p, `document.querySelectorAll('[name=way]').length`)
			p.click("#advice-try-0")
			p.until(fmt.Sprintf(`document.querySelectorAll('[name=way]').length > %d`, ways))
			if !ask[bool](p, `[...document.querySelectorAll('[name=way]')].pop().checked`) {
				t.Error("the option made is not shown")
			}
			moves := p.moves()
			if want := ask[int](p, `document.querySelector('#advice .plan').querySelectorAll('ol > li').length`); len(moves) != want {
				t.Errorf("the option has %d moves, the plan %d", len(moves), want)
			}
			if n := ask[int](p, `document.querySelectorAll('#moves > .refused').length`); n > 0 {
				t.Errorf("%d moves advised cannot be done", n)
			}
			if n := ask[int](p, `document.querySelectorAll('#findings > li:not(.good)').length`); n > 0 {
				t.Errorf("with the plan done %d findings are not good: %s", n, p.text("#findings"))
			}
			title := p.text("#advice .plan h3")
			if got := p.value(`#moves-box input[id$="].name"]`); got != title {
				t.Errorf("the option is called %q, the plan %q", got, title)
			}
			p.shot("advice-tried-" + c.name)
			// What is tried is another question, with the same answer.
			p.until(fmt.Sprintf(`document.getElementById('advice-state').textContent === %q`, strings.SplitN(first, "\n", 2)[0]))
			p.untilAdvised()
			if got := p.advice(); got != first {
				t.Errorf("an option tried changes advice to %q", got)
			}
			p.click("#undo")
			p.until(fmt.Sprintf(`document.querySelectorAll('[name=way]').length === %d`, ways))

			p.write(field("leaf.height"), "1950")
			p.until(fmt.Sprintf(`document.getElementById('advice').textContent !== %q`, p.text("#advice")))
			p.untilAdvised()
			if got := p.advice(); got == first {
				t.Error("another leaf's advice is the same")
			}
			t.Logf("held up for %.0f ms at most while a number was typed", ask[float64](p, busiest))
			p.write(field("leaf.height"), height)
			p.until(fmt.Sprintf(`document.getElementById('advice').textContent === %q`, strings.SplitN(first, "\n", 2)[1]))
			p.untilAdvised()
			if got := p.advice(); got != first {
				t.Errorf("for the same leaf again it is %q, want %q", got, first)
			}

			if n := ask[int](p, `document.querySelectorAll('#advice .trade circle').length`); n < 2 {
				t.Errorf("timber against evenness is drawn with %d points", n)
			}
			p.choose("prefer", "Most even gaps")
			p.untilAdvised()
			if got := p.advice(); got == first {
				t.Error("the most even gaps are had as the least timber is")
			}
			t.Logf("a question takes %.0f ms to answer, and %.1f ms of the page's own thread to put", evaluate[float64](p, answering), ask[float64](p, putting))
			p.click("#wish-hinges")
			p.untilAdvised()
			for _, word := range []string{"hinge out ", "hinges out ", "Raise ", "Sink ", "Shift "} {
				if strings.Contains(p.text("#advice"), word) {
					t.Errorf("hinges are to stay, and advice is %q", p.advice())
				}
			}
		})
	}
}

// Every demo has its answer, and every way advised can be tried.
func TestAdviceOnEveryDemo(t *testing.T) {
	t.Parallel()
	p := open(t, desktop)
	p.click("#advice-ask")
	p.untilAdvised()
	p.until(`document.querySelector('#demos button')`)
	demos := ask[[]string](p, `[...document.querySelectorAll('#demos button')].map(b => b.textContent)`)
	said := map[string]bool{}
	for i, name := range demos {
		p.openDemo(name)
		evaluate[float64](p, answering)
		took := evaluate[float64](p, answering) // with its wish as it was
		n := ask[int](p, `document.querySelectorAll('#advice .plan').length`)
		t.Logf("%s: %s (%.0f ms)", name, p.text("#advice-state"), took)
		said[p.text("#advice-state")] = true
		ask[bool](p, `((document.getElementById('advice').lastChild || document.getElementById('advice-box')).scrollIntoView({block: 'end'}), true)`)
		p.shot(fmt.Sprintf("advice-demo-%d", i+1))
		for k := range n {
			p.click(fmt.Sprintf("#advice-try-%d", k))
			p.until(`!document.getElementById('moves-box').hidden && document.querySelectorAll('#moves > li').length > 0`)
			if bad := ask[int](p, `document.querySelectorAll('#moves > .refused').length`); bad > 0 {
				t.Errorf("%s, way %d: %d moves cannot be done", name, k+1, bad)
			}
		}
	}
	if len(said) < 3 {
		t.Errorf("all is answered with %v", said)
	}
}

// Advice keeps nobody out, and holds on the narrowest phone.
func TestAdviceAccessible(t *testing.T) {
	t.Parallel()
	source := axe(t)
	for _, dark := range []bool{false, true} {
		p := open(t, screen{w: 360, h: 740, ratio: 1, touch: true, dark: dark})
		p.click("#advice-ask")
		p.untilAdvised()
		p.inFrame(source)
		ask[bool](p, `(() => {`+source+`; return true; })()`)
		p.violations("advice")
		if small := ask[[]string](p, `[...document.querySelectorAll('#advice-box button, #advice-box label')]
			.filter(e => e.offsetParent && e.getBoundingClientRect().height < 44).map(e => e.textContent)`); len(small) > 0 {
			t.Errorf("lower than 44 px: %q", small)
		}
		if wide := ask[int](p, `document.documentElement.scrollWidth - innerWidth`); wide > 0 {
			t.Errorf("the page is %d px too wide", wide)
		}
	}
}

// Once fetched, the second program is there without a signal; before, its lack is said.
func TestAdviceOffline(t *testing.T) {
	t.Parallel()
	p, own := alone(t, phone)
	p.until(`navigator.serviceWorker.controller !== null`)
	p.click("#advice-ask")
	p.untilAdvised()
	want := p.advice()
	p.untilClerkKept()
	own.stop()
	p.deaf("ERR_CONNECTION_REFUSED", "ERR_FAILED", "Failed to load resource") // the look for a newer version
	p.load(own.url)
	p.click("#advice-ask")
	p.untilAdvised()
	if got := p.advice(); got != want {
		t.Errorf("without the server advice is %q, want %q", got, want)
	}
}

// Without a signal the first time, that is said, and it can be asked again.
func TestAdviceWithoutSignal(t *testing.T) {
	t.Parallel()
	p, own := alone(t, phone)
	own.stop()
	p.deaf("ERR_CONNECTION_REFUSED", "ERR_FAILED", "Failed to load resource", "Failed to load", "when fetching the script")
	p.click("#advice-ask")
	p.until(`document.getElementById('advice-again')`)
	if text := p.text("#advice-state"); !strings.Contains(text, "signal") {
		t.Errorf("it says %q", text)
	}
}

// The page says of each way how the door hangs after it, and how sure that is, as the
// command does.
func TestAdviceSaysHowItHangsThen(t *testing.T) {
	t.Parallel()
	for _, c := range screens {
		t.Run(c.name, func(t *testing.T) {
			p := open(t, c.screen)
			for _, demo := range []string{"Weaver's cottage, stair door", "Harbour house, back hall"} {
				p.openDemo(demo)
				if ask[bool](p, `document.getElementById('wishes').hidden`) {
					p.click("#advice-ask")
				}
				said := strings.Join(strings.Fields(p.run("advise")), " ")
				ways := strings.Count(said, " Then: ") + strings.Count(said, " If the gaps are not read again on the way: ")
				p.until(fmt.Sprintf(`document.getElementById('advice').ariaBusy === 'false' && document.querySelectorAll('#advice .plan').length === %d`, ways))
				for i, then := range ask[[]string](p, `[...document.querySelectorAll('#advice .plan')].map(e => [...e.querySelectorAll('p')].find(l => /^(Then|If the gaps)/.test(l.textContent))?.textContent ?? '')`) {
					if then == "" || !strings.Contains(said, strings.Join(strings.Fields(then), " ")) {
						t.Errorf("%s, way %d: the page says %q, the command %s", demo, i+1, then, said)
					}
				}
				ask[bool](p, `(document.querySelector('#advice .plan').scrollIntoView({block: 'start'}), true)`)
				p.shot("then-" + c.name + "-" + demo[:4])
			}
		})
	}
}
