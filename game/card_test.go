package game

import (
	"strings"
	"testing"

	"leafwright/game/measure"
	"leafwright/geom/survey"
)

func TestCardBeginsWithTheLeastSet(t *testing.T) {
	j := Measure(Blank(762, 1981, 40))
	fm := Form{}
	typed := map[survey.Kind]string{
		survey.OpeningWidth: "767", survey.OpeningHeight: "1996", survey.LeafWidth: "762", survey.LeafHeight: "1981",
		survey.LeafThickness: "40",
	}
	for n := 0; ; n++ {
		var open *Prompt
		card := fm.Card(j, nil)
		for i := range card {
			if card[i].Stage == Least && card[i].Index < 0 {
				open = &card[i]
				break
			}
		}
		_, _, err := j.Shapes()
		if open == nil {
			if err != nil {
				t.Fatalf("the least set is there, but %v", err)
			}
			break
		}
		if err == nil || n > 10 {
			t.Fatalf("after %d readings: %v, and %s asked for", n, err, open.Path)
		}
		text := typed[open.Reading.Kind]
		if open.Reading.Kind == survey.HingeOnLeaf {
			text = []string{"1791", "265"}[open.Reading.Hinge-1]
		}
		if j, err = fm.SetReading(j, *open, text); err != nil {
			t.Fatalf("%s = %s: %v", open.Path, text, err)
		}
	}
	sure := j.Sure(false)
	if sure == nil || !sure.HasNext {
		t.Fatal("nothing to measure next of a door hardly measured")
	}
	next := 0
	for _, p := range fm.Card(j, sure) {
		if p.Stage == Next {
			next++
			if p.Index >= 0 || p.Reading.Kind != sure.Next.Reading.Kind {
				t.Errorf("to measure next: %+v", p)
			}
		}
	}
	if next != 1 {
		t.Errorf("%d readings tell most", next)
	}
}

// Every prompt takes what is typed, shows it again under the same path, and lets go
// of it; walking through the whole card ends in a sound job.
func TestEveryPrompt(t *testing.T) {
	for _, fm := range []Form{{measure.MM}, {measure.Inch}} {
		door := Blank(762, 1981, 40)
		j := Measure(door)
		seen := map[string]bool{}
		paths := 0
		for _, p := range fm.Card(j, nil) {
			if seen[p.Path] || p.Path == "" || p.Index >= 0 || p.Value != "" || len(p.Picture.Marks) == 0 || !(p.Picture.Width > 0 && p.Picture.Height > 0) {
				t.Errorf("%+v", p)
			}
			seen[p.Path] = true
			paths++
			l := asTyped(survey.Expect(&door.Door, p.Reading.Survey()), fm.Units)
			if l.MM < 0 {
				l = measure.Length{MM: 0, Text: "0"}
			}
			next, err := fm.SetReading(j, p, l.Text)
			if err != nil {
				t.Fatalf("%s takes no %q: %v", p.Path, l.Text, err)
			}
			again := prompted(t, fm, next, p.Path)
			if again.Index != len(next.Readings)-1 || again.Value != ShowTyped(next.Readings[again.Index].Value, fm.Units) {
				t.Errorf("%s shows %q at %d after %q", p.Path, again.Value, again.Index, l.Text)
			}
			if gone, err := fm.SetReading(next, again, ""); err != nil || len(gone.Readings) != len(j.Readings) {
				t.Errorf("%s does not let go: %v", p.Path, err)
			}
			j = next
		}
		if paths < 60 {
			t.Errorf("only %d prompts", paths)
		}
		if _, _, err := j.Shapes(); err != nil {
			t.Error(err)
		}
		if back := must(t, string(Encode(j))); !alike(back, j) {
			t.Error("the whole card does not read back")
		}
	}
}

func prompted(t testing.TB, fm Form, j Job, path string) Prompt {
	t.Helper()
	for _, p := range fm.Card(j, nil) {
		if p.Path == path {
			return p
		}
	}
	t.Fatalf("no prompt %s", path)
	return Prompt{}
}

func TestWhatPromptsRefuse(t *testing.T) {
	measuredJob := must(t, leastRead)
	for _, row := range []struct {
		situation  string
		job        Job
		path, text string
		want       string
	}{
		{"out of range", measuredJob, "card.opening_width.1", "8130", "card.opening_width.1: 8130 is not between 200 and 1700; is it 813?"},
		{"no length", measuredJob, "card.leaf_gain.1.1", "deep", "card.leaf_gain.1.1: a length is wanted, like 797, 797.5, 79.7 cm, 31 3/8 or 2' 7 3/8\""},
		{"no such prompt", measuredJob, "card.roof.1", "1", "card.roof.1: there is no such field"},
		{"a door whose shapes were given by hand", must(t, plainest), "card.opening_width.1", "767", "card.opening_width.1: this door's shapes were given by hand: measure it anew first"},
	} {
		t.Run(row.situation, func(t *testing.T) {
			got, err := Form{}.Set(row.job, row.path, row.text)
			if err == nil || err.Error() != row.want {
				t.Errorf("%v, want %s", err, row.want)
			}
			if !alike(got, row.job) {
				t.Error("the job changed")
			}
		})
	}
}

