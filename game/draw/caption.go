package draw

import (
	"leafwright/geom/fit"
	"leafwright/geom/judge"
)

// captionRoom is the height a caption takes up at the foot of its picture.
func (s *Scene) captionRoom(b box, text string) float64 {
	n, _ := lines(text, s.v.captionSize(), b.width())
	if s.v.Month != "" {
		n++
	}
	return float64(n)*leading*s.v.captionSize() + 4
}

// caption writes a caption with its last line ending at foot, each line centred; before
// it the month the leaf is drawn in, where that is not now.
func (s *Scene) caption(b box, foot float64, text string) {
	size := s.v.captionSize()
	y := foot - s.captionRoom(b, text) + 4 + (leading-descent)*size
	if s.v.Month != "" {
		s.pen.text(Pt{b.middle(), y}, Middle, TextInk, size, true, s.words.say(monthly).say(s.v.Month).keep())
		y += leading * size
	}
	for _, even := lines(text, size, b.width()); text != ""; y += leading * size {
		var line string
		line, text = cut(text, size, even)
		s.pen.text(Pt{b.middle(), y}, Middle, TextMuted, size, false, line)
	}
}

// monthly comes before the month the leaf is drawn in.
const monthly = "The leaf as in "

// roomForMore is the height, px, of a picture whose caption need not be kept short.
const roomForMore = 440.0

// sayFront says how the front picture is drawn: above all that it is not true.
func (s *Scene) sayFront() string {
	w := &s.words
	if s.v.Small {
		if s.big.k == 1 {
			return w.say("True to scale").keep()
		}
		return w.say("Gaps ").factor(s.big.k).say(" times true size").keep()
	}
	if s.frontBox.height() > roomForMore {
		w.say("Seen from the knuckle side. ")
	}
	if s.v.Show == Both && s.swing > s.f.Closed { // the plan beside it shows the leaf open
		w.say("Drawn closed. ")
	}
	if s.big.k == 1 {
		return w.say("Drawn true to scale.").keep()
	}
	w.say("Gaps and departures drawn ").factor(s.big.k).say(" times true size; figures are true")
	if s.v.Format == nil {
		w.say(" mm")
	}
	w.say(".")
	if s.strays() {
		w.say(" Long dashes are plumb and level.")
	}
	if s.frontBox.height() > roomForMore && s.v.Sight == nil && s.showsGone() { // a kept sight has no room for more
		w.say(" Dashed and hatched: what has come off.")
	}
	return w.keep()
}

// factor writes a factor, with a decimal only when it has one.
func (w *words) factor(k float64) *words {
	if k == float64(int(k)) {
		return w.number(k, 0)
	}
	return w.number(k, 1)
}

// describe puts a title and a short account of the drawing on the list, for those
// who cannot see it.
func (s *Scene) describe(l *List) {
	switch s.v.Show {
	case Front:
		l.Title = "The door in its opening, from the front"
	case Plan:
		l.Title = "The door in its opening, in plan"
	default:
		l.Title = "The door in its opening, from the front and in plan"
	}
	w := &s.words
	if s.v.Month != "" {
		w.say(monthly).say(s.v.Month).say(". ")
	}
	w.say("Hinges on the ")
	if s.v.RightHung {
		w.say("right. ")
	} else {
		w.say("left. ")
	}
	for e := range fit.Edges {
		g := s.f.Gaps[e]
		if len(g.Pieces) == 0 {
			continue
		}
		v := s.w.Gaps[e].Judge(g.Least)
		if v == judge.Good {
			v = s.w.Gaps[e].Judge(g.Most)
		}
		w.say(edgeNames[e]).say(" ")
		s.gap(g.Least).say(" to ")
		s.gap(g.Most).say(", ").say(verdictNames[v]).say(". ")
	}
	if s.showsGone() {
		w.say("What has come off the leaf since it was found is dashed and hatched. ")
	}
	for i := range s.a.Strips {
		if e := s.a.Strips[i].Edge; e >= 0 && e < fit.Edges {
			w.say("A strip is glued to the ").say(leafEdges[e]).say(". ")
		}
	}
	if s.frontBox != (box{}) {
		w.say("Gaps and departures are drawn ").factor(s.big.k).say(" times true size in the front picture. ")
	}
	if s.planBox != (box{}) {
		w.say("The plan is true to scale, at ")
		s.length(s.section).say(", the leaf at ").degrees(s.swing.Degrees()).say(".")
	}
	l.Desc = w.keep()
}

var edgeNames = [fit.Edges]string{"Hinge side", "Latch side", "Head", "Floor"}

// leafEdges are the leaf's own edges.
var leafEdges = [fit.Edges]string{"hanging edge", "closing edge", "top", "foot"}

var verdictNames = [...]string{judge.Binds: "binds", judge.Tight: "tight", judge.Slack: "slack", judge.Good: "good"}
