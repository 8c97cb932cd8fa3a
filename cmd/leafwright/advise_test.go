package main

import (
	"encoding/json"
	"errors"
	"flag"
	"io/fs"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "write the golden advice anew")

const (
	ferry  = jobs + "9-ferry-house-feelers.json"
	coach  = jobs + "6-coach-house-rising-floor.json"
	square = jobs + "1-schoolroom-square.json"
)

// The advice on a job whose shapes are exact and on one that was read, word for word.
func TestAdviceIsGolden(t *testing.T) {
	for _, row := range []struct{ golden, args string }{
		{"advise-falling-head.txt", falling},
		{"advise-ferry-house.txt", ferry},
		{"advise-falling-head-inches.txt", falling + " -units in -words US -forbid hinges"},
		{"advise-falling-head.json", falling + " -json"},
	} {
		t.Run(row.golden, func(t *testing.T) {
			status, out, errs := callWith("", append([]string{"advise"}, strings.Fields(row.args)...)...)
			if status != ok || errs != "" {
				t.Fatalf("status %d: %s", status, errs)
			}
			if _, again, _ := callWith("", append([]string{"advise"}, strings.Fields(row.args)...)...); again != out {
				t.Error("told otherwise the second time")
			}
			path := filepath.Join("testdata", row.golden)
			if *update {
				if err := os.WriteFile(path, []byte(out), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			want, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			if out != string(want) {
				t.Errorf("not as in %s (go test -update writes it anew):\n%s", path, out)
			}
		})
	}
}

type advised struct {
	Advice      int    `json:"leafwright_advice"`
	Outcome     string `json:"outcome"`
	NotAsWanted []any  `json:"not_as_wanted"`
	Trade       []struct{ Timber, Uneven float64 }
	Conflict    *struct{ Text []string }
	Cautions    []any
	Plans       []advisedPlan
}

type advisedPlan struct {
	Title, Verdict string
	Cost           struct {
		Timber  float64 `json:"timber_off_cm3"`
		Minutes float64
	}
	Bound, Price float64
	Moves        []struct {
		State, Text, Reason string
		Timber              float64 `json:"timber_off_cm3"`
		Minutes             float64
		Cautions            []any
	}
	Stages []struct{ Moves []json.RawMessage }
	Option struct {
		Name  string
		Moves []json.RawMessage
	}
	Gaps        gapsOf
	NotAsWanted []struct{ About string } `json:"not_as_wanted"`
}

// What -json tells of a plan is, bit for bit, what a check of the option saved tells,
// and its costs are those of its moves.
func TestAdviceAgreesWithCheck(t *testing.T) {
	files, err := filepath.Glob(jobs + "*.json")
	if err != nil || len(files) == 0 {
		t.Fatal("no demo jobs", err)
	}
	for _, file := range files {
		t.Run(filepath.Base(file), func(t *testing.T) {
			saved := filepath.Join(t.TempDir(), "saved.json")
			status, out, errs := callWith("", "advise", "-json", file)
			var a advised
			if err := json.Unmarshal([]byte(out), &a); err != nil || a.Advice != 1 || errs != "" {
				t.Fatalf("status %d, %v, %s", status, err, errs)
			}
			if (status == ok) != (a.Outcome == "good" || a.Outcome == "plans") || (a.Outcome == "plans") != (len(a.Plans) > 0) || len(a.Cautions) == 0 {
				t.Fatalf("status %d, %+v", status, a)
			}
			if len(a.Plans) == 0 {
				return
			}
			if status, _, errs := callWith("", "advise", file, "-save", saved); status != ok || errs != "" {
				t.Fatalf("status %d: %s", status, errs)
			}
			for _, p := range a.Plans {
				_, out, errs := callWith("", "check", "-json", "-option", p.Option.Name, saved)
				var got struct {
					Verdict string
					Gaps    gapsOf
					Option  struct {
						Name  string
						Moves []struct{ Move json.RawMessage }
					}
				}
				if err := json.Unmarshal([]byte(out), &got); err != nil || errs != "" {
					t.Fatalf("%v, %s", err, errs)
				}
				for e, g := range p.Gaps {
					if h := got.Gaps[e]; math.Float64bits(g.Least) != math.Float64bits(h.Least) || math.Float64bits(g.Most) != math.Float64bits(h.Most) {
						t.Errorf("%s, %s: advised %v, checked %v", p.Title, e, g, h)
					}
				}
				if p.Verdict != got.Verdict || len(got.Option.Moves) != len(p.Option.Moves) {
					t.Errorf("%s: advised %s, checked %s", p.Title, p.Verdict, got.Verdict)
				}
				for _, n := range p.NotAsWanted {
					if n.About != "hinges" { // that no reading of a tape sees
						t.Errorf("%s: leaves the %s", p.Title, n.About)
					}
				}
				var timber, minutes float64
				for _, m := range p.Moves {
					timber, minutes = timber+m.Timber, minutes+m.Minutes
					if m.State != "done" || m.Text == "" || m.Reason == "" || len(m.Cautions) == 0 && !strings.HasPrefix(m.Text, "Pack the head") { // which narrows no way
						t.Errorf("%s: %+v", p.Title, m)
					}
				}
				if math.Abs(timber-p.Cost.Timber) > 1e-9 || math.Abs(minutes-p.Cost.Minutes) > 1e-9 || p.Bound > p.Price {
					t.Errorf("%s: moves come to %v cm³, %v min: %+v, bound %v, price %v", p.Title, timber, minutes, p.Cost, p.Bound, p.Price)
				}
				if n := len(p.Stages); n < 1 || n > 2 {
					t.Errorf("%s: %d stages", p.Title, n)
				}
			}
		})
	}
}

func TestAdviceLeavesWith(t *testing.T) {
	rated := filepath.Join(t.TempDir(), "rated.json")
	text, err := os.ReadFile(falling)
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(rated, []byte(strings.Replace(string(text), `"timber": "pitch pine"`, `"rated": true`, 1)), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name   string
		args   []string
		status int
		says   []string
	}{
		{"it fits", []string{square}, ok, []string{"It fits as it is: nothing needs doing."}},
		{"a plan", []string{falling}, ok, []string{"1. HINGES AND PLANE", "Plug the old screw holes", "2. PACK OUT THE HEAD AND WORK THE HINGES", "3. PACK OUT THE HEAD, PLANE THE LEAF", "! Old paint may hold lead", "TIMBER AGAINST EVEN GAPS"}},
		{"read from readings", []string{ferry}, ok, []string{"read these gaps by feeler: at the head", "±", "expect to trim once or twice more"}},
		{"a conflict", []string{coach}, failed, []string{"The most wanted for the gap at the floor cannot be had", "The least that would do: let the gap at the floor be 2.9 mm more", "1. IF A LIMIT GIVES WAY: PLANE ONLY Only if this may give way: let the gap at the floor be 3 mm more"}},
		{"too much forbidden", []string{"-forbid", "frame, Hinges,strip", "-alike", falling}, failed, []string{"nothing done to the hinges and no strip glued on"}},
		{"a rated leaf", []string{rated}, failed, []string{"takes no trimming", "ask whoever holds the certificate"}},
		{"hinges forbidden", []string{falling, "-forbid=hinges"}, ok, []string{"1. PACK OUT THE HEAD", "2. SPLICE A STRIP ONTO THE TOP", "Splice an 8 mm strip"}},
		{"the most even", []string{falling, "-prefer", "even"}, ok, []string{"Wished for: most even gaps."}},
		{"the top rail", []string{falling, "-toprail"}, ok, []string{"1. PACK OUT THE HEAD AND WORK THE HINGES"}},
		{"the top rail, the frame left alone", []string{falling, "-toprail", "-forbid=frame"}, failed, []string{"a top rail as high as its neighbour"}},
		{"in the words of the US", []string{falling, "-words", "US", "-units", "in"}, ok, []string{"gains cut anew", `Plane the top: 15/64" at the lock corner`}},
	} {
		t.Run(c.name, func(t *testing.T) {
			status, out, errs := callWith("", append([]string{"advise"}, c.args...)...)
			if status != c.status || errs != "" {
				t.Errorf("status %d, want %d; %s", status, c.status, errs)
			}
			flat := strings.Join(strings.Fields(out), " ")
			for _, s := range c.says {
				if !strings.Contains(flat, s) {
					t.Errorf("%q is not in\n%s", s, out)
				}
			}
		})
	}
	if status, out, _ := callWith(string(text), "advise", "-"); status != ok || !strings.Contains(out, "HINGES AND PLANE") {
		t.Errorf("from standard input: status %d\n%s", status, out)
	}
}

func TestAdviceRefusesBadInput(t *testing.T) {
	there := filepath.Join(t.TempDir(), "there.json")
	if err := os.WriteFile(there, []byte("mine"), 0o600); err != nil {
		t.Fatal(err)
	}
	beside := filepath.Join(t.TempDir(), "beside.json")
	for _, c := range []struct {
		name string
		in   string
		args []string
		says []string
	}{
		{"no job", "", nil, []string{"JOB is missing"}},
		{"two jobs", "", []string{falling, coach}, []string{"one argument too many"}},
		{"no such file", "", []string{"no-such-job.json"}, []string{"no-such-job.json", "no such file"}},
		{"nonsense on standard input", "not a job", []string{"-"}, []string{"line 1"}},
		{"all faults of the flags", "", []string{falling, "-prefer", "beauty", "-forbid", "frame,paint", "-units", "ell"},
			[]string{`-prefer "beauty" is not one of timber, even, quick and frame`, `-forbid "paint" is not one of frame, hinges and strip`, `-units "ell" is not one of mm and in`}},
		{"words of nowhere", "", []string{falling, "-words", "FR"}, []string{`"FR"`}},
		{"no neighbour", "", []string{square, "-toprail"}, []string{"gives no rails of a door beside it"}},
		{"a file that is there", "", []string{falling, "-save", there}, []string{"there.json is there already", "nothing is written over"}},
		{"nothing to save", "", []string{square, "-save", beside}, []string{"there is no plan to add"}},
		{"where nothing can be saved", "", []string{falling, "-save", filepath.Join(there, "x.json")}, []string{"not saved"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			status, out, errs := callWith(c.in, append([]string{"advise"}, c.args...)...)
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
	if b, err := os.ReadFile(there); err != nil || string(b) != "mine" {
		t.Errorf("written over: %q, %v", b, err)
	}
	if _, err := os.Stat(beside); !errors.Is(err, fs.ErrNotExist) {
		t.Error("saved a job without a plan")
	}
}
