package draw

import (
	"math"

	"leafwright/geom"
	"leafwright/geom/fit"
)

// How near a finger must come, px. Handles are 44 across, as fingers need.
const (
	handleReach = 24.0
	lineReach   = 12.0
	edgeReach   = 22.0
	lensReach   = 48.0
)

// mirrored carries a point of an unmirrored picture to the sheet, and unmirror
// carries one back; turning over twice is not turning at all.
func (s *Scene) mirrored(p Pt, b box) Pt { return s.unmirror(p, b.middle()) }

func (s *Scene) unmirror(p Pt, axis float64) Pt {
	if s.v.RightHung {
		p.X = 2*axis - p.X
	}
	return p
}

// Hit tells what a point of the sheet belongs to on the drawing last made.
func (s *Scene) Hit(p Pt) Target {
	if s.planBox.holds(p) {
		if !s.v.Still && distance(p, s.Grip()) <= handleReach {
			return Target{Kind: SwingHandle}
		}
		if s.onCut(s.unmirror(p, s.planBox.middle())) {
			return Target{Kind: PlanLeaf}
		}
		if e, d := s.nearestJamb(p); d <= edgeReach {
			return Target{Kind: GapEdge, Edge: e, Place: s.section}
		}
		return Target{}
	}
	if !s.frontBox.holds(p) {
		return Target{}
	}
	work, off := Target{}, math.Inf(1)
	if s.v.Held != NoTool {
		work, off = s.hitWork(p)
	}
	if s.v.Show == Both {
		if d := distance(p, s.SectionGrip()); d <= handleReach && d < off {
			return Target{Kind: SectionLine}
		}
		q := s.unmirror(p, s.frontBox.middle())
		if s.v.Held == NoTool && s.outer.x0 <= q.X && q.X <= s.outer.x1 && math.Abs(q.Y-s.sectionLevel(s.section)) <= lineReach {
			return Target{Kind: SectionLine}
		}
	}
	if s.v.Held != NoTool {
		return work
	}
	if e, place, d := s.nearestEdge(p); d <= edgeReach {
		return Target{Kind: GapEdge, Edge: e, Place: place}
	}
	return Target{}
}

// onCut tells whether a point of the unmirrored plan lies on the leaf or so near
// that a finger means it.
func (s *Scene) onCut(p Pt) bool {
	const near = 8.0
	c := s.cutLeaf(s.section, s.now)
	mid := [2]Pt{between(c.knuckle[0], c.stop[0], 0.5), between(c.knuckle[1], c.stop[1], 0.5)}
	a, b := s.plan.to(mid[0]), s.plan.to(mid[1])
	return distance(p, nearest(a, b, p)) <= s.d.Leaf.Thickness*s.plan.s/2+near
}

// SwingAt gives the swing angle that brings the leaf's handle on a ray from the
// pin through a point of the plan, between closed and fully open.
func (s *Scene) SwingAt(p Pt) geom.Angle {
	q := s.plan.from(s.unmirror(p, s.planBox.middle()))
	pin := s.pinAt(s.section)
	grip := s.f.Pose.Point(s.gripPoint())
	a := math.Atan2(q.Y-pin.Y, q.X-pin.X) - math.Atan2(grip.Z-pin.Y, grip.X-pin.X)
	open := max(s.d.Opens, s.f.Closed)
	// of the turns that differ by a whole one, the one nearest the swing's middle
	mid := float64(s.f.Closed+open) / 2
	a += 2 * math.Pi * math.Round((mid-a)/(2*math.Pi))
	return geom.Angle(geom.Interval{Lo: float64(s.f.Closed), Hi: float64(open)}.Clamp(a))
}

// LensPoint gives where on the sheet a place of an edge is: on the front picture
// if it is shown, else at the jamb in plan.
func (s *Scene) LensPoint(e fit.Edge, place float64) Pt {
	if s.frontBox != (box{}) {
		a := s.onFront(e, s.frameAt(e, place))
		b := s.onFront(e, s.leafAt(e, place))
		return s.mirrored(between(a, b, 0.5), s.frontBox)
	}
	j := s.jamb(fit.HingeSide, s.section)
	if e == fit.LatchSide {
		j = s.jamb(e, s.section)
	}
	return s.mirrored(s.plan.to(Pt{j.face, (j.front + j.stop) / 2}), s.planBox)
}

// LensAt gives the edge and the place on it nearest to a point of the sheet, and
// whether it is near enough for the loupe.
func (s *Scene) LensAt(p Pt) (fit.Edge, float64, bool) {
	if s.planBox.holds(p) {
		e, d := s.nearestJamb(p)
		return e, s.section, d <= lensReach
	}
	if !s.frontBox.holds(p) {
		return 0, 0, false
	}
	e, place, d := s.nearestEdge(p)
	return e, place, d <= lensReach
}

// nearestJamb gives the jamb nearest to a point of the plan, and its distance.
func (s *Scene) nearestJamb(p Pt) (fit.Edge, float64) {
	p = s.unmirror(p, s.planBox.middle())
	best, edge := math.Inf(1), fit.LatchSide
	for _, e := range [2]fit.Edge{fit.LatchSide, fit.HingeSide} {
		j := s.jamb(e, s.section)
		if d := distance(p, nearest(s.plan.to(Pt{j.face, j.front}), s.plan.to(Pt{j.face, j.stop}), p)); d < best {
			best, edge = d, e
		}
	}
	return edge, best
}

// nearestEdge gives the edge and the place on the front picture nearest to a
// point of the sheet, and the distance.
func (s *Scene) nearestEdge(p Pt) (edge fit.Edge, place, best float64) {
	p = s.unmirror(p, s.frontBox.middle())
	best = math.Inf(1)
	for e := range fit.Edges {
		r := s.f.Gaps[e].Range()
		if r.IsEmpty() {
			continue
		}
		s.bends(e, r)
		var last Pt
		for i, at := range s.places {
			q := between(s.onFront(e, s.frameAt(e, at)), s.onFront(e, s.leafAt(e, at)), 0.5)
			if i > 0 {
				n := nearest(last, q, p)
				if d := distance(p, n); d < best {
					t := 0.0
					if l := distance(last, q); l > 0 {
						t = distance(last, n) / l
					}
					best, edge, place = d, e, s.places[i-1]+t*(at-s.places[i-1])
				}
			}
			last = q
		}
	}
	return edge, place, best
}
