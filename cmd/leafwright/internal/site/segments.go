package site

import (
	"bytes"
	"encoding/binary"
	"errors"
	"slices"
)

// Go's linker leaves zeros out of what a program's memory begins with, and so cuts it
// into a hundred thousand segments, each with its place before it. Packed, those places
// are a twentieth of the program, and zeros are next to nothing.

// near is how far apart, in bytes, two segments may lie to be made one.
const near = 256

// errForm says that a program is not of the form that Go's linker writes.
var errForm = errors.New("the compiled program is not of the form that Go writes: not WebAssembly, or of a later version")

// segment is a stretch of what memory begins with.
type segment struct {
	at   int
	data []byte
}

// joinSegments gives the WebAssembly program with segments that lie near each other
// made one. Memory begins the same.
func joinSegments(program []byte) ([]byte, error) {
	const header = 8
	if len(program) < header {
		return nil, errForm
	}
	out := bytes.Clone(program[:header])
	for rest := program[header:]; len(rest) > 0; {
		kind := rest[0]
		section, after, ok := counted(rest[1:])
		if !ok {
			return nil, errForm
		}
		if rest = after; kind == dataSection {
			old, ok := segments(section)
			if !ok {
				return nil, errForm
			}
			section = written(joined(old))
		}
		out = binary.AppendUvarint(append(out, kind), uint64(len(section)))
		out = append(out, section...)
	}
	return out, nil
}

// From the WebAssembly core specification, version 1, sections 5.4 and 5.5: the number of
// the section of data segments, a constant's instruction and the end of an expression.
const (
	dataSection = 11
	constant    = 0x41
	end         = 0x0b
)

// counted takes bytes with their number before them off the front.
func counted(b []byte) (part, after []byte, ok bool) {
	n, k := binary.Uvarint(b)
	if k <= 0 || n > uint64(len(b)-k) {
		return nil, nil, false
	}
	return b[k : k+int(n)], b[k+int(n):], true
}

// segments takes a section of data segments apart.
func segments(section []byte) (all []segment, ok bool) {
	n, k := binary.Uvarint(section)
	if k <= 0 {
		return nil, false
	}
	b := section[k:]
	for range n {
		if len(b) < 2 || b[0] != 0 || b[1] != constant {
			return nil, false
		}
		at, k := binary.Uvarint(b[2:])
		if k <= 0 || k > 5 || b[1+k]&0x40 != 0 { // the figure is a signed one, and must not be below zero
			return nil, false
		}
		if b = b[2+k:]; len(b) == 0 || b[0] != end {
			return nil, false
		}
		s := segment{at: int(at)}
		if s.data, b, ok = counted(b[1:]); !ok {
			return nil, false
		}
		all = append(all, s)
	}
	return all, len(b) == 0
}

// joined makes one of each run of segments that follow each other nearly. What lies
// between two of them is zero, as all memory that nothing is put in.
func joined(all []segment) (out []segment) {
	for _, s := range all {
		if last := len(out) - 1; last >= 0 {
			run := &out[last]
			from := run.at + len(run.data)
			if gap := s.at - from; gap >= 0 && gap < near && !slices.ContainsFunc(out[:last], func(o segment) bool { return o.at < s.at && from < o.at+len(o.data) }) {
				run.data = append(run.data, make([]byte, gap)...)
				run.data = append(run.data, s.data...)
				continue
			}
		}
		out = append(out, segment{s.at, bytes.Clone(s.data)})
	}
	return out
}

// written puts a section of data segments together.
func written(all []segment) []byte {
	out := binary.AppendUvarint(nil, uint64(len(all)))
	for _, s := range all {
		out = append(out, 0, constant)
		at := s.at
		for ; at > 0x3f; at >>= 7 {
			out = append(out, byte(at)|0x80)
		}
		out = append(out, byte(at), end)
		out = binary.AppendUvarint(out, uint64(len(s.data)))
		out = append(out, s.data...)
	}
	return out
}
