package timber

import (
	"math"

	"leafwright/geom"
	"leafwright/geom/door"
)

const inch = 25.4

// Hinges gives how many butts a leaf wants: one for every 30 in of height or part of it, two
// at least (US trade pages), and three where it is over 7 ft high or 4 ft wide (Radford's
// Cyclopedia, vol. 12) or weighs over 20 kg (a UK-style guide).
func Hinges(height, width, kg float64) int {
	n := max(2, int(math.Ceil(held(height, 1, 1e4)/(30*inch)-1e-9)))
	if height > 84*inch || width > 48*inch || kg > 20 {
		n = max(n, 3)
	}
	return min(n, door.HingesMost)
}

// Butt is a size of butt hinge.
type Butt struct {
	Height float64 // of the plates, mm
	Inches float64 // the same as it is sold, in
	Heavy  bool    // of heavy weight
}

// butts are the heights by thickness and width of leaf, in inches: US trade pages.
// A 1⅜ in leaf wider than 36 in is not in them and counts as a 1¾ in one.
var butts = []struct {
	thick, wide, height float64
	heavy               bool
}{
	{1.375, 32, 3.5, false},
	{1.375, 36, 4, false},
	{1.75, 36, 4.5, false},
	{1.75, 48, 5, false},
	{1.75, 400, 6, false},
	{2.5, 42, 5, true},
	{400, 400, 6, true},
}

// ButtFor gives the butt for a leaf so thick and so wide, mm. Thicknesses between the
// published ones, as 40 mm, go to the next; one within 1.5 mm of one goes to that.
func ButtFor(thickness, width float64) Butt {
	const near = 1.5
	t, w := held(thickness, 0, 1e4), held(width, 0, 1e4)
	i := 0
	for i < len(butts)-1 && (t > float64(butts[i].thick*inch)+near || w > float64(butts[i].wide*inch)+0.5) {
		i++
	}
	return Butt{float64(butts[i].height * inch), butts[i].height, butts[i].heavy}
}

// ButtWidth gives how wide a butt must be, open, mm, to throw a leaf clear of a casing that
// stands so far out past its face, both mm: twice the thickness less ½ in and the
// projection, which leaves ¼ in of the edge uncut behind each plate (Building Trades
// Pocketbook). The next size sold is used.
func ButtWidth(thickness, projection float64) float64 {
	return max(0, float64(2*held(thickness, 0, 1000))-0.5*inch+held(projection, 0, 1000))
}

// Gains gives how deep to let a hinge into leaf and jamb, mm each, so that the gap between
// them is the one wanted: half each of its thickness folded shut less the gap (Noyes;
// Fairham; Building Trades Pocketbook). Below 0 it is to be packed by so much instead.
func Gains(closed, gap float64) float64 {
	return (held(closed, 0, 100) - held(gap, -50, 50)) / 2
}

// Practice of placing hinges, by region.
type Region string

// The regions.
const (
	UK Region = "UK"
	AU Region = "AU"
	NZ Region = "NZ" // hinges as in AU
	US Region = "US"
)

// margins gives how far the top hinge's plate is below the top of the leaf and the
// bottom one's above its foot, mm. UK: 6 and 9 in, DIY pages. AU: a building text. US: 6
// and 10 in (International Correspondence Schools, vol. 2 s. 105); steel-door practice is 5
// and 10, measured on the frame.
func (r Region) margins() (top, foot float64) {
	switch r {
	case AU, NZ:
		return 150, 200
	case US:
		return 152, 254
	}
	return 150, 230
}

// Place is where a hinge goes.
type Place struct {
	At    float64 // v of its middle on the leaf, mm
	Want  float64 // where practice has it
	Clear bool    // its screws miss the tenons and wedges
}

// Places gives where a leaf's hinges go, from the top one down: the outer ones by the
// region's practice, others evenly between, each moved to the nearest place where its
// screws, going so far into the stile, mm, miss the ends of tenons and the wedges (Noyes;
// Fairham: butts stand clear of the rails' joints). Where a joint leaves no place the
// hinge stays where practice has it, and Clear is false.
func Places(l *door.Leaf, a *door.Anatomy, r Region, number int, plate, screws float64) []Place {
	n := min(max(number, door.HingesLeast), door.HingesMost)
	half := held(plate, 20, 300) / 2
	ends := edgeEnds(l, door.HingeSide)
	top, foot := r.margins()
	if long := ends.Length(); long < float64(3*(top+foot)) { // a hatch or a cupboard: a seventh (a consumer page)
		top, foot = long/7, long/7
	}
	blocked := joints(l, a, door.HingeSide, held(screws, 0, 200))
	hi, lo := ends.Hi-top-half, ends.Lo+foot+half
	places := make([]Place, n)
	for i := range places {
		want := hi - float64((hi-lo)*(float64(i)/float64(n-1)))
		p := Place{At: want, Want: want}
		if at, ok := clearPlace(want, half, ends, blocked); ok {
			p.At, p.Clear = at, true
			blocked = append(blocked, geom.Interval{Lo: at - half, Hi: at + half})
		}
		places[i] = p
	}
	return places
}

