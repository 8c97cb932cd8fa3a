package lesson

import (
	"math"

	"leafwright/game/words"
	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fault"
	"leafwright/geom/trim"
)

// made says how much of a fault there is, and where.
func (t *Teller) made(m *fault.Made, l *Lesson) string {
	if m.Amount <= 0 {
		return ""
	}
	by := ", by " + t.Amount(m.Amount)
	end := func(e door.Edge) string {
		switch {
		case m.Way != fault.Upper && m.Way != fault.Lower:
			return ""
		case !e.Upright() && m.Way == fault.Upper:
			return " at the " + t.Latch + " end"
		case !e.Upright():
			return " at the hinge end"
		case m.Way == fault.Upper:
			return " at the top"
		}
		return " at the foot"
	}
	switch m.Kind {
	case fault.EdgeSquare:
		return t.square(l)
	case fault.JambLeans:
		return ", leaning in by " + t.Amount(m.Amount) + end(door.LatchSide)
	case fault.JambSprung:
		return ": the " + words.FrameSide(t.Speaker, m.Edge) + " is bowed in by " + t.Amount(m.Amount)
	case fault.FrameWinds:
		return by + end(door.LatchSide) + " of the " + t.LatchJamb
	case fault.LeafWinds:
		if m.Way == fault.Lower {
			return by + ": the foot of the closing stile stands out, and its top goes in"
		}
		return by + ": the top of the closing stile stands out, and its foot goes in"
	case fault.FloorRises:
		return ", by " + t.Amount(m.Amount) + " where the closing corner passes"
	case fault.LeafTall:
		return by + ", all of it at the " + words.LeafEdge(t.Speaker, m.Edge)
	case fault.LeafSwollen:
		return ": it is " + t.Amount(m.Amount) + " wider"
	case fault.EdgeUneven:
		if m.Way == fault.Whole {
			return ": a spot was left standing, " + t.Amount(m.Amount) + " high"
		}
		return ": " + t.Amount(m.Amount) + " too much came off" + end(door.LatchSide)
	case fault.PaintThick:
		return ": " + t.Amount(m.Amount) + " on every edge of leaf and frame"
	case fault.GainsDeep:
		switch m.On {
		case trim.OnJamb:
			return by + " in the jamb"
		case trim.OnBoth:
			return by + ", in leaf and jamb together"
		}
		return by + " in the leaf"
	case fault.ScrewsProud:
		return ": the plates of the " + map[bool]string{true: "bottom", false: "top"}[m.Way == fault.Lower] + " one are held " + t.Amount(m.Amount) + " apart"
	case fault.PinsLean:
		return ": the " + map[bool]string{true: "bottom", false: "top"}[m.Way == fault.Lower] + " one stands " + t.Amount(m.Amount) + " farther out of the frame"
	case fault.StopNear:
		return ": the stop is " + t.Amount(m.Amount) + " too far forward" + end(door.LatchSide)
	case fault.KeepOut:
		if m.Way == fault.Out {
			return ", by " + t.Amount(m.Amount) + " outwards"
		}
		return ", by " + t.Amount(m.Amount) + " inwards"
	}
	return by + end(m.Edge)
}

// square says what the closing edge lacks: its bevel as it is, and the one of the cure
// where the cure is a bevel, with what that takes off the inner corner.
func (t *Teller) square(l *Lesson) string {
	leaf := &l.Job.Door.Leaf
	has := "no bevel"
	if leaf.ClosingBevel != 0 {
		has = "a bevel of " + degrees(leaf.ClosingBevel) + " only"
	}
	said := ": it is " + t.Amount(leaf.Thickness) + " thick, and its edge has " + has
	for i := range l.Cure.Moves {
		if m := &l.Cure.Moves[i]; m.Kind == trim.Bevel && m.Angle > leaf.ClosingBevel {
			back := leaf.Thickness * (math.Tan(float64(m.Angle)) - math.Tan(float64(leaf.ClosingBevel)))
			return said + ". It wants one of " + degrees(m.Angle) + ", which takes the inner corner back by " + t.Amount(back)
		}
	}
	return said
}

func degrees(a geom.Angle) string { return door.Say(math.Round(a.Degrees()*10)/10) + "°" }
