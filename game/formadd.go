package game

import (
	"slices"
	"strconv"
	"strings"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/survey"
)

// Add gives the job with one thing more in the list at the path: a hinge, a rail,
// a muntin, a station of an edge, a distance or an angle of the floor, an option or
// one of its moves. It comes where there is most room and, as far as can be, changes no shape. The error is
// a [Faults].
func (fm Form) Add(job Job, path string) (Job, error) {
	if path == readingsPath && !job.IsSurveyed() {
		return Measure(job), nil
	}
	file := job.filed()
	if path == readingsPath && len(file.Readings) < survey.ReadingsMost {
		file.Readings = append(file.Readings, file.next(fm.Units))
		return fm.accept(job, file)
	}
	if why := file.add(path); why != "" {
		return job, Faults{{Path: path, Want: why}}
	}
	return fm.accept(job, file)
}

// Remove gives the job without the thing at the path, such as hinges[1] or
// opening.head[2]. The error is a [Faults].
func (fm Form) Remove(job Job, path string) (Job, error) {
	file := job.filed()
	if why := file.remove(path); why != "" {
		return job, Faults{{Path: path, Want: why}}
	}
	return fm.accept(job, file)
}

func (j *Job) add(path string) (why string) {
	if j.IsSurveyed() && isShape(path) {
		return isSurveyed
	}
	if within(path, madePath) {
		return madeStays
	}
	if why, mine := j.addMove(path); mine {
		return why
	}
	switch path {
	case "floor.radii":
		return addRadius(&j.Door.Floor)
	case "floor.angles":
		return addAngle(&j.Door.Floor)
	}
	f, i, rest := locate(j, path)
	switch {
	case f == nil || rest != "" || f.counts != nil && !f.counts(j, i):
		return noField
	case f.list != nil:
		if n := f.list(j, i).len(); n >= int(f.count.Hi) {
			return full(n)
		}
		return f.grow(j)
	}
	v, ok := f.at(j, i).(stations)
	if !ok {
		return noField
	}
	if len(*v.p) >= door.Stations {
		return "there are " + strconv.Itoa(len(*v.p)) + " stations, as many as there can be"
	}
	first, last := f.span(j, i)
	if len(*v.p) < 2 {
		c := v.p.At(0)
		*v.p = geom.Through(min(first, last), c, max(first, last), c)
		return ""
	}
	k, at := widest(len(*v.p), func(i int) float64 { return (*v.p)[i].At })
	*v.p = append((*v.p)[:k:k], append(geom.Profile{{At: at, Value: v.p.At(at)}}, (*v.p)[k:]...)...)
	return ""
}

// widest gives the place of the widest gap of rising numbers, and its middle.
func widest(n int, at func(int) float64) (k int, middle float64) {
	best := 0.0
	for i := 1; i < n; i++ {
		if gap := at(i) - at(i-1); gap > best {
			best, k, middle = gap, i, (at(i)+at(i-1))/2
		}
	}
	return k, middle
}

func (j *Job) remove(path string) (why string) {
	if j.IsSurveyed() && isShape(path) {
		return isSurveyed
	}
	if within(path, madePath) {
		return madeStays
	}
	floor := &j.Door.Floor
	if rest, ok := strings.CutPrefix(path, "floor.radii"); ok {
		return removeRadius(floor, rest)
	}
	if rest, ok := strings.CutPrefix(path, "floor.angles"); ok {
		return removeAngle(floor, rest)
	}
	f, i, rest := locate(j, path)
	if f == nil || f.counts != nil && !f.counts(j, i) {
		return noField
	}
	k, after, ok := cutIndex(rest)
	if !ok || after != "" {
		return noField
	}
	if f.list != nil {
		l := f.list(j, i)
		if k >= l.len() {
			return noField
		}
		if l.len() <= int(f.count.Lo) {
			return "there must be " + door.Say(f.count.Lo) + " at least"
		}
		l.remove(k)
		return ""
	}
	v, isStations := f.at(j, i).(stations)
	if !isStations || k >= len(*v.p) {
		return noField
	}
	if len(*v.p) == 1 {
		return "an edge keeps one station at least"
	}
	*v.p = append((*v.p)[:k:k], (*v.p)[k+1:]...)
	return ""
}

// grow adds one item to a list of the table.
func (f *field) grow(j *Job) (why string) {
	switch l := f.list(j, 0).(type) {
	case listOf[door.Hinge]:
		return addHinge(l.p)
	case listOf[door.Rail]:
		return addRail(l.p, j.LeafHeight)
	case listOf[door.Muntin]:
		addMuntin(j)
	case voids:
		j.addVoid()
	}
	return ""
}

