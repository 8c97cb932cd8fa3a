package hardware

import (
	"strconv"
	"strings"

	"leafwright/game"
	"leafwright/game/words"
	"leafwright/geom/door"
	"leafwright/geom/timber"
	"leafwright/geom/trim"
)

// Lines says the places, what is done about each and what to mind, a paragraph each.
func (r *Repairs) Lines(s *words.Speaker) (lines []string) {
	for i := range r.Places {
		lines = append(lines, "Bad place "+strconv.Itoa(i+1)+": "+r.Places[i].line(s))
		for _, m := range r.Places[i].mind(s) {
			lines = append(lines, "Mind: "+m)
		}
	}
	if r.Filler.Filler > 0 {
		lines = append(lines, "Filler in all "+atLeast(r.Filler.Filler/1000, 5)+" cm³: "+batches(r.Batches, r.Each)+
			" Filler and foam carry nothing and hold no screw; they keep out damp and take paint.")
	}
	return lines
}

// batches says how filler is mixed.
func batches(n int, each float64) string {
	if n <= 1 {
		return "one batch, within a pot life of " + strconv.Itoa(PotLife) + " minutes (from memory: the tin says better)."
	}
	return number(n) + " batches of " + atLeast(each/1000, 5) + " cm³, each spread within a pot life of " + strconv.Itoa(PotLife) + " minutes (from memory: the tin says better)."
}

func (p *Place) line(s *words.Speaker) string {
	said := damage(p.Void.What) + " " + opening(s, &p.Void) + ": "
	switch p.Cure {
	case timber.CutItOut:
		said += "cut it out to sound wood and let in a piece of the same timber, the grain along the old, " + sizes(s, p.Is.Up.Length(), p.Is.Across.Length(), p.Is.Depth)
	case timber.FoamIt:
		said += "foam it, cut the foam back and fill over it, " + long(s, timber.Skin) + " thick (common practice): " + atLeast(p.Foam/1000, 5) + " cm³ of foam and " + atLeast(p.Filler.Filler/1000, 5) + " of filler"
	case timber.FillIt:
		said += "fill it, " + atLeast(p.Filler.Filler/1000, 5) + " cm³"
	default:
		said += "leave it"
	}
	if p.Void.Do == "" {
		return said + "."
	}
	return said + ", as the job says."
}

func damage(d game.Damage) string {
	switch d {
	case game.Bored:
		return "borer's runs"
	case game.Rotten:
		return "rot"
	case game.OldMortice:
		return "an old mortice"
	case game.OldFiller:
		return "old filler"
	}
	return "a hole"
}

// opening says where a place is and how big.
func opening(s *words.Speaker, v *game.Void) string {
	span := func(from, to float64) string {
		return strings.TrimSuffix(place(s, from), " mm") + " to " + place(s, to)
	}
	switch v.At {
	case "top", "foot":
		return "in the " + string(v.At) + ", " + span(v.From, v.To) + " from the hanging edge, " + long(s, v.Wide) + " of its thickness, " + long(s, v.Depth) + " deep"
	case "hanging", "closing":
		return "in the " + string(v.At) + " edge, " + span(v.From, v.To) + " up, " + long(s, v.Wide) + " of its thickness, " + long(s, v.Depth) + " deep"
	}
	return "in the " + string(v.At) + " face, " + span(v.From, v.To) + " up and " + span(v.Off, v.Off+v.Wide) + " from the hanging edge, " + long(s, v.Depth) + " deep"
}

