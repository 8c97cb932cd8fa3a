package words

import (
	"math"
	"strconv"
	"strings"

	"leafwright/game/measure"
	"leafwright/geom"
	"leafwright/geom/advise"
	"leafwright/geom/door"
	"leafwright/geom/judge"
	"leafwright/geom/survey"
	"leafwright/geom/trim"
)

// PreferenceWord names what matters most to the person; none is the usual.
func PreferenceWord(p advise.Preference) string {
	switch p {
	case advise.MostEven:
		return "most even gaps"
	case advise.Quickest:
		return "quickest"
	case advise.LeaveFrame:
		return "leave the frame alone"
	}
	return "least timber"
}

// AdviceHeadline says in a sentence or two what came of the advice.
func (s *Speaker) AdviceHeadline(a *advise.Advice) string {
	switch n := len(a.Plans); {
	case a.Good && a.JustGood:
		return "It fits as it is by what was read, but only just: nothing that can be worked makes surer of it."
	case a.Good:
		return "It fits as it is: nothing needs doing."
	case a.Refused != nil:
		return s.Care(a.Refused) + ". No advice is given: ask whoever holds the certificate."
	case a.JustGood && n > 0:
		return "It fits as it is by what was read, but so narrowly that a gap is likely out of its limits. " + found(n) + " to make sure of it."
	case n > 0:
		said := found(n) + " to make it fit"
		if n > 1 {
			said += ", the best of them by your wishes first"
		}
		if last := &a.Plans[n-1]; last.Family == advise.JambsToo && a.Plans[0].Family != advise.JambsToo {
			said += "; those that work the frame stand last"
		}
		if a.Frame {
			said += "; none that leaves the frame alone"
		}
		if len(a.Near) > 0 {
			said += "; a further one is far less work but leaves a gap wider than wanted"
		}
		return said + "."
	case a.Conflict != nil:
		return "No way was found to make it fit within these limits and wishes."
	}
	return "There is no door here that can be hung, so there is nothing to advise."
}

// found says how many ways were found: that there are no others is not proven.
func found(n int) string {
	if n == 1 {
		return "One way was found"
	}
	return Capital(number(n)) + " ways were found"
}

// PlanTitle is what a plan is called, and an option made of it.
func (s *Speaker) PlanTitle(p *advise.Plan) string {
	said := s.planTitle(p)
	if len(p.Given) > 0 {
		return "If a limit gives way: " + strings.ToLower(said[:1]) + said[1:]
	}
	return said
}

func (s *Speaker) planTitle(p *advise.Plan) string {
	var packs, hinges, bevels, edges bool
	for i := range p.Moves {
		switch p.Moves[i].Kind {
		case trim.Pack:
			packs = true
		case trim.Bevel:
			bevels = true
		case trim.Plane, trim.Cut, trim.Scribe, trim.Splice:
			edges = true
		case trim.Restop, trim.Follow, trim.PlaneJamb, trim.PackJamb:
		default:
			hinges = true
		}
	}
	fittings := "hinges"
	switch {
	case packs && hinges:
		fittings = "hinges and " + s.Packer + "s"
	case packs:
		fittings = s.Packer + "s"
	}
	also := ""
	if packs || hinges {
		also = " and work the " + fittings
	}
	switch p.Family {
	case advise.HingesOnly:
		switch {
		case packs && hinges:
			return Capital(fittings) + ", no timber off the edges"
		case packs:
			return Capital(fittings) + " only, no timber off"
		}
		return "Hinges only, no timber off the edges"
	case advise.PlaneOnly:
		if bevels && !edges {
			return "Bevel only"
		}
		return "Plane only"
	case advise.HingePlane:
		if packs && hinges {
			return "Hinges, " + s.Packer + "s and plane"
		}
		return Capital(fittings) + " and plane"
	case advise.ScribeOnly:
		return "Plane to a scribed line" + also
	case advise.Splice:
		return "Splice a strip onto the " + s.leafEdge(p.Strip) + also
	case advise.StopsOnly:
		return "Move the stops, leave the leaf as it is"
	case advise.JambsToo:
		said := s.jambs(p)
		if edges || bevels {
			said += ", plane"
			if also == "" {
				said += " the leaf"
			}
		}
		return said + also
	case advise.StopsToo:
		if edges || bevels {
			if also != "" {
				return "Move the stops, plane" + also
			}
			return "Move the stops and plane"
		}
		return "Move the stops" + also
	}
	return string(p.Family)
}

// jambs says which faces of the frame a plan works.
func (s *Speaker) jambs(p *advise.Plan) string {
	var off, on []string
	for i := range p.Moves {
		switch m := &p.Moves[i]; m.Kind {
		case trim.PlaneJamb:
			off = append(off, "the "+s.frameSide(m.Edge))
		case trim.PackJamb:
			on = append(on, "the "+s.frameSide(m.Edge))
		}
	}
	said := ""
	if len(on) > 0 {
		said = "pack out " + Listed(on)
	}
	if len(off) > 0 {
		if said != "" {
			said += ", "
		}
		said += "plane " + Listed(off)
	}
	return Capital(said)
}

