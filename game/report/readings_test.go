package report

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"leafwright/game"
	"leafwright/game/internal/demos"
	"leafwright/game/words"
	"leafwright/geom/judge"
)

var speaker = words.Speaker{Lexicon: words.For(words.UK)}

// inOrder tells the first of the pieces that does not come behind those before it.
func inOrder(text string, pieces ...string) string {
	for _, p := range pieces {
		i := strings.Index(text, p)
		if i < 0 {
			return p
		}
		text = text[i+len(p):]
	}
	return ""
}

func TestTextOfReadings(t *testing.T) {
	for _, row := range []struct {
		job    string
		pieces []string
	}{
		{"8-weavers-cottage-readings", []string{
			"Binds by", "±", "(", "%) that it does.",
			"READINGS THAT DO NOT FIT\n  The opening's width 1000 mm up, 776, does not fit the other readings by", "is it 767 (two figures changed round)", "It was left out.",
			"WHAT THE FIT SHOWS\n  binds    −", " ± ", "Binds: ", "The latch jamb leans",
			"WHAT IT RESTS ON\n  42 readings.", "± holds the truth 9 times out of 10.", "Measure next: ",
			"NOT MEASURED\n", "taken straight.", "Floor under the swing: taken to run on as in the opening.",
			"THE LEAF AND THE FRAME BY THEMSELVES", "TAKE CARE", "NOTE",
		}},
		{"9-ferry-house-feelers", []string{"hinges on the right", "WHAT THE FIT SHOWS", "head", "1 left out by you.", "Measure next: ", "NOT MEASURED"}},
	} {
		t.Run(row.job, func(t *testing.T) {
			text := Of(demos.Job(t, row.job)).Text(speaker)
			if missing := inOrder(text, row.pieces...); missing != "" {
				t.Errorf("%q does not come where it should in\n%s", missing, text)
			}
			for i, line := range strings.Split(text, "\n") {
				if n := len([]rune(line)); n > width {
					t.Errorf("line %d has %d letters", i+1, n)
				}
			}
		})
	}
}

// A door by hand says nothing of readings and carries no ±.
func TestTextWithoutReadings(t *testing.T) {
	r := Of(demos.Job(t, "2-terrace-falling-head"))
	text := r.Text(speaker)
	for _, word := range []string{"±", "READINGS", "RESTS ON", "NOT MEASURED", "%)"} {
		if strings.Contains(text, word) {
			t.Errorf("%q is in\n%s", word, text)
		}
	}
	out, err := r.JSON(speaker)
	if err != nil || strings.Contains(string(out), "margin_90") || strings.Contains(string(out), "odds") {
		t.Errorf("%v\n%s", err, out)
	}
}

// certain is a door read so well, twice over, that all is good.
const certain = `{
  "leafwright": 1,
  "wanted": {"preset": "own", "hinge": {"least": 0, "target": 2, "most": 0}, "latch": {"least": 0, "target": 2, "most": 0}, "head": {"least": 0, "target": 2, "most": 0},
    "floor": {"least": 0, "target": 2, "most": 0}, "stop": {"least": 0, "target": 2, "most": 0}, "swing": {"least": 0, "target": 1}, "swing_floor": {"least": 0, "target": 1}},
  "readings": [
    {"kind": "opening_width", "at": 1000, "value": 772}, {"kind": "opening_width", "at": 1000, "value": 772}, {"kind": "opening_width", "at": 1000, "value": 772},
    {"kind": "opening_height", "at": 400, "value": 2010}, {"kind": "leaf_width", "at": 1000, "value": 762}, {"kind": "leaf_height", "at": 400, "value": 1981},
    {"kind": "leaf_thickness", "value": 40}, {"kind": "leaf_bevel", "side": "latch", "value": 2}, {"kind": "rebate_depth", "side": "latch", "at": 1000, "value": 45},
    {"kind": "hinge_on_leaf", "hinge": 1, "value": 1791}, {"kind": "hinge_on_leaf", "hinge": 2, "value": 265},
    {"kind": "hinge_on_jamb", "hinge": 1, "value": 1803}, {"kind": "hinge_on_jamb", "hinge": 2, "value": 277}
  ]
}`

