package timber

import "leafwright/geom"

// clearPlace gives the place nearest to the one wanted at which something reaching half
// both ways stays within the room and keeps off every blocked stretch; the lower of two as
// near. Where there is none it says so.
func clearPlace(want, half float64, room geom.Interval, blocked []geom.Interval) (at float64, ok bool) {
	room = geom.Interval{Lo: room.Lo + half, Hi: room.Hi - half}
	if room.IsEmpty() {
		return want, false
	}
	const noise = 1e-9 // that a sum of lengths may lose
	best := 0.0
	try := func(x float64) {
		if !room.Contains(x) || ok && max(x-want, want-x) >= max(best-want, want-best) {
			return
		}
		for _, b := range blocked {
			if x-half < b.Hi-noise && x+half > b.Lo+noise {
				return
			}
		}
		best, ok = x, true
	}
	try(room.Clamp(want))
	for _, b := range blocked {
		try(b.Lo - half)
		try(b.Hi + half)
	}
	if !ok {
		return want, false
	}
	return best, true
}
