package fit

import (
	"leafwright/geom"
	"leafwright/geom/door"
)

// work is the memory an evaluation uses and the next one uses again.
type work struct {
	arrises [Edges]arrises
	cuts    []float64
	lineGap [mostLines][]Piece
	lesser  [2][]Piece
	stop    []Piece
	sweep   sweep
	// ground is the door's floor, with one row where it is alike all round, and
	// levelFloor tells that it has one height everywhere; floorClosed is where each
	// bottom arris is lowest over it when closed.
	ground      door.Floor
	levelFloor  bool
	floorClosed [mostLines]struct{ least, at float64 }
	floor       floorSweep
}

// Evaluate hangs the door and measures everything, into f. It is a pure function
// of the door, which must have passed its check and must not change while f is
// used; f's memory is used again, so that evaluating allocates nothing once its
// slices have grown.
func Evaluate(f *Fit, d *door.Door) {
	EvaluateClosed(f, d)
	f.swing()
	f.swingFloor()
	f.clearWidths()
}

// EvaluateClosed hangs the door and measures what can be read with the leaf
// closed: pose, closing, gaps and stops. What [Evaluate] measures through the
// swing keeps what it was.
func EvaluateClosed(f *Fit, d *door.Door) {
	f.door = d
	f.work.ground = d.Floor
	if _, round, _ := slopes(&d.Floor); round < alike && len(d.Floor.Angles) > 1 {
		f.work.ground.Angles, f.work.ground.Heights = d.Floor.Angles[:1], d.Floor.Heights[:1]
	}
	f.work.levelFloor = f.work.ground.IsLevel()
	f.hang(d)
	f.draw(&d.Leaf)
	f.close()
	by := f.Closed.Turn()
	f.closedGaps(by)
	f.stopGaps(by)
}

// Arris gives, appended to dst, the world places of an arris at a swing angle:
// the ends of its smooth pieces, from the foot up or from the hinges across. Face
// 0 is the edge's frontmost arris line, 1 its rearmost: those on the knuckle face
// and the stop face, where the edge reaches so far.
func (f *Fit) Arris(dst []geom.Vec, e Edge, face int, swing geom.Angle) []geom.Vec {
	by := swing.Turn()
	arcs := f.work.arrises[e].lines[0]
	if face != 0 {
		arcs = f.work.arrises[e].rear()
	}
	for i := range arcs {
		q := arcs[i].turned(by)
		if i == 0 {
			dst = append(dst, q.at(arcs[i].lo))
		}
		dst = append(dst, q.at(arcs[i].hi))
	}
	return dst
}
