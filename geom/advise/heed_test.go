package advise

import (
	"testing"

	"leafwright/geom/door"
	"leafwright/geom/trim"
)

// What must remain of the leaf is heeded: a plan stays clear of it, and where none can
// the care is told.
func TestCaresAreHeeded(t *testing.T) {
	piece := hung()
	l := &piece.Door.Leaf
	l.Width += 8
	l.Closing = l.Closing.Shift(8)
	free := Plans(&Problem{Piece: piece, Wanted: asked(), Wishes: Wishes{HingesStay: true}})
	if len(free.Plans) == 0 || free.Plans[0].Moves[0].Edge != door.LatchSide {
		t.Fatalf("a leaf 8 mm too wide is cured by %+v", free.Plans)
	}
	a := &piece.Anatomy
	a.Lock = door.Lock{Kind: door.Mortice, Height: 950, Backset: 57, Case: 115, Depth: 76}
	a.Joints = door.Joints{Kind: door.Through, Tenon: 60, Haunch: 40, Wedge: 8}
	for _, width := range []float64{110, 60, 40, 28, 24} {
		a.ClosingStile = width
		p := &Problem{Piece: piece, Wanted: asked()}
		got := Plans(p)
		proven(t, p, got)
		if len(got.Plans) == 0 {
			t.Errorf("stile %g: no plan, though the other stile is wide: %+v", width, got.Conflict)
		}
	}
	// A top rail planed into its tenons.
	piece = hung()
	piece.Door.Frame.Head = piece.Door.Frame.Head.Shift(-30)
	piece.Anatomy.Joints = door.Joints{Kind: door.Through, Tenon: 60, Haunch: 15, Wedge: 8}
	p := &Problem{Piece: piece, Wanted: asked()}
	got := Plans(p)
	proven(t, p, got)
	if len(got.Plans) > 0 || got.Conflict == nil || got.Conflict.Care == nil {
		t.Errorf("a head 30 mm low, the tenons 15 mm down: %d plans, %+v", len(got.Plans), got.Conflict)
	} else if about := got.Conflict.Care.About; about != trim.IntoTenon && about != trim.IntoWedge && about != trim.TooLittle {
		t.Errorf("what forbids it is %d", about)
	}
}
