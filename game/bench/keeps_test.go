package bench

import (
	"math/rand/v2"
	"slices"
	"strconv"
	"testing"

	"leafwright/game"
	"leafwright/geom/fit"
	"leafwright/geom/trim"
)

// What is done for keeps is neither undone nor changed by any path.
func TestForKeeps(t *testing.T) {
	s := bare(t)
	putMove(t, s, stroke(1))
	putMove(t, s, trim.Move{Kind: trim.Plane, Edge: fit.HeadSide, First: 1, Last: 1})
	before := latchGap(s)
	if k, why := s.Keepable(); k != 0 || why != nil {
		t.Fatalf("%d, %v", k, why)
	}
	if err := s.Keep(); err != nil {
		t.Fatal(err)
	}
	if n := len(s.Job().Made); n != 1 || len(s.Job().Options[0].Moves) != 1 || s.Shown() != 0 || latchGap(s) != before {
		t.Errorf("%d made, shown %d", n, s.Shown())
	}
	if s.CanUndo() || s.UndoStops() == "" {
		t.Error("a cut is undone")
	}
	s.Undo()
	if len(s.Job().Made) != 1 {
		t.Fatal("a cut was undone")
	}
	s.ShowOption(AsStands)
	if s.Keep() == nil {
		t.Error("kept, and no option is shown")
	}
	made := game.MoveText(s.Job().Made[0])
	for _, path := range []string{"made[0]", "made[0].first", "made[0].off", "made[0].edge", "made[0].do", "made[0].place", "made", "made[2]"} {
		for _, text := range []string{"true", "0", "3", "sink", game.MoveText(stroke(9))} {
			s.Type(path, text)
			s.Settle()
		}
		s.Add(path)
		s.Add(path + ".copy")
		s.Remove(path)
		if len(s.Job().Made) != 1 || game.MoveText(s.Job().Made[0]) != made {
			t.Fatalf("%s changed what was made: %+v", path, s.Job().Made)
		}
	}

	for range 2 { // another one made by the form's path is no typing that goes on
		s.Type(game.MadePath(len(s.Job().Made)), game.MoveText(trim.Move{Kind: trim.Plane, Edge: fit.HeadSide, First: 0.5, Last: 0.5}))
		if s.CanUndo() {
			t.Error("a cut made by the form's path is undone")
		}
		s.Type("made[1]", game.MoveText(stroke(9)))
		s.Type("made[1]", "x")
		s.Undo()
	}
	if n := len(s.Job().Made); n != 3 {
		t.Fatalf("%d made, want 3", n)
	}
	s.SetKeeps(true)
	if s.Shown() != AsStands {
		t.Error("for keeps an option is shown")
	}
	for range 2 {
		putMove(t, s, stroke(0.5))
	}
	job := s.Job()
	if n := len(job.Made); n != 4 || job.Made[3].First != 1 || s.CanUndo() {
		t.Errorf("made %+v, undo %v", job.Made, s.CanUndo())
	}
	if len(job.Options) != 1 {
		t.Errorf("%d options", len(job.Options))
	}
	if err := s.PutMove(trim.Move{Kind: trim.Shift, Hinge: 9, On: trim.OnBoth, First: 1}); err == nil || len(s.Job().Made) != 4 {
		t.Errorf("a move that cannot be done was made: %v", err)
	}
	s.Type("name", "Pantry")
	if s.UndoStops() != "" || !s.CanUndo() {
		t.Error("what came after the cut cannot be undone")
	}
	r, err := again(s)
	if err != nil || encoded(r) != encoded(s) {
		t.Fatalf("taken up as another job: %v", err)
	}
	r.Undo()
	if r.CanUndo() || r.UndoStops() == "" || !r.Keeps() {
		t.Error("taken up again the cut is undone")
	}
}

// Moves made grow and never change, whatever is done; undo stops at the last of them
// and redo comes to the same end.
func TestWhateverIsDoneForKeepsStays(t *testing.T) {
	for seed := range uint64(12) {
		rnd := rand.New(rand.NewPCG(seed, 7))
		s := bare(t)
		var made []string
		for i := range 80 {
			playMoves(s, rnd)
			now := texts(s.Job().Made)
			for k := range made {
				if k >= len(now) || k < len(made)-1 && now[k] != made[k] {
					t.Fatalf("seed %d, step %d: made were %q, now %q", seed, i, made, now)
				}
			}
			made = now
			if s.Shown() >= Shown(len(s.Job().Options)) {
				t.Fatalf("seed %d: option %d of %d is shown", seed, s.Shown(), len(s.Job().Options))
			}
			if _, is := s.Previewed(); is {
				continue
			}
			fresh := New(*s.Job())
			fresh.ShowOption(s.Shown())
			if latchGap(fresh) != latchGap(s) {
				t.Fatalf("seed %d, step %d: the door shown is not the one of the job", seed, i)
			}
		}
		for s.CanRedo() {
			s.Redo()
		}
		last := encoded(s)
		r, err := again(s)
		if err != nil || encoded(r) != last {
			t.Fatalf("seed %d: taken up as another job: %v", seed, err)
		}
		for r.CanUndo() {
			r.Undo()
			s.Undo()
			if encoded(r) != encoded(s) {
				t.Fatalf("seed %d: undone to different jobs", seed)
			}
		}
		if s.CanUndo() || !slices.Equal(texts(s.Job().Made), made) {
			t.Fatalf("seed %d: a cut was undone", seed)
		}
		for r.CanRedo() {
			r.Redo()
		}
		if encoded(r) != last {
			t.Fatalf("seed %d: redo leads elsewhere", seed)
		}
	}
}

func texts(moves []trim.Move) (out []string) {
	for _, m := range moves {
		out = append(out, game.MoveText(m))
	}
	return out
}

// playMoves does one thing a person might do with options.
func playMoves(s *State, rnd *rand.Rand) {
	n := len(s.Job().Options)
	i := 0
	if n > 0 {
		i = rnd.IntN(n)
	}
	switch rnd.IntN(16) {
	case 0, 1:
		s.Undo()
	case 2:
		s.Redo()
	case 3:
		s.Add("options")
	case 4:
		s.Add(game.CopyPath(game.OptionPath(i)))
	case 5:
		s.Add(game.AddMovePath(i, trim.Kinds[rnd.IntN(len(trim.Kinds))].Kind))
	case 6:
		s.Remove(game.OptionPath(i))
	case 7:
		s.Remove(game.MovePath(i, rnd.IntN(3)))
	case 8:
		s.Type(game.PlacePath(game.OptionPath(i)), strconv.Itoa(rnd.IntN(4)))
		s.Settle()
	case 9:
		s.Type(game.MovePath(i, rnd.IntN(3))+".off", []string{"true", "false"}[rnd.IntN(2)])
		s.Settle()
	case 10:
		s.Type(game.MovePath(i, rnd.IntN(3))+".first", []string{"2", "x", "1/8\""}[rnd.IntN(3)])
	case 11:
		s.ShowOption(Shown(rnd.IntN(n+4) - 3))
	case 12:
		if rnd.IntN(4) == 0 {
			s.Keep()
		}
	case 13:
		s.SetKeeps(rnd.IntN(4) == 0)
	case 14:
		m := stroke(0.2)
		s.Preview(&m)
	default:
		s.PutMove(stroke(0.3))
	}
}
