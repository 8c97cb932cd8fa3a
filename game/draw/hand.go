package draw

// Hand lays down, on an emptied list, what a tool in hand takes hold of and does on the
// scene last drawn, and nothing of the door: for a page that shows the door as a picture
// and lays this over it. Work is nil while nothing is held. The scene must have been
// drawn with that tool as its [View.Held].
func Hand(s *Scene, l *List, w *Work) {
	v, list := s.v, s.pen.l
	l.Reset(v.Width, v.Height)
	s.v.Work, s.v.Still = w, false
	s.pen.l, s.pen.mirror, s.pen.axis = l, v.RightHung, s.frontBox.middle()
	s.setWork()
	s.drawWork()
	s.v, s.pen.l = v, list
}
