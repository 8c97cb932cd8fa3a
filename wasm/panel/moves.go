//go:build js

package panel

import (
	"leafwright/game/words"
	"slices"
	"strconv"
	"strings"
	"syscall/js"

	"leafwright/game"
	"leafwright/game/bench"
)

// moves is the list of what is done in the option shown, or was done for keeps.
type moves struct {
	p     *Panel
	sec   section // the fields of the moves, as the form keeps them
	shape string
	rows  []moveRow
	total js.Value
	keep  js.Value
	mode  map[bool]js.Value
	fault js.Value
	open  map[string]bool // moves whose fields are unfolded, by path
	drag  drag
}

// moveRow is a move's line in the list.
type moveRow struct {
	item, on, say, did, why, minded, care js.Value
	cared                                 []game.Caution // as they stand in care
}

// drag is a move being carried to another place in its list.
type drag struct {
	from, to int
	held     bool
}

func (m *moves) init(p *Panel) {
	m.p = p
	m.open = map[string]bool{}
	// Told when the elements may be gone already, so one listener serves them all.
	byID("moves-box").Call("addEventListener", "toggle", js.FuncOf(func(_ js.Value, args []js.Value) any {
		fold := args[0].Get("target")
		if path := fold.Get("dataset").Get("path"); path.Type() == js.TypeString {
			m.open[path.String()] = fold.Get("open").Bool()
		}
		return nil
	}), true)
}

// show brings the list up to date.
func (m *moves) show() {
	b := m.p.bench
	shown := b.Shown()
	lines := b.MoveLines()
	visible := !b.Lacking() && (shown >= 0 || shown == bench.AsStands && len(lines) > 0)
	show(byID("moves-box"), visible)
	if !visible {
		m.shape = ""
		return
	}
	form := b.MadeForm()
	if shown >= 0 {
		form = b.OptionForm(int(shown))
	}
	shape := shapeOf(form)
	if i := strings.Index(shape, "|"); shown >= 0 && i >= 0 {
		shape = strconv.Itoa(int(shown)) + shape[i:] // the title follows the name while it is typed
	}
	if shape != m.shape {
		m.build(form, shown)
		m.shape = shape
	}
	m.p.form.values(form)
	for i := range m.rows {
		if i < len(lines) {
			m.rows[i].show(&lines[i])
		}
	}
	setText(m.total, b.MovesTotal())
	m.showMode()
	if m.keep.Truthy() {
		_, why := b.Keepable()
		m.keep.Set("disabled", why != nil)
	}
}

// showMode shows whether tools try out or cut for keeps.
func (m *moves) showMode() {
	for keeps, button := range m.mode {
		button.Set("checked", keeps == m.p.bench.Keeps())
	}
}

func (r *moveRow) show(l *bench.MoveLine) {
	r.on.Set("checked", !l.Off)
	setText(r.say, l.Text)
	setText(r.did, l.Did)
	show(r.did, l.Did != "")
	setText(r.why, l.Refused)
	show(r.why, l.Refused != "")
	setText(r.minded, strings.Join(l.Minded, "\n"))
	show(r.minded, len(l.Minded) > 0)
	r.showCare(l.Care)
	class := "move"
	switch {
	case l.Off:
		class = "move off"
	case l.Refused != "":
		class = "move refused"
	}
	r.item.Set("className", class)
}

// showCare shows the head of each caution; the whole of it unfolds, so that the move's own
// lines are not lost among them.
func (r *moveRow) showCare(care []game.Caution) {
	if slices.Equal(care, r.cared) {
		return
	}
	r.cared = care
	lines := make([]js.Value, len(care))
	for i := range care {
		head, rest := care[i].Text, ""
		if k := strings.IndexAny(head, ":;."); k >= 0 {
			head, rest = head[:k], words.Capital(strings.TrimSpace(head[k+1:]))
		}
		lines[i] = el("details", nil, el("summary", attrs{"text", head}), el("p", attrs{"text", strings.TrimSpace(rest + " " + care[i].Ask)}))
	}
	fill(r.care, lines...)
	show(r.care, len(care) > 0)
}

