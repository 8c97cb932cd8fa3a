package game

import (
	"math"
	"strings"
	"testing"

	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
)

// sevenRead is a job of the least that must be read.
const sevenRead = `{"leafwright": 1, %s"readings": [
	{"kind": "opening_width", "at": 1000, "value": 767}, {"kind": "opening_height", "at": 385, "value": 1995},
	{"kind": "leaf_width", "at": 1000, "value": 762}, {"kind": "leaf_height", "at": 380, "value": 1981}, {"kind": "leaf_thickness", "value": 40},
	{"kind": "hinge_on_leaf", "hinge": 1, "value": 1800}, {"kind": "hinge_on_leaf", "hinge": 2, "value": 200}]}`

func seven(t *testing.T, more string) Job {
	t.Helper()
	j, err := Parse([]byte(strings.Replace(sevenRead, "%s", more, 1)))
	if err != nil {
		t.Fatal(err)
	}
	return j
}

// A leaf that was never hung is placed for the gaps the job wants, whichever those are
// and whenever they are changed; nothing then is hung too low or let in too deep.
func TestLeafOnTrestlesHangsAsTheJobWants(t *testing.T) {
	for _, preset := range []string{"finished", "bare"} {
		j := seven(t, `"wanted": {"preset": "`+preset+`", "floor": {"least": 5, "target": 7, "most": 30}}, `)
		hangs := func(j *Job) {
			t.Helper()
			stands := j.Stands()
			w := j.WantedToday(&stands)
			var f fit.Fit
			fit.Evaluate(&f, &stands.Door)
			for _, e := range []fit.Edge{fit.HingeSide, fit.HeadSide} {
				if g := f.Gaps[e]; math.Abs(g.Least-w.Gaps[e].Target) > 0.03 {
					t.Errorf("%s: edge %v has %.2f, and %.2f is wanted", preset, e, g.Least, w.Gaps[e].Target)
				}
			}
			for _, x := range judge.Findings(&f, &stands.Door, &w) {
				for _, c := range x.Causes {
					if c.Departure == judge.HungHigh || c.Departure == judge.GainsAll {
						t.Errorf("%s: %s is blamed, which nobody has cut", preset, c.Departure)
					}
				}
			}
		}
		hangs(&j)
		more, err := Form{}.Set(j, "paint.leaf.to_come", "3")
		if err != nil {
			t.Fatal(err)
		}
		hangs(&more)
		if more, err = (Form{}).Set(j, "wanted.head.target", tidy(j.Wanted.Gaps[fit.HeadSide].Target+0.2)); err != nil {
			t.Fatal(err)
		}
		hangs(&more)
	}
}

// What is not cut yet is not cut anew: no plan has a gain for it, and none moves the
// hinges on the leaf, where they are cut.
func TestWhatIsNotCutIsNotCutAnew(t *testing.T) {
	j := seven(t, "")
	a := Advice(&j, AdviceWishes{})
	if len(a.Plans) == 0 && !a.Good {
		t.Skip("no plan to look at")
	}
	for i := range a.Plans {
		if n := a.Plans[i].Cost.Gains; n != 0 {
			t.Errorf("plan %d cuts %d gains anew: %v", i, n, a.Plans[i].Moves)
		}
	}
}

// A leaf that is measured and of which nothing says how it is made is framed: its joints
// are looked after.
func TestMeasuredLeafIsFramed(t *testing.T) {
	if j := seven(t, ""); j.Anatomy.Make != door.Framed || len(j.Anatomy.Rails) == 0 || MembersTaken(&j) == "" {
		t.Errorf("it is %s with %d rails; said %q", j.Anatomy.Make, len(j.Anatomy.Rails), MembersTaken(&j))
	}
	flush := seven(t, `"leaf": {"make": "flush"}, `)
	if flush.Anatomy.Make != door.Flush || MembersTaken(&flush) != "" {
		t.Errorf("said to be flush it is %s; said %q", flush.Anatomy.Make, MembersTaken(&flush))
	}
	again, err := Parse(Encode(flush))
	if err != nil || again.Anatomy.Make != door.Flush {
		t.Errorf("written and read again it is %s, %v", again.Anatomy.Make, err)
	}
	if own := Unmeasured(Blank(762, 1981, 40)); own.Anatomy.Make != door.Framed || own.Anatomy.HangingStile == 0 {
		t.Errorf("one's own begins as %s", own.Anatomy.Make)
	}
}

// The door was read in the month the job says, or in the one month its meter was read
// in; the meter's reading of that month is its moisture then.
func TestMonthItWasReadIn(t *testing.T) {
	for _, c := range []struct {
		more  string
		month int
		meter float64
	}{
		{"", -1, 0},
		{`"meter": {"july": 10.5}, `, 6, 10.5},
		{`"meter": {"july": 10.5, "march": 9}, `, -1, 0},
		{`"house": {"month": "march"}, `, 2, 0},
		{`"house": {"month": "march"}, "meter": {"july": 10.5}, `, 2, 0},
		{`"house": {"month": "march"}, "meter": {"july": 10.5, "march": 9}, `, 2, 9},
	} {
		j := seven(t, c.more)
		if w := WhereOf(&j); w.Month != c.month || w.Meter != c.meter {
			t.Errorf("%s: month %d, meter %g; want %d, %g", c.more, w.Month, w.Meter, c.month, c.meter)
		}
	}
}
