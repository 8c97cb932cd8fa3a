package fit

import (
	"math"

	"leafwright/geom"
	"leafwright/geom/door"
)

// hang sets the pose, the pin axis and the strain from the first and the last
// hinge: h = (A(v), v, s(A(v), v)) on the leaf comes to
// m = (H(y) + g, y, Fh(y) + e) in the frame at the top hinge, and the way to the
// bottom hinge comes into line. There must be two hinges at least, apart on both.
func (f *Fit) hang(d *door.Door) {
	top, foot := d.Hinges[0], d.Hinges[len(d.Hinges)-1]
	onLeaf := seat(&d.Leaf, foot).Sub(seat(&d.Leaf, top))
	onJamb := bed(&d.Frame, foot).Sub(bed(&d.Frame, top))
	f.Strain = onLeaf.Len() - onJamb.Len()
	turn := lineUp(onLeaf.Unit(), onJamb.Unit())
	f.Pose = turn
	f.Pose.Origin = bed(&d.Frame, top).Sub(turn.Way(seat(&d.Leaf, top)))

	pin := Pin(d, 0)
	f.Axis = geom.Axis{At: pin, Down: Pin(d, len(d.Hinges)-1).Sub(pin).Unit()}
}

// seat is where the hinge takes hold of the leaf, in leaf axes.
func seat(l *door.Leaf, h door.Hinge) geom.Vec {
	u := l.Hanging.At(h.LeafHeight)
	return geom.Vec{X: u, Y: h.LeafHeight, Z: l.Face(u, h.LeafHeight)}
}

// bed is where the hinge holds that place of the leaf in the world.
func bed(f *door.Frame, h door.Hinge) geom.Vec {
	return geom.Vec{
		X: f.HingeJamb.At(h.JambHeight) + h.Gap(),
		Y: h.JambHeight,
		Z: f.HingeFront.At(h.JambHeight) + h.Proud,
	}
}

// lineUp gives the turn that takes the unit way a of the leaf to the unit way b
// of the world and levels the leaf's u axis in z, pointing to +x.
//
// With û = (û·a)a + k·p, p square to a, the turned û is (û·a)b + k·q with q square
// to b. Its z part vanishes when q.z = −(û·a)b.z/k; q is then known but for the
// sign of its level part, which is the one towards +x.
func lineUp(a, b geom.Vec) geom.Motion {
	u := geom.Vec{X: 1}
	along := u.Dot(a)
	rest := u.Sub(a.Scale(along))
	k := rest.Len()
	p := rest.Unit()

	steep := geom.Vec{Z: 1}.Sub(b.Scale(b.Z)).Unit() // square to b, nearest to z
	level := steep.Cross(b)                          // square to b, no z part
	if level.X < 0 {
		level = level.Scale(-1)
	}
	rise := max(-1, min(1, -along*b.Z/(k*steep.Z)))
	q := steep.Scale(rise).Add(level.Scale(math.Sqrt(1 - float64(rise*rise))))

	a3, b3 := a.Cross(p), b.Cross(q)
	turned := func(d geom.Vec) geom.Vec {
		return b.Scale(d.Dot(a)).Add(q.Scale(d.Dot(p))).Add(b3.Scale(d.Dot(a3)))
	}
	return geom.Motion{U: turned(u), V: turned(geom.Vec{Y: 1}), W: turned(geom.Vec{Z: 1})}
}
