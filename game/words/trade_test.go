package words

import (
	"testing"

	"leafwright/geom/advise"
)

func TestTrade(t *testing.T) {
	s := Speaker{Lexicon: For(UK)}
	if got := s.Trade([]advise.Trade{{Timber: 80, Uneven: 1}}); got != "" {
		t.Errorf("one point says %q", got)
	}
	want := "Timber against even gaps, in the kind of work of the first way and before amounts are rounded: " +
		"from 77 cm³ of the leaf with the gaps at jambs and head within 1.0 mm of each other to 84 cm³ of the leaf with the gaps at jambs and head within 0.7 mm of each other."
	if got := s.Trade([]advise.Trade{{Timber: 77, Uneven: 1.01}, {Timber: 80, Uneven: 0.8}, {Timber: 84, Uneven: 0.68}}); got != want {
		t.Errorf("%s\nwant\n%s", got, want)
	}
}

func TestInches(t *testing.T) {
	for _, c := range []struct {
		mm          float64
		size, place string
	}{{-25.4, "−1\"", "−1\""}, {1.5, "1/16\"", "0\""}, {1981.2, "6' 6\"", "6' 6\""}} {
		if got, at := Inches(c.mm), InchPlace(c.mm); got != c.size || at != c.place {
			t.Errorf("%g mm is %q, as a place %q, want %q and %q", c.mm, got, at, c.size, c.place)
		}
	}
}
