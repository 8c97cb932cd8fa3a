package survey

import (
	"math"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/survey/lsq"
)

// How far in mm a line of the door given may be from where the unknowns have it:
// where a bend is less than unseen nobody could tell, be all read with the best of
// the instruments there are; else it is a tenth of the line's standard deviation
// there, and no more than slack. Hanging a door takes time by the bends of its
// lines, and most lie where nobody saw any.
const (
	unseen = 0.012
	slack  = 0.05
)

// straighten leaves out of the door's lines the stations at which they bend by less
// than is known of them.
func (a *adjustment) straighten(d *door.Door) {
	for id := range lines {
		p := profileOf(d, id)
		*p = sparse(*p, func(i int) float64 { return a.room(id, (*p)[i].At) })
	}
}

// room gives how far the line may be off at s.
func (a *adjustment) room(id lineID, s float64) float64 {
	if id >= hingeRebate && id <= headRebate || a.sol.Rows.Len() == 0 {
		return unseen // follows its front edge
	}
	clear(a.half)
	a.net.line[id].weigh(s, func(q int, w float64) {
		if c := a.net.column[q]; c >= 0 {
			a.half[c] += w
		}
	})
	a.sol.Factor.Half(a.half, a.half)
	// The variance without what the pull towards the ordinary adds, see times: no
	// more than the whole.
	return min(slack, max(unseen, sqrt(lsq.Dot(a.half, a.half))/10))
}

// sparse gives the profile without the inner stations it takes to stay within room of
// it at each of them: the one whose loss shows least goes first.
func sparse(p geom.Profile, room func(i int) float64) geom.Profile {
	kept := make([]int, len(p))
	rooms := make([]float64, len(p))
	for i := range kept {
		kept[i] = i
	}
	// farOff gives the most that stations between two stand off the chord over them,
	// as part of their room.
	farOff := func(from, to int) (most float64) {
		a, b := p[from], p[to]
		for i := from + 1; i < to; i++ {
			s := p[i]
			off := math.Abs(s.Value - a.Value - float64((b.Value-a.Value)*((s.At-a.At)/(b.At-a.At))))
			if off >= slack {
				return 1
			}
			if off > unseen && rooms[i] == 0 {
				rooms[i] = room(i)
			}
			most = max(most, off/max(rooms[i], unseen))
		}
		return most
	}
	for len(kept) > 2 {
		least, at := 1.0, -1
		for i := 1; i < len(kept)-1; i++ {
			if far := farOff(kept[i-1], kept[i+1]); far < least {
				least, at = far, i
			}
		}
		if at < 0 {
			break
		}
		kept = append(kept[:at], kept[at+1:]...)
	}
	out := make(geom.Profile, len(kept))
	for i, k := range kept {
		out[i] = p[k]
	}
	return out
}
