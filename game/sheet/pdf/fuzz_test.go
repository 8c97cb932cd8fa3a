package pdf

import (
	"testing"

	"leafwright/game/draw"
	"leafwright/game/sheet"
)

// Whatever is written on a page is in the file, letter by letter, and breaks nothing.
func FuzzLetters(f *testing.F) {
	for _, s := range []string{"", "A door", scripts, "back\\slash (brackets)) \r\n\t", "\xff\xc0broken", "\U0010FFFF\uFFFE\x00", "אב 12 גד", "٣ باب 4"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		if len(s) > 500 {
			return
		}
		var p sheet.Page
		p.Reset(210*sheet.MM, 297*sheet.MM)
		p.Points = append(p.Points, draw.Pt{X: 50, Y: 50}, draw.Pt{X: 50, Y: 60}, draw.Pt{X: 90, Y: 60})
		p.Marks = append(p.Marks, draw.Mark{Kind: draw.Text, Size: 12, From: 0, To: 1, Text: s}, draw.Mark{Kind: draw.Stroke, Width: 1, From: 1, To: 3})
		pages := []sheet.Page{p}
		Missing(pages)
		got := pagesOf(t, written(t, pages))
		if len(got) != 1 || len(got[0].words) != 1 {
			t.Fatalf("%q: %+v", s, got)
		}
		want := string([]rune(seen(s))) // what is no letter comes as U+FFFD
		if got[0].words[0].text != want {
			t.Errorf("%q is in the file as %q", s, got[0].words[0].text)
		}
	})
}
