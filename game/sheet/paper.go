// Package sheet lays out what is printed of a job: the marking-out sheet for the
// bench, full-size templates and the sheet for the client. A page is a display list
// of package draw at 96 px to the inch, so the command's PDF and SVG and the
// browser's print are the same page, broken at the same places.
package sheet

import "leafwright/game/draw"

// Paper is a sheet of paper, upright; mm.
type Paper struct {
	Name          string
	Width, Height float64
}

// Papers are those there are: A4 of ISO 216 and Letter, 8 1/2 by 11 in, of
// ANSI/ASME Y14.1.
var Papers = []Paper{{"A4", 210, 297}, {"Letter", 215.9, 279.4}}

// PaperNamed gives the paper of a name, and whether there is one.
func PaperNamed(name string) (Paper, bool) {
	for _, p := range Papers {
		if p.Name == name {
			return p, true
		}
	}
	return Paper{}, false
}

// MM is how many px of a page a millimetre has.
const MM = 96 / 25.4

// Page is one printed page, drawn with [draw.Print].
type Page struct{ draw.List }
