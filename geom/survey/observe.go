package survey

import (
	"math"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/survey/lsq"
)

// observer works out what an instrument reads on a door. With a net and rows it
// also notes, in the row at hand, how the reading follows each unknown; with seen
// it tells the places on lines that the reading touches.
type observer struct {
	d    *door.Door
	net  *net
	rows *lsq.Rows
	seen func(id lineID, at float64)
	// closed gives the door's fit with the leaf closed; nil when there is none.
	closed func() *fit.Fit
}

// Expect gives what reading r would be on the door, which must have passed its
// check; r's own value plays no part. NaN for an unknown kind, and for the size of a stile or
// rail, which no door says.
func Expect(d *door.Door, r Reading) float64 {
	s := SpecOf(r.Kind)
	if s == nil || s.ofMember() || s.Needs&NeedHinge != 0 && (r.Hinge < 0 || r.Hinge >= len(d.Hinges)) {
		return math.NaN()
	}
	o := observer{d: d, closed: func() *fit.Fit {
		var f fit.Fit
		fit.EvaluateClosed(&f, d)
		return &f
	}}
	return s.observe(&o, &r)
}

// value gives the line's value at s.
func (o *observer) value(id lineID, s float64) float64 {
	p := *profileOf(o.d, id)
	if id < hingeRebate || id > headRebate {
		return p.At(s)
	}
	return (*profileOf(o.d, id-hingeRebate+hingeFront)).At(s) - p.At(s)
}

// slope gives how steeply the line rises at s.
func (o *observer) slope(id lineID, s float64) float64 { return (*profileOf(o.d, id)).Slope(s) }

// lean notes that the reading follows the line's value at s by k.
func (o *observer) lean(id lineID, s, k float64) {
	if o.rows != nil {
		o.net.line[id].weigh(s, func(q int, w float64) { o.net.add(o.rows, q, float64(k*w)) })
	}
}

// line gives k times the line's value at s and notes that the reading follows it.
func (o *observer) line(id lineID, s, k float64) float64 {
	if o.seen != nil {
		o.seen(id, s)
	}
	o.lean(id, s, k)
	return float64(k * o.value(id, s))
}

// floor gives k times the floor's height and notes that the reading follows it.
func (o *observer) floor(r float64, a geom.Angle, k float64) float64 {
	if o.rows != nil {
		o.net.floor.weigh(r, a, func(q int, w float64) { o.net.add(o.rows, q, float64(k*w)) })
	}
	return float64(k * o.d.Floor.Polar(r, a))
}

// scalar notes that the reading follows a scalar by k, and gives its value.
func (o *observer) scalar(id scalarID, k float64) float64 {
	if o.rows != nil {
		o.net.add(o.rows, o.net.scalar[id], k)
	}
	return scalarOf(o.d, id)
}

// hinge gives k times a hinge's number and notes that the reading follows it.
func (o *observer) hinge(i int, f field, k float64) float64 {
	if o.rows != nil {
		o.net.add(o.rows, o.net.hinge[i][f], k)
	}
	return float64(k * *fieldOf(&o.d.Hinges[i], f))
}

// corner is where a side's whole line meets an end's, or the floor.
type corner struct {
	geom.Vec
	side, end lineID // end is lines for the floor
}

// follow notes that the reading follows the corner's place by kx and ky. With
// x = side(y) and y = end(x), dx = δside + side'·dy and dy = δend + end'·dx. On the
// floor, y is its height where the side's foot, at y = 0, is.
func (o *observer) follow(c corner, kx, ky float64) {
	if o.rows == nil {
		return
	}
	m := o.slope(c.side, c.Y)
	if c.end == lines {
		o.lean(c.side, c.Y, kx)
		ky += float64(kx * m)
		foot := math.Abs(o.value(c.side, 0))
		o.floor(foot, 0, ky)
		o.lean(c.side, 0, float64(ky*o.net.floor.rise(o.d.Floor.Heights[0], foot)))
		return
	}
	n := o.slope(c.end, c.X)
	det := 1 - float64(m*n)
	o.lean(c.side, c.Y, (kx+float64(ky*n))/det)
	o.lean(c.end, c.X, (ky+float64(kx*m))/det)
}

// apart gives the distance of two corners and notes that the reading follows it.
func (o *observer) apart(a, b corner) float64 {
	d := b.Vec.Sub(a.Vec)
	d.Z = 0
	long := d.Len()
	o.follow(b, d.X/long, d.Y/long)
	o.follow(a, -d.X/long, -d.Y/long)
	return long
}

// openingCorner gives a corner of the opening in its plane.
func (o *observer) openingCorner(at Side) corner {
	side := hingeJamb
	if at == LatchFoot || at == LatchHead {
		side = latchJamb
	}
	if at == HingeFoot || at == LatchFoot {
		foot := o.d.Floor.Polar(math.Abs(o.value(side, 0)), 0)
		return corner{geom.Vec{X: o.value(side, foot), Y: foot}, side, lines}
	}
	h, l := o.d.Frame.HeadCorners()
	if side == latchJamb {
		h = l
	}
	return corner{h, side, head}
}

