package fit_test

import (
	"math"
	"testing"

	simple "github.com/peterstace/simplefeatures/geom"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fit"
)

// Flat, square-edged leaves closed flush in flat frames lie in one plane, where
// gap and overlap are distance and intersection of plane figures. A geometry
// library that knows nothing of doors (github.com/peterstace/simplefeatures) finds
// them from the outlines.

// polygonDoors is how many random outlines are tried.
const polygonDoors = 2000

// flatDoor gives a random leaf and frame without wind, bevel or stand, whose
// hinges turn the leaf in its plane.
func flatDoor(n int) door.Door {
	c := chance{randomSource(1_000_000 + n)}
	width, height, thick := c.within(300, 1200), c.within(1700, 2400), c.within(20, 55)
	leaf, tall := width-c.within(0, 12), height-c.within(0, 16)
	hinge := func(y float64) door.Hinge {
		return door.Hinge{
			JambHeight: y, LeafHeight: y - c.within(2, 12), Closed: c.within(5, 10),
			LeafGain: c.within(0, 4), JambGain: c.within(0, 4), Pin: c.within(3, 12),
		}
	}
	d := door.Door{
		Leaf: door.Leaf{
			Width: leaf, Thickness: thick,
			Hanging: c.profile(tall, 0, 4, 2, 1),
			Closing: c.profile(tall, leaf, 6, 3, 1),
			Top:     c.profile(leaf, tall, 10, 3, 1),
			Bottom:  c.profile(leaf, 0, 10, 3, 1),
		},
		Frame: door.Frame{
			HingeJamb: c.profile(height, 0, 6, 3, 1),
			LatchJamb: c.profile(height, width, 8, 3, 1),
			Head:      c.profile(width, height, 12, 3, 1),
			StopWidth: 12,
		},
		Hinges: []door.Hinge{hinge(height - 200), hinge(250)},
		Latch:  door.Latch{Height: tall / 2},
		Opens:  90 * geom.Degree,
		// one angle: the floor's height goes by the distance alone, x in the plane z = 0
		Floor: door.Floor{Angles: []geom.Angle{0}, Radii: c.spread(4, 0, width, 60)},
	}
	// the pins stand equally far out, so that the axis keeps to the plane; where it
	// leans sideways nothing changes for a leaf that stays closed
	d.Hinges[1].Pin = d.Hinges[0].Pin
	d.Frame.PlantStops(thick + 3)
	row := make([]float64, 4)
	for i := range row {
		row[i] = c.within(-6, 8)
	}
	d.Floor.Heights = [][]float64{row}
	return d
}

// plane is the leaf's plane: where the hinges put its outline, by turning and
// shifting it in two dimensions.
type plane struct{ cos, sin, x, y float64 }

func planePose(d *door.Door) plane {
	top, low := d.Hinges[0], d.Hinges[len(d.Hinges)-1]
	leaf := func(h door.Hinge) (x, y float64) { return poly(d.Leaf.Hanging, h.LeafHeight), h.LeafHeight }
	jamb := func(h door.Hinge) (x, y float64) {
		return poly(d.Frame.HingeJamb, h.JambHeight) + h.Closed - h.LeafGain - h.JambGain, h.JambHeight
	}
	x1, y1 := leaf(top)
	x2, y2 := leaf(low)
	p1, q1 := jamb(top)
	p2, q2 := jamb(low)
	by := math.Atan2(q2-q1, p2-p1) - math.Atan2(y2-y1, x2-x1)
	sin, cos := math.Sincos(by)
	return plane{cos, sin, p1 - cos*x1 + sin*y1, q1 - sin*x1 - cos*y1}
}

func (p plane) at(u, v float64) simple.XY {
	return simple.XY{X: p.cos*u - p.sin*v + p.x, Y: p.sin*u + p.cos*v + p.y}
}

// outline is the leaf's polygon, and the ends of its four edges in the world.
type outline struct {
	ring                         []simple.XY
	hanging, closing, top, lower []simple.XY
}

func outlineOf(d *door.Door) outline {
	s := &slow{d: d}
	pose := planePose(d)
	edge := func(e fit.Edge) (line []simple.XY) {
		a := s.arris(e, 0, 0)
		for _, at := range places(a.lo, a.hi, a.hi-a.lo, s.leafKinks(a)...) {
			p := s.on(a, at)
			line = append(line, pose.at(p.X, p.Y))
		}
		return line
	}
	o := outline{hanging: edge(fit.HingeSide), closing: edge(fit.LatchSide), top: edge(fit.HeadSide), lower: edge(fit.FloorSide)}
	// round the leaf: along the bottom, up the closing edge, back along the top and down
	o.ring = append(o.ring, o.lower...)
	o.ring = append(o.ring, o.closing[1:]...)
	for i := len(o.top) - 2; i >= 0; i-- {
		o.ring = append(o.ring, o.top[i])
	}
	for i := len(o.hanging) - 2; i > 0; i-- {
		o.ring = append(o.ring, o.hanging[i])
	}
	o.ring = append(o.ring, o.ring[0])
	return o
}

