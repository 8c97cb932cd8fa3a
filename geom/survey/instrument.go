package survey

import "math"

// Instrument is what a reading was read with.
type Instrument string

// The instruments.
const (
	Tape         Instrument = "tape"     // class II, the usual one
	FineTape     Instrument = "tape_i"   // class I
	CoarseTape   Instrument = "tape_iii" // class III
	Rule         Instrument = "rule"
	Level        Instrument = "level"
	PlumbLine    Instrument = "plumb_line"
	Straightedge Instrument = "straightedge"
	Feeler       Instrument = "feeler"
	Coins        Instrument = "coins"
	Sticks       Instrument = "sticks"
	Strings      Instrument = "strings"
	TrySquare    Instrument = "square"
	Eye          Instrument = "eye"
)

// Instruments is every instrument, the usual ones first.
var Instruments = []Instrument{
	Tape, Rule, Level, PlumbLine, Straightedge, Feeler, Coins, Sticks, Strings, TrySquare, Eye, FineTape, CoarseTape,
}

// instrument is an instrument's error: a part of the instrument's own and a part
// of the reader's.
//
// Own is a limit the instrument keeps to, the maximum permissible error where
// there is a rule for one. Nothing being known of where inside the limits an
// instrument lies, its standard deviation is the limit over √3, as for an even
// spread (Guide to the expression of uncertainty in measurement, 4.3.7; memory).
// One tape's error is the same wherever it is laid, so much of it falls out of a
// gap between two things it measured; that is not counted on here.
type instrument struct {
	base, perMetre float64 // of the limit, mm and mm/m
	wholeMetres    bool    // the length is rounded up to whole metres
	reading        float64 // standard deviation of setting and reading, mm
}

var instruments = map[Instrument]instrument{
	// a + b·L + c, L in whole metres, from the hook: UK SI 2016/1153 Sch. 1I =
	// Directive 2014/32/EU Annex X. Reading: to the nearest millimetre and holding
	// the tape square, common practice, no published source.
	Tape:       {0.3 + 0.2, 0.2, true, 0.5},
	FineTape:   {0.1 + 0.1, 0.1, true, 0.5},
	CoarseTape: {0.6 + 0.3, 0.4, true, 0.5},
	// Between two marks, class I as above; read to half a millimetre.
	Rule: {0.1, 0.1, true, 0.25},
	// Spirit levels keep to 0.5 to 1 mm/m (from memory); reading by a feeler or a
	// rule under one end.
	Level: {0, 1, false, 0.3},
	// The rest is common practice, no published source.
	PlumbLine:    {0, 0, false, 0.5},
	Straightedge: {0, 0.1, false, 0.15},
	Feeler:       {0, 0, false, 0.12},
	Coins:        {0, 0, false, 0.25},
	Sticks:       {0, 0, false, 0.5},
	Strings:      {0, 0, false, 0.5},
	TrySquare:    {0.15, 0, false, 0.25},
	Eye:          {0, 0, false, 0.3},
}

// sigma gives the standard deviation of reading a value over a span, mm.
func (i instrument) sigma(value, span float64) float64 {
	long := math.Abs(value)
	if span > 0 {
		long = span
	}
	long /= 1000
	if i.wholeMetres {
		long = math.Max(1, math.Ceil(long))
	}
	own := (i.base + float64(i.perMetre*long)) / math.Sqrt(3)
	return math.Sqrt(float64(own*own) + float64(i.reading*i.reading))
}

// SigmaOf gives the reading's standard deviation in mm: its own, or that of its
// instrument, or that of its kind's usual instrument. An unknown kind or
// instrument gives 0.
func SigmaOf(r Reading) float64 {
	if r.Sigma != 0 {
		return r.Sigma
	}
	name := r.Instrument
	if s := SpecOf(r.Kind); name == "" && s != nil {
		name = s.Instrument
	}
	i, known := instruments[name]
	if !known {
		return 0
	}
	span := 0.0
	if s := SpecOf(r.Kind); s != nil && s.Needs&NeedSpan != 0 {
		span = r.span() // whatever else is written there was not laid along anything
	}
	return i.sigma(r.Value, span)
}
