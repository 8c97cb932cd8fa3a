package game

import (
	"strings"

	"leafwright/geom/door"
	"leafwright/geom/judge"
)

// Check gives everything that is wrong with the job, in the file's words; none
// when it can be drawn and written, and hung unless [Job.Shapes] says what its
// readings lack.
func (j Job) Check() Faults {
	file := j.filed()
	return file.check(nil, always)
}

// What a leaf's shape, and an opening's, rest on.
var (
	leafShape = []string{
		"leaf.width", "leaf.height", "leaf.thickness", "leaf.hanging", "leaf.closing", "leaf.top", "leaf.bottom", "leaf.face", "leaf.bevel",
	}
	openingShape = []string{
		"opening.width", "opening.height", "opening.hinge_jamb", "opening.latch_jamb", "opening.head", "opening.front", "opening.rebate",
		"opening.stops", "opening.stop_width",
	}
)

// check adds to the faults found on reading those of the job, which is as its file
// speaks of it. Fields that were not given are only as good as those they follow
// from, so what follows from a fault is not told beside it.
func (j *Job) check(faults Faults, given func(path string) bool) Faults {
	walk(table(), j, "", 0, func(f *field, path string, i int) bool {
		if !given(path) || j.IsSurveyed() && isShape(path) {
			return f.list == nil
		}
		if f.counts != nil && !f.counts(j, i) {
			return true
		}
		var found Faults
		switch v := f.at(j, i).(type) {
		case length:
			if x, bad := f.limits.Fault(path, *v.p, f.unit == ""); bad {
				found = Faults{x}
			}
		case whole:
			if x, bad := f.limits.Fault(path, float64(*v.p), false); bad && f.unit != "" { // others turn on what they are of
				found = Faults{x}
			}
		case degrees:
			if x, bad := f.limits.Fault(path, inDegrees(*v.p), false); bad {
				found = Faults{x}
			}
		case stations:
			found = f.shape.check(path, v, j)
			if len(found) == 0 && f.shape.near != nil && faults.sound(f.shape.from) {
				found = f.shape.departs(path, v, j)
			}
		}
		faults.add(found...)
		return true
	})
	faults.add(j.checkWanted()...)
	j.checkReadings(&faults)
	j.checkNeighbour(&faults)
	j.checkVoids(&faults)
	j.checkMoves(&faults, given)
	if j.IsSurveyed() { // its door is sound as it comes
		leaf := j.nominalLeaf()
		faults.add(j.Anatomy.Check(&leaf)...)
		return faults
	}
	if len(j.Counted()) > 0 {
		faults.add(door.Fault{Path: readingsPath, Want: "this job's shapes were given by hand: measure it anew, or put every reading off"})
	}

	d := j.filed().Door
	var leaf *door.Leaf
	if faults.sound(leafShape...) {
		found := d.Leaf.Check()
		faults.add(found...)
		if len(found) == 0 {
			leaf = &d.Leaf
		}
	}
	for _, f := range j.Anatomy.Check(leaf) {
		if leaf != nil || given(listPath(f.Path)) {
			faults.add(f)
		}
	}
	if faults.sound(openingShape...) && (faults.sound("leaf.thickness") || given("opening.rebate")) {
		found := d.Frame.Check()
		faults.add(found...)
		if len(found) == 0 && leaf != nil {
			faults.add(d.CheckTogether()...)
		}
	}
	if faults.sound("hinges") || len(d.Hinges) > 0 {
		faults.add(door.CheckHinges(d.Hinges, leaf)...)
	}
	if leaf != nil || given("latch.height") {
		faults.add(d.Latch.Check(leaf)...)
	}
	if faults.sound("floor") {
		faults.add(d.Floor.Check()...)
	}
	return faults
}

// sound tells whether none of the fields has a fault.
func (fs Faults) sound(paths ...string) bool {
	for _, f := range fs {
		for _, path := range paths {
			if within(f.Path, path) || within(path, f.Path) {
				return false
			}
		}
	}
	return true
}

// listPath gives the path of the list an item's field is in, or the path itself.
func listPath(path string) string {
	list, _, _ := strings.Cut(path, "[")
	return list
}

// check gives what is wrong with stations by themselves.
func (s *shape) check(path string, v stations, j *Job) Faults {
	place, value := s.ranges(j)
	return door.CheckProfile(path, *v.p, place, value)
}

// departs tells of stations too far from the size they are called by.
func (s *shape) departs(path string, v stations, j *Job) (faults Faults) {
	want := s.near(j)
	around := door.Range{Lo: want, Hi: want}.Round(s.off)
	for i, x := range *v.p {
		if f, bad := around.Fault(path+index(i), x.Value, true); bad {
			f.Want += ", near its nominal " + door.Say(want)
			faults = append(faults, f)
		}
	}
	return faults
}

// checkWanted tells of limits in the wrong order.
func (j *Job) checkWanted() (faults []door.Fault) {
	w := &j.Wanted
	for _, row := range []struct {
		path string
		l    judge.Limits
	}{
		{"wanted.hinge", w.Gaps[0]}, {"wanted.latch", w.Gaps[1]}, {"wanted.head", w.Gaps[2]}, {"wanted.floor", w.Gaps[3]},
		{"wanted.stop", w.Stop}, {"wanted.swing", w.Swing}, {"wanted.swing_floor", w.SwingFloor},
	} {
		if row.l.Target < row.l.Least {
			faults = append(faults, door.Fault{Path: row.path + ".target", Value: door.Say(row.l.Target), Want: "at or above the least, " + door.Say(row.l.Least)})
		}
		if row.l.Most != 0 && row.l.Most < row.l.Target {
			faults = append(faults, door.Fault{Path: row.path + ".most", Value: door.Say(row.l.Most), Want: "at or above the one wanted, " + door.Say(row.l.Target) + ", or 0 for no end"})
		}
	}
	return faults
}
