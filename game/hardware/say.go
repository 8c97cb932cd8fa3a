package hardware

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"leafwright/game/words"
	"leafwright/geom/door"
	"leafwright/geom/timber"
)

// Region gives the practice that goes with the trade words: the lexicon's.
func Region(l words.Lexicon) timber.Region {
	for _, r := range words.Regions {
		if words.For(r) == l {
			return timber.Region(r)
		}
	}
	return timber.UK
}

// long writes a length as the speaker does, to the tenth of a mm without an idle nought.
func long(s *words.Speaker, mm float64) string {
	if s.Length != nil {
		return s.Length(mm)
	}
	return strings.Replace(words.Millimetres(mm), ".0 mm", " mm", 1)
}

// mark writes what is marked with a pencil or made up of packers: to the half of a mm,
// which is as near as a rule is read (common practice, no published source).
func mark(s *words.Speaker, mm float64) string {
	if s.Length == nil {
		mm = math.Round(2*mm) / 2
	}
	return long(s, mm)
}

// sizes writes a section, "782 × 15 × 38 mm".
func sizes(s *words.Speaker, mm ...float64) string {
	said := make([]string, len(mm))
	for i, x := range mm {
		said[i] = long(s, x)
		if i < len(mm)-1 {
			said[i] = strings.TrimSuffix(said[i], " mm")
		}
	}
	return strings.Join(said, " × ")
}

// tenth writes a length above 0 to the tenth of a mm, fine one to the hundredth without
// idle noughts.
func tenth(s *words.Speaker, mm float64) string {
	mm = math.Abs(mm)
	if s.Length != nil {
		return s.Length(mm)
	}
	return words.Millimetres(mm)
}

func fine(s *words.Speaker, mm float64) string {
	if s.Length != nil {
		return s.Length(mm)
	}
	return strconv.FormatFloat(math.Round(mm*100)/100, 'f', -1, 64) + " mm"
}

// whole writes a number without its fraction, with a true minus sign.
func whole(x float64) string {
	x = math.Round(x) + 0 // no negative zero
	return strings.Replace(strconv.FormatFloat(x, 'f', 0, 64), "-", "−", 1)
}

// rough writes a force, N, to two figures.
func rough(n float64) string {
	step := 1.0
	for n/step >= 100 {
		step *= 10
	}
	return whole(math.Round(n/step)*step) + " N"
}

// number writes a number, the small ones in words.
func number(n int) string {
	names := [...]string{"no", "one", "two", "three", "four", "five", "six"}
	if n >= 0 && n < len(names) {
		return names[n]
	}
	return strconv.Itoa(n)
}

// count writes a number of things.
func count(n int, one, many string) string {
	if n == 1 {
		many = one
	}
	return number(n) + " " + many
}

// Wood says what the timber was taken for, in a sentence; nothing where there is no doubt.
func (w *Wood) say() string {
	switch {
	case w.Said == "":
		return "Its timber is not said, and taken as a softwood between light and heavy."
	case !w.Known:
		return "Its timber, “" + w.Said + "”, is not in our tables, and taken as a softwood between light and heavy."
	case !w.Sure:
		return "“" + words.Capital(w.Said) + "” may mean more than one timber: taken as " + w.Species.Name + "."
	case w.Species.Status == timber.Memory:
		return "The figures for " + w.Species.Name + " are from memory."
	}
	return ""
}

// name is the timber in words, and what the job calls it where that is another name.
func (w *Wood) name() string {
	if w.Sure && !strings.EqualFold(w.Said, w.Species.Name) {
		return w.Species.Name + " (“" + w.Said + "”)"
	}
	return w.Species.Name
}

// Lines says the leaf's weight, its hinges and what its screws hold, a paragraph each.
func (w *Leaf) Lines(s *words.Speaker) []string {
	return []string{w.weight(), w.lift(), w.hinges(s), w.screws(s), w.remedy()}
}

func (w *Leaf) weight() string {
	made := "in "
	switch {
	case w.Make == door.Boarded:
		made = "boarded, counted as solid in "
	case w.Make == door.Flush:
		made = "flush, counted as solid in "
	case w.Panels == door.Glass:
		made = "framed, its panels all glass, in "
	}
	said := fmt.Sprintf("The leaf weighs about %s kg, likely between %s and %s: %s%s, %s kg a cubic metre.",
		whole(w.Mass.All), whole(math.Floor(w.Least)), whole(math.Ceil(w.Most)), made, w.name(), whole(w.Species.Density))
	if doubt := w.say(); doubt != "" {
		said += " " + doubt
	}
	if w.Make == door.Flush {
		said += " A hollow one weighs a third of that."
	}
	return said + " Boards of one timber differ by a tenth, and panels and lock are taken as usual (common practice, no published source): weigh it if it matters."
}

