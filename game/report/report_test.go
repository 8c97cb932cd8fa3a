package report

import (
	"os"
	"path/filepath"
	"testing"

	"leafwright/game"
	"leafwright/game/words"
	"leafwright/geom/fit"
	"leafwright/geom/judge"
)

func demos(t testing.TB) map[string]game.Job {
	paths, err := filepath.Glob("../../testdata/jobs/*.json")
	if err != nil || len(paths) == 0 {
		t.Fatalf("no demo jobs: %v", err)
	}
	jobs := map[string]game.Job{}
	for _, p := range paths {
		data, err := os.ReadFile(p)
		if err != nil {
			t.Fatal(err)
		}
		if jobs[filepath.Base(p)], err = game.Parse(data); err != nil {
			t.Fatalf("%s: %v", p, err)
		}
	}
	return jobs
}

// What the page does on every edit but for drawing: hang the door, judge it, say
// it.
func BenchmarkDemo(b *testing.B) {
	for name, job := range demos(b) {
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
