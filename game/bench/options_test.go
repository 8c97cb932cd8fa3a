package bench

import (
	"slices"
	"strconv"
	"strings"
	"testing"

	"leafwright/game"
	"leafwright/game/internal/demos"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
	"leafwright/geom/trim"
)

// bare gives a bench with a job that has no options and nothing made.
func bare(t testing.TB) *State {
	t.Helper()
	job := demos.Job(t, demo)
	job.Options, job.Made = nil, nil
	return New(job)
}

func stroke(mm float64) trim.Move {
	return trim.Move{Kind: trim.Plane, Edge: fit.LatchSide, First: mm, Last: mm}
}

func putMove(t *testing.T, s *State, m trim.Move) {
	t.Helper()
	if err := s.PutMove(m); err != nil {
		t.Fatal(err)
	}
}

// latchGap is the least gap at the latch side of the door shown.
func latchGap(s *State) float64 { return s.fit.Gaps[fit.LatchSide].Least }

// A first stroke makes an option and shows it, more of them add up, each is a step to
// undo, and the gap follows: planed off a plumb closing edge the gap grows by as much,
// but for the turn of the closed leaf, which is far below a thousandth.
func TestStrokes(t *testing.T) {
	s := bare(t)
	found := latchGap(s)
	for range 3 {
		putMove(t, s, stroke(0.5))
	}
	job := s.Job()
	if len(job.Options) != 1 || len(job.Options[0].Moves) != 1 || job.Options[0].Moves[0].First != 1.5 || s.Shown() != 0 {
		t.Fatalf("%+v, shown %d", job.Options, s.Shown())
	}
	if job.OptionName(0) != "Option 1" {
		t.Errorf("it is called %q", job.OptionName(0))
	}
	if got := latchGap(s) - found; got < 1.4 || got > 1.6 {
		t.Errorf("1.5 mm off give %.3f mm of gap", got)
	}
	if n := len(s.Steps()); n != 1 || s.Steps()[0].Why != nil {
		t.Errorf("%d steps: %+v", n, s.Steps())
	}
	s.ShowOption(AsFound)
	if latchGap(s) != found || len(s.Steps()) != 0 {
		t.Error("as found it is not as it was")
	}
	other := trim.Move{Kind: trim.Plane, Edge: fit.HeadSide, First: 1, Last: 1}
	s.ShowOption(0)
	putMove(t, s, other)
	putMove(t, s, stroke(0.5)) // not the last move's edge
	if n := len(s.Job().Options[0].Moves); n != 3 {
		t.Fatalf("%d moves", n)
	}
	for range 2 {
		s.Undo()
	}
	if got := s.Job().Options[0].Moves; len(got) != 1 || got[0].First != 1.5 {
		t.Errorf("two undone: %+v", got)
	}
	for range 3 {
		s.Undo()
	}
	if len(s.Job().Options) != 0 || s.Shown() != AsStands || s.CanUndo() || latchGap(s) != found {
		t.Error("undone to the start it is not as it was")
	}
	for s.CanRedo() {
		s.Redo()
	}
	if n := len(s.Job().Options[0].Moves); n != 3 || s.Shown() != 0 {
		t.Errorf("done again: %d moves, shown %d", n, s.Shown())
	}
}

// What is previewed is what is then made, and taken away leaves nothing.
func TestPreview(t *testing.T) {
	for _, keeps := range []bool{false, true} {
		s := bare(t)
		s.SetKeeps(keeps)
		putMove(t, s, stroke(0.5))
		before, gap := encoded(s), latchGap(s)
		words := s.Headline()
		jobs, looks := s.Changes()
		m := stroke(0.7)
		step := s.Preview(&m)
		if step.Why != nil || step.Move.First != 1.2 {
			t.Fatalf("keeps %v: %+v", keeps, step)
		}
		seen := latchGap(s)
		if seen-gap < 0.6 || encoded(s) != before {
			t.Errorf("keeps %v: the gap went from %.3f to %.3f, or the job was changed", keeps, gap, seen)
		}
		if j, l := s.Changes(); j != jobs || l == looks {
			t.Error("a preview is to be drawn and not to be kept")
		}
		if got, is := s.Previewed(); !is || got.Move.First != step.Move.First {
			t.Error("it is not told")
		}
		s.Findings()
		s.Preview(nil)
		if _, is := s.Previewed(); is || latchGap(s) != gap || s.Headline() != words {
			t.Error("it left something behind")
		}
		s.Preview(&m)
		putMove(t, s, m)
		if _, is := s.Previewed(); is || latchGap(s) != seen {
			t.Errorf("keeps %v: made it gives %.6f, previewed it gave %.6f", keeps, latchGap(s), seen)
		}
		bad := trim.Move{Kind: trim.Shift, Hinge: 9, On: trim.OnBoth, First: 1}
		if step := s.Preview(&bad); step.Why == nil || latchGap(s) != seen {
			t.Error("a move that cannot be done was shown as if it were")
		}
		if step := s.PreviewAt(99, m); step.Why == nil {
			t.Error("a move was put nowhere")
		}
	}
}

