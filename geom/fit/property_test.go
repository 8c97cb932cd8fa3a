package fit_test

import (
	"fmt"
	"math"
	"reflect"
	"testing"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fit"
)

// propertyDoors is how many random doors each property is tried on.
const propertyDoors = 500

// propertyDoor gives the n-th of them: one in five has eased arrises and thin strips.
func propertyDoor(n int) door.Door {
	source := randomSource(n)
	d := randomDoor(source)
	if n%5 == 4 {
		chance{source}.sections(&d)
	}
	return d
}

// everyDoor runs a check on each of the random doors and says which failed.
func everyDoor(t *testing.T, check func(t *testing.T, d door.Door)) {
	t.Helper()
	for n := range propertyDoors {
		if t.Failed() {
			t.Logf("the door before this one failed: number %d of seed %d", n-1, randomSeed)
			return
		}
		check(t, propertyDoor(n))
	}
	if t.Failed() {
		t.Logf("the last door failed: number %d of seed %d", propertyDoors-1, randomSeed)
	}
}

// number is one exported number of a fit and where it stands in it.
type number struct {
	where string
	value float64
}

// numbers gives every exported number of a value, in order.
func numbers(v any) []number {
	var all []number
	var walk func(where string, v reflect.Value)
	walk = func(where string, v reflect.Value) {
		switch v.Kind() {
		case reflect.Float64:
			all = append(all, number{where, v.Float()})
		case reflect.Bool:
			all = append(all, number{where, truth(v.Bool())})
		case reflect.Slice, reflect.Array:
			for i := range v.Len() {
				walk(fmt.Sprintf("%s[%d]", where, i), v.Index(i))
			}
		case reflect.Struct:
			for i := range v.NumField() {
				if v.Type().Field(i).IsExported() {
					walk(where+"."+v.Type().Field(i).Name, v.Field(i))
				}
			}
		}
	}
	walk("", reflect.ValueOf(v))
	return all
}

// sameBits fails unless two fits agree in every bit.
func sameBits(t *testing.T, got, want *fit.Fit) {
	t.Helper()
	g, w := numbers(*got), numbers(*want)
	if len(g) != len(w) {
		t.Errorf("%d numbers, want %d", len(g), len(w))
		return
	}
	for i := range g {
		if g[i].where != w[i].where || math.Float64bits(g[i].value) != math.Float64bits(w[i].value) {
			t.Errorf("%s is %v, want %s %v", g[i].where, g[i].value, w[i].where, w[i].value)
			return
		}
	}
}

// How near the courses of the gaps are laid, in mm: where other stations part a curve
// in other places, its extremes may move by so much. Jambs and head nearly exactly; the
// stops' curves bend a little with the leaf's face; the floor turns about its pole. In the swing
// a point whose path only just touches the frame's front edge, or a crease of the jamb, is
// closed in on from where the pieces end, and so those ends show.
const (
	laid      = 1e-7
	laidSwing = 2e-4
	laidStop  = 1e-4
	laidFloor = 0.002
)

// measure is a figure of a fit that does not hang on where the door is drawn, and how
// near it can be told.
type measure struct {
	what       string
	value, tol float64
}

// measures gives everything but places and courses.
func measures(f *fit.Fit) []measure {
	all := []measure{
		{"strain", f.Strain, exactly},
		{"closed, over 1 m", 1000 * float64(f.Closed), laid},
		{"latch angle, over 1 m", 1000 * float64(f.LatchAngle), laid},
		{"stop angle, over 1 m", 1000 * float64(f.StopAngle), laid},
		{"latch miss", f.LatchMiss, laid},
		{"clear width", f.ClearWidth, laid},
		{"clear to stop", f.ClearToStop, laid},
	}
	for e := range fit.Edges {
		name, tol := edgeNames[e], laid
		if e == fit.FloorSide {
			tol = laidFloor
		}
		all = append(all,
			measure{name + " gap, least", f.Gaps[e].Least, tol}, measure{name + " gap, most", f.Gaps[e].Most, tol},
			measure{name + " shown, least", f.Shown[e].Least, tol}, measure{name + " shown, most", f.Shown[e].Most, tol},
			measure{name + " swing", f.Swing[e].Least, max(tol, laidSwing)})
		if int(e) < len(f.Stops) {
			all = append(all, measure{name + " stop, least", f.Stops[e].Least, laidStop},
				measure{name + " stop, most", f.Stops[e].Most, laidStop})
		}
	}
	return all
}

