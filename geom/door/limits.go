package door

// Range is the numbers allowed, both ends in.
type Range struct{ Lo, Hi float64 }

// Holds tells whether x is allowed; NaN never is.
func (r Range) Holds(x float64) bool { return r.Lo <= x && x <= r.Hi }

// Mirrored gives the range of the numbers with their signs changed.
func (r Range) Mirrored() Range { return Range{-r.Hi, -r.Lo} }

// Round gives the range widened by d both ways.
func (r Range) Round(d float64) Range { return Range{r.Lo - d, r.Hi + d} }

// What a door may measure, in mm and degrees. The limits stand well outside
// common practice: they catch slips of the pen, a wrong unit or a lost figure,
// and keep the geometry where it is well behaved. They judge no workmanship.
var (
	LeafWidth     = Range{200, 1500} // a cupboard door; a wide single leaf
	LeafHeight    = Range{300, 3500} // a hatch; a church vestry
	LeafThickness = Range{10, 100}   // a cupboard panel; a strongroom door in oak
	Bevel         = Range{-10, 15}   // °; 7 is the steepest in print, for narrow leaves
	Ease          = Range{0, 10}     // leg of an arris taken off; beyond it is a moulding

	OpeningWidth  = Range{200, 1700} // the leaf's widths and some room round it
	OpeningHeight = Range{300, 3700}
	Rebate        = Range{5, 150} // front edge to stop: the thickest leaf and some
	StopWidth     = Range{5, 60}  // a bead; a stop cut from the solid

	Gain       = Range{0, 30}   // a hinge planted on the face; a deep gain in heavy stuff
	Packer     = Range{0, 30}   // no packer; a gain filled up
	Closed     = Range{0.5, 40} // a flap of sheet; cast butts with a wide joint
	Pin        = Range{-5, 60}  // pin centre behind the front edge; throwing clear of an architrave
	Proud      = Range{-20, 20} // leaf's face behind or before the front edge
	HingePlate = Range{20, 300} // height of the plates
	Opens      = Range{20, 180} // °; less is no doorway, more is through the wall

	Stile   = Range{20, 400} // widths of the members
	Backset = Range{15, 200} // closing edge to spindle
	Case    = Range{20, 400} // lock case, height and depth

	FloorHeight = Range{-200, 200}  // above the foot of the hinge jamb
	FloorRadius = Range{0, 3000}    // from the foot of the hinge jamb, in plan
	FloorAngle  = Range{-180, 180}  // °
	Place       = Range{-500, 4000} // of a station up a jamb or a stile
	Across      = Range{-300, 2000} // of a station along a head, a top or a foot
)

// How far shapes may stand from what they are called, and counts.
const (
	EdgeOff    = 150.0 // mm a leaf's or an opening's edge may leave its nominal line: racked by a settled house
	HeightOff  = 400.0 // mm a top or head may leave its nominal height: a leaf cut short, a raking head
	FaceOff    = 60.0  // mm a leaf's face or a frame's edge may stand out of flat
	SlopeMost  = 0.5   // rise per mm of any profile, so that neighbouring edges meet once and all but squarely
	Stations   = 64    // of one profile
	ApartLeast = 1.0   // mm between stations: a tape tells no nearer places apart

	LeastAcross = 100.0 // mm that must be left of the leaf anywhere across it
	LeastUp     = 200.0 // and up it
	EdgeLeft    = 5.0   // mm that must be left of an edge's thickness, a strip's stock

	HingesLeast = 2
	HingesMost  = 6
	HingesApart = 100.0 // mm between the outer hinges, so that they set a line

	WidthApart  = 250.0 // mm between the widths of leaf and opening: beyond it they belong to different doors
	HeightApart = 500.0 // mm between their heights
	FloorMost   = 32    // radii, and angles, of a floor
	RailsMost   = 12
	MuntinsMost = 12
)

// LeafLift is how far above the floor the foot of the hanging stile may hang: y
// on the jamb less v on the leaf, at every hinge.
var LeafLift = Range{-100, 400}
