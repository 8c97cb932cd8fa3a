package door

import (
	"math"
	"strconv"

	"leafwright/geom"
)

// degreeNoise is what degrees may lose on their way to radians and back.
const degreeNoise = 1e-9

// Check gives everything that is wrong with the door, in the job file's words and
// in the order of its parts; none when it can be hung and measured. Pieces that
// are wrong in themselves are not held against one another.
func (d *Door) Check() []Fault {
	leaf := d.Leaf.Check()
	frame := d.Frame.Check()
	var sound *Leaf
	if len(leaf) == 0 {
		sound = &d.Leaf
	}
	faults := append(leaf, frame...)
	if len(faults) == 0 {
		faults = append(faults, d.CheckTogether()...)
	}
	faults = append(faults, CheckHinges(d.Hinges, sound)...)
	faults = append(faults, d.Latch.Check(sound)...)
	faults = append(faults, d.Floor.Check()...)
	if f, bad := Opens.Round(degreeNoise).Fault("opens", d.Opens.Degrees(), false); bad {
		faults = append(faults, f)
	}
	return faults
}

// CheckTogether tells whether leaf and opening can belong together at all; both must be sound in themselves.
func (d *Door) CheckTogether() (faults []Fault) {
	c := d.Leaf.Corners(0)
	hinge, latch := d.Frame.HeadCorners()
	mid := hinge.Y / 2
	wide := d.Frame.LatchJamb.At(mid) - d.Frame.HingeJamb.At(mid)
	high := math.Max(hinge.Y, latch.Y)
	width := d.Leaf.Closing.At(c.HangingHead.Y/2) - d.Leaf.Hanging.At(c.HangingHead.Y/2)
	height := math.Max(c.HangingHead.Y, c.ClosingHead.Y)
	if r := (Range{wide, wide}).Round(WidthApart); !r.Holds(width) {
		faults = append(faults, Fault{Path: "leaf.width", Value: Say(width), Want: r.String() + ", near the opening's " + Say(wide)})
	}
	if r := (Range{high, high}).Round(HeightApart); !r.Holds(height) {
		faults = append(faults, Fault{Path: "leaf.height", Value: Say(height), Want: r.String() + ", near the opening's " + Say(high)})
	}
	return faults
}

// CheckProfile gives what is wrong with a profile by itself: its number of
// stations, their order and spacing, its places and values, its slopes. An empty
// profile is sound.
func CheckProfile(path string, p geom.Profile, place, value Range) (faults []Fault) {
	if len(p) > Stations { // and none of them is looked at: there may be very many
		return []Fault{{Path: path, Value: strconv.Itoa(len(p)) + " stations", Want: "at most " + strconv.Itoa(Stations)}}
	}
	before := false // whether the station before is within its ranges
	for i, s := range p {
		sound := place.Holds(s.At) && value.Holds(s.Value)
		held := sound && before
		before = sound
		if sound && !held || held && s.At-p[i-1].At >= ApartLeast && !(math.Abs(s.Value-p[i-1].Value) > SlopeMost*(s.At-p[i-1].At)) {
			continue
		}
		here := at(path, i) // told only when it is wanted: this runs for every move that is tried
		if f, bad := place.Fault(here, s.At, false); bad {
			f.Value = "place " + f.Value
			faults = append(faults, f)
		}
		if f, bad := value.Fault(here, s.Value, true); bad {
			faults = append(faults, f)
		}
		if !held {
			continue
		}
		switch b := p[i-1]; {
		case s.At-b.At < ApartLeast:
			faults = append(faults, Fault{Path: here, Value: "place " + Say(s.At), Want: "beyond the one before, " + Say(b.At) + ", by " + Say(ApartLeast) + " at least"})
		case math.Abs(s.Value-b.Value) > SlopeMost*(s.At-b.At):
			slope := math.Abs(s.Value-b.Value) / (s.At - b.At)
			faults = append(faults, Fault{Path: here, Value: "a slope of " + Say(slope) + " from the station before", Want: "at most " + Say(SlopeMost)})
		}
	}
	return faults
}

func at(path string, i int) string { return path + "[" + strconv.Itoa(i) + "]" }

