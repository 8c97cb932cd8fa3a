package main

import (
	"context"
	"flag"

	"leafwright/game"
)

var schemaCommand = command{
	name:  "schema",
	usage: "schema",
	about: "prints the JSON Schema of the job file",
	run: func(_ context.Context, c command, args []string, std std) int {
		flags := flag.NewFlagSet(c.name, flag.ContinueOnError)
		if status, good := c.parse(flags, args, std); !good {
			return status
		}
		if _, err := std.out.Write(game.Schema()); err != nil {
			return c.fail(std, err)
		}
		return ok
	},
}
