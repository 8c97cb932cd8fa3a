package fault

import (
	"math"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
	"leafwright/geom/trim"
)

// Make gives the piece with faults of the kinds in it, and what they are. hard, from 0
// to 1, is how hard they are to find: at 0 each shows plainly (an edge binds by 2.5 mm,
// a leaf lacks 4 mm to its latch), at 1 only just (0.4 mm, 1 mm); and the harder, the
// more the door departs from true elsewhere too, in ways that do no harm: within
// [Wanted] still, and no symptom. The amount is what the door at hand needs for
// that, so that a wide gap makes a greater fault.
//
// A kind given twice counts once. One that cannot be put into this door, or into it
// along with the others, is left out. Faults together may hide each other: [Mix] picks
// such as do not.
func Make(sound trim.Piece, kinds []Kind, seed uint64, hard float64) (trim.Piece, []Made) {
	hard = geom.Interval{Hi: 1}.Clamp(hard)
	if !(hard >= 0) {
		hard = 0
	}
	if len(sound.Door.Check()) > 0 {
		return sound, nil
	}
	sound = harmless(sound, seed, hard)
	var made []Made
	p := sound
	for i := range All {
		if !one(kinds, All[i].Kind) {
			continue
		}
		m, ok := sized(sound, &All[i], seed, hard)
		if !ok {
			continue
		}
		if q := Put(sound, append(made, m)); len(q.Door.Check()) == 0 && len(q.Anatomy.Check(&q.Door.Leaf)) == 0 {
			p, made = q, append(made, m)
		}
	}
	return p, made
}

// Mix gives n kinds, of those given or of all if none are, that each still show when
// they are in the piece together, as Make makes them; fewer where so many cannot.
// Kinds that package advise seldom finds a way for together are kept apart.
func Mix(sound trim.Piece, of []Kind, n int, seed uint64, hard float64) []Kind {
	if len(of) == 0 {
		for i := range All {
			of = append(of, All[i].Kind)
		}
	}
	r := throws(seed, 1<<32)
	left := append([]Kind(nil), of...)
	var kinds []Kind
next:
	for len(kinds) < n && len(left) > 0 {
		k := r.of(len(left))
		try := left[k]
		left = append(left[:k:k], left[k+1:]...)
		for _, has := range kinds {
			if has == try || apart(has, try) || apart(try, has) {
				continue next
			}
		}
		with := append(kinds[:len(kinds):len(kinds)], try)
		p, made := Make(sound, with, seed, hard)
		if len(made) == len(with) && allShow(&p, made) {
			kinds = with
		}
	}
	return kinds
}

// apart tells of two kinds that no one way of package advise works on both: it scribes
// an edge to a bent line, or glues a strip, or moves stops. And a foot that is tapered for
// a floor has no room for pins that let the toe drop as the leaf opens.
func apart(a, b Kind) bool {
	stops := one([]Kind{StopNear, KeepOut, LeafWinds, FrameWinds}, b)
	switch a {
	case JambSprung, EdgeUneven:
		return stops || one([]Kind{FloorRises, LeafShort, JambSprung, EdgeUneven}, b)
	case LeafShort:
		return stops
	case PinsLean:
		return b == FloorRises
	}
	return false
}

// allShow tells whether each fault is seen in the piece: by its own measure, and by a
// symptom of its kind.
func allShow(p *trim.Piece, made []Made) bool {
	w := Wanted()
	var f fit.Fit
	fit.Evaluate(&f, &p.Door)
	shows := Symptoms(&f, &p.Door, &w)
	for i := range made {
		const seen = 0.1 // mm
		if made[i].shown(&f, &p.Door, &w) < seen {
			return false
		}
		told := false
		for k := range shows {
			told = told || one(SpecOf(made[i].Kind).Shows, shows[k].Kind)
		}
		if !told {
			return false
		}
	}
	return true
}

// step is what amounts are whole multiples of, mm.
const step = 0.05

