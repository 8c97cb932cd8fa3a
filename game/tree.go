package game

import (
	"bytes"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"unicode/utf16"
	"unicode/utf8"
)

// A job file is JSON. It is read into a tree of our own, not by encoding/json,
// because a person's slips want names: a field given twice, a NaN where a length
// belongs and an unknown word are told with their path and do not end the reading.

type nodeKind int

const (
	nullNode nodeKind = iota
	boolNode
	numberNode
	textNode
	listNode
	groupNode
	oddNode // NaN, Infinity: no JSON, but what programs write when a sum went wrong
)

// node is one JSON value. text is a number's or a literal's own letters, or a
// string's content.
type node struct {
	kind    nodeKind
	text    string
	num     float64
	items   []node
	members []member
}

type member struct {
	name string
	line int
	node
}

// said gives the node as a fault shows it.
func (n *node) said() string {
	switch n.kind {
	case textNode:
		r := []rune(n.text)
		if len(r) > 40 {
			return strconv.Quote(string(r[:40])) + "..."
		}
		return strconv.Quote(n.text)
	case listNode:
		return "a list"
	case groupNode:
		return "a group in braces"
	}
	return n.text
}

// get gives the first member of that name.
func (n *node) get(name string) *node {
	for i := range n.members {
		if n.members[i].name == name {
			return &n.members[i].node
		}
	}
	return nil
}

// take takes the member of that name out.
func (n *node) take(name string) (m node, had bool) {
	for i := range n.members {
		if n.members[i].name == name {
			m = n.members[i].node
			n.members = slices.Delete(n.members, i, i+1)
			return m, true
		}
	}
	return m, false
}

// put appends a member.
func (n *node) put(name string, m node) { n.members = append(n.members, member{name: name, node: m}) }

// strangers tells of every member that is not among the names, and of every one
// given twice.
func (n *node) strangers(names []string, miss missing) {
	seen := map[string]int{}
	for i := range n.members {
		m := &n.members[i]
		if first, twice := seen[m.name]; twice {
			miss("."+show(m.name), nil, fmt.Sprintf("given twice, on lines %d and %d", first, m.line))
			continue
		}
		seen[m.name] = m.line
		if !slices.Contains(names, m.name) {
			want := "no such field; " + strings.Join(names, ", ") + " are known here"
			if near := nearest(m.name, names); near != "" {
				want = "no such field; is it " + near + "?"
			}
			miss("."+show(m.name), nil, want)
		}
	}
}

// show gives a name a person gave as a path shows it.
func show(name string) string {
	if name == "" || len(name) > 40 || strings.ContainsFunc(name, func(r rune) bool {
		return r != '_' && !(r >= '0' && r <= '9') && !(r >= 'A' && r <= 'Z') && !(r >= 'a' && r <= 'z')
	}) {
		return (&node{kind: textNode, text: name}).said()
	}
	return name
}

// nearest gives the name that is two slips of a letter away at most, or "".
func nearest(name string, names []string) string {
	best, at := "", 3
	if len(name) > 40 {
		return ""
	}
	for _, n := range names {
		if d := slips(name, n); d < at && d < len(n) {
			best, at = n, d
		}
	}
	return best
}

// slips counts the letters to change, add or take away to make a into b.
func slips(a, b string) int {
	row := make([]int, len(b)+1)
	for k := range row {
		row[k] = k
	}
	for i := range len(a) {
		diagonal := row[0]
		row[0] = i + 1
		for k := range len(b) {
			cost := diagonal
			if a[i] != b[k] {
				cost++
			}
			diagonal = row[k+1]
			row[k+1] = min(cost, row[k]+1, row[k+1]+1)
		}
	}
	return row[len(b)]
}

// deepest a job file may nest; a floor's heights need four levels.
const deepest = 16

type scanner struct {
	data  []byte
	pos   int
	line  int // from 1; lines end in white space only
	depth int
}

// syntax is a place where the text stops being JSON.
type syntax struct {
	pos  int
	want string
}

