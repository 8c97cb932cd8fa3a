package game

import (
	"strings"

	"leafwright/game/measure"
	"leafwright/geom/door"
	"leafwright/geom/timber"
)

// The fields of house, paint, moisture, prices and voids are rows: the page's first
// program has no room for a function a field.

// entry is one of them.
type entry struct {
	name, label, help string
	words             string // of a word: with | between, each its label after = where that is another
	none              string // the word for nothing said; "" where it may not be left out
	unit              string // of a number that is no length
	most              float64
	need              bool // of a number: may not be left out
}

// The groups, as [spot] counts them.
const (
	ofHouse = iota
	ofLeaf
	ofFrame
	ofMeter
	ofPrices
	ofVoid
)

// plainUnit is the unit of a number that has none.
const plainUnit = " "

// unsaid is the word for what is not said.
const unsaid = "other"

var houseRows = []entry{
	{name: "region", label: "Country", none: unsaid, words: unsaid + "=not said|" + string(timber.UK) + "|" + string(timber.AU) + "|" + string(timber.NZ) + "|" + string(timber.US)},
	{name: "built", label: "Built in the year", help: "0 where it is not known.", unit: plainUnit, most: 2200},
	{name: "reclaimed", label: "The leaf came from elsewhere"},
	{name: "outer", label: "Outer door"},
	{name: "escape", label: "On an escape route"},
	{name: "toilet", label: "Of a small toilet room"},
	{name: "paid", label: "The work is paid"},
	{name: "climate", label: "Climate", none: unsaid, words: unsaid + "=not said|" + string(timber.Maritime) + "|" + string(timber.Continental) + "|" +
		string(timber.DrySummer) + "|" + string(timber.DampSummer) + "|" + string(timber.Tropical)},
	{name: "room", label: "Room", none: unsaid, words: unsaid + "=not said|" + string(timber.Heated) + "|" + string(timber.Unheated) + "|" + string(timber.Washroom) + "|" + string(timber.Outside)},
	{name: "south", label: "South of the equator"},
	{name: "month", label: "Month it was read in", none: unsaid,
		words: unsaid + "=not said|january|february|march|april|may|june|july|august|september|october|november|december"},
	{name: "solid_stops", label: "The frame's stops are worked out of the solid", help: "Not planted: planed back or packed."},
}

const (
	coatsMost = 30
	paints    = string(timber.OldPaint) + "=old paint|" + string(timber.Primer) + "|" + string(timber.Enamel) + "=waterborne enamel|" +
		string(timber.Alkyd) + "=solvent-borne gloss|" + string(timber.Unbuilt) + "=oil, stain or wax"
)

var coatRows = []entry{
	{name: "on", label: "coats on it now", unit: plainUnit, most: coatsMost},
	{name: "old", label: "their kind", none: string(timber.OldPaint), words: paints},
	{name: "film", label: "their thickness, measured", most: 5},
	{name: "strip", label: "they are stripped"},
	{name: "primer", label: "coats of primer to come", unit: plainUnit, most: coatsMost},
	{name: "to_come", label: "coats to come after it", unit: plainUnit, most: coatsMost},
	{name: "kind", label: "kind to come", none: string(timber.Enamel), words: paints},
}

const (
	meterMost = 60 // % that a moisture meter may read
	moneyMost = 1e6
	wares     = "hour=Work, an hour|strip=Strip, a metre|lining=Lining, a metre|threshold=Threshold, a metre|dowel=Dowel|plug=Plug|packer=Packer|screw=Screw|hinge=Hinge|" +
		"glue=Glue, a kilogram|primer=Primer, a litre|enamel=Waterborne enamel, a litre|alkyd=Solvent-borne gloss, a litre|unbuilt=Oil, stain or wax, a litre|" +
		"filler=Filler, a litre|foam=Foam, a litre"
)

// acrossMost is how far a void may go across a face, mm.
const acrossMost = 2000

var voidRows = []entry{
	{name: "at", label: "Opens at", help: "An edge, or the knuckle or stop face.", words: "hanging|closing|top|foot|knuckle|stop"},
	{name: "from", label: "From", help: "Up from the foot; at top and foot across from the hanging edge.", need: true},
	{name: "to", label: "To", need: true},
	{name: "off", label: "Begins across at", help: "On a face from the hanging edge, on an edge from the knuckle face.", most: acrossMost},
	{name: "wide", label: "Width across", need: true, most: acrossMost},
	{name: "depth", label: "Depth", need: true, most: acrossMost},
	{name: "open", label: "How much of it is open", unit: "%", most: 100},
	{name: "what", label: "What", words: string(Missing) + "|" + string(Bored) + "|" + string(Rotten) + "|" + string(OldMortice) + "|" + string(OldFiller)},
	{name: "live", label: "Beetles at work, or damp"},
	{name: "do", label: "What is done", none: unsaid, words: unsaid + "=what is best|" + string(timber.CutItOut) + "|" + string(timber.FillIt) + "|" + string(timber.FoamIt) + "|" + string(timber.LeaveIt)},
}

