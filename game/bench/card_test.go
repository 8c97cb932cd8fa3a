package bench

import (
	"math/rand/v2"
	"strings"
	"testing"

	"leafwright/game"
	"leafwright/game/draw"
	"leafwright/game/internal/demos"
	"leafwright/geom/judge"
	"leafwright/geom/survey"
)

const read = "8-weavers-cottage-readings"

// own gives a bench with a card nobody has written on yet.
func own(t testing.TB) *State {
	t.Helper()
	s := newDemo(t)
	s.Open(game.Measure(game.Blank(762, 1981, 35)))
	return s
}

// answer types at the prompt asked now, letter by letter, and goes on.
func answer(t testing.TB, s *State, text string) {
	t.Helper()
	p := s.Card()[s.Asked()]
	for i := range text {
		s.Type(p.Path, text[:i+1])
	}
	if d, bad := s.Draft(p.Path); bad {
		t.Fatalf("%s does not take %s: %s", p.Path, text, d.Why)
	}
	s.Advance()
}

var leastTyped = []string{"768", "1992", "762", "1978", "40", "1786", "270"}

func TestFillTheCard(t *testing.T) {
	s := own(t)
	if !s.Measuring() || !s.Lacking() || len(s.Findings()) != 0 {
		t.Fatalf("measuring %v, lacking %v, %d findings of an empty card", s.Measuring(), s.Lacking(), len(s.Findings()))
	}
	if h := s.Headline(); !strings.HasPrefix(h, "Nothing is read yet: 7 readings") {
		t.Errorf("headline %q", h)
	}
	if where, needed := s.Progress(); where != "To begin with: 1 of 7" || needed != "0 read of the 7 needed at least." {
		t.Errorf("%q, %q", where, needed)
	}
	for i, text := range leastTyped {
		if s.Card()[s.Asked()].Stage != game.Least {
			t.Fatalf("after %d readings %s is asked for", i, s.Card()[s.Asked()].Path)
		}
		before := s.Drawing(600, 500).SVG(&draw.Day)
		if i == 6 {
			s.Type(s.Card()[s.Asked()].Path, text)
			break
		}
		answer(t, s, text)
		if i > 0 && !strings.HasPrefix(s.Headline(), "Still to be read") {
			t.Errorf("after %d readings: %q", i+1, s.Headline())
		}
		if after := s.Drawing(600, 500).SVG(&draw.Day); string(after) == string(before) {
			t.Errorf("%s changed nothing on the drawing", text)
		}
	}
	if s.Lacking() || len(s.Findings()) < 6 {
		t.Fatalf("%q", s.Headline())
	}
	if !s.Unsure() {
		t.Error("a door just measured is weighed already")
	}
	s.Weigh()
	if s.Unsure() || !strings.Contains(s.Findings()[0].Figure+s.Findings()[0].Text+s.Headline(), "±") {
		t.Errorf("no margin in %+v", s.Findings()[0])
	}
	n, is := s.Advice()
	if s.Advance(); s.Card()[s.Asked()].Path != n.Path {
		t.Errorf("from the last that is needed the card goes to %s, not %s", s.Card()[s.Asked()].Path, n.Path)
	}
	if !is || n.Path == "" || !strings.Contains(n.Text, "sure to ±") {
		t.Errorf("to measure next: %+v", n)
	}
	for s.CanUndo() {
		s.Undo()
	}
	if s.Measuring() {
		t.Error("undone to the start there still is a card")
	}
}

// Each reading is one step, and undo goes back to where it was typed.
func TestUndoOnTheCard(t *testing.T) {
	s := own(t)
	for _, text := range leastTyped[:3] {
		answer(t, s, text)
	}
	asked := s.Look().Asked
	s.Undo()
	if got := s.Card()[s.Asked()]; got.Reading.Kind != survey.LeafWidth || got.Value != "" || got.Path == asked {
		t.Errorf("undo leads to %s with %q", got.Path, got.Value)
	}
	s.Undo()
	if got := s.Card()[s.Asked()]; got.Reading.Kind != survey.OpeningHeight || len(s.Job().Readings) != 1 {
		t.Errorf("undo leads to %s, %d readings", got.Path, len(s.Job().Readings))
	}
	s.Redo()
	if got := s.Card()[s.Asked()]; got.Value != "1992" {
		t.Errorf("redo leads to %s with %q", got.Path, got.Value)
	}
}

