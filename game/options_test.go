package game

import (
	"fmt"
	"reflect"
	"strings"
	"testing"

	"leafwright/game/measure"
	"leafwright/geom/trim"
)

// framedJob is a plain framed leaf with an option of the kinds of move given.
func framedJob(t testing.TB, kinds ...trim.Kind) Job {
	t.Helper()
	j := must(t, swap(t, plainest, `"thickness": 35`, `"thickness": 40, "make": "framed"`))
	j, err := Form{}.Add(j, optionsPath)
	if err != nil {
		t.Fatal(err)
	}
	for _, k := range kinds {
		if j, err = (Form{}).Add(j, AddMovePath(0, k)); err != nil {
			t.Fatal(err)
		}
	}
	return j
}

// Each kind of move is offered, begins with sound numbers, is shown with the fields
// it has, written and read back the same, and passes the schema.
func TestEveryKindOfMove(t *testing.T) {
	if len(trim.Kinds) != len(kindLabels) {
		t.Errorf("%d kinds of move, %d labels", len(trim.Kinds), len(kindLabels))
	}
	s := schemaOf(t)
	for _, spec := range trim.Kinds {
		t.Run(string(spec.Kind), func(t *testing.T) {
			if KindLabel(spec.Kind) == string(spec.Kind) {
				t.Error("no label")
			}
			j := framedJob(t, spec.Kind)
			out := Encode(j)
			if back := must(t, string(out)); !alike(back, j) {
				t.Errorf("read back otherwise:\n%s", out)
			}
			if !holds(s, out) {
				t.Errorf("does not pass the schema:\n%s", out)
			}
			m, faults := takeMove(MoveText(j.Options[0].Moves[0]), MovePath(0, 0))
			if len(faults) > 0 || !reflect.DeepEqual(m, j.Options[0].Moves[0]) {
				t.Errorf("%s is taken as %+v, %v", MoveText(j.Options[0].Moves[0]), m, faults)
			}
			for _, u := range []measure.Unit{measure.MM, measure.Inch} {
				fm := Form{u}
				section := fm.Option(&j, 0)
				if len(section.Groups) != 2 || len(section.Adds) != len(trim.Kinds) {
					t.Fatalf("%+v", section)
				}
				for _, f := range section.Groups[1].Fields {
					if f.Kind == Table {
						continue
					}
					if f.Kind == Length && !(f.Min < f.Max) {
						t.Errorf("%s runs from %v to %v", f.Path, f.Min, f.Max)
					}
					if same, err := fm.Set(j, f.Path, f.Value); err != nil || u == measure.MM && !alike(same, j) {
						t.Errorf("%s does not take the %q it shows: %v", f.Path, f.Value, err)
					}
				}
			}
			// done as any other kind
			for _, other := range trim.Kinds {
				if got, err := (Form{}).Set(j, MovePath(0, 0)+".do", string(other.Kind)); err != nil {
					t.Errorf("not taken as %s: %v", other.Kind, err)
				} else if got.Options[0].Moves[0].Kind != other.Kind {
					t.Errorf("as %s it is %+v", other.Kind, got.Options[0].Moves[0])
				}
			}
		})
	}
}

// said gives an option's moves, or the options' names, in a few letters.
func said(j *Job) string {
	var parts []string
	for i := range j.Options {
		part := j.OptionName(i) + ":"
		for _, m := range j.Options[i].Moves {
			part += fmt.Sprintf(" %s %v", m.Kind, m.First)
			if m.Off {
				part += " off"
			}
		}
		parts = append(parts, part)
	}
	return strings.Join(parts, "; ")
}

