// Package fault holds what goes wrong with doors: sound doors, new and old, made from
// a seed; faults put into them; the symptoms one sees on site without a tool; and
// the cure a manual gives, as moves of package trim.
//
// A fault changes shapes and nothing else: what it shows is what packages fit and
// judge find in the door it makes. Every amount is in mm and above 0; which way it
// goes is said by its [Way]. What the model has no shape for is said by what it does
// to the shapes there are:
//
//   - Screw heads that stand proud hold a hinge's plates apart, so that it is thicker
//     folded shut than it ought to be (door.Hinge.Closed). Rigid plates would not fold
//     at all; here they fold to that, the leaf is pushed off its jamb, and a hinge that
//     differs from the others is what shows.
//   - A hinge drawn off its seat by its screws has as much behind it as if it were
//     packed out there (door.Hinge.JambPacker): drawing it home takes that packing out.
//     The play one feels in such a hinge is not modelled.
//   - A keep has a place in the model only out of the frame's plane (door.Latch.Proud).
//     One that is too high or too low is not modelled, and no move moves a keep: where a
//     manual does, the stop is moved to it.
//   - Hinges between the outer two go with them by their share, as the leaf's weight and
//     one pair of hands have it: a hinge left behind would be a fault of its own.
//   - Paint lies on the edges of leaf and frame and not on the faces that meet at the
//     stops, where use rubs it off.
//
// Nothing here is thrown by chance: a seed is a number given, and gives the same door,
// the same faults and the same symptoms everywhere.
package fault
