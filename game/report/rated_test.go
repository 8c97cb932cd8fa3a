package report

import (
	"strings"
	"testing"

	"leafwright/game"
	"leafwright/game/hardware"
	"leafwright/game/words"
)

// Of a rated leaf no hinge, mending, work or gap to fit to is told: NFPA 80 and UK
// practice leave them to its certificate.
func TestRatedLeafIsGivenNoWork(t *testing.T) {
	uk := words.Speaker{Lexicon: words.For(words.UK)}
	job := game.Blank(762, 1981, 44)
	job.Anatomy.Rated = true
	job.Paint.Leaf.ToCome = 2
	text := Of(job).Text(uk)
	for _, s := range []string{"THE ORDER OF WORK", "WHAT IT TAKES", "GAPS TO FIT TO TODAY", "SCREWS", "HOLES"} {
		if strings.Contains(text, s) {
			t.Errorf("%q is told of a rated leaf:\n%s", s, text)
		}
	}
	if !strings.Contains(strings.Join(strings.Fields(text), " "), hardware.RatedLeaf) {
		t.Errorf("whom to ask is not said:\n%s", text)
	}
	for what, of := range map[string]func() ([]byte, error){
		"report": func() ([]byte, error) { return Of(job).JSON(uk) },
		"year": func() ([]byte, error) {
			y := SeasonOf(job, game.AsItStands, hardware.Where{Climate: "maritime", Room: "heated", Month: -1})
			return y.JSON(uk)
		},
	} {
		data, err := of()
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range []string{"fit_to", "\"hanging\": {", "\"work\": {", "\"hardware\": {", "bad_places"} {
			if strings.Contains(string(data), s) {
				t.Errorf("%s in the %s of a rated leaf", s, what)
			}
		}
	}
	job.WantedName, job.Anatomy.Rated = "", false
	if text := Compare(job).Text(uk); strings.Contains(text, "A rated or labelled leaf") {
		t.Error("said of one that is not")
	}
	for _, p := range game.Presets() {
		if p.Status == game.Inspection {
			job.WantedName = p.Name
		}
	}
	if text := Compare(job).Text(uk); !strings.Contains(text, "A rated or labelled leaf") {
		t.Error("of a leaf held to a rated one's limits the comparison says nothing")
	}
	job.Anatomy.Rated = true
	year := SeasonOf(job, game.AsItStands, hardware.Where{Climate: "maritime", Room: "heated", Month: -1})
	if text := year.Text(uk); strings.Contains(text, "GAPS TO FIT TO") || !strings.Contains(strings.Join(strings.Fields(text), " "), hardware.RatedLeaf) {
		t.Errorf("the year of a rated leaf:\n%s", text)
	}
}
