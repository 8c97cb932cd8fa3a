//go:build js

package panel

import (
	"fmt"
	"leafwright/game/words"
	"strconv"
	"strings"
	"syscall/js"

	"leafwright/game"
	"leafwright/game/bench"
)

// form shows the job's fields. A section is built anew only when its fields
// change; else its values are put in place, so that nobody loses their cursor.
type form struct {
	p        *Panel
	sections map[string]*section
	inputs   map[string]*input // by path
	late     bool              // behind what is typed
	focus    string            // what had the cursor when the program started
	unfolded map[string]bool   // what stood open then
}

type section struct {
	box   js.Value // the details element
	body  js.Value
	shape string // what fields it was built for
	funcs []js.Func
	paths []string
	folds []fold
	adds  bool // one more group is asked for, to be opened
}

// fold is what is seen of a group folded away.
type fold struct {
	title, now js.Value
	said       string
}

// input is one field's element and the place of its message.
type input struct {
	field js.Value
	fault js.Value
	help  string // id of its help, or empty
	kind  game.Kind
	has   string // what the element holds; asking it would cost more than all the rest
	value string // the value put in place last, and the draft
	draft bench.Draft
	bad   bool // whether there was one
	dirty bool // touched by a person since, or never filled
}

func (f *form) init(p *Panel) {
	f.p, f.sections, f.inputs = p, map[string]*section{}, map[string]*input{}
	// The frame may have started afresh under a page in use.
	f.focus, f.unfolded = doc.Get("activeElement").Get("id").String(), unfolded(byID("sections"))
	fill(byID("sections"))
}

// unfolded gives the ids of the details that stand open in an element.
func unfolded(in js.Value) map[string]bool {
	open := map[string]bool{}
	all := in.Call("querySelectorAll", "details[id]")
	for i := range all.Length() {
		open[all.Index(i).Get("id").String()] = all.Index(i).Get("open").Bool()
	}
	return open
}

// refold opens and closes details as they stood.
func refold(open map[string]bool) {
	for id, is := range open {
		if e := byID(id); e.Truthy() {
			e.Set("open", is)
		}
	}
}

// refocus puts the cursor back into an element that was made anew.
func refocus(id string) {
	if id == "" {
		return
	}
	if e := byID(id); e.Truthy() && !focused(e) {
		e.Call("focus", map[string]any{"preventScroll": true})
	}
}

// typing tells whether the cursor is in a text field.
func (f *form) typing() bool {
	tag := doc.Get("activeElement")
	if !tag.Truthy() {
		return false
	}
	switch tag.Get("tagName").String() {
	case "TEXTAREA":
		return true
	case "INPUT":
		kind := tag.Get("type").String()
		return kind == "text"
	}
	return false
}

func (f *form) show() {
	for _, s := range f.p.bench.Sections() {
		sec := f.sections[s.Name]
		if sec == nil {
			sec = &section{body: el("div", attrs{"class", "fields"})}
			sec.box = el("details", attrs{"id", "section-" + s.Name}, el("summary", nil, el("h2", attrs{"text", s.Title})), sec.body)
			f.sections[s.Name] = sec
			byID("sections").Call("append", sec.box)
		}
		if shape := shapeOf(s); shape != sec.shape {
			f.build(sec, s)
			sec.shape = shape
		}
		f.values(s)
	}
	if f.unfolded != nil {
		refold(f.unfolded)
		refocus(f.focus)
		f.focus, f.unfolded = "", nil
	}
}

// shapeOf tells two sections apart that must not share their elements. It is asked at
// every change.
func shapeOf(s game.Section) string {
	var b strings.Builder
	put := func(mark byte, parts ...string) {
		b.WriteByte(mark)
		for _, part := range parts {
			b.WriteString(part)
			b.WriteByte(0)
		}
	}
	put(' ', s.Title, s.Help)
	for _, a := range s.Adds {
		put('+', a.Path, a.Label)
	}
	for _, g := range s.Groups {
		if g.Fold { // its words come with its values
			put('|', g.Remove)
		} else {
			put('|', g.Title, g.Remove)
		}
		for _, f := range g.Fields {
			put(';', f.Path, f.Label, f.Help, string(f.Kind), f.Unit)
			put(':', f.Columns...)
			for _, c := range f.Choices {
				put('?', c.Value, c.Label)
			}
			for _, r := range f.Rows {
				put('/', r.Remove)
				for _, c := range r.Cells {
					put(',', c.Path, c.Label, c.Unit)
				}
			}
		}
	}
	return b.String()
}

