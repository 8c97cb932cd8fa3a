package lesson

import (
	"math"
	"strings"
	"testing"

	"leafwright/game/words"
	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fault"
	"leafwright/geom/trim"
)

func line(at0, x0, at1, x1 float64) geom.Profile { return geom.Through(at0, x0, at1, x1) }

// play does the acts and judges.
func play(t *testing.T, l *Lesson, acts ...Act) (*Play, *Judgement) {
	t.Helper()
	p, err := Replay(l, acts)
	if err != nil {
		t.Fatal(err)
	}
	return p, p.Judge()
}

func work(m trim.Move) Act           { return Act{Deed: Work, Move: m} }
func naming(kinds ...fault.Kind) Act { return Act{Deed: Name, Faults: kinds} }
func planed(e door.Edge, mm float64) Act {
	return work(trim.Move{Kind: trim.Plane, Edge: e, First: mm, Last: mm})
}

// text is all that is said of a judgement.
func text(l *Lesson, j *Judgement) string {
	var b strings.Builder
	for _, p := range TellerOf(l, speaker()).Judged(j) {
		b.WriteString(p.Title + "\n" + strings.Join(p.Lines, "\n") + "\n")
	}
	return b.String()
}

func saysAll(t *testing.T, said string, phrases ...string) {
	t.Helper()
	for _, p := range phrases {
		if !strings.Contains(said, p) {
			t.Errorf("%q is not said in\n%s", p, said)
		}
	}
}

// A leaf that is too wide, planed twice as far as it need be, and the top planed for
// nothing before.
func TestTimberWastedIsToldMoveByMove(t *testing.T) {
	l := named(t, "01")
	p, j := play(t, l, planed(door.HeadSide, 0.5), naming(fault.LeafWide), planed(door.LatchSide, 3), planed(door.LatchSide, 2.5), Act{Deed: Finish})
	if len(p.moves) != 3 || len(j.Moves) != 3 {
		t.Fatalf("%d moves", len(j.Moves))
	}
	h, w := l.Job.LeafHeight, l.Job.Door.Leaf.Width
	thick := l.Job.Door.Leaf.Thickness
	by := (0.5*w + 5.5*h) * thick / 1000 // cm³, square edges; the leaf's are bevelled a little
	if math.Abs(j.Timber-by)/by > 0.05 {
		t.Errorf("%v cm³, and %v by hand", j.Timber, by)
	}
	if !j.Late || len(j.Right) != 1 {
		t.Errorf("named after the first cut: late %v, right %v", j.Late, j.Right)
	}
	if !j.Moves[0].Needless || j.Moves[1].Needless || j.Moves[2].Needless && j.Moves[2].Enough != 0 {
		t.Errorf("needless: %v %v %v", j.Moves[0].Needless, j.Moves[1].Needless, j.Moves[2].Needless)
	}
	gap := j.Moves[1].Gaps[door.LatchSide]
	if d := gap.LeastAfter - gap.LeastBefore; math.Abs(d-3) > 0.05 {
		t.Errorf("3 mm planed off, and the gap grew by %v", d)
	}
	if j.Moves[1].Gaps[door.HingeSide].Moved() {
		t.Error("the hinge side's gap changed")
	}
	if !j.Good {
		t.Errorf("%v", j.Out)
	}
	saysAll(t, text(l, j), "It was not needed: without it the door would hang no worse.", "Less would have done: plane the closing edge", "went for nothing",
		"You named it only after work had begun.", "You named it rightly: leaf too wide.")
}

// A leaf that hangs wrong, planed to fit as it hangs.
func TestAWrongDiagnosisIsTold(t *testing.T) {
	l := named(t, "03")
	_, j := play(t, l, Act{Deed: Try}, naming(fault.LeafWide), planed(door.LatchSide, 4), Act{Deed: Finish})
	if j.Good || len(j.Wrong) != 1 || len(j.Missed) != 1 || j.Late || j.Wasted() < 200 {
		t.Errorf("%+v", j)
	}
	saysAll(t, text(l, j), "You named what was not there: leaf too wide.", "Not named: top hinge drawn off its seat.", "putting it right as it was found takes none.")
}

