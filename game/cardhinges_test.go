package game

import (
	"testing"

	"leafwright/geom/survey"
)

func hingePrompts(j Job) (n int) {
	for _, p := range (Form{}).Card(j, nil) {
		if p.Reading.Kind == survey.HingeOnLeaf {
			n++
		}
	}
	return n
}

func TestHowManyHinges(t *testing.T) {
	fm := Form{}
	set := func(j Job, path, text string) Job {
		t.Helper()
		j, err := fm.Set(j, path, text)
		if err != nil {
			t.Fatal(err)
		}
		return j
	}
	j := must(t, leastRead) // top and bottom are read
	if n := hingePrompts(j); n != 2 {
		t.Fatalf("%d hinges asked after", n)
	}
	low := 0.0
	for _, r := range j.Readings {
		if r.Hinge == 2 {
			low = r.Value.MM
		}
	}
	three := set(j, HingesPath, "3")
	if n := hingePrompts(three); n != 3 || three.HingesAsked() != 3 {
		t.Errorf("%d hinges asked after", n)
	}
	if p := prompted(t, fm, three, "card.hinge_on_leaf.3.1"); p.Reading.Value.MM != low {
		t.Errorf("the bottom hinge's reading is now %+v", p.Reading)
	}
	three = set(three, "card.hinge_on_leaf.2.1", "1000")
	if _, _, err := three.Shapes(); err != nil || len(three.Door.Hinges) != 3 {
		t.Errorf("%v, %d hinges", err, len(three.Door.Hinges))
	}
	if got, err := fm.Set(three, HingesPath, "2"); err == nil || !alike(got, three) {
		t.Errorf("a hinge that was read is dropped: %v", err)
	}
	back := set(set(three, "card.hinge_on_leaf.2.1", ""), HingesPath, "2")
	if !alike(back, j) {
		t.Errorf("there and back: %+v", back.Readings)
	}

	fresh := set(Measure(Blank(762, 1981, 40)), HingesPath, "4")
	if n := hingePrompts(fresh); n != 4 {
		t.Errorf("%d hinges of an empty card", n)
	}
	if n := hingePrompts(set(fresh, HingesPath, "2")); n != 2 {
		t.Errorf("%d hinges after 4 and 2", n)
	}
	for _, bad := range []string{"", "1", "many", "70"} {
		if got, err := fm.Set(fresh, HingesPath, bad); err == nil || !alike(got, fresh) {
			t.Errorf("%q hinges: %v", bad, err)
		}
	}
	if _, err := fm.Set(must(t, plainest), HingesPath, "3"); err == nil {
		t.Error("a door with shapes of its own took a number of hinges")
	}
}
