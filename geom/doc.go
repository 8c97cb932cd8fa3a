// Package geom is the plain geometry under the door: points, turns, straight
// stretches of numbers and the profiles measured along an edge.
//
// Units and signs, said once for the whole program:
//
//   - Lengths are millimetres. Angles are radians inside (type [Angle]) and
//     degrees wherever a person reads or types them.
//   - World axes, seen from the knuckle side, the side the leaf opens towards:
//     x to the right, y up, z towards the viewer. The hinges are on the left; a
//     leaf hung on the right is mirrored in x when it is read and when it is drawn.
//   - x = 0 is the plumb line through the foot of the hinge jamb's face, y = 0 the
//     level line through the finished floor there, z = 0 the plumb plane through
//     the frame's front edge there.
//   - Leaf axes: u across from the hanging edge, v up from the foot of the hanging
//     stile, w out of the leaf's plane towards the knuckle side.
//   - A gap above zero is clear; below zero the two pieces would overlap by that
//     much, which the trade calls binding.
//   - The swing angle grows as the leaf opens: the closing edge moves towards +z.
//
// Every function here is pure. Nothing reads a clock, keeps state or calls
// [math.Hypot], whose last bit differs between processors: the same input gives
// the same bits natively and in WebAssembly.
package geom
