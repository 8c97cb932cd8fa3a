package sheet

import (
	"strconv"
	"strings"
	"unicode/utf8"

	"leafwright/game/draw"
	"leafwright/game/measure"
)

// A flow sets text, tables and drawings down a page and goes on to the next one
// where it is full. All its lengths are px; [MM] makes them of mm.
type flow struct {
	a     *Ask
	pages []Page
	about string // stands at the foot of every page beside its number

	left, right  float64 // of the column being set
	top, foot, y float64 // of the room on a page, and how far it is filled
	half         int     // which of two columns is being set, 0 where there is one
	indent       float64 // how far in the column is being set
	turns        int     // how often the flow has gone on to a new column or page

	cell, cellBold style // of tables
}

// style is how a line of writing looks.
type style struct {
	size float64 // px
	bold bool
	ink  draw.Ink
}

const pt = 96.0 / 72 // px

// The styles.
var (
	titleStyle = style{18 * pt, true, draw.TextInk}
	headStyle  = style{13 * pt, true, draw.TextInk}
	bodyStyle  = style{11 * pt, false, draw.TextInk}
	boldStyle  = style{11 * pt, true, draw.TextInk}
	smallStyle = style{9 * pt, false, draw.TextMuted}
	cellStyle  = style{10 * pt, false, draw.TextInk}
	cellBold   = style{10 * pt, true, draw.TextInk}
)

const (
	margin   = 12 * MM // no printer's unprintable rim is wider
	footRoom = 14 * MM // of the line's check and the running foot

	lead  = 1.3  // from line to line, sizes
	rise  = 0.78 // of a size, above the baseline
	hair  = 0.25 * MM
	thick = 0.5 * MM
)

// newFlow begins a sheet; about stands at the foot of its pages.
func newFlow(a *Ask, about string) *flow {
	f := &flow{a: a, about: about, cell: cellStyle, cellBold: cellBold}
	f.newPage()
	return f
}

// l is the page being filled.
func (f *flow) l() *draw.List { return &f.pages[len(f.pages)-1].List }

func (f *flow) newPage() {
	f.pages = append(f.pages, Page{})
	l := f.l()
	l.Reset(f.a.Paper.Width*MM, f.a.Paper.Height*MM)
	if len(f.pages) == 1 { // a column goes on overleaf
		f.left, f.right = margin, l.Width-margin
	}
	f.top, f.foot = margin, l.Height-margin-footRoom
	f.y = f.top
	f.turns++
}

// columnsApart is between two columns of a page.
const columnsApart = 6 * MM

// halves sets what follows in two columns, down the left one and then the right.
func (f *flow) halves() {
	const least = 25 * MM // a lower column is not begun
	f.need(least)
	f.top = f.y
	f.into(1)
}

// into begins one of the two columns.
func (f *flow) into(half int) {
	f.half = half
	wide := (f.l().Width - 2*margin - columnsApart) / 2
	left := margin + float64(half-1)*(wide+columnsApart)
	f.left, f.right = left+f.indent, left+wide
	f.y = f.top
}

// onward goes on to the next column, of the next page after the last.
func (f *flow) onward() {
	switch f.half {
	case 1:
		f.turns++
		f.into(2)
	case 2:
		f.newPage()
		f.into(1)
	default:
		f.newPage()
	}
}

// need goes on to the next column when there is less room than so much in this one.
func (f *flow) need(height float64) {
	if f.y+height > f.foot && f.y > f.top {
		f.onward()
	}
}

// within sets something so far in.
func (f *flow) within(in float64, set func()) {
	f.indent += in
	f.left += in
	set()
	f.indent -= in
	f.left -= in
}

// space leaves some room free, none at a page's top.
func (f *flow) space(height float64) {
	if f.y > f.top {
		f.y += height
	}
}

func (f *flow) width() float64 { return f.right - f.left }

// free is the room of a paragraph set so far in: of two columns what is between them takes
// the widest face's excess.
func (f *flow) free(in float64) float64 {
	if f.half > 0 {
		return (f.width() - in) * wider
	}
	return f.width() - in
}

// wider than the estimate of a text's width is the widest face a browser may bring.
const wider = 1.03

// broken breaks a text into lines no wider than the room; a length wider than that is
// broken where it has a space, a word anywhere.
func broken(text string, st style, room float64) (out []string) {
	fits := func(s string) bool { return draw.TextWidth(s, st.size, st.bold)*wider <= room }
	start := func(lengths bool) (end int) { // the longest that fits and ends between words
		for i := 0; i <= len(text); i++ {
			if i == len(text) || text[i] == ' ' && (lengths || !inLength(text, i)) {
				if !fits(text[:i]) {
					break
				}
				end = i
			}
		}
		return end
	}
	for text != "" {
		end := start(false)
		if end == 0 {
			end = start(true)
		}
		if end == 0 && text[0] != ' ' { // not one word: as many letters as fit, one at least
			for end < len(text) {
				_, n := utf8.DecodeRuneInString(text[end:])
				if end > 0 && !fits(text[:end+n]) {
					break
				}
				end += n
			}
		}
		out = append(out, text[:end])
		for text = text[end:]; text != "" && text[0] == ' '; {
			text = text[1:]
		}
	}
	return out
}

