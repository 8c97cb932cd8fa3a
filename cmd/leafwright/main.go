// Leafwright hangs a door in its opening and shows where it binds, as a page in
// the browser and on the command line.
package main

import (
	"context"
	"flag"
	"fmt"
	"io"
	"os"
	"os/signal"
	"syscall"
)

// Exit statuses.
const (
	ok      = 0
	failed  = 1 // of check: something binds or is out of tolerance; of advise: no way was found
	misused = 2 // wrong usage or bad input
)

// command is one subcommand. Its run gets the command itself and the arguments
// after its name, and gives the exit status.
type command struct {
	name, usage, about string
	run                func(ctx context.Context, c command, args []string, std std) int
}

// std is where a command reads and writes.
type std struct {
	in       io.Reader
	out, err io.Writer
}

// commands in the order the help lists them.
var commands = []command{
	serveCommand,
	checkCommand,
	compareCommand,
	seasonCommand,
	adviseCommand,
	lessonCommand,
	sheetCommand,
	schemaCommand,
	buildCommand,
}

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	os.Exit(run(ctx, os.Args[1:], std{os.Stdin, os.Stdout, os.Stderr}))
}

// run finds the subcommand; without one the page is served.
func run(ctx context.Context, args []string, std std) int {
	if len(args) == 0 {
		return serveCommand.run(ctx, serveCommand, nil, std)
	}
	switch args[0] {
	case "help", "-h", "-help", "--help":
		help(std.out)
		return ok
	}
	for _, c := range commands {
		if c.name == args[0] {
			return c.run(ctx, c, args[1:], std)
		}
	}
	fmt.Fprintf(std.err, "leafwright: there is no command %q\n\n", args[0])
	help(std.err)
	return misused
}

func help(w io.Writer) {
	fmt.Fprint(w, "Leafwright hangs a door in its opening and shows where it binds.\n\n")
	for _, c := range commands {
		fmt.Fprintf(w, "  leafwright %s\n        %s\n", c.usage, c.about)
	}
	fmt.Fprint(w, "\nWithout a command it serves the page. leafwright COMMAND -h tells a command's options.\n")
}

// parse reads a command's flags and wants exactly the named arguments after
// them. Not ok, the status is the one to leave with.
func (c command) parse(flags *flag.FlagSet, args []string, std std, want ...string) (status int, good bool) {
	flags.SetOutput(std.err)
	flags.Usage = func() {
		fmt.Fprintf(flags.Output(), "leafwright %s\n        %s\n", c.usage, c.about)
		flags.PrintDefaults()
	}
	switch err := flags.Parse(args); {
	case err == flag.ErrHelp:
		return ok, false
	case err != nil:
		return misused, false
	case flags.NArg() > len(want):
		return c.misuse(std, "%q is one argument too many", flags.Arg(len(want))), false
	case flags.NArg() < len(want):
		return c.misuse(std, "%s is missing", want[flags.NArg()]), false
	}
	return ok, true
}

// parseJob does so where the job's file was taken out of the arguments, see [fileFirst]:
// what is one too many is told of what came after it.
func (c command) parseJob(flags *flag.FlagSet, path string, args []string, std std, needed bool) (status int, good bool) {
	if status, good := c.parse(flags, args, std); !good {
		return status, false
	}
	if path == "" && needed {
		return c.misuse(std, "JOB is missing"), false
	}
	return ok, true
}

// misuse says what was wrong with the way the command was called.
func (c command) misuse(std std, format string, args ...any) int {
	fmt.Fprintf(std.err, "leafwright %s: %s\n", c.name, fmt.Sprintf(format, args...))
	fmt.Fprintf(std.err, "use it like this: leafwright %s\n", c.usage)
	return misused
}

// fail says why the command could not do its work.
func (c command) fail(std std, err error) int {
	fmt.Fprintf(std.err, "leafwright %s: %v\n", c.name, err)
	return failed
}
