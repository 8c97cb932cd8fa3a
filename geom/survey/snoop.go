package survey

import (
	"math"

	"leafwright/geom"
	"leafwright/geom/door"
)

// The test of each reading: its standardised residual is a normal number if it is
// sound, and beyond critical once in a thousand, either way. That is the false
// alarm rate of one reading; of forty that check each other, one job in thirty has
// a false alarm.
const (
	critical = 3.2905267314918945 // |z| of 0.1 %, two-sided
	power    = 1.6448536269514722 // z of 95 %, one-sided: added to critical, the slip that shows
	// leastRedundancy is the redundancy below which a residual says nothing.
	leastRedundancy = 0.01
	// told is by how many of its standard deviations one standardised residual must
	// be greater than another for its reading to be told as the wrong one: z of 99 %.
	told = 2.3263478740408408
	sure = 1.9599639845400545 // z of 97.5 %: added to told, the slip that is told from one other
)

// snoop solves, and while a reading does not fit, takes away its say and solves
// again; then, once lines that are far from straight are taken as such, gives back
// its say to any that turns out to fit after all. Where several might be the wrong
// one all keep a say, so small that they agree.
func (a *adjustment) snoop() error {
	if err := a.settle(); err != nil {
		return err
	}
	left := len(a.rowOf) + 10
	for ; left > 0; left-- {
		a.judge()
		worst := -1
		for row, i := range a.rowOf {
			j := &a.judged[i]
			if (j.State == Used || j.State == Doubted) && math.Abs(j.Standardised) > critical &&
				(worst < 0 || math.Abs(j.Standardised) > math.Abs(a.judged[a.rowOf[worst]].Standardised)) {
				worst = row
			}
		}
		if worst < 0 {
			break
		}
		if err := a.exclude(worst); err != nil {
			return err
		}
	}
	for range 2 {
		if a.net.write(a.x); !a.net.worse() {
			break
		}
		if err := a.settle(); err != nil {
			return err
		}
	}
	return a.readmit()
}

// judge works out every reading's residual, redundancy and standardised residual.
//
// A residual's variance is σ² less y·(1 + M + ... + M^(2·times−2))·y, y the half-solved
// row; a slip shows in it by 1 − y·(1 + ... + M^(times−1))·y/σ², see [times].
func (a *adjustment) judge() {
	rows := &a.sol.Rows
	if a.fresh || rows.Len() < len(a.rowOf) {
		return
	}
	a.fresh = true
	clear(a.pulls)
	a.loosen()
	for row, i := range a.rowOf {
		j := &a.judged[i]
		j.Residual = rows.Off(row)
		j.Fitted = j.Value - j.Residual
		j.Redundancy, j.Standardised, j.Shows = 0, 0, math.Inf(1)
		switch {
		case j.State == Unused:
			j.Residual, j.Fitted = 0, math.NaN()
		case j.State == Suspect:
			j.Redundancy = 1
			sigma := a.foretold(row)
			j.Standardised = j.Residual / sigma
			j.Shows = (critical + power) * sigma
		case a.hasSay(row):
			j.Redundancy = max(0, a.loose.shows[row])
			if j.Redundancy >= leastRedundancy {
				sigma := a.residual(row)
				j.Standardised = j.Residual / sigma
				j.Shows = (critical + power) * sigma / j.Redundancy
			}
		}
	}
}

// hasSay tells whether the row moves the unknowns.
func (a *adjustment) hasSay(row int) bool {
	s := a.judged[a.rowOf[row]].State
	cols, _ := a.sol.Rows.Row(row)
	return s != Unused && s != Suspect && len(cols) > 0
}

// residual gives the standard deviation of the residual of a row that has a say.
func (a *adjustment) residual(row int) float64 {
	return a.sigma[row] * sqrt(max(1e-12, a.loose.left[row]))
}

// pullsOf gives the pulls of a row that has a say.
func (a *adjustment) pullsOf(row int) pulled {
	if a.pulls[row][0] == nil {
		a.pulls[row] = newPulled(a.net.columns)
		a.sol.Rows.Scatter(a.half, row, 1/a.sigma[row])
		a.pull(a.pulls[row], a.half)
	}
	return a.pulls[row]
}

// foretold gives the standard deviation of what a row that has no say is off what
// the others say.
func (a *adjustment) foretold(row int) float64 {
	a.sol.Rows.Scatter(a.half, row, 1)
	a.pull(a.spare, a.half)
	s := a.judged[a.rowOf[row]].Sigma
	return sqrt(float64(s*s) + a.variance(a.spare))
}

