package main

import (
	"bytes"
	"context"
	"encoding/json"
	"encoding/xml"
	"errors"
	"io"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

const jobs = "../../testdata/jobs/"

// callWith runs the command with a text on its standard input.
func callWith(in string, args ...string) (status int, out, err string) {
	var o, e bytes.Buffer
	status = run(context.Background(), args, std{strings.NewReader(in), &o, &e})
	return status, o.String(), e.String()
}

func TestCheckLeavesWithTheVerdict(t *testing.T) {
	for _, c := range []struct {
		name   string
		args   []string
		status int
		says   string
	}{
		{"all good", []string{"check", jobs + "1-schoolroom-square.json"}, 0, "It hangs as wanted"},
		{"binds at the head", []string{"check", jobs + "2-terrace-falling-head.json"}, 1, "The head falls 7.0 mm towards the latch."},
		{"flags after the job", []string{"check", jobs + "7-station-house-hinge-bound.json", "-words", "AU"}, 1, "checked in"},
		{"flags before the job", []string{"check", "-words=US", jobs + "7-station-house-hinge-bound.json"}, 1, "lock side"},
	} {
		t.Run(c.name, func(t *testing.T) {
			status, out, errs := callWith("", c.args...)
			if status != c.status || !strings.Contains(out, c.says) || errs != "" {
				t.Errorf("status %d, want %d and %q in\n%s%s", status, c.status, c.says, out, errs)
			}
		})
	}
}

func TestCheckRefusesBadInput(t *testing.T) {
	bad := filepath.Join(t.TempDir(), "bad.json")
	if err := os.WriteFile(bad, []byte(`{"leafwright": 1, "leaf": {"width": 8130, "depth": 3}}`), 0o600); err != nil {
		t.Fatal(err)
	}
	picture := filepath.Join(t.TempDir(), "picture.svg")
	for _, c := range []struct {
		name string
		in   string
		args []string
		says []string
	}{
		{"no job", "", []string{"check"}, []string{"JOB is missing"}},
		{"two jobs", "", []string{"check", "a.json", "b.json"}, []string{"one argument too many"}},
		{"no such file", "", []string{"check", "no-such-job.json"}, []string{"no-such-job.json", "no such file"}},
		{"a folder", "", []string{"check", jobs}, []string{jobs}},
		{"an unknown flag", "", []string{"check", "-paint", bad}, []string{"-paint"}},
		{"words of nowhere", "", []string{"check", bad, "-words", "FR"}, []string{`"FR" is not one of`}},
		{"every fault at once, nothing written", "", []string{"check", bad, "-svg", picture}, []string{"leaf.width", "8130", "is it 813?", "leaf.depth", "leaf.height", "opening", "hinges"}},
		{"nonsense on standard input", "not a job", []string{"check", "-"}, []string{"line 1"}},
		{"nothing on standard input", "", []string{"check", "-"}, []string{"line 1"}},
		{"a picture that cannot be written", "", []string{"check", jobs + "1-schoolroom-square.json", "-svg", filepath.Join(bad, "x.svg")}, []string{"not written"}},
		{"an unknown command", "", []string{"plane"}, []string{`no command "plane"`, "leafwright check"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			status, out, errs := callWith(c.in, c.args...)
			if status != misused || out != "" {
				t.Errorf("status %d, want %d; printed %q", status, misused, out)
			}
			for _, s := range c.says {
				if !strings.Contains(errs, s) {
					t.Errorf("%q is not in\n%s", s, errs)
				}
			}
		})
	}
	if _, err := os.Stat(picture); !errors.Is(err, os.ErrNotExist) {
		t.Error("a picture was written of a job that is no job")
	}
}

func TestCheckReadsStandardInput(t *testing.T) {
	data, err := os.ReadFile(jobs + "5-mill-cottage-square-edge.json")
	if err != nil {
		t.Fatal(err)
	}
	if status, out, _ := callWith(string(data), "check", "-"); status != failed || !strings.Contains(out, "fouls the latch side") {
		t.Errorf("status %d\n%s", status, out)
	}
}

func TestCheckForAProgram(t *testing.T) {
	status, out, _ := callWith("", "check", "-json", jobs+"2-terrace-falling-head.json")
	var got struct {
		Report   int `json:"leafwright_report"`
		Verdict  string
		Gaps     map[string]struct{ Least, Most float64 }
		Findings []struct {
			About, Edge, Verdict, Cause string
			Worst                       float64
			Causes                      []struct {
				Departure string
				Amount    float64
			}
		}
	}
	if err := json.Unmarshal([]byte(out), &got); err != nil {
		t.Fatal(err)
	}
	f := got.Findings[0]
	if status != failed || got.Report != 1 || got.Verdict != "binds" || f.Edge != "head" || f.Worst >= 0 ||
		math.Abs(f.Worst-got.Gaps["head"].Least) > 1e-9 || f.Causes[0].Departure != "head slopes" || f.Causes[0].Amount > -6.9 {
		t.Errorf("status %d, %+v", status, got)
	}
}

func TestCheckDraws(t *testing.T) {
	picture := filepath.Join(t.TempDir(), "picture.svg")
	if status, _, errs := callWith("", "check", jobs+"1-schoolroom-square.json", "-svg", picture); status != ok {
		t.Fatal(errs)
	}
	data, err := os.ReadFile(picture)
	if err != nil {
		t.Fatal(err)
	}
	d := xml.NewDecoder(bytes.NewReader(data))
	elements := map[string]int{}
	for {
		token, err := d.Token()
		if err == io.EOF {
			break
		}
		if err != nil {
			t.Fatalf("not XML: %v", err)
		}
		if e, ok := token.(xml.StartElement); ok {
			elements[e.Name.Local]++
		}
	}
	if elements["svg"] != 1 || elements["path"]+elements["polygon"] < 20 || elements["text"] < 8 {
		t.Errorf("elements %v", elements)
	}
}

func TestSchemaIsPrinted(t *testing.T) {
	status, out, _ := callWith("", "schema")
	var schema struct {
		Schema string `json:"$schema"`
	}
	if err := json.Unmarshal([]byte(out), &schema); err != nil || status != ok {
		t.Fatalf("status %d: %v", status, err)
	}
	if schema.Schema != "https://json-schema.org/draft/2020-12/schema" {
		t.Errorf("schema of %q", schema.Schema)
	}
	if status, _, _ := callWith("", "schema", "extra"); status != misused {
		t.Errorf("an argument too many leaves with %d", status)
	}
}