// sameMeasures fails unless two fits agree in every measure.
func sameMeasures(t *testing.T, got, want *fit.Fit) {
	t.Helper()
	g, w := measures(got), measures(want)
	for i := range g {
		near(t, g[i].what, g[i].value, w[i].value, g[i].tol)
	}
}

// moved is the profile carried along by at and raised by value.
func moved(p geom.Profile, at, value float64) geom.Profile {
	q := make(geom.Profile, len(p))
	for i, s := range p {
		q[i] = geom.Station{At: s.At + at, Value: s.Value + value}
	}
	return q
}

func TestShiftingUpChangesNothing(t *testing.T) {
	const up = 256 // a power of two, so that little is lost by rounding
	everyDoor(t, func(t *testing.T, d door.Door) {
		before := evaluated(d)
		s := d.Clone()
		f := &s.Frame
		for _, p := range []*geom.Profile{
			&f.HingeJamb, &f.LatchJamb, &f.HingeFront, &f.LatchFront, &f.HingeStop, &f.LatchStop,
		} {
			*p = moved(*p, up, 0)
		}
		f.Head = moved(f.Head, 0, up)
		for i := range s.Hinges {
			s.Hinges[i].JambHeight += up
		}
		for _, row := range s.Floor.Heights {
			for i := range row {
				row[i] += up
			}
		}
		after := evaluated(s)
		sameMeasures(t, after, before)
		for e := range fit.Edges {
			shift := 0.0
			if e.Upright() {
				shift = up
			}
			near(t, edgeNames[e]+" lower end", after.Gaps[e].Range().Lo, before.Gaps[e].Range().Lo+shift, 1e-8)
			near(t, edgeNames[e]+" upper end", after.Gaps[e].Range().Hi, before.Gaps[e].Range().Hi+shift, 1e-8)
		}
	})
}

// split puts a station in the middle of each straight piece and one out on either
// end, where they change nothing.
func split(p geom.Profile) geom.Profile {
	switch len(p) {
	case 0:
		return geom.Level(0)
	case 1:
		return geom.Profile{{At: p[0].At - 300, Value: p[0].Value}, p[0], {At: p[0].At + 700, Value: p[0].Value}}
	}
	beyond := func(a, b geom.Station) geom.Station { // as far past b as a is before it
		return geom.Station{At: 2*b.At - a.At, Value: 2*b.Value - a.Value}
	}
	q := geom.Profile{beyond(p[1], p[0])}
	for i, s := range p {
		if i > 0 {
			q = append(q, geom.Station{At: (p[i-1].At + s.At) / 2, Value: (p[i-1].Value + s.Value) / 2})
		}
		q = append(q, s)
	}
	return append(q, beyond(p[len(p)-2], p[len(p)-1]))
}

// profiles gives every profile of a door.
func profiles(d *door.Door) []*geom.Profile {
	l, f := &d.Leaf, &d.Frame
	return []*geom.Profile{
		&l.Hanging, &l.Closing, &l.Top, &l.Bottom, &l.HangingFace, &l.ClosingFace,
		&f.HingeJamb, &f.LatchJamb, &f.Head, &f.HingeFront, &f.LatchFront, &f.HeadFront,
		&f.HingeStop, &f.LatchStop, &f.HeadStop,
	}
}

