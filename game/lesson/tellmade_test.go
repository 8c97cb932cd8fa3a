package lesson

import (
	"strings"
	"testing"

	"leafwright/game/words"
	"leafwright/geom/trim"
)

func inches() *words.Speaker {
	return &words.Speaker{Lexicon: words.For(words.UK), Length: words.Inches, Place: words.InchPlace}
}

// answered gives a lesson's answer as one text.
func answered(l *Lesson, s *words.Speaker) string {
	var b strings.Builder
	for _, p := range TellerOf(l, s).Answer(l) {
		b.WriteString(p.Title + "\n" + strings.Join(p.Lines, "\n") + "\n")
	}
	return b.String()
}

// What is wrong is said as what can be measured on the door, and what puts it right as
// what is done on site.
func TestAnswersSayWhatIsMeant(t *testing.T) {
	saysAll(t, answered(named(t, "02"), speaker()), "hinges let in too deep, by 4.5 mm in the leaf", "Pack all hinges out 4.5 mm in the leaf")
	saysAll(t, answered(named(t, "03"), speaker()), "Draw the top hinge home on its seat, with longer screws",
		"The move for that: take 4 mm of packing out from behind the top hinge")
	square := named(t, "04")
	saysAll(t, answered(square, speaker()), "its edge has no bevel. It wants one of 1.", "takes the inner corner back by")
	saysAll(t, answered(square, inches()), `thick, and its edge has no bevel`, `"`)
	if said := answered(square, inches()); strings.Contains(said, " mm") {
		t.Errorf("in inches the answer has millimetres: %s", said)
	}
	saysAll(t, answered(named(t, "08"), speaker()), "the top one stands 8 mm farther out of the frame")
}

// The hint that gives a cure away says it as it is done on site.
func TestAHintSaysWhatIsDoneOnSite(t *testing.T) {
	l := named(t, "03")
	h := Hint{Matter: Repair, Rung: Answer, Move: &trim.Move{Kind: trim.Pack, Hinge: 1, On: trim.OnJamb, First: -4}}
	saysAll(t, TellerOf(l, speaker()).Hint(&h), "Draw the top hinge home on its seat")
}

// A cure of few moves that every manual has is shown before one of many that saves little.
func TestThePlainerCureIsShown(t *testing.T) {
	l := named(t, "10")
	if n := len(l.Cure.Moves); n != 3 {
		t.Errorf("the old kitchen, with three faults, is put right by %d moves: %s", n, answered(l, speaker()))
	}
	few, many, dear := Cure{Found: true, Moves: make([]trim.Move, 2), Minutes: 40}, Cure{Found: true, Moves: make([]trim.Move, 4), Minutes: 35},
		Cure{Found: true, Moves: make([]trim.Move, 2), Minutes: 60}
	if !few.plainer(&many) || dear.plainer(&many) || many.plainer(&few) || (&Cure{}).plainer(&many) {
		t.Error("which cure is plainer is told wrongly")
	}
}

func TestTextsInInches(t *testing.T) {
	in, mm := TellerOf(named(t, "01"), inches()), TellerOf(named(t, "01"), speaker())
	for text, want := range map[string]string{
		"It lacks 12.7 mm.":          `It lacks 1/2".`,
		"From 2 to 6.35 mm, 25.4 mm": `From 5/64" to 1/4", 1"`,
		"No length: 8.7 % of 3 cm³":  "No length: 8.7 % of 3 cm³",
	} {
		if got := in.Text(text); got != want {
			t.Errorf("%q in inches: %q, want %q", text, got, want)
		}
		if got := mm.Text(text); got != text {
			t.Errorf("%q in mm: %q", text, got)
		}
	}
}

// Beside an explanation stands what its drawing does not show: the figures are those of
// the texts, which are checked against the model elsewhere.
func TestWhatIsToBeWatched(t *testing.T) {
	for _, c := range []struct{ name, path, want string }{
		{"why-bevel", "", "1.4 mm at the least on the way in"},
		{"why-wind-is-shared", "", "at the foot 3 mm; at the top 9 mm"},
	} {
		e := explanation(t, c.name)
		if said := strings.Join(Explains(speaker()).Watch(e, &e.Job), " "); !strings.Contains(said, c.want) {
			t.Errorf("%s: %q, want %q", c.name, said, c.want)
		}
	}
	e := explanation(t, "why-bevel")
	job, err := e.With("leaf.bevel.closing", 3)
	if err != nil {
		t.Fatal(err)
	}
	if said := strings.Join(Explains(speaker()).Watch(e, &job), " "); !strings.Contains(said, "3 mm at the least") {
		t.Errorf("with a bevel of 3°: %q", said)
	}
	if said := Explains(speaker()).Watch(explanation(t, "why-a-gap"), &job); said != nil {
		t.Errorf("why a gap is left says %q", said)
	}
	if got := Explains(speaker()).Slid(e, &e.Sliders[0], 2.5) + " " + Explains(inches()).Slid(e, &e.Sliders[1], 50.8); got != `2.5° 2"` {
		t.Errorf("sliders stand at %q", got)
	}
}
