package game

import (
	"slices"

	"leafwright/geom"
	"leafwright/geom/door"
)

// field is one field of the job file. A group has parts; a list of groups has
// parts and a list; everything else has at.
type field struct {
	name, label, help string

	need   bool       // must be in the file
	limits door.Range // of a length, in mm, or of degrees
	unit   string     // of a length that is another number; "" for mm
	parts  []*field

	// at gives where the value lives in a job; std what it is when it is left out,
	// from fields before it in the table. i is the place in the list the field is in,
	// as [nested] counts it.
	at  func(j *Job, i int) value
	std func(j *Job, i int) value
	// counts tells whether the field is one of its item's, which may turn on a field
	// before it; nil where it always is. One that is not is never written.
	counts func(j *Job, i int) bool
	// list gives the list whose items have the parts, count of them; item names the
	// i-th and one is what any of them is.
	list  func(j *Job, i int) list
	count door.Range
	item  func(j *Job, i int) string
	one   string

	shape  *shape
	follow func(old, j *Job) // what else changes when a person changes this field
	shown  func(j *Job) bool // whether a form shows the field; nil where it always does
	// called and within are the label and the range in a form, where they turn on the
	// item; nil where they are label and limits.
	called func(j *Job, i int) string
	within func(j *Job, i int) door.Range
}

// spread is more than any list may have.
const spread = 512

// nested gives the place of the n-th item of a list, itself in the item at place
// outer, 0 where it is in none: one number for both places.
func nested(outer, n int) int { return outer*spread + n }

// shape is what a field of stations has beside.
type shape struct {
	place, value door.Range                                // of stations, for a left-hung leaf
	turns        axis                                      // which of the two is an x of the opening
	span         func(j *Job) (first, last float64)        // the edge's ends, the one it is measured from first
	spanIn       func(j *Job, i int) (first, last float64) // likewise, where it turns on the item
	near         func(j *Job) float64                      // the size the values depart from, and its field
	from         string
	off          float64   // how far a value may stand from near, mm
	columns      [2]string // what place and value are
	slants       []slant
}

type axis int

const (
	neither axis = iota
	places
	values
)

// ranges gives what the stations may be in the job's file.
func (s *shape) ranges(j *Job) (place, value door.Range) {
	place, value = s.place, s.value
	if j.Hand == Right {
		switch s.turns {
		case places:
			place = place.Mirrored()
		case values:
			value = value.Mirrored()
		}
	}
	return place, value
}

// span gives the ends of the edge a field's stations are on, the one it is measured
// from first.
func (f *field) span(j *Job, i int) (first, last float64) {
	if f.shape.spanIn != nil {
		return f.shape.spanIn(j, i)
	}
	return f.shape.span(j)
}

// allowed gives what a length may be in a form.
func (f *field) allowed(j *Job, i int) door.Range {
	if f.within != nil {
		return f.within(j, i)
	}
	return f.limits
}

// Constructors for the table. p says where in a job the value lives.

func size(name, label string, limits door.Range, p func(j *Job) *float64) *field {
	return sizeIn(name, label, limits, func(j *Job, _ int) *float64 { return p(j) })
}

func sizeIn(name, label string, limits door.Range, p func(j *Job, i int) *float64) *field {
	return &field{name: name, label: label, limits: limits, at: func(j *Job, i int) value { return length{p(j, i)} }}
}

func angle(name, label string, limits door.Range, p func(j *Job) *geom.Angle) *field {
	return &field{name: name, label: label, limits: limits, at: func(j *Job, _ int) value { return degrees{p(j)} }}
}

func choice[T ~string](name, label, none string, choices func() []Choice, p func(j *Job) *T) *field {
	return &field{name: name, label: label, at: func(j *Job, _ int) value { return word[T]{p(j), none, choices} }}
}

func yesNo(name, label string, p func(j *Job) *bool) *field {
	return (&field{name: name, label: label, at: func(j *Job, _ int) value { return truth{p(j)} }}).or(func(*Job) value { return truth{new(bool)} })
}

func text(name, label string, p func(j *Job) *string) *field {
	return (&field{name: name, label: label, at: func(j *Job, _ int) value { return line{p(j)} }}).or(func(*Job) value { return line{new(string)} })
}

func profile(name, label string, s shape, p func(j *Job) *geom.Profile, std func(j *Job) geom.Profile) *field {
	f := &field{name: name, label: label, shape: &s, at: func(j *Job, _ int) value { return stations{p(j)} }}
	return f.or(func(j *Job) value { q := std(j); return stations{&q} })
}

func group(name string, parts ...*field) *field { return &field{name: name, parts: parts} }

func groups[T comparable](name, label, one string, count door.Range, p func(j *Job) *[]T, item func(j *Job, i int) string, parts ...*field) *field {
	return &field{
		name: name, label: label, parts: parts, count: count, item: item, one: one,
		list: func(j *Job, _ int) list { return listOf[T]{p(j), slices.Equal[[]T]} },
		at:   func(j *Job, _ int) value { return listOf[T]{p(j), slices.Equal[[]T]} },
	}
}

// must makes the field one that may not be left out.
func (f *field) must() *field { f.need = true; return f }

// or gives what the field is when it is left out.
func (f *field) or(std func(j *Job) value) *field {
	f.std = func(j *Job, _ int) value { return std(j) }
	return f
}

// orMM and orDegrees are or for a length and an angle.
func (f *field) orMM(std func(j *Job) float64) *field {
	return f.or(func(j *Job) value { x := std(j); return length{&x} })
}

func (f *field) orDegrees(x float64) *field {
	return f.or(func(*Job) value { a := geom.Angle(x) * geom.Degree; return degrees{&a} })
}

func (f *field) orFixed(x float64) *field { return f.orMM(func(*Job) float64 { return x }) }

// when says for which jobs a form shows the field.
func (f *field) when(shown func(j *Job) bool) *field { f.shown = shown; return f }

// helped adds a sentence for a person, then a change that goes along, with the one
// number an edge may be, near what its values stand near.
func (f *field) helped(help string) *field            { f.help = help; return f }
func (f *field) then(follow func(old, j *Job)) *field { f.follow = follow; return f }
func (f *field) with(s ...slant) *field               { f.shape.slants = s; return f }
func (f *field) near(from string, x func(j *Job) float64, off float64) *field {
	f.shape.from, f.shape.near, f.shape.off = from, x, off
	return f
}

// walk visits every field that holds a value, with its path and its place in its
// list; a list's items are walked through when the visit to the list says so.
func walk(fs []*field, j *Job, path string, i int, visit func(f *field, path string, i int) (into bool)) {
	for k := range fs {
		f := fs[k]
		here := join(path, f.name)
		switch {
		case f.list != nil:
			if !visit(f, here, i) {
				continue
			}
			for n := range f.list(j, i).len() {
				walk(f.parts, j, here+index(n), nested(i, n), visit)
			}
		case f.parts != nil:
			walk(f.parts, j, here, i, visit)
		case f.at != nil:
			visit(f, here, i)
		}
	}
}

func join(path, name string) string {
	if path == "" {
		return name
	}
	return path + "." + name
}

// never is the record of a file in which nothing was given.
func never(string) bool { return false }

// fill sets every one of the fields that was not given to what it is when left out,
// in their order, and needs no others.
func fill(fs []*field, j *Job, given func(path string) bool) {
	walk(fs, j, "", 0, func(f *field, path string, i int) bool {
		if f.std == nil || given(path) {
			return true // one that does not count is what it is when left out
		}
		f.at(j, i).set(f.std(j, i))
		return false // a list left out is whole as it is
	})
}
