package game

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"leafwright/geom/door"
	"leafwright/geom/survey"
	"leafwright/geom/trim"
)

// IsSurveyed tells whether the job's shapes come from its readings. A job is
// surveyed when it was read from a file whose readings have a say or that gives no
// shapes beside them, or after [Measure]. Door then always is what the readings
// come to, as far as they go.
func (j *Job) IsSurveyed() bool { return j.Survey != nil }

// Counted gives the places of the readings that have a say, in order: the k-th of
// Survey.Readings is Readings[Counted()[k]].
func (j *Job) Counted() []int {
	var of []int
	for i := range j.Readings {
		if j.Readings[i].counts() {
			of = append(of, i)
		}
	}
	return of
}

// Shapes gives the door the job is about, hinges on the left, and what its readings
// come to; nil where the shapes were given by hand. The error is a [Faults] that
// tells what keeps the door from being hung: what the least set lacks, readings
// that cannot all be true. The door can be drawn all the same: it is as far as the
// readings go, square and ordinary beyond.
func (j *Job) Shapes() (door.Door, *survey.Result, error) {
	if j.Survey == nil {
		return j.Door, nil, nil
	}
	if faults := j.surveyFaults(); len(faults) > 0 {
		return j.Door, j.Survey, faults
	}
	return j.Door, j.Survey, nil
}

// surveyFaults gives the survey's faults with the paths of the job's own readings.
func (j *Job) surveyFaults() (faults Faults) {
	of := j.Counted()
	for _, f := range j.Survey.Faults {
		if !within(f.Path, readingsPath) { // of the door they make, which the file does not give
			f = door.Fault{Path: readingsPath, Want: "they make a door whose " + strings.ReplaceAll(f.Error(), ": ", ", ")}
		}
		f.Path, f.Want = renumber(f.Path, of), renumber(f.Want, of)
		faults = append(faults, f)
	}
	return faults
}

// renumber puts the readings' own places where the text has those of the readings
// that have a say.
func renumber(text string, of []int) string {
	const lead = readingsPath + "["
	out := ""
	for {
		i := strings.Index(text, lead)
		if i < 0 {
			return out + text
		}
		out, text = out+text[:i+len(lead)], text[i+len(lead):]
		if end := strings.IndexByte(text, ']'); end > 0 {
			if k, err := strconv.Atoi(text[:end]); err == nil && k >= 0 && k < len(of) {
				out, text = out+strconv.Itoa(of[k]), text[end:]
			}
		}
	}
}

// survey makes the job's shapes what its readings come to. The hinges are on the
// left.
func (j *Job) survey() {
	var read []survey.Reading
	for _, i := range j.Counted() {
		read = append(read, j.Readings[i].surveyed())
	}
	want := j.hanging()
	j.Survey = survey.AdjustFor(read, j.made(), &want)
	d := &j.Survey.Door
	nominal := func(kind survey.Kind, fitted float64, allow door.Range) float64 {
		mm, read := j.middle(kind)
		switch {
		case read && allow.Holds(mm):
			return mm
		case allow.Holds(fitted):
			return tenth(fitted)
		}
		return tenth((allow.Lo + allow.Hi) / 2)
	}
	width := nominal(survey.LeafWidth, d.Leaf.Width, door.LeafWidth)
	j.LeafHeight = nominal(survey.LeafHeight, d.Leaf.Top.At(width/2), door.LeafHeight)
	j.OpeningHeight = nominal(survey.OpeningHeight, d.Frame.Head.At(width/2), door.OpeningHeight)
	j.OpeningWidth = nominal(survey.OpeningWidth, d.Frame.LatchJamb.At(j.OpeningHeight/2), door.OpeningWidth)
	opens := j.Door.Opens
	if len(d.Check()) == 0 {
		j.Door = d.Clone()
		j.Rebate = tenth(-d.Frame.LatchStop.At(j.OpeningHeight / 2))
	} else { // no door, but to be drawn all the same
		drawn := Blank(width, j.LeafHeight, nominal(survey.LeafThickness, d.Leaf.Thickness, door.LeafThickness))
		j.Door, j.Rebate = drawn.Door, drawn.Rebate
	}
	if opens != 0 {
		j.Door.Opens = opens
	}
}

// hanging gives how a leaf is to hang whose hinges go where they are wanted: with the
// paint to come, and without the season, which is the closing gap's.
func (j *Job) hanging() survey.Hanging {
	w := FittingIn(j, 0, nil).Wanted
	head := w.Gaps[door.HeadSide]
	return survey.Hanging{
		Side: w.Gaps[door.HingeSide].Target, Head: head.Target, HeadLeast: head.Least,
		Floor: w.Gaps[door.FloorSide].Least, Swing: w.SwingFloor.Least,
	}
}

// made gives what does the first moves made for keeps to a door; nil where there are
// none.
func (j *Job) made() survey.Made {
	if len(j.Made) == 0 {
		return nil
	}
	moves, anatomy := cloneMoves(j.Made), j.Found().Anatomy
	return func(d door.Door, n int) door.Door {
		return changed(d, anatomy, moves[:min(max(n, 0), len(moves))]).Door
	}
}

