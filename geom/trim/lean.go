package trim

// Lean notes, on every step of one list, the last move before it that is refused and that it leans
// on: its numbers were thought out for what that one would have left. One that makes the
// place anew in between stands in for the refused one. [All] does it; it is for steps that
// were made one by one.
func Lean(steps []Step) {
	for i := range steps {
		s := &steps[i]
		for k := i - 1; k >= 0 && !s.Move.Off; k-- {
			before := &steps[k]
			if before.Move.Off || !s.Move.leans(&before.Move) {
				continue
			}
			if before.Why != nil {
				if before.Why.About.empty() {
					continue
				}
				s.Done.Cares = append(s.Done.Cares, Care{About: WithoutMove, Member: Member{Index: k}})
				break
			}
			if before.Move.renews() {
				break
			}
		}
	}
}

// empty tells of a reason for which a move would have left nothing to lean on: it is of
// nothing that there is, or changes nothing.
func (a About) empty() bool { return a == NotThere || a == NoAmount || a == NoPacker || a == SoAlready }

// renews tells whether a move makes its place anew, so that what follows on it leans on
// this one and on none before.
func (m *Move) renews() bool {
	switch m.Kind {
	case Splice, Reuse, Rehinge, Follow:
		return true
	}
	return false
}

// leans tells whether what a move comes to turns on another before it: both are done to
// one edge, one hinge or one side of the frame, or it uses what the other leaves.
func (m *Move) leans(before *Move) bool {
	a, b := SpecOf(m.Kind), SpecOf(before.Kind)
	switch {
	case a == nil || b == nil || a.Trade != b.Trade || m.Kind == Follow: // it follows the leaf however that hangs
		return false
	case a.Trade == TheHinges:
		return m.Hinge == 0 || before.Hinge == 0 || m.Hinge == before.Hinge
	case m.Kind == Reuse && (before.Kind == Cut || before.Kind == Undercut): // the offcut is of the other end
		return true
	}
	return m.Edge == before.Edge && (m.Kind == Restop) == (before.Kind == Restop || before.Kind == Follow)
}
