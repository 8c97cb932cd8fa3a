package judge_test

import (
	"testing"

	"leafwright/geom/judge"
)

// What is good as read and likelier out of its limits than in them is in doubt.
func TestLikelierOutIsInDoubt(t *testing.T) {
	odds := func(verdict judge.Verdict, tight, slack float64) *judge.Finding {
		f := &judge.Finding{Verdict: verdict}
		f.Odds[judge.Tight], f.Odds[judge.Slack], f.Odds[judge.Good] = tight, slack, 1-tight-slack
		return f
	}
	for _, c := range []struct {
		f    *judge.Finding
		want bool
	}{
		{odds(judge.Good, 0.67, 0.1), true},
		{odds(judge.Good, 0.3, 0.3), true},
		{odds(judge.Good, 0.3, 0.15), false},
		{odds(judge.Tight, 0.67, 0.1), false},
		{&judge.Finding{Verdict: judge.Good}, false},
	} {
		if got := c.f.InDoubt(); got != c.want {
			t.Errorf("%v of odds %v: in doubt %v", c.f.Verdict, c.f.Odds, got)
		}
	}
}
