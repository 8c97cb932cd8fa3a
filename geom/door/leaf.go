package door

import "leafwright/geom"

// Leaf is the door itself, in leaf axes: u across from the hanging edge, v up
// from the foot of the hanging stile, w out towards the knuckle side.
type Leaf struct {
	Width     float64 // nominal W, between the two lines Face is given on
	Thickness float64 // t

	Hanging geom.Profile // u = A(v), hanging edge of the knuckle face
	Closing geom.Profile // u = B(v), closing edge of the knuckle face
	Top     geom.Profile // v = C(u)
	Bottom  geom.Profile // v = D(u)

	HangingFace geom.Profile // w = Sh(v), the knuckle face's stand out of flat at u = 0
	ClosingFace geom.Profile // w = Sc(v), the same at u = W

	HangingBevel geom.Angle // the stop face stands back from the knuckle face's hanging edge by t·tan
	ClosingBevel geom.Angle // likewise at the closing edge

	Sections [Edges]Section // where an edge is not sharp and square from face to face
}

// Rectangle gives a flat, square-edged leaf.
func Rectangle(width, height, thickness float64) Leaf {
	return Leaf{
		Width: width, Thickness: thickness,
		Hanging: geom.Through(0, 0, height, 0),
		Closing: geom.Through(0, width, height, width),
		Top:     geom.Through(0, height, width, height),
		Bottom:  geom.Through(0, 0, width, 0),
	}
}

// Face gives w = s(u, v), the knuckle face's stand out of the leaf's plane. It
// keeps its form beyond the edges and the stations.
func (l *Leaf) Face(u, v float64) float64 {
	h := l.HangingFace.At(v)
	return h + float64((l.ClosingFace.At(v)-h)*u/l.Width)
}

// Corners are the four corners of a leaf's face, in leaf axes, w left 0.
type Corners struct{ HangingFoot, ClosingFoot, HangingHead, ClosingHead geom.Vec }

// Corners gives where, depth d behind the knuckle face, the side edges' whole
// lines meet the whole lines of top and bottom.
func (l *Leaf) Corners(d float64) Corners {
	hanging := l.HangingSetback() * d
	closing := -l.ClosingSetback() * d
	return Corners{
		HangingFoot: meet(l.Hanging, hanging, l.Bottom),
		ClosingFoot: meet(l.Closing, closing, l.Bottom),
		HangingHead: meet(l.Hanging, hanging, l.Top),
		ClosingHead: meet(l.Closing, closing, l.Top),
	}
}

// HangingSetback is how far the hanging edge stands back per mm of depth.
func (l *Leaf) HangingSetback() float64 {
	if l.HangingBevel == 0 {
		return 0
	}
	return l.HangingBevel.Tan()
}

// ClosingSetback is how far the closing edge stands back per mm of depth.
func (l *Leaf) ClosingSetback() float64 {
	if l.ClosingBevel == 0 {
		return 0
	}
	return l.ClosingBevel.Tan()
}

// meet gives the corner where u = side(v) + off meets v = end(u). Both slopes
// are small, so the pieces are found in a step or two and the corner is then the
// crossing of two straight lines.
func meet(side geom.Profile, off float64, end geom.Profile) geom.Vec {
	v := end.At(0)
	u := side.At(v) + off
	for range 8 {
		i, j := side.Find(v), end.Find(u)
		a, b := side.Piece(i), end.Piece(j)
		u = (a.C0 + off + float64(a.C1*b.C0)) / (1 - float64(a.C1*b.C1))
		v = b.At(u)
		if side.Find(v) == i && end.Find(u) == j {
			break
		}
	}
	return geom.Vec{X: u, Y: v}
}

func (l Leaf) clone() Leaf {
	l.Hanging, l.Closing = cloneProfile(l.Hanging), cloneProfile(l.Closing)
	l.Top, l.Bottom = cloneProfile(l.Top), cloneProfile(l.Bottom)
	l.HangingFace, l.ClosingFace = cloneProfile(l.HangingFace), cloneProfile(l.ClosingFace)
	return l
}