// Change gives what the moves made for keeps and then an option's do to the door as
// found, for [Job.SureOf]; the option's place, or below zero for none.
func (j *Job) Change(option int) survey.Change {
	made, anatomy, rated := cloneMoves(j.Made), j.Found().Anatomy, j.rated()
	var tried []trim.Move
	if option >= 0 {
		tried = cloneMoves(j.Options[option].Moves)
	}
	return func(d door.Door) door.Door {
		p := changed(d, anatomy, made)
		p.Anatomy.Rated = rated
		p, _ = trim.All(p, tried)
		return p.Door
	}
}

func changed(d door.Door, a door.Anatomy, moves []trim.Move) trim.Piece {
	p, _ := trim.All(trim.Piece{Door: d, Anatomy: a}, moves)
	return p
}

// surveyFiled does it for a job as its file speaks of it.
func (j *Job) surveyFiled() {
	inside := j.filed()
	inside.survey()
	*j = inside.filed()
}

// tenth rounds to the tenth of a mm.
func tenth(mm float64) float64 { return math.Round(mm*10) / 10 }

// resurvey works a changed job's shapes out anew, and lays the leaf's members out
// for its new size. Before and after, the job is as its file speaks of it.
func (j *Job) resurvey(old *Job) {
	if !j.IsSurveyed() || old.IsSurveyed() && slices.Equal(old.Readings, j.Readings) && len(old.Made) == len(j.Made) &&
		old.hanging() == j.hanging() {
		return
	}
	j.surveyFiled()
	a := &j.Anatomy
	before := *old
	before.Anatomy.Make = a.Make
	if was := before.usual(); sameMembers(a, &was) {
		j.layOut()
		return
	}
	keptRails, keptMuntins := slices.Clone(a.Rails), slices.Clone(a.Muntins)
	j.moveMuntins(old)
	j.stretchRails(old)
	if leaf := j.nominalLeaf(); len(a.Check(&leaf)) > 0 {
		a.Rails, a.Muntins = keptRails, keptMuntins
		if len(a.Check(&leaf)) > 0 {
			j.layOut()
		}
	}
}

func sameMembers(a, b *door.Anatomy) bool {
	return a.HangingStile == b.HangingStile && a.ClosingStile == b.ClosingStile &&
		slices.Equal(a.Rails, b.Rails) && slices.Equal(a.Muntins, b.Muntins)
}

// layOut gives the leaf the members one of its make and size ordinarily has, and a
// lock that is off the leaf its usual place.
func (j *Job) layOut() {
	a := &j.Anatomy
	usual := j.usual()
	a.HangingStile, a.ClosingStile, a.Rails, a.Muntins, a.Joints = usual.HangingStile, usual.ClosingStile, usual.Rails, usual.Muntins, usual.Joints
	if leaf := j.nominalLeaf(); len(a.Check(&leaf)) > 0 {
		for _, path := range []string{"leaf.lock.height", "leaf.lock.backset", "leaf.lock.case", "leaf.lock.depth"} {
			f := find(path)
			f.at(j, 0).set(f.std(j, 0))
		}
	}
}

// nominalLeaf is the leaf as it is called, which its members are laid out on where
// the leaf itself is only known by readings.
func (j *Job) nominalLeaf() door.Leaf {
	return door.Rectangle(j.Door.Leaf.Width, j.LeafHeight, j.Door.Leaf.Thickness)
}

// Measure gives the job with its shapes to come from readings from now on, of which
// it has none with a say yet; the name, the hand, what the leaf is made of and the
// gaps wanted stay. A job that is measured already stays as it is.
func Measure(job Job) Job {
	if job.IsSurveyed() {
		return job
	}
	old := job.filed()
	j := old.Clone()
	for i := range j.Readings {
		j.Readings[i].Off = true
	}
	j.Survey = new(survey.Result)
	j.resurvey(&old)
	return j.filed()
}

// Unmeasured gives a job of which nothing is known yet, to be measured: its leaf is taken
// as a framed one, as one is of which no file says how it is made.
func Unmeasured(job Job) Job {
	old := job.Clone()
	job.Anatomy.Make = door.Framed
	remake(&old, &job)
	return Measure(job)
}

// WithReadings gives the job with more readings, as they come from a table. The
// error is a [Faults], and the job comes back as it was: its shapes were given by
// hand, or there would be too many.
func (j Job) WithReadings(more []Reading) (Job, error) {
	if !j.IsSurveyed() {
		return j, measureFirst(readingsPath)
	}
	file := j.filed()
	file.Readings = append(file.Readings, more...)
	if n := len(file.Readings); n > survey.ReadingsMost {
		return j, Faults{{Path: readingsPath, Value: strconv.Itoa(n), Want: "at most " + strconv.Itoa(survey.ReadingsMost)}}
	}
	return Form{}.accept(j, file)
}
