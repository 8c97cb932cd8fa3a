package survey_test

import (
	"fmt"

	"leafwright/geom/fit"
	"leafwright/geom/survey"
)

// A few readings, what they come to, and what to measure next.
func Example() {
	readings := []survey.Reading{
		{Kind: survey.OpeningWidth, At: 100, Value: 768},
		{Kind: survey.OpeningWidth, At: 1900, Value: 766},
		{Kind: survey.OpeningHeight, At: 100, Value: 1990},
		{Kind: survey.LeafWidth, At: 1000, Value: 762},
		{Kind: survey.LeafHeight, At: 380, Value: 1981},
		{Kind: survey.LeafThickness, Value: 40},
		{Kind: survey.HingeOnLeaf, Hinge: 0, Value: 1794},
		{Kind: survey.HingeOnLeaf, Hinge: 1, Value: 267},
	}
	res := survey.Adjust(readings)
	for _, f := range res.Faults {
		fmt.Println(f.Error())
	}
	gaps := res.Gaps()
	for e := fit.HingeSide; e < fit.Edges; e++ {
		gap, at := gaps.Least(e)
		fmt.Printf("%-5s at %4.0f: %.1f ± %.1f mm, binds %.0f %%\n", survey.SideOf(e), at, gap.Value, gap.Margin(), 100*gap.Binds())
	}
	if next, ok := gaps.NextForTightest(); ok {
		fmt.Printf("next the %s (hinge %d): ± %.1f instead of %.1f\n", survey.SpecOf(next.Reading.Kind).Asks, next.Reading.Hinge, next.Margin(), next.Now.Margin())
	}
	fmt.Println(len(res.Assumptions()), "things not measured, the first:", res.Assumptions()[0])
	// Output:
	// hinge at    6: 2.0 ± 3.8 mm, binds 20 %
	// latch at 1987: 1.9 ± 4.1 mm, binds 22 %
	// head  at    3: 3.0 ± 7.4 mm, binds 25 %
	// floor at  764: 5.6 ± 8.6 mm, binds 14 %
	// next the depth of the gain in the jamb (hinge 0): ± 3.4 instead of 4.1
	// 41 things not measured, the first: the bow of the hinge jamb was not measured: taken straight
}
