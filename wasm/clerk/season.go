//go:build js

package main

import (
	"fmt"
	"strings"
	"syscall/js"

	"leafwright/game"
	"leafwright/game/hardware"
	"leafwright/game/words"
	"leafwright/geom/door"
)

// season is asked with
//
//	shown  the door: an option's place in the job, −1 as it stands, −2 as found
//
// and answers with
//
//	said    the year in a sentence
//	month   the door was read in, 0 January to 11 December; −1 not said
//	months  each with when (its name, and that the paint to come is on) and wider (how much
//	        more of the closing gap the leaf takes then than today, mm), says (the gap) and
//	        shows (what is drawn of it)
//	graph   the closing gap through the year, SVG, a group a month; key says what it shows
//	rows    the year as a table, its heads first
//	fitting, air, moves  sentences: what to fit it to today, where it hangs, how it moves
//	caution how far the figures go
func (c *clerk) season(q js.Value, job *game.Job) map[string]any {
	tried := shown(q, job)
	at := hardware.Usual(game.WhereOf(job))
	year := hardware.SeasonOf(job, &tried, at)
	say := speaker(q, job)
	painted := ""
	if year.Fit[door.LatchSide].Paint != 0 {
		painted = ", painted"
	}
	wanted := say.Range(year.Wanted.Least, year.Wanted.Most)
	if year.Wanted.Most <= 0 {
		wanted = say.Range(year.Wanted.Least, year.Wanted.Least) + " or more"
	}
	table := year.Rows(say)
	table[0][0], table[0][len(table[0])-1] = "month", "is"
	rows, months := []any{texts(table[0])}, []any{}
	for m, row := range table[1:] {
		rows = append(rows, texts(row))
		months = append(months, map[string]any{
			"when": row[0] + painted, "wider": year.Closing[0] - year.Least[m], "says": row[0] + painted + ": " + row[3] + ", " + row[4],
			"shows": "The drawing shows the leaf as in " + row[0] + ": " + thanToday(row[2], painted != "") + ".",
		})
	}
	fitting, caution := year.Fitting(say), hardware.Caution
	if game.Rated(job) {
		fitting, caution = nil, hardware.RatedLeaf+" "+caution
	}
	return map[string]any{
		"fault": "", "said": year.Headline(say), "month": at.Month, "months": months, "rows": rows, "graph": graph(&year, say),
		"key":     "Bars: the closing gap, from its least to its most. Shaded: " + wanted + ", as wanted. Line: no gap.",
		"fitting": texts(fitting), "air": texts(year.AirLines()), "moves": texts(year.Moves(say, tried.Anatomy.Make)),
		"caution": caution,
	}
}

// graph draws the closing gap of each month from its least to its most, over the gap
// wanted. A month stands where the thumb of a slider as wide as the drawing does; the
// scale stands out to the left of it: no gap, and the limits wanted. The greatest and the
// least gap of the year have their figures, each in a row of its own over and under all
// that is drawn, so that neither stands across a mark or the band's edge.
func graph(year *hardware.Season, say *words.Speaker) string {
	const wide, thumb, top, high, text, half = 336.0, 12.0, 20.0, 96.0, 14.0, 26.0 // px
	least, most := year.Wanted.Least, year.Wanted.Most
	lo, hi := 0.0, max(least, most)
	for m := range year.Least {
		lo, hi = min(lo, year.Least[m]), max(hi, year.Most[m])
	}
	if hi <= lo {
		hi = lo + 1
	}
	if most <= 0 {
		most = hi
	}
	x := func(month int) float64 { return thumb + float64(month)*(wide-2*thumb)/11 }
	y := func(mm float64) float64 { return top + high*(hi-mm)/(hi-lo) }
	var b strings.Builder
	fmt.Fprintf(&b, `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 %.0f 152" aria-hidden="true" focusable="false">`, wide)
	fmt.Fprintf(&b, `<rect y="%.1f" width="%.0f" height="%.1f"/><path class="axes" d="M0 %.1fH%.0f"/>`, y(most), wide, max(0, y(least)-y(most)), y(0), wide)
	length := func(mm float64) string {
		if say.Length != nil {
			return say.Length(mm)
		}
		return words.Millimetres(mm)
	}
	b.WriteString(`<g class="scale">`)
	for i, mm := range [3]float64{0, year.Wanted.Least, year.Wanted.Most} {
		if i == 0 || mm > 0 && (i == 1 && y(0)-y(mm) > text || i == 2 && y(least)-y(mm) > text) {
			fmt.Fprintf(&b, `<text x="-4" y="%.1f">%s</text>`, y(mm)+4, strings.TrimSuffix(strings.TrimSuffix(length(mm), " mm"), ".0"))
		}
	}
	b.WriteString("</g>")
	first, last := 0, 0 // the months of the least gap and of the greatest
	for m := range year.Least {
		if year.Least[m] < year.Least[first] {
			first = m
		}
		if year.Most[m] > year.Most[last] {
			last = m
		}
	}
	for _, at := range [2]struct {
		month         int
		mm, line, row float64
	}{{last, year.Most[last], top - 4, 12}, {first, year.Least[first], top + high + 4, 133}} {
		fmt.Fprintf(&b, `<path class="axes" d="M%.1f %.1fV%.1f"/><text x="%.1f" y="%.0f">%s</text>`,
			x(at.month), y(at.mm), at.line, min(max(x(at.month), half), wide-half), at.row, length(at.mm))
	}
	for m, name := range hardware.Months {
		from := y(year.Most[m])
		fmt.Fprintf(&b, `<g data-month="%d"><path d="M%.1f %.1fV%.1f"/><text x="%.1f" y="148">%s</text></g>`, m, x(m), from, max(y(year.Least[m]), from+3), x(m), name[:1])
	}
	b.WriteString("</svg>")
	return b.String()
}

// thanToday says in words how the leaf is against today.
func thanToday(by string, painted bool) string {
	said := "as wide as today"
	if mm, wider := strings.CutPrefix(by, "+"); wider {
		said = mm + " wider than today"
	} else if mm, narrower := strings.CutPrefix(by, "−"); narrower {
		said = mm + " narrower than today"
	}
	if painted {
		said += ", and painted; the paint is drawn at the closing edge alone"
	}
	return said
}

// shown is the door that the question's page shows.
func shown(q js.Value, job *game.Job) game.Tried {
	switch i := q.Get("shown").Int(); {
	case i >= 0 && i < len(job.Options):
		return job.Try(i)
	case i == asFound:
		return job.Found()
	}
	return job.Stands()
}

// asFound is what the page calls the door before anything was done to it.
const asFound = -2