// inLength tells whether the space at i stands inside a length or a time, as 5' 8 1/4", 12 mm
// or 4 h.
func inLength(text string, i int) bool {
	if i == 0 || i+1 == len(text) {
		return false
	}
	digit := func(c byte) bool { return '0' <= c && c <= '9' }
	before, after := text[i-1], text[i+1:]
	return (digit(before) || before == '\'') && (digit(after[0]) || strings.HasPrefix(after, "mm") || strings.HasPrefix(after, "min") || strings.HasPrefix(after, "h.") || strings.HasPrefix(after, "h "))
}

// height is what a text takes up set in lines no wider than the room.
func height(text string, st style, room float64) float64 {
	return float64(len(broken(text, st, room))) * lead * st.size
}

// set lays a text down from y on, its lines starting at x, and gives where it ends.
func set(l *draw.List, text string, st style, x, y, room float64) float64 {
	for _, s := range broken(text, st, room) {
		write(l, s, st, draw.Start, x, y+rise*st.size)
		y += lead * st.size
	}
	return y
}

// para sets a paragraph, its lines kept on one page where they fit on one.
func (f *flow) para(text string, st style) { f.hung("", text, st, 0) }

// title and heading set headings; a heading stays with what follows it.
func (f *flow) title(text string) { f.para(text, titleStyle) }

func (f *flow) heading(text string) {
	f.need(3 * lead * headStyle.size)
	f.space(3 * MM)
	f.para(text, headStyle)
	f.y += 0.5 * MM
}

// hung sets a paragraph whose lines begin so far in, with a mark before the first.
func (f *flow) hung(mark, text string, st style, in float64) {
	lines := broken(text, st, f.free(in))
	if all := float64(len(lines)) * lead * st.size; all < f.foot-f.top {
		f.need(all)
	}
	for i, s := range lines {
		f.need(lead * st.size)
		if i == 0 && mark != "" {
			write(f.l(), mark, style{st.size, true, st.ink}, draw.Start, f.left, f.y+rise*st.size)
		}
		write(f.l(), s, st, draw.Start, f.left+in, f.y+rise*st.size)
		f.y += lead * st.size
	}
}

// runIn sets a paragraph that begins with its name in bold.
func (f *flow) runIn(name, text string, st style) {
	bold := style{st.size, true, st.ink}
	more := draw.TextWidth(name, st.size, true) - draw.TextWidth(name, st.size, false)
	lines := broken(name+" "+text, st, f.free(more))
	if !strings.HasPrefix(lines[0], name) {
		f.para(name+" "+text, st)
		return
	}
	f.need(float64(len(lines)) * lead * st.size)
	for i, s := range lines {
		x, y := f.left, f.y+rise*st.size
		if i == 0 {
			write(f.l(), name, bold, draw.Start, x, y)
			x += draw.TextWidth(name+" ", st.size, true)
			s = strings.TrimPrefix(s[len(name):], " ")
		}
		write(f.l(), s, st, draw.Start, x, y)
		f.y += lead * st.size
	}
}

// box keeps a region of the column free for a drawing and gives its corners.
func (f *flow) box(height float64) (x0, y0, x1, y1 float64) {
	f.need(height)
	y0 = f.y
	f.y += height
	return f.left, y0, f.right, f.y
}

// rule draws a line across the column.
func (f *flow) rule() {
	line(f.l(), draw.Fine, hair, draw.Pt{X: f.left, Y: f.y}, draw.Pt{X: f.right, Y: f.y})
	f.y += 1 * MM
}

// Length of the check line, mm.
func checkLength(u measure.Unit) (mm float64, said string) {
	if u == measure.Inch {
		return 4 * measure.PerInch, "4 in"
	}
	return 100, "100 mm"
}

// finish writes the foot of every page, the check line on every kind of sheet, and gives
// them.
func (f *flow) finish(title, desc string) []Page {
	for i := range f.pages {
		l := &f.pages[i].List
		l.Title, l.Desc = title, desc
		number := "Page " + strconv.Itoa(i+1) + " of " + strconv.Itoa(len(f.pages))
		y := l.Height - margin
		write(l, number, smallStyle, draw.End, l.Width-margin, y-0.2*smallStyle.size)
		room := l.Width - 2*margin - draw.TextWidth(number, smallStyle.size, false) - 4*MM
		if about := broken(f.about, smallStyle, room); len(about) == 1 {
			write(l, about[0], smallStyle, draw.Start, margin, y-0.2*smallStyle.size)
		} else if len(about) > 1 {
			write(l, broken(f.about, smallStyle, room-draw.TextWidth(" …", smallStyle.size, false))[0]+" …", smallStyle, draw.Start, margin, y-0.2*smallStyle.size)
		}
		checkLine(l, f.a.Unit, margin, y-8.5*MM)
	}
	return f.pages
}

// checkLine draws a line of stated length, from x to the right: measured, it shows
// whether the print is to scale.
func checkLine(l *draw.List, u measure.Unit, x, y float64) {
	long, said := checkLength(u)
	tick := 1.6 * MM
	line(l, draw.Line, hair, draw.Pt{X: x, Y: y}, draw.Pt{X: x + long*MM, Y: y})
	for _, at := range [2]float64{x, x + long*MM} {
		line(l, draw.Line, hair, draw.Pt{X: at, Y: y - tick}, draw.Pt{X: at, Y: y + tick})
	}
	text := "Check the print: this line is " + said + " long."
	set(l, text, smallStyle, x+long*MM+3*MM, y-0.5*lead*smallStyle.size, l.Width-margin-x-long*MM-3*MM)
}