// sized throws a fault of the kind and finds the amount that shows as much as it is
// to; false where none in range does on this piece.
func sized(sound trim.Piece, spec *Spec, seed uint64, hard float64) (m Made, ok bool) {
	r := throws(seed, 1+purpose(spec.Kind))
	m = Made{Kind: spec.Kind, Edge: spec.Edges[r.of(len(spec.Edges))], Way: spec.Ways[r.of(len(spec.Ways))]}
	m.On = [3]trim.Part{trim.OnLeaf, trim.OnJamb, trim.OnBoth}[r.of(3)]
	up := heights(&sound.Door)
	m.Long = whole(float64(up.Length() * r.within(0.7, 0.95)))
	m.At = whole(up.Lo + float64(up.Length()*r.within(0.42, 0.58)))
	m.usual(&sound.Door)
	m.spare()
	aim := float64((spec.plain + float64((spec.faint-spec.plain)*hard)) * r.within(0.85, 1.15))

	w := Wanted()
	var f fit.Fit
	shows := func(amount float64) float64 { // −∞ where it cannot be
		m.Amount = amount
		p := Put(sound, []Made{m})
		if len(p.Door.Check()) > 0 {
			return math.Inf(-1)
		}
		fit.Evaluate(&f, &p.Door)
		return m.shown(&f, &p.Door, &w)
	}
	lo, hi := 0.0, 2.0
	for shows(hi) < aim {
		lo, hi = hi, 2*hi
		if lo >= spec.Amount.Hi {
			return m, false
		}
	}
	for hi-lo > step/4 {
		mid := lo + (hi-lo)/2
		if shows(mid) < aim {
			lo = mid
		} else {
			hi = mid
		}
	}
	amount := math.Ceil(hi/step-1e-9) / (1 / step)
	if !spec.Amount.Holds(amount) || !(shows(amount) > 0) {
		return m, false
	}
	m.Amount = amount
	return m, true
}

// spare empties the fields that do not count for the kind.
func (m *Made) spare() {
	if m.Kind != GainsDeep {
		m.On = ""
	}
	if m.Kind != EdgeUneven || m.Way != Whole {
		m.At, m.Long = 0, 0
	}
}

// purpose numbers a kind for its throws, by its word, so that a kind more changes none.
func purpose(k Kind) (n uint64) {
	for i := range len(k) {
		n = n*131 + uint64(k[i])
	}
	return n % (1 << 31)
}

// shown gives how far what a fault of the kind does is out of limits, in mm: how much
// its edge binds or gapes, the latch lacks, the weight's lever has over friction.
func (m *Made) shown(f *fit.Fit, d *door.Door, w *judge.Wanted) float64 {
	binds := func(e door.Edge) float64 { return -f.Gaps[e].Least }
	gapes := func(e door.Edge) float64 { return f.Gaps[e].Most - w.Gaps[e].Most }
	switch m.Kind {
	case JambSprung:
		return max(binds(door.LatchSide), binds(door.HingeSide))
	case HeadFalls:
		return binds(door.HeadSide)
	case FrameWinds, LeafWinds, StopNear:
		return stopped(f)
	case FloorRises:
		return -f.Swing[door.FloorSide].Least
	case EdgeSquare:
		return -f.Swing[door.LatchSide].Least
	case LeafTall:
		return binds(m.Edge)
	case LeafShort:
		return gapes(door.HeadSide)
	case EdgeUneven:
		if m.Way != Whole {
			return gapes(door.LatchSide)
		}
	case PaintThick:
		return max(binds(door.LatchSide), binds(door.HingeSide), binds(door.HeadSide))
	case GainsDeep:
		by, _ := hingeBound(f)
		return by
	case ScrewsProud:
		return gapes(door.HingeSide)
	case HingeSags:
		return max(binds(door.LatchSide), binds(door.HeadSide), -f.Swing[door.FloorSide].Least)
	case PinsLean:
		sign := -1.0 // a top pin far out lets the leaf fall open
		if m.Way == Lower {
			sign = 1
		}
		by, _ := judge.Falls(f, d, sign)
		return by - friction
	case KeepOut:
		if m.Way == Out {
			return f.Stops[door.LatchSide].Least - w.Stop.Most
		}
		return stopped(f)
	}
	return binds(door.LatchSide)
}