func TestMovesByPathAndText(t *testing.T) {
	for _, row := range []struct {
		situation string
		act       func(fm Form, j Job) (Job, error)
		units     measure.Unit
		then      string
		refused   string
	}{
		{situation: "another option", act: func(fm Form, j Job) (Job, error) { return fm.Add(j, "options") }, then: "Option 1: plane 1 sink 1; Option 2:"},
		{situation: "a copy of one", act: func(fm Form, j Job) (Job, error) { return fm.Add(j, CopyPath(OptionPath(0))) }, then: "Option 1: plane 1 sink 1; Option 1 (copy): plane 1 sink 1"},
		{situation: "a copy of a move", act: func(fm Form, j Job) (Job, error) { return fm.Add(j, CopyPath(MovePath(0, 0))) }, then: "Option 1: plane 1 plane 1 sink 1"},
		{situation: "a move of no kind named", act: func(fm Form, j Job) (Job, error) { return fm.Add(j, "options[0].moves") }, then: "Option 1: plane 1 sink 1 plane 1"},
		{situation: "a move off", act: func(fm Form, j Job) (Job, error) { return fm.Set(j, "options[0].moves[1].off", "true") }, then: "Option 1: plane 1 sink 1 off"},
		{situation: "an amount in inches", units: measure.Inch, act: func(fm Form, j Job) (Job, error) { return fm.Set(j, "options[0].moves[1].first", "1/8") }, then: "Option 1: plane 1 sink 3.175"},
		{situation: "the second move first", act: func(fm Form, j Job) (Job, error) { return fm.Set(j, PlacePath(MovePath(0, 1)), "1") }, then: "Option 1: sink 1 plane 1"},
		{situation: "the first move last", act: func(fm Form, j Job) (Job, error) { return fm.Set(j, PlacePath(MovePath(0, 0)), "2") }, then: "Option 1: sink 1 plane 1"},
		{situation: "a move taken out", act: func(fm Form, j Job) (Job, error) { return fm.Remove(j, MovePath(0, 0)) }, then: "Option 1: sink 1"},
		{situation: "an option taken out", act: func(fm Form, j Job) (Job, error) { return fm.Remove(j, OptionPath(0)) }, then: ""},
		{situation: "another name", act: func(fm Form, j Job) (Job, error) { return fm.Set(j, "options[0].name", " Tilt it ") }, then: "Tilt it: plane 1 sink 1"},
		{situation: "a whole move", act: func(fm Form, j Job) (Job, error) {
			return fm.Set(j, MovePath(0, 1), `{"do": "sink", "hinge": 2, "on": "jamb", "first": 1.5}`)
		}, then: "Option 1: plane 1 sink 1.5"},
		{situation: "a whole move more", act: func(fm Form, j Job) (Job, error) {
			return fm.Set(j, MovePath(0, 2), `{"do": "sink", "hinge": 2, "on": "jamb", "first": 1.5}`)
		}, then: "Option 1: plane 1 sink 1 sink 1.5"},

		{situation: "no such place", act: func(fm Form, j Job) (Job, error) { return fm.Set(j, PlacePath(MovePath(0, 0)), "3") }, refused: "options[0].moves[0].place: a place between 1 and 2 is wanted"},
		{situation: "no such kind", act: func(fm Form, j Job) (Job, error) { return fm.Add(j, "options[0].moves.plain") }, refused: `options[0].moves.plain: "plain" is not known here; is it plane?`},
		{situation: "no such option", act: func(fm Form, j Job) (Job, error) { return fm.Add(j, "options[1].moves.plane") }, refused: "options[1].moves.plane: there is no such field"},
		{situation: "a field the kind has not", act: func(fm Form, j Job) (Job, error) { return fm.Set(j, "options[0].moves[1].edge", "top") }, refused: "options[0].moves[1].edge: there is no such field"},
		{situation: "a whole move that is none", act: func(fm Form, j Job) (Job, error) { return fm.Set(j, MovePath(0, 0), `{"do": "sink"}`) }, refused: "options[0].moves[0].on: missing; a word like leaf is wanted"},
		{situation: "an edge of the frame", act: func(fm Form, j Job) (Job, error) { return fm.Set(j, "options[0].moves[0].edge", "head") }, refused: `options[0].moves[0].edge: "head" is not one of hanging, closing, top, foot`},
	} {
		t.Run(row.situation, func(t *testing.T) {
			j := framedJob(t, trim.Plane, trim.Sink)
			was := string(Encode(j))
			got, err := row.act(Form{row.units}, j)
			if string(Encode(j)) != was {
				t.Error("the job given was changed")
			}
			if row.refused != "" {
				if err == nil || err.Error() != row.refused {
					t.Errorf("got  %v\nwant %s", err, row.refused)
				}
				return
			}
			if err != nil {
				t.Fatal(err)
			}
			if s := said(&got); s != row.then {
				t.Errorf("got  %s\nwant %s", s, row.then)
			}
			if back := must(t, string(Encode(got))); !alike(back, got) {
				t.Errorf("does not read back:\n%s", Encode(got))
			}
		})
	}
}

