package game

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"leafwright/game/measure"
	"leafwright/geom"
	"leafwright/geom/door"
)

// value is one thing of a job, wherever it lives: how it is read from a file and
// written, shown in a form and taken from one.
type value interface {
	// read takes the node, or says what is wanted instead, and where under the
	// field: miss("[1]", &item, "a number").
	read(n *node, miss missing)
	write() node
	// set makes the value a copy of another of its kind, and same compares the two.
	set(from value)
	same(as value) bool
	// show gives the text a form shows, and take reads one back or says why not.
	show(u measure.Unit) string
	take(text string, u measure.Unit) (why string)
	// schema describes the value of the field as JSON Schema.
	schema(f *field, about string) node
}

type missing func(under string, n *node, want string)

// length is a number of millimetres.
type length struct{ p *float64 }

const wantNumber = "a number"

func (v length) read(n *node, miss missing) {
	if n.kind != numberNode {
		miss("", n, wantNumber)
		return
	}
	*v.p = n.num
}
func (v length) write() node                { return num(*v.p) }
func (v length) set(from value)             { *v.p = *from.(length).p }
func (v length) same(as value) bool         { return *v.p == *as.(length).p }
func (v length) show(u measure.Unit) string { return measure.Exact(*v.p, u) }
func (v length) take(text string, u measure.Unit) string {
	l, err := measure.Read(text, u)
	if err != nil {
		return err.(*measure.Error).Why
	}
	*v.p = l.MM
	return ""
}

// degrees is an angle a person reads as a number of degrees.
type degrees struct{ p *geom.Angle }

func (v degrees) read(n *node, miss missing) {
	if n.kind != numberNode {
		miss("", n, wantNumber)
		return
	}
	*v.p = geom.Angle(n.num) * geom.Degree
}
func (v degrees) write() node        { return num(inDegrees(*v.p)) }
func (v degrees) set(from value)     { *v.p = *from.(degrees).p }
func (v degrees) same(as value) bool { return *v.p == *as.(degrees).p }
func (v degrees) show(measure.Unit) string {
	return strconv.FormatFloat(inDegrees(*v.p), 'f', -1, 64)
}
func (v degrees) take(text string, _ measure.Unit) string {
	text = strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(text), "°"))
	text = strings.NewReplacer(",", ".", "−", "-").Replace(text)
	x, err := strconv.ParseFloat(text, 64)
	if err != nil || strings.ContainsFunc(text, unicode.IsLetter) {
		return "a number of degrees is wanted, like 3 or 2.5"
	}
	*v.p = geom.Angle(x+0) * geom.Degree
	return ""
}

// inDegrees gives the tidiest number of degrees that is read as the angle, so
// that 3 comes back as 3 and every angle comes back as itself.
func inDegrees(a geom.Angle) float64 {
	raw := a.Degrees()
	for figures := 6; figures <= 17; figures++ {
		x, _ := strconv.ParseFloat(strconv.FormatFloat(raw, 'g', figures, 64), 64)
		for _, near := range neighbours(x) {
			if geom.Angle(near)*geom.Degree == a {
				return near
			}
		}
	}
	return raw
}

// neighbours gives x and the numbers next to it.
func neighbours(x float64) [3]float64 {
	return [3]float64{x, math.Nextafter(x, math.Inf(1)), math.Nextafter(x, math.Inf(-1))}
}

// line is a text of one line, lines one of many.
type line struct{ p *string }
type lines struct{ line }

// longest texts, in letters.
const (
	lineMost  = 120
	linesMost = 4000
)

func (v line) read(n *node, miss missing)  { readText(v.p, n, miss, lineMost, "") }
func (v lines) read(n *node, miss missing) { readText(v.p, n, miss, linesMost, "\n\t") }

func readText(p *string, n *node, miss missing, most int, controls string) {
	want := "a text in quotes"
	if n.kind == textNode {
		want = plain(n.text, most, controls)
	}
	if want != "" {
		miss("", n, want)
		return
	}
	*p = n.text
}

// plain tells what a text should be, if it is not.
func plain(s string, most int, controls string) string {
	for _, r := range s {
		if unicode.IsControl(r) && !strings.ContainsRune(controls, r) {
			return "a text without control characters"
		}
	}
	if n := len([]rune(s)); n > most {
		return "a text of at most " + strconv.Itoa(most) + " letters, and not " + strconv.Itoa(n)
	}
	return ""
}

func (v line) write() node              { return node{kind: textNode, text: *v.p} }
func (v line) set(from value)           { *v.p = *from.(line).p }
func (v line) same(as value) bool       { return *v.p == *as.(line).p }
func (v lines) set(from value)          { *v.p = *from.(lines).p }
func (v lines) same(as value) bool      { return *v.p == *as.(lines).p }
func (v line) show(measure.Unit) string { return *v.p }
func (v line) take(text string, _ measure.Unit) string {
	return takeText(v.p, text, lineMost, "")
}
func (v lines) take(text string, _ measure.Unit) string {
	return takeText(v.p, strings.ReplaceAll(text, "\r\n", "\n"), linesMost, "\n\t")
}

func takeText(p *string, text string, most int, controls string) string {
	text = strings.ToValidUTF8(strings.TrimSpace(text), "\ufffd")
	if want := plain(text, most, controls); want != "" {
		return want + " is wanted"
	}
	*p = text
	return ""
}

// word is one of some words. none is the word that stands for an empty value.
type word[T ~string] struct {
	p       *T
	none    string
	choices func() []Choice
}

