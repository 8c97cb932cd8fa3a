package lesson

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"leafwright/game"
	"leafwright/game/words"
	"leafwright/geom/door"
	"leafwright/geom/fault"
)

// own gives the lessons that ship, in their order.
func own(t testing.TB) (all []*Lesson) {
	t.Helper()
	paths, err := filepath.Glob(lessons + "[0-9]*.json")
	if err != nil {
		t.Fatal(err)
	}
	for _, path := range paths {
		data, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		l, err := Parse(strings.TrimSuffix(filepath.Base(path), ".json"), data)
		if err != nil {
			t.Fatalf("%s:\n%v", path, err)
		}
		all = append(all, l)
	}
	return all
}

// named gives the lesson whose file's name begins so.
func named(t testing.TB, begins string) *Lesson {
	t.Helper()
	for _, l := range own(t) {
		if strings.HasPrefix(l.Name, begins) {
			return l
		}
	}
	t.Fatalf("no lesson %s", begins)
	return nil
}

func speaker() *words.Speaker { return &words.Speaker{Lexicon: words.For(words.UK)} }

func TestOurLessonsLeadFromOneFaultToThree(t *testing.T) {
	all := own(t)
	if len(all) != 10 {
		t.Errorf("%d lessons, and ten ship", len(all))
	}
	seen := map[string]bool{}
	for i, l := range all {
		if i > 0 && len(l.Kinds()) < len(all[i-1].Kinds()) {
			t.Errorf("%s has fewer faults than the one before", l.Name)
		}
		for _, k := range l.Kinds() {
			seen[string(k)] = true
		}
		// every figure a learner is told comes from the model, so the texts have none
		for _, text := range append([]string{l.Title, l.Before, l.After}, l.Hints...) {
			if strings.ContainsAny(text, "0123456789") {
				t.Errorf("%s: a figure in %q", l.Name, text)
			}
		}
		if l.Before == "" || l.After == "" || l.Limits == (Limits{}) {
			t.Errorf("%s lacks a text or its limits", l.Name)
		}
		within(t, l, follow(t, l))
		if j := plane(t, l).Judge(); j.Good && j.Wasted() < 5 {
			t.Errorf("%s is put right by planing wherever it rubs", l.Name)
		}
		for _, p := range TellerOf(l, speaker()).Answer(l) {
			if len(p.Lines) == 0 {
				t.Errorf("%s: nothing under %q", l.Name, p.Title)
			}
		}
	}
	if last := all[len(all)-1]; len(last.Kinds()) != 3 || len(all[0].Kinds()) != 1 {
		t.Errorf("from %d faults to %d", len(all[0].Kinds()), len(last.Kinds()))
	}
	if len(seen) < 10 {
		t.Errorf("%d kinds of fault in all", len(seen))
	}
}

