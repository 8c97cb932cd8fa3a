package advise

import (
	"flag"
	"math"
	"math/rand/v2"
	"testing"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
	"leafwright/geom/survey"
	"leafwright/geom/trim"
)

var (
	doors  = flag.Int("doors", 40, "how many doors are read, advised, worked and judged")
	seeds  = flag.Uint64("seeds", 20261126, "what the doors are made from: other numbers give other doors")
	within = flag.Float64("within", 0, "the one tolerance of gaps that is looked at, mm; 0 is all")
)

// many is that number, less where tests are to be short.
func many() int {
	if testing.Short() {
		return min(*doors, 8)
	}
	return *doors
}

// chance is a seeded source of errors.
type chance struct{ *rand.Rand }

func seeded(stream, n uint64) chance { return chance{rand.New(rand.NewPCG(*seeds+stream, n))} }

// about gives a normal number of the standard deviation.
func (c chance) about(sigma float64) float64 { return sigma * c.NormFloat64() }

// line gives a line from base that leans and bows.
func (c chance) line(long, base, lean, bow float64) geom.Profile {
	lean, bow = c.about(lean), c.about(bow)
	var p geom.Profile
	for i := range 9 {
		t := float64(i) / 8
		p = append(p, geom.Station{At: long * t, Value: base + lean*t + 4*bow*t*(1-t)})
	}
	return p
}

// oldDoor gives an old leaf that is somewhat too big, in an old opening.
func (c chance) oldDoor() trim.Piece {
	w, h := 680+140*c.Float64(), 1960+80*c.Float64()
	t := 35 + 9*c.Float64()
	over := 4 - 4.5*c.Float64() // what is left between leaf and opening in width
	leafW, leafH := w-over, h-13+3*c.Float64()
	var p trim.Piece
	d := &p.Door
	l, f := &d.Leaf, &d.Frame
	l.Width, l.Thickness = leafW, t
	l.Hanging, l.Closing = c.line(leafH, 0, 0, 0.3), c.line(leafH, leafW, 1, 0.4)
	l.Top, l.Bottom = c.line(leafW, leafH, 2.5, 0.3), c.line(leafW, 0, 1.5, 0.3)
	l.HangingFace, l.ClosingFace = c.line(leafH, 0, 0, 0.3), c.line(leafH, 0, 0.7, 0.3)
	l.ClosingBevel = geom.Angle(2.5+0.5*c.NormFloat64()) * geom.Degree
	f.HingeJamb, f.LatchJamb = c.line(h, 0, 2, 0.4), c.line(h, w, 2, 0.4)
	f.Head = c.line(w, h, 3, 0.4)
	f.HingeFront, f.LatchFront, f.HeadFront = c.line(h, 0, 0.7, 0.3), c.line(h, 0, 0.7, 0.3), geom.Level(0)
	a, b := f.HingeFront.At(h), f.LatchFront.At(h)
	f.HeadFront = geom.Through(0, a, w, b)
	f.StopWidth = 12
	f.PlantStops(t + 2)
	d.Latch = door.Latch{Height: 950}
	d.Opens = 90 * geom.Degree
	lift := 5 + 3*c.Float64()
	for _, v := range []float64{leafH - 190, 260} {
		d.Hinges = append(d.Hinges, door.Hinge{
			LeafHeight: v, JambHeight: v + lift + c.about(0.1), Closed: 6.5 + c.about(0.1), LeafGain: 2 + c.about(0.3), JambGain: 2 + c.about(0.2),
			Pin: 5 + c.about(0.5), Proud: c.about(0.3), Height: 75,
		})
	}
	d.Floor = door.Floor{Radii: []float64{0, w}, Angles: []geom.Angle{0, 90 * geom.Degree}, Heights: [][]float64{{0, c.about(1.5)}, {0, c.about(1.5)}}}
	p.Anatomy = door.Ordinary(door.Flush, leafW, leafH)
	return p
}

