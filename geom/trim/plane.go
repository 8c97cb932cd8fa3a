package trim

import (
	"math"

	"leafwright/geom"
	"leafwright/geom/door"
)

// plane takes shavings off an edge of the leaf: First..Last between From and To, or
// a scribed line's amounts, running out beyond them.
func (w *work) plane(m *Move) *Care {
	line, in := w.p.Door.Leaf.Line(m.Edge)
	ends := w.p.Door.Leaf.Ends(m.Edge, 0)
	if m.spans() && (m.To <= ends.Lo || m.From >= ends.Hi) {
		return &Care{About: OffTheLeaf}
	}
	switch {
	case m.Kind == Scribe:
		*line = lessened(*line, m.scribed(ends), in)
	case !m.spans():
		*line = bent(*line, straight(m.First, m.Last, ends), in, ends)
	default:
		*line = lessened(*line, m.stroke(ends), in)
	}
	w.done.Cuts = 1
	return w.trimmed(m.Edge)
}

// straight gives the line through two amounts at the ends of an edge.
func straight(first, last float64, ends geom.Interval) geom.Line {
	if first == last {
		return geom.Line{C0: first}
	}
	c := (last - first) / (ends.Hi - ends.Lo)
	return geom.Line{C0: first - float64(c*ends.Lo), C1: c}
}

// stroke gives the amounts of a plane that is set down at From and lifted at To: an
// end inside the edge runs out over [RunOut].
func (m *Move) stroke(ends geom.Interval) geom.Profile {
	between := geom.Profile{{At: m.From, Value: m.First}, {At: m.To, Value: m.Last}}
	return runOut(between, m.From > ends.Lo, m.To < ends.Hi)
}

// scribed gives the amounts of a scribed line, its first and last held beyond it; where
// From and To are given it is planed between them only.
func (m *Move) scribed(ends geom.Interval) geom.Profile {
	// held tells the amount at a place, first and last held beyond the line
	held := func(s float64) float64 {
		return m.Line.At(geom.Interval{Lo: m.Line[0].At, Hi: m.Line[len(m.Line)-1].At}.Clamp(s))
	}
	from, to := m.From, m.To
	if !m.spans() {
		if len(m.Line) == 1 {
			return m.Line
		}
		from, to = ends.Lo-door.ApartLeast, ends.Hi+door.ApartLeast
		from, to = min(from, m.Line[0].At-door.ApartLeast), max(to, m.Line[len(m.Line)-1].At+door.ApartLeast)
	}
	p := geom.Profile{{At: from, Value: held(from)}}
	for _, s := range m.Line {
		if from < s.At && s.At < to {
			p = append(p, s)
		}
	}
	p = append(p, geom.Station{At: to, Value: held(to)})
	return runOut(p, m.spans() && from > ends.Lo, m.spans() && to < ends.Hi)
}

// runOut lets amounts fall to nothing over [RunOut] beyond the ends that say so, and
// keeps them there.
func runOut(p geom.Profile, atFrom, atTo bool) geom.Profile {
	const flat = 10.0 // mm of nothing, so that a profile running on stays there
	if atFrom {
		s := p[0].At - RunOut
		p = append(geom.Profile{{At: s - flat}, {At: s}}, p...)
	}
	if atTo {
		s := p[len(p)-1].At + RunOut
		p = append(p, geom.Station{At: s}, geom.Station{At: s + flat})
	}
	return p
}

// lessened gives an edge with the amounts off it, in being the sign of the way into
// the leaf: a sum with the bends of both.
func lessened(p, off geom.Profile, in float64) geom.Profile {
	if len(off) == 1 {
		return p.Shift(float64(in * off[0].Value))
	}
	signed := make(geom.Profile, len(off))
	for i, s := range off {
		signed[i] = geom.Station{At: s.At, Value: float64(in * s.Value)}
	}
	if len(p) == 1 {
		return spaced(signed.Shift(p[0].Value))
	}
	return spaced(p.Plus(signed))
}

