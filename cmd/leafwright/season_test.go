package main

import (
	"encoding/json"
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"leafwright/game"
	"leafwright/geom/timber"
	"leafwright/geom/trim"
)

const schoolroom = jobs + "1-schoolroom-square.json"

func readDemo(t *testing.T, path string) game.Job {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	job, err := game.Parse(data)
	if err != nil {
		t.Fatal(err)
	}
	return job
}

// A check says what the leaf weighs, and of an option what it takes, between the moves
// and the shapes by themselves.
func TestCheckSaysTheWork(t *testing.T) {
	_, out, errs := callWith("", "check", falling, "-option", "3")
	last := 0
	for _, s := range []string{"THE MOVES OF CUT IT", "WEIGHT, HINGES AND SCREWS\n  The leaf weighs about 28 kg", "THE ORDER OF WORK\n  1. Test the paint",
		"WHAT IT TAKES\n  - 1 strip, 782 × 15 × 38 mm", "THE LEAF AND THE FRAME BY THEMSELVES"} {
		at := strings.Index(out, s)
		if at <= last {
			t.Errorf("%q is not there, or not in its place\n%s%s", s, out, errs)
		}
		last = max(last, at)
	}
	if _, out, _ := callWith("", "check", falling); !strings.Contains(out, "WEIGHT, HINGES") || strings.Contains(out, "THE ORDER OF WORK") {
		t.Errorf("without an option there is no work:\n%s", out)
	}
	if _, out, _ := callWith("", "check", jobs+"7-station-house-hinge-bound.json", "-option", "1", "-words", "US"); !strings.Contains(out, "- 2 shims, 75 mm high, 3.25 mm thick.") {
		t.Errorf("not in the region's words:\n%s", out)
	}
}

// The numbers for a program are package timber's, to the last bit.
func TestCheckHardwareForAProgram(t *testing.T) {
	_, out, _ := callWith("", "check", "-json", "-option", "3", falling)
	var got struct {
		Hardware struct {
			Timber struct {
				Name string `json:"taken_as"`
				Sure bool
			}
			Mass  struct{ Stiles, Panels, All, Least, Most float64 } `json:"mass_kg"`
			Two   bool                                               `json:"two_people"`
			Pull  float64                                            `json:"pull_newton"`
			Sound struct {
				Borne  float64 `json:"borne_newton"`
				Enough bool
			} `json:"in_sound_wood"`
			Hinges int
			Want   int     `json:"hinges_asked_for"`
			Tall   float64 `json:"plates_asked_for"`
		}
		Work struct {
			Tasks []struct {
				Doing string
				Move  int
				Wait  float64 `json:"wait_minutes"`
			}
			Hands float64 `json:"work_minutes"`
			Takes []struct {
				Thing  string
				Number int
				Size   []float64
				Amount float64
			}
			Strips []struct {
				Move   int
				Edge   string
				Places []float64
				Leaf   float64 `json:"leaf_gauge"`
				Strip  float64 `json:"strip_gauge"`
			}
		}
	}
	if err := json.Unmarshal([]byte(out), &got); err != nil {
		t.Fatal(err)
	}
	job := readDemo(t, falling)
	stands, tried := job.Stands(), job.Try(2)
	l := &tried.Door.Leaf
	mass := timber.MassOf(l, &tried.Anatomy, timber.Stuff{Fitted: 1})
	h := &got.Hardware
	pine, _ := timber.Find("pitch pine")
	top, foot := tried.Door.Hinges[0], tried.Door.Hinges[1]
	pull := timber.Pull(h.Mass.Most, l.Width, top.LeafHeight-foot.LeafHeight)
	hold := timber.HoldOf(pull, timber.Screws{Number: 4, Diameter: timber.Shank(8), Into: 30, Ground: timber.Sound}, pine.Gravity, 0)
	if h.Mass.All != mass.All || h.Mass.Stiles != mass.Stiles || h.Mass.Panels != mass.Panels || h.Timber.Name != pine.Name || !h.Timber.Sure || !h.Two {
		t.Errorf("%+v, want %+v", h, mass)
	}
	if h.Pull != pull || h.Sound.Borne != hold.Borne || h.Sound.Enough != hold.Enough || h.Hinges != 2 || h.Want != 3 || math.Abs(h.Tall-88.9) > 1e-9 {
		t.Errorf("%+v, want %v and %+v", h, pull, hold)
	}

	p := trim.Piece{Door: stands.Door, Anatomy: stands.Anatomy}
	bill := timber.BillOf(p, tried.Steps, timber.Means{Screw: timber.Screws{Number: 4, Diameter: timber.Shank(8), Into: 30}})
	w := &got.Work
	if len(w.Tasks) != len(bill.Tasks) || len(w.Takes) != len(bill.Items) || w.Hands != bill.Hands {
		t.Fatalf("%+v, want %+v", w, bill)
	}
	for i, item := range bill.Items {
		x := w.Takes[i]
		if x.Thing != string(item.Thing) || x.Number != item.N || x.Amount != item.Amount || len(x.Size) > 0 && x.Size[0] != item.Size[0] {
			t.Errorf("%+v, want %+v", x, item)
		}
	}
	for i, task := range bill.Tasks {
		if x := w.Tasks[i]; x.Doing != string(task.Doing) || x.Move != task.Step+1 || x.Wait != task.Wait {
			t.Errorf("%+v, want %+v", x, task)
		}
	}
	cut, _ := trim.All(p, job.Options[2].Moves[:1])
	d, _ := timber.DowelsFor(cut, job.Options[2].Moves[1], 0)
	if s := w.Strips; len(s) != 1 || s[0].Move != 2 || s[0].Edge != "head" || !slices.Equal(s[0].Places, d.Places) || s[0].Leaf != d.LeafGauge || s[0].Strip != d.StripGauge {
		t.Errorf("%+v, want %+v", s, d)
	}
}