func TestRedundantStationsChangeNothing(t *testing.T) {
	everyDoor(t, func(t *testing.T, d door.Door) {
		s := d.Clone()
		for _, p := range profiles(&s) {
			*p = split(*p)
		}
		sameMeasures(t, evaluated(s), evaluated(d))
	})
}

func TestRedundantFloorReadingsChangeNothing(t *testing.T) {
	everyDoor(t, func(t *testing.T, d door.Door) {
		s := d.Clone()
		f := &s.Floor
		const half = 0.5
		if len(f.Radii) > 1 { // a radius half-way between the first two
			r := f.Radii[0] + half*(f.Radii[1]-f.Radii[0])
			f.Radii = append([]float64{f.Radii[0], r}, f.Radii[1:]...)
			for i, row := range f.Heights {
				f.Heights[i] = append([]float64{row[0], row[0] + half*(row[1]-row[0])}, row[1:]...)
			}
		}
		if len(f.Angles) > 1 { // and an angle
			row := make([]float64, len(f.Radii))
			for i := range row {
				row[i] = f.Heights[0][i] + half*(f.Heights[1][i]-f.Heights[0][i])
			}
			a := f.Angles[0] + half*(f.Angles[1]-f.Angles[0])
			f.Angles = append([]geom.Angle{f.Angles[0], a}, f.Angles[1:]...)
			f.Heights = append([][]float64{f.Heights[0], row}, f.Heights[1:]...)
		}
		sameMeasures(t, evaluated(s), evaluated(d))
	})
}

// Hinges between the outer two set nothing, in whatever order they stand.
func TestMiddleHingesSetNothing(t *testing.T) {
	everyDoor(t, func(t *testing.T, d door.Door) {
		s := d.Clone()
		n := len(s.Hinges)
		s.Hinges = []door.Hinge{s.Hinges[0], s.Hinges[n-1]}
		want := evaluated(s)
		sameBits(t, evaluated(d), want)
		if n == 4 {
			d.Hinges[1], d.Hinges[2] = d.Hinges[2], d.Hinges[1]
			sameBits(t, evaluated(d), want)
		}
	})
}

// Planing an edge by δ opens that gap by δ. The edge goes back by δ along the leaf's own u or v,
// which stands at a small angle to the world's x or y: within 1 part in 50, for
// a leaf that hangs no more than 30 mm in 1500 out of true. Besides, the latch comes home at
// a slightly other angle: the latch point moves δ along the face, which leans by no more than
// 0.1 to the plane, so the leaf turns by 0.1·δ/W and that moves an arris 60 mm
// behind the face by 60·0.1·δ/W, 0.02·δ for the narrowest leaf. The floor under an
// edge that moved may differ too, so the floor is levelled here.
func TestPlaningOpensTheGap(t *testing.T) {
	const by = 1.5
	for _, c := range []struct {
		edge  fit.Edge
		plane func(l *door.Leaf)
	}{
		{fit.LatchSide, func(l *door.Leaf) { l.Closing = l.Closing.Shift(-by) }},
		{fit.HeadSide, func(l *door.Leaf) { l.Top = l.Top.Shift(-by) }},
		{fit.FloorSide, func(l *door.Leaf) { l.Bottom = l.Bottom.Shift(by) }},
	} {
		t.Run(edgeNames[c.edge], func(t *testing.T) {
			everyDoor(t, func(t *testing.T, d door.Door) {
				d.Floor = door.FlatFloor(0)
				s := d.Clone()
				c.plane(&s.Leaf)
				before, after := evaluated(d), evaluated(s)
				if before.StopBound || after.StopBound {
					return // which stop holds it may change with the edge's length
				}
				g, h := before.Gaps[c.edge], after.Gaps[c.edge]
				r := g.Range().Intersect(h.Range())
				for i := range 9 {
					at := r.Lo + r.Length()*float64(i)/8
					near(t, fmt.Sprintf("gap opened at %.1f", at), h.At(at)-g.At(at), by, 0.06*by)
				}
				near(t, "least gap opened", h.Least-g.Least, by, 0.1*by)
			})
		})
	}
}

