//go:build js

package main

import (
	"syscall/js"
	"time"

	"leafwright/game"
	"leafwright/game/beside"
	"leafwright/game/hardware"
	"leafwright/game/words"
	"leafwright/geom/advise"
)

// advice is asked with
//
//	prefer  an [advise.Preference]
//	hinges, strip, stiles, rail  whether hinges stay, no strip is put on, both stiles
//	        lose alike, the top rail becomes like its neighbour's
//
// and answers with
//
//	said    sentences: what came of it, and where limits contradict each other which
//	plans   each with title, lines (what it costs), then (how the door hangs after it),
//	        cares (what its moves bring that is to be minded), moves and stages, all
//	        sentences, and option, the text that [game.Form.AddOption] takes
//	trade   pairs of timber lost, cm³, and widest less narrowest gap, mm, by rising
//	        timber; traded says them in a sentence, empty where there is nothing to choose
func (c *clerk) advice(q js.Value, job *game.Job) map[string]any {
	work := game.StartAdvice(job, game.AdviceWishes{
		Prefer:      advise.Preference(q.Get("prefer").String()),
		KeepHinges:  q.Get("hinges").Bool(),
		NoStrip:     q.Get("strip").Bool(),
		StilesAlike: q.Get("stiles").Bool(),
		TopRail:     q.Get("rail").Bool(),
		Inches:      q.Get("inches").Bool(),
	})
	if !c.finish(q, work) {
		return nil
	}
	advice := work.Advice()
	return advised(job, &advice, speaker(q, job))
}

// finish works advice out to its end, and gives up, not done, when another question of
// the same want comes meanwhile.
func (c *clerk) finish(q js.Value, work *game.AdviceWork) (done bool) {
	for looked := time.Now(); !work.Step(); {
		if time.Since(looked) < slice {
			continue
		}
		rest()
		if c.outdated(q) {
			return false
		}
		looked = time.Now()
	}
	return true
}

// plansOf gives what the advice knows of a job where nothing is preferred or forbidden: of
// the job asked for last at once, so that another paper need not wait for it again.
func (c *clerk) plansOf(q js.Value, job *game.Job) (plans []advise.Plan, done bool) {
	text, inches := q.Get("job").String(), q.Get("inches").Bool()
	if text != c.planned.job || inches != c.planned.inches {
		work := game.StartAdvice(job, game.AdviceWishes{Inches: inches})
		if !c.finish(q, work) {
			return nil, false
		}
		c.planned.job, c.planned.inches, c.planned.plans = text, inches, work.Advice().Plans
	}
	return c.planned.plans, true
}

// advised puts advice into words.
func advised(job *game.Job, advice *advise.Advice, say *words.Speaker) map[string]any {
	said := []any{say.AdviceHeadline(advice)}
	if stands := job.Stands(); advice.Refused == nil {
		if year := hardware.Unallowed(say, job, &stands); year != "" {
			said = append(said, year)
		}
		today := job.WantedToday(&stands)
		if swings := beside.Swings(say, &stands, &today); swings != "" {
			said = append(said, swings)
		}
	}
	if advice.Conflict != nil {
		said = append(said, texts(say.Conflict(advice.Conflict))...)
	}
	found := append(advice.Plans[:len(advice.Plans):len(advice.Plans)], advice.Near...)
	if advice.Conflict != nil {
		found = advice.Conflict.Plans
	}
	plans := make([]any, len(found))
	for i := range found {
		p := &found[i]
		title := say.PlanTitle(p)
		lines := []any{say.PlanCost(p)}
		if given := say.PlanIf(p); given != "" {
			lines = []any{given, lines[0]}
		}
		if sure := say.PlanSure(p, job.Survey != nil); sure != "" {
			lines = append(lines, sure)
		}
		option := game.OptionOf(p, title)
		moves := make([]any, len(p.Moves))
		for k := range p.Moves {
			moves[k] = say.PlanMove(p, k, advice)
		}
		plans[i] = map[string]any{
			"title": title, "lines": lines, "then": words.PlanThen(say, p, game.FindingsAfter(job, option)),
			"cares": texts(say.PlanCares(p)), "moves": moves, "stages": texts(say.PlanStages(p)),
			"option": game.OptionText(option),
		}
	}
	trade := make([]any, 0, 2*len(advice.Trade))
	for _, t := range advice.Trade {
		trade = append(trade, t.Timber, t.Uneven)
	}
	return map[string]any{"fault": "", "said": said, "plans": plans, "trade": trade, "traded": say.Trade(advice.Trade)}
}
