package door_test

import (
	"strings"
	"testing"

	"leafwright/geom/door"
)

// An old panelled leaf has through tenons, 1½ in of haunch below the bottom rail's
// lower one (International Correspondence Schools, vol. 2 s. 36); half its top rail's
// width at most.
func TestOrdinaryJoints(t *testing.T) {
	a := door.Ordinary(door.Framed, 792, 1990)
	if a.Joints != (door.Joints{Kind: door.Through, Tenon: 50, Haunch: 38, Wedge: 10}) {
		t.Errorf("%+v", a.Joints)
	}
	for _, m := range []door.Make{door.Boarded, door.Flush} {
		if j := door.Ordinary(m, 792, 1990).Joints; j != (door.Joints{}) {
			t.Errorf("%s: %+v", m, j)
		}
	}
	for _, width := range []float64{200, 300, 450, 926, 1500} {
		for _, height := range []float64{300, 600, 1200, 2400, 3500} {
			a := door.Ordinary(door.Framed, width, height)
			leaf := door.Rectangle(width, height, 35)
			if faults := a.Check(&leaf); len(faults) > 0 {
				t.Errorf("%v by %v: %v", width, height, faults)
			}
			for i, r := range a.Rails {
				lo, hi := a.Tenon(i)
				if !(r.From <= lo && lo < hi && hi <= r.To) || !(a.Joints.Wedge < a.Joints.Haunch) || !(a.Joints.Tenon < a.HangingStile) {
					t.Errorf("%v by %v: rail %+v, tenon %v to %v, %+v", width, height, r, lo, hi, a.Joints)
				}
			}
		}
	}
}

// A tenon keeps its place in the timber when its rail is cut.
func TestTenonStays(t *testing.T) {
	a := door.Ordinary(door.Framed, 792, 1990)
	lo, _ := a.Tenon(0)
	_, hi := a.Tenon(2)
	midLo, midHi := a.Tenon(1)
	if lo != 38 || hi != 1952 || midLo != a.Rails[1].From || midHi != a.Rails[1].To {
		t.Errorf("tenons from %v, from %v to %v, to %v", lo, midLo, midHi, hi)
	}
	a.Rails[0].From, a.Joints.FootCut = 12, 12
	a.Rails[2].To, a.Joints.TopCut = 1985, 5
	if l, _ := a.Tenon(0); l != lo {
		t.Errorf("tenon from %v", l)
	}
	if _, h := a.Tenon(2); h != hi {
		t.Errorf("tenon to %v", h)
	}
	none := func() {
		for i := -1; i < 4; i++ {
			if lo, hi := a.Tenon(i); lo < hi {
				t.Errorf("%+v: tenon %d from %v to %v", a.Joints, i, lo, hi)
			}
		}
	}
	a.Joints.Kind = ""
	none()
	a.Joints.Kind, a.Make = door.Stub, door.Boarded
	none()
	leaf := door.Rectangle(800, 1990, 40)
	if hanging, closing := a.Inner(&leaf); hanging != 115 || closing != 800-115 {
		t.Errorf("stiles end at %v and %v", hanging, closing)
	}
}

func TestJointsChecked(t *testing.T) {
	a := door.Ordinary(door.Framed, 792, 1990)
	a.Joints = door.Joints{Kind: "nailed", Tenon: -1, Haunch: 500, Wedge: -2}
	var paths []string
	for _, f := range a.Check(nil) {
		paths = append(paths, f.Path)
	}
	if got := strings.Join(paths, " "); got != "leaf.joints.kind leaf.joints.tenon leaf.joints.haunch leaf.joints.wedge" {
		t.Error(got)
	}
}
