package sheet_test

import (
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"leafwright/game"
	"leafwright/game/draw"
	"leafwright/game/internal/demos"
	"leafwright/game/measure"
	"leafwright/game/sheet"
	"leafwright/game/words"
	"leafwright/geom/trim"
)

func workOf(t *testing.T, j *game.Job, option int, p sheet.Paper, u measure.Unit, r words.Region) []sheet.Page {
	t.Helper()
	pages, err := sheet.Pages(&sheet.Ask{Job: j, Options: []int{option}, Kind: sheet.Work, Paper: p, Unit: u, Words: r})
	if err != nil {
		t.Fatal(err)
	}
	return pages
}

// everyWork calls do with the marking-out sheet of every option of every demo, on both papers,
// in both units and in every region's words.
func everyWork(t *testing.T, do func(what string, j *game.Job, option int, u measure.Unit, pages []sheet.Page)) {
	t.Helper()
	for _, j := range demos.All(t) {
		if game.Rated(&j) {
			continue
		}
		for i := range j.Options {
			for _, p := range sheet.Papers {
				for _, u := range []measure.Unit{measure.MM, measure.Inch} {
					for _, r := range words.Regions {
						do(j.Name+", "+j.OptionName(i)+" on "+p.Name+" in "+u.String()+", "+string(r), &j, i, u, workOf(t, &j, i, p, u, r))
					}
				}
			}
		}
	}
}

// A marking-out sheet takes one or two pages, and nothing a person works from is written
// smaller than 9.5 points; keys, sources and the foot may be of 9.
func TestTwoPages(t *testing.T) {
	n := 0
	everyWork(t, func(what string, _ *game.Job, _ int, _ measure.Unit, pages []sheet.Page) {
		n++
		if len(pages) > 2 {
			t.Errorf("%s takes %d pages", what, len(pages))
		}
		for i := range pages {
			for _, m := range pages[i].Marks {
				if m.Kind != draw.Text {
					continue
				}
				least := 9.5
				if m.Ink == draw.TextMuted || m.Size == 9*96.0/72 { // keys; the rod's labels
					least = 9
				}
				if m.Size < least*96/72-1e-9 {
					t.Errorf("%s: %q is %.1f pt", what, m.Text, m.Size*72/96)
				}
			}
		}
	})
	if n < 100 {
		t.Errorf("only %d sheets", n)
	}
}

// So does a client's sheet of none to three of a demo's ways, or of the advice's where it has
// none of its own.
func TestClientTakesTwoPages(t *testing.T) {
	n := 0
	for _, j := range demos.All(t) {
		plans := game.Advice(&j, game.AdviceWishes{}).Plans
		for k := 0; len(j.Options) < min(3, len(plans)); k++ {
			j.Options = append(j.Options, game.OptionOf(&plans[k], "As advised, "+strconv.Itoa(k+1)))
		}
		for ways := 0; ways <= min(3, len(j.Options)); ways++ {
			for _, p := range sheet.Papers {
				for _, u := range []measure.Unit{measure.MM, measure.Inch} {
					for _, r := range words.Regions {
						pages, err := sheet.Pages(&sheet.Ask{Job: &j, Options: []int{0, 1, 2}[:ways], Kind: sheet.Client, Paper: p, Unit: u, Words: r, Plans: plans})
						if n++; err != nil || len(pages) > 2 {
							t.Errorf("%s, %d ways on %s in %s, %s: %d pages, %v", j.Name, ways, p.Name, u, r, len(pages), err)
						}
					}
				}
			}
		}
	}
	if n < 200 {
		t.Errorf("only %d sheets", n)
	}
}

// What gives way where there is more work is the number of pages and never the size of
// the writing. Of moves drawn at random two fit on two pages wherever there are no bad
// places to mend.
func TestMoreWorkTakesMorePages(t *testing.T) {
	all := demos.All(t)
	r := rand.New(rand.NewPCG(10, 2))
	var over, of [9]int
	for n := range 240 {
		j := all[r.IntN(len(all))].Clone()
		if game.Rated(&j) {
			continue
		}
		j.Voids = nil
		moves := 1 + n%8
		var o game.Option
		for len(o.Moves) < moves {
			o.Moves = append(o.Moves, randomMove(r, &j, &trim.Kinds[r.IntN(len(trim.Kinds))]))
		}
		j.Options = []game.Option{o}
		pages := workOf(t, &j, 0, sheet.Papers[n/8%2], measure.Unit(n/16%2), words.US)
		of[moves]++
		if len(pages) > 2 {
			over[moves]++
		}
		if len(pages) > 6 {
			t.Errorf("%d moves take %d pages: %+v", moves, len(pages), o.Moves)
		}
	}
	t.Logf("more than two pages by moves: %v of %v", over, of)
	if over[1]+over[2] > 0 {
		t.Errorf("of one and two moves %d and %d take more than two pages", over[1], over[2])
	}
}

// The order of work: all is cut, spliced and let in, the leaf is hung dry and its gaps read,
// and only then painted and hung for good (common practice, no published source).
func TestDryHangComesBeforePaint(t *testing.T) {
	everyWork(t, func(what string, j *game.Job, option int, _ measure.Unit, pages []sheet.Page) {
		text := strings.Join(textsOf(pages), " ")
		dry, good := strings.Index(text, "Hang it dry"), strings.Index(text, "Hang it for good")
		paint, last := strings.Index(text, "Paint the bared wood"), strings.Index(text, "Move "+strconv.Itoa(len(j.Options[option].Moves))+": ")
		if last < 0 || good < dry || dry < last {
			t.Errorf("%s: hung dry at %d, for good at %d, the last move at %d", what, dry, good, last)
		}
		if again := strings.Index(text, "Take it down again"); paint >= 0 && !(dry < again && again < paint && paint < good) {
			t.Errorf("%s: hung dry at %d, taken down at %d, painted at %d, hung for good at %d", what, dry, again, paint, good)
		}
	})
}

// Nothing is said by an amount of 0", no dowel has a size that is not sold, and a strip's stock
// is told.
func TestWhatABenchNeeds(t *testing.T) {
	everyWork(t, func(what string, j *game.Job, option int, u measure.Unit, pages []sheet.Page) {
		text := strings.Join(textsOf(pages), " ")
		for _, bad := range []string{`by 0"`, "by 0 mm", `25/64":`, "plane the leaf to it", "The leaf's timber is"} {
			if strings.Contains(text, bad) {
				t.Errorf("%s: %q", what, bad)
			}
		}
		for _, m := range j.Options[option].Moves {
			if m.Kind == trim.Splice && (!strings.Contains(text, "saw it ") || !strings.Contains(text, "long × high × thick")) {
				t.Errorf("%s: no size of the strip's stock", what)
			}
			if m.Kind == trim.Splice && u == measure.Inch && !strings.Contains(text, `Bore 3/8"`) {
				t.Errorf("%s: the dowels' size", what)
			}
		}
	})
	j := demos.Job(t, "2-terrace-falling-head")
	j.Options = []game.Option{{Moves: []trim.Move{{Kind: trim.Shift, Hinge: 1, On: trim.OnBoth, First: 75}, {Kind: trim.Restop, Edge: 1, First: 2, Last: 1}}}}
	text := strings.Join(textsOf(workOf(t, &j, 0, sheet.Papers[0], measure.MM, words.UK)), " ")
	for _, want := range []string{"move 1's plugs", "One worked from the solid", "plug the old screw holes"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not said: %s", want, text)
		}
	}
}
