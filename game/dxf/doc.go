// Package dxf writes a leaf, what is to be cut of it and its opening as a drawing in
// the open exchange format of drawing programs, for a workshop that cuts by machine.
//
// The file is ASCII DXF of release 12 (AC1009), the plainest that every reader takes,
// by the published group codes; $INSUNITS, which is younger, says millimetres to
// readers that know it. Everything lies in the plane, y up, seen from the knuckle side
// with the hinges on the side where they are: leaf and opening of a right-hung door
// are drawn the other way round, and only here.
//
// The leaf stands as it lies on a bench, not as it hangs: for a left-hung leaf x runs
// across from its hanging edge and y up from the foot of its hanging stile, as found.
// The opening stands beside it, plumb as it is, y up from the floor at the foot of the
// hinge jamb. Outlines are those of the knuckle face unless their layer says another.
package dxf
