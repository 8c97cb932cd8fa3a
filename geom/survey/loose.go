package survey

import "leafwright/geom/survey/lsq"

// looseness is how loosely the shapes hold each reading that has a say, by its row:
// the part of a slip that shows in its residual, and the part of its variance that
// the residual's is.
type looseness struct {
	shows, left []float64
	rows        []int
	half        [][]float64 // of those rows, half-solved
	kept, twice [][]float64
}

// loosen works it out.
//
// With Y the half-solved rows, over their standard deviations, N = JᵀWJ + P is
// M = 1 − Y·Yᵀ (see [times]). So with R = 1 − Yᵀ·Y the part of a slip that shows,
// 1 − y·(1 + M + ... + M^(k−1))·y with k = times, is on the diagonal of R^k, and what
// is left of a variance on that of R^(2k−1). Where there are more readings than
// unknowns each is pulled by itself, which then is less work.
func (a *adjustment) loosen() {
	l := &a.loose
	if l.shows == nil {
		l.shows, l.left = make([]float64, len(a.rowOf)), make([]float64, len(a.rowOf))
	}
	l.rows = l.rows[:0]
	for row := range a.rowOf {
		if a.hasSay(row) {
			l.rows = append(l.rows, row)
		}
	}
	if len(l.rows) > a.net.columns {
		for _, row := range l.rows {
			p := a.pullsOf(row)
			l.shows[row], l.left[row] = 1-p.product(p, times), 1-p.product(p, 2*times-1)
		}
		return
	}
	m := len(l.rows)
	l.half = table(l.half, m, a.net.columns)
	l.kept, l.twice = table(l.kept, m, m), table(l.twice, m, m)
	for i, row := range l.rows {
		a.sol.Rows.Scatter(l.half[i], row, 1/a.sigma[row])
		a.sol.Factor.Half(l.half[i], l.half[i])
		for j, y := range l.half[:i+1] {
			v := -lsq.Dot(l.half[i], y)
			if i == j {
				v++
			}
			l.kept[i][j], l.kept[j][i] = v, v
		}
	}
	for i, r := range l.kept {
		for j, q := range l.kept[:i+1] {
			v := lsq.Dot(r, q)
			l.twice[i][j], l.twice[j][i] = v, v
		}
	}
	for i, row := range l.rows { // times is 3: R³, and R⁵ as R²·R³
		var left float64
		for j, q := range l.twice[:i+1] {
			v := lsq.Dot(l.kept[i], q)
			both := float64(v * l.twice[i][j])
			left += both
			if i == j {
				l.shows[row] = v
			} else {
				l.left[l.rows[j]] += both
			}
		}
		l.left[row] = left
	}
}

// table gives rows of so many numbers, in the memory of t where it is as large.
func table(t [][]float64, rows, cols int) [][]float64 {
	if len(t) < rows || rows > 0 && len(t[0]) != cols {
		memory := make([]float64, rows*cols)
		t = make([][]float64, rows)
		for i := range t {
			t[i], memory = memory[:cols:cols], memory[cols:]
		}
	}
	return t[:rows]
}
