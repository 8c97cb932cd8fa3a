package bench

import (
	"strings"
	"testing"
)

// A reading that cannot be taken is still told of when the card has gone on, until it is
// mended.
func TestARefusedReadingIsToldOfUntilItIsMended(t *testing.T) {
	s := own(t)
	first := s.Card()[s.Asked()].Path
	s.Type(first, "76 ells")
	if notes := s.Misfits(); len(notes) != 0 {
		t.Errorf("while it is typed: %v", notes)
	}
	s.Advance()
	notes := s.Misfits()
	if len(notes) != 1 || notes[0].Path != first || !strings.Contains(notes[0].Text, "76 ells") {
		t.Fatalf("after it: %v", notes)
	}
	s.Ask(first)
	s.Type(first, "767")
	s.Advance()
	if notes := s.Misfits(); len(notes) != 0 {
		t.Errorf("mended: %v", notes)
	}
}