func (v word[T]) read(n *node, miss missing) {
	if n.kind != textNode || v.take(n.text, 0) != "" {
		miss("", n, among(v.choices(), n.text))
	}
}
func (v word[T]) write() node        { return node{kind: textNode, text: v.show(0)} }
func (v word[T]) set(from value)     { *v.p = *from.(word[T]).p }
func (v word[T]) same(as value) bool { return *v.p == *as.(word[T]).p }
func (v word[T]) show(measure.Unit) string {
	if *v.p == "" {
		return v.none
	}
	return string(*v.p)
}
func (v word[T]) take(text string, _ measure.Unit) string {
	for _, c := range v.choices() {
		if c.Value == text {
			*v.p = T(text)
			if text == v.none {
				*v.p = ""
			}
			return ""
		}
	}
	return strconv.Quote(text) + " is not " + among(v.choices(), text)
}

// mostNamed is how many words a fault names.
const mostNamed = 16

// among says which words are allowed instead of the text, or the one it is near to.
func among(choices []Choice, text string) string {
	if len(choices) <= mostNamed {
		return oneOf(choices)
	}
	names := make([]string, len(choices))
	for i, c := range choices {
		names[i] = c.Value
	}
	if near := nearest(text, names); near != "" {
		return "known here; is it " + near + "?"
	}
	return "known here; words known are " + strings.Join(names[:3], ", ") + " and " + strconv.Itoa(len(names)-3) + " more"
}

func oneOf(choices []Choice) string {
	names := make([]string, len(choices))
	for i, c := range choices {
		names[i] = c.Value
	}
	return "one of " + strings.Join(names, ", ")
}

// chooser is a value that is one of some words.
type chooser interface {
	value
	options() []Choice
}

func (v word[T]) options() []Choice { return v.choices() }

// truth is yes or no.
type truth struct{ p *bool }

func (v truth) read(n *node, miss missing) {
	if n.kind != boolNode {
		miss("", n, "true or false")
		return
	}
	*v.p = n.text == "true"
}
func (v truth) write() node              { return node{kind: boolNode, text: strconv.FormatBool(*v.p)} }
func (v truth) set(from value)           { *v.p = *from.(truth).p }
func (v truth) same(as value) bool       { return *v.p == *as.(truth).p }
func (v truth) show(measure.Unit) string { return strconv.FormatBool(*v.p) }
func (v truth) take(text string, _ measure.Unit) string {
	if text != "true" && text != "false" {
		return "true or false is wanted"
	}
	*v.p = text == "true"
	return ""
}

// stations is a profile: a list of [place, value] pairs.
type stations struct{ p *geom.Profile }

func (v stations) read(n *node, miss missing) {
	if n.kind != listNode {
		miss("", n, "a list of stations, like [[0, 762], [1981, 760]]")
		return
	}
	if len(n.items) == 0 {
		miss("", &node{text: "an empty list"}, "a list of 1 to "+strconv.Itoa(door.Stations)+" stations; leave the field out where nothing was measured")
		return
	}
	p := make(geom.Profile, 0, len(n.items))
	for i := range n.items {
		pair, under := &n.items[i], index(i)
		if pair.kind != listNode || len(pair.items) != 2 {
			miss(under, pair, "a station, [place, value]")
			continue
		}
		sound := true
		for k := range pair.items {
			if pair.items[k].kind != numberNode {
				miss(under+index(k), &pair.items[k], wantNumber)
				sound = false
			}
		}
		if sound {
			p = append(p, geom.Station{At: pair.items[0].num, Value: pair.items[1].num})
		}
	}
	if len(p) == len(n.items) {
		*v.p = p
	}
}

func index(i int) string { return "[" + strconv.Itoa(i) + "]" }

func (v stations) write() node {
	n := node{kind: listNode}
	for _, s := range *v.p {
		n.items = append(n.items, row(s.At, s.Value))
	}
	return n
}
func (v stations) set(from value)     { *v.p = slices.Clone(*from.(stations).p) }
func (v stations) same(as value) bool { return slices.Equal(*v.p, *as.(stations).p) }
func (v stations) show(u measure.Unit) string {
	var all []string
	for _, s := range *v.p {
		all = append(all, measure.Exact(s.At, u)+": "+measure.Exact(s.Value, u))
	}
	return strings.Join(all, "; ")
}
func (v stations) take(string, measure.Unit) string { return "a value for one station at a time" }

// list is a list of groups.
type list interface {
	value
	len() int
	insert(i int)
	remove(i int)
}

type listOf[T any] struct {
	p     *[]T
	alike func(a, b []T) bool // not needed of a list another is compared with
}

func (v listOf[T]) len() int           { return len(*v.p) }
func (v listOf[T]) insert(i int)       { var zero T; *v.p = geom.Insert(*v.p, i, zero) }
func (v listOf[T]) remove(i int)       { *v.p = slices.Delete(*v.p, i, i+1) }
func (v listOf[T]) set(from value)     { *v.p = slices.Clone(*from.(listOf[T]).p) }
func (v listOf[T]) same(as value) bool { return v.alike(*v.p, *as.(listOf[T]).p) }

// A list's groups are read, written and shown field by field, by the walks.
func (v listOf[T]) read(*node, missing)              {}
func (v listOf[T]) write() node                      { return node{kind: listNode} }
func (v listOf[T]) show(measure.Unit) string         { return strconv.Itoa(len(*v.p)) }
func (v listOf[T]) take(string, measure.Unit) string { return "a value for one field at a time" }

func num(x float64) node { return node{kind: numberNode, num: x} }

// row is a list of numbers.
func row(xs ...float64) node {
	n := node{kind: listNode}
	for _, x := range xs {
		n.items = append(n.items, num(x))
	}
	return n
}

var _ = []list{listOf[door.Hinge]{}, listOf[door.Rail]{}, listOf[door.Muntin]{}}