func TestSeasonForAProgram(t *testing.T) {
	status, out, errs := callWith("", "season", schoolroom, "-json", "-climate", "Dry Summer", "-room", "outside", "-month", "march", "-meter=11", "-south")
	var got struct {
		Season  int `json:"leafwright_season"`
		Verdict string
		Climate string
		Today   float64 `json:"moisture"`
		By      string  `json:"moisture_by"`
		Across  float64
		Widest  string `json:"widest_in"`
		Narrow  string `json:"narrowest_in"`
		Months  []struct {
			Month           string
			Moisture, Grows float64
			Least           float64 `json:"gap_least"`
			Most            float64 `json:"gap_most"`
			Verdict         string
		}
		Fit map[string]struct{ Wanted, Season, All float64 } `json:"fit_to"`
	}
	if err := json.Unmarshal([]byte(out), &got); err != nil {
		t.Fatal(err, errs)
	}
	job := readDemo(t, schoolroom)
	y := timber.PresetFor(timber.DrySummer, timber.Outside).Year(true)
	moisture := timber.Metered(y.Moisture(), []timber.Meter{{Month: 2, Moisture: 11}})
	s, _ := timber.Find(job.Anatomy.Timber)
	se := timber.SeasonOf(timber.MovingOf(&job.Door.Leaf, &job.Anatomy).Across, s.Coefficient(timber.AnyWay), 11, moisture)
	_, checked, _ := callWith("", "check", schoolroom, "-json")
	var check struct{ Gaps gapsOf }
	if err := json.Unmarshal([]byte(checked), &check); err != nil {
		t.Fatal(err)
	}
	today := check.Gaps["latch"]
	least, most := se.Through(today.Least), se.Through(today.Most)
	if len(got.Months) != 12 || got.Season != 1 || got.Today != 11 || got.By != "meter" || got.Months[se.Tight].Month != got.Widest || got.Months[se.Slack].Month != got.Narrow {
		t.Fatalf("%+v", got)
	}
	good := true
	for m, x := range got.Months {
		if x.Moisture != moisture[m] || x.Grows != se.Grows[m] || x.Least != least[m] || x.Most != most[m] {
			t.Errorf("%+v, want %v, %v, %v to %v", x, moisture[m], se.Grows[m], least[m], most[m])
		}
		good = good && x.Verdict == "good"
	}
	if good != (status == ok) || (got.Verdict == "good") != good {
		t.Errorf("leaves with %d, verdict %s, good in every month: %v", status, got.Verdict, good)
	}
	if f := got.Fit["latch"]; f.Wanted != 2.5 || f.Season != se.Grows[se.Tight] || math.Abs(f.All-se.AtFitting(2.5)) > 1e-12 {
		t.Errorf("to fit to: %+v", f)
	}
}

func TestSeasonLeavesWithTheVerdict(t *testing.T) {
	for _, c := range []struct {
		name   string
		args   []string
		status int
		says   []string
	}{
		{"good all the year", []string{schoolroom, "-climate", "Damp Summer", "-room", "unheated"}, ok, []string{"as wanted all the year"}},
		{"tight in summer", []string{schoolroom}, failed, []string{"tight in July", "THE YEAR\n", "follows the air weeks late and by less"}},
		{"after an option, in other words", []string{"-words", "US", jobs + "6-coach-house-rising-floor.json", "-option", "1"}, failed, []string{"Tried: Plane the foot.", "Lock side: 2.5 mm wanted in July"}},
		{"from standard input", []string{"-"}, failed, []string{"HOW IT MOVES"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			data, err := os.ReadFile(schoolroom)
			if err != nil {
				t.Fatal(err)
			}
			status, out, errs := callWith(string(data), append([]string{"season"}, c.args...)...)
			if status != c.status || errs != "" {
				t.Errorf("status %d, want %d: %s\n%s", status, c.status, errs, out)
			}
			for _, s := range c.says {
				if !strings.Contains(out, s) {
					t.Errorf("%q is not in\n%s", s, out)
				}
			}
		})
	}
}

