package game

import (
	"bytes"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"leafwright/game/measure"
	"leafwright/geom/door"
	"leafwright/geom/survey"
)

// Readings can be kept as a table of text, one reading a line, under a header of
// the job file's own words:
//
//	kind; at; value
//	# the opening, before the skirting comes off
//	opening_width; 1000; 2' 7 3/8"
//
// The columns stand in any order, and those not needed may be left out. They are
// set apart by tabs, semicolons or commas, whichever the header has. What holds a
// separator is put in double quotes, and a quote in there is doubled. Lengths are
// as typed, a plain number in mm, with a point or a comma; lines that begin with #
// and empty ones are passed over.

// csvSeparators in the order they are looked for in a header.
const csvSeparators = "\t;,"

const headerWanted = "a line with the columns' names is wanted first, like kind, at, value"

// cell is one cell of the table. A quoted one is kept as it stands.
type cell struct {
	text   string
	quoted bool
}

// csvLine is one line that is no comment.
type csvLine struct {
	number int
	cells  []cell
}

// ParseReadings reads a table of readings. The error is a [Faults] that holds
// everything that is wrong with it, each under its line.
func ParseReadings(data []byte) ([]Reading, error) {
	if len(data) > Largest {
		return nil, Faults{{Path: "file", Value: strconv.Itoa(len(data)) + " bytes", Want: "at most " + strconv.Itoa(Largest)}}
	}
	data = bytes.TrimPrefix(data, []byte("\ufeff"))
	if i := notUTF8(data); i >= 0 {
		return nil, Faults{{Path: lineOf(data, i), Want: "the text must be UTF-8, and the byte here is not"}}
	}
	t := csvReader{text: strings.ReplaceAll(strings.ReplaceAll(string(data), "\r\n", "\n"), "\r", "\n")}
	header, any := t.header()
	if len(t.faults) == 0 && !any {
		t.faults = Faults{{Path: "file", Want: "empty; " + headerWanted}}
	}
	if len(t.faults) > 0 {
		return nil, t.faults
	}
	var out []Reading
	for {
		l, more := t.line()
		if !more {
			break
		}
		if len(out) == survey.ReadingsMost {
			t.fault(l.number, "", door.Fault{Want: "more than " + strconv.Itoa(survey.ReadingsMost) + " readings"})
			break
		}
		out = append(out, t.reading(header, l))
	}
	if len(t.faults) > 0 {
		return nil, t.faults
	}
	return out, nil
}

func lineOf(data []byte, pos int) string {
	return "line " + strconv.Itoa(1+bytes.Count(data[:pos], []byte("\n")))
}

type csvReader struct {
	text      string
	number    int  // of the line last begun
	separator byte // 0 while not known
	faults    Faults
}

// fault notes what is wrong in a column of a line.
func (t *csvReader) fault(number int, column string, f door.Fault) {
	f.Path = "line " + strconv.Itoa(number)
	if column != "" {
		f.Path += ", " + column
	}
	switch {
	case len(t.faults) < mostFaults:
		t.faults = append(t.faults, f)
	case len(t.faults) == mostFaults:
		t.faults = append(t.faults, door.Fault{Path: "file", Want: "and more faults beyond these"})
	}
}

// header reads the names of the columns; any tells whether there is a line at all.
func (t *csvReader) header() (fields []*field, any bool) {
	parts := find(readingsPath).parts
	names := make([]string, len(parts))
	for k := range parts {
		names[k] = parts[k].name
	}
	l, any := t.line()
	if !any {
		return nil, false
	}
	if !slices.ContainsFunc(l.cells, func(c cell) bool { return named(parts, strings.ToLower(strings.TrimSpace(c.text))) != nil }) {
		t.fault(l.number, "", door.Fault{Want: headerWanted})
		return nil, true
	}
	for _, c := range l.cells {
		name := strings.ToLower(strings.TrimSpace(c.text))
		f := named(parts, name)
		switch {
		case f == nil:
			want := "no such column; " + strings.Join(names, ", ") + " are known"
			if near := nearest(name, names); near != "" {
				want = "no such column; is it " + near + "?"
			}
			t.fault(l.number, show(name), door.Fault{Want: want})
		case slices.Contains(fields, f):
			t.fault(l.number, name, door.Fault{Want: "a column given twice"})
		}
		fields = append(fields, f)
	}
	for _, name := range []string{"kind", "value"} {
		if len(t.faults) == 0 && !slices.Contains(fields, named(parts, name)) {
			t.fault(l.number, name, door.Fault{Want: "missing among the columns"})
		}
	}
	return fields, true
}

// line gives the next line that says something.
func (t *csvReader) line() (l csvLine, more bool) {
	for t.text != "" {
		t.number++
		whole, _, _ := strings.Cut(t.text, "\n")
		if said := strings.TrimSpace(whole); said == "" || said[0] == '#' {
			t.text = strings.TrimPrefix(t.text[len(whole):], "\n")
			continue
		}
		if t.separator == 0 {
			t.separator = guess(whole)
		}
		l = t.cells()
		if !slices.ContainsFunc(l.cells, func(c cell) bool { return c.text != "" || c.quoted }) {
			continue // nothing but separators, as some programs write
		}
		return l, true
	}
	return csvLine{}, false
}

// guess takes the separator from the header.
func guess(header string) byte {
	for i := range csvSeparators {
		if strings.IndexByte(header, csvSeparators[i]) >= 0 {
			return csvSeparators[i]
		}
	}
	return ','
}