func TestWalkTheCard(t *testing.T) {
	s := New(demos.Job(t, read))
	seen := map[string]bool{}
	n := 1
	for first := s.Card()[0].Path; ; n++ {
		if n == 1 {
			s.Ask(first)
		}
		seen[s.Card()[s.Asked()].Path] = true
		if !s.Advance() {
			break
		}
	}
	if n != len(s.Card()) || len(seen) != n {
		t.Errorf("%d steps over %d prompts, %d of them seen", n, len(s.Card()), len(seen))
	}
	for s.GoBack() {
		n--
	}
	if n != 1 || s.Asked() != 0 {
		t.Errorf("%d steps short of the way back", n)
	}
	s.Ask("card.no_such.1")
	if k := s.Asked(); k < 0 || k >= len(s.Card()) {
		t.Errorf("asked %d", k)
	}
}

// From the reading that told most the card goes to the one that does so then.
func TestFollowTheAdvice(t *testing.T) {
	s := own(t)
	for _, text := range leastTyped {
		answer(t, s, text)
	}
	for _, text := range []string{"0", "1"} {
		s.Weigh()
		n, is := s.Advice()
		if !is || n.Path == "" {
			t.Fatal("nothing to measure next")
		}
		s.Ask(n.Path)
		p := s.Card()[s.Asked()]
		if p.Stage != game.Next {
			t.Fatalf("%s is of the stage %v", p.Path, p.Stage)
		}
		if p.Min > 0 {
			text = "768"
		}
		s.Type(p.Path, text)
		s.Advance()
		if now := s.Card()[s.Asked()]; now.Stage != game.Next || now.Path == p.Path {
			t.Errorf("after %s came %s of the stage %v", p.Path, now.Path, now.Stage)
		}
	}
}

func TestNonsenseOnTheCard(t *testing.T) {
	s := own(t)
	answer(t, s, "768")
	before := encoded(s)
	for _, c := range []struct{ situation, text string }{
		{"a word", "high"}, {"out of range", "19920"}, {"half an inch fraction", "78 1/"}, {"thousand or decimal", "1,992"},
	} {
		t.Run(c.situation, func(t *testing.T) {
			p := s.Card()[s.Asked()]
			s.Type(p.Path, c.text)
			if d, bad := s.Draft(p.Path); !bad || d.Text != c.text || d.Why == "" || strings.Contains(d.Why, "card.") {
				t.Errorf("draft %+v", d)
			}
			if encoded(s) != before {
				t.Error("the job changed")
			}
			r, err := again(s)
			if err != nil {
				t.Fatal(err)
			}
			if d, bad := r.Draft(p.Path); !bad || d.Text != c.text || r.Asked() != s.Asked() {
				t.Errorf("taken up again: %+v, prompt %d of %d", d, r.Asked(), s.Asked())
			}
		})
	}
}

func TestUnitsAsTyped(t *testing.T) {
	s := own(t)
	for _, text := range []string{`30 1/4"`, "199.2cm", "762", `6' 5 7/8"`} {
		answer(t, s, text)
	}
	if got := s.Job().Readings[0].Value; got.Text != `30 1/4"` || got.MM != 30.25*25.4 {
		t.Errorf("%+v", got)
	}
	s.SetInches(true)
	s.Ask(s.Card()[0].Path)
	if p := s.Card()[0]; p.Unit != "ft in" || p.Value != `30 1/4"` {
		t.Errorf("in inches: %q %s", p.Value, p.Unit)
	}
	s.Type(s.Card()[0].Path, "30 3/8")
	if got := s.Job().Readings[0].Value.MM; got != 30.375*25.4 {
		t.Errorf("30 3/8 in a field of inches is %v mm", got)
	}
}

func TestThreeHingesAreAskedAfter(t *testing.T) {
	s := own(t)
	s.Type(game.HingesPath, "3")
	if where, needed := s.Progress(); where != "To begin with: 1 of 8" || needed != "0 read of the 8 needed at least." {
		t.Errorf("%q, %q", where, needed)
	}
	for _, text := range []string{"768", "1992", "762", "1978", "40", "1786", "1000"} {
		answer(t, s, text)
	}
	if p := s.Card()[s.Asked()]; p.Reading.Hinge != 3 || !strings.Contains(p.Ask, "bottom hinge") {
		t.Errorf("asked: %q", p.Ask)
	}
	s.Type(s.Card()[s.Asked()].Path, "270")
	if s.Lacking() || len(s.Job().Door.Hinges) != 3 || s.Unfinished() != "" {
		t.Errorf("%q, %d hinges, missing %q", s.Headline(), len(s.Job().Door.Hinges), s.Unfinished())
	}
}

