package advise

import (
	"testing"

	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
	"leafwright/geom/trim"
)

// A head that falls is cured by work on the hinges and a taper, or nearly by the taper alone,
// the gap at one corner as wide as the head falls (common practice, no published source): who
// is content with that is told of it.
func TestFallingHeadNearly(t *testing.T) {
	p := &Problem{Piece: hung(), Wanted: asked()}
	p.Piece.Door.Frame.Head[0].Value += 2.5
	p.Piece.Door.Frame.Head[1].Value--
	a := Plans(p)
	if len(a.Plans) == 0 || len(a.Near) != 1 {
		t.Fatalf("%d plans, %d nearly", len(a.Plans), len(a.Near))
	}
	n := &a.Near[0]
	if len(n.Given) != 1 || n.Given[0].Limit != (Limit{Sort: GapLimit, Edge: door.HeadSide, Upper: true}) || n.Given[0].By > nearMost {
		t.Errorf("gives %+v", n.Given)
	}
	if n.Cost.Gains+n.Cost.Strips > 0 || n.Cost.Frame || n.Cost.Minutes >= a.Plans[0].Cost.Minutes {
		t.Errorf("costs %+v beside %+v", n.Cost, a.Plans[0].Cost)
	}
}

// Of random doors, what is said to be nearly as wanted is: nothing binds or is tight, a gap is
// wider by no more than is said, and it is far less work.
func TestNearlyIsNearly(t *testing.T) {
	seen := 0
	for n := range 3 * many() {
		c := seeded(41, uint64(n))
		p := &Problem{Piece: c.oldDoor(), Wanted: band(0.5)}
		if len(p.Piece.Door.Check()) > 0 {
			continue
		}
		a := Plans(p)
		for i := range a.Near {
			seen++
			q := &a.Near[i]
			is, _ := trim.All(p.Piece, q.Moves)
			var f fit.Fit
			fit.Evaluate(&f, &is.Door)
			for _, g := range judge.Verdicts(&f, &is.Door, &p.Wanted) {
				if g.Verdict == judge.Good {
					continue
				}
				said := false
				for _, r := range q.Given {
					said = said || r.Edge == g.Edge && g.Worst-g.Limits.Most <= r.By+1e-6
				}
				if g.Verdict != judge.Slack || g.Subject != judge.ClosedGap || !said {
					t.Errorf("door %d: %+v, given %+v", n, g, q.Given)
				}
			}
			if q.Price > a.Plans[0].Price/2 || q.Cost.Minutes >= a.Plans[0].Cost.Minutes {
				t.Errorf("door %d: price %g, %g min, beside %g and %g", n, q.Price, q.Cost.Minutes, a.Plans[0].Price, a.Plans[0].Cost.Minutes)
			}
		}
	}
	if seen == 0 {
		t.Error("none was seen")
	}
	t.Logf("%d seen", seen)
}
