package sheet_test

import (
	"math"
	"regexp"
	"strconv"
	"strings"

	"leafwright/game/draw"
	"leafwright/game/measure"
	"leafwright/game/sheet"
	"leafwright/geom"
	"leafwright/geom/door"
)

// What follows carries a marking-out sheet out as somebody would who has nothing but the
// sheet and the door: it reads the pages' text and does to the shapes what stands there.

// paperCut is a table of marks along an edge; paperSeat a line about a hinge.
type paperCut struct {
	what   string // of the amounts
	from   string // the datum
	places []float64
	amount []float64
	missed float64 // by how much the first and the last place miss the edge's two ends as it is then
}

type paperSeat struct {
	hinge, what string
	then        float64
}

// paperMove is a move as the sheet has it.
type paperMove struct {
	said  string
	cuts  []paperCut
	seats []paperSeat
	back  float64 // of a bevel
}

// textsOf gives what is written on the pages, in the order it is laid down.
func textsOf(pages []sheet.Page) (all []string) {
	for i := range pages {
		for _, m := range pages[i].Marks {
			if m.Kind == draw.Text {
				all = append(all, m.Text)
			}
		}
	}
	return all
}

var moveLine = regexp.MustCompile(`^Move (\d+): (.*)`)

// readSheet reads the moves off a marking-out sheet.
func readSheet(pages []sheet.Page, unit measure.Unit) map[int]*paperMove {
	moves := map[int]*paperMove{}
	var m *paperMove
	texts := textsOf(pages)
	begun := false
	for i := 0; i < len(texts); i++ {
		t := texts[i]
		if t == "The work, in this order" {
			begun = true
		}
		if strings.HasPrefix(t, "Offer it up") {
			break
		}
		if !begun {
			continue
		}
		if s := moveLine.FindStringSubmatch(t); s != nil {
			n, _ := strconv.Atoi(s[1])
			m = &paperMove{said: s[2]}
			moves[n] = m
			for i+1 < len(texts) && !strings.Contains(m.said, "About") { // the sentence's other lines
				i++
				m.said += " " + texts[i]
			}
			continue
		}
		if m == nil {
			continue
		}
		if s, ok := strings.CutPrefix(t, "Set the bevel: over the thickness of "); ok {
			for !strings.HasSuffix(s, ".") {
				i++
				s += " " + texts[i]
			}
			s = s[strings.Index(s, "stands back ")+len("stands back "):]
			m.back = mustRead(s[:strings.Index(s, " from the ")], unit)
		}
		switch {
		case t == "Up from the", strings.HasPrefix(t, "Up from the f"), t == "From the", strings.HasPrefix(t, "From the h"):
			i = m.readCut(texts, i, unit)
		case strings.HasPrefix(t, "At the hinges"):
			i = m.readSeats(texts, i, unit)
		}
	}
	return moves
}

func mustRead(s string, unit measure.Unit) float64 {
	if strings.HasPrefix(s, "under ") { // what can be marked
		return 0
	}
	l, err := measure.Read(strings.ReplaceAll(s, "−", "-"), unit)
	if err != nil {
		panic(s + ": " + err.Error())
	}
	return l.MM
}

// readCut reads a table of marks whose head begins at i and gives where it ends. A table
// that goes on overleaf has its head again.
func (m *paperMove) readCut(texts []string, i int, unit measure.Unit) int {
	var c paperCut
	columns := 3
	heads := ""
	for ; ; i++ {
		if _, err := measure.Read(texts[i], unit); err == nil {
			break
		}
		heads += texts[i] + " "
	}
	for _, what := range []string{"Take off", "Strip, high", "Pack out", "Stop behind"} {
		if from, _, there := strings.Cut(heads, what); there {
			c.from, c.what = from, what
		}
	}
	if c.what == "Stop behind" {
		columns = 2
	}
	for ; i+columns <= len(texts); i += columns {
		place, err := measure.Read(texts[i], unit)
		amount, err2 := measure.Read(texts[i+1], unit)
		if err != nil || err2 != nil {
			break
		}
		c.places, c.amount = append(c.places, place.MM), append(c.amount, amount.MM)
	}
	if n := len(m.cuts); n > 0 && m.cuts[n-1].what == c.what && c.places[0] > m.cuts[n-1].places[0] {
		last := &m.cuts[n-1]
		last.places, last.amount = append(last.places, c.places...), append(last.amount, c.amount...)
	} else {
		m.cuts = append(m.cuts, c)
	}
	return i - 1
}

