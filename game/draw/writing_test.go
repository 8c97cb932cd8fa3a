package draw

import (
	"math"
	"strings"
	"testing"
)

func TestTextWidth(t *testing.T) {
	// Advance widths of Helvetica in thousandths (its published metrics file, from
	// memory), summed by hand.
	tests := []struct {
		s    string
		want float64
	}{
		{"", 0},
		{"0.6", 556 + 278 + 556},
		{"Wind", 944 + 222 + 556 + 556},
	}
	for _, tt := range tests {
		if got := TextWidth(tt.s, 1000/roomy, false); math.Abs(got-tt.want) > 0.01 {
			t.Errorf("TextWidth(%q) = %g, want %g", tt.s, got, tt.want)
		}
	}
	for d := '1'; d <= '9'; d++ {
		if TextWidth(string(d), 12, false) != TextWidth("0", 12, false) {
			t.Errorf("%c is not as wide as 0", d)
		}
	}
	if TextWidth("−1.4", 12, true) <= TextWidth("−1.4", 12, false) {
		t.Error("bold is no wider")
	}
}

func TestLinesBreakEvenlyBetweenWords(t *testing.T) {
	const text = "Gaps and departures drawn 12 times true size; figures are true mm."
	tests := []struct {
		name  string
		text  string
		room  float64
		count int
	}{
		{"nothing", "", 100, 0},
		{"fits on one line", text, 1e4, 1},
		{"two lines", text, 320, 2},
		{"one word too long for its line", "1234567890123", 20, 1},
		{"signs of more than one byte", "− − −", 16, 3},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			n, even := lines(tt.text, 12, tt.room)
			if n != tt.count {
				t.Fatalf("%d lines, want %d", n, tt.count)
			}
			var got []string
			for rest := tt.text; rest != ""; {
				var line string
				line, rest = cut(rest, 12, even)
				got = append(got, line)
				if w := TextWidth(line, 12, false); w > tt.room && strings.Contains(line, " ") {
					t.Errorf("%q is %.0f wide", line, w)
				}
			}
			if strings.Join(got, " ") != tt.text {
				t.Errorf("%q loses words: %q", tt.text, got)
			}
			if n == 2 && TextWidth(got[1], 12, false) < 0.6*TextWidth(got[0], 12, false) {
				t.Errorf("uneven: %q", got)
			}
		})
	}
}

func TestWords(t *testing.T) {
	tests := []struct {
		name     string
		x        float64
		decimals int
		want     string
	}{
		{"clear", 3.25, 1, "3.2"},
		{"binding", -1.44, 1, "−1.4"},
		{"nought from below", -0.04, 1, "0.0"},
		{"just over half a tenth below", -0.06, 1, "−0.1"},
		{"whole", 1040.4, 0, "1040"},
		{"no number", math.NaN(), 1, "?"},
		{"endless", math.Inf(-1), 1, "?"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			var w words
			w.tidy()
			if got := w.number(tt.x, tt.decimals).keep(); got != tt.want {
				t.Errorf("%q, want %q", got, tt.want)
			}
		})
	}
}
