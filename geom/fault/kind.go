package fault

import (
	"leafwright/geom/door"
	"leafwright/geom/trim"
)

// Kind is what is wrong, in a lesson file's word.
type Kind string

// The kinds of fault.
const (
	GainsDeep   Kind = "gains deep"   // hinge-bound: every gain let in too deep, on leaf or jamb
	ScrewsProud Kind = "screws proud" // hinge-bound: screw heads hold a hinge's plates apart
	StopNear    Kind = "stop near"    // stop-bound: the latch stop too far forward, whole or at one end
	JambSprung  Kind = "jamb sprung"  // a jamb bowed into the opening
	JambLeans   Kind = "jamb leans"   // the latch jamb leans into the opening at its head or its foot
	HeadFalls   Kind = "head falls"   // the head lower at one end
	FloorRises  Kind = "floor rises"  // the floor rises under the open leaf
	HingeSags   Kind = "hinge sags"   // the top hinge drawn off its seat on the jamb
	PinsLean    Kind = "pins lean"    // the pin axis out of plumb, out of the wall's plane
	LeafWinds   Kind = "leaf winds"   // the leaf in wind
	FrameWinds  Kind = "frame winds"  // the frame in wind by its latch jamb
	EdgeSquare  Kind = "edge square"  // a square closing edge on a thick leaf
	LeafWide    Kind = "leaf wide"    // the leaf too wide
	LeafTall    Kind = "leaf tall"    // too tall, at top or foot
	LeafShort   Kind = "leaf short"   // too short at the top
	LeafSwollen Kind = "leaf swollen" // swollen by a wet season, in width and thickness
	PaintThick  Kind = "paint thick"  // painted over and over, leaf and frame
	EdgeUneven  Kind = "edge uneven"  // the closing edge planed unevenly: a spot left standing, or too much off one end
	KeepOut     Kind = "keep out"     // the keep out of line with the stop
)

// Way is which way a fault goes.
type Way string

// The ways. Upper is the upper end of what stands up, the latch's end of a head.
const (
	Whole Way = ""
	Upper Way = "upper"
	Lower Way = "lower"
	In    Way = "in"  // towards the stop
	Out   Way = "out" // away from it
)

// Made is a fault as it is put into a door.
type Made struct {
	Kind   Kind
	Amount float64   // mm, above 0; what of is said by the kind's [Spec]
	Edge   door.Edge // the side of frame or leaf it is on, where the kind has more than one
	Way    Way
	On     trim.Part // gains too deep on leaf or jamb, or half on each
	At     float64   // middle of a high spot, v; 0 is half the way up
	Long   float64   // length of a high spot; 0 is most of the side
}

// Spec is all there is to know of a kind.
type Spec struct {
	Kind   Kind
	Name   string // as a joiner says it
	Works  trim.Trade
	Amount door.Range // what Made.Amount may be
	Of     string     // what the amount is
	Edges  []door.Edge
	Ways   []Way
	// Shows are the symptoms it may be known by: one of them at least is there, but
	// where another fault hides it.
	Shows []SymptomKind
	// plain and faint are how far its own measure ([shown]) is out of limits when it is
	// as easy and as hard to see as it gets, mm.
	plain, faint float64
}

var (
	latch    = []door.Edge{door.LatchSide}
	ends     = []Way{Upper, Lower}
	slipping = door.Range{Lo: 0.05, Hi: 20} // of faults of the frame and the leaf's size
)

