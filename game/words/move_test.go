package words

import (
	"strings"
	"testing"

	"leafwright/geom"
	"leafwright/geom/fit"
	"leafwright/geom/trim"
)

func speaker(r Region) *Speaker {
	return &Speaker{Lexicon: For(r), Hinges: 3, Rails: []string{"bottom", "", "top"}}
}

func TestMoves(t *testing.T) {
	for _, row := range []struct {
		region Region
		move   trim.Move
		says   string
	}{
		{UK, trim.Move{Kind: trim.Plane, Edge: fit.LatchSide, First: 2}, "Plane the closing edge: 2 mm at the foot, tapering to nothing at the top"},
		{US, trim.Move{Kind: trim.Plane, Edge: fit.LatchSide, Last: 2}, "Plane the lock edge: 2 mm at the top, tapering to nothing at the foot"},
		{UK, trim.Move{Kind: trim.Plane, Edge: fit.HeadSide, First: 1.5, Last: 1.5}, "Plane the top: 1.5 mm all along"},
		{UK, trim.Move{Kind: trim.Plane, Edge: fit.LatchSide, From: 300, To: 900, First: 1, Last: 1}, "Plane the closing edge: 1 mm from 300 mm to 900 mm up"},
		{UK, trim.Move{Kind: trim.Plane, Edge: fit.FloorSide, From: 400, To: 700, Last: 1}, "Plane the foot: 1 mm at 700 mm across from the hinge side, tapering to nothing at 400 mm across from the hinge side"},
		{UK, trim.Move{Kind: trim.Scribe, Edge: fit.FloorSide, Line: geom.Through(0, 1, 762, 3.5)}, "Plane the foot to the scribed line, 3.5 mm where it is most"},
		{UK, trim.Move{Kind: trim.Cut, Edge: fit.HeadSide, First: 3, Last: 10}, "Cut the top straight: 3 mm at the hinge corner, 10 mm at the latch corner"},
		{UK, trim.Move{Kind: trim.Undercut, First: 8, Last: 8, Cover: 12}, "Undercut the foot: 8 mm all along; a floor covering of 12 mm outside it"},
		{UK, trim.Move{Kind: trim.Bevel, Edge: fit.LatchSide, Angle: 3 * geom.Degree}, "Bevel the closing edge to 3.0°"},
		{UK, trim.Move{Kind: trim.Bevel, Edge: fit.LatchSide, Angle: -3 * geom.Degree}, "Bevel the closing edge backwards, 3.0° off square"},
		{US, trim.Move{Kind: trim.Ease, Edge: fit.HingeSide, Face: trim.Stop, First: 1}, "Ease the hinge edge's corner on the stop face by 1 mm"},
		{UK, trim.Move{Kind: trim.Splice, Edge: fit.HeadSide, Face: trim.Middle, First: 12, Last: 12, Stock: 38}, "Splice a 12 mm strip onto the top, from 38 mm stock, centred"},
		{UK, trim.Move{Kind: trim.Splice, Edge: fit.FloorSide, Face: trim.Knuckle, First: 10, Last: 14, Stock: 30, SetIn: 2, Hollow: 0.2}, "Splice a 10 to 14 mm strip onto the foot, from 30 mm stock, 2 mm behind the knuckle face; the faces to be glued meet to 0.2 mm"},
		{UK, trim.Move{Kind: trim.Splice, Edge: fit.HeadSide, First: 8, Last: 8, Stock: 38}, "Splice an 8 mm strip onto the top, from 38 mm stock"},
		{UK, trim.Move{Kind: trim.Splice, Edge: fit.HeadSide, First: 18.5, Last: 18.5, Stock: 38}, "Splice an 18.5 mm strip onto the top, from 38 mm stock"},
		{UK, trim.Move{Kind: trim.Splice, Edge: fit.HeadSide, First: 11, Last: 14, Stock: 38}, "Splice an 11 to 14 mm strip onto the top, from 38 mm stock"},
		{UK, trim.Move{Kind: trim.Reuse, Edge: fit.HeadSide}, "Glue the offcut to the top as a strip, the whole of it"},
		{UK, trim.Move{Kind: trim.Shift, Hinge: 1, On: trim.OnBoth, First: 2}, "Shift the top hinge up 2 mm on leaf and jamb"},
		{UK, trim.Move{Kind: trim.Shift, Hinge: 3, On: trim.OnJamb, First: -2}, "Shift the bottom hinge down 2 mm on the jamb"},
		{UK, trim.Move{Kind: trim.Raise, On: trim.OnLeaf, First: -3}, "Lower the leaf 3 mm, by the hinges' places higher on the leaf"},
		{UK, trim.Move{Kind: trim.Raise, On: trim.OnJamb, First: 3}, "Raise the leaf 3 mm, by the hinges' places higher on the jamb"},
		{UK, trim.Move{Kind: trim.Raise, On: trim.OnBoth, First: 3}, "Raise the leaf 3 mm, half by the hinges' places on the leaf, half by those on the jamb"},
		{UK, trim.Move{Kind: trim.Sink, Hinge: 1, On: trim.OnLeaf, First: 1}, "Sink the top hinge 1 mm deeper in the leaf"},
		{UK, trim.Move{Kind: trim.Pack, Hinge: 0, On: trim.OnLeaf, First: 3.25}, "Pack all hinges out 3.25 mm in the leaf"},
		{UK, trim.Move{Kind: trim.Pack, Hinge: 1, On: trim.OnJamb, First: -2.5}, "Take 2.5 mm of packing out from behind the top hinge in the jamb"},
		{UK, trim.Move{Kind: trim.Set, Hinge: 2, On: trim.OnJamb, First: -1}, "Set the middle hinge 1 mm farther in on the jamb"},
		// A plate let in farther from the knuckle face pushes the leaf out.
		{UK, trim.Move{Kind: trim.Set, Hinge: 3, On: trim.OnLeaf, First: 4}, "Let the plate of the bottom hinge in 4 mm farther back from the knuckle face of the leaf, which then stands that much farther out there"},
		{UK, trim.Move{Kind: trim.Set, Hinge: 3, On: trim.OnLeaf, First: -4}, "Let the plate of the bottom hinge in 4 mm farther forward to the knuckle face of the leaf, which then stands that much farther in there"},
		{UK, trim.Move{Kind: trim.Set, Hinge: 1, On: trim.OnBoth, First: 2}, "Set the top hinge 2 mm farther out, half by its place on the jamb, half by its plate's on the leaf"},
		{AU, trim.Move{Kind: trim.Rehinge, Closed: 7, Plates: 100, LeafGain: 2.5, JambGain: 3}, "Change all hinges for 100 mm ones, 7 mm thick folded shut, checked in 2.5 mm in the leaf and 3 mm in the jamb"},
		{US, trim.Move{Kind: trim.PlaneJamb, Edge: fit.LatchSide, First: 1, Last: 1}, "Plane the lock jamb: 1 mm all along"},
		{UK, trim.Move{Kind: trim.PackJamb, Edge: fit.HeadSide, First: 0, Last: 4}, "Pack the head out into the opening: 4 mm at the latch corner, tapering to nothing at the hinge corner"},
		{UK, trim.Move{Kind: trim.Restop, Edge: fit.LatchSide, First: -1, Last: 2}, "Move the stop at the latch jamb: 1 mm towards the leaf at the foot, 2 mm away from the leaf at the top"},
		{UK, trim.Move{Kind: trim.Restop, Edge: fit.HeadSide, Last: -2}, "Move the stop at the head: nothing at the hinge corner, 2 mm towards the leaf at the latch corner"},
		{UK, trim.Move{Kind: trim.Restop, Edge: fit.LatchSide, First: 2, Last: 2}, "Move the stop at the latch jamb 2 mm away from the leaf"},
		{UK, trim.Move{Kind: trim.Follow, Edge: fit.LatchSide, First: 2}, "Plant the stop at the latch jamb anew to follow the closed leaf, 2 mm off it"},
		{UK, trim.Move{Kind: trim.Threshold, Cover: 12, Wide: 90}, "Let in a threshold 12 mm high and 90 mm wide"},
	} {
		if got := speaker(row.region).Move(&row.move); got != row.says {
			t.Errorf("got  %s\nwant %s", got, row.says)
		}
	}
	inch := speaker(UK)
	inch.Length = func(mm float64) string { return "X" }
	m := trim.Move{Kind: trim.Sink, Hinge: 1, On: trim.OnLeaf, First: 1}
	if got := inch.Move(&m); got != "Sink the top hinge X deeper in the leaf" {
		t.Errorf("in the person's unit: %s", got)
	}
}

