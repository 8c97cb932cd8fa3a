package words

import (
	"math"
	"strconv"

	"leafwright/geom/fit"
	"leafwright/geom/judge"
)

// The least margins said: what a length and a place are written to.
const (
	leastMargin      = 0.06 // mm, reads 0.1
	leastPlaceMargin = 1.0
)

// known writes a length with its margin, where it has one.
func (s *Speaker) known(mm, margin float64) string {
	if margin <= 0 {
		return s.length(mm)
	}
	return s.between(s.length(mm), s.size(max(margin, leastMargin)), " ± ")
}

// sized writes a finding's number without its sign.
func (s *Speaker) sized(f judge.Finding) string {
	if f.Margin == 0 && s.size(f.Worst) == s.length(0) {
		return "a hair"
	}
	return s.known(math.Abs(f.Worst), f.Margin)
}

// touching is said of a gap that reads like none.
const touching = "touching"

// figure writes a finding's number; where it reads like the limit it misses, it
// says on which side it is.
func (s *Speaker) figure(f judge.Finding) string {
	plain := s.known(f.Worst, f.Margin)
	switch said := s.length(f.Worst); {
	case f.Margin == 0 && f.Verdict <= judge.Tight && s.size(f.Worst) == s.length(0):
		return touching
	case f.Verdict == judge.Tight && f.Limits.Least > 0 && said == s.length(f.Limits.Least):
		return "just under " + plain
	case f.Verdict == judge.Slack && said == s.length(f.Limits.Most):
		return "just over " + plain
	}
	return plain
}

// from writes a finding's two extremes as a range.
func (s *Speaker) from(f judge.Finding) string {
	if s.length(f.Worst) == s.length(f.Other) {
		return s.known(f.Worst, max(f.Margin, f.OtherMargin))
	}
	return s.between(s.known(f.Worst, f.Margin), s.known(f.Other, f.OtherMargin), " to ")
}

// Chances below which nothing is said: a leaf that binds is worth a word where one
// that is a shade slack is not.
const (
	leastBinding = 0.01
	leastOther   = judge.Doubtful
)

// odds says the chances of a finding worth a word, as a sentence; "" where it is
// sure or does not rest on readings.
func (s *Speaker) odds(f judge.Finding) string {
	if !f.Odds.Told() {
		return ""
	}
	if f.Verdict == judge.Binds {
		if f.Odds[judge.Binds] >= 1-leastBinding {
			return ""
		}
		return Capital(turn(f, judge.Binds)) + ": " + chance(f.Odds[judge.Binds]) + "."
	}
	var parts []string
	for _, v := range [...]judge.Verdict{judge.Binds, judge.Tight, judge.Slack, judge.Good} {
		p, least := f.Odds[v], leastOther
		if v == judge.Binds {
			least = leastBinding
		}
		if v != f.Verdict && p >= least {
			parts = append(parts, chance(p)+" that it "+turn(f, v))
		}
	}
	if len(parts) == 0 {
		return ""
	}
	said := Listed(parts)
	if f.Verdict == judge.Good {
		return "Good as read, but " + said + "."
	}
	return said + "."
}

// turn says a verdict of a finding's subject, as "it ..." goes on.
func turn(f judge.Finding, v judge.Verdict) string {
	if v == judge.Good {
		return "is good"
	}
	switch f.Subject {
	case judge.Latching:
		if v == judge.Binds {
			return "does not latch"
		}
		return "latches with no play"
	case judge.ClearWay:
		return "is too narrow"
	case judge.SwingFloor:
		if v == judge.Binds {
			return "drags"
		}
	case judge.SwingGap:
		if v == judge.Binds {
			return "fouls"
		}
	case judge.ClosedGap:
		if v == judge.Binds && f.Edge == fit.HingeSide {
			return "is hinge-bound"
		}
	}
	if v == judge.Binds {
		return "binds"
	}
	return "is " + Word(v)
}

// chance says a chance in plain words and in per cent.
func chance(p float64) string {
	percent := int(math.Round(100 * p))
	percent = max(1, min(99, percent))
	behind := " (" + strconv.Itoa(percent) + "\u00a0%)"
	if p < 0.42 {
		return "1 in " + strconv.Itoa(roundly(1/math.Max(p, 0.01))) + behind
	}
	for _, step := range [...]struct {
		below float64
		said  string
	}{{0.55, "1 in 2"}, {0.63, "3 in 5"}, {0.71, "2 in 3"}, {0.775, "3 in 4"}, {0.85, "4 in 5"}, {0.93, "9 in 10"}, {0.97, "19 in 20"}} {
		if p < step.below {
			return step.said + behind
		}
	}
	return "all but certain" + behind
}

// roundly gives the odds against as people say them: 1 in 3, in 15, in 40.
func roundly(n float64) int {
	step := 1.0
	switch {
	case n > 30:
		step = 10
	case n > 12:
		step = 5
	}
	return max(3, int(math.Round(n/step)*step))
}
