// Package words says what a fit shows, in the trade's words and in short
// sentences with a place, a number and a cause.
package words

// Region is whose trade words are used.
type Region string

// The regions.
const (
	UK Region = "UK"
	AU Region = "AU"
	US Region = "US"
)

// Regions lists them in the order they are offered.
var Regions = []Region{UK, AU, US}

// Lexicon is the trade's words that differ by region; the others are the same
// everywhere.
type Lexicon struct {
	Gain        string // the recess cut for a hinge
	LetIn       string // of a hinge: cut in, past participle
	Packer      string // thin packing behind a hinge
	Arris       string // the line where two faces meet
	Latch       string // what the far side of the opening is called by
	LatchSide   string // that side
	LatchJamb   string // its jamb
	LatchCorner string // the leaf's corner there, and the head's
	ClosingEdge string
	HangingEdge string
	Keep        string // the plate the latch comes home in
	Rebate      string // the step in the frame that the leaf closes into
}

var lexicons = map[Region]Lexicon{
	UK: {"recess", "let in", "packer", "arris", "latch", "latch side", "latch jamb", "latch corner", "closing edge", "hanging edge", "keep", "rebate"},
	AU: {"check-out", "checked in", "packer", "arris", "latch", "latch side", "latch jamb", "latch corner", "closing edge", "hanging edge", "striker", "rebate"},
	US: {"gain", "let in", "shim", "corner", "lock", "lock side", "lock jamb", "lock corner", "lock edge", "hinge edge", "strike", "rabbet"},
}

// For gives a region's lexicon, the UK's for a region it does not know.
func For(r Region) Lexicon {
	if l, ok := lexicons[r]; ok {
		return l
	}
	return lexicons[UK]
}