func lineOf(at ...simple.XY) simple.LineString {
	var c []float64
	for _, p := range at {
		c = append(c, p.X, p.Y)
	}
	return simple.NewLineString(simple.NewSequence(c, simple.DimXY))
}

func polygonOf(t *testing.T, ring []simple.XY) simple.Geometry {
	t.Helper()
	p := simple.NewPolygon([]simple.LineString{lineOf(ring...)})
	if err := p.Validate(); err != nil {
		t.Fatalf("not a polygon: %v", err)
	}
	return p.AsGeometry()
}

// faceOf gives the face of the frame that an edge looks at.
func faceOf(d *door.Door, e fit.Edge) geom.Profile {
	switch e {
	case fit.HingeSide:
		return d.Frame.HingeJamb
	case fit.LatchSide:
		return d.Frame.LatchJamb
	}
	return d.Frame.Head
}

// frameLine gives a face of the frame from lo to hi, on the side named, as points
// of the plane.
func frameLine(d *door.Door, e fit.Edge, lo, hi float64) (line []simple.XY) {
	if e == fit.FloorSide {
		for _, at := range places(lo, hi, hi-lo, d.Floor.Radii...) {
			line = append(line, simple.XY{X: at, Y: floorAt(&d.Floor, at, 0)})
		}
		return line
	}
	profile := faceOf(d, e)
	for _, at := range places(lo, hi, hi-lo, stations(profile)...) {
		if e.Upright() {
			line = append(line, simple.XY{X: poly(profile, at), Y: at})
		} else {
			line = append(line, simple.XY{X: at, Y: poly(profile, at)})
		}
	}
	return line
}

// solid is the frame's wood (or the floor) behind a face, between lo and hi along
// it: where the leaf lies in it, it binds.
func solid(d *door.Door, e fit.Edge, lo, hi float64) []simple.XY {
	const deep = 200
	line := frameLine(d, e, lo, hi)
	a, b := line[0], line[len(line)-1]
	switch e {
	case fit.HingeSide:
		a.X, b.X = -deep, -deep
	case fit.LatchSide:
		a.X = max(a.X, b.X) + deep
		b.X = a.X
	case fit.HeadSide:
		a.Y = max(a.Y, b.Y) + deep
		b.Y = a.Y
	case fit.FloorSide:
		a.Y, b.Y = -deep, -deep
	}
	return append(line, b, a, line[0])
}

// probe is a line right across the opening through a place along an edge.
func probe(d *door.Door, e fit.Edge, at float64) simple.LineString {
	if e.Upright() {
		mid := d.Leaf.Width / 2
		if e == fit.HingeSide {
			return lineOf(simple.XY{X: -500, Y: at}, simple.XY{X: mid, Y: at})
		}
		return lineOf(simple.XY{X: mid, Y: at}, simple.XY{X: 2000, Y: at})
	}
	if e == fit.FloorSide {
		return lineOf(simple.XY{X: at, Y: -500}, simple.XY{X: at, Y: 1000})
	}
	return lineOf(simple.XY{X: at, Y: 1000}, simple.XY{X: at, Y: 3000})
}

// signed is the gap along a probe line, by intersecting it with the leaf and with
// the frame's face.
func signed(t *testing.T, d *door.Door, e fit.Edge, at float64, leaf simple.Geometry) float64 {
	t.Helper()
	p := probe(d, e, at).AsGeometry()
	reach := func(g simple.Geometry) simple.Envelope {
		cut, err := simple.Intersection(p, g)
		if err != nil || cut.IsEmpty() {
			t.Fatalf("probe at %v meets nothing: %v", at, err)
		}
		return cut.Envelope()
	}
	lo, hi, _ := reach(leaf).MinMaxXYs()
	on, _, _ := reach(lineOf(frameLine(d, e, at-1, at+1)...).AsGeometry()).MinMaxXYs()
	switch e {
	case fit.HingeSide:
		return lo.X - on.X
	case fit.LatchSide:
		return on.X - hi.X
	case fit.HeadSide:
		return on.Y - hi.Y
	}
	return lo.Y - on.Y
}