// PlanCost says what a plan costs and how even it leaves the gaps, as one sentence.
func (s *Speaker) PlanCost(p *advise.Plan) string {
	const none = 0.05 // cm³: nothing, as far as it is said
	c := &p.Cost
	said := "No timber goes"
	if c.Timber >= none {
		said = CubicCentimetres(c.Timber*1000) + " of the leaf goes"
		if c.Most > 0 {
			said += ", " + s.measured(c.Most) + " off where it is most"
		}
	}
	if c.Strips > 0 {
		said += "; " + number(c.Strips) + plural(c.Strips, " strip") + " glued on"
	}
	if n := recut(p); n == 1 {
		said += "; one " + s.Gain + " cut anew"
	} else if n > 1 {
		said += "; " + number(n) + " " + s.gains() + " cut anew"
	}
	if c.Frame {
		said += "; the frame is touched"
	}
	if c.Minutes > 0 {
		said += "; " + Minutes(c.Minutes)
	}
	if c.Uneven < judge.Blade {
		return said + ". The gaps at jambs and head end alike."
	}
	return said + ". The gaps at jambs and head end within " + s.measured(c.Uneven) + " of each other."
}

// recut counts the gains a plan cuts anew; one that two moves go at is cut once.
func recut(p *advise.Plan) (n int) {
	seen := 0 // a bit for each hinge
	for i := range p.Steps {
		for _, h := range p.Steps[i].Done.Gains {
			if seen&(1<<uint(h)) == 0 {
				n++
			}
			seen |= 1 << uint(h)
		}
	}
	return n
}

// Chances that are said to be as good as sure, and to be little better than none.
const (
	asGoodAsSure = 0.95
	hardlyAny    = 0.3
)

// PlanSure says how likely a plan comes out within the limits; read tells that the door
// is known by readings, without which there is nothing to say.
func (s *Speaker) PlanSure(p *advise.Plan, read bool) string {
	switch {
	case !read:
		return ""
	case p.Sure >= asGoodAsSure:
		return "Done so, the gaps come out within their limits as good as surely."
	case p.Sure <= hardlyAny:
		return "Limits so narrow ask for more than readings and hand can be trusted with: expect to trim once or twice more."
	}
	return "Readings and hand being what they are, the gaps come out within their limits with a chance of about " + perCent(p.Sure) + ", or else after one trim more."
}

// perCent writes a part of a whole, to the nearest twentieth.
func perCent(part float64) string { return strconv.Itoa(5*int(math.Round(20*part))) + "\u00a0%" }

// PlanCares says what a plan's moves bring that is to be minded, each once, with the moves
// that bring it.
func (s *Speaker) PlanCares(p *advise.Plan) (out []string) {
	var said []string
	var at [][]string
	for i := range p.Steps {
		for k := range p.Steps[i].Done.Cares {
			care := s.Care(&p.Steps[i].Done.Cares[k])
			j := 0
			for j < len(said) && said[j] != care {
				j++
			}
			if j == len(said) {
				said, at = append(said, care), append(at, nil)
			}
			if n := strconv.Itoa(i + 1); len(at[j]) == 0 || at[j][len(at[j])-1] != n {
				at[j] = append(at[j], n)
			}
		}
	}
	for j, care := range said {
		out = append(out, "Take care at "+plural(len(at[j]), "move")+" "+Listed(at[j])+": "+care+".")
	}
	return out
}

// PlanMove says a plan's i-th move and why it is made, in sentences.
func (s *Speaker) PlanMove(p *advise.Plan, i int, a *advise.Advice) string {
	m := &p.Moves[i]
	said := s.Move(m) + "."
	if (m.Kind == trim.Raise || m.Kind == trim.Shift) && m.On != trim.OnJamb && p.Cost.Gains > 0 && math.Abs(m.First) < advise.ScrewClear {
		said += " Plug the old screw holes with glued hardwood before: the new ones run into them."
	}
	if i < len(p.Why) {
		said += " " + s.PlanWhy(&p.Why[i], a)
	}
	return said
}

// PlanWhy says what a move is for, and what would be without it.
func (s *Speaker) PlanWhy(c *advise.Cure, a *advise.Advice) string {
	switch {
	case !c.Needed:
		return "Nothing would be out of its limits without it: it makes the rest surer or more even."
	case c.Cures < 0 || c.Cures >= len(a.Findings):
		return "The rest calls for it: without it " + s.brief(&c.Without) + "."
	}
	now, without := s.brief(&a.Findings[c.Cures]), s.brief(&c.Without)
	if now == without {
		return "It cures this: " + now + ". Without it that stays so."
	}
	return "It cures this: " + now + ". Without it " + without + "."
}

