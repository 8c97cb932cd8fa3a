package report

import (
	"testing"

	"leafwright/game/internal/demos"
	"leafwright/game/words"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
)

// What the page does on every edit but for drawing: hang the door, judge it, say
// it.
func BenchmarkDemo(b *testing.B) {
	for _, name := range demos.Names(b) {
		job := demos.Job(b, name)
		b.Run("hang/"+name, func(b *testing.B) {
			var f fit.Fit
			b.ReportAllocs()
			for b.Loop() {
				fit.Evaluate(&f, &job.Door)
			}
		})
		b.Run("judge/"+name, func(b *testing.B) {
			var f fit.Fit
			fit.Evaluate(&f, &job.Door)
			b.ReportAllocs()
			for b.Loop() {
				(&words.Speaker{Lexicon: words.For(words.UK)}).Findings(judge.Findings(&f, &job.Door, &job.Wanted))
			}
		})
	}
}
