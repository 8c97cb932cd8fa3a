package draw

import (
	"math"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fit"
)

// enlarged carries the plane of the opening to the front picture, still in mm, so
// that the nominal rectangle keeps its size and every departure from it grows k
// times. The nominal rectangle runs plumb from the feet of the two jambs and level
// from the hinge corner of the head.
//
// A place on an upright edge has its distance from the nominal upright grown, and
// its height taken by a line of three pieces: near the floor and near the head
// departures in height are grown too, and between them the rest is shared out
// evenly. Jamb and leaf share that line, so a gap stays level on the sheet. Head,
// floor and the ends of the leaf go the same way with x and y exchanged, and the
// corners agree.
type enlarged struct {
	k             float64
	width, height float64
	rise          [2]stretch // heights, on the hinge side and on the latch side
	run           [2]stretch // distances, at the floor and at the head
}

// stretch is a number line whose ends, up to lo and from hi on, are grown k times
// about 0 and about far, and whose middle joins them.
type stretch struct{ lo, hi, far, k float64 }

func (s stretch) at(x float64) float64 {
	switch {
	case x <= s.lo:
		return s.k * x
	case x >= s.hi:
		return s.far + s.k*(x-s.far)
	}
	a, b := s.k*s.lo, s.far+s.k*(s.hi-s.far)
	return a + (b-a)*(x-s.lo)/(s.hi-s.lo)
}

// from undoes at.
func (s stretch) from(y float64) float64 {
	a, b := s.k*s.lo, s.far+s.k*(s.hi-s.far)
	switch {
	case y <= a:
		return y / s.k
	case y >= b:
		return s.far + (y-s.far)/s.k
	}
	return s.lo + (s.hi-s.lo)*(y-a)/(b-a)
}

// upright carries the place (x, y) of a jamb or of a side edge of the leaf.
func (e *enlarged) upright(edge fit.Edge, x, y float64) Pt {
	if edge == fit.HingeSide {
		return Pt{e.k * x, e.rise[0].at(y)}
	}
	return Pt{e.width + e.k*(x-e.width), e.rise[1].at(y)}
}

// across carries the place (x, y) of head or floor, or of an end of the leaf.
func (e *enlarged) across(edge fit.Edge, x, y float64) Pt {
	if edge == fit.FloorSide {
		return Pt{e.run[0].at(x), e.k * y}
	}
	return Pt{e.run[1].at(x), e.height + e.k*(y-e.height)}
}

// at carries a place of any edge.
func (e *enlarged) at(edge fit.Edge, x, y float64) Pt {
	if edge.Upright() {
		return e.upright(edge, x, y)
	}
	return e.across(edge, x, y)
}

// factors to choose from, the greatest first
var factors = [...]float64{12, 10, 8, 6, 5, 4, 3, 2, 1}

const (
	keepsWidth  = 0.70 // part of the nominal width the leaf must keep when the factor is chosen
	keepsHeight = 0.80 // part of the nominal height
	keepsSome   = 0.40 // part of either that it must keep whatever factor is asked for
	strays      = 0.22 // part of the nominal width by which the frame may stray when the factor is chosen
)

// enlarge sets up the picture of a door: leaf corners are those of both faces,
// where the closed leaf hangs.
func enlarge(d *door.Door, leaf [2]corners, want float64) enlarged {
	f := &d.Frame
	var e enlarged
	e.width = f.LatchJamb.At(0)
	hinge, latch := f.HeadCorners()
	e.height = hinge.Y
	footH := d.Floor.At(f.HingeJamb.At(0), 0)
	footL := d.Floor.At(e.width, 0)
	all := func(pick func(c *corners) float64, with float64, high bool) float64 {
		for i := range leaf {
			if v := pick(&leaf[i]); high == (v > with) {
				with = v
			}
		}
		return with
	}
	e.rise[0].lo = all(func(c *corners) float64 { return c.hangingFoot.Y }, footH, true)
	e.rise[1].lo = all(func(c *corners) float64 { return c.closingFoot.Y }, footL, true)
	e.rise[0].hi = all(func(c *corners) float64 { return c.hangingHead.Y }, hinge.Y, false)
	e.rise[1].hi = all(func(c *corners) float64 { return c.closingHead.Y }, latch.Y, false)
	e.run[0].lo = all(func(c *corners) float64 { return c.hangingFoot.X }, f.HingeJamb.At(footH), true)
	e.run[1].lo = all(func(c *corners) float64 { return c.hangingHead.X }, hinge.X, true)
	e.run[0].hi = all(func(c *corners) float64 { return c.closingFoot.X }, f.LatchJamb.At(footL), false)
	e.run[1].hi = all(func(c *corners) float64 { return c.closingHead.X }, latch.X, false)
	e.grow(e.choose(f, want))
	return e
}

// corners are a face's four corners in the world.
type corners struct{ hangingFoot, closingFoot, hangingHead, closingHead geom.Vec }

// limit gives the greatest factor that leaves the leaf the given parts of the
// nominal width and height.
func (e *enlarged) limit(width, height float64) float64 {
	k := 1e3
	for i := range 2 {
		if lost := e.height - (e.rise[i].hi - e.rise[i].lo); lost > 0 {
			k = min(k, (1-height)*e.height/lost)
		}
		if lost := e.width - (e.run[i].hi - e.run[i].lo); lost > 0 {
			k = min(k, (1-width)*e.width/lost)
		}
	}
	return max(1, k)
}

func (e *enlarged) choose(f *door.Frame, want float64) float64 {
	if want > 0 {
		return max(1, min(want, e.limit(keepsSome, keepsSome)))
	}
	stray := 0.0
	up := geom.Interval{Lo: 0, Hi: e.height}
	over := geom.Interval{Lo: 0, Hi: e.width}
	stray = max(stray, departure(f.HingeJamb, up, 0)+departure(f.LatchJamb, up, e.width))
	stray = max(stray, departure(f.Head, over, e.height))
	most := e.limit(keepsWidth, keepsHeight)
	if stray > 0 {
		most = min(most, strays*e.width/stray)
	}
	for _, k := range factors {
		if k <= most {
			return k
		}
	}
	return 1
}

// departure gives the profile's greatest distance from the level value.
func departure(p geom.Profile, over geom.Interval, level float64) float64 {
	far := max(math.Abs(p.At(over.Lo)-level), math.Abs(p.At(over.Hi)-level))
	for i := range p.Knots() {
		if s := p.Knot(i); over.Contains(s) {
			far = max(far, math.Abs(p.At(s)-level))
		}
	}
	return far
}

func (e *enlarged) grow(k float64) {
	e.k = k
	for i := range 2 {
		e.rise[i].k, e.rise[i].far = k, e.height
		e.run[i].k, e.run[i].far = k, e.width
	}
}
