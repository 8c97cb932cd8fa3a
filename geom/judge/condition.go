package judge

import (
	"math"

	"leafwright/geom"
	"leafwright/geom/door"
)

// Quantity is a measure of the leaf's or the frame's own condition.
type Quantity string

// The quantities graded. Values are never below zero, and mm but for FramePlumb and
// HeadLevel, which are mm per metre.
const (
	Twist      Quantity = "wind"                 // one corner of the leaf from the plane of the other three
	BowLength  Quantity = "bow"                  // of the leaf's face along a stile
	Squareness Quantity = "corner out of square" // worst corner, on a 500 mm square
	Diagonals  Quantity = "diagonals"            // difference between the leaf's
	FramePlumb Quantity = "frame out of plumb"   // worst jamb, in the wall's plane or across it, mm per metre
	FrameLean  Quantity = "frame out of plumb in all"
	FrameWind  Quantity = "frame in wind"       // one corner of the frame's front edges from the plane of the other three
	FrameRack  Quantity = "frame out of square" // difference between the opening's diagonals
	HeadLevel  Quantity = "head out of level"
)

// Condition is one quantity of a door and the published classes it was held
// against.
type Condition struct {
	Quantity Quantity
	Value    float64
	Grades   []Grade
}

// Grade is a published limit and whether the value keeps it.
type Grade struct {
	Class
	Keeps bool
}

// measuringInset is how far in from the edges flatness is read: 20 mm, EN 951.
const measuringInset = 20

// squareArm is the arm of the square that corners are tried with: 500 mm, EN 951.
const squareArm = 500

// Conditions grades the leaf and the frame of a door.
func Conditions(d *door.Door) []Condition {
	l, f := &d.Leaf, &d.Frame
	c := l.Corners(0)
	plumb, lean := frameLean(f)
	hinge, latch := f.HeadCorners()
	out := []Condition{
		{Quantity: Twist, Value: LeafTwist(l)},
		{Quantity: BowLength, Value: leafBow(l)},
		{Quantity: Squareness, Value: squareness(l, c)},
		{Quantity: Diagonals, Value: diagonals(c)},
		{Quantity: FramePlumb, Value: plumb},
		{Quantity: FrameLean, Value: lean},
		{Quantity: HeadLevel, Value: math.Abs(latch.Y-hinge.Y) / (latch.X - hinge.X) * 1000},
		{Quantity: FrameRack, Value: diagonals(door.Corners{
			HangingFoot: geom.Vec{X: f.HingeJamb.At(0)}, ClosingFoot: geom.Vec{X: f.LatchJamb.At(0)},
			HangingHead: hinge, ClosingHead: latch,
		})},
		{Quantity: FrameWind, Value: math.Abs(
			f.LatchFront.At(latch.Y) - f.LatchFront.At(0) - f.HingeFront.At(hinge.Y) + f.HingeFront.At(0))},
	}
	for i := range out {
		for _, class := range Classes {
			if class.Quantity == out[i].Quantity {
				out[i].Grades = append(out[i].Grades, Grade{class, out[i].Value <= class.Limit+rounding})
			}
		}
	}
	return out
}

// LeafTwist is the stand of one corner from the plane through the other three,
// read measuringInset in from the edges (BS 4787, EN 952), mm.
func LeafTwist(l *door.Leaf) float64 {
	c := l.Corners(0)
	u0, u1 := max(c.HangingFoot.X, c.HangingHead.X)+measuringInset, min(c.ClosingFoot.X, c.ClosingHead.X)-measuringInset
	v0, v1 := max(c.HangingFoot.Y, c.ClosingFoot.Y)+measuringInset, min(c.HangingHead.Y, c.ClosingHead.Y)-measuringInset
	return math.Abs(l.Face(u1, v1) - l.Face(u1, v0) - l.Face(u0, v1) + l.Face(u0, v0))
}

// leafBow is the greatest departure of the face from a straightedge along either
// stile, read measuringInset in.
func leafBow(l *door.Leaf) float64 {
	c := l.Corners(0)
	over := geom.Interval{
		Lo: max(c.HangingFoot.Y, c.ClosingFoot.Y) + measuringInset,
		Hi: min(c.HangingHead.Y, c.ClosingHead.Y) - measuringInset,
	}
	var most float64
	for _, u := range [2]float64{measuringInset, l.Width - measuringInset} {
		k := u / l.Width
		along := scaled(l.HangingFace, 1-k).Plus(scaled(l.ClosingFace, k))
		most = max(most, math.Abs(bow(along, over)))
	}
	return most
}

func scaled(p geom.Profile, k float64) geom.Profile {
	q := make(geom.Profile, len(p))
	for i, s := range p {
		q[i] = geom.Station{At: s.At, Value: k * s.Value}
	}
	return q
}

// squareness lays a square's stock along the side edge at each corner and reads
// the gap at the end of the other arm; the greatest of the four, mm.
func squareness(l *door.Leaf, c door.Corners) float64 {
	corner := func(at geom.Vec, side, end geom.Profile, up, over float64) float64 {
		dv, du := up*squareArm, over*squareArm
		lean := (side.At(at.Y+dv) - side.At(at.Y)) / dv
		rise := (end.At(at.X+du) - end.At(at.X)) / du
		return math.Abs(lean+rise) * squareArm
	}
	return max(
		corner(c.HangingFoot, l.Hanging, l.Bottom, 1, 1),
		corner(c.ClosingFoot, l.Closing, l.Bottom, 1, -1),
		corner(c.HangingHead, l.Hanging, l.Top, -1, 1),
		corner(c.ClosingHead, l.Closing, l.Top, -1, -1))
}

func diagonals(c door.Corners) float64 {
	flat := func(a, b geom.Vec) float64 {
		d := a.Sub(b)
		d.Z = 0
		return d.Len()
	}
	return math.Abs(flat(c.HangingFoot, c.ClosingHead) - flat(c.ClosingFoot, c.HangingHead))
}

// frameLean is the worst lean of a jamb's face or front edge, mm per metre and in
// all over its height.
func frameLean(f *door.Frame) (perMetre, all float64) {
	hinge, latch := f.HeadCorners()
	for _, j := range []struct {
		p    geom.Profile
		high float64
	}{{f.HingeJamb, hinge.Y}, {f.LatchJamb, latch.Y}, {f.HingeFront, hinge.Y}, {f.LatchFront, latch.Y}} {
		r := math.Abs(rise(j.p, geom.Interval{Hi: j.high}))
		perMetre, all = max(perMetre, r/j.high*1000), max(all, r)
	}
	return perMetre, all
}
