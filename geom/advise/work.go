package advise

import (
	"math"

	"leafwright/geom"
	"leafwright/geom/advise/lp"
	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
	"leafwright/geom/trim"
)

// Work is advice in the making. It is for one goroutine.
type Work struct {
	p      *Problem
	advice Advice
	doing  int // 0 nothing begun

	base  fit.Fit // as it stands, stops out of the way
	hung  fit.Fit // of whatever was measured last
	tries fit.Fit // of what was tried out last
	outer fit.Fit // with the outer hinges worked and those between as they were
	back  float64 // how far the stops are out of the way, mm
	// runs are the stretches of the leaf's edges, in leaf axes; stopRuns of the stops,
	// in the world.
	runs     [door.Edges]geom.Interval
	stopRuns [door.FloorSide]geom.Interval

	unknowns []unknown
	parts    []part
	places   []place
	start    []float64    // of every place, as it stands
	allow    [2][]float64 // of every place, what errors ask for by and large
	sigma    []float64    // of every place, how well it will be known, by and large
	z        float64      // how many standard deviations are allowed for before the leaf is offered up
	columns  [][]float64  // by unknown's column: what every place gains per mm
	tail     []float64    // chances of a normal error, by steps
	wishes   []wish
	weight   weights
	tried    []bool    // by part, in lean
	packs    []float64 // thicknesses to be had
	unseated bool      // a hinge between the outer two is out

	families []attempt
	proofs   []proof
	found    []found
	closely  bool // lines of many stations are listed
	bettered int  // how many plans were looked at for cheaper ways
	next     int
	model    *model     // of the attempt under way
	refusal  *trim.Care // the last that forbade a move
	conflict *conflict
	missed   *nearMiss // what came nearest to a plan
	nearly   *nearly
	easing   *easing
	eased    bool    // its limits gave way: it tells of no conflict
	ceiling  float64 // what costs more is not looked for; 0 = none
}

// wish is an equation the person asks for: the sum of so much of every unknown.
type wish struct {
	sort   Sort
	lo, hi float64
	of     func(u *unknown) float64
}

// weights are the price of a preference.
type weights struct {
	timber  float64 // per cm³
	minutes float64 // per minute
	uneven  float64 // per mm of widest less narrowest
	gain    float64 // per gain cut anew
	frame   float64 // of touching the frame
	line    float64 // of an edge worked to a line that bends, more than straight
	last    float64 // of a strip, or of a face of the frame: only where nothing less does
	unsure  float64 // of a door that is left tight, by its chance
	spoilt  float64 // and of one cut too far
	plug    float64 // of old screw holes that new ones would run into
}

// weightsOf gives a preference's prices. They are a choice: what is preferred
// outweighs the rest, and the rest decides among equals. A shaving of 1 mm along a
// stile is about 80 cm³.
func weightsOf(p Preference) weights {
	switch p {
	case MostEven:
		return weights{timber: 0.05, minutes: 0.1, uneven: 100, gain: 4, frame: 2, line: 2, last: 1000, plug: 300, unsure: 200, spoilt: 1000}
	case Quickest:
		return weights{timber: 0.02, minutes: 1, uneven: 0.5, gain: 1, frame: 1, line: 5, last: 500, plug: 200, unsure: 200, spoilt: 1000}
	}
	return weights{timber: 1, minutes: 0.3, uneven: 2, gain: 12, frame: 6, line: 10, last: 2000, plug: 600, unsure: 1200, spoilt: 4000}
}

// Plans gives the advice on a problem, all at once.
func Plans(p *Problem) Advice {
	w := Start(p)
	for !w.Step() {
	}
	return w.Advice()
}

// Start begins advice that is worked out in slices by [Work.Step]. The problem must
// not change while it lasts.
func Start(p *Problem) *Work { return &Work{p: p, weight: weightsOf(p.Wishes.Prefer)} }

// Advice gives what has been found so far: all of it once Step has told so.
func (w *Work) Advice() Advice { return w.advice }

// The stations of the work.
const (
	begin = iota
	trying
	rounding
	bettering
	telling
	trading
	nearing
	opposing
	easingOff
	done
)