func TestAFrameWorkedForNothingIsTold(t *testing.T) {
	l := named(t, "01")
	_, j := play(t, l, naming(fault.LeafWide), work(trim.Move{Kind: trim.PlaneJamb, Edge: door.LatchSide, First: 5, Last: 5}), Act{Deed: Finish})
	if !j.FrameSpoilt() || j.Timber != 0 {
		t.Errorf("frame %v, timber %v", j.Frame, j.Timber)
	}
	saysAll(t, text(l, j), "The frame was worked, and need not have been.")
}

func TestLimitsPassedAreTold(t *testing.T) {
	l := named(t, "01")
	_, j := play(t, l, planed(door.LatchSide, 9))
	if len(j.Limits) != 3 || j.Limits[0].Kept() || !j.Limits[1].Kept() {
		t.Errorf("%+v", j.Limits)
	}
	saysAll(t, text(l, j), "Past the limit set for timber: 500 cm³ allowed, ")
}

// Asked at any point, hints lead on: from a question, to where to look, to the answer;
// and a learner who goes another way is led on from there.
func TestHintsGoInSteps(t *testing.T) {
	l := named(t, "09")
	p := Begin(l)
	ask := func() Hint {
		t.Helper()
		s, err := p.Do(Act{Deed: Ask})
		if err != nil {
			t.Fatal(err)
		}
		return s.Hint
	}
	do := func(a Act) {
		t.Helper()
		if _, err := p.Do(a); err != nil {
			t.Fatal(err)
		}
	}
	if h := ask(); h.Matter != TryFirst {
		t.Errorf("%+v", h)
	}
	do(Act{Deed: Try})
	first := l.Faults[0].Kind
	for _, rung := range []Rung{Question, Look, Answer, Answer} {
		if h := ask(); h.Matter != Diagnose || h.Rung != rung || h.Fault != first || (h.Read != nil) != (rung == Look) {
			t.Errorf("%+v, and rung %d is wanted", h, rung)
		}
	}
	do(naming(first, fault.PinsLean))
	if h := ask(); h.Matter != Diagnose || h.Rung != Question || h.Fault != l.Faults[1].Kind {
		t.Errorf("%+v", h)
	}
	do(naming(l.Kinds()[0], l.Kinds()[1], fault.PinsLean))
	if h := ask(); h.Matter != Strike || h.Fault != fault.PinsLean {
		t.Errorf("%+v", h)
	}
	do(naming(l.Kinds()...))
	do(planed(door.HeadSide, 4.5)) // out of turn, and rightly
	for range 60 {
		h := ask()
		if h.Matter == Spoilt {
			t.Fatal("no way on")
		}
		if a, ok := h.Follow(); ok {
			do(a)
		}
		if p.Over() != "" {
			break
		}
	}
	if j := p.Judge(); !j.Good || p.Over() != Finish {
		t.Errorf("%q, %v", p.Over(), j.Out)
	}
}

// Who is told the answer is not said to have found it, and stays on the level.
func TestThePathGoesByWhatWasUnderstood(t *testing.T) {
	l := named(t, "01")
	ask := Act{Deed: Ask}
	right := []Act{{Deed: Try}, naming(fault.LeafWide), planed(door.LatchSide, 5), {Deed: Finish}}
	for _, c := range []struct {
		name  string
		acts  []Act
		next  int // after level 3
		given bool
	}{
		{"understood", right, 4, false},
		{"helped by a question and a place to look", append([]Act{{Deed: Try}, ask, ask}, right[1:]...), 4, false},
		{"told by a hint", append([]Act{{Deed: Try}, ask, ask, ask}, right[1:]...), 3, true},
		{"named late", []Act{planed(door.LatchSide, 5), naming(fault.LeafWide), {Deed: Finish}}, 3, false},
		{"not named", []Act{planed(door.LatchSide, 5), {Deed: Finish}}, 3, false},
		{"named, not cured", []Act{naming(fault.LeafWide), {Deed: Finish}}, 3, false},
		{"given up", []Act{{Deed: Try}, {Deed: GiveUp}}, 2, false},
	} {
		_, j := play(t, l, c.acts...)
		if got := j.Next(3); got != c.next || (len(j.Given) > 0) != c.given {
			t.Errorf("%s: on to level %d, given away %v", c.name, got, j.Given)
		}
		if said := text(l, j); c.given != strings.Contains(said, "A hint had given away: leaf too wide.") {
			t.Errorf("%s:\n%s", c.name, said)
		}
	}
	_, j := play(t, l, right...)
	if j.Next(len(Levels)) != len(Levels) {
		t.Error("past the last level")
	}
}

