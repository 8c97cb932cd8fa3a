package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

const tables = "../../testdata/readings/"

func TestCheckOfReadings(t *testing.T) {
	dir := t.TempDir()
	write := func(name, text string) string {
		path := filepath.Join(dir, name)
		if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		return path
	}
	right := write("right.json", `{"leafwright": 1, "name": "Dairy, right-hung", "hand": "right", "readings": []}`)
	few := write("few.csv", "kind,at,value\nopening_width,1000,767\nleaf_width,1000,762\n")
	wrong := write("wrong.csv", "kind,at,value\nopening_width,1000,7670\nleaf_wdith,1000,762\nleaf_height,,1981\n")
	bad := write("bad.json", `{"leafwright": 1, "readings": [{"kind": "leaf_width", "at": 0, "value": 7620}], "hinge": 3}`)
	for _, row := range []struct {
		situation string
		args      []string
		status    int
		out, errs []string
	}{
		{"a job of readings alone", []string{jobs + "8-weavers-cottage-readings.json"}, failed, []string{"READINGS THAT DO NOT FIT", "is it 767"}, nil},
		{"a right-hung one", []string{jobs + "9-ferry-house-feelers.json"}, failed, []string{"hinges on the right", "Measure next"}, nil},
		{"a table alone", []string{"-readings", tables + "dairy.csv"}, failed, []string{"dairy\nLeaf 762", "hinges on the left", "±"}, nil},
		{"a table and a job to put it in", []string{right, "-readings", tables + "dairy.csv"}, failed, []string{"Dairy, right-hung", "hinges on the right"}, nil},
		{"the job after the table", []string{"-readings=" + tables + "dairy.csv", right}, failed, []string{"hinges on the right"}, nil},
		{"a table too short", []string{"-readings", few}, misused, nil, []string{"few.csv gives no door", "no height of the opening", "no thickness of the leaf", "top hinge", "bottom hinge"}},
		{"a job too short", []string{right}, misused, nil, []string{"right.json gives no door", "no width of the opening"}},
		{"all faults of a table", []string{"-readings", wrong}, misused, nil, []string{"line 2, value: 7670", "is it 767?", "line 3, kind", "is it leaf_width?", "line 4, at: missing"}},
		{"all faults of both", []string{bad, "-readings", wrong}, misused, nil, []string{"readings[0].value: 7620", "hinge: no such field", "line 2, value: 7670"}},
		{"a table for a job whose shapes were given by hand", []string{jobs + "1-schoolroom-square.json", "-readings", tables + "dairy.csv"}, misused, nil, []string{"cannot be added", "given by hand"}},
		{"no such table", []string{"-readings", "nowhere.csv"}, misused, nil, []string{"nowhere.csv", "no such file"}},
		{"neither job nor table", []string{"-json"}, misused, nil, []string{"JOB is missing"}},
	} {
		t.Run(row.situation, func(t *testing.T) {
			status, out, errs := callWith("", append([]string{"check"}, row.args...)...)
			if status != row.status {
				t.Errorf("status %d, want %d\n%s%s", status, row.status, out, errs)
			}
			for _, s := range row.out {
				if !strings.Contains(out, s) {
					t.Errorf("%q is not in\n%s", s, out)
				}
			}
			for _, s := range row.errs {
				if !strings.Contains(errs, s) {
					t.Errorf("%q is not in\n%s", s, errs)
				}
			}
			if status == misused && out != "" || status != misused && errs != "" {
				t.Errorf("printed %q and %q", out, errs)
			}
		})
	}
}
