package trim_test

import (
	"testing"

	"leafwright/geom/trim"
)

// A flap let in 34 mm across a leaf of 40 keeps two thirds of it when it is moved towards
// the knuckle (common practice, no published source); the other way it loses nothing.
func TestSetLeavesTheFlapItsWood(t *testing.T) {
	for _, c := range []struct {
		on    trim.Part
		by    float64
		makes bool
	}{
		{trim.OnJamb, 11, true},
		{trim.OnJamb, 12, false},
		{trim.OnJamb, -9, true},
		{trim.OnLeaf, -11, true},
		{trim.OnLeaf, -12, false},
		{trim.OnLeaf, 14.5, true},
	} {
		_, _, why := trim.Do(caseOne(), trim.Move{Kind: trim.Set, Hinge: 1, On: c.on, First: c.by})
		if made := why == nil || !why.About.Forbids(); made != c.makes {
			t.Errorf("set by %v mm on the %s: made %v, %+v", c.by, c.on, made, why)
		}
		if !c.makes && (why.About != trim.TooLittle || why.Left != 22) {
			t.Errorf("set by %v mm on the %s: %+v, want 22 mm left of 34", c.by, c.on, why)
		}
	}
}
