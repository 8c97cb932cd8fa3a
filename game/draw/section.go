package draw

import (
	"leafwright/geom"
	"leafwright/geom/fit"
)

const sectionRadius = 10.0 // of the section line's handle, px

// sectionLevel gives where a section's height stands on the front picture: level,
// half way between where the two jambs have it.
func (s *Scene) sectionLevel(y float64) float64 {
	h := s.onFront(fit.HingeSide, geom.Vec{Y: y})
	l := s.onFront(fit.LatchSide, geom.Vec{Y: y})
	return (h.Y + l.Y) / 2
}

// sectionGrip gives the middle of the section line's handle, not mirrored: on the
// wall beside the latch.
func (s *Scene) sectionGrip() Pt {
	return Pt{s.outer.x1 - sectionRadius - 2, s.sectionLevel(s.section)}
}

// SectionGrip gives where the section line's handle was drawn on the sheet.
func (s *Scene) SectionGrip() Pt { return s.mirrored(s.sectionGrip(), s.frontBox) }

// drawSectionLine shows the height of the plan section on the front picture, with
// the handle that moves it.
func (s *Scene) drawSectionLine() {
	p := &s.pen
	c := s.sectionGrip()
	from := p.start()
	p.xy(s.outer.x0, c.Y)
	p.xy(s.outer.x1, c.Y)
	p.dash(from, Line, thin, 12, 3)
	if s.v.Still {
		return
	}
	if s.v.Grab.Kind == SectionLine {
		p.ring(c, sectionRadius+3, Handle, medium)
	}
	p.disc(c, sectionRadius, Handle)
	p.bothWays(c, Pt{0, 1}, 2.6, 7, 3.8)

}

// SectionAt gives the height y whose section line runs through a point of the
// front picture.
func (s *Scene) SectionAt(p Pt) float64 {
	lo, hi := -s.big.height, 2*s.big.height
	for range 60 { // the line rises with y
		y := (lo + hi) / 2
		if s.sectionLevel(y) > p.Y {
			lo = y
		} else {
			hi = y
		}
	}
	return (lo + hi) / 2
}
