package lesson

import (
	"reflect"
	"strings"
	"testing"

	"leafwright/game"
	"leafwright/geom/door"
	"leafwright/geom/fault"
	"leafwright/geom/survey"
	"leafwright/geom/trim"
)

// every is a play with each deed and each kind of reading in it.
func every(t testing.TB) *Play {
	t.Helper()
	l := named(t, "03")
	p := Begin(l)
	do := func(a Act) Seen {
		t.Helper()
		s, err := p.Do(a)
		if err != nil {
			t.Fatalf("%+v: %v", a, err)
		}
		return s
	}
	do(Act{Deed: Try})
	do(Act{Deed: Read, Reading: survey.Reading{Kind: survey.GapRead, Side: survey.Latch, At: 1900}})
	do(Act{Deed: Read, Reading: survey.Reading{Kind: survey.JambPlumb, Side: survey.Latch, From: 100, To: 1800}})
	do(Act{Deed: Read, Reading: survey.Reading{Kind: survey.HingeProud, Hinge: 1}})
	do(Act{Deed: Read, Reading: survey.Reading{Kind: survey.FloorHeight, At: 700, Angle: l.Job.Door.Opens / 2}})
	do(Act{Deed: Name, Faults: []fault.Kind{fault.LeafWide, fault.HingeSags}})
	if s := do(Act{Deed: Work, Move: trim.Move{Kind: trim.Sink, Hinge: 6, On: trim.OnLeaf, First: 1}}); s.Step.Why == nil {
		t.Error("a leaf has a sixth hinge")
	}
	do(Act{Deed: Work, Move: trim.Move{Kind: trim.Scribe, Edge: door.LatchSide, Line: line(0, 0, 1900, 1.5)}})
	do(Act{Deed: Ask})
	do(Act{Deed: GiveUp})
	return p
}

func TestASessionIsReadBackAndReplayed(t *testing.T) {
	p := every(t)
	s := p.Session("J. of the \"day\" class\u2028")
	s.Learner = strings.TrimSuffix(s.Learner, "\u2028")
	text := s.Text()
	back, err := ParseSession([]byte(text))
	if err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	if back.Text() != text || back.Learner != s.Learner || back.Lesson != p.Lesson.Name {
		t.Errorf("written as\n%s\nand read back as\n%s", text, back.Text())
	}
	again, err := Replay(p.Lesson, back.Acts)
	if err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(again.Seen, p.Seen) {
		t.Error("replayed, other things are seen")
	}
	if got, want := again.Judge(), p.Judge(); !reflect.DeepEqual(got, want) {
		t.Errorf("replayed, it is judged %+v, and was %+v", got, want)
	}
	for k := range p.Acts { // step by step
		part, err := Replay(p.Lesson, p.Acts[:k])
		if err != nil || len(part.Seen) != k || part.Over() != "" {
			t.Errorf("after %d acts: %v, %q", k, err, part.Over())
		}
	}
}

// Who reloads in the middle has lost nothing but a line that was cut short, and that
// one is told.
func TestASessionCutShort(t *testing.T) {
	s := every(t).Session("")
	text := s.Text()
	cut := text[:len(text)-8]
	back, err := ParseSession([]byte(cut))
	if err == nil || !strings.HasPrefix(err.Error(), "line 11: ") || len(back.Acts) != len(s.Acts)-1 {
		t.Errorf("%v, %d acts of %d", err, len(back.Acts), len(s.Acts))
	}
}

func TestSessionsAreTold(t *testing.T) {
	for _, c := range []struct{ name, file, want string }{
		{"nothing", "\n\n", "line 1: a session; the file is empty"},
		{"no head", `{"act": "try"}`, `line 1.leafwright_session: missing; 1 says that this is a session, and its version
line 1.lesson: missing; a text in quotes is wanted
line 1.act: no such field; leafwright_session, lesson, learner are known here`},
		{"all at once", `{"leafwright_session": 2, "lesson": "x"}
{"act": "trie"}
{"act": "read", "kind": "rub", "side": "latch", "at": 3}

{"act": "read", "kind": "gap", "side": "left", "at": "3"}
{"act": "name", "faults": ["leaf wyde"]}
{"act": "move", "move": {"do": "plane", "edge": "closing", "first": 1000}}
{"act": "hint", "more": true}
nonsense`, `line 1.leafwright_session: 2 is not 1, the version this program reads
line 2.act: "trie" is not known here; is it try?
line 3.kind: "rub" is not known here; words known are gap, stop_gap, opening_width and 36 more
line 5.side: "left" is not one of hinge, latch, head, floor
line 5.at: "3" is not a number
line 6.faults[0]: "leaf wyde" is not known here; is it leaf wide?
line 7.move.first: 1000 is not between 0 and 50
line 7.move.last: 1000 is not between 0 and 50
line 8.more: no such field; act are known here
line 9: a value is wanted, and 'n' stands there`},
	} {
		_, err := ParseSession([]byte(c.file))
		if err == nil || err.Error() != c.want {
			t.Errorf("%s:\n%v\nis told, and this is wanted:\n%s", c.name, err, c.want)
		}
	}
}

