package lesson

import (
	"math"

	"leafwright/geom/survey"
	"leafwright/geom/trim"
)

// tool is how finely an instrument is read and how long a reading with it takes.
type tool struct {
	step    float64 // mm
	down    bool    // to the step below: the thickest blade that goes in
	minutes float64
}

// tools are common practice, no published source: feelers go by twentieths of a mm,
// sticks and strings are to be set up at both ends, a hinge's gain is seen once its
// screws are out.
var tools = map[survey.Instrument]tool{
	survey.Feeler:       {0.05, true, 0.5},
	survey.Tape:         {1, false, 1},
	survey.Rule:         {0.5, false, 1},
	survey.Level:        {0.5, false, 2},
	survey.PlumbLine:    {0.5, false, 3},
	survey.Straightedge: {0.1, false, 1},
	survey.Sticks:       {0.5, false, 3},
	survey.Strings:      {0.5, false, 5},
	survey.TrySquare:    {0.5, false, 1},
}

// feelers is the thickest gap that is read with blades, mm; wider ones are read with a
// rule. unscrewing is what a reading behind a hinge costs beyond the reading.
const (
	feelers    = 5.0
	unscrewing = 10.0
)

// behind are the kinds that show only once a hinge is unscrewed.
func behind(k survey.Kind) bool {
	switch k {
	case survey.LeafGain, survey.JambGain, survey.LeafPacker, survey.JambPacker, survey.HingeClosed:
		return true
	}
	return false
}

// readable tells whether a learner can read that kind: one that gives a length. Where
// the leaf rubs is seen by trying it.
func readable(s *survey.Spec) bool {
	return s != nil && s.Needs&(survey.NoValue|survey.NeedRail) == 0 && s.Kind != survey.StileWidth
}

// Readable is every kind of reading a learner can take, those of the hung leaf first.
func Readable() (out []survey.Kind) {
	for pass := range 2 {
		for i := range survey.Kinds {
			if s := &survey.Kinds[i]; readable(s) && s.Hung() == (pass == 0) {
				out = append(out, s.Kind)
			}
		}
	}
	return out
}

// Took is what an instrument showed.
type Took struct {
	Value  float64 // mm, by the instrument's own steps
	Step   float64 // that step, mm
	NoneIn bool    // a gap into which not the thinnest blade goes: it touches, or nearly
}

// take reads the door as it stands, and tells how many minutes that takes. NaN where
// there is nothing to be read.
func take(p *trim.Piece, r survey.Reading) (t Took, minutes float64) {
	s := survey.SpecOf(r.Kind)
	by := tools[s.Instrument]
	if by.step == 0 {
		by = tool{0.5, false, 1}
	}
	v := survey.Expect(&p.Door, r)
	if math.IsNaN(v) {
		return Took{Value: v}, by.minutes
	}
	if s.Instrument == survey.Feeler && v > feelers {
		by = tools[survey.Rule]
	}
	t.Step = by.step
	t.Value = math.Round(v/by.step) * by.step
	if by.down {
		t.Value = max(0, math.Floor(v/by.step+1e-6)*by.step)
		t.NoneIn = t.Value == 0
	}
	// so that 0.30000000000000004 is 0.3
	t.Value = math.Round(t.Value*100)/100 + 0
	minutes = by.minutes
	if behind(r.Kind) {
		minutes += unscrewing
	}
	return t, minutes
}
