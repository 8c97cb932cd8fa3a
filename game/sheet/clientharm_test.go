package sheet

import (
	"strings"
	"testing"

	"leafwright/game"
	"leafwright/game/words"
)

// A rated leaf that would fit an ordinary door's limits is not said to fit: its label says what
// its gaps may be.
func TestRatedLeafIsNotJudged(t *testing.T) {
	j := clientJob(t, "Schoolroom, cloakroom door")
	j.Anatomy.Rated = true
	text := written(pagesOf(t, &Ask{Job: &j, Kind: Client, Paper: Papers[0], Words: words.UK}))
	says(t, text, "its gaps are not judged here")
	says(t, text, "Whether its gaps are as its label asks is not judged here")
	for _, word := range []string{"Fits", "fits well", "stays shut", "nothing to rattle", "Lead harms"} {
		if strings.Contains(text, word) {
			t.Errorf("%q is said of a rated leaf", word)
		}
	}
}

// Who pays for the work is told of lead in old paint by the year of the house (UK: sold till
// 1992, from memory; see timber.LeadYears), and of dust, and to ask by local rules.
func TestClientIsToldOfLeadAndDust(t *testing.T) {
	for _, c := range []struct {
		house game.House
		says  string
	}{
		{game.House{}, "If the paint is old it may hold lead"},
		{game.House{Region: "UK", Built: 1908}, "Paint so old is likely to hold lead"},
		{game.House{Region: "UK", Built: 1975}, "Paint of those years may still hold lead"},
		{game.House{Region: "UK", Built: 2015}, ""},
		{game.House{Region: "UK", Built: 2015, Reclaimed: true}, "likely to hold lead"},
	} {
		j := clientJob(t, "Terrace house, back bedroom")
		j.House = c.house
		text := written(pagesOf(t, &Ask{Job: &j, Kind: Client, Paper: Papers[0], Options: []int{0}, Words: words.UK}))
		says(t, text, "Wood dust harms lungs and nose")
		if c.says == "" {
			if strings.Contains(text, "Lead harms") {
				t.Errorf("built %d: told of lead", c.house.Built)
			}
			continue
		}
		says(t, text, c.says)
		says(t, text, "your local rules")
		if none := written(pagesOf(t, &Ask{Job: &j, Kind: Client, Paper: Papers[0], Words: words.UK})); strings.Contains(none, "Lead harms") {
			t.Error("told of lead though nothing is done")
		}
	}
}
