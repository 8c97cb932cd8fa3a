package trim

import (
	"leafwright/geom"
	"leafwright/geom/door"
)

// What must be left of a leaf, in mm (common practice, no published source, but
// where another is named).
const (
	// stileNeeds must be left of a stile or rail, or half of what it was made, if that
	// is more; of a member so narrow that it never had it, [slender].
	stileNeeds = 50.0
	// slender is the part of its made width below which a member is slender.
	slender = 0.75
	// beyondStub must be left of a stile past a stub tenon or a dowel.
	beyondStub = 6.0
	// rebate is how far glass and its rebate reach into stiles and rails.
	rebate = 12.0
	// lipping is what a maker's sheet allows to be taken off a side of a flush leaf, 3/16 in.
	lipping = 3.0 / 16 * 25.4
)

// limits tells what an edge's work leaves of the members it came to. The first that
// it spares too little of forbids it; a member that was so before and is not
// touched does not.
func (w *work) limits(e door.Edge) *Care {
	if e.Upright() {
		if why := w.lockLeft(e); why != nil {
			return why
		}
		if why := w.stubsLeft(e); why != nil {
			return why
		}
		return w.stileLeft(e)
	}
	if why := w.fittingsLeft(e); why != nil {
		return why
	}
	if why := w.haunchLeft(e); why != nil {
		return why
	}
	return w.railsLeft(e)
}

// room gives the least that lies between an edge of the leaf and a line level with
// it farther in, over a stretch of the edge; below 0 the edge is past the line.
func room(l *door.Leaf, e door.Edge, inner float64, over geom.Interval) float64 {
	line, in := l.Line(e)
	least, _ := (&taken{*line, geom.Level(inner), in}).over(over)
	return least
}

// own gives likewise what of that is the leaf's own timber, and not a strip's: joints
// were cut in it, and stand in nothing else.
func own(p *Piece, e door.Edge, inner float64, over geom.Interval) float64 {
	least := room(&p.Door.Leaf, e, inner, over)
	_, in := p.Door.Leaf.Line(e)
	for i := range p.Anatomy.Strips {
		if s := &p.Anatomy.Strips[i]; s.Edge == e {
			low, _ := (&taken{s.Joint, geom.Level(inner), in}).over(over)
			least = min(least, low)
		}
	}
	return least
}

// both gives the room before and now.
func (w *work) both(e door.Edge, inner float64, over geom.Interval) (before, now float64) {
	return room(&w.was.Door.Leaf, e, inner, over), room(&w.p.Door.Leaf, e, inner, over)
}

// bothOwn gives the leaf's own timber before and now.
func (w *work) bothOwn(e door.Edge, inner float64, over geom.Interval) (before, now float64) {
	return own(w.was, e, inner, over), own(&w.p, e, inner, over)
}

// stays judges what is left of the own timber of a stile or a rail that was made so
// wide; strips glued to it are told, and hold no joint.
func (w *work) stays(l Left, made float64) *Care {
	m, before, now := l.Member, l.Before, l.Now
	if before == now && l.FaceBefore == l.FaceNow {
		return nil
	}
	w.done.Left = append(w.done.Left, l)
	if now >= before {
		return nil
	}
	a := &w.p.Anatomy
	if a.Make == door.Framed && a.Panels == door.Glass && now < rebate {
		return &Care{About: IntoGlass, Member: Member{Part: GlassEdge, Edge: m.Edge, Index: m.Index}, Left: now - rebate}
	}
	need := max(made/2, min(stileNeeds, slender*made))
	if now < need {
		return &Care{About: TooLittle, Member: m, Left: max(0, now), Need: need}
	}
	if now < slender*made {
		w.mind(Care{About: Slender, Member: m, Left: now, Need: slender * made})
	}
	return nil
}

// stileLeft judges the stile an upright edge belongs to.
func (w *work) stileLeft(e door.Edge) *Care {
	a, l := &w.p.Anatomy, &w.p.Door.Leaf
	made := a.HangingStile
	inner, outer := a.Inner(l)
	nominal := 0.0
	if e == door.LatchSide {
		made, inner, nominal = a.ClosingStile, outer, l.Width
	}
	stile := Member{Part: Stile, Edge: e}
	if made > 0 {
		left := Left{Member: stile}
		left.Before, left.Now = w.bothOwn(e, inner, l.Ends(e, 0))
		left.FaceBefore, left.FaceNow = w.both(e, inner, l.Ends(e, 0))
		return w.stays(left, made)
	}
	if a.Make != door.Flush {
		return nil
	}
	// a flush leaf's stiles are not seen: how much is off since it was made
	line, in := l.Line(e)
	_, off := (&taken{geom.Level(nominal), *line, in}).over(l.Ends(e, 0))
	if off > lipping && w.done.Most > 0 {
		w.mind(Care{About: Slender, Member: stile})
	}
	return nil
}

// stubsLeft judges what lies outside the stub tenons or dowels in a stile.
func (w *work) stubsLeft(e door.Edge) *Care {
	a := &w.p.Anatomy
	if a.Joints.Kind != door.Stub && a.Joints.Kind != door.Dowelled {
		return nil
	}
	hanging, closing := a.Inner(&w.p.Door.Leaf)
	end := hanging - a.Joints.Tenon
	if e == door.LatchSide {
		end = closing + a.Joints.Tenon
	}
	for i := range a.Rails {
		lo, hi := a.Tenon(i)
		if !(lo < hi) {
			continue
		}
		before, now := w.both(e, end, geom.Interval{Lo: lo, Hi: hi})
		if now < beyondStub && now < before {
			return &Care{About: IntoTenon, Member: Member{Part: Tenon, Edge: e, Index: i}, Left: now, Need: beyondStub}
		}
	}
	return nil
}

