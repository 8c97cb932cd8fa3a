// Package door holds the things that are fitted: the leaf, the frame it hangs
// in, its hinges, its latch and the floor under it. They are plain values in the
// axes of package geom; nothing in them remembers how they were measured or drawn.
package door

import "leafwright/geom"

// Door is everything the fit depends on, with the hinges on the left.
type Door struct {
	Leaf   Leaf
	Frame  Frame
	Hinges []Hinge // from the top one down, two at least
	Latch  Latch
	Floor  Floor
	// Opens is the swing angle the leaf is opened to, counted from the pose;
	// above 0, at most 180°.
	Opens geom.Angle
}

// Latch is the place on the closing edge that has to come home in its keep.
type Latch struct {
	Height float64 // v on the leaf, mm from the foot of the hanging stile
	Proud  float64 // mm the leaf's knuckle face stands out of the frame's front edge when latched; 0 = flush
}

// Hinge is one butt hinge as it is let in. All in mm.
type Hinge struct {
	JambHeight float64 // y of its middle on the jamb
	LeafHeight float64 // v of its middle on the leaf
	LeafGain   float64 // depth of the gain in the leaf
	JambGain   float64 // depth of the gain in the jamb
	LeafPacker float64 // packing under the hinge in the leaf's gain
	JambPacker float64 // packing under the hinge in the jamb's gain
	Closed     float64 // thickness folded shut, between the two screwed faces
	Pin        float64 // how far the pin's centre stands out of the frame's front edge
	Proud      float64 // how far the leaf's knuckle face stands out of the frame's front edge here; 0 = flush
	Height     float64 // height of the hinge's plates; no part in the fit, drawn and checked only

	// UncutJamb and UncutLeaf tell that nothing is let in there yet, so that its place and
	// gain are a choice: no part in the fit.
	UncutJamb, UncutLeaf bool
}

// Gap is the gap this hinge sets between jamb and leaf: its closed thickness
// less what is let in on both sides.
func (h Hinge) Gap() float64 {
	return h.Closed - (h.LeafGain - h.LeafPacker) - (h.JambGain - h.JambPacker)
}

// Clone gives a door that shares nothing with d.
func (d Door) Clone() Door {
	d.Leaf = d.Leaf.clone()
	d.Frame = d.Frame.clone()
	d.Hinges = append([]Hinge(nil), d.Hinges...)
	d.Floor = d.Floor.clone()
	return d
}

func cloneProfile(p geom.Profile) geom.Profile { return append(geom.Profile(nil), p...) }
