package trim

import (
	"leafwright/geom"
	"leafwright/geom/door"
)

// Piece is what a move is done to. Moves never change the one they are given.
type Piece struct {
	Door    door.Door
	Anatomy door.Anatomy
	Offcuts []Offcut // that lie on the bench, the newest last
}

// Offcut is what a saw left.
type Offcut struct {
	Edge door.Edge // the end it came off
	// Height is its least height less the kerf; Length its length; Thick the leaf's
	// thickness.
	Height, Length, Thick float64
	Across                bool // its grain runs across the leaf: off a rail
}

// Done is what a move did.
type Done struct {
	Off, On float64 // mm² of the leaf's outline, taken off and added
	Volume  float64 // mm³ of the leaf's timber turned to shavings, dust or offcut, gains included
	Most    float64 // mm off the leaf's outline, where it is most
	Strips  int     // added
	Cuts    int     // saw cuts and edges planed
	Gains   []int   // hinges (from 0) whose gains are cut anew on leaf or jamb
	Frame   bool    // whether the frame is cut, packed or its stops are moved
	Minutes float64 // a rough time for one person, offering up once (common practice, no published source)
	Left    []Left  // what is left of every member the move touched
	Cares   []Care  // what is to be minded
}

// Left is what is left of a member.
type Left struct {
	Member Member
	Before float64 // mm, before this move; of a stile, a rail and a haunch the leaf's own timber, in which its joints are
	Now    float64 // mm
	// FaceBefore and FaceNow are the whole face of a stile or a rail, mm, the strips
	// glued to it counted; both are 0 of other members.
	FaceBefore, FaceNow float64
}

// Step is a move and what came of it.
type Step struct {
	Move Move
	Done Done
	Why  *Care // why it was not done; nil if it was, or is off
}

// Line is a place on an edge's outline: where the plane's work reaches, for a drawing.
type Line struct {
	Edge     door.Edge
	Old, New geom.Profile
}