// A reading somewhere else than the card would have it is still the card's, and
// keeps its place when it is wiped out.
func TestReadingsTakenElsewhere(t *testing.T) {
	j := must(t, swap(t, leastRead, `"opening_width", "at": 1000`, `"opening_width", "at": 870`))
	fm := Form{}
	p := prompted(t, fm, j, "card.opening_width.2")
	if p.Index != 0 || p.Reading.At.MM != 870 {
		t.Fatalf("%+v", p)
	}
	j, err := fm.SetReading(j, p, "")
	if err != nil || len(j.Readings) != 7 || !j.Readings[0].Off {
		t.Fatalf("%v, %+v", err, j.Readings[0])
	}
	j, err = fm.SetReading(j, p, "768")
	if err != nil || j.Readings[0].Off || j.Readings[0].Value.MM != 768 || j.Readings[0].At.MM != 870 {
		t.Errorf("%v, %+v", err, j.Readings[0])
	}
	// A second one at the same place is no prompt of the card's, but there to be changed.
	j.Readings = append(j.Readings, j.Readings[0], j.Readings[0], j.Readings[0])
	last := fm.Card(j, nil)
	own := last[len(last)-1]
	if own.Stage != Others || own.Path != "readings[9].value" {
		t.Errorf("%s, %v", own.Path, own.Stage)
	}
	if j, err = fm.SetReading(j, own, "769"); err != nil || j.Readings[9].Value.Text != "769" {
		t.Errorf("%v", err)
	}
	if j, err = fm.RemoveReading(j, 9); err != nil || len(j.Readings) != 9 {
		t.Errorf("%v", err)
	}
}

// A reading that does not fit is told of at its prompt.
func TestSuspectAtItsPrompt(t *testing.T) {
	first := `{"kind": "opening_width", "at": 1000, "value": 767},`
	j := must(t, swap(t, leastRead, first, first+first+strings.Replace(first, "767", "776", 1)))
	p := prompted(t, Form{}, j, "readings[2].value")
	if p.Judged == nil || p.Judged.State != survey.Suspect || len(p.Judged.Slips) == 0 || p.Judged.Slips[0].Kind != survey.Transposed {
		t.Errorf("%+v", p.Judged)
	}
	if fine := prompted(t, Form{}, j, "card.leaf_thickness.1"); fine.Judged == nil || fine.Judged.State != survey.Used {
		t.Errorf("%+v", fine.Judged)
	}
}

func TestStagesAreNamed(t *testing.T) {
	for s := Least; s <= Others; s++ {
		if strings.TrimSpace(s.String()) == "" {
			t.Errorf("stage %d", s)
		}
	}
}

// Figures changed round are found in what was typed, not in its millimetres.
func TestSlipsInInches(t *testing.T) {
	first := `{"kind": "opening_width", "at": 1000, "value": 767},`
	inch := strings.Replace(first, "767", `"31\""`, 1)
	j := must(t, swap(t, leastRead, first, inch+inch+strings.Replace(inch, "31", "13", 1)))
	all := j.Misfits()
	if len(all) != 1 || all[0].Readings[0] != 2 || len(all[0].Judged[0].Slips) == 0 {
		t.Fatalf("%+v", all)
	}
	if s := all[0].Judged[0].Slips[0]; s.Kind != survey.Transposed || s.Value != 31*25.4 {
		t.Errorf("%+v", s)
	}
}

// Where a prompt's reading is taken can be changed before and after it is read.
func TestPlacesOfPrompts(t *testing.T) {
	fm := Form{}
	j := must(t, leastRead)
	set := func(path, text string) {
		t.Helper()
		var err error
		if j, err = fm.Set(j, path, text); err != nil {
			t.Fatalf("%s = %q: %v", path, text, err)
		}
	}
	set("card.opening_width.2.at", "1100") // read
	if r := j.Readings[0]; r.At.Text != "1100" || r.Off {
		t.Errorf("%+v", r)
	}
	set("card.jamb_plumb.latch.1.to", "1500") // not read yet
	if r := j.Readings[len(j.Readings)-1]; r.Kind != survey.JambPlumb || r.To.Text != "1500" || !r.Off {
		t.Errorf("%+v", r)
	}
	set("card.jamb_plumb.latch.1", "-2")
	if r := j.Readings[len(j.Readings)-1]; r.To.Text != "1500" || r.Off || r.Value.Text != "-2" || len(j.Readings) != 8 {
		t.Errorf("%+v", r)
	}
	for _, row := range [][3]string{
		{"card.opening_width.2.at", "9999", "card.opening_width.2.at: 9999 is not between -100 and 3700; is it 999.9?"},
		{"card.opening_width.2.at", "", "card.opening_width.2.at: missing; the place is wanted for opening_width"},
		{"card.opening_width.2.at", "up there", "card.opening_width.2.at: a length is wanted, like 797, 797.5, 79.7 cm, 31 3/8 or 2' 7 3/8\""},
		{"card.opening_width.2.note", "x", "card.opening_width.2.note: there is no such field"},
		{"card.roof.2.at", "1", "card.roof.2.at: there is no such field"},
		{"card.leaf_thickness.1.at", "1", "card.leaf_thickness.1.at: 1 is not wanted: leaf_thickness has no place to be read at"},
	} {
		got, err := fm.Set(j, row[0], row[1])
		if err == nil || err.Error() != row[2] || !alike(got, j) {
			t.Errorf("%s = %q: %v, want %s", row[0], row[1], err, row[2])
		}
	}
}
