// Package cutlist writes what one way to make a door fit comes to as a table for a
// spreadsheet: every gap at its stations, as found, as it stands and after, and every
// move with its amounts where its line bends.
//
// The table is CSV by RFC 4180: commas, lines that end in carriage return and line
// feed, as many cells in each as in the header, double quotes round what holds a
// comma, a quote or a line's end. A byte order mark stands first, since spreadsheets
// take letters beyond ASCII for something else without one. A text that a spreadsheet
// would work out as a formula, one that begins with = + - or @, has an apostrophe
// before it; numbers stand as they are.
//
// Lengths are in the unit the header says, gaps above zero clear. Places are on the
// door with the hinges on the left, whatever the job's hand: up, and across from the
// hinge side.
package cutlist
