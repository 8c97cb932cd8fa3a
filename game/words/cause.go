package words

import (
	"strconv"
	"strings"

	"leafwright/geom/judge"
)

// causes says what is behind a finding, as one sentence.
func (s *Speaker) causes(c []judge.Cause) string {
	if len(c) == 0 {
		return ""
	}
	parts := make([]string, len(c))
	for i := range c {
		parts[i] = s.cause(c[i])
	}
	return Capital(strings.Join(parts, "; ")) + "."
}

// cause says one departure with its amount.
func (s *Speaker) cause(c judge.Cause) string {
	n := s.size(c.Amount)
	pick := func(above, below string) string {
		if c.Amount > 0 {
			return above
		}
		return below
	}
	switch c.Departure {
	case judge.HingeJambLeans:
		return "the hinge jamb leans " + n + pick(" into the opening at the top", " out of the opening at the top")
	case judge.HingeJambBowed:
		return "the hinge jamb is " + pick("bowed into the opening by ", "hollow by ") + n
	case judge.LatchJambLeans:
		return "the " + s.LatchJamb + " leans " + n + pick(" away at the top", " in at the top")
	case judge.LatchJambBowed:
		return "the " + s.LatchJamb + " is " + pick("hollow by ", "bowed into the opening by ") + n
	case judge.HeadSlopes:
		return "the head " + pick("rises ", "falls ") + n + " towards the " + s.Latch
	case judge.HeadBowed:
		return "the head " + pick("is arched by ", "sags by ") + n
	case judge.FrameLeans:
		return "the frame leans " + n + pick(" out", " back") + " at the top"
	case judge.HingeJambWinds:
		return "the frame is " + n + " in wind: the hinge jamb's top stands " + pick("out", "back")
	case judge.LatchJambWinds:
		return "the frame is " + n + " in wind: the " + s.LatchJamb + "'s top stands " + pick("out", "back")
	case judge.HingeFrontBowed:
		return "the hinge jamb's front edge is bowed " + pick("out by ", "back by ") + n
	case judge.LatchFrontBowed:
		return "the " + s.LatchJamb + "'s front edge is bowed " + pick("out by ", "back by ") + n
	case judge.StopsOut:
		return "the stops are up to " + n + " out of line with the frame's front edge"
	case judge.StopsNear:
		return "the stops are set " + n + pick(" too near", " too far back") + " for a leaf of this thickness"
	case judge.FloorSlopes:
		return "the floor " + pick("rises ", "falls ") + n + " towards the " + s.Latch
	case judge.FloorRises:
		return "the floor " + pick("rises ", "falls ") + n + " under the swing" + pick(" (rising butts, which lift a leaf over it, are not worked out here)", "")
	case judge.HangingBowed:
		return "the " + s.HangingEdge + " is " + pick("hollow by ", "round by ") + n
	case judge.ClosingTapered:
		return "the leaf is " + n + pick(" wider", " narrower") + " at the top than at the foot"
	case judge.ClosingBowed:
		return "the " + s.ClosingEdge + " is " + pick("round by ", "hollow by ") + n
	case judge.TopSlopes:
		return "the leaf's top " + pick("rises ", "falls ") + n + " towards the " + s.ClosingEdge
	case judge.TopBowed:
		return "the leaf's top is " + pick("round by ", "hollow by ") + n
	case judge.BottomSlopes:
		return "the leaf's foot " + pick("rises ", "falls ") + n + " towards the " + s.ClosingEdge
	case judge.BottomBowed:
		return "the leaf's foot is " + pick("hollow by ", "round by ") + n
	case judge.LeafInWind:
		return "the leaf is " + n + " in wind: its top " + s.LatchCorner + " stands " + pick("out", "back")
	case judge.LeafBowed, judge.HangingStileBow, judge.ClosingStileBow:
		what := "leaf"
		switch c.Departure {
		case judge.HangingStileBow:
			what = "hanging stile"
		case judge.ClosingStileBow:
			what = "closing stile"
		}
		return "the " + what + " is bowed " + n + pick(" away from the stops", " towards the stops")
	case judge.StripBack:
		return "the strip there is thinner than the leaf: it stands " + n + " behind the leaf's stop face"
	case judge.ClosingSquare:
		return "the " + s.ClosingEdge + " is too square for a leaf of this thickness and width: one bevelled by " + degrees(c.Amount) + " would pass"
	case judge.ClosingBevelled:
		return "the " + s.ClosingEdge + " is bevelled " + degrees(c.Amount) + ", which opens the gap at the back"
	case judge.LeafWide:
		return "the leaf is " + n + pick(" too wide", " too narrow") + " for this opening and these gaps"
	case judge.LeafTall:
		return "the leaf is " + n + pick(" too tall", " too short") + " for this opening and these gaps"
	case judge.HungHigh:
		return "the leaf is hung " + n + pick(" too high", " too low")
	case judge.GainsUneven:
		return "the " + pick("bottom", "top") + " hinge is " + s.LetIn + " " + n + " deeper than the " + pick("top", "bottom") + " one"
	case judge.GainsAll:
		return "the hinges are " + s.LetIn + " " + n + pick(" too little", " too deep") + " for the gap wanted"
	case judge.PinsUneven:
		return "the top pin stands " + n + pick(" farther out", " farther in") + " than the bottom one"
	case judge.SetUneven:
		return "the leaf stands " + n + pick(" farther out", " farther in") + " at the top hinge than at the bottom one"
	case judge.SetAll:
		return "the hinges hold the leaf's face " + n + pick(" out of", " behind") + " the frame's front edge"
	}
	return string(c.Departure)
}

func degrees(a float64) string { return strconv.FormatFloat(a, 'f', 1, 64) + "°" }
