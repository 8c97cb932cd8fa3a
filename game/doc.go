// Package game holds the job a person works on, its file, the gaps wanted and the
// fields a page shows for it. It knows no screen and no clock.
//
// One table, in fields.go, says what a job file holds: every field's name, what
// it means, what it may be and what it is when it is left out. [Parse],
// [Encode], [Schema] and [Form] all walk that table, so they cannot drift apart.
//
// A job's door is always kept with the hinges on the left. The file and the form
// speak of it as a person sees it: for a right-hung leaf every x of the opening
// has the other sign there. Leaf and hinge readings do not change with the hand.
//
// A job may hold readings instead of shapes. Its door is then what package survey
// makes of them, worked out anew with every change; the readings stay as they were
// typed, and only they are written. Places of readings run from the hinge side, so
// nothing in them turns with the hand.
package game