// lockLeft judges what the closing edge leaves of the lock's place: one that ends
// up nearer to the edge than any lock is fitted cannot be used again.
func (w *work) lockLeft(e door.Edge) *Care {
	k, was := &w.p.Anatomy.Lock, &w.was.Anatomy.Lock
	if k.Kind == door.NoLock || e != door.LatchSide || k.Depth == was.Depth {
		return nil
	}
	lock := Member{Part: LockCase, Edge: e}
	w.done.Left = append(w.done.Left, Left{Member: lock, Before: was.Backset, Now: k.Backset})
	if k.Depth > was.Depth {
		return nil
	}
	if least := door.Backset.Lo; k.Backset < least {
		return &Care{About: IntoLock, Member: lock, Left: k.Backset, Need: least}
	}
	if least := door.Case.Lo; k.Depth < least {
		return &Care{About: IntoLock, Member: lock, Left: k.Depth, Need: least}
	}
	return nil
}

// fittingsLeft judges what top or foot leaves above or below the lock's case and the
// hinges' plates.
func (w *work) fittingsLeft(e door.Edge) *Care {
	_, in := w.p.Door.Leaf.Line(e)
	ends := w.p.Door.Leaf.Ends(e, 0)
	if k := &w.p.Anatomy.Lock; k.Kind != door.NoLock {
		edge := w.p.Door.Leaf.Closing.At(k.Height)
		before, now := w.both(e, k.Height-float64(in*k.Case/2), geom.Interval{Lo: edge - k.Depth, Hi: edge})
		if now < 0 && now < before {
			return &Care{About: IntoLock, Member: Member{Part: LockCase, Edge: door.LatchSide}, Left: now}
		}
	}
	for i := range w.p.Door.Hinges {
		h := &w.p.Door.Hinges[i]
		before, now := w.both(e, h.LeafHeight-float64(in*h.Height/2), geom.Interval{Lo: ends.Lo, Hi: ends.Lo})
		if now < 0 && now < before {
			return &Care{About: IntoHinge, Member: Member{Part: HingeSeat, Edge: door.HingeSide, Index: i}, Left: now}
		}
	}
	return nil
}

// haunchLeft judges what top or foot leaves of the haunch of its rail's tenon, of the
// wedge beside the tenon, and of the tenon.
func (w *work) haunchLeft(e door.Edge) *Care {
	a, l := &w.p.Anatomy, &w.p.Door.Leaf
	i := 0
	if e == door.HeadSide {
		i = len(a.Rails) - 1
	}
	foot, head := a.Tenon(i)
	if !(foot < head) {
		return nil
	}
	edge := foot
	if e == door.HeadSide {
		edge = head
	}
	// where in the stiles the tenons lie, counted across
	ends := l.Ends(e, 0)
	hanging, closing := a.Inner(l)
	first, last := geom.Interval{Lo: ends.Lo, Hi: hanging}, geom.Interval{Lo: closing, Hi: ends.Hi}
	if a.Joints.Kind != door.Through {
		first.Lo, last.Hi = hanging-a.Joints.Tenon, closing+a.Joints.Tenon
	}
	before, now := w.bothOwn(e, edge, first)
	before2, now2 := w.bothOwn(e, edge, last)
	before, now = min(before, before2), min(now, now2)
	if !(now < before) {
		return nil
	}
	w.done.Left = append(w.done.Left, Left{Member: Member{Part: Haunch, Index: i}, Before: before, Now: max(0, now)})
	switch {
	case now < 0:
		return &Care{About: IntoTenon, Member: Member{Part: Tenon, Index: i}, Left: now}
	case a.Joints.Kind == door.Through && now < a.Joints.Wedge:
		return &Care{About: IntoWedge, Member: Member{Part: Wedge, Index: i}, Left: now, Need: a.Joints.Wedge}
	case now < a.Joints.Haunch:
		w.mind(Care{About: IntoHaunch, Member: Member{Part: Haunch, Index: i}, Left: now, Need: a.Joints.Haunch})
	}
	return nil
}

// railsLeft judges every rail that top or foot comes to.
func (w *work) railsLeft(e door.Edge) *Care {
	a := &w.p.Anatomy
	for i := range a.Rails {
		was, is := w.was.Anatomy.Rails[i], a.Rails[i]
		made := is.To - is.From
		if i == 0 {
			made += a.Joints.FootCut
		}
		if i == len(a.Rails)-1 {
			made += a.Joints.TopCut
		}
		inner := is.To
		if e == door.HeadSide {
			inner = is.From
		}
		left, wide := Left{Member: Member{Part: Rail, Edge: e, Index: i}}, was.To-was.From
		left.Before, left.FaceBefore = across(w.was, e, inner, wide)
		left.Now, left.FaceNow = across(&w.p, e, inner, wide)
		if why := w.stays(left, made); why != nil {
			return why
		}
	}
	return nil
}

// across gives a rail's own timber from its inner edge out, and its face with the strips
// on it; of a rail that is so wide and lies farther in than the edge, its width.
func across(p *Piece, e door.Edge, inner, wide float64) (timber, face float64) {
	const rounded = 1.0 // mm that a rail may end short of the leaf
	ends := p.Door.Leaf.Ends(e, 0)
	timber, face = own(p, e, inner, ends), room(&p.Door.Leaf, e, inner, ends)
	if timber > wide+rounded || timber == face {
		face = min(face, wide)
	}
	return min(timber, wide), face
}
