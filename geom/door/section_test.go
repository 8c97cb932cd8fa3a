package door

import (
	"math"
	"slices"
	"strings"
	"testing"
)

func TestArrises(t *testing.T) {
	for _, row := range []struct {
		situation string
		section   Section
		want      []Arris
	}{
		{"sharp", Section{}, []Arris{{0, 0}, {40, 0}}},
		{"knuckle arris eased", Section{KnuckleEase: 2}, []Arris{{0, 2}, {2, 0}, {40, 0}}},
		{"stop arris eased", Section{StopEase: 3}, []Arris{{0, 0}, {37, 0}, {40, 3}}},
		{"a strip 25 thick, flush with neither face, both arrises eased",
			Section{KnuckleBack: 5, StopBack: 10, KnuckleEase: 1, StopEase: 2}, []Arris{{5, 1}, {6, 0}, {28, 0}, {30, 2}}},
	} {
		if got := row.section.Arrises(nil, 40); !slices.Equal(got, row.want) {
			t.Errorf("%s: %v, want %v", row.situation, got, row.want)
		}
	}
}

func TestCheckSections(t *testing.T) {
	for _, row := range []struct {
		situation string
		section   Section
		want      string
	}{
		{"sharp", Section{}, ""},
		{"the most of everything", Section{KnuckleBack: 15, StopBack: 5, KnuckleEase: 10, StopEase: 10}, ""},
		{"a strip of the least stock", Section{KnuckleBack: 15, StopBack: 20}, ""},
		{"knuckle arris standing proud", Section{KnuckleBack: -1}, "leaf.sections.closing.knuckle_back: -1 is not between 0 and 35"},
		{"stop arris past the knuckle face", Section{StopBack: 36}, "leaf.sections.closing.stop_back: 36 is not between 0 and 35"},
		{"a strip thinner than any", Section{KnuckleBack: 16, StopBack: 20},
			"leaf.sections.closing.stop_back: 20, which leaves the edge 4 thick is not at least 5"},
		{"a moulding", Section{KnuckleEase: 10.1}, "leaf.sections.closing.knuckle_ease: 10.1 is not between 0 and 10"},
		{"no number", Section{StopEase: math.NaN()}, "leaf.sections.closing.stop_ease: NaN is not a number between 0 and 10"},
		{"chamfers that cross", Section{KnuckleBack: 26, KnuckleEase: 8, StopEase: 7},
			"leaf.sections.closing.stop_ease: 7, which takes 15 off with the other arris is not at most the edge's 14"},
		{"two at once", Section{KnuckleBack: 40, StopEase: 11},
			"leaf.sections.closing.knuckle_back: 40 is not between 0 and 35\nleaf.sections.closing.stop_ease: 11 is not between 0 and 10"},
	} {
		d := sound()
		d.Leaf.Sections[LatchSide] = row.section
		var got []string
		for _, f := range d.Check() {
			got = append(got, f.Error())
		}
		if s := strings.Join(got, "\n"); s != row.want {
			t.Errorf("%s: got:\n%s\nwant:\n%s", row.situation, s, row.want)
		}
	}
}
