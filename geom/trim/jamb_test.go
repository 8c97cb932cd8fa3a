package trim_test

import (
	"math"
	"testing"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/trim"
)

// Planing the hinge jamb leaves the leaf and the pins where they were, as long as
// the gains last, and opens the gap by what is off.
func TestHingeJambPlaned(t *testing.T) {
	before := fitOf(caseOne())
	p, done := doneTo(t, caseOne(), trim.Move{Kind: trim.PlaneJamb, Edge: door.HingeSide, First: 1.5, Last: 0.5})
	f := fitOf(p)
	if d := f.Pose.Origin.Sub(before.Pose.Origin).Len() + f.Axis.At.Sub(before.Axis.At).Len(); d > 1e-9 {
		t.Errorf("leaf and pins moved by %v", d)
	}
	g := f.Gaps[fit.HingeSide]
	is(t, "gap at the foot", g.At(0)-float64(0), 4+1.5-6.0/2000, 1e-9) // the leaf's foot hangs at 6
	is(t, "gap half way", g.At(1000), 4+1, 1e-9)
	is(t, "gain at the bottom hinge", p.Door.Hinges[1].JambGain, 2-(1.5-256.0/2000), 1e-9)
	if !done.Frame || !minds(done, trim.GainShallow) || done.Off != 0 {
		t.Errorf("%+v", done)
	}
	// past the gains' floors the hinges' seats are planed too, and the leaf comes along
	p, _ = doneTo(t, caseOne(), trim.Move{Kind: trim.PlaneJamb, Edge: door.HingeSide, First: 3, Last: 3})
	f = fitOf(p)
	is(t, "gain left", p.Door.Hinges[0].JambGain, 0, 0)
	is(t, "hinge gap", f.Gaps[fit.HingeSide].Least, 6, 1e-9)
	is(t, "latch gap", f.Gaps[fit.LatchSide].Least, 5, 1e-9)
}

// A hinge jamb packed out takes hinges and leaf with it.
func TestJambsPacked(t *testing.T) {
	p, done := doneTo(t, caseOne(), trim.Move{Kind: trim.PackJamb, Edge: door.HingeSide, First: 2, Last: 2})
	f := fitOf(p)
	is(t, "hinge gap", f.Gaps[fit.HingeSide].Least, 4, 1e-9)
	is(t, "latch gap", f.Gaps[fit.LatchSide].Least, 2, 1e-9)
	if p.Door.Hinges[0].JambGain != 2 || !done.Frame || len(done.Gains) != 0 {
		t.Errorf("%+v, %+v", p.Door.Hinges[0], done)
	}
	p, _ = doneTo(t, caseOne(), trim.Move{Kind: trim.PackJamb, Edge: door.LatchSide, First: 0, Last: 3})
	g := fitOf(p).Gaps[fit.LatchSide]
	is(t, "latch gap at half height", g.At(1000), 2.5, 1e-9)
	p, _ = doneTo(t, caseOne(), trim.Move{Kind: trim.PackJamb, Edge: door.HeadSide, First: 1, Last: 3})
	g = fitOf(p).Gaps[fit.HeadSide]
	is(t, "head gap half way", g.At(400), 2, 1e-9)
}

// A jamb planed and then packed out by as much is where it was, whatever its shape.
func TestPlanedAndPackedAgain(t *testing.T) {
	for n := range 200 {
		p := randomPiece(n)
		for _, e := range []door.Edge{door.LatchSide, door.HeadSide} {
			first, last := float64(1+n%7)/2, float64(n%5)/2
			q, _, why := trim.Do(p, trim.Move{Kind: trim.PlaneJamb, Edge: e, First: first, Last: last})
			if why != nil {
				t.Fatalf("%d: %+v", n, why)
			}
			if q, _, why = trim.Do(q, trim.Move{Kind: trim.PackJamb, Edge: e, First: first, Last: last}); why != nil {
				t.Fatalf("%d: %+v", n, why)
			}
			was, now := p.Door.Frame.LatchJamb, q.Door.Frame.LatchJamb
			if e == door.HeadSide {
				was, now = p.Door.Frame.Head, q.Door.Frame.Head
			}
			for _, s := range append(append(geom.Profile(nil), was...), now...) {
				// the corner the taper is laid between is where the jamb stands at the
				// time: a head planed at an angle moves it by microns
				if d := math.Abs(was.At(s.At) - now.At(s.At)); d > 2e-3 {
					t.Fatalf("%d, edge %d: %v off at %v", n, e, d, s.At)
				}
			}
		}
	}
}

// A jamb that is out of the straight keeps its shape under an even shaving.
func TestPlanedJambKeepsItsShape(t *testing.T) {
	p := caseOne()
	p.Door.Frame.LatchJamb = geom.Through(0, 800, 700, 798, 2000, 801)
	q, _ := doneTo(t, p, trim.Move{Kind: trim.PlaneJamb, Edge: door.LatchSide, First: 2, Last: 2})
	for i, s := range q.Door.Frame.LatchJamb {
		is(t, "jamb", s.Value, p.Door.Frame.LatchJamb[i].Value+2, 0)
	}
	for _, e := range []door.Edge{door.FloorSide, door.Edges, -1} {
		for _, k := range []trim.Kind{trim.PlaneJamb, trim.PackJamb, trim.Restop, trim.Follow} {
			if _, _, why := trim.Do(p, trim.Move{Kind: k, Edge: e, First: 1, Last: 1}); why == nil || !why.About.Forbids() {
				t.Errorf("%v on edge %d: %+v", k, e, why)
			}
		}
	}
}