// cells cuts the line at hand; a quoted cell may not run on to the next.
func (t *csvReader) cells() csvLine {
	l := csvLine{number: t.number}
	whole, _, _ := strings.Cut(t.text, "\n")
	t.text = strings.TrimPrefix(t.text[len(whole):], "\n")
	for {
		trimmed := strings.TrimLeft(whole, " \t")
		if t.separator == '\t' {
			trimmed = strings.TrimLeft(whole, " ")
		}
		if !strings.HasPrefix(trimmed, `"`) {
			text, rest, more := strings.Cut(whole, string(t.separator))
			l.cells = append(l.cells, cell{strings.TrimSpace(text), false})
			if !more {
				return l
			}
			whole = rest
			continue
		}
		text, rest, closed := unquote(trimmed[1:])
		rest = strings.TrimLeft(rest, " ")
		if !closed || rest != "" && rest[0] != t.separator {
			t.fault(l.number, "", door.Fault{Want: "a quoted cell must end with a quote before the next separator or the end of the line; a quote inside is doubled"})
			return l
		}
		l.cells = append(l.cells, cell{text, true})
		if rest == "" {
			return l
		}
		whole = rest[1:]
	}
}

// unquote reads up to the closing quote.
func unquote(s string) (text, rest string, closed bool) {
	var b strings.Builder
	for {
		before, after, found := strings.Cut(s, `"`)
		b.WriteString(before)
		if !found {
			return b.String(), "", false
		}
		if !strings.HasPrefix(after, `"`) {
			return b.String(), after, true
		}
		b.WriteByte('"')
		s = after[1:]
	}
}

// reading makes a reading of a line.
func (t *csvReader) reading(header []*field, l csvLine) Reading {
	j := Job{Readings: make([]Reading, 1)}
	had := len(t.faults)
	if n := len(l.cells); n > len(header) {
		t.fault(l.number, "", door.Fault{Value: strconv.Itoa(n) + " cells", Want: "at most " + strconv.Itoa(len(header)) + ", one for each column"})
		return j.Readings[0]
	}
	for k, c := range l.cells {
		f := header[k]
		if c.text == "" && !c.quoted {
			continue
		}
		if why := takeCell(f.at(&j, 0), c); why != "" {
			t.fault(l.number, f.name, door.Fault{Want: why})
		}
	}
	r := &j.Readings[0]
	for _, f := range r.check("") {
		column := strings.TrimPrefix(f.Path, ".")
		if !t.told(had, l.number, column) {
			t.fault(l.number, column, f)
		}
	}
	return *r
}

// told tells whether a column of a line has a fault already.
func (t *csvReader) told(from, number int, column string) bool {
	path := "line " + strconv.Itoa(number) + ", " + column
	for _, f := range t.faults[min(from, len(t.faults)):] {
		if f.Path == path {
			return true
		}
	}
	return false
}

// takeCell takes what stands in a cell.
func takeCell(v value, c cell) (why string) {
	switch v := v.(type) {
	case truth:
		switch strings.ToLower(c.text) {
		case "true", "yes", "x", "1":
			*v.p = true
		case "false", "no", "0", "":
		default:
			return (&node{kind: textNode, text: c.text}).said() + " is not yes or no"
		}
		return ""
	case line: // kept as it stands
		if want := plain(c.text, lineMost, ""); want != "" {
			return want + " is wanted"
		}
		*v.p = c.text
		return ""
	case verbatim:
		if why := v.take(c.text, measure.MM); why != "" {
			return (&node{kind: textNode, text: c.text}).said() + ": " + why
		}
		return ""
	}
	return v.take(strings.TrimSpace(c.text), measure.MM)
}

// EncodeReadings writes readings as a table with commas, without the columns that
// none of them needs. [ParseReadings] reads it back the same.
func EncodeReadings(readings []Reading) []byte {
	j := Job{Readings: readings}
	parts := find(readingsPath).parts
	var columns []*field
	for k := range parts {
		f := parts[k]
		used := f.name == "kind" || f.name == "value"
		for i := range readings {
			used = used || !f.at(&j, i).same(f.std(&j, i))
		}
		if used {
			columns = append(columns, f)
		}
	}
	var b []byte
	for k, f := range columns {
		if k > 0 {
			b = append(b, ',')
		}
		b = append(b, f.name...)
	}
	b = append(b, '\n')
	for i := range readings {
		for k, f := range columns {
			if k > 0 {
				b = append(b, ',')
			}
			v := f.at(&j, i)
			if f.std != nil && v.same(f.std(&j, i)) {
				continue
			}
			switch v := v.(type) {
			case truth:
				b = append(b, "yes"...)
			case degrees:
				b = append(b, tidy(inDegrees(*v.p))...)
			default:
				b = csvQuoted(b, v.show(measure.MM))
			}
		}
		b = append(b, '\n')
	}
	return b
}

// csvQuoted writes a cell, in quotes where it would not be read back the same.
func csvQuoted(b []byte, s string) []byte {
	first, _ := utf8.DecodeRuneInString(s)
	if s != "" && first != '#' && strings.TrimSpace(s) == s && !strings.ContainsAny(s, csvSeparators+`"`) {
		return append(b, s...)
	}
	return append(append(append(b, '"'), strings.ReplaceAll(s, `"`, `""`)...), '"')
}