var hingeName = regexp.MustCompile(`^((top|middle|bottom) hinge|hinge \d from the top|all hinges)$`)

// readSeats reads a table of what changes at the hinges.
func (m *paperMove) readSeats(texts []string, i int, unit measure.Unit) int {
	for i += 3; i < len(texts); {
		cell, k := "", i
		for ; k < min(i+6, len(texts)); k++ { // what it is may take lines
			if _, err := measure.Read(texts[k], unit); err == nil {
				break
			}
			cell += " " + texts[k]
		}
		hinge, what, _ := strings.Cut(strings.TrimSpace(cell), ": ")
		if hinge = strings.ToLower(hinge); !hingeName.MatchString(hinge) || k+1 >= len(texts) {
			break
		}
		m.seats = append(m.seats, paperSeat{hinge, what, mustRead(texts[k+1], unit)})
		i = k + 2
	}
	return i - 1
}

// at gives a table's amount at a place, straight between the marks.
func (c *paperCut) at(s float64) float64 {
	n := len(c.places)
	if n == 1 || s <= c.places[0] {
		return c.amount[0]
	}
	for i := 1; i < n; i++ {
		if s <= c.places[i] {
			t := (s - c.places[i-1]) / (c.places[i] - c.places[i-1])
			return c.amount[i-1] + t*(c.amount[i]-c.amount[i-1])
		}
	}
	return c.amount[n-1]
}

// off changes an edge by the table's amounts, the table beginning at the datum. The edge
// becomes a polyline of many pieces.
func (c *paperCut) off(p geom.Profile, datum, end, sign float64) geom.Profile {
	c.missed = max(c.places[0], math.Abs(c.places[len(c.places)-1]-(end-datum)))
	var at []float64
	for _, s := range p {
		at = append(at, s.At)
	}
	for _, s := range c.places {
		at = append(at, s+datum)
	}
	at = append(at, datum, end)
	geom.Ascending(at)
	var out geom.Profile
	for i, s := range at {
		if i == 0 || s > at[i-1] {
			out = append(out, geom.Station{At: s, Value: p.At(s) + sign*c.at(s-datum)})
		}
	}
	return out
}

// carryOut does a move to the door. trade is what the sentence begins with.
func (m *paperMove) carryOut(d *door.Door) {
	for i := range m.cuts {
		m.cut(d, &m.cuts[i])
	}
	if m.back > 0 {
		setback(d, m)
	}
	for _, q := range m.seats {
		q.carryOut(d)
	}
}

// edges are what the sentences call them, the longest names first.
var edgeNames = []struct {
	name string
	edge door.Edge
}{
	{"closing edge", door.LatchSide}, {"hanging edge", door.HingeSide}, {"lock edge", door.LatchSide}, {"hinge edge", door.HingeSide},
	{"hinge jamb", door.HingeSide}, {"latch jamb", door.LatchSide}, {"lock jamb", door.LatchSide}, {"head", door.HeadSide}, {"top", door.HeadSide}, {"foot", door.FloorSide},
}

func edgeIn(said string) door.Edge {
	best, at := door.Edge(0), len(said)
	for _, e := range edgeNames {
		if i := strings.Index(said, "the "+e.name); i >= 0 && i < at {
			best, at = e.edge, i
		}
	}
	return best
}

