package game

import (
	"strconv"
	"strings"

	"leafwright/geom/door"
	"leafwright/geom/trim"
)

// FileGroup is a group of fields of a file that is no job but is written as one is, such
// as a lesson's. Each method takes one field out of it; what is wrong with a field goes
// to the faults the group was read with, under its path, and the field is then nought.
// A nil group has no fields.
type FileGroup struct {
	n     *node
	path  string
	known []string
	all   *Faults
}

// ReadGroup reads a text of one group. Nil when it is none; the faults say why. Fields
// are told under the path, which may be empty.
func ReadGroup(data []byte, path string, all *Faults) *FileGroup {
	if len(data) > Largest {
		*all = append(*all, door.Fault{Path: "file", Value: strconv.Itoa(len(data)) + " bytes", Want: "at most " + strconv.Itoa(Largest)})
		return nil
	}
	root, bad := scan(data)
	g := &FileGroup{n: &root, path: path, all: all}
	switch {
	case bad != nil && path != "":
		*all = append(*all, door.Fault{Path: path, Want: bad.want})
	case bad != nil:
		*all = append(*all, door.Fault{Path: place(data, bad.pos), Want: bad.want})
	case root.kind != groupNode:
		g.Fault("", root.said(), "a group in braces")
	default:
		return g
	}
	return nil
}

// Fault notes what is wrong with a field; value is what stands there, or empty.
func (g *FileGroup) Fault(name, value, want string) {
	if g == nil {
		return
	}
	path := join(g.path, name)
	if name == "" {
		path = g.path
	}
	if path == "" {
		path = "file"
	}
	if len(*g.all) < mostFaults {
		*g.all = append(*g.all, door.Fault{Path: path, Value: value, Want: want})
	}
}

// take gives a field's node, nil where it is missing.
func (g *FileGroup) take(name, want string, need bool) *node {
	if g == nil {
		return nil
	}
	g.known = append(g.known, name)
	n := g.n.get(name)
	if n == nil && need {
		g.Fault(name, "", "missing; "+want+" is wanted")
	}
	return n
}

// Has tells whether the field is given.
func (g *FileGroup) Has(name string) bool { return g != nil && g.n.get(name) != nil }

// Text gives a text of at most so many letters, of one line or of many.
func (g *FileGroup) Text(name string, most int, many, need bool) (s string) {
	if n := g.take(name, "a text in quotes", need); n != nil {
		readText(&s, n, g.under(name), most, controls(many))
	}
	return s
}

func controls(many bool) string {
	if many {
		return "\n\t"
	}
	return ""
}

// Texts gives a list of texts of many lines, so many at most.
func (g *FileGroup) Texts(name string, items, most int) (out []string) {
	for _, at := range g.items(name, items) {
		s := ""
		readText(&s, at.n, g.under(at.path), most, "\n\t")
		out = append(out, s)
	}
	return out
}

// Number gives a number within the range and whether it is there.
func (g *FileGroup) Number(name string, r door.Range, need bool) (x float64, given bool) {
	n := g.take(name, "a number "+r.String(), need)
	if n == nil {
		return 0, false
	}
	if n.kind != numberNode {
		g.Fault(name, n.said(), wantNumber)
		return 0, false
	}
	if f, bad := r.Fault(join(g.path, name), n.num, false); bad {
		g.Fault(name, f.Value, f.Want)
		return 0, false
	}
	return n.num, true
}

// Whole gives a whole number likewise.
func (g *FileGroup) Whole(name string, r door.Range, need bool) (x int, given bool) {
	v, given := g.Number(name, r, need)
	if given && v != float64(int(v)) {
		g.Fault(name, g.n.get(name).said(), "a whole number")
		return 0, false
	}
	return int(v), given
}

// Version wants the field to be the version of the file that is read here, 1 and up;
// what is that sort of file.
func (g *FileGroup) Version(name string, version int, what string) {
	n := g.take(name, "", false)
	switch {
	case g == nil:
	case n == nil:
		g.Fault(name, "", "missing; "+strconv.Itoa(version)+" says that this is "+what+", and its version")
	case n.kind != numberNode || n.num != float64(version):
		g.Fault(name, n.said(), strconv.Itoa(version)+", the version this program reads")
	}
}

