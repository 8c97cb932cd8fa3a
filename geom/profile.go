package geom

// Station is one measured place along an edge: the value there, both in
// millimetres.
type Station struct{ At, Value float64 }

// Profile is a straight-pieced line through its stations, which stand in rising
// order of At with no two at one place. It runs on straight beyond its first and
// last two; one station is a constant; no stations is zero everywhere.
type Profile []Station

// Level gives the profile that has one value everywhere.
func Level(value float64) Profile { return Profile{{0, value}} }

// Through gives the profile through the stations at0, value0, at1, value1, ...
// It panics on an odd count, which is a slip of the caller's.
func Through(pairs ...float64) Profile {
	if len(pairs)%2 != 0 {
		panic("geom.Through: a station without a value")
	}
	p := make(Profile, len(pairs)/2)
	for i := range p {
		p[i] = Station{pairs[2*i], pairs[2*i+1]}
	}
	return p
}

// Line is a straight line: C0 + C1·s.
type Line struct{ C0, C1 float64 }

// At gives the line's value at s.
func (l Line) At(s float64) float64 { return l.C0 + float64(l.C1*s) }

// Pieces tells how many straight pieces the profile has: one at least.
func (p Profile) Pieces() int { return max(1, len(p)-1) }

// Piece gives the i-th straight piece as a line; the first and the last run on
// for ever.
func (p Profile) Piece(i int) Line {
	switch len(p) {
	case 0:
		return Line{}
	case 1:
		return Line{C0: p[0].Value}
	}
	a, b := p[i], p[i+1]
	c := (b.Value - a.Value) / (b.At - a.At)
	return Line{a.Value - float64(c*a.At), c}
}

// Find gives the index of the piece that s lies on; a station belongs to the
// piece after it.
func (p Profile) Find(s float64) int {
	lo, hi := 0, p.Pieces()-1
	for lo < hi {
		m := (lo + hi + 1) / 2
		if p[m].At <= s {
			lo = m
		} else {
			hi = m - 1
		}
	}
	return lo
}

// At gives the profile's value at s. It is exact at the stations.
func (p Profile) At(s float64) float64 {
	switch len(p) {
	case 0:
		return 0
	case 1:
		return p[0].Value
	}
	i := p.Find(s)
	a, b := p[i], p[i+1]
	if s == b.At {
		return b.Value
	}
	return a.Value + float64((b.Value-a.Value)*((s-a.At)/(b.At-a.At)))
}

// Slope gives the rise per millimetre of the piece that s lies on.
func (p Profile) Slope(s float64) float64 { return p.Piece(p.Find(s)).C1 }

// Knots tells how many places the profile may bend at: its inner stations.
func (p Profile) Knots() int { return max(0, len(p)-2) }

// Knot gives the place of the i-th bend.
func (p Profile) Knot(i int) float64 { return p[i+1].At }

// Shift gives the profile raised by d everywhere.
func (p Profile) Shift(d float64) Profile {
	if len(p) == 0 {
		return Level(d)
	}
	q := make(Profile, len(p))
	for i, s := range p {
		q[i] = Station{s.At, s.Value + d}
	}
	return q
}

// Plus gives the sum of two profiles, with the bends of both.
func (p Profile) Plus(q Profile) Profile {
	var sum Profile
	i, j := 0, 0
	for i < len(p) || j < len(q) {
		var s float64
		switch {
		case j == len(q) || i < len(p) && p[i].At < q[j].At:
			s = p[i].At
			i++
		case i == len(p) || q[j].At < p[i].At:
			s = q[j].At
			j++
		default:
			s = p[i].At
			i, j = i+1, j+1
		}
		sum = append(sum, Station{s, p.At(s) + q.At(s)})
	}
	return sum
}

// Chord gives the straight line through the profile's values at two places:
// what a straightedge laid there would show.
func (p Profile) Chord(over Interval) Line {
	lo, hi := p.At(over.Lo), p.At(over.Hi)
	if over.Length() == 0 {
		return Line{C0: lo}
	}
	c := (hi - lo) / (over.Hi - over.Lo)
	return Line{lo - float64(c*over.Lo), c}
}

// Bow gives the profile's greatest departure from its chord over the interval
// (above the chord > 0) and where it is. Straight profiles give 0 at the middle.
func (p Profile) Bow(over Interval) (bow, at float64) {
	chord := p.Chord(over)
	at = over.Mid()
	for i := range p.Knots() {
		s := p.Knot(i)
		if !over.Contains(s) {
			continue
		}
		if d := p.At(s) - chord.At(s); d*d > bow*bow {
			bow, at = d, s
		}
	}
	return bow, at
}
