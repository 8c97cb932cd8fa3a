package fit_test

import (
	"fmt"
	"math"
	"testing"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fit"
)

// Case 3 again, its stop arris eased: leaf 792 × 40, pin 5 out, 794 from the pin. A line
// d behind the knuckle face and i in from the edge needs √((794 − i)² + (d + 5)² − 5²) − 794.
func TestEasedStopArrisNeedsLessToSwing(t *testing.T) {
	need := func(d, i float64) float64 { return math.Sqrt((794-i)*(794-i)+(d+5)*(d+5)-25) - 794 }
	for _, c := range []struct {
		name    string
		section door.Section
		want    float64
	}{
		// the arris 1 mm forward leads: √(794² + 44² − 5²) − 794 = 1.2025
		{"1 mm off", door.Section{StopEase: 1}, need(39, 0)},
		{"10 mm off", door.Section{StopEase: 10}, need(30, 0)},
		{"the knuckle arris, 1 mm off: no help", door.Section{KnuckleEase: 1}, need(40, 0)},
		{"strip 12 mm clear of the stop face", door.Section{StopBack: 12}, need(28, 0)},
		{"that strip eased too", door.Section{StopBack: 12, StopEase: 3}, need(25, 0)},
		{"chamfers that meet in a nose", door.Section{KnuckleBack: 10, StopBack: 10, KnuckleEase: 10, StopEase: 10}, need(20, 0)},
	} {
		t.Run(c.name, func(t *testing.T) {
			d := easy()
			d.Leaf.Sections[door.LatchSide] = c.section
			bothModels(t, d, func(t *testing.T, f figures) {
				near(t, "latch gap taken up by the swing", 4-f.swing(fit.LatchSide), c.want, slowly)
				near(t, "latch gap closed", f.gap(fit.LatchSide, 1000), 4, slowly)
			})
		})
	}
	near(t, "1 mm off, in figures", need(39, 0), 1.2025, 0.00005)
	// with a bevel besides: the line 39 behind stands 39·tan 1° back
	d := easy()
	d.Leaf.ClosingBevel = geom.Degree
	d.Leaf.Sections[door.LatchSide].StopEase = 1
	bothModels(t, d, func(t *testing.T, f figures) {
		back := 39 * math.Tan(math.Pi/180)
		near(t, "with a bevel of 1°", 4-f.swing(fit.LatchSide), need(39, back), slowly)
	})
}

// A square leaf closed flush in a square frame has the same gap on every line but for
// its inset; the eye sees the frontmost line, and the stop bears on the rearmost.
func TestSectionsOfASquareLeaf(t *testing.T) {
	d := easy() // gaps 4, 4, 4, 6; stops 2 behind the leaf
	for e := range d.Leaf.Sections {
		d.Leaf.Sections[e] = door.Section{KnuckleBack: 3, StopBack: 5, KnuckleEase: 2, StopEase: 4}
	}
	f := evaluated(d)
	for e, want := range [fit.Edges]float64{4, 4, 4, 6} {
		near(t, edgeNames[e]+" gap, least", f.Gaps[e].Least, want, exactly)
		near(t, edgeNames[e]+" gap, most", f.Gaps[e].Most, want, exactly)
		near(t, edgeNames[e]+" gap shown", f.Shown[e].Least, want+2, exactly)
		near(t, edgeNames[e]+" gap shown, most", f.Shown[e].Most, want+2, exactly)
	}
	for e := range f.Stops {
		near(t, edgeNames[e]+" stop gap", f.Stops[e].Least, 2+5, exactly)
	}
	for face, want := range []geom.Vec{{X: 4 + 792 - 2, Y: 6, Z: -3}, {X: 4 + 792 - 4, Y: 6, Z: -35}} {
		got := f.Arris(nil, fit.LatchSide, face, f.Closed)[0]
		near(t, fmt.Sprintf("foot of arris %d, from where it is", face), got.Sub(want).Len(), 0, exactly)
	}
	// the hanging edge of a leaf opened to 90° lies along z: nothing of it comes nearer
	// the latch jamb than its knuckle face did, and easing that arris changes nothing
	plain := evaluated(easy())
	near(t, "clear width", f.ClearWidth, plain.ClearWidth+5, exactly) // but the stop face's arris stands 5 back
}

// A beveled edge stands back with depth, and so a strip set back from the knuckle face
// by d shows d·tan β more gap.
func TestStripOnABevelledEdge(t *testing.T) {
	d := easy()
	d.Leaf.ClosingBevel = 3 * geom.Degree
	d.Leaf.Sections[door.LatchSide].KnuckleBack = 8
	bothModels(t, d, func(t *testing.T, f figures) {
		near(t, "latch gap", f.gap(fit.LatchSide, 1000), 4+8*math.Tan(3*math.Pi/180), slowly)
	})
}

