//go:build js

// The page's second program, the clerk: it does what is needed now and then, in a
// worker of the browser's, so that the drawing goes on meanwhile and the first program
// stays small.
//
// It is asked by a message with the fields
//
//	id      any number; it comes back with the answer
//	want    what is wanted: a name in the table below
//	job     the text of a job file, where one is wanted
//	inches  whether lengths are written and amounts chosen in inches
//	words   a [words.Region]
//
// and those of what is wanted, each told beside the function that answers. An answer has
//
//	id, want  the question's
//	fault     why the job could not be read, else empty
//
// A question that comes before the last one of the same want is answered takes its
// place, and that one gets no answer.
package main

import (
	"syscall/js"
	"time"

	"leafwright/game"
	"leafwright/game/beside"
	"leafwright/game/lesson"
	"leafwright/game/words"
	"leafwright/geom/advise"
)

var self = js.Global()

// answers are what can be wanted. An answer of nil is none: another question took its place.
var answers = map[string]func(c *clerk, q js.Value, job *game.Job) map[string]any{
	"advice": (*clerk).advice,
	"files":  (*clerk).files,
	"leaf":   (*clerk).leaf,
	"season": (*clerk).season,
	"sheet":  (*clerk).sheet,
	// what is only looked at never takes the place of an act
	"practice": (*clerk).practice,
	"look":     (*clerk).practice,
	"form":     (*clerk).practice,
	"hand":     (*clerk).practice,
}

func main() {
	c := &clerk{wake: make(chan struct{}, 1)}
	self.Call("take", js.FuncOf(func(_ js.Value, args []js.Value) any {
		c.put(args[0].Get("data"))
		select {
		case c.wake <- struct{}{}:
		default: // it has not looked since the last one
		}
		return nil
	}))
	for range c.wake {
		for len(c.asked) > 0 {
			q := c.asked[0]
			c.asked = c.asked[1:]
			if answer := c.answer(q); answer != nil {
				answer["id"], answer["want"] = q.Get("id"), q.Get("want")
				self.Call("postMessage", answer)
			}
		}
	}
}

type clerk struct {
	asked []js.Value // what is still to be answered, one a want
	wake  chan struct{}

	// the lesson played last: its file, how it stands and its session's text
	play          *lesson.Play
	file, session string

	// the job the advice for a client's sheet was last worked out for, and its ways
	planned struct {
		job    string
		inches bool
		plans  []advise.Plan
	}
}

// put takes a question in, in the place of an older one of the same want.
func (c *clerk) put(q js.Value) {
	for i, old := range c.asked {
		if old.Get("want").String() == q.Get("want").String() {
			c.asked[i] = q
			return
		}
	}
	c.asked = append(c.asked, q)
}

// outdated tells whether another question takes the place of the one in work.
func (c *clerk) outdated(q js.Value) bool {
	for _, next := range c.asked {
		if next.Get("want").String() == q.Get("want").String() {
			return true
		}
	}
	return false
}

// slice is how long the program works before it looks whether something else is asked.
const slice = 12 * time.Millisecond

// rest lets messages in: the browser brings them only while the program rests.
func rest() { time.Sleep(time.Millisecond) }

// answer works a question out; nil where another one came meanwhile.
func (c *clerk) answer(q js.Value) map[string]any {
	do := answers[q.Get("want").String()]
	if do == nil {
		return map[string]any{"fault": "nobody here does " + q.Get("want").String()}
	}
	if q.Get("job").Type() != js.TypeString {
		return do(c, q, nil)
	}
	job, err := game.Parse([]byte(q.Get("job").String()))
	if err != nil {
		return map[string]any{"fault": err.Error()}
	}
	return do(c, q, &job)
}

// speaker speaks of a job as a question asks.
func speaker(q js.Value, job *game.Job) *words.Speaker {
	say := &words.Speaker{Lexicon: words.For(words.Region(q.Get("words").String())), Hinges: job.HingesAsked()}
	say.Rails = beside.RailNames(&job.Anatomy)
	if q.Get("inches").Bool() {
		say.Length, say.Place = words.Inches, words.InchPlace
	}
	return say
}

// texts carries sentences over to the page.
func texts(all []string) []any {
	out := make([]any, len(all))
	for i, s := range all {
		out[i] = s
	}
	return out
}
