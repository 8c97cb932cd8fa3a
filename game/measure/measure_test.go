package measure

import (
	"math"
	"strings"
	"testing"
)

func TestRead(t *testing.T) {
	for _, row := range []struct {
		situation, text string
		shown           Unit
		want            float64
	}{
		{"plain number in a millimetre field", "797", MM, 797},
		{"plain number in an inch field", "31.5", Inch, 800.1},
		{"decimal point", "797.5", MM, 797.5},
		{"decimal comma", "797,5", MM, 797.5},
		{"three figures behind a comma after nought", "0,125", MM, 0.125},
		{"no figure before the point", ".5", MM, 0.5},
		{"millimetres said, with a space", " 797 mm ", MM, 797},
		{"centimetres without a space", "79.7cm", MM, 797},
		{"metres", "1.981 m", MM, 1981},
		{"millimetres in an inch field", "797mm", Inch, 797},
		{"feet, inches and a fraction", `2' 7 3/8"`, MM, 796.925},
		{"the same in an inch field without the mark", "2' 7 3/8", Inch, 796.925},
		{"feet and inches in words", "2ft 7in", MM, 787.4},
		{"words with stops", "2 ft. 7 in.", MM, 787.4},
		{"feet alone", "6'", MM, 1828.8},
		{"feet with a dash before the inches", `6'-8"`, MM, 2032},
		{"inches joined to the fraction by a dash", "31-3/8", MM, 796.925},
		{"a fraction is inches in a millimetre field", `31 3/8"`, MM, 796.925},
		{"a fraction alone", "3/8", MM, 9.525},
		{"one-character fraction joined on", "31⅜", MM, 796.925},
		{"one-character fraction after feet", "2′ 7½″", MM, 800.1},
		{"typographic quotes", "2’ 7”", MM, 787.4},
		{"fraction slash", "31 3⁄8", MM, 796.925},
		{"two single marks for inches", "7''", MM, 177.8},
		{"a third", "⅓ in", MM, 8.466667},
		{"minus", "-3", MM, -3},
		{"typographic minus and a fraction", "−1/16", MM, -1.5875},
		{"nought has no sign", "-0", MM, 0},
		{"decimal inches", `31.375"`, MM, 796.925},
		{"the finest mark", "1/64", MM, 0.396875},
	} {
		t.Run(row.situation, func(t *testing.T) {
			got, err := Read(row.text, row.shown)
			if err != nil {
				t.Fatal(err)
			}
			if got.MM != row.want || math.Signbit(got.MM) != (row.want < 0) {
				t.Errorf("Read(%q) = %v mm, want %v", row.text, got.MM, row.want)
			}
			if got.Text != strings.TrimSpace(row.text) {
				t.Errorf("text kept as %q, typed %q", got.Text, row.text)
			}
		})
	}
}

func TestReadRefuses(t *testing.T) {
	for _, row := range []struct{ situation, text, want string }{
		{"nothing", "  ", "a length is wanted"},
		{"a word", "wide", "a length is wanted"},
		{"not a number", "NaN", "a length is wanted"},
		{"a sign alone", "-", "a length is wanted"},
		{"two numbers", "1 981", "a length is wanted"},
		{"a thousand with a comma", "1,981", "could be 1981 or 1.981"},
		{"two marks", "1.981,5", "one decimal point or comma"},
		{"a point alone", ".", "a length is wanted"},
		{"inches past a foot", `2' 14"`, "below 12"},
		{"a fraction past one", "31 9/8", "below 1"},
		{"a fraction behind a decimal", "31.5 3/8", "below 1"},
		{"nothing under the line", "3/", "over 2 to 64"},
		{"nought under the line", "3/0", "over 2 to 64"},
		{"finer than a tape", "1/128", "over 2 to 64"},
		{"unknown unit", "3 yd", "the units known are"},
		{"metric and inches mixed", `797 mm 3/8"`, "a length is wanted"},
		{"a dash with nothing behind it", "31-", "a length is wanted"},
		{"too long", "101 m", "longer than 100 m"},
		{"an overflowing number", strings.Repeat("9", 60), "longer than 100 m"},
		{"a page of text", strings.Repeat("9", 200), "a length is wanted"},
		{"broken letters", "7\xff", "a length is wanted"},
		{"minus in the middle", "3 -", "a length is wanted"},
	} {
		t.Run(row.situation, func(t *testing.T) {
			got, err := Read(row.text, MM)
			if err == nil {
				t.Fatalf("Read(%q) = %v, want an error with %q", row.text, got, row.want)
			}
			if !strings.Contains(err.Error(), row.want) {
				t.Errorf("Read(%q): %v, want %q in it", row.text, err, row.want)
			}
		})
	}
}

