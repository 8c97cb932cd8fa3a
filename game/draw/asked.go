package draw

import "leafwright/geom/fit"

// drawAsked lays the tool of the reading that is asked for on the front picture.
func (s *Scene) drawAsked() {
	k := s.v.Asked
	if k == nil || k.Of == TheFloor || !(k.Width > 0 && k.Height > 0) {
		return
	}
	put := func(q Pt) Pt {
		if k.Of == TheLeaf || k.Near == StandNear || k.Near >= LeafGainNear { // places on the leaf
			return s.onLeaf(q.X, q.Y)
		}
		return s.onOpening(q.X/k.Width, q.Y/k.Height)
	}
	for _, t := range k.Laid {
		s.pen.tool(t.Tool, put(t.From), put(t.To))
	}
	if k.Near != NoCloseUp {
		q := put(k.Spot)
		s.pen.tool(Place, q, q)
	}
}

// onOpening gives the place at a part of the opening's width and height.
func (s *Scene) onOpening(across, up float64) Pt {
	lerp := func(e fit.Edge, t float64) Pt {
		line := s.frame[e]
		first, last := line[0], line[len(line)-1]
		at, to := first.X, last.X
		if e.Upright() {
			at, to = first.Y, last.Y
		}
		return s.onFront(e, s.frameAt(e, at+(to-at)*t))
	}
	left, right := lerp(fit.HingeSide, up), lerp(fit.LatchSide, up)
	foot, head := lerp(fit.FloorSide, across), lerp(fit.HeadSide, across)
	return Pt{left.X + (right.X-left.X)*across, foot.Y + (head.Y-foot.Y)*up}
}
