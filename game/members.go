package game

import (
	"math"
	"slices"
	"strconv"

	"leafwright/geom/door"
	"leafwright/geom/survey"
)

// Stiles and rails that were read are what was read of them; the others are those a
// leaf of that make and size ordinarily has, or as they were given.

// usual gives the members a leaf of the job's make and size ordinarily has, those that
// were read as they were read.
func (j *Job) usual() door.Anatomy {
	a := door.Ordinary(j.Anatomy.Make, j.Door.Leaf.Width, j.LeafHeight)
	j.fitMembers(&a)
	return a
}

// MembersTaken says of a leaf that is measured that its members are taken as is usual,
// where they are; "" where they are given or read.
func MembersTaken(j *Job) string {
	if usual := door.Ordinary(j.Anatomy.Make, j.Door.Leaf.Width, j.LeafHeight); !j.IsSurveyed() || !sameMembers(&j.Anatomy, &usual) {
		return ""
	}
	if j.Anatomy.Make == door.Framed {
		return "Stiles, rails and joints of the leaf: taken as a framed leaf has them. If yours is flush or boarded say so; if not, look where its rails are before anything is cut."
	}
	return ""
}

// fitMembers makes the stiles and rails that were read what was read of them. Where
// they do not go together, each in turn that leaves room for the others.
func (j *Job) fitMembers(a *door.Anatomy) {
	if j.Survey == nil || len(j.Survey.Members) == 0 {
		return
	}
	leaf := j.nominalLeaf()
	wrong := func(a *door.Anatomy) int { return len(a.Check(&leaf)) }
	was := wrong(a)
	if all := withMembers(a, j.Survey.Members); wrong(&all) <= was {
		*a = all
		return
	}
	for i := range j.Survey.Members {
		if one := withMembers(a, j.Survey.Members[i:i+1]); wrong(&one) <= was {
			*a = one
		}
	}
}

// withMembers gives the make-up with stiles and rails as read. A rail of which only
// the width was read keeps its lower edge, the top one its upper one; one of which
// only the lower edge was read keeps its width, the top one its upper edge. Muntins
// stay in the middle and reach the rails they reached.
func withMembers(was *door.Anatomy, read []survey.Member) door.Anatomy {
	a := *was
	a.Rails, a.Muntins = slices.Clone(was.Rails), slices.Clone(was.Muntins)
	for k := range a.Rails {
		height, width := memberOf(read, survey.RailHeight, "", k), memberOf(read, survey.RailWidth, "", k)
		r := &a.Rails[k]
		last := k == len(a.Rails)-1
		wide := r.To - r.From
		if width != nil {
			wide = tenth(width.Mean)
		}
		switch {
		case height != nil && (width != nil || !last):
			r.From = tenth(height.Mean)
			r.To = r.From + wide
		case height != nil:
			r.From = tenth(height.Mean)
		case width != nil && last:
			r.From = tenth(r.To - wide)
		case width != nil:
			r.To = tenth(r.From + wide)
		}
		for i := range a.Muntins {
			m := &a.Muntins[i]
			if m.From == was.Rails[k].To {
				m.From = r.To
			}
			if m.To == was.Rails[k].From {
				m.To = r.From
			}
		}
	}
	if m := memberOf(read, survey.StileWidth, survey.Hinge, 0); m != nil {
		a.HangingStile = tenth(m.Mean)
	}
	if m := memberOf(read, survey.StileWidth, survey.Latch, 0); m != nil {
		a.ClosingStile = tenth(m.Mean)
	}
	for i := range a.Muntins {
		a.Muntins[i].At += (a.HangingStile - was.HangingStile - a.ClosingStile + was.ClosingStile) / 2
	}
	return a
}

// memberOf finds what the readings of a size of one member come to, nil where it was
// not read.
func memberOf(read []survey.Member, kind survey.Kind, side survey.Side, rail int) *survey.Member {
	for i := range read {
		if m := &read[i]; m.Kind == kind && m.Side == side && m.Rail == rail {
			return m
		}
	}
	return nil
}

// MemberFaults tells of readings of stiles and rails that the leaf's make-up does not
// show: of a rail there is none of, or that leave its members no room. Nothing of
// the fit hangs on them.
func (j *Job) MemberFaults() (faults Faults) {
	if j.Survey == nil {
		return nil
	}
	a, of := &j.Anatomy, j.Counted()
	for _, m := range j.Survey.Members {
		path := readingsPath + index(of[m.Readings[0]])
		var is float64
		switch m.Kind {
		case survey.StileWidth:
			is = a.HangingStile
			if m.Side == survey.Latch {
				is = a.ClosingStile
			}
		default:
			n := len(a.Rails)
			if m.Rail >= n {
				have := strconv.Itoa(n) + " rails"
				switch n {
				case 0:
					have = "no rails"
				case 1:
					have = "1 rail"
				}
				faults = append(faults, door.Fault{Path: path + ".rail", Value: strconv.Itoa(m.Rail + 1), Want: "a rail of the leaf: it has " + have})
				continue
			}
			if is = a.Rails[m.Rail].From; m.Kind == survey.RailWidth {
				is = a.Rails[m.Rail].To - is
			}
		}
		if math.Abs(is-m.Mean) > 0.1 {
			faults = append(faults, door.Fault{Path: path + ".value", Value: door.Say(tenth(m.Mean)), Want: "a size that the leaf's other members leave room for"})
		}
	}
	return faults
}

// memberRead tells whether the field at the path is a stile's or a rail's size that was read.
func (j *Job) memberRead(path string) bool {
	if j.Survey == nil {
		return false
	}
	read := j.Survey.Members
	switch path {
	case "leaf.stiles.hanging":
		return memberOf(read, survey.StileWidth, survey.Hinge, 0) != nil
	case "leaf.stiles.closing":
		return memberOf(read, survey.StileWidth, survey.Latch, 0) != nil
	}
	for k := range j.Anatomy.Rails {
		height, width := memberOf(read, survey.RailHeight, "", k), memberOf(read, survey.RailWidth, "", k)
		rail := "leaf.rails" + index(k)
		switch path {
		case rail + ".from":
			return height != nil || width != nil && k == len(j.Anatomy.Rails)-1
		case rail + ".to":
			return width != nil
		}
	}
	return false
}