func (o *observer) leafCorner(at Side) corner {
	c := o.d.Leaf.Corners(0)
	switch at {
	case HingeFoot:
		return corner{c.HangingFoot, hanging, bottom}
	case LatchFoot:
		return corner{c.ClosingFoot, closing, bottom}
	case HingeHead:
		return corner{c.HangingHead, hanging, top}
	}
	return corner{c.ClosingHead, closing, top}
}

// bow gives how far a straightedge laid from..to on a line stands off it at a
// place, where a rise of the line by one is a rise of the gap by k.
func (o *observer) bow(id lineID, r *Reading, k float64) float64 {
	part := (r.At - r.From) / r.span()
	return o.line(id, r.At, k) + o.line(id, r.From, -k*(1-part)) + o.line(id, r.To, -k*part)
}

func sideLine(s Side, hinge lineID) lineID {
	switch s {
	case Latch:
		return hinge + 1
	case Head:
		return hinge + 2
	case Floor:
		return hinge + 3
	}
	return hinge
}

// SideOf gives the side an edge of the leaf is.
func SideOf(e fit.Edge) Side { return fours[e] }

// edgeOf gives the edge a side is.
func edgeOf(s Side) fit.Edge {
	switch s {
	case Latch:
		return fit.LatchSide
	case Head:
		return fit.HeadSide
	case Floor:
		return fit.FloorSide
	}
	return fit.HingeSide
}

func openingWidth(o *observer, r *Reading) float64 {
	return o.line(latchJamb, r.At, 1) + o.line(hingeJamb, r.At, -1)
}

func openingHeight(o *observer, r *Reading) float64 {
	return o.line(head, r.At, 1) + o.floor(math.Abs(r.At), 0, -1)
}

func openingDiagonal(o *observer, r *Reading) float64 {
	if r.Side == Rising {
		return o.apart(o.openingCorner(HingeFoot), o.openingCorner(LatchHead))
	}
	return o.apart(o.openingCorner(HingeHead), o.openingCorner(LatchFoot))
}

func jambPlumb(o *observer, r *Reading) float64 {
	id := sideLine(r.Side, hingeJamb)
	return o.line(id, r.To, 1) + o.line(id, r.From, -1)
}

func jambPlumbAcross(o *observer, r *Reading) float64 {
	id := sideLine(r.Side, hingeFront)
	return o.line(id, r.To, 1) + o.line(id, r.From, -1)
}

func frameBow(o *observer, r *Reading) float64 {
	k := 1.0
	if r.Side == Hinge {
		k = -1
	}
	return o.bow(sideLine(r.Side, hingeJamb), r, k)
}

func frontBow(o *observer, r *Reading) float64 {
	return o.bow(sideLine(r.Side, hingeFront), r, -1)
}

func headSlope(o *observer, r *Reading) float64 {
	return o.line(head, r.To, 1) + o.line(head, r.From, -1)
}

func floorSlope(o *observer, r *Reading) float64 {
	return o.floor(r.To, r.Angle, 1) + o.floor(r.From, r.Angle, -1)
}

func floorHeight(o *observer, r *Reading) float64 { return o.floor(r.At, r.Angle, 1) }

func rebateDepth(o *observer, r *Reading) float64 {
	return o.line(sideLine(r.Side, hingeRebate), r.At, 1)
}

// crossStrings: the strings cross at hf + s·rise = hh + t·fall in the opening's
// plane. When the corners move so that the two sides come apart by m, s follows by
// m×fall and t by m×rise, over rise×fall.
func crossStrings(o *observer, _ *Reading) float64 {
	hf, lh := o.openingCorner(HingeFoot), o.openingCorner(LatchHead)
	hh, lf := o.openingCorner(HingeHead), o.openingCorner(LatchFoot)
	cross := func(a, b geom.Vec) float64 { return float64(a.X*b.Y) - float64(a.Y*b.X) }
	rise, fall, way := lh.Sub(hf.Vec), lf.Sub(hh.Vec), hh.Sub(hf.Vec)
	det := cross(rise, fall)
	s, t := cross(way, fall)/det, cross(way, rise)/det
	gap := o.line(hingeFront, hf.Y, 1-s) + o.line(latchFront, lh.Y, s) +
		o.line(hingeFront, hh.Y, t-1) + o.line(latchFront, lf.Y, -t)
	if o.rows != nil {
		up := o.value(latchFront, lh.Y) - o.value(hingeFront, hf.Y)
		down := o.value(latchFront, lf.Y) - o.value(hingeFront, hh.Y)
		kx := (float64(up*fall.Y) - float64(down*rise.Y)) / det
		ky := (float64(down*rise.X) - float64(up*fall.X)) / det
		o.follow(hf, -(1-s)*kx, (1-s)*(o.slope(hingeFront, hf.Y)-ky))
		o.follow(lh, -s*kx, s*(o.slope(latchFront, lh.Y)-ky))
		o.follow(hh, (1-t)*kx, (1-t)*(ky-o.slope(hingeFront, hh.Y)))
		o.follow(lf, t*kx, t*(ky-o.slope(latchFront, lf.Y)))
	}
	return gap
}

