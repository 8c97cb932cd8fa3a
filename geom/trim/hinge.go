package trim

import (
	"math"

	"leafwright/geom/door"
)

// screwHold is the timber, in mm, that a hinge's screws want behind its gain, and
// short how far a gain stops before the stop face (common practice, no published
// source).
const (
	screwHold = 25.0
	short     = 6.0
)

// hinges does one thing to the hinges the move names and notes what that cuts. A
// hinge that is not there forbids it.
func (w *work) hinges(m *Move, do func(h *door.Hinge)) *Care {
	all := append([]door.Hinge(nil), w.p.Door.Hinges...)
	w.p.Door.Hinges = all
	from, past := m.Hinge-1, m.Hinge
	if m.Hinge == 0 {
		from, past = 0, len(all)
	}
	if from < 0 || past > len(all) {
		return &Care{About: NotThere, Member: Member{Part: HingeSeat, Index: from}}
	}
	hung := all[0].JambHeight - all[0].LeafHeight // the leaf hangs from the top hinge
	for i := from; i < past; i++ {
		was := all[i]
		do(&all[i])
		if why := w.seated(m.Kind, i, was); why != nil {
			return why
		}
	}
	if all[0].UncutJamb { // it has no keep yet that would have to follow
		return nil
	}
	if lift := all[0].JambHeight - all[0].LeafHeight - hung; math.Abs(lift) >= keepPlay {
		w.mind(Care{About: KeepOff, Member: Member{Part: LockCase, Edge: door.LatchSide}, Left: lift})
	}
	return nil
}

// keepPlay is how far, in mm, a latch may rise or fall and still find its keep as it
// did (common practice, no published source).
const keepPlay = 1.0

// shift moves hinges up by First on leaf, jamb or both.
func (w *work) shift(m *Move) *Care {
	return w.hinges(m, func(h *door.Hinge) {
		if m.On != OnJamb {
			h.LeafHeight += m.First
		}
		if m.On != OnLeaf {
			h.JambHeight += m.First
		}
	})
}

// raise moves the leaf up by First: every hinge up on the jamb, or down on the
// leaf; on both, half on each.
func (w *work) raise(m *Move) *Care {
	jamb, leaf := shares(m.On, m.First)
	all := Move{Kind: m.Kind}
	return w.hinges(&all, func(h *door.Hinge) {
		h.JambHeight += jamb
		h.LeafHeight -= leaf
	})
}

// shares parts an amount that leaf and jamb make up together.
func shares(on Part, amount float64) (jamb, leaf float64) {
	switch on {
	case OnJamb:
		return amount, 0
	case OnLeaf:
		return 0, amount
	}
	return amount / 2, amount / 2
}

// sink lets hinges in deeper by First on leaf, jamb or both, each by all of it.
// Packing there is taken out before anything is cut.
func (w *work) sink(m *Move) *Care {
	deeper := func(gain, packer *float64) {
		out := min(*packer, m.First)
		*packer -= out
		*gain += m.First - out
	}
	return w.hinges(m, func(h *door.Hinge) {
		if m.On != OnJamb {
			deeper(&h.LeafGain, &h.LeafPacker)
		}
		if m.On != OnLeaf {
			deeper(&h.JambGain, &h.JambPacker)
		}
	})
}

// pack makes the packing behind hinges thicker by First on leaf, jamb or both; below 0
// it takes out as much of what is there. Where there is none it is refused.
func (w *work) pack(m *Move) *Care {
	changed := false
	behind := func(packer *float64) {
		was := *packer
		*packer = max(0, was+m.First)
		changed = changed || *packer != was
	}
	why := w.hinges(m, func(h *door.Hinge) {
		if m.On != OnJamb {
			behind(&h.LeafPacker)
		}
		if m.On != OnLeaf {
			behind(&h.JambPacker)
		}
	})
	if why == nil && m.First < 0 && !changed {
		return &Care{About: NoPacker}
	}
	return why
}

// set moves the leaf out of the plane by First at a hinge. On the jamb the whole
// hinge moves and its pin with it; on the leaf only the leaf moves over its plate;
// on both, half on each.
func (w *work) set(m *Move) *Care {
	jamb, leaf := shares(m.On, m.First)
	return w.hinges(m, func(h *door.Hinge) {
		h.Pin += jamb
		h.Proud += jamb + leaf
	})
}

// rehinge hangs the leaf on other hinges, their middles where the old ones were. A
// gain deeper than the new one asks for is filled up behind the new plate.
func (w *work) rehinge(m *Move) *Care {
	fill := func(gain, packer *float64, want float64) {
		*packer = max(0, *gain-want)
		*gain = max(*gain, want)
	}
	return w.hinges(m, func(h *door.Hinge) {
		h.Closed, h.Height, h.Pin = m.Closed, m.Plates, m.Pin
		fill(&h.LeafGain, &h.LeafPacker, m.LeafGain)
		fill(&h.JambGain, &h.JambPacker, m.JambGain)
	})
}