// Every kind of move and every care has words of its own.
func TestEveryMoveAndCareHasWords(t *testing.T) {
	s := speaker(UK)
	for _, spec := range trim.Kinds {
		if got := s.Move(&trim.Move{Kind: spec.Kind}); got == string(spec.Kind) || got == "" {
			t.Errorf("%s has no words", spec.Kind)
		}
	}
	for a := trim.Numbers; a <= trim.KeepOff; a++ {
		if got := s.Care(&trim.Care{About: a}); a != trim.Minded && (got == "It cannot be done" || strings.HasSuffix(got, ".")) {
			t.Errorf("care %d: %q", a, got)
		}
	}
}

func TestCares(t *testing.T) {
	for _, row := range []struct {
		care trim.Care
		says string
	}{
		{trim.Care{About: trim.IntoTenon, Member: trim.Member{Part: trim.Tenon, Index: 0}, Left: -4}, "Cuts 4 mm into the tenon of the bottom rail"},
		{trim.Care{About: trim.TooLittle, Member: trim.Member{Part: trim.Stile, Edge: fit.LatchSide}, Left: 31.5, Need: 40}, "Too little stays of the closing stile: 31.5 mm is left, 40 mm is wanted"},
		{trim.Care{About: trim.Slender, Member: trim.Member{Part: trim.Rail, Index: 2}, Left: 80, Need: 90}, "The top rail grows slender: 80 mm is left, 90 mm is wanted"},
		{trim.Care{About: trim.IntoLock, Member: trim.Member{Part: trim.LockCase}, Left: -1}, "Cuts 1 mm into the lock's case"},
		{trim.Care{About: trim.Crooked, Left: 0.8, Need: 0.3}, "The faces to be glued do not meet, 0.8 mm apart where 0.3 mm is the most: plane them straight first"},
		{trim.Care{About: trim.IntoHinge, Member: trim.Member{Part: trim.HingeSeat, Index: 2}, Left: -0.5}, "Cuts 0.5 mm into the seat of the bottom hinge"},
		{trim.Care{About: trim.GainShallow, Member: trim.Member{Part: trim.HingeSeat, Index: 0}, Left: 0.5, Need: 3.5}, "The recess of the top hinge is 0.5 mm deep then, where it was 3.5 mm: the gap there widens by what comes off. Cut it anew only where it is to stay"},
		{trim.Care{About: trim.KeepOff, Left: -2}, "The latch falls 2 mm: ease its keep or move it, and look that the bolt still reaches"},
		{trim.Care{About: trim.SolidStop, Member: trim.Member{Part: trim.StopMember, Edge: fit.LatchSide}}, "The stop at the latch jamb is worked out of the solid: plane it back where it goes away from the leaf, glue slips on it where it comes nearer"},
		{trim.Care{About: trim.WithoutMove, Member: trim.Member{Index: 1}}, "Move 2, on which this leans, is not made: look at this one's numbers anew"},
		{trim.Care{About: trim.NoAmount}, "Its amount is 0: it changes nothing"},
		{trim.Care{About: trim.IntoWedge, Member: trim.Member{Part: trim.Wedge, Index: 1}}, "Cuts into the wedge of the second rail's tenon"},
	} {
		if got := speaker(UK).Care(&row.care); got != row.says {
			t.Errorf("got  %s\nwant %s", got, row.says)
		}
	}
}

