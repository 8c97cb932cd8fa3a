package game

import (
	"strings"

	"leafwright/game/measure"
	"leafwright/geom/door"
)

// Form shows a job's fields to a person and takes what the person types. Its
// zero value shows millimetres.
type Form struct {
	Units measure.Unit // lengths are shown in, and a plain number is in
}

// Section is one panel: its groups in order.
type Section struct {
	Name   string // stable, for the page's own use
	Title  string
	Help   string
	Groups []Group
	Adds   []Action // what [Form.Add] can add here
}

// Group is fields that stand together: a section's own, or one item of a list.
type Group struct {
	Title  string // empty for a section's own fields
	Remove string // the path for [Form.Remove], or empty
	Fields []Field
	// Fold tells that the group is folded away under its title and Now, which says in
	// short what it holds. Both may change with any of its fields.
	Fold bool
	Now  string
}

// Action is something a button does to the job.
type Action struct{ Path, Label string }

// Field is one thing a person can see and change. Paths are those of the job
// file where the file has the field; they are unique and do not change.
type Field struct {
	Path  string
	Label string
	Help  string
	Kind  Kind
	Unit  string // beside the field: mm, ft in, °, or empty
	Value string // as shown; for a flag true or false
	// Min and Max are the least and the most allowed, mm, degrees or of Unit; both 0
	// where there is no number. Others of the job's parts may allow less.
	Min, Max float64
	Choices  []Choice
	Remove   string // of a cell whose column can go: the path for [Form.Remove]
	// Columns and Rows are a table's.
	Columns []string
	Rows    []Row
}

// Row is one station of a table, or one row of a floor's heights.
type Row struct {
	Remove string // the path for [Form.Remove], or empty
	Cells  []Field
}

// Choice is one of some words, and what it is called.
type Choice struct{ Value, Label string }

// Kind is what is typed in a field.
type Kind string

// The kinds of field.
const (
	Words   Kind = "" // only read
	Length  Kind = "length"
	Degrees Kind = "degrees"
	Number  Kind = "number" // of anything else, Unit's where it has one
	Line    Kind = "line"   // a text of one line
	Lines   Kind = "lines"  // a text of many
	Pick    Kind = "choice"
	Flag    Kind = "flag"
	Table   Kind = "table"
)

// panel says which of the file's fields a section shows, by their paths.
type panel struct {
	name, title, help string
	paths             []string
}

var panels = []panel{
	{"job", "The job", "", []string{"name", "note", "hand"}},
	{"readings", "Readings", "Everything that was read, as typed. Open one to change it.", []string{readingsPath}},
	{"leaf", "Leaf", "Sizes, edges and bevels. Stations are for an edge that is not straight.", []string{
		"leaf.width", "leaf.height", "leaf.thickness", "leaf.bevel", "leaf.hanging", "leaf.closing", "leaf.top", "leaf.bottom"}},
	{"flat", "Leaf out of flat", "What winding sticks and a straightedge show on the knuckle face.", []string{"leaf.face"}},
	{"anatomy", "What the leaf is made of", "It bears on the drawing and on what may be cut, not on the fit.", []string{
		"leaf.make", "leaf.stiles", "leaf.panels", "leaf.timber", "leaf.glazed", "leaf.rated", "leaf.lock", "leaf.rails", "leaf.muntins", "leaf.joints"}},
	{"voids", "Holes, borer and rot", "", []string{"leaf.voids"}},
	{"opening", "Opening", "The faces the leaf's edges look at.", []string{
		"opening.width", "opening.height", "opening.head", "opening.hinge_jamb", "opening.latch_jamb"}},
	{"stops", "Stops and front edges", "", []string{"opening.rebate", "opening.stop_width", "opening.front", "opening.stops"}},
	{"hinges", "Hinges", "From the top one down.", []string{"hinges"}},
	{"latch", "Latch and swing", "", []string{"latch", "opens"}},
	{"floor", "Floor", "", []string{"floor"}},
	{"neighbour", "A door beside it", "Where its rails are, to see whether the two doors' lines run on.", []string{"neighbour"}},
	{"house", "House and room", "", []string{"house"}},
	{"paint", "Paint and moisture", "Where leaf and frame meet.", []string{"paint", "meter"}},
	{"prices", "Prices", "Your own.", []string{"prices"}},
	{"wanted", "Gaps wanted", "Choosing a set copies its numbers; change them as you like.", []string{"wanted"}},
}

