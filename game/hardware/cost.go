package hardware

import (
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"leafwright/game"
	"leafwright/game/words"
	"leafwright/geom/timber"
)

// Cost is what a piece of work costs by the person's own prices. Nothing is priced that
// they gave no price for.
type Cost struct {
	Currency  string
	Items     []Priced // a line of the bill each
	Materials float64
	Hour      float64 // of work; 0 where no price was given
	Work      float64
	All       float64
	Unpriced  int // lines of the bill no price was given for
}

// Priced is a line of the bill with its cost.
type Priced struct {
	timber.Item
	Each  float64 // the price by the metre, the piece, the kilogram or the litre; 0 where none was given
	Units float64 // so many of them
	Cost  float64
}

// CostOf gives what the work costs, nil where no price was given at all.
func CostOf(w *Work, p *game.Prices) *Cost {
	if p.Hour == 0 && p.Of == ([game.Wares]float64{}) {
		return nil
	}
	c := &Cost{Currency: p.Currency, Hour: p.Hour, Work: p.Hour * roughly(w.Bill.Hands) / 60}
	for _, i := range w.Bill.Items {
		line := Priced{Item: i}
		ware, units := wareOf(&i)
		if ware < game.Wares && p.Of[ware] > 0 {
			line.Each, line.Units = p.Of[ware], units
			line.Cost = line.Each * units
			c.Materials += line.Cost
		} else {
			c.Unpriced++
		}
		c.Items = append(c.Items, line)
	}
	c.All = c.Work + c.Materials
	return c
}

// wareOf gives what a line of the bill is priced as, and how many units of it there are;
// what has no price of its own is past the wares.
func wareOf(i *timber.Item) (game.Ware, float64) {
	n, metres, thousandth := float64(i.N), float64(i.N)*i.Size[0]/1000, i.Amount/1000
	switch i.Thing {
	case timber.StripStock:
		return game.StripWare, metres
	case timber.LiningWood:
		return game.LiningWare, metres
	case timber.SillStock:
		return game.SillWare, metres
	case timber.DowelStock:
		return game.DowelWare, n
	case timber.PlugStock:
		return game.PlugWare, n
	case timber.PackerCard:
		return game.PackerWare, n
	case timber.ScrewStock:
		return game.ScrewWare, n
	case timber.HingeStock:
		return game.HingeWare, n
	case timber.Glue:
		return game.GlueWare, thousandth
	case timber.FillerMix:
		return game.FillerWare, thousandth
	case timber.FoamCore:
		return game.FoamWare, thousandth
	case timber.PaintStock:
		switch i.Paint {
		case timber.Primer:
			return game.PrimerWare, thousandth
		case timber.Enamel:
			return game.EnamelWare, thousandth
		case timber.Alkyd:
			return game.AlkydWare, thousandth
		case timber.Unbuilt:
			return game.OilWare, thousandth
		}
	}
	return game.Wares, 0
}

// Money writes an amount in the currency: a sign before it, a word after it.
func Money(currency string, x float64) string {
	said := strconv.FormatFloat(x, 'f', 2, 64)
	if last, _ := utf8.DecodeLastRuneInString(currency); unicode.IsLetter(last) && utf8.RuneCountInString(currency) > 1 {
		return said + " " + currency
	}
	return currency + said
}

// Say says what a line of the bill costs, nothing where no price was given for it.
func (p *Priced) Say(currency string) string {
	if p.Each == 0 {
		return ""
	}
	return Money(currency, p.Cost)
}

// Lines says what the work costs, in a sentence or two.
func (c *Cost) Lines(s *words.Speaker, w *Work) []string {
	said := "Materials " + Money(c.Currency, c.Materials) + ", by what is used and not by the tin"
	if c.Hour > 0 {
		said += "; " + Time(w.Bill.Hands) + " of work " + Money(c.Currency, c.Work) + " at " + Money(c.Currency, c.Hour) + " an hour; in all " + Money(c.Currency, c.All)
	}
	lines := []string{said + ". The prices are your own."}
	var none []string
	for i := range c.Items {
		if c.Items[i].Each == 0 {
			what, _, _ := strings.Cut(Item(s, c.Items[i].Item), ",")
			if what = strings.TrimLeft(what, "0123456789 "); !slices.Contains(none, what) {
				none = append(none, what)
			}
		}
	}
	if c.Hour == 0 {
		none = append(none, "work")
	}
	if len(none) > 0 {
		lines = append(lines, "Not in it, for no price was given: "+words.Listed(none)+".")
	}
	return lines
}
