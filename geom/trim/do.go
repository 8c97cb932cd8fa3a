package trim

import (
	"leafwright/geom/door"
)

// All makes the moves one after another, one step for each: those that are off or
// cannot be done are left out, and the rest goes on without them; what leans on one
// that cannot be done has a care that says so.
func All(p Piece, moves []Move) (Piece, []Step) {
	steps := make([]Step, len(moves))
	spoilt := p.Door.Check() // what a move makes is sound
	for i, m := range moves {
		steps[i].Move = m
		if !m.Off {
			p, steps[i].Done, steps[i].Why = do(p, m, spoilt)
		}
	}
	Lean(steps)
	return p, steps
}

// Do makes one move. The piece given is not changed. A care that forbids the move is
// given back with the piece as it was; nothing is done to a door that cannot be
// measured.
func Do(p Piece, m Move) (Piece, Done, *Care) { return do(p, m, p.Door.Check()) }

// do is [Do] on a door that spoilt is wrong with.
func do(p Piece, m Move, spoilt []door.Fault) (Piece, Done, *Care) {
	if faults := m.Check(); len(faults) > 0 {
		return p, Done{}, &Care{About: Numbers, Faults: faults}
	}
	if len(spoilt) > 0 {
		return p, Done{}, &Care{About: DoorSpoilt, Faults: spoilt}
	}
	if p.Anatomy.Rated && unborne(&m) {
		return p, Done{}, &Care{About: Rated}
	}
	if m.idle() {
		return p, Done{}, &Care{About: NoAmount}
	}
	w := work{p: p, was: &p}
	why := w.make(&m)
	if why == nil {
		why = w.sound()
	}
	if why != nil {
		return p, Done{}, why
	}
	if p.Anatomy.Rated {
		w.mind(Care{About: RatedSet})
	}
	w.done.Minutes = w.minutes(&m)
	return w.p, w.done, nil
}

// unborne tells whether the move is one that a rated leaf does not bear: it takes
// timber off the leaf, glues some on, or lets a hinge deeper into it.
func unborne(m *Move) bool {
	return SpecOf(m.Kind).TakesOff || m.Kind == Sink && m.On != OnJamb
}

// Finest is the least amount, mm, that a move is given to: less is nothing, on the bench
// and in words.
const Finest = 0.005

// idle tells whether the move's amounts come to nothing. A straight cut from corner to
// corner takes what stands out between them, a strip of no height is told of as too low,
// and a stop that follows the leaf may touch it.
func (m *Move) idle() bool {
	spec := SpecOf(m.Kind)
	switch {
	case m.Kind == Cut || m.Kind == Splice || m.Kind == Reuse || m.Kind == Follow || m.Cover != 0:
		return false
	case spec.Needs&NeedLine != 0:
		for _, s := range m.Line {
			if s.Value >= Finest {
				return false
			}
		}
		return true
	}
	return spec.Needs&NeedFirst != 0 && max(m.First, -m.First, m.Last, -m.Last) < Finest
}

// work is a move being done: the piece it makes, the piece it was, and what it did.
// What it changes of the piece it copies first: the two share everything else.
type work struct {
	p    Piece
	was  *Piece
	done Done
}

// make makes the move, whose numbers are sound.
func (w *work) make(m *Move) *Care {
	switch m.Kind {
	case Plane, Scribe:
		return w.plane(m)
	case Cut:
		return w.cut(m)
	case Undercut:
		return w.undercut(m)
	case Bevel:
		return w.bevel(m)
	case Ease:
		return w.ease(m)
	case Splice:
		return w.splice(m)
	case Reuse:
		return w.reuse(m)
	case Shift:
		return w.shift(m)
	case Raise:
		return w.raise(m)
	case Sink:
		return w.sink(m)
	case Pack:
		return w.pack(m)
	case Set:
		return w.set(m)
	case Rehinge:
		return w.rehinge(m)
	case PlaneJamb:
		return w.planeJamb(m)
	case PackJamb:
		return w.packJamb(m)
	case Restop:
		return w.restop(m)
	case Follow:
		return w.follow(m)
	case Threshold:
		return w.threshold(m)
	}
	return &Care{About: NotThere}
}

// sound tells why the piece that was made will not do: its door cannot be hung and
// measured, or a member that was on the leaf no longer is; or a rated leaf would be
// cut for its hinges.
func (w *work) sound() *Care {
	if w.was.Anatomy.Rated && w.done.Volume > 0 {
		return &Care{About: Rated}
	}
	faults := w.p.Door.Check()
	if len(faults) == 0 {
		if after := w.p.Anatomy.Check(&w.p.Door.Leaf); len(after) > 0 && len(w.was.Anatomy.Check(&w.was.Door.Leaf)) == 0 {
			faults = after
		}
	}
	if len(faults) > 0 {
		return &Care{About: DoorSpoilt, Faults: faults}
	}
	return nil
}
