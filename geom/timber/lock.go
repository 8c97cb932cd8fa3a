package timber

import (
	"leafwright/geom"
	"leafwright/geom/door"
)

// What a lock goes by, mm.
const (
	MorticeLeaf = 1.5 * inch  // the thinnest leaf for a mortice lock (Construction Superintendence s. 163)
	RimLeaf     = 1.25 * inch // for a rim lock (the same)
	KnobHeight  = 36 * inch   // middle of the knob above the floor (International Correspondence Schools, vol. 2 s. 40)
	caseWall    = 10.0        // of the leaf either side of a mortice's case (common practice, no published source)
	stileWall   = 10.0        // of the stile behind the case (common practice, no published source)
	handRoom    = 25.0        // between a knob's rim and a stop, for knuckles (common practice, no published source)
	keepSlack   = 1.0         // that a keep may be off and the bolt still goes home (common practice, no published source)
	spindleHole = 20.0        // of an old spindle's hole or keyhole (common practice, no published source)
)

// LockFit is what a lock leaves of the leaf, mm.
type LockFit struct {
	Behind float64 // of the stile between the case and its inner edge; below 0 the case goes past it
	Wall   float64 // of the leaf either side of a mortice's case
	Joint  float64 // part of the height of the lock rail's tenon that the case takes, 0 to 1
	Rail   int     // that rail, from the foot up; −1 where the case meets no tenon
	Hand   float64 // between the knob's rim and the stop's edge, the leaf closed
	Cares  []LockCare
}

// LockCare is what to mind with a lock.
type LockCare string

// The cares.
const (
	ThinLeaf   LockCare = "thin leaf"        // thinner than is usual for such a lock
	ThinWall   LockCare = "thin wall"        // too little is left beside the case
	PastStile  LockCare = "past the stile"   // too little is left behind the case, or it reaches the panel
	CutsTenon  LockCare = "cuts the tenon"   // half the tenon or more: lower or higher, or a rim lock
	KnobAtStop LockCare = "knuckles at stop" // no room for a hand: a greater backset, or a lever
	KeepOff    LockCare = "keep to be moved" // the bolt misses it
	BoltShort  LockCare = "bolt falls short" // the gap is wider than the bolt goes out
)

// LockFitOf gives what the lock a leaf's anatomy holds leaves of it: thick is the case's
// thickness and knob the knob's radius, gap the closing gap at the lock, all mm. A lock of
// no kind gives nothing to mind.
func LockFitOf(d *door.Door, a *door.Anatomy, thick, knob, gap float64) (f LockFit) {
	l, k := &d.Leaf, &a.Lock
	f.Rail = -1
	if k.Kind == door.NoLock {
		return f
	}
	height := held(k.Height, -1e4, 1e4)
	edge := held(l.Closing.At(height), -1e4, 1e4)
	depth, half := held(k.Depth, 0, 1e3), held(k.Case, 0, 1e3)/2
	t := held(l.Thickness, 0, 1e3)
	_, right := a.Inner(l)
	f.Behind = edge - depth - right
	f.Wall = (t - held(thick, 0, t)) / 2
	f.Hand = held(k.Backset, 0, 1e3) - max(0, held(d.Frame.StopWidth, 0, 1e3)-held(gap, 0, 100)) - held(knob, 0, 200)
	if f.Hand < handRoom {
		f.Cares = append(f.Cares, KnobAtStop)
	}
	if k.Kind == door.Rim {
		f.Wall = t
		if t < RimLeaf-0.5 {
			f.Cares = append(f.Cares, ThinLeaf)
		}
		return f
	}
	if t < MorticeLeaf-0.5 {
		f.Cares = append(f.Cares, ThinLeaf)
	}
	if f.Wall < caseWall {
		f.Cares = append(f.Cares, ThinWall)
	}
	if a.Make != door.Framed {
		return f
	}
	in := geom.Interval{Lo: height - half, Hi: height + half}
	behindRail := false
	for i, r := range a.Rails {
		behindRail = behindRail || r.From <= in.Lo && in.Hi <= r.To
		lo, hi := a.Tenon(i)
		tenon := geom.Interval{Lo: lo, Hi: hi}
		if !(lo < hi) || a.Joints.Kind != door.Through && f.Behind >= a.Joints.Tenon {
			continue
		}
		if part := tenon.Intersect(in).Length() / tenon.Length(); part > f.Joint {
			f.Joint, f.Rail = part, i
		}
	}
	if f.Behind < stileWall && !behindRail {
		f.Cares = append(f.Cares, PastStile)
	}
	if f.Joint >= 0.5 {
		f.Cares = append(f.Cares, CutsTenon)
	}
	return f
}

