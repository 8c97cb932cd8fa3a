package main

import (
	"context"
	"flag"

	"leafwright/game/report"
	"leafwright/game/words"
)

var compareCommand = command{
	name:  "compare",
	usage: "compare JOB [-json] [-units mm|in] [-words UK|AU|US]",
	about: "sets the job's door as found, as it stands and after each option side by side",
	run:   compare,
}

// compare leaves with 0, with 2 on bad input.
func compare(_ context.Context, c command, args []string, std std) int {
	flags := flag.NewFlagSet(c.name, flag.ContinueOnError)
	asJSON := flags.Bool("json", false, "print the comparison as JSON, for a program")
	region := flags.String("words", string(words.UK), "whose trade words to use: `UK, AU or US`")
	units := unitsFlag(flags)
	path, args := fileFirst(flags, args)
	if status, good := c.parseJob(flags, path, args, std, true); !good {
		return status
	}
	if !known(*region) {
		return c.misuse(std, "-words %q is not one of UK, AU and US", *region)
	}
	if why := wrongUnits(*units); why != "" {
		return c.misuse(std, "%s", why)
	}
	job, good := c.load(path, "", std)
	if !good {
		return misused
	}
	cmp := report.Compare(job)
	speaker := speakerOf(&job, *region, *units)
	if !c.say(std, "the comparison", cmp, speaker, *asJSON) {
		return misused
	}
	return ok
}
