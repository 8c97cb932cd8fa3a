package game

import (
	"slices"

	"leafwright/geom"
	"leafwright/geom/door"
)

// When a person changes a size, what was measured from it comes along: an edge
// keeps its departures from the nominal line, a rail that ran to the top still
// does. Jobs here are as the file speaks of them.

// ends moves the stations that stood at one end of an edge to its new end, where
// there is room.
func ends(p geom.Profile, was, is float64) geom.Profile {
	q := slices.Clone(p)
	for i := range q {
		if q[i].At == was && len(q) > 1 {
			q[i].At = is
		}
	}
	for i := 1; i < len(q); i++ {
		if q[i].At-q[i-1].At < door.ApartLeast {
			return p
		}
	}
	return q
}

func rewidenLeaf(old, j *Job) {
	was, is := old.Door.Leaf.Width, j.Door.Leaf.Width
	l := &j.Door.Leaf
	l.Closing = l.Closing.Shift(is - was)
	l.Top, l.Bottom = ends(l.Top, was, is), ends(l.Bottom, was, is)
	j.moveMuntins(old)
}

func (j *Job) moveMuntins(old *Job) {
	for i := range j.Anatomy.Muntins {
		j.Anatomy.Muntins[i].At += (j.Door.Leaf.Width - old.Door.Leaf.Width) / 2
	}
}

func restretchLeaf(old, j *Job) {
	was, is := old.LeafHeight, j.LeafHeight
	l := &j.Door.Leaf
	l.Top = l.Top.Shift(is - was)
	for _, p := range []*geom.Profile{&l.Hanging, &l.Closing, &l.HangingFace, &l.ClosingFace} {
		*p = ends(*p, was, is)
	}
	j.stretchRails(old)
}

func (j *Job) stretchRails(old *Job) {
	rails := j.Anatomy.Rails
	if n := len(rails); n > 0 && rails[n-1].To == old.LeafHeight {
		rails[n-1].To = j.LeafHeight
	}
}

func rewidenOpening(old, j *Job) {
	was, is := old.side()*old.OpeningWidth, j.side()*j.OpeningWidth
	f := &j.Door.Frame
	f.LatchJamb = f.LatchJamb.Shift(is - was)
	for _, p := range []*geom.Profile{&f.Head, &f.HeadFront, &f.HeadStop} {
		*p = ends(*p, was, is)
	}
}

func restretchOpening(old, j *Job) {
	was, is := old.OpeningHeight, j.OpeningHeight
	f := &j.Door.Frame
	f.Head = f.Head.Shift(is - was)
	for _, p := range []*geom.Profile{&f.HingeJamb, &f.LatchJamb, &f.HingeFront, &f.LatchFront, &f.HingeStop, &f.LatchStop} {
		*p = ends(*p, was, is)
	}
}

// replant keeps stops that stood a rebate behind their front edge there.
func replant(old, j *Job) {
	was, is := &old.Door.Frame, &j.Door.Frame
	for _, s := range []struct {
		stop               *geom.Profile
		before, front, now geom.Profile
	}{
		{&is.HingeStop, was.HingeStop, was.HingeFront, is.HingeFront},
		{&is.LatchStop, was.LatchStop, was.LatchFront, is.LatchFront},
		{&is.HeadStop, was.HeadStop, was.HeadFront, is.HeadFront},
	} {
		if slices.Equal(s.before, s.front.Shift(-old.Rebate)) {
			*s.stop = s.now.Shift(-j.Rebate)
		}
	}
}

// rebate moves every stop with the rebate.
func rebate(old, j *Job) {
	f := &j.Door.Frame
	f.HingeStop = f.HingeStop.Shift(old.Rebate - j.Rebate)
	f.LatchStop = f.LatchStop.Shift(old.Rebate - j.Rebate)
	f.HeadStop = f.HeadStop.Shift(old.Rebate - j.Rebate)
	replant(old, j)
}

// rehang keeps the door as it was seen in the hinges-left frame: a job of the
// other hand is its mirror image.
func rehang(old, j *Job) {
	if old.Hand != j.Hand {
		turn(&j.Door.Frame)
	}
}

// remake gives a leaf of another make the members one has.
func remake(old, j *Job) {
	if old.Anatomy.Make == j.Anatomy.Make {
		return
	}
	usual := door.Ordinary(j.Anatomy.Make, j.Door.Leaf.Width, j.LeafHeight)
	a := &j.Anatomy
	a.HangingStile, a.ClosingStile, a.Rails, a.Muntins, a.Joints = usual.HangingStile, usual.ClosingStile, usual.Rails, usual.Muntins, usual.Joints
}

// relock gives a new lock its usual sizes, and takes them away with it. A latch at
// the place it has when left out goes to the lock.
func relock(old, j *Job) {
	if (old.Anatomy.Lock.Kind == door.NoLock) == (j.Anatomy.Lock.Kind == door.NoLock) {
		return
	}
	usual := find("latch.height")
	unsaid := usual.at(old, 0).same(usual.std(old, 0))
	for _, path := range []string{"leaf.lock.height", "leaf.lock.backset", "leaf.lock.case", "leaf.lock.depth"} {
		f := find(path)
		f.at(j, 0).set(f.std(j, 0))
	}
	if unsaid && !j.IsSurveyed() {
		usual.at(j, 0).set(usual.std(j, 0))
	}
}

// latchToo keeps the latch at the lock.
func latchToo(old, j *Job) {
	if old.Door.Latch.Height == old.Anatomy.Lock.Height && !j.IsSurveyed() {
		j.Door.Latch.Height = j.Anatomy.Lock.Height
	}
}

// copyPreset copies the numbers of the preset chosen.
func copyPreset(old, j *Job) {
	if j.WantedName == Own {
		return
	}
	way := j.Wanted.ClearWidth
	j.Wanted = preset(j.WantedName).Wanted
	j.Wanted.ClearWidth = way
}
