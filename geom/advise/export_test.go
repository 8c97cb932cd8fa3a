package advise

// PriceOf prices a plan's cost by a preference, in its own measure.
func PriceOf(prefer Preference, p *Plan) float64 {
	g := weightsOf(prefer)
	return g.of(&p.Cost, p.Moves)
}
