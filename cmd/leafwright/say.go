package main

import (
	"fmt"

	"leafwright/game/words"
)

// saying is what a command has to say: to a person, or as JSON to a program.
type saying interface {
	Text(words.Speaker) string
	JSON(words.Speaker) ([]byte, error)
}

// say writes it, and tells whether that went well; what names it in a complaint.
func (c command) say(std std, what string, it saying, speaker words.Speaker, asJSON bool) (good bool) {
	text := []byte(nil)
	if asJSON {
		var err error
		if text, err = it.JSON(speaker); err != nil {
			fmt.Fprintf(std.err, "leafwright %s: %v\n", c.name, err)
			return false
		}
	} else {
		text = []byte(it.Text(speaker))
	}
	if _, err := std.out.Write(text); err != nil {
		fmt.Fprintf(std.err, "leafwright %s: %s was not written: %v\n", c.name, what, err)
		return false
	}
	return true
}