func TestActsThatCannotBe(t *testing.T) {
	l := named(t, "03")
	p := Begin(l)
	for _, c := range []struct {
		a    Act
		want string
	}{
		{Act{Deed: "sleep"}, "act: sleep is not one of try, read, name, move, hint, done, give up"},
		{Act{Deed: Name}, "faults: missing; the name of a fault is wanted"},
		{Act{Deed: Name, Faults: []fault.Kind{"rot"}}, "faults: rot is not the name of a fault known here"},
		{Act{Deed: Read, Reading: survey.Reading{Kind: survey.Rub, Side: survey.Latch, At: 3}},
			"kind: rub is not a kind of reading that gives a length; where the leaf rubs is seen by trying it"},
		{Act{Deed: Read, Reading: survey.Reading{Kind: survey.LeafGain, Hinge: 8}}, "hinge: 9 is not between 1, the top one, and 2"},
		{Act{Deed: Work, Move: trim.Move{Kind: trim.Plane, Edge: door.LatchSide, First: 1, Last: 1, Off: true}}, "move.off: a move made for keeps cannot be left out"},
	} {
		if _, err := p.Do(c.a); err == nil || err.Error() != c.want {
			t.Errorf("%+v: %v, and %q is wanted", c.a, err, c.want)
		}
	}
	if len(p.Acts) != 0 {
		t.Errorf("%d acts came of it", len(p.Acts))
	}
	for range l.Limits.Readings {
		if _, err := p.Do(Act{Deed: Read, Reading: survey.Reading{Kind: survey.LeafThickness}}); err != nil {
			t.Fatal(err)
		}
	}
	if _, err := p.Do(Act{Deed: Read, Reading: survey.Reading{Kind: survey.LeafThickness}}); err == nil {
		t.Error("more readings than are allowed")
	}
	if _, err := p.Do(Act{Deed: Finish}); err != nil {
		t.Fatal(err)
	}
	if _, err := p.Do(Act{Deed: Try}); err == nil || err.Error() != "act: the lesson is over, and nothing more can be done" {
		t.Errorf("after the end: %v", err)
	}
	if _, err := Replay(l, []Act{{Deed: Try}, {Deed: Name}}); err == nil || !strings.HasPrefix(err.Error(), "acts[1].faults: ") {
		t.Errorf("replayed: %v", err)
	}
}

// What a learner sees before the end names no fault they have not named, and holds no
// figure but readings by an instrument's own steps.
func TestNothingIsGivenAway(t *testing.T) {
	for _, l := range played() {
		p := Begin(l)
		te := TellerOf(l, speaker())
		acts := []Act{{Deed: Try}}
		for e := range door.Edges {
			acts = append(acts, Act{Deed: Read, Reading: gapAt(e, 500)})
		}
		for i := range l.Faults {
			if r := p.telling(&l.Faults[i]); r != nil {
				acts = append(acts, Act{Deed: Read, Reading: *r})
			}
		}
		for _, a := range acts {
			s, err := p.Do(a)
			if err != nil {
				t.Fatal(err)
			}
			said := strings.Join(te.Seen(&a, &s), " ")
			for i := range fault.All {
				if strings.Contains(said, fault.All[i].Name) {
					t.Errorf("%s: %q names %s", l.Name, said, fault.All[i].Name)
				}
			}
			if a.Deed == Try && strings.Contains(said, " mm") {
				t.Errorf("%s: a figure by eye: %q", l.Name, said)
			}
			if steps := s.Took.Value / max(s.Took.Step, 1e-3); a.Deed == Read && (s.Took.Step == 0 || steps-float64(int(steps+0.5)) > 1e-6) {
				t.Errorf("%s: %v by steps of %v", l.Name, s.Took.Value, s.Took.Step)
			}
		}
	}
}

func FuzzParseSession(f *testing.F) {
	s := every(f).Session("A learner")
	f.Add([]byte(s.Text()))
	f.Add([]byte(`{"leafwright_session": 1, "lesson": "attempt 1 2"}` + "\n" + `{"act": "hint"}`))
	l := named(f, "03")
	f.Fuzz(func(t *testing.T, data []byte) {
		s, err := ParseSession(data)
		if err != nil {
			if _, ok := err.(game.Faults); !ok {
				t.Fatalf("%T", err)
			}
			return
		}
		back, err := ParseSession([]byte(s.Text()))
		if err != nil {
			t.Fatalf("%v\n%s", err, s.Text())
		}
		if back.Text() != s.Text() {
			t.Fatalf("%s\n%s", s.Text(), back.Text())
		}
		var quick []Act // hints ask for advice, which takes too long here
		for _, a := range s.Acts {
			if a.Deed != Ask && len(quick) < 8 {
				quick = append(quick, a)
			}
		}
		p, _ := Replay(l, quick)
		te := TellerOf(l, speaker())
		for i := range p.Acts {
			te.Seen(&p.Acts[i], &p.Seen[i])
		}
		if len(p.moves) < 3 {
			te.Judged(p.Judge())
		}
	})
}
