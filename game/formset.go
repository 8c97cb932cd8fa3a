package game

import (
	"strconv"
	"strings"

	"leafwright/game/measure"
	"leafwright/geom/door"
)

// Set gives the job with the field at the path as typed. When the text cannot be
// read, or the door it makes is not sound, the error is a [Faults] and the job
// comes back as it was.
func (fm Form) Set(job Job, path, text string) (Job, error) {
	if id, ok := strings.CutPrefix(path, cardPath); ok {
		return fm.setPrompt(job, id, text)
	}
	old := job.filed()
	file := old.Clone()
	if faults, mine := file.putMove(path, text); len(faults) > 0 {
		return job, faults
	} else if mine {
		return fm.accept(job, file)
	}
	if why := fm.put(&file, path, text); why != "" {
		return job, Faults{{Path: path, Want: why}}
	}
	if f, _, _ := locate(&old, path); f != nil && f.follow != nil {
		f.follow(&old, &file)
	}
	return fm.accept(job, file)
}

// accept gives the changed job, unless it is not sound.
func (fm Form) accept(job, file Job) (Job, error) {
	file.rename()
	if len(file.Readings) == 0 { // as they are read
		file.Readings = nil
	}
	if len(file.Neighbour) == 0 {
		file.Neighbour = nil
	}
	if len(file.Voids) == 0 {
		file.Voids = nil
	}
	if len(file.Options) == 0 {
		file.Options = nil
	}
	for i := range file.Options {
		if o := &file.Options[i]; len(o.Moves) == 0 {
			o.Moves = nil
		}
	}
	old := job.filed()
	file.resurvey(&old)
	file.fitMembers(&file.Anatomy)
	if faults := file.check(nil, always); len(faults) > 0 {
		return job, faults
	}
	return file.filed(), nil
}

func always(string) bool { return true }

// locate gives the field a path belongs to, the place of the item it is in and the
// rest of the path under it; no field where the path is none of the job's.
func locate(j *Job, path string) (f *field, i int, rest string) {
	fs := table()
	for {
		end := strings.IndexAny(path, ".[")
		if end < 0 {
			end = len(path)
		}
		if f = named(fs, path[:end]); f == nil {
			return nil, 0, ""
		}
		path = path[end:]
		switch {
		case f.list != nil:
			place, after, ok := cutIndex(path)
			if path == "" || ok && after == "" {
				return f, i, path
			}
			if !ok || place >= f.list(j, i).len() || after[0] != '.' {
				return nil, 0, ""
			}
			fs, i, path = f.parts, nested(i, place), after[1:]
		case f.parts != nil:
			if path == "" || path[0] != '.' {
				return nil, 0, ""
			}
			fs, path = f.parts, path[1:]
		default:
			return f, i, path
		}
	}
}

// cutIndex takes [n] off the front.
func cutIndex(s string) (n int, after string, ok bool) {
	end := strings.IndexByte(s, ']')
	if s == "" || s[0] != '[' || end < 0 {
		return 0, s, false
	}
	n, err := strconv.Atoi(s[1:end])
	if err != nil || n < 0 || s[1:end] != strconv.Itoa(n) {
		return 0, s, false
	}
	return n, s[end+1:], true
}

const (
	noField    = "there is no such field"
	isSurveyed = "this comes from the readings"
)

// put sets one field of a job as its file speaks of it, or says why not.
func (fm Form) put(j *Job, path, text string) (why string) {
	if path == floorChoicePath {
		return chooseFloor(j, text)
	}
	if j.IsSurveyed() && isShape(path) {
		return isSurveyed
	}
	if j.memberRead(path) {
		return isSurveyed
	}
	if within(path, madePath) && !strings.HasSuffix(path, ".note") {
		return madeStays
	}
	f, i, rest := locate(j, path)
	if f == nil || f.list != nil || f.counts != nil && !f.counts(j, i) {
		return noField
	}
	switch v := f.at(j, i).(type) {
	case stations:
		return fm.putStation(f, v, j, i, rest, text)
	case floor:
		return fm.putFloor(v, j, rest, text)
	case length:
		if rest != "" {
			return noField
		}
		return fm.number(v.p, f.allowed(j, i), text, f.unit)
	default:
		if rest != "" {
			return noField
		}
		return v.take(text, fm.Units)
	}
}