// Keep gives the height on the latch jamb, mm, that a bolt at v on the closing edge comes
// to, the leaf hung as its hinges hold it.
func Keep(d *door.Door, v float64) float64 {
	_, lift, tilt := hung(d)
	return v + lift + float64(d.Leaf.Closing.At(v)*tilt)
}

// KeepMove is where a keep goes.
type KeepMove struct {
	Height float64 // on the latch jamb now, mm
	Up     float64 // how far it moves from where it was, mm; below 0 down
	In     float64 // how far the bolt reaches into the jamb, mm; below 0 it falls short
	Cares  []LockCare
}

// KeepMoveOf gives where the keep goes when a door was so, and its lock at that v, and is
// now so: throw is how far the bolt goes out of the leaf's edge and gap the closing gap
// there now, mm.
func KeepMoveOf(was, is *door.Door, wasAt, isAt, throw, gap float64) (k KeepMove) {
	k.Height = Keep(is, held(isAt, -1e4, 1e4))
	k.Up = k.Height - Keep(was, held(wasAt, -1e4, 1e4))
	k.In = held(throw, 0, 200) - held(gap, -100, 200)
	if max(k.Up, -k.Up) > keepSlack {
		k.Cares = append(k.Cares, KeepOff)
	}
	if k.In < held(throw, 0, 200)/2 { // half the bolt holds (common practice, no published source)
		k.Cares = append(k.Cares, BoltShort)
	}
	return k
}

// OldHoles gives the holes an old lock leaves where a new one does not cover them: what
// its case left open above and below, as deep as it was thick, mm, and its spindle's hole
// through the leaf. A rim lock leaves no case.
func OldHoles(l *door.Leaf, old, now door.Lock, thick float64) (holes []Void) {
	if old.Kind == door.NoLock {
		return nil
	}
	clean := func(k door.Lock) geom.Interval {
		at, half := held(k.Height, -1e4, 1e4), held(k.Case, 0, 1e3)/2
		return geom.Interval{Lo: at - half, Hi: at + half}
	}
	was, is := clean(old), geom.Empty()
	if now.Kind == door.Mortice {
		is = clean(now)
	}
	edge := held(l.Closing.At(was.Mid()), -1e4, 1e4)
	if old.Kind == door.Mortice {
		across := geom.Interval{Lo: edge - held(old.Depth, 0, 1e3), Hi: edge}
		open := func(up geom.Interval) {
			if up.Length() > 0.5 { // mm: a shaving
				holes = append(holes, Void{Decay: Hole, Across: across, Up: up, Depth: held(thick, 0, 1e3)})
			}
		}
		if was.Intersect(is).IsEmpty() {
			open(was)
		} else {
			open(geom.Interval{Lo: was.Lo, Hi: min(is.Lo, was.Hi)})
			open(geom.Interval{Lo: max(is.Hi, was.Lo), Hi: was.Hi})
		}
	}
	dv, db := was.Mid()-held(now.Height, -1e4, 1e4), held(old.Backset, 0, 1e3)-held(now.Backset, 0, 1e3)
	if now.Kind == door.NoLock || float64(dv*dv)+float64(db*db) > 4 { // 2 mm off: the old hole shows
		u := edge - held(old.Backset, 0, 1e3)
		holes = append(holes, Void{Decay: Hole, Depth: held(l.Thickness, 0, 1e3), Part: 0.785398, // a round hole of its square
			Across: geom.Interval{Lo: u - spindleHole/2, Hi: u + spindleHole/2},
			Up:     geom.Interval{Lo: was.Mid() - spindleHole/2, Hi: was.Mid() + spindleHole/2}})
	}
	return holes
}
