package words

import (
	"math"
	"strconv"
	"strings"

	"leafwright/game/measure"
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
		ways := "There is one way"
		if n > 1 {
			ways = "There are " + number(n) + " ways"
		}
		return "It fits as it is by what was read, but so narrowly that a gap is likely out of its limits. " + ways + " to make sure of it."
	case n == 1:
		return "There is one way to make it fit."
	case n > 1:
		return "There are " + number(n) + " ways to make it fit, the best by your wishes first."
	case a.Conflict != nil:
		return "No way was found to make it fit within these limits and wishes."
	}
	return "There is no door here that can be hung, so there is nothing to advise."
}

// PlanTitle is what a plan is called, and an option made of it.
func (s *Speaker) PlanTitle(p *advise.Plan) string {
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
			return capital(fittings) + ", no timber off the edges"
		case packs:
			return capital(fittings) + " only, no timber off"
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
		return capital(fittings) + " and plane"
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
		said = "pack out " + listed(on)
	}
	if len(off) > 0 {
		if said != "" {
			said += ", "
		}
		said += "plane " + listed(off)
	}
	return capital(said)
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
		out = append(out, "Take care at "+plural(len(at[j]), "move")+" "+listed(at[j])+": "+care+".")
	}
	return out
}

// PlanMove says a plan's i-th move and why it is made, in sentences.
func (s *Speaker) PlanMove(p *advise.Plan, i int, a *advise.Advice) string {
	said := s.Move(&p.Moves[i]) + "."
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
		if i == 0 {
			out = append(out, "First, which is safe at once: "+list+".")
		} else {
			out = append(out, "The rest, as far as is known now: "+list+".")
		}
		if len(st.Read) > 0 {
			out = append(out, "Offer the leaf up and read these gaps by feeler: "+s.offering(st.Read)+". Add them to the readings and ask again: the rest may come out a little more or less.")
		}
	}
	return out
}

// offering lists the gaps to be read, side by side.
func (s *Speaker) offering(read []survey.Reading) string {
	var sides []survey.Side
	for _, r := range read {
		seen := false
		for _, have := range sides {
			seen = seen || have == r.Side
		}
		if !seen {
			sides = append(sides, r.Side)
		}
	}
	parts := make([]string, len(sides))
	for i, side := range sides {
		var at []string
		for _, r := range read {
			if r.Side == side {
				at = append(at, s.place(r.At))
			}
		}
		from := " from the hinge jamb"
		if side == survey.Hinge || side == survey.Latch {
			from = " up"
		}
		parts[i] = "at the " + s.side(side) + ", " + listed(at) + from
	}
	return strings.Join(parts, "; ")
}

// Conflict says why there is no plan: which limits contradict each other, then the
// least that would do.
func (s *Speaker) Conflict(c *advise.Conflict) (out []string) {
	n := len(c.Limits)
	switch {
	case n == 0 && c.Care != nil:
		return []string{"The gaps could be had, but not from the timber there is. " + s.Care(c.Care) + "."}
	case n == 0:
		return []string{"The gaps could be had, but not in steps that can be worked: let a limit give way by half a step."}
	case n == 1:
		out = append(out, capital(s.limit(c.Limits[0].Limit))+" cannot be had by planing, packing and moving hinges and stops, unless something binds.")
	default:
		names := make([]string, n)
		for i := range c.Limits {
			names[i] = s.limit(c.Limits[i].Limit)
		}
		out = append(out, "These cannot all be had: "+listed(names)+".")
	}
	var alone, each []string
	for i := range c.Limits {
		if c.Limits[i].Enough {
			alone = append(alone, s.relaxed(&c.Limits[i]))
		}
	}
	if len(alone) > 0 {
		out = append(out, "The least that would do: "+strings.Join(alone, "; or ")+".")
	}
	for i := range c.Together {
		each = append(each, s.relaxed(&c.Together[i]))
	}
	if len(each) > 1 || len(each) == 1 && len(alone) == 0 {
		lead := "Or all of these, a little each: "
		if len(alone) == 0 {
			lead = "The least that would do, all together: "
		}
		out = append(out, lead+strings.Join(each, "; ")+".")
	}
	if c.Care != nil {
		out = append(out, "What forbade more: "+s.Care(c.Care)+".")
	}
	return out
}

// limit names what is to be kept.
func (s *Speaker) limit(l advise.Limit) string {
	bound := "the least wanted "
	if l.Upper {
		bound = "the most wanted "
	}
	switch l.Sort {
	case advise.GapLimit:
		return bound + "for the gap at the " + s.Edge(l.Edge)
	case advise.StopLimit:
		return bound + "between the leaf and the stop at the " + s.Edge(l.Edge)
	case advise.SwingLimit:
		return bound + s.past(l.Edge)
	case advise.HingeLimit:
		return "hinges as far apart on the leaf as on the jamb"
	case advise.WayLimit:
		return "the clear way wanted"
	case advise.StilesAlike:
		return "as much off one stile as off the other"
	case advise.TopRail:
		return "a top rail as high as its neighbour"
	case advise.FrameStays:
		return "nothing done to the frame"
	case advise.HingesStay:
		return "nothing done to the hinges"
	}
	return "no strip glued on"
}

func (s *Speaker) past(e door.Edge) string {
	if e == door.FloorSide {
		return "over the floor as it swings"
	}
	return "past the " + s.Edge(e) + " as it swings"
}

// relaxed says how a limit would have to give way, never by too little.
func (s *Speaker) relaxed(r *advise.Relax) string {
	step := 0.1
	if s.Length != nil {
		step = measure.PerInch / 64
	}
	by := s.amount(math.Ceil(r.By/step) * step)
	move := by + " less than the least wanted"
	if r.Upper {
		move = by + " more than the most wanted"
	}
	switch r.Sort {
	case advise.GapLimit:
		return "let the gap at the " + s.Edge(r.Edge) + " be " + move
	case advise.StopLimit:
		return "let the gap to the stop at the " + s.Edge(r.Edge) + " be " + move
	case advise.SwingLimit:
		verb := "let the leaf pass the " + s.Edge(r.Edge)
		if r.Edge == door.FloorSide {
			verb = "let the leaf clear the floor"
		}
		return verb + " by " + move + " as it swings"
	case advise.HingeLimit:
		return "let the hinges be " + by + " out of line"
	case advise.WayLimit:
		return "let the clear way be " + by + " narrower"
	case advise.StilesAlike:
		return "let one stile lose more than the other"
	case advise.TopRail:
		return "let the top rail differ from its neighbour"
	case advise.FrameStays:
		return "let the frame be worked"
	case advise.HingesStay:
		return "let the hinges be worked"
	}
	return "let a strip be glued on"
}
