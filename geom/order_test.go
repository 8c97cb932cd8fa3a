package geom

import (
	"cmp"
	"math/rand/v2"
	"slices"
	"testing"
)

func TestOrderAgainstTheLibrary(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 1))
	type item struct{ key, at int }
	for range 300 {
		var items []item
		var numbers []float64
		for i := range rng.IntN(40) {
			items = append(items, item{rng.IntN(8), i})
			numbers = append(numbers, float64(rng.IntN(9)))
		}
		want, sorted := slices.Clone(items), slices.Clone(numbers)
		by := func(a, b item) int { return cmp.Compare(a.key, b.key) }
		slices.SortStableFunc(want, by)
		slices.Sort(sorted)
		Order(items, by)
		Ascending(numbers)
		if !slices.Equal(items, want) || !slices.Equal(numbers, sorted) {
			t.Fatalf("%v and %v, want %v and %v", items, numbers, want, sorted)
		}
	}
}
