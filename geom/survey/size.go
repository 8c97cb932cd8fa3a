package survey

import (
	"strconv"

	"leafwright/geom"
	"leafwright/geom/door"
)

// size is the rough size of things, from which stations and ordinary values are
// taken before anything is adjusted, and what of the least set was read.
type size struct {
	openingWidth, openingHeight      float64
	leafWidth, leafHeight, thickness float64
	hinges                           int
	missing                          []door.Fault
	wanted                           []Reading
}

// Ordinary sizes, mm, of what nobody measured: common practice, no published
// source. A leaf's own sizes stand in where only those of its opening are known,
// and the other way about.
const (
	usualWidth     = 762.0
	usualHeight    = 1981.0
	usualThickness = 40.0
	usualAcross    = 6.0 // an opening is wider than its leaf by
	usualOver      = 9.0 // and higher by
	usualLift      = 6.0 // a leaf hangs above the floor by
	usualPlate     = 75.0
)

// sizeOf sizes up the readings that use counts.
func sizeOf(readings []Reading, use []bool) size {
	var s size
	all := func(kind Kind) (values []float64) {
		for i, r := range readings {
			if use[i] && r.Kind == kind {
				values = append(values, r.Value)
			}
		}
		geom.Ascending(values)
		return values
	}
	lack := func(what string, template Reading) {
		s.missing = append(s.missing, door.Fault{Path: "readings", Want: "no " + what + " among them: one is needed at least"})
		s.wanted = append(s.wanted, template)
	}
	// pair sizes up an opening and its leaf, apart by so much.
	pair := func(opening, leaf Kind, apart, usual float64) (o, l float64, readO, readL bool) {
		os, ls := all(opening), all(leaf)
		readO, readL = len(os) > 0, len(ls) > 0
		switch {
		case readO && readL:
			o, l = middle(os, ls[(len(ls)-1)/2]+apart), middle(ls, os[(len(os)-1)/2]-apart)
		case readO:
			o = middle(os, usual+apart)
			l = o - apart
		case readL:
			l = middle(ls, usual)
			o = l + apart
		default:
			o, l = usual+apart, usual
		}
		return o, l, readO, readL
	}
	var ow, oh, lw, lh bool
	s.openingWidth, s.leafWidth, ow, lw = pair(OpeningWidth, LeafWidth, usualAcross, usualWidth)
	s.openingHeight, s.leafHeight, oh, lh = pair(OpeningHeight, LeafHeight, usualOver, usualHeight)
	ts := all(LeafThickness)
	s.thickness = usualThickness
	if len(ts) > 0 {
		s.thickness = middle(ts, usualThickness)
	}
	if !ow {
		lack("width of the opening", Reading{Kind: OpeningWidth, At: s.openingHeight / 2})
	}
	if !oh {
		lack("height of the opening", Reading{Kind: OpeningHeight, At: s.openingWidth / 2})
	}
	if !lw {
		lack("width of the leaf", Reading{Kind: LeafWidth, At: s.leafHeight / 2})
	}
	if !lh {
		lack("height of the leaf", Reading{Kind: LeafHeight, At: s.leafWidth / 2})
	}
	if len(ts) == 0 {
		lack("thickness of the leaf", Reading{Kind: LeafThickness})
	}

	var placed [door.HingesMost]bool
	s.hinges = door.HingesLeast
	for i, r := range readings {
		if !use[i] || specs[r.Kind].Needs&NeedHinge == 0 {
			continue
		}
		s.hinges = max(s.hinges, r.Hinge+1)
		switch r.Kind {
		case HingeOnJamb, HingeOnLeaf, HingeFromHead, HingeFromTop:
			placed[r.Hinge] = true
		}
	}
	for _, i := range []int{0, s.hinges - 1} {
		if !placed[i] {
			lack("place of the "+hingeName(i, s.hinges)+" on leaf or jamb", Reading{Kind: HingeOnLeaf, Hinge: i})
		}
	}
	return s
}

// middle gives the middle one of sorted values, or of two the one nearer to guess.
func middle(values []float64, guess float64) float64 {
	if len(values) == 2 && values[0]+values[1] < 2*guess {
		return values[1]
	}
	return values[(len(values)-1)/2]
}

// length gives how long a line is.
func (s *size) length(l *lineSpec) float64 {
	switch {
	case l.upright && l.ofLeaf:
		return s.leafHeight
	case l.upright:
		return s.openingHeight
	case l.ofLeaf:
		return s.leafWidth
	}
	return s.openingWidth
}

// leafPlace gives where up a leaf a hinge ordinarily sits: its top 150 mm below
// the leaf's top for the top one, its foot 230 mm up for the bottom one (UK
// practice, seen in print), the others evenly between; nearer the ends on a leaf
// too low for that.
func (s *size) leafPlace(i int) float64 {
	fromTop := min(150+usualPlate/2, s.leafHeight/5)
	fromFoot := min(230+usualPlate/2, s.leafHeight/5)
	return s.leafHeight - fromTop - (s.leafHeight-fromTop-fromFoot)*float64(i)/float64(s.hinges-1)
}

func hingeName(i, n int) string {
	switch {
	case i == 0:
		return "top hinge"
	case i == n-1:
		return "bottom hinge"
	case n == 3:
		return "middle hinge"
	}
	return "hinge " + strconv.Itoa(i+1) + " from the top"
}