func TestSeasonRefusesBadInput(t *testing.T) {
	for _, c := range []struct {
		name string
		args []string
		says []string
	}{
		{"no job", nil, []string{"JOB is missing"}},
		{"two jobs", []string{schoolroom, schoolroom}, []string{"one argument too many"}},
		{"all that is wrong at once", []string{schoolroom, "-climate", "lunar", "-room", "attic", "-month", "Mai", "-meter", "900", "-words", "FR"},
			[]string{`"lunar" is not one of maritime, continental, dry summer, damp summer and tropical`, `"attic" is not one of heated, unheated, wet and outside`,
				`"Mai" is not one of January, February`, "-meter 900 is not between 2 and 60 %", `"FR" is not one of`}},
		{"a meter that reads nothing", []string{schoolroom, "-meter", "0"}, []string{"-meter 0 is not between"}},
		{"a meter that reads no number", []string{schoolroom, "-meter", "NaN"}, []string{"-meter NaN is not between"}},
		{"a meter that reads words", []string{schoolroom, "-meter", "damp"}, []string{"-meter"}},
		{"no such option", []string{falling, "-option", "Burn it"}, []string{`"Burn it"`, "1, Plane the top"}},
		{"no such file", []string{"no-such-job.json"}, []string{"no such file"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			status, out, errs := callWith("", append([]string{"season"}, c.args...)...)
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

// What the job says of room, paint, meter and prices is taken where no flag says otherwise.
func TestTheJobsOwnHouse(t *testing.T) {
	const harbour = jobs + "10-harbour-house-repairs.json"
	_, out, errs := callWith("", "season", harbour)
	for _, s := range []string{"Damp summer climate, unheated room; south of the equator", "by the meter in July", "closing gap, painted", "for paint to come on leaf and frame"} {
		if !strings.Contains(out, s) {
			t.Errorf("%q is not in\n%s%s", s, out, errs)
		}
	}
	if _, out, _ := callWith("", "season", harbour, "-climate", "tropical", "-room", "wet", "-month", "may", "-meter", "14"); !strings.Contains(out, "Tropical climate, wet room; south") || !strings.Contains(out, "by the meter in May") {
		t.Errorf("the flags do not count first:\n%s", out)
	}
	_, out, errs = callWith("", "check", harbour, "-option", "1", "-json")
	var got struct {
		Hanging struct {
			Marks []float64  `json:"marks_on_jamb"`
			Under [2]float64 `json:"packers_under_foot"`
			Keep  struct{ Height, Up float64 }
		}
		Places []struct {
			Do     string
			Filler float64 `json:"filler_cm3"`
			Moves  []int
		} `json:"bad_places"`
		Fit  map[string]struct{ Wanted, Paint, Season, All float64 } `json:"fit_to"`
		Work struct {
			Cost struct {
				Currency             string
				Items                []float64
				Materials, Work, All float64
			}
			Takes []struct{ Thing string }
		}
	}
	if err := json.Unmarshal([]byte(out), &got); err != nil {
		t.Fatal(err, errs)
	}
	c := &got.Work.Cost
	sum := 0.0
	for _, x := range c.Items {
		sum += x
	}
	if c.Currency != "$" || len(c.Items) != len(got.Work.Takes) || math.Abs(sum-c.Materials) > 1e-9 || math.Abs(c.Materials+c.Work-c.All) > 1e-9 || c.Work == 0 {
		t.Errorf("%+v", got.Work)
	}
	if len(got.Places) != 3 || got.Places[0].Do != "cut out" || !slices.Equal(got.Places[0].Moves, []int{1}) || math.Abs(got.Places[1].Filler-19.8) > 1e-9 {
		t.Errorf("%+v", got.Places)
	}
	if f := got.Fit["latch"]; f.Paint <= 0 || f.Season <= 0 || math.Abs(f.Wanted+f.Paint+f.Season-f.All) > 1e-12 {
		t.Errorf("%+v", f)
	}
	if h := &got.Hanging; len(h.Marks) != 2 || h.Marks[0] != 1801 || math.Abs(h.Under[0]-7) > 1e-9 || math.Abs(h.Keep.Height-1047) > 0.5 {
		t.Errorf("%+v", h)
	}
}
