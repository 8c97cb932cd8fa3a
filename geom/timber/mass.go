package timber

import (
	"leafwright/geom"
	"leafwright/geom/door"
)

// Gravity is the standard acceleration of free fall, m/s².
const Gravity = 9.80665

// Stuff is what a leaf's parts are made of; what is 0 is taken as usual.
type Stuff struct {
	Density float64 // of the timber, or of a flush leaf through and through, kg/m³; 0 = that of the anatomy's timber
	Panel   float64 // mean thickness of the panels, mm; 0 = a third of the leaf's, or half where raised; 4 of glass
	Fitted  float64 // lock, hinges and handles, kg
}

const (
	glassDensity = 2500.0 // kg/m³, of soda-lime glass (from memory)
	glassThick   = 4.0    // mm (common practice, no published source)
)

// Mass is what a leaf weighs, kg.
type Mass struct{ Stiles, Rails, Muntins, Panels, Fitted, All float64 }

// MassOf gives what a leaf weighs. Strips count to the member they are glued to, by their
// own stock. A panel's tongue in its groove is left out: a hundredth of the whole. A flush or
// boarded leaf counts as solid, all under Panels; a hollow one weighs a third to a half.
func MassOf(l *door.Leaf, a *door.Anatomy, s Stuff) (m Mass) {
	t := held(l.Thickness, 0, 1000)
	density := held(s.Density, 0, 5000)
	if density == 0 {
		timber, _ := Find(a.Timber)
		density = timber.Density
	}
	const cubic = 1e-9 // m³ in a mm³
	c := l.Corners(t / 2)
	whole := area(c.HangingFoot, c.ClosingFoot, c.ClosingHead, c.HangingHead)
	m.Fitted = held(s.Fitted, 0, 100)
	if a.Make != door.Framed {
		m.Panels = float64(float64((float64(whole*t)-lacking(l, a, nil))*cubic) * density)
		m.All = m.Panels + m.Fitted
		return m
	}
	left, right := a.Inner(l)
	mid := (c.HangingFoot.Y + c.HangingHead.Y) / 2
	between := held(right-left, 0, 1e4)
	high := held(c.HangingHead.Y-c.HangingFoot.Y, 0, 1e4)
	high2 := held(c.ClosingHead.Y-c.ClosingFoot.Y, 0, 1e4)
	setback := float64(t / 2 * l.HangingSetback())
	setback2 := float64(t / 2 * l.ClosingSetback())
	stiles := float64(held(left-l.Hanging.At(mid)-setback, 0, 1e4)*high) + float64(held(l.Closing.At(mid)-setback2-right, 0, 1e4)*high2)
	var rails, muntins float64
	for _, r := range a.Rails {
		rails += float64(held(r.To-r.From, 0, 1e4) * between)
	}
	for _, n := range a.Muntins {
		muntins += float64(held(n.Width, 0, 1e4) * held(n.To-n.From, 0, 1e4))
	}
	panels := held(whole-stiles-rails-muntins, 0, 1e9)
	thick, dense := held(s.Panel, 0, t), density
	switch {
	case a.Panels == door.Glass:
		dense = glassDensity
		if thick == 0 {
			thick = glassThick
		}
	case thick > 0:
	case a.Panels == door.Raised:
		thick = t / 2 // common practice, no published source
	default:
		thick = t / 3 // as wide as the groove and the tenon: a third of the stuff (Fairham; Noyes)
	}
	kg := func(mm3 float64) float64 { return float64(held(mm3, 0, 1e12)*cubic) * density }
	m.Stiles = kg(float64(stiles*t) - lacking(l, a, func(e door.Edge) bool { return e.Upright() }))
	m.Rails = kg(float64(rails*t) - lacking(l, a, func(e door.Edge) bool { return !e.Upright() }))
	m.Muntins = kg(float64(muntins * t))
	m.Panels = float64(float64(panels*thick)*cubic) * dense
	m.All = m.Stiles + m.Rails + m.Muntins + m.Panels + m.Fitted
	return m
}

// area gives the area of a four-cornered figure, going round it.
func area(p ...geom.Vec) float64 {
	twice := 0.0
	for i, a := range p {
		b := p[(i+1)%len(p)]
		twice += float64(a.X*b.Y) - float64(b.X*a.Y)
	}
	return held(twice/2, 0, 1e8)
}

// lacking gives the volume, mm³, by which strips of thin stock on the edges chosen, on all
// if which is nil, are less than the leaf's thickness.
func lacking(l *door.Leaf, a *door.Anatomy, which func(door.Edge) bool) float64 {
	sum := 0.0
	for i := range a.Strips {
		s := &a.Strips[i]
		if which != nil && !which(s.Edge) {
			continue
		}
		// the strip reaches to the next one's joint on the same edge, or to the edge
		line, _ := l.Line(s.Edge)
		outer := *line
		for j := i + 1; j < len(a.Strips); j++ {
			if a.Strips[j].Edge == s.Edge {
				outer = a.Strips[j].Joint
				break
			}
		}
		ends := edgeEnds(l, s.Edge)
		high := outer.At(ends.Mid()) - s.Joint.At(ends.Mid())
		thin := held(l.Thickness-s.Stock, 0, 1000)
		sum += float64(float64(held(max(high, -high), 0, 1000)*thin) * ends.Length())
	}
	return held(sum, 0, 1e12)
}

// edgeEnds gives where an edge of the knuckle face begins and ends: heights on the
// upright ones, distances across on the others.
func edgeEnds(l *door.Leaf, e door.Edge) geom.Interval {
	i := l.Ends(e, 0)
	return geom.Interval{Lo: held(i.Lo, -1e4, 1e4), Hi: held(i.Hi, -1e4, 1e4)}
}

// Pull gives the horizontal force, N, with which the leaf's own weight pulls on its top
// hinge and pushes on its bottom one: its weight at half its width, mm, over the
// distance between the outer hinges' middles, mm. Elementary statics. What leans on the
// handle comes on top: count it as a leaf of twice the width it leans at.
func Pull(kg, width, between float64) float64 {
	weight := float64(held(kg, 0, 1000) * Gravity)
	return float64(weight*held(width, 0, 1e4)/2) / held(between, 50, 1e4)
}

// WidthAllowance gives by how much, %, a leaf's mass is counted up when hinges are
// chosen for it because it is wider than half its height: (2 − height/width) × 100, at
// least 0. European hinge standard EN 1935 as a hinge supplier's guide gives it.
func WidthAllowance(height, width float64) float64 {
	return max(0, float64((2-held(height, 1, 1e4)/held(width, 1, 1e4))*100))
}
