package draw

import (
	"bytes"
	"image/color"
	"math"
	"strconv"
)

// fontStack is the page's own.
const fontStack = `system-ui, -apple-system, 'Segoe UI', Roboto, 'Helvetica Neue', Arial, sans-serif`

// SVG writes the drawing as a picture that stands by itself, in the palette's
// colours. Equal lists give equal bytes. It holds no style attribute, no script
// and no reference to anything outside it.
func (l *List) SVG(p *Palette) []byte {
	w := svg{l: l, p: p}
	width, height := w.number(l.Width), w.number(l.Height)
	w.say(`<svg xmlns="http://www.w3.org/2000/svg" width="`, width, `" height="`, height,
		`" viewBox="0 0 `, width, ` `, height, `" role="img" fill="none" stroke-linecap="round" stroke-linejoin="round" font-family="`, fontStack, "\">\n")
	w.element("title", l.Title)
	w.element("desc", l.Desc)
	for i := 0; i < len(l.Marks); {
		i = w.run(i)
	}
	w.say("</svg>\n")
	return w.b.Bytes()
}

type svg struct {
	l *List
	p *Palette
	b bytes.Buffer
}

func (w *svg) say(parts ...string) {
	for _, s := range parts {
		w.b.WriteString(s)
	}
}

// escape writes a text so that it stays a text in XML. By hand: encoding/xml would
// add a twentieth to the page's download for these few lines.
func (w *svg) escape(s string) {
	for _, r := range s {
		switch {
		case r == '&':
			w.b.WriteString("&amp;")
		case r == '<':
			w.b.WriteString("&lt;")
		case r == '>':
			w.b.WriteString("&gt;")
		case r == '"':
			w.b.WriteString("&#34;")
		case r < ' ' && r != '\t' && r != '\n' && r != '\r', r == 0xFFFE, r == 0xFFFF:
			w.b.WriteRune('\uFFFD') // XML has no such character
		default:
			w.b.WriteRune(r)
		}
	}
}

func (w *svg) element(name, text string) {
	if text == "" {
		return
	}
	w.say("<", name, ">")
	w.escape(text)
	w.say("</", name, ">\n")
}

// run writes the mark at i, together with those after it that differ from it in
// nothing but their points, and gives the index after them.
func (w *svg) run(i int) int {
	m := &w.l.Marks[i]
	switch m.Kind {
	case Text:
		w.text(m)
		return i + 1
	case Fill:
		w.say(`<path fill="`, hex(w.p[m.Ink]), `"`)
		w.opacity("fill", w.p[m.Ink])
		w.say(` d="`)
		w.path(m, true)
		w.say("\"/>\n")
		return i + 1
	}
	w.say(`<path stroke="`, hex(w.p[m.Ink]), `"`)
	w.opacity("stroke", w.p[m.Ink])
	w.say(` stroke-width="`, w.number(m.Width), `" d="`)
	for ; i < len(w.l.Marks); i++ {
		n := &w.l.Marks[i]
		if n.Kind != Stroke || n.Ink != m.Ink || n.Width != m.Width {
			break
		}
		w.path(n, n.Closed)
	}
	w.say("\"/>\n")
	return i
}

func (w *svg) path(m *Mark, closed bool) {
	for i, q := range w.l.Points[m.From:m.To] {
		c := "L"
		if i == 0 {
			c = "M"
		}
		w.say(c, w.number(q.X), " ", w.number(q.Y))
	}
	if closed {
		w.say("Z")
	}
}

func (w *svg) text(m *Mark) {
	q := w.l.Points[m.From]
	w.say(`<text x="`, w.number(q.X), `" y="`, w.number(q.Y), `" font-size="`, w.number(m.Size), `" fill="`, hex(w.p[m.Ink]), `"`)
	w.opacity("fill", w.p[m.Ink])
	switch m.Anchor {
	case Middle:
		w.say(` text-anchor="middle"`)
	case End:
		w.say(` text-anchor="end"`)
	}
	if m.Bold {
		w.say(` font-weight="700"`)
	}
	w.say(">")
	w.escape(m.Text)
	w.say("</text>\n")
}

func (w *svg) opacity(what string, c color.NRGBA) {
	if c.A != 255 {
		w.say(` `, what, `-opacity="`, w.number(float64(c.A)/255), `"`)
	}
}

// number writes a coordinate to a tenth of a pixel: fine enough for any printer,
// coarse enough that arithmetic's noise stays unseen, halves nudged so that it
// cannot tip them.
func (w *svg) number(x float64) string {
	const nudge = 1e-6
	s := strconv.FormatFloat(math.Floor(10*x+0.5+nudge)/10, 'f', 1, 64)
	if n := len(s) - 2; s[n:] == ".0" {
		s = s[:n]
	}
	if s == "-0" {
		s = "0"
	}
	return s
}

func hex(c color.NRGBA) string {
	const digits = "0123456789abcdef"
	b := [7]byte{'#'}
	for i, v := range [3]uint8{c.R, c.G, c.B} {
		b[1+2*i], b[2+2*i] = digits[v>>4], digits[v&15]
	}
	return string(b[:])
}