func (w *Leaf) lift() string {
	const source = " (UK lifting guideline, from memory)."
	limit := whole(timber.TwoPeople)
	switch {
	case w.Mass.All > timber.TwoPeople:
		return "Two people take it down and hang it: over " + limit + " kg is too much for one" + source
	case w.Most > timber.TwoPeople:
		return "It may be over " + limit + " kg, too much for one: two people take it down and hang it" + source
	}
	return "Below " + limit + " kg a fit man may lift it alone, held close; for a woman the figure is 16" + source + " It hangs more easily with two."
}

func (w *Leaf) hinges(s *words.Speaker) string {
	butt := inches(w.Butt.Inches) + " in (" + whole(w.Butt.Height) + " mm)"
	if w.Butt.Heavy {
		butt += " of heavy weight"
	}
	said := fmt.Sprintf("Published tables ask for %s of %s on a leaf so high, wide, thick and heavy (US trade pages; Radford's Cyclopedia; a UK-style guide for the mass); there %s of %s.",
		count(w.Asked, "hinge", "hinges"), butt, be(w.There), long(s, w.Plates))
	if w.There == 0 {
		said, _, _ = strings.Cut(said, "; there are")
		return said + "."
	}
	if w.Make == door.Boarded {
		said += " The tables are of butts; strap hinges go where the ledges are (common practice)."
	}
	fewer, smaller := w.There < w.Asked, w.Plates < w.Butt.Height-5
	if !fewer && !smaller {
		return said + " They are enough."
	}
	if w.Sound.Enough {
		said += " The screws do not need more (below)"
		if fewer {
			said += "; a third keeps the hanging edge straight and the wear down (common practice, no published source)"
		} else {
			said += "; taller ones are for when these are worn"
		}
		said += "."
	}
	if fewer && w.Third != nil {
		said += " A third goes with its middle " + long(s, math.Round(w.Third.At)) + " up the leaf"
		switch {
		case w.Make != door.Framed:
			said += "."
		case w.Third.Clear:
			said += ", clear of the rails' tenons."
		default:
			said += ", where its screws meet a tenon: short ones, or a place beside it."
		}
	}
	return said
}

func be(n int) string {
	if n == 1 {
		return "is one"
	}
	return "are " + number(n)
}

// inches writes a butt's size as it is sold.
func inches(x float64) string {
	said := strconv.Itoa(int(x))
	if x != math.Trunc(x) {
		said += "½"
	}
	return said
}

func (w *Leaf) screws(s *words.Speaker) string {
	wood := ""
	switch {
	case !w.Known:
		wood = " of the lightest kind"
	case !w.Sure:
		wood = " (counted a quarter lighter, for doubt)"
	}
	if w.Poor >= screws {
		return fmt.Sprintf("At its heaviest it draws on the top hinge's screws with %s; all of them stand in filler or in nothing, which holds none.", rough(w.Pull))
	}
	if w.Poor > 0 {
		wood += ", " + count(w.Poor, "other", "others") + " standing in filler or in nothing,"
	}
	return fmt.Sprintf("At its heaviest it draws on the top hinge's screws with %s, and somebody of %d kg leaning on the handle adds %s. %s No. %d screws %s in sound wood%s may be trusted with %s (Wood Handbook ch. 8, a factor of %s to failing), in worn holes with half (common practice).",
		rough(w.Pull), Person, rough(w.Leaning), words.Capital(count(w.Screws.Number, "", "") + " ")[:len(count(w.Screws.Number, "", ""))-1], screwGauge, long(s, w.Screws.Into), wood,
		rough(w.Sound.Borne), strconv.FormatFloat(timber.Factor, 'f', 1, 64))
}

// remedy says what is to be done, plainly, or that nothing is.
func (w *Leaf) remedy() string {
	switch {
	case w.Poor >= screws:
		return "So they do not hold: cut the bad place out and piece it with timber, or move the hinge to sound wood."
	case w.WornLeant.Enough:
		return "So they hold, worn holes and all: do nothing, unless a screw turns without drawing up. Then bore its hole out, glue in a plug of the same timber and screw anew; filler holds no screw."
	case w.Worn.Enough && !w.SoundLeant.Enough:
		return "So they hold the leaf, but nobody on the handle: " + remedies(w.SoundLeant.Do) + "."
	case w.Worn.Enough:
		return "So they hold the leaf, and in sound wood somebody on the handle too; a worn hole is bored out, plugged with the same timber, glued and screwed anew; filler holds no screw."
	case w.Sound.Enough:
		return "In worn holes they do not hold it: " + remedies(w.Worn.Do) + "."
	}
	return "They do not hold it: " + remedies(w.Sound.Do) + "."
}

func remedies(do []timber.Remedy) string {
	said := make([]string, len(do))
	for i, r := range do {
		switch r {
		case timber.LongerScrews:
			said[i] = "longer screws"
		case timber.PlugAndGlue:
			said[i] = "bore the holes out, plug them with the same timber, glue and screw anew"
		case timber.ThirdHinge:
			said[i] = "a third hinge close below the top one"
		case timber.NewTimber:
			said[i] = "new timber let into the stile"
		}
	}
	return strings.Join(said, "; then ")
}
