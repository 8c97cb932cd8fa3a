package door

import "leafwright/geom"

// Frame is the opening: its faces, its front edges and its stops.
type Frame struct {
	HingeJamb geom.Profile // x = H(y), the face the hanging edge looks at
	LatchJamb geom.Profile // x = L(y), the face the closing edge looks at
	Head      geom.Profile // y = T(x), its under-side

	HingeFront geom.Profile // z = Fh(y), the front edge's stand out of the plane z = 0
	LatchFront geom.Profile // z = Fl(y)
	HeadFront  geom.Profile // z = Ft(x)

	HingeStop geom.Profile // z = Zh(y), the face the leaf closes on
	LatchStop geom.Profile // z = Zl(y)
	HeadStop  geom.Profile // z = Zt(x)

	// StopWidth is how far a stop stands in from the frame's face; the leaf
	// bears half that far in.
	StopWidth float64
}

// Square gives a square, plumb, flat frame with planted stops.
func Square(width, height, rebate, stopWidth float64) Frame {
	var f Frame
	f.HingeJamb = geom.Through(0, 0, height, 0)
	f.LatchJamb = geom.Through(0, width, height, width)
	f.Head = geom.Through(0, height, width, height)
	f.HingeFront, f.LatchFront = geom.Level(0), geom.Level(0)
	f.HeadFront = geom.Level(0)
	f.StopWidth = stopWidth
	f.PlantStops(rebate)
	return f
}

// PlantStops sets every stop a rebate's depth behind the front edge.
func (f *Frame) PlantStops(rebate float64) {
	f.HingeStop = f.HingeFront.Shift(-rebate)
	f.LatchStop = f.LatchFront.Shift(-rebate)
	f.HeadStop = f.HeadFront.Shift(-rebate)
}

// HeadCorners gives where the jambs' faces meet the head's.
func (f *Frame) HeadCorners() (hinge, latch geom.Vec) {
	return meet(f.HingeJamb, 0, f.Head), meet(f.LatchJamb, 0, f.Head)
}

func (f Frame) clone() Frame {
	f.HingeJamb, f.LatchJamb, f.Head = cloneProfile(f.HingeJamb), cloneProfile(f.LatchJamb), cloneProfile(f.Head)
	f.HingeFront, f.LatchFront, f.HeadFront = cloneProfile(f.HingeFront), cloneProfile(f.LatchFront), cloneProfile(f.HeadFront)
	f.HingeStop, f.LatchStop, f.HeadStop = cloneProfile(f.HingeStop), cloneProfile(f.LatchStop), cloneProfile(f.HeadStop)
	return f
}
