package advise

import (
	"math"

	"leafwright/geom/door"
	"leafwright/geom/fit"
)

// perHinge is what amounts at the outer two hinges, and what puts those between right, come
// to for each hinge, mm.
type perHinge struct {
	deeper, jambDeeper []float64 // gains in leaf and jamb; below 0 packed out
	set, jambSet       []float64 // out of the plane, on the leaf and with the pin
	up                 []float64 // those between along the leaf
}

// perHinges gives each hinge its share, those between the outer two by halves of grid, 0
// exactly. Where shapes are exact these are put where the outer two ask for them: what they
// are out by of their own is cured with it.
func (w *Work) perHinges(a *amounts, grid float64) (h perHinge) {
	n := len(w.p.Piece.Door.Hinges)
	share := func(x [2]float64) []float64 {
		out := make([]float64, n)
		out[0], out[n-1] = x[0], x[1]
		return out
	}
	h = perHinge{share(a.deeper), share(a.jambDeeper), share(a.set), make([]float64, n), make([]float64, n)}
	switch {
	case n < 3 || !a.seat:
	case w.p.Sigma != nil:
		w.interpolate(h.deeper, grid)
		w.interpolate(h.jambDeeper, grid)
		w.interpolate(h.set, grid)
	default:
		w.seatBetween(a, &h, grid)
	}
	return h
}

// interpolate gives the hinges between their share of amounts at the outer two.
func (w *Work) interpolate(x []float64, grid float64) {
	hinges := w.p.Piece.Door.Hinges
	last := len(hinges) - 1
	top, low := hinges[0].LeafHeight, hinges[last].LeafHeight
	for i := 1; i < last; i++ {
		y := x[0] + float64((x[last]-x[0])*((top-hinges[i].LeafHeight)/(top-low)))
		if grid > 0 {
			y = grid * math.Round(y/grid)
		}
		if abs(x[0]-x[last]) <= nothing {
			y = x[0]
		}
		x[i] = y
	}
}

// seatBetween puts the hinges between where the leaf asks for them once the outer two are
// worked: its pin onto the axis on the jamb, its plate onto the leaf on the leaf. What is
// within a hinge's play is left.
func (w *Work) seatBetween(a *amounts, h *perHinge, grid float64) {
	d := w.p.Piece.Door
	d.Hinges = append([]door.Hinge(nil), d.Hinges...)
	last := len(d.Hinges) - 1
	for i := range d.Hinges {
		g := &d.Hinges[i]
		pack, jamb, sink := packingFirst(g, h.deeper[i])
		g.LeafPacker, g.JambPacker, g.LeafGain = g.LeafPacker+pack, g.JambPacker+jamb, g.LeafGain+sink
		g.JambGain += h.jambDeeper[i]
		g.Proud += h.set[i]
		if g.UncutJamb {
			g.JambHeight += a.raise
		} else {
			g.LeafHeight -= a.raise
		}
	}
	d.Hinges[last].LeafHeight += a.low
	round := func(x float64) float64 {
		const left = 0.6 // of a hinge's play, what rounding the outer two leaves and more
		if grid == 0 && abs(x) > 2*trueEnough {
			return x
		}
		if abs(x) <= left*hingePlay {
			return 0
		}
		return grid * math.Round(x/grid)
	}
	f := &w.outer
	fit.EvaluateClosed(f, &d)
	for i := 1; i < last; i++ {
		seat, pin := f.OffSeat(i), f.OffLine(i)
		if pin.Len() > hingePlay && !w.p.Wishes.LeaveFrame {
			h.jambDeeper[i], h.jambSet[i] = round(pin.X), round(-pin.Z)
			seat.X += h.jambDeeper[i] // where the hinge holds the leaf goes with its pin
			seat.Z -= h.jambSet[i]
		}
		h.deeper[i], h.set[i], h.up[i] = round(-seat.X), round(seat.Z), round(-seat.Y)
	}
}

// packingFirst parts what a gain is to be deeper by, packing out below 0: packing there is
// taken out before anything is cut, on the leaf first.
func packingFirst(h *door.Hinge, deeper float64) (leaf, jamb, sink float64) {
	if deeper <= 0 {
		return -deeper, 0, 0
	}
	leaf = min(deeper, h.LeafPacker)
	jamb = min(deeper-leaf, h.JambPacker)
	return -leaf, -jamb, deeper - leaf - jamb
}

// strainedBetween tells whether a hinge between the outer two is out of line or step as the door
// stands, which only work on the hinges cures.
func (w *Work) strainedBetween() bool {
	if w.p.Sigma != nil {
		return false
	}
	for i := 1; i < len(w.p.Piece.Door.Hinges)-1; i++ {
		if w.base.Unseated(i) > hingePlay || w.base.OutOfLine(i) > hingePlay {
			return true
		}
	}
	return false
}