// band gives the gaps wanted, about 3 mm at sides and head.
func band(half float64) judge.Wanted {
	l := judge.Limits{Least: 3 - half, Target: 3, Most: 3 + half}
	return judge.Wanted{
		Gaps: [door.Edges]judge.Limits{l, l, l, {Least: 4, Target: 8, Most: 16}},
		Stop: judge.Limits{Least: 0, Target: 2, Most: 6}, Swing: judge.Limits{Least: 0.5}, SwingFloor: judge.Limits{Least: 1},
	}
}

// measured reads a door with the errors of the instruments and fits shapes to it.
func (c chance) measured(d *door.Door) *survey.Result {
	card := survey.Card(math.Round(d.Frame.LatchJamb.At(1000)), math.Round(d.Frame.Head.At(300)), len(d.Hinges))
	for i, r := range card {
		card[i].Value = survey.Expect(d, r) + c.about(survey.SigmaOf(r))
		if a := survey.SpecOf(r.Kind).Allowed; card[i].Value < a.Lo || card[i].Value > a.Hi {
			card[i].Value = max(a.Lo, min(a.Hi, survey.Expect(d, r)))
		}
	}
	return survey.Adjust(card)
}

// worked gives moves as a hand does them: every amount a little off, packers as they
// are bought.
func (c chance) worked(moves []trim.Move, hand float64) []trim.Move {
	out := append([]trim.Move(nil), moves...)
	off := func(x float64) float64 {
		if x == 0 {
			return 0
		}
		e := c.about(hand)
		if x > 0 {
			return max(0, x+e)
		}
		return min(0, x+e)
	}
	for i := range out {
		m := &out[i]
		switch m.Kind {
		case trim.Pack:
		case trim.Scribe:
			m.Line = append(geom.Profile(nil), m.Line...)
			for k := range m.Line {
				m.Line[k].Value = off(m.Line[k].Value)
			}
		default:
			m.First, m.Last = off(m.First), off(m.Last)
		}
	}
	return out
}

// feel reads the gaps asked for with a feeler: no gap is read as none. Exactly is for
// one who knows it all.
func (c chance) feel(d *door.Door, read []survey.Reading, exactly bool) []survey.Reading {
	var f fit.Fit
	fit.Evaluate(&f, d)
	out := append([]survey.Reading(nil), read...)
	for i := range out {
		r := &out[i]
		if exactly {
			r.Sigma = survey.SigmaRange.Lo
		}
		for e := range door.Edges {
			switch {
			case survey.SideOf(e) != r.Side:
			case r.Kind == survey.StopGap:
				r.Value = max(0, f.Stops[e].At(r.At)+c.about(survey.SigmaOf(*r)))
			default:
				r.Value = max(0, f.Gaps[e].At(r.At)+c.about(survey.SigmaOf(*r)))
			}
		}
	}
	return out
}

// everywhere asks for the gaps worth reading, and for those at the ends of every stop.
func everywhere(d *door.Door) []survey.Reading {
	var f fit.Fit
	fit.Evaluate(&f, d)
	out := Offering(&f)
	for e := range door.FloorSide {
		over := f.Stops[e].Range()
		for _, at := range [2]float64{over.Lo + inset, over.Hi - inset} {
			out = append(out, survey.Reading{Kind: survey.StopGap, Side: survey.SideOf(e), At: math.Round(at)})
		}
	}
	return out
}

// right tells whether the door hangs as wanted.
func right(p trim.Piece, want *judge.Wanted) bool {
	var f fit.Fit
	fit.Evaluate(&f, &p.Door)
	return judge.Worst(judge.Verdicts(&f, &p.Door, want)) == judge.Good
}

