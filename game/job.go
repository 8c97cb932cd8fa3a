package game

import (
	"slices"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
	"leafwright/geom/survey"
	"leafwright/geom/trim"
)

// Version is the job file's version that this program reads and writes.
const Version = 1

// Hand is the side the hinges are on, seen from the knuckle side, the side the
// leaf opens towards.
type Hand string

// The hands.
const (
	Left  Hand = "left"
	Right Hand = "right"
)

// Job is one leaf to be hung in one opening. All lengths in mm.
type Job struct {
	Name, Note string
	Hand       Hand
	Door       door.Door // hinges on the left, whatever the hand
	Anatomy    door.Anatomy

	// What things are called: the sizes that shapes depart from. The leaf's
	// nominal width is Door.Leaf.Width.
	LeafHeight                  float64
	OpeningWidth, OpeningHeight float64
	Rebate                      float64 // front edge to stop, where no stop was measured

	Wanted     judge.Wanted
	WantedName string // a preset's name, or Own

	// Neighbour is the rails of a door beside this one, from the foot up, in heights
	// above the floor: sightlines that ought to run on.
	Neighbour []door.Rail

	// Voids are the places of the leaf as found where sound timber is missing.
	Voids  []Void
	House  House
	Paint  Paint
	Meter  Meter
	Prices Prices

	// Made is what was done to the door for keeps, in order, and Options what might be
	// done next. Door and Anatomy are the door as found.
	Made    []trim.Move
	Options []Option

	// Readings is what was read off the door, as typed, those without a say too.
	Readings []Reading
	// Survey is what the readings come to, nil where the shapes were given by hand.
	// It follows from the readings that have a say and must not be changed.
	Survey *survey.Result
}

// Clone gives a job that shares nothing with j.
func (j Job) Clone() Job {
	j.Door = j.Door.Clone()
	j.Anatomy.Rails = slices.Clone(j.Anatomy.Rails)
	j.Anatomy.Muntins = slices.Clone(j.Anatomy.Muntins)
	j.Readings = slices.Clone(j.Readings)
	j.Anatomy.Strips = slices.Clone(j.Anatomy.Strips)
	j.Neighbour = slices.Clone(j.Neighbour)
	j.Voids = cloneVoids(j.Voids)
	j.Made = cloneMoves(j.Made)
	j.Options = slices.Clone(j.Options)
	for i := range j.Options {
		j.Options[i].Moves = cloneMoves(j.Options[i].Moves)
	}
	return j
}

func cloneMoves(moves []trim.Move) []trim.Move {
	moves = slices.Clone(moves)
	for i := range moves {
		moves[i].Line = slices.Clone(moves[i].Line)
	}
	return moves
}

// Blank is the plainest job: a flush leaf of the size in an opening that leaves the
// usual gaps round it, two hinges, everything else as it is when left out of a file. The sizes must be within [door.LeafWidth], [door.LeafHeight] and
// [door.LeafThickness].
func Blank(width, height, thickness float64) Job {
	var j Job
	j.LeafHeight, j.Door.Leaf.Width, j.Door.Leaf.Thickness = height, width, thickness
	usual := &presets[0].Wanted
	head, foot := usual.Gaps[fit.HeadSide].Target, usual.Gaps[fit.FloorSide].Target
	j.Door.Hinges = make([]door.Hinge, 2)
	top, low := &j.Door.Hinges[0], &j.Door.Hinges[1]
	end := min(190, height/4) // middle of a 75 mm butt, 150 mm from the top: UK practice
	top.LeafHeight, low.LeafHeight = height-end, min(265, height/4)
	top.JambHeight, low.JambHeight = top.LeafHeight+foot, low.LeafHeight+foot
	fill(table(), &j, never)
	j.OpeningWidth, j.OpeningHeight = width+top.Gap()+usual.Gaps[fit.LatchSide].Target, height+head+foot
	fill(table(), &j, never)
	return j
}

// filed gives the job as its file speaks of it, and back again.
func (j Job) filed() Job {
	j = j.Clone()
	if len(j.Door.Floor.Radii) == 0 { // level at 0, said in full
		j.Door.Floor = door.FlatFloor(0)
	}
	if j.Hand == Right {
		turn(&j.Door.Frame)
	}
	return j
}

// turn changes the sign of every x of the opening.
func turn(f *door.Frame) {
	for _, p := range []geom.Profile{f.HingeJamb, f.LatchJamb} {
		for i := range p {
			p[i].Value = 0 - p[i].Value
		}
	}
	for _, p := range []geom.Profile{f.Head, f.HeadFront, f.HeadStop} {
		for i := range p {
			p[i].At = 0 - p[i].At
		}
		slices.Reverse(p)
	}
}

// side is the sign of x towards the latch in the file: 1, or −1 for a right-hung leaf.
func (j *Job) side() float64 {
	if j.Hand == Right {
		return -1
	}
	return 1
}
