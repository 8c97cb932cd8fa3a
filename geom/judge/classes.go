package judge

// Class is a published limit on a quantity.
type Class struct {
	Standard string
	Name     string // the class within it, "" where there is one only
	Quantity Quantity
	Limit    float64 // in the quantity's unit; a value equal to it keeps it
	// Remembered tells that the figure is from memory: no copy of the document
	// was at hand to check it against.
	Remembered bool
}

// Classes are the limits that conditions are held against, the strictest class of
// a standard last. Where the figures are from:
//
//   - BS 5277 / BS 4787-1 wind and bow, AWS (2009) appendix B diagonals and the
//     Australian project specification's: restated on public pages that were read.
//   - ift Rosenheim's practice for setting frames (2006): read.
//   - EN 1529, EN 1530 and ANSI/WDMA I.S.1A (a warp limit for sections of 3 ft 6 in.
//     by 7 ft): from memory, and marked so.
//
// They were written for new work; for an old door they say how far it has come.
var Classes = []Class{
	{"EN 1530", "class 1", Twist, 10, true},
	{"EN 1530", "class 2", Twist, 8, true},
	{"EN 1530", "class 3", Twist, 4, true},
	{"EN 1530", "class 4", Twist, 2, true},
	{"BS 4787-1", "", Twist, 6, false},
	{"ANSI/WDMA I.S.1A", "", Twist, 6.4, true},
	{"EN 1530", "class 1", BowLength, 10, true},
	{"EN 1530", "class 2", BowLength, 8, true},
	{"EN 1530", "class 3", BowLength, 4, true},
	{"EN 1530", "class 4", BowLength, 2, true},
	{"BS 5277", "", BowLength, 4, false},
	{"EN 1529", "classes 1 and 2", Squareness, 1.5, true},
	{"EN 1529", "class 3", Squareness, 1, true},
	{"AWS (2009) appendix B", "", Diagonals, 3.2, false},
	{"Australian project specification (2009)", "", Diagonals, 3, false},
	{"ift Rosenheim", "", FramePlumb, 1.5, false},
	{"ift Rosenheim", "", FrameLean, 3, false},
	{"ift Rosenheim", "", HeadLevel, 1.5, false},
}
