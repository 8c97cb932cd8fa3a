//go:build js

// The page's second program: it works advice out in a worker of the browser's, so that
// the drawing goes on meanwhile.
//
// It is asked by a message with the fields
//
//	id      any number; it comes back with the answer
//	job     the text of a job file
//	prefer  an [advise.Preference]
//	hinges, strip, stiles, rail  whether hinges stay, no strip is put on, both stiles
//	        lose alike, the top rail becomes like its neighbour's
//	inches  whether lengths are written and amounts chosen in inches
//	words   a [words.Region]
//
// and answers with
//
//	id
//	fault   why the job could not be read, else empty
//	said    sentences: what came of it, and where limits contradict each other which
//	plans   each with title, lines (what it costs), moves and stages, all sentences,
//	        and option, the text that [game.Form.AddOption] takes
//	trade   pairs of timber lost, cm³, and widest less narrowest gap, mm, by rising
//	        timber; traded says them in a sentence, empty where there is nothing to choose
//
// A question that comes before the last one's answer takes its place, and that one gets
// no answer.
package main

import (
	"syscall/js"
	"time"

	"leafwright/game"
	"leafwright/game/beside"
	"leafwright/game/words"
	"leafwright/geom/advise"
)

var self = js.Global()

func main() {
	a := &adviser{wake: make(chan struct{}, 1)}
	self.Call("take", js.FuncOf(func(_ js.Value, args []js.Value) any {
		a.asked = args[0].Get("data")
		select {
		case a.wake <- struct{}{}:
		default: // it has not looked since the last one
		}
		return nil
	}))
	for range a.wake {
		for a.asked.Truthy() {
			q := a.asked
			a.asked = js.Undefined()
			if answer := a.answer(q); answer != nil {
				answer["id"] = q.Get("id")
				self.Call("postMessage", answer)
			}
		}
	}
}

type adviser struct {
	asked js.Value // what is to be answered next, if anything
	wake  chan struct{}
}

// slice is how long the program works before it looks whether something else is asked.
const slice = 12 * time.Millisecond

// answer works a question out; nil where another one came meanwhile.
func (a *adviser) answer(q js.Value) map[string]any {
	job, err := game.Parse([]byte(q.Get("job").String()))
	if err != nil {
		return map[string]any{"fault": err.Error()}
	}
	inches := q.Get("inches").Bool()
	work := game.StartAdvice(&job, game.AdviceWishes{
		Prefer:      advise.Preference(q.Get("prefer").String()),
		KeepHinges:  q.Get("hinges").Bool(),
		NoStrip:     q.Get("strip").Bool(),
		StilesAlike: q.Get("stiles").Bool(),
		TopRail:     q.Get("rail").Bool(),
		Inches:      inches,
	})
	for looked := time.Now(); !work.Step(); {
		if time.Since(looked) < slice {
			continue
		}
		time.Sleep(time.Millisecond) // the browser brings messages only while the program rests
		if a.asked.Truthy() {
			return nil
		}
		looked = time.Now()
	}
	advice := work.Advice()
	say := words.Speaker{Lexicon: words.For(words.Region(q.Get("words").String())), Hinges: job.HingesAsked()}
	say.Rails = beside.RailNames(&job.Anatomy)
	if inches {
		say.Length, say.Place = words.Inches, words.InchPlace
	}
	return told(&job, &advice, &say)
}

// told puts advice into words.
func told(job *game.Job, advice *advise.Advice, say *words.Speaker) map[string]any {
	said := []any{say.AdviceHeadline(advice)}
	if advice.Conflict != nil {
		said = append(said, texts(say.Conflict(advice.Conflict))...)
	}
	plans := make([]any, len(advice.Plans))
	for i := range advice.Plans {
		p := &advice.Plans[i]
		title := say.PlanTitle(p)
		lines := []any{say.PlanCost(p)}
		if sure := say.PlanSure(p, job.Survey != nil); sure != "" {
			lines = append(lines, sure)
		}
		moves := make([]any, len(p.Moves))
		for k := range p.Moves {
			moves[k] = say.PlanMove(p, k, advice)
		}
		plans[i] = map[string]any{
			"title": title, "lines": lines, "moves": moves, "stages": texts(say.PlanStages(p)),
			"option": game.OptionText(game.OptionOf(p, title)),
		}
	}
	trade := make([]any, 0, 2*len(advice.Trade))
	for _, t := range advice.Trade {
		trade = append(trade, t.Timber, t.Uneven)
	}
	return map[string]any{"fault": "", "said": said, "plans": plans, "trade": trade, "traded": say.Trade(advice.Trade)}
}

func texts(all []string) []any {
	out := make([]any, len(all))
	for i, s := range all {
		out[i] = s
	}
	return out
}