// joints gives the stretches of a stile's outer edge where something going so far in, mm,
// meets a tenon or a wedge.
func joints(l *door.Leaf, a *door.Anatomy, e door.Edge, in float64) (blocked []geom.Interval) {
	left, right := a.Inner(l)
	for i := range a.Rails {
		lo, hi := a.Tenon(i)
		if !(lo < hi) {
			continue
		}
		switch a.Joints.Kind {
		case door.Through:
			w := held(a.Joints.Wedge, 0, 100)
			blocked = append(blocked, geom.Interval{Lo: lo - w, Hi: hi + w})
		case door.Stub, door.Dowelled:
			mid := (lo + hi) / 2
			room := left - a.Joints.Tenon - l.Hanging.At(mid)
			if e == door.LatchSide {
				room = l.Closing.At(mid) - right - a.Joints.Tenon
			}
			if room < in {
				blocked = append(blocked, geom.Interval{Lo: lo, Hi: hi})
			}
		}
	}
	return blocked
}

// Seat is a hinge's gain in leaf or jamb, mm: its middle and its height along the edge, how
// far it goes across the edge from the knuckle face, and its depth.
type Seat struct{ At, Height, Across, Depth float64 }

// Reseat is what making one seat of another comes to.
type Reseat struct {
	Cut                float64 // mm³ to be cut anew
	Above, Below, Back float64 // mm of the old seat left open above, below and behind the new: pieced in with timber
	Piece              float64 // mm³ of those pieces
	Pack               float64 // mm of packing under the new hinge, where the old seat is deeper
}

// ReseatOf gives what it takes to let another hinge in where one was.
func ReseatOf(old, now Seat) (r Reseat) {
	clean := func(s Seat) (geom.Interval, float64, float64) {
		at, half := held(s.At, -1e4, 1e4), held(s.Height, 0, 1000)/2
		return geom.Interval{Lo: at - half, Hi: at + half}, held(s.Across, 0, 200), held(s.Depth, 0, 100)
	}
	was, wasAcross, wasDepth := clean(old)
	is, isAcross, isDepth := clean(now)
	both := was.Intersect(is)
	common := float64(both.Length() * min(wasAcross, isAcross))
	r.Cut = float64(float64(is.Length()*isAcross)*isDepth) - float64(common*min(wasDepth, isDepth))
	if wasDepth <= 0 || was.Length() == 0 {
		return r
	}
	r.Above = min(max(0, was.Hi-is.Hi), was.Length())
	r.Below = min(max(0, is.Lo-was.Lo), was.Length())
	r.Back = max(0, wasAcross-isAcross)
	r.Piece = float64((float64(was.Length()*wasAcross) - common) * wasDepth)
	if !both.IsEmpty() && both.Length() > 0 {
		r.Pack = max(0, wasDepth-isDepth)
	}
	return r
}

// hung gives where the hinges put the leaf: the x of its u = 0 at the top hinge, how much
// higher a place on it hangs than its v, at u = 0, and the rise of that across the leaf.
func hung(d *door.Door) (x, lift, tilt float64) {
	if len(d.Hinges) == 0 {
		return 0, 0, 0
	}
	top, foot := d.Hinges[0], d.Hinges[len(d.Hinges)-1]
	across := func(h door.Hinge) float64 {
		return d.Frame.HingeJamb.At(h.JambHeight) + h.Gap() - d.Leaf.Hanging.At(h.LeafHeight)
	}
	if between := top.LeafHeight - foot.LeafHeight; between > 0 {
		tilt = (across(foot) - across(top)) / between
	}
	return across(top), top.JambHeight - top.LeafHeight, tilt
}

// Under gives how high the packers stand on the floor under the leaf's foot while its hinges
// are screwed, mm, at the hanging and the closing end, the leaf closed: as the hinges hold
// the leaf, the tilt their gaps give it counted. Below 0 the foot is under the floor.
func Under(d *door.Door) (hanging, closing float64) {
	c := d.Leaf.Corners(0)
	x, lift, tilt := hung(d)
	at := func(corner geom.Vec) float64 {
		return corner.Y + lift + float64(corner.X*tilt) - d.Floor.At(x+corner.X, 0)
	}
	return at(c.HangingFoot), at(c.ClosingFoot)
}

// Mark gives the height to mark on the jamb, mm above the floor at its foot, for a hinge
// at v on the leaf when the leaf's foot there stands on a packer so high.
func Mark(v, foot, packer float64) float64 { return v - foot + packer }
