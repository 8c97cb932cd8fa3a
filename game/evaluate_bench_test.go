package game

import (
	"testing"

	"leafwright/geom/fit"
)

// What a full evaluation of each demo job takes: the surveyed ones have stations on
// every line.
func BenchmarkEvaluateDemos(b *testing.B) {
	for _, name := range demoNames(b) {
		door := demo(b, name).Door
		b.Run(name, func(b *testing.B) {
			var f fit.Fit
			b.ReportAllocs()
			for b.Loop() {
				fit.Evaluate(&f, &door)
			}
		})
	}
}