// addHinge puts a hinge like the upper one into the middle of the widest stretch
// between two, so that all pins stay in line.
func addHinge(hinges *[]door.Hinge) (why string) {
	hs := *hinges
	k, _ := widest(len(hs), func(i int) float64 { return -hs[i].LeafHeight })
	if k == 0 {
		return "there is no room between the hinges"
	}
	h, below := hs[k-1], hs[k]
	h.LeafHeight, h.JambHeight = (h.LeafHeight+below.LeafHeight)/2, (h.JambHeight+below.JambHeight)/2
	*hinges = geom.Insert(hs, k, h)
	return ""
}

// addRail puts a rail into the middle of the widest stretch without one.
func addRail(rails *[]door.Rail, height float64) (why string) {
	rs := *rails
	var at int
	var lo, gap float64
	for i := range len(rs) + 1 {
		from, to := 0.0, height
		if i > 0 {
			from = rs[i-1].To
		}
		if i < len(rs) {
			to = rs[i].From
		}
		if to-from > gap {
			at, lo, gap = i, from, to-from
		}
	}
	if gap < 3*door.Stile.Lo {
		return "there is no room between the rails"
	}
	wide := min(100, gap/3)
	*rails = geom.Insert(rs, at, door.Rail{From: lo + (gap-wide)/2, To: lo + (gap+wide)/2})
	return ""
}

// addMuntin puts a muntin into the middle of the field between two rails that has
// the fewest, the lowest first.
func addMuntin(j *Job) {
	a := &j.Anatomy
	lo, hi, fewest := 0.0, j.LeafHeight, door.MuntinsMost+1
	for i := 1; i < len(a.Rails); i++ {
		from, to, n := a.Rails[i-1].To, a.Rails[i].From, 0
		for _, m := range a.Muntins {
			if m.From < to && m.To > from {
				n++
			}
		}
		if to > from && n < fewest {
			lo, hi, fewest = from, to, n
		}
	}
	inside := j.Door.Leaf.Width - a.HangingStile - a.ClosingStile
	a.Muntins = append(a.Muntins, door.Muntin{
		At: a.HangingStile + inside/2, Width: max(door.Stile.Lo, min(90, inside/4)), From: lo, To: hi,
	})
}

// addRadius and addAngle give a floor one distance or angle more, without
// changing it.
func addRadius(f *door.Floor) (why string) {
	n := len(f.Radii)
	if n >= door.FloorMost {
		return "there are as many distances as there can be"
	}
	k, at := widest(n, func(i int) float64 { return f.Radii[i] })
	if n < 2 { // a first further one, about a leaf's width out
		k, at = n, f.Radii[0]+800
		if at > door.FloorRadius.Hi {
			k, at = 0, f.Radii[0]-800
		}
	}
	for i, a := range f.Angles {
		f.Heights[i] = geom.Insert(f.Heights[i], k, f.Polar(at, a))
	}
	f.Radii = geom.Insert(f.Radii, k, at)
	return ""
}

func addAngle(f *door.Floor) (why string) {
	n := len(f.Angles)
	if n >= door.FloorMost {
		return "there are as many angles as there can be"
	}
	k, at := widest(n, func(i int) float64 { return f.Angles[i].Degrees() })
	if n < 2 {
		k, at = n, 90
		if f.Angles[0].Degrees() >= 90 {
			k, at = 0, 0
		}
	}
	a := geom.Angle(at) * geom.Degree
	row := make([]float64, len(f.Radii))
	for i, r := range f.Radii {
		row[i] = f.Polar(r, a)
	}
	f.Angles = geom.Insert(f.Angles, k, a)
	f.Heights = geom.Insert(f.Heights, k, row)
	return ""
}

func removeRadius(f *door.Floor, at string) (why string) {
	k, after, ok := cutIndex(at)
	if !ok || after != "" || k >= len(f.Radii) {
		return noField
	}
	if len(f.Radii) == 1 {
		return "a floor keeps one distance at least"
	}
	f.Radii = slices.Delete(f.Radii, k, k+1)
	for i := range f.Heights {
		f.Heights[i] = slices.Delete(f.Heights[i], k, k+1)
	}
	return ""
}

func removeAngle(f *door.Floor, at string) (why string) {
	k, after, ok := cutIndex(at)
	if !ok || after != "" || k >= len(f.Angles) {
		return noField
	}
	if len(f.Angles) == 1 {
		return "a floor keeps one angle at least"
	}
	f.Angles = slices.Delete(f.Angles, k, k+1)
	f.Heights = slices.Delete(f.Heights, k, k+1)
	return ""
}
