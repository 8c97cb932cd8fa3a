package trim

import (
	"math"

	"leafwright/geom/door"
)

// bevel planes an upright edge to an angle from now on. The arris that need not move
// stays: a steeper bevel takes the stop arris back, a lesser one the knuckle arris.
func (w *work) bevel(m *Move) *Care {
	l := &w.p.Door.Leaf
	line, in := l.Line(m.Edge)
	angle, setback := &l.HangingBevel, l.HangingSetback
	if m.Edge == door.LatchSide {
		angle, setback = &l.ClosingBevel, l.ClosingSetback
	}
	if m.Angle == *angle {
		return &Care{About: SoAlready}
	}
	before := setback()
	*angle = m.Angle
	steeper := setback() - before
	s := l.Sections[m.Edge]
	front, back := s.KnuckleBack, l.Thickness-s.StopBack
	stays := front // depth of the arris that does
	if steeper < 0 {
		stays = back
	}
	*line = line.Shift(-float64(in * float64(stays*steeper)))
	w.done.Cuts = 1
	why := w.trimmed(m.Edge)
	w.done.Most = math.Abs(float64((back - front) * steeper))
	return why
}

// ease takes an arris of the edge off at 45°, First from each face: from now on, so
// that an arris eased by as much already is left alone.
func (w *work) ease(m *Move) *Care {
	l := &w.p.Door.Leaf
	s := &l.Sections[m.Edge]
	leg := &s.KnuckleEase
	if m.Face == Stop {
		leg = &s.StopEase
	}
	more := m.First - *leg
	if !(more > 0) {
		return &Care{About: SoAlready, Left: *leg}
	}
	w.done.Volume = float64(l.Ends(m.Edge, 0).Length()*(float64(m.First*m.First)-float64(*leg**leg))) / 2
	*leg = m.First
	return nil
}
