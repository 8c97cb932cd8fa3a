package words

import (
	"leafwright/geom/fit"
	"leafwright/geom/survey"
)

// LeafEdge names an edge of the leaf, FrameSide the side of the frame it looks at, and
// HingeName the hinge of that place from the top, 0 the top one. Plain functions: the
// page needs none of them.
func LeafEdge(s *Speaker, e fit.Edge) string  { return s.leafEdge(e) }
func FrameSide(s *Speaker, e fit.Edge) string { return s.frameSide(e) }
func HingeName(s *Speaker, i int) string      { return s.hinge(survey.Reading{Hinge: i}) }
