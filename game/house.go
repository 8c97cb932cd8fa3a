package game

import "leafwright/geom/timber"

// House is where the leaf hangs: what cautions and the seasons turn on. Its zero value
// says nothing.
type House struct {
	Region  timber.Region  // "" elsewhere, or not said
	Climate timber.Climate // "" not said
	Room    timber.Room    // "" not said
	Month   string         // the door was read in, as the file has it; "" not said
	Built   int            // the year, 0 not known

	Reclaimed bool // the leaf came from elsewhere
	Outer     bool // an outer door
	Escape    bool // on an escape route
	Toilet    bool // of a small room with a toilet
	Paid      bool // the work is done for pay
	South     bool // of the equator
}

// Paint is what is on leaf and frame where they meet, and what is to come.
type Paint struct{ Leaf, Frame Coating }

// Coating is the paint of one face.
type Coating struct {
	On     int          // coats there are
	Primer int          // coats of primer to come
	ToCome int          // further coats to come
	Old    timber.Paint // the kind of those there are; "" is [timber.OldPaint]
	Kind   timber.Paint // the kind to come; "" is [timber.Enamel]
	Film   float64      // mm of all there are, as measured; 0 not measured
	Strip  bool         // they come off
}

// Meter is what a moisture meter read on the leaf, %, in January to December; 0 where
// nothing was read.
type Meter [12]float64

// Months are the names of the months.
var Months = [12]string{"January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December"}

// Prices are the person's own, 0 where none was given.
type Prices struct {
	Currency string  // a sign or a word
	Hour     float64 // of work
	Of       [Wares]float64
}

// Ware is what a price is of.
type Ware int

// The wares: by the metre, the piece, the kilogram, the litre.
const (
	StripWare Ware = iota
	LiningWare
	SillWare
	DowelWare
	PlugWare
	PackerWare
	ScrewWare
	HingeWare
	GlueWare
	PrimerWare
	EnamelWare
	AlkydWare
	OilWare
	FillerWare
	FoamWare
	Wares
)

// Void is a place of the leaf where sound timber is missing.
type Void struct {
	At   Surface // it opens at
	What Damage
	Do   timber.Cure
	Live bool // beetles at work, or the wood still damp

	From, To float64 // up from the foot; at top and foot across from the hanging edge, mm
	Off      float64 // where across it begins, mm: on a face from the hanging edge, on an edge from the knuckle face
	Wide     float64 // how far it goes on from there, mm
	Depth    float64 // in from the surface it opens at, mm
	Open     float64 // how much of it is open, %
}

// Surface is an edge or a face of the leaf, in the words of moves.
type Surface string

// Damage is what made a void, in the file's words.
type Damage string

// The kinds of damage.
const (
	Missing    Damage = "void"
	Bored      Damage = "borer"
	Rotten     Damage = "rot"
	OldMortice Damage = "mortice"
	OldFiller  Damage = "filler" // there already
)

// VoidsMost is how many places of a leaf a job may have.
const VoidsMost = 40
