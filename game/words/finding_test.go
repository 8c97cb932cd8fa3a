package words

import (
	"strings"
	"testing"

	"leafwright/geom"
	"leafwright/geom/caseone"
	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
)

func told(put func(*door.Door), r Region) (headline string, first Line) {
	d, w := caseone.Door(), caseone.Wanted()
	put(&d)
	var f fit.Fit
	fit.Evaluate(&f, &d)
	all := judge.Findings(&f, &d, &w)
	s := Speaker{Lexicon: For(r)}
	return s.Headline(all), s.Finding(all[0])
}

func TestFindingsInWords(t *testing.T) {
	every := func(d *door.Door, set func(*door.Hinge)) {
		for i := range d.Hinges {
			set(&d.Hinges[i])
		}
	}
	for _, c := range []struct {
		name     string
		region   Region
		put      func(*door.Door)
		headline string
		first    Line
	}{
		{"sound", UK, func(*door.Door) {},
			"It hangs as wanted: 4.0 mm at jambs and head.",
			Line{judge.Good, "good", "4.0 mm", "hinge side.", ""}},
		{"head falls", UK, func(d *door.Door) { d.Frame.Head = geom.Through(0, 2000, 800, 1992) },
			"Binds by 4.0 mm at the head, in the last 396 mm to the latch corner. All else is good.",
			Line{judge.Binds, "binds", "−4.0 mm",
				"head, binding in the last 396 mm to the latch corner, tight in the last 691 mm to the latch corner. 3.0 to 5.5 mm wanted.",
				"The head falls 8.0 mm towards the latch."}},
		{"hung high", UK, func(d *door.Door) { every(d, func(h *door.Hinge) { h.LeafHeight -= 3 }) },
			"Tight, 1.0 mm, at the head, over the whole width. All else is good.",
			Line{judge.Tight, "tight", "1.0 mm", "head, over the whole width. 3.0 to 5.5 mm wanted.", "The leaf is hung 3.0 mm too high."}},
		{"leaf too wide, touching", UK, func(d *door.Door) {
			d.Leaf.Closing, d.Leaf.ClosingBevel = d.Leaf.Closing.Shift(4), 4*geom.Degree
		}, "Touches at the latch side, over the whole height. All else is good.",
			Line{judge.Tight, "tight", "touching", "latch side, over the whole height. 3.0 to 5.5 mm wanted.",
				"The leaf is 4.0 mm too wide for this opening and these gaps."}},
		{"top pin far out", UK, func(d *door.Door) { d.Hinges[0].Pin += 4 },
			"It hangs as wanted: 4.0 mm at jambs and head. Let go ajar it opens by itself.",
			Line{judge.Slack, "swings", "4.0 mm", "out of plumb, the top pin farther out than the bottom one: let go ajar it opens by itself.",
				"The top pin stands 4.0 mm farther out than the bottom one."}},
		{"bottom pin far out", UK, func(d *door.Door) { d.Hinges[1].Pin += 8 },
			"It hangs as wanted: 4.0 mm at jambs and head. Let go ajar it closes by itself.",
			Line{judge.Slack, "swings", "8.0 mm", "out of plumb, the top pin farther back than the bottom one: let go ajar it closes by itself.",
				"The top pin stands 8.0 mm farther in than the bottom one."}},
		{"bottom hinge packed out", UK, func(d *door.Door) { d.Hinges[1].JambPacker, d.Hinges[1].LeafGain = 3, 5 },
			"It hangs as wanted: 4.0 mm at jambs and head. Let go 82° open it opens by itself.",
			Line{judge.Slack, "swings", "3.0 mm", "out of plumb, the top pin farther from the latch than the bottom one: let go 82° open it opens by itself.", ""}},
		{"top hinge packed out", UK, func(d *door.Door) { d.Hinges[0].JambPacker, d.Hinges[0].LeafGain = 3, 5 },
			"It hangs as wanted: 4.0 mm at jambs and head. Let go 82° open it closes by itself.",
			Line{judge.Slack, "swings", "3.0 mm", "out of plumb, the top pin nearer the latch than the bottom one: let go 82° open it closes by itself.", ""}},
		{"gains deep, in America", US, func(d *door.Door) { every(d, func(h *door.Hinge) { h.LeafGain += 5 }) },
			"Hinge-bound: bears on the hinge jamb by 1.0 mm and springs open. One more thing is not as wanted.",
			Line{judge.Binds, "binds", "−1.0 mm", "hinge side (hinge-bound: it springs open), over the whole height. 3.0 to 5.5 mm wanted.",
				"The hinges are let in 5.0 mm too deep for the gap wanted."}},
		{"gains deep, in Australia", AU, func(d *door.Door) { every(d, func(h *door.Hinge) { h.LeafGain += 5 }) },
			"Hinge-bound: bears on the hinge jamb by 1.0 mm and springs open. One more thing is not as wanted.",
			Line{judge.Binds, "binds", "−1.0 mm", "hinge side (hinge-bound: it springs open), over the whole height. 3.0 to 5.5 mm wanted.",
				"The hinges are checked in 5.0 mm too deep for the gap wanted."}},
		{"leaf in wind", UK, func(d *door.Door) { d.Leaf.ClosingFace = geom.Through(0, 0, 1990, 12) },
			"Will not latch: 4.0 mm short of the keep: the stop at the latch side holds the leaf, at the foot. Two more things are not as wanted.",
			Line{judge.Binds, "binds", "4.0 mm", "short of the keep: the stop at the latch side holds the leaf, at the foot.",
				"The leaf is 12.0 mm in wind: its top latch corner stands out."}},
		{"floor rises", UK, func(d *door.Door) {
			d.Floor = door.Floor{Radii: []float64{0, 800}, Angles: []geom.Angle{0, 90 * geom.Degree}, Heights: [][]float64{{0, 0}, {0, 8}}}
		}, "Drags on the floor by 1.9 mm as it swings. All else is good.",
			Line{judge.Binds, "binds", "−1.9 mm", "least over the floor as it swings, 90.0° open. 3.0 mm or more wanted.",
				"The floor rises 8.0 mm under the swing (rising butts, which lift a leaf over it, are not worked out here)."}},
	} {
		t.Run(c.name, func(t *testing.T) {
			headline, first := told(c.put, c.region)
			if headline != c.headline {
				t.Errorf("headline\n got %s\nwant %s", headline, c.headline)
			}
			if first != c.first {
				t.Errorf("first finding\n got %+v\nwant %+v", first, c.first)
			}
		})
	}
}

