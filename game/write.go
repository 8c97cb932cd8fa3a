package game

import (
	"math"
	"strconv"
	"strings"
	"unicode/utf8"
)

// Encode writes the job as a file: fields in the table's order, those that are
// what they would be when left out left out, one line feed at the end. A job that
// passes its [Job.Check] is read back the same.
func Encode(j Job) []byte {
	j = j.filed()
	j.rename()
	root := node{kind: groupNode}
	root.put(versionField, num(Version))
	root.members = append(root.members, written(table(), &j, "", 0).members...)
	return root.print()
}

// written gives the members of a group that are not what they would be when left out.
func written(fs []*field, j *Job, path string, i int) node {
	n := node{kind: groupNode}
	for k := range fs {
		f := fs[k]
		here := join(path, f.name)
		switch {
		case j.IsSurveyed() && isShape(here): // the readings say it
		case f.counts != nil && !f.counts(j, i):
		case f.list != nil:
			if f.std != nil && f.at(j, i).same(f.std(j, i)) && !(j.IsSurveyed() && here == readingsPath) {
				continue
			}
			items := node{kind: listNode}
			for m := range f.list(j, i).len() {
				items.items = append(items.items, written(f.parts, j, here+index(m), nested(i, m)))
			}
			n.put(f.name, items)
		case f.parts != nil:
			if g := written(f.parts, j, here, i); len(g.members) > 0 {
				n.put(f.name, g)
			}
		case f.std != nil && (f.empty(j, i) || f.at(j, i).same(f.std(j, i))):
		default:
			n.put(f.name, f.at(j, i).write())
		}
	}
	return n
}

// empty tells whether the field is a profile without stations, which is nought
// everywhere, as the field is when it is left out.
func (f *field) empty(j *Job, i int) bool {
	s, ok := f.at(j, i).(stations)
	return ok && len(*s.p) == 0
}

// lineWidth is the letters a line may have that a group or list is kept on.
const lineWidth = 100

// print gives the tree as a text: what fits on one line stands on one.
func (n *node) print() []byte {
	b := n.wide(nil, 0)
	return append(b, '\n')
}

func (n *node) wide(b []byte, indent int) []byte {
	if indent > 0 || n.kind != groupNode {
		if line := n.flat(nil); indent*2+utf8.RuneCount(line) <= lineWidth || n.kind != groupNode && n.kind != listNode {
			return append(b, line...)
		}
	}
	gap := "\n" + strings.Repeat("  ", indent+1)
	end := "\n" + strings.Repeat("  ", indent)
	if n.kind == listNode {
		b = append(b, '[')
		for i := range n.items {
			if i > 0 {
				b = append(b, ',')
			}
			b = append(b, gap...)
			b = n.items[i].wide(b, indent+1)
		}
		return append(append(b, end...), ']')
	}
	b = append(b, '{')
	for i := range n.members {
		if i > 0 {
			b = append(b, ',')
		}
		b = append(b, gap...)
		b = append(quoted(b, n.members[i].name), ": "...)
		b = n.members[i].wide(b, indent+1)
	}
	return append(append(b, end...), '}')
}

func (n *node) flat(b []byte) []byte {
	switch n.kind {
	case numberNode:
		if n.text != "" { // as it was typed
			return append(b, n.text...)
		}
		return append(b, tidy(n.num)...)
	case textNode:
		return quoted(b, n.text)
	case listNode:
		b = append(b, '[')
		for i := range n.items {
			if i > 0 {
				b = append(b, ", "...)
			}
			b = n.items[i].flat(b)
		}
		return append(b, ']')
	case groupNode:
		b = append(b, '{')
		for i := range n.members {
			if i > 0 {
				b = append(b, ", "...)
			}
			b = append(quoted(b, n.members[i].name), ": "...)
			b = n.members[i].flat(b)
		}
		return append(b, '}')
	}
	return append(b, n.text...)
}

// tidy writes a number in the fewest figures that are read back as it.
func tidy(x float64) string {
	if a := math.Abs(x); x != 0 && (a < 1e-6 || a >= 1e15) {
		return strconv.FormatFloat(x, 'g', -1, 64)
	}
	return strconv.FormatFloat(x, 'f', -1, 64)
}

// quoted writes a JSON string.
func quoted(b []byte, s string) []byte {
	const hex = "0123456789abcdef"
	b = append(b, '"')
	for _, r := range s {
		switch {
		case r == '"' || r == '\\':
			b = append(b, '\\', byte(r))
		case r == '\n':
			b = append(b, `\n`...)
		case r == '\t':
			b = append(b, `\t`...)
		case r < 0x20 || r == 0x7f || r == '\u2028' || r == '\u2029':
			b = append(b, `\u`...)
			for shift := 12; shift >= 0; shift -= 4 {
				b = append(b, hex[r>>shift&15])
			}
		default:
			b = utf8.AppendRune(b, r)
		}
	}
	return append(b, '"')
}
