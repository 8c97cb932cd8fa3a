package game

import (
	"leafwright/game/measure"
	"leafwright/geom/door"
	"leafwright/geom/survey"
)

// readingsPath is where a job file keeps its readings.
const readingsPath = "readings"

// readingFields is the part of the table that says what a reading is.
func readingFields() *field {
	r := func(j *Job, i int) *Reading { return &j.Readings[i] }
	mm := func(name, label, help string, p func(r *Reading) *measure.Length) *field {
		f := &field{name: name, label: label, help: help, at: func(j *Job, i int) value { return verbatim{p(r(j, i))} }}
		return f.or(func(*Job) value { return verbatim{new(measure.Length)} })
	}
	after := &field{name: "after", label: "After moves", limits: door.Range{Hi: MovesMost},
		counts: func(j *Job, i int) bool { k := r(j, i).Kind; return survey.SpecOf(k) == nil || isHung(k) },
		at:     func(j *Job, i int) value { return whole{&r(j, i).After} }}
	after = after.or(func(*Job) value { return whole{new(int)} }).when(func(j *Job) bool { return len(j.Made) > 0 }).
		helped("Of the hung door: how many of the moves made were done when it was read, 0 as found.")
	f := groups(readingsPath, "Readings", "reading", door.Range{Hi: survey.ReadingsMost}, func(j *Job) *[]Reading { return &j.Readings },
		func(j *Job, i int) string { return "Reading " + ordinal(i) },
		(&field{name: "kind", label: "What", need: true, at: func(j *Job, i int) value { return word[survey.Kind]{&r(j, i).Kind, "", readingKinds} }}).then(retype),
		(&field{name: "side", label: "Side", at: func(j *Job, i int) value { return word[survey.Side]{&r(j, i).Side, "", sideWords} }}).
			or(func(*Job) value { return word[survey.Side]{new(survey.Side), "", sideWords} }).
			helped("Which jamb, edge, stile, diagonal or corner; a leaf's top is its head and its foot its floor side."),
		(&field{name: "hinge", label: "Hinge", limits: door.Range{Lo: 1, Hi: door.HingesMost}, at: func(j *Job, i int) value { return whole{&r(j, i).Hinge} }}).
			or(func(*Job) value { return whole{new(int)} }).helped("Which one, 1 the top one."),
		(&field{name: "rail", label: "Rail", limits: door.Range{Lo: 1, Hi: door.RailsMost}, at: func(j *Job, i int) value { return whole{&r(j, i).Rail} }}).
			or(func(*Job) value { return whole{new(int)} }).helped("Which one, 1 the bottom one."),
		mm("at", "At", "The place: a height up from the floor or from the leaf's foot, or a distance across from the hinge side, whichever hand the leaf is.",
			func(r *Reading) *measure.Length { return &r.At }),
		mm("from", "From", "Where the level, plumb line, straightedge or lower stick begins.", func(r *Reading) *measure.Length { return &r.From }),
		mm("to", "To", "Where it ends.", func(r *Reading) *measure.Length { return &r.To }),
		(&field{name: "angle", label: "Swing angle", limits: door.Range{Lo: 0, Hi: 180}, at: func(j *Job, i int) value { return degrees{&r(j, i).Angle} }}).
			orDegrees(0).helped("Of a place on the floor; 0 in the opening, 90 square out of it."),
		mm("value", "Read", "What was read, kept as typed; needed unless the reading is off.", func(r *Reading) *measure.Length { return &r.Value }).then(reread),
		mm("sigma", "Give or take", "Standard deviation; when left out, that of the instrument.", func(r *Reading) *measure.Length { return &r.Sigma }),
		(&field{name: "instrument", label: "Read with", at: func(j *Job, i int) value {
			return word[survey.Instrument]{&r(j, i).Instrument, usual, instrumentChoices}
		}}).or(func(*Job) value { return word[survey.Instrument]{new(survey.Instrument), usual, instrumentChoices} }),
		(&field{name: "note", label: "Note", at: func(j *Job, i int) value { return line{&r(j, i).Note} }}).
			or(func(*Job) value { return line{new(string)} }),
		(&field{name: "off", label: "Leave out", at: func(j *Job, i int) value { return truth{&r(j, i).Off} }}).
			or(func(*Job) value { return truth{new(bool)} }).helped("Kept, but without a say."),
		after,
	)
	return f.or(func(*Job) value { return listOf[Reading]{p: new([]Reading)} }).
		helped("What tape, level, straightedge, sticks and feelers said. When any has a say, the shapes of leaf, opening, hinges, latch and floor come from the readings alone, " +
			"square, plumb, flat and ordinary where nothing was read, and none of those may be given beside them.")
}

// shapes are the fields that say the door's shapes, which come from the readings
// where there are any.
var shapes = append(append([]string{"hinges", "latch", "floor"}, leafShape...), "opening")

// isShape tells whether the field says a shape.
func isShape(path string) bool {
	for _, s := range shapes {
		if within(path, s) {
			return true
		}
	}
	return false
}
