package timber

// Shank gives a wood screw's shank diameter, mm, from its gauge number: 0.060 in and
// 0.013 in a number (US wood-screw gauge, from memory).
func Shank(number int) float64 {
	return float64((0.060 + float64(0.013*float64(min(max(number, 0), 30)))) * 25.4)
}

// Withdrawal gives the force, N, that draws a screw of a shank diameter, mm, out of the side
// grain of dry wood in which so much of its thread stands, mm: 108.25 G² D L, G the
// ovendry gravity (Wood Handbook, ch. 8). It is the load at which it fails.
func Withdrawal(gravity, diameter, length float64) float64 {
	g := held(gravity, 0, 1.5)
	return float64(108.25*float64(g*g)) * float64(held(diameter, 0, 20)*held(length, 0, 200))
}

// Factor is the part of its strength a screw may be trusted with: the published load
// at failure, 15700 G² D L (lb, in), over the allowable one, 2850 G² D L.
const Factor = 15700.0 / 2850

// Ground is what a screw stands in.
type Ground string

// The grounds.
const (
	Sound    Ground = "sound"     // side grain, in a hole of its own
	Plugged  Ground = "plugged"   // a plug of the same timber glued in, its grain along the stile's
	EndGrain Ground = "end grain" // of a tenon, or of a dowel glued into an old hole
	Worn     Ground = "worn"      // the screw's old hole, or one bored too wide
	Filled   Ground = "filled"    // filler or rotten wood
)

// Grips gives the part of [Withdrawal] that is left in such ground. End grain holds about
// three quarters (Wood Handbook ch. 8; an allowable-load rule of 1999 gives it nothing); a
// worn hole half and filler nothing, by common practice.
func (g Ground) Grips() float64 {
	switch g {
	case EndGrain:
		return 0.75
	case Worn:
		return 0.5
	case Filled:
		return 0
	}
	return 1
}

// Screws are those that hold one plate of one hinge.
type Screws struct {
	Number   int
	Diameter float64 // of the shank, mm
	Into     float64 // thread in the wood, mm
	Ground   Ground
}

// Remedy is what helps a hinge whose screws hold too little.
type Remedy string

// The remedies.
const (
	LongerScrews Remedy = "longer screws"
	PlugAndGlue  Remedy = "plug and glue" // the old holes bored out and plugged with the same timber, screwed anew
	ThirdHinge   Remedy = "third hinge"   // close below the top one, which then bears half
	NewTimber    Remedy = "new timber"    // the stile cut back and pieced there
)

// Hold is a hinge's screws held against the pull on them, N.
type Hold struct {
	Pull   float64
	Fails  float64 // at this they draw
	Borne  float64 // this they are trusted with: Fails over the factor
	Enough bool
	Need   float64  // thread each would need in the ground it stands in, mm; 0 where none is enough
	Do     []Remedy // what to do, in turn; nil where they hold
}

// screwMost is the thread, mm, of the longest screw that goes into a hinge: more is
// seldom to be had, and comes out of a stile's inner edge.
const screwMost = 65.0

// HoldOf tells whether a top hinge's screws, all bearing alike, take a pull, N, in timber of
// that gravity, with a factor between failing and trusted load (0 = [Factor]).
func HoldOf(pull float64, s Screws, gravity, factor float64) Hold {
	f := held(factor, 0, 50)
	if f < 1 {
		f = Factor
	}
	n := float64(min(max(s.Number, 0), 20))
	h := Hold{Pull: held(pull, 0, 1e6)}
	perMM := float64(float64(Withdrawal(gravity, s.Diameter, 1)*n) / f)
	grips := s.Ground.Grips()
	h.Borne = float64(float64(perMM*held(s.Into, 0, 200)) * grips)
	h.Fails = float64(h.Borne * f)
	h.Enough = h.Borne >= h.Pull
	if per := float64(perMM * grips); per > 0 {
		h.Need = min(h.Pull/per, 1e4)
	}
	if h.Enough {
		return h
	}
	into := held(s.Into, 0, 200)
	if grips < 1 {
		h.Do = append(h.Do, PlugAndGlue)
	}
	if float64(perMM*into) < h.Pull {
		into = max(into, screwMost)
		h.Do = append(h.Do, LongerScrews)
	}
	if float64(perMM*into) < h.Pull {
		h.Do = append(h.Do, ThirdHinge)
		if float64(perMM*into) < h.Pull/2 {
			h.Do = append(h.Do, NewTimber)
		}
	}
	return h
}
