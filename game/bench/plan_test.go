package bench

import (
	"strings"
	"testing"

	"leafwright/game"
	"leafwright/geom/door"
	"leafwright/geom/trim"
)

// An option put whole is one step, shown at once, and gone with one undo.
func TestPutOption(t *testing.T) {
	s := New(game.Blank(762, 1981, 35))
	text := game.OptionText(game.Option{Name: "Plane and pack", Moves: []trim.Move{
		{Kind: trim.Plane, Edge: door.HeadSide, Last: 3},
		{Kind: trim.Pack, Hinge: 1, On: trim.OnLeaf, First: 1},
	}})
	if err := s.PutOption(text); err != nil {
		t.Fatal(err)
	}
	if s.Shown() != 0 || len(s.Steps()) != 2 || s.Job().OptionName(0) != "Plane and pack" {
		t.Errorf("shown is %d, with %d moves, called %q", s.Shown(), len(s.Steps()), s.Job().OptionName(0))
	}
	if err := s.PutOption(text); err != nil || s.Shown() != 1 || s.Job().OptionName(1) != "Plane and pack 2" {
		t.Errorf("the second: error %v, shown %d", err, s.Shown())
	}
	s.Undo()
	s.Undo()
	if n := len(s.Job().Options); n != 0 || s.Shown() >= 0 || s.CanUndo() {
		t.Errorf("after undo there are %d options, shown is %d", n, s.Shown())
	}
	s.Redo()
	if s.Shown() != 0 || len(s.Steps()) != 2 {
		t.Errorf("after redo shown is %d, with %d moves", s.Shown(), len(s.Steps()))
	}
	before := s.Job()
	for _, bad := range []string{"One\n{", "One\n{}\n{\"do\":\"fly\"}", "One\n" + strings.Repeat(game.MoveText(trim.Move{Kind: trim.Plane, First: 1})+"\n", game.MovesMost+1)} {
		if err := s.PutOption(bad); err == nil || s.Job() != before {
			t.Errorf("%.30q was taken", bad)
		}
	}
}