// mind says what to mind at a place.
func (p *Place) mind(s *words.Speaker) (out []string) {
	pieced := p.Cure == timber.CutItOut
	if p.Repair.Treat {
		what := "the beetles are"
		if p.Void.What == game.Rotten {
			what = "the damp is stopped and the wood is"
		}
		out = append(out, what+" treated first, and all is dry, before it is closed up.")
	}
	for _, h := range p.Hinges {
		name := hingeName(s, h.Hinge)
		if pieced {
			out = append(out, "the piece lies under "+name+": its grain runs along the stile's and its glue is hard before a screw is driven.")
			continue
		}
		out = append(out, count(h.Screw, "screw", "screws")+" of "+name+" in "+strconv.Itoa(screws)+" "+stand(h.Screw)+" in it, and filler holds no screw: cut it out and piece it, or move the hinge.")
	}
	for _, m := range p.Repair.Meets {
		switch {
		case m.Part == trim.Tenon && pieced:
			out = append(out, "the joint of the "+railName(s, m.Index)+" lies in it: cut no tenon away; if it is gone, the joint is made anew first.")
		case m.Part == trim.Tenon:
			out = append(out, "the joint of the "+railName(s, m.Index)+" lies in it, and filler makes no joint good: cut it out and piece it.")
		case m.Part == trim.LockCase && !pieced:
			out = append(out, "the lock's case stands in it: its screws want timber.")
		}
	}
	if !pieced && p.Repair.Lost > 1.0/3 {
		out = append(out, "more than a third of the member's width is gone there: filled, it carries nothing.")
	}
	for _, c := range p.Cuts {
		move := "move " + strconv.Itoa(c.Step+1)
		switch {
		case c.Glues && pieced:
			out = append(out, move+" glues a strip over it: piece it first, and plane it flush.")
		case c.Glues:
			out = append(out, move+" glues a strip over it, and glue holds on no filler: dowel clear of it, or piece it first.")
		case c.Away:
			out = append(out, move+" takes it away whole: do that first, and this may be saved.")
		case pieced:
			out = append(out, move+" cuts into it: piece it first, and plane both together.")
		default:
			out = append(out, move+" cuts into it: filler breaks out at an edge, so piece it there, or fill it after the cut.")
		}
	}
	return out
}

func stand(n int) string {
	if n == 1 {
		return "stands"
	}
	return "stand"
}

// hingeName names a hinge of the speaker's door, from 0 the top one.
func hingeName(s *words.Speaker, i int) string {
	switch {
	case i == 0:
		return "the top hinge"
	case i == s.Hinges-1:
		return "the bottom hinge"
	case s.Hinges == 3:
		return "the middle hinge"
	}
	return "hinge " + strconv.Itoa(i+1)
}

// railName names a rail from the foot up.
func railName(s *words.Speaker, i int) string {
	if i >= 0 && i < len(s.Rails) && s.Rails[i] != "" {
		return s.Rails[i] + " rail"
	}
	return "rail " + strconv.Itoa(i+1) + " from the foot"
}

// Cautions gives what to take care of in the job, as [game.Cautions] does but sharper: by
// what the leaf weighs, what its screws hold, what it has lost, and the clear way before
// and after the steps.
func Cautions(job *game.Job, before, after *game.Tried, steps []trim.Step, region timber.Region) []game.Caution {
	f := game.FactsOf(job)
	game.Might(job, &f)
	leaf := LeafIn(job, after, region)
	f.Mass = max(f.Mass, leaf.Most) // it is taken down as it was, and hung as it is
	f.HoldsNot = leaf.There > 0 && !leaf.Sound.Enough
	f.Cedar = leaf.Known && leaf.Species.Name == cedar
	f.Lost = RepairsOf(job, before, after, nil).lost()
	was, is := game.ClearWay(&job.Door), game.ClearWay(&after.Door)
	if !f.Unsaid || is < was-0.5 {
		f.ClearWas, f.ClearIs = was, is
	}
	for i := range steps {
		s := &steps[i]
		if spec := trim.SpecOf(s.Move.Kind); s.Move.Off || s.Why != nil || spec == nil || spec.Trade == trim.TheFrame || s.Done.Most <= 0 {
			continue
		}
		c := before.Door.Leaf.Corners(0)
		edge := c.HangingHead.Y - c.HangingFoot.Y
		if s.Move.Edge == door.HeadSide || s.Move.Edge == door.FloorSide {
			edge = before.Door.Leaf.Width
		}
		f.Disturbed += timber.Disturbs(edge, s.Done.Most)
	}
	return game.Said(&f)
}

// cedar is the timber whose dust has a limit of its own.
const cedar = "western redcedar"
