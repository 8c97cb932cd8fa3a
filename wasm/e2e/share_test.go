//go:build !js

package e2e

import (
	"bytes"
	"compress/flate"
	"encoding/base64"
	"encoding/json"
	"fmt"
	"hash/crc32"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// fragment packs a text as a link does, by another program's hand.
func fragment(t *testing.T, text string) string {
	t.Helper()
	var b bytes.Buffer
	w, err := flate.NewWriter(&b, flate.BestCompression)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := w.Write([]byte(text)); err != nil {
		t.Fatal(err)
	}
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	return sealed("1", b.Bytes())
}

func sealed(form string, packed []byte) string {
	return fmt.Sprintf("#job=%s.%s.%08x", form, base64.RawURLEncoding.EncodeToString(packed), crc32.ChecksumIEEE(packed))
}

// demo is the text of one of the demo jobs.
func demo(t *testing.T, name string) string {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("..", "..", "testdata", "jobs", name))
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

const chapel = "4-chapel-frame-in-wind.json"

// link opens the dialog that sends a job and gives the link it made.
func (p *page) link() string {
	p.t.Helper()
	p.click("#send-open")
	p.until(`document.getElementById('send').open`)
	link := p.value("#send-link")
	p.click("#send-close")
	return link
}

// follow opens a link in the tab that is open, as a tap on it does, and waits until the
// drawing's program has started anew.
func (p *page) follow(link string) {
	p.t.Helper()
	p.restarts(func() { ask[bool](p, fmt.Sprintf(`(location.href = %q, true)`, link)) })
}

// restarts waits, after something was done, until the drawing's program has started anew.
func (p *page) restarts(does func()) {
	p.t.Helper()
	ask[bool](p, `stage.contentWindow.before = true`)
	does()
	p.until(`!stage.contentWindow.before && stage.contentWindow.paints > 0 && stage.contentWindow.benchJob`)
	p.until(`document.getElementById('headline').textContent`)
	p.settle()
}

// kept is everything the browser keeps for the page, but for which windows there were.
func (p *page) kept() string {
	p.t.Helper()
	return ask[string](p, `JSON.stringify(Object.entries(localStorage).sort())`)
}

// job is what stands on the bench, taken apart.
func (p *page) job() map[string]any {
	p.t.Helper()
	var job map[string]any
	if err := json.Unmarshal([]byte(ask[string](p, `clerk.job(true).job`)), &job); err != nil {
		p.t.Fatal(err)
	}
	return job
}

// A job sent as a link is shown to whoever opens it, to be swung and looked at and not
// changed; one tap makes it a job of one's own.
func TestLink(t *testing.T) {
	t.Parallel()
	p := open(t, desktop)
	p.unfold("section-job")
	p.write(field("name"), "Scullery “north” <b>&amp;")
	p.blur()
	p.unfold("settings-section")
	p.choose("unit", "feet and inches")
	p.until(`document.querySelector('.ways-choice input:nth-of-type(1)')`)
	ask[bool](p, `(document.querySelectorAll('.ways-choice input')[2].click(), true)`)
	p.settle()
	sent, seen := p.job(), p.look().findings
	link := p.link()
	if !strings.HasPrefix(link, p.url+"#job=1.") || len(link) > 2000 {
		t.Fatalf("the link is %q", link)
	}

	// Somebody else's browser, with a job of their own.
	o := open(t, desktop)
	o.unfold("section-job")
	o.write(field("name"), "My own")
	o.blur()
	o.until(`document.getElementById('job-title').textContent === 'My own'`)
	o.settle()
	mine, kept := o.job(), o.kept()
	o.follow(link)
	o.until(`document.documentElement.dataset.guest === 'yes'`)
	o.shot("guest-desktop")
	if got := o.text("#guest-name"); got != "Scullery “north” <b>&amp;" {
		t.Errorf("the bar names %q", got)
	}
	if got := o.look().findings; got != seen {
		t.Errorf("it shows\n%s\nwhere the sender saw\n%s", got, seen)
	}
	if got := fmt.Sprint(o.job()); got != fmt.Sprint(sent) {
		t.Errorf("the job shown is\n%s\nand was sent as\n%s", got, sent)
	}
	// It can be swung, and its options looked at.
	before := o.look()
	x, y := o.grip()
	o.do(chromedp.MouseEvent("mousePressed", x, y, chromedp.Button("left")), chromedp.MouseEvent("mouseMoved", x-30, y+25, chromedp.Button("left")),
		chromedp.MouseEvent("mouseReleased", x-30, y+25, chromedp.Button("left")))
	o.until(fmt.Sprintf(`stage.contentWindow.digest() !== %q`, before.drawing))
	ask[bool](o, `(document.querySelectorAll('.ways-choice input')[1].click(), true)`)
	o.until(fmt.Sprintf(`document.getElementById('headline').textContent + '\n' + document.getElementById('findings').textContent !== %q`, before.findings))
	// Nothing that changes the job is to be had.
	if can := ask[string](o, `[...document.querySelectorAll('#form input, #form button, #moves-box button, #card button, #undo, #jobs-open, #own, #advice-ask, #way-add, .hands input')]
		.filter(e => e.offsetParent && !e.closest('#drawing-section, #settings-section') && !['season-month', 'season-now'].includes(e.id)).map(e => e.id || e.textContent).join()`); can != "" {
		t.Errorf("there is still %s", can)
	}
	ask[bool](o, `(stage.focus(), stage.contentDocument.querySelector('canvas').focus(), true)`)
	for _, key := range []string{"2", "]", "\r", "5", "]", "\r"} {
		o.do(chromedp.KeyEvent(key))
	}
	o.settle()
	if got := fmt.Sprint(o.job()); got != fmt.Sprint(sent) {
		t.Error("the job shown was changed")
	}
	if got := o.kept(); got != kept {
		t.Errorf("looking at it changed what the browser keeps:\n%s\n%s", got, kept)
	}
	if wide := ask[int](o, `document.documentElement.scrollWidth - innerWidth`); wide > 0 {
		t.Errorf("the page is %d px too wide", wide)
	}

	// Loaded anew it is the same, and one's own are one tap away.
	o.load(link)
	if got := fmt.Sprint(o.job()); got != fmt.Sprint(sent) {
		t.Error("loaded anew it is another job")
	}
	o.restarts(func() { o.click("#guest-leave") })
	if got := fmt.Sprint(o.job()); got != fmt.Sprint(mine) || o.kept() != kept {
		t.Error("one's own job is not as it was")
	}
	if hash := ask[string](o, `location.hash`); hash != "" {
		t.Errorf("the address still ends in %s", hash)
	}

	// One tap makes it one's own.
	o.follow(link)
	o.restarts(func() { o.click("#guest-own") })
	o.until(`!document.documentElement.dataset.guest && !document.getElementById('link').hidden`)
	o.shot("own-desktop")
	o.click("#link-close")
	if got := fmt.Sprint(o.job()); got != fmt.Sprint(sent) {
		t.Error("the job made one's own is another one")
	}
	o.unfold("section-leaf")
	o.write(field("leaf.width"), "751")
	o.blur()
	o.until(`document.documentElement.dataset.saved === 'yes'`)
	o.load(o.url)
	if got := o.text("#job-title"); got != sent["name"] {
		t.Errorf("after a reload the job is %q", got)
	}
	if got := o.value(field("leaf.width")); got != "751" {
		t.Errorf("its width is %q", got)
	}
	o.click("#jobs-open")
	o.until(`document.getElementById('jobs').open`)
	if names := ask[string](o, `[...document.querySelectorAll('#shelf .shelf-name')].map(e => e.textContent).join('; ')`); names != fmt.Sprint(sent["name"])+"; My own" {
		t.Errorf("on the shelf are %s", names)
	}
}

// Whoever opens a link on a device that has never seen the page has nothing kept there.
func TestLinkAtFirst(t *testing.T) {
	t.Parallel()
	p := &page{t: t, url: serve(t)}
	p.launch(findBrowser(t), phone, nil)
	p.load(p.url + fragment(t, "AU mm -2\n"+demo(t, chapel)))
	if got := p.text("#job-title"); !strings.HasPrefix(got, "Chapel") {
		t.Errorf("the page shows %q", got)
	}
	if got := p.kept(); got != "[]" {
		t.Errorf("the browser keeps %s", got)
	}
	if got := p.text("#status"); got != "A copy to look at" {
		t.Errorf("the status is %q", got)
	}
}

// bad are links that hold no job to be shown, and words of what must be said.
func badLinks(t *testing.T) map[string][2]string {
	good := fragment(t, "UK mm -2\n"+demo(t, chapel))
	packed := strings.Split(good, ".")[1]
	var bomb bytes.Buffer
	w, err := flate.NewWriter(&bomb, flate.BestCompression)
	if err != nil {
		t.Fatal(err)
	}
	for range 1 << 10 {
		w.Write(bytes.Repeat([]byte(" "), 1<<20)) // a gigabyte in a megabyte
	}
	w.Close()
	return map[string][2]string{
		"cut short":            {good[:len(good)/2], "cut short"},
		"last letter gone":     {good[:len(good)-1], "cut short"},
		"only the mark":        {"#job=", "damaged"},
		"a letter changed":     {strings.Replace(good, packed[40:44], "AAAA", 1), "check sum"},
		"no base64":            {"#job=1.a.00000000", "damaged"},
		"no letters":           {"#job=1.%00%22.00000000", "damaged"},
		"not deflated":         {sealed("1", []byte("not deflated at all")), "cannot be unpacked"},
		"stops while deflated": {sealed("1", func() []byte { b, _ := base64.RawURLEncoding.DecodeString(packed); return b[:len(b)-9] }()), "cannot be unpacked"},
		"no text":              {fragment(t, "UK mm -2\n\xff\xfe"), "cannot be unpacked"},
		"unpacks to too much":  {sealed("1", bomb.Bytes()), "more than"},
		"of another form":      {sealed("2", []byte("anything")), "form 2"},
		"no heading":           {fragment(t, demo(t, chapel)), "begin"},
		"wrong width":          {fragment(t, "UK mm -2\n"+strings.Replace(demo(t, chapel), `"width": `, `"width": 9`, 1)), "width"},
		"of a later version":   {fragment(t, "UK mm -2\n"+strings.Replace(demo(t, chapel), `"leafwright": 1`, `"leafwright": 7`, 1)), "7"},
		"polluting":            {fragment(t, `UK mm -2`+"\n"+`{"__proto__": {"hidden": true}, "constructor": 1}`), "__proto__"},
	}
}

// A damaged or hostile link does no harm: it says what is wrong, and the page shows
// what it would have shown without it.
func TestBadLinks(t *testing.T) {
	t.Parallel()
	p := open(t, phone)
	p.unfold("section-job")
	p.write(field("name"), "My own")
	p.blur()
	p.settle()
	mine, kept := p.job(), p.kept()
	same := func(name string) {
		t.Helper()
		if got := fmt.Sprint(p.job()); got != fmt.Sprint(mine) {
			t.Errorf("%s: the page shows another job", name)
		}
		if got := p.kept(); got != kept {
			t.Errorf("%s: what is kept changed", name)
		}
		if ask[bool](p, `!!document.documentElement.dataset.guest || document.getElementById('guest').offsetParent !== null`) {
			t.Errorf("%s: the bar of a copy is there", name)
		}
	}
	all := badLinks(t)
	for name, c := range all {
		// A tap on the link while the page is open.
		ask[bool](p, fmt.Sprintf(`(document.getElementById('link').hidden = true, location.hash = %q, true)`, c[0]))
		p.until(`!document.getElementById('link').hidden`)
		p.until(`stage.contentWindow.benchJob && stage.contentWindow.paints > 0`)
		if said := p.text("#link-text"); !strings.Contains(said, c[1]) || !strings.Contains(said, "nothing of yours was changed") {
			t.Errorf("%s: it says %q", name, said)
		}
		same(name)
	}
	p.do(chromedp.Navigate("about:blank"))
	wrong := all["wrong width"]
	p.load(p.url + wrong[0])
	if said := p.text("#link-text"); !strings.Contains(said, wrong[1]) {
		t.Errorf("at first it says %q", said)
	}
	same("at first")
	p.shot("bad-link")
}

// Links torn at random, by a seed, do no harm either: they are refused with a word, or
// where the tearing left a job whole that is shown as a copy.
func TestTornLinks(t *testing.T) {
	t.Parallel()
	p := open(t, desktop)
	p.unfold("section-job")
	p.write(field("name"), "My own")
	p.blur()
	p.settle()
	kept := p.kept()
	random := rand.New(rand.NewPCG(7, 7))
	good := fragment(t, "UK mm -2\n"+demo(t, chapel))
	packed, err := base64.RawURLEncoding.DecodeString(strings.Split(good, ".")[1])
	if err != nil {
		t.Fatal(err)
	}
	var torn []string
	for range 200 { // the sum is no longer that of the letters
		b := []byte(good)
		for range 1 + random.IntN(3) {
			b[5+random.IntN(len(b)-5)] = byte(' ' + 1 + random.IntN(94))
		}
		if cut := random.IntN(3 * len(b)); cut > 5 && cut < len(b) {
			b = b[:cut]
		}
		torn = append(torn, string(b))
	}
	for range 12 { // whoever tore it knows the sum
		b := bytes.Clone(packed)
		b[random.IntN(len(b))] ^= byte(1 << random.IntN(8))
		torn = append(torn, sealed("1", b))
	}
	list, err := json.Marshal(torn)
	if err != nil {
		t.Fatal(err)
	}
	if silent := evaluate[[]string](p, `(async () => {
		const link = document.getElementById('link'), silent = [], rest = () => new Promise(done => setTimeout(done, 10));
		for (const f of `+string(list)+`) {
			link.hidden = true;
			const before = location.href;
			location.hash = f;
			if (location.href === before) continue;
			for (let i = 0; link.hidden && !(document.documentElement.dataset.guest && !document.getElementById('guest-own').disabled); i++) {
				if (i > 2000) { silent.push(f); break; }
				await rest();
			}
		}
		return silent;
	})()`); len(silent) > 0 {
		t.Errorf("nothing is said of %q", silent)
	}
	p.load(p.url + "?")
	if got := p.text("#job-title"); got != "My own" {
		t.Errorf("afterwards the page shows %q", got)
	}
	if got := p.kept(); got != kept {
		t.Error("what is kept changed")
	}
}

// While the job shown is kept nowhere, no link takes its place.
func TestLinkWaitsForUnsavedJob(t *testing.T) {
	t.Parallel()
	p := open(t, desktop)
	ask[bool](p, `(stage.contentWindow.Storage.prototype.setItem = () => { throw new DOMException('full', 'QuotaExceededError'); }, true)`)
	p.unfold("section-job")
	p.write(field("name"), "Unsaved")
	p.blur()
	p.until(`document.documentElement.dataset.saved === 'no'`)
	ask[bool](p, fmt.Sprintf(`(location.hash = %q, true)`, fragment(t, "UK mm -2\n"+demo(t, chapel))))
	p.until(`!document.getElementById('link').hidden`)
	if got := p.text("#job-title"); got != "Unsaved" || ask[bool](p, `!!document.documentElement.dataset.guest`) {
		t.Errorf("the page shows %q", got)
	}
	if said := p.text("#link-text"); !strings.Contains(said, "file") {
		t.Errorf("it says %q", said)
	}
}

// The link is copied, or handed to the device's own way of sending where it has one, and
// so is the file.
func TestSending(t *testing.T) {
	p := open(t, phone)
	p.click("#send-open")
	p.until(`document.getElementById('send').open`)
	if ask[bool](p, `!!(document.getElementById('send-share').offsetParent || document.getElementById('send-file').offsetParent)`) {
		t.Error("what this browser cannot do is offered")
	}
	p.click("#send-copy")
	p.until(`document.getElementById('send-state').textContent.includes('is copied')`)
	p.click("#send-close")
	// A browser that can send.
	ask[bool](p, `(navigator.share = async what => { window.sent = what; }, navigator.canShare = () => true, true)`)
	link := p.link()
	p.click("#send-open")
	p.click("#send-share")
	p.until(`window.sent`)
	if got := ask[string](p, `window.sent.url`); got != link {
		t.Errorf("sent is %q, want %q", got, link)
	}
	p.click("#send-file")
	p.until(`window.sent.files`)
	if got := evaluate[string](p, `window.sent.files[0].text()`); got != ask[string](p, `clerk.job(true).job`) {
		t.Errorf("the file sent is\n%s", got)
	}
	if got := ask[string](p, `window.sent.files[0].name`); got != "Terrace-house,-back-bedroom.json" {
		t.Errorf("it is called %q", got)
	}
	// One that turns it down.
	ask[bool](p, `(navigator.share = async () => { throw new DOMException('not now', 'NotAllowedError'); }, true)`)
	p.click("#send-share")
	p.until(`document.getElementById('send-state').textContent.includes('not now')`)
}

// A job too long for a link in a phone message goes as a file, and that is said.
func TestLinkTooLong(t *testing.T) {
	t.Parallel()
	p := open(t, phone)
	p.unfold("section-job")
	p.write(field("name"), "Long")
	p.blur()
	long := demo(t, chapel)
	var note strings.Builder
	for i := range 700 { // little of it repeats
		fmt.Fprintf(&note, "%x ", crc32.ChecksumIEEE([]byte{byte(i), byte(i >> 8)}))
	}
	long = strings.Replace(long, `"note": "`, `"note": "`+note.String()[:1800], 1)
	p.follow(p.url + fragment(t, "UK mm -2\n"+long))
	p.click("#send-open")
	p.until(`document.getElementById('send').open`)
	p.shot("send-too-long")
	if said := p.text("#send-state"); !strings.Contains(said, "2000") || !strings.Contains(said, "file") {
		t.Errorf("it says %q", said)
	}
	if ask[bool](p, `!!(document.getElementById('send-copy').offsetParent || document.getElementById('send-link').offsetParent)`) {
		t.Error("the link is offered all the same")
	}
	if job := p.saved("#send-save"); !strings.HasPrefix(fmt.Sprint(job["note"]), note.String()[:40]) {
		t.Errorf("the file's note is %v", job["note"])
	}
}

// What sends a job, and the bar over a copy, keep nobody out and fit the narrowest phone.
func TestSharingAccessible(t *testing.T) {
	t.Parallel()
	source := axe(t)
	for _, dark := range []bool{false, true} {
		p := &page{t: t, url: serve(t)}
		p.launch(findBrowser(t), screen{w: 360, h: 740, ratio: 1, touch: true, dark: dark}, nil)
		p.load(p.url + fragment(t, "UK mm 0\n"+demo(t, chapel)))
		p.shot(fmt.Sprint("guest-dark-", dark))
		p.inFrame(source)
		ask[bool](p, `(() => {`+source+`; return true; })()`)
		p.violations("a copy")
		if wide := ask[int](p, `document.documentElement.scrollWidth - innerWidth`); wide > 0 {
			t.Errorf("the page is %d px too wide", wide)
		}
		p.click("#send-open")
		p.until(`document.getElementById('send').open`)
		p.shot(fmt.Sprint("send-dark-", dark))
		p.violations("sending")
		if small := ask[[]string](p, `[...document.querySelectorAll('button, summary, select, textarea')]
			.filter(e => e.offsetParent && e.getBoundingClientRect().height < 44).map(e => e.id || e.textContent)`); len(small) > 0 {
			t.Errorf("lower than 44 px: %q", small)
		}
	}
}
