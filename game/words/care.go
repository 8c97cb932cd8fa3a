package words

import (
	"strconv"
	"strings"

	"leafwright/geom/trim"
)

// member names a part of leaf or frame.
func (s *Speaker) member(m trim.Member) string {
	rail := s.rail(m.Index)
	switch m.Part {
	case trim.Stile:
		if m.Edge == 0 {
			return "hanging stile"
		}
		return "closing stile"
	case trim.Rail:
		return rail
	case trim.Haunch:
		return "haunch of the " + rail
	case trim.Tenon:
		return "tenon of the " + rail
	case trim.Wedge:
		return "wedge of the " + rail + "'s tenon"
	case trim.LockCase:
		return "lock's case"
	case trim.HingeSeat:
		return "seat of " + s.theHinge(m.Index+1)
	case trim.GlassEdge:
		return "glass and its rebate"
	case trim.Strip:
		return "strip on the " + s.leafEdge(m.Edge)
	case trim.Jamb:
		return s.frameSide(m.Edge)
	case trim.StopMember:
		return "stop at the " + s.frameSide(m.Edge)
	}
	return "leaf"
}

// rail names the i-th rail from the foot up.
func (s *Speaker) rail(i int) string {
	if i >= 0 && i < len(s.Rails) {
		switch {
		case s.Rails[i] != "":
			return s.Rails[i] + " rail"
		case i == 0:
			return "bottom rail"
		case i == len(s.Rails)-1:
			return "top rail"
		}
	}
	if names := [...]string{"bottom", "second", "third", "fourth", "fifth", "sixth"}; i >= 0 && i < len(names) {
		return names[i] + " rail"
	}
	return "rail number " + strconv.Itoa(i+1)
}

// left says what remains of a member and what ought to, ": 40 mm is left, 45 mm is
// wanted", or nothing where that is not the matter.
func (s *Speaker) left(c *trim.Care) string {
	said := ""
	if c.Left > 0 {
		said = ": " + s.measured(c.Left) + " is left"
	}
	if c.Need > 0 {
		if said == "" {
			said = ": nothing is left"
		}
		said += ", " + s.measured(c.Need) + " is wanted"
	}
	return said
}

// into says how far a cut goes into a member, " 4 mm"; what remains below zero is
// how far.
func (s *Speaker) into(c *trim.Care) string {
	if c.Left < 0 {
		return " " + s.measured(c.Left)
	}
	return ""
}

// Care says why a move cannot be done or what is to be minded, as a sentence
// without a full stop.
func (s *Speaker) Care(c *trim.Care) string {
	part := s.member(c.Member)
	switch c.About {
	case trim.Numbers:
		return "Its numbers are out of range" + faults(c)
	case trim.DoorSpoilt:
		return "It would make a door that cannot be hung" + faults(c)
	case trim.Rated:
		return "A rated or labelled leaf takes no trimming, splicing or gains: its certificate and label decide"
	case trim.NotThere:
		if c.Member.Part == trim.HingeSeat {
			return "There is no such hinge on this leaf"
		}
		return "There is nothing of that kind here"
	case trim.OffTheLeaf:
		return "The line lies outside the leaf: there is nothing to take off"
	case trim.IntoTenon, trim.IntoWedge, trim.IntoLock, trim.IntoHinge, trim.IntoGlass:
		return "Cuts" + s.into(c) + " into the " + part + s.left(c)
	case trim.TooLittle:
		return "Too little stays of the " + part + s.left(c)
	case trim.Crooked:
		return "The faces to be glued do not meet" + s.gapped(c) + ": plane them straight first"
	case trim.TooThin:
		return "The stock is too thin or too low" + s.left(c)
	case trim.NoOffcut:
		return "There is no offcut to use: cut the other end first"
	case trim.WrongGrain:
		return "The offcut's grain runs across the strip: it would snap and move against the leaf"
	case trim.NoAmount:
		return "Its amount is 0: it changes nothing"
	case trim.NoPacker:
		return "There is no packing to take out"
	case trim.SoAlready:
		return "It is so already: nothing is left to do"

	case trim.IntoHaunch:
		return "Cuts" + s.into(c) + " into the " + part + s.left(c) + ": the joint is weaker"
	case trim.Slender:
		return "The " + part + " grows slender" + s.left(c)
	case trim.LockDeeper:
		return "Take the lock out before planing. To be flush again it goes in by what comes off; spindle, keyhole and furniture go with it"
	case trim.GainShallow:
		return "The " + s.Gain + " of " + s.theHinge(c.Member.Index+1) + " is " + s.measured(c.Left) + " deep then, where it was " + s.measured(c.Need) +
			": the gap there widens by what comes off. Cut it anew only where it is to stay"
	case trim.HingeOnStrip:
		if c.Member.Part == trim.LockCase {
			return "The lock comes through a strip: its case and screws must reach the leaf itself"
		}
		return "The " + part + " stands on a strip: its screws must reach the leaf itself"
	case trim.StripThin:
		if c.Need > 0 {
			return "The " + part + " is low to work" + s.left(c)
		}
		return "The " + part + " is thinner than the leaf and stands back from a face"
	case trim.RatedSet:
		return "Hinges, stops and jambs belong to a rated set: its label covers them too"
	case trim.EndGrainGlued:
		return "Glue alone does not hold on end grain: dowel the " + part + ", in the stiles' ends too where tenons leave room; on boards, which move under it, screw it through slots"
	case trim.PackerOut:
		return "Take the " + s.Packer + " out first" + s.left(c)
	case trim.KeepOff:
		way := "rises "
		if c.Left < 0 {
			way = "falls "
		}
		return "The latch " + way + s.amount(c.Left) + ": ease its " + s.Keep + " or move it, and look that the bolt still reaches"
	case trim.HingeSet:
		way := "farther out"
		if c.Left < 0 {
			way = "farther in"
		}
		return "The leaf stands " + s.amount(max(c.Left, -c.Left)) + " " + way + " there: see that the latch still finds its " + s.Keep + " and the leaf its stop"
	case trim.SolidStop:
		return "The " + part + " is worked out of the solid: plane it back where it goes away from the leaf, glue slips on it where it comes nearer"
	case trim.WithoutMove:
		return "Move " + strconv.Itoa(c.Member.Index+1) + ", on which this leans, is not made: look at this one's numbers anew"
	case trim.HingeOnTenon:
		return "A hinge stands on the end grain of the " + part + ": its screws hold less there"
	}
	return "It cannot be done"
}