func (m *paperMove) cut(d *door.Door, c *paperCut) {
	said := m.said
	if i := strings.Index(said, "onto the "); i >= 0 {
		said = said[i:]
	}
	if i := strings.Index(said, "to the "); i >= 0 && strings.HasPrefix(said, "Glue the offcut") {
		said = said[i:]
	}
	e := edgeIn(said)
	l, f := &d.Leaf, &d.Frame
	k := l.Corners(0)
	hinge, latch := f.HeadCorners()
	switch {
	case c.what == "Stop behind":
		front := []geom.Profile{f.HingeFront, f.LatchFront, f.HeadFront}[e]
		stop := []*geom.Profile{&f.HingeStop, &f.LatchStop, &f.HeadStop}[e]
		datum := hinge.X
		switch e {
		case door.HingeSide:
			datum = d.Floor.At(f.HingeJamb.At(0), 0)
		case door.LatchSide:
			datum = d.Floor.At(f.LatchJamb.At(0), 0)
		}
		var p geom.Profile
		for i, s := range c.places {
			p = append(p, geom.Station{At: s + datum, Value: front.At(s+datum) - c.amount[i]})
		}
		*stop = p
	case strings.HasPrefix(c.from, "Up from the floor"):
		if e == door.HingeSide {
			sign := -1.0
			if c.what == "Pack out" {
				sign = 1
			}
			f.HingeJamb = c.off(f.HingeJamb, d.Floor.At(f.HingeJamb.At(0), 0), hinge.Y, sign)
			return
		}
		sign := 1.0
		if c.what == "Pack out" {
			sign = -1
		}
		f.LatchJamb = c.off(f.LatchJamb, d.Floor.At(f.LatchJamb.At(0), 0), latch.Y, sign)
	case strings.HasPrefix(c.from, "From the hinge jamb"):
		sign := 1.0
		if c.what == "Pack out" {
			sign = -1
		}
		f.Head = c.off(f.Head, hinge.X, latch.X, sign)
	default:
		sign := 1.0
		if c.what != "Take off" {
			sign = -1
		}
		switch e {
		case door.HingeSide:
			l.Hanging = c.off(l.Hanging, k.HangingFoot.Y, k.HangingHead.Y, sign)
		case door.LatchSide:
			l.Closing = c.off(l.Closing, k.ClosingFoot.Y, k.ClosingHead.Y, -sign)
		case door.HeadSide:
			l.Top = c.off(l.Top, k.HangingHead.X, k.ClosingHead.X, -sign)
		default:
			l.Bottom = c.off(l.Bottom, k.HangingFoot.X, k.ClosingFoot.X, sign)
		}
	}
}

func setback(d *door.Door, m *paperMove) {
	angle := geom.Angle(math.Atan(m.back / d.Leaf.Thickness))
	if strings.Contains(m.said, "backwards") {
		angle = -angle
	}
	if edgeIn(m.said) == door.HingeSide {
		d.Leaf.HangingBevel = angle
	} else {
		d.Leaf.ClosingBevel = angle
	}
}

func (q paperSeat) carryOut(d *door.Door) {
	i := len(d.Hinges) - 1
	switch {
	case q.hinge == "all hinges":
		for i := range d.Hinges {
			q.on(d, i)
		}
		return
	case strings.HasPrefix(q.hinge, "top"):
		i = 0
	case strings.HasPrefix(q.hinge, "middle"):
		i = 1
	case strings.HasPrefix(q.hinge, "hinge "):
		n, _ := strconv.Atoi(strings.Fields(q.hinge)[1])
		i = n - 1
	}
	q.on(d, i)
}

// on does it to the i-th hinge.
func (q paperSeat) on(d *door.Door, i int) {
	h := &d.Hinges[i]
	has := func(parts ...string) bool {
		for _, p := range parts {
			if !strings.Contains(q.what, p) {
				return false
			}
		}
		return true
	}
	head, _ := d.Frame.HeadCorners()
	switch {
	case has("below the leaf's top"):
		h.LeafHeight = d.Leaf.Corners(0).HangingHead.Y - q.then - h.Height/2
	case has("below the head"):
		h.JambHeight = head.Y - q.then - h.Height/2
	case has("in the leaf, deep"):
		h.LeafGain = q.then
	case has("in the jamb, deep"):
		h.JambGain = q.then
	case has("on the leaf, thick"):
		h.LeafPacker = q.then
	case has("on the jamb, thick"):
		h.JambPacker = q.then
	case has("frame's front edge"):
		h.Proud += q.then - h.Pin // the leaf goes with its pin
		h.Pin = q.then
	case has("leaf's knuckle face"):
		h.Proud = h.Pin - q.then
	case has("plates, high"):
		h.Height = q.then
	case has("folded shut"):
		h.Closed = q.then
	default:
		panic(q.what)
	}
}
