package game

import (
	"strconv"

	"leafwright/game/measure"
	"leafwright/geom/door"
)

// Largest is the most bytes a job file may have.
const Largest = 1 << 20

// mostFaults of reading are told; nobody reads more, and a wrong file has no end of them.
const mostFaults = 200

// versionField says in a job file which version of it is written there.
const versionField = "leafwright"

// Parse reads a job file. The error is a [Faults] that holds everything that is
// wrong with it, or the one place where it stops being JSON.
func Parse(data []byte) (Job, error) {
	if len(data) > Largest {
		return Job{}, Faults{{Path: "file", Value: strconv.Itoa(len(data)) + " bytes", Want: "at most " + strconv.Itoa(Largest)}}
	}
	root, bad := scan(data)
	if bad != nil {
		return Job{}, Faults{{Path: place(data, bad.pos), Want: bad.want}}
	}
	return parse(&root)
}

// parse reads a job out of a file's tree.
func parse(root *node) (Job, error) {
	if root.kind != groupNode {
		return Job{}, Faults{{Path: "file", Value: root.said(), Want: "a group in braces"}}
	}
	r := &reader{given: map[string]bool{}, surveyed: restsOnReadings(root)}
	r.version(root)
	r.group(table(), root, "", 0)
	if r.surveyed {
		// Readings may be of the door after moves, and hinges go where the gaps wanted ask for.
		fill([]*field{find(madePath), find("wanted"), find("paint")}, &r.job, r.isGiven)
		r.job.surveyFiled()
	}
	fill(table(), &r.job, r.isGiven)
	r.job.fitMembers(&r.job.Anatomy)
	if r.surveyed && r.job.readsAfter() { // now that the members are known
		r.job.surveyFiled()
	}
	r.job.rename()
	if faults := r.job.check(r.faults, r.isGiven); len(faults) > 0 {
		if r.untold > 0 {
			faults = append(faults, door.Fault{Path: "file", Want: "and " + strconv.Itoa(r.untold) + " faults more"})
		}
		return Job{}, faults
	}
	return r.job.filed(), nil
}

// reader fills a job as its file speaks of it.
type reader struct {
	job    Job
	faults Faults
	untold int             // faults past the most that are told
	given  map[string]bool // fields read without a fault, by path
	// surveyed is a job whose shapes come from its readings.
	surveyed bool
}

func (r *reader) isGiven(path string) bool { return r.given[path] || r.surveyed && isShape(path) }

// restsOnReadings tells whether a job's shapes come from its readings: when one of
// them has a say, or when there is a list of readings, if only an empty one, and
// no size or hinge is given by hand.
func restsOnReadings(root *node) bool {
	readings := root.get(readingsPath)
	if readings == nil {
		return false
	}
	for i := range readings.items {
		if off := readings.items[i].get("off"); readings.items[i].kind == groupNode && (off == nil || off.text != "true") {
			return true
		}
	}
	for _, path := range [][2]string{{"leaf", "width"}, {"leaf", "height"}, {"leaf", "thickness"}, {"opening", "width"}, {"opening", "height"}} {
		if group := root.get(path[0]); group != nil && group.get(path[1]) != nil {
			return false
		}
	}
	return root.get("hinges") == nil
}

// at gives a report for what is wrong under a path.
func (r *reader) at(path string) missing {
	return func(under string, n *node, want string) {
		f := door.Fault{Path: path + under, Want: want}
		if path == "" {
			f.Path = under[1:]
		}
		if n != nil {
			f.Value = n.said()
		}
		if len(r.faults) >= mostFaults {
			r.untold++
			return
		}
		r.faults = append(r.faults, f)
	}
}

func (r *reader) version(root *node) {
	n := root.get(versionField)
	switch {
	case n == nil:
		r.at("")("."+versionField, nil, "missing; "+strconv.Itoa(Version)+" says that this is a job file, and its version")
	case n.kind != numberNode || n.num != Version:
		r.at("")("."+versionField, n, strconv.Itoa(Version)+", the version this program reads")
	}
}

// group reads the fields of one group.
func (r *reader) group(fs []*field, n *node, path string, i int) {
	var names []string
	if path == "" {
		names = append(names, versionField)
	}
	for k := range fs {
		names = append(names, fs[k].name)
	}
	n.strangers(names, r.at(path))
	for k := range fs {
		f := fs[k]
		here := join(path, f.name)
		miss := r.at(here)
		m := n.get(f.name)
		if f.counts != nil && !f.counts(&r.job, i) {
			if m != nil {
				miss("", m, "wanted: "+fs[0].at(&r.job, i).show(measure.MM)+" has no "+f.name)
			}
			continue
		}
		switch {
		case r.surveyed && isShape(here):
			if m != nil {
				miss("", nil, "this job's shapes come from its readings: take this out, or put every reading off")
			}
		case m == nil && (!f.need && !needs(f) || r.surveyed && path == ""):
		case m == nil && f.counts != nil && !r.given[join(path, fs[0].name)]: // whether it counts is not known
		case m == nil && f.only(&r.job, i): // there is no choice
		case m == nil:
			miss("", nil, "missing; "+f.wants(&r.job, i)+" is wanted")
		case f.list != nil:
			r.list(f, m, here, i, miss)
		case f.parts != nil && m.kind != groupNode:
			miss("", m, "a group in braces")
		case f.parts != nil:
			r.group(f.parts, m, here, i)
		default:
			sound := true
			f.at(&r.job, i).read(m, func(under string, n *node, want string) {
				sound = false
				miss(under, n, want)
			})
			if sound {
				r.given[here] = true
			}
		}
	}
}

// needs tells whether a group holds a field that may not be left out.
func needs(f *field) bool {
	if f.list != nil {
		return false
	}
	for i := range f.parts {
		if f.parts[i].need || needs(f.parts[i]) {
			return true
		}
	}
	return false
}

// wants says what should stand in a field that may not be left out.
func (f *field) wants(j *Job, i int) string {
	switch {
	case f.list != nil:
		return "a list"
	case f.parts != nil:
		names := ""
		for _, p := range f.parts {
			if p.need && names != "" {
				names += ", "
			}
			if p.need {
				names += p.name
			}
		}
		return "a group with " + names
	}
	if c, ok := f.at(j, i).(chooser); ok {
		return "a word like " + c.options()[0].Value
	}
	return "a number " + f.limits.String()
}

// only sets a field that can be one word alone to it, or tells that it is another.
func (f *field) only(j *Job, i int) bool {
	if f.at == nil { // a group or a list
		return false
	}
	c, ok := f.at(j, i).(chooser)
	if !ok || len(c.options()) != 1 {
		return false
	}
	return c.take(c.options()[0].Value, 0) == ""
}

// mostItems of any list are read, or as many as it may have; a part's own check may
// allow fewer.
const mostItems = 64

func (r *reader) list(f *field, n *node, path string, outer int, miss missing) {
	if n.kind != listNode {
		miss("", n, "a list")
		return
	}
	if most := max(mostItems, int(f.count.Hi)); len(n.items) > most {
		miss("", &node{text: strconv.Itoa(len(n.items)) + " items"}, "at most "+strconv.Itoa(most))
		return
	}
	r.given[path] = true
	l := f.list(&r.job, outer)
	for i := range n.items {
		l.insert(i)
		item := &n.items[i]
		if item.kind != groupNode {
			miss(index(i), item, "a group in braces")
			continue
		}
		r.group(f.parts, item, path+index(i), nested(outer, i))
	}
}