// A strip that stands back from the stop face lets a leaf that its stop held go home.
func TestStripSetBackClearsTheStop(t *testing.T) {
	d := easy()
	d.Frame.PlantStops(40 - 2) // stop-bound by 2
	bothModels(t, d, func(t *testing.T, f figures) {
		if !f.bound {
			t.Error("not stop-bound, though the stop stands 2 mm into the leaf")
		}
	})
	d.Leaf.Sections[door.LatchSide].StopBack = 3
	d.Leaf.Sections[door.HeadSide].StopBack = 3
	bothModels(t, d, func(t *testing.T, f figures) {
		if f.bound {
			t.Errorf("stop-bound at %v, though the strips stand 1 mm clear of the stops", f.stop)
		}
	})
	f := evaluated(d)
	for e, want := range [3]float64{-2, 1, 1} { // nothing was done at the hinges
		near(t, edgeNames[e]+" stop gap", f.Stops[e].Least, want, exactly)
	}
}

// inside is how much nearer, in mm, an eased or thinner edge may come by the slight
// bends of edge and frame under a leaf that leans, which its two outer arrises do not
// show between them.
const inside = 0.01

// clearer fails unless every gap of a leaf is as wide as that of another, and no edge
// binds sooner. A floor that is not level may stand higher under an arris farther
// in, so both are held over a level one. With the pins behind the knuckle face the
// hanging edge comes nearest the jamb somewhere between its arrises, where a strip set
// back has one: its swing is left out there.
func clearer(t *testing.T, d *door.Door, got, than *fit.Fit) {
	t.Helper()
	behind := false
	for _, h := range d.Hinges {
		behind = behind || h.Pin < h.Proud
	}
	if got.StopBound || than.StopBound {
		return // another arris may come to rest on another place of the stop
	}
	for e := range fit.Edges {
		g, h := &got.Gaps[e], &than.Gaps[e]
		r := g.Range().Intersect(h.Range())
		for i := range 33 {
			at := r.Lo + r.Length()*float64(i)/32
			if g.At(at) < h.At(at)-inside {
				t.Errorf("%s: gap %v at %v, %v before", edgeNames[e], g.At(at), at, h.At(at))
			}
		}
		if (e != fit.HingeSide || !behind) && got.Swing[e].Least < than.Swing[e].Least-inside {
			t.Errorf("%s: %v through the swing, %v before", edgeNames[e], got.Swing[e].Least, than.Swing[e].Least)
		}
	}
	const face = 0.05 // the stop face may rise from the edge: 0.015 for each of 3 mm eased
	if got.ClearWidth < than.ClearWidth-face {
		t.Errorf("clear width %v, %v before", got.ClearWidth, than.ClearWidth)
	}
}

func TestEasingNeverNarrowsAGap(t *testing.T) {
	everyDoor(t, func(t *testing.T, d door.Door) {
		d.Floor = door.FlatFloor(0)
		for e := range d.Leaf.Sections {
			s := &d.Leaf.Sections[e]
			s.KnuckleEase, s.StopEase = 0, 0
		}
		before := evaluated(d)
		for _, ease := range []door.Section{{KnuckleEase: 2}, {StopEase: 2.5}, {KnuckleEase: 1, StopEase: 3}} {
			s := d.Clone()
			for e := range s.Leaf.Sections {
				k := &s.Leaf.Sections[e]
				k.KnuckleEase, k.StopEase = ease.KnuckleEase, ease.StopEase
			}
			clearer(t, &d, evaluated(s), before)
		}
	})
}

func TestThinnerStripNeverBindsSooner(t *testing.T) {
	everyDoor(t, func(t *testing.T, d door.Door) {
		d.Floor = door.FlatFloor(0)
		d.Leaf.Sections = [door.Edges]door.Section{}
		before := evaluated(d)
		for _, back := range []door.Section{{KnuckleBack: 6}, {StopBack: 7}, {KnuckleBack: 4, StopBack: 4}} {
			s := d.Clone()
			for e := range s.Leaf.Sections {
				s.Leaf.Sections[e] = back
			}
			after := evaluated(s)
			clearer(t, &d, after, before)
			if after.StopAngle > before.StopAngle+1e-9 {
				t.Errorf("%+v: held by the stop at %v, at %v before", back, after.StopAngle, before.StopAngle)
			}
			if before.StopBound || after.StopBound {
				continue
			}
			for e := range after.Stops { // z changes by the strip's stand over the cosine of a small lean
				g, h := &after.Stops[e], &before.Stops[e]
				r := g.Range().Intersect(h.Range())
				for i := range 9 {
					at := r.Lo + r.Length()*float64(i)/8
					near(t, edgeNames[e]+" stop gap grown", g.At(at)-h.At(at), back.StopBack, 0.02*back.StopBack+exactly)
				}
			}
		}
	})
}