// number takes a length within its range, told in the form's unit, or a number of the
// unit.
func (fm Form) number(p *float64, r door.Range, text, unit string) (why string) {
	if unit != "" {
		fm.Units = measure.MM
	}
	x := *p
	if why = (length{&x}).take(text, fm.Units); why != "" {
		return why
	}
	if f, bad := r.Fault("", x, unit == ""); bad {
		if fm.Units == measure.Inch {
			return measure.Format(x, measure.Inch) + " is not between " + measure.Format(r.Lo, measure.Inch) + " and " + measure.Format(r.Hi, measure.Inch)
		}
		return f.Error()
	}
	*p = x
	return ""
}

func (fm Form) putStation(f *field, v stations, j *Job, i int, rest, text string) string {
	first, last := f.span(j, i)
	for k := range f.shape.slants {
		s := &f.shape.slants[k]
		if rest != "."+s.name {
			continue
		}
		if !s.simple(*v.p, first, last, j) {
			return "this edge is more than one number now: change its stations"
		}
		by := s.by(*v.p, first, last, j)
		if why := fm.number(&by, door.Range{}.Round(f.shape.mostOff()), text, ""); why != "" {
			return why
		}
		p := s.lean(*v.p, first, last, j, by)
		if std := *f.std(j, 0).(stations).p; p.At(first) == std.At(first) && p.At(last) == std.At(last) && len(std) <= 2 {
			p = std
		}
		*v.p = p
		return ""
	}
	k, rest, ok := cutIndex(rest)
	if !ok || k >= len(*v.p) {
		return noField
	}
	place, value := f.shape.ranges(j)
	switch s := &(*v.p)[k]; rest {
	case "[0]":
		return fm.number(&s.At, place, text, "")
	case "[1]":
		return fm.number(&s.Value, value, text, "")
	}
	return noField
}

func (fm Form) putFloor(v floor, j *Job, rest, text string) string {
	f := v.p
	name, at, _ := strings.Cut(rest, "[")
	if at == "" {
		return fm.putPlain(v, j, name, text)
	}
	i, after, ok := cutIndex("[" + at)
	switch {
	case !ok:
	case name == ".radii" && after == "" && i < len(f.Radii):
		return fm.number(&f.Radii[i], door.FloorRadius, text, "")
	case name == ".angles" && after == "" && i < len(f.Angles):
		return degrees{&f.Angles[i]}.take(text, fm.Units)
	case name == ".heights" && i < len(f.Heights):
		if k, end, ok := cutIndex(after); ok && end == "" && k < len(f.Heights[i]) {
			return fm.number(&f.Heights[i][k], door.FloorHeight, text, "")
		}
	}
	return noField
}

func (fm Form) putPlain(v floor, j *Job, name, text string) string {
	p, plain := plainOf(v.p)
	if name != ".level" && name != ".threshold" && name != ".rise" {
		return noField
	}
	if !plain {
		return "this floor is more than one number now: change its heights"
	}
	if p.reach == 0 {
		p.reach = j.Door.Leaf.Width
	}
	was := p.level
	by := map[string]float64{".level": was, ".threshold": p.sill - was, ".rise": p.open - was}[name]
	if why := fm.number(&by, door.FloorHeight, text, ""); why != "" {
		return why
	}
	switch name {
	case ".level":
		p.level, p.sill, p.open = by, by+(p.sill-was), by+(p.open-was)
	case ".threshold":
		p.sill = was + by
	case ".rise":
		p.open = was + by
	}
	*v.p = p.floor()
	return ""
}
