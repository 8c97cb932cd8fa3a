package sheet

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"leafwright/game"
	"leafwright/game/measure"
	"leafwright/game/words"
	"leafwright/geom/door"
)

// knownText is what is said of a way of the advice's on pages.
func knownText(pages []Page) string {
	_, said, there := strings.Cut(written(pages), "A way that ")
	if !there {
		return ""
	}
	said, _, _ = strings.Cut(said, "Ask to see the advice on this door.")
	return "A way that " + said
}

// Where the advice has a way that takes less than half of the wood it is told with what the
// model says it takes and leaves; and the recommendation is said to be one of those shown.
func TestWayThatTakesLessIsTold(t *testing.T) {
	j := clientJob(t, "Terrace house, back bedroom")
	for _, unit := range []measure.Unit{measure.MM, measure.Inch} {
		for _, paper := range Papers {
			a := Ask{Job: &j, Kind: Client, Paper: paper, Unit: unit, Options: []int{0, 1, 2}, Words: words.US}
			if said := knownText(pagesOf(t, &a)); said != "" {
				t.Errorf("without advice is said %q", said)
			}
			a.Plans = game.Advice(&j, game.AdviceWishes{Inches: unit == measure.Inch}).Plans
			pages, err := Pages(&a)
			if err != nil || len(pages) > 2 {
				t.Fatalf("%d pages, %v", len(pages), err)
			}
			says(t, written(pages), "Of these we recommend C")
			said := knownText(pages)
			p := &a.Plans[0]
			says(t, said, "takes less is known but not shown here: “"+a.speaker(new(game.Tried)).PlanTitle(p)+"”")
			m, f := modelOf(&j, nil, p.Moves)
			says(t, said, "It takes "+words.CubicCentimetres(m.numbers[len(m.numbers)-1]*1000)+" of the old wood (C: "+words.CubicCentimetres(j.Column(2).Volume*1000)+")")
			least, most := math.Inf(1), 0.0
			for _, e := range []door.Edge{door.HingeSide, door.LatchSide, door.HeadSide} {
				least, most = min(least, f.Gaps[e].Least), max(most, f.Gaps[e].Most)
			}
			says(t, said, "it leaves gaps of "+a.speaker(new(game.Tried)).Span(least, most)+" at both sides and the top")
		}
	}
}

// It is told only where it is plainly less, or where what is recommended does not come good
// and this does; never of a door that fits or of a rated leaf.
func TestWayThatTakesLessIsToldOnlyThen(t *testing.T) {
	told, kept := 0, 0
	for _, j := range clientJobs(t) {
		plans := game.Advice(&j, game.AdviceWishes{}).Plans
		for n := range min(3, len(j.Options)) + 1 {
			a := Ask{Job: &j, Kind: Client, Paper: Papers[0], Words: words.UK, Plans: plans}
			for o := range n {
				a.Options = append(a.Options, o)
			}
			pages, err := Pages(&a)
			if err != nil {
				t.Fatal(err)
			}
			said := knownText(pages)
			if game.Rated(&j) {
				if said != "" {
					t.Errorf("%s: told of a rated leaf: %q", j.Name, said)
				}
				continue
			}
			c := newClient(&a)
			b := &c.ways[c.best]
			want := false
			for i := range plans {
				k := j.Clone()
				k.Options = []game.Option{{Moves: plans[i].Moves}}
				w := k.Column(0)
				good := len(w.Out()) == 0 && w.Refused == 0
				want = want || good && (!b.merit.fits() && (n > 0 || len(c.ways[c.best].col.Out()) == 0) || b.merit.fits() && b.letter != "" && w.Volume < b.col.Volume/2 && w.Volume < b.col.Volume-10)
			}
			if want != (said != "") {
				t.Errorf("%s, %d ways, %s recommended with %.0f cm³: said %q", j.Name, n, strconv.Quote(b.name), b.col.Volume, said)
			}
			if want {
				told++
			} else {
				kept++
			}
		}
	}
	if told < 3 || kept < 3 {
		t.Errorf("told %d times, kept %d times", told, kept)
	}
	// a job whose way is the advice's own is told of no other
	j := clientJob(t, "Terrace house, back bedroom")
	plans := game.Advice(&j, game.AdviceWishes{}).Plans
	j.Options = []game.Option{game.OptionOf(&plans[0], "As advised")}
	pages, err := Pages(&Ask{Job: &j, Kind: Client, Paper: Papers[0], Words: words.UK, Options: []int{0}, Plans: plans[:1]})
	if err != nil {
		t.Fatal(err)
	}
	says(t, written(pages), "We recommend A: As advised")
	if said := knownText(pages); said != "" {
		t.Errorf("said %q of the very same way", said)
	}
}
