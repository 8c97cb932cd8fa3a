package main

import (
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

const falling = jobs + "2-terrace-falling-head.json"

type gapsOf map[string]struct{ Least, Most float64 }

// The comparison's gaps and those of a check of each option are the same bits.
func TestCompareAgreesWithCheck(t *testing.T) {
	for _, file := range []string{falling, jobs + "6-coach-house-rising-floor.json", jobs + "7-station-house-hinge-bound.json"} {
		status, out, errs := callWith("", "compare", "-json", file)
		var cmp struct {
			Comparison int `json:"leafwright_comparison"`
			Columns    []struct {
				Name    string
				Option  int
				Gaps    gapsOf
				Refused int      `json:"moves_refused"`
				Out     []string `json:"not_as_wanted"`
			}
		}
		if err := json.Unmarshal([]byte(out), &cmp); err != nil || status != ok || errs != "" {
			t.Fatalf("%s: status %d, %v, %s", file, status, err, errs)
		}
		if cmp.Comparison != 1 || len(cmp.Columns) < 3 || cmp.Columns[0].Name != "As found" {
			t.Fatalf("%s: %+v", file, cmp)
		}
		for _, c := range cmp.Columns[1:] {
			status, out, errs := callWith("", "check", "-json", "-option", c.Name, file)
			var got struct {
				Gaps   gapsOf
				Option struct {
					Number int
					Name   string
					Moves  []struct {
						State, Text, Why string
						Cautions         []struct{ Text string }
					}
				}
			}
			if err := json.Unmarshal([]byte(out), &got); err != nil || errs != "" {
				t.Fatalf("%s: %v %s", c.Name, err, errs)
			}
			if good := len(c.Out) == 0; good != (status == ok) {
				t.Errorf("%s: %d not as wanted, check leaves with %d", c.Name, len(c.Out), status)
			}
			for e, g := range c.Gaps {
				if h := got.Gaps[e]; math.Float64bits(g.Least) != math.Float64bits(h.Least) || math.Float64bits(g.Most) != math.Float64bits(h.Most) {
					t.Errorf("%s, %s: compared %v, checked %v", c.Name, e, g, h)
				}
			}
			if got.Option.Name != c.Name || got.Option.Number != c.Option || len(got.Option.Moves) == 0 {
				t.Errorf("%s: checked %+v", c.Name, got.Option)
			}
			for _, m := range got.Option.Moves {
				if m.State != "done" || c.Refused != 0 {
					t.Errorf("%s: %s is %s: %s", c.Name, m.Text, m.State, m.Why)
				}
				if m.Text == "" || len(m.Cautions) == 0 {
					t.Errorf("%s: a move without words or cautions: %+v", c.Name, m)
				}
			}
		}
	}
}

func TestCheckOfAnOption(t *testing.T) {
	for _, c := range []struct {
		name   string
		args   []string
		status int
		says   []string
	}{
		{"by name, whatever the letters", []string{"-option", "PLANE the top", falling}, failed,
			[]string{"Tried: Plane the top.", "THE MOVES OF PLANE THE TOP", "1. Plane the top: 4.5 mm at the latch corner, tapering to nothing at the\n     hinge corner.", "! Old paint may hold lead"}},
		{"by number", []string{falling, "-option", "1"}, failed, []string{"Tried: Plane the top."}},
		{"another that cures", []string{"-option", "pack the hinges out", jobs + "7-station-house-hinge-bound.json"}, ok, []string{"It hangs as wanted"}},
		{"without an option they are listed", []string{falling}, failed, []string{"OPTIONS TO TRY", "2. Tilt it on the hinges"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			status, out, errs := callWith("", append([]string{"check"}, c.args...)...)
			if status != c.status || errs != "" {
				t.Errorf("status %d, want %d; %s", status, c.status, errs)
			}
			for _, s := range c.says {
				if !strings.Contains(out, s) {
					t.Errorf("%q is not in\n%s", s, out)
				}
			}
		})
	}
}

func TestOptionsThatAreNotThere(t *testing.T) {
	for _, c := range []struct {
		name string
		args []string
		says []string
	}{
		{"no such option", []string{"check", falling, "-option", "Burn it"}, []string{`"Burn it"`, "1, Plane the top", "2, Tilt it on the hinges"}},
		{"a number too high", []string{"check", falling, "-option", "9"}, []string{`"9"`, "1, Plane the top"}},
		{"a job without any", []string{"check", jobs + "1-schoolroom-square.json", "-option", "1"}, []string{"has no options"}},
		{"nothing to compare", []string{"compare"}, []string{"JOB is missing"}},
		{"two to compare", []string{"compare", falling, falling}, []string{"one argument too many"}},
		{"words of nowhere", []string{"compare", falling, "-words", "FR"}, []string{`"FR"`}},
	} {
		t.Run(c.name, func(t *testing.T) {
			status, out, errs := callWith("", c.args...)
			if status != misused || out != "" {
				t.Errorf("status %d, printed %q", status, out)
			}
			for _, s := range c.says {
				if !strings.Contains(errs, s) {
					t.Errorf("%q is not in\n%s", s, errs)
				}
			}
		})
	}
}

// A move done for keeps is in the door reported without asking; one that cannot be
// done is said with its reason and the rest goes on.
func TestCheckOfWhatWasMade(t *testing.T) {
	text, err := os.ReadFile(falling)
	if err != nil {
		t.Fatal(err)
	}
	made := strings.Replace(string(text), `"options": [`, `"made": [{"do": "plane", "edge": "top", "first": 0, "last": 4.5}],
  "options": [{"name": "Too far", "moves": [{"do": "plane", "edge": "top", "first": 45, "last": 45}, {"do": "sink", "hinge": 1, "on": "leaf", "first": 0.1}]},`, 1)
	file := filepath.Join(t.TempDir(), "made.json")
	if err := os.WriteFile(file, []byte(made), 0o600); err != nil {
		t.Fatal(err)
	}
	if status, out, errs := callWith("", "check", file); status != failed || !strings.Contains(out, "DONE FOR KEEPS") || strings.Contains(out, "Binds") {
		t.Errorf("status %d\n%s%s", status, out, errs)
	}
	if _, out, _ := callWith("", "compare", file); !strings.Contains(out, "As it stands") {
		t.Errorf("the door as it stands is not compared:\n%s", out)
	}
	_, out, _ := callWith("", "check", "-option", "too far", file)
	for _, s := range []string{"1. Cannot be done: Plane the top: 45 mm all along.", "2. Sink the top hinge 0.1 mm deeper in the leaf."} {
		if !strings.Contains(out, s) {
			t.Errorf("%q is not in\n%s", s, out)
		}
	}
}