// stopped gives what the latch lacks where a stop holds the leaf, or, below 0, what is
// still between leaf and stop.
func stopped(f *fit.Fit) float64 {
	if f.StopBound {
		return f.LatchMiss
	}
	return -min(f.Stops[door.LatchSide].Least, f.Stops[door.HeadSide].Least)
}

// harmless gives the piece, if it is sound, with departures from true that leave it so:
// head and floor off level, leaf a little in wind, a jamb a little bowed.
func harmless(p trim.Piece, seed uint64, hard float64) trim.Piece {
	if hard == 0 || !isSound(&p) {
		return p
	}
	r := throws(seed, 1<<33)
	for _, k := range [5]Kind{HeadFalls, LeafWinds, JambSprung, JambLeans, FloorRises} {
		m := Made{Kind: k, Way: ends[r.of(2)]}
		for size := float64(hard * r.within(0.5, 2.5)); size >= 0.2; size /= 2 {
			m.Amount = tidy(size)
			if q := Put(p, []Made{m}); isSound(&q) {
				p = q
				break
			}
		}
	}
	return p
}

// Check gives what is wrong with a fault as a lesson file gives it, by the names of its
// fields; an unknown kind has but that fault.
func (m *Made) Check() []door.Fault {
	spec := SpecOf(m.Kind)
	if spec == nil {
		return []door.Fault{{Path: "fault", Value: quoted(string(m.Kind)), Want: kinds()}}
	}
	var out []door.Fault
	if f, bad := spec.Amount.Fault("amount", m.Amount, true); bad {
		out = append(out, f)
	}
	if m.Way != "" && !one(spec.Ways, m.Way) {
		want := "left out"
		for i, w := range spec.Ways {
			if w == Whole {
				continue
			}
			if i == 0 || want == "left out" {
				want = "one of " + string(w)
			} else {
				want += ", " + string(w)
			}
		}
		out = append(out, door.Fault{Path: "way", Value: quoted(string(m.Way)), Want: want})
	}
	if m.Edge != 0 && !one(spec.Edges, m.Edge) {
		out = append(out, door.Fault{Path: "edge", Value: quoted(edgeWords[min(max(m.Edge, 0), door.Edges-1)]), Want: edgesOf(spec)})
	}
	if m.On != "" && (m.Kind != GainsDeep || !one([]trim.Part{trim.OnLeaf, trim.OnJamb, trim.OnBoth}, m.On)) {
		want := "wanted for " + string(m.Kind) + ": leave it out"
		if m.Kind == GainsDeep {
			want = "one of leaf, jamb, both"
		}
		out = append(out, door.Fault{Path: "on", Value: quoted(string(m.On)), Want: want})
	}
	if f, bad := door.Place.Fault("at", m.At, true); bad {
		out = append(out, f)
	}
	if f, bad := (door.Range{Hi: door.LeafHeight.Hi}).Fault("long", m.Long, true); bad {
		out = append(out, f)
	}
	if m.Long != 0 && m.Long < 8*door.ApartLeast {
		out = append(out, door.Fault{Path: "long", Value: door.Say(m.Long), Want: "at least " + door.Say(8*door.ApartLeast)})
	}
	return out
}

var edgeWords = [door.Edges]string{"hinge", "latch", "head", "floor"}

func edgesOf(spec *Spec) string {
	s := "one of "
	for i, e := range spec.Edges {
		if i > 0 {
			s += ", "
		}
		s += edgeWords[e]
	}
	return s
}

func kinds() string {
	s := "one of "
	for i := range All {
		if i > 0 {
			s += ", "
		}
		s += string(All[i].Kind)
	}
	return s
}

func quoted(s string) string { return "\"" + s + "\"" }
