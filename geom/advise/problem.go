// Package advise finds the least that makes a leaf fit: the least timber lost, the
// fewest gains cut anew, the most even gaps, as the person prefers.
//
// A few yes-or-no choices make a [Family] of plans: no timber off, planing alone, a
// strip spliced on, stops moved. Within a family every gap follows the amounts so
// nearly in a straight line that the least of its cost is a linear program (package
// lp), which proves its optimum by a bound. The program is taken from the exact
// model by small changes, put right at its own answer, rounded to what can be
// worked and then tried out: moves are made (package trim), the door is hung anew
// (package fit) and judged (package judge). A plan that does not come out good is
// no plan.
//
// A preference weighs ways and finds none more or fewer; what is forbidden strikes
// families off and changes none. Where no family does alone, everything is tried at
// once, edges scribed at more stations. What might come to be the cheapest is looked at
// again: other parts, another rounding, finer steps. The bound proves a plan the least
// of its own parts; that no other parts do for less is searched for, not proven.
//
// Where gaps rest on readings a plan is chosen by its chance too: the program first
// keeps as much of the allowance for the readings' and the hand's errors as the limits
// leave room for, more towards wide than towards tight, and rounding weighs what a step
// costs against what it does to the chance. What could go too far waits: a plan has a
// first [Stage] that leaves timber on, after which gaps are felt, and [Problem.After]
// has the rest planned anew.
package advise

import (
	"leafwright/geom/door"
	"leafwright/geom/judge"
	"leafwright/geom/survey"
	"leafwright/geom/trim"
)

// Preference is what matters most to the person.
type Preference string

// The preferences.
const (
	LeastTimber Preference = "timber"
	MostEven    Preference = "even"
	Quickest    Preference = "quick"
	LeaveFrame  Preference = "frame" // as least timber, and the frame is touched only where nothing else was found
)

// Preferences is all of them, the usual one first.
var Preferences = []Preference{LeastTimber, MostEven, Quickest, LeaveFrame}

// Wishes are what the person prefers and forbids. The zero value forbids nothing.
type Wishes struct {
	Prefer      Preference // empty is LeastTimber
	LeaveFrame  bool       // nothing is done to the frame and its stops
	HingesStay  bool       // no gain, packer, set or height of a hinge is changed
	NoStrip     bool
	StilesAlike bool    // as much off one stile as off the other
	TopRail     float64 // height the top rail is to have in the end, mm; 0 = as it comes
	LeastStrip  float64 // least height of a strip after dressing, mm; 0 = [leastStrip]
}

// Problem is a leaf, an opening and what is wanted of them. It is not changed.
type Problem struct {
	Piece  trim.Piece
	Wanted judge.Wanted
	Wishes Wishes
	// Sigma is how well the gaps are known, nil where the shapes are exact.
	Sigma *Sigmas
	// Risk is the chance of cutting too far that is borne; 0 = [usualRisk].
	Risk float64
	// Hand is the workman's own error, mm, one sigma; 0 = [usualHand]. It counts only
	// where Sigma does.
	Hand float64
	// Step is what amounts are whole multiples of, mm, or of half of it where nothing else
	// does or timber is saved, at last of a quarter; 0 = half a millimetre, and at last
	// whole shavings.
	Step float64
	// Packers are the thicknesses of packing to be had, rising, mm; nil = [usualPackers].
	Packers []float64
	// Offered tells that the leaf has been offered up and its gaps read: what is advised
	// is to be the last of it if it can, and finer steps are taken for that.
	Offered bool
}

// What is usual, in mm. Common practice, no published source.
const (
	leastStrip = 8.0 // a strip lower than that splits or lifts
	usualHand  = 0.3
	usualStep  = 0.5
	shaving    = 0.1 // of a plane set fine
)

var usualPackers = []float64{0.5, 1, 1.5, 2, 3}

func (p *Problem) risk() float64 { return orElse(p.Risk, usualRisk) }
func (p *Problem) hand() float64 { return orElse(p.Hand, usualHand) }
func (p *Problem) step() float64 { return orElse(p.Step, usualStep) }

