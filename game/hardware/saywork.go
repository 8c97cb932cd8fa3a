package hardware

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"leafwright/game/words"
	"leafwright/geom/timber"
	"leafwright/geom/trim"
)

// Time writes minutes of work or of waiting, roughly.
func Time(minutes float64) string {
	minutes = roughly(minutes)
	switch {
	case minutes < 60:
		return whole(minutes) + " min"
	case minutes < 10*60:
		h, m := math.Modf(minutes / 60)
		said := whole(h) + " h"
		if m > 0 {
			said += " " + whole(m*60) + " min"
		}
		return said
	}
	return whole(minutes/60) + " h"
}

// roughly gives minutes as they are told: to 5, to 15 from an hour on, to the hour from ten.
func roughly(minutes float64) float64 {
	switch {
	case minutes < 57.5:
		return max(5, 5*math.Round(minutes/5))
	case minutes < 10*60:
		return 15 * math.Round(minutes/15)
	}
	return 60 * math.Round(minutes/60)
}

// Order says the work's tasks in order, and last what they come to.
func (w *Work) Order(s *words.Speaker) (tasks []string, all string) {
	coats := w.coats()
	down, primed := false, false
	for _, t := range w.Bill.Tasks {
		said := ""
		switch t.Doing {
		case timber.TestPaint:
			said = "Test the paint for lead before a tool meets it"
		case timber.TakeDown:
			said = "Take the leaf down"
			if down {
				said = "Take it down again"
			}
			down = true
		case timber.TryLeaf:
			said = "Shut it, try its swing and read the gaps by feeler: what is out is mended or planned anew now"
			if down {
				said = "Hang it dry, two screws a plate: try its swing and read the gaps by feeler. What is out is trimmed or planned anew now, before any paint"
			}
		case timber.HangLeaf:
			said = "Hang it for good, with all its screws"
		case timber.DoStep:
			said = w.step(s, t.Step)
		case timber.SetGlue:
			said = "Leave the glue of move " + strconv.Itoa(t.Step+1) + " to set"
			if k := w.Steps[t.Step].Move.Kind; k != trim.Splice && k != trim.Reuse {
				said = "Leave the glue of move " + strconv.Itoa(t.Step+1) + "'s plugs, in the old screw holes, to set"
			}
		case timber.Prime:
			coat := "a coat"
			if len(coats) > 0 {
				coat += " of " + paint(coats[0])
				coats = coats[1:]
			}
			said = "Paint the bared wood: " + coat
			if primed {
				said = "Then " + coat
			}
			primed = true
		case timber.TreatIt:
			said = "Treat bad place " + strconv.Itoa(t.Void+1)
		case timber.FillVoids:
			said = "Fill bad place " + strconv.Itoa(t.Void+1)
		case timber.PieceIn:
			said = "Cut bad place " + strconv.Itoa(t.Void+1) + " out and piece it"
		default:
			said = words.Capital(string(t.Doing))
		}
		said += "."
		if t.Minutes > 0 {
			said += " About " + Time(t.Minutes) + "."
		}
		if t.Wait > 0 {
			said += " Wait " + Time(t.Wait) + "."
		}
		tasks = append(tasks, said)
	}
	all = "In all about " + Time(w.Bill.Hands) + " of work"
	if w.Bill.Waits > 0 {
		all += " and " + Time(w.Bill.Waits) + " of waiting, glue and paint one after another"
	}
	return tasks, all + ". Rough (common practice, no published source): what the tins say of drying counts before it."
}

// step says a move of the list.
func (w *Work) step(s *words.Speaker, i int) string {
	return "Move " + strconv.Itoa(i+1) + ": " + s.Move(&w.Steps[i].Move)
}

// coats are the kinds of the coats in the order they are put on.
func (w *Work) coats() (coats []timber.Paint) {
	for _, i := range w.Bill.Items {
		if i.Thing == timber.PaintStock {
			for range i.N {
				coats = append(coats, i.Paint)
			}
		}
	}
	return coats
}

func paint(p timber.Paint) string {
	switch p {
	case timber.Primer:
		return "primer"
	case timber.Enamel:
		return "waterborne enamel"
	case timber.Alkyd:
		return "solvent-borne gloss"
	}
	return string(p) + " paint"
}