// gapped says the gap two faces leave and what they may.
func (s *Speaker) gapped(c *trim.Care) string {
	switch {
	case c.Left > 0 && c.Need > 0:
		return ", " + s.measured(c.Left) + " apart where " + s.measured(c.Need) + " is the most"
	case c.Left > 0:
		return ", " + s.measured(c.Left) + " apart"
	}
	return ""
}

func faults(c *trim.Care) string {
	lines := make([]string, len(c.Faults))
	for i, f := range c.Faults {
		lines[i] = f.Error()
	}
	if len(lines) == 0 {
		return ""
	}
	return ": " + strings.Join(lines, "; ")
}

// Left says what a move leaves of a member: "top rail 110 mm to 106 mm"; of one with a
// strip glued to it its own timber first, "top rail stays 95 mm, 110 mm with the strip".
func (s *Speaker) Left(l trim.Left) string {
	before, now := s.measured(l.Before), s.measured(l.Now)
	if l.Member.Part == trim.HingeSeat {
		return "timber behind " + s.theHinge(l.Member.Index+1) + " " + s.between(before, now, " to ")
	}
	part := s.member(l.Member)
	if l.Member.Part == trim.LockCase {
		part = "the lock's backset"
	}
	if before == now {
		part += " stays " + now
	} else {
		part += " " + s.between(before, now, " to ")
	}
	if l.FaceNow > l.Now {
		part += ", " + s.measured(l.FaceNow) + " with the strip"
	}
	return part
}

// CubicCentimetres writes a volume given in mm³, a small one to the tenth.
func CubicCentimetres(mm3 float64) string {
	figures := 0
	if mm3 > 0 && mm3 < 50 {
		return "under 0.1 cm³"
	}
	if mm3 < 9950 {
		figures = 1
	}
	return strconv.FormatFloat(mm3/1000, 'f', figures, 64) + " cm³"
}

// Minutes writes a time that is only an estimate: to the five minutes, hours from
// two on to the half.
func Minutes(min float64) string {
	switch {
	case min <= 0:
		return "none"
	case min < 120:
		five := 5 * float64(int(min/5+0.5))
		return "about " + strconv.FormatFloat(max(5, five), 'f', -1, 64) + " min"
	}
	return "about " + strconv.FormatFloat(float64(int(min/30+0.5))/2, 'f', -1, 64) + " h"
}

// Did says what a move did, as one line without a full stop.
func (s *Speaker) Did(d *trim.Done) string {
	var parts []string
	if d.Off > 0 || d.Volume > 0 {
		said := CubicCentimetres(d.Volume) + " of the leaf goes"
		if d.Most > 0 {
			said = s.measured(d.Most) + " off where it is most, " + said
		}
		parts = append(parts, said)
	}
	if d.Strips > 0 {
		parts = append(parts, number(d.Strips)+plural(d.Strips, " strip")+" glued on")
	}
	if len(d.Gains) > 0 {
		names := make([]string, len(d.Gains))
		for i, h := range d.Gains {
			names[i] = s.theHinge(h + 1)
		}
		parts = append(parts, s.gains()+" cut anew: "+Listed(names))
	}
	if d.Frame {
		parts = append(parts, "the frame is touched")
	}
	for _, l := range d.Left {
		parts = append(parts, s.Left(l))
	}
	if d.Minutes > 0 {
		parts = append(parts, Minutes(d.Minutes))
	}
	return Capital(strings.Join(parts, "; "))
}

// gains is more than one of the recesses cut for hinges.
func (s *Speaker) gains() string {
	if strings.HasSuffix(s.Gain, "s") {
		return s.Gain + "es"
	}
	return s.Gain + "s"
}

func plural(n int, thing string) string {
	if n == 1 {
		return thing
	}
	return thing + "s"
}

// Amount writes an amount without its sign and without idle noughts; Span writes two lengths as a range.
func (s *Speaker) Amount(mm float64) string        { return s.measured(mm) }
func (s *Speaker) Span(least, most float64) string { return s.span(least, most) }

// Sightline says how far a rail's upper edge stands above the one beside it.
func (s *Speaker) Sightline(rail int, above float64) string {
	const level = 0.5 // mm: as good as in line, to the eye across two doors
	switch {
	case above > level:
		return s.rail(rail) + " " + s.measured(above) + " above"
	case above < -level:
		return s.rail(rail) + " " + s.measured(above) + " below"
	}
	return s.rail(rail) + " in line"
}