// build makes the list's elements anew and puts the cursor back where it was.
func (m *moves) build(form game.Section, shown bench.Shown) {
	f := &m.p.form
	focus := focusedID()
	for _, path := range m.sec.paths {
		delete(f.inputs, path)
	}
	gone := m.sec.funcs // let go once the elements are: leaving a field is told while it goes
	defer func() {
		for _, fn := range gone {
			fn.Release()
		}
	}()
	m.sec.funcs, m.sec.paths, m.rows = nil, nil, nil
	list := el("ol", attrs{"class", "moves", "id", "moves"})
	for _, g := range form.Groups {
		if k, isMove := moveIndex(g); isMove {
			list.Call("append", m.row(g, k, shown))
		}
	}
	m.fault = el("p", attrs{"class", "fault", "id", "moves-fault", "role", "alert"})
	show(m.fault, false)
	m.total = el("p", attrs{"class", "quiet", "id", "moves-total"})
	title := "Done for keeps"
	if shown >= 0 {
		title = "What is done"
	}
	parts := []js.Value{el("h2", attrs{"id", "moves-title", "text", title}), list, m.total, m.fault}
	m.keep = js.Undefined()
	if shown >= 0 {
		parts = append(parts, m.adder(form))
		parts = append(parts, m.own(form, int(shown))...)
		parts = append(parts, m.keeps())
	}
	fill(byID("moves-box"), parts...)
	refocus(focus)
}

// moveIndex gives the place in its list of the move a group is about.
func moveIndex(g game.Group) (k int, ok bool) {
	if len(g.Fields) == 0 {
		return 0, false
	}
	path := g.Fields[0].Path
	for _, lead := range []string{".moves[", "made["} {
		if i := strings.LastIndex(path, lead); i >= 0 {
			rest := path[i+len(lead):]
			if end := strings.IndexByte(rest, ']'); end > 0 {
				k, err := strconv.Atoi(rest[:end])
				return k, err == nil
			}
		}
	}
	return 0, false
}

// own is the option's name and what is done with the option as a whole.
func (m *moves) own(form game.Section, i int) []js.Value {
	f := &m.p.form
	parts := []js.Value{}
	for _, g := range form.Groups {
		if _, isMove := moveIndex(g); !isMove {
			parts = append(parts, f.fields(&m.sec, g.Fields)...)
		}
	}
	path := game.OptionPath(i)
	return append(parts, el("div", attrs{"class", "row"},
		m.button("way-copy", "Copy this way", "plain", func() error { return m.p.bench.Add(game.CopyPath(path)) }),
		m.button("way-remove", "Remove this way", "plain", func() error { return m.p.bench.Remove(path) })))
}

// button does something to the moves; what cannot be done is said under the list.
func (m *moves) button(id, label, class string, do func() error) js.Value {
	b := el("button", attrs{"type", "button", "id", id, "text", label})
	if class != "" {
		b.Call("setAttribute", "class", class)
	}
	m.p.form.listen(&m.sec, b, "click", func(js.Value) { m.tried(do()) })
	return b
}

// tried shows what came of something, and why it was not done.
func (m *moves) tried(err error) {
	m.p.changed()
	text := ""
	if err != nil {
		text = words.Capital(err.Error())
	}
	setText(m.fault, text)
	show(m.fault, text != "")
}

// row is one move: on or off, its sentence, what it does, and its numbers folded away.
func (m *moves) row(g game.Group, k int, shown bench.Shown) js.Value {
	f, b := &m.p.form, m.p.bench
	at := strconv.Itoa(k)
	r := moveRow{
		on:     el("input", attrs{"type", "checkbox", "id", "move-on-" + at}),
		say:    el("span", attrs{"class", "move-say"}),
		did:    el("p", attrs{"class", "quiet"}),
		why:    el("p", attrs{"class", "fault"}),
		minded: el("p", attrs{"class", "minded"}),
		care:   el("div", attrs{"class", "care"}),
	}
	if shown < 0 {
		r.on.Set("disabled", true)
		r.item = el("li", attrs{"class", "move"}, r.say, r.did, r.why, r.minded, r.care)
		m.rows = append(m.rows, r)
		return r.item
	}
	path := game.MovePath(int(shown), k)
	f.listen(&m.sec, r.on, "change", func(js.Value) {
		b.Type(path+".off", strconv.FormatBool(!r.on.Get("checked").Bool()))
		b.Settle()
		m.tried(nil)
	})
	fields := []game.Field{}
	for _, d := range g.Fields {
		if !strings.HasSuffix(d.Path, ".off") {
			d.Help = "" // the move's own sentence says it
			fields = append(fields, d)
		}
	}
	place := func(to int) error {
		b.Type(game.PlacePath(path), strconv.Itoa(to+1))
		b.Settle()
		return nil
	}
	up := m.button("move-up-"+at, "Earlier", "plain", func() error { return place(k - 1) })
	up.Set("disabled", k == 0)
	down := m.button("move-down-"+at, "Later", "plain", func() error { return place(k + 1) })
	down.Set("disabled", k == len(b.MoveLines())-1)
	inside := el("div", attrs{"class", "fields"})
	for _, e := range f.fields(&m.sec, fields) {
		inside.Call("append", e)
	}
	inside.Call("append", el("div", attrs{"class", "row wide"}, up, down,
		m.button("move-copy-"+at, "Copy", "plain", func() error { return b.Add(game.CopyPath(path)) }),
		m.button("move-remove-"+at, "Remove", "plain", func() error { return b.Remove(path) })))
	fold := el("details", attrs{"class", "move-numbers", "id", "move-numbers-" + at},
		el("summary", nil, el("span", attrs{"text", "Change", "id", "move-change-" + at})), inside)
	fold.Get("firstChild").Call("setAttribute", "aria-label", "Change move "+strconv.Itoa(k+1))
	fold.Set("open", m.open[path])
	fold.Get("dataset").Set("path", path)
	r.item = el("li", attrs{"class", "move"},
		el("div", attrs{"class", "move-head"},
			el("label", attrs{"class", "check"}, r.on, r.say), m.grip(k, at, place)),
		r.did, r.why, r.minded, r.care, fold)
	m.rows = append(m.rows, r)
	return r.item
}

