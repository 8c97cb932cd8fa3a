package survey

import (
	"math"
	"slices"
	"strconv"

	"leafwright/geom"
	"leafwright/geom/door"
)

// Slip is how a reading may have gone wrong, and what it would then have been.
type Slip struct {
	Kind  SlipKind
	Value float64 // what should have been read, mm
	off   float64 // from what the other readings say, in standard deviations
}

// SlipKind is a way to misread.
type SlipKind string

// The ways to misread.
const (
	Transposed    SlipKind = "two figures changed places"
	PointSlipped  SlipKind = "the point slipped"
	Inches        SlipKind = "inches written as millimetres"
	WrongZero     SlipKind = "read from the wrong end of the tape" // burning 100 mm and forgetting it, or the hook
	OtherDiagonal SlipKind = "the other diagonal"
	WrongSign     SlipKind = "the sign"
)

// slipFits is how far, in standard deviations, a righted value may be from what
// all other readings say and still be offered, and slipsMost how many are.
const (
	slipFits  = 2.5
	slipsMost = 3
)

// zeros are the lengths by which a tape starts in the wrong place, mm: the mark a
// worn end is burnt to, a centimetre mark beside the zero, a hook, an inch. Common
// practice, no published source.
var zeros = [...]float64{100, 10, 20, 25, 25.4, 50}

// slips gives what the reading in the row may have been, when all others say that
// it should be want ± sigma.
func (a *adjustment) slips(row int, want, sigma float64) []Slip {
	return a.slipsOf(a.rowOf[row], want, sigma)
}

// slipsOf does so for the reading at place i.
func (a *adjustment) slipsOf(i int, want, sigma float64) []Slip {
	r := &a.readings[i]
	spec := specs[r.Kind]
	var all []Slip
	try := func(kind SlipKind, v float64) {
		off := math.Abs(v-want) / sigma
		if off <= slipFits && spec.Allowed.Holds(v) && v != r.Value {
			all = append(all, Slip{kind, v, off})
		}
	}
	for _, v := range transposed(r.Value) {
		try(Transposed, v)
	}
	try(PointSlipped, r.Value*10)
	try(PointSlipped, r.Value/10)
	try(Inches, r.Value*25.4)
	try(Inches, r.Value/25.4)
	if r.Instrument == "" && spec.Instrument == Tape || r.Instrument == Tape || r.Instrument == FineTape || r.Instrument == CoarseTape {
		for _, z := range zeros {
			try(WrongZero, r.Value-z)
			try(WrongZero, r.Value+z)
		}
	}
	try(WrongSign, -r.Value)
	if r.Kind == OpeningDiagonal || r.Kind == LeafDiagonal {
		o := observer{d: &a.net.d, net: a.net}
		other := *r
		other.Side = Rising
		if r.Side == Rising {
			other.Side = Falling
		}
		if math.Abs(spec.observe(&o, &other)-r.Value) <= slipFits*sigma {
			all = append(all, Slip{OtherDiagonal, want, 0})
		}
	}
	// A slip explains more the less it allows: figures that changed places fit by
	// chance far more seldom than a handful of lengths do.
	geom.Order(all, func(a, b Slip) int {
		switch {
		case a.off < b.off-1:
			return -1
		case a.off > b.off+1:
			return 1
		}
		return 0
	})
	return all[:min(len(all), slipsMost)]
}

// transposed gives the values with two neighbouring figures of v exchanged.
func transposed(v float64) (out []float64) {
	b := []byte(door.Say(math.Abs(v)))
	for i := range b {
		j := i + 1
		if j < len(b) && b[j] == '.' {
			j++
		}
		if j >= len(b) || b[i] == '.' || b[i] == b[j] {
			continue
		}
		c := slices.Clone(b)
		c[i], c[j] = c[j], c[i]
		if c[0] == '0' { // that would be a lost figure
			continue
		}
		if w, err := strconv.ParseFloat(string(c), 64); err == nil {
			out = append(out, math.Copysign(w, v))
		}
	}
	return out
}
