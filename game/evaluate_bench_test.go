package game

import (
	"os"
	"path/filepath"
	"testing"

	"leafwright/geom/fit"
)

// What a full evaluation of each demo job takes: the surveyed ones have stations on
// every line.
func BenchmarkEvaluateDemos(b *testing.B) {
	files, err := filepath.Glob("../testdata/jobs/*.json")
	if err != nil || len(files) == 0 {
		b.Fatal(len(files), err)
	}
	for _, name := range files {
		text, err := os.ReadFile(name)
		if err != nil {
			b.Fatal(err)
		}
		door := must(b, string(text)).Door
		b.Run(filepath.Base(name), func(b *testing.B) {
			var f fit.Fit
			b.ReportAllocs()
			for b.Loop() {
				fit.Evaluate(&f, &door)
			}
		})
	}
}
