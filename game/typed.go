package game

import (
	"math"
	"strconv"
	"strings"

	"leafwright/game/measure"
)

// verbatim is a length kept as it was typed. In the file a number is in mm, and a
// text is as [measure.Read] takes it, a plain number again in mm.
type verbatim struct{ p *measure.Length }

// wantTyped is what a file's typed length may be.
const wantTyped = `a number of mm or a length in quotes, like 797 or "2' 7 3/8\""`

func (v verbatim) read(n *node, miss missing) {
	text := n.text
	switch {
	case n.kind == numberNode && strings.ContainsAny(text, "eE"):
		text = tidy(n.num)
	case n.kind == numberNode:
	case n.kind != textNode:
		miss("", n, wantTyped)
		return
	}
	l, why := Typed(text, measure.MM)
	if why != "" {
		miss("", nil, (&node{kind: textNode, text: text}).said()+": "+why)
		return
	}
	*v.p = l
}

func (v verbatim) write() node {
	if isNumber(v.p.Text) {
		return node{kind: numberNode, num: v.p.MM, text: v.p.Text}
	}
	return node{kind: textNode, text: v.p.Text}
}

// isNumber tells whether a text is a JSON number without a power of ten.
func isNumber(text string) bool {
	s := scanner{data: []byte(text)}
	if c := s.peek(); c != '-' && (c < '0' || c > '9') {
		return false
	}
	n, bad := s.number()
	return bad == nil && n.kind == numberNode && s.pos == len(text) && !strings.ContainsAny(text, "eE")
}

func (v verbatim) set(from value)     { *v.p = *from.(verbatim).p }
func (v verbatim) same(as value) bool { return *v.p == *as.(verbatim).p }

// show gives the text as typed; a plain number gets its unit where a form's plain
// numbers are inches.
func (v verbatim) show(u measure.Unit) string { return ShowTyped(*v.p, u) }

func (v verbatim) take(text string, u measure.Unit) (why string) {
	if strings.TrimSpace(text) == "" {
		*v.p = measure.Length{}
		return ""
	}
	l, why := Typed(text, u)
	if why == "" {
		*v.p = l
	}
	return why
}

func (v verbatim) schema(f *field, about string) node {
	n := schemaTyped("string", "number")
	n.put("description", str(about+" A number of mm, or a text as typed: 2' 7 3/8\", 31-3/8, 79.7 cm."))
	n.put("maxLength", num(textMost))
	return n
}

func schemaTyped(names ...string) node {
	n := node{kind: groupNode}
	list := node{kind: listNode}
	for _, name := range names {
		list.items = append(list.items, str(name))
	}
	n.put("type", list)
	return n
}

// Typed reads a length as a person types it and keeps the text. A plain number is
// in the unit shown; in inches it gets the inch mark, so that the text says the
// same wherever it is read again. It says why a text is no length.
func Typed(text string, shown measure.Unit) (l measure.Length, why string) {
	if why := plain(text, textMost, ""); why != "" {
		return measure.Length{}, why + " is wanted"
	}
	l, err := measure.Read(text, shown)
	if err != nil {
		return measure.Length{}, err.(*measure.Error).Why
	}
	if shown == measure.Inch {
		if metric, err := measure.Read(l.Text, measure.MM); err != nil || metric.MM != l.MM {
			l.Text += `"`
		}
	}
	return l, ""
}

// ShowTyped gives a typed length as a form shows it: as it was typed, with its unit
// where a plain number would be taken for inches.
func ShowTyped(l measure.Length, u measure.Unit) string {
	if u == measure.Inch && l.Text != "" {
		if inch, err := measure.Read(l.Text, measure.Inch); err == nil && inch.MM != l.MM {
			return l.Text + " mm"
		}
	}
	return l.Text
}

// asTyped gives a length of so many mm as a person would type it in the unit.
func asTyped(mm float64, u measure.Unit) measure.Length {
	text := measure.Exact(mm, u)
	l, _ := Typed(text, u)
	return l
}

// whole is a whole number.
type whole struct{ p *int }

func (v whole) read(n *node, miss missing) {
	if n.kind != numberNode || math.Abs(n.num) > 1e6 || n.num != math.Trunc(n.num) {
		miss("", n, "a whole number")
		return
	}
	*v.p = int(n.num)
}
func (v whole) write() node              { return num(float64(*v.p)) }
func (v whole) set(from value)           { *v.p = *from.(whole).p }
func (v whole) same(as value) bool       { return *v.p == *as.(whole).p }
func (v whole) show(measure.Unit) string { return strconv.Itoa(*v.p) }
func (v whole) take(text string, _ measure.Unit) (why string) {
	n, err := strconv.Atoi(strings.TrimSpace(text))
	if err != nil {
		return "a whole number is wanted"
	}
	*v.p = n
	return ""
}
func (v whole) schema(f *field, about string) node {
	n := typed("integer", about)
	n.put("minimum", num(f.limits.Lo))
	n.put("maximum", num(f.limits.Hi))
	return n
}

// ReadInInches tells whether the job rests on readings all of which were typed in feet
// and inches: its report is then wanted in them.
func ReadInInches(j *Job) bool {
	n := 0
	for _, i := range j.Counted() {
		text := j.Readings[i].Value.Text
		if strings.ContainsAny(text, "mM") || isNumber(text) && j.Readings[i].Value.MM != 0 {
			return false
		}
		if text != "" && j.Readings[i].Value.MM != 0 {
			n++
		}
	}
	return n > 0
}