// A move in the middle of the list is tried with those after it.
func TestPreviewAt(t *testing.T) {
	s := bare(t)
	putMove(t, s, stroke(1))
	putMove(t, s, trim.Move{Kind: trim.Plane, Edge: fit.HeadSide, First: 1, Last: 1})
	s.PreviewAt(0, stroke(2))
	seen := s.fit
	if err := s.AlterMove(0, stroke(2)); err != nil {
		t.Fatal(err)
	}
	if s.fit.Gaps[fit.LatchSide].Least != seen.Gaps[fit.LatchSide].Least || s.fit.Gaps[fit.HeadSide].Least != seen.Gaps[fit.HeadSide].Least {
		t.Error("tried and made it is not the same")
	}
	s.Undo()
	if s.Job().Options[0].Moves[0].First != 1 {
		t.Error("it is more than one step")
	}
}

// The option shown stays shown while others come, go and change places.
func TestShownOptionStaysShown(t *testing.T) {
	s := bare(t)
	for _, name := range []string{"one", "two", "three"} {
		if err := s.Add("options"); err != nil {
			t.Fatal(err)
		}
		s.Type(game.OptionPath(int(s.Shown()))+".name", name)
		s.Settle()
	}
	want := func(name string) {
		t.Helper()
		if got := s.Shown(); got < 0 || s.Job().OptionName(int(got)) != name {
			t.Errorf("%d is shown, want %q", got, name)
		}
	}
	want("three")
	s.ShowOption(1)
	want("two")
	s.Type("options[0].place", "3")
	s.Settle()
	want("two")
	s.Type("options[0].place", "2")
	s.Settle()
	want("two")
	if err := s.Remove("options[0]"); err != nil {
		t.Fatal(err)
	}
	want("two")
	s.Type("options[0].name", "\x01")
	if err := s.Add("options[0].copy"); err != nil {
		t.Fatal(err)
	}
	if s.Drafts() != 0 {
		t.Error("a draft now stands by another option")
	}
	if got := s.Job().OptionName(int(s.Shown())); !strings.HasPrefix(got, "two") || s.Shown() != 1 {
		t.Errorf("%q is shown", got)
	}
	if err := s.Remove("options[1]"); err != nil {
		t.Fatal(err)
	}
	if s.Shown() != AsStands {
		t.Errorf("%d is shown, and that option is gone", s.Shown())
	}
}

// The findings of a door after moves have margins too: the readings' errors go
// through the moves, and a parallel stroke neither adds to them nor takes any away.
func TestMarginsAfterMoves(t *testing.T) {
	job := demos.Job(t, largest)
	job.Options, job.Made = nil, nil
	s := New(job)
	s.Weigh()
	margin := func() (m float64) {
		for _, f := range s.found {
			if f.Edge == fit.LatchSide && f.Subject == judge.ClosedGap {
				m = f.Margin
			}
		}
		return m
	}
	found := margin()
	if found == 0 {
		t.Fatal("nothing is known of the latch side")
	}
	putMove(t, s, stroke(1))
	if !s.Unsure() || margin() != 0 {
		t.Error("it is weighed already")
	}
	s.Weigh()
	if got := margin(); got < 0.5*found || got > 2*found {
		t.Errorf("± %.3f, as found %.3f", got, found)
	}
	s.ShowOption(AsFound)
	s.Weigh()
	if got := margin(); got != found {
		t.Errorf("as found again ± %.3f, before %.3f", got, found)
	}
}

// The margins of the swing come a little at a time, and any change drops them.
func TestWeighMore(t *testing.T) {
	s := New(demos.Job(t, largest))
	known := func() bool {
		return slices.ContainsFunc(s.found, func(f judge.Finding) bool { return f.Subject == judge.ClearWay && f.Margin > 0 })
	}
	if !s.WeighMore() || s.Swinging() {
		t.Error("there is something to do before it is weighed")
	}
	s.Weigh()
	if known() {
		t.Fatal("the swing is known already")
	}
	jobs, _ := s.Changes()
	slices := 1
	for !s.WeighMore() {
		if slices++; slices > 10_000 {
			t.Fatal("it never ends")
		}
	}
	if now, _ := s.Changes(); !known() || s.Swinging() || now == jobs {
		t.Errorf("after %d slices the swing is not known, or it is not told", slices)
	}
	if slices < 2 {
		t.Error("it is all done at once")
	}
	s.Type("name", "Pantry")
	if known() || s.Swinging() || !s.Unsure() {
		t.Error("a change left it")
	}
	s.Weigh()
	s.WeighMore()
	s.ShowOption(AsFound)
	if s.Swinging() {
		t.Error("another door goes on with the work of the one before")
	}
	t.Logf("%d slices", slices)
}

// One event of the pointer: a move tried and the drawing made anew.
func BenchmarkPreview(b *testing.B) {
	job := demos.Job(b, largest)
	s := New(job)
	for i := 0; b.Loop(); i++ {
		m := stroke(0.1 + 0.01*float64(i%50))
		s.Preview(&m)
		s.Drawing(1040, 780)
	}
}

func BenchmarkPutMove(b *testing.B) {
	s := New(demos.Job(b, largest))
	if err := s.Add("options"); err != nil {
		b.Fatal(err)
	}
	for i := 0; b.Loop(); i++ {
		m := stroke(0.1)
		m.Note = "x" + strconv.Itoa(i)
		if err := s.PutMove(m); err != nil {
			b.Fatal(err)
		}
		s.Undo()
	}
}

func BenchmarkWeighMore(b *testing.B) {
	s := New(demos.Job(b, largest))
	for b.Loop() {
		if s.WeighMore() {
			b.StopTimer()
			s.Type("name", strconv.Itoa(b.N))
			s.Weigh()
			b.StartTimer()
		}
	}
}