// seated notes what it takes to bring the i-th hinge from what it was to what it is:
// gains cut anew, timber taken out and what is left of it, and what is to be
// minded there. A gain that comes out of the stile or into a stub tenon forbids it.
func (w *work) seated(k Kind, i int, was door.Hinge) *Care {
	h := w.p.Door.Hinges[i]
	here := Member{Part: HingeSeat, Edge: door.HingeSide, Index: i}
	across := 0.0 // the leaf over its plate, out of the plane
	if k == Set {
		across = h.Proud - was.Proud - (h.Pin - was.Pin)
	}
	leaf := h.LeafHeight != was.LeafHeight || h.LeafGain > was.LeafGain || h.Height > was.Height || across != 0
	jamb := h.JambHeight != was.JambHeight || h.JambGain > was.JambGain || h.Height > was.Height || h.Pin != was.Pin
	leaf, jamb = leaf && !h.UncutLeaf, jamb && !h.UncutJamb // what is not cut is not cut anew
	if leaf && h.LeafGain > 0 || jamb && h.JambGain > 0 {
		w.done.Gains = append(w.done.Gains, i)
	}
	if h.LeafPacker < was.LeafPacker || h.JambPacker < was.JambPacker {
		w.mind(Care{About: PackerOut, Member: here})
	}
	if k == Set {
		if why := w.flapBears(i, max(-across, h.Pin-was.Pin), h.Proud-was.Proud); why != nil {
			return why
		}
	}
	if !leaf || !(h.LeafGain > 0) {
		return nil
	}
	wide := max(0, w.p.Door.Leaf.Thickness-short)
	shared := max(0, min(h.LeafHeight+h.Height/2, was.LeafHeight+was.Height/2)-max(h.LeafHeight-h.Height/2, was.LeafHeight-was.Height/2))
	w.done.Volume += float64(wide*(float64(max(0, h.Height-shared)*h.LeafGain)+float64(shared*max(0, h.LeafGain-was.LeafGain)))) +
		float64(max(0, across)*h.Height)*h.LeafGain
	return w.hingeTimber(i, was)
}

// flap gives how broad a hinge's flap is let into the edge of a leaf so thick, mm.
func flap(thick float64) float64 { return max(0, thick-short) }

// SetMost is how far, mm, a hinge may be moved towards its knuckle in the edge of a leaf
// so thick: two thirds of the flap must still bear, or the screws split the arris off
// (common practice, no published source).
func SetMost(thick float64) float64 { return flap(thick) / 3 }

// flapBears tells whether a flap that is moved across its edge towards the knuckle by so
// much, mm, still has enough of the edge to hold on. The leaf standing out by more than a
// latch bears is minded.
func (w *work) flapBears(i int, moved, out float64) *Care {
	const nothing = 1e-6
	here := Member{Part: HingeSeat, Edge: door.HingeSide, Index: i}
	thick := w.p.Door.Leaf.Thickness
	if wide := flap(thick); moved > SetMost(thick)+nothing {
		return &Care{About: TooLittle, Member: here, Left: max(0, wide-moved), Need: wide - SetMost(thick)}
	}
	if math.Abs(out) >= keepPlay {
		w.mind(Care{About: HingeSet, Member: here, Left: out})
	}
	return nil
}

// hingeTimber tells what is left of the hanging stile behind the i-th hinge's gain,
// and whether the gain comes upon a rail's tenon.
func (w *work) hingeTimber(i int, was door.Hinge) *Care {
	a, l, h := &w.p.Anatomy, &w.p.Door.Leaf, &w.p.Door.Hinges[i]
	if !(a.HangingStile > 0) {
		return nil // no stile is known
	}
	inner, _ := a.Inner(l)
	seat := Member{Part: HingeSeat, Edge: door.HingeSide, Index: i}
	left := inner - l.Hanging.At(h.LeafHeight) - h.LeafGain
	before := inner - l.Hanging.At(was.LeafHeight) - was.LeafGain
	if left != before {
		w.done.Left = append(w.done.Left, Left{Member: seat, Before: before, Now: left})
	}
	if !(left > 0) {
		return &Care{About: TooLittle, Member: seat, Left: left, Need: screwHold}
	}
	if left < screwHold {
		w.mind(Care{About: Slender, Member: seat, Left: left, Need: screwHold})
	}
	for k := range a.Rails {
		lo, hi := a.Tenon(k)
		if !(lo < hi && h.LeafHeight-h.Height/2 < hi && lo < h.LeafHeight+h.Height/2) {
			continue
		}
		tenon := Member{Part: Tenon, Edge: door.HingeSide, Index: k}
		if a.Joints.Kind == door.Through { // its end grain stands in the stile's edge
			w.mind(Care{About: HingeOnTenon, Member: tenon})
		} else if clear := left - a.Joints.Tenon; clear < 0 {
			return &Care{About: IntoTenon, Member: tenon, Left: clear}
		}
	}
	return nil
}

// mind notes what is to be minded.
func (w *work) mind(c Care) { w.done.Cares = append(w.done.Cares, c) }
