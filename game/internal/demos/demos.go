// Package demos opens the jobs of testdata for the tests of what stands on package game. No
// program uses it.
package demos

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"leafwright/game"
)

// Names are those of the jobs: their files' without folder and ending, in the files' order.
func Names(t testing.TB) (all []string) {
	t.Helper()
	files, err := filepath.Glob(filepath.Join(folder(t), "*"+ending))
	if err != nil || len(files) == 0 {
		t.Fatalf("no demo jobs: %v", err)
	}
	for _, f := range files {
		all = append(all, strings.TrimSuffix(filepath.Base(f), ending))
	}
	return all
}

// Job gives the job of a name, read anew.
func Job(t testing.TB, name string) game.Job {
	t.Helper()
	data, err := os.ReadFile(filepath.Join(folder(t), name+ending))
	if err != nil {
		t.Fatal(err)
	}
	j, err := game.Parse(data)
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	return j
}

// All gives every job, in the order of [Names].
func All(t testing.TB) (all []game.Job) {
	t.Helper()
	for _, name := range Names(t) {
		all = append(all, Job(t, name))
	}
	return all
}

const ending = ".json"

// folder is where the jobs are: below the module's root, which stands over every test.
func folder(t testing.TB) string {
	t.Helper()
	at, err := os.Getwd()
	if err != nil {
		t.Fatal(err)
	}
	for {
		if _, err := os.Stat(filepath.Join(at, "go.mod")); err == nil {
			return filepath.Join(at, "testdata", "jobs")
		}
		up := filepath.Dir(at)
		if up == at {
			t.Fatal("no test of this module")
		}
		at = up
	}
}