// A station of a scribed line that is changed leaves the job before it as it was.
func TestLinesAreNotShared(t *testing.T) {
	j := framedJob(t, trim.Scribe)
	was := j.Options[0].Moves[0].Line.At(0)
	got, err := Form{}.Set(j, "options[0].moves[0].line[0][1]", "2.5")
	if err != nil || got.Options[0].Moves[0].Line.At(0) != 2.5 || j.Options[0].Moves[0].Line.At(0) != was {
		t.Errorf("%v, before %v, after %v", err, j.Options[0].Moves[0].Line, got.Options[0].Moves[0].Line)
	}
}

// What is done for keeps leaves the option from the front, and stays.
func TestForKeeps(t *testing.T) {
	fm := Form{}
	j := framedJob(t, trim.Sink, trim.Pack, trim.Sink)
	j, err := fm.Set(j, MovePath(0, 0)+".off", "true")
	if err != nil {
		t.Fatal(err)
	}
	if k, err := j.Keepable(0); k != 1 || err != nil {
		t.Fatalf("the next for keeps is %d, %v", k, err)
	}
	before := j.Try(0)
	kept, err := fm.Add(j, KeepPath(0))
	if err != nil {
		t.Fatal(err)
	}
	if len(kept.Made) != 1 || kept.Made[0].Kind != trim.Pack || said(&kept) != "Option 1: sink 1 off sink 1" {
		t.Errorf("made %+v, left %s", kept.Made, said(&kept))
	}
	if after := kept.Try(0); !reflect.DeepEqual(after.Door, before.Door) {
		t.Error("done for keeps the option comes to another door")
	}
	if found := kept.Found(); !reflect.DeepEqual(found.Door, j.Door) || reflect.DeepEqual(kept.Stands().Door, j.Door) {
		t.Error("as found it stays as found; as it stands it does not")
	}
	for what, act := range map[string]func() (Job, error){
		"set":    func() (Job, error) { return fm.Set(kept, "made[0].first", "2") },
		"off":    func() (Job, error) { return fm.Set(kept, "made[0].off", "true") },
		"remove": func() (Job, error) { return fm.Remove(kept, "made[0]") },
		"add":    func() (Job, error) { return fm.Add(kept, "made") },
	} {
		if got, err := act(); err == nil || !strings.Contains(err.Error(), madeStays) || !alike(got, kept) {
			t.Errorf("%s: %v", what, err)
		}
	}
	noted, err := fm.Set(kept, "made[0].note", "With card.")
	if err != nil || noted.Made[0].Note != "With card." {
		t.Errorf("a note: %v", err)
	}
	for _, g := range fm.Made(&kept).Groups {
		for _, f := range g.Fields {
			if locked := f.Kind == Words; locked == strings.HasSuffix(f.Path, ".note") {
				t.Errorf("%s can be changed: %v", f.Path, !locked)
			}
		}
	}
	cut := trim.Move{Kind: trim.Sink, Hinge: 1, On: trim.OnLeaf, First: 1}
	more, err := fm.Set(kept, MadePath(1), MoveText(cut))
	if err != nil || len(more.Made) != 2 || !reflect.DeepEqual(more.Made[1], cut) {
		t.Errorf("a move done at once: %v, %+v", err, more.Made)
	}
	for _, text := range []string{MoveText(trim.Move{Kind: trim.Sink, Hinge: 5, On: trim.OnLeaf, First: 1}), `{"do": "sink", "off": true, "hinge": 1, "on": "leaf", "first": 1}`} {
		if got, err := fm.Set(kept, MadePath(1), text); err == nil || len(got.Made) != 1 {
			t.Errorf("%s done for keeps", text)
		}
	}
	if _, err := fm.Set(kept, MadePath(0), MoveText(cut)); err == nil {
		t.Error("what was made is made over")
	}
	rated := j
	rated.Anatomy.Rated = true
	rated.Options = []Option{{Moves: []trim.Move{rated.NewMove(trim.Plane)}}}
	if got, err := fm.Add(rated, KeepPath(0)); err == nil || len(got.Made) != 0 {
		t.Errorf("a rated leaf is planed for keeps: %v", err)
	}
}