func frameWind(o *observer, r *Reading) float64 {
	return o.line(latchFront, r.To, 1) + o.line(hingeFront, r.To, -1) +
		o.line(latchFront, r.From, -1) + o.line(hingeFront, r.From, 1)
}

func leafWidth(o *observer, r *Reading) float64 {
	return o.line(closing, r.At, 1) + o.line(hanging, r.At, -1)
}

func leafHeight(o *observer, r *Reading) float64 {
	return o.line(top, r.At, 1) + o.line(bottom, r.At, -1)
}

func leafThickness(o *observer, _ *Reading) float64 { return o.scalar(thickness, 1) }

func leafDiagonal(o *observer, r *Reading) float64 {
	if r.Side == Rising {
		return o.apart(o.leafCorner(HingeFoot), o.leafCorner(LatchHead))
	}
	return o.apart(o.leafCorner(HingeHead), o.leafCorner(LatchFoot))
}

// blade is the length of the square laid at a leaf's corner, mm (EN 951).
const blade = 500

// leafSquare: with the side's edge going off by p over the blade's length and the
// end's by q, su and sv the ways out of the corner along u and v, the angle between
// them is a right one and atan of value/blade more.
func leafSquare(o *observer, r *Reading) float64 {
	c := o.leafCorner(r.Side)
	su, sv := 1.0, 1.0
	if r.Side == LatchFoot || r.Side == LatchHead {
		su = -1
	}
	if r.Side == HingeHead || r.Side == LatchHead {
		sv = -1
	}
	v, u := c.Y+float64(sv*blade), c.X+float64(su*blade)
	p := o.value(c.side, v) - o.value(c.side, c.Y)
	q := o.value(c.end, u) - o.value(c.end, c.X)
	k := su * sv / (blade * blade)
	d := 1 - float64(float64(k*p)*q)
	value := -(float64(su*p) + float64(sv*q)) / d
	dp := -su/d + float64(float64(value*k)*q)/d
	dq := -sv/d + float64(float64(value*k)*p)/d
	o.lean(c.side, v, dp)
	o.lean(c.side, c.Y, -dp)
	o.lean(c.end, u, dq)
	o.lean(c.end, c.X, -dq)
	if o.rows != nil { // the square goes along with the corner
		o.follow(c, dq*(o.slope(c.end, u)-o.slope(c.end, c.X)), dp*(o.slope(c.side, v)-o.slope(c.side, c.Y)))
	}
	return value
}

func leafBow(o *observer, r *Reading) float64 {
	k := -1.0 // hollow when it lies within: lower at top and closing edge
	if r.Side == Hinge || r.Side == Floor {
		k = 1
	}
	return o.bow(sideLine(r.Side, hanging), r, k)
}

func leafWind(o *observer, r *Reading) float64 {
	return o.line(closingFace, r.To, 1) + o.line(hangingFace, r.To, -1) +
		o.line(closingFace, r.From, -1) + o.line(hangingFace, r.From, 1)
}

func stileBow(o *observer, r *Reading) float64 {
	return o.bow(sideLine(r.Side, hangingFace), r, -1)
}

func leafBevel(o *observer, r *Reading) float64 {
	id := hangingTan
	if r.Side == Latch {
		id = closingTan
	}
	t := scalarOf(o.d, thickness)
	tan := o.scalar(id, t)
	o.scalar(thickness, tan)
	return float64(t * tan)
}

func scalar(id scalarID) func(*observer, *Reading) float64 {
	return func(o *observer, _ *Reading) float64 { return o.scalar(id, 1) }
}

func hingeField(f field) func(*observer, *Reading) float64 {
	return func(o *observer, r *Reading) float64 { return o.hinge(r.Hinge, f, 1) }
}

func hingeFromHead(o *observer, r *Reading) float64 {
	return o.line(head, 0, 1) + o.hinge(r.Hinge, fieldJambHeight, -1)
}

func hingeFromTop(o *observer, r *Reading) float64 {
	return o.line(top, 0, 1) + o.hinge(r.Hinge, fieldLeafHeight, -1)
}

// gapRead is the gap a feeler finds: the least through the leaf's thickness.
func gapRead(o *observer, r *Reading) float64 {
	if o.seen != nil {
		if r.Side != Floor {
			o.seen(sideLine(r.Side, hingeJamb), r.At)
		}
		return 0
	}
	return o.closed().Gaps[edgeOf(r.Side)].At(r.At)
}

func stopGap(o *observer, r *Reading) float64 {
	if o.seen != nil {
		o.seen(sideLine(r.Side, hingeRebate), r.At)
		return 0
	}
	return o.closed().Stops[edgeOf(r.Side)].At(r.At)
}