// Sections gives every panel for the job.
func (fm Form) Sections(job Job) []Section {
	file := job.filed()
	out := make([]Section, len(panels))
	for i, p := range panels {
		s := Section{Name: p.name, Title: p.title, Help: p.help}
		own := Group{}
		for _, path := range p.paths {
			if file.IsSurveyed() && isShape(path) {
				s.Help = "This comes from the readings."
				continue
			}
			f := find(path)
			fm.show(&s, &own, f, &file, path, 0)
		}
		if len(own.Fields) > 0 {
			s.Groups = append([]Group{own}, s.Groups...)
		}
		out[i] = s
	}
	return out
}

// find gives the field of a path without list places.
func find(path string) *field {
	fs := table()
	var f *field
	for _, name := range strings.Split(path, ".") {
		if f = named(fs, name); f == nil {
			return nil
		}
		fs = f.parts
	}
	return f
}

func named(fs []*field, name string) *field {
	for k := range fs {
		if fs[k].name == name {
			return fs[k]
		}
	}
	return nil
}

// show adds a field, or a group's or list's fields, to a section.
func (fm Form) show(s *Section, g *Group, f *field, j *Job, path string, i int) {
	switch {
	case f.shown != nil && !f.shown(j), f.counts != nil && !f.counts(j, i):
	case path == readingsPath:
		fm.readings(s, f, j)
	case f.list != nil:
		n := f.list(j, i).len()
		for k := range n {
			item := Group{Title: f.item(j, nested(i, k))}
			if n > int(f.count.Lo) {
				item.Remove = path + index(k)
			}
			for m := range f.parts {
				fm.show(s, &item, f.parts[m], j, join(path+index(k), f.parts[m].name), nested(i, k))
			}
			s.Groups = append(s.Groups, item)
		}
		if n < int(f.count.Hi) {
			s.Adds = append(s.Adds, Action{path, "Add a " + f.one})
		}
	case f.parts != nil:
		if path == "wanted.floor" {
			g.Fields = append(g.Fields, floorChoice(j))
		}
		for m := range f.parts {
			fm.show(s, g, f.parts[m], j, join(path, f.parts[m].name), i)
		}
	default:
		g.Fields = append(g.Fields, fm.fields(s, f, j, path, i)...)
	}
}

// fields gives the fields a page shows for one field of the file.
func (fm Form) fields(s *Section, f *field, j *Job, path string, i int) []Field {
	out := Field{Path: path, Label: f.label, Help: f.help}
	if f.called != nil {
		out.Label = f.called(j, i)
	}
	switch v := f.at(j, i).(type) {
	case length:
		if j.memberRead(path) {
			out.Help, out.Value, out.Unit = "This comes from the readings.", measure.Exact(*v.p, fm.Units), fm.Units.String()
			return []Field{out}
		}
		if f.unit != "" {
			fm.Units = measure.MM
		}
		out = fm.length(out, *v.p, f.allowed(j, i))
		if f.unit != "" {
			out.Kind, out.Unit = Number, f.unit
		}
		return []Field{out}
	case degrees:
		return []Field{fm.degrees(out, v, f.limits)}
	case lines:
		out.Kind, out.Value = Lines, *v.p
	case line:
		out.Kind, out.Value = Line, *v.p
	case truth:
		out.Kind, out.Value = Flag, v.show(fm.Units)
	case whole:
		out.Kind, out.Value = Number, v.show(fm.Units)
		if f.unit == "" {
			out.Kind, out.Choices = Pick, hingeChoices(f.limits)
		} else {
			out.Min, out.Max = f.limits.Lo, f.limits.Hi
		}
	case stations:
		return fm.profile(f, v, j, i, out)
	case floor:
		return fm.floor(s, v, out)
	case chooser:
		out.Kind, out.Value, out.Choices = Pick, v.show(fm.Units), v.options()
	}
	return []Field{out}
}

