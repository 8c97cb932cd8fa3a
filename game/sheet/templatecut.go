package sheet

import (
	"math"

	"leafwright/game"
	"leafwright/game/draw"
	"leafwright/game/words"
	"leafwright/geom"
	"leafwright/geom/timber"
)

// cutTemplate gives the line of a cut at full size: the edge as it is then, and the line
// to cut to, exact where the sheet's figures are rounded.
func cutTemplate(a *Ask, s *words.Speaker, c *cut, was, is *game.Tried, of string) template {
	if c.stop {
		return stopTemplate(a, s, c, was, is, of)
	}
	name := words.LeafEdge(s, c.edge)
	face := "the leaf's knuckle face"
	var old, now *geom.Profile
	ends := was.Door.Leaf.Ends(c.edge, 0)
	in := 1.0
	if c.frame {
		name, face = words.FrameSide(s, c.edge), "the front edge"
		old, in = was.Door.Frame.Face(c.edge)
		now, _ = is.Door.Frame.Face(c.edge)
		ends = frameEnds(&was.Door, c.edge)
	} else {
		old, in = was.Door.Leaf.Line(c.edge)
		now, _ = is.Door.Leaf.Line(c.edge)
	}
	// to the right on the page: along u or x where the edge stands upright; turned a
	// quarter, against v or y, where it lies
	right := 1.0
	if !c.edge.Upright() {
		right = -1
	}
	right = turned(a.Job, right)
	chord := geom.Interval{Lo: old.At(ends.Lo), Hi: old.At(ends.Hi)}
	flat := func(at float64) float64 {
		return chord.Lo + (chord.Hi-chord.Lo)*(at-ends.Lo)/ends.Length()
	}
	across := func(p *geom.Profile, at float64) float64 { return right * (p.At(at) - flat(at)) }
	t := template{title: of + name + ", full size", hi: ends.Length()}
	t.lo, t.hi = c.reach(t.hi)
	t.how = "Lay it on " + face + ", the heavy line on the " + name + " as it is now; figures are " + lower(datumOf(s, c)) + a.inUnit() + ". Cut to the fine line; the hatched side goes."
	places := append(knots(*old, ends), knots(*now, ends)...)
	geom.Ascending(places)
	var edge, cut []spot
	for _, at := range places {
		edge = append(edge, spot{at - ends.Lo, across(old, at)})
		cut = append(cut, spot{at - ends.Lo, across(now, at)})
	}
	t.lines = append(t.lines, stroke{draw.Line, thick, false, edge}, stroke{draw.Line, hair, false, cut})
	for d := t.lo + 4; d < t.hi; d += 4 {
		at := ends.Lo + d
		e, k := across(old, at), across(now, at)
		if math.Abs(k-e) > 0.6 {
			t.lines = append(t.lines, stroke{draw.Fine, hair, false, []spot{{d, e}, {d + math.Min(1.5, math.Abs(k-e)), k}}})
		}
	}
	t.left, t.right = extent(edge, cut)
	inside := right * in // the way into the timber on the page
	t.ticks(a, c, inside, func(d float64) float64 { return across(now, ends.Lo+d) })
	return t
}

// reach gives from where to where along its edge a cut takes anything, to the marks outside.
func (c *cut) reach(end float64) (from, to float64) {
	first, last := -1, -1
	for i, k := range c.marks {
		if k.amount > 0 {
			last = i
			if first < 0 {
				first = i
			}
		}
	}
	to = end
	if first > 0 {
		from = c.marks[first-1].at
	}
	if last >= 0 && last < len(c.marks)-1 {
		to = min(end, c.marks[last+1].at)
	}
	return from, to
}

// ticks marks places along a line with their figures on one side of it, and widens the
// template for them.
func (t *template) ticks(a *Ask, c *cut, side float64, line func(float64) float64) {
	_, _, tape := a.steps()
	const long, room, apart = 4.0, 22.0, 6.0
	step := 50.0
	if tape != placeStep { // inches
		step = 2 * 25.4
	}
	var at []float64
	for _, m := range c.marks {
		at = append(at, m.at)
	}
	for d := step; d < t.hi; d += step {
		at = append(at, d)
	}
	geom.Ascending(at)
	last := -1e9
	for _, d := range at {
		if d < t.lo-0.5 || d > t.hi+0.5 {
			continue
		}
		d = min(d, t.hi)
		x := line(d)
		t.lines = append(t.lines, stroke{draw.Line, hair, false, []spot{{d, x}, {d, x + side*long}}})
		if d-last < apart {
			continue
		}
		last = d
		anchor := draw.Start
		if side < 0 {
			anchor = draw.End
		}
		t.texts = append(t.texts, label{spot{d, x + side*(long+1)}, anchor, a.figure(d, tape), false})
	}
	if side > 0 {
		t.right = max(t.right, 0) + room
	} else {
		t.left = min(t.left, 0) - room
	}
}

// stopTemplate gives a stop's face at full size behind the frame's front edge.
func stopTemplate(a *Ask, s *words.Speaker, c *cut, was, is *game.Tried, of string) template {
	name := words.FrameSide(s, c.edge)
	front, stop := frontOf(&is.Door.Frame, c.edge), is.Door.Frame.Stop(c.edge)
	ends := frameEnds(&was.Door, c.edge)
	t := template{title: of + "stop at the " + name + ", full size", hi: ends.Length()}
	t.how = "Lay it on the face of the " + name + ", the heavy line on its front edge; figures are " + lower(datumOf(s, c)) + a.inUnit() + ". The stop's face stands on the fine line."
	places := append(knots(*front, ends), knots(*stop, ends)...)
	geom.Ascending(places)
	var edge, face []spot
	for _, at := range places {
		edge = append(edge, spot{at - ends.Lo, 0})
		face = append(face, spot{at - ends.Lo, front.At(at) - stop.At(at)})
	}
	t.lines = append(t.lines, stroke{draw.Line, thick, false, edge}, stroke{draw.Line, hair, false, face})
	t.left, t.right = extent(edge, face)
	t.ticks(a, c, -1, func(d float64) float64 { return front.At(ends.Lo+d) - stop.At(ends.Lo+d) })
	return t
}