// spot gives where a row's value lives in a job.
func spot(j *Job, group, k, i int) any {
	switch group {
	case ofHouse:
		h := &j.House
		return [...]any{(*string)(&h.Region), &h.Built, &h.Reclaimed, &h.Outer, &h.Escape, &h.Toilet, &h.Paid, (*string)(&h.Climate), (*string)(&h.Room), &h.South, &h.Month, &j.Anatomy.SolidStops}[k]
	case ofMeter:
		return &j.Meter[k]
	case ofPrices:
		if k == 0 {
			return &j.Prices.Hour
		}
		return &j.Prices.Of[k-1]
	case ofVoid:
		v := &j.Voids[i]
		return [...]any{(*string)(&v.At), &v.From, &v.To, &v.Off, &v.Wide, &v.Depth, &v.Open, (*string)(&v.What), &v.Live, (*string)(&v.Do)}[k]
	}
	c := &j.Paint.Leaf
	if group == ofFrame {
		c = &j.Paint.Frame
	}
	return [...]any{&c.On, (*string)(&c.Old), &c.Film, &c.Strip, &c.Primer, &c.ToCome, (*string)(&c.Kind)}[k]
}

// leftOut holds what the rows are when they are left out.
var leftOut = Job{Voids: []Void{{Open: 100}}}

// rowField gives a row's field, the k-th of its group.
func rowField(r *entry, group, k int) *field {
	choices := func() (out []Choice) { return picks(r.words) }
	valueOf := func(j *Job, i int) value {
		switch p := spot(j, group, k, i).(type) {
		case *string:
			return word[string]{p, r.none, choices}
		case *int:
			return whole{p}
		case *bool:
			return truth{p}
		case *float64:
			return length{p}
		}
		return nil
	}
	f := &field{name: r.name, label: r.label, help: r.help, unit: r.unit, limits: door.Range{Hi: r.most}, at: valueOf}
	if f.limits.Hi == 0 {
		f.limits = door.LeafRange()
	}
	if f.need = r.need || r.words != "" && r.none == ""; !f.need {
		f.std = func(*Job, int) value { return valueOf(&leftOut, 0) }
	}
	return f
}

// picks gives choices from words with | between.
func picks(words string) (out []Choice) {
	for _, w := range strings.Split(words, "|") {
		name, label, is := strings.Cut(w, "=")
		if !is {
			label = name
		}
		out = append(out, Choice{name, label})
	}
	return out
}

// rows is a group of them; who goes before their labels.
func rows(name, who string, of int, all []entry) *field {
	g := group(name)
	for k := range all {
		f := rowField(&all[k], of, k)
		f.label = who + f.label
		g.parts = append(g.parts, f)
	}
	return g
}

func priceFields() *field {
	var all []entry
	for _, w := range picks(wares) {
		all = append(all, entry{name: w.Value, label: w.Label, unit: plainUnit, most: moneyMost})
	}
	g := rows("prices", "", ofPrices, all)
	g.parts = append([]*field{text("currency", "Currency", func(j *Job) *string { return &j.Prices.Currency })}, g.parts...)
	return g
}

func meterFields() *field {
	var all []entry
	for _, name := range Months {
		all = append(all, entry{name: lowered(name), label: name, unit: "%", most: meterMost})
	}
	return rows("meter", "Moisture read in ", ofMeter, all)
}

func voidFields() *field {
	g := rows("voids", "", ofVoid, voidRows)
	g.label, g.one, g.count = "Holes, borer and rot", "hole or bad place", door.Range{Hi: VoidsMost}
	g.item = func(_ *Job, i int) string { return "Bad place " + ordinal(i) }
	g.list = func(j *Job, _ int) list { return voids{&j.Voids} }
	g.at = func(j *Job, _ int) value { return voids{&j.Voids} }
	return g.or(func(*Job) value { return voids{new([]Void)} })
}

// voids is the list of them.
type voids struct{ p *[]Void }

func (v voids) len() int { return len(*v.p) }
func (v voids) insert(i int) {
	*v.p = append(*v.p, Void{})
	copy((*v.p)[i+1:], (*v.p)[i:])
	(*v.p)[i] = Void{}
}
func (v voids) remove(i int)   { *v.p = append((*v.p)[:i], (*v.p)[i+1:]...) }
func (v voids) set(from value) { *v.p = cloneVoids(*from.(voids).p) }
func (v voids) same(as value) bool {
	a, b := *v.p, *as.(voids).p
	for i := range a {
		if i >= len(b) || a[i] != b[i] {
			return false
		}
	}
	return len(a) == len(b)
}

// A list's groups are read, written and shown field by field, by the walks.
func (v voids) read(*node, missing)              {}
func (v voids) write() node                      { return node{} }
func (v voids) show(measure.Unit) string         { return "" }
func (v voids) take(string, measure.Unit) string { return noField }
func (v voids) schema(*field, string) node       { return node{} }

func cloneVoids(v []Void) []Void { return append([]Void(nil), v...) }

// addVoid adds one to the leaf.
func (j *Job) addVoid() {
	mid := j.LeafHeight / 2
	j.Voids = append(j.Voids, Void{At: "hanging", From: mid, To: mid + 100, Wide: min(16, j.Door.Leaf.Thickness), Depth: 20, Open: 100, What: Missing})
}

// checkVoids tells of places upside down.
func (j *Job) checkVoids(faults *Faults) {
	for i := range j.Voids {
		v := &j.Voids[i]
		if path := "leaf.voids" + index(i) + ".to"; v.To <= v.From && faults.sound(path) {
			faults.add(door.Fault{Path: path, Value: door.Say(v.To), Want: "above from, " + door.Say(v.From)})
		}
	}
}
