package game

import "leafwright/geom"

// slant is the one number of a straight edge that is out by so much at its far
// end: a head that falls, a jamb that leans, a leaf in wind. It is offered where
// the edge is just that, and the stations where it is more.
type slant struct {
	name, label, help string
	// sign turns the rise from the first end of the edge's span to the last into
	// the number a person gives.
	sign func(j *Job) float64
	// only tells whether the number says all; nil where it always does.
	only func(j *Job) bool
}

// simple tells whether p is straight with a station at each end, or one value.
func (s *slant) simple(p geom.Profile, first, last float64, j *Job) bool {
	if s.only != nil && !s.only(j) {
		return false
	}
	switch len(p) {
	case 0, 1:
		return true
	case 2:
		return p[0].At == min(first, last) && p[1].At == max(first, last)
	}
	return false
}

// by gives the number.
func (s *slant) by(p geom.Profile, first, last float64, j *Job) float64 {
	return s.sign(j)*(p.At(last)-p.At(first)) + 0
}

// lean gives the edge with another number; its value at the first end stays.
func (s *slant) lean(p geom.Profile, first, last float64, j *Job, by float64) geom.Profile {
	stay := p.At(first)
	far := stay + s.sign(j)*by
	if first < last {
		return geom.Through(first, stay, last, far)
	}
	return geom.Through(last, far, first, stay)
}

// The two ends of the edges' spans, the one measured from first.
func up(j *Job) (float64, float64)             { return 0, j.OpeningHeight }
func upTheLeaf(j *Job) (float64, float64)      { return 0, j.LeafHeight }
func overTheLeaf(j *Job) (float64, float64)    { return 0, j.Door.Leaf.Width }
func overTheOpening(j *Job) (float64, float64) { return 0, j.side() * j.OpeningWidth }
func plus(*Job) float64                        { return 1 }
func minus(*Job) float64                       { return -1 }
func towardsLatch(j *Job) float64              { return j.side() }
func towardsHinges(j *Job) float64             { return -j.side() }

var (
	leafWider   = slant{name: "wider", label: "Wider at the top by", sign: plus}
	topFalls    = slant{name: "falls", label: "Top falls towards the latch by", sign: minus}
	bottomRises = slant{name: "rises", label: "Bottom rises towards the latch by", sign: plus}
	wind        = slant{
		name: "wind", label: "Wind: top closing corner out by", sign: plus,
		help: "How far it stands out of the plane of the other three corners, towards the knuckle side above 0.",
		only: func(j *Job) bool {
			l := &j.Door.Leaf
			for _, s := range l.HangingFace {
				if s.Value != 0 {
					return false
				}
			}
			return l.ClosingFace.At(0) == 0
		},
	}
	hingeLeans = slant{name: "leans", label: "Hinge jamb leans in at the top by", sign: towardsLatch,
		help: "Into the opening above 0, over its height."}
	latchLeans = slant{name: "leans", label: "Latch jamb leans in at the top by", sign: towardsHinges,
		help: "Into the opening above 0, over its height."}
	headFalls       = slant{name: "falls", label: "Head falls towards the latch by", sign: minus}
	hingeFrontLeans = slant{name: "leans", label: "Hinge jamb leans towards you at the top by", sign: plus}
	latchFrontLeans = slant{name: "leans", label: "Latch jamb leans towards you at the top by", sign: plus,
		help: "The two jambs leaning unlike put the frame in wind."}
)