// dowelTemplate gives the holes of a strip's dowels along the edge they stand in.
func dowelTemplate(a *Ask, s *words.Speaker, d *timber.Dowels, was *game.Tried, of string) template {
	name := words.LeafEdge(s, d.Edge)
	thick0 := was.Door.Leaf.Thickness
	_, fine, tape := a.steps()
	from := "the hanging end"
	if d.Edge.Upright() {
		from = "the foot"
	}
	t := template{title: of + "dowels in the " + name + ", full size", hi: d.Long, left: 0, right: thick0}
	t.how = "Lay it on the " + name + ", the heavy line on the knuckle face, and prick the holes' middles through; figures are from " + from + a.inUnit() + ". On the strip use the same places, gauged " + a.length(d.StripGauge, fine) + " from its knuckle face."
	t.lines = append(t.lines,
		stroke{draw.Line, thick, false, []spot{{0, 0}, {d.Long, 0}}},
		stroke{draw.Line, hair, false, []spot{{0, thick0}, {d.Long, thick0}}},
		stroke{draw.Fine, hair, true, []spot{{0, d.LeafGauge}, {d.Long, d.LeafGauge}}})
	for _, at := range d.Places {
		t.hole(at, d.LeafGauge, d.Diameter)
		t.texts = append(t.texts, label{spot{at, thick0 + 2}, draw.Start, a.figure(at, tape), true})
	}
	t.right += 20
	return t
}

// hole draws a hole's round and a cross on its middle.
func (t *template) hole(along, across, wide float64) {
	var round []spot
	for i := range 25 {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / 24)
		round = append(round, spot{along + wide/2*sin, across + wide/2*cos})
	}
	arm := wide/2 + 1.5
	t.lines = append(t.lines, stroke{draw.Line, hair, false, round},
		stroke{draw.Line, hair, false, []spot{{along - arm, across}, {along + arm, across}}},
		stroke{draw.Line, hair, false, []spot{{along, across - arm}, {along, across + arm}}})
}

// hingeTemplates gives where the plates of hinges that are moved come, beside where they are.
func hingeTemplates(a *Ask, s *words.Speaker, was, is *game.Tried, recut []int, of string) (all []template) {
	for _, i := range recut {
		h, g := &was.Door.Hinges[i], &is.Door.Hinges[i]
		name := words.HingeName(s, i)
		if h.LeafHeight != g.LeafHeight || h.Height != g.Height {
			up := turned(a.Job, 1) // into the leaf
			all = append(all, plateTemplate(a, of+name+", on the leaf", "the leaf's knuckle face, the heavy line on the "+s.HangingEdge, s, h.LeafHeight, h.Height, g.LeafHeight, g.Height, g.LeafGain, up))
		}
		if h.JambHeight != g.JambHeight || h.Height != g.Height {
			all = append(all, plateTemplate(a, of+name+", on the jamb", "the frame's front, the heavy line on the hinge jamb's face", s, h.JambHeight, h.Height, g.JambHeight, g.Height, g.JambGain, turned(a.Job, -1)))
		}
	}
	return all
}

// plateTemplate shows a gain in section: the old plate's ends dashed, the new gain drawn
// as deep as it is, to the side the timber is on.
func plateTemplate(a *Ask, title, on string, s *words.Speaker, was, high, is, tall, deep, side float64) template {
	_, fine, _ := a.steps()
	lo, hi := min(was-high/2, is-tall/2)-10, max(was+high/2, is+tall/2)+10
	t := template{title: title + ", full size", hi: hi - lo, left: -14, right: 14}
	t.how = "Lay it on " + on + ", dashed lines on the ends of the " + s.Gain + " that is there; the fine lines are the ends of the new one, the box is as deep as it: " + a.length(deep, fine) + "."
	t.lines = append(t.lines, stroke{draw.Line, thick, false, []spot{{0, 0}, {hi - lo, 0}}})
	for _, end := range [2]float64{was - high/2, was + high/2} {
		t.lines = append(t.lines, stroke{draw.Line, hair, true, []spot{{end - lo, -side * 13}, {end - lo, side * 2}}})
	}
	a0, a1 := is-tall/2-lo, is+tall/2-lo
	t.lines = append(t.lines, stroke{draw.Line, hair, false, []spot{{a0, side * 13}, {a0, 0}, {a1, 0}, {a1, side * 13}}},
		stroke{draw.Line, hair, false, []spot{{a0, side * deep}, {a1, side * deep}}})
	return t
}

// knots gives a profile's bends between two places, and the two.
func knots(p geom.Profile, ends geom.Interval) []float64 {
	at := []float64{ends.Lo}
	for _, s := range p {
		if ends.Lo < s.At && s.At < ends.Hi {
			at = append(at, s.At)
		}
	}
	return append(at, ends.Hi)
}

func extent(lines ...[]spot) (left, right float64) {
	for _, l := range lines {
		for _, q := range l {
			left, right = min(left, q.across), max(right, q.across)
		}
	}
	return left, right
}

// inUnit says the unit of figures that stand without theirs.
func (a *Ask) inUnit() string {
	if a.unit() == "" {
		return ""
	}
	return " in mm"
}

func lower(s string) string {
	if s == "" {
		return s
	}
	return string(s[0]|0x20) + s[1:]
}
