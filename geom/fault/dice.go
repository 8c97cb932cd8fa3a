package fault

// dice is a source of numbers that look thrown and are not: Vigna's SplitMix64, from
// a seed. Equal seeds give equal throws everywhere.
type dice struct{ state uint64 }

// throws starts the throws of a seed for one purpose, so that those for one fault do
// not hang on which others there are.
func throws(seed, purpose uint64) dice {
	d := dice{seed ^ purpose*0xd1342543de82ef95}
	d.next()
	return d
}

func (d *dice) next() uint64 {
	d.state += 0x9e3779b97f4a7c15
	z := d.state
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	return z ^ z>>31
}

// part gives a number from 0 up to 1.
func (d *dice) part() float64 { return float64(d.next()>>11) / (1 << 53) }

// within gives a number between two.
func (d *dice) within(lo, hi float64) float64 { return lo + float64((hi-lo)*d.part()) }

// about gives a number near 0, seldom as far off as far either way.
func (d *dice) about(far float64) float64 {
	return float64(far * (d.part() + d.part() + d.part() - 1.5) / 1.5)
}

// of gives a whole number from 0 up to n.
func (d *dice) of(n int) int {
	if n < 2 {
		return 0
	}
	return int(d.next() % uint64(n))
}

// chance tells whether something comes about that does so often, of 1.
func (d *dice) chance(often float64) bool { return d.part() < often }
