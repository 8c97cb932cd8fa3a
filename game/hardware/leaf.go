package hardware

import (
	"leafwright/game"
	"leafwright/geom/door"
	"leafwright/geom/timber"
)

// Leaf is what the leaf weighs, what hangs it and what its screws hold. Lengths in
// mm, masses in kg, forces in N.
type Leaf struct {
	Make   door.Make
	Panels door.Panels
	Wood

	Mass        timber.Mass
	Least, Most float64 // kg, between what it lies some 9 times out of 10

	There, Asked int         // hinges
	Plates       float64     // height of the lowest hinge plates there are
	Butt         timber.Butt // the size asked for
	Third        *timber.Place

	Pull    float64       // of the heaviest the leaf may be, at the top hinge
	Leaning float64       // what somebody of [Person] kg leaning on the handle adds
	Screws  timber.Screws // of one plate, taken as usual
	Gravity float64       // the screws are counted in
	// Sound is the screws in sound wood against the leaf's own pull, Worn the same in worn
	// holes; SoundLeant and WornLeant with somebody on the handle.
	Sound, Worn, SoundLeant, WornLeant timber.Hold
	Poor                               int // of the top hinge's screws that stand in filler or in nothing
}

// Wood is what the job's words for the timber come to.
type Wood struct {
	Said    string // in the job
	Species *timber.Species
	Known   bool // the words name some timber
	Sure    bool // and name it beyond doubt
}

func woodOf(a *door.Anatomy) Wood {
	s, sure := timber.Find(a.Timber)
	return Wood{a.Timber, s, s != &timber.Softwood, sure}
}

// What is taken as usual.
const (
	// Person is who leans on the handle, kg (common practice, no published source).
	Person     = 80
	screws     = 4    // No. 8 on a plate, so far in (common practice, no published source)
	screwInto  = 30.0 // mm
	screwGauge = 8
)

// LeafOf gives the leaf's mass, hinges and screws by the door after moves, its hinges
// placed by the region's practice.
func LeafOf(t *game.Tried, region timber.Region) Leaf {
	l, a := &t.Door.Leaf, &t.Anatomy
	w := Leaf{Make: a.Make, Panels: a.Panels, Wood: woodOf(a), There: len(t.Door.Hinges)}
	w.Mass, w.Least, w.Most = timber.Weigh(l, a)
	c := l.Corners(0)
	height := max(c.HangingHead.Y-c.HangingFoot.Y, c.ClosingHead.Y-c.ClosingFoot.Y)
	w.Asked = timber.Hinges(height, l.Width, w.Mass.All)
	w.Butt = timber.ButtFor(l.Thickness, l.Width)
	between := 0.0
	if w.There > 0 { // readings may not have come to any yet
		top, foot := t.Door.Hinges[0], t.Door.Hinges[w.There-1]
		between = top.LeafHeight - foot.LeafHeight
		w.Plates = top.Height
	}
	for _, h := range t.Door.Hinges {
		w.Plates = min(w.Plates, h.Height)
	}
	if w.There == 2 && w.Asked > 2 {
		places := timber.Places(l, a, region, 3, w.Plates, screwInto)
		w.Third = &places[1]
	}
	w.Pull = timber.Pull(w.Most, l.Width, between)
	w.Leaning = timber.Pull(Person, 2*l.Width, between)
	w.Screws = usualScrews()
	w.Gravity = w.Species.Gravity
	switch {
	case w.Known && !w.Sure:
		w.Gravity *= 1 - timber.SpreadLoose
	case !w.Known:
		for i := range timber.Timbers {
			w.Gravity = min(w.Gravity, timber.Timbers[i].Gravity)
		}
	}
	w.hold()
	return w
}

// LeafIn gives the same of a job's leaf: screws of the top hinge that stand where its
// timber is gone and not pieced hold nothing.
func LeafIn(job *game.Job, t *game.Tried, region timber.Region) Leaf {
	w := LeafOf(t, region)
	found := job.Found()
	if w.Poor = RepairsOf(job, &found, t, nil).poor(); w.Poor > 0 {
		w.Screws.Number -= w.Poor
		w.hold()
	}
	return w
}

// hold holds the screws against what pulls on them.
func (w *Leaf) hold() {
	worn := w.Screws
	worn.Ground = timber.Worn
	w.Sound, w.Worn = timber.HoldOf(w.Pull, w.Screws, w.Gravity, 0), timber.HoldOf(w.Pull, worn, w.Gravity, 0)
	w.SoundLeant, w.WornLeant = timber.HoldOf(w.Pull+w.Leaning, w.Screws, w.Gravity, 0), timber.HoldOf(w.Pull+w.Leaning, worn, w.Gravity, 0)
}

func usualScrews() timber.Screws {
	return timber.Screws{Number: screws, Diameter: timber.Shank(screwGauge), Into: screwInto, Ground: timber.Sound}
}
