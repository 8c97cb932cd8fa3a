package trim

import (
	"leafwright/geom"
	"leafwright/geom/door"
)

// cut saws top or foot to the straight line that is First inside the hanging corner and
// Last inside the closing one. Where that line lies outside the leaf nothing is
// taken. What comes off in one piece lies on the bench afterwards.
func (w *work) cut(m *Move) *Care {
	line, in := w.p.Door.Leaf.Line(m.Edge)
	c := w.p.Door.Leaf.Corners(0)
	a, b := c.HangingHead, c.ClosingHead
	if m.Edge == door.FloorSide {
		a, b = c.HangingFoot, c.ClosingFoot
	}
	ends := geom.Interval{Lo: a.X, Hi: b.X}
	to := straight(a.Y+float64(in*m.First), b.Y+float64(in*m.Last), ends)
	sawn, any := sawn(*line, to, in, ends)
	if !any {
		return &Care{About: OffTheLeaf}
	}
	off := taken{*line, sawn, in}
	least, _ := off.over(ends)
	*line = sawn
	w.done.Cuts = 1
	if height := least - Kerf; height > 0 {
		after := w.p.Door.Leaf.Ends(m.Edge, 0)
		w.p.Offcuts = append(append([]Offcut(nil), w.p.Offcuts...), Offcut{
			Edge: m.Edge, Height: height, Length: min(ends.Length(), after.Length()),
			Thick: w.p.Door.Leaf.Thickness, Across: w.p.Anatomy.Make != door.Boarded,
		})
	}
	return w.trimmed(m.Edge)
}

// undercut cuts the foot and lays a covering under it.
func (w *work) undercut(m *Move) *Care {
	if m.First != 0 || m.Last != 0 {
		if why := w.cut(m); why != nil {
			return why
		}
	}
	return w.cover(m)
}

// sawn gives the edge where it lies inside the line and the line where that is
// inside the edge, and whether the line takes anything at all between the ends.
func sawn(p geom.Profile, to geom.Line, in float64, ends geom.Interval) (q geom.Profile, any bool) {
	const nothing = 1e-9 // mm
	depth := func(s float64) float64 { return float64(in * (to.At(s) - p.At(s))) }
	at := []float64{ends.Lo}
	for _, s := range p {
		if ends.Lo < s.At && s.At < ends.Hi {
			at = append(at, s.At)
		}
	}
	at = append(at, ends.Hi)
	whole := true
	for _, s := range at {
		d := depth(s)
		any = any || d > nothing
		whole = whole && d >= -nothing
	}
	if !any {
		return p, false
	}
	if whole {
		return geom.Profile{{At: ends.Lo, Value: to.At(ends.Lo)}, {At: ends.Hi, Value: to.At(ends.Hi)}}, true
	}
	before, after := depth(ends.Lo) <= 0, depth(ends.Hi) <= 0
	for _, s := range p { // what lies before the leaf's end, where that is not cut
		if before && s.At < ends.Lo {
			q = append(q, s)
		}
	}
	for i, s := range at {
		d := depth(s)
		if i > 0 {
			if last := depth(at[i-1]); last > 0 && d < 0 || last < 0 && d > 0 {
				x := at[i-1] + float64((s-at[i-1])*(last/(last-d)))
				q = append(q, geom.Station{At: x, Value: to.At(x)})
			}
		}
		value := p.At(s)
		if d > 0 {
			if i > 0 && i < len(at)-1 {
				continue // the line is straight there
			}
			value = to.At(s)
		}
		q = append(q, geom.Station{At: s, Value: value})
	}
	for _, s := range p {
		if after && s.At > ends.Hi {
			q = append(q, s)
		}
	}
	return spaced(q), true
}
