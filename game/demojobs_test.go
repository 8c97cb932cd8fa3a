package game

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// The demo jobs for the tests inside this package, which cannot use game/internal/demos.

// demo gives the job of a file's name without its ending, read anew.
func demo(t testing.TB, name string) Job {
	t.Helper()
	text, err := os.ReadFile("../testdata/jobs/" + name + ".json")
	if err != nil {
		t.Fatal(err)
	}
	return must(t, string(text))
}

func demoNames(t testing.TB) (all []string) {
	t.Helper()
	files, err := filepath.Glob("../testdata/jobs/*.json")
	if err != nil || len(files) == 0 {
		t.Fatal("no demo jobs", err)
	}
	for _, f := range files {
		all = append(all, strings.TrimSuffix(filepath.Base(f), ".json"))
	}
	return all
}

func demoJobs(t testing.TB) (all []Job) {
	t.Helper()
	for _, name := range demoNames(t) {
		all = append(all, demo(t, name))
	}
	return all
}
