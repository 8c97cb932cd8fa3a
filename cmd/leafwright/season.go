package main

import (
	"context"
	"flag"
	"fmt"
	"strings"

	"leafwright/game"
	"leafwright/game/hardware"
	"leafwright/game/report"
	"leafwright/game/words"
)

var seasonCommand = command{
	name:  "season",
	usage: "season JOB [-climate NAME] [-room NAME] [-south] [-month NAME] [-meter PERCENT] [-option NAME] [-json] [-units mm|in] [-words UK|AU|US]",
	about: "takes the job's leaf through the year: its closing gap month by month, and the gaps to fit it to today; leaves as check does",
	run:   season,
}

// What a moisture meter may read on a leaf, %.
const (
	meterLeast = 2.0
	meterMost  = 60.0
)

// season leaves with 0 when the closing gap is as wanted in every month, 1 when it is
// not, 2 on bad input.
func season(_ context.Context, c command, args []string, std std) int {
	flags := flag.NewFlagSet(c.name, flag.ContinueOnError)
	asJSON := flags.Bool("json", false, "print the year as JSON, for a program")
	climate := flags.String("climate", "", "the `climate`: "+list(hardware.Climates())+"; else the job's, or maritime")
	room := flags.String("room", "", "the `room`: "+list(hardware.Rooms())+"; else the job's, or heated")
	south := flags.Bool("south", false, "the house stands south of the equator, as the job may say")
	month := flags.String("month", "", "the `month` the door was read in, by its name; else the job's")
	meter := flags.Float64("meter", 0, "what a moisture meter read on the leaf then, in `percent`, beside what the job says it read")
	option := flags.String("option", "", "the leaf after the option of that `NAME` or number")
	region := flags.String("words", string(words.UK), "whose trade words to use: `UK, AU or US`")
	units := unitsFlag(flags)
	path, args := fileFirst(flags, args)
	if status, good := c.parseJob(flags, path, args, std, true); !good {
		return status
	}
	at := hardware.Where{South: *south, Month: -1}
	var wrong []string
	if *climate != "" {
		at.Climate = named(&wrong, "climate", *climate, hardware.Climates())
	}
	if *room != "" {
		at.Room = named(&wrong, "room", *room, hardware.Rooms())
	}
	if *month != "" {
		name := named(&wrong, "month", *month, hardware.Months[:])
		for m := range hardware.Months {
			if hardware.Months[m] == name {
				at.Month = m
			}
		}
	}
	flags.Visit(func(f *flag.Flag) {
		if f.Name != "meter" {
			return
		}
		if at.Meter = *meter; !(at.Meter >= meterLeast && at.Meter <= meterMost) {
			wrong = append(wrong, fmt.Sprintf("-meter %s is not between %.0f and %.0f %%", f.Value, meterLeast, meterMost))
		}
	})
	if !known(*region) {
		wrong = append(wrong, fmt.Sprintf("-words %q is not one of UK, AU and US", *region))
	}
	if why := wrongUnits(*units); why != "" {
		wrong = append(wrong, why)
	}
	if len(wrong) > 0 {
		return c.misuse(std, "%s", strings.Join(wrong, "; "))
	}
	job, good := c.load(path, "", std)
	if !good {
		return misused
	}
	tried, status, good := c.tried(std, job, *option)
	if !good {
		return status
	}
	r := report.SeasonOf(job, tried, saidOf(&job, at))
	speaker := speakerOf(&job, *region, *units)
	if !c.say(std, "the year", &r, speaker, *asJSON) {
		return misused
	}
	if !r.AllGood() {
		return failed
	}
	return ok
}

// saidOf gives what the flags say, the job where they say nothing, and the usual where
// neither does.
func saidOf(job *game.Job, flags hardware.Where) hardware.Where {
	at := game.WhereOf(job)
	if flags.Climate != "" {
		at.Climate = flags.Climate
	}
	if flags.Room != "" {
		at.Room = flags.Room
	}
	at.South = at.South || flags.South
	if flags.Meter > 0 || flags.Month >= 0 {
		at.Month, at.Meter = flags.Month, flags.Meter
	}
	return hardware.Usual(at)
}

// named finds a name whatever its letters' size; where there is no such one it adds
// to what is wrong which there are.
func named[T ~string](wrong *[]string, flag, name string, all []T) (found T) {
	for _, x := range all {
		if strings.EqualFold(string(x), strings.TrimSpace(name)) {
			return x
		}
	}
	*wrong = append(*wrong, fmt.Sprintf("-%s %q is not one of %s", flag, name, list(all)))
	return ""
}

// list writes names with commas, and "and" before the last.
func list[T ~string](all []T) string {
	said := make([]string, len(all))
	for i, x := range all {
		said[i] = string(x)
	}
	last := len(said) - 1
	return strings.Join(said[:last], ", ") + " and " + said[last]
}
