package bench

import (
	"slices"
	"strings"
	"testing"

	"leafwright/game"
	"leafwright/geom/trim"
)

// What to take care of stands beside the first move that asks for it, and beside no
// other; a move that is off asks for nothing.
func TestCautionsBesideMoves(t *testing.T) {
	job := game.Blank(762, 1981, 40)
	plane := job.NewMove(trim.Plane)
	off := plane
	off.Off = true
	job.Options = []game.Option{{Moves: []trim.Move{off, plane, plane}}}
	s := New(job)
	s.ShowOption(0)
	lines := s.MoveLines()
	lead := func(i int) bool {
		return slices.ContainsFunc(lines[i].Care, func(c game.Caution) bool { return strings.Contains(c.Text, "lead") })
	}
	if lead(0) || !lead(1) || lead(2) {
		t.Errorf("old paint is spoken of at %v, %v and %v: %+v", lead(0), lead(1), lead(2), lines)
	}
	for _, c := range game.StepCautions(s.Job(), &plane) {
		if !slices.Contains(lines[1].Care, c) {
			t.Errorf("%q is not beside the move", c.Text)
		}
	}
}