func (fm Form) length(f Field, mm float64, r door.Range) Field {
	f.Kind, f.Unit, f.Value, f.Min, f.Max = Length, fm.Units.String(), measure.Exact(mm, fm.Units), r.Lo, r.Hi
	return f
}

func (fm Form) degrees(f Field, v degrees, r door.Range) Field {
	f.Kind, f.Unit, f.Value, f.Min, f.Max = Degrees, "°", v.show(fm.Units), r.Lo, r.Hi
	return f
}

// profile gives an edge's one number where that says it all, and its stations.
func (fm Form) profile(f *field, v stations, j *Job, i int, out Field) (all []Field) {
	first, last := f.span(j, i)
	for k := range f.shape.slants {
		s := &f.shape.slants[k]
		if s.simple(*v.p, first, last, j) {
			one := Field{Path: out.Path + "." + s.name, Label: s.label, Help: s.help}
			all = append(all, fm.length(one, s.by(*v.p, first, last, j), door.Range{}.Round(f.shape.mostOff())))
		}
	}
	place, value := f.shape.ranges(j)
	out.Kind, out.Unit, out.Columns = Table, fm.Units.String(), f.shape.columns[:]
	for k, s := range *v.p {
		row := Row{Cells: []Field{
			fm.length(Field{Path: out.Path + index(k) + index(0), Label: f.label + ", station " + ordinal(k) + ", place"}, s.At, place),
			fm.length(Field{Path: out.Path + index(k) + index(1), Label: f.label + ", station " + ordinal(k) + ", value"}, s.Value, value),
		}}
		if len(*v.p) > 1 {
			row.Remove = out.Path + index(k)
		}
		out.Rows = append(out.Rows, row)
	}
	return append(all, out)
}

// mostOff is how far one end of the edge may stand from the other.
func (s *shape) mostOff() float64 {
	if s.off != 0 {
		return s.off
	}
	return s.value.Hi
}

// floor gives a floor's one or two numbers where they say it all, and its heights.
func (fm Form) floor(s *Section, v floor, out Field) []Field {
	f := v.p
	r := door.FloorHeight
	cell := func(path, label, help string, mm float64, r door.Range) Field {
		return fm.length(Field{Path: out.Path + path, Label: label, Help: help}, mm, r)
	}
	var all []Field
	if p, ok := plainOf(f); ok {
		all = append(all,
			cell(".level", "Floor level", "At the foot of the hinge jamb, 0 as a rule.", p.level, r),
			cell(".threshold", "Threshold stands above it by", "Under the closed leaf only.", p.sill-p.level, r),
			cell(".rise", "Rises under the swing by", "At the closing edge with the leaf square open.", p.open-p.level, r))
	}
	s.Adds = append(s.Adds, Action{"floor.radii", "Add a distance"}, Action{"floor.angles", "Add an angle"})
	out.Kind, out.Unit = Table, fm.Units.String()
	out.Help = "A row for each swing angle, a column for each distance out from the foot of the hinge jamb."
	out.Columns = []string{"Swing angle"}
	head := Row{Cells: []Field{{Path: "", Label: "Distance out"}}}
	for k, x := range f.Radii {
		out.Columns = append(out.Columns, "Height "+ordinal(k))
		c := cell(".radii"+index(k), "Distance "+ordinal(k), "", x, door.FloorRadius)
		if len(f.Radii) > 1 {
			c.Remove = out.Path + ".radii" + index(k)
		}
		head.Cells = append(head.Cells, c)
	}
	out.Rows = append(out.Rows, head)
	for i, row := range f.Heights {
		angle := Field{Path: out.Path + ".angles" + index(i), Label: "Swing angle " + ordinal(i)}
		cells := []Field{fm.degrees(angle, degrees{&f.Angles[i]}, door.FloorAngle)}
		for k, y := range row {
			cells = append(cells, cell(".heights"+index(i)+index(k), "Height at angle "+ordinal(i)+", distance "+ordinal(k), "", y, r))
		}
		line := Row{Cells: cells}
		if len(f.Heights) > 1 {
			line.Remove = out.Path + ".angles" + index(i)
		}
		out.Rows = append(out.Rows, line)
	}
	return append(all, out)
}
