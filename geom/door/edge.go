package door

// Edge is one side of the leaf and what it looks at.
type Edge int

// The four edges: the hanging edge and the hinge jamb, the closing edge and the
// latch jamb, the top and the head, the foot and the floor.
const (
	HingeSide Edge = iota
	LatchSide
	HeadSide
	FloorSide
	Edges // how many there are
)

// Upright tells whether places on the edge are heights (true) or distances across.
func (e Edge) Upright() bool { return e == HingeSide || e == LatchSide }