// tooFar tells whether cuts have made a gap too wide at an edge that would not have one
// without them.
func tooFar(was trim.Piece, moves []trim.Move, want *judge.Wanted) bool {
	is, _ := trim.All(was, moves)
	var f, g fit.Fit
	fit.Evaluate(&f, &is.Door)
	var kept []trim.Move
	for _, m := range moves {
		if m.Kind != trim.Plane && m.Kind != trim.Cut && m.Kind != trim.Scribe && m.Kind != trim.Bevel {
			kept = append(kept, m)
		}
	}
	uncut, _ := trim.All(was, kept)
	fit.Evaluate(&g, &uncut.Door)
	for e := range door.Edges {
		if most := want.Gaps[e].Most; f.Gaps[e].Most > most+1e-6 && g.Gaps[e].Most <= most {
			return true
		}
	}
	return false
}

// tally is what came of a way of working.
type tally struct {
	doors, first, second, third, far int
	timber, perfect                  float64
}

func (s *tally) report(t *testing.T, name string) {
	p := func(n int) float64 { return 100 * s.part(n) }
	t.Logf("  %-26s right at first offer %5.1f %%, with one trim more %5.1f %%, with two %5.1f %%; cut too far %4.1f %%; timber %+.1f %% beside perfect knowledge",
		name, p(s.first), p(s.first+s.second), p(s.first+s.third), p(s.far), 100*(s.timber/max(1, s.perfect)-1))
}

// byRule gives what a rule of thumb would take off, by the shapes believed.
func byRule(p trim.Piece, want *judge.Wanted, scribe bool) (moves []trim.Move) {
	var f fit.Fit
	fit.Evaluate(&f, &p.Door)
	for _, e := range [...]door.Edge{door.LatchSide, door.HeadSide, door.FloorSide} {
		over := f.Gaps[e].Range()
		target := want.Gaps[e].Target
		if e == door.FloorSide {
			target = want.Gaps[e].Least
		}
		lift := f.Pose.Origin.X
		if e.Upright() {
			lift = f.Pose.Origin.Y
		}
		if scribe {
			var line geom.Profile
			for i := range stations {
				at := over.Lo + over.Length()*float64(i)/(stations-1)
				line = append(line, geom.Station{At: at - lift, Value: math.Round(2*max(0, target-f.Gaps[e].At(at))) / 2})
			}
			moves = append(moves, trim.Move{Kind: trim.Scribe, Edge: e, Line: line})
			continue
		}
		if off := math.Round(2*max(0, target-f.Gaps[e].Least)) / 2; off > 0 {
			moves = append(moves, trim.Move{Kind: trim.Plane, Edge: e, First: off, Last: off})
		}
	}
	return moves
}

