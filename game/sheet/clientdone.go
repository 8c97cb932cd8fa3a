package sheet

import (
	"math"
	"strconv"

	"leafwright/game/words"
	"leafwright/geom/door"
	"leafwright/geom/trim"
)

// plain says things to somebody who never hung a door: no word of the trade but those
// that explain.go explains.
type plain struct {
	*words.Speaker
}

// side names a side of the door.
func (p plain) side(e door.Edge) string {
	return [door.Edges]string{"hinge side", "handle side", "top", "bottom"}[e]
}

// ends names the two ends of a side.
func (p plain) ends(e door.Edge) (first, last string) {
	if e.Upright() {
		return "at the bottom", "at the top"
	}
	return "at the hinges", "at the handle"
}

func (p plain) hinge(n int) string {
	switch {
	case n == 0:
		return "all the hinges"
	case n == 1:
		return "the top hinge"
	case n == p.Hinges:
		return "the bottom hinge"
	case n == 2 && p.Hinges == 3:
		return "the middle hinge"
	}
	return "hinge " + strconv.Itoa(n) + " from the top"
}

// much says an amount along a side: "2 mm", or how it changes.
func (p plain) much(m *trim.Move) string {
	const none = 0.05 // mm: nothing, as far as it is said
	first, last := p.ends(m.Edge)
	a, b := p.Amount(m.First), p.Amount(m.Last)
	switch {
	case a == b:
		return a
	case math.Abs(m.Last) < none:
		return a + " " + first + ", running out to nothing " + last
	case math.Abs(m.First) < none:
		return b + " " + last + ", running out to nothing " + first
	}
	return a + " " + first + ", " + b + " " + last
}

// over says which part of its side a move is done on, nothing for all of it.
func (p plain) over(m *trim.Move) string {
	if m.From == 0 && m.To == 0 {
		return ""
	}
	place := p.Place
	if place == nil {
		place = func(mm float64) string { return strconv.FormatFloat(math.Round(mm), 'f', 0, 64) + " mm" }
	}
	if m.Edge.Upright() {
		return ", between " + place(m.From) + " and " + place(m.To) + " up"
	}
	return ", between " + place(m.From) + " and " + place(m.To) + " from the hinges"
}

func (p plain) on(on trim.Part) string {
	switch on {
	case trim.OnLeaf:
		return "the door"
	case trim.OnJamb:
		return "the frame"
	}
	return "door and frame"
}

// degrees writes an angle to the tenth a bevel is set to.
func degrees(x float64) string {
	return strconv.FormatFloat(math.Round(10*x)/10, 'f', -1, 64) + "°"
}

func more(x float64, above, below string) string {
	if x < 0 {
		return below
	}
	return above
}

// done says what a move does, as a sentence.
func (p plain) done(m *trim.Move) string {
	side, n := p.side(m.Edge), p.Amount(m.First)
	switch m.Kind {
	case trim.Plane:
		return "Shave wood off the door's " + side + ": " + p.much(m) + p.over(m) + "."
	case trim.Scribe:
		most := 0.0
		for _, s := range m.Line {
			most = max(most, s.Value)
		}
		return "Shave wood off the door's " + side + " so that it follows the frame: " + p.Amount(most) + " where most."
	case trim.Cut:
		return "Saw wood off the door's " + side + ": " + p.much(m) + "."
	case trim.Undercut:
		foot := *m
		foot.Edge = door.FloorSide
		return "Saw wood off the door's bottom: " + p.much(&foot) + ", to go over a floor covering " + p.Amount(m.Cover) + " thick."
	case trim.Bevel:
		return "Shave the door's edge at the " + side + " to a slant of " + degrees(math.Abs(m.Angle.Degrees())) + "."
	case trim.Ease:
		return "Take the sharp edge off the door's " + side + ", " + n + "."
	case trim.Splice:
		high := n
		if last := p.Amount(m.Last); last != n {
			high = n + " to " + last
		}
		return "Glue a strip of new wood, " + high + " high, along the door's " + side + "."
	case trim.Reuse:
		high := ""
		if m.First > 0 {
			high = ", " + n + " of it,"
		}
		return "Glue the piece sawn off" + high + " back on along the door's " + side + "."
	case trim.Shift:
		return "Move " + p.hinge(m.Hinge) + " " + n + more(m.First, " up", " down") + " on " + p.on(m.On) + "."
	case trim.Raise:
		return "Hang the door " + n + more(m.First, " higher.", " lower.")
	case trim.Sink:
		return "Set " + p.hinge(m.Hinge) + " " + n + " deeper into " + p.on(m.On) + "."
	case trim.Pack:
		if m.First < 0 {
			return "Take " + n + " of card out from behind " + p.hinge(m.Hinge) + "."
		}
		return "Put " + n + " of stiff card behind " + p.hinge(m.Hinge) + ", on " + p.on(m.On) + "."
	case trim.Set:
		return "Let the door stand " + n + more(m.First, " farther out", " farther in") + " at " + p.hinge(m.Hinge) + "."
	case trim.Rehinge:
		return "Put new hinges in place of " + p.hinge(m.Hinge) + "."
	case trim.PlaneJamb:
		return "Shave wood off the frame " + p.frame(m.Edge) + ": " + p.much(m) + "."
	case trim.PackJamb:
		return "Bring the frame " + p.frame(m.Edge) + " closer to the door: " + p.much(m) + "."
	case trim.Restop:
		return "Move the strip on the frame that the door shuts against, " + p.frame(m.Edge) + ": " + p.stop(m) + "."
	case trim.Follow:
		return "Fix the strip on the frame that the door shuts against anew, " + p.frame(m.Edge) + ", to follow the door " + n + " off it."
	case trim.Threshold:
		return "Let a strip " + p.Amount(m.Cover) + " high into the floor under the door."
	}
	return string(m.Kind) + "."
}

// stop says how far the strip that the door shuts against moves; its two ends may go
// different ways.
func (p plain) stop(m *trim.Move) string {
	way := func(x float64) string {
		if math.Abs(x) < 0.05 { // mm: nothing, as far as it is said
			return "nothing"
		}
		return p.Amount(x) + more(x, " away from the door", " towards the door")
	}
	first, last := p.ends(m.Edge)
	if a, b := way(m.First), way(m.Last); a != b {
		return a + " " + first + ", " + b + " " + last
	}
	return way(m.First)
}

func (p plain) frame(e door.Edge) string { return "at the " + p.side(e) }