// A leaf with far too much off may have no way left; that is told, and ends.
func TestASpoiltDoorIsTold(t *testing.T) {
	l := named(t, "02")
	p := Begin(l)
	do := func(a Act) Seen {
		t.Helper()
		s, err := p.Do(a)
		if err != nil {
			t.Fatal(err)
		}
		return s
	}
	do(Act{Deed: Try})
	do(naming(l.Kinds()...))
	for range 3 {
		do(work(trim.Move{Kind: trim.Cut, Edge: door.FloorSide, First: 60, Last: 60}))
	}
	for range 60 {
		h := do(Act{Deed: Ask}).Hint
		if a, ok := h.Follow(); ok {
			do(a)
		}
		if p.Over() != "" {
			return
		}
	}
	t.Error("the hints never end")
}

func TestTheLessonsOwnHintsComeFirst(t *testing.T) {
	l := *named(t, "01")
	l.Hints = []string{"One.", "Two."}
	p := follow(t, &l)
	for i, want := range l.Hints {
		if h := p.Seen[i].Hint; h.Matter != Written || h.Text != want {
			t.Errorf("%+v", h)
		}
	}
	within(t, &l, p)
}

// Every kind of fault has its own words, and none of a region's words is left to fill.
func TestEveryFaultIsTold(t *testing.T) {
	for _, region := range words.Regions {
		te := TellerOf(named(t, "01"), &words.Speaker{Lexicon: words.For(region)})
		called := map[string]bool{}
		for i := range fault.All {
			k := fault.All[i].Kind
			called[te.Fault(k)] = true
			said := te.Fault(k) + te.Why(k)
			for rung := Question; rung <= Answer; rung++ {
				for _, matter := range []Matter{Diagnose, Strike} {
					line := te.Hint(&Hint{Matter: matter, Rung: rung, Fault: k})
					if len(line) < 20 {
						t.Errorf("%s, rung %d: %q", k, rung, line)
					}
					said += line
				}
			}
			if strings.ContainsAny(said, "{}0123456789") || te.Why(k) == "" {
				t.Errorf("%s %s: %s", region, k, said)
			}
		}
		if len(called) != len(fault.All) {
			t.Errorf("%d names of %d faults", len(called), len(fault.All))
		}
	}
}

// Every kind of symptom is told, by eye, at every degree.
func TestEverySymptomIsTold(t *testing.T) {
	te := TellerOf(named(t, "01"), speaker())
	for _, k := range []fault.SymptomKind{
		fault.Rubs, fault.RubsSwinging, fault.RubsFloor, fault.SpringsBack, fault.HitsStop, fault.LatchMisses, fault.Rattles, fault.StandsOff,
		fault.SwingsOpen, fault.SwingsShut, fault.Light, fault.Hairline, fault.Creaks, fault.HingeOpen,
	} {
		for d := fault.Slight; d <= fault.Gross; d++ {
			for e := range door.Edges {
				for _, over := range []geom.Interval{geom.Empty(), {Lo: 100, Hi: 300}, {Lo: 0, Hi: 2000}} {
					said := te.Symptom(fault.Symptom{Kind: k, Edge: e, Stretch: over, At: 200, Hinge: 1, Degree: d})
					if len(said) < 12 || said[len(said)-1] != '.' || strings.Contains(said, "  ") || strings.ToUpper(said[:1]) != said[:1] {
						t.Errorf("%s %d on %d: %q", k, d, e, said)
					}
				}
			}
		}
	}
}
