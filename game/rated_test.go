package game

import (
	"fmt"
	"testing"

	"leafwright/geom/door"
	"leafwright/geom/judge"
	"leafwright/geom/timber"
	"leafwright/geom/trim"
)

// That a leaf is rated may be learned when some of it is planed already: what was done
// for keeps stays done, and nothing more comes off. A leaf held to a rated leaf's limits
// is treated as one.
func TestRatedAfterACut(t *testing.T) {
	sound := Blank(762, 1981, 44)
	sound.House.Climate, sound.House.Room, sound.Paint.Leaf.ToCome = timber.Maritime, timber.Heated, 3
	sound.Made = []trim.Move{{Kind: trim.Plane, Edge: door.LatchSide, First: 1, Last: 1}}
	sound.Options = []Option{{Name: "More", Moves: []trim.Move{{Kind: trim.Plane, Edge: door.LatchSide, First: 2, Last: 2}, {Kind: trim.Sink, Hinge: 1, On: trim.OnJamb, First: 0.5}}}}
	want := sound.Stands()
	for _, how := range []string{"its label", "its limits"} {
		j := sound
		if how == "its label" {
			j.Anatomy.Rated = true
		} else {
			for _, p := range Presets() {
				if p.Status == Inspection {
					j.WantedName = p.Name
				}
			}
		}
		if !Rated(&j) {
			t.Fatalf("%s: not rated", how)
		}
		is := j.Stands()
		if fmt.Sprint(is.Door) != fmt.Sprint(want.Door) || is.Steps[0].Why != nil {
			t.Errorf("%s: what was planed is there again: %+v", how, is.Steps[0].Why)
		}
		for _, tried := range []Tried{j.Try(0), j.Column(0).Tried, j.Compare()[2].Tried} {
			if w := tried.Steps[0].Why; w == nil || w.About != trim.Rated || tried.Steps[1].Why != nil {
				t.Errorf("%s: tried %+v", how, tried.Steps)
			}
		}
		if stands := j.Column(AsItStands); stands.Refused != 0 || fmt.Sprint(j.Compare()[1].Tried.Door) != fmt.Sprint(want.Door) {
			t.Errorf("%s: in a column it is there again", how)
		}
		tried := j.Try(0)
		if got := j.Change(0)(j.Door); fmt.Sprint(got) != fmt.Sprint(tried.Door) {
			t.Errorf("%s: the readings' door is another", how)
		}
		if j.WantedToday(&is) != j.Wanted || (j.Wanted == judge.Wanted{}) {
			t.Errorf("%s: gaps of our own to fit it to", how)
		}
		if _, err := j.Keepable(0); err == nil {
			t.Errorf("%s: more of it can be planed for keeps", how)
		}
	}
}
