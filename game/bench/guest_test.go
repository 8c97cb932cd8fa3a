package bench

import (
	"testing"

	"leafwright/game"
	"leafwright/geom/fit"
	"leafwright/geom/trim"
)

// Whatever is done to a job that is only shown, it stays as it was sent.
func TestGuestStaysAsSent(t *testing.T) {
	job := game.Blank(762, 1981, 35)
	job.Name = "Sent"
	s := Guest(job)
	sent := string(game.Encode(*s.Job()))
	s.Type("name", "Mine")
	s.Type("leaf.width", "700")
	s.Type("leaf.width", "nonsense")
	s.Add("options")
	s.AddOption()
	s.PutMove(trim.Move{Kind: trim.Plane, Edge: fit.HeadSide, First: 1, Last: 1})
	s.SetKeeps(true)
	s.PutMove(trim.Move{Kind: trim.Plane, Edge: fit.HeadSide, First: 1, Last: 1})
	s.Paste("kind, at, value\nleaf width, 1000, 760\n")
	s.Remove("hinges[0]")
	s.Open(game.Blank(700, 1981, 35))
	s.Undo()
	s.Redo()
	for _, tool := range s.Tools() {
		if s.Key(tool.Key, false); s.Tool() != Swing {
			t.Errorf("the tool %s is in hand", tool.Name)
		}
	}
	if got := string(game.Encode(*s.Job())); got != sent {
		t.Errorf("the job is now\n%s\nand was\n%s", got, sent)
	}
	if s.CanUndo() || s.CanRedo() || !s.IsGuest() {
		t.Error("there is something to undo or redo, or it is no guest any more")
	}
	before := s.Swing()
	s.SetSwing(before + 20)
	if s.Swing() == before {
		t.Error("the leaf cannot be swung")
	}
}

// A bench that takes up a job of its own after one that was only shown can change it.
func TestOwnAfterGuest(t *testing.T) {
	s := Guest(game.Blank(762, 1981, 35))
	s.Take(New(game.Blank(762, 1981, 35)))
	s.Type("leaf.width", "750")
	if s.IsGuest() || s.Job().Door.Leaf.Width != 750 {
		t.Errorf("guest %v, width %v", s.IsGuest(), s.Job().Door.Leaf.Width)
	}
}
