package sheet

import (
	"leafwright/game/words"
	"leafwright/geom/trim"
)

// setting is what a gauge is set to, or how thick a packer is, and what it is for.
type setting struct{ what, of string }

// settings gives every gauge, packer and bevel setting once.
func (b *bench) settings() (all []setting) {
	add := func(what, of string) {
		for i := range all {
			if all[i].what == what {
				all[i].of = all[i].of + "; " + of
				return
			}
		}
		all = append(all, setting{what, of})
	}
	_, fine, _ := b.a.steps()
	for i := range b.plan.steps {
		m := &b.plan.steps[i].Move
		if !done(&b.plan.steps[i]) {
			continue
		}
		of := "move " + number(i+1)
		for k := range b.plan.cuts {
			c := &b.plan.cuts[k]
			if c.step != i || c.stop || c.frame {
				continue
			}
			if first := toStep(c.marks[0].amount, c.round); first > 0 && even(c) {
				add(b.a.length(first, c.round), words.LeafEdge(b.s, c.edge)+", "+of)
			}
		}
		if m.Kind == trim.Ease {
			add(b.a.length(m.First, fine), b.s.Arris+" of the "+words.LeafEdge(b.s, m.Edge)+", both ways, "+of)
		}
		if m.Kind == trim.Bevel {
			add(b.a.length(setback(m, b.plan.before.Door.Leaf.Thickness), fine), "set back, bevel of the "+words.LeafEdge(b.s, m.Edge)+", "+of)
		}
		spec := trim.SpecOf(m.Kind)
		seats, names := b.alike(b.seatsAt(i))
		for k, q := range seats {
			if spec.Trade != trim.TheHinges && q.was != q.is {
				continue // it comes of itself
			}
			switch q.what {
			case leafGain, jambGain, leafPack, jambPack:
				add(b.a.length(q.is, fine), names[k]+", "+q.what.say(b.s)+", "+of)
			}
		}
	}
	for _, p := range b.plan.work.Strips {
		of := "move " + number(p.Step+1)
		add(b.a.length(p.Dowels.LeafGauge, fine), "dowels, on the leaf from the knuckle face, "+of)
		add(b.a.length(p.Dowels.StripGauge, fine), "dowels, on the strip, "+of)
	}
	return all
}

// settingIn is how far what a setting is for is set in behind it.
const settingIn = 17 * MM

func (b *bench) setSettings(all []setting) {
	for _, q := range all {
		b.hung(q.what, q.of+".", b.note, settingIn)
	}
}

func (b *bench) settingHeight(q *setting) float64 {
	return height(q.of+".", b.note, b.width()-settingIn)
}
