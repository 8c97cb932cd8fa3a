package trim_test

import (
	"math"
	"testing"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/trim"
)

// A threshold under a level floor: the closed gap falls by its height, and the
// floor in front of it is what it was.
func TestThresholdLetIn(t *testing.T) {
	p, done := doneTo(t, caseOne(), trim.Move{Kind: trim.Threshold, Cover: 4, Wide: 60})
	f := fitOf(p)
	is(t, "gap over the threshold", f.Gaps[fit.FloorSide].Least, 2, 1e-9)
	fl := &p.Door.Floor
	is(t, "top at the hinge", fl.At(20, 0), 4, 0)
	is(t, "top at the toe", fl.At(790, 0), 4, 0)
	is(t, "behind", fl.At(790, -40), 4, 0)
	is(t, "in front of the toe", fl.At(793.73, 60.1), 0, 1e-9)
	is(t, "half way in front of the toe", fl.At(795.4, 30), 2, 0.01) // falls off straight
	is(t, "open", fl.At(10, 700), 0, 0)
	if !done.Frame {
		t.Errorf("%+v", done)
	}
	if _, _, why := trim.Do(p, trim.Move{Kind: trim.Threshold, Cover: 4, Wide: 60}); why == nil || why.About != trim.TooThin {
		t.Errorf("one no higher than what is there: %+v", why)
	}
}

// A measured floor keeps its heights beyond the threshold and where it stood higher.
func TestThresholdOnAMeasuredFloor(t *testing.T) {
	p := caseOne()
	p.Door.Floor = door.Floor{
		Radii:   []float64{0, 400, 800},
		Angles:  []geom.Angle{0, 2 * geom.Degree, 30 * geom.Degree, 90 * geom.Degree},
		Heights: [][]float64{{0, 0, -3}, {0, 1, -3}, {0, 2, -1}, {0, 8, 1}},
	}
	was := p.Door.Clone().Floor
	q, _ := doneTo(t, p, trim.Move{Kind: trim.Threshold, Cover: 3, Wide: 60})
	fl := &q.Door.Floor
	for _, r := range []float64{0, 100, 400, 650, 800, 900} {
		is(t, "top", fl.Polar(r, 0), 3, 1e-12)
		for _, deg := range []float64{4.5, 10, 30, 50, 90, 120} { // asin(60/796) = 4.32°
			a := geom.Angle(deg) * geom.Degree
			is(t, "floor beyond", fl.Polar(r, a), was.Polar(r, a), 1e-9)
		}
	}
	past := geom.Angle(math.Asin(60 / 796.0))
	is(t, "half way down", fl.Polar(800, past/2), (3+was.Polar(800, past))/2, 1e-9)
	q, _ = doneTo(t, p, trim.Move{Kind: trim.Threshold, Cover: -1, Wide: 60})
	is(t, "where it stood higher", q.Door.Floor.Polar(100, 0), 0, 0)
	is(t, "where it stood lower", q.Door.Floor.Polar(800, 0), -1, 0)
}

// A covering goes over the whole floor, or up to a threshold.
func TestCovered(t *testing.T) {
	m := trim.Move{Kind: trim.Undercut, Edge: door.FloorSide, First: 10, Last: 10, Cover: 8}
	p, done := doneTo(t, caseOne(), m)
	f := fitOf(p)
	is(t, "closed", f.Gaps[fit.FloorSide].Least, 6+10-8, 1e-9)
	is(t, "open", f.Swing[fit.FloorSide].Least, 6+10-8, 1e-9)
	is(t, "off the foot", done.Off, 10*792, 1e-6)

	p = caseOne()
	p.Door.Floor = door.Floor{Radii: []float64{0}, Angles: []geom.Angle{0, 1 * geom.Degree}, Heights: [][]float64{{3}, {0}}}
	q, _ := doneTo(t, p, m)
	f = fitOf(q)
	is(t, "over the threshold", f.Gaps[fit.FloorSide].Least, 6+10-3, 1e-9)
	is(t, "over the covering", q.Door.Floor.At(500, 500), 8, 0)
	is(t, "clearance", f.Swing[fit.FloorSide].Least, 6+10-8, 1e-9)

	p = caseOne() // a floor that only falls away is covered at angle 0 too
	p.Door.Floor = door.Floor{Radii: []float64{0, 800}, Angles: []geom.Angle{0, 90 * geom.Degree}, Heights: [][]float64{{0, 0}, {0, -5}}}
	q, _ = doneTo(t, p, m)
	is(t, "covered under the leaf", q.Door.Floor.At(500, 0), 8, 0)

	p = caseOne() // and a level one, however it is said
	p.Door.Floor = door.Floor{Radii: []float64{0}, Angles: []geom.Angle{0, 20 * geom.Degree}, Heights: [][]float64{{1}, {1}}}
	q, _ = doneTo(t, p, m)
	is(t, "covered under the leaf", q.Door.Floor.At(500, 0), 9, 0)

	p.Door.Floor = door.Floor{} // nothing said: level at 0
	q, _ = doneTo(t, p, m)
	is(t, "covered", q.Door.Floor.At(300, 300), 8, 0)

	// a threshold first and a covering then, as it is done
	q, _ = doneTo(t, caseOne(), trim.Move{Kind: trim.Threshold, Cover: 12, Wide: 100}, m)
	is(t, "threshold stays", q.Door.Floor.At(500, 0), 12, 0)
	is(t, "covering beside it", q.Door.Floor.At(500, 500), 8, 0)
	if g := fitOf(q).Gaps[fit.FloorSide].Least; math.Abs(g-4) > 1e-9 {
		t.Errorf("gap over the threshold %v", g)
	}
}
