package door

import (
	"math"

	"leafwright/geom"
)

// Make is how a leaf is built.
type Make string

// The makes of leaf.
const (
	Framed  Make = "framed"  // stiles and rails round panels
	Boarded Make = "boarded" // upright boards on ledges
	Flush   Make = "flush"   // flat faces over a core
)

// Anatomy is what the leaf is made of, in leaf axes (u, v), mm. It bears on the
// drawing and on what may be cut, not on the fit.
type Anatomy struct {
	Make         Make
	HangingStile float64  // width
	ClosingStile float64  // width
	Rails        []Rail   // from the foot up
	Muntins      []Muntin // upright members between rails
	Panels       Panels
	Lock         Lock
	Joints       Joints
	Strips       []Strip // glued on, in the order it was done
	Timber       string  // species, as a person would say it
	Glazed       bool
	Rated        bool // fire-rated, smoke-rated or labelled: takes no trimming
	// SolidStops is the frame's: its stops are of one piece with jambs and head, worked
	// out of the solid, and not planted on them.
	SolidStops bool
}

// Rail is a horizontal member from v = From to v = To.
type Rail struct {
	Name     string
	From, To float64
}

// Muntin is an upright member between two rails: its middle u, its width, and
// the v it runs from and to.
type Muntin struct{ At, Width, From, To float64 }

// Panels is how the panels stand in the frame.
type Panels string

// The kinds of panel.
const (
	Flat   Panels = "flat"
	Raised Panels = "raised"
	Glass  Panels = "glass"
)

// Joints is how the rails of a framed leaf are joined to its stiles, in mm.
type Joints struct {
	Kind   JointKind // empty where it is not known: nothing then says where a cut must stop
	Tenon  float64   // how far a stub tenon or a dowel reaches into the stile, from its inner edge
	Haunch float64   // from the outer edge of top and bottom rail, as they were made, to the tenon
	Wedge  float64   // width of a through tenon's wedge at the stile's outer edge, beside the tenon; 0 without

	// TopCut and FootCut are how much the outer edges of top and bottom rail have lost
	// since they were made: Rails end where the leaf does, their tenons stay.
	TopCut, FootCut float64
}

// JointKind is a kind of joint.
type JointKind string

// The kinds of joint.
const (
	Through  JointKind = "through" // tenons through the stile, wedged from outside
	Stub     JointKind = "stub"    // tenons that stop inside the stile
	Dowelled JointKind = "dowelled"
)

// Strip is a piece glued to an edge of the leaf: it reaches from Joint, the edge as
// it was, to the edge as it is.
type Strip struct {
	Edge  Edge
	Joint geom.Profile // v along u for top and foot, u along v for the stiles
	Stock float64      // thickness
	Back  float64      // how far it stands behind the knuckle face
}

// Lock is the lock as fitted or to come.
type Lock struct {
	Kind    LockKind
	Height  float64 // v of the spindle
	Backset float64 // from the closing edge to the spindle
	Case    float64 // height of the case
	Depth   float64 // how far the case reaches in from the closing edge
}

// LockKind is where the lock sits.
type LockKind string

// The kinds of lock.
const (
	NoLock  LockKind = ""
	Rim     LockKind = "rim"     // on the face
	Mortice LockKind = "mortice" // let into the closing edge
)

// Ordinary gives the make-up a person would expect of a framed four-panel leaf of
// the size, or a plain one of another make. Stiles and top rail are a seventh of
// the width, bottom rail a tenth of the height (Building Trades Pocketbook,
// 1900s); the lock rail's top is 3 ft 2 in up (Building Construction 5, likewise).
// Its rails are joined as [ordinaryJoints] says.
func Ordinary(m Make, width, height float64) Anatomy {
	a := Anatomy{Make: m, Panels: Flat}
	if m != Framed {
		return a
	}
	five := func(x float64) float64 { return 5 * math.Round(x/5) }
	stile := math.Max(five(width/7), Stile.Lo)
	foot := math.Max(five(height/10), Stile.Lo)
	a.HangingStile, a.ClosingStile = stile, stile
	a.Rails = []Rail{{"bottom", 0, foot}, {"top", height - stile, height}}
	a.Joints = ordinaryJoints(stile, foot)
	const panel = 80.0 // mm, the least worth a member more
	lockTop, lockFoot := 965.0, 965-math.Max(five(height/11), Stile.Lo)
	if lockFoot-foot < panel || height-stile-lockTop < panel {
		return a // a hatch: two rails do
	}
	a.Rails = []Rail{a.Rails[0], {"lock", lockFoot, lockTop}, a.Rails[1]}
	if muntin := stile - 13; width > float64(3*stile)+2*panel && muntin >= Stile.Lo { // half an inch narrower, same source
		a.Muntins = []Muntin{{width / 2, muntin, foot, lockFoot}, {width / 2, muntin, lockTop, height - stile}}
	}
	return a
}

// ordinaryJoints gives the joints of an old panelled leaf whose stiles and top rail
// are so wide, and its bottom rail: through tenons, wedged. The haunch is 1½ in, which
// a bottom rail with two tenons has below the lower one (International Correspondence
// Schools, vol. 2 s. 36), but no more than half the rail, where the tenon is half the
// rail less the groove and the haunch fills the rest (Noyes, no. 42). A stub tenon,
// should the leaf have them, goes in about 2 in (the Schools, of muntins), at most 7/8
// of the stile (Fairham); the wedge is common practice, no published source.
func ordinaryJoints(stile, foot float64) Joints {
	haunch := math.Min(38, math.Min(stile, foot)/2)
	return Joints{
		Kind:   Through,
		Tenon:  math.Min(50, math.Floor(stile*0.875)),
		Haunch: haunch,
		Wedge:  math.Min(10, haunch/2),
	}
}

// Tenon gives the heights v between which the i-th rail's tenon lies, or its pair of
// tenons; lo ≥ hi where it has none. A rail between others has no haunch that a cut
// could come to.
func (a *Anatomy) Tenon(i int) (lo, hi float64) {
	if a.Make != Framed || a.Joints.Kind == "" || i < 0 || i >= len(a.Rails) {
		return 0, 0
	}
	lo, hi = a.Rails[i].From, a.Rails[i].To
	if i == 0 {
		lo += a.Joints.Haunch - a.Joints.FootCut
	}
	if i == len(a.Rails)-1 {
		hi -= a.Joints.Haunch - a.Joints.TopCut
	}
	return lo, hi
}

// Inner gives the inner edges of the stiles: u of the hanging stile's and of the
// closing stile's. They stay where they are when the outer edges are planed; the
// closing stile is laid out from the leaf's nominal width.
func (a *Anatomy) Inner(l *Leaf) (hanging, closing float64) {
	return a.HangingStile, l.Width - a.ClosingStile
}