func TestDidAndMinutes(t *testing.T) {
	d := trim.Done{Off: 1714.5, Volume: 60007.5, Most: 4.5, Cuts: 1, Gains: []int{0, 2}, Strips: 1, Frame: true, Minutes: 33,
		Left: []trim.Left{{Member: trim.Member{Part: trim.Rail, Index: 2}, Before: 110, Now: 105.5}}}
	want := "4.5 mm off where it is most, 60 cm³ of the leaf goes; one strip glued on; recesses cut anew: the top hinge and the bottom hinge; the frame is touched; top rail 110 to 105.5 mm; about 35 min"
	if got := speaker(UK).Did(&d); got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
	for _, row := range []struct {
		l    trim.Left
		says string
	}{ // own before and now, the face before and now
		{trim.Left{Before: 115, Now: 95, FaceBefore: 115, FaceNow: 95}, "top rail 115 to 95 mm"},
		{trim.Left{Before: 95, Now: 95, FaceBefore: 95, FaceNow: 115}, "top rail stays 95 mm, 115 mm with the strip"},
		{trim.Left{Before: 95, Now: 95, FaceBefore: 115, FaceNow: 110}, "top rail stays 95 mm, 110 mm with the strip"},
		{trim.Left{Before: 115, Now: 95, FaceBefore: 115, FaceNow: 110}, "top rail 115 to 95 mm, 110 mm with the strip"},
		{trim.Left{Before: 95, Now: 90, FaceBefore: 115, FaceNow: 90}, "top rail 95 to 90 mm"},
	} {
		row.l.Member = trim.Member{Part: trim.Rail, Index: 2}
		if got := speaker(UK).Left(row.l); got != row.says {
			t.Errorf("got  %s\nwant %s", got, row.says)
		}
	}
	for min, want := range map[float64]string{0: "none", 1: "about 5 min", 52: "about 50 min", 119: "about 120 min", 150: "about 2.5 h", 480: "about 8 h"} {
		if got := Minutes(min); got != want {
			t.Errorf("%v: %s, want %s", min, got, want)
		}
	}
}
