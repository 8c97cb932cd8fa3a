package timber

import (
	"math"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/trim"
)

// Decay is what made a void.
type Decay string

// The kinds of void.
const (
	Hole   Decay = "hole"   // an old mortice, keyhole or bolt hole
	Borer  Decay = "borer"  // beetle's runs, opened to sound wood
	Rot    Decay = "rot"    // cut back to sound wood
	Bruise Decay = "bruise" // a dent, a split, a missing piece
	Putty  Decay = "filler" // there already
)

// Cure is what is done about a void; "" is what [RepairOf] advises.
type Cure string

// The cures.
const (
	CutItOut Cure = "cut out" // and pieced with timber
	FillIt   Cure = "fill"
	FoamIt   Cure = "foam and fill"
	LeaveIt  Cure = "leave"
)

// Void is a place in the leaf where timber is missing, over a rectangle of its face in
// leaf axes, mm.
type Void struct {
	Decay  Decay
	Across geom.Interval // u
	Up     geom.Interval // v
	Depth  float64       // from the face it opens to
	Part   float64       // of the rectangle that is open, 0 to 1; 0 counts as all
	Active bool          // beetles still in it, or the wood still damp
	// FromEdge tells that it opens at Edge and not at a face: Across, or Up at top and foot,
	// runs in from that edge, and Depth is its size through the thickness.
	FromEdge bool
	Edge     door.Edge
	Cure     Cure // what is done about it; "" as is best
}

// Skin is how thick the filler over a foam core is, mm (common practice, no published
// source: foam sands to no finish and holds no paint).
const Skin = 5.0

// Filler is what voids take, mm³.
type Filler struct{ Filler, Foam float64 }

// CureFor gives what is done about a void in a leaf so thick, mm: what it says, else what
// its repair asks for; filler that is sound and bears nothing stays, and a hole deeper than
// three skins of filler has a foam core (common practice, no published source).
func CureFor(v Void, r Repair, thickness float64) Cure {
	switch {
	case v.Cure != "":
		return v.Cure
	case r.CutOut:
		return CutItOut
	case v.Decay == Putty:
		return LeaveIt
	}
	if _, deep := v.mouth(held(thickness, 0, 1e3)); deep > 3*Skin {
		return FoamIt
	}
	return FillIt
}

// mouth gives the area a void opens with, mm², and how deep it goes from there, mm.
func (v Void) mouth(thickness float64) (area, deep float64) {
	wide, high := held(v.Across.Length(), 0, 1e4), held(v.Up.Length(), 0, 1e4)
	part := held(v.Part, 0, 1)
	if part == 0 {
		part = 1
	}
	through := held(v.Depth, 0, thickness)
	switch {
	case !v.FromEdge:
		return float64(float64(wide*high) * part), through
	case v.Edge.Upright():
		return float64(float64(high*through) * part), wide
	}
	return float64(float64(wide*through) * part), high
}

// FillerFor gives what a void takes in a leaf so thick, mm: solid filler, or a foam core
// under a skin of it. A void as deep as the leaf has a skin on both faces. A void no
// deeper than its skins takes no foam.
func FillerFor(v Void, thickness float64, foam bool) Filler {
	t := held(thickness, 0, 1e3)
	open, deep := v.mouth(t)
	skin := Skin
	if !v.FromEdge && deep >= t {
		skin = 2 * Skin
	}
	if !foam {
		skin = deep
	}
	skin = min(skin, deep)
	return Filler{Filler: float64(open * skin), Foam: float64(open * (deep - skin))}
}

// Batches gives how many batches filler, mm³, is mixed in, when one must be spread within its
// pot life, minutes, by a person who spreads so many mm³ a minute (0 = 20000: a
// matchbox of it, common practice), and how big each is, mm³. Two-part polyester has 3 to
// 10 minutes at 20 °C (from memory). 3 is the least pot life counted, 240 the greatest.
func Batches(filler, potLife, perMinute float64) (n int, each float64) {
	rate := held(perMinute, 0, 1e6)
	if rate == 0 {
		rate = 20000
	}
	all := held(filler, 0, 1e9)
	if all == 0 {
		return 0, 0
	}
	least := float64(max(rate, 100) * held(potLife, 3, 240))
	n = max(1, int(math.Ceil(all/least-1e-9)))
	return n, all / float64(n)
}

