package game

import (
	"flag"
	"os"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "write the faults found in testdata/bad anew")

// Every bad job is refused with just the faults its golden file names.
func TestBadJobs(t *testing.T) {
	names, texts := seeds(t, "bad")
	if len(names) < 25 {
		t.Errorf("only %d bad jobs", len(names))
	}
	for i, name := range names {
		t.Run(name, func(t *testing.T) {
			_, err := Parse(texts[i])
			if err == nil {
				t.Fatal("read without a fault")
			}
			got := err.Error() + "\n"
			golden := strings.TrimSuffix(name, ".json") + ".txt"
			if *update {
				if err := os.WriteFile(golden, []byte(got), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			want, err := os.ReadFile(golden)
			if err != nil {
				t.Fatal(err)
			}
			if got != string(want) {
				t.Errorf("got\n%swant\n%s", got, want)
			}
		})
	}
}

func TestTooLargeAFile(t *testing.T) {
	just := plainest + strings.Repeat(" ", Largest-len(plainest))
	if _, err := Parse([]byte(just)); err != nil {
		t.Errorf("a file of the most bytes: %v", err)
	}
	_, err := Parse([]byte(just + " "))
	if want := "file: 1048577 bytes is not at most 1048576"; err == nil || err.Error() != want {
		t.Errorf("a byte more: %v, want %s", err, want)
	}
}

// Files that are wrong from end to end are told of in a few lines.
func TestFilesFullOfFaults(t *testing.T) {
	for _, row := range []struct{ situation, before, again, after, want string }{
		{"unknown fields", `{`, `"x%":1,`, `"y":1}`, "faults more"},
		{"fields given again", `{`, `"name":1,`, `"name":1}`, "faults more"},
		{"bad stations", `{"leaf":{"top":[`, `1,`, `1]}}`, "faults more"},
		{"good stations", `{"leaf":{"top":[`, `[1,1],`, `[1,1]]}}`, "stations is not at most 64"},
		{"hinges", `{"hinges":[`, `{},`, `{}]}`, "items is not at most 64"},
		{"floor heights", `{"floor":{"radii":[0],"angles":[0],"heights":[`, `[0],`, `[0]]}}`, "rows is not one row for each of 1 angle"},
		{"floor radii", `{"floor":{"heights":[[0]],"angles":[0],"radii":[`, `0,`, `0]}}`, "is not between 1 and 32"},
	} {
		t.Run(row.situation, func(t *testing.T) {
			n := (Largest - len(row.before) - len(row.after)) / len(row.again)
			_, err := Parse([]byte(row.before + strings.Repeat(row.again, n) + row.after))
			if err == nil || !strings.Contains(err.Error(), row.want) {
				t.Fatalf("want %q in the faults, got %.2000v", row.want, err)
			}
			if lines := strings.Count(err.Error(), "\n"); lines > 250 {
				t.Errorf("%d lines of faults", lines)
			}
		})
	}
}
