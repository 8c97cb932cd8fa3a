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
		for face := range faces {
			f.work.faceGap[0] = f.gapCurve(f.work.faceGap[0][:0], f.work.arcs[e][face], to, square)
			if v, _, _, _ := (Curve{f.work.faceGap[0]}).Extremes(); v < least {
				least = v
			}
		}
	}
	f.ClearWidth = least
	f.ClearToStop = least - f.door.Frame.StopWidth
}
