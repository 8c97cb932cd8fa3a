package door

import "math"

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
	Timber       string // species, as a person would say it
	Glazed       bool
	Rated        bool // fire-rated, smoke-rated or labelled: takes no trimming
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