// spaced makes a profile one that a door may have: of two stations nearer than
// [door.ApartLeast] the one that bends it less goes, and of more than
// [door.Stations] those that bend it least.
func spaced(p geom.Profile) geom.Profile {
	for i := 1; i < len(p) && len(p) > 2; {
		if p[i].At-p[i-1].At >= door.ApartLeast {
			i++
			continue
		}
		if k := lesser(p, i-1, i); k < i {
			p = append(p[:k:k], p[k+1:]...)
			i = max(1, i-1)
		} else {
			p = append(p[:k:k], p[k+1:]...)
		}
	}
	for len(p) > door.Stations {
		k := 1
		for i := 2; i < len(p)-1; i++ {
			k = lesser(p, k, i)
		}
		p = append(p[:k:k], p[k+1:]...)
	}
	return p
}

// lesser gives which of two stations bends the profile less; the ends stay.
func lesser(p geom.Profile, i, k int) int {
	switch {
	case i == 0:
		return k
	case k == len(p)-1:
		return i
	case bend(p, k) <= bend(p, i):
		return k
	}
	return i
}

// bend gives how far the profile stands off a straight line from the station before
// to the one after.
func bend(p geom.Profile, i int) float64 {
	a, b := p[i-1], p[i+1]
	return math.Abs(p[i].Value - a.Value - float64((b.Value-a.Value)*((p[i].At-a.At)/(b.At-a.At))))
}

// trimmed follows up what was taken off an edge: the arrises, the hinges or the lock
// on it, strips, rails, and what is left of every member.
func (w *work) trimmed(e door.Edge) *Care {
	old, in := w.was.Door.Leaf.Line(e)
	now, _ := w.p.Door.Leaf.Line(e)
	off := taken{*old, *now, in}
	least, deepest := off.over(w.was.Door.Leaf.Ends(e, 0))
	w.done.Most = max(0, deepest)
	if why := w.thinned(e, &off); why != nil {
		return why
	}
	// an eased arris loses what is off everywhere; where more is off it is eased again
	s := &w.p.Door.Leaf.Sections[e]
	s.KnuckleEase, s.StopEase = max(0, s.KnuckleEase-max(0, least)), max(0, s.StopEase-max(0, least))
	switch e {
	case door.HingeSide:
		w.shallower(&off)
	case door.LatchSide:
		w.nearerLock(&off)
	default:
		w.clipped(e)
	}
	if e.Upright() { // where top or foot slopes, the leaf's corner is lower or higher now
		w.clipped(door.HeadSide)
		w.clipped(door.FloorSide)
	}
	w.areas(e)
	return w.limits(e)
}

// taken is what was taken off an edge, between the edge as it was and as it is.
type taken struct {
	old, now geom.Profile
	in       float64 // sign of the way into the leaf
}

// at gives what is off at a place; below 0 it was added.
func (o *taken) at(s float64) float64 { return float64(o.in * (o.now.At(s) - o.old.At(s))) }

// over gives the least and the most that is off over a stretch.
func (o *taken) over(r geom.Interval) (least, most float64) {
	least = o.at(r.Lo)
	most = least
	see := func(s float64) {
		if x := o.at(s); r.Contains(s) {
			least, most = min(least, x), max(most, x)
		}
	}
	see(r.Hi)
	for _, p := range [2]geom.Profile{o.old, o.now} {
		for _, s := range p {
			see(s.At)
		}
	}
	return least, most
}

// areas tells what came off the leaf and went onto it, by area and by volume.
func (w *work) areas(e door.Edge) {
	was, is := &w.was.Door.Leaf, &w.p.Door.Leaf
	w.done.Off, w.done.On = Took(was, is)
	thick := was.Thickness
	s := was.Sections[e]
	if s.KnuckleBack == 0 && s.StopBack == 0 || is.Sections[e].KnuckleBack != 0 || is.Sections[e].StopBack != 0 {
		w.done.Volume += gone(was, is, s.KnuckleBack, thick-s.StopBack)
		return
	}
	// the thin strip is gone, and full timber behind it
	between := *was
	line, _ := between.Line(e)
	for i := range w.was.Anatomy.Strips {
		if k := &w.was.Anatomy.Strips[i]; k.Edge == e {
			*line = k.Joint // of the outermost, which is the last
		}
	}
	w.done.Volume += gone(was, &between, s.KnuckleBack, thick-s.StopBack) + gone(&between, is, 0, thick)
}
