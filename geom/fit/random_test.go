package fit_test

import (
	"math/rand/v2"
	"slices"

	"leafwright/geom"
	"leafwright/geom/door"
)

// randomSeed starts every stream of random doors; with a door's index it gives
// that door again.
const randomSeed = 20250117

// randomSource gives the source the n-th random door is made from.
func randomSource(n int) *rand.Rand { return rand.New(rand.NewPCG(randomSeed, uint64(n))) }

// chance is a source of lengths and of choices.
type chance struct{ *rand.Rand }

// of tells true p times out of one.
func (c chance) of(p float64) bool { return c.Float64() < p }

// within gives a number between lo and hi.
func (c chance) within(lo, hi float64) float64 { return lo + (hi-lo)*c.Float64() }

// about gives a number within size of zero, and quite often zero itself.
func (c chance) about(size float64) float64 {
	if c.of(0.3) {
		return 0
	}
	return c.within(-size, size)
}

// spread gives n places over [lo, hi] in rising order, at least apart from each other.
func (c chance) spread(n int, lo, hi, apart float64) []float64 {
	at := make([]float64, n)
	for i := range at {
		at[i] = c.within(lo, hi-float64(n-1)*apart)
	}
	slices.Sort(at)
	for i := range at {
		at[i] += float64(i) * apart
	}
	return at
}

// profile gives a line over [0, length] that starts at base and leans, bows and
// wavers by no more than the sizes given; one to five stations, not always out to
// the ends.
func (c chance) profile(length, base, lean, bow, waver float64) geom.Profile {
	n := 1 + c.IntN(5)
	lean, bow = c.about(lean), c.about(bow)
	if c.of(0.4) {
		waver = 0
	}
	var p geom.Profile
	for _, at := range c.spread(n, -0.02*length, 1.02*length, 0.12*length) {
		s := at / length
		p = append(p, geom.Station{At: at, Value: base + lean*s + 4*bow*s*(1-s) + waver*c.within(-1, 1)})
	}
	if n == 1 {
		p[0].Value = base
	}
	return p
}

// randomDoor gives a door such as an old house may have, or worse: leaning and
// bowed jambs, kinked heads, stepped floors and thresholds, leaves in wind, bows,
// bevels, uneven hinges, stops that hold the leaf open or bind at the hinges.
func randomDoor(rng *rand.Rand) door.Door {
	c := chance{rng}
	width, height := c.within(500, 1000), c.within(1700, 2400)
	switch {
	case c.of(0.15):
		width = c.within(300, 420)
	case c.of(0.15):
		width = c.within(1000, 1200)
	}
	t := c.within(20, 55)
	lift, headGap := c.within(3, 14), c.within(-2, 8)
	bad := c.within(0.2, 1) // how far gone this house is
	if c.of(0.1) {
		bad = 0
	}

	hinges := c.hinges(height, lift, bad)
	setGap := hinges[0].Gap()
	leafWidth, leafHeight := width-setGap-c.within(-2, 8), height-lift-headGap

	var d door.Door
	d.Hinges = hinges
	d.Leaf = door.Leaf{
		Width:       leafWidth + c.about(4),
		Thickness:   t,
		Hanging:     c.profile(leafHeight, 0, 3*bad, 2*bad, bad),
		Closing:     c.profile(leafHeight, leafWidth, 6*bad, 4*bad, 1.5*bad),
		Top:         c.profile(leafWidth, leafHeight, 15*bad, 4*bad, 1.5*bad),
		Bottom:      c.profile(leafWidth, 0, 12*bad, 3*bad, 1.5*bad),
		HangingFace: c.profile(leafHeight, 0, 0, 4*bad, bad),
		ClosingFace: c.profile(leafHeight, 0, 15*bad, 5*bad, bad),
	}
	if c.of(0.6) {
		d.Leaf.ClosingBevel = geom.Angle(c.within(0, 6)) * geom.Degree
	}
	if c.of(0.3) {
		d.Leaf.HangingBevel = geom.Angle(c.within(0, 6)) * geom.Degree
	}

	f := &d.Frame
	f.HingeJamb = c.profile(height, 0, 10*bad, 4*bad, bad)
	f.LatchJamb = c.profile(height, width, 10*bad, 4*bad, bad)
	f.Head = c.profile(width, height, 20*bad, 5*bad, 2*bad)
	f.HingeFront = c.profile(height, 0, 6*bad, 3*bad, bad)
	f.LatchFront = c.profile(height, c.about(4*bad), 10*bad, 3*bad, bad)
	f.HeadFront = c.profile(width, c.about(3*bad), 6*bad, 3*bad, bad)
	f.StopWidth = c.within(8, 20)
	rebate := t + c.within(0, 6)
	switch {
	case c.of(0.15): // stop-bound, most likely
		rebate = t - c.within(0, 8)
	case c.of(0.4): // a stop well out of the way
		rebate = t + c.within(8, 20)
	}
	f.PlantStops(rebate)
	if c.of(0.6) { // stops not parallel with the front edge
		f.HingeStop = c.profile(height, -rebate, 6*bad, 3*bad, bad)
		f.LatchStop = c.profile(height, -rebate, 8*bad, 3*bad, bad)
		f.HeadStop = c.profile(width, -rebate, 6*bad, 3*bad, bad)
	}
	if c.of(0.15) { // hinge-bound
		f.HingeStop = f.HingeStop.Shift(c.within(0, 6))
	}

	d.Latch = door.Latch{Height: c.within(0.3, 0.7) * leafHeight, Proud: hinges[0].Proud + c.about(2*bad)}
	d.Opens = geom.Angle(c.within(60, 180)) * geom.Degree
	if c.of(0.3) {
		d.Opens = geom.Angle(90+90*c.IntN(2)) * geom.Degree
	}
	d.Floor = c.floor(width, bad)
	return d
}

