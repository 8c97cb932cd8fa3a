package sheet

import (
	"math"
	"strings"

	"leafwright/game/hardware"
)

// money says what a way costs by the person's own prices, in whole coins of the
// currency: the time it rests on is rough. Empty where no price was given.
func money(prices *hardware.Cost) string {
	if prices == nil {
		return ""
	}
	coins := func(x float64) string {
		return strings.Replace(hardware.Money(prices.Currency, math.Round(x)), ".00", "", 1)
	}
	said := "About " + coins(prices.All)
	switch {
	case prices.Hour == 0 && coins(prices.All) == coins(0):
		return "Next to nothing for materials; the work is not in it."
	case prices.Hour == 0:
		said += " for materials; the work is not in it"
	case coins(prices.Materials) != coins(0):
		said += ": " + coins(prices.Work) + " for work, " + coins(prices.Materials) + " for materials"
	default:
		said += " for work"
	}
	said += "."
	switch {
	case prices.Unpriced > 0 && prices.Materials > 0:
		said += " Some materials are not in it."
	case prices.Unpriced > 0:
		said += " Materials are not in it."
	}
	return said
}

// cost is what a way costs, nil where the job has no prices or nothing is done.
func (c *client) cost(w *way) *hardware.Cost {
	if w.work == nil {
		return nil
	}
	return hardware.CostOf(w.work, &c.a.Job.Prices)
}
