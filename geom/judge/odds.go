package judge

import "leafwright/geom"

// Known is a number that rests on readings, as far as it is known.
type Known interface {
	// Margin is what stands behind ±: half the interval that holds the truth nine
	// times out of ten.
	Margin() float64
	// Below is the chance that the truth is below the limit.
	Below(limit float64) float64
}

// Odds are the chances of each verdict, by Verdict; all 0 where nothing is said of
// them.
type Odds [Good + 1]float64

// Told tells whether there are any.
func (o Odds) Told() bool { return o != Odds{} }

// Doubtful is the chance of another verdict from which on a finding is not sure.
const Doubtful = 0.1

// Sure tells whether the finding's verdict would be another less than one time in
// ten; one of a door that does not rest on readings always is.
func (f *Finding) Sure() bool { return !f.Odds.Told() || 1-f.Odds[f.Verdict] < Doubtful }

// InDoubt tells that a finding is good as read and yet likelier not to be.
func (f *Finding) InDoubt() bool {
	return f.Verdict == Good && f.Odds.Told() && f.Odds[Good] < 0.5
}

// Weigh gives findings their margins and odds. known gives how well a finding's
// Worst and Other are known, nil for what nothing is said of. Good findings that
// are not sure then come before those that are.
func Weigh(all []Finding, known func(f *Finding) (worst, other Known)) {
	for i := range all {
		f := &all[i]
		worst, other := known(f)
		if worst == nil {
			continue
		}
		if other == nil {
			other = worst
		}
		f.Margin, f.OtherMargin = worst.Margin(), other.Margin()
		f.Odds = f.odds(worst, other)
	}
	geom.Order(all, func(a, b Finding) int {
		if a.Verdict != Good || b.Verdict != Good || a.Sure() == b.Sure() {
			return 0
		}
		if b.Sure() {
			return -1
		}
		return 1
	})
}

// odds works out the chances of a finding whose Worst and Other are known so well.
func (f *Finding) odds(worst, other Known) (o Odds) {
	l := f.Limits
	switch f.Subject {
	case Latching:
		o[Binds] = worst.Below(-latchPlay)
		if f.StillToGo() {
			o[Tight] = worst.Below(-heeded) - o[Binds]
		}
	case HingeLine:
		return Odds{} // hinges are set to each other as the leaf is hung, which no reading sees
	case ClearWay:
		if l.Least > 0 {
			o[Tight] = worst.Below(l.Least)
		}
	default:
		least, most := worst, other
		if f.Verdict == Slack {
			least, most = other, worst
		}
		low, high := l.Kept()
		o[Binds] = least.Below(l.Bind())
		o[Tight] = max(0, least.Below(low)-o[Binds])
		if l.Most > 0 {
			o[Slack] = min(1-most.Below(high), 1-o[Binds]-o[Tight])
		}
	}
	o[Good] = max(0, 1-o[Binds]-o[Tight]-o[Slack])
	return o
}

// StillToGo tells, of a finding about the latch, whether a stop holds the leaf
// before the latch is home.
func (f *Finding) StillToGo() bool { return f.Subject == Latching && f.Worst < -rounding }
