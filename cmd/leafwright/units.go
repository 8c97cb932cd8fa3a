package main

import (
	"flag"
	"fmt"

	"leafwright/game"
	"leafwright/game/words"
)

// unitsFlag gives a command the flag for the units it speaks in; what is not said is the
// job's own.
func unitsFlag(flags *flag.FlagSet) *string {
	return flags.String("units", "", "units to speak in: `mm or in`; else inches where the job was typed in them, or mm")
}

// wrongUnits tells what is wrong with units, if anything.
func wrongUnits(units string) (why string) {
	switch units {
	case "", "mm", "in":
		return ""
	}
	return fmt.Sprintf("-units %q is not one of mm and in", units)
}

// speakerOf gives who speaks of a job in a region's words and in units, the job's own
// where none are said.
func speakerOf(job *game.Job, region, units string) words.Speaker {
	s := words.Speaker{Lexicon: words.For(words.Region(region))}
	if units == "in" || units == "" && game.ReadInInches(job) {
		s.Length, s.Place = words.Inches, words.InchPlace
	}
	return s
}
