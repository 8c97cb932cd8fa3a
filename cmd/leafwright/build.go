package main

import (
	"context"
	"flag"
	"fmt"

	"leafwright/cmd/leafwright/internal/site"
)

var buildCommand = command{
	name:  "build",
	usage: "build -o DIR [-quick]",
	about: "makes the static page in DIR, for any web server",
	run:   build,
}

func build(ctx context.Context, c command, args []string, std std) int {
	flags := flag.NewFlagSet(c.name, flag.ContinueOnError)
	dir := flags.String("o", "", "the `folder` to make the page in: new, empty, or holding an earlier page")
	quick := flags.Bool("quick", false, "pack lightly with gzip alone, for trying it out")
	if status, good := c.parse(flags, args, std); !good {
		return status
	}
	if *dir == "" {
		return c.misuse(std, "-o DIR is missing: where shall the page go?")
	}
	files, err := makePage(ctx, *quick, std)
	if err != nil {
		return c.fail(std, err)
	}
	if err := files.Write(*dir); err != nil {
		return c.fail(std, err)
	}
	fmt.Fprintf(std.out, "The page is in %s: %d files, %.2f MB", *dir, len(files), float64(files.Size(""))/1e6)
	fmt.Fprintf(std.out, ", %.2f MB with gzip", float64(files.Size(".gz"))/1e6)
	if !*quick {
		fmt.Fprintf(std.out, ", %.2f MB with brotli", float64(files.Size(".br"))/1e6)
	}
	fmt.Fprintln(std.out, ".")
	return ok
}

// makePage makes the page from the checkout the command runs in, saying each step.
func makePage(ctx context.Context, quick bool, std std) (site.Files, error) {
	checkout, err := site.Checkout(".")
	if err != nil {
		return nil, err
	}
	say := func(what string) { fmt.Fprintf(std.out, "%s ...\n", what) }
	return site.Make(ctx, site.Options{Checkout: checkout, Quick: quick, Say: say})
}