// Deeper gains, all by δ, bring the leaf δ nearer the hinge jamb: the gap there narrows by
// δ everywhere, but for what a latch that comes home at another angle turns.
func TestDeeperGainsNeverWidenTheHingeSide(t *testing.T) {
	const by = 0.8
	for _, c := range []struct {
		name   string
		deepen func(h *door.Hinge)
	}{
		{"in the leaf", func(h *door.Hinge) { h.LeafGain += by }},
		{"in the jamb", func(h *door.Hinge) { h.JambGain += by }},
		{"packer taken out of the leaf", func(h *door.Hinge) { h.LeafPacker -= by }},
		{"packer taken out of the jamb", func(h *door.Hinge) { h.JambPacker -= by }},
	} {
		t.Run(c.name, func(t *testing.T) {
			everyDoor(t, func(t *testing.T, d door.Door) {
				s := d.Clone()
				for i := range s.Hinges {
					c.deepen(&s.Hinges[i])
				}
				before, after := evaluated(d), evaluated(s)
				if before.StopBound || after.StopBound {
					return // the leaf rests elsewhere on its stops
				}
				g, h := before.Gaps[fit.HingeSide], after.Gaps[fit.HingeSide]
				r := g.Range().Intersect(h.Range())
				for i := range 9 {
					at := r.Lo + r.Length()*float64(i)/8
					near(t, fmt.Sprintf("hinge side narrowed at %.1f", at), g.At(at)-h.At(at), by, 0.05*by)
				}
			})
		})
	}
}

func TestSwingIsNeverClearerThanClosed(t *testing.T) {
	everyDoor(t, func(t *testing.T, d door.Door) {
		f := evaluated(d)
		for e := range fit.Edges {
			tol := laid
			if e == fit.FloorSide {
				tol = laidFloor
			}
			if f.Swing[e].Least > f.Gaps[e].Least+tol {
				t.Errorf("%s: %v through the swing, %v closed", edgeNames[e], f.Swing[e].Least, f.Gaps[e].Least)
			}
		}
	})
}

// Opening farther can only bring an edge nearer something.
func TestOpeningFartherNeverClears(t *testing.T) {
	everyDoor(t, func(t *testing.T, d door.Door) {
		s := d.Clone()
		s.Opens = d.Opens / 2
		far, near := evaluated(d), evaluated(s)
		for e := range fit.Edges {
			if far.Swing[e].Least > near.Swing[e].Least+laidSwing {
				t.Errorf("%s: %v opened to %v, %v opened half as far", edgeNames[e], far.Swing[e].Least, d.Opens.Degrees(), near.Swing[e].Least)
			}
		}
	})
}

// The same bits twice, into a fit that held another door, and with nothing of the
// door changed.
func TestEvaluatingAgainGivesTheSameBits(t *testing.T) {
	var dirty fit.Fit
	everyDoor(t, func(t *testing.T, d door.Door) {
		kept := d.Clone()
		fresh := evaluated(d)
		fit.Evaluate(&dirty, &d)
		sameBits(t, &dirty, fresh)
		fit.Evaluate(&dirty, &d)
		sameBits(t, &dirty, fresh)
		if !reflect.DeepEqual(d, kept) {
			t.Errorf("evaluating changed the door")
		}
	})
}

func TestEvaluatingAgainAllocatesNothing(t *testing.T) {
	var f fit.Fit
	for n := range 20 {
		d := propertyDoor(n)
		fit.Evaluate(&f, &d)
		if got := testing.AllocsPerRun(5, func() { fit.Evaluate(&f, &d) }); got != 0 {
			t.Errorf("%v allocations for door %d of seed %d", got, n, randomSeed)
		}
	}
}