// Flag gives true or false, false where it is missing.
func (g *FileGroup) Flag(name string) (yes bool) {
	if n := g.take(name, "true or false", false); n != nil {
		truth{&yes}.read(n, g.under(name))
	}
	return yes
}

// Word gives one of the words, empty where it is missing.
func (g *FileGroup) Word(name string, words []string, need bool) string {
	n := g.take(name, "one of "+strings.Join(words, ", "), need)
	if n == nil {
		return ""
	}
	return g.word(name, n, words)
}

// Words gives a list of words, so many at most.
func (g *FileGroup) Words(name string, words []string, items int) (out []string) {
	for _, at := range g.items(name, items) {
		out = append(out, g.word(at.path, at.n, words))
	}
	return out
}

func (g *FileGroup) word(name string, n *node, words []string) string {
	for _, w := range words {
		if n.kind == textNode && n.text == w {
			return w
		}
	}
	choices := make([]Choice, len(words))
	for i, w := range words {
		choices[i].Value = w
	}
	want := among(choices, n.text)
	if near := nearest(n.text, words); near != "" && n.kind == textNode {
		want = "known here; is it " + near + "?"
	}
	g.Fault(name, n.said(), want)
	return ""
}

// Group gives a group within this one, nil where it is missing.
func (g *FileGroup) Group(name string) *FileGroup {
	n := g.take(name, "", false)
	if n == nil {
		return nil
	}
	return g.inner(name, n)
}

// Groups gives the groups of a list, so many at most.
func (g *FileGroup) Groups(name string, most int) (out []*FileGroup) {
	for _, at := range g.items(name, most) {
		if inner := g.inner(at.path, at.n); inner != nil {
			out = append(out, inner)
		}
	}
	return out
}

func (g *FileGroup) inner(name string, n *node) *FileGroup {
	if n.kind != groupNode {
		g.Fault(name, n.said(), "a group in braces")
		return nil
	}
	return &FileGroup{n: n, path: join(g.path, name), all: g.all}
}

// item is a value of a list and its path.
type item struct {
	path string
	n    *node
}

func (g *FileGroup) items(name string, most int) (out []item) {
	n := g.take(name, "a list", false)
	switch {
	case n == nil:
	case n.kind != listNode:
		g.Fault(name, n.said(), "a list")
	case len(n.items) > most:
		g.Fault(name, strconv.Itoa(len(n.items))+" items", "at most "+strconv.Itoa(most))
	default:
		for i := range n.items {
			out = append(out, item{name + index(i), &n.items[i]})
		}
	}
	return out
}

// Job gives a job written within the file, and whether it is a sound one.
func (g *FileGroup) Job(name string) (j Job, good bool) {
	n := g.take(name, "a job", false)
	if n == nil {
		return j, false
	}
	j, err := parse(n)
	faults, _ := err.(Faults)
	for _, f := range faults {
		g.Fault(name+"."+f.Path, f.Value, f.Want)
	}
	return j, err == nil
}

// Move gives a move written within the file, and whether it is a sound one.
func (g *FileGroup) Move(name string) (m trim.Move, good bool) {
	n := g.take(name, "a move in braces", true)
	if n == nil {
		return m, false
	}
	m, faults := takeMove(string(n.flat(nil)), join(g.path, name))
	*g.all = append(*g.all, faults...)
	for _, f := range m.Check() {
		if len(faults) == 0 {
			g.Fault(name+"."+f.Path, f.Value, f.Want)
		}
	}
	return m, len(faults) == 0 && len(m.Check()) == 0
}

// Ignore takes a field for known, whatever stands there.
func (g *FileGroup) Ignore(name string) { g.take(name, "", false) }

// Done tells of every field that is given twice or that nothing asked for.
func (g *FileGroup) Done() {
	if g != nil {
		g.n.strangers(g.known, func(under string, n *node, want string) {
			said := ""
			if n != nil {
				said = n.said()
			}
			g.Fault(strings.TrimPrefix(under, "."), said, want)
		})
	}
}

// under gives a report for what is wrong with a field.
func (g *FileGroup) under(name string) missing {
	return func(under string, n *node, want string) {
		said := ""
		if n != nil {
			said = n.said()
		}
		g.Fault(name+under, said, want)
	}
}

// Quoted gives a text as a file has it, in quotes.
func Quoted(s string) string { return string(quoted(nil, s)) }