// Repair is what becomes of a void.
type Repair struct {
	Meets []trim.Member // what it lies in: stiles, rails, hinges' seats, the lock's case, tenons
	// CutOut tells that it is cut out and pieced with timber: filler holds no screw and
	// carries nothing.
	CutOut bool
	Treat  bool    // beetles or damp first, then the repair
	Edge   bool    // it reaches a leaf's edge: what is planed or glued there meets it
	Lost   float64 // the greatest part of a stile's or a rail's width that is gone, 0 to 1
}

// mostLost is the part of a member's width beyond which a loss is pieced, not filled
// (common practice, no published source: a third).
const mostLost = 1.0 / 3

// RepairOf gives what a void means for the leaf.
func RepairOf(p *trim.Piece, v Void) (r Repair) {
	l, a := &p.Door.Leaf, &p.Anatomy
	r.Treat = v.Active
	across := geom.Interval{Lo: held(v.Across.Lo, -1e4, 1e4), Hi: held(v.Across.Hi, -1e4, 1e4)}
	up := geom.Interval{Lo: held(v.Up.Lo, -1e4, 1e4), Hi: held(v.Up.Hi, -1e4, 1e4)}
	t := held(l.Thickness, 1, 1e3)
	deep := held(v.Depth, 0, t) / t // part of the thickness
	mid := up.Mid()
	hanging, closing := l.Hanging.At(mid), l.Closing.At(mid)
	const near = 0.5 // mm: an edge is reached
	r.Edge = across.Lo <= hanging+near || across.Hi >= closing-near ||
		up.Lo <= l.Bottom.At(across.Mid())+near || up.Hi >= l.Top.At(across.Mid())-near
	lost := func(m trim.Member, member, void geom.Interval) {
		if c := member.Intersect(void).Length(); c > 0 && deep > 0 {
			r.Meets = append(r.Meets, m)
			r.Lost = max(r.Lost, float64(deep*c)/member.Length())
		}
	}
	if a.Make == door.Framed {
		left, right := a.Inner(l)
		lost(trim.Member{Part: trim.Stile, Edge: door.HingeSide}, geom.Interval{Lo: hanging, Hi: left}, across)
		lost(trim.Member{Part: trim.Stile, Edge: door.LatchSide}, geom.Interval{Lo: right, Hi: closing}, across)
		for i, rail := range a.Rails {
			if across.Hi > left && across.Lo < right {
				lost(trim.Member{Part: trim.Rail, Index: i}, geom.Interval{Lo: rail.From, Hi: rail.To}, up)
			}
			if lo, hi := a.Tenon(i); lo < hi && !up.Intersect(geom.Interval{Lo: lo, Hi: hi}).IsEmpty() && (across.Lo < left || across.Hi > right) && deep > 1.0/3 { // tenons stand in the middle third
				r.Meets = append(r.Meets, trim.Member{Part: trim.Tenon, Index: i})
				r.CutOut = true
			}
		}
	}
	const screwed = 40.0 // mm from the edge that hinge screws reach (common practice, no published source)
	for i := range p.Door.Hinges {
		h := &p.Door.Hinges[i]
		half := held(h.Height, 0, 1e3)/2 + fittingRoom
		if across.Lo < hanging+screwed && !up.Intersect(geom.Interval{Lo: h.LeafHeight - half, Hi: h.LeafHeight + half}).IsEmpty() {
			r.Meets = append(r.Meets, trim.Member{Part: trim.HingeSeat, Edge: door.HingeSide, Index: i})
			r.CutOut = true
		}
	}
	if k := &a.Lock; k.Kind != door.NoLock {
		half := held(k.Case, 0, 1e3)/2 + fittingRoom
		if across.Hi > closing-k.Depth-fittingRoom && !up.Intersect(geom.Interval{Lo: k.Height - half, Hi: k.Height + half}).IsEmpty() {
			r.Meets = append(r.Meets, trim.Member{Part: trim.LockCase, Edge: door.LatchSide})
			r.CutOut = true
		}
	}
	if v.Decay == Rot || r.Lost > mostLost {
		r.CutOut = true
	}
	return r
}
