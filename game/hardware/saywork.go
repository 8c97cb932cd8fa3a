package hardware

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"leafwright/game/words"
	"leafwright/geom/timber"
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
	for _, t := range w.Bill.Tasks {
		said := ""
		switch t.Doing {
		case timber.TestPaint:
			said = "Test the paint for lead before a tool meets it"
		case timber.TakeDown:
			said = "Take the leaf down"
		case timber.HangLeaf:
			said = "Hang the leaf and try it"
		case timber.DoStep:
			said = w.step(s, t.Step)
		case timber.SetGlue:
			said = "Leave the glue of move " + strconv.Itoa(t.Step+1) + " to set"
		case timber.Prime:
			said = "Paint the bared wood"
			if len(coats) > 0 {
				said += ", " + paint(coats[0])
				coats = coats[1:]
			}
		case timber.TreatIt:
			said = "Treat bad place " + strconv.Itoa(t.Void+1)
		case timber.FillVoids:
			said = "Fill bad place " + strconv.Itoa(t.Void+1)
		case timber.PieceIn:
			said = "Cut bad place " + strconv.Itoa(t.Void+1) + " out and piece it"
		default:
			said = first(string(t.Doing))
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
	return tasks, all + ". Times are rough (common practice, no published source); what the tins say of drying counts before them."
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
		return many("strip", "strips") + ", " + sizes(s, up(x), up(y), z) + " before it is dressed; 20 mm of its length and 3 of its height are for dressing (common practice)"
	case timber.DowelStock:
		return many("dowel", "dowels") + ", " + sizes(s, x, y)
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

// Lines says how a strip is marked, gauged and bored, a sentence or two each.
func (p *Strip) Lines(s *words.Speaker) (lines []string) {
	d := p.Dowels
	end := "hanging end"
	if d.Edge.Upright() {
		end = "foot"
	}
	at := make([]string, len(d.Places))
	for i, x := range d.Places {
		at[i] = long(s, math.Round(x))
		if i < len(at)-1 && s.Length == nil {
			at[i] = strings.TrimSuffix(at[i], " mm")
		}
	}
	marks := strings.Join(at, ", ")
	if n := len(at); n > 1 {
		marks = strings.Join(at[:n-1], ", ") + " and " + at[n-1]
	}
	lines = append(lines,
		fmt.Sprintf("The strip of move %d: mark its %s from the %s, on strip and leaf alike: %s.", p.Step+1, count(len(at), "dowel", "dowels"), end, marks),
		fmt.Sprintf("Gauge the line of the holes from the knuckle face, %s on the leaf and %s on the strip as it is before dressing.", fine(s, d.LeafGauge), fine(s, d.StripGauge)))
	bore := "Bore " + long(s, d.Diameter) + ": " + long(s, d.IntoLeaf) + " deep into the leaf, "
	if d.Through {
		bore += "right through the strip, and dress the dowels off"
	} else {
		bore += long(s, d.IntoStrip) + " into the strip, 2 mm of each for glue"
	}
	if n := d.Shorts[0] + d.Shorts[1]; n > 0 && d.Short > 0 {
		bore += "; " + long(s, d.Short) + " only in the stiles' ends, where tenons and wedges are"
	}
	lines = append(lines, bore+". Dowels a third of the stock (common practice), three diameters into each piece (a furniture maker's rule).")
	if off := d.OffStrip[0] + d.OffStrip[1]; off > 0.05 {
		lines = append(lines, "Planing it flush takes "+long(s, d.OffStrip[0])+" off its knuckle face and "+long(s, d.OffStrip[1])+" off its stop face.")
	}
	for _, c := range d.Cares {
		if said := p.care(s, c); said != "" {
			lines = append(lines, "Mind: "+said)
		}
	}
	return lines
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
		return fmt.Sprintf("it is thinner than the leaf and stands back %s at the knuckle face, %s at the stop face: plane the leaf to it, or it shows.", long(s, d.OffLeaf[0]), long(s, d.OffLeaf[1]))
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
