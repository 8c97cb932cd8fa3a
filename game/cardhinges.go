package game

import (
	"slices"
	"strconv"

	"leafwright/geom/door"
	"leafwright/geom/survey"
)

// hingesID is the card's way to say how many hinges there are.
const hingesID = "hinges"

// HingesPath takes how many hinges the card asks after, for [Form.Set].
const HingesPath = cardPath + hingesID

// HingesAsked gives how many hinges the card asks after: those of the door, or more
// when a reading, taken yet or not, is of a lower one.
func (j *Job) HingesAsked() int {
	n := len(j.Door.Hinges)
	for i := range j.Readings {
		n = max(n, j.Readings[i].Hinge)
	}
	return n
}

// setHinges makes the card ask after so many hinges. What was read of the lowest
// stays the lowest's.
func (fm Form) setHinges(job Job, text string) (Job, error) {
	fault := func(want string) (Job, error) { return job, Faults{{Path: HingesPath, Want: want}} }
	if !job.IsSurveyed() {
		return job, measureFirst(HingesPath)
	}
	n, err := strconv.Atoi(text)
	if err != nil || n < door.HingesLeast || n > door.HingesMost {
		return fault("a number from " + strconv.Itoa(door.HingesLeast) + " to " + strconv.Itoa(door.HingesMost) + " is wanted")
	}
	file := job.filed()
	was := file.HingesAsked()
	if n == was {
		return job, nil
	}
	kept := file.Readings[:0:0]
	for _, r := range file.Readings {
		switch {
		case r.Hinge == was:
			r.Hinge = n
		case r.Hinge >= n && given(r.Value):
			return fault("hinge " + strconv.Itoa(r.Hinge) + " was read already: remove its readings first")
		case r.Hinge >= n: // only there to be asked after
			continue
		}
		if r.Hinge == 0 || given(r.Value) || r.Hinge < n {
			kept = append(kept, r)
		}
	}
	file.Readings = kept
	lowest := func(r Reading) bool { return r.Hinge == n }
	if n > door.HingesLeast && !slices.ContainsFunc(file.Readings, lowest) {
		file.Readings = append(file.Readings, Reading{Kind: survey.HingeOnLeaf, Hinge: n, Off: true})
	}
	return fm.accept(job, file)
}