// build makes a section's elements and puts the cursor back where it was.
func (f *form) build(sec *section, s game.Section) {
	focus := doc.Get("activeElement").Get("id").String()
	opened := unfolded(sec.body)
	for _, path := range sec.paths {
		delete(f.inputs, path)
	}
	for _, fn := range sec.funcs {
		fn.Release()
	}
	sec.funcs, sec.paths, sec.folds = nil, nil, nil
	parts := []js.Value{}
	var list, last js.Value
	if s.Help != "" {
		parts = append(parts, el("p", attrs{"class", "help wide", "text", s.Help}))
	}
	for _, g := range s.Groups {
		if g.Title == "" {
			parts = append(parts, f.fields(sec, g.Fields)...)
			continue
		}
		if g.Fold {
			if list.IsUndefined() {
				list = el("div", attrs{"class", "wide list"})
				parts = append(parts, list)
			}
			last = f.folded(sec, g)
			list.Call("append", last)
			continue
		}
		set := el("fieldset", attrs{"class", "group wide"}, el("legend", attrs{"text", g.Title}))
		set.Call("append", anys(f.fields(sec, g.Fields))...)
		if g.Remove != "" {
			set.Call("append", f.button(sec, "Remove "+lower(g.Title), "plain", func() { f.p.bench.Remove(g.Remove) }))
		}
		parts = append(parts, set)
	}
	adds := el("div", attrs{"class", "row wide"})
	for _, a := range s.Adds {
		adds.Call("append", f.button(sec, a.Label, "", func() { sec.adds = f.p.bench.Add(a.Path) == nil }))
	}
	if len(s.Adds) > 0 {
		parts = append(parts, adds)
	}
	fill(sec.body, parts...)
	refold(opened)
	refocus(focus)
	if sec.adds && last.Truthy() { // the button pressed is gone: on to what it made
		last.Set("open", true)
		last.Call("querySelector", "select").Call("focus")
	}
	sec.adds = false
}

// folded shows a group under a line that says what it holds.
func (f *form) folded(sec *section, g game.Group) js.Value {
	line := fold{title: el("span", nil), now: el("span", attrs{"class", "quiet"})}
	sec.folds = append(sec.folds, line)
	body := el("div", attrs{"class", "fields"}, f.fields(sec, g.Fields)...)
	body.Call("append", f.button(sec, "Remove this reading", "plain", func() { f.p.bench.Remove(g.Remove) }))
	return el("details", attrs{"id", id(g.Remove) + ":fold"}, el("summary", nil, line.title, line.now), body)
}

func anys(list []js.Value) []any {
	out := make([]any, len(list))
	for i, v := range list {
		out[i] = v
	}
	return out
}

func lower(text string) string {
	if text == "" {
		return ""
	}
	return strings.ToLower(text[:1]) + text[1:]
}

// listen is on for elements that go when their section is built anew.
func (f *form) listen(sec *section, target js.Value, event string, do func(e js.Value)) {
	fn := heard(event, do)
	sec.funcs = append(sec.funcs, fn)
	target.Call("addEventListener", event, fn)
}

// button does something to the job; what cannot be done is said beside it.
func (f *form) button(sec *section, label, class string, do func()) js.Value {
	b := el("button", attrs{"type", "button", "text", label})
	if class != "" {
		b.Call("setAttribute", "class", class)
	}
	f.listen(sec, b, "click", func(js.Value) {
		do()
		f.p.changed()
	})
	return b
}