// scan reads the text as one JSON value.
func scan(data []byte) (root node, err *syntax) {
	s := &scanner{line: 1, data: bytes.TrimPrefix(data, []byte("\ufeff"))}
	cut := len(data) - len(s.data)
	defer func() {
		if err != nil {
			err.pos += cut
		}
	}()
	if i := notUTF8(s.data); i >= 0 {
		return node{}, &syntax{i, "the text must be UTF-8, and the byte here is not"}
	}
	if root, err = s.value(); err != nil {
		return node{}, err
	}
	s.space()
	if s.pos < len(s.data) {
		return node{}, s.wants("the end of the file")
	}
	return root, nil
}

func notUTF8(b []byte) int {
	if utf8.Valid(b) {
		return -1
	}
	for i := 0; ; {
		r, n := utf8.DecodeRune(b[i:])
		if r == utf8.RuneError && n == 1 {
			return i
		}
		i += n
	}
}

// wants says what should stand at the scanner's place instead of what does.
func (s *scanner) wants(what string) *syntax {
	if s.pos >= len(s.data) {
		return &syntax{s.pos, "the file ends where " + what + " is wanted"}
	}
	r, _ := utf8.DecodeRune(s.data[s.pos:])
	return &syntax{s.pos, what + " is wanted, and " + strconv.QuoteRune(r) + " stands there"}
}

func (s *scanner) space() {
	for s.pos < len(s.data) {
		switch s.data[s.pos] {
		case '\n':
			s.line++
			s.pos++
		case ' ', '\t', '\r':
			s.pos++
		default:
			return
		}
	}
}

func (s *scanner) peek() byte {
	if s.pos < len(s.data) {
		return s.data[s.pos]
	}
	return 0
}

func (s *scanner) value() (node, *syntax) {
	s.space()
	switch c := s.peek(); {
	case c == '{' || c == '[':
		if s.depth == deepest {
			return node{}, &syntax{s.pos, "nested deeper than " + strconv.Itoa(deepest) + " levels"}
		}
		s.depth++
		defer func() { s.depth-- }()
		if c == '{' {
			return s.group()
		}
		return s.list()
	case c == '"':
		text, err := s.text()
		return node{kind: textNode, text: text}, err
	case c == '-' || c >= '0' && c <= '9':
		return s.number()
	case c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z':
		return s.literal()
	}
	return node{}, s.wants("a value")
}

func (s *scanner) group() (n node, err *syntax) {
	n.kind = groupNode
	s.pos++
	for first := true; ; first = false {
		s.space()
		if s.peek() == '}' && first {
			s.pos++
			return n, nil
		}
		if s.peek() != '"' {
			return n, s.wants("a field's name in quotes")
		}
		m := member{line: s.line}
		if m.name, err = s.text(); err != nil {
			return n, err
		}
		s.space()
		if s.peek() != ':' {
			return n, s.wants("a colon")
		}
		s.pos++
		if m.node, err = s.value(); err != nil {
			return n, err
		}
		n.members = append(n.members, m)
		s.space()
		switch s.peek() {
		case ',':
			s.pos++
		case '}':
			s.pos++
			return n, nil
		default:
			return n, s.wants("a comma or a closing brace")
		}
	}
}

func (s *scanner) list() (n node, err *syntax) {
	n.kind = listNode
	s.pos++
	for first := true; ; first = false {
		s.space()
		if s.peek() == ']' && first {
			s.pos++
			return n, nil
		}
		item, err := s.value()
		if err != nil {
			return n, err
		}
		n.items = append(n.items, item)
		s.space()
		switch s.peek() {
		case ',':
			s.pos++
		case ']':
			s.pos++
			return n, nil
		default:
			return n, s.wants("a comma or a closing bracket")
		}
	}
}

func (s *scanner) literal() (node, *syntax) {
	from := s.pos
	for c := s.peek(); c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z'; c = s.peek() {
		s.pos++
	}
	word := string(s.data[from:s.pos])
	switch word {
	case "true", "false":
		return node{kind: boolNode, text: word}, nil
	case "null":
		return node{kind: nullNode, text: word}, nil
	}
	if odd(word) {
		return node{kind: oddNode, text: word}, nil
	}
	s.pos = from
	return node{}, s.wants("a value")
}

