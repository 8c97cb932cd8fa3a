package dxf

import (
	"math"
	"strconv"
)

// pt is a point of the drawing, mm, y up.
type pt struct{ x, y float64 }

// layer is a layer of the drawing: its name, its colour by number and whether its
// lines are dashed.
type layer struct {
	name   string
	colour int
	dashed bool
}

// writer writes group codes and their values, a line each.
type writer struct {
	b      []byte
	lo, hi pt
	any    bool
}

func (w *writer) pair(code int, value string) {
	c := strconv.Itoa(code)
	for range 3 - len(c) {
		w.b = append(w.b, ' ')
	}
	w.b = append(w.b, c...)
	w.b = append(w.b, "\r\n"...)
	w.b = append(w.b, value...)
	w.b = append(w.b, "\r\n"...)
}

func (w *writer) whole(code, n int) { w.pair(code, strconv.Itoa(n)) }

// real writes a number to a ten-thousandth of a millimetre.
func (w *writer) real(code int, x float64) {
	t := strconv.FormatFloat(x, 'f', 4, 64)
	if t == "-0.0000" {
		t = t[1:]
	}
	w.pair(code, t)
}

// at writes a point, whose x has the code, and makes room for it.
func (w *writer) at(code int, p pt) {
	if !w.any {
		w.lo, w.hi, w.any = p, p, true
	}
	w.lo = pt{min(w.lo.x, p.x), min(w.lo.y, p.y)}
	w.hi = pt{max(w.hi.x, p.x), max(w.hi.y, p.y)}
	w.point(code, p)
}

func (w *writer) point(code int, p pt) {
	w.real(code, p.x)
	w.real(code+10, p.y)
	w.real(code+20, 0)
}

// polyline lays a line of straight pieces; less than two points, or one that is no
// number, lay none.
func (w *writer) polyline(on layer, closed bool, pts ...pt) {
	if len(pts) < 2 || !sound(pts) {
		return
	}
	w.pair(0, "POLYLINE")
	w.pair(8, on.name)
	w.whole(66, 1) // vertices follow
	w.point(10, pt{})
	flags := 0
	if closed {
		flags = 1
	}
	w.whole(70, flags)
	for _, p := range pts {
		w.pair(0, "VERTEX")
		w.pair(8, on.name)
		w.at(10, p)
	}
	w.pair(0, "SEQEND")
	w.pair(8, on.name)
}

func (w *writer) line(on layer, a, b pt) {
	if !sound([]pt{a, b}) {
		return
	}
	w.pair(0, "LINE")
	w.pair(8, on.name)
	w.at(10, a)
	w.at(11, b)
}

// mark lays a single point.
func (w *writer) mark(on layer, p pt) {
	if !sound([]pt{p}) {
		return
	}
	w.pair(0, "POINT")
	w.pair(8, on.name)
	w.at(10, p)
}

// text lays a line of writing, its foot's left end at p.
func (w *writer) text(on layer, p pt, height float64, text string) {
	if text == "" || !sound([]pt{p}) {
		return
	}
	w.pair(0, "TEXT")
	w.pair(8, on.name)
	w.at(10, p)
	w.real(40, height)
	w.pair(1, escaped(text))
}

func sound(pts []pt) bool {
	for _, p := range pts {
		if math.IsNaN(p.x) || math.IsNaN(p.y) || math.IsInf(p.x, 0) || math.IsInf(p.y, 0) {
			return false
		}
	}
	return true
}

// escaped writes a text in ASCII: other letters as \U+ and four hexadecimal figures,
// which readers since release 13 turn back, and signs that would end the line or begin
// a code as a space. A letter beyond four figures is written as its two halves (UTF-16).
func escaped(text string) string {
	const most = 200 // letters: a line of release 12 holds 255
	var b []byte
	n := 0
	for _, r := range text {
		if n++; n > most {
			break
		}
		switch {
		case r < ' ' || r == 0x7f || r == '^':
			b = append(b, ' ')
		case r == '\\':
			b = append(b, '/')
		case r < 0x7f:
			b = append(b, byte(r))
		case r > 0xffff:
			r -= 0x10000
			b = hexed(b, 0xd800+r>>10)
			b = hexed(b, 0xdc00+r&0x3ff)
		default:
			b = hexed(b, r)
		}
	}
	return string(b)
}

func hexed(b []byte, r rune) []byte {
	const digits = "0123456789ABCDEF"
	b = append(b, `\U+`...)
	for shift := 12; shift >= 0; shift -= 4 {
		b = append(b, digits[r>>shift&15])
	}
	return b
}

// file writes the whole file: the entities that body lays, on layers.
func file(layers []layer, body func(w *writer)) []byte {
	var entities writer
	body(&entities)
	var w writer
	section := func(name string) { w.pair(0, "SECTION"); w.pair(2, name) }
	end := func() { w.pair(0, "ENDSEC") }
	variable := func(name string) { w.pair(9, name) }

	section("HEADER")
	variable("$ACADVER")
	w.pair(1, "AC1009")
	variable("$INSBASE")
	w.point(10, pt{})
	variable("$EXTMIN")
	w.point(10, entities.lo)
	variable("$EXTMAX")
	w.point(10, entities.hi)
	variable("$LUNITS") // decimal
	w.whole(70, 2)
	variable("$LUPREC")
	w.whole(70, 2)
	variable("$MEASUREMENT") // metric
	w.whole(70, 1)
	variable("$INSUNITS") // millimetres
	w.whole(70, 4)
	end()

	section("TABLES")
	table := func(name string, n int) { w.pair(0, "TABLE"); w.pair(2, name); w.whole(70, n) }
	endTable := func() { w.pair(0, "ENDTAB") }
	table("LTYPE", 2)
	w.lineType("CONTINUOUS", "Solid line")
	w.lineType("DASHED", "__ __ __", 12, -6)
	endTable()
	table("LAYER", len(layers)+1)
	w.layer(layer{"0", 7, false})
	for _, l := range layers {
		w.layer(l)
	}
	endTable()
	table("STYLE", 1)
	w.pair(0, "STYLE")
	w.pair(2, "STANDARD")
	w.whole(70, 0)
	w.real(40, 0)
	w.real(41, 1)
	w.real(50, 0)
	w.whole(71, 0)
	w.real(42, 20)
	w.pair(3, "txt")
	w.pair(4, "")
	endTable()
	end()

	section("BLOCKS")
	end()
	section("ENTITIES")
	w.b = append(w.b, entities.b...)
	end()
	w.pair(0, "EOF")
	return w.b
}

// lineType defines a kind of line by the lengths of its strokes, gaps below 0.
func (w *writer) lineType(name, about string, strokes ...float64) {
	w.pair(0, "LTYPE")
	w.pair(2, name)
	w.whole(70, 0)
	w.pair(3, about)
	w.whole(72, 65)
	w.whole(73, len(strokes))
	all := 0.0
	for _, s := range strokes {
		all += math.Abs(s)
	}
	w.real(40, all)
	for _, s := range strokes {
		w.real(49, s)
	}
}

func (w *writer) layer(l layer) {
	w.pair(0, "LAYER")
	w.pair(2, l.name)
	w.whole(70, 0)
	w.whole(62, l.colour)
	if l.dashed {
		w.pair(6, "DASHED")
	} else {
		w.pair(6, "CONTINUOUS")
	}
}
