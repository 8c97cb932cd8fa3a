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
	Wind        string // twist of a leaf or frame, as in "12 mm in wind"
	Gain        string // the recess cut for a hinge
	LetIn       string // of a hinge: cut in, past participle
	Packer      string // thin packing behind a hinge
	LatchSide   string // the side of the opening the latch is on
	ClosingEdge string
	HangingEdge string
	Arris       string // the line where two faces meet
	Keep        string // the plate the latch comes home in
	Rebate      string
}

var lexicons = map[Region]Lexicon{
	UK: {"in wind", "recess", "let in", "packer", "latch side", "closing edge", "hanging edge", "arris", "keep", "rebate"},
	AU: {"in wind", "check-out", "checked in", "packer", "latch side", "closing edge", "hanging edge", "arris", "striker", "rebate"},
	US: {"in wind", "gain", "let in", "shim", "lock side", "lock edge", "hinge edge", "corner", "strike", "rabbet"},
}

// For gives a region's lexicon, the UK's for a region it does not know.
func For(r Region) Lexicon {
	if l, ok := lexicons[r]; ok {
		return l
	}
	return lexicons[UK]
}
