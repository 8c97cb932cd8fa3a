package trim

import "leafwright/geom/door"

var (
	everyEdge = []door.Edge{door.HingeSide, door.LatchSide, door.HeadSide, door.FloorSide}
	upright   = everyEdge[:2]
	lying     = everyEdge[2:]
	ofFrame   = everyEdge[:3]
)

// What First and Last may be, in mm. As with a door's limits they catch slips of the
// pen; what is wise is said by cares.
var (
	shavings = door.Range{Hi: 50}                              // more is sawn
	sawnOff  = door.Range{Hi: 300}                             // a house door made a cupboard's
	glued    = door.Range{Hi: 150}                             // height of a strip
	shifted  = door.Range{Lo: -300, Hi: 300}                   // past a rail
	raised   = door.Range{Lo: -50, Hi: 50}                     // a floor covering and some
	stood    = door.Range{Lo: -20, Hi: 20}                     // out of the plane, as a hinge's proud
	faced    = door.Range{Hi: 50}                              // off a jamb or onto it
	planted  = door.Range{Lo: -door.FaceOff, Hi: door.FaceOff} // a stop moved
	followed = door.Range{Hi: 20}                              // a gap at a stop
)

// Kinds is every kind of move, in the order a menu shows them.
var Kinds = []Spec{
	{Kind: Plane, Needs: NeedEdge | NeedSpan | NeedFirst | NeedLast, Edges: everyEdge, Amount: shavings, TakesOff: true},
	{Kind: Scribe, Needs: NeedEdge | NeedSpan | NeedLine, Edges: everyEdge, Amount: shavings, TakesOff: true},
	{Kind: Cut, Needs: NeedEdge | NeedFirst | NeedLast, Edges: lying, Amount: sawnOff, TakesOff: true},
	{Kind: Undercut, Needs: NeedEdge | NeedFirst | NeedLast | NeedCover, Edges: lying[1:], Amount: sawnOff, TakesOff: true},
	{Kind: Bevel, Needs: NeedEdge | NeedAngle, Edges: upright, TakesOff: true},
	{Kind: Ease, Needs: NeedEdge | NeedFace | NeedFirst, Edges: everyEdge, Amount: door.Ease, TakesOff: true},
	{Kind: Splice, Needs: NeedEdge | NeedFace | NeedFirst | NeedLast | NeedStock | NeedHollow, Edges: everyEdge, Amount: glued, TakesOff: true},
	{Kind: Reuse, Needs: NeedEdge | NeedFirst | NeedHollow, Edges: lying, Amount: glued, TakesOff: true},
	{Kind: Shift, Trade: TheHinges, Needs: NeedHinge | NeedOn | NeedFirst, Amount: shifted},
	{Kind: Raise, Trade: TheHinges, Needs: NeedOn | NeedFirst, Amount: raised},
	{Kind: Sink, Trade: TheHinges, Needs: NeedHinge | NeedOn | NeedFirst, Amount: door.Gain},
	{Kind: Pack, Trade: TheHinges, Needs: NeedHinge | NeedOn | NeedFirst, Amount: door.Range{}.Round(door.Packer.Hi)},
	{Kind: Set, Trade: TheHinges, Needs: NeedHinge | NeedOn | NeedFirst, Amount: stood},
	{Kind: Rehinge, Trade: TheHinges, Needs: NeedHinge | NeedHinges},
	{Kind: PlaneJamb, Trade: TheFrame, Needs: NeedEdge | NeedFirst | NeedLast, Edges: ofFrame, Amount: faced},
	{Kind: PackJamb, Trade: TheFrame, Needs: NeedEdge | NeedFirst | NeedLast, Edges: ofFrame, Amount: faced},
	{Kind: Restop, Trade: TheFrame, Needs: NeedEdge | NeedFirst | NeedLast, Edges: ofFrame, Amount: planted},
	{Kind: Follow, Trade: TheFrame, Needs: NeedEdge | NeedFirst, Edges: ofFrame, Amount: followed},
	{Kind: Threshold, Trade: TheFrame, Needs: NeedCover | NeedWide},
}

// SpecOf gives what there is to know of a kind, nil for an unknown one.
func SpecOf(k Kind) *Spec {
	for i := range Kinds {
		if Kinds[i].Kind == k {
			return &Kinds[i]
		}
	}
	return nil
}
