package words

import "leafwright/geom/advise"

// Trade says what timber buys in evenness, by the two ends of the line; empty where
// there is no choice.
func (s *Speaker) Trade(line []advise.Trade) string {
	n := len(line)
	if n < 2 {
		return ""
	}
	end := func(t advise.Trade) string {
		return CubicCentimetres(t.Timber*1000) + " of the leaf with the gaps at jambs and head within " + s.length(t.Uneven) + " of each other"
	}
	return "Timber against even gaps, in the kind of work of the first way and before amounts are rounded: from " +
		end(line[0]) + " to " + end(line[n-1]) + "."
}