// TestFirstOffer has old doors read with a tape's errors, advised on, worked with a
// hand's and judged by the true shapes, beside two rules of thumb and one who knows the
// shapes and reads gaps without an error but whose hand is no steadier: what he does not
// reach cannot be reached. The aims asserted are those reached; -doors 1000 -v gives the
// report. Timber is of all trims, beside what is planned by one who knows the shapes.
func TestFirstOffer(t *testing.T) {
	if testing.Short() {
		t.Skip("rates of a few doors say nothing")
	}
	for _, half := range [...]float64{0.5, 1, 1.5} {
		if *within > 0 && *within != half {
			continue
		}
		want := band(half)
		var advice, ceiling, scribe, stile tally
		out, none := 0, 0
		for n := range many() {
			c := seeded(1, uint64(n))
			truth := c.oldDoor()
			if len(truth.Door.Check()) > 0 || right(truth, &want) {
				out++
				continue
			}
			// Perfect knowledge knows the shapes, but its hand is no steadier.
			known := &Problem{Piece: truth, Wanted: want, Sigma: &Sigmas{}, Offered: true}
			perfect := Plans(known)
			res := c.measured(&truth.Door)
			if len(perfect.Plans) == 0 || wants(perfect) || !res.Hangs {
				out++ // no plan even for one who knows it all, or a leaf too small
				continue
			}
			least := perfect.Plans[0].Cost.Timber
			ceiling.doors++
			ceiling.perfect += least
			ceiling.follow(seeded(7, uint64(n)), truth, known, perfect.Plans[0].Stages[0].Moves, &want, true)
			believed := trim.Piece{Door: res.Door, Anatomy: truth.Anatomy}
			for k, s := range []*tally{&scribe, &stile} {
				s.offer(seeded(5+uint64(k), uint64(n)), truth, byRule(believed, &want, k == 0), &want, least)
			}
			p := &Problem{Piece: believed, Wanted: want, Sigma: SigmasOf(res.Gaps(), 0)}
			a := Plans(p)
			if len(a.Plans) == 0 {
				none++
				continue
			}
			advice.doors++
			advice.perfect += least
			advice.follow(c, truth, p, a.Plans[0].Stages[0].Moves, &want, false)
		}
		t.Logf("gaps within %g mm either way: %d doors, %d more out of question, %d without a plan", half, advice.doors, out, none)
		advice.report(t, "advice")
		ceiling.report(t, "one who knows the shapes")
		scribe.report(t, "scribed to an even gap")
		stile.report(t, "all off the closing stile")
		if half < 1 {
			continue // a hand that is off by 0.3 mm at every move does not keep to that
		}
		p := advice.part
		right, twice, far := 0.8, 0.85, 0.06 // a few doors are as chance has it: two of forty may be
		if many() >= 500 {
			right, twice, far = 0.9, 0.95, 0.01
			if half > 1 {
				right, twice, far = 0.95, 0.97, 0.005
				if more := advice.timber/advice.perfect - 1; more > 0.05 {
					t.Errorf("%.1f %% more timber than perfect knowledge takes", 100*more)
				}
			}
		}
		if p(advice.first+advice.second) < right || p(advice.first+advice.third) < twice {
			t.Errorf("too few doors come right")
		}
		if p(advice.far) > far {
			t.Errorf("%d of %d doors are cut too far", advice.far, advice.doors)
		}
		for _, s := range []*tally{&scribe, &stile} {
			if s.part(s.first) >= p(advice.first+advice.second) || s.part(s.far) <= p(advice.far) {
				t.Errorf("a rule of thumb does as well")
			}
		}
	}
}

// wants tells whether a leaf is too small, or the frame in the way, even for one who knows
// it all: his best plan glues a strip on or works a jamb.
func wants(a Advice) bool {
	return a.Plans[0].Family == Splice || a.Plans[0].Family == JambsToo
}

// follow works the moves, and where the door does not come right reads its gaps and
// works what is then advised, twice at most.
func (s *tally) follow(c chance, truth trim.Piece, p *Problem, moves []trim.Move, want *judge.Wanted, knows bool) {
	done := c.worked(moves, usualHand)
	now, steps := trim.All(truth, done)
	s.timber += costOf(steps).Timber
	if right(now, want) {
		s.first++
		return
	}
	for offer := range 2 {
		p = p.After(moves, c.feel(&now.Door, everywhere(&now.Door), knows))
		a := Plans(p)
		if len(a.Plans) == 0 {
			break
		}
		moves = a.Plans[0].Stages[0].Moves
		more := c.worked(moves, usualHand)
		done = append(append([]trim.Move(nil), done...), more...)
		now, steps = trim.All(now, more)
		s.timber += costOf(steps).Timber
		if right(now, want) {
			if offer == 0 {
				s.second++
			}
			s.third++
			break
		}
	}
	if tooFar(truth, done, want) {
		s.far++
	}
}

func (s *tally) offer(c chance, truth trim.Piece, moves []trim.Move, want *judge.Wanted, least float64) {
	s.doors++
	s.perfect += least
	done := c.worked(moves, usualHand)
	now, steps := trim.All(truth, done)
	s.timber += costOf(steps).Timber
	if right(now, want) {
		s.first++
	}
	if tooFar(truth, done, want) {
		s.far++
	}
}

func (s *tally) part(n int) float64 { return float64(n) / float64(max(1, s.doors)) }