// Step does a slice of the work and tells whether that was the last.
func (w *Work) Step() bool {
	switch w.doing {
	case begin:
		w.prepare()
	case trying:
		if w.next == len(w.families) {
			w.doing = bettering
			break
		}
		a := &w.families[w.next]
		w.next++
		if w.spared(a) {
			break
		}
		if a.close {
			w.listClosely()
		}
		w.model = w.find(a)
		if w.model != nil && !w.outshone(a, w.model) && !w.foundBefore(w.model) {
			w.doing = rounding
		}
	case rounding:
		n := len(w.advice.Plans)
		w.finish(&w.families[w.next-1])
		if n < len(w.advice.Plans) {
			w.found[len(w.found)-1].plan = true
			w.level(&w.advice.Plans[n])
		}
		w.doing = trying
	case bettering:
		if !w.better() {
			w.choose()
			w.doing, w.next = telling, 0
		}
	case telling:
		if w.next == len(w.advice.Plans) {
			w.doing = trading
			break
		}
		w.explain(&w.advice.Plans[w.next])
		w.next++
	case trading:
		w.trade()
		w.doing = opposing
		if w.beginNear() {
			w.doing = nearing
		}
	case nearing:
		if w.near() {
			w.doing = done
		}
	case opposing:
		if w.eased {
			w.doing = done
			break
		}
		if w.advice.JustGood && len(w.advice.Plans) == 0 {
			w.advice.Good = true
			w.doing = done
			break
		}
		if len(w.advice.Plans) > 0 {
			w.doing = done
		} else if w.oppose() {
			w.doing = easingOff
		}
	case easingOff:
		if len(w.advice.Conflict.Oversize) > 0 || w.ease() {
			w.doing = done
		}
	}
	return w.doing == done
}

// prepare hangs the door as it stands and lists what could be done about it.
func (w *Work) prepare() {
	w.doing = done
	d := &w.p.Piece.Door
	if len(d.Hinges) < door.HingesLeast || len(d.Check()) > 0 {
		return // there is nothing to advise on
	}
	fit.Evaluate(&w.tries, d)
	good := true
	for _, f := range judge.Verdicts(&w.tries, d, &w.p.Wanted) {
		if f.Verdict != judge.Good && !w.passed(&f) {
			good = false
			w.advice.Findings = append(w.advice.Findings, f)
		}
	}
	w.advice.Good = good && w.wished()
	if w.advice.Good && !w.doubtful() {
		return
	}
	if w.p.Piece.Anatomy.Rated {
		w.advice.Refused = &trim.Care{About: trim.Rated}
		return
	}
	w.doing = trying
	w.advice.JustGood, w.advice.Good = w.advice.Good, false
	if w.start == nil {
		w.measureOnce()
	}
	w.listWishes()
	w.listGains()
	w.listFamilies()
}

// passed tells whether a finding is passed over: hinges are set to each other as the
// leaf is hung, which no reading of a tape sees.
func (w *Work) passed(f *judge.Finding) bool {
	return w.p.Sigma != nil && f.Subject == judge.HingeLine
}

// wished tells whether the person's wishes about the leaf hold as it stands.
func (w *Work) wished() bool {
	want, rails := w.p.Wishes.TopRail, w.p.Piece.Anatomy.Rails
	if want <= 0 || len(rails) == 0 {
		return true
	}
	return abs(w.topRail()-want) <= w.p.step()/2
}

// topRail is how high the top rail stands now, at its middle.
func (w *Work) topRail() float64 {
	rails := w.p.Piece.Anatomy.Rails
	l := &w.p.Piece.Door.Leaf
	return l.Top.At(l.Width/2) - rails[len(rails)-1].From
}

// measureOnce works out everything that does not depend on the family.
func (w *Work) measureOnce() {
	d := &w.p.Piece.Door
	w.runs = runsOf(d)
	hinge, latch := d.Frame.HeadCorners()
	w.stopRuns = [door.FloorSide]geom.Interval{{Hi: hinge.Y}, {Hi: latch.Y}, {Lo: hinge.X, Hi: latch.X}}
	w.back = stopsClear
	if w.tries.StopBound {
		w.back += float64(3 * w.tries.LatchMiss)
	}
	away := w.shifted(*d)
	fit.Evaluate(&w.base, &away)
	w.unseated = w.strainedBetween()
	w.listUnknowns()
	w.listPlaces()
	w.start = w.read(&w.base)
	w.tried = make([]bool, len(w.parts))
	w.packs = packings(w.p.packers())
	w.weighErrors()
}

// runsOf gives the stretches of the leaf's edges, in leaf axes.
func runsOf(d *door.Door) [door.Edges]geom.Interval {
	c := d.Leaf.Corners(0)
	return [door.Edges]geom.Interval{
		{Lo: c.HangingFoot.Y, Hi: c.HangingHead.Y},
		{Lo: c.ClosingFoot.Y, Hi: c.ClosingHead.Y},
		{Lo: c.HangingHead.X, Hi: c.ClosingHead.X},
		{Lo: c.HangingFoot.X, Hi: c.ClosingFoot.X},
	}
}

