package timber

import (
	"math"

	"leafwright/geom/door"
)

const (
	// fittings is a lock with its handles, kg, and fittingsLeast and fittingsMost what it
	// may weigh (common practice, no published source).
	fittings      = 1.0
	fittingsLeast = 0.5
	fittingsMost  = 2.0

	// The density of one timber differs by a tenth from board to board (coefficient of
	// variation of specific gravity, Wood Handbook ch. 5, from memory): 9 boards of 10 lie
	// within 1.645 times that.
	spreadSure = 0.1645
	// SpreadLoose is the part by which it differs where a name may mean several timbers
	// (common practice, no published source).
	SpreadLoose = 0.25

	ledges = 1.25 // of a boarded leaf's mass with ledges and braces on its boards (common practice, no published source)
	hollow = 1.0 / 3
)

// Weigh gives what a leaf weighs with its lock, as far as its anatomy tells, and between
// what its mass lies some 9 times out of 10, kg: by what one timber differs from board to
// board, or all timbers where the anatomy names none that is known, by its panels'
// thickness, and by what is fitted to it.
func Weigh(l *door.Leaf, a *door.Anatomy) (m Mass, lightest, heaviest float64) {
	species, sure := Find(a.Timber)
	lo, hi := 1-spreadSure, 1+spreadSure
	if !sure {
		lo, hi = 1-SpreadLoose, 1+SpreadLoose
	}
	lo, hi = float64(species.Density*lo), float64(species.Density*hi)
	if species == &Softwood {
		for i := range Timbers {
			lo, hi = min(lo, Timbers[i].Density), max(hi, Timbers[i].Density)
		}
	}
	thin, thick := l.Thickness/4, l.Thickness/2 // of flat panels, a third usual; all common practice
	switch a.Panels {
	case door.Raised:
		thin, thick = float64(0.4*l.Thickness), float64(0.6*l.Thickness)
	case door.Glass:
		thin, thick = 3, 6
	}
	usual, least, most := fittings, fittingsLeast, fittingsMost
	if a.Lock.Kind == door.NoLock {
		usual, least, most = 0, 0, fittings
	}
	m = MassOf(l, a, Stuff{Fitted: usual})
	mass := func(density, panel float64) float64 {
		return MassOf(l, a, Stuff{Density: density, Panel: panel, Fitted: usual}).All - m.All
	}
	// what is not known has nothing to do with one another, so the parts go by squares
	off := func(density, panel, fitted float64) float64 {
		x, y, z := mass(density, 0), mass(0, panel), fitted-usual
		return math.Sqrt(float64(x*x) + float64(y*y) + float64(z*z))
	}
	lightest = max(0, m.All-off(lo, thin, least))
	heaviest = m.All + off(hi, thick, most)
	switch a.Make {
	case door.Flush:
		lightest *= hollow
	case door.Boarded:
		heaviest *= ledges
	}
	return m, lightest, heaviest
}
