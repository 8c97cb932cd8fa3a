package judge

import (
	"math"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fit"
)

// Friction is the lever, mm, at which a leaf's weight overcomes its hinges, and so the
// lean of the pins that is worth telling: of two pins of 4 mm radius, oiled, that bear
// the leaf's weight on collars about as wide and a quarter of it sideways, each, at a
// friction of 0.1 (elementary statics, half the width over twice the hinges' spacing;
// the friction from memory, that less is let be common practice): 0.1·(5 + 2·4/4). It is
// a lean of about 2 mm in a metre of a leaf 760 wide.
const Friction = 0.7

// Numbers of a leaf let go: it is tried ajar and some way from fully open, where walls
// and stops are not in the way.
const (
	ajar   = 8 * geom.Degree
	beside = 8 * geom.Degree

	halfOpen = 45 * geom.Degree
)

// Falls gives the greatest lever, mm, with which the leaf's weight turns it between
// ajar and nearly open, and the angle there: with sign 1 how hard it shuts, with −1
// how hard it opens. The lever is how fast the leaf's middle rises per radian; over
// the angle it is a harmonic.
func Falls(f *fit.Fit, d *door.Door, sign float64) (by float64, at geom.Angle) {
	l := &d.Leaf
	u := l.Width / 2
	v := (l.Top.At(u) + l.Bottom.At(u)) / 2
	_, out, on := f.Axis.Split(f.Pose.Point(f.FacePoint(u, v, l.Thickness/2)))
	lever := func(t geom.Angle) float64 {
		r := t.Turn()
		return float64(sign * (float64(on.Y*r.Cos) - float64(out.Y*r.Sin)))
	}
	lo, hi := f.Closed+ajar, d.Opens-beside
	if !(lo <= hi) {
		return 0, lo
	}
	at, by = lo, lever(lo)
	steepest := geom.Turn{Cos: sign * on.Y, Sin: -sign * out.Y}.Angle()
	for _, t := range [2]geom.Angle{hi, steepest} {
		if x := lever(t); lo <= t && t <= hi && x > by {
			at, by = t, x
		}
	}
	return by, at
}

// WideOpen tells, of a leaf let go, that it moves by how its pins lean in the wall's plane,
// and not out of it.
func (f *Finding) WideOpen() bool { return f.Angle >= halfOpen }

// letGo tells whether the leaf, let go, opens or shuts by itself, which it does by pins
// out of plumb. Its gaps may be good all the same: the verdict is Good, and [Verdicts]
// has no such finding. Worst is how far the top pin stands from over the bottom one, out
// of the wall or, of a leaf that moves when wide open, in it, mm, below 0 where the leaf
// shuts; Other is the lever, Angle where it is greatest, Opened tells that this is farther
// open than ajar.
func letGo(f *fit.Fit, d *door.Door) (out []Finding) {
	for _, sign := range [2]float64{-1, 1} {
		by, at := Falls(f, d, sign)
		if !(by > Friction) {
			continue
		}
		lean := fit.Pin(d, 0).Sub(fit.Pin(d, len(d.Hinges)-1))
		a := Finding{
			Subject: LetGo, Edge: fit.HingeSide, Verdict: Good, Other: by, Angle: at, Opened: at > f.Closed+ajar,
			Stretch: geom.Empty(), Whole: geom.Empty(), Binding: geom.Empty(), Limits: Limits{Most: Friction},
		}
		a.Worst = -sign * math.Abs(lean.Z) // what the leaf falls by is square to it
		if a.WideOpen() {
			a.Worst = -sign * math.Abs(lean.X)
		}
		out = append(out, a)
	}
	return out
}
