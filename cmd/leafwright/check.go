package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"leafwright/game"
	"leafwright/game/draw"
	"leafwright/game/report"
	"leafwright/game/words"
)

var checkCommand = command{
	name:  "check",
	usage: "check [JOB] [-option NAME] [-readings FILE] [-json] [-svg FILE] [-units mm|in] [-words UK|AU|US]",
	about: "hangs the job's door as it stands, or after an option, and reports how it fits; JOB is a job file, - for standard input",
	run:   check,
}

// check leaves with 0 when all is good, 1 when something is not or readings do not
// fit the others, 2 on bad input.
func check(_ context.Context, c command, args []string, std std) int {
	flags := flag.NewFlagSet(c.name, flag.ContinueOnError)
	asJSON := flags.Bool("json", false, "print the report as JSON, for a program")
	svg := flags.String("svg", "", "write the drawing to `FILE` as SVG")
	region := flags.String("words", string(words.UK), "whose trade words to use: `UK, AU or US`")
	units := unitsFlag(flags)
	option := flags.String("option", "", "report the door after the option of that `NAME` or number")
	table := flags.String("readings", "", "add the readings in `FILE`, a table of text; without JOB the door is theirs alone")
	path, args := fileFirst(flags, args)
	if status, good := c.parseJob(flags, path, args, std, false); !good {
		return status
	}
	if path == "" && *table == "" {
		return c.misuse(std, "JOB is missing")
	}
	if !known(*region) {
		return c.misuse(std, "-words %q is not one of UK, AU and US", *region)
	}
	if why := wrongUnits(*units); why != "" {
		return c.misuse(std, "%s", why)
	}
	job, good := c.load(path, *table, std)
	if !good {
		return misused
	}
	tried, status, good := c.tried(std, job, *option)
	if !good {
		return status
	}
	r := report.OfOption(job, tried)
	speaker := speakerOf(&job, *region, *units)
	if *svg != "" {
		if err := os.WriteFile(*svg, drawing(r), 0o644); err != nil {
			fmt.Fprintf(std.err, "leafwright check: the drawing was not written: %v\n", err)
			return misused
		}
	}
	if !c.say(std, "the report", r, speaker, *asJSON) {
		return misused // not the 1 of a door that binds
	}
	if !r.AllGood() {
		return failed
	}
	return ok
}

// tried gives the place of the option of a name, the door as it stands where none is named;
// not good when it has told that there is none.
func (c command) tried(std std, job game.Job, name string) (option, status int, good bool) {
	if name == "" {
		return game.AsItStands, ok, true
	}
	if option, good = job.OptionNamed(name); !good {
		return option, c.noOption(std, job, name), false
	}
	return option, ok, true
}

// noOption says which options there are.
func (c command) noOption(std std, job game.Job, name string) int {
	names := make([]string, len(job.Options))
	for i := range names {
		names[i] = fmt.Sprintf("%d, %s", i+1, job.OptionName(i))
	}
	if len(names) == 0 {
		return c.misuse(std, "-option %q: this job has no options", name)
	}
	return c.misuse(std, "-option %q: this job has no such option; it has %s", name, strings.Join(names, "; "))
}

// load gives the job of a file and of a table of readings, either of which may be
// missing; not good when it has told what is wrong with them.
func (c command) load(path, table string, std std) (job game.Job, good bool) {
	good = true
	refuse := func(path, why string, err error) {
		fmt.Fprintf(std.err, "leafwright %s: %s %s:\n%v\n", c.name, path, why, err)
		good = false
	}
	var err error
	if path != "" {
		if job, err = readJob(path, std.in); err != nil {
			refuse(path, "cannot be used as it is", err)
		}
	} else {
		job = game.Unmeasured(game.Blank(762, 1981, 40))
		job.Name = strings.TrimSuffix(filepath.Base(table), filepath.Ext(table))
	}
	if table != "" {
		readings, err := readReadings(table)
		if err != nil {
			refuse(table, "cannot be used as it is", err)
		} else if good {
			if job, err = job.WithReadings(readings); err != nil {
				refuse(table, "cannot be added to the job", err)
			}
		}
	}
	if !good {
		return job, false
	}
	if _, _, err := job.Shapes(); err != nil {
		if path == "" {
			path = table
		}
		refuse(path, "gives no door that can be hung", err)
	}
	return job, good
}

// fileFirst takes the job's name out of the arguments, so that it may stand
// before the flags as well as after them.
func fileFirst(flags *flag.FlagSet, args []string) (path string, rest []string) {
	for i := 0; i < len(args); i++ {
		a := args[i]
		if a == "-" || a == "" || a[0] != '-' {
			return a, append(append([]string(nil), args[:i]...), args[i+1:]...)
		}
		name := a[1:]
		if name != "" && name[0] == '-' {
			name = name[1:]
		}
		if f := flags.Lookup(name); f != nil {
			if b, ok := f.Value.(interface{ IsBoolFlag() bool }); !ok || !b.IsBoolFlag() {
				i++ // its value
			}
		}
	}
	return "", args
}

func known(region string) bool {
	for _, r := range words.Regions {
		if string(r) == region {
			return true
		}
	}
	return false
}

func readJob(path string, in io.Reader) (game.Job, error) {
	data, err := readFile(path, in)
	if err != nil {
		return game.Job{}, err
	}
	return game.Parse(data)
}

func readReadings(path string) ([]game.Reading, error) {
	data, err := readFile(path, nil)
	if err != nil {
		return nil, err
	}
	return game.ParseReadings(data)
}

// readFile reads a file, or in where the path is - and there is one.
func readFile(path string, in io.Reader) ([]byte, error) {
	if path != "-" || in == nil {
		f, err := os.Open(path)
		if err != nil {
			var p *os.PathError
			if errors.As(err, &p) {
				err = p.Err
			}
			return nil, fmt.Errorf("it could not be opened: %w", err)
		}
		defer f.Close()
		in = f
	}
	data, err := io.ReadAll(io.LimitReader(in, game.Largest+1))
	if err != nil {
		return nil, fmt.Errorf("it could not be read: %w", err)
	}
	return data, nil
}

// drawing draws elevation and plan side by side on a landscape A4 sheet.
func drawing(r report.Report) []byte {
	var l draw.List
	var s draw.Scene
	s.Draw(&l, r.Fit, &r.Tried.Door, &r.Tried.Anatomy, &r.Wanted, draw.View{
		Width: 1080, Height: 760, Swing: r.Fit.Closed, Still: true, RightHung: r.Job.Hand == game.Right,
	})
	return l.SVG(&draw.Print)
}