// listWishes writes the person's wishes as equations.
func (w *Work) listWishes() {
	v := &w.p.Wishes
	if v.StilesAlike {
		for end := range 2 {
			w.wishes = append(w.wishes, wish{StilesAlike, 0, 0, func(u *unknown) float64 {
				if u.sort == offEnd && u.end == end {
					switch u.edge {
					case door.HingeSide:
						return 1
					case door.LatchSide:
						return -1
					}
				}
				return 0
			}})
		}
	}
	if v.TopRail > 0 && len(w.p.Piece.Anatomy.Rails) > 0 {
		less, room := w.topRail()-v.TopRail, w.p.step()/2
		for end := range 2 {
			w.wishes = append(w.wishes, wish{TopRail, less - room, less + room, func(u *unknown) float64 {
				if (u.sort == offEnd || u.sort == strip) && u.edge == door.HeadSide && u.end == end {
					return u.sign
				}
				return 0
			}})
		}
	}
}

// gainKept is how deep, mm, a gain in the hanging edge is left at least when that is planed:
// in a shallower one the screws alone carry the leaf (common practice, no published source).
const gainKept = 1.0

// listGains has the hanging edge planed so deep at a hinge that enough of its gain is left,
// unless it is cut anew: without one the plate would stand on the edge and push the leaf
// over.
func (w *Work) listGains() {
	d := &w.p.Piece.Door
	top, foot := d.Hinges[0].LeafHeight, d.Hinges[len(d.Hinges)-1].LeafHeight
	for i := range d.Hinges {
		h := &d.Hinges[i]
		part := 0.0
		if top != foot {
			part = (top - h.LeafHeight) / (top - foot)
		}
		w.wishes = append(w.wishes, wish{gainLeft, math.Inf(-1), max(0, h.LeafGain-gainKept), func(u *unknown) float64 {
			switch {
			case u.edge == door.HingeSide && (u.sort == offEnd || u.sort == offAt):
				return held(hat(w.runs[door.HingeSide], u.end, max(2, u.of)), h.LeafHeight)
			case u.sort == sink && u.hinge == 0:
				return part - 1
			case u.sort == sink:
				return -part
			}
			return 0
		}})
	}
}

// find solves a family's program; nil where it has no answer.
func (w *Work) find(a *attempt) *model {
	m := w.program(a)
	m.sure = w.p.Sigma != nil
	if m.hopeless() {
		return nil
	}
	if m.keepSure(evenly[0], 1) != lp.Optimal || m.solve() != lp.Optimal {
		w.refuted(m)
		return nil
	}
	if w.outbid(a, m) || w.ceiling > 0 && m.lp.Value() > w.ceiling {
		return nil
	}
	m.lean()
	if m.sure {
		if m = w.again(a, m); m == nil {
			return nil
		}
	}
	for range 6 {
		if m.state != lp.Optimal {
			return nil
		}
		t := w.try(w.moves(m))
		if t.refused != nil {
			if !m.heed(t) {
				return nil
			}
			m.open() // what was left out for being dear may now be needed
			if m.solve() == lp.Optimal {
				m.lean()
			}
			continue
		}
		if m.correct(w.measure(t.piece.Door)) < trueEnough {
			break
		}
		if m.solve() != lp.Optimal {
			m.open()
			m.solve()
		}
	}
	if m.state != lp.Optimal || m.solve() != lp.Optimal {
		return nil
	}
	return m
}

// again makes an attempt's program anew, of the parts that an answer uses and with the
// errors of just these; nil where it has no answer.
func (w *Work) again(a *attempt, was *model) *model {
	used := was.used()
	was.weighErrors()
	m := w.program(a)
	m.allow, m.sigma = was.allow, was.sigma
	for k := range used {
		if !used[k] {
			m.close(k, true)
		}
	}
	if m.keepSure(evenly...) != lp.Optimal || m.solve() != lp.Optimal {
		return nil
	}
	return m
}

// trueEnough is how far, mm, the linear model may be off at its own answer.
const trueEnough = 0.005

// program makes an attempt's program.
func (w *Work) program(a *attempt) *model {
	var use []int
	for i := range w.unknowns {
		if w.allowed(a, &w.unknowns[i]) {
			use = append(use, i)
		}
	}
	m := w.newModel(use)
	m.hung = a.hung
	if a.family == JambsToo {
		for i := range w.advice.Plans {
			m.faced = m.faced || w.advice.Plans[i].Price < w.weight.last
		}
	}
	for j := range use {
		if u := m.unknown(j); u.sort == strip {
			m.least[j] = w.p.Wishes.strip()
			m.lp.SetBounds(j, m.least[j], m.most[j])
		}
	}
	return m
}

// open allows every part again.
func (m *model) open() {
	for k := range m.shut {
		if m.shut[k] {
			m.close(k, false)
		}
	}
}
