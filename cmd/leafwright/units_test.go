package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// inInches is a job typed wholly in feet and inches.
const inInches = `{"leafwright": 1, "name": "Bath door", "readings": [
	{"kind": "opening_width", "at": "40\"", "value": "28-1/8"},
	{"kind": "opening_height", "at": "14\"", "value": "6' 8 1/4\""},
	{"kind": "leaf_width", "at": "40\"", "value": "28\""},
	{"kind": "leaf_height", "at": "14\"", "value": "6' 7 3/4\""},
	{"kind": "leaf_thickness", "value": "1 3/8\""},
	{"kind": "hinge_on_leaf", "hinge": 1, "value": "71 1/2\""},
	{"kind": "hinge_on_leaf", "hinge": 2, "value": "12\""}]}`

// A job typed in inches is spoken of in inches unless mm are asked for, and one typed in
// mm in mm.
func TestUnitsAreTheJobsOwn(t *testing.T) {
	path := filepath.Join(t.TempDir(), "inches.json")
	if err := os.WriteFile(path, []byte(inInches), 0o644); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"check", "compare", "season", "advise"} {
		for _, c := range []struct {
			args []string
			mm   bool
		}{
			{[]string{path}, false}, {[]string{path, "-units", "mm"}, true}, {[]string{"-units", "in", falling}, false}, {[]string{falling}, true},
		} {
			_, out, complaint := callWith("", append([]string{name}, c.args...)...)
			if !strings.Contains(out, "\n") {
				t.Fatalf("%s %v: %s", name, c.args, complaint)
			}
			in := strings.Contains(out, `″`) || strings.Contains(out, `"`) || strings.Contains(out, " in ") && strings.Contains(out, "/64")
			if mm := strings.Contains(out, " mm"); c.mm && !mm || !c.mm && !in {
				t.Errorf("%s %v: in mm %v, in inches %v; want mm %v:\n%s", name, c.args, mm, in, c.mm, out)
			}
		}
		if status, _, complaint := callWith("", name, path, "-units", "feet"); status != misused || !strings.Contains(complaint, `-units "feet" is not one of mm and in`) {
			t.Errorf("%s -units feet: %d, %s", name, status, complaint)
		}
	}
}

// What is one too many is the second file, not the first.
func TestOneTooManyIsTheSecond(t *testing.T) {
	for _, name := range []string{"check", "compare", "season", "advise", "sheet", "lesson"} {
		_, _, complaint := callWith("", name, "first.json", "second.json")
		if !strings.Contains(complaint, `"second.json" is one argument too many`) {
			t.Errorf("%s first.json second.json: %s", name, complaint)
		}
	}
}