func odd(word string) bool {
	switch word {
	case "NaN", "nan", "Inf", "inf", "Infinity", "infinity":
		return true
	}
	return false
}

func (s *scanner) digits() bool {
	from := s.pos
	for c := s.peek(); c >= '0' && c <= '9'; c = s.peek() {
		s.pos++
	}
	return s.pos > from
}

func (s *scanner) number() (node, *syntax) {
	from := s.pos
	if s.peek() == '-' {
		s.pos++
	}
	if c := s.peek(); c >= 'A' && c <= 'z' {
		n, err := s.literal()
		if err == nil && n.kind != oddNode {
			s.pos = from + 1
			return node{}, s.wants("a figure")
		}
		n.text = "-" + n.text
		return n, err
	}
	if s.peek() == '0' {
		s.pos++
	} else if !s.digits() {
		return node{}, s.wants("a figure")
	}
	if s.peek() == '.' {
		s.pos++
		if !s.digits() {
			return node{}, s.wants("a figure behind the point")
		}
	}
	if s.peek()|0x20 == 'e' {
		s.pos++
		if s.peek() == '+' || s.peek() == '-' {
			s.pos++
		}
		if !s.digits() {
			return node{}, s.wants("a figure in the power of ten")
		}
	}
	n := node{kind: numberNode, text: string(s.data[from:s.pos])}
	n.num, _ = strconv.ParseFloat(n.text, 64)
	n.num += 0 // −0 is 0
	if math.IsInf(n.num, 0) {
		n.kind = oddNode
	}
	return n, nil
}

var escapes = map[byte]byte{'"': '"', '\\': '\\', '/': '/', 'b': '\b', 'f': '\f', 'n': '\n', 'r': '\r', 't': '\t'}

func (s *scanner) text() (string, *syntax) {
	s.pos++
	var out []byte
	for {
		c := s.peek()
		switch {
		case s.pos >= len(s.data):
			return "", s.wants("a closing quote")
		case c == '"':
			s.pos++
			return string(out), nil
		case c < 0x20:
			return "", s.wants("a closing quote")
		case c != '\\':
			out = append(out, c)
			s.pos++
			continue
		}
		s.pos++
		if plain, ok := escapes[s.peek()]; ok {
			out = append(out, plain)
			s.pos++
			continue
		}
		if s.peek() != 'u' {
			return "", s.wants(`one of "\/bfnrtu behind the backslash`)
		}
		from := s.pos - 1
		r, ok := s.unit()
		if ok && utf16.IsSurrogate(r) {
			low := rune(utf8.RuneError)
			if s.peek() == '\\' && s.pos+1 < len(s.data) && s.data[s.pos+1] == 'u' {
				s.pos++
				low, ok = s.unit()
			}
			r = utf16.DecodeRune(r, low)
			ok = ok && r != utf8.RuneError
		}
		if !ok {
			return "", &syntax{from, `\u must stand before four figures of 0-9 and a-f, and halves of one letter in pairs`}
		}
		out = utf8.AppendRune(out, r)
	}
}

// unit reads the u and the four hexadecimal digits of an escape.
func (s *scanner) unit() (rune, bool) {
	if s.pos+5 > len(s.data) {
		return 0, false
	}
	x, err := strconv.ParseUint(string(s.data[s.pos+1:s.pos+5]), 16, 16)
	s.pos += 5
	return rune(x), err == nil
}

// place turns a byte offset into a line and a column of letters, both from 1.
func place(data []byte, pos int) string {
	before := data[:min(pos, len(data))]
	line := 1 + bytes.Count(before, []byte("\n"))
	column := 1 + utf8.RuneCount(before[bytes.LastIndexByte(before, '\n')+1:])
	return fmt.Sprintf("line %d, column %d", line, column)
}
