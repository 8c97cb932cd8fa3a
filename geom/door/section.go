package door

// Section is what an edge's cross-section is beside its bevel, in mm, along the
// whole edge. The zero value is an edge that reaches from face to face with sharp
// arrises.
//
// A line of the edge at depth d behind the knuckle face and inset i lies, on the
// hanging edge, at u = A(v) + d·tan βh + i; on the closing edge at
// u = B(v) − d·tan βc − i; on top at v = C(u) − i; on the foot at v = D(u) + i. It
// runs between the corners that [Leaf.Corners] gives at its depth, whatever is eased,
// and its w is s(u, v) − d at its own u and v.
//
// With a leaf t thick the edge reaches from depth front = KnuckleBack to
// back = t − StopBack, and its arris lines (d, i) are
//
//	sharp at the front: (front, 0)
//	eased by c:         (front, c) and (front + c, 0)
//	eased by c behind:  (back − c, 0) and (back, c)
//	sharp behind:       (back, 0)
//
// Between them the edge is straight, so that nothing of it stands out beyond them.
// The leaf's full thickness behind a strip is not looked at: it stands back by the
// strip's height.
type Section struct {
	// KnuckleBack and StopBack are how far the edge's own arrises stand inside the
	// leaf's two faces: a strip of thinner stock. An edge with a StopBack meets its
	// stop by so much later.
	KnuckleBack, StopBack float64
	// KnuckleEase and StopEase are the legs of the arrises taken off at 45°.
	KnuckleEase, StopEase float64
}

// Arris is one arris line of an edge: its depth behind the knuckle face and its
// inset from the edge, both mm.
type Arris struct{ Depth, Inset float64 }

// Arrises gives, appended to dst, the arris lines of the edge of a leaf of that
// thickness, from the knuckle face back: two to four.
func (s Section) Arrises(dst []Arris, thickness float64) []Arris {
	front, back := s.KnuckleBack, thickness-s.StopBack
	if c := s.KnuckleEase; c > 0 {
		dst = append(dst, Arris{front, c}, Arris{front + c, 0})
	} else {
		dst = append(dst, Arris{front, 0})
	}
	if c := s.StopEase; c > 0 {
		return append(dst, Arris{back - c, 0}, Arris{back, c})
	}
	return append(dst, Arris{back, 0})
}

// sectionNames are the edges in the words of a section's faults.
var sectionNames = [Edges]string{"hanging", "closing", "top", "foot"}

// check gives what is wrong with the section of one edge of a sound leaf.
func (s Section) check(path string, thickness float64) (faults []Fault) {
	if s == (Section{}) {
		return nil
	}
	num := func(r Range, name string, x float64) {
		if f, bad := r.Fault(path+name, x, true); bad {
			faults = append(faults, f)
		}
	}
	back := Range{0, thickness - EdgeLeft}
	num(back, ".knuckle_back", s.KnuckleBack)
	num(back, ".stop_back", s.StopBack)
	num(Ease, ".knuckle_ease", s.KnuckleEase)
	num(Ease, ".stop_ease", s.StopEase)
	if len(faults) > 0 {
		return faults
	}
	wide := thickness - s.KnuckleBack - s.StopBack
	const noise = 1e-9 // what a sum of lengths may lose
	if wide < EdgeLeft-noise {
		return []Fault{{Path: path + ".stop_back", Value: Say(s.StopBack) + ", which leaves the edge " + Say(wide) + " thick", Want: "at least " + Say(EdgeLeft)}}
	}
	if both := s.KnuckleEase + s.StopEase; both > wide+noise {
		return []Fault{{Path: path + ".stop_ease", Value: Say(s.StopEase) + ", which takes " + Say(both) + " off with the other arris", Want: "at most the edge's " + Say(wide)}}
	}
	return nil
}
