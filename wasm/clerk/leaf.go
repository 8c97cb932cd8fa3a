//go:build js

package main

import (
	"syscall/js"

	"leafwright/game"
	"leafwright/game/hardware"
	"leafwright/geom/trim"
)

// leaf is asked with
//
//	shown  the door: an option's place in the job, −1 as it stands, −2 as found
//
// and answers with parts, each with a title, or none, its lines, and as what they stand:
// "ol" for steps, "ul" for items, empty for paragraphs.
func (c *clerk) leaf(q js.Value, job *game.Job) map[string]any {
	say := speaker(q, job)
	region := hardware.Region(say.Lexicon)
	after, before, done := shown(q, job), job.Found(), []trim.Step(nil)
	of, i := "", q.Get("shown").Int()
	switch {
	case i >= 0:
		before, done = job.Stands(), after.Steps
	case i != asFound && len(after.Steps) > 0:
		of, done = " of what was done for keeps", after.Steps
	}

	var parts []any
	part := func(title, as string, lines ...string) {
		if len(lines) > 0 {
			parts = append(parts, map[string]any{"title": title, "as": as, "lines": texts(lines)})
		}
	}
	if game.Rated(job) {
		part("Weight, hinges and work", "", hardware.RatedLeaf)
		return map[string]any{"fault": "", "parts": parts}
	}
	leaf := hardware.LeafIn(job, &after, region)
	part("Weight, hinges and screws", "", leaf.Lines(say)...)
	hang := hardware.HangOf(&before, &after)
	part("Hanging it", "", hang.Lines(say)...)
	if places := hardware.RepairsOf(job, &before, &after, done); places != nil {
		part("Holes, borer and rot", "", places.Lines(say)...)
	}
	part("Gaps to fit to today", "", hardware.Gaps(say, job, &after)...)

	var work *hardware.Work
	if of != "" { // done already, the repairs with it or not
		work = hardware.WorkOf(&before, done)
	} else {
		work = hardware.WorkIn(job, &before, done)
	}
	if work != nil {
		tasks, all := work.Order(say)
		part("The order of work"+of, "ol", tasks...)
		part("", "", all)
		takes, cost := work.Takes(say), hardware.CostOf(work, &job.Prices)
		for k := range takes {
			if cost != nil && cost.Items[k].Each > 0 {
				takes[k] += ": " + cost.Items[k].Say(cost.Currency)
			}
			takes[k] += "."
		}
		if len(takes) == 0 {
			takes = []string{"Nothing but tools."}
		}
		part("What it takes", "ul", takes...)
		if cost != nil {
			part("", "", cost.Lines(say, work)...)
		}
		for k := range work.Strips {
			part("", "ul", append(work.Strips[k].Lines(say), work.Strips[k].Rests())...)
		}
	}
	var cares []string
	for _, c := range hardware.Cautions(job, &before, &after, done, region) {
		cares = append(cares, c.Text+" "+c.Ask+" ("+c.Source+")")
	}
	part("Take care", "ul", cares...)
	return map[string]any{"fault": "", "parts": parts}
}
