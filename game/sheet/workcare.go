package sheet

import (
	"leafwright/game/words"
	"slices"
	"strings"

	"leafwright/game"
	"leafwright/game/draw"
	"leafwright/game/hardware"
	"leafwright/geom/timber"
)

// care is a caution that stands on the sheet once in full, and beside the moves that call
// for it by its name.
type care struct{ name, text string }

// careName names a caution in a word or two.
func careName(c timber.Caution) string {
	switch c {
	case timber.LeadBanned, timber.LeadLikely, timber.LeadPossible, timber.LeadRegulated:
		return "lead"
	case timber.BadScrews:
		return "hinge screws"
	case timber.Structure:
		return "strength"
	case timber.LiveBorer:
		return "beetles and rot"
	case timber.LowGlazing, timber.GlassWork:
		return "glass"
	case timber.ClearNarrow:
		return "clear way"
	case timber.HighStep:
		return "threshold"
	case timber.HeavyLeaf:
		return "lifting"
	case timber.CedarDust, timber.WoodDust:
		return "dust"
	case timber.HiddenMetal:
		return "hidden metal"
	}
	return string(c)
}

// takeCare sets in full what to take care of in the moves and the repairs that are done.
func (b *bench) takeCare() {
	p := b.plan
	moves, said := map[timber.Caution]game.Caution{}, map[timber.Caution]bool{}
	var codes []timber.Caution // as the moves call for them
	for i := range p.steps {
		if !done(&p.steps[i]) {
			continue
		}
		for _, c := range game.StepCautions(b.a.Job, &p.steps[i].Move) {
			if _, there := moves[c.About]; !there {
				codes = append(codes, c.About)
			}
			moves[c.About] = c
		}
	}
	add := func(c *game.Caution) {
		said[c.About] = true
		text := c.Text
		if c.About != timber.HiddenMetal { // which is one's own to look to
			text += " " + c.Ask
		}
		b.cares = append(b.cares, care{careName(c.About), text})
	}
	heavy := false
	for _, c := range hardware.Cautions(b.a.Job, &p.before, &p.after, p.steps, hardware.Region(b.s.Lexicon)) {
		_, called := moves[c.About]
		heavy = heavy || c.About == timber.HeavyLeaf
		switch c.About {
		case timber.Solvents, timber.Structure, timber.LiveBorer, timber.BadScrews, timber.EscapeRoute, timber.LeadRegulated: // of the repairs, the paint, the place
			called = true
		case timber.HeavyLeaf:
			called = p.down()
		}
		if called {
			add(&c)
		}
	}
	for _, code := range codes { // what the whole job's leave out; the leaf is weighed closer there
		if c := moves[code]; !said[code] && (code != timber.HeavyLeaf || heavy) {
			add(&c)
		}
	}
	if len(b.cares) == 0 {
		return
	}
	b.need(3*lead*headStyle.size + 3*lead*b.note.size)
	b.heading("Take care")
	for _, c := range b.cares {
		b.runIn(words.Capital(c.name)+":", c.text, b.note)
	}
}

// cautions names beside a move those it calls for.
func (b *bench) cautions(i int) {
	var names []string
	for _, c := range game.StepCautions(b.a.Job, &b.plan.steps[i].Move) {
		name := careName(c.About)
		for _, k := range b.cares {
			if k.name == name && !slices.Contains(names, name) {
				names = append(names, name)
			}
		}
	}
	if len(names) > 0 {
		b.hung("!", "Take care: "+strings.Join(names, ", ")+".", b.note, 4*MM)
	}
}

// notes rules what is left of the last column for a pencil.
func (b *bench) notes() {
	const apart, least = 8 * MM, 3
	b.space(3 * MM)
	room := b.foot - b.y - lead*headStyle.size
	n := min(int(room/apart), 12)
	if n < least {
		return
	}
	b.heading("Notes")
	for range n {
		b.y += apart
		if b.y > b.foot {
			return
		}
		line(b.l(), draw.Fine, hair, draw.Pt{X: b.left, Y: b.y}, draw.Pt{X: b.right, Y: b.y})
	}
}