func (p *Problem) packers() []float64 {
	if len(p.Packers) == 0 {
		return usualPackers
	}
	return p.Packers
}

func (w *Wishes) strip() float64 { return orElse(w.LeastStrip, leastStrip) }

func orElse(x, usual float64) float64 {
	if x > 0 {
		return x
	}
	return usual
}

// Advice is what to do about a door.
type Advice struct {
	Good bool // it fits as it is, and no plan is needed
	// JustGood tells that it fits as it is by what was read, but so narrowly that a gap
	// is likely out of its limits: the plans make sure of it.
	JustGood bool
	Refused  *trim.Care // a rated leaf: no advice to trim it is given
	Plans    []Plan     // by the preference, best first; each differs in kind, and none is outdone in everything
	Trade    []Trade    // least timber first
	// Frame tells that the frame was to be left alone and every plan touches it: none was
	// found that does not.
	Frame bool
	// Near is a plan that is far less work than the best of these and leaves a gap a little
	// wider than wanted, as its Given tells; none where nothing is worth that.
	Near []Plan
	// Conflict is why there is no plan, nil where there is one.
	Conflict *Conflict
	// Findings is what is wrong as it stands.
	Findings []judge.Finding
}

// Family is a kind of plan, by what it works on.
type Family string

// The families.
const (
	HingesOnly Family = "hinges"             // gains, packers, set and height of hinges; no timber off the edges
	PlaneOnly  Family = "plane"              // straight and tapered planing
	HingePlane Family = "hinges and plane"   // both
	ScribeOnly Family = "scribe"             // edges scribed to a line, hinges as needed
	Splice     Family = "splice"             // a strip glued on, planing and hinges as needed
	StopsOnly  Family = "stops"              // stops moved
	StopsToo   Family = "stops and the leaf" // stops moved, and the leaf or its hinges worked
	JambsToo   Family = "jambs"              // faces of latch jamb or head planed or packed out, the leaf and its hinges as needed
)

// Plan is a list of moves that makes the door good.
type Plan struct {
	Family Family
	Strip  door.Edge   // the edge a strip is spliced on, of a plan that splices
	Moves  []trim.Move // all of them, in the order they are done
	Steps  []trim.Step // what came of each when tried
	Stages []Stage     // one, or two where it pays to offer up between them
	Cost   Cost
	// Bound is a price below which no plan with the same yes-or-no choices can be,
	// and Price this one's; they differ by rounding. Both in the preference's measure,
	// which says nothing outside one Advice.
	Bound, Price float64
	// Sure is the chance, added up by stretches of the edges and so never too great, that
	// the gaps come out within their limits once the leaf was offered up between stages
	// and the last of the work is done; 1 where shapes are exact.
	Sure float64
	Why  []Cure // by move
	// Given is what it lets give way, of a plan in [Advice.Near] or [Conflict.Plans].
	Given []Relax

	attempt attempt
	step    float64
	tried   bool      // to be bettered
	model   *model    // until it has its stages
	x       []float64 // its answer
}

// Stage is what is done before the leaf is offered up, and what is then to be read.
type Stage struct {
	Moves []trim.Move
	Read  []survey.Reading // templates, no values
}

// Cost is what a plan costs.
type Cost struct {
	Timber  float64 // cm³ of the leaf
	Most    float64 // mm off it where it is most
	Minutes float64
	Cuts    int // saw cuts and edges planed
	Gains   int // hinges let in anew
	Strips  int
	Frame   bool    // whether the frame is worked
	Uneven  float64 // mm, widest less narrowest gap at the sides and the head
}

// Cure is what a move is for.
type Cure struct {
	Cures   int           // the finding, by its place in Advice.Findings; −1 = none by itself
	Needed  bool          // whether something would be wrong without this move
	Without judge.Finding // the worst there would be without it
}

// Trade is a point of the line along which timber is given for evenness.
type Trade struct {
	Timber float64 // cm³
	Uneven float64 // mm
}