func TestSignsAreOfferedWhereBothOccur(t *testing.T) {
	for _, p := range own(t).Card() {
		if want := strings.Contains(p.Ask, "bove 0"); p.Signed != want {
			t.Errorf("%s: signed %v, %q", p.Path, p.Signed, p.Ask)
		}
	}
}

// A place can be changed before the reading is taken and after.
func TestPlaces(t *testing.T) {
	s := own(t)
	p := s.Card()[0]
	if len(p.Places) != 1 || p.Places[0].Label != "At" {
		t.Fatalf("%+v", p.Places)
	}
	s.Type(p.Places[0].Path, "900")
	if got := s.Card()[0]; got.Places[0].Value != "900" || got.Value != "" || !strings.Contains(got.Ask, "900 mm up") {
		t.Fatalf("%+v", got)
	}
	if !s.Lacking() || len(s.Job().Counted()) != 0 {
		t.Error("a place without a value counts")
	}
	s.Type(p.Path, "768")
	if r := s.Job().Readings; len(r) != 1 || r[0].At.MM != 900 || r[0].Value.MM != 768 || r[0].Off {
		t.Errorf("%+v", r)
	}
	s.Type(p.Places[0].Path, "over there")
	if d, bad := s.Draft(p.Places[0].Path); !bad || strings.Contains(d.Why, "readings[") {
		t.Errorf("%+v", d)
	}
	s.Undo()
	s.Undo()
	if len(s.Job().Readings) != 0 {
		t.Errorf("undone: %+v", s.Job().Readings)
	}
}

func TestPaste(t *testing.T) {
	const good = "kind,at,value\nopening_width,1000,768\nopening_height,700,1992\nleaf_width,990,762\n"
	s := newDemo(t)
	before := encoded(s)
	bad := strings.Replace(good, "1992", "19920", 1)
	if s.Paste(bad) || encoded(s) != before || s.CanUndo() {
		t.Error("a table with a fault was taken")
	}
	d, is := s.Draft(PastePath)
	if !is || d.Text != bad || !strings.Contains(d.Why, "line 3, value: 19920 is not") {
		t.Errorf("%+v", d)
	}
	if r, err := again(s); err != nil {
		t.Error(err)
	} else if kept, _ := r.Draft(PastePath); kept != d {
		t.Errorf("kept %+v", kept)
	}
	if !s.Paste(good) || len(s.Job().Readings) != 3 || !s.Measuring() {
		t.Fatalf("%d readings, measuring %v", len(s.Job().Readings), s.Measuring())
	}
	if _, is := s.Draft(PastePath); is {
		t.Error("what was taken still stands as a draft")
	}
	if out := string(s.ReadingsCSV()); out != good {
		t.Errorf("%q", out)
	}
	r, err := again(s)
	if err != nil || encoded(r) != encoded(s) || !r.CanUndo() {
		t.Errorf("taken up again: %v", err)
	}
	s.Undo()
	if encoded(s) != before {
		t.Error("undo does not lead back to the door before the paste")
	}
	s.Redo()
	if len(s.Job().Readings) != 3 {
		t.Error("redo does not bring the readings back")
	}
	s.Paste("nonsense")
	s.DropPaste()
	if s.Drafts() != 0 {
		t.Error("a dropped table is still there")
	}
}

// A slip is named at its prompt and in the list, and can be left out and put right.
func TestMisfits(t *testing.T) {
	s := New(demos.Job(t, read))
	all := s.Misfits()
	if len(all) != 1 || !strings.Contains(all[0].Text, "776") || !strings.Contains(all[0].Text, "is it 767") {
		t.Fatalf("%+v", all)
	}
	s.Ask(all[0].Path)
	p := s.Card()[s.Asked()]
	if p.Value != "776" || p.Misfit != all[0].Text {
		t.Errorf("%q at the prompt with %q", p.Misfit, p.Value)
	}
	s.Type(p.LeaveOut, "true")
	if left := s.Card()[s.Asked()]; !left.Left || left.Path != p.Path || len(s.Misfits()) != 0 {
		t.Errorf("left out: %+v", left)
	}
	s.Undo()
	s.Type(p.Path, "767")
	if len(s.Misfits()) != 0 {
		t.Errorf("put right: %+v", s.Misfits())
	}
}