// A reading of the hung door says after how many moves it was taken.
func TestReadingAfterMoves(t *testing.T) {
	j := must(t, rightly(t))
	inside := framedJob(t, trim.Sink)
	j.Options = inside.Options
	j, err := Form{}.Add(j, KeepPath(0))
	if err != nil {
		t.Fatal(err)
	}
	hung, other := -1, -1
	for i := range j.Readings {
		if isHung(j.Readings[i].Kind) {
			hung = i
		} else {
			other = i
		}
	}
	got, err := Form{}.Set(j, readingsPath+index(hung)+".after", "1")
	if err != nil || got.Readings[hung].After != 1 {
		t.Fatalf("%v", err)
	}
	if back := must(t, string(Encode(got))); !alike(back, got) {
		t.Errorf("does not read back:\n%s", Encode(got))
	}
	if _, err := (Form{}).Set(j, readingsPath+index(hung)+".after", "2"); err == nil {
		t.Error("taken after a move that was not made")
	}
	if _, err := (Form{}).Set(j, readingsPath+index(other)+".after", "1"); err == nil {
		t.Error("a reading of the leaf by itself is not one after a move")
	}
}

func TestOptionNamed(t *testing.T) {
	j := Job{Options: []Option{{Name: "Plane the top"}, {}, {Name: "2"}}}
	for name, want := range map[string]int{"plane THE top": 0, "1": 0, "option 2": 1, "2": 2, " 3 ": 2, "4": -1, "": -1} {
		if i, ok := j.OptionNamed(name); ok != (want >= 0) || ok && i != want {
			t.Errorf("%q is option %d, %v, want %d", name, i, ok, want)
		}
	}
}

// A leaf of 25 kg or less is lifted by one; whatever cuts painted wood has the lead
// beside it, a packer has not.
func TestCautionsStandBesideTheMoves(t *testing.T) {
	j := Blank(610, 1830, 20)
	has := func(k trim.Kind, text string) bool {
		for _, c := range MoveCautions(&j, k) {
			if strings.Contains(c.Text, text) {
				return true
			}
		}
		return false
	}
	for _, spec := range trim.Kinds {
		if want := spec.Kind != trim.Pack && spec.Kind != trim.Set && spec.Kind != trim.PackJamb; has(spec.Kind, "lead") != want {
			t.Errorf("%s: lead %v", spec.Kind, !want)
		}
	}
	if has(trim.Plane, "two people") || has(trim.Plane, "glass") {
		t.Error("a light flush leaf")
	}
	j = Blank(838, 2040, 44)
	j.Anatomy.Glazed, j.Anatomy.Rated = true, true
	if !has(trim.Plane, "two people") || !has(trim.Plane, "glass") || !has(trim.Sink, "Rated") {
		t.Error("a heavy glazed rated leaf")
	}
}