// Takes says the bill of materials, a line each.
func (w *Work) Takes(s *words.Speaker) (lines []string) {
	for _, i := range w.Bill.Items {
		lines = append(lines, Item(s, i))
	}
	return lines
}

// Item says a line of the bill.
func Item(s *words.Speaker, i timber.Item) string {
	many := func(one, more string) string {
		if i.N == 1 {
			return "1 " + one
		}
		return strconv.Itoa(i.N) + " " + more
	}
	x, y, z := i.Size[0], i.Size[1], i.Size[2]
	switch i.Thing {
	case timber.StripStock:
		return many("strip", "strips") + ", " + sizes(s, up(x), up(y), z) + " before it is dressed; " + long(s, 20) + " of its length and " + long(s, 3) + " of its height are for dressing (common practice)"
	case timber.DowelStock:
		return many("dowel", "dowels") + ", " + strings.TrimSuffix(dowel(s, x), " mm") + " × " + long(s, y)
	case timber.Glue:
		return "joiner's glue, " + atLeast(i.Amount, 5) + " g (180 g a square metre of joint, common practice)"
	case timber.ScrewStock:
		return many("screw", "screws") + ", " + sizes(s, x, y) + " (No. 8, taken as usual)"
	case timber.HingeStock:
		return many("hinge", "hinges") + ", " + long(s, x) + " high, " + long(s, y) + " thick folded shut"
	case timber.PackerCard:
		return many(s.Packer, s.Packer+"s") + ", " + long(s, x) + " high, " + fine(s, y) + " thick"
	case timber.PlugStock:
		return many("plug", "plugs") + " for the old screw holes, " + sizes(s, x, y) + ", of the same timber, the grain along the stile's (4 screws a plate, common practice)"
	case timber.LiningWood:
		return many("lining", "linings") + ", " + sizes(s, up(x), y, z)
	case timber.SillStock:
		return many("threshold", "thresholds") + ", " + sizes(s, up(x), y, z)
	case timber.PaintStock:
		return paint(i.Paint) + ", " + atLeast(i.Amount, 10) + " ml for " + count(i.N, "coat", "coats") + " (coverage from memory: the tin says better)"
	case timber.PatchStock:
		return many("piece", "pieces") + " of the same timber to let in, " + sizes(s, up(x), up(y), up(z))
	case timber.FillerMix:
		return "filler, " + atLeast(i.Amount, 5) + " cm³ in " + count(i.N, "batch", "batches")
	case timber.FoamCore:
		return "foam, " + atLeast(i.Amount, 5) + " cm³"
	}
	return string(i.Thing)
}

func up(mm float64) float64 { return math.Ceil(mm - 1e-6) }

// atLeast writes an amount rounded up to steps.
func atLeast(x, step float64) string { return whole(math.Ceil(x/step-1e-9) * step) }

// dowel writes a dowel's diameter: in inches the size sold there that is nearest to it and,
// the least apart, no greater, so that it is still a third of the stock at most (common
// practice, no published source).
func dowel(s *words.Speaker, mm float64) string {
	if !words.InInches(s) {
		return long(s, mm)
	}
	for i, metric := range [...]float64{6, 8, 10, 12, 16} {
		if mm == metric {
			return [...]string{`1/4"`, `5/16"`, `3/8"`, `7/16"`, `5/8"`}[i]
		}
	}
	return long(s, mm)
}

// place writes a place along an edge.
func place(s *words.Speaker, mm float64) string {
	if s.Place != nil {
		return s.Place(mm)
	}
	return whole(mm) + " mm"
}