// exclude takes away the say of the reading in the row, or of all those that may
// as well be the wrong one.
func (a *adjustment) exclude(worst int) error {
	group := a.alike(worst)
	if len(group) == 1 {
		a.doubtless(worst)
		j := &a.judged[a.rowOf[worst]]
		j.State = Suspect
		a.weight[worst] = 0
		if err := a.settle(); err != nil {
			return err
		}
		j.Slips = a.slips(worst, j.Value-a.sol.Rows.Off(worst), a.foretold(worst))
		return nil
	}
	much := math.Abs(a.judged[a.rowOf[worst]].Standardised)
	var members []int
	for _, row := range group {
		i := a.rowOf[row]
		j := &a.judged[i]
		// What all the others say it should read, in closed form.
		without := j.Value - j.Residual/j.Redundancy
		j.Slips = a.slips(row, without, a.residual(row)/j.Redundancy)
		members = append(members, i)
		j.State = Doubted
	}
	for _, row := range group {
		a.sigma[row] *= much
		a.weight[row] = 1 / float64(a.sigma[row]*a.sigma[row])
	}
	geom.Ascending(members)
	a.doubts = append(a.doubts, Doubt{members})
	return a.settle()
}

// alike gives the rows whose readings may as well be the wrong one as the worst
// row's: those beyond critical themselves whose standardised residual is less than
// the worst by no more than chance. Two such differ by chance by √(2(1 − ρ)), ρ
// being how far the two residuals go together.
func (a *adjustment) alike(worst int) []int {
	most := math.Abs(a.judged[a.rowOf[worst]].Standardised)
	group := []int{worst}
	for row, i := range a.rowOf {
		j := &a.judged[i]
		if row == worst || j.State == Suspect || !(math.Abs(j.Standardised) > critical) {
			continue
		}
		if most-math.Abs(j.Standardised) < told*sqrt(2*(1-a.together(row, worst)))+1e-6 {
			group = append(group, row)
		}
	}
	return group
}

// together gives how far the residuals of two rows go together, 0 to 1.
func (a *adjustment) together(row, other int) float64 {
	both := a.pullsOf(row).product(a.pullsOf(other), 2*times-1) * a.sigma[row] * a.sigma[other]
	return min(1, math.Abs(both)/(a.residual(row)*a.residual(other)))
}

// Tells gives, of every reading, the least slip in it, mm, that would be found and
// told to be in no other reading, 95 times out of 100; infinite when there is none.
//
// A slip d makes the reading's own standardised residual δ = d·redundancy/σ and
// another's ρ·δ; it is told from that one 39 times out of 40, to leave room for
// several others, when δ·(1 − ρ) ≥ (told + sure)·√(2(1 − ρ)).
func (r *Result) Tells() []float64 {
	a := r.adj
	out := make([]float64, len(r.Readings))
	for i := range out {
		j := &r.Readings[i]
		out[i] = j.Shows
		if j.State == Suspect || math.IsInf(j.Shows, 1) {
			continue
		}
		var most float64
		for row, k := range a.rowOf {
			if o := &r.Readings[k]; k != i && o.State != Suspect && !math.IsInf(o.Shows, 1) {
				most = max(most, a.together(a.row[i], row))
			}
		}
		if most > 1-1e-9 {
			out[i] = math.Inf(1)
			continue
		}
		out[i] = max(out[i], (told+sure)*sqrt(2/(1-most))*a.residual(a.row[i])/j.Redundancy)
	}
	return out
}

// doubtless gives the reading in the row its own standard deviation back.
func (a *adjustment) doubtless(row int) { a.sigma[row] = a.judged[a.rowOf[row]].Sigma }

// readmit gives back its say to each suspect that fits without it.
func (a *adjustment) readmit() error {
	for range len(a.rowOf) {
		best := -1
		for row, i := range a.rowOf {
			j := &a.judged[i]
			if j.State != Suspect {
				continue
			}
			j.Standardised = a.sol.Rows.Off(row) / a.foretold(row)
			if math.Abs(j.Standardised) <= critical &&
				(best < 0 || math.Abs(j.Standardised) < math.Abs(a.judged[a.rowOf[best]].Standardised)) {
				best = row
			}
		}
		if best < 0 {
			return nil
		}
		j := &a.judged[a.rowOf[best]]
		j.State, j.Slips = Used, nil
		a.weight[best] = 1 / float64(j.Sigma*j.Sigma)
		if err := a.settle(); err != nil {
			return err
		}
		a.judge()
	}
	return nil
}

// beyondRepair gives a fault for each group that contradicts itself so much that
// the shapes it bears on mean nothing.
func (a *adjustment) beyondRepair(doubts []Doubt) (faults []door.Fault) {
	const most = 25.0 // mm, the standard deviation left to each
	for _, d := range doubts {
		for _, i := range d.Readings {
			if row := a.row[i]; a.sigma[row] > most {
				others := ""
				for _, k := range d.Readings {
					if k != i {
						others += ", " + at(k)
					}
				}
				want := "in keeping with what is ordinary of a door; no other reading bears it out"
				if others != "" {
					want = "in keeping with " + others[2:] + ", and nothing tells which is right"
				}
				faults = append(faults, door.Fault{Path: at(i) + ".value", Value: door.Say(a.readings[i].Value), Want: want})
			}
		}
	}
	return faults
}
