package geom

// Motion is a rigid motion: it takes the point (u, v, w) to
// Origin + u·U + v·V + w·W, with U, V, W at right angles and of length 1.
type Motion struct{ Origin, U, V, W Vec }

// Point gives where the motion takes p.
func (m Motion) Point(p Vec) Vec { return m.Origin.Add(m.Way(p)) }

// Way gives where the motion turns the displacement d, without shifting it.
func (m Motion) Way(d Vec) Vec {
	return m.U.Scale(d.X).Add(m.V.Scale(d.Y)).Add(m.W.Scale(d.Z))
}

// Axis is the line the leaf turns about: a point on it and its direction, of
// length 1, pointing from the top hinge to the bottom one, so that a positive
// turn opens the leaf.
type Axis struct{ At, Down Vec }

// Split parts the place p into the point of the axis nearest to it and the two
// displacements, of equal length, between which the turn carries p: the turned
// place is foot + Cos·out + Sin·on.
func (a Axis) Split(p Vec) (foot, out, on Vec) {
	d := p.Sub(a.At)
	foot = a.At.Add(a.Down.Scale(d.Dot(a.Down)))
	out = p.Sub(foot)
	return foot, out, a.Down.Cross(out)
}

// Turn gives the place p after a turn about the axis.
func (a Axis) Turn(p Vec, by Turn) Vec {
	foot, out, on := a.Split(p)
	return foot.Add(out.Scale(by.Cos)).Add(on.Scale(by.Sin))
}

// Motion gives the turn about the axis as a motion that follows m.
func (a Axis) Motion(m Motion, by Turn) Motion {
	way := func(d Vec) Vec {
		along := a.Down.Scale(d.Dot(a.Down))
		out := d.Sub(along)
		return along.Add(out.Scale(by.Cos)).Add(a.Down.Cross(out).Scale(by.Sin))
	}
	return Motion{a.Turn(m.Origin, by), way(m.U), way(m.V), way(m.W)}
}

// Off gives how far p lies from the axis.
func (a Axis) Off(p Vec) float64 {
	_, out, _ := a.Split(p)
	return out.Len()
}