// Check gives what is wrong with the leaf.
func (l *Leaf) Check() (faults []Fault) {
	num := func(r Range, path string, x float64, isLength bool) {
		if f, bad := r.Fault(path, x, isLength); bad {
			faults = append(faults, f)
		}
	}
	profile := func(path string, p geom.Profile, place, value Range) {
		faults = append(faults, CheckProfile(path, p, place, value)...)
	}
	num(LeafWidth, "leaf.width", l.Width, true)
	num(LeafThickness, "leaf.thickness", l.Thickness, true)
	num(Bevel.Round(degreeNoise), "leaf.bevel.hanging", l.HangingBevel.Degrees(), false)
	num(Bevel.Round(degreeNoise), "leaf.bevel.closing", l.ClosingBevel.Degrees(), false)
	profile("leaf.hanging", l.Hanging, Place, Range{}.Round(EdgeOff))
	profile("leaf.closing", l.Closing, Place, LeafWidth.Round(EdgeOff))
	profile("leaf.top", l.Top, Across, LeafHeight.Round(HeightOff))
	profile("leaf.bottom", l.Bottom, Across, Range{}.Round(HeightOff))
	profile("leaf.face.hanging", l.HangingFace, Place, Range{}.Round(FaceOff))
	profile("leaf.face.closing", l.ClosingFace, Place, Range{}.Round(FaceOff))
	if len(faults) > 0 {
		return faults
	}
	if f, bad := nominal("leaf.closing", l.Closing, l.Width, EdgeOff); bad {
		faults = append(faults, f)
	}
	for e, s := range l.Sections {
		faults = append(faults, s.check("leaf.sections."+sectionNames[e], l.Thickness)...)
	}
	for _, depth := range []float64{0, l.Thickness} {
		c := l.Corners(depth)
		up := geom.Empty().With(c.HangingFoot.Y).With(c.ClosingFoot.Y).With(c.HangingHead.Y).With(c.ClosingHead.Y)
		over := geom.Empty().With(c.HangingFoot.X).With(c.ClosingFoot.X).With(c.HangingHead.X).With(c.ClosingHead.X)
		back := float64((l.HangingSetback() + l.ClosingSetback()) * depth)
		where := ""
		if depth > 0 {
			where = " on the stop face"
		}
		across := Range{LeastAcross, LeafWidth.Hi + 2*EdgeOff}
		if w, v := leastBetween(l.Hanging, l.Closing, up); !across.Holds(w - back) {
			faults = append(faults, Fault{Path: "leaf.closing", Value: "a width of " + Say(w-back) + " at height " + Say(v) + where, Want: "at least " + Say(across.Lo)})
			break
		}
		if h, u := leastBetween(l.Bottom, l.Top, over); h < LeastUp {
			faults = append(faults, Fault{Path: "leaf.top", Value: "a height of " + Say(h) + " at " + Say(u) + " across" + where, Want: "at least " + Say(LeastUp)})
			break
		}
	}
	return faults
}

// nominal tells of the first station that stands too far from what the edge is called.
func nominal(path string, p geom.Profile, want, off float64) (Fault, bool) {
	for i, s := range p {
		if r := (Range{want, want}).Round(off); !r.Holds(s.Value) {
			return Fault{Path: at(path, i), Value: Say(s.Value), Want: r.String() + ", near the " + Say(want) + " it is called"}, true
		}
	}
	return Fault{}, false
}

// leastBetween gives the least of hi − lo over the stretch, and its place.
func leastBetween(lo, hi geom.Profile, over geom.Interval) (least, where float64) {
	least, where = math.Inf(1), over.Lo
	see := func(s float64) {
		if d := hi.At(s) - lo.At(s); over.Contains(s) && d < least {
			least, where = d, s
		}
	}
	see(over.Lo)
	see(over.Hi)
	for _, p := range []geom.Profile{lo, hi} {
		for _, s := range p {
			see(s.At)
		}
	}
	return least, where
}

// Check gives what is wrong with the opening.
func (f *Frame) Check() (faults []Fault) {
	profile := func(path string, p geom.Profile, place, value Range) {
		faults = append(faults, CheckProfile(path, p, place, value)...)
	}
	flat := Range{}.Round(FaceOff)
	back := Range{-Rebate.Hi, -Rebate.Lo}.Round(FaceOff)
	profile("opening.hinge_jamb", f.HingeJamb, Place, Range{}.Round(EdgeOff))
	profile("opening.latch_jamb", f.LatchJamb, Place, OpeningWidth.Round(EdgeOff))
	profile("opening.head", f.Head, Across, OpeningHeight.Round(HeightOff))
	profile("opening.front.hinge", f.HingeFront, Place, flat)
	profile("opening.front.latch", f.LatchFront, Place, flat)
	profile("opening.front.head", f.HeadFront, Across, flat)
	profile("opening.stops.hinge", f.HingeStop, Place, back)
	profile("opening.stops.latch", f.LatchStop, Place, back)
	profile("opening.stops.head", f.HeadStop, Across, back)
	if x, bad := StopWidth.Fault("opening.stop_width", f.StopWidth, true); bad {
		faults = append(faults, x)
	}
	if len(faults) > 0 {
		return faults
	}
	hinge, latch := f.HeadCorners()
	up := geom.Empty().With(0).With(hinge.Y).With(latch.Y)
	across := geom.Empty().With(hinge.X).With(latch.X)
	if w, y := leastBetween(f.HingeJamb, f.LatchJamb, up); w < OpeningWidth.Lo {
		faults = append(faults, Fault{Path: "opening.latch_jamb", Value: "a width of " + Say(w) + " at height " + Say(y), Want: "at least " + Say(OpeningWidth.Lo)})
		return faults
	}
	if h, x := leastBetween(geom.Level(0), f.Head, across); h < OpeningHeight.Lo {
		faults = append(faults, Fault{Path: "opening.head", Value: "a height of " + Say(h) + " at " + Say(x), Want: "at least " + Say(OpeningHeight.Lo)})
		return faults
	}
	for _, s := range []struct {
		path        string
		stop, front geom.Profile
		over        geom.Interval
	}{
		{"opening.stops.hinge", f.HingeStop, f.HingeFront, up},
		{"opening.stops.latch", f.LatchStop, f.LatchFront, up},
		{"opening.stops.head", f.HeadStop, f.HeadFront, across},
	} {
		if d, where := leastBetween(s.stop, s.front, s.over); d < Rebate.Lo {
			faults = append(faults, Fault{Path: s.path, Value: "a rebate of " + Say(d) + " at " + Say(where), Want: "at least " + Say(Rebate.Lo)})
		}
	}
	return faults
}