// What is wrong with a lesson file is told all at once, by path, with what is allowed.
func TestLessonFilesAreTold(t *testing.T) {
	const head = `{"leafwright_lesson": 1, "title": "T", `
	const wide = `"faults": [{"kind": "leaf wide", "amount": 5}]`
	least := named(t, "01").Cure
	for _, c := range []struct{ name, file, want string }{
		{"nothing", `{}`, `leafwright_lesson: missing; 1 says that this is a lesson, and its version
title: missing; a text in quotes is wanted
job: missing; a job, or a door like {"seed": 4, "old": 0.3} in its place, is wanted
faults: missing; a list like [{"kind": "leaf wide", "amount": 3}] is wanted, or a group "draw" in its place`},
		{"no JSON", `{"title": }`, `line 1, column 11: a value is wanted, and '}' stands there`},
		{"a list", `[]`, `file: a list is not a group in braces`},
		{"words unknown", head + `"door": {"seed": 1.5, "age": 3}, "faults": [{"kind": "leaf wyde", "amount": 500, "side": "left"}], "hint": []}`,
			`door.seed: 1.5 is not a whole number
door.age: no such field; seed, old are known here
faults[0].kind: "leaf wyde" is not known here; is it leaf wide?
faults[0].side: "left" is not one of hinge, latch, head, floor
hint: no such field; is it hints?`},
		{"a fault past its kind", head + `"door": {"seed": 1}, "faults": [{"kind": "leaf wide", "amount": 50, "way": "in"}]}`,
			`faults[0].way: this kind of fault goes one way only: leave it out
faults[0].amount: 50 is not between 0.05 and 20`},
		{"two of each", head + `"door": {"seed": 1}, "job": {"leafwright": 1}, ` + wide + `, "draw": {"count": 1, "seed": 1}}`,
			`door: this lesson gives a job: take one of the two out
job.leaf: missing; a group with width, height, thickness is wanted
job.opening: missing; a group with width, height is wanted
job.hinges: missing; a list is wanted
draw: this lesson gives its faults: take one of the two out`},
		{"too little of a fault", head + `"door": {"seed": 3}, "faults": [{"kind": "leaf wide", "amount": 0.1}]}`,
			`faults: the door hangs as wanted all the same: more of a fault is needed`},
		{"limits none can keep", head + `"door": {"seed": 3}, "limits": {"timber": 1, "minutes": 1}, ` + wide + `}`,
			"limits.timber: at least what the least cure takes off, " + door.Say(least.Timber) + " cm³\nlimits.minutes: at least what the least cure takes, " + door.Say(least.Minutes)},
		{"a door that is no sound one", head + `"job": {"leafwright": 1, "leaf": {"width": 770, "height": 1981, "thickness": 40}, "opening": {"width": 767, "height": 1996},
			"hinges": [{"jamb": 1793, "leaf": 1781}, {"jamb": 277, "leaf": 265}]}, ` + wide + `}`,
			`job: a door that hangs as wanted before its faults are made, or in_job where its shapes hold them; worst is -5 mm on the latch side`},
	} {
		l, err := Parse("x", []byte(c.file))
		if err == nil {
			t.Errorf("%s: taken, %v", c.name, l.Faults)
			continue
		}
		if got := err.Error(); got != c.want {
			t.Errorf("%s:\n%s\nis told, and this is wanted:\n%s", c.name, got, c.want)
		}
		if _, ok := err.(game.Faults); !ok {
			t.Errorf("%s: %T", c.name, err)
		}
	}
}

// A door whose own shapes hold the faults is taken as it is.
func TestFaultsMayBeInTheJob(t *testing.T) {
	l, err := Parse("x", []byte(`{"leafwright_lesson": 1, "title": "T", "in_job": true, "faults": [{"kind": "leaf wide", "amount": 3}],
		"job": {"leafwright": 1, "hand": "right", "leaf": {"width": 765, "height": 1981, "thickness": 40, "bevel": {"closing": 3}}, "opening": {"width": 767, "height": 1996},
		"hinges": [{"jamb": 1793, "leaf": 1781}, {"jamb": 277, "leaf": 265}]}}`))
	if err != nil {
		t.Fatal(err)
	}
	within(t, l, follow(t, l))
}

func FuzzParse(f *testing.F) {
	paths, _ := filepath.Glob(lessons + "*.json")
	for _, path := range paths {
		data, err := os.ReadFile(path)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(data)
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		if IsExplanation(data) {
			ParseExplanation("x", data)
			return
		}
		if l, err := Parse("x", data); err == nil {
			TellerOf(l, speaker()).Answer(l)
		}
	})
}

// The README's lesson and session are what they say.
func TestTheReadmesLesson(t *testing.T) {
	data, err := os.ReadFile("../../testdata/README.md")
	if err != nil {
		t.Fatal(err)
	}
	_, section, _ := strings.Cut(string(data), "## A lesson by hand")
	blocks := strings.Split(section, "```")
	if len(blocks) != 5 {
		t.Fatalf("%d blocks", len(blocks))
	}
	l, err := Parse("03-tipped", []byte(strings.TrimPrefix(blocks[1], "json")))
	if err != nil {
		t.Fatal(err)
	}
	s, err := ParseSession([]byte(strings.TrimPrefix(blocks[3], "json")))
	if err != nil {
		t.Fatal(err)
	}
	p, err := Replay(l, s.Acts)
	if err != nil {
		t.Fatal(err)
	}
	within(t, l, p)
	for i := range fault.All {
		if !strings.Contains(strings.Join(strings.Fields(blocks[2]), " "), string(fault.All[i].Kind)) {
			t.Errorf("%s is not among the kinds named", fault.All[i].Kind)
		}
	}
}

func BenchmarkAttempt(b *testing.B) {
	for n := range b.N {
		Attempt(1+n%len(Levels), uint64(n))
	}
}

func BenchmarkJudge(b *testing.B) {
	p := follow(b, named(b, "10"))
	for b.Loop() {
		p.Judge()
	}
}