// Readings no door can have are said by what they are of, and the drawing stays.
func TestContrary(t *testing.T) {
	s := own(t)
	for _, text := range []string{"768", "1992", "762", "1978", "40", "270", "1786"} { // hinges the wrong way up
		answer(t, s, text)
	}
	h := s.Headline()
	if !s.Lacking() || strings.Contains(h, "readings[") || strings.Contains(h, "hinges[") {
		t.Errorf("lacking %v: %q", s.Lacking(), h)
	}
	if n := len(s.Drawing(600, 500).Marks); n < 50 {
		t.Errorf("%d marks on the drawing", n)
	}
}

// Every prompt's picture can be drawn, and each tool shows.
func TestSketches(t *testing.T) {
	for _, hand := range []string{"left", "right"} {
		s := own(t)
		s.Type("hand", hand)
		for _, p := range s.Card() {
			for _, w := range []float64{120, 160} {
				l := s.Sketch(&p, w, 1.25*w)
				if len(l.Marks) < 8 {
					t.Errorf("%s: %d marks", p.Path, len(l.Marks))
				}
				for _, q := range l.Points {
					if !(q.X > -1 && q.X < w+1 && q.Y > -1 && q.Y < 1.25*w+1) {
						t.Fatalf("%s at %v px: a point at %v", p.Path, w, q)
					}
				}
			}
		}
	}
}

func TestWeighedJudgesTheSame(t *testing.T) {
	s := New(demos.Job(t, read))
	count := func() (n [4]int) {
		for _, f := range s.found {
			n[f.Verdict]++
		}
		return n
	}
	before := count()
	s.Weigh()
	if after := count(); after != before || before[judge.Binds] == 0 {
		t.Errorf("verdicts %v, weighed %v", before, after)
	}
}

func BenchmarkTypeReading(b *testing.B) {
	s := New(demos.Job(b, read))
	p := s.Card()[0]
	for i := 0; b.Loop(); i++ {
		s.Type(p.Path, [2]string{"767", "768"}[i%2])
		s.Card()
	}
}

func BenchmarkWeigh(b *testing.B) {
	s := New(demos.Job(b, read))
	for b.Loop() {
		s.weighed = false
		s.Weigh()
	}
}

// Whatever is done on the card, undone to the start the first job stands there,
// redone to the end the last one, and a record of it is taken up the same.
func TestUndoAndRedoOfAnythingOnTheCard(t *testing.T) {
	texts := []string{"768", "1992", "40", "", "x", `2' 6 1/4"`, "-2", "0.5", "270", "1786", "99999"}
	tables := []string{"kind,at,value\nopening_width,900,767\n", "kind,value\nleaf_thickness,thin\n", "?"}
	for seed := range uint64(12) {
		rnd := rand.New(rand.NewPCG(seed, 2))
		s := own(t)
		first := encoded(s)
		for range 40 {
			card := s.Card()
			if len(card) == 0 { // undone to a door without readings
				s.Redo()
				continue
			}
			p := card[rnd.IntN(len(card))]
			text := texts[rnd.IntN(len(texts))]
			switch rnd.IntN(10) {
			case 0:
				s.Undo()
			case 1:
				s.Redo()
			case 2:
				s.Paste(tables[rnd.IntN(len(tables))])
			case 3:
				s.Type(game.HingesPath, []string{"2", "3", "4", "9"}[rnd.IntN(4)])
			case 4:
				if len(p.Places) > 0 {
					s.Type(p.Places[0].Path, text)
				}
			case 5:
				s.Weigh()
				s.Advance()
			default:
				s.Ask(p.Path)
				s.Type(p.Path, text)
			}
		}
		for s.CanRedo() {
			s.Redo()
		}
		last := encoded(s)
		r, err := again(s)
		if err != nil || encoded(r) != last || r.CanUndo() != s.CanUndo() {
			t.Fatalf("seed %d: taken up again: %v", seed, err)
		}
		for s.CanUndo() {
			s.Undo()
		}
		s.Redo()
		if encoded(s) != first {
			t.Fatalf("seed %d: undo does not lead back to the empty card", seed)
		}
		for s.CanRedo() {
			s.Redo()
		}
		if encoded(s) != last {
			t.Fatalf("seed %d: redo does not lead to the last job", seed)
		}
	}
}
