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
	year := SeasonOf(job, game.AsItStands, hardware.Where{Climate: "maritime", Room: "heated", Month: -1})
	if text := year.Text(uk); strings.Contains(text, "GAPS TO FIT TO") || !strings.Contains(strings.Join(strings.Fields(text), " "), hardware.RatedLeaf) {
		t.Errorf("the year of a rated leaf:\n%s", text)
	}
}