// Lines says what a strip is sawn to and how it is marked, gauged and bored, a sentence or
// two each.
func (p *Strip) Lines(s *words.Speaker) (lines []string) {
	d := p.Dowels
	end := "hanging end"
	if d.Edge.Upright() {
		end = "foot"
	}
	strip := "The strip of move " + strconv.Itoa(p.Step+1)
	if d.Blank[0] > 0 {
		of := p.Timber
		if of == "" {
			of = "the leaf's timber"
		}
		lines = append(lines, strip+": saw it "+sizes(s, up(d.Blank[0]), up(d.Blank[1]), d.Blank[2])+", long × high × thick, of "+of+", its grain along it: "+
			long(s, 20)+" of the length and "+long(s, 3)+" of the height are for dressing.")
	} else {
		lines = append(lines, strip+": the offcut, "+sizes(s, d.Long, d.High, d.Stock)+", long × high × thick.")
	}
	at := make([]string, len(d.Places))
	for i, x := range d.Places {
		at[i] = place(s, x)
		if i < len(at)-1 {
			at[i] = strings.TrimSuffix(at[i], " mm")
		}
	}
	lines = append(lines, fmt.Sprintf("Mark its %s from the %s, on strip and leaf alike: %s. Gauge their line from the knuckle face: %s on the leaf, %s on the strip before it is dressed.",
		count(len(at), "dowel", "dowels"), end, words.Listed(at), fine(s, d.LeafGauge), fine(s, d.StripGauge)))
	bore := "Bore " + dowel(s, d.Diameter) + ": " + long(s, d.IntoLeaf) + " deep into the leaf, "
	if d.Through {
		bore += "right through the strip, and dress the dowels off"
	} else {
		bore += long(s, d.IntoStrip) + " into the strip, " + long(s, 2) + " of each for glue"
	}
	if n := d.Shorts[0] + d.Shorts[1]; n > 0 && d.Short > 0 {
		bore += "; " + long(s, d.Short) + " only in the stiles' ends, where tenons and wedges are"
	}
	lines = append(lines, bore+".")
	if a, b := d.OffStrip[0], d.OffStrip[1]; a+b > 0.05 {
		off := long(s, a) + " off its knuckle face, " + long(s, b) + " off its stop face"
		switch {
		case long(s, a) == long(s, b):
			off = long(s, a) + " off either face"
		case a < 0.05:
			off = long(s, b) + " off its stop face"
		case b < 0.05:
			off = long(s, a) + " off its knuckle face"
		}
		lines = append(lines, "Planing it flush takes "+off+".")
	}
	for _, c := range d.Cares {
		if said := p.care(s, c); said != "" {
			lines = append(lines, "Mind: "+said)
		}
	}
	return lines
}

// Rests says what the dowels' sizes rest on.
func (p *Strip) Rests() string {
	return "Dowels are a third of the stock (common practice) and go three diameters into each piece (a furniture maker's rule)."
}

// back says how far a strip stands behind the leaf's faces.
func (p *Strip) back(s *words.Speaker) string {
	a, b := p.Dowels.OffLeaf[0], p.Dowels.OffLeaf[1]
	switch {
	case b < 0.05:
		return long(s, a) + " at the knuckle face"
	case a < 0.05:
		return long(s, b) + " at the stop face"
	case long(s, a) == long(s, b):
		return long(s, a) + " at either face"
	}
	return long(s, a) + " at the knuckle face, " + long(s, b) + " at the stop face"
}

func (p *Strip) care(s *words.Speaker, c timber.StripCare) string {
	d := p.Dowels
	switch c {
	case timber.FewDowels:
		return "there is no room for three dowels, the fewest that hold a strip as long as a rail (common practice)."
	case timber.OverWedge:
		return "it covers tenons' ends: make every wedge firm and trim it flush first."
	case timber.WedgeLoose:
		return "too little haunch is left for the wedges to bear on: glue and pin them first."
	case timber.UnderHinge:
		return "it lies under the hinges: their screws must go through it into the leaf."
	case timber.UnderLock:
		return "the lock's forend is let into it."
	case timber.StandsBack:
		return "it is thinner than the leaf and stands back " + p.back(s) + ": choose thicker stock, or glue a facing on and dress it flush; a small step is eased away at the leaf's " + s.Arris + " there. Never plane the leaf down to it."
	case timber.OnEndGrain:
		if !p.InStiles {
			return "it crosses the stiles' ends, where glue alone does not hold, and tenons or wedges leave no room for dowels there: it rests on those in the rail."
		}
		return "it crosses the stiles' ends, where glue alone does not hold: the dowels there do."
	case timber.RoundedEdge:
		return "rip " + long(s, d.Rip) + " off its gluing edge first: the rounded " + s.Arris + " would leave a furrow."
	}
	return ""
}
