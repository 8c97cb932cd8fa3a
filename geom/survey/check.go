package survey

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"leafwright/geom/door"
)

// ReadingsMost is the greatest number of readings of one door.
const ReadingsMost = 400

// SigmaRange is what a reading's standard deviation may be, mm.
var SigmaRange = door.Range{Lo: 0.01, Hi: 50}

// swept is the angles over which a leaf may swing, °.
var swept = door.Range{Lo: 0, Hi: 180}

// spanLeast is the least length of a level or straightedge, and distance of two
// sticks, mm.
const spanLeast = 100.0

// Check gives everything that is wrong with the reading by itself, named under
// path, as readings[3].
func (r *Reading) Check(path string) (faults []door.Fault) {
	s := SpecOf(r.Kind)
	if s == nil {
		return []door.Fault{{Path: path + ".kind", Value: strconv.Quote(string(r.Kind)), Want: "a kind of reading"}}
	}
	num := func(field string, allow door.Range, x float64, isLength bool) {
		if f, bad := allow.Fault(path+"."+field, x, isLength); bad {
			faults = append(faults, f)
		}
	}
	if s.Needs&NeedSide != 0 && !slices.Contains(s.Sides, r.Side) {
		faults = append(faults, door.Fault{Path: path + ".side", Value: strconv.Quote(string(r.Side)), Want: "one of " + among(s.Sides)})
	}
	if s.Needs&NeedHinge != 0 && (r.Hinge < 0 || r.Hinge >= door.HingesMost) {
		faults = append(faults, door.Fault{Path: path + ".hinge", Value: strconv.Itoa(r.Hinge), Want: "between 0, the top one, and " + strconv.Itoa(door.HingesMost-1)})
	}
	if s.Needs&NeedRail != 0 && (r.Rail < 0 || r.Rail >= door.RailsMost) {
		faults = append(faults, door.Fault{Path: path + ".rail", Value: strconv.Itoa(r.Rail), Want: "between 0, the bottom one, and " + strconv.Itoa(door.RailsMost-1)})
	}
	if s.Needs&NeedAt != 0 {
		num("at", s.Place, r.At, true)
	}
	if s.Needs&NeedSpan != 0 {
		num("from", s.Place, r.From, true)
		num("to", s.Place, r.To, true)
		switch {
		case len(faults) > 0:
		case !(r.span() >= spanLeast):
			faults = append(faults, door.Fault{Path: path + ".to", Value: door.Say(r.To), Want: "beyond from, " + door.Say(r.From) + ", by " + door.Say(spanLeast) + " at least"})
		case s.Needs&NeedAt != 0 && !(r.From < r.At && r.At < r.To):
			faults = append(faults, door.Fault{Path: path + ".at", Value: door.Say(r.At), Want: "between from, " + door.Say(r.From) + ", and to, " + door.Say(r.To)})
		}
	}
	if s.Needs&NeedAngle != 0 {
		num("angle", swept, math.Round(1e9*r.Angle.Degrees())/1e9, false)
	}
	if s.Needs&NoValue == 0 || r.Value != 0 {
		num("value", s.Allowed, r.Value, true)
	}
	switch {
	case r.After < 0:
		faults = append(faults, door.Fault{Path: path + ".after", Value: strconv.Itoa(r.After), Want: "0, as found, or the number of moves made before"})
	case r.After > 0 && !s.hung:
		faults = append(faults, door.Fault{Path: path + ".after", Value: strconv.Itoa(r.After), Want: "0: only gaps, stop gaps and rubbing can be read after a move"})
	}
	if r.Instrument != "" {
		if _, known := instruments[r.Instrument]; !known {
			faults = append(faults, door.Fault{Path: path + ".instrument", Value: strconv.Quote(string(r.Instrument)), Want: "an instrument known here"})
		}
	}
	if r.Sigma != 0 {
		num("sigma", SigmaRange, r.Sigma, true)
	}
	return faults
}

func among(sides []Side) string {
	words := make([]string, len(sides))
	for i, s := range sides {
		words[i] = string(s)
	}
	return strings.Join(words, ", ")
}

// beyond tells whether a sound reading was read where there is nothing to read,
// off the end of what the others say the thing's size is.
func (s *size) beyond(r *Reading, path string) (door.Fault, bool) {
	const past = 100.0 // mm: the middle of several readings is no exact end
	spec := specs[r.Kind]
	var end float64
	switch {
	case spec.Place == outward:
		return door.Fault{}, false
	case spec.Place == across, spec.Place == either && (r.Side == Head || r.Side == Floor):
		end = max(s.openingWidth, s.leafWidth)
	default:
		end = max(s.openingHeight, s.leafHeight)
	}
	allow := door.Range{Lo: spec.Place.Lo, Hi: end + past}
	if spec.Needs&NeedAt != 0 {
		if f, bad := allow.Fault(path+".at", r.At, true); bad {
			return f, true
		}
	}
	if spec.Needs&NeedSpan != 0 {
		return allow.Fault(path+".to", r.To, true)
	}
	return door.Fault{}, false
}

func at(i int) string { return "readings[" + strconv.Itoa(i) + "]" }
