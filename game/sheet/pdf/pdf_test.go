package pdf

import (
	"bytes"
	"math"
	"strings"
	"testing"

	"leafwright/game"
	"leafwright/game/draw"
	"leafwright/game/internal/demos"
	"leafwright/game/measure"
	"leafwright/game/sheet"
	"leafwright/game/words"
)

func pagesFor(t testing.TB, j *game.Job, option int, kind sheet.Kind, paper sheet.Paper, unit measure.Unit) []sheet.Page {
	t.Helper()
	pages, err := sheet.Pages(&sheet.Ask{Job: j, Options: []int{option}, Kind: kind, Paper: paper, Unit: unit, Words: words.UK})
	if err != nil {
		t.Fatal(err)
	}
	return pages
}

func written(t testing.TB, pages []sheet.Page) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, pages, "A title"); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// Every line of the pages is in the file where the page has it, to a hundredth of a point
// (0.0035 mm), and every word with its letters.
func TestFileHoldsThePages(t *testing.T) {
	j := demos.Job(t, "2-terrace-falling-head")
	for _, kind := range sheet.Kinds {
		for _, paper := range sheet.Papers {
			pages := pagesFor(t, &j, 2, kind, paper, measure.MM)
			got := pagesOf(t, written(t, pages))
			if len(got) != len(pages) {
				t.Fatalf("%s on %s: %d pages in the file, not %d", kind, paper.Name, len(got), len(pages))
			}
			for i := range pages {
				same(t, &pages[i], &got[i])
			}
		}
	}
}

func same(t *testing.T, p *sheet.Page, got *drawn) {
	t.Helper()
	paths, texts := 0, 0
	for _, m := range p.Marks {
		pts := p.Points[m.From:m.To]
		if m.Kind == draw.Text {
			if texts >= len(got.words) || got.words[texts].text != m.Text {
				t.Fatalf("%q is not in the file", m.Text)
			}
			if y := p.Height*pt - pts[0].Y*pt; math.Abs(got.words[texts].y-y) > 0.011 {
				t.Errorf("%q stands at %v, not %v", m.Text, got.words[texts].y, y)
			}
			texts++
			continue
		}
		if paths >= len(got.paths) || len(got.paths[paths]) != len(pts) {
			t.Fatal("a line is missing")
		}
		for k, q := range pts {
			g := got.paths[paths][k]
			if math.Abs(g[0]-q.X*pt) > 0.011 || math.Abs(g[1]-(p.Height-q.Y)*pt) > 0.011 {
				t.Fatalf("a point stands at %v, not %v", g, q)
			}
		}
		paths++
	}
	if paths != len(got.paths) || texts != len(got.words) {
		t.Errorf("%d lines and %d words in the file, %d and %d on the page", len(got.paths), len(got.words), paths, texts)
	}
}

// Equal pages give equal bytes.
func TestSameBytes(t *testing.T) {
	j := demos.Job(t, "2-terrace-falling-head")
	j.Name = "Ёлка Σίσυφος ǅ"
	first := written(t, pagesFor(t, &j, 2, sheet.Work, sheet.Papers[0], measure.MM))
	for range 5 {
		if again := written(t, pagesFor(t, &j, 2, sheet.Work, sheet.Papers[0], measure.MM)); !bytes.Equal(first, again) {
			t.Fatal("the same sheet gave another file")
		}
	}
}

// The check line in the file is as long as it says, on every page of every kind.
func TestCheckLineInTheFile(t *testing.T) {
	j := demos.Job(t, "2-terrace-falling-head")
	for unit, long := range map[measure.Unit]float64{measure.MM: 100, measure.Inch: 4 * 25.4} {
		for _, kind := range sheet.Kinds {
			for i, p := range pagesOf(t, written(t, pagesFor(t, &j, 2, kind, sheet.Papers[0], unit))) {
				found, stated := false, false
				for _, l := range p.paths {
					if len(l) == 2 && l[0][1] == l[1][1] && math.Abs((l[1][0]-l[0][0])*25.4/72-long) < 0.02 {
						found = true
					}
				}
				for _, w := range p.words {
					stated = stated || strings.Contains(w.text, "Check the print")
				}
				if !found || !stated {
					t.Errorf("%s, page %d: no check line of %v mm, or it is not said", kind, i+1, long)
				}
			}
		}
	}
}

// scripts are names in letters of many kinds: what the face has and what it has not.
const scripts = "Bücherei Łódź Κήπος Ёлка דלת باب 門扉 🚪"

// Names in other scripts are in the file's text, in the order they are seen, those too
// that the face has no letters for; which these are is told.
func TestOtherScripts(t *testing.T) {
	j := demos.Job(t, "2-terrace-falling-head")
	j.Name = scripts
	pages := pagesFor(t, &j, 0, sheet.Work, sheet.Papers[0], measure.MM)
	if got, want := string(Missing(pages)), "扉門🚪"; got != want {
		t.Errorf("missing %q, not %q", got, want)
	}
	all := ""
	for _, w := range pagesOf(t, written(t, pages))[0].words {
		all += w.text + "\n"
	}
	for _, part := range []string{"Bücherei Łódź Κήπος Ёлка ", "בלד", "門扉", "🚪"} {
		if part == "בלד" {
			part = "תלד" // from left to right as it is seen
		}
		if !strings.Contains(all, part) {
			t.Errorf("%q is not in the file: %q", part, all[:200])
		}
	}
}