// hinges gives two to four butts, more or less in line.
func (c chance) hinges(height, lift, bad float64) []door.Hinge {
	n := 2 + c.IntN(3)
	closed := c.within(5, 10)
	inLeaf := c.within(0.15, 0.35)
	inJamb := inLeaf
	if c.of(0.2) { // let in too deep: the leaf's edge passes behind the pin as it opens
		inLeaf, inJamb = c.within(0.45, 0.75), c.within(0, 0.2)
	}
	pin, proud := c.within(3, 12), c.about(2)
	least := 3.0
	if c.of(0.1) { // a leaf that stands out in front of its pins swings its hanging edge into the jamb
		least, pin, proud = -4, c.within(-4, 1), c.within(-3, 2)
	}
	lean := c.about(2 * bad) // the lower pins farther out than the upper, or less
	var hinges []door.Hinge
	for i := range n {
		part := float64(i) / float64(n-1)
		y := height - 170 - part*(height-400) + c.about(40)
		h := door.Hinge{
			JambHeight: y, LeafHeight: y - lift + c.about(0.7*bad),
			LeafGain: max(0, closed*inLeaf+c.about(0.7*bad)), JambGain: max(0, closed*inJamb+c.about(0.7*bad)),
			Closed: closed + c.about(0.4*bad),
			Pin:    max(least, min(12, pin+part*lean+c.about(0.5*bad))),
			Proud:  max(-3, min(2, proud+c.about(0.5*bad))),
			Height: 75,
		}
		if c.of(0.2) {
			h.LeafPacker = c.within(0, 1.5)
		}
		if c.of(0.2) {
			h.JambPacker = c.within(0, 1.5)
		}
		hinges = append(hinges, h)
	}
	return hinges
}

// floor gives a floor with one to four radii and one to five angles, stepped as
// laid floors are not, with a threshold now and then.
func (c chance) floor(width, bad float64) door.Floor {
	rise := 10 * bad
	var f door.Floor
	f.Radii = c.spread(1+c.IntN(4), 0, 1.1*width, 0.1*width)
	if c.of(0.5) {
		f.Radii[0] = 0
	}
	first := 0.0
	if c.of(0.1) {
		first = c.within(-10, 10)
	}
	for i, a := range c.spread(1+c.IntN(5), first, 170, 8) {
		if i == 0 {
			a = first
		}
		f.Angles = append(f.Angles, geom.Angle(a)*geom.Degree)
	}
	pole := c.about(rise / 3)
	for range f.Angles {
		tilt := c.about(rise)
		row := make([]float64, len(f.Radii))
		for i, r := range f.Radii {
			row[i] = pole
			if r > 0 {
				row[i] += tilt*r/width + c.about(rise/4)
			}
		}
		f.Heights = append(f.Heights, row)
	}
	if c.of(0.3) { // a threshold
		up := c.within(2, 15)
		for i := range f.Heights[0] {
			f.Heights[0][i] += up
		}
	}
	return f
}

// sections gives some of the leaf's edges arrises eased at 45° and others, or the
// same ones, a strip of thinner stock set back from its faces: none up to all that
// the leaf's thickness allows.
func (c chance) sections(d *door.Door) {
	l := &d.Leaf
	for e := range l.Sections {
		s := &l.Sections[e]
		left := l.Thickness // of the edge's thickness
		take := func(p, most float64) float64 {
			if !c.of(p) {
				return 0
			}
			return c.within(0, most)
		}
		s.KnuckleBack = take(0.25, min(8, left-door.EdgeLeft))
		s.StopBack = take(0.25, min(8, left-s.KnuckleBack-door.EdgeLeft))
		left -= s.KnuckleBack + s.StopBack
		s.KnuckleEase = take(0.4, min(10, left))
		s.StopEase = take(0.4, min(10, left-s.KnuckleEase))
		if c.of(0.1) { // two chamfers that meet
			s.StopEase = min(10, left-s.KnuckleEase)
		}
	}
}

// throughTheJamb makes the leaf thin and hangs it in front of pins buried behind the
// front edge, with hardly a rebate: edges pass behind the stops as it swings, through the
// wall. No one hangs a door so; the check allows it.
func (c chance) throughTheJamb(d *door.Door) {
	d.Leaf.Thickness = c.within(10, 14)
	proud := c.within(4, 9)
	for i := range d.Hinges {
		d.Hinges[i].Pin, d.Hinges[i].Proud = c.within(-5, -3), proud+c.about(1)
	}
	d.Latch.Proud = proud
	d.Frame.PlantStops(c.within(5, 8))
}