func (f *form) fields(sec *section, all []game.Field) []js.Value {
	out := make([]js.Value, 0, len(all))
	for i := 0; i < len(all); i++ {
		field := all[i]
		if n := alike(all[i:]); n > 1 {
			out = append(out, f.trio(sec, all[i:i+n]))
			i += n - 1
			continue
		}
		switch field.Kind {
		case game.Table:
			slanted := i > 0 && strings.HasPrefix(all[i-1].Path, field.Path+".")
			out = append(out, f.table(sec, field, !slanted))
		case game.Flag:
			out = append(out, f.flag(sec, field))
		default:
			out = append(out, f.field(sec, field))
		}
	}
	return out
}

// parted gives the two parts of a label such as "Head, least".
func parted(label string) (what, which string) {
	if i := strings.LastIndex(label, ", "); i > 0 {
		return label[:i], label[i+2:]
	}
	return label, ""
}

// alike tells how many fields from the first on are lengths of one thing: least,
// wanted and most, as a rule.
func alike(all []game.Field) int {
	n := 0
	first, _ := parted(all[0].Label)
	for _, d := range all {
		what, which := parted(d.Label)
		if d.Kind != game.Length || which == "" || what != first || n == 3 {
			break
		}
		n++
	}
	return n
}

// trio shows a few lengths of one thing side by side.
func (f *form) trio(sec *section, all []game.Field) js.Value {
	what, _ := parted(all[0].Label)
	row := el("div", attrs{"class", "trio"})
	whole := el("fieldset", attrs{"class", "field wide"}, el("legend", attrs{"class", "label", "text", what}), row)
	for _, d := range all {
		in := f.element(d)
		f.attach(sec, d, in)
		_, which := parted(d.Label)
		box := el("div", attrs{"class", "box has-unit"}, in.field, el("span", attrs{"class", "unit", "aria-hidden", "true", "text", d.Unit}))
		one := el("div", attrs{"class", "field"}, el("label", attrs{"for", id(d.Path), "text", words.Capital(which)}), box, in.fault)
		if d.Help != "" {
			f.explain(one, in, d)
		}
		row.Call("append", one)
	}
	return whole
}

// explain adds a field's help.
func (f *form) explain(whole js.Value, in *input, d game.Field) {
	in.help = id(d.Path) + ":help"
	whole.Call("append", el("p", attrs{"class", "help", "id", in.help, "text", d.Help}))
	in.field.Call("setAttribute", "aria-describedby", in.help)
}

func id(path string) string { return "f:" + path }

// field is a label, what is typed or picked, its help and its message.
func (f *form) field(sec *section, d game.Field) js.Value {
	in := f.element(d)
	f.attach(sec, d, in)
	class, layout := "box", "field short"
	if d.Kind == game.Line || d.Kind == game.Lines || d.Kind == game.Pick {
		class, layout = "box long", "field"
	}
	box := el("div", attrs{"class", class}, in.field)
	if d.Unit != "" {
		box.Get("classList").Call("add", "has-unit")
		box.Call("append", el("span", attrs{"class", "unit", "aria-hidden", "true", "text", d.Unit}))
	}
	whole := el("div", attrs{"class", layout}, el("label", attrs{"for", id(d.Path), "text", d.Label}), box, in.fault)
	if d.Kind == game.Line || d.Kind == game.Lines {
		whole.Get("classList").Call("add", "wide")
	}
	if d.Help != "" {
		f.explain(whole, in, d)
	}
	return whole
}

func (f *form) flag(sec *section, d game.Field) js.Value {
	in := f.element(d)
	f.attach(sec, d, in)
	whole := el("div", attrs{"class", "field"},
		el("label", attrs{"class", "check"}, in.field, el("span", attrs{"text", d.Label})), in.fault)
	if d.Help != "" {
		f.explain(whole, in, d)
	}
	return whole
}

