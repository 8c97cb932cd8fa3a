package draw

import (
	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fit"
)

// Show says which pictures stand on the sheet.
type Show uint8

// The pictures: the door from the front with its departures enlarged, and the
// plan section, true to scale.
const (
	Both Show = iota
	Front
	Plan
)

// View is how the door is looked at. Its zero value but for Width and Height
// shows both pictures, the leaf closed, the section at the latch.
type View struct {
	Width, Height float64 // of the sheet, px
	Show          Show
	// Factor is how many times true size gaps and departures are drawn; 0 chooses
	// a round one, and one too great for the door is lowered. [Scene.Factor] tells
	// which was used.
	Factor    float64
	Section   float64    // height y of the plan section, mm; 0 = the latch's
	Swing     geom.Angle // counted from the pose; held between closed and fully open
	Lens      Lens
	Still     bool    // leave the handles out: nothing moves on paper
	RightHung bool    // show the mirror image: the one place where this is done
	Asked     *Sketch // where a reading is taken that is asked for, on the front picture; or nil
	Grab      Target  // what is held or has the keyboard's focus
	// Was is the door as found: what was done to it since is shown beside what it is
	// now. Nil shows none of it.
	Was   *door.Door
	Held  Held   // the tool in hand, which says what can be taken hold of on the front picture
	Work  *Work  // what the tool would do, or nil
	Sight *Sight // keeps the front picture as it lay then, on a sheet of the same size; or nil
	Small bool   // a picture for a table's column: fewer figures, the caption shortest
	Month string // "July", where the leaf is drawn as it is then; empty now
	// Format writes a gap and Length a height or a width, in mm; nil writes
	// millimetres, to a tenth and to a whole one.
	Format, Length func(mm float64) string
	TextSize       float64 // of figures, px, at least 12; 0 = 13
}

// Lens is the loupe: where it looks and whether it is there.
type Lens struct {
	On    bool
	Edge  fit.Edge
	Place float64 // world y on the upright edges, x on head and floor, mm
	// Near is where the finger is on the sheet, which the loupe keeps clear of;
	// zero means at the place itself.
	Near Pt
}

// TargetKind is what a point of the drawing belongs to.
type TargetKind uint8

// What can be taken hold of or looked at.
const (
	Nothing     TargetKind = iota
	SwingHandle            // the grip on the leaf in plan
	PlanLeaf               // the leaf in plan
	SectionLine            // the section's height, on the front picture
	GapEdge                // an edge with its gap
	LeafEdge               // an edge of the leaf, for plane or strip
	HingeBody              // a hinge
	CutEnd                 // an end of the line that top or foot is sawn to, or its middle
)

// Target is what a point of the drawing belongs to. Edge and Place are set for an
// edge: Place in the world for a [GapEdge], on the leaf for a [LeafEdge] and a
// [CutEnd].
type Target struct {
	Kind  TargetKind
	Edge  fit.Edge
	Place float64
	Hinge int // of a [HingeBody], from 1 at the top
	End   int // of a [CutEnd]: −1 at the hanging corner, +1 at the closing one, 0 the line between
}

const (
	smallest = 12.0 // no writing is smaller, px
	figures  = 13.0 // usual size of figures, px
)

func (v *View) figureSize() float64 {
	if !(v.TextSize > 0) {
		return figures
	}
	return max(v.TextSize, smallest)
}

// captionSize is the lesser of the drawing's two type sizes.
func (v *View) captionSize() float64 { return max(smallest, v.figureSize()-1) }

// box is an upright rectangle of the sheet.
type box struct{ x0, y0, x1, y1 float64 }

func (b box) width() float64      { return b.x1 - b.x0 }
func (b box) height() float64     { return b.y1 - b.y0 }
func (b box) middle() float64     { return (b.x0 + b.x1) / 2 }
func (b box) holds(p Pt) bool     { return b.x0 <= p.X && p.X <= b.x1 && b.y0 <= p.Y && p.Y <= b.y1 }
func (b box) meets(c box) bool    { return b.x0 < c.x1 && c.x0 < b.x1 && b.y0 < c.y1 && c.y0 < b.y1 }
func (b box) inset(d float64) box { return box{b.x0 + d, b.y0 + d, b.x1 - d, b.y1 - d} }

// Shares of the sheet.
const (
	sideBySide = 1.05 // width to height from which the pictures stand beside each other
	frontShare = 0.45 // the front's part of the width then
	frontAbove = 0.55 // the front's part of the height otherwise
)

// layout gives each picture its box; one that is not shown has none.
func (v *View) layout() (front, plan box) {
	margin := min(16, 0.02*min(v.Width, v.Height)+2)
	sheet := box{0, 0, v.Width, v.Height}.inset(margin)
	switch {
	case v.Show == Front:
		return sheet, box{}
	case v.Show == Plan:
		return box{}, sheet
	case v.Width >= sideBySide*v.Height:
		x := sheet.x0 + frontShare*sheet.width()
		return box{sheet.x0, sheet.y0, x - margin/2, sheet.y1}, box{x + margin/2, sheet.y0, sheet.x1, sheet.y1}
	}
	y := sheet.y0 + frontAbove*sheet.height()
	return box{sheet.x0, sheet.y0, sheet.x1, y - margin/2}, box{sheet.x0, y + margin/2, sheet.x1, sheet.y1}
}
