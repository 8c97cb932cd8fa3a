package hardware

import (
	"testing"

	"leafwright/game"
	"leafwright/game/internal/demos"
	"leafwright/geom/door"
	"leafwright/geom/timber"
)

// One leaf has one mass: the cautions of a job, of its moves and of the leaf's own
// section call for two people on the same ground.
func TestOneMass(t *testing.T) {
	heavy := func(all []game.Caution) bool {
		for _, c := range all {
			if c.About == timber.HeavyLeaf {
				return true
			}
		}
		return false
	}
	jobs := demos.All(t)
	for i := range jobs {
		if _, _, err := jobs[i].Shapes(); err != nil {
			t.Fatal(err)
		}
	}
	for _, of := range []string{"", "oak", "western redcedar", "Douglas-fir"} {
		for _, thick := range []float64{30, 35, 40, 45, 54} {
			j := game.Blank(762, 1981, thick)
			j.Anatomy = door.Ordinary(door.Framed, 762, 1981)
			j.Anatomy.Timber = of
			jobs = append(jobs, j)
		}
	}
	saw := map[bool]int{}
	for i := range jobs {
		j := &jobs[i]
		found := j.Found()
		leaf := LeafIn(j, &found, timber.UK)
		want := leaf.Most > timber.TwoPeople
		saw[want]++
		step := game.MoveCautions(j, "plane")
		if a, b, c := heavy(game.Cautions(j)), heavy(step), heavy(Cautions(j, &found, &found, nil, timber.UK)); a != want || b != want || c != want {
			t.Errorf("%s %s %v mm, at most %.1f kg: two people %v, in the job's cautions %v, a move's %v, the leaf's %v", j.Name, j.Anatomy.Timber, j.Door.Leaf.Thickness, leaf.Most, want, a, b, c)
		}
	}
	if saw[true] == 0 || saw[false] == 0 {
		t.Errorf("too one-sided: %v", saw)
	}
}
