package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"

	"leafwright/game"
	"leafwright/game/draw"
	"leafwright/game/report"
	"leafwright/game/words"
	"leafwright/geom/judge"
)

var checkCommand = command{
	name:  "check",
	usage: "check JOB [-json] [-svg FILE] [-words UK|AU|US]",
	about: "hangs the job's door and reports how it fits; JOB is a job file, - for standard input",
	run:   check,
}

// check leaves with 0 when all is good, 1 when something is not, 2 on bad input.
func check(_ context.Context, c command, args []string, std std) int {
	flags := flag.NewFlagSet(c.name, flag.ContinueOnError)
	asJSON := flags.Bool("json", false, "print the report as JSON, for a program")
	svg := flags.String("svg", "", "write the drawing to `FILE` as SVG")
	region := flags.String("words", string(words.UK), "whose trade words to use: `UK, AU or US`")
	path, args := fileFirst(flags, args)
	if path != "" {
		args = append(args, path)
	}
	if status, good := c.parse(flags, args, std, "JOB"); !good {
		return status
	}
	if !known(*region) {
		return c.misuse(std, "-words %q is not one of UK, AU and US", *region)
	}
	job, err := readJob(path, std.in)
	if err != nil {
		fmt.Fprintf(std.err, "leafwright check: %s cannot be used as it is:\n%v\n", path, err)
		return misused
	}
	r := report.Of(job)
	speaker := words.Speaker{Lexicon: words.For(words.Region(*region))}
	if *svg != "" {
		if err := os.WriteFile(*svg, drawing(r), 0o644); err != nil {
			fmt.Fprintf(std.err, "leafwright check: the drawing was not written: %v\n", err)
			return misused
		}
	}
	text := []byte(r.Text(speaker))
	if *asJSON {
		if text, err = r.JSON(speaker); err != nil {
			return c.fail(std, err)
		}
	}
	if _, err := std.out.Write(text); err != nil {
		return c.fail(std, err)
	}
	if r.Worst() != judge.Good {
		return failed
	}
	return ok
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

// mostBytes is more than any job file may hold, so that a wrong file, or one
// without an end, is not read to the end.
const mostBytes = 4 << 20

func readJob(path string, in io.Reader) (game.Job, error) {
	if path != "-" {
		f, err := os.Open(path)
		if err != nil {
			var p *os.PathError
			if errors.As(err, &p) {
				err = p.Err
			}
			return game.Job{}, fmt.Errorf("it could not be opened: %w", err)
		}
		defer f.Close()
		in = f
	}
	data, err := io.ReadAll(io.LimitReader(in, mostBytes))
	if err != nil {
		return game.Job{}, fmt.Errorf("it could not be read: %w", err)
	}
	return game.Parse(data)
}

// drawing draws elevation and plan side by side on a landscape A4 sheet.
func drawing(r report.Report) []byte {
	var l draw.List
	var s draw.Scene
	s.Draw(&l, r.Fit, &r.Job.Door, &r.Job.Anatomy, &r.Job.Wanted, draw.View{
		Width: 1080, Height: 760, Swing: r.Fit.Closed, Still: true, RightHung: r.Job.Hand == game.Right,
	})
	return l.SVG(&draw.Print)
}