// heldOff is how far off a stop, mm, no wind or bow of a leaf brings it: what is farther
// off is held there by something else, and the figure tells nothing.
const heldOff = 25.0

// brief says a finding in a few words.
func (s *Speaker) brief(f *judge.Finding) string {
	n, edge := s.measured(f.Worst), s.Edge(f.Edge)
	binds := f.Verdict == judge.Binds
	switch f.Subject {
	case judge.ClosedGap:
		switch {
		case binds && f.Edge == door.HingeSide:
			return "the leaf is hinge-bound by " + n
		case binds:
			return "the leaf binds by " + n + " at the " + edge
		case f.Verdict == judge.Slack:
			return "the gap at the " + edge + " gapes to " + s.beyond("just over ", f.Worst, f.Limits.Most)
		}
		return "the gap at the " + edge + " is " + s.beyond("just under ", f.Worst, f.Limits.Least)
	case judge.StopGap:
		switch {
		case binds:
			return "the leaf bears on the stop at the " + edge + " by " + n
		case f.Verdict == judge.Slack && f.Worst > heldOff:
			return "the leaf is held open, off the stop at the " + edge
		case f.Verdict == judge.Slack:
			return "the leaf stands " + s.beyond("just over ", f.Worst, f.Limits.Most) + " off the stop at the " + edge
		}
		return "the leaf is " + s.beyond("just under ", f.Worst, f.Limits.Least) + " from the stop at the " + edge
	case judge.Latching:
		if binds {
			return "the latch is " + n + " short of the " + s.Keep
		}
		return "the latch comes home only when pressed"
	case judge.SwingGap:
		if binds {
			return "the leaf fouls the " + edge + " by " + n + " as it swings"
		}
		return "the leaf passes the " + edge + " by only " + n + " as it swings"
	case judge.SwingFloor:
		if binds {
			return "the leaf drags on the floor by " + n
		}
		return "the leaf clears the floor by only " + n + " as it swings"
	case judge.HingeLine:
		return "the hinges are out of line by " + n
	}
	return "the clear way is only " + s.place(f.Worst)
}

// beyond writes an amount, with the side of its limit it is on where it reads like it.
func (s *Speaker) beyond(side string, mm, limit float64) string {
	n := s.measured(mm)
	if n == s.measured(limit) {
		return side + n
	}
	return n
}

// PlanStages says how a plan is done in more than one go; none where it is done in one.
func (s *Speaker) PlanStages(p *advise.Plan) (out []string) {
	if len(p.Stages) < 2 {
		return nil
	}
	for i := range p.Stages {
		st := &p.Stages[i]
		moves := make([]string, len(st.Moves))
		for k := range st.Moves {
			moves[k] = s.Move(&st.Moves[k])
		}
		list := strings.Join(moves, "; ")
		switch {
		case i == 0 && list == "":
			out = append(out, "Nothing is done before it was offered up.")
		case i == 0:
			out = append(out, "First, which is safe at once: "+list+".")
		default:
			out = append(out, "The rest, as far as is known now: "+list+".")
		}
		if len(st.Read) > 0 {
			stops := s.offering(st.Read, survey.StopGap)
			if stops != "" {
				stops = "; and between the leaf and the stop " + stops
			}
			out = append(out, "Offer the leaf up and read these gaps by feeler: "+s.offering(st.Read, survey.GapRead)+stops+". Add them to the readings and ask again: the rest may come out a little more or less.")
		}
	}
	return out
}

// offering lists the readings of a kind to be taken, side by side, at places in order and
// as round as anyone marks them.
func (s *Speaker) offering(read []survey.Reading, kind survey.Kind) string {
	var sides []survey.Side
	for _, r := range read {
		seen := r.Kind != kind
		for _, have := range sides {
			seen = seen || have == r.Side
		}
		if !seen {
			sides = append(sides, r.Side)
		}
	}
	parts := make([]string, len(sides))
	for i, side := range sides {
		round := 10.0
		if s.Place != nil {
			round = measure.PerInch / 2
		}
		var places []float64
		for _, r := range read {
			if r.Side == side && r.Kind == kind {
				places = append(places, measure.Round(r.At, round))
			}
		}
		geom.Ascending(places)
		at := make([]string, len(places))
		for k, p := range places {
			at[k] = s.place(p)
		}
		from := " from the hinge jamb"
		if side == survey.Hinge || side == survey.Latch {
			from = " up"
		}
		parts[i] = "at the " + s.side(side) + ", " + Listed(at) + from
	}
	return strings.Join(parts, "; ")
}

// PlanThen says how the door hangs once a plan is carried out, by its findings then.
func PlanThen(s *Speaker, p *advise.Plan, after []judge.Finding) string {
	lead := "Then: "
	if len(p.Stages) > 1 {
		lead = "If the gaps are not read again on the way: "
	}
	return lead + s.Headline(after)
}