// grip is what a move is carried by to another place: dragged, or with the arrow
// keys.
func (m *moves) grip(k int, at string, place func(to int) error) js.Value {
	f := &m.p.form
	g := el("button", attrs{"type", "button", "class", "icon grip", "id", "move-grip-" + at, "aria-label", "Carry move " + strconv.Itoa(k+1) + " to another place: drag, or arrow up and down"},
		svg("svg", attrs{"viewBox", "0 0 24 24", "width", "20", "height", "20", "aria-hidden", "true", "focusable", "false"},
			svg("path", attrs{"d", "M6 8h12M6 12h12M6 16h12"})))
	target := func(e js.Value) int {
		y, to := e.Get("clientY").Float(), 0
		for i := range m.rows {
			box := m.rows[i].item.Call("getBoundingClientRect")
			if y > box.Get("top").Float()+box.Get("height").Float()/2 {
				to = i
				if i < k {
					to++
				}
			}
		}
		return min(to, len(m.rows)-1)
	}
	mark := func(to int) {
		for i := range m.rows {
			classes := m.rows[i].item.Get("classList")
			classes.Call("toggle", "carried", i == k && to >= 0)
			classes.Call("toggle", "before", to >= 0 && i == to && to < k)
			classes.Call("toggle", "after", to >= 0 && i == to && to > k)
		}
	}
	f.listen(&m.sec, g, "pointerdown", func(e js.Value) {
		e.Call("preventDefault")
		g.Call("focus")
		try(func() { g.Call("setPointerCapture", e.Get("pointerId")) })
		m.drag = drag{k, k, true}
	})
	f.listen(&m.sec, g, "pointermove", func(e js.Value) {
		if m.drag.held {
			m.drag.to = target(e)
			mark(m.drag.to)
		}
	})
	end := func(done bool) func(js.Value) {
		return func(js.Value) {
			d := m.drag
			m.drag = drag{}
			mark(-1)
			if done && d.held && d.to != d.from {
				m.tried(place(d.to))
			}
		}
	}
	f.listen(&m.sec, g, "pointerup", end(true))
	f.listen(&m.sec, g, "pointercancel", end(false))
	f.listen(&m.sec, g, "keydown", func(e js.Value) {
		to := k
		switch e.Get("key").String() {
		case "ArrowUp":
			to--
		case "ArrowDown":
			to++
		default:
			return
		}
		e.Call("preventDefault")
		if to >= 0 && to < len(m.rows) {
			m.tried(place(to))
			if next := byID("move-grip-" + strconv.Itoa(to)); next.Truthy() {
				next.Call("focus")
			}
		}
	})
	return g
}

// adder adds a move of a kind.
func (m *moves) adder(form game.Section) js.Value {
	pick := el("select", attrs{"id", "move-kind", "aria-label", "Kind of move"})
	for _, a := range form.Adds {
		pick.Call("append", el("option", attrs{"value", a.Path, "text", a.Label}))
	}
	return el("div", attrs{"class", "row move-add"}, el("span", attrs{"class", "box"}, pick),
		m.button("move-add", "Add", "main", func() error {
			m.open[game.MovePath(int(m.p.bench.Shown()), len(m.rows))] = true
			return m.p.bench.Add(pick.Get("value").String())
		}))
}

// keeps is where trying ends and cutting begins.
func (m *moves) keeps() js.Value {
	b := m.p.bench
	var mode js.Value
	m.mode, mode = choose(m.p, "mode", "What hands and tools do", []bool{false, true},
		func(keeps bool) string { return map[bool]string{false: "Try out", true: "For keeps"}[keeps] }, b.SetKeeps)
	m.keep = m.button("move-keep", "The first is cut", "", b.Keep)
	return el("div", attrs{"class", "keeps"},
		el("p", attrs{"class", "quiet", "text", "Trying out can be undone. For keeps, a cut is a cut: what tools do then, and the first move here once you say it is cut, can no longer be taken back."}),
		el("div", attrs{"class", "row"}, mode, m.keep))
}
