// Package timber holds what a door is made of and what it is fitted with: how its wood
// moves with the seasons, how thick its paint is, what it weighs and what its screws
// hold, where its hinges and dowels stand, what its holes take to fill, what a piece of
// work needs, and what to beware of.
//
// Units: mm, kg, N, °C, % relative humidity, % moisture content (of the dry mass),
// minutes; densities kg/m³; films of paint µm where it says so. Every figure has its
// source beside it; "common practice" has no published source, and "from memory" is a
// lead and no authority. Nothing here forbids: it gives numbers and codes, and package
// words says them.
//
// Numbers may be anything: what is not a number, or absurd, is held to the nearest
// sensible one, so that a slip of the pen gives an odd answer and never none.
package timber

// Status tells how well a figure is known.
type Status string

// How figures are known.
const (
	Published Status = "published"       // read in the publication named, or follows from figures read there
	Partly    Status = "partly"          // some of the row published, some from memory
	Practice  Status = "common practice" // a rule of the trade, no published source
	Memory    Status = "memory"          // no copy was at hand
)
