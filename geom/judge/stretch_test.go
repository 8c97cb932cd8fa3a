package judge

import (
	"slices"
	"testing"

	"leafwright/geom"
)

// Stretches that all but touch are one to a person.
func TestStretchesThatAllButTouch(t *testing.T) {
	for _, row := range []struct {
		situation string
		all, want []geom.Interval
	}{
		{"none", nil, nil},
		{"one", []geom.Interval{{Lo: 1, Hi: 2}}, []geom.Interval{{Lo: 1, Hi: 2}}},
		{"a hair apart, where two pieces of a curve meet", []geom.Interval{{Lo: 0, Hi: 500}, {Lo: 500.004, Hi: 900}, {Lo: 900, Hi: 901}}, []geom.Interval{{Lo: 0, Hi: 901}}},
		{"a hand apart", []geom.Interval{{Lo: 0, Hi: 500}, {Lo: 600, Hi: 900}}, []geom.Interval{{Lo: 0, Hi: 500}, {Lo: 600, Hi: 900}}},
	} {
		t.Run(row.situation, func(t *testing.T) {
			if got := geom.Joined(row.all, together); !slices.Equal(got, row.want) {
				t.Errorf("%v, want %v", got, row.want)
			}
		})
	}
}
