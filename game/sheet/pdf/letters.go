package pdf

import (
	"slices"
	"unicode"
	"unicode/utf8"

	"github.com/go-fonts/dejavu/dejavusanscondensed"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/text/unicode/bidi"

	"leafwright/game/draw"
	"leafwright/game/sheet"
)

// Missing gives the characters on the pages that the face has no letter for, in
// order. A reader shows an empty box for each; the first 65536 characters are in the
// file's text all the same, to be searched and copied, the others not for every reader.
func Missing(pages []sheet.Page) []rune {
	face, err := sfnt.Parse(dejavusanscondensed.TTF)
	if err != nil {
		return nil
	}
	var b sfnt.Buffer
	return lettersOf(pages, func(r rune) bool {
		n, err := face.GlyphIndex(&b, r)
		// the library reaches the first 65536 characters only
		return !unicode.IsControl(r) && (err != nil || n == 0 || r > 0xFFFF)
	})
}

// joined are scripts whose letters take other forms, or other places, beside one another.
var joined = []*unicode.RangeTable{unicode.Arabic, unicode.Syriac, unicode.Nko, unicode.Mongolian, unicode.Devanagari, unicode.Bengali,
	unicode.Gurmukhi, unicode.Gujarati, unicode.Oriya, unicode.Tamil, unicode.Telugu, unicode.Kannada, unicode.Malayalam,
	unicode.Sinhala, unicode.Myanmar, unicode.Khmer, unicode.Tibetan}

// Unjoined gives the letters on the pages that the file holds but shows each by itself
// where a reader of their script expects them joined, in order.
func Unjoined(pages []sheet.Page) []rune {
	missing := map[rune]bool{}
	for _, r := range Missing(pages) {
		missing[r] = true
	}
	return lettersOf(pages, func(r rune) bool { return !missing[r] && unicode.IsLetter(r) && unicode.In(r, joined...) })
}

// lettersOf gives those characters of the pages' writing that are such, in order.
func lettersOf(pages []sheet.Page, such func(r rune) bool) (out []rune) {
	seen := map[rune]bool{}
	for i := range pages {
		for _, m := range pages[i].Marks {
			if m.Kind != draw.Text {
				continue
			}
			for _, r := range m.Text {
				if !seen[r] && such(r) {
					out = append(out, r)
				}
				seen[r] = true
			}
		}
	}
	slices.Sort(out)
	return out
}

// units writes a text so that the library, which knows only the first 65536
// characters, writes each of the others as the two units UTF-16 has for it.
func units(s string) string {
	var b []byte
	for _, r := range s {
		if r < 0x10000 {
			b = utf8.AppendRune(b, r)
			continue
		}
		r -= 0x10000
		for _, u := range [2]rune{0xD800 + r>>10, 0xDC00 + r&0x3FF} {
			b = append(b, 0xE0|byte(u>>12), 0x80|byte(u>>6)&0x3F, 0x80|byte(u)&0x3F)
		}
	}
	return string(b)
}

// seen orders a line from left to right as it is seen, where some of it is written
// from right to left.
func seen(s string) string {
	back := false
	for _, r := range s {
		q, _ := bidi.LookupRune(r)
		back = back || q.Class() == bidi.R || q.Class() == bidi.AL
	}
	if !back {
		return s
	}
	var p bidi.Paragraph
	if _, err := p.SetString(s); err != nil {
		return s
	}
	order, err := p.Order()
	if err != nil {
		return s
	}
	out := ""
	for i := range order.NumRuns() {
		run := order.Run(i)
		if run.Direction() == bidi.RightToLeft {
			out += bidi.ReverseString(run.String())
		} else {
			out += run.String()
		}
	}
	return out
}
