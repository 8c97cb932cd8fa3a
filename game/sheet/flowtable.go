package sheet

import (
	"strings"

	"leafwright/game/draw"
)

// blank is a table's cell to write in with a pencil.
const blank = " "

const (
	cellGap  = 1.2 * MM // beside a cell's text
	cellOver = 1.0 * MM // above it
	cellLow  = 0.6 * MM // below it
)

// table sets rows under heads, the columns as wide as their shares of the column; rows
// are kept whole, and the heads come again on a new page. No heads, no row of them.
func (f *flow) table(shares []float64, heads []string, rows [][]string) {
	whole := (f.foot - f.top) / 2
	if f.half > 0 { // a column is soon half empty
		whole /= 2
	}
	if all := f.tableHeight(shares, heads, rows); all < whole {
		f.need(all)
	}
	for i, r := range rows {
		on, more := f.turns, 0.0
		if i == 0 && len(heads) > 0 {
			more = f.rowHeight(shares, heads, f.cellBold)
		}
		f.need(f.rowHeight(shares, r, f.cell) + more)
		if len(heads) > 0 && (i == 0 || f.turns != on) {
			f.row(shares, heads, f.cellBold)
		}
		f.row(shares, r, f.cell)
	}
	f.y += 1 * MM
}

// tableHeight is what a table takes up on one page.
func (f *flow) tableHeight(shares []float64, heads []string, rows [][]string) float64 {
	tall := 1 * MM
	if len(heads) > 0 {
		tall += f.rowHeight(shares, heads, f.cellBold)
	}
	for _, r := range rows {
		tall += f.rowHeight(shares, r, f.cell)
	}
	return tall
}

// fitted gives columns for shares of which some are 0: those are as wide as their cells need to
// stand on one line, heads broken between words; the others share what is left.
func (f *flow) fitted(shares []float64, heads []string, rows [][]string) []float64 {
	out, left, sum := make([]float64, len(shares)), f.width(), 0.0
	for i, s := range shares {
		if sum += s; s > 0 {
			continue
		}
		for _, r := range rows {
			out[i] = max(out[i], draw.TextWidth(r[i], f.cell.size, false))
		}
		for _, word := range strings.Fields(heads[i]) {
			out[i] = max(out[i], draw.TextWidth(word, f.cellBold.size, true))
		}
		out[i] = out[i]*wider + 2*cellGap + 1
		left -= out[i]
	}
	for i, s := range shares {
		if s > 0 {
			out[i] = max(left, 0) * s / sum
		}
	}
	return out
}

// columns calls put for every cell with where it stands.
func (f *flow) columns(shares []float64, cells []string, put func(text string, x, wide float64)) {
	sum := 0.0
	for _, s := range shares {
		sum += s
	}
	x := f.left
	for i, s := range shares {
		w := s / sum * f.width()
		if i < len(cells) {
			put(cells[i], x, w)
		}
		x += w
	}
}

func (f *flow) rowHeight(shares []float64, cells []string, st style) float64 {
	tall := lead * st.size
	f.columns(shares, cells, func(text string, _, wide float64) {
		tall = max(tall, height(text, st, wide-2*cellGap))
	})
	return tall + cellOver + cellLow
}

// row sets one row; what it takes up is [flow.rowHeight].
func (f *flow) row(shares []float64, cells []string, st style) {
	l, end := f.l(), f.y+f.rowHeight(shares, cells, st)
	f.columns(shares, cells, func(text string, x, wide float64) {
		if text == blank {
			outline(l, draw.Fine, hair, draw.Pt{X: x + cellGap/2, Y: f.y + 0.5*MM}, draw.Pt{X: x + wide - cellGap/2, Y: f.y + 0.5*MM},
				draw.Pt{X: x + wide - cellGap/2, Y: end - 0.5*MM}, draw.Pt{X: x + cellGap/2, Y: end - 0.5*MM})
			return
		}
		set(l, text, st, x+cellGap, f.y+cellOver, wide-2*cellGap)
	})
	f.y = end
	line(l, draw.Fine, hair, draw.Pt{X: f.left, Y: f.y}, draw.Pt{X: f.right, Y: f.y})
}

// twoTables sets two tables side by side.
func (f *flow) twoTables(shares [2][]float64, heads [2][]string, rows [2][][]string) {
	f.beside(func(i int) float64 { return f.tableHeight(shares[i], heads[i], rows[i]) },
		func() { f.table(shares[0], heads[0], rows[0]) }, func() { f.table(shares[1], heads[1], rows[1]) })
}

// beside sets two things side by side in the halves of the column, on one page where
// they fit on one; tall tells how high either is in its half.
func (f *flow) beside(tall func(i int) float64, first, second func()) {
	const between = columnsApart
	left, right := f.left, f.right
	half := (right - left - between) / 2
	f.right = left + half
	if room := max(tall(0), tall(1)); room < f.foot-f.top {
		f.need(room)
	}
	page, y := len(f.pages), f.y
	f.right = left + half
	first()
	after, ended := f.y, len(f.pages)
	if ended == page {
		f.y = y
	}
	f.left, f.right = left+half+between, right
	second()
	if len(f.pages) == ended {
		f.y = max(f.y, after)
	}
	f.left, f.right = left, right
}