func TestFormat(t *testing.T) {
	for _, row := range []struct {
		situation string
		mm        float64
		unit      Unit
		want      string
	}{
		{"whole millimetres", 797, MM, "797"},
		{"a tenth", 797.52, MM, "797.5"},
		{"rounded up to whole", 796.96, MM, "797"},
		{"below nought", -1.44, MM, "-1.4"},
		{"a hair below nought", -0.04, MM, "0"},
		{"feet, inches and eighths in lowest terms", 796.925, Inch, `2' 7 3/8"`},
		{"whole feet", 1828.8, Inch, "6'"},
		{"feet and a fraction without inches", 304.8 + 6.35, Inch, `1' 1/4"`},
		{"a fraction alone", 3.175, Inch, `1/8"`},
		{"nearest 64th", 2, Inch, `5/64"`},
		{"rounds up to a whole inch", 25.3, Inch, `1"`},
		{"nought", 0, Inch, `0"`},
		{"below nought in inches", -3.175, Inch, `-1/8"`},
		{"a hair below nought in inches", -0.1, Inch, `0"`},
		{"no number", math.NaN(), Inch, "NaN"},
		{"past all tapes", PerInch * 1e20, Inch, "100000000000000000000\""},
	} {
		t.Run(row.situation, func(t *testing.T) {
			if got := Format(row.mm, row.unit); got != row.want {
				t.Errorf("Format(%v, %v) = %q, want %q", row.mm, row.unit, got, row.want)
			}
		})
	}
}

// Half a step goes away from zero, and so does what noise of calculation has made of it.
func TestRound(t *testing.T) {
	for _, c := range []struct{ x, step, want float64 }{
		{2.25, 0.1, 2.3}, {2.35, 0.1, 2.4}, {-2.25, 0.1, -2.3}, {2.25 - 1e-12, 0.1, 2.3}, {0.15, 0.1, 0.2}, {2.24, 0.1, 2.2},
		{0.75, 0.5, 1}, {-0.04, 0.1, 0}, {1234.5, 1, 1235}, {3.175, 25.4 / 64, 3.175},
	} {
		if got := Round(c.x, c.step); math.Abs(got-c.want) > 1e-9 || math.Signbit(got) && got == 0 {
			t.Errorf("Round(%v, %v) = %v, want %v", c.x, c.step, got, c.want)
		}
	}
}

func TestExactReadsBack(t *testing.T) {
	for _, mm := range []float64{0, 797, 797.25, 2.5, 2.381, -1.59, 796.925, 0.396875, 1981.001} {
		for _, u := range []Unit{MM, Inch} {
			got, err := Read(Exact(mm, u), u)
			if err != nil {
				t.Fatal(err)
			}
			if math.Abs(got.MM-mm) > 0.0006 {
				t.Errorf("%v mm shown in %v as %q reads back as %v", mm, u, Exact(mm, u), got.MM)
			}
		}
	}
}

func FuzzRead(f *testing.F) {
	for _, s := range []string{"797", "797,5", `2' 7 3/8"`, "31-3/8", "−1/16", "2′ 7½″", "79.7cm", "1,981", "⁄", "''", "3/"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		for _, u := range []Unit{MM, Inch} {
			l, err := Read(s, u)
			if err != nil {
				continue
			}
			if !(math.Abs(l.MM) <= Most) {
				t.Fatalf("Read(%q) = %v, past the most", s, l.MM)
			}
			again, err := Read(Exact(l.MM, u), u)
			if err != nil || math.Abs(again.MM-l.MM) > 0.0006 {
				t.Fatalf("%q is %v, shown as %q, read again as %v, %v", s, l.MM, Exact(l.MM, u), again.MM, err)
			}
		}
	})
}

func FuzzFormat(f *testing.F) {
	for _, x := range []float64{0, 797, -1.44, 796.925, 304.8, 25.3999, -0.04, 99999} {
		f.Add(x)
	}
	f.Fuzz(func(t *testing.T, x float64) {
		for u, step := range map[Unit]float64{MM: 0.1, Inch: PerInch / 64} {
			s := Format(x, u)
			Exact(x, u)
			if !(math.Abs(x) <= Most-1) {
				continue
			}
			l, err := Read(s, u)
			if err != nil {
				t.Fatalf("Format(%v, %v) = %q, which does not read: %v", x, u, s, err)
			}
			if math.Abs(l.MM-x) > step/2+1e-6 {
				t.Fatalf("Format(%v, %v) = %q, which reads as %v", x, u, s, l.MM)
			}
		}
	})
}
