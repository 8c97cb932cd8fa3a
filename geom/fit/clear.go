package fit

import (
	"math"

	"leafwright/geom"
)

// clearWidths measures the least free width between the leaf at 90°, counted
// from the pose, and the latch jamb, and the same to the latch stop.
func (f *Fit) clearWidths() {
	square := geom.Turn{Sin: 1}
	to := facings(&f.door.Frame)[LatchSide]
	least := math.Inf(1)
	for _, e := range [2]Edge{HingeSide, LatchSide} {
		k := &f.work.arrises[e]
		for i := range k.n {
			f.work.lineGap[0] = f.gapCurve(f.work.lineGap[0][:0], k.lines[i], to, square)
			if v, _, _, _ := (Curve{f.work.lineGap[0]}).Extremes(); v < least {
				least = v
			}
		}
	}
	f.ClearWidth = least
	f.ClearToStop = least - f.door.Frame.StopWidth
}
