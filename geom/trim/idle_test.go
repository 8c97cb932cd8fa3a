package trim_test

import (
	"testing"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/trim"
)

// A move whose amounts are nothing is refused and says so: taken for a move it would be
// time, a cut and a line on the sheet for nothing. It is kept in the list as it was given.
func TestNoughtIsNoMove(t *testing.T) {
	c := throw(11)
	for i := range trim.Kinds {
		s := &trim.Kinds[i]
		p := caseOne()
		m := c.moveOf(s, &p)
		m.Off, m.First, m.Last, m.Cover = false, 0, 0, 0
		if len(m.Line) > 0 {
			m.Line = geom.Through(100, 0, 400, 0.004)
		}
		if s.Kind == trim.Ease {
			m.Face = trim.Stop
		}
		if len(m.Check()) > 0 { // its numbers do not allow nothing
			continue
		}
		_, _, why := trim.Do(p, m)
		switch s.Kind {
		case trim.Bevel, trim.Reuse, trim.Rehinge, trim.Follow: // have no amount, or one that may be nothing
			if why != nil && why.About == trim.NoAmount {
				t.Errorf("%s: %+v", s.Kind, *why)
			}
		case trim.Splice, trim.Threshold: // too low
			refused(t, p, m, trim.TooThin, 0)
		case trim.Cut:
			refused(t, p, m, trim.OffTheLeaf, 0)
		default:
			refused(t, p, m, trim.NoAmount, 0)
			if s.Needs&trim.NeedFirst == 0 {
				continue
			}
			m.First = 0.01
			if _, _, why := trim.Do(p, m); why != nil && why.About == trim.NoAmount {
				t.Errorf("%s by a hundredth: %+v", s.Kind, *why)
			}
		}
	}
	covered := trim.Move{Kind: trim.Undercut, Edge: door.FloorSide, Cover: 5}
	doneTo(t, caseOne(), covered)
	p, _ := doneTo(t, caseOne(), trim.Move{Kind: trim.Ease, Edge: door.HeadSide, Face: trim.Stop, First: 2},
		trim.Move{Kind: trim.Bevel, Edge: door.LatchSide, Angle: 3 * geom.Degree})
	refused(t, p, trim.Move{Kind: trim.Ease, Edge: door.HeadSide, Face: trim.Stop, First: 2}, trim.SoAlready, 2)
	refused(t, p, trim.Move{Kind: trim.Bevel, Edge: door.LatchSide, Angle: 3 * geom.Degree}, trim.SoAlready, 0)
}
