package game

import (
	"testing"

	"leafwright/geom/survey"
	"leafwright/geom/trim"
)

// After a cut the card asks for the gaps anew, of the door as it stands; those read
// before keep their say, as read before the cut.
func TestCardAfterACut(t *testing.T) {
	job := demo(t, "9-ferry-house-feelers")
	gaps := func(j Job) (open, old int, path string) {
		for _, p := range (Form{}).Card(j, nil) {
			switch {
			case p.Reading.Kind != survey.GapRead:
			case p.Stage == Offered && p.Index < 0:
				open++
				path = p.Path
			case p.Stage == Others:
				old++
			}
		}
		return open, old, path
	}
	open, old, _ := gaps(job)
	job.Options = append(job.Options, Option{Name: "Trim", Moves: []trim.Move{{Kind: trim.Plane, Edge: 1, First: 1, Last: 1}}})
	cut, err := Form{}.Add(job, KeepPath(len(job.Options)-1))
	if err != nil {
		t.Fatal(err)
	}
	nowOpen, nowOld, path := gaps(cut)
	if nowOpen != open+nowOld-old || nowOld == old {
		t.Errorf("after the cut %d gaps are asked for and %d stand beside, before it %d and %d", nowOpen, nowOld, open, old)
	}
	read, err := Form{}.Set(cut, path, "2.5")
	if err != nil {
		t.Fatal(err)
	}
	last := read.Readings[len(read.Readings)-1]
	if last.After != 1 || last.Value.MM != 2.5 {
		t.Errorf("a gap read after the cut is kept as %+v", last)
	}
	for i := range job.Readings {
		if read.Readings[i] != job.Readings[i] {
			t.Errorf("reading %d was %+v and is %+v", i, job.Readings[i], read.Readings[i])
		}
	}
}
