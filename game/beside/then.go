package beside

import (
	"leafwright/game/words"
	"leafwright/geom/advise"
	"leafwright/geom/judge"
)

// Then says how the door hangs once a plan is carried out, by its findings then.
func Then(s *words.Speaker, p *advise.Plan, after []judge.Finding) string {
	lead := "Then: "
	if len(p.Stages) > 1 {
		lead = "If the gaps are not read again on the way: "
	}
	return lead + s.Headline(after)
}
