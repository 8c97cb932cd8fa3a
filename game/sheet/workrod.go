package sheet

import (
	"leafwright/game/draw"
	"leafwright/game/words"
	"leafwright/geom/door"
)

// rodMark is a label beside the storey rod: where its line points, px, and its text.
type rodMark struct {
	at       float64
	text     string
	from, to float64 // of a plate's two ends, px; equal for a line
}

// drawRod draws the storey rod: heights on the jamb left of it, on the leaf right of it.
func (b *bench) drawRod(x0, y0, x1, y1 float64) {
	const wide = 7 * MM
	d := &b.plan.after.Door
	ends := frameEnds(d, door.HingeSide)
	base := ends.Lo
	s := (y1 - y0 - 8*MM) / ends.Length()
	y := func(h float64) float64 { return y1 - 3*MM - s*(h-base) }
	mid := (x0 + x1) / 2
	list := b.l()
	outline(list, draw.Line, thick, draw.Pt{X: mid - wide/2, Y: y(base)}, draw.Pt{X: mid + wide/2, Y: y(base)}, draw.Pt{X: mid + wide/2, Y: y(ends.Hi)}, draw.Pt{X: mid - wide/2, Y: y(ends.Hi)})
	line(list, draw.Line, hair, draw.Pt{X: mid, Y: y(base)}, draw.Pt{X: mid, Y: y(ends.Hi)})
	line(list, draw.Line, 2*thick, draw.Pt{X: x0, Y: y(base)}, draw.Pt{X: x1, Y: y(base)})
	round := b.a.sizeStep()
	fig := func(mm float64) string { return b.a.figure(mm, round) }
	jamb := []rodMark{{y(ends.Hi), "head " + fig(ends.Length()), y(ends.Hi), y(ends.Hi)}}
	var leaf []rodMark
	c := d.Leaf.Corners(0)
	foot, lift := c.HangingFoot.Y, 0.0
	if len(d.Hinges) > 0 {
		lift = d.Hinges[0].JambHeight - d.Hinges[0].LeafHeight
	}
	at := func(v float64) float64 { return y(v + lift) }
	leaf = append(leaf, rodMark{at(c.HangingHead.Y), "top " + fig(c.HangingHead.Y-foot), at(c.HangingHead.Y), at(c.HangingHead.Y)})
	for i := range d.Hinges {
		h := &d.Hinges[i]
		name := words.HingeName(b.s, i)
		jamb = append(jamb, rodMark{y(h.JambHeight), name + " " + fig(h.JambHeight-h.Height/2-base) + " to " + fig(h.JambHeight+h.Height/2-base), y(h.JambHeight - h.Height/2), y(h.JambHeight + h.Height/2)})
		leaf = append(leaf, rodMark{at(h.LeafHeight), name + " " + fig(h.LeafHeight-h.Height/2-foot) + " to " + fig(h.LeafHeight+h.Height/2-foot), at(h.LeafHeight - h.Height/2), at(h.LeafHeight + h.Height/2)})
	}
	if k := &b.plan.after.Anatomy.Lock; k.Kind != door.NoLock {
		leaf = append(leaf, rodMark{at(k.Height), "spindle " + fig(k.Height-foot), at(k.Height), at(k.Height)})
	}
	leaf = append(leaf, rodMark{at(foot), "foot", at(foot), at(foot)})
	b.rodSide(jamb, mid-wide/2, x0, wide/2, y0, y(base))
	b.rodSide(leaf, mid+wide/2, x1, -wide/2, y0, y(base))
}

// rodSide draws marks on one half of the rod and their labels out to the side, those that
// would run into each other moved apart.
func (b *bench) rodSide(marks []rodMark, edge, out, half, top, foot float64) {
	list := b.l()
	for i := 1; i < len(marks); i++ { // from the top down
		for k := i; k > 0 && marks[k].at < marks[k-1].at; k-- {
			marks[k], marks[k-1] = marks[k-1], marks[k]
		}
	}
	side, anchor := 1.0, draw.Start
	if out < edge {
		side, anchor = -1, draw.End
	}
	const knee = 4 * MM
	st := style{9 * pt, true, draw.TextInk}
	room := side*(out-edge) - knee - 1*MM
	const between = 0.6 * MM
	text, at := make([][]string, len(marks)), make([]float64, len(marks))
	high := func(i int) float64 { return float64(len(text[i])) * 1.15 * st.size }
	next := top
	for i, m := range marks { // down, and back up from the floor
		text[i] = broken(m.text, st, room)
		at[i] = max(m.at-high(i)/2, next)
		next = at[i] + high(i) + between
	}
	last := foot
	for i := len(marks) - 1; i >= 0; i-- {
		at[i] = min(at[i], last-high(i))
		last = at[i] - between
	}
	for i, m := range marks {
		if m.from == m.to {
			line(list, draw.Line, thick, draw.Pt{X: edge, Y: m.at}, draw.Pt{X: edge + half, Y: m.at})
		} else {
			area(list, draw.Metal, draw.Pt{X: edge, Y: m.from}, draw.Pt{X: edge + half, Y: m.from}, draw.Pt{X: edge + half, Y: m.to}, draw.Pt{X: edge, Y: m.to})
			outline(list, draw.Line, thick, draw.Pt{X: edge, Y: m.from}, draw.Pt{X: edge + half, Y: m.from}, draw.Pt{X: edge + half, Y: m.to}, draw.Pt{X: edge, Y: m.to})
		}
		y := at[i]
		line(list, draw.Fine, hair, draw.Pt{X: edge, Y: m.at}, draw.Pt{X: edge + side*knee, Y: y + high(i)/2})
		for _, t := range text[i] {
			write(list, t, st, anchor, edge+side*(knee+0.8*MM), y+rise*st.size)
			y += 1.15 * st.size
		}
	}
}