// plainCourse is the gap of a flat leaf on one edge, by the fit. Over the floor it is that
// of the knuckle-face arris, which lies in the plane z = 0.
func plainCourse(f *fit.Fit, e fit.Edge) fit.Gap {
	if e == fit.FloorSide {
		return f.Shown[e]
	}
	return f.Gaps[e]
}

// binding is the area of the part of a course below zero, over a stretch of it.
func binding(c fit.Curve, lo, hi float64) float64 {
	var area float64
	for _, b := range c.Below(0, nil) {
		for _, p := range c.Pieces {
			from, to := max(lo, b.Lo, p.Lo), min(hi, b.Hi, p.Hi)
			if from < to { // exact for a quadratic
				area -= (to - from) / 6 * (p.At(from) + 4*p.At((from+to)/2) + p.At(to))
			}
		}
	}
	return area
}

// TestGapsAgainstPolygons finds the gaps and overlaps of flat doors with the library.
func TestGapsAgainstPolygons(t *testing.T) {
	for e := range fit.Edges {
		t.Run(edgeNames[e], func(t *testing.T) {
			t.Parallel()
			var f fit.Fit
			bound := 0
			for n := range polygonDoors {
				d := flatDoor(n)
				fit.Evaluate(&f, &d)
				againstPolygons(t, &f, &d, e, n, &bound)
				if t.Failed() {
					t.Fatalf("flat door %d of seed %d", n, randomSeed)
				}
			}
			if bound < polygonDoors/20 || bound > polygonDoors*19/20 {
				t.Errorf("%d of %d doors bind: too one-sided a test", bound, polygonDoors)
			}
		})
	}
}

func againstPolygons(t *testing.T, f *fit.Fit, d *door.Door, e fit.Edge, n int, bound *int) {
	near(t, "closed angle over 1 m", 1000*float64(f.Closed), 0, exactly)
	o := outlineOf(d)
	leaf := polygonOf(t, o.ring)
	course := plainCourse(f, e)
	own := map[fit.Edge][]simple.XY{fit.HingeSide: o.hanging, fit.LatchSide: o.closing, fit.HeadSide: o.top, fit.FloorSide: o.lower}[e]
	along := func(p simple.XY) float64 {
		if e.Upright() {
			return p.Y
		}
		return p.X
	}
	lo, hi := along(own[0]), along(own[len(own)-1])
	near(t, "lower end", course.Range().Lo, lo, 1e-8)
	near(t, "upper end", course.Range().Hi, hi, 1e-8)

	// The overlap's area is the integral of the gap below zero, between the edge's ends and
	// clear of what the edges round the corner cut off.
	inLo, inHi := lo, hi
	before, after := o.lower, o.top
	if !e.Upright() {
		before, after = o.hanging, o.closing
	}
	for _, p := range before {
		inLo = max(inLo, along(p))
	}
	for _, p := range after {
		inHi = min(inHi, along(p))
	}
	cut, err := simple.Intersection(leaf, polygonOf(t, solid(d, e, inLo, inHi)))
	if err != nil {
		t.Fatalf("no intersection: %v", err)
	}
	near(t, "area of the overlap", binding(course.Curve, inLo, inHi), cut.Area(), 1e-5)

	// Clear of each other, the straight distance between outline and face is the gap at
	// the nearest point taken square to the face: exact where one straight face runs past both ends.
	if course.Least < 0 {
		*bound++
	} else if straight := e != fit.FloorSide && len(faceOf(d, e)) <= 2; straight {
		face := frameLine(d, e, lo-400, hi+400)
		dist, _ := simple.Distance(leaf, lineOf(face...).AsGeometry())
		a, b := face[0], face[len(face)-1]
		run, all := along(b)-along(a), math.Sqrt((b.X-a.X)*(b.X-a.X)+(b.Y-a.Y)*(b.Y-a.Y))
		near(t, "distance of leaf and face", course.Least*run/all, dist, 1e-7)
	}

	// Piece by piece straight, a gap has its extremes at kinks of leaf or face: probed
	// there, on every tenth door, they are the least and the most.
	if n%10 != 0 {
		return
	}
	least, most := math.Inf(1), math.Inf(-1)
	var kinks []float64
	for _, p := range append(frameLine(d, e, lo, hi), own...) {
		kinks = append(kinks, along(p))
	}
	for _, at := range kinks {
		at = min(max(at, lo+1e-7), hi-1e-7) // the very corner may miss the leaf by rounding
		g := signed(t, d, e, at, leaf)
		near(t, "gap along the probe", course.At(at), g, 1e-6)
		least, most = min(least, g), max(most, g)
	}
	near(t, "least", course.Least, least, 1e-6)
	near(t, "most", course.Most, most, 1e-6)
}
