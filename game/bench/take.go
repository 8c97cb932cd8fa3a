package bench

// Take puts what another bench holds on this one, so that a page may go on with the
// bench it has. The other must not be used again.
func (s *State) Take(other *State) {
	jobs, looks, at := s.jobs, s.looks, s.sheet
	*s = *other
	s.sheet = sheet{w: at.w, h: at.h}
	s.measure() // what was measured looks into the other's memory
	s.jobs, s.looks = max(s.jobs, jobs)+1, max(s.looks, looks)+1
}
