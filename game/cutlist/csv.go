package cutlist

import (
	"math"
	"strconv"
	"strings"

	"leafwright/game/measure"
)

// figures are the decimals lengths are written to: a hundredth of a millimetre, or a
// ten-thousandth of an inch, which is finer.
func figures(u measure.Unit) (unit string, per float64, decimals int) {
	if u == measure.Inch {
		return "in", measure.PerInch, 4
	}
	return "mm", 1, 2
}

// CSV writes the table, lengths in the unit as decimals; amounts in a note's words
// stay as its speaker says them.
func CSV(rows []Row, u measure.Unit) []byte {
	unit, per, decimals := figures(u)
	b := []byte("\ufeff")
	line := func(cells ...string) {
		for i, c := range cells {
			if i > 0 {
				b = append(b, ',')
			}
			b = append(b, quoted(c)...)
		}
		b = append(b, '\r', '\n')
	}
	length := func(mm float64) string { return number(mm, per, decimals) }
	in := " (" + unit + ")"
	line("row", "move", "part", "measured from", "place"+in, "open or bevel (degrees)",
		"as found"+in, "as it stands"+in, "after"+in, "change"+in,
		"least wanted"+in, "most wanted"+in, "after is", "note")
	for i := range rows {
		r := &rows[i]
		line(safe(r.What), safe(r.Move), safe(r.Part), safe(r.From), length(r.Place), number(r.Open, 1, 3),
			length(r.Found), length(r.Stands), length(r.After), length(r.Change),
			length(r.Least), length(r.Most), safe(r.Judged), safe(r.Note))
	}
	return b
}

// number writes a number of so many mm to the unit, nothing for NaN and no minus
// before nought.
func number(x, per float64, decimals int) string {
	if math.IsNaN(x) {
		return ""
	}
	t := strconv.FormatFloat(x/per, 'f', decimals, 64)
	if rest, below := strings.CutPrefix(t, "-"); below && strings.Trim(rest, "0.") == "" {
		return rest
	}
	return t
}

// safe keeps a text from being taken for a formula: one that begins so, spaces aside,
// has an apostrophe before it. Full-width signs count as well, for some programs take
// them.
func safe(text string) string {
	head := strings.TrimLeft(text, " \t\r\n\u00a0\u3000")
	if head != "" && strings.ContainsRune("=+-@＝＋－＠", []rune(head)[0]) || strings.HasPrefix(text, "\t") || strings.HasPrefix(text, "\r") {
		return "'" + text
	}
	return text
}

// quoted puts quotes round what needs them (RFC 4180, section 2, rules 5 to 7).
func quoted(cell string) string {
	if !strings.ContainsAny(cell, "\",\r\n") {
		return cell
	}
	return `"` + strings.ReplaceAll(cell, `"`, `""`) + `"`
}