// element makes what a field is typed or picked in.
func (f *form) element(d game.Field) *input {
	in := &input{kind: d.Kind, dirty: true, fault: el("p", attrs{"class", "fault", "id", id(d.Path) + ":fault"})}
	show(in.fault, false)
	a := attrs{"id", id(d.Path), "autocomplete", "off"}
	switch d.Kind {
	case game.Pick:
		in.field = el("select", a)
		for _, c := range d.Choices {
			in.field.Call("append", el("option", attrs{"value", c.Value, "text", c.Label}))
		}
	case game.Flag:
		a = append(a, "type", "checkbox")
		in.field = el("input", a)
	case game.Lines:
		a = append(a, "rows", "4")
		in.field = el("textarea", a)
	default:
		a = append(a, "type", "text", "spellcheck", "false")
		switch {
		case d.Kind == game.Line:
		case d.Unit == "ft in":
			a = append(a, "inputmode", "text") // a numeric keypad has no foot and inch marks
		default:
			a = append(a, "inputmode", "decimal")
		}
		in.field = el("input", a)
	}
	return in
}

func (f *form) attach(sec *section, d game.Field, in *input) {
	f.inputs[d.Path] = in
	sec.paths = append(sec.paths, d.Path)
	take := func(js.Value) {
		in.dirty = true
		in.has = in.field.Get("value").String()
		if d.Kind == game.Flag {
			in.has = strconv.FormatBool(in.field.Get("checked").Bool())
		}
		f.p.bench.Type(d.Path, in.has)
		f.p.changed()
	}
	switch d.Kind {
	case game.Pick, game.Flag:
		f.listen(sec, in.field, "change", func(e js.Value) {
			take(e)
			f.p.bench.Settle()
		})
	default:
		f.listen(sec, in.field, "input", func(e js.Value) {
			f.late = true
			take(e)
		})
		f.listen(sec, in.field, "blur", func(js.Value) {
			f.p.bench.Settle()
			in.dirty = true // the value as the program writes it takes the place of the typed one
			f.show()
		})
	}
}

// table shows stations, folded away where a number before it says it all.
func (f *form) table(sec *section, d game.Field, open bool) js.Value {
	head, rows := el("tr", nil), ": stations"
	for _, c := range d.Columns {
		unit := d.Unit
		if c == "Swing angle" {
			rows, unit = ": heights", "°"
		}
		head.Call("append", el("th", attrs{"scope", "col", "text", c + ", " + unit}))
	}
	head.Call("append", el("td", nil))
	body := el("tbody", nil)
	for i, r := range d.Rows {
		tr := el("tr", nil)
		for _, c := range r.Cells {
			tr.Call("append", f.cell(sec, c))
		}
		last := el("td", nil)
		if r.Remove != "" {
			b := f.button(sec, "", "icon", func() { f.p.bench.Remove(r.Remove) })
			b.Call("setAttribute", "aria-label", fmt.Sprintf("Remove row %d of %s", i+1, d.Label))
			b.Call("append", svg("svg", attrs{"viewBox", "0 0 24 24", "width", "20", "height", "20", "aria-hidden", "true", "focusable", "false"},
				svg("path", attrs{"d", "m7 7 10 10M17 7 7 17"})))
			last.Call("append", b)
		}
		tr.Call("append", last)
		body.Call("append", tr)
	}
	fold := el("details", attrs{"class", "wide stations", "id", id(d.Path) + ":fold"},
		el("summary", nil, el("span", attrs{"text", d.Label + rows})))
	if d.Help != "" {
		fold.Call("append", el("p", attrs{"class", "help", "text", d.Help}))
	}
	fold.Call("append", el("div", attrs{"class", "scroll"}, el("table", attrs{"aria-label", d.Label}, el("thead", nil, head), body)))
	if f.p.bench.CanAdd(d.Path) {
		fold.Call("append", f.button(sec, "Add a station", "", func() { f.p.bench.Add(d.Path) }))
	}
	fold.Set("open", open)
	return fold
}

func (f *form) cell(sec *section, c game.Field) js.Value {
	if c.Path == "" {
		return el("th", attrs{"scope", "row", "text", c.Label})
	}
	in := f.element(c)
	in.field.Call("setAttribute", "aria-label", c.Label)
	f.attach(sec, c, in)
	return el("td", attrs{"class", "cell"}, in.field, in.fault)
}
