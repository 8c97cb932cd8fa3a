package judge

import (
	"math"
	"testing"

	"leafwright/geom/fit"
)

// even is a number known to lie anywhere within half of it with like chance.
type even struct{ value, half float64 }

func (e even) Margin() float64 { return 0.9 * e.half }
func (e even) Below(limit float64) float64 {
	return min(1, max(0, (limit-e.value+e.half)/(2*e.half)))
}

func TestWeigh(t *testing.T) {
	gap := Limits{Least: 2 + Blade, Target: 2.5, Most: 3 - Blade} // kept between 2 and 3
	for _, row := range []struct {
		situation    string
		f            Finding
		worst, other Known
		want         Odds // binds, tight, slack, good
		sure         bool
	}{
		{"known without readings", Finding{Verdict: Good, Limits: gap}, nil, nil, Odds{}, true},
		{"binds, as likely as not", Finding{Verdict: Binds, Limits: gap}, even{0, 1}, even{1, 1}, Odds{0.5, 0.5, 0, 0}, false},
		{"good, a quarter tight", Finding{Verdict: Good, Limits: gap}, even{2.5, 1}, even{2.5, 0.4}, Odds{0, 0.25, 0, 0.75}, false},
		{"good, with a little of everything", Finding{Verdict: Good, Limits: gap}, even{2, 4}, even{3, 4}, Odds{0.25, 0.25, 0.5, 0}, false},
		{"slack, and sure of it", Finding{Verdict: Slack, Limits: gap}, even{5, 1}, even{3, 0.1}, Odds{0, 0, 1, 0}, true},
		{"no gap is too wide", Finding{Verdict: Good, Limits: Limits{Least: 1}}, even{3, 1}, even{9, 1}, Odds{0, 0, 0, 1}, true},
		{"the latch has 1 mm to go", Finding{Subject: Latching, Verdict: Binds, Worst: -1}, even{-1, 1}, nil, Odds{0.75, 0.225, 0, 0.025}, false},
		{"the latch is home", Finding{Subject: Latching, Verdict: Good}, even{0, 1}, nil, Odds{0.25, 0, 0, 0.75}, false},
		{"the hinges disagree", Finding{Subject: HingeLine, Verdict: Tight, Limits: Limits{Most: 0.5}}, even{0.5, 1}, nil, Odds{}, true},
		{"no clear way asked for", Finding{Subject: ClearWay, Verdict: Good}, even{700, 2}, nil, Odds{0, 0, 0, 1}, true},
		{"a clear way asked for", Finding{Subject: ClearWay, Verdict: Good, Limits: Limits{Least: 699}}, even{700, 2}, nil, Odds{0, 0.25, 0, 0.75}, false},
	} {
		t.Run(row.situation, func(t *testing.T) {
			all := []Finding{row.f}
			Weigh(all, func(*Finding) (Known, Known) { return row.worst, row.other })
			f := all[0]
			for v, p := range row.want {
				if math.Abs(f.Odds[v]-p) > 1e-6 { // latch play is compared with a rounding
					t.Fatalf("odds %v, want %v", f.Odds, row.want)
				}
			}
			if f.Sure() != row.sure {
				t.Errorf("sure %v", f.Sure())
			}
			if row.worst != nil && f.Margin != row.worst.Margin() {
				t.Errorf("margin %v", f.Margin)
			}
		})
	}
}

// What is good but not sure is told before what is sure, and nothing else moves.
func TestDoubtfulComesFirst(t *testing.T) {
	least := Limits{Least: 1}
	all := []Finding{
		{Verdict: Binds, Limits: least, Worst: -1}, {Verdict: Slack, Limits: least}, {Verdict: Good, Edge: 0, Limits: least}, {Verdict: Good, Edge: 1, Limits: least},
	}
	Weigh(all, func(f *Finding) (Known, Known) {
		if f.Edge == 1 {
			return even{1.5, 1}, nil
		}
		return even{9, 1}, nil
	})
	var got []fit.Edge
	for _, f := range all {
		got = append(got, f.Edge)
	}
	if all[0].Verdict != Binds || all[1].Verdict != Slack || all[2].Edge != 1 || all[3].Edge != 0 {
		t.Errorf("in the order of edges %v", got)
	}
}