func TestEveryDepartureHasWordsBothWays(t *testing.T) {
	s := Speaker{Lexicon: For(UK)}
	for _, d := range []judge.Departure{
		judge.HingeJambLeans, judge.HingeJambBowed, judge.LatchJambLeans, judge.LatchJambBowed, judge.HeadSlopes,
		judge.HeadBowed, judge.FrameLeans, judge.HingeJambWinds, judge.LatchJambWinds, judge.HingeFrontBowed, judge.LatchFrontBowed, judge.LeafBowed, judge.HangingStileBow, judge.ClosingStileBow, judge.StopsNear, judge.FloorSlopes, judge.FloorRises, judge.HangingBowed,
		judge.ClosingTapered, judge.ClosingBowed, judge.TopSlopes, judge.TopBowed, judge.BottomSlopes, judge.BottomBowed,
		judge.LeafInWind, judge.LeafWide, judge.LeafTall, judge.HungHigh, judge.GainsUneven, judge.GainsAll,
		judge.PinsUneven, judge.SetUneven, judge.SetAll,
	} {
		out, in := s.cause(judge.Cause{Departure: d, Amount: 2.5}), s.cause(judge.Cause{Departure: d, Amount: -2.5})
		if out == in || !strings.Contains(out, "2.5 mm") || strings.Contains(in, "−") {
			t.Errorf("%s: %q and %q", d, out, in)
		}
	}
}

func TestThinStripIsNamed(t *testing.T) {
	s := Speaker{Lexicon: For(UK)}
	if got, want := s.cause(judge.Cause{Departure: judge.StripBack, Amount: 7}), "the strip there is thinner than the leaf: it stands 7.0 mm behind the leaf's stop face"; got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
}

func TestLengthsInWords(t *testing.T) {
	for _, c := range []struct {
		mm   float64
		want string
	}{{-0.04, "0.0 mm"}, {-1.36, "−1.4 mm"}, {4, "4.0 mm"}} {
		if got := Millimetres(c.mm); got != c.want {
			t.Errorf("%v is written %q, want %q", c.mm, got, c.want)
		}
	}
	inches := Speaker{Length: func(mm float64) string { return "1/8 in" }}
	if got := inches.span(3, 3.2); got != "1/8 in" {
		t.Errorf("a span of equal readings is %q", got)
	}
}

// A way in that reads like what is asked for, and is less, says so.
func TestAWayInJustTooNarrow(t *testing.T) {
	s := Speaker{Lexicon: For(UK)}
	f := judge.Finding{Subject: judge.ClearWay, Verdict: judge.Tight, Worst: 774.8, Limits: judge.Limits{Least: 775}}
	if l := s.Finding(f); l.Figure != "just under 775 mm" || l.Word != "narrow" {
		t.Errorf("%s, %s", l.Word, l.Figure)
	}
	if f.Worst = 760; s.Finding(f).Figure != "760 mm" {
		t.Errorf("%s", s.Finding(f).Figure)
	}
}

// In inches, which are coarser than what a feeler tells, a gap that misses its limit and
// reads like it says on which side it is; in millimetres what reads like it keeps it.
func TestAGapThatReadsLikeItsLimit(t *testing.T) {
	l := judge.Limits{Least: 3.175, Target: 4, Most: 5}
	f := judge.Finding{Subject: judge.ClosedGap, Edge: fit.HeadSide, Limits: l, Worst: 3.05, Other: 3.2}
	if f.Verdict = l.Judge(f.Worst); f.Verdict != judge.Tight {
		t.Fatalf("judged %d", f.Verdict)
	}
	in := Speaker{Lexicon: For(US), Length: Inches}
	if got := in.Finding(f).Figure; got != `just under 1/8"` {
		t.Errorf("in inches %s", got)
	}
	if got := (&Speaker{Lexicon: For(UK)}).Finding(f).Figure; got != "3.1 mm" {
		t.Errorf("in mm %s", got)
	}
	if got := l.Judge(3.13); got != judge.Good {
		t.Errorf("3.13 of 3.175 is judged %d", got)
	}
}

// What is good as read and likelier out of its limits is not called good.
func TestInDoubtIsNotGood(t *testing.T) {
	f := judge.Finding{Subject: judge.ClosedGap, Verdict: judge.Good, Worst: 2.4, Other: 2.4, Margin: 1.4, OtherMargin: 1.4}
	f.Odds[judge.Tight], f.Odds[judge.Good] = 0.67, 0.33
	s := Speaker{Lexicon: For(UK)}
	if l := s.Finding(f); l.Word != "in doubt" || l.Verdict != judge.Good {
		t.Errorf("the word is %q", l.Word)
	}
	if h := s.Headline([]judge.Finding{f}); !strings.Contains(h, "in doubt") {
		t.Errorf("the headline is %q", h)
	}
	f.Odds[judge.Tight], f.Odds[judge.Good] = 0.2, 0.8
	if l := s.Finding(f); l.Word != "good" {
		t.Errorf("the word is %q", l.Word)
	}
}
