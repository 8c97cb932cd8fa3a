package trim

import "leafwright/geom/door"

// thinned follows up what a trimmed edge leaves of the strips on it. A strip thinner
// than the leaf is planed away whole or not at all: the full timber behind it would
// stand out where it is through.
func (w *work) thinned(e door.Edge, off *taken) *Care {
	var kept []door.Strip
	last, thin := -1, w.p.Door.Leaf.Sections[e]
	thin.KnuckleEase, thin.StopEase = 0, 0
	any := false
	ends := w.p.Door.Leaf.Ends(e, 0)
	for _, s := range w.p.Anatomy.Strips {
		if s.Edge != e {
			kept = append(kept, s)
			continue
		}
		any = true
		left := taken{s.Joint, off.now, -off.in}
		low, high := left.over(ends)
		const nothing = 1e-9 // mm
		if high <= nothing {
			continue
		}
		member := Member{Part: Strip, Edge: e}
		if low < -nothing && s.Stock < w.p.Door.Leaf.Thickness {
			return &Care{About: TooLittle, Member: member, Left: low}
		}
		if low < stripWork {
			w.mind(Care{About: StripThin, Member: member, Left: max(0, low), Need: stripWork})
		}
		last = len(kept)
		kept = append(kept, s)
	}
	if !any {
		return nil
	}
	w.p.Anatomy.Strips = kept
	sec := &w.p.Door.Leaf.Sections[e]
	sec.KnuckleBack, sec.StopBack = 0, 0
	if last >= 0 {
		sec.KnuckleBack = kept[last].Back
		sec.StopBack = max(0, w.p.Door.Leaf.Thickness-kept[last].Stock-kept[last].Back)
	}
	return nil
}

// shallower lets the gains' floors stay where they are when the hanging edge is
// planed: the gains grow shallower and the timber stays where it hung.
func (w *work) shallower(off *taken) {
	var changed []door.Hinge
	for i := range w.p.Door.Hinges {
		by := off.at(w.p.Door.Hinges[i].LeafHeight)
		if !(by > 0) {
			continue
		}
		if changed == nil {
			changed = append(changed, w.p.Door.Hinges...)
		}
		h := &changed[i]
		was := h.LeafGain
		h.LeafGain = max(0, was-by)
		if was > 0 {
			seat := Member{Part: HingeSeat, Edge: door.HingeSide, Index: i}
			w.mind(Care{About: GainShallow, Member: seat, Left: h.LeafGain, Need: was})
		}
	}
	if changed != nil {
		w.p.Door.Hinges = changed
	}
}

// nearerLock counts the lock's sizes from the closing edge as it is now. The lock
// itself stays where it is in the leaf.
func (w *work) nearerLock(off *taken) {
	k := &w.p.Anatomy.Lock
	if k.Kind == door.NoLock {
		return
	}
	by := off.at(k.Height)
	if by == 0 {
		return
	}
	was := k.Backset
	k.Backset -= by
	k.Depth -= by
	lock := Member{Part: LockCase, Edge: door.LatchSide}
	if by > 0 {
		w.mind(Care{About: LockDeeper, Member: lock, Left: k.Backset, Need: was})
	} else {
		w.mind(Care{About: HingeOnStrip, Member: lock})
	}
}

// clipped ends rails and muntins where the leaf does, after top or foot was cut.
func (w *work) clipped(e door.Edge) {
	a, l := &w.p.Anatomy, &w.p.Door.Leaf
	line, in := l.Line(e)
	ends := l.Ends(e, 0)
	limit := line.At(ends.Lo)
	out := func(v float64) { limit = float64(-in * max(float64(-in*limit), float64(-in*v))) } // the outermost
	out(line.At(ends.Hi))
	for _, s := range *line {
		if ends.Contains(s.At) {
			out(s.Value)
		}
	}
	beyond := func(v float64) bool { return float64(-in*(v-limit)) > 0 }
	rails := append([]door.Rail(nil), a.Rails...)
	for i := range rails {
		r := &rails[i]
		if e == door.HeadSide && beyond(r.To) {
			if i == len(rails)-1 {
				a.Joints.TopCut += r.To - limit
			}
			r.To = limit
		}
		if e == door.FloorSide && beyond(r.From) {
			if i == 0 {
				a.Joints.FootCut += limit - r.From
			}
			r.From = limit
		}
	}
	muntins := append([]door.Muntin(nil), a.Muntins...)
	for i := range muntins {
		m := &muntins[i]
		if e == door.HeadSide && beyond(m.To) {
			m.To = limit
		}
		if e == door.FloorSide && beyond(m.From) {
			m.From = limit
		}
	}
	a.Rails, a.Muntins = rails, muntins
}
