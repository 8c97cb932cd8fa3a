package sheet

import (
	"slices"

	"leafwright/game"
	"leafwright/game/words"
	"leafwright/geom/door"
)

// seat is one quantity of a hinge that a move changes, as a rule or a gauge meets it, mm.
type seat struct {
	hinge   int // from 0 at the top
	what    seatOf
	was, is float64
	round   float64
}

// seatOf is which quantity, in the order they are set.
type seatOf int

const (
	plateHigh seatOf = iota // height of the plates
	folded                  // thickness folded shut
	onLeaf                  // the plate's upper end below the leaf's top
	onJamb                  // below the head
	leafGain                // depth of the gain
	jambGain                //
	leafPack                // packing behind the plate
	jambPack                //
	pinOut                  // the pin's centre before the frame's front edge
	faceBack                // the leaf's knuckle face behind the pin's centre
	seats
)

// say names it in a table.
func (q seatOf) say(s *words.Speaker) string {
	switch q {
	case onLeaf:
		return "plate's top, below the leaf's top"
	case onJamb:
		return "plate's top, below the head"
	case leafGain:
		return s.Gain + " in the leaf, deep"
	case jambGain:
		return s.Gain + " in the jamb, deep"
	case leafPack:
		return s.Packer + " on the leaf, thick"
	case jambPack:
		return s.Packer + " on the jamb, thick"
	case pinOut:
		return "pin's middle, out of the frame's front edge"
	case faceBack:
		return "pin's middle, out of the leaf's knuckle face"
	case plateHigh:
		return "plates, high"
	}
	return "thickness folded shut"
}

// in gives the quantity of a door's hinge.
func (q seatOf) in(d *door.Door, i int) float64 {
	h := &d.Hinges[i]
	switch q {
	case onLeaf:
		return d.Leaf.Corners(0).HangingHead.Y - h.LeafHeight - h.Height/2
	case onJamb:
		head, _ := d.Frame.HeadCorners()
		return head.Y - h.JambHeight - h.Height/2
	case leafGain:
		return h.LeafGain
	case jambGain:
		return h.JambGain
	case leafPack:
		return h.LeafPacker
	case jambPack:
		return h.JambPacker
	case pinOut:
		return h.Pin
	case faceBack:
		return h.Pin - h.Proud
	case plateHigh:
		return h.Height
	}
	return h.Closed
}

// seatsOf gives what a move changes of the hinges, counted from the leaf's top and the
// head as the move finds them; gains it cuts anew as deep as they were too.
func seatsOf(a *Ask, was, is *game.Tried, recut []int) (out []seat) {
	_, fine, _ := a.steps()
	// a strip on the hanging edge takes the gains anew, as deep as they were
	anew := len(is.Anatomy.Strips) > len(was.Anatomy.Strips)
	after := is.Door
	after.Leaf, after.Frame = was.Door.Leaf, was.Door.Frame
	for i := range was.Door.Hinges {
		for q := range seats {
			k := seat{hinge: i, what: q, was: q.in(&was.Door, i), is: q.in(&after, i), round: fine}
			if q == onLeaf || q == onJamb {
				if k.round = a.sizeStep(); toStep(k.was, k.round) == toStep(k.is, k.round) {
					k.round = fine
				}
			}
			change := k.is - k.was
			if change > 1e-6 || change < -1e-6 || q == leafGain && anew && slices.Contains(recut, i) {
				out = append(out, k)
			}
		}
	}
	return out
}
