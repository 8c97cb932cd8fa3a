package draw

// The inks, by what they stand for.
const (
	Paper      Ink = iota // the sheet
	Opening               // what is seen through the gaps
	Wall                  // the wall in elevation and in section
	WallHatch             // its hatch
	Lining                // the timber of the frame
	Timber                // the leaf
	Sunk                  // panels, lower than the frame round them
	Raised                // fields of raised panels
	Grain                 // grain lines and end grain
	Shoulder              // joints, mouldings and board edges
	Glass                 // glazed panels
	Glint                 // the light across them
	Line                  // outlines of leaf and frame
	Fine                  // leader and dimension lines
	Datum                 // plumb and level
	Metal                 // hinges
	Iron                  // lock case and rose
	Brass                 // knob
	BindFill              // where the pieces would overlap
	BindHatch             //
	TightFill             // gaps under the least wanted
	TightHatch            //
	SlackFill             // gaps over the most wanted
	SlackHatch            //
	Ghost                 // the leaf where it is not
	SwingArc              // the path of the closing arris
	Handle                // what a hand can take hold of
	HandleSign            // the sign on it
	ToolFill              // the tape, and what is read off
	TextInk               // figures
	TextMuted             // captions
	TextBind              // figures of gaps that bind
	TextTight             // of tight ones
	TextSlack             // of slack ones
	Inks                  // how many there are
)

// The three line weights of the drawing, px.
const (
	heavy  = 2.2 // frame, floor, cut faces of the wall
	medium = 1.1 // the leaf and what is fixed to it
	thin   = 0.7 // leaders, hatches, grain
)
