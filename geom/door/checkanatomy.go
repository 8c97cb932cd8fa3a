package door

import (
	"math"
	"strconv"
)

// Check gives what is wrong with the leaf's make-up; with a sound leaf, also
// whether every member is inside it.
func (a *Anatomy) Check(leaf *Leaf) (faults []Fault) {
	check := func(r Range, path string, x float64, isSize bool) bool {
		f, bad := r.Fault(path, x, isSize)
		if bad {
			faults = append(faults, f)
		}
		return !bad
	}
	size := func(r Range, path string, x float64) bool { return check(r, path, x, true) }
	place := func(r Range, path string, x float64) bool { return check(r, path, x, false) }
	word := func(path, got string, allowed ...string) {
		for _, w := range allowed {
			if got == w {
				return
			}
		}
		faults = append(faults, Fault{Path: path, Value: strconv.Quote(got), Want: "one of " + list(allowed)})
	}
	word("leaf.make", string(a.Make), string(Framed), string(Boarded), string(Flush))
	word("leaf.panels", string(a.Panels), string(Flat), string(Raised), string(Glass))
	word("leaf.lock.kind", string(a.Lock.Kind), string(NoLock), string(Rim), string(Mortice))
	word("leaf.joints.kind", string(a.Joints.Kind), "", string(Through), string(Stub), string(Dowelled))
	joint := Range{Hi: Stile.Hi}
	size(joint, "leaf.joints.tenon", a.Joints.Tenon)
	size(joint, "leaf.joints.haunch", a.Joints.Haunch)
	size(joint, "leaf.joints.wedge", a.Joints.Wedge)
	if a.HangingStile != 0 || a.Make == Framed {
		size(Stile, "leaf.stiles.hanging", a.HangingStile)
	}
	if a.ClosingStile != 0 || a.Make == Framed {
		size(Stile, "leaf.stiles.closing", a.ClosingStile)
	}
	if n := len(a.Rails); n > RailsMost || n < 2 && a.Make == Framed {
		faults = append(faults, Fault{Path: "leaf.rails", Value: plural(n, "rail"), Want: "between 2 and " + strconv.Itoa(RailsMost) + " in a framed leaf"})
	}
	if n := len(a.Muntins); n > MuntinsMost {
		faults = append(faults, Fault{Path: "leaf.muntins", Value: plural(n, "muntin"), Want: "at most " + strconv.Itoa(MuntinsMost)})
	}
	span, across := LeafRange(), Range{0, LeafWidth.Hi}
	if leaf != nil {
		c := leaf.Corners(0)
		span = Range{math.Min(c.HangingFoot.Y, c.ClosingFoot.Y), math.Max(c.HangingHead.Y, c.ClosingHead.Y)}
		for _, s := range leaf.Top {
			span.Hi = math.Max(span.Hi, s.Value)
		}
		for _, s := range leaf.Bottom {
			span.Lo = math.Min(span.Lo, s.Value)
		}
		across.Hi = leaf.Width
		if w := a.HangingStile + a.ClosingStile; w >= leaf.Width {
			faults = append(faults, Fault{Path: "leaf.stiles", Value: Say(w) + " together", Want: "less than the leaf's width, " + Say(leaf.Width)})
		}
	}
	const lost = 1e-3 // mm that an end shown in inches and typed so again may differ by
	held := span.Round(lost)
	for i, r := range a.Rails {
		if held.Holds(r.From) && held.Holds(r.To) && r.From < r.To && (i == 0 || r.From >= a.Rails[i-1].To) {
			continue // paths are told only when they are wanted: this runs for every move that is tried
		}
		path := at("leaf.rails", i)
		from := place(span, path+".from", r.From)
		if to := place(span, path+".to", r.To); from && to && r.To <= r.From {
			faults = append(faults, Fault{Path: path + ".to", Value: Say(r.To), Want: "above its from, " + Say(r.From)})
		}
		if i > 0 && r.From < a.Rails[i-1].To {
			faults = append(faults, Fault{Path: path + ".from", Value: Say(r.From), Want: "at or above the end of the rail below, " + Say(a.Rails[i-1].To)})
		}
	}
	for i, m := range a.Muntins {
		path := at("leaf.muntins", i)
		inside := Range{across.Lo + a.HangingStile, across.Hi - a.ClosingStile}
		if size(Stile, path+".width", m.Width) {
			place(Range{inside.Lo + m.Width/2, inside.Hi - m.Width/2}, path+".at", m.At)
		}
		from := place(span, path+".from", m.From)
		if to := place(span, path+".to", m.To); from && to && m.To <= m.From {
			faults = append(faults, Fault{Path: path + ".to", Value: Say(m.To), Want: "above its from, " + Say(m.From)})
		}
	}
	if a.Lock.Kind == NoLock {
		return faults
	}
	size(Backset, "leaf.lock.backset", a.Lock.Backset)
	size(Case, "leaf.lock.case", a.Lock.Case)
	if size(Case, "leaf.lock.depth", a.Lock.Depth) && leaf != nil {
		size(Range{Case.Lo, leaf.Width}, "leaf.lock.depth", a.Lock.Depth)
	}
	if Case.Holds(a.Lock.Case) {
		place(Range{span.Lo + a.Lock.Case/2, span.Hi - a.Lock.Case/2}, "leaf.lock.height", a.Lock.Height)
	}
	return faults
}

func list(words []string) string {
	s := ""
	for i, w := range words {
		if w == "" {
			w = "none"
		}
		if i > 0 {
			s += ", "
		}
		s += w
	}
	return s
}
