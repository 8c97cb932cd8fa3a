package words

import (
	"math"
	"strings"

	"leafwright/game/measure"
	"leafwright/geom/advise"
	"leafwright/geom/door"
)

// Conflict says why there is no plan: which limits contradict each other, then the
// least that would do.
func (s *Speaker) Conflict(c *advise.Conflict) (out []string) {
	for i := range c.Oversize {
		out = append(out, s.oversize(&c.Oversize[i]))
	}
	if len(out) > 0 {
		return out
	}
	n := len(c.Limits)
	switch {
	case n == 0 && c.Care != nil:
		return []string{"The gaps could be had, but not from the timber there is. " + s.Care(c.Care) + "."}
	case n == 0 && len(c.Missed) > 0:
		missed := make([]string, len(c.Missed))
		for i := range c.Missed {
			missed[i] = s.missed(&c.Missed[i])
		}
		return []string{"Amounts that can be worked come near and no nearer: of what was tried the best leaves " + Listed(missed) + "."}
	case n == 0:
		return []string{"Nothing that planing, packing and moving hinges and stops can do was found to bring the leaf into this opening without binding."}
	case n == 1:
		out = append(out, Capital(s.limit(c.Limits[0].Limit))+" cannot be had by planing, packing and moving hinges and stops, unless something binds.")
	default:
		names := make([]string, n)
		for i := range c.Limits {
			names[i] = s.limit(c.Limits[i].Limit)
		}
		out = append(out, "These cannot all be had: "+Listed(names)+".")
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
	by := s.over(r)
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

// oversize says by how much a leaf is too big for anything to help.
func (s *Speaker) oversize(o *advise.Oversize) string {
	big, edges := "wide", "both stiles"
	if o.Upright {
		big, edges = "high", "top and foot"
	}
	said := "The leaf is " + s.measured(o.By) + " too " + big + " for the opening and the least gaps wanted"
	if o.Care == nil {
		return said + ": more than the " + s.measured(o.May) + " that might come off " + edges + ". A leaf so much too big is made anew."
	}
	return said + ": no more than " + s.measured(o.May) + " may come off " + edges + ". " + s.Care(o.Care) + "."
}

// missed says by how much a limit is missed.
func (s *Speaker) missed(r *advise.Relax) string {
	by := s.over(r) + " under the least wanted"
	if r.Upper {
		by = s.over(r) + " over the most wanted"
	}
	switch r.Sort {
	case advise.StopLimit:
		return "the gap to the stop at the " + s.Edge(r.Edge) + " " + by
	case advise.SwingLimit:
		return "what is left " + s.past(r.Edge) + " " + by
	}
	return "the gap at the " + s.Edge(r.Edge) + " " + by
}

// over writes by how much a limit gives way, never too little.
func (s *Speaker) over(r *advise.Relax) string {
	step := 0.1
	if s.Length != nil {
		step = measure.PerInch / 64
	}
	const none = 1e-6 // mm: what sums leave
	return s.amount(math.Ceil((r.By-none)/step) * step)
}

// PlanIf says what must give way for a plan, of one found under limits that did; empty
// for any other.
func (s *Speaker) PlanIf(p *advise.Plan) string {
	if len(p.Given) == 0 {
		return ""
	}
	each := make([]string, len(p.Given))
	for i := range p.Given {
		each[i] = s.relaxed(&p.Given[i])
	}
	return "Only if this may give way: " + strings.Join(each, "; ") + "."
}