// All is every kind, in the order they are put into a door: the frame first, then
// the leaf, its hanging, and what it closes on.
var All = []Spec{
	{JambLeans, "latch jamb out of plumb", trim.TheFrame, slipping, "how far it leans in", latch, ends, []SymptomKind{Rubs}, 2.5, 0.4},
	{JambSprung, "jamb sprung", trim.TheFrame, slipping, "how far it is bowed in", []door.Edge{door.LatchSide, door.HingeSide}, []Way{Whole}, []SymptomKind{Rubs}, 2, 0.4},
	{HeadFalls, "head falling", trim.TheFrame, slipping, "how much lower its end is", []door.Edge{door.HeadSide}, ends, []SymptomKind{Rubs}, 2.5, 0.4},
	{FrameWinds, "frame in wind", trim.TheFrame, door.Range{Lo: 0.05, Hi: 40}, "how far the latch jamb leans out of the wall's plane", latch, ends, []SymptomKind{HitsStop, LatchMisses}, 4, 1},
	{FloorRises, "floor rising under the swing", trim.TheFrame, door.Range{Lo: 0.05, Hi: 60}, "rise at the closing edge, leaf open", []door.Edge{door.FloorSide}, []Way{Whole}, []SymptomKind{RubsFloor}, 2.5, 0.4},
	{EdgeSquare, "square closing edge on a thick leaf", trim.TheLeaf, door.Range{Lo: 0.05, Hi: 45}, "how much thicker the leaf is", latch, []Way{Whole}, []SymptomKind{RubsSwinging}, 0.6, 0.15},
	{LeafWinds, "leaf in wind", trim.TheLeaf, door.Range{Lo: 0.05, Hi: 40}, "wind", latch, ends, []SymptomKind{HitsStop, LatchMisses}, 4, 1},
	{LeafWide, "leaf too wide", trim.TheLeaf, slipping, "how much wider", latch, []Way{Whole}, []SymptomKind{Rubs}, 2.5, 0.4},
	{LeafTall, "leaf too tall", trim.TheLeaf, door.Range{Lo: 0.05, Hi: 40}, "how much taller", []door.Edge{door.HeadSide, door.FloorSide}, []Way{Whole}, []SymptomKind{Rubs, RubsFloor}, 2.5, 0.4},
	{LeafShort, "leaf too short", trim.TheLeaf, door.Range{Lo: 0.05, Hi: 60}, "how much shorter", []door.Edge{door.HeadSide}, []Way{Whole}, []SymptomKind{Light}, 8, 0.7},
	{LeafSwollen, "leaf swollen by a wet season", trim.TheLeaf, slipping, "how much wider", latch, []Way{Whole}, []SymptomKind{Rubs}, 2.5, 0.4},
	{EdgeUneven, "closing edge planed unevenly", trim.TheLeaf, slipping, "height of the spot left standing, or what is too much off one end", latch, []Way{Whole, Upper, Lower}, []SymptomKind{Rubs, Light}, 2, 0.4},
	{PaintThick, "too many coats of paint", trim.TheLeaf, door.Range{Lo: 0.05, Hi: 6}, "paint on every edge of leaf and frame", []door.Edge{door.LatchSide}, []Way{Whole}, []SymptomKind{Rubs, SpringsBack}, 1.5, 0.3},
	{GainsDeep, "hinge-bound: gains too deep", trim.TheHinges, slipping, "how much too deep, leaf and jamb together", []door.Edge{door.HingeSide}, []Way{Whole}, []SymptomKind{SpringsBack}, 2, 0.3},
	{ScrewsProud, "hinge-bound: screw heads proud", trim.TheHinges, slipping, "how far the plates are held apart", []door.Edge{door.HingeSide}, ends, []SymptomKind{SpringsBack}, 1.5, 0.3},
	{HingeSags, "top hinge drawn off its seat", trim.TheHinges, slipping, "how far it is drawn off", []door.Edge{door.HingeSide}, []Way{Upper}, []SymptomKind{Rubs, RubsFloor}, 2.5, 0.4},
	{PinsLean, "pins out of plumb", trim.TheHinges, door.Range{Lo: 0.05, Hi: 40}, "how far one outer pin stands out beyond the other", []door.Edge{door.HingeSide}, ends, []SymptomKind{SwingsOpen, SwingsShut}, 2.8, 0.4},
	{StopNear, "stop-bound", trim.TheFrame, door.Range{Lo: 0.05, Hi: 40}, "how far the stop is forward", latch, []Way{Whole, Upper, Lower}, []SymptomKind{HitsStop, LatchMisses}, 4, 1},
	{KeepOut, "keep out of line", trim.TheFrame, slipping, "how far the keep is out", latch, []Way{In, Out}, []SymptomKind{LatchMisses, Rattles}, 2.5, 0.7},
}

// SpecOf gives what there is to know of a kind, nil for an unknown one.
func SpecOf(k Kind) *Spec {
	for i := range All {
		if All[i].Kind == k {
			return &All[i]
		}
	}
	return nil
}