// A reading that does not fit keeps a report from being all good.
func TestASuspectIsNotAllGood(t *testing.T) {
	for _, row := range []struct {
		situation, text string
		good            bool
	}{
		{"readings that agree", certain, true},
		{"one of three widths with two figures changed round", strings.Replace(certain, `"value": 772}`, `"value": 727}`, 1), false},
		{"the same, left out by hand", strings.Replace(certain, `"value": 772}`, `"value": 727, "off": true}`, 1), true},
	} {
		t.Run(row.situation, func(t *testing.T) {
			j, err := game.Parse([]byte(row.text))
			if err != nil {
				t.Fatal(err)
			}
			r := Of(j)
			if w := r.Worst(); w != judge.Good {
				t.Fatalf("the worst verdict is %v\n%s", w, r.Text(speaker))
			}
			if r.AllGood() != row.good {
				t.Errorf("all good: %v\n%s", r.AllGood(), r.Text(speaker))
			}
		})
	}
}

func TestJSONOfReadings(t *testing.T) {
	out, err := Of(demos.Job(t, "8-weavers-cottage-readings")).JSON(speaker)
	if err != nil {
		t.Fatal(err)
	}
	var got struct {
		Findings []struct {
			Verdict string
			Worst   float64
			Margin  float64 `json:"margin_90"`
			Odds    *struct{ Binds, Tight, Slack, Good float64 }
		}
		Readings struct {
			Sigma0     float64
			Redundancy float64
			Each       []struct {
				Reading      int
				Kind, Typed  string
				State        string
				Value, Sigma float64
			}
			Misfits []struct {
				Readings []int
				Slips    [][]struct {
					Kind  string
					Value float64
				}
				Text string
			}
			NotMeasured []struct{ What, Taken string } `json:"not_measured"`
		}
	}
	if err := json.Unmarshal(out, &got); err != nil {
		t.Fatal(err)
	}
	f := got.Findings[0]
	if f.Verdict != "binds" || f.Margin <= 0 || f.Odds == nil || f.Odds.Binds < 0.5 {
		t.Errorf("%+v", f)
	}
	r := got.Readings
	if len(r.Each) != 43 || r.Each[1].Typed != "776" || r.Each[1].State != "left out" || r.Each[1].Value != 776 || r.Each[0].Sigma <= 0 || r.Redundancy < 1 || r.Sigma0 <= 0 {
		t.Errorf("%d readings, the second %+v, %v, %v", len(r.Each), r.Each[1], r.Redundancy, r.Sigma0)
	}
	if len(r.Misfits) != 1 || r.Misfits[0].Readings[0] != 1 || r.Misfits[0].Slips[0][0].Value != 767 || !strings.Contains(r.Misfits[0].Text, "776") {
		t.Errorf("%+v", r.Misfits)
	}
	if len(r.NotMeasured) == 0 {
		t.Error("everything was measured")
	}
}

// A job that cannot be hung yet is drawn and written about as far as it goes.
func TestReportOfTooFewReadings(t *testing.T) {
	j, err := game.Parse([]byte(`{"leafwright": 1, "readings": [{"kind": "opening_width", "at": 900, "value": 767}]}`))
	if err != nil {
		t.Fatal(err)
	}
	r := Of(j)
	if r.Sure != nil {
		t.Error("sure of a door that cannot be hung")
	}
	if _, err := r.JSON(speaker); err != nil || r.Text(speaker) == "" {
		t.Error(err)
	}
}

// What was read of stiles and rails is told of where it contradicts itself or cannot be
// shown, and nothing of the fit hangs on it.
func TestReportOfMembers(t *testing.T) {
	text, err := os.ReadFile(filepath.Join("..", "..", "testdata", "jobs", "8-weavers-cottage-readings.json"))
	if err != nil {
		t.Fatal(err)
	}
	more := strings.Replace(string(text), `"readings": [`, `"readings": [
    {"kind": "stile_width", "side": "latch", "value": 98}, {"kind": "stile_width", "side": "latch", "value": 118},
    {"kind": "rail_width", "rail": 9, "value": 100},`, 1)
	j, err := game.Parse([]byte(more))
	if err != nil {
		t.Fatal(err)
	}
	r := Of(j)
	said := strings.Join(strings.Fields(r.Text(speaker)), " ")
	for _, want := range []string{"The closing stile's width, 98", "The closing stile's width, 118", "9 is not a rail of the leaf: it has"} {
		if !strings.Contains(said, want) {
			t.Errorf("%q is not in\n%s", want, said)
		}
	}
	if out := r.rests(speaker); len(out.Members) != 1 || len(out.Misfits) != len(Of(demos.Job(t, "8-weavers-cottage-readings")).rests(speaker).Misfits)+1 {
		t.Errorf("%+v", out)
	}
}
