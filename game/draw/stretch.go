package draw

import (
	"leafwright/geom"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
)

// eachStretch shows every stretch of every closed gap that is not as wanted, the
// tight ones before the binding ones they hold.
func (s *Scene) eachStretch(show func(e fit.Edge, v judge.Verdict, over geom.Interval)) {
	for e := range fit.Edges {
		curve, want := s.f.Gaps[e].Curve, s.w.Gaps[e]
		least, most := want.Kept()
		s.stretches = curve.Below(least, s.stretches[:0])
		for _, over := range s.stretches {
			show(e, judge.Tight, over)
		}
		if want.Most > 0 {
			s.stretches = curve.Above(most, s.stretches[:0])
			for _, over := range s.stretches {
				show(e, judge.Slack, over)
			}
		}
		s.stretches = curve.Below(want.Bind(), s.stretches[:0])
		for _, over := range s.stretches {
			show(e, judge.Binds, over)
		}
	}
}

// drawClear fills a tight or a slack stretch between frame and leaf.
func (s *Scene) drawClear(e fit.Edge, v judge.Verdict, over geom.Interval) {
	ink, h := TightFill, tightHatch
	switch v {
	case judge.Binds:
		return
	case judge.Slack:
		ink, h = SlackFill, slackHatch
	}
	from := s.pen.start()
	s.between(e, over)
	s.pen.face(from, ink, ink, 0, h)
}

// drawBind lays the overlap over everything: filled, cross-hatched and edged with
// the heaviest line, so that a sliver shows too.
func (s *Scene) drawBind(e fit.Edge, v judge.Verdict, over geom.Interval) {
	if v != judge.Binds {
		return
	}
	from := s.pen.start()
	s.between(e, over)
	s.pen.face(from, BindFill, BindFill, heavy, bindHatch, bindCross)
}

// between adds the outline of what lies between the frame and the arris nearest
// to it, over a stretch of an edge.
func (s *Scene) between(e fit.Edge, over geom.Interval) {
	s.bends(e, over)
	for _, at := range s.places {
		s.pen.to(s.onFront(e, s.frameAt(e, at)))
	}
	for i := len(s.places) - 1; i >= 0; i-- {
		s.pen.to(s.onFront(e, s.leafAt(e, s.places[i])))
	}
}

// bends gathers in s.places, rising, the places where a gap's two sides may bend
// over a stretch, with its ends.
func (s *Scene) bends(e fit.Edge, over geom.Interval) {
	s.places = append(s.places[:0], over.Lo, over.Hi)
	add := func(at float64) {
		if over.Lo < at && at < over.Hi {
			s.places = append(s.places, at)
		}
	}
	for _, p := range s.f.Gaps[e].Pieces {
		add(p.Lo)
		if p.C2 != 0 {
			for i := 1; i < 4; i++ {
				add(p.Lo + (p.Hi-p.Lo)*float64(i)/4)
			}
		}
	}
	for _, q := range s.frame[e] {
		if e.Upright() {
			add(q.Y)
		} else {
			add(q.X)
		}
	}
	geom.Ascending(s.places)
}
