package advise

import (
	"math"

	"leafwright/geom"
	"leafwright/geom/door"
	"leafwright/geom/fit"
	"leafwright/geom/survey"
)

// Sigmas is how well what is measured is known: standard deviations in mm, along
// the edges of places.
//
// The swing's least clearance follows the closed gap at its place and is known as that
// is, without a door being swung for every reading; but the floor rises under the swing
// by as much more or less than it was taken to as Floor tells.
type Sigmas struct {
	Gap   [door.Edges]geom.Profile
	Stop  [door.FloorSide]geom.Profile
	Floor float64
}

// sampled is how many places along an edge stand for all of it.
const sampled = 9

// SigmasOf takes the standard deviations of gaps that rest on readings, and that of the
// floor under the swing; nil where there are no gaps.
func SigmasOf(g *survey.Gaps, floor float64) *Sigmas {
	if g == nil {
		return nil
	}
	s := &Sigmas{Floor: floor}
	for e := range door.Edges {
		s.Gap[e] = along(g.Fit.Gaps[e].Range(), func(at float64) float64 { return g.At(e, at).Sigma })
		if e < door.FloorSide {
			s.Stop[e] = along(g.Fit.Stops[e].Range(), func(at float64) float64 { return g.Stop(e, at).Sigma })
		}
	}
	return s
}

func along(over geom.Interval, sigma func(at float64) float64) geom.Profile {
	if over.IsEmpty() {
		return nil
	}
	p := make(geom.Profile, sampled)
	for i := range p {
		at := over.Lo + float64(over.Length()*float64(i))/(sampled-1)
		p[i] = geom.Station{At: at, Value: sigma(at)}
	}
	return p
}

// held gives the profile's value at s, its end values beyond its stations.
func held(p geom.Profile, s float64) float64 {
	if len(p) == 0 {
		return 0
	}
	return p.At(max(p[0].At, min(p[len(p)-1].At, s)))
}

// quantile gives how many standard deviations a normal error exceeds with the
// chance given, by halving.
func quantile(chance float64) float64 {
	unit := survey.Uncertain{Sigma: 1}
	lo, hi := -8.0, 8.0
	for range 60 {
		mid := lo + (hi-lo)/2
		if unit.Below(-mid) > chance {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo
}

// uneven gives the widest less the narrowest gap at the sides and the head.
func uneven(f *fit.Fit) float64 {
	lo, hi := math.Inf(1), math.Inf(-1)
	for e := door.HingeSide; e <= door.HeadSide; e++ {
		if len(f.Gaps[e].Pieces) > 0 {
			lo, hi = min(lo, f.Gaps[e].Least), max(hi, f.Gaps[e].Most)
		}
	}
	if hi < lo {
		return 0
	}
	return hi - lo
}
